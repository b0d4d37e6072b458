//! Rows of the check files with what the project predicts for them.
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
