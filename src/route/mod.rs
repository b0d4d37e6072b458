//! From a route to its outcome: the pipeline, the verdicts, the bands.

mod agitation;
mod allowed;
mod baths;
mod card;
mod caution_words;
mod cautions;
mod cold;
mod cold_words;
mod continuous;
mod departures;
mod edit;
mod end_quench;
mod error;
mod explain;
mod explain_prior;
mod explain_soak;
mod furnace;
mod furnace_ends;
mod handbook;
mod hardening;
mod in_lines;
mod in_use;
mod influence;
mod known;
mod margin;
mod other_quenches;
mod outcome;
mod outside;
mod places;
mod plan;
mod prepared;
mod prior;
mod quench_class;
mod quench_ends;
mod quench_notes;
mod quenched;
mod replay;
mod run;
mod sentence;
mod sentences;
mod settled;
mod shop_media;
mod snap;
mod soak_notes;
mod spread;
mod start;
#[cfg(test)]
mod survival_tests;
mod table;
mod taught;
mod tempering;
mod trial;
mod validate;
mod validate_prior;
mod verdict;
mod why;

/// Version of the models: what they say is kept with it, a prediction with its run and what a logbook
/// has taught. Raised by one whenever a route may come to another hardness by a tenth HRC, or to another
/// number by a tenth: what was learnt is the error of one version, and says nothing of the next. Words,
/// charts, files and what moves numbers by less, such as a finer mesh, change without it. Before it was
/// counted by itself runs had the version of the program, `0.1.0`, and what was learnt none.
pub const MODELS: &str = "6";

pub use agitation::{AGITATION_RANGE, bath_to_pass};
pub use allowed::RouteFieldError;
pub use baths::later_baths;
pub use card::{Card, CardRow, Depth, Expected, StepColour, card};
pub use caution_words::{Caution, caution_text};
pub use cautions::COARSE_GRAIN_ASTM;
pub(crate) use cautions::may_crack;
pub use continuous::{CRITICAL_HARDENED, ContinuousDiagram, continuous_diagram};
pub use departures::{Departure, Handbook, Setting, departure_lines, departures};
pub use edit::{StepRef, stir_after};
pub use end_quench::{CriticalDiameter, EndQuenchTest, end_quench_test};
pub use error::RouteError;
pub use explain::{Explanation, explain};
pub use furnace::Thermocouple;
pub use handbook::starting_steps;
pub(crate) use hardening::Hardening;
pub use in_lines::route_lines;
pub(crate) use in_use::Piece;
pub use in_use::{Direction, InUse, Property, Reason, in_use};
pub use known::{Known, Refusal};
pub use margin::{Margin, MarginSources, Neighbour, Verdict};
pub(crate) use other_quenches::compared_section;
pub use outcome::{
    ColdOutcome, FurnaceBand, Influence, InfluenceKind, Outcome, QuenchOutcome, QuenchTransformed,
    SnapOutcome, Stage, Step, TemperOutcome, TemperPoint,
};
pub(crate) use outcome::{UNEVEN_HRC, hrc_range};
pub use outside::Outside;
pub use places::PlaceOutcome;
pub use plan::{Cold, NextBath, Quench, Route, Soak, Target, Temper};
pub use prepared::{Prepared, overheating, run};
pub use prior::{
    ForgingWindow, LowerLimit, PieceState, PriorHeat, PriorOutcome, PriorStep, SlowCooling, Work,
    WorkedBy, cooling_words, forging_window, prior_line, prior_sentences, soft_hardness_words,
    step_cautions,
};
pub use quench_notes::quench_notes;
pub use recalesce_texts::grammar::inside_a_sentence;
pub use replay::{PlaceThen, Replay, Stopped};
pub use run::HardenedRoute;
pub use sentence::{NumberKey, Part, Sentence, Tone};
pub use sentences::{margin_words, place_name, place_words, sentences};
pub use shop_media::{of_its_kind, shop_media};
pub use soak_notes::{rough_duration, soak_notes};
pub use table::{QuenchTable, TableCell, TableRow, quench_table, quench_table_as_taught};
pub use taught::{Left, Taught, Tempered, hottest_temper_c};
pub use trial::{Deviation, QuenchedTrial, Trial, TrialSteel, finished_stage, trial};
pub(crate) use validate::{FURNACE_OFFSET_K, TEMPER_C};
pub use validate::{
    LONGEST_STEP_H, LONGEST_TEXT, MOST_LATER_BATHS, MOST_TEMPERS, SNAP_C, SNAP_MIN, validate,
};
pub use validate_prior::MOST_PRIOR_STEPS;
pub use verdict::HARDENED;
pub(crate) use verdict::NOSE_BAND;
pub use why::{Balance, Derivation, Input, Quantity, Typeset, beside, why};
