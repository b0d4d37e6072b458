//! What charts say in words and numbers, and what their pixels mean.

use super::invented::{
    FAHRENHEIT, probe_points, quench_data, soak_data, temper_data, transfer_data,
};
use recalesce::chart::{
    BathChange, Labels, Palette, QuenchData, Rect, Scene, clip::clip_segment, face, face::Weight,
    heat_transfer, hit::nearest, probe_test, quench_chart, soak_map, svg, temper_chart,
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

/// How far the margin's number stands from its arrows, px: sideways and down.
fn margin_off_px(scene: &Scene, arrival_s: f64, nose_s: f64) -> [f64; 2] {
    let text = svg::document(scene, &Palette::LIGHT).unwrap();
    let is_margin = |line: &&str| line.contains("margin ") || line.contains("misses by");
    let line = text.lines().rev().find(is_margin).expect("a number");
    let after = |name: &str| {
        line.split_once(name)
            .and_then(|(_, rest)| rest.split_once('"'))
    };
    let eighths = |name: &str| after(name).unwrap().0.parse::<f64>().unwrap() / 8.0;
    let words = line.split_once('>').unwrap().1.trim_end_matches("</text>");
    let left = eighths(" x=\"");
    let right = left + face::width_px(words, 14.0, Weight::Name);
    let plane = &scene.plane;
    let [first, last] =
        [arrival_s.min(nose_s), arrival_s.max(nose_s)].map(|s| plane.x_px(plane.x.hold(s)));
    let aside = (left - last).max(first - right).max(0.0);
    [aside, eighths(" y=\"") - (plane.rect.top + 18.0)]
}

/// On a phone as well the number stands at its arrows, however far apart they are.
#[test]
fn the_margin_stands_at_its_arrows() {
    for [width, height] in [[300.0, 330.0], [362.0, 360.0], [660.0, 400.0]] {
        for tau_s in [0.02, 0.4, 3.0, 30.0] {
            for nose_s in [0.12, 3.35, 40.0, 900.0, 9000.0] {
                let mut data = quench_data(tau_s);
                let margin = data.margin.as_mut().unwrap();
                margin.nose_s = nose_s;
                let arrival_s = margin.arrival_s;
                let scene = quench_chart(&data, &Labels::METRIC, [width, height]);
                let [aside, down] = margin_off_px(&scene, arrival_s, nose_s);
                assert!(
                    aside <= 22.0 && (-10.0..=1.0).contains(&down),
                    "{width} px, {tau_s} s, nose at {nose_s} s: {aside} aside, {down} down"
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

/// The lines of text of a document that hold one of some words: where they stand, px.
fn found(document: &str, words: &[&str]) -> Vec<(String, Rect)> {
    let number = |line: &str, key: &str| -> f64 {
        let (_, rest) = line
            .split_once(&format!(" {key}=\""))
            .expect("an attribute");
        rest.split('"')
            .next()
            .expect("a value")
            .parse::<f64>()
            .expect("a number")
            / 8.0
    };
    let lines = document.lines().filter(|line| line.starts_with("<text"));
    lines
        .filter_map(|line| {
            let text = line.split_once('>')?.1.split('<').next()?;
            if !words.iter().any(|word| text.contains(word)) {
                return None;
            }
            let weight = match number(line, "font-weight") * 8.0 {
                w if w < 500.0 => Weight::Text,
                w if w < 625.0 => Weight::Strong,
                _ => Weight::Name,
            };
            let (x, y, size) = (
                number(line, "x"),
                number(line, "y"),
                number(line, "font-size"),
            );
            let width = face::width_px(text, size, weight);
            let area = Rect::new(x, y - 0.78 * size, x + width, y + 0.22 * size);
            Some((text.to_owned(), area))
        })
        .collect()
}

/// Names keep clear of every curve and of the handle with its chevrons, or are left out.
#[test]
fn names_of_a_quench_are_not_struck_through() {
    let mut shown = 0;
    for width in [290.0, 330.0, 362.0, 430.0, 560.0] {
        for i in 0..30 {
            let data = quench_data(0.5 + 0.3 * f64::from(i));
            let scene = quench_chart(&data, &Labels::METRIC, [width, 330.0]);
            let document = svg::document(&scene, &Palette::LIGHT).unwrap();
            let names = ["slow oil", "edge", "surface", "pearlite", "bainite"];
            for (name, area) in found(&document, &names) {
                shown += 1;
                let inner = area.grown(-0.2);
                for curve in scene.curves_px() {
                    let struck = curve
                        .windows(2)
                        .filter_map(|pair| clip_segment(pair[0], pair[1], &scene.plane.rect))
                        .filter_map(|(a, b)| clip_segment(a, b, &inner))
                        .map(|(a, b)| (b[0] - a[0]).hypot(b[1] - a[1]));
                    assert!(struck.sum::<f64>() < 1.5, "{name}, {width} px, cooling {i}");
                }
                let [x, y] = scene.handles[0].at_px;
                let handle = Rect::new(x - 20.0, y - 6.0, x + 20.0, y + 6.0);
                assert!(!handle.meets(&inner), "{name}, {width} px, cooling {i}");
            }
        }
    }
    assert!(shown > 500, "{shown} of 750 names");
}

/// No words of the map touch the line of the steel's carbon or the handle, and its tag leaves what
/// is dissolved in sight.
#[test]
fn words_of_a_map_keep_clear() {
    for grade in ["52100", "1095", "O1", "D2", "4140", "1045"] {
        for width in [290.0, 330.0, 430.0, 560.0] {
            for i in 0..14 {
                let mut data = soak_data(grade, 780.0 + 30.0 * f64::from(i));
                data.dissolved_wt *= 1.0 + 0.03 * f64::from(i);
                data.possible_wt = data.dissolved_wt.max(data.possible_wt);
                let scene = soak_map(&data, &Labels::METRIC, [width, 330.0]);
                let document = svg::document(&scene, &Palette::LIGHT).unwrap();
                let case = format!("{grade}, {width} px, {} °C", data.soak_c);
                let column = scene.plane.x_px(data.bulk_carbon_wt);
                let words = ["+", "ferrite", "austenite", "dissolved", "possible"];
                let handle = scene.handles[0];
                let [x, y] = handle.at_px;
                let tag = handle.tag.expect("a tag");
                assert!(document.contains("dissolved"), "not told: {case}");
                for (text, area) in found(&document, &words) {
                    let clear = column < area.left - 2.0 || column > area.right + 2.0;
                    assert!(clear, "{text}: {case}");
                    let chevrons = Rect::new(x - 6.0, y - 20.0, x + 6.0, y + 20.0);
                    let is_free = [chevrons, tag].iter().all(|other| !other.meets(&area));
                    assert!(is_free, "{text}: {case}");
                }
                let point = scene.plane.to_px([data.dissolved_wt, data.soak_c]);
                assert!(!tag.grown(4.0).holds(point), "{case}");
            }
        }
    }
}
