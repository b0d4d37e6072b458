//! Whatever numbers come in, charts are drawn: no panic, no endless loop, nothing that is not a
//! number in the document.

use proptest::prelude::*;
use recalesce::chart::{
    Across, BathChange, Constituent, CoolingTrace, HeatTransferData, HeatTransferPoint,
    HistoryPoint, Labels, LadderRow, MapField, Margin, Outline, Palette, ProbePoint, ProductCurves,
    QuenchData, ReplayData, Role, RouteData, RouteStep, Scene, SectionData, SoakHistoryData,
    SoakMapData, TemperData, TemperPoint, Verdict, hardness_ladder, heat_transfer, phase_bar,
    probe_test, quench_chart, replay_view, route_strip, section_view, soak_history, soak_map, svg,
    temper_chart,
};

/// Plausible numbers, and any others.
fn number() -> impl Strategy<Value = f64> {
    prop_oneof![
        6 => -100.0..1300.0,
        3 => 0.0..2.0,
        1 => prop_oneof![
            Just(f64::NAN),
            Just(f64::INFINITY),
            Just(f64::NEG_INFINITY),
            Just(0.0),
            Just(-1e300),
            Just(1e300),
            Just(1e-300),
        ],
    ]
}

fn curve() -> impl Strategy<Value = Vec<[f64; 2]>> {
    prop::collection::vec([number(), number()], 0..12)
}

fn size() -> impl Strategy<Value = [f64; 2]> {
    prop_oneof![
        Just([306.0, 330.0]),
        Just([362.0, 420.0]),
        Just([1384.0, 116.0]),
        Just([10.0, 10.0]),
        Just([0.0, -5.0]),
    ]
}

fn drawn(scene: &Scene) -> Result<(), TestCaseError> {
    let text = svg::document(scene, &Palette::LIGHT).expect("a document");
    prop_assert!(!text.contains("NaN") && !text.contains("inf"), "{text}");
    for handle in &scene.handles {
        prop_assert!(handle.at_px.iter().all(|v| v.is_finite()), "{handle:?}");
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 100,
        failure_persistence: None,
        ..ProptestConfig::default()
    })]

    #[test]
    fn soaks(a3 in curve(), acm in curve(), path in curve(), heating in curve(), n in prop::array::uniform7(number()), size in size()) {
        let [a1_c, a1_upper_c, bulk_carbon_wt, soak_c, wander_k, dissolved_wt, possible_wt] = n;
        let fields = [(true, false), (true, true), (false, true)].map(|(has_austenite, has_ferrite)| MapField {
            has_austenite,
            has_ferrite,
            carbides: vec!["cementite".into(), "MC".into()],
            outline: acm.clone(),
        });
        let map = SoakMapData {
            fields: fields.to_vec(), boundaries: vec![a3.clone()], range_c: [a1_upper_c, soak_c], a1_lower: path.clone(), a1_upper: a3.clone(),
            a3, acm, a1_c, bulk_carbon_wt, soak_c, wander_k, dissolved_wt, possible_wt, path };
        drawn(&soak_map(&map, &Labels::METRIC, size))?;
        let point = |time_s| HistoryPoint { time_s, carbon_wt: a1_c, carbide_volume_fraction: soak_c, grain_astm: wander_k };
        let history = SoakHistoryData { history: n.map(point).to_vec(), now: point(soak_c), end_s: a1_upper_c, soak_c, heating };
        drawn(&soak_history(&history, &Labels::METRIC, size))?;
    }

    #[test]
    fn quenches(start in curve(), finish in curve(), points in curve(), n in prop::array::uniform8(number()), some in any::<bool>(), size in size()) {
        let [ms, m50, nose_s, a1_c, soak_c, cold, nose_c, arrival_s] = n;
        let given = |value| some.then_some(value);
        let trace = |role| CoolingTrace { role, name: "centre".into(), points: points.clone() };
        let quench = QuenchData {
            products: vec![ProductCurves { product: Constituent::Pearlite, start, finish, nose: [nose_s, nose_c] }],
            cooling: vec![trace(Role::Main), trace(Role::Edge), trace(Role::Slower)],
            changes: vec![BathChange { time_s: nose_s, temperature_c: nose_c, name: "into oil".into() }],
            ms_c: given(ms), m50_c: given(m50), m90_c: given(ms), a1_c, soak_c, cold_c: given(cold),
            margin: given(0.0).map(|_| Margin { nose_c, nose_s, arrival_s, verdict: Verdict::Narrow }),
        };
        drawn(&quench_chart(&quench, &Labels::METRIC, size))?;
    }

    #[test]
    fn tempers(points in curve(), n in prop::array::uniform6(number()), some in any::<bool>(), size in size()) {
        let [low, high, from_c, to_c, temper_c, hrc] = n;
        let temper = TemperData {
            curve: points.iter().map(|[temperature_c, hrc]| TemperPoint { temperature_c: *temperature_c, hrc: *hrc, range_hrc: [hrc - low, hrc + low] }).collect(),
            target_hrc: some.then_some([low, high]),
            embrittling_c: some.then_some([from_c, to_c]),
            temper_c,
            hrc,
        };
        drawn(&temper_chart(&temper, &Labels::METRIC, size))?;
        let rows: Vec<LadderRow> = points.iter().map(|[hrc, band_hrc]| LadderRow { label: "after".into(), hrc: *hrc, range_hrc: [hrc - band_hrc, hrc + band_hrc], band: "±1.0".into() }).collect();
        drawn(&hardness_ladder(&rows, some.then_some([low, high]), size[0]))?;
        let parts: Vec<_> = Constituent::ALL.into_iter().zip(n).collect();
        drawn(&phase_bar(&parts, size))?;
    }

    #[test]
    fn replays(points in curve(), n in prop::array::uniform4(number()), size in size()) {
        let across = |&[at_mm, temperature_c]: &[f64; 2]| Across {
            at_mm,
            temperature_c,
            parts: vec![(Constituent::Martensite, n[0]), (Constituent::Austenite, n[1])],
        };
        let replay = ReplayData {
            across: points.iter().map(across).collect(),
            ends: ["edge", "spine"],
            start_c: n[2],
            time: "2 s".into(),
        };
        drawn(&replay_view(&replay, &Labels::METRIC, size))?;
    }

    #[test]
    fn routes_and_sections(points in curve(), n in prop::array::uniform4(number()), size in size()) {
        let [a, b, c, d] = n;
        let step = RouteStep { points, weight: a, selected: true, note: Some((b, "glow-back".into())) };
        let route = RouteData { steps: vec![step.clone(), step], a1_c: c };
        let strip = route_strip(&route, &Labels::METRIC, size);
        prop_assert_eq!(strip.blocks_px.len(), 2);
        drawn(&strip.scene)?;
        for outline in [
            Outline::Plate { thickness_mm: a },
            Outline::Round { diameter_mm: b },
            Outline::Square { side_mm: c },
            Outline::Blade { edge_mm: a, spine_mm: b, height_mm: c, is_convex: false },
            Outline::Blade { edge_mm: a, spine_mm: b, height_mm: c, is_convex: true },
        ] {
            let section = SectionData { outline, hardened_mm: d, is_certain: d > 2.0, core: Constituent::Bainite, core_hardened: 0.05 * d, note: "core".into() };
            drawn(&section_view(&section, &Labels::METRIC, size))?;
        }
    }

    #[test]
    fn own_quenchants(points in prop::collection::vec(prop::array::uniform3(number()), 0..12), bath_c in number(), is_measured in any::<bool>(), size in size()) {
        let readings: Vec<ProbePoint> = points.iter().map(|&[time_s, measured_c, computed_c]| ProbePoint { time_s, measured_c, computed_c }).collect();
        drawn(&probe_test(&readings, &Labels::METRIC, size))?;
        let points = points
            .iter()
            .map(|&[surface_c, h_w_m2k, band_factor]| HeatTransferPoint { surface_c, h_w_m2k, band_factor, is_weak: band_factor > 1.0 })
            .collect();
        drawn(&heat_transfer(&HeatTransferData { points, bath_c, is_measured }, &Labels::METRIC, size))?;
    }
}
