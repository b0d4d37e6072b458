//! Questions about cooling: a piece in a quenchant, and the standard probe.

use super::asked::{Asked, fields};
use super::catalogue::{Question, needed, optional};
use super::refusal::Refusal;
use crate::heat::{self, Medium, MediumChoice, Place, Quenching, cool};
use crate::route::{MOST_LATER_BATHS, NextBath, later_baths};
use serde_json::{Map, Value, json};

/// Coldest end of a quench that the heat model takes, °C.
const COLDEST_END_C: f64 = -200.0;
const ROOM_C: f64 = 20.0;

pub(super) const QUESTIONS: &[Question] = &[
    Question {
        name: "cooling",
        asks: "When does a piece in a quenchant pass given temperatures?",
        of_steel: false,
        fields: &[
            needed("section", "shape and size of the piece, see above"),
            needed("medium", "the quenchant, see above"),
            optional(
                "agitation",
                "factor on the heat transfer of the still bath",
                "1",
            ),
            optional(
                "air_delay_s",
                "time in air between furnace and bath, s",
                "0",
            ),
            optional(
                "then",
                r#"later baths, as [{"leave":{"after_s":3},"medium":"oil_fast","agitation":1}], or {"at_c":200}"#,
                "none",
            ),
            needed(
                "start_c",
                "temperature of the piece as it leaves the furnace, °C",
            ),
            needed("at_c", "list of temperatures, °C"),
        ],
        answers: &[
            (
                "centre_time_s",
                "times from the furnace at which the centre passes each, s; null where it does not. \
                 Of a blade: the middle of the spine",
            ),
            (
                "surface_time_s",
                "the same for the surface; of a blade, the spine's",
            ),
            ("edge_time_s", "the same for the cutting edge of a blade"),
            (
                "max_rate_k_per_s",
                "greatest cooling rate of the centre, K/s",
            ),
        ],
        example: r#"{"question":"cooling","section":{"shape":"plate","thickness_mm":3},"medium":"oil_fast","start_c":845,"at_c":[700,500,300,100]}"#,
        answer: cooling,
    },
    Question {
        name: "probe",
        asks: "How fast is a quenchant, by the standard 12.5 mm nickel-alloy probe from 850 °C?",
        of_steel: false,
        fields: &[needed("medium", "the quenchant, see above")],
        answers: &[
            (
                "max_rate_k_per_s",
                "greatest cooling rate of the centre, K/s",
            ),
            ("max_rate_at_c", "temperature at which it is greatest, °C"),
            ("rate_at_300c_k_per_s", "rate at 300 °C, K/s"),
            (
                "time_to_600c_s",
                "time to 600 °C, s; likewise 400 and 200 °C",
            ),
        ],
        example: r#"{"question":"probe","medium":"water20"}"#,
        answer: probe,
    },
];

fn medium(asked: &Asked<'_>) -> Result<Medium, Refusal> {
    let choice: MediumChoice = asked.value("medium")?;
    Ok(choice.resolve()?)
}

fn cooling(asked: &Asked<'_>) -> Result<Map<String, Value>, Refusal> {
    const MOST_TEMPERATURES: usize = 1000;
    let at_c: Vec<f64> = asked.value("at_c")?;
    if at_c.len() > MOST_TEMPERATURES {
        return Err(Refusal::Field {
            field: "at_c".to_owned(),
            fault: format!(
                "{} temperatures; {MOST_TEMPERATURES} are allowed",
                at_c.len()
            ),
        });
    }
    let medium = medium(asked)?;
    let later: Vec<NextBath> = asked.optional("then")?.unwrap_or_default();
    if later.len() > MOST_LATER_BATHS {
        return Err(Refusal::Field {
            field: "then".to_owned(),
            fault: format!(
                "{} later baths; {MOST_LATER_BATHS} are allowed",
                later.len()
            ),
        });
    }
    let then = later_baths(&later)?;
    let coldest_c = at_c.iter().copied().fold(f64::INFINITY, f64::min);
    let cooled = cool(&Quenching {
        section: asked.value("section")?,
        medium: &medium,
        agitation: asked.optional("agitation")?.unwrap_or(1.0),
        start_c: asked.value("start_c")?,
        air_delay_s: asked.optional("air_delay_s")?.unwrap_or(0.0),
        // Down to room temperature at least, so that the greatest rate is met on the way.
        end_c: coldest_c.clamp(COLDEST_END_C, ROOM_C),
        then: &then,
        martensite_start_c: None,
    })?;
    let times_s = |places: [Place; 2]| {
        let curve = places.into_iter().find_map(|place| cooled.at(place))?;
        let times: Vec<Option<f64>> = at_c.iter().map(|&t| curve.time_to_c(t)).collect();
        Some((json!(times), curve.max_rate()))
    };
    let mut reply = Map::new();
    if let Some((times, max_rate)) = times_s([Place::Centre, Place::Spine]) {
        reply.insert("centre_time_s".to_owned(), times);
        if let Some((rate_k_per_s, _)) = max_rate {
            reply.insert("max_rate_k_per_s".to_owned(), json!(rate_k_per_s));
        }
    }
    if let Some((times, _)) = times_s([Place::Surface, Place::SpineSurface]) {
        reply.insert("surface_time_s".to_owned(), times);
    }
    if let Some((times, _)) = times_s([Place::Edge; 2]) {
        reply.insert("edge_time_s".to_owned(), times);
    }
    Ok(reply)
}

fn probe(asked: &Asked<'_>) -> Result<Map<String, Value>, Refusal> {
    let figures = heat::probe(&medium(asked)?)?;
    Ok(fields([
        ("max_rate_k_per_s", json!(figures.max_rate_k_per_s)),
        ("max_rate_at_c", json!(figures.max_rate_at_c)),
        ("rate_at_300c_k_per_s", json!(figures.rate_at_300c_k_per_s)),
        ("time_to_600c_s", json!(figures.time_to_600c_s)),
        ("time_to_400c_s", json!(figures.time_to_400c_s)),
        ("time_to_200c_s", json!(figures.time_to_200c_s)),
    ]))
}
