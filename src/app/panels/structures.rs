//! The structures that a piece can have before hardening, in words.

use crate::controls::{Alternative, Alternatives, Word};
use crate::parts::panels::{Panel, panel};
use crate::state::bench;
use leptos::prelude::*;
use recalesce::soak::StartingStructure;
use recalesce_texts::page as texts;

/// Round carbides first, then pearlite from coarse to fine.
const STRUCTURES: [Alternative<StartingStructure>; 8] = [
    Alternative {
        is: StartingStructure::Spheroidised,
        value: "spheroidised",
        title: StartingStructure::Spheroidised.title(),
        note: texts::steel::FINE_CARBIDES,
    },
    Alternative {
        is: StartingStructure::CoarseSpheroidised,
        value: "coarse_spheroidised",
        title: StartingStructure::CoarseSpheroidised.title(),
        note: texts::steel::COARSE_CARBIDES,
    },
    Alternative {
        is: StartingStructure::SubcriticalAnnealed,
        value: "subcritical_annealed",
        title: StartingStructure::SubcriticalAnnealed.title(),
        note: texts::steel::ANNEALED_CARBIDES,
    },
    Alternative {
        is: StartingStructure::LamellarPearlite,
        value: "lamellar_pearlite",
        title: StartingStructure::LamellarPearlite.title(),
        note: texts::steel::COARSE_PEARLITE,
    },
    Alternative {
        is: StartingStructure::MediumPearlite,
        value: "medium_pearlite",
        title: StartingStructure::MediumPearlite.title(),
        note: texts::steel::MEDIUM_PEARLITE,
    },
    Alternative {
        is: StartingStructure::FinePearlite,
        value: "fine_pearlite",
        title: StartingStructure::FinePearlite.title(),
        note: texts::steel::FINE_PEARLITE,
    },
    Alternative {
        is: StartingStructure::QuenchedAndRefined,
        value: "quenched_and_refined",
        title: StartingStructure::QuenchedAndRefined.title(),
        note: texts::steel::QUENCHED_AND_REFINED,
    },
    Alternative {
        is: StartingStructure::AsForged,
        value: "as_forged",
        title: StartingStructure::AsForged.title(),
        note: texts::steel::AS_FORGED,
    },
];

/// The list of structures.
#[component]
pub(crate) fn StructurePanel() -> impl IntoView {
    let bench = bench();
    view! {
        <Alternatives
            name=texts::steel::STRUCTURES
            all=&STRUCTURES
            chosen=Signal::derive(move || bench.route.with(|r| r.start))
            pick=move |structure| bench.change(|r| r.start = structure)
        />
    }
}

/// The structure of the stock as a word that sets it.
#[component]
pub(super) fn StructureWord(
    /// What the word sets, for the panel's head and for screen readers.
    name: &'static str,
) -> impl IntoView {
    let bench = bench();
    let start = Memo::new(move |_| bench.route.with(|r| r.start));
    view! {
        <Word text=Signal::derive(move || start.get().title().to_owned()) name=name>
            {panel(Panel::Structure)}
        </Word>
    }
    .into_any()
}
