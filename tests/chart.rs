//! Every chart drawn without a page, in three palettes and two sizes. The documents and a page that
//! shows them all go to `target/charts/`. The numbers are invented but plausible.

use std::fmt::Write as _;

use recalesce::chart::{
    BathChange, Constituent, CoolingTrace, HeatTransferData, HeatTransferPoint, HistoryPoint, Ink,
    Labels, LadderRow, MapField, Margin, Outline, Palette, ProbePoint, ProductCurves, QuenchData,
    Role, RouteData, RouteStep, Scene, SectionData, SoakHistoryData, SoakMapData, TemperData,
    TemperPoint, Verdict, hardness_ladder, heat_transfer, hit::nearest, phase_bar, probe_test,
    quench_chart, route_strip, section_view, soak_history, soak_map, svg, swatch, temper_chart,
};
use recalesce::phases::{Field, PhaseMap, PhaseName, phase_map};

const FAHRENHEIT: Labels = Labels {
    temperature: |c| 1.8 * c + 32.0,
    temperature_unit: "°F",
    length: |mm| mm / 25.4,
    length_unit: "in",
    length_decimals: 3,
};

fn curve(n: usize, f: impl Fn(f64) -> [f64; 2]) -> Vec<[f64; 2]> {
    (0..=n).map(|i| f(i as f64 / n as f64)).collect()
}

/// The map of a grade, with an invented soak on it.
fn soak_data(grade: &str, soak_c: f64) -> SoakMapData {
    let steel = recalesce::steel::find(grade).expect("a grade").nominal;
    let map = phase_map(&steel).expect("a map");
    let field = |field: &Field| MapField {
        has_austenite: field.phases.contains(&PhaseName::Austenite),
        has_ferrite: field.phases.contains(&PhaseName::Ferrite),
        carbides: field
            .phases
            .iter()
            .filter_map(|phase| match phase {
                PhaseName::Austenite | PhaseName::Ferrite => None,
                PhaseName::Cementite => Some("cementite"),
                PhaseName::M7C3 => Some("M_{7}C_{3}"),
                PhaseName::M23C6 => Some("M_{23}C_{6}"),
                PhaseName::M6C => Some("M_{6}C"),
                PhaseName::Mc => Some("MC"),
            })
            .map(str::to_owned)
            .collect(),
        outline: field.outline.clone(),
    };
    SoakMapData {
        fields: map.fields.iter().map(field).collect(),
        boundaries: map.boundaries.iter().map(|b| b.points.clone()).collect(),
        range_c: PhaseMap::RANGE_C,
        a3: map.a3,
        acm: map.acm,
        a1_lower: map.a1_lower,
        a1_upper: map.a1_upper,
        a1_c: map.a1_c,
        bulk_carbon_wt: steel.c,
        soak_c,
        wander_k: 8.0,
        dissolved_wt: 0.68 * steel.c,
        possible_wt: 0.78 * steel.c,
        path: vec![[0.62 * steel.c, soak_c], [0.68 * steel.c, soak_c]],
    }
}

fn c_curve(product: Constituent, nose: [f64; 2], span: [f64; 2], late: f64) -> ProductCurves {
    let branch = |factor: f64| {
        curve(120, |f| {
            let c = span[0] + f * (span[1] - span[0]);
            let up = (c - nose[1]) / (span[1] - nose[1]);
            let down = (nose[1] - c) / (nose[1] - span[0]);
            let x = if c > nose[1] {
                -2.4 * (1.0 - up + 1e-3).ln() * up
            } else {
                1.6 * down * down
            };
            [factor * nose[0] * x.exp(), c]
        })
    };
    ProductCurves {
        product,
        start: branch(1.0),
        finish: branch(late),
        nose,
    }
}

fn cooled(tau_s: f64, delay_s: f64) -> Vec<[f64; 2]> {
    curve(400, |f| {
        let t = 400.0 * f.powi(4);
        let x = ((t - delay_s).max(0.0) / tau_s).powf(1.4);
        [t, 60.0 + 770.0 / (1.0 + x)]
    })
}

fn quench_data(tau_s: f64) -> QuenchData {
    let main = cooled(tau_s, 0.3);
    let arrival = main
        .windows(2)
        .find(|w| w[1][1] < 590.0)
        .map_or(0.0, |w| w[1][0]);
    let trace = |role, name: &str, points| CoolingTrace {
        role,
        name: name.into(),
        points,
    };
    QuenchData {
        products: vec![
            c_curve(Constituent::Pearlite, [3.35, 590.0], [500.0, 741.0], 6.5),
            c_curve(Constituent::Bainite, [14.0, 415.0], [232.0, 520.0], 11.0),
        ],
        cooling: vec![
            trace(Role::Slower, "slow oil", cooled(2.2 * tau_s, 0.3)),
            trace(Role::Edge, "edge", cooled(0.18 * tau_s, 0.05)),
            trace(Role::Surface, "surface", cooled(0.8 * tau_s, 0.1)),
            trace(Role::Main, "centre", main),
        ],
        changes: Vec::new(),
        ms_c: Some(227.0),
        m50_c: Some(164.0),
        m90_c: Some(18.0),
        a1_c: 748.0,
        soak_c: 830.0,
        cold_c: Some(-75.0),
        margin: Some(Margin {
            nose_c: 590.0,
            nose_s: 3.35,
            arrival_s: arrival,
            verdict: Verdict::Narrow,
        }),
    }
}

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

/// Name, scene and whether it stands in the dim shop.
fn scenes() -> Vec<(String, Scene)> {
    let metric = &Labels::METRIC;
    let mut scenes = Vec::new();
    let mut add = |name: &str, scene: Scene| scenes.push((name.to_owned(), scene));
    add(
        "soak",
        soak_map(&soak_data("52100", 830.0), metric, [306.0, 330.0]),
    );
    for grade in ["1095", "O1", "A2", "S7", "D2", "440C"] {
        add(
            &format!("soak-{grade}"),
            soak_map(&soak_data(grade, 960.0), metric, [306.0, 330.0]),
        );
    }
    add(
        "quench",
        quench_chart(&quench_data(3.6), metric, [370.0, 330.0]),
    );
    add(
        "quench-misses",
        quench_chart(&quench_data(8.0), metric, [370.0, 330.0]),
    );
    add(
        "quench-holds",
        quench_chart(&quench_data(0.8), metric, [370.0, 330.0]),
    );
    add(
        "soak-phone",
        soak_map(&soak_data("52100", 830.0), &FAHRENHEIT, [362.0, 420.0]),
    );
    add(
        "quench-phone",
        quench_chart(&quench_data(3.6), &FAHRENHEIT, [362.0, 420.0]),
    );
    add(
        "history",
        soak_history(&history_data(12.0), metric, [306.0, 142.0]),
    );
    add(
        "history-late",
        soak_history(&history_data(29.0), metric, [334.0, 150.0]),
    );
    add(
        "temper",
        temper_chart(&temper_data(), metric, [282.0, 330.0]),
    );
    add(
        "temper-phone",
        temper_chart(&temper_data(), &FAHRENHEIT, [362.0, 420.0]),
    );
    let part = |outline, hardened_mm| SectionData {
        outline,
        hardened_mm,
        is_certain: true,
        core: Constituent::Pearlite,
        note: "core may hold 2 % pearlite, bainite".into(),
    };
    let blade = Outline::Blade {
        is_convex: false,
        edge_mm: 0.4,
        spine_mm: 4.0,
        height_mm: 26.0,
    };
    add(
        "blade",
        section_view(&part(blade, 21.0), metric, [370.0, 142.0]),
    );
    add(
        "blade-through",
        section_view(&part(blade, 26.0), &FAHRENHEIT, [370.0, 142.0]),
    );
    let plate = Outline::Plate { thickness_mm: 6.0 };
    add(
        "plate",
        section_view(&part(plate, 2.0), metric, [370.0, 142.0]),
    );
    let round = Outline::Round { diameter_mm: 12.0 };
    add(
        "round",
        section_view(&part(round, 3.5), metric, [362.0, 142.0]),
    );
    add(
        "round-soft",
        section_view(&part(round, 0.0), metric, [370.0, 142.0]),
    );
    let rows = [
        ("quench", 64.3, 0.8),
        ("cold", 65.2, 0.8),
        ("temper 1", 62.3, 1.0),
        ("temper 2", 61.9, 1.1),
    ]
    .map(|(step, hrc, band_hrc)| LadderRow {
        label: format!("after {step}"),
        hrc,
        band_hrc,
    });
    add("ladder", hardness_ladder(&rows, Some([61.0, 63.0]), 292.0));
    use Constituent::{Austenite, Bainite, Carbide, Ferrite, Martensite, Pearlite};
    let mixed = [
        (Martensite, 0.8),
        (Austenite, 0.1),
        (Carbide, 0.05),
        (Pearlite, 0.02),
        (Bainite, 0.03),
    ];
    add("bar", phase_bar(&mixed, [250.0, 20.0]));
    let slack = [
        (Martensite, 0.2),
        (Austenite, 0.1),
        (Carbide, 0.2),
        (Pearlite, 0.2),
        (Bainite, 0.2),
        (Ferrite, 0.1),
    ];
    add("bar-all", phase_bar(&slack, [250.0, 20.0]));
    add("bar-small", phase_bar(&mixed, [250.0, 9.0]));
    for constituent in Constituent::ALL {
        add(constituent.name(), swatch(constituent, 13.0));
    }
    add("probe", probe_test(&probe_points(), metric, [330.0, 330.0]));
    add(
        "transfer",
        heat_transfer(&transfer_data(), metric, [330.0, 330.0]),
    );
    add(
        "transfer-phone",
        heat_transfer(&transfer_data(), &FAHRENHEIT, [362.0, 420.0]),
    );
    add(
        "route",
        route_strip(&route_data(), metric, [1384.0, 116.0]).scene,
    );
    add(
        "route-phone",
        route_strip(&route_data(), metric, [384.0, 74.0]).scene,
    );
    scenes
}

fn history_data(minutes: f64) -> SoakHistoryData {
    let at = |time_s: f64| {
        let part = 1.0 - (-time_s / 1500.0).exp();
        HistoryPoint {
            time_s,
            carbon_wt: 0.6 + 0.18 * part,
            carbide_volume_fraction: 0.065 - 0.025 * part,
            grain_astm: 11.4 - 1.1 * (1.0 + time_s / 60.0).ln() * 0.5,
        }
    };
    SoakHistoryData {
        history: (0..=60).map(|i| at(30.0 * f64::from(i))).collect(),
        now: at(60.0 * minutes),
        end_s: 1800.0,
        soak_c: 830.0,
        heating: vec![
            [-240.0, 20.0],
            [-160.0, 500.0],
            [-60.0, 790.0],
            [0.0, 825.0],
        ],
    }
}

fn temper_data() -> TemperData {
    let hrc = |c: f64| 64.8 - 0.0205 * (c - 100.0) - 1.8 / (1.0 + (-(c - 180.0) / 25.0).exp());
    TemperData {
        curve: (0..=60)
            .map(|i| {
                let temperature_c = 100.0 + 5.0 * f64::from(i);
                TemperPoint {
                    temperature_c,
                    hrc: hrc(temperature_c),
                    band_hrc: 0.8 + 0.003 * (temperature_c - 100.0),
                }
            })
            .collect(),
        target_hrc: Some([61.0, 63.0]),
        embrittling_c: Some([260.0, 370.0]),
        temper_c: 190.0,
        hrc: hrc(190.0),
    }
}

/// An invented probe, read 0.5 K too high.
fn probe_points() -> Vec<ProbePoint> {
    let at = |time_s: f64| 50.0 + 800.0 * (-time_s / 9.0).exp();
    let point = |[time_s, computed_c]: [f64; 2]| ProbePoint {
        time_s,
        measured_c: computed_c + 0.5,
        computed_c,
    };
    let points = curve(600, |f| [40.0 * f, at(40.0 * f)]);
    points.into_iter().map(point).collect()
}

/// An invented curve, weak at its hot end.
fn transfer_data() -> HeatTransferData {
    let point = |[surface_c, h_w_m2k]: [f64; 2]| HeatTransferPoint {
        surface_c,
        h_w_m2k,
        band_factor: if surface_c > 700.0 { 1.5 } else { 1.05 },
        is_weak: surface_c > 700.0,
    };
    let points = curve(23, |f| {
        let c = 130.0 + 720.0 * f;
        [c, 400.0 + 2400.0 * (-((c - 520.0) / 100.0).powi(2)).exp()]
    });
    HeatTransferData {
        points: points.into_iter().map(point).collect(),
        bath_c: 50.0,
        is_measured: true,
    }
}

fn route_data() -> RouteData {
    let heat = |to_c: f64, soak_s: f64, cool_s: f64| {
        curve(200, |f| {
            let t = f * (600.0 + soak_s + cool_s);
            let c = if t < 600.0 + soak_s {
                20.0 + (to_c - 20.0) * (1.0 - (-t / 120.0).exp())
            } else {
                let cooled = 20.0 + (to_c - 20.0) * (-(t - 600.0 - soak_s) / 110.0).exp();
                let back = (t - 760.0 - soak_s) / 30.0;
                cooled + 45.0 * (-back * back).exp()
            };
            [t, c]
        })
    };
    let step = |points: Vec<[f64; 2]>, weight: f64| RouteStep {
        points,
        weight,
        selected: false,
        note: None,
    };
    let mut normalise = step(heat(920.0, 600.0, 900.0), 1.2);
    normalise.note = Some((1375.0, "glow-back".into()));
    let mut soak = step(heat(830.0, 720.0, 0.0), 1.3);
    soak.selected = true;
    let quench = cooled(3.6, 0.3)
        .into_iter()
        .filter(|p| p[0] < 30.0)
        .collect();
    let cold = curve(60, |f| {
        [4000.0 * f, 40.0 - 115.0 * (1.0 - (-f * 9.0).exp())]
    });
    let temper = || curve(60, |f| [4000.0 * f, 190.0 - 170.0 * (-f * 9.0).exp()]);
    RouteData {
        steps: vec![
            step(heat(1090.0, 300.0, 700.0), 1.2),
            normalise,
            soak,
            step(quench, 1.1),
            step(cold, 1.0),
            step(temper(), 1.0),
            step(temper(), 1.0),
        ],
        a1_c: 748.0,
    }
}

#[test]
fn every_chart_draws_in_every_palette() {
    let folder = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join("charts");
    std::fs::create_dir_all(&folder).expect("folder");
    let mut page = String::from(
        "<!doctype html><meta charset=utf-8><style>@font-face{font-family:Archivo;src:url(archivo.woff2);\
         font-weight:400 700;font-stretch:88% 112%}body{margin:0;font:13px Archivo}\
         section{display:flex;flex-wrap:wrap;gap:14px;padding:14px}div{position:relative}\
         div svg{display:block}i{position:absolute;width:18px;height:18px;border:2.5px solid #3a3cb4;\
         border-radius:50%;box-sizing:border-box;transform:translate(-50%,-50%)}\
         u{position:absolute;background:#3a3cb4;border-radius:2px}</style>",
    );
    for (theme, palette) in [
        ("light", Palette::LIGHT),
        ("dark", Palette::DARK),
        ("print", Palette::PRINT),
    ] {
        let [r, g, b] = palette.rgb(Ink::Bench.into());
        write!(page, "<section style='background:rgb({r},{g},{b})'>").expect("text");
        for (name, scene) in scenes() {
            let ground = if name.starts_with("route") {
                Ink::Shop
            } else {
                Ink::Sheet
            };
            let text = svg::document_on(&scene, &palette, Some(ground)).expect(&name);
            assert!(!text.contains("NaN") && !text.contains("inf"), "{name}");
            assert!(text.ends_with("</svg>\n"), "{name}");
            assert!(!scene.summary.is_empty(), "{name}");
            std::fs::write(folder.join(format!("{name}-{theme}.svg")), &text).expect("file");
            write!(page, "<div>{text}").expect("text");
            for handle in &scene.handles {
                let [x, y] = handle.at_px;
                write!(page, "<i style='left:{x}px;top:{y}px'></i>").expect("text");
                if let Some(tag) = handle.tag {
                    write!(
                        page,
                        "<u style='left:{}px;top:{}px;width:{}px;height:{}px'></u>",
                        tag.left,
                        tag.top,
                        tag.width(),
                        tag.height()
                    )
                    .expect("text");
                }
            }
            page.push_str("</div>");
        }
        page.push_str("</section>");
    }
    std::fs::write(folder.join("index.html"), page).expect("file");
    let font = concat!(env!("CARGO_MANIFEST_DIR"), "/public/fonts/archivo.woff2");
    std::fs::copy(font, folder.join("archivo.woff2")).expect("font");
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
