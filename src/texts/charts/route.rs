//! The strip of the route.

pub const NO_STEPS: &str = "The route has no steps yet.";

#[inline]
pub fn summary(steps: usize, hottest: &str) -> String {
    let word = if steps == 1 { "step" } else { "steps" };
    format!("Temperature through the route: {steps} {word}, up to {hottest}.")
}
