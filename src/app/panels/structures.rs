//! The structures that a piece can have before hardening, in words.

use crate::controls::{Alternative, Alternatives, Word};
use crate::parts::panels::{Panel, panel};
use crate::state::bench;
use leptos::prelude::*;
use recalesce::soak::StartingStructure;

/// Round carbides first, then pearlite from coarse to fine.
const STRUCTURES: [Alternative<StartingStructure>; 8] = [
    Alternative {
        is: StartingStructure::Spheroidised,
        value: "spheroidised",
        title: StartingStructure::Spheroidised.title(),
        note: "round carbides, as the mill delivers it for machining",
    },
    Alternative {
        is: StartingStructure::CoarseSpheroidised,
        value: "coarse_spheroidised",
        title: StartingStructure::CoarseSpheroidised.title(),
        note: "round carbides of twice the size, from a long anneal",
    },
    Alternative {
        is: StartingStructure::SubcriticalAnnealed,
        value: "subcritical_annealed",
        title: StartingStructure::SubcriticalAnnealed.title(),
        note: "small round carbides, from an hour or two just below A1",
    },
    Alternative {
        is: StartingStructure::LamellarPearlite,
        value: "lamellar_pearlite",
        title: StartingStructure::LamellarPearlite.title(),
        note: "coarse, from a slow cool in the furnace",
    },
    Alternative {
        is: StartingStructure::MediumPearlite,
        value: "medium_pearlite",
        title: StartingStructure::MediumPearlite.title(),
        note: "from a cool in ashes or vermiculite",
    },
    Alternative {
        is: StartingStructure::FinePearlite,
        value: "fine_pearlite",
        title: StartingStructure::FinePearlite.title(),
        note: "from an air cool after normalising",
    },
    Alternative {
        is: StartingStructure::QuenchedAndRefined,
        value: "quenched_and_refined",
        title: StartingStructure::QuenchedAndRefined.title(),
        note: "very fine carbides in tempered martensite",
    },
    Alternative {
        is: StartingStructure::AsForged,
        value: "as_forged",
        title: StartingStructure::AsForged.title(),
        note: "coarse pearlite in large grains, not normalised",
    },
];

/// The list of structures.
#[component]
pub(crate) fn StructurePanel() -> impl IntoView {
    let bench = bench();
    view! {
        <Alternatives
            name="Structures"
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
