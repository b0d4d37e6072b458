//! What is known of a quenchant: figures of its class beside those of its curve, severity, band, where
//! the curve comes from, limits.

use super::save_table::SaveTable;
use crate::state::bench;
use leptos::prelude::*;
use recalesce::heat::{
    Confidence, Family, Figure, Medium, MediumChoice, MediumNote, QuenchantFigures,
    equivalent_severity_per_in, medium_note,
};
use recalesce::units::{TemperatureScale, format_fixed, format_temperature};
use recalesce_texts::page as texts;

/// A figure of the standard tests as the range of a class has it.
fn range_words(figure: Figure, [least, most]: [f64; 2], scale: TemperatureScale) -> String {
    let whole = |least, most, unit| {
        texts::general::range(
            &format_fixed(least, 0),
            &format!("{}\u{a0}{unit}", format_fixed(most, 0)),
        )
    };
    match figure {
        Figure::MaxRateAt => texts::general::range(
            &format_temperature(least, scale),
            &format_temperature(most, scale),
        ),
        Figure::MaxRate | Figure::RateAt300c => {
            let [least, most] = [least, most].map(|rate| scale.of_kelvin_difference(rate));
            whole(least, most, scale.rate_unit())
        }
        _ => whole(least, most, figure.unit()),
    }
}

/// Where the curve comes from.
const fn provenance(confidence: Confidence) -> &'static str {
    match confidence {
        Confidence::Medium => texts::media::FITTED_TO_AGREEING,
        Confidence::Low => texts::media::FITTED_TO_DOUBTFUL,
        Confidence::Estimate => texts::media::AN_ESTIMATE,
        Confidence::Given => texts::media::CURVE_IS_YOURS,
    }
}

/// What handbooks have of it: of water, with its bath as listed.
fn note_of(medium: &Medium) -> Option<MediumNote> {
    let listed = recalesce::heat::medium(&medium.name)?;
    let is_listed = medium.family != Family::Water || listed.bath_c == medium.bath_c;
    medium_note(&medium.name).filter(|_| is_listed)
}

/// Figures of the class beside those of the curve.
fn figures(medium: &Medium, scale: TemperatureScale) -> AnyView {
    let class = &medium.class;
    let of_class = |figure: Figure| match figure {
        Figure::NickelBall => class.nickel_ball_s,
        Figure::MaxRate => class.max_rate_k_per_s,
        Figure::MaxRateAt => class.max_rate_at_c,
        Figure::RateAt300c => class.rate_at_300c_k_per_s,
        Figure::TimeTo600c | Figure::TimeTo400c | Figure::TimeTo200c => None,
    };
    // Of gas and air nobody measures them.
    let is_tested = !matches!(medium.family, Family::Gas | Family::Air);
    let of_curve = QuenchantFigures::of(medium)
        .ok()
        .filter(|_| is_tested)
        .unwrap_or_default();
    let none = || "–".to_owned();
    let mut rows: Vec<[String; 3]> = Figure::ALL
        .into_iter()
        .filter(|figure| of_class(*figure).is_some() || of_curve.get(*figure).is_some())
        .map(|figure| {
            [
                figure.words().to_owned(),
                of_class(figure).map_or_else(none, |range| range_words(figure, range, scale)),
                of_curve
                    .get(figure)
                    .map_or_else(none, |value| figure.format(value, scale)),
            ]
        })
        .collect();
    let severity = equivalent_severity_per_in(medium);
    let of_handbook = note_of(medium)
        .map(|note| note.grossmann_h)
        .filter(|words| !words.is_empty());
    rows.extend(of_handbook.map(|words| [texts::media::H_OF_HANDBOOKS.to_owned(), words, none()]));
    rows.extend(severity.map(|severity| {
        [
            texts::media::EFFECTIVE_H.to_owned(),
            none(),
            format_fixed(severity, 2),
        ]
    }));
    let rows = rows
        .into_iter()
        .map(|[what, class, curve]| {
            view! {
                <tr>
                    <th scope="row">{what}</th>
                    <td>{class}</td>
                    <td>{curve}</td>
                </tr>
            }
        })
        .collect_view();
    view! {
        <table>
            <thead>
                <tr>
                    <td></td>
                    <th scope="col">{texts::media::ITS_CLASS}</th>
                    <th scope="col">{texts::media::THIS_CURVE}</th>
                </tr>
            </thead>
            <tbody>{rows}</tbody>
        </table>
        <SaveTable file="quenchant" />
        <p>
            {texts::media::TWO_KINDS_OF_H}
        </p>
    }
    .into_any()
}

fn facts(medium: &Medium, scale: TemperatureScale) -> AnyView {
    let usual = medium.usual_bath_c.map(|[least, most]| {
        if least == most {
            texts::media::listed_for(&format_temperature(least, scale))
        } else {
            texts::media::usual_bath(
                &format_temperature(least, scale),
                &format_temperature(most, scale),
            )
        }
    });
    let limit = medium.bath_range().map(|range| {
        texts::media::bath_range(
            &format_temperature(range.least_c, scale),
            &format_temperature(range.most_c, scale),
            range.reason,
        )
    });
    let band = texts::media::true_within(&format_fixed(medium.h_band_factor, 2));
    let note = medium_note(&medium.name).map(|note| format!("{}.", note.words));
    let lines = [
        Some(provenance(medium.confidence).to_owned()),
        note,
        Some(band),
        usual,
        limit,
    ];
    let cautions = medium.cautions().iter().map(|hazard| hazard.words(scale));
    let lines = lines.into_iter().flatten().chain(cautions);
    view! {
        {figures(medium, scale)}
        <ul>{lines.map(|line| view! { <li>{line}</li> }).collect_view()}</ul>
    }
    .into_any()
}

/// What is known of a quenchant.
#[component]
pub(crate) fn MediumFacts(
    /// Which.
    choice: Memo<Option<MediumChoice>>,
) -> impl IntoView {
    let bench = bench();
    let shown = move || {
        let medium = choice.with(|choice| choice.as_ref()?.resolve().ok())?;
        Some(facts(&medium, bench.scale.get()))
    };
    view! { <div class="facts">{shown}</div> }.into_any()
}
