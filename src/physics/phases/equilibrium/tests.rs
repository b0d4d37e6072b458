//! Properties of the solver over random steels: it comes to rest, its result is an equilibrium,
//! and no other way of reaching one finds a lower energy.

use super::slots::{Amounts, Phases};
use super::solver::Solver;
use super::*;
use crate::phases::gibbs::{Derivatives, GAS_CONSTANT, MOST};
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

    /// A steel of the domain; each alloying element is missing in a third of them, and small
    /// contents are as frequent as large ones.
    fn steel(&mut self) -> Composition {
        let mut steel = Composition::default();
        for (element, least, largest) in RANGE.limits_wt {
            let (there, share) = (self.next(), self.next());
            if *element == Element::C {
                steel.c = share * 2.0;
            } else if there > 1.0 / 3.0 {
                steel.set(*element, least + share * share * largest);
            }
        }
        steel
    }

    fn temperature_c(&mut self) -> f64 {
        650.0 + 600.0 * self.next()
    }
}

/// Gibbs energy per mole of atoms in units of RT.
fn energy(solver: &Solver, amounts: &Amounts) -> f64 {
    let terms = amounts.moles.iter().zip(solver.potentials);
    terms.map(|(n, mu)| n * mu).sum()
}

/// Gibbs energy of a slot, with derivatives, per mole of formula units in units of RT.
fn evaluate(phases: &Phases, slot: &super::slots::Slot, work: &mut Derivatives) -> f64 {
    let model = &phases.models[slot.model];
    model.without_mixing(&slot.y, work);
    model.add_mixing(&slot.y, work);
    work.value / model.rt()
}

/// Largest difference, in units of RT per mole of atoms, between the potentials that any stable
/// phase has by itself and the common ones.
fn potential_mismatch(solver: &Solver) -> f64 {
    let mut worst = 0.0_f64;
    let mut work = Derivatives::ZERO;
    for slot in solver.phases.slots.iter().filter(|s| s.active) {
        let value = evaluate(&solver.phases, slot, &mut work);
        let model = &solver.phases.models[slot.model];
        for sublattice in 0..model.sublattices {
            // what the gradient has above the potentials is the same for all constituents
            let excess: Vec<f64> = (0..model.variables.len())
                .filter(|i| model.variables[*i].sublattice == sublattice)
                .map(|i| {
                    let variable = &model.variables[i];
                    let mu = variable.element.map_or(0.0, |e| solver.potentials[e]);
                    work.gradient[i] / model.rt() / variable.sites - mu
                })
                .collect();
            for value in &excess {
                worst = worst.max((value - excess[0]).abs());
            }
        }
        let atoms = model.atoms(&slot.y);
        let plane: f64 = atoms
            .iter()
            .zip(solver.potentials)
            .map(|(n, m)| n * m)
            .sum();
        worst = worst.max((value - plane).abs() / atoms.iter().sum::<f64>());
    }
    worst
}

/// Gibbs energy of the whole steel in austenite or ferrite, whichever is not suspended, per mole of
/// atoms in units of RT.
fn single_phase_energy(
    amounts: &Amounts,
    temperature_c: f64,
    suspended: PhaseName,
    work: &mut Derivatives,
) -> f64 {
    let mut single = Solver::new(amounts);
    single.phases.set_temperature(temperature_c + ZERO_C_K);
    single.suspend(Some(suspended));
    // all carbon in the one phase
    for slot in &mut single.phases.slots {
        slot.suspended |= slot.name == PhaseName::Cementite;
    }
    start::single_phase(&mut single.phases, amounts);
    let slot = single.phases.slots.iter().find(|s| s.active).unwrap();
    slot.amount * evaluate(&single.phases, slot, work)
}

#[test]
fn ten_thousand_random_steels_come_to_rest_in_equilibrium() {
    let mut sequence = Sequence(1);
    let mut work = Derivatives::ZERO;
    for _ in 0..10_000 {
        let (steel, temperature_c) = (sequence.steel(), sequence.temperature_c());
        let case = format!("{steel:?} at {temperature_c} °C");
        let amounts = Amounts::new(&steel);
        let mut solver = Solver::new(&amounts);
        let solved = solver.solve(&amounts, temperature_c + ZERO_C_K);
        assert_eq!(solved, Ok(()), "{case}");
        assert!(solver.balance_error < 1e-10, "{case}");
        assert!(potential_mismatch(&solver) < 1e-9, "{case}");
        for slot in solver.phases.slots.iter().filter(|s| s.active) {
            assert!(slot.amount > 0.0, "{case}");
            assert!(slot.y.iter().all(|y| (0.0..=1.0).contains(y)), "{case}");
        }
        let found = energy(&solver, &amounts);
        // all of it austenite, or all of it ferrite
        for suspended in [PhaseName::Ferrite, PhaseName::Austenite] {
            let alone = single_phase_energy(&amounts, temperature_c, suspended, &mut work);
            assert!(found <= alone + 1e-9, "{case}: {found} above {alone}");
        }
    }
}

/// With the metals frozen: carbon balances, amounts are positive, and the energy lies between that
/// of full equilibrium and that of the steel in a single phase.
#[test]
fn a_thousand_random_steels_come_to_rest_in_para_equilibrium() {
    let mut sequence = Sequence(5);
    let mut work = Derivatives::ZERO;
    for _ in 0..1_000 {
        let (steel, temperature_c) = (sequence.steel(), sequence.temperature_c());
        let case = format!("{steel:?} at {temperature_c} °C");
        let para = para_equilibrium(&steel, temperature_c);
        let para = para.unwrap_or_else(|error| panic!("{case}: {error}"));
        assert!(para.balance_error < 1e-10, "{case}");
        for element in Element::ALL {
            let mut sum = 0.0;
            for phase in &para.phases {
                let content = phase.composition.get(element);
                assert!(phase.mass_fraction > 0.0 && content >= 0.0, "{case}");
                sum += phase.mass_fraction * content;
            }
            // less than a millionth of a per cent is left out, which shifts the others a little
            if steel.get(element) >= 1e-6 {
                approx::assert_relative_eq!(sum, steel.get(element), max_relative = 1e-7);
            }
        }
        let full = equilibrium(&steel, temperature_c).unwrap();
        let (low, found) = (full.gibbs_energy_j_mol, para.gibbs_energy_j_mol);
        assert!(low <= found + 1e-3, "{case}: {low} above {found}");
        let amounts = Amounts::new(&steel);
        for suspended in [PhaseName::Ferrite, PhaseName::Austenite] {
            let alone = single_phase_energy(&amounts, temperature_c, suspended, &mut work);
            let alone = alone * GAS_CONSTANT * (temperature_c + ZERO_C_K);
            assert!(found <= alone + 1e-3, "{case}: {found} above {alone}");
        }
    }
}

/// Lowest height above the plane of potentials over random site fractions of every phase: what a
/// search from a few starts could have missed.
fn lowest_random(solver: &Solver, sequence: &mut Sequence) -> f64 {
    let mut work = Derivatives::ZERO;
    let mut lowest = f64::INFINITY;
    for slot in &solver.phases.slots {
        let model = &solver.phases.models[slot.model];
        let mut trial = slot.clone();
        for _ in 0..200 {
            let mut y = [0.0; MOST];
            let mut sums = [0.0; 2];
            for (i, variable) in model.variables.iter().enumerate() {
                y[i] = (-9.0 * sequence.next()).exp();
                sums[variable.sublattice] += y[i];
            }
            for (i, variable) in model.variables.iter().enumerate() {
                y[i] /= sums[variable.sublattice];
            }
            trial.y = y;
            let mut height = evaluate(&solver.phases, &trial, &mut work);
            let atoms = model.atoms(&y);
            for (mu, n) in solver.potentials.iter().zip(atoms) {
                height -= mu * n;
            }
            lowest = lowest.min(height / atoms.iter().sum::<f64>());
        }
    }
    lowest
}

#[test]
fn no_random_composition_of_any_phase_lies_below_the_plane() {
    let mut sequence = Sequence(2);
    for _ in 0..500 {
        let (steel, temperature_c) = (sequence.steel(), sequence.temperature_c());
        let amounts = Amounts::new(&steel);
        let mut solver = Solver::new(&amounts);
        solver.solve(&amounts, temperature_c + ZERO_C_K).unwrap();
        let lowest = lowest_random(&solver, &mut sequence);
        assert!(lowest > -1e-7, "{steel:?} at {temperature_c}: {lowest}");
    }
}

/// Cooling from 1250 °C must not find a lower energy than the direct search.
#[test]
fn the_way_to_an_equilibrium_does_not_matter() {
    let mut sequence = Sequence(3);
    for _ in 0..500 {
        let (steel, temperature_c) = (sequence.steel(), sequence.temperature_c());
        let amounts = Amounts::new(&steel);
        let mut direct = Solver::new(&amounts);
        direct.solve(&amounts, temperature_c + ZERO_C_K).unwrap();
        let mut cooled = Solver::new(&amounts);
        if cooled
            .by_cooling(&amounts, temperature_c + ZERO_C_K)
            .is_ok()
        {
            let (a, b) = (energy(&direct, &amounts), energy(&cooled, &amounts));
            assert!(a < b + 1e-7, "{steel:?} at {temperature_c}: {a} above {b}");
        }
    }
}

fn bearing_steel() -> Composition {
    Composition {
        c: 1.0,
        mn: 0.35,
        si: 0.25,
        cr: 1.45,
        ..Composition::default()
    }
}

/// A solver whose memory is damaged finds its way back; one whose energies are damaged says so.
#[test]
fn faults_put_into_the_solver_end_in_the_right_answer_or_an_error() {
    let amounts = Amounts::new(&bearing_steel());
    let kelvin = 820.0 + ZERO_C_K;
    let mut sound = Solver::new(&amounts);
    sound.solve(&amounts, kelvin).unwrap();
    type Fault = fn(&mut Solver);
    let faults: [Fault; 5] = [
        |s| {
            s.phases
                .slots
                .iter_mut()
                .for_each(|slot| slot.y = [f64::NAN; MOST])
        },
        |s| {
            s.phases
                .slots
                .iter_mut()
                .for_each(|slot| slot.y = [0.0; MOST])
        },
        |s| {
            s.phases
                .slots
                .iter_mut()
                .for_each(|slot| slot.amount = f64::NAN)
        },
        |s| {
            s.phases
                .slots
                .iter_mut()
                .for_each(|slot| slot.active = !slot.active)
        },
        |s| s.potentials = [f64::INFINITY; 9],
    ];
    for fault in faults {
        let mut solver = sound.clone();
        fault(&mut solver);
        solver.solve(&amounts, kelvin).unwrap();
        approx::assert_relative_eq!(
            energy(&solver, &amounts),
            energy(&sound, &amounts),
            epsilon = 1e-9
        );
    }
    let not_converged = sound.clone().solve(&amounts, f64::NAN);
    assert!(matches!(
        not_converged,
        Err(EquilibriumError::NotConverged { .. })
    ));
    let mut wrong = amounts.clone();
    wrong.moles[0] = f64::NAN;
    assert!(sound.clone().solve(&wrong, kelvin).is_err());
}

#[test]
fn what_is_outside_the_range_is_refused_with_a_reason() {
    let steel = bearing_steel();
    assert!(matches!(
        equilibrium(&steel, 400.0),
        Err(EquilibriumError::OutOfRange(_))
    ));
    assert!(equilibrium(&steel, f64::NAN).is_err());
    let nickel = Composition { ni: 5.0, ..steel };
    let message = critical_points(&nickel).map_err(|e| e.to_string());
    assert!(message.is_err_and(|m| m.contains("nickel") && m.contains('5')));
    assert!(crate::phases::phase_map(&nickel).is_err());
    assert!(para_equilibrium(&steel.with_carbon(f64::NAN), 800.0).is_err());
}

/// Largest change of any volume fraction between two temperatures, found small by halving.
fn largest_jump(steel: &Composition, low_c: f64, high_c: f64, halvings: u32) -> f64 {
    let (low, high) = (equilibrium(steel, low_c), equilibrium(steel, high_c));
    let (low, high) = (low.unwrap(), high.unwrap());
    let jump = PhaseName::ALL
        .into_iter()
        .map(|name| (low.volume_fraction(name) - high.volume_fraction(name)).abs())
        .fold(0.0, f64::max);
    if jump < 0.03 || halvings == 0 {
        return jump;
    }
    let middle_c = 0.5 * (low_c + high_c);
    largest_jump(steel, low_c, middle_c, halvings - 1).max(largest_jump(
        steel,
        middle_c,
        high_c,
        halvings - 1,
    ))
}

/// Along temperature amounts have no jumps, and a sweep gives what single points give.
#[test]
fn sweeps_are_continuous_and_agree_with_single_points() {
    let mut sequence = Sequence(4);
    for _ in 0..12 {
        // in iron and carbon alone the eutectoid is a jump
        let steel = Composition {
            mn: 0.7,
            cr: 1.0,
            ..sequence.steel()
        };
        let mut series = EquilibriumSeries::default();
        for step in 0..120_u32 {
            let temperature_c = 650.0 + 5.0 * f64::from(step);
            let swept = series.at(&steel, temperature_c).unwrap();
            let single = equilibrium(&steel, temperature_c).unwrap();
            approx::assert_relative_eq!(
                single.gibbs_energy_j_mol,
                swept.gibbs_energy_j_mol,
                epsilon = 1e-3
            );
            let jump = largest_jump(&steel, temperature_c, temperature_c + 5.0, 12);
            assert!(jump < 0.1, "{steel:?} {temperature_c}: {jump}");
        }
    }
}

/// Ferrite of iron and ferrite of tungsten are one phase: beside the second the first has to be
/// looked for, and the way down to it leads up once.
#[test]
fn ferrite_of_tungsten_does_not_hide_ferrite_of_iron() {
    let alloy = Composition {
        mn: 0.392_388_832_070_186_1,
        si: 2.919_973_380_797_47,
        cr: 16.859_284_749_051_12,
        ni: 0.925_718_844_947_851_1,
        v: 0.074_997_286_377_357_97,
        w: 3.417_849_720_203_614_4,
        ..Composition::default()
    };
    for (c, temperature_c) in [(0.01, 654.5), (0.005, 611.0), (0.0065, 644.6)] {
        let steel = alloy.with_carbon(c);
        let found = equilibrium(&steel, temperature_c).unwrap();
        let name = found.phases[0].name;
        assert_eq!(name, PhaseName::Ferrite, "{c} wt % at {temperature_c} °C");
        assert!(found.phases[0].composition.w < 5.0, "{:?}", found.phases[0]);
    }
}
