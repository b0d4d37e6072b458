//! Every chart drawn without a page, in three palettes and two sizes. The documents and a page that
//! shows them all go to `target/charts/`. The numbers are invented but plausible.

mod invented;
mod told;

use invented::{
    FAHRENHEIT, history_data, probe_points, quench_data, route_data, soak_data, temper_data,
    transfer_data,
};
use recalesce::chart::{
    Constituent, Ink, Labels, LadderRow, Outline, Palette, Scene, SectionData, hardness_ladder,
    heat_transfer, phase_bar, probe_test, quench_chart, route_strip, section_view, soak_history,
    soak_map, svg, swatch, temper_chart,
};
use std::fmt::Write as _;

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
        core_hardened: 0.0,
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
        range_hrc: [hrc - band_hrc, hrc + band_hrc],
        band: format!("±{band_hrc}"),
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
