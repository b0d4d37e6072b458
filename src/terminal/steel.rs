//! Questions about the steel in the furnace: critical temperatures, equilibrium, soak.

use super::asked::{Asked, fields};
use super::catalogue::{Question, needed, optional};
use super::refusal::Refusal;
use crate::phases::UpperLimit;
use crate::soak::{self, LONGEST_S};
use serde_json::{Map, Value, json};

pub(super) const QUESTIONS: &[Question] = &[
    Question {
        name: "critical_temperatures",
        asks: "At which temperatures does austenite begin to form, and is all else dissolved?",
        of_steel: true,
        fields: &[],
        answers: &[
            ("a1_c", "austenite begins to form, °C"),
            (
                "a3_c",
                "the last ferrite is gone, °C; below the eutectoid carbon",
            ),
            (
                "acm_c",
                "the last carbide is dissolved, °C; above the eutectoid carbon",
            ),
            ("eutectoid_carbon_wt", "carbon at which both meet, wt %"),
        ],
        example: r#"{"question":"critical_temperatures","grade":"52100"}"#,
        answer: critical_temperatures,
    },
    Question {
        name: "equilibrium",
        asks: "Which phases are there after an endless hold, and what do they hold?",
        of_steel: true,
        fields: &[needed("temperature_c", "°C")],
        answers: &[(
            "phases",
            "list of {name, mass_fraction, volume_fraction, mole_fraction, composition in wt %}; \
             names austenite, ferrite, cementite, m7c3, m23c6, m6c, mc",
        )],
        example: r#"{"question":"equilibrium","composition":{"c":1.0,"mn":0.35,"si":0.25,"cr":1.45},"temperature_c":845}"#,
        answer: equilibrium,
    },
    Question {
        name: "soak",
        asks: "How much is dissolved after a soak, and how far has the grain grown?",
        of_steel: true,
        fields: &[
            optional(
                "start",
                "structure before: spheroidised, coarse_spheroidised, subcritical_annealed, \
                 lamellar_pearlite, medium_pearlite, fine_pearlite, quenched_and_refined or \
                 as_forged",
                "spheroidised",
            ),
            needed("temperature_c", "°C"),
            needed("time_min", "time at temperature, min"),
        ],
        answers: &[
            ("dissolved", "composition of the austenite, wt %"),
            ("carbide_volume_fraction", "carbide left undissolved"),
            ("ferrite_volume_fraction", "ferrite left"),
            ("grain_astm", "ASTM grain number of the austenite"),
            ("grain_um", "mean intercept of the grain, µm"),
        ],
        example: r#"{"question":"soak","grade":"52100","start":"spheroidised","temperature_c":845,"time_min":12}"#,
        answer: soak,
    },
];

fn critical_temperatures(asked: &Asked<'_>) -> Result<Map<String, Value>, Refusal> {
    let critical = crate::phases::critical_temperatures(&asked.steel()?)?;
    let (upper, temperature_c) = match critical.upper {
        UpperLimit::A3 { temperature_c } => ("a3_c", temperature_c),
        UpperLimit::Acm { temperature_c } => ("acm_c", temperature_c),
    };
    Ok(fields([
        ("a1_c", json!(critical.a1_c)),
        (upper, json!(temperature_c)),
        ("eutectoid_carbon_wt", json!(critical.eutectoid_carbon_wt)),
    ]))
}

fn equilibrium(asked: &Asked<'_>) -> Result<Map<String, Value>, Refusal> {
    let temperature_c = asked.value("temperature_c")?;
    let equilibrium = crate::phases::equilibrium(&asked.steel()?, temperature_c)?;
    Ok(fields([("phases", json!(equilibrium.phases))]))
}

fn soak(asked: &Asked<'_>) -> Result<Map<String, Value>, Refusal> {
    let time_min = asked.number("time_min", (0.0, LONGEST_S / 60.0), " min")?;
    let time_s = 60.0 * time_min;
    let soaked = soak::soak(
        &asked.steel()?,
        asked.optional("start")?.unwrap_or_default(),
        asked.value("temperature_c")?,
        time_s,
        time_s,
    )?;
    Ok(fields([
        ("dissolved", json!(soaked.dissolved)),
        (
            "carbide_volume_fraction",
            json!(soaked.end.carbide_volume_fraction),
        ),
        (
            "ferrite_volume_fraction",
            json!(soaked.end.ferrite_volume_fraction),
        ),
        ("grain_astm", json!(soaked.end.grain_astm)),
        ("grain_um", json!(soaked.grain_um)),
    ]))
}
