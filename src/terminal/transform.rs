//! Questions about what austenite turns into. The composition is that of the austenite: all of
//! the steel counts as dissolved.

use super::asked::{Asked, fields};
use super::catalogue::{Field, Question, needed, optional};
use super::refusal::Refusal;
use crate::hardness::{AutoTempered, auto_tempered, end_quenched};
use crate::transform::{
    Austenite, ColdStep, ContinuousCooling, Fractions, Kinetics, ProductCurve, bainite_start_c,
    cold_treated, end_quench, martensite_start_c, retained_austenite,
};
use serde_json::{Map, Value, json};

/// Grain number taken when none is given: that of most soaks done right.
const USUAL_GRAIN_ASTM: f64 = 8.0;
/// Temperature from which the bar is quenched, °C: that of ASTM A255 for most of its steels.
const BAR_START_C: f64 = 845.0;
const GRAIN: Field = optional("grain_astm", "ASTM grain number of the austenite", "8");

pub(super) const QUESTIONS: &[Question] = &[
    Question {
        name: "isothermal",
        asks: "When do carbide, ferrite, pearlite and bainite form in austenite held at a temperature?",
        of_steel: true,
        fields: &[GRAIN],
        answers: &[
            (
                "products",
                "list of {product, nose_s, nose_c, start_limit_c, curve, half, finish}; curves are \
                 pairs of time in s and temperature in °C for 1 %, 50 % and 99 %; the curve of \
                 grain_boundary_carbide begins where films can be seen, 0.03 µm on each side",
            ),
            ("ms_c", "start of martensite, °C"),
            ("bs_c", "start of bainite, °C"),
        ],
        example: r#"{"question":"isothermal","composition":{"c":0.68,"mn":0.34,"si":0.25,"cr":1.1},"grain_astm":10}"#,
        answer: isothermal,
    },
    Question {
        name: "continuous_cooling",
        asks: "What forms, and how hard is it, when austenite cools at each of many rates?",
        of_steel: true,
        fields: &[GRAIN],
        answers: &[
            (
                "coolings",
                "list from fast to slow of {rate_k_per_s at 700 °C, passages, ms_c, fractions, hv, \
                 hrc}; a passage is {product, start, end}, both [time by the clock in s, temperature in \
                 °C]; ms_c is null where no austenite is left, hrc where its scale ends; martensite has tempered on the way down",
            ),
            (
                "clock_c",
                "where the clock starts: A3 or Acm, or A1 where neither ferrite nor carbide forms \
                 before pearlite, °C",
            ),
        ],
        example: r#"{"question":"continuous_cooling","grade":"4140","grain_astm":8}"#,
        answer: continuous_cooling,
    },
    Question {
        name: "critical_cooling",
        asks: "How slow may the cooling be for a wanted amount of martensite?",
        of_steel: true,
        fields: &[
            GRAIN,
            needed("martensite", "wanted fraction of martensite, 0.01 to 0.999"),
        ],
        answers: &[
            (
                "rate_k_per_s",
                "least rate at 700 °C of a cooling that slows down towards 20 °C, K/s",
            ),
            ("linear_rate_k_per_s", "least constant rate, K/s"),
            ("allowed_s", "time allowed from A1 down to until_c, s"),
            ("until_c", "temperature to which that time counts, °C"),
        ],
        example: r#"{"question":"critical_cooling","grade":"4140","grain_astm":8,"martensite":0.5}"#,
        answer: critical_cooling,
    },
    Question {
        name: "martensite",
        asks: "Where does martensite start, and how much austenite is retained?",
        of_steel: true,
        fields: &[
            GRAIN,
            needed("quench_end_c", "temperature that the quench reaches, °C"),
            optional(
                "cold_c",
                "temperature of a cold treatment after the quench, °C",
                "none",
            ),
            optional(
                "delay_min",
                "wait between quench and cold treatment, min",
                "0",
            ),
        ],
        answers: &[
            ("ms_c", "start of martensite, °C"),
            ("bs_c", "start of bainite, °C"),
            (
                "retained_austenite_volume_fraction",
                "austenite left after quench and cold treatment",
            ),
        ],
        example: r#"{"question":"martensite","composition":{"c":0.68,"mn":0.34,"si":0.25,"cr":1.1},"quench_end_c":20,"cold_c":-75}"#,
        answer: martensite,
    },
    Question {
        name: "end_quench",
        asks: "How hard is an end-quenched (Jominy) bar along its length?",
        of_steel: true,
        fields: &[GRAIN],
        answers: &[
            ("distance_mm", "list of distances from the quenched end, mm"),
            ("hrc", "hardness at each, HRC"),
            (
                "standard_hrc",
                "the same by the polynomials of ASTM A255, null outside its range",
            ),
            (
                "simulated_hrc",
                "the same by heat flow and transformation in the bar, null where they do not reach",
            ),
            ("ideal_diameter_mm", "ideal diameter DI, mm"),
            ("band_hrc", "error to expect of the hardness, HRC"),
        ],
        example: r#"{"question":"end_quench","grade":"4140","grain_astm":7}"#,
        answer: end_quench_bar,
    },
];

fn austenite(asked: &Asked<'_>) -> Result<Austenite, Refusal> {
    Ok(Austenite {
        composition: asked.steel()?,
        grain_astm: grain_astm(asked)?,
        undissolved_carbide_volume_fraction: 0.0,
    })
}

fn grain_astm(asked: &Asked<'_>) -> Result<f64, Refusal> {
    let given = asked.optional_number("grain_astm", (-2.0, 15.0), "")?;
    Ok(given.unwrap_or(USUAL_GRAIN_ASTM))
}

fn isothermal(asked: &Asked<'_>) -> Result<Map<String, Value>, Refusal> {
    let diagram = crate::transform::isothermal(&austenite(asked)?)?;
    let products: Vec<Value> = diagram.products.iter().map(product).collect();
    Ok(fields([
        ("products", json!(products)),
        ("ms_c", json!(diagram.ms_c)),
        ("bs_c", json!(diagram.bs_c)),
    ]))
}

fn product(curve: &ProductCurve) -> Value {
    json!({
        "product": curve.product.name(),
        "nose_s": curve.nose_s,
        "nose_c": curve.nose_c,
        "start_limit_c": curve.start_limit_c,
        "curve": curve.start,
        "half": curve.half,
        "finish": curve.finish,
    })
}

fn continuous_cooling(asked: &Asked<'_>) -> Result<Map<String, Value>, Refusal> {
    let austenite = austenite(asked)?;
    let diagram = Kinetics::new(&austenite)?.continuous()?;
    let cooling = |cooling: &ContinuousCooling| {
        let hardness = auto_tempered(
            &austenite.composition,
            &cooling.fractions,
            &cooling.formed,
            &AutoTempered::along(&cooling.history),
        );
        let hardness = hardness.ok();
        json!({
            "rate_k_per_s": cooling.rate_k_per_s,
            "passages": cooling.passages,
            "ms_c": cooling.ms_c,
            "fractions": cooling.fractions,
            "hv": hardness.map(|h| h.hv),
            "hrc": hardness.and_then(|h| h.hrc()),
        })
    };
    let coolings: Vec<Value> = diagram.coolings.iter().map(cooling).collect();
    Ok(fields([
        ("coolings", json!(coolings)),
        ("clock_c", json!(diagram.clock_c)),
    ]))
}

fn critical_cooling(asked: &Asked<'_>) -> Result<Map<String, Value>, Refusal> {
    let wanted = asked.value("martensite")?;
    let critical = Kinetics::new(&austenite(asked)?)?.critical_cooling(wanted)?;
    Ok(fields([
        ("rate_k_per_s", json!(critical.rate_k_per_s)),
        ("linear_rate_k_per_s", json!(critical.linear_rate_k_per_s)),
        ("allowed_s", json!(critical.allowed_s)),
        ("until_c", json!(critical.until_c)),
    ]))
}

fn martensite(asked: &Asked<'_>) -> Result<Map<String, Value>, Refusal> {
    const ROOM_C: f64 = 20.0;
    let austenite = austenite(asked)?;
    let end_c = asked.value("quench_end_c")?;
    let cold_c: Option<f64> = asked.optional("cold_c")?;
    let delay_min = asked.optional_number("delay_min", (0.0, 60_000.0), " min")?;
    let ms_c = martensite_start_c(&austenite)?;
    let mut retained = retained_austenite(&austenite, end_c)?;
    if let Some(cold_c) = cold_c {
        let quenched = Fractions {
            martensite: 1.0 - retained,
            austenite: retained,
            ..Fractions::default()
        };
        let step = ColdStep {
            coldest_before_c: end_c,
            cold_c,
            delay_s: 60.0 * delay_min.unwrap_or(0.0),
            wait_c: ROOM_C,
            snap: None,
        };
        retained = cold_treated(&quenched, &austenite, &step)?.austenite;
    }
    Ok(fields([
        ("ms_c", json!(ms_c)),
        ("bs_c", json!(bainite_start_c(&austenite)?)),
        ("retained_austenite_volume_fraction", json!(retained)),
    ]))
}

fn end_quench_bar(asked: &Asked<'_>) -> Result<Map<String, Value>, Refusal> {
    let austenite = austenite(asked)?;
    let bar = end_quench(&austenite.composition, austenite.grain_astm)?;
    let simulated = Kinetics::new(&austenite)
        .ok()
        .and_then(|kinetics| end_quenched(&kinetics, BAR_START_C).ok())
        .map(|places| -> Vec<f64> { places.iter().map(|p| p.hardness.hrc_carried()).collect() });
    Ok(fields([
        ("distance_mm", json!(bar.distance_mm)),
        ("hrc", json!(bar.hrc)),
        ("standard_hrc", json!(bar.standard_hrc)),
        ("simulated_hrc", json!(simulated)),
        ("ideal_diameter_mm", json!(bar.ideal_diameter_mm)),
        ("band_hrc", json!(bar.band_hrc)),
    ]))
}
