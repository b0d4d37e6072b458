//! Time of one quench, of the table of all media, and of the computed probe test.

#[cfg(not(target_arch = "wasm32"))]
mod native {
    use criterion::{Criterion, criterion_group};
    use recalesce::heat::{Medium, Quenching, Section, cool, media, medium, probe};
    use std::hint::black_box;

    fn quench(section: Section, medium: &Medium) -> Quenching<'_> {
        Quenching {
            section,
            medium,
            agitation: 1.0,
            start_c: 800.0,
            air_delay_s: 0.0,
            end_c: 20.0,
            martensite_start_c: None,
        }
    }

    fn quenches(criterion: &mut Criterion) {
        let plate = |thickness_mm| Section::Plate { thickness_mm };
        let blade = Section::Blade {
            edge_mm: 0.5,
            spine_mm: 4.0,
            height_mm: 30.0,
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

    criterion_group!(group, quenches);

    pub(super) fn run() {
        group();
        Criterion::default().configure_from_args().final_summary();
    }
}

fn main() {
    #[cfg(not(target_arch = "wasm32"))]
    native::run();
}
