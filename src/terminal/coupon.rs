//! The question of a test coupon: from its hardness to the speed of its quench.

use super::asked::{Asked, fields};
use super::catalogue::{Question, needed, optional};
use super::refusal::Refusal;
use crate::advise::{Coupon, CouponNote, USUAL_TESTER_HRC, fit_coupon};
use crate::heat::{Section, medium};
use crate::route::Soak;
use serde_json::{Map, Value, json};

pub(super) const QUESTIONS: &[Question] = &[Question {
    name: "coupon",
    asks: "How fast was the quench of a test coupon, by its hardness as quenched?",
    of_steel: true,
    fields: &[
        needed(
            "section",
            "{shape: plate, thickness_mm} or {shape: round, diameter_mm}",
        ),
        needed("temperature_c", "soak, °C"),
        needed("time_min", "time at temperature, min"),
        needed(
            "like",
            "name in the list of the quenchant nearest in kind: its heat transfer gives the shape \
             over the temperature of the surface",
        ),
        optional(
            "centre_hrc",
            "hardness at the centre of the cut, HRC",
            "not measured",
        ),
        optional(
            "surface_hrc",
            "hardness at the surface, HRC",
            "not measured",
        ),
        optional("tester_hrc", "error of the tester, HRC either way", "1"),
        optional("start", "structure before hardening", "spheroidised"),
        optional("bath_c", "temperature of the bath, °C", "that of the list"),
        optional(
            "air_delay_s",
            "time in air between furnace and bath, s",
            "1",
        ),
    ],
    answers: &[
        (
            "h_w_m2k",
            "pairs of surface temperature, °C, and W/m²K; with `bath_c` and `h_band_factor` a \
             quenchant for other questions",
        ),
        ("bath_c", "temperature of the bath, °C"),
        (
            "h_band_factor",
            "the heat transfer that decides the nose lies within this factor either way, nine times in ten",
        ),
        (
            "same_steel_band_factor",
            "the same for another piece of this very steel; none where a side is open",
        ),
        (
            "factor",
            "{least, best, most} on the heat transfer of `like` that explain the coupon (95 %); \
             none where a side is open",
        ),
        ("taken", "the factor that the curve has"),
        (
            "figures",
            "of the standard tests, as computed with the curve",
        ),
        (
            "readings",
            "list of {place, given_hrc, computed_hrc, alone}: `alone` are the factors that this \
             reading allows by itself",
        ),
        ("notes", "list of what is assumed and what is left open"),
    ],
    example: r#"{"question":"coupon","grade":"1095","section":{"shape":"plate","thickness_mm":5},"temperature_c":800,"time_min":10,"like":"oil_fast","centre_hrc":51,"surface_hrc":54}"#,
    answer: coupon,
}];

/// Time in air that is usual for a small piece, s (expert value).
const USUAL_DELAY_S: f64 = 1.0;

fn coupon(asked: &Asked<'_>) -> Result<Map<String, Value>, Refusal> {
    let like: String = asked.value("like")?;
    let bath_c: Option<f64> = asked.optional("bath_c")?;
    let listed_c = medium(&like).map(|listed| listed.bath_c);
    let coupon = Coupon {
        composition: asked.steel()?,
        start: asked.optional("start")?.unwrap_or_default(),
        section: asked.value::<Section>("section")?,
        soak: Soak {
            temperature_c: asked.value("temperature_c")?,
            time_min: asked.value("time_min")?,
        },
        air_delay_s: asked.optional("air_delay_s")?.unwrap_or(USUAL_DELAY_S),
        like,
        // A quenchant that is not in the list is told as such.
        bath_c: bath_c.or(listed_c).unwrap_or_default(),
        centre_hrc: asked.optional("centre_hrc")?,
        surface_hrc: asked.optional("surface_hrc")?,
        tester_hrc: asked.optional("tester_hrc")?.unwrap_or(USUAL_TESTER_HRC),
    };
    let fit = fit_coupon(&coupon)?;
    let notes: Vec<String> = fit.notes.iter().map(CouponNote::to_string).collect();
    Ok(fields([
        ("h_w_m2k", json!(fit.medium.h_w_m2k)),
        ("bath_c", json!(fit.medium.bath_c)),
        ("h_band_factor", json!(fit.h_band_factor)),
        ("same_steel_band_factor", json!(fit.same_steel_band_factor)),
        ("factor", json!(fit.factor)),
        ("taken", json!(fit.taken)),
        ("figures", json!(fit.figures)),
        ("readings", json!(fit.readings)),
        ("notes", json!(notes)),
    ]))
}
