//! What charts say in words and numbers, and what their pixels mean.

use super::invented::{
    FAHRENHEIT, probe_points, quench_data, soak_data, temper_data, transfer_data,
};
use recalesce::chart::{
    BathChange, Labels, Palette, QuenchData, Scene, heat_transfer, hit::nearest, probe_test,
    quench_chart, soak_map, svg, temper_chart,
};

/// Where the piece goes into a later bath is marked on the curve and named.
#[test]
fn a_change_of_bath_is_marked() {
    let mut quench = quench_data(1.2);
    let drawn = |quench: &QuenchData| {
        let scene = quench_chart(quench, &Labels::METRIC, [660.0, 400.0]);
        svg::document(&scene, &Palette::LIGHT).unwrap()
    };
    let before = drawn(&quench);
    quench.changes = vec![BathChange {
        time_s: 6.0,
        temperature_c: 300.0,
        name: "into still air".into(),
    }];
    let after = drawn(&quench);
    let rings = |text: &str| text.matches("<circle").count();
    assert!(rings(&after) > rings(&before));
    assert!(!before.contains("still air") && after.contains("still air"));
}

/// The margin's number stays on the narrowest and most crowded chart, wherever the nose is passed.
#[test]
fn the_margin_is_always_told() {
    for [width, height] in [[300.0, 330.0], [362.0, 420.0], [660.0, 400.0]] {
        for (i, tau_s) in [0.02, 0.1, 0.4, 1.2, 3.0, 9.0, 30.0, 200.0]
            .into_iter()
            .enumerate()
        {
            for nose_s in [0.12, 0.8, 3.35, 40.0, 900.0] {
                let mut data = quench_data(tau_s);
                if let Some(margin) = &mut data.margin {
                    margin.nose_s = nose_s;
                }
                let scene = quench_chart(&data, &Labels::METRIC, [width, height]);
                let text = svg::document(&scene, &Palette::LIGHT).unwrap();
                assert!(
                    text.contains("margin ") || text.contains("misses by"),
                    "{width} px, cooling {i}, nose at {nose_s} s"
                );
            }
        }
    }
}

/// A handle dragged to a pixel means what is read there, and the pointer finds the main curve.
#[test]
fn pixels_lead_back_to_data() {
    let scene = quench_chart(&quench_data(3.6), &Labels::METRIC, [370.0, 330.0]);
    let handle = scene.handles[0];
    let [time_s, temperature_c] = scene.plane.to_data(handle.at_px);
    assert!((temperature_c - 0.5 * (590.0 + 227.0)).abs() < 1e-6);
    let there = scene.plane.to_px([time_s, temperature_c]);
    assert!((there[0] - handle.at_px[0]).abs() < 1e-9);
    let curves = scene.curves_px();
    let hit = nearest(curves.iter().map(Vec::as_slice), handle.at_px, 8.0).expect("a curve");
    assert!(hit.distance_px < 1.0);
}

/// What the charts say in words.
#[test]
fn words_and_numbers() {
    let text = |scene: &Scene| svg::document(scene, &Palette::LIGHT).expect("drawn");
    let soak = text(&soak_map(
        &soak_data("52100", 830.0),
        &Labels::METRIC,
        [306.0, 330.0],
    ));
    for words in [
        "0.68 dissolved",
        "of 0.78 possible",
        "austenite",
        "+\u{a0}cementite",
        "cm<",
    ] {
        assert!(soak.contains(words), "{words}");
    }
    let misses = text(&quench_chart(
        &quench_data(8.0),
        &Labels::METRIC,
        [370.0, 330.0],
    ));
    for words in [
        "misses by",
        "Ms\u{a0}227",
        "cold bath −75",
        "1000\u{a0}s",
        ">centre<",
    ] {
        assert!(misses.contains(words), "{words}");
    }
    let fahrenheit = text(&quench_chart(
        &quench_data(3.6),
        &FAHRENHEIT,
        [362.0, 420.0],
    ));
    for words in ["Ms\u{a0}441", "1526\u{a0}°F", "cold bath −103", "margin"] {
        assert!(fahrenheit.contains(words), "{words}");
    }
    let temper = text(&temper_chart(
        &temper_data(),
        &Labels::METRIC,
        [282.0, 330.0],
    ));
    for words in [
        "embrittling",
        "260–370\u{a0}°C",
        "target 61–63",
        "straw",
        "400\u{a0}°C",
    ] {
        assert!(temper.contains(words), "{words}");
    }
    let probe = probe_test(&probe_points(), &Labels::METRIC, [330.0, 330.0]);
    assert_eq!(
        probe.summary,
        "The probe as measured and as computed over 40 s: 0.5 K apart at most."
    );
    let transfer = heat_transfer(&transfer_data(), &FAHRENHEIT, [362.0, 420.0]);
    let shown = text(&transfer);
    for words in ["not seen by this test", "well determined", "weakly"] {
        assert!(shown.contains(words), "{words}");
    }
    // The twelfth of the 23 steps, 14.3 K below the peak.
    assert_eq!(
        transfer.summary,
        "Heat transfer of the bath of 122\u{a0}°F: at most 2751 W/m²K, at a surface of 942\u{a0}°F."
    );
}
