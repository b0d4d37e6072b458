//! Every chart drawn without a page, in three palettes and two sizes. The documents and a page that
//! shows them all go to `target/charts/`. The numbers are invented but plausible.

use std::fmt::Write as _;

use recalesce::chart::{
    Constituent, CoolingTrace, Labels, Margin, Palette, ProductCurves, QuenchData, Role, Scene,
    SoakMapData, Verdict, quench_chart, soak_map, svg,
};

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

fn soak_data() -> SoakMapData {
    SoakMapData {
        a3: curve(40, |f| [0.62 * f, 908.0 - 260.0 * f + 100.0 * f * f]),
        acm: curve(60, |f| {
            let carbon = 0.62 + 1.2 * f;
            [
                carbon,
                748.0 + 400.0 * (carbon - 0.62) - 25.0 * (carbon - 0.62f64).powi(2),
            ]
        }),
        a1_c: 748.0,
        a1_upper_c: 748.0,
        bulk_carbon_wt: 1.0,
        soak_c: 830.0,
        wander_k: 8.0,
        dissolved_wt: 0.68,
        possible_wt: 0.78,
        path: vec![
            [0.62, 748.0],
            [0.625, 778.0],
            [0.635, 805.0],
            [0.66, 826.0],
            [0.68, 830.0],
        ],
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

/// Name, scene and whether it stands in the dim shop.
fn scenes() -> Vec<(String, Scene)> {
    let metric = &Labels::METRIC;
    let mut scenes = Vec::new();
    let mut add = |name: &str, scene: Scene| scenes.push((name.to_owned(), scene));
    add("soak", soak_map(&soak_data(), metric, [306.0, 330.0]));
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
        soak_map(&soak_data(), &FAHRENHEIT, [362.0, 420.0]),
    );
    add(
        "quench-phone",
        quench_chart(&quench_data(3.6), &FAHRENHEIT, [362.0, 420.0]),
    );
    scenes
}

#[test]
fn every_chart_draws_in_every_palette() {
    let folder = std::path::Path::new(env!("CARGO_TARGET_TMPDIR")).join("charts");
    std::fs::create_dir_all(&folder).expect("folder");
    let mut page = String::from(
        "<!doctype html><meta charset=utf-8><style>@font-face{font-family:Archivo;src:url(archivo.woff2);\
         font-weight:100 900;font-stretch:62% 125%}body{margin:0;font:13px Archivo}\
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
        let [r, g, b] = palette.rgb(recalesce::chart::Ink::Bench.into());
        write!(page, "<section style='background:rgb({r},{g},{b})'>").expect("text");
        for (name, scene) in scenes() {
            let text = svg::document(&scene, &palette).expect(&name);
            assert!(!text.contains("NaN") && !text.contains("inf"), "{name}");
            assert!(
                text.contains("<text") && text.ends_with("</svg>\n"),
                "{name}"
            );
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
