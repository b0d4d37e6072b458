//! What opens on the bench: the panels of the words, of the numbers and of the charts.

use crate::browser::{decimals, storage};
use crate::panels::acting::Acting;
use crate::panels::along::Along;
use crate::panels::dock::Dock;
use crate::panels::drawn::Drawn;
use crate::panels::furnace::FurnacePanel;
use crate::panels::hardenability::{ContinuousInside, EndQuenchInside};
use crate::panels::in_use::InUseInside;
use crate::panels::medium_facts::MediumFacts;
use crate::panels::opened::Explained;
use crate::panels::own::OwnPanel;
use crate::panels::phase_table::PhaseTables;
use crate::panels::piece::{MediumList, NamePanel, TargetPanel};
use crate::panels::prior::PriorInside;
use crate::panels::quench::{AgitationPanel, ColdPanel, OnTheWayPanel};
use crate::panels::quench_below::QuenchBelow;
use crate::panels::quench_speed::pass;
use crate::panels::replay::ReplayInside;
use crate::panels::save_chart::SaveChart;
use crate::panels::second_bath::SecondBathPanel;
use crate::panels::section::SectionPanel;
use crate::panels::shelf_join::join_shelf;
use crate::panels::soak::{SoakTemperaturePanel, SoakTimePanel};
use crate::panels::steel::SteelPanel;
use crate::panels::structures::StructurePanel;
use crate::panels::table::QuenchTablePanel;
use crate::panels::temper::{CountPanel, TemperBelow, TemperTemperaturePanel, TemperTimePanel};
use crate::plot::Shown;
use crate::state::{Bench, bench};
use leptos::ev::PointerEvent;
use leptos::prelude::*;
use leptos::task::spawn_local;
use recalesce::heat::MediumChoice;
use recalesce::route::NumberKey;
use recalesce_texts::page as texts;
use wasm_split_helpers::{SplitLoaderError, wasm_split};

/// A panel.
#[derive(Clone, Copy)]
pub(crate) enum Panel {
    /// What the piece is.
    Name,
    /// Its steel.
    Steel,
    /// Its section.
    Section,
    /// The furnace.
    Furnace,
    /// The quenchants.
    Media,
    /// The hardness wanted.
    Target,
    /// Temperature of the soak.
    SoakTemperature,
    /// Its time.
    SoakTime,
    /// Structure of the stock.
    Structure,
    /// Movement of the bath.
    Agitation,
    /// Between furnace and bath.
    OnTheWay,
    /// The bath that follows.
    SecondBath,
    /// Cold treatment.
    Cold,
    /// Temperature of the temper.
    TemperTemperature,
    /// Its time.
    TemperTime,
    /// How many tempers.
    TemperCount,
    /// Steps before hardening.
    Prior,
    /// The phases as a table.
    PhaseTable,
    /// The quench across the section, at a place on the cooling curve.
    Replay(Along),
    /// What is known of a quenchant.
    MediumFacts(Memo<Option<MediumChoice>>),
    /// Other rates of cooling.
    Continuous,
    /// The end-quench bar.
    EndQuench,
    /// What the route means in use.
    InUse,
    /// What the logbook has taught, where it acts.
    Acting,
    /// How sure it is by pieces that are drawn.
    Drawn,
    /// The figures at the foot of the window.
    Dock,
    /// What stands behind a number.
    Opened(NumberKey),
    /// The user's own quenchant.
    Own,
    /// Which quench still does it.
    QuenchTable,
    /// What stands below the cooling curves.
    QuenchBelow,
    /// What stands below the curve of the temper.
    TemperBelow,
    /// A place on the cooling curve.
    Along(Along),
    /// Its ring on the chart.
    AlongRing(Along),
    /// What saves a chart, under that name.
    SaveChart(&'static str, Shown),
}

/// What the part can do.
#[derive(Clone, Copy)]
pub(crate) struct Panels {
    /// Shows a panel.
    show: fn(Panel) -> AnyView,
    /// Takes the place on a cooling curve that is pointed at.
    point: fn(Along, &PointerEvent),
    /// The value of the quench's handle with which the curve passes a column of the chart.
    pass: fn(Bench, Shown, Option<f64>, f64) -> Option<f64>,
    /// Shows numbers with a decimal comma, or with a point.
    pub(crate) show_comma: fn(Bench, bool),
    /// Joins the shelf with what another window has made of it.
    pub(crate) join_shelf: fn(Bench),
    /// Offers as a file what could neither be read nor set aside.
    pub(crate) offer_held: fn(Bench),
}

/// Offers one text that is held, and says where the browser takes none, or that there is one more.
fn offer_held(bench: Bench) {
    if !storage::offer_held() {
        bench.warn(texts::general::HELD_NOT_SAVED.to_owned());
    } else if storage::holds() {
        bench.warn(texts::general::HELD_TOO.to_owned());
    }
}

impl Panels {
    pub(crate) fn point(self, along: Along, event: &PointerEvent) {
        (self.point)(along, event);
    }

    /// See [`pass`].
    pub(crate) fn pass(
        self,
        bench: Bench,
        shown: Shown,
        column: Option<f64>,
        sooner: f64,
    ) -> Option<f64> {
        (self.pass)(bench, shown, column, sooner)
    }
}

/// Brings the part.
#[wasm_split(panels, fallible)]
pub(super) fn panels() -> Result<Panels, SplitLoaderError> {
    Ok(Panels {
        show,
        point: Along::point,
        pass,
        show_comma,
        join_shelf,
        offer_held,
    })
}

fn show_comma(bench: Bench, has_comma: bool) {
    spawn_local(async move {
        decimals::show(has_comma).await;
        bench.has_decimal_comma.set(decimals::have_comma());
        // Charts are drawn anew, with new widths of their texts, as when the typeface comes.
        bench.has_typeface.set(true);
    });
}

/// A panel, once it is there.
pub(crate) fn panel(panel: Panel) -> AnyView {
    bench().parts.panels.view(move |part| (part.show)(panel))
}

fn show(panel: Panel) -> AnyView {
    match panel {
        Panel::Name => view! { <NamePanel /> }.into_any(),
        Panel::Steel => view! { <SteelPanel /> }.into_any(),
        Panel::Section => view! { <SectionPanel /> }.into_any(),
        Panel::Furnace => view! { <FurnacePanel /> }.into_any(),
        Panel::Media => view! { <MediumList /> }.into_any(),
        Panel::Target => view! { <TargetPanel /> }.into_any(),
        Panel::SoakTemperature => view! { <SoakTemperaturePanel /> }.into_any(),
        Panel::SoakTime => view! { <SoakTimePanel /> }.into_any(),
        Panel::Structure => view! { <StructurePanel /> }.into_any(),
        Panel::Agitation => view! { <AgitationPanel /> }.into_any(),
        Panel::OnTheWay => view! { <OnTheWayPanel /> }.into_any(),
        Panel::SecondBath => view! { <SecondBathPanel /> }.into_any(),
        Panel::Cold => view! { <ColdPanel /> }.into_any(),
        Panel::TemperTemperature => view! { <TemperTemperaturePanel /> }.into_any(),
        Panel::TemperTime => view! { <TemperTimePanel /> }.into_any(),
        Panel::TemperCount => view! { <CountPanel /> }.into_any(),
        Panel::Prior => view! { <PriorInside /> }.into_any(),
        Panel::PhaseTable => view! { <PhaseTables /> }.into_any(),
        Panel::Replay(along) => view! { <ReplayInside along=along /> }.into_any(),
        Panel::MediumFacts(choice) => view! { <MediumFacts choice=choice /> }.into_any(),
        Panel::Continuous => view! { <ContinuousInside /> }.into_any(),
        Panel::EndQuench => view! { <EndQuenchInside /> }.into_any(),
        Panel::InUse => view! { <InUseInside /> }.into_any(),
        Panel::Acting => view! { <Acting /> }.into_any(),
        Panel::Drawn => view! { <Drawn /> }.into_any(),
        Panel::Dock => view! { <Dock /> }.into_any(),
        Panel::Opened(key) => view! { <Explained key=key /> }.into_any(),
        Panel::Own => view! { <OwnPanel /> }.into_any(),
        Panel::QuenchTable => view! { <QuenchTablePanel /> }.into_any(),
        Panel::QuenchBelow => view! { <QuenchBelow /> }.into_any(),
        Panel::TemperBelow => view! { <TemperBelow /> }.into_any(),
        Panel::Along(along) => along.line(),
        Panel::AlongRing(along) => along.ring(),
        Panel::SaveChart(file, shown) => view! { <SaveChart file=file shown=shown /> }.into_any(),
    }
}
