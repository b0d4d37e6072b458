//! The charts of hardenability, drawn from what the models give and without a page.

#![cfg(not(target_arch = "wasm32"))]

use recalesce::chart::{
    Constituent, ContinuousData, EndQuenchData, FanCurve, Labels, Palette, ProductField,
    continuous_chart, end_quench_chart, svg,
};
use recalesce::steel::find;
use recalesce::transform::{Austenite, Continuous, Forming, Kinetics};

const FAHRENHEIT: Labels = Labels {
    temperature: |c| 1.8 * c + 32.0,
    temperature_unit: "°F",
    length: |mm| mm / 25.4,
    length_unit: "in",
    length_decimals: 3,
};

fn diagram(grade: &str) -> Continuous {
    let kinetics = Kinetics::new(&Austenite {
        composition: find(grade).expect("a grade").nominal,
        grain_astm: 8.0,
        undissolved_carbide_volume_fraction: 0.0,
    });
    kinetics.expect("kinetics").continuous().expect("a diagram")
}

fn data(found: &Continuous) -> ContinuousData {
    let field = |product, constituent| {
        let passages = || {
            let all = found.coolings.iter().flat_map(|cooling| &cooling.passages);
            all.filter(move |passage| passage.product == product)
        };
        ProductField {
            product: constituent,
            start: passages().map(|passage| passage.start).collect(),
            end: passages().map(|passage| passage.end).collect(),
        }
    };
    ContinuousData {
        fan: found
            .coolings
            .iter()
            .step_by(3)
            .map(|cooling| FanCurve {
                rate_k_per_s: cooling.rate_k_per_s,
                points: cooling.curve.clone(),
                hardness: Some("30".to_owned()),
            })
            .collect(),
        fields: vec![
            field(Forming::GrainBoundaryCarbide, Constituent::Carbide),
            field(Forming::Ferrite, Constituent::Ferrite),
            field(Forming::Pearlite, Constituent::Pearlite),
            field(Forming::Bainite, Constituent::Bainite),
        ],
        ms: Vec::new(),
        planned: Vec::new(),
        clock_c: found.clock_c,
    }
}

/// Ferrite begins above A1: by the clock of the diagram it has a place on the axis all the same.
#[test]
fn every_start_of_a_steel_with_ferrite_has_a_place_on_the_axis() {
    let found = diagram("1045");
    let shown = data(&found);
    assert!(shown.fields[1].start.len() > 5);
    for field in &shown.fields {
        assert!(
            field
                .start
                .iter()
                .chain(&field.end)
                .all(|point| point[0] > 0.0)
        );
    }
    for (labels, size, rate_unit, fastest) in [
        (
            Labels::METRIC,
            [362.0, 330.0],
            ">K/s",
            "700\u{a0}°C, with the hardness at the end, HRC: 1000 K/s: 30",
        ),
        (
            FAHRENHEIT,
            [320.0, 420.0],
            ">°F/s",
            "1292\u{a0}°F, with the hardness at the end, HRC: 1800 °F/s: 30",
        ),
    ] {
        let scene = continuous_chart(&shown, &labels, size);
        let document = svg::document(&scene, &Palette::PRINT).expect("a drawing");
        for words in ["ferrite", "pearlite", "HRC", rate_unit] {
            assert!(document.contains(words), "{words}");
        }
        assert!(scene.summary.contains(fastest), "{}", scene.summary);
    }
}

#[test]
fn the_band_of_the_bar_follows_its_points() {
    let told: Vec<[f64; 2]> = (1..=32)
        .map(|j| [1.5875 * f64::from(j), 55.0 - f64::from(j)])
        .collect();
    let shown = EndQuenchData {
        told_by: "your test",
        band_hrc: vec![1.0; told.len()],
        simulated: told.iter().map(|[x, y]| [*x, y - 4.0]).collect(),
        standard: Vec::new(),
        measured: vec![[1.5, 54.0], [20.0, 44.0]],
        piece_mm: Some(9.0),
        told,
    };
    let scene = end_quench_chart(&shown, &FAHRENHEIT, [362.0, 120.0]);
    let document = svg::document(&scene, &Palette::LIGHT).expect("a drawing");
    for words in [
        "your test",
        "simulated bar",
        "cools like the piece",
        "quenched end, in",
    ] {
        assert!(document.contains(words), "{words}");
    }
    assert!(
        scene
            .summary
            .starts_with("Hardness along the end-quenched bar: 54\u{a0}HRC at")
    );
}
