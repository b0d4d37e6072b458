//! Time of one quench, of the table of all media, of the computed probe test, and of a quenchant
//! found from its figures and from its probe curve.

#[cfg(not(target_arch = "wasm32"))]
mod native {
    use criterion::{Criterion, criterion_group};
    use recalesce::heat::{
        CurveFit, CurveOptions, Grind, Medium, ProbeCurve, QuenchantFigures, Quenching, Section,
        cool, fit_figures, media, medium, probe,
    };
    use std::hint::black_box;

    fn quench(section: Section, medium: &Medium) -> Quenching<'_> {
        Quenching {
            section,
            medium,
            agitation: 1.0,
            start_c: 800.0,
            air_delay_s: 0.0,
            end_c: 20.0,
            then: &[],
            martensite_start_c: None,
        }
    }

    fn quenches(criterion: &mut Criterion) {
        let plate = |thickness_mm| Section::Plate { thickness_mm };
        let blade = Section::Blade {
            edge_mm: 0.5,
            spine_mm: 4.0,
            height_mm: 30.0,
            grind: Grind::Straight,
        };
        for name in ["oil_fast", "water60", "air_still"] {
            let Some(medium) = medium(name) else { continue };
            criterion.bench_function(&format!("plate 3 mm, {name}"), |b| {
                b.iter(|| cool(black_box(&quench(plate(3.0), medium))));
            });
            criterion.bench_function(&format!("blade, {name}"), |b| {
                b.iter(|| cool(black_box(&quench(blade, medium))));
            });
        }
        criterion.bench_function("table of 20 media and 5 thicknesses", |b| {
            b.iter(|| {
                for medium in media() {
                    for thickness_mm in [1.5, 3.0, 6.0, 12.0, 25.0] {
                        let _ = black_box(cool(&quench(plate(thickness_mm), medium)));
                    }
                }
            });
        });
        if let Some(medium) = medium("oil_medium") {
            criterion.bench_function("probe, oil_medium", |b| b.iter(|| probe(black_box(medium))));
        }
    }

    /// The computed curve at 8 readings a second, with a scatter of half a kelvin.
    fn curve_text(medium: &Medium) -> Option<String> {
        let curve = probe(medium).ok()?.curve;
        let last_s = *curve.time_s.last()?;
        let mut text = "s,°C\n".to_owned();
        for i in 0..(8.0 * last_s) as u32 {
            let time_s = 0.125 * f64::from(i);
            let scatter = 1.7 * (f64::from(i) * 0.754_877_666).fract() - 0.85;
            let temperature_c = curve.temperature_at_s(time_s)? + scatter;
            text += &format!("{time_s},{temperature_c:.2}\n");
        }
        Some(text)
    }

    fn own_quenchants(criterion: &mut Criterion) {
        for name in ["oil_medium", "water20"] {
            let Some(medium) = medium(name) else { continue };
            if let Ok(figures) = QuenchantFigures::of(medium) {
                criterion.bench_function(&format!("own by figures, {name}"), |b| {
                    b.iter(|| fit_figures(black_box(&figures), medium.bath_c));
                });
            }
            let Some(text) = curve_text(medium) else {
                continue;
            };
            criterion.bench_function(&format!("own by probe curve, {name}"), |b| {
                b.iter(|| {
                    let curve =
                        ProbeCurve::read(black_box(&text), &CurveOptions::default()).ok()?;
                    let mut fit = CurveFit::new(&curve, medium.bath_c).ok()?;
                    while !fit.step().is_done {}
                    fit.fitted().ok()
                });
            });
        }
    }

    criterion_group!(group, quenches, own_quenchants);

    pub(super) fn run() {
        group();
        Criterion::default().configure_from_args().final_summary();
    }
}

fn main() {
    #[cfg(not(target_arch = "wasm32"))]
    native::run();
}
