//! Rows of the check files with what the project predicts for them.
#![allow(
    unreachable_pub,
    dead_code,
    reason = "the rows are shared by several test programs"
)]

pub mod bar;
pub mod equilibrium;
pub mod forging;
pub mod hardness;
pub mod heat;
pub mod isothermal_fit;
pub mod normalised;
pub mod rounds;
pub mod soak;
pub mod transform;

/// Mark at the end of a quantity whose tolerance is a factor above 1, either way.
pub const FACTOR: &str = "(factor)";

/// One outside value with its prediction.
#[derive(Debug)]
pub struct Row {
    pub quantity: String,
    pub case: String,
    pub predicted: Result<f64, String>,
    pub value: f64,
    pub tolerance: f64,
    pub source: String,
}

impl Row {
    /// Whether the tolerance is a factor.
    pub fn is_factor(&self) -> bool {
        self.quantity.ends_with(FACTOR)
    }

    /// Predicted less measured, or the logarithm of their ratio where the tolerance is a factor;
    /// none when the model refuses.
    pub fn error(&self) -> Option<f64> {
        let predicted = *self.predicted.as_ref().ok()?;
        Some(if self.is_factor() {
            (predicted / self.value).ln()
        } else {
            predicted - self.value
        })
    }

    /// Whether the prediction lies inside the tolerance; a refusal does not.
    pub fn is_inside(&self) -> bool {
        let allowed = if self.is_factor() {
            self.tolerance.ln()
        } else {
            self.tolerance
        };
        self.error().is_some_and(|error| error.abs() <= allowed)
    }
}

/// What a group of rows comes to: errors as in [`Row::error`].
#[derive(Debug, Default, Clone, Copy)]
pub struct Score {
    pub rows: usize,
    pub predicted: usize,
    pub inside: usize,
    pub bias: f64,
    pub mean: f64,
    pub rms: f64,
    pub largest: f64,
}

/// Scores rows.
pub fn score<'a>(rows: impl IntoIterator<Item = &'a Row>) -> Score {
    let mut score = Score::default();
    for row in rows {
        score.rows += 1;
        score.inside += usize::from(row.is_inside());
        if let Some(error) = row.error() {
            score.predicted += 1;
            score.bias += error;
            score.mean += error.abs();
            score.rms += error * error;
            score.largest = score.largest.max(error.abs());
        }
    }
    let count = score.predicted.max(1) as f64;
    score.bias /= count;
    score.mean /= count;
    score.rms = (score.rms / count).sqrt();
    score
}

/// Every row that any room predicts.
pub fn all() -> Vec<Row> {
    let mut rows = equilibrium::rows();
    rows.extend(soak::rows());
    rows.extend(forging::rows());
    rows.extend(heat::rows());
    rows.extend(transform::rows());
    rows.extend(rounds::rows());
    rows.extend(hardness::rows());
    rows.extend(normalised::rows());
    rows
}
