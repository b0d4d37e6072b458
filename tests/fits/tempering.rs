//! The fit of the three tempering stages: data, loss, priors and folds of
//! `recalesce::sources::tempering_stages`.

use super::{Errors, Fit};
use recalesce::hardness::{Hardness, as_quenched_martensite_hrc};
use recalesce::numeric::least_squares::minimise;
use recalesce::sources::tempering_stages::{
    CARBON_DELAY, CEMENTITE_DELAY, COARSENING_DELAY, HELD_HRC, LARGEST_VANADIUM_EFFECT_WT,
    LEFT_OUT, STAGES,
};
use recalesce::steel::{Composition, Element};
use std::collections::{BTreeSet, HashMap};

const DATA: &str = include_str!("../checks/tempering_hardness.csv");

/// R ln 10, J/(mol K).
const GAS_LN10: f64 = 8.314462618 * std::f64::consts::LN_10;
/// What one row scatters, HRC: beyond it the loss goes over from squares to amounts.
const SCATTER_HRC: f64 = 2.0;
/// Weight of the noisy rows.
const NOISY_WEIGHT: f64 = 0.5;

/// Number of the constants.
const UNKNOWNS: usize = 28;
/// Middle, width, fall and its exponent of carbon of stage 1; the same with the activation energy,
/// kJ/mol, before them of stages 2 and 3; delay of stage 2 by silicon; delay of stage 3 by carbon and
/// by Mn, Si, Ni, Cr, Mo, V; hardness held by the same six. Each with what it was thought to be
/// before any data and how far it may be off, in round numbers: stage 1 half done in an hour near
/// 170 °C, stage 2 near 300 °C, stage 3 near 600 °C with the energy of self-diffusion in ferrite.
const PRIOR: [(f64, f64); UNKNOWNS] = [
    (-8.0, 1.5),
    (0.6, 0.3),
    (9.0, 4.0),
    (0.5, 0.3),
    (170.0, 30.0),
    (-12.0, 1.5),
    (1.0, 0.5),
    (9.0, 4.0),
    (0.5, 0.3),
    (250.0, 30.0),
    (-11.5, 1.5),
    (2.5, 1.0),
    (80.0, 20.0),
    (0.5, 0.3),
    (1.0, 1.0),
    (1.0, 2.0),
    (0.2, 0.3),
    (0.2, 0.3),
    (0.1, 0.2),
    (1.0, 0.7),
    (3.0, 2.0),
    (3.0, 2.0),
    (2.0, 2.0),
    (3.0, 2.0),
    (0.0, 1.0),
    (1.0, 2.0),
    (3.0, 3.0),
    (5.0, 5.0),
];
/// Activation energy of stage 1, held: the data do not determine it, kJ/mol.
const FIRST_KJ: f64 = 100.0;
/// Carbon at which it delays nothing, wt %.
const CARBON_WT: f64 = 0.45;
const ALLOYING: [Element; 6] = [
    Element::Mn,
    Element::Si,
    Element::Ni,
    Element::Cr,
    Element::Mo,
    Element::V,
];

type Unknowns = [f64; UNKNOWNS];

/// The constants that the program uses, in the order of [`PRIOR`].
fn stored() -> Unknowns {
    let mut x = Vec::new();
    for (j, stage) in STAGES.iter().enumerate() {
        if j > 0 {
            x.push(stage.activation_j_per_mol / 1000.0);
        }
        x.extend([
            stage.middle,
            stage.width,
            stage.fall_hrc,
            stage.carbon_exponent,
        ]);
    }
    x.extend([CEMENTITE_DELAY[0].1, CARBON_DELAY.0]);
    x.extend(COARSENING_DELAY.iter().map(|(_, factor)| factor));
    x.extend(HELD_HRC.iter().map(|(_, factor)| factor));
    x.try_into().expect("as many as there are unknowns")
}

/// One measured temper.
struct Row {
    /// Rows of one heat are left out together.
    heat: String,
    steel: Composition,
    quenched_hrc: f64,
    temperature_k: f64,
    log_s: f64,
    hrc: f64,
    is_noisy: bool,
}

fn rows() -> Vec<Row> {
    let mut rows = Vec::new();
    for record in csv::Reader::from_reader(DATA.as_bytes()).deserialize::<HashMap<String, String>>()
    {
        let record = record.expect("a row");
        if record["steel"].starts_with("Nitriding") {
            continue;
        }
        let number = |name: &str| record[name].parse::<f64>().expect("a number");
        let steel = Composition {
            c: number("c"),
            mn: number("mn"),
            si: number("si"),
            ni: number("ni"),
            cr: number("cr"),
            mo: number("mo"),
            v: number("v"),
            ..Composition::default()
        };
        rows.push(Row {
            heat: format!("{}, {}", record["steel"], record["source"]),
            quenched_hrc: as_quenched_martensite_hrc(steel.c).expect("carbon in range"),
            steel,
            temperature_k: number("temperature_c") + 273.15,
            log_s: number("time_s").log10(),
            hrc: number("final_hrc"),
            is_noisy: record["source"].starts_with("Penha"),
        });
    }
    rows
}

/// By how much a temper lowers the hardness of a steel, HRC: the form of the program.
fn drop_hrc(x: &Unknowns, steel: &Composition, temperature_k: f64, log_s: f64) -> f64 {
    let weigh = |factors: &[f64]| -> f64 {
        let mut counted = *steel;
        counted.v = steel.v.min(LARGEST_VANADIUM_EFFECT_WT);
        let terms = ALLOYING.iter().zip(factors);
        terms
            .map(|(&element, factor)| factor * counted.get(element))
            .sum()
    };
    let held = weigh(&x[22..28]);
    let coarsening = x[15] * (steel.c - CARBON_WT) + weigh(&x[16..22]);
    let delay = [0.0, x[14] * steel.si, coarsening];
    let stages = [(FIRST_KJ, &x[0..4]), (x[4], &x[5..9]), (x[9], &x[10..14])];
    let falls = stages
        .iter()
        .zip(delay)
        .map(|(&(energy_kj, stage), delay)| {
            let &[middle, width, fall, exponent] = stage else {
                unreachable!("four constants")
            };
            let reduced = log_s - 1000.0 * energy_kj / (GAS_LN10 * temperature_k);
            let whole = (fall * steel.c.powf(exponent) - held / 3.0).max(0.0);
            whole / (1.0 + f64::exp((middle + delay - reduced) / width))
        });
    falls.sum()
}

fn miss(x: &Unknowns, row: &Row) -> f64 {
    row.quenched_hrc - drop_hrc(x, &row.steel, row.temperature_k, row.log_s) - row.hrc
}

/// A residual whose square grows like an amount beyond 1.
fn soft(residual: f64) -> f64 {
    (2.0 * ((1.0 + residual * residual).sqrt() - 1.0))
        .sqrt()
        .copysign(residual)
}

/// What silicon and vanadium, which the data hardly hold, add in a 1 h temper: Grange and Baughman
/// 1956 (recalled), HV per wt % at P = (°F + 460)(18 + log h) / 1000 = 20, 22 .. 30.
const ADDED_HV: [(Element, f64, [f64; 6]); 2] = [
    (Element::Si, 0.5, [65.0, 60.0, 30.0, 30.0, 30.0, 30.0]),
    (Element::V, 0.1, [0.0, 30.0, 85.0, 150.0, 210.0, 150.0]),
];
/// Steels of these carbon contents stand for all, wt %, with 0.75 % Mn.
const ADDED_TO_WT: [f64; 3] = [0.3, 0.5, 0.8];

/// Residuals of what silicon and vanadium add.
fn added(x: &Unknowns) -> impl Iterator<Item = f64> + '_ {
    let hour = 3600.0_f64.log10();
    ADDED_TO_WT.into_iter().flat_map(move |c| {
        ADDED_HV
            .into_iter()
            .flat_map(move |(element, content, per_wt)| {
                per_wt.into_iter().enumerate().map(move |(step, hv)| {
                    let p = 20.0 + 2.0 * step as f64;
                    let temperature_k = 1000.0 * p / 18.0 / 1.8;
                    let plain = Composition {
                        c,
                        mn: 0.75,
                        ..Composition::default()
                    };
                    let mut richer = plain;
                    richer.set(element, content);
                    let drop = |steel| drop_hrc(x, steel, temperature_k, hour);
                    let quenched = as_quenched_martensite_hrc(c).expect("carbon in range");
                    let before = Hardness::from_hrc_carried(quenched - drop(&plain));
                    let wanted = Hardness {
                        hv: before.hv + hv * content,
                    };
                    let wanted = wanted.hrc_carried() - before.hrc_carried();
                    (drop(&plain) - drop(&richer) - wanted) / SCATTER_HRC
                })
            })
    })
}

/// Fits all constants to rows from the same cold start.
fn fit(rows: &[&Row]) -> Unknowns {
    let residuals = |x: &Unknowns| {
        let measured = rows.iter().map(|row| {
            let weight = if row.is_noisy { NOISY_WEIGHT } else { 1.0 };
            weight.sqrt() * soft(miss(x, row) / SCATTER_HRC)
        });
        let held = x
            .iter()
            .zip(PRIOR)
            .map(|(x, (middle, off))| (x - middle) / off);
        Some(measured.chain(added(x)).chain(held).collect())
    };
    let spacing = PRIOR.map(|(_, off)| 1e-4 * off);
    minimise(PRIOR.map(|(middle, _)| middle), spacing, residuals)
        .expect("the priors determine every constant")
        .at
}

/// From 30 min to 4 h.
fn is_usual(row: &Row) -> bool {
    (1800.0_f64.log10()..=14_400.0_f64.log10()).contains(&row.log_s)
}

/// Fits the law to all heats and with each of them left out.
pub fn fitted() -> Fit {
    let rows = rows();
    let all: Vec<&Row> = rows.iter().collect();
    let x = fit(&all);
    let heats: BTreeSet<&str> = rows.iter().map(|row| row.heat.as_str()).collect();
    let folds: Vec<&str> = heats.into_iter().collect();
    let left_out = super::in_parallel(&folds, |heat| {
        let (out, kept): (Vec<&Row>, Vec<&Row>) = rows.iter().partition(|row| row.heat == **heat);
        let x = fit(&kept);
        out.into_iter()
            .map(|row| (row, miss(&x, row)))
            .collect::<Vec<_>>()
    });
    let left_out: Vec<(&Row, f64)> = left_out.into_iter().flatten().collect();
    let usual = |row: &&Row| is_usual(row);
    let errors = |x: &Unknowns| Errors::of(rows.iter().filter(usual).map(|row| miss(x, row)));
    Fit {
        title: "tempering, 30 min to 4 h",
        unit: "HRC",
        fold: "heat",
        folds: folds.len(),
        fitted: errors(&x),
        left_out: Errors::of(left_out.iter().filter(|x| usual(&x.0)).map(|x| x.1)),
        stored: errors(&stored()),
        told: Some(LEFT_OUT),
    }
}
