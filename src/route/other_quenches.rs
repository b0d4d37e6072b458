//! Which other quench would do: other quenchants, other sizes of the piece.

use super::baths::{Baths, until_arrival};
use super::cautions::may_crack;
use super::margin::{Margin, Neighbour};
use super::plan::Route;
use super::settled::{settled_c, settled_in_c};
use super::shop_media::{next_slower_than, out_of_order, shop_media, sort_by_speed};
use super::spread::Spread;
use super::verdict::{HARDENED, judge};
use crate::heat::{
    CoolingCurve, Medium, Place, Quenching, Section, cool, cool_core, quasi_steady_s,
};
use crate::numeric::roots::{Crossing, falling_root};
use crate::transform::{Kinetics, spare_of};

/// A blade is compared by the plate of its spine: its deciding place lies there, and a plate is far quicker
/// to compute.
pub(crate) const fn compared_section(section: Section) -> Section {
    match section {
        Section::Blade { spine_mm, .. } => Section::Plate {
            thickness_mm: spine_mm,
        },
        other => other,
    }
}

/// What the searches over other quenchants and sections share.
pub(super) struct Quencher<'a> {
    /// The route.
    pub(super) route: &'a Route,
    /// Its baths.
    pub(super) baths: &'a Baths,
    /// The austenite's kinetics.
    pub(super) kinetics: &'a Kinetics,
    /// What is open about it.
    pub(super) spread: Spread,
}

/// Whether austenite hardens in a quenchant, still, in the section and with the delay of a route; none
/// where the models do not reach.
pub(super) fn hardens_in(medium: &Medium, route: &Route, kinetics: &Kinetics) -> Option<bool> {
    let end_c = settled_in_c(kinetics, medium, route.quench.end_c);
    let section = compared_section(route.section);
    let curve = deciding(route, medium, 1.0, section, end_c)?;
    let hardened = kinetics
        .hardened(&curve.time_s, &curve.temperature_c)
        .ok()?;
    Some(hardened >= HARDENED)
}

/// Part of a blade's height that is sharpened away in its life, and has to harden: the places up to
/// there. Common practice, no source.
const SHARPENED: [Place; 2] = [Place::Edge, Place::Quarter];

/// Whether a quenchant, still, hardens what is sharpened of a blade; false of other sections.
pub(super) fn hardens_edge_in(medium: &Medium, route: &Route, kinetics: &Kinetics) -> bool {
    if !matches!(route.section, Section::Blade { .. }) {
        return false;
    }
    let end_c = settled_in_c(kinetics, medium, route.quench.end_c);
    let Ok(cooled) = cool(&alone(route, medium, 1.0, route.section, end_c)) else {
        return false;
    };
    let hardens = |curve: &CoolingCurve| {
        kinetics
            .hardened(&curve.time_s, &curve.temperature_c)
            .is_ok_and(|hardened| hardened >= HARDENED)
    };
    cooled
        .curves
        .iter()
        .filter(|curve| SHARPENED.contains(&curve.place))
        .all(hardens)
}

/// A section in one quenchant alone, otherwise as a route has it.
fn alone<'m>(
    route: &Route,
    medium: &'m Medium,
    agitation: f64,
    section: Section,
    end_c: f64,
) -> Quenching<'m> {
    Quenching {
        section,
        medium,
        agitation,
        start_c: route.soak.temperature_c,
        air_delay_s: route.quench.air_delay_s,
        end_c,
        then: &[],
        martensite_start_c: None,
    }
}

/// Cooling curve of the place that decides, for another quenchant, agitation or section than those of
/// a route.
fn deciding(
    route: &Route,
    medium: &Medium,
    agitation: f64,
    section: Section,
    end_c: f64,
) -> Option<CoolingCurve> {
    let mut cooled = cool(&alone(route, medium, agitation, section, end_c)).ok()?;
    let slowest = cooled.slowest;
    (slowest < cooled.curves.len()).then(|| cooled.curves.swap_remove(slowest))
}

/// A glance may be off by 0.4 % of the times, and what turns goes with their fourth power at most: two
/// such parts that are apart by less than this, of the larger, are looked at in full.
const DOUBT: f64 = 0.04;

/// Whether a glance tells which of two parts that do not harden is the larger.
fn is_told_apart(a: f64, b: f64) -> bool {
    (a - b).abs() > DOUBT * a.max(b)
}

impl Quencher<'_> {
    fn deciding(
        &self,
        medium: &Medium,
        agitation: f64,
        section: Section,
        end_c: f64,
    ) -> Option<CoolingCurve> {
        deciding(self.route, medium, agitation, section, end_c)
    }

    /// Part of the austenite of another section that the baths of the route leave for martensite,
    /// or for bainite in the bath in which it is held.
    fn hardened_here(&self, section: Section) -> Option<f64> {
        let end_c = settled_c(self.kinetics, self.baths, self.route.quench.end_c);
        let mut curve = cool_core(&Quenching {
            section,
            end_c,
            ..self.baths.quenching(self.route)
        })
        .ok()??;
        if let Some(bath_c) = self.baths.held_c(self.kinetics.ms_c()) {
            curve = until_arrival(&curve, bath_c);
        }
        self.hardened_along(&curve)
    }

    /// Part of the austenite that another quenchant, still, leaves for martensite, from a curve that ends
    /// when that is settled.
    fn hardened(&self, medium: &Medium, section: Section) -> Option<f64> {
        let end_c = settled_in_c(self.kinetics, medium, self.route.quench.end_c);
        let curve = cool_core(&alone(self.route, medium, 1.0, section, end_c)).ok()??;
        let hardened = self.hardened_along(&curve)?;
        if is_told_apart(1.0 - hardened, 1.0 - HARDENED) {
            return Some(hardened);
        }
        self.hardened_in_full(medium, section)
    }

    /// The same, never at a glance.
    fn hardened_in_full(&self, medium: &Medium, section: Section) -> Option<f64> {
        let end_c = settled_in_c(self.kinetics, medium, self.route.quench.end_c);
        self.hardened_along(&self.deciding(medium, 1.0, section, end_c)?)
    }

    fn hardened_along(&self, curve: &CoolingCurve) -> Option<f64> {
        let kinetics = self.kinetics;
        kinetics.hardened(&curve.time_s, &curve.temperature_c).ok()
    }

    /// How a quenchant, still, stands for a section.
    pub(super) fn margin(&self, medium: &Medium, section: Section) -> Option<Margin> {
        let end_c = settled_in_c(self.kinetics, medium, self.route.quench.end_c);
        let curve = self.deciding(medium, 1.0, section, end_c)?;
        judge(self.kinetics, &curve, medium.h_band_factor, &self.spread).ok()
    }

    /// A quenchant of the list, still, for this section. The plate of a blade's spine tells it to a few per
    /// cent at best: a glance will do.
    fn neighbour(&self, medium: &Medium) -> Option<Neighbour> {
        let end_c = self.route.quench.end_c;
        let section = compared_section(self.route.section);
        let curve = if section == self.route.section {
            self.deciding(medium, 1.0, section, end_c)?
        } else {
            cool_core(&alone(self.route, medium, 1.0, section, end_c)).ok()??
        };
        let margin = judge(self.kinetics, &curve, medium.h_band_factor, &self.spread).ok()?;
        Some(Neighbour {
            name: medium.name.clone(),
            title: medium.title.clone(),
            seconds: margin.seconds,
            factor: margin.factor,
            verdict: margin.verdict,
            may_crack: may_crack(medium, self.kinetics.austenite().composition.c),
            curve,
        })
    }

    /// The next slower quenchant of the list that a shop would use in this one's place.
    pub(super) fn next_slower(&self) -> Option<Neighbour> {
        self.neighbour(next_slower_than(&self.baths.first)?)
    }

    /// The slowest quenchant of the list, still, that hardens this section: of those that do not crack
    /// it, where there is one; none where this quench hardens it and is slower. The search begins where the factor by which this quench could be slower
    /// leads.
    pub(super) fn slowest_medium(&self, slower: f64) -> Option<Neighbour> {
        let carbon_wt = self.kinetics.austenite().composition.c;
        let (harsh, gentle): (Vec<&Medium>, Vec<&Medium>) =
            shop_media().partition(|medium| may_crack(medium, carbon_wt));
        let section = compared_section(self.route.section);
        let here_s = quasi_steady_s(&self.baths.first, section) / self.route.quench.agitation;
        let likely_s = here_s * slower;
        let slowest = self
            .slowest_of(gentle, likely_s)
            .or_else(|| self.slowest_of(harsh, likely_s))?;
        // A blade that just hardens may do so where the plate of its spine does not.
        let is_needless = slower >= 1.0 && quasi_steady_s(slowest, section) < here_s;
        (!is_needless).then(|| self.neighbour(slowest)).flatten()
    }

    /// The slowest of some that hardens this section. Sorted from fast to slow the search goes from one
    /// that may be it to one that is too slow behind one that is not, and then looks at all on both
    /// sides that may stand on the wrong one.
    fn slowest_of<'m>(&self, mut list: Vec<&'m Medium>, likely_s: f64) -> Option<&'m Medium> {
        let section = compared_section(self.route.section);
        sort_by_speed(&mut list, section);
        let mut known: Vec<Option<f64>> = vec![None; list.len()];
        let mut hardened = |place: usize| {
            *known[place].get_or_insert_with(|| {
                let hardened = self.hardened(list[place], section);
                hardened.unwrap_or_default()
            })
        };
        let mut first_too_slow =
            list.partition_point(|medium| quasi_steady_s(medium, section) <= likely_s);
        while first_too_slow > 0 && hardened(first_too_slow - 1) < HARDENED {
            first_too_slow -= 1;
        }
        while first_too_slow < list.len() && hardened(first_too_slow) >= HARDENED {
            first_too_slow += 1;
        }
        // Both the one where the search ends and the one sought may be out of their place.
        let apart = 2 * out_of_order(section);
        let near = first_too_slow.saturating_sub(apart + 1)..list.len();
        let mut harden: Vec<(f64, usize)> = near
            .take(2 * apart + 2)
            .map(|place| (hardened(place), place))
            .filter(|(hardened, _)| *hardened >= HARDENED)
            .collect();
        let least = harden
            .iter()
            .map(|(hardened, _)| *hardened)
            .reduce(f64::min)?;
        harden.retain(|(hardened, _)| !is_told_apart(1.0 - hardened, 1.0 - least));
        if harden.len() > 1 {
            for (hardened, place) in &mut harden {
                *hardened = self.hardened_in_full(list[*place], section).unwrap_or(1.0);
            }
        }
        let slowest = harden.iter().min_by(|a, b| a.0.total_cmp(&b.0))?;
        list.get(slowest.1).copied()
    }

    /// The thickest section of this shape that this quench hardens, mm, from 0.3 to 120; none when even the
    /// thinnest of them fails, or the thickest still hardens. `slower` is the factor by which the quench may be
    /// slower.
    pub(super) fn thickest_mm(&self, slower: f64) -> Option<f64> {
        let of_size = |size_mm: f64| match self.route.section {
            Section::Round { .. } => Section::Round {
                diameter_mm: size_mm,
            },
            Section::Square { .. } => Section::Square { side_mm: size_mm },
            Section::Plate { .. } | Section::Blade { .. } => Section::Plate {
                thickness_mm: size_mm,
            },
        };
        let spare = |ln_size: f64| {
            let section = of_size(ln_size.exp());
            Some(spare_of(self.hardened_here(section)?, HARDENED))
        };
        let (Section::Round {
            diameter_mm: size_mm,
        }
        | Section::Plate {
            thickness_mm: size_mm,
        }
        | Section::Square { side_mm: size_mm }
        | Section::Blade {
            spine_mm: size_mm, ..
        }) = self.route.section;
        let range = (THINNEST_MM.ln(), THICKEST_MM.ln());
        match falling_root(spare, size_mm.ln(), range, SIZE_SLOPE, LN_SIZE_TOLERANCE)? {
            // As above, of a blade.
            Crossing::At(ln_size) if slower >= 1.0 && ln_size < size_mm.ln() => None,
            Crossing::At(ln_size) => Some(ln_size.exp()),
            Crossing::Before | Crossing::Beyond => None,
        }
    }
}

/// Range of the search for the thickest section, mm.
const THINNEST_MM: f64 = 0.3;
const THICKEST_MM: f64 = 120.0;
/// Usual slope of what is to spare over the logarithm of the size.
const SIZE_SLOPE: f64 = -4.0;
/// Accuracy of the logarithm of the size: of the last step, whose error is far smaller.
const LN_SIZE_TOLERANCE: f64 = 1e-2;

#[cfg(test)]
mod tests {
    use super::*;

    /// The search finds what looking at every quenchant does.
    #[test]
    fn the_slowest_is_that_of_the_whole_list() {
        for section in [
            Section::Plate { thickness_mm: 1.5 },
            Section::Plate { thickness_mm: 3.0 },
            Section::Plate { thickness_mm: 4.0 },
            Section::Plate { thickness_mm: 6.0 },
            Section::Round { diameter_mm: 16.0 },
            Section::Plate { thickness_mm: 30.0 },
            Section::Round { diameter_mm: 80.0 },
            Section::Round { diameter_mm: 110.0 },
            Section::Square { side_mm: 14.0 },
        ] {
            for grade in ["1045", "1095", "52100", "4140", "O1"] {
                let mut route = Route::example();
                route.take_grade(crate::steel::find(grade).unwrap());
                route.section = section;
                // As the list has it, still.
                route.quench.agitation = 1.0;
                let quench = crate::route::run(&route).unwrap().quench;
                let found = quench.transformed.given().unwrap().slowest_medium.clone();
                let table = crate::route::Prepared::of(&route).unwrap();
                let hardening = route.hardening(&table).unwrap();
                let hardened = |medium: &Medium| {
                    let end_c = settled_in_c(hardening.kinetics(), medium, route.quench.end_c);
                    let curve = deciding(&route, medium, 1.0, section, end_c).unwrap();
                    let hardened = hardening.kinetics();
                    hardened
                        .hardened(&curve.time_s, &curve.temperature_c)
                        .unwrap()
                };
                let carbon_wt = hardening.kinetics().austenite().composition.c;
                let of = |is_harsh: bool| {
                    shop_media()
                        .filter(|medium| may_crack(medium, carbon_wt) == is_harsh)
                        .map(|medium| (hardened(medium), medium.name.clone()))
                        .filter(|(hardened, _)| *hardened >= HARDENED)
                        .min_by(|a, b| a.0.total_cmp(&b.0))
                };
                let by_all = of(false).or_else(|| of(true)).map(|(_, name)| name);
                assert_eq!(found.map(|found| found.name), by_all, "{grade} {section:?}");
            }
        }
    }

    /// Plain steel of much carbon hardens through in water or brine alone, and may crack there.
    #[test]
    fn a_harsh_quenchant_is_told_as_such() {
        let mut route = Route::example();
        route.composition.cr = 0.0;
        route.section = Section::Plate { thickness_mm: 3.0 };
        let quench = crate::route::run(&route).unwrap().quench;
        let slowest = quench.transformed.given().unwrap().slowest_medium.clone();
        let slowest = slowest.unwrap();
        assert!(slowest.may_crack, "{}", slowest.name);
        // At 10 mm warm water stands behind the oils in the list, and is the faster.
        let mut thick = Route::example();
        thick.section = Section::Plate { thickness_mm: 10.0 };
        let quench = crate::route::run(&thick).unwrap().quench;
        let slowest = quench.transformed.given().unwrap().slowest_medium.clone();
        let slowest = slowest.unwrap();
        assert!(!slowest.may_crack && slowest.factor < 1.3, "{slowest:?}");
        let example = crate::route::run(&Route::example()).unwrap().quench;
        let slowest = example.transformed.given().unwrap().slowest_medium.clone();
        assert!(!slowest.unwrap().may_crack);
    }

    /// A blade that just hardens in water is not sent to brine by the plate of its spine.
    #[test]
    fn a_quench_that_does_is_not_answered_with_a_faster_one() {
        let mut told = 0;
        for spine_mm in [4.0, 4.5, 5.0, 5.5] {
            let mut route = Route::example();
            route.take_grade(crate::steel::find("W2").unwrap());
            route.section = Section::Blade {
                edge_mm: 0.5,
                spine_mm,
                height_mm: 30.0,
                grind: crate::heat::Grind::Straight,
            };
            route.quench.medium = crate::heat::MediumChoice::Named("water20".to_owned());
            route.quench.agitation = 1.0;
            let quench = crate::route::run(&route).unwrap().quench;
            let quenched = quench.transformed.given().unwrap();
            if quenched.margin.factor < 1.0 {
                continue;
            }
            told += 1;
            let slowest = quenched.slowest_medium.as_ref();
            assert!(slowest.is_none_or(|slowest| slowest.name != "brine10"));
            assert!(quenched.thickest_mm.is_none_or(|mm| mm >= spine_mm));
        }
        assert!(told > 0);
    }
}
