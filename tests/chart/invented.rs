//! Invented but plausible numbers for every chart.

use recalesce::chart::{
    Constituent, CoolingTrace, HeatTransferData, HeatTransferPoint, HistoryPoint, Labels, MapField,
    Margin, ProbePoint, ProductCurves, QuenchData, Role, RouteData, RouteStep, SoakHistoryData,
    SoakMapData, TemperData, TemperPoint, Verdict,
};
use recalesce::phases::{Field, PhaseMap, PhaseName, phase_map};

pub(super) const FAHRENHEIT: Labels = Labels {
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
pub(super) fn soak_data(grade: &str, soak_c: f64) -> SoakMapData {
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

pub(super) fn quench_data(tau_s: f64) -> QuenchData {
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

pub(super) fn history_data(minutes: f64) -> SoakHistoryData {
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

pub(super) fn temper_data() -> TemperData {
    let hrc = |c: f64| 64.8 - 0.0205 * (c - 100.0) - 1.8 / (1.0 + (-(c - 180.0) / 25.0).exp());
    TemperData {
        curve: (0..=60)
            .map(|i| {
                let temperature_c = 100.0 + 5.0 * f64::from(i);
                let (hrc, half_hrc) = (hrc(temperature_c), 0.8 + 0.003 * (temperature_c - 100.0));
                TemperPoint {
                    temperature_c,
                    hrc,
                    range_hrc: [hrc - half_hrc, hrc + half_hrc],
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
pub(super) fn probe_points() -> Vec<ProbePoint> {
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
pub(super) fn transfer_data() -> HeatTransferData {
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

pub(super) fn route_data() -> RouteData {
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
