//! What can go wrong or hurt, from the outcome.

use super::baths::Baths;
use super::caution_words::Caution;
use super::outcome::{Outcome, Stage, Step};
use super::outside::Outside;
use super::plan::Route;
use super::prior::{PriorStep, SlowCooling, WHOLE_NETWORK, Work};
use super::verdict::HARDENED;
use crate::hardness::embrittling_range_c;
use crate::heat::{Family, Hazard, Medium, Said, Section};
use crate::phases::UpperLimit;
use crate::soak::{BoundaryCarbide, Network};
use recalesce_texts::route::cautions as texts;

/// Grain number below which the grain is called coarse. Common practice, no source.
pub const COARSE_GRAIN_ASTM: f64 = 6.0;
/// How often the time until the core is cold is held: it is known within a factor of two.
const COLD_HOLDS: f64 = 2.0;
/// Austenite left that is told as a caution, volume fraction.
const MUCH_AUSTENITE: f64 = 0.10;
/// Austenite that a snap temper may keep from the cold that is told, volume fraction.
const TOLD_KEPT: f64 = 0.01;
/// Carbon in solution above which martensite forms in part as plates, which crack where they meet,
/// wt %. Textbooks of steel, from memory: lath up to 0.6, mixed to 1.0, plate above.
pub(super) const PLATE_CARBON_WT: f64 = 0.6;
/// Martensite from which its form is told, volume fraction.
const MUCH_MARTENSITE: f64 = 0.5;
/// Carbide that is as good as none, volume fraction.
const NO_CARBIDE: f64 = 0.002;
/// Ferrite left that is told as a caution, volume fraction.
const TOLD_FERRITE: f64 = 0.01;
/// Carbon in solution above which a quench in water or brine may crack, wt %. Shop practice, from
/// memory: "over 0.5 to 0.6 % C in water".
pub(super) const CRACKING_CARBON_WT: f64 = 0.55;

/// Martensite of a place without which nothing cracks, volume fraction (expert value).
const CRACKING_MARTENSITE: f64 = 0.1;

/// Martensite without which nothing has to be tempered, volume fraction (expert value).
const UNTEMPERED: f64 = 0.1;

/// What a forge brings.
const FORGE: &[Hazard] = &[
    Hazard(&[Said::Words(texts::FORGE_MONOXIDE)]),
    Hazard(&[Said::Words(texts::FORGE_GLARE)]),
];

/// The medium that a step before hardening ends in. Air is left out: it hurts nobody who
/// keeps off hot metal.
fn cooling_medium(step: &PriorStep) -> Option<Medium> {
    match &step.cooling {
        SlowCooling::Medium { medium } => medium
            .resolve()
            .ok()
            .filter(|medium| medium.family != Family::Air),
        SlowCooling::Furnace { .. } => None,
    }
}

/// What a step before hardening brings that can hurt.
pub(super) fn prior_hazards(step: &PriorStep) -> Vec<Hazard> {
    let forging = if matches!(step.work, Work::Forge { .. }) {
        FORGE
    } else {
        &[]
    };
    let medium = cooling_medium(step);
    let cooling = medium.iter().flat_map(|medium| medium.cautions());
    forging.iter().chain(cooling).copied().collect()
}

/// What one of the baths of a quench brings that can hurt: the passage into it, and the bath.
pub(super) fn bath_hazards(media: &[&Medium], place: usize) -> Vec<Hazard> {
    let Some(medium) = media.get(place) else {
        return Vec::new();
    };
    let before = place.checked_sub(1).and_then(|before| media.get(before));
    let passage = before.and_then(|before| medium.family.caution_after(before.family));
    let usual = medium.cautions().iter().copied();
    passage.into_iter().chain(usual).collect()
}

/// Carbon above the eutectoid with which there is enough to come out as a network, wt %: about one and
/// a half per cent of cementite (expert value).
const NETWORK_CARBON_WT: f64 = 0.1;

/// The cautions of an outcome, in the order of the route.
pub(super) fn cautions(route: &Route, baths: &Baths, outcome: &Outcome) -> Vec<Caution> {
    let mut told = of_soak(route, outcome);
    told.extend(of_network(route, outcome));
    told.extend(of_hardening(route, baths, outcome));
    for text in hazards(route, baths) {
        let caution = Caution::Hazard { text };
        if !told.contains(&caution) {
            told.push(caution);
        }
    }
    told.extend(of_tempers(route, outcome));
    told
}

/// Of the soak: its temperature, what it left, and what the air took.
fn of_soak(route: &Route, outcome: &Outcome) -> Vec<Caution> {
    let mut told = Vec::new();
    let handbook = route
        .listed_grade()
        .and_then(|grade| grade.austenitise_c.span);
    if let Some((from_c, to_c)) = handbook
        && !(from_c..=to_c).contains(&route.soak.temperature_c)
    {
        told.push(Caution::OutsideHandbook {
            range_c: [from_c, to_c],
        });
    }
    let hardened = outcome.quench.transformed.given();
    if hardened.is_some_and(|quenched| quenched.hardened_fraction >= HARDENED)
        && outcome.furnace.hardened_at_coldest < HARDENED
    {
        told.push(Caution::FurnaceCold {
            coldest_c: outcome.furnace.coldest_c,
        });
    }
    let end = &outcome.soak.end;
    if end.ferrite_volume_fraction > TOLD_FERRITE {
        told.push(Caution::FerriteLeft {
            fraction: end.ferrite_volume_fraction,
        });
    }
    if end.grain_astm < COARSE_GRAIN_ASTM {
        told.push(Caution::CoarseGrain {
            grain_astm: end.grain_astm,
        });
    }
    let network = outcome.soak.network_volume_fraction;
    if network >= WHOLE_NETWORK {
        told.push(Caution::NetworkLeft { fraction: network });
    }
    if let (Some(skin), Section::Blade { edge_mm, .. }) = (outcome.skin.given(), route.section)
        && 2.0 * skin.decarburised.most_mm >= edge_mm
    {
        told.push(Caution::SkinThroughEdge {
            decarburised_mm: skin.decarburised.most_mm,
        });
    }
    told
}

/// Of a network that the quench lets form, or a slower cooling would.
fn of_network(route: &Route, outcome: &Outcome) -> Option<Caution> {
    let quenched = outcome.quench.transformed.given();
    let films = quenched.map_or_else(BoundaryCarbide::default, |q| q.boundary_carbide);
    if films.network() == Network::Continuous {
        return Some(Caution::NetworkFormed {
            film_um: 2.0 * films.half_thickness_um,
        });
    }
    let UpperLimit::Acm { temperature_c } = outcome.critical.upper else {
        return None;
    };
    let would_form = outcome.soak.end.carbide_volume_fraction < NO_CARBIDE
        && route.soak.temperature_c > temperature_c
        && route.composition.c > outcome.critical.eutectoid_carbon_wt + NETWORK_CARBON_WT;
    would_form.then_some(Caution::Network {
        acm_c: temperature_c,
    })
}

/// Of what forms in the quench and the cold, and of what is left.
fn of_hardening(route: &Route, baths: &Baths, outcome: &Outcome) -> Vec<Caution> {
    let mut told = Vec::new();
    let end = &outcome.soak.end;
    let quenched = outcome
        .judged_stages()
        .iter()
        .rfind(|stage| matches!(stage.step, Step::Quench | Step::Cold))
        .and_then(|stage| stage.fractions)
        .unwrap_or_default();
    if end.carbon_wt > PLATE_CARBON_WT && quenched.martensite > MUCH_MARTENSITE {
        told.push(Caution::PlateMartensite {
            carbon_wt: end.carbon_wt,
        });
    }
    if let (Some(cold), Some(known)) = (&route.cold, outcome.cold.given())
        && cold.time_min < COLD_HOLDS * known.core_cold_min
    {
        told.push(Caution::ColdTooShort {
            needs_min: known.core_cold_min,
        });
    }
    if let Some(cold) = outcome.judged_cold()
        && let Some(snap) = &cold.snap
    {
        let most = snap.austenite_between[1] - snap.austenite_without;
        if most > TOLD_KEPT {
            told.push(Caution::SnapKeeps { most });
        }
    }
    let left = quenched.austenite;
    let at_hottest = match outcome.judged_edge() {
        Some(edge) => edge.austenite_at_hottest,
        None => outcome.furnace.austenite_at_hottest,
    };
    if left > MUCH_AUSTENITE {
        told.push(Caution::MuchAustenite { fraction: left });
    } else if let Some(austenite) = at_hottest
        && austenite > MUCH_AUSTENITE
        && route.soak_band_k() > 0.0
    {
        told.push(Caution::FurnaceHot {
            hottest_c: outcome.furnace.hottest_c,
            austenite,
        });
    }
    // A piece cracks where martensite is; of what the models do not reach it is taken to be there.
    let hardens_somewhere = outcome.quench.transformed.given().is_none_or(|quenched| {
        let mut places = quenched.places.iter();
        places.any(|place| place.fractions.martensite > CRACKING_MARTENSITE)
    });
    if hardens_somewhere && may_crack(baths.at_ms(outcome), end.carbon_wt) {
        told.push(Caution::MayCrack);
    }
    told
}

/// What its steps, its baths and its cold bring that can hurt, in their order.
fn hazards(route: &Route, baths: &Baths) -> Vec<Hazard> {
    let media: Vec<&Medium> = baths.media().collect();
    let of_baths = (0..media.len()).flat_map(|place| bath_hazards(&media, place));
    let cold = route.cold.as_ref();
    let of_cold = cold.map_or(&[][..], |cold| cold_hazards(cold.temperature_c));
    let of_steps = route.prior.iter().flat_map(prior_hazards);
    let all = of_steps.chain(of_baths).chain(of_cold.iter().copied());
    all.collect()
}

/// Whether martensite is left untempered at the place that decides or outside, or that is unknown.
fn may_be_brittle(outcome: &Outcome) -> bool {
    let outside = outcome.outside.as_ref().and_then(Outside::last);
    let ends = [outcome.stages.last(), outside];
    let holds = |stage: &Stage| {
        let parts = stage.fractions;
        parts.is_none_or(|parts| parts.martensite >= UNTEMPERED)
    };
    ends.into_iter().flatten().any(holds)
}

/// Of the tempers, as the oven is asked: what it is off is in the pieces alone.
fn of_tempers(route: &Route, outcome: &Outcome) -> Option<Caution> {
    if route.tempers.is_empty() {
        return may_be_brittle(outcome).then_some(Caution::NotTempered);
    }
    let range_c = embrittling_range_c(&route.composition);
    let hotter_k = route.moved_tempers_k();
    let mut tempers = route.tempers.iter().enumerate();
    let (index, temper) =
        tempers.find(|(_, t)| (range_c[0]..=range_c[1]).contains(&t.temperature_c))?;
    Some(Caution::Embrittling {
        temper: index,
        temperature_c: temper.temperature_c - hotter_k,
        range_c: range_c.map(|c| c - hotter_k),
    })
}

/// True of a quench that is harsh for this much carbon in solution, wt %.
pub(crate) fn may_crack(medium: &Medium, carbon_wt: f64) -> bool {
    medium.is_harsh() && carbon_wt > CRACKING_CARBON_WT
}

/// The usual cautions for a cold bath of a temperature.
pub(super) const fn cold_hazards(temperature_c: f64) -> &'static [Hazard] {
    if temperature_c < -120.0 {
        &[Hazard(&[Said::Words(texts::LIQUID_NITROGEN)])]
    } else if temperature_c < -40.0 {
        &[Hazard(&[Said::Words(texts::DRY_ICE)])]
    } else {
        &[]
    }
}

#[cfg(test)]
#[path = "cautions_tests.rs"]
mod tests;
