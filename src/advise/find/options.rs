//! What a shop can do with a piece: soaks, colds, tempers.

use crate::advise::error::AdviseError;
use crate::advise::shop::{Furnace, Shop};
use crate::phases::{UpperLimit, critical_temperatures};
use crate::route::{Cold, Route, RouteError, Soak, Temper};

/// Soak temperatures that are tried over the range of the steel (expert value).
const SOAK_TEMPERATURES: u32 = 5;
/// Above A3, and above A1 where Acm is the upper limit, °C: the range that is tried for a steel
/// without a handbook entry. Common practice, no source.
const ABOVE_A3_K: [f64; 2] = [25.0, 65.0];
const ABOVE_A1_K: [f64; 2] = [35.0, 95.0];
/// Soak times of a steel without a handbook entry, min (expert value).
const USUAL_SOAK_MIN: [f64; 2] = [5.0, 15.0];
/// Time that a piece is kept at temperature by eye, min (expert value).
const BY_EYE_MIN: f64 = 5.0;
/// Tempers that are tried: temperatures, °C, times of each, min, and how many (expert values).
pub(super) const TEMPER_C: (u32, u32) = (140, 650);
const TEMPER_STEP_C: usize = 10;
const TEMPER_MIN: [f64; 2] = [60.0, 120.0];
const TEMPER_COUNTS: [usize; 2] = [1, 2];

/// A soak in a furnace of the shop.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Soaking {
    pub(super) furnace: Furnace,
    pub(super) soak: Soak,
}

/// Equal tempers one after the other.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Tempers {
    pub(super) temper: Temper,
    pub(super) count: usize,
    /// How far a piece may be from the temperature, K either way.
    pub(super) band_k: f64,
}

impl Tempers {
    pub(super) fn all(&self) -> Vec<Temper> {
        vec![self.temper; self.count]
    }

    pub(super) fn time_min(&self) -> f64 {
        self.temper.time_min * self.count as f64
    }
}

/// Range of temperatures, °C, and of times, min, in which a steel is soaked.
pub(super) fn soak_range(piece: &Route) -> Result<([f64; 2], [f64; 2]), AdviseError> {
    let grade = piece.listed_grade();
    if let Some(grade) = grade
        && let Some((from_c, to_c)) = grade.austenitise_c.span
    {
        let (from_min, to_min) = grade
            .soak_min
            .span
            .unwrap_or((USUAL_SOAK_MIN[0], USUAL_SOAK_MIN[1]));
        return Ok(([from_c, to_c], [from_min, to_min]));
    }
    let critical = critical_temperatures(&piece.composition).map_err(RouteError::from)?;
    let range_c = match critical.upper {
        UpperLimit::Acm { .. } => ABOVE_A1_K.map(|above_k| critical.a1_c + above_k),
        UpperLimit::A3 { temperature_c } => ABOVE_A3_K.map(|above_k| temperature_c + above_k),
    };
    Ok((range_c, USUAL_SOAK_MIN))
}

/// The soaks that a shop can give a piece.
pub(super) fn soakings(piece: &Route, shop: &Shop) -> Result<Vec<Soaking>, AdviseError> {
    let ([from_c, to_c], times_min) = soak_range(piece)?;
    let mut found: Vec<Soaking> = Vec::new();
    for place in 0..SOAK_TEMPERATURES {
        let way = f64::from(place) / f64::from(SOAK_TEMPERATURES - 1);
        let temperature_c = (from_c + way * (to_c - from_c)).round();
        let Some(furnace) = shop.furnace_for(temperature_c) else {
            continue;
        };
        for time_min in times_min {
            let time_min = if furnace.holds { time_min } else { BY_EYE_MIN };
            let soaking = Soaking {
                furnace: furnace.clone(),
                soak: Soak {
                    temperature_c,
                    time_min,
                },
            };
            if found.last() != Some(&soaking) {
                found.push(soaking);
            }
        }
    }
    Ok(found)
}

/// The tempers that a shop can give, the shortest first.
pub(super) fn tempers(shop: &Shop) -> Vec<Tempers> {
    let mut found = Vec::new();
    let (from_c, to_c) = TEMPER_C;
    for count in TEMPER_COUNTS {
        for time_min in TEMPER_MIN {
            for temperature_c in (from_c..=to_c).step_by(TEMPER_STEP_C).map(f64::from) {
                let Some(band_k) = shop.temper_band_k(temperature_c) else {
                    continue;
                };
                found.push(Tempers {
                    temper: Temper {
                        temperature_c,
                        time_min,
                    },
                    count,
                    band_k,
                });
            }
        }
    }
    found
}

/// Without a cold step, and with each that the shop can give unless it is ruled out.
pub(super) fn colds(shop: &Shop, is_ruled_out: bool) -> Vec<Option<Cold>> {
    let owned = shop.colds.iter().filter(|_| !is_ruled_out);
    let steps = owned.map(|means| Some(cold_at(means.temperature_c)));
    std::iter::once(None).chain(steps).collect()
}

/// A cold step at a temperature, °C, with the times of the one first offered.
const fn cold_at(temperature_c: f64) -> Cold {
    Cold {
        temperature_c,
        ..Cold::FIRST_OFFERED
    }
}
