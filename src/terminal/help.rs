//! The text of `--help`, from the table of questions.

use super::catalogue::{self, Field, Question};
use crate::heat::media;
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
Section    {\"shape\":\"plate\",\"thickness_mm\":3}, {\"shape\":\"round\",\"diameter_mm\":12},
           {\"shape\":\"square\",\"side_mm\":12} or {\"shape\":\"blade\",\"edge_mm\":0.5,\"spine_mm\":4,
           \"height_mm\":30}, with `grind` \"convex\" if its flanks bulge
Quenchant  its name, listed below; with its bath at another temperature, °C,
           {\"listed\":\"oil_fast\",\"bath_c\":70}; or your own curve of surface temperature, °C, and W/m²K,
           log-linear between: {\"h_w_m2k\":[[70,300],[265,485],[850,600]],\"bath_c\":50,\"radiation\":false}
           with, if you like, `title` and `h_band_factor`, within which it is true either way

Predictions are for planning and teaching. A part whose failure can injure someone must be tested.
";

/// The whole text.
pub(super) fn text() -> String {
    let mut text = OPENING.to_owned();
    // Writing to a String cannot fail.
    let _ = write_quenchants(&mut text);
    for question in catalogue::all() {
        let _ = write_question(&mut text, question);
    }
    text
}

fn write_question(text: &mut String, question: &Question) -> std::fmt::Result {
    writeln!(text, "\n{}", question.name.to_uppercase())?;
    writeln!(text, "  {}", question.asks)?;
    if question.of_steel {
        write_entry(text, "composition", "wt %; or grade")?;
    }
    for Field {
        name,
        meaning,
        default,
    } in question.fields
    {
        match default {
            None => write_entry(text, name, meaning)?,
            Some(default) => {
                write_entry(text, name, &format!("{meaning} (left out: {default})"))?;
            }
        }
    }
    writeln!(text, "  Answer:")?;
    for (name, meaning) in question.answers {
        write_entry(text, name, meaning)?;
    }
    writeln!(text, "  Example:\n    {}", question.example)
}

/// A name and what it means, the meaning in lines of its own column.
fn write_entry(text: &mut String, name: &str, meaning: &str) -> std::fmt::Result {
    const WIDTH: usize = 96;
    const COLUMN: usize = 27;
    let mut line = format!("    {name}");
    if line.len() + 2 > COLUMN {
        writeln!(text, "{line}")?;
        line.clear();
    }
    line.push_str(&" ".repeat(COLUMN - 1 - line.len()));
    for word in meaning.split(' ') {
        if line.chars().count() + 1 + word.chars().count() > WIDTH {
            writeln!(text, "{line}")?;
            line = " ".repeat(COLUMN - 1);
        }
        line.push(' ');
        line.push_str(word);
    }
    writeln!(text, "{line}")
}

fn write_quenchants(text: &mut String) -> std::fmt::Result {
    writeln!(text, "\nQuenchants by name:")?;
    for medium in media() {
        write_entry(text, &medium.name, &medium.title.to_string())?;
    }
    Ok(())
}
