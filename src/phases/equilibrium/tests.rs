//! Properties of the solver over random steels: it comes to rest, its result is an equilibrium,
//! and no other way of reaching one finds a lower energy.

use super::slots::Amounts;
use super::solver::Solver;
use super::*;
use crate::phases::gibbs::{Derivatives, MOST};
use crate::steel::{Composition, Element};

/// A sequence of numbers between 0 and 1 that is the same on every run.
struct Sequence(u64);

impl Sequence {
    fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        (z ^ (z >> 31)) as f64 / u64::MAX as f64
    }

    /// A steel of the domain; each alloying element is missing in a third of them.
    fn steel(&mut self) -> Composition {
        let mut steel = Composition::default();
        for (element, least, largest) in RANGE.limits_wt {
            let (there, share) = (self.next(), self.next());
            if *element == Element::C {
                steel.c = share * 2.0;
            } else if there > 1.0 / 3.0 {
                // small contents as often as large ones
                steel.set(*element, least + share * share * largest);
            }
        }
        steel
    }
}

fn energy(solver: &Solver, amounts: &Amounts) -> f64 {
    let terms = amounts.moles.iter().zip(solver.potentials);
    terms.map(|(n, mu)| n * mu).sum()
}

/// Largest difference, in units of RT, between a phase's own potentials and the common ones.
fn potential_mismatch(solver: &Solver) -> f64 {
    let mut worst = 0.0_f64;
    let mut work = Derivatives::ZERO;
    for slot in solver.phases.slots.iter().filter(|s| s.active) {
        let model = &solver.phases.models[slot.model];
        model.without_mixing(&slot.y, &mut work);
        model.add_mixing(&slot.y, &mut work);
        for sublattice in 0..model.sublattices {
            // the gradient less the potentials must be the same for all constituents of a
            // sublattice
            let excess: Vec<f64> = (0..model.variables.len())
                .filter(|i| model.variables[*i].sublattice == sublattice)
                .map(|i| {
                    let variable = &model.variables[i];
                    let mu = variable.element.map_or(0.0, |e| solver.potentials[e]);
                    (work.gradient[i] / model.rt() - variable.sites * mu) / variable.sites
                })
                .collect();
            for value in &excess {
                worst = worst.max((value - excess[0]).abs());
            }
        }
        let plane: f64 = model
            .atoms(&slot.y)
            .iter()
            .zip(solver.potentials)
            .map(|(n, mu)| n * mu)
            .sum();
        let size: f64 = model.atoms(&slot.y).iter().sum();
        worst = worst.max((work.value / model.rt() - plane).abs() / size);
    }
    worst
}

#[test]
fn random_steels_come_to_a_true_equilibrium() {
    let mut sequence = Sequence(std::env::var("SEED").map_or(1, |n| n.parse().unwrap()));
    let count = std::env::var("STEELS").map_or(2000, |n| n.parse().unwrap());
    let (mut stuck, mut mismatch, mut balance, mut steps) = (Vec::new(), 0.0_f64, 0.0_f64, 0);
    for _ in 0..count {
        let steel = sequence.steel();
        let temperature_c = 650.0 + 600.0 * sequence.next();
        let amounts = Amounts::new(&steel);
        let mut solver = Solver::new(&amounts);
        if solver.solve(&amounts, temperature_c + ZERO_C_K).is_err() {
            stuck.push((steel, temperature_c));
            continue;
        }
        steps += solver.steps;
        balance = balance.max(solver.balance_error);
        mismatch = mismatch.max(potential_mismatch(&solver));
        for slot in solver.phases.slots.iter().filter(|s| s.active) {
            assert!(slot.amount > 0.0);
            assert!(slot.y.iter().all(|y| (0.0..=1.0).contains(y)));
        }
        let (lowest, name) = lowest_random(&solver, amounts.count(), &mut sequence);
        if lowest < -1e-7 {
            println!(
                "{temperature_c} {steel:?}: {name:?} {lowest:.2e} below; stable {:?}",
                solver
                    .phases
                    .slots
                    .iter()
                    .filter(|s| s.active)
                    .map(|s| s.name)
                    .collect::<Vec<_>>()
            );
        }
        // by cooling from austenite at 1250 °C the same energy is reached
        let mut cooled = Solver::new(&amounts);
        if cooled
            .by_cooling(&amounts, temperature_c + ZERO_C_K)
            .is_ok()
        {
            let (direct, other) = (energy(&solver, &amounts), energy(&cooled, &amounts));
            if (direct - other).abs() > 1e-7 {
                println!("{temperature_c} {steel:?}: {direct} {other}");
            }
        }
    }
    println!(
        "mismatch {mismatch:.1e} RT, balance {balance:.1e}, {} steps each, stuck {}",
        steps / count,
        stuck.len()
    );
    for (steel, temperature_c) in stuck.iter().take(10) {
        println!("{temperature_c} {steel:?}");
    }
    assert!(stuck.is_empty());
}

/// Lowest height above the plane of potentials over random site fractions of every phase: what a
/// search from a few starts could have missed, such as a second MC.
fn lowest_random(solver: &Solver, elements: usize, sequence: &mut Sequence) -> (f64, PhaseName) {
    let mut work = Derivatives::ZERO;
    let mut lowest = (f64::INFINITY, PhaseName::Austenite);
    for slot in &solver.phases.slots {
        let model = &solver.phases.models[slot.model];
        for _ in 0..400 {
            let mut y = [0.0; MOST];
            let mut sums = [0.0; 2];
            for (i, variable) in model.variables.iter().enumerate() {
                y[i] = (-9.0 * sequence.next()).exp();
                sums[variable.sublattice] += y[i];
            }
            for (i, variable) in model.variables.iter().enumerate() {
                y[i] /= sums[variable.sublattice];
            }
            model.without_mixing(&y, &mut work);
            model.add_mixing(&y, &mut work);
            let atoms = model.atoms(&y);
            let (mut height, mut size) = (work.value / model.rt(), 0.0);
            for (mu, n) in solver.potentials.iter().zip(atoms).take(elements) {
                height -= mu * n;
                size += n;
            }
            if height / size < lowest.0 {
                lowest = (height / size, slot.name);
            }
        }
    }
    lowest
}

#[test]
fn one_case() {
    let Ok(case) = std::env::var("CASE") else {
        return;
    };
    let (steel, t): (Composition, f64) = serde_json::from_str(&case).unwrap();
    let amounts = Amounts::new(&steel);
    let mut solver = Solver::new(&amounts);
    for how in ["direct", "cooling"] {
        println!("{how}");
        if how == "direct" {
            println!("{:?}", solver.solve(&amounts, t + ZERO_C_K));
        } else {
            println!("{:?}", solver.by_cooling(&amounts, t + ZERO_C_K).is_ok());
        }
        println!("G {}", energy(&solver, &amounts));
        for s in &solver.phases.slots {
            println!(
                "{:?} {} {} {:?} h {}",
                s.name, s.active, s.amount, &s.y, s.height
            );
        }
    }
}
