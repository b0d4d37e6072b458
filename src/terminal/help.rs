//! The text of `--help`, from the table of questions.

use super::catalogue::{self, Field, Question};
use std::fmt::Write;

const OPENING: &str = "\
Recalesce: what a hardenable steel does in the furnace, the quench and the temper.

Reads one JSON object per line on standard input and writes one per line, in order:

  echo '{\"question\":\"probe\",\"medium\":\"water20\"}' | recalesce

A question has the field `question` and the fields listed below; `id`, of any type, is given back.
An error is an object with `error` and `line`; the lines after it are answered. Empty lines are
skipped. Unknown and missing fields are errors. Every number has its unit in its name.

Steel      `composition` in wt %: {\"c\":1.0,\"mn\":0.35,\"si\":0.25,\"cr\":1.45}, of c mn si cr ni mo v w
           p s, iron the balance; or `grade`, an AISI/SAE, UNS, EN name or material number, for
           its nominal composition, which the answer then names. With both, `composition` counts.
Section    {\"shape\":\"plate\",\"thickness_mm\":3}, {\"shape\":\"round\",\"diameter_mm\":12} or
           {\"shape\":\"blade\",\"edge_mm\":0.5,\"spine_mm\":4,\"height_mm\":30}
Quenchant  its name, or {\"h_w_m2k\":[[70,300],[265,485],[850,600]],\"bath_c\":50,\"radiation\":false}:
           surface temperature in °C and W/m²K, log-linear between

Predictions are for planning and teaching. A part whose failure can injure someone must be tested.
";

/// The whole text.
pub(super) fn text() -> String {
    let mut text = OPENING.to_owned();
    for question in catalogue::all() {
        // Writing to a String cannot fail.
        let _ = write_question(&mut text, question);
    }
    text
}

fn write_question(text: &mut String, question: &Question) -> std::fmt::Result {
    writeln!(text, "\n{}", question.name.to_uppercase())?;
    writeln!(text, "  {}", question.asks)?;
    if question.of_steel {
        writeln!(text, "    {:<14}wt %; or grade", "composition")?;
    }
    for Field {
        name,
        meaning,
        default,
    } in question.fields
    {
        match default {
            None => writeln!(text, "    {name:<14}{meaning}")?,
            Some(default) => writeln!(text, "    {name:<14}{meaning} (left out: {default})")?,
        }
    }
    writeln!(text, "  Answer:")?;
    for (name, meaning) in question.answers {
        writeln!(text, "    {name}: {meaning}")?;
    }
    writeln!(text, "  Example:\n    {}", question.example)
}
