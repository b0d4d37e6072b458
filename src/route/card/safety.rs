//! What can go wrong or hurt with each step.

use super::ramp::keep_air_off;
use crate::heat::{Hazard, Medium};
use crate::route::baths::Baths;
use crate::route::caution_words::{Caution, caution_text};
use crate::route::cautions::{bath_hazards, cold_hazards, prior_hazards};
use crate::route::outcome::Outcome;
use crate::route::plan::Route;
use crate::route::prior::{Work, cautions_by_step};
use crate::units::{LengthUnit, TemperatureScale};

/// A row of the card after the steps before hardening.
#[derive(Clone, Copy, PartialEq)]
enum Row {
    Soak,
    Bath(usize),
    Test,
    Snap,
    Cold,
    Temper(usize),
}

/// The row that brings a caution which is no hazard.
fn row_of(caution: &Caution) -> Option<Row> {
    Some(match caution {
        Caution::FurnaceHot { .. }
        | Caution::FurnaceCold { .. }
        | Caution::FerriteLeft { .. }
        | Caution::Network { .. }
        | Caution::NetworkLeft { .. }
        | Caution::SkinThroughEdge { .. }
        | Caution::CoarseGrain { .. }
        | Caution::OutsideHandbook { .. } => Row::Soak,
        Caution::MayCrack | Caution::NetworkFormed { .. } => Row::Bath(0),
        Caution::ColdTooShort { .. } => Row::Cold,
        Caution::MuchAustenite { .. } | Caution::PlateMartensite { .. } | Caution::NotTempered => {
            Row::Test
        }
        Caution::SnapKeeps { .. } => Row::Snap,
        Caution::Embrittling { temper, .. } => Row::Temper(*temper),
        Caution::Hazard { .. } => return None,
    })
}

/// The cautions of each row of the card, in the order of its rows. A hazard stands where it first
/// comes.
pub(super) fn by_row(
    route: &Route,
    outcome: &Outcome,
    scale: TemperatureScale,
    length: LengthUnit,
) -> Vec<Vec<String>> {
    let mut told: Vec<Hazard> = Vec::new();
    let mut new = |hazards: Vec<Hazard>| {
        let mut words = Vec::new();
        for hazard in hazards {
            if !told.contains(&hazard) {
                words.push(hazard.words(scale));
                told.push(hazard);
            }
        }
        words
    };
    let mut all = Vec::new();
    for (step, wrong) in route
        .prior
        .iter()
        .zip(cautions_by_step(route, outcome, scale))
    {
        let mut hazards = prior_hazards(step);
        // Scale of a forging goes with the hammer and the grinder.
        if !matches!(step.work, Work::Forge { .. }) {
            hazards.extend(keep_air_off(step.temperature_c, step.time_min));
        }
        all.push(new(hazards).into_iter().chain(wrong).collect());
    }
    let baths = Baths::of(&route.quench).ok();
    let media: Vec<&Medium> = baths.iter().flat_map(Baths::media).collect();
    for row in rows_of(route) {
        let mut lines = new(match row {
            Row::Bath(place) => bath_hazards(&media, place),
            Row::Cold => route
                .cold
                .map_or_else(Vec::new, |cold| cold_hazards(cold.temperature_c).to_vec()),
            Row::Soak => keep_air_off(route.soak.temperature_c, route.soak.time_min)
                .into_iter()
                .collect(),
            Row::Test | Row::Snap | Row::Temper(_) => Vec::new(),
        });
        let cautions = outcome.cautions.iter();
        let of_row = cautions.filter(|caution| row_of(caution) == Some(row));
        lines.extend(of_row.map(|caution| caution_text(caution, scale, length)));
        all.push(lines);
    }
    all
}

/// The rows from the soak on.
fn rows_of(route: &Route) -> Vec<Row> {
    let baths = (0..=route.quench.then.len()).map(Row::Bath);
    let snap = route.cold.and_then(|cold| cold.snap).map(|_| Row::Snap);
    let tempers = (0..route.tempers.len()).map(Row::Temper);
    std::iter::once(Row::Soak)
        .chain(baths)
        .chain([Row::Test])
        .chain(snap)
        .chain(route.cold.map(|_| Row::Cold))
        .chain(tempers)
        .collect()
}
