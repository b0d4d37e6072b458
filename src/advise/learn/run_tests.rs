//! When a step is taken.

use super::*;
use crate::advise::learn::simulated::{Jobs, plate, simulate};

/// A step of no length is as good as none, also where what is measured bends: each piece of these half
/// hardens.
#[test]
fn what_is_here_is_compared_with_what_is_there_by_the_same_bend() {
    let jobs = Jobs::of(&[(plate("1095", 5.0, &[200.0]), 3)]);
    for number in 0..8 {
        let shop = simulate(&jobs, 2, number, 11);
        let mut run = LearnRun::new(&shop.runs, None, None).unwrap();
        while run.estimate.is_none() {
            run.step().unwrap();
        }
        let here: Vec<Computed> = run.now.iter().map(|linear| linear.at).collect();
        assert!(run.is_better(&run.at, &here).unwrap());
    }
}
