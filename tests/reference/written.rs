//! Outcomes as they are written down, with the version of the models that gave them.
#![allow(unreachable_pub, reason = "a module of a test program")]

use crate::key_numbers::compare;
use serde_json::{Value, json};

/// Fields that no model gives: how many sentences of caution, why a route is refused, what a piece is called.
const WORDS: [&str; 3] = ["cautions", "refused", "piece"];

/// What a hardness may change by under the same version of the models, HRC: far less than what logbooks
/// teach. A finer mesh may do it.
const LEEWAY_HRC: f64 = 0.1;
/// What a temperature may, K.
const LEEWAY_K: f64 = 2.0;
/// What any other number may, as a part of itself, and near zero.
const LEEWAY_PART: f64 = 0.1;
const LEEWAY_NEAR_ZERO: f64 = 0.02;

/// The file.
pub struct Written {
    /// Version of the models.
    models: String,
    /// What this version gave when it was new: the leeway is counted from there, so that many small
    /// changes do not add up to another model.
    first: Vec<Value>,
    /// Outcomes of the routes in order.
    pub outcomes: Vec<Value>,
}

impl Written {
    pub fn read(text: &str) -> Self {
        let file: Value = serde_json::from_str(text).expect("outcomes as written");
        let list = |name: &str| file[name].as_array().expect("a list").clone();
        Self {
            models: file["models"].as_str().expect("a version").to_owned(),
            first: list("first"),
            outcomes: list("outcomes"),
        }
    }

    /// The file of other outcomes, one a line.
    pub fn text(&self, outcomes: &[Value], models: &str) -> String {
        let lines = |of: &[Value]| {
            let lines: Vec<String> = of.iter().map(ToString::to_string).collect();
            lines.join(",\n")
        };
        let first = if self.models == models {
            &self.first
        } else {
            outcomes
        };
        format!(
            "{{\"models\": {}, \"outcomes\": [\n{}\n], \"first\": [\n{}\n]}}\n",
            json!(models),
            lines(outcomes),
            lines(first)
        )
    }

    /// Whether what each route comes to now, and the version of the models, is what was written down.
    ///
    /// # Errors
    /// Where not, and what is to be done.
    pub fn stands(&self, now: &[Value], models: &str) -> Result<(), String> {
        let mut different = Vec::new();
        compare(&json!(self.outcomes), &json!(now), "", &mut different);
        if different.is_empty() && self.models == models {
            return Ok(());
        }
        let to_do = if self.may_be_replaced(now, models) {
            "Where that is meant, write them down by UPDATE_REFERENCE=1.".to_owned()
        } else {
            format!(
                "Numbers of the models move by more than {LEEWAY_HRC} HRC or a tenth of themselves, and \
                 `route::MODELS` is as it was when they were written down. What logbooks have taught is the \
                 error of the models that it was learnt with: where the change is meant, `route::MODELS` \
                 goes up by one, and only then are they written down anew."
            )
        };
        let versions = format!("written with models {}, now {models}", self.models);
        Err(format!("{}\n{versions}\n{to_do}", different.join("\n")))
    }

    /// Whether they may be written anew: the version of the models is another one, or what they give is
    /// what it gave at first, within the leeway, but for words, routes that are new and fields that are new.
    pub fn may_be_replaced(&self, now: &[Value], models: &str) -> bool {
        let mut all = self.first.iter().zip(now);
        self.models != models || all.all(|(written, now)| gives_the_same("", written, now))
    }
}

fn gives_the_same(field: &str, written: &Value, now: &Value) -> bool {
    match (written, now) {
        (Value::Object(written), Value::Object(now)) => {
            let mut of_models = written
                .iter()
                .filter(|(name, _)| !WORDS.contains(&name.as_str()));
            of_models.all(|(name, value)| {
                now.get(name)
                    .is_some_and(|now| gives_the_same(name, value, now))
            })
        }
        (Value::Array(written), Value::Array(now)) => {
            let mut pairs = written.iter().zip(now);
            written.len() == now.len()
                && pairs.all(|(written, now)| gives_the_same(field, written, now))
        }
        (Value::Number(written), Value::Number(now)) => {
            let [a, b] = [written, now].map(|number| number.as_f64().expect("a double"));
            let leeway = if field.contains("hrc") {
                LEEWAY_HRC
            } else if field.ends_with("_c") {
                LEEWAY_K
            } else {
                LEEWAY_NEAR_ZERO + LEEWAY_PART * a.abs()
            };
            (a - b).abs() <= leeway
        }
        (written, now) => written == now,
    }
}
