//! What was learnt is not learnt again from runs that were foretold with it.

use super::simulated::{estimated, logged, plate, reading};
use super::*;
use crate::route::{Step, run};

/// Six soft pieces teach; a seventh, foretold with that, comes out as foretold. Compared with a
/// prediction that counts with what was learnt it would have nothing off, and pull back.
#[test]
fn a_run_as_foretold_with_what_was_learnt_moves_nothing() {
    let route = plate("52100", 3.0, &[180.0]);
    let soft = vec![reading(62.6, Step::Quench), reading(59.4, Step::Temper(1))];
    let mut runs = vec![logged(&route, soft); 6];
    let learned = |runs: &[LoggedRun], asked: &Route| {
        estimated(LearnRun::new(runs, None, Some(asked)).unwrap())
    };
    let first = learned(&runs, &route);
    let correction = Correction {
        is_on: true,
        ..first.correction()
    };
    let taught = Route {
        taught: correction.taught(&route),
        ..route.clone()
    };
    let foretold = run(&taught).unwrap();
    let at = |step| {
        let stage = foretold.stages.iter().find(|stage| stage.step == step);
        let hrc = stage.unwrap().hardness.unwrap().hrc_carried();
        reading(hrc, step)
    };
    let perfect = vec![at(Step::Quench), at(Step::Temper(1))];
    assert!(perfect[1].value < 60.5, "{perfect:?}");
    runs.push(logged(&route, perfect.clone()));
    let again = learned(&runs, &route);
    let kinds = [UnknownKind::QuenchedHardness, UnknownKind::TemperedHardness];
    for (before, after) in first.unknowns.iter().zip(&again.unknowns) {
        assert_eq!(before.kind, after.kind);
        if kinds.contains(&before.kind) {
            let [was, is] = [before.after.mean, after.after.mean];
            assert!(was < -0.5, "{was}");
            approx::assert_abs_diff_eq!(was, is, epsilon = 0.15);
        }
    }
    // Every run stands beside what is computed without it, whichever way it is handed in.
    let computed = |found: &Learned| -> Vec<f64> {
        let all = found.compared.iter();
        let tempered = all.filter(|compared| compared.what == "tempered_hrc");
        tempered.map(|compared| compared.before.mean).collect()
    };
    let before = computed(&again);
    assert_eq!(before.len(), 7);
    assert!(before.iter().all(|hrc| *hrc == before[0]));
    *runs.last_mut().unwrap() = logged(&taught, perfect);
    assert_eq!(learned(&runs, &taught), again);
}
