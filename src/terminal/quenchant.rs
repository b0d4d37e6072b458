//! The question of a user's own quenchant: from its figures or a probe curve to heat transfer.

use super::asked::{Asked, fields};
use super::catalogue::{Question, needed, optional};
use super::refusal::Refusal;
use crate::heat::{CurveFit, CurveOptions, ProbeCurve, QuenchantFigures, fit_figures};
use crate::units::TemperatureScale;
use serde_json::{Map, Value, json};

pub(super) const QUESTIONS: &[Question] = &[Question {
    name: "fit_quenchant",
    asks: "What is the heat transfer of your own quenchant, by its figures or a measured probe curve?",
    of_steel: false,
    fields: &[
        needed("bath_c", "temperature of the still bath in the test, °C"),
        optional(
            "figures",
            "those that are known: {nickel_ball_s, max_rate_k_per_s, max_rate_at_c, \
             rate_at_300c_k_per_s, time_to_600c_s, time_to_400c_s, time_to_200c_s}, of the nickel \
             ball and of the 12.5 mm probe from 850 °C",
            "the curve is asked",
        ),
        optional(
            "curve_text",
            "curve of the centre of the probe: lines of time and temperature, parted by comma, \
             semicolon, tab or space, with or without a heading",
            "the figures are asked",
        ),
        optional(
            "columns",
            "of the curve: numbers of the columns of time and temperature, from 1",
            "as the heading tells",
        ),
        optional(
            "scale",
            "of the curve: celsius or fahrenheit",
            "by the heading, or by the start near 850 °C",
        ),
        optional(
            "entry_s",
            "time on the clock of the curve at which the probe enters the bath, s",
            "found from the curve",
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
            "figures",
            "list of {figure, given, simulated, agrees}: as given or read off the curve, and as \
             computed with the heat transfer found",
        ),
        (
            "template",
            "from figures: the quenchant of the list that the curve takes after",
        ),
        (
            "rms_k",
            "from a curve: computed less measured temperature, root mean square, K",
        ),
        (
            "expected_rms_k",
            "from a curve: what that should come to by the scatter of the readings, K",
        ),
        (
            "entry_shift_s",
            "from a curve: how much later than told or found the probe entered the bath, s",
        ),
        (
            "knots",
            "from a curve: list of {surface_c, h_w_m2k, ln_h_sd, from_neighbours}, how well each \
             point is known",
        ),
        (
            "notes",
            "from a curve: list of what was guessed, mended or left out",
        ),
    ],
    example: r#"{"question":"fit_quenchant","bath_c":50,"figures":{"nickel_ball_s":12.5,"max_rate_k_per_s":72}}"#,
    answer: fit_quenchant,
}];

fn fit_quenchant(asked: &Asked<'_>) -> Result<Map<String, Value>, Refusal> {
    let bath_c = asked.value("bath_c")?;
    let figures: Option<QuenchantFigures> = asked.optional("figures")?;
    let curve_text: Option<String> = asked.optional("curve_text")?;
    match (figures, curve_text) {
        (Some(figures), None) => from_figures(&figures, bath_c),
        (None, Some(text)) => {
            let options = CurveOptions {
                columns: asked.optional("columns")?,
                scale: asked.optional::<TemperatureScale>("scale")?,
                entry_s: asked.optional("entry_s")?,
            };
            from_curve(&text, &options, bath_c)
        }
        _ => Err(Refusal::Field {
            field: "figures".to_owned(),
            fault: "give either these or `curve_text`".to_owned(),
        }),
    }
}

fn from_figures(figures: &QuenchantFigures, bath_c: f64) -> Result<Map<String, Value>, Refusal> {
    let fit = fit_figures(figures, bath_c)?;
    Ok(fields([
        ("h_w_m2k", json!(fit.medium.h_w_m2k)),
        ("bath_c", json!(bath_c)),
        ("h_band_factor", json!(fit.h_band_factor)),
        ("figures", json!(fit.compared)),
        ("template", json!(fit.template)),
    ]))
}

fn from_curve(
    text: &str,
    options: &CurveOptions,
    bath_c: f64,
) -> Result<Map<String, Value>, Refusal> {
    let curve = ProbeCurve::read(text, options)?;
    let mut fit = CurveFit::new(&curve, bath_c)?;
    while !fit.step().is_done {}
    let fit = fit.fitted()?;
    Ok(fields([
        ("h_w_m2k", json!(fit.medium.h_w_m2k)),
        ("bath_c", json!(bath_c)),
        ("h_band_factor", json!(fit.h_band_factor)),
        ("figures", json!(fit.compared)),
        ("rms_k", json!(fit.rms_k)),
        ("expected_rms_k", json!(fit.expected_rms_k)),
        ("entry_shift_s", json!(fit.entry_shift_s)),
        ("knots", json!(fit.knots)),
        ("notes", json!(curve.notes)),
    ]))
}
