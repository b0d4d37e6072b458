//! Recovery of what is known of simulated shops.

use super::simulated::{
    Jobs, Simulated, estimated, natural, plate, simulate, straightened, with_measured,
};
use super::*;
use crate::route::{Deviation, trial};

const SHOPS: u32 = 200;

/// Which of the unknowns of a simulated shop lie in their bands, each with its kind; with none
/// whether the hardness of the next piece does.
fn covered(straightened: &LearnRun, simulated: &Simulated) -> Vec<(Option<UnknownKind>, bool)> {
    let found = estimated(with_measured(straightened, &simulated.runs));
    let all = found.unknowns.iter().zip(&simulated.truth);
    let unknowns = all.map(|(learnt, truth)| {
        let Band { least, most, .. } = learnt.after;
        let band = natural(learnt, least)..=natural(learnt, most);
        (Some(learnt.kind), band.contains(truth))
    });
    let Band { least, most, .. } = found.prediction.unwrap().after;
    let next = (least..=most).contains(&simulated.next_hrc);
    unknowns.chain([(None, next)]).collect()
}

/// A heat that half hardens at one thickness and hardens at another, in a furnace and an oil of which
/// nothing is known but their bands.
#[test]
fn the_truth_lies_in_nine_bands_of_ten() {
    let jobs = Jobs::of(&[
        (plate("1095", 3.0, &[250.0]), 2),
        (plate("1095", 5.0, &[200.0]), 3),
    ]);
    let first = simulate(&jobs, 2, 0, 11);
    let straightened = straightened(&first.runs);
    let half = |half: u32| {
        let shops = (0..SHOPS / 2).map(|i| simulate(&jobs, 2, 2 * i + half, 11));
        shops
            .flat_map(|shop| covered(&straightened, &shop))
            .collect::<Vec<_>>()
    };
    let all: Vec<(Option<UnknownKind>, bool)> = std::thread::scope(|scope| {
        let other = scope.spawn(|| half(1));
        let mut all = half(0);
        all.extend(other.join().unwrap());
        all
    });
    let check = |kind: Option<UnknownKind>| {
        let known: Vec<bool> = all
            .iter()
            .filter(|(of, _)| *of == kind)
            .map(|(_, is)| *is)
            .collect();
        assert_eq!(known.len(), SHOPS as usize, "{kind:?}");
        let part = known.iter().filter(|is| **is).count() as f64 / known.len() as f64;
        assert!((0.85..=0.95).contains(&part), "{kind:?}: {part}");
    };
    check(None);
    for kind in [
        UnknownKind::FurnaceOffset,
        UnknownKind::QuenchSeverity,
        UnknownKind::Hardenability,
        UnknownKind::MartensiteStart,
        UnknownKind::TemperOvenOffset,
        UnknownKind::QuenchedHardness,
        UnknownKind::TemperedHardness,
        UnknownKind::Tester,
    ] {
        check(Some(kind));
    }
}

/// The hardness of a piece of a plan in a simulated shop, nothing being off about this very piece.
fn true_hrc(found: &Learned, simulated: &Simulated, route: &Route) -> f64 {
    let mut off = Deviation::default();
    for (learnt, truth) in found.unknowns.iter().zip(&simulated.truth) {
        match learnt.kind {
            UnknownKind::FurnaceOffset => off.soak_k = *truth,
            UnknownKind::QuenchSeverity => off.heat_transfer_factor = truth.exp(),
            UnknownKind::Hardenability => off.nose_time_factor = truth.exp(),
            UnknownKind::MartensiteStart => off.ms_k = *truth,
            UnknownKind::TemperOvenOffset => off.temper_k = *truth,
            UnknownKind::QuenchedHardness => off.quenched_hrc = *truth,
            UnknownKind::TemperedHardness => off.tempered_hrc = *truth,
            UnknownKind::Tester => {}
        }
    }
    let trial = trial(route, &off).unwrap();
    trial
        .finished(route)
        .unwrap()
        .hardness
        .unwrap()
        .hrc_carried()
}

#[test]
fn twenty_pieces_converge_and_two_wild_readings_do_not_wreck_it() {
    let route = plate("52100", 3.0, &[180.0]);
    let jobs = Jobs::of(&[(route.clone(), 20)]);
    let simulated = simulate(&jobs, 1, 5, 3);
    let straightened = straightened(&simulated.runs);
    let clean = estimated(straightened.clone());
    let width = |band: Band| band.most - band.least;
    let of = |found: &Learned| found.prediction.unwrap();
    // What a tester shows too much cannot be told from a hard heat: that much stays open.
    let truth = true_hrc(&clean, &simulated, &route);
    assert!(
        (of(&clean).after.mean - truth).abs() < 0.9,
        "{truth}: {:?}",
        of(&clean)
    );
    assert!(width(of(&clean).after) < 0.75 * width(of(&clean).before));
    let inside = clean.compared.iter().filter(|compared| {
        let Band { least, most, .. } = compared.after;
        (least..=most).contains(&compared.measured)
    });
    // Of forty nine in ten: 36 give or take 2.
    let inside = inside.count();
    assert!((31..=40).contains(&inside), "{inside}");
    assert!(
        clean
            .compared
            .iter()
            .all(|compared| width(compared.after) < width(compared.before))
    );
    let mut wild = simulated.runs.clone();
    for place in [4, 13] {
        wild[place].readings[1].value -= 15.0;
    }
    let wild = with_measured(&straightened, &wild);
    let robust = estimated(wild.clone());
    let plain = estimated(wild.plain());
    let moved = |found: &Learned| (of(found).after.mean - of(&clean).after.mean).abs();
    assert!(moved(&robust) < 0.35, "{}", moved(&robust));
    assert!(moved(&plain) > 2.5 * moved(&robust), "{}", moved(&plain));
    let outliers = |found: &Learned| -> Vec<(usize, &str)> {
        let all = found.compared.iter().filter(|compared| compared.is_outlier);
        all.map(|compared| (compared.run, compared.what)).collect()
    };
    let named = outliers(&robust);
    assert!(named.contains(&(4, "tempered_hrc")) && named.contains(&(13, "tempered_hrc")));
    // Of the others one in 140 lies so far off by chance.
    assert!(named.len() <= 4, "{named:?}");
    assert!(outliers(&clean).len() <= 2, "{:?}", outliers(&clean));
}
