//! The fits of this project, run again: what they are fitted to, and their error on what is left out of
//! the fit, in folds that never change.
#![allow(unreachable_pub, reason = "a module of a test program")]

pub mod annealed;
pub mod dividing_factor;
pub mod grain;
pub mod isothermal;
pub mod tempering;

use recalesce::sources::LeftOut;
use std::thread;

/// Errors of predictions: computed less measured.
#[derive(Debug, Clone, Copy)]
pub struct Errors {
    pub count: usize,
    pub mean: f64,
    pub rms: f64,
    pub bias: f64,
}

impl Errors {
    pub fn of(errors: impl IntoIterator<Item = f64>) -> Self {
        let (mut count, mut sums) = (0, [0.0; 3]);
        for error in errors {
            count += 1;
            sums[0] += error.abs();
            sums[1] += error * error;
            sums[2] += error;
        }
        let [mean, square, bias] = sums.map(|sum| sum / count as f64);
        Self {
            count,
            mean,
            rms: square.sqrt(),
            bias,
        }
    }
}

/// What a fit comes to.
#[derive(Debug)]
pub struct Fit {
    pub title: &'static str,
    pub unit: &'static str,
    /// What is left out together, and how many of them there are.
    pub fold: &'static str,
    pub folds: usize,
    /// By the constants that the same code finds from all data.
    pub fitted: Errors,
    /// Each predicted without what is left out with it.
    pub left_out: Errors,
    /// By the constants of the program.
    pub stored: Errors,
    /// What the program tells of its error, where it does.
    pub told: Option<LeftOut>,
}

impl Fit {
    /// Logarithms of factors are told as factors.
    fn shown(&self, error: f64) -> f64 {
        if self.unit == "factor" {
            error.exp()
        } else {
            error
        }
    }

    /// The error that [`LeftOut`] tells.
    fn error_left_out(&self) -> f64 {
        if self.unit == "factor" {
            self.left_out.rms.exp()
        } else {
            self.left_out.mean
        }
    }

    /// Whether the program tells the error that is found here.
    pub fn is_told_rightly(&self) -> bool {
        self.told.is_none_or(|told| {
            let same = (told.fold, told.folds, told.unit) == (self.fold, self.folds, self.unit);
            same && (told.error - self.error_left_out()).abs() < 0.03 * told.error.max(1.0)
        })
    }
}

/// A table of fits.
pub fn table(fits: &[Fit]) -> String {
    let mut text = format!(
        "{:<42}{:>5}{:>16}{:>24}{:>24}{:>24}  unit\n",
        "fit of this project",
        "rows",
        "left out each",
        "mean rms left out",
        "fitted",
        "the program's"
    );
    for fit in fits {
        let errors = [fit.left_out, fit.fitted, fit.stored].map(|errors| {
            let told = [errors.mean, errors.rms, errors.bias];
            let [mean, rms, bias] = told.map(|error| fit.shown(error));
            format!("{mean:.2} {rms:.2} {bias:.2}")
        });
        let [left_out, fitted, stored] = errors;
        text += &format!(
            "{:<42}{:>5}{:>16}{left_out:>24}{fitted:>24}{stored:>24}  {}\n",
            fit.title,
            fit.left_out.count,
            format!("{} {}s", fit.folds, fit.fold),
            fit.unit,
        );
    }
    text
}

/// What a function makes of each of a list, on as many threads as there are cores.
pub fn in_parallel<T: Sync, R: Send>(list: &[T], of: impl Fn(&T) -> R + Sync) -> Vec<R> {
    let threads = thread::available_parallelism().map_or(1, usize::from);
    let per_thread = list.len().div_ceil(threads).max(1);
    thread::scope(|scope| {
        let workers: Vec<_> = list
            .chunks(per_thread)
            .map(|chunk| scope.spawn(|| chunk.iter().map(&of).collect::<Vec<_>>()))
            .collect();
        let done = workers.into_iter();
        done.flat_map(|worker| worker.join().expect("a fold"))
            .collect()
    })
}
