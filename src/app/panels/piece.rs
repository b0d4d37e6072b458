//! The piece as a sentence: each underlined word is a control.

use super::bath::BathField;
use super::opening::Opening;
use super::own_kept::last_found;
use crate::controls::{Choice, Entry, Typed, Word, quantities};
use crate::parts::panels::{Panel, panel};
use crate::state::bench;
use leptos::prelude::*;
use recalesce::heat::{Medium, MediumChoice, OwnMedium, Section};
use recalesce::route::{Quench, Route, inside_a_sentence};
use recalesce::units::{
    LengthUnit, TemperatureScale, format_fixed, format_given_length, format_temperature_band,
};
use recalesce_texts::page as texts;

/// Longest name of a piece, letters.
const LONGEST_NAME: usize = 60;

/// Leads from the list of quenchants to where the user's own are found.
const OWN: &str = "own";

/// The size that names a section in the sentence.
pub(super) fn size_words(section: &Section, unit: LengthUnit) -> (String, &'static str) {
    match *section {
        Section::Plate { thickness_mm } => (
            format_given_length(thickness_mm, unit),
            texts::piece::SIZE_THICK,
        ),
        Section::Round { diameter_mm } => (
            format_given_length(diameter_mm, unit),
            texts::piece::SIZE_ROUND,
        ),
        Section::Square { side_mm } => (
            format_given_length(side_mm, unit),
            texts::piece::SIZE_SQUARE,
        ),
        Section::Blade { spine_mm, .. } => (
            format_given_length(spine_mm, unit),
            texts::piece::AT_THE_SPINE,
        ),
    }
}

/// The target as the sentence shows it: one number when the range is narrow.
fn target_words(least_hrc: f64, most_hrc: f64) -> String {
    if most_hrc - least_hrc <= 2.0 {
        let middle = 0.5 * (least_hrc + most_hrc);
        let decimals = usize::from((middle - middle.round()).abs() > 0.01);
        format!("{}\u{a0}HRC", format_fixed(middle, decimals))
    } else {
        format!(
            "{}\u{2013}{}\u{a0}HRC",
            format_fixed(least_hrc, 0),
            format_fixed(most_hrc, 0)
        )
    }
}

/// The quenchant's title as a word of a sentence. A name that the user gave stays as it is.
pub(crate) fn medium_words(choice: &MediumChoice, scale: TemperatureScale) -> String {
    let title = choice.resolve().map_or_else(
        |error| error.words(scale),
        |medium| medium.title.words(scale),
    );
    match choice {
        MediumChoice::Own(own) if own.title.is_some() => title,
        _ => inside_a_sentence(&title),
    }
}

/// All baths of a quench as words of a sentence.
pub(crate) fn bath_words(quench: &Quench, scale: TemperatureScale) -> String {
    let first = medium_words(&quench.medium, scale);
    quench.then.iter().fold(first, |words, next| {
        texts::piece::then(&words, &medium_words(&next.medium, scale))
    })
}

/// A quenchant of the list; the one in use as it is used, as its bath may not be the listed one.
pub(super) fn as_used<'m>(listed: &'m Medium, used: Option<&'m Medium>) -> &'m Medium {
    used.filter(|used| used.name == listed.name)
        .unwrap_or(listed)
}

/// What stands in the list of quenchants for one of the user's own, by its place among these.
fn of_own(place: usize) -> String {
    format!("{OWN}-{place}")
}

/// The list of quenchants.
#[component]
pub(crate) fn MediumList() -> impl IntoView {
    let bench = bench();
    let last_found = last_found();
    // Those of the user's own that have been found: the one in use, and the one found last.
    let found = Memo::new(move |_| {
        let used = bench.route.with(|r| match &r.quench.medium {
            MediumChoice::Own(own) => Some(own.clone()),
            MediumChoice::Named(_) | MediumChoice::At(_) => None,
        });
        let other = last_found
            .clone()
            .filter(|last| used.as_ref() != Some(last));
        used.into_iter().chain(other).collect::<Vec<OwnMedium>>()
    });
    let entries = Signal::derive(move || {
        let scale = bench.scale.get();
        let used = bench.route.with(|r| r.quench.medium.resolve().ok());
        let listed = recalesce::heat::media().iter().map(|listed| {
            let medium = as_used(listed, used.as_ref());
            Entry {
                value: medium.name.clone(),
                title: medium.title.words(scale),
                note: medium.describe(scale),
            }
        });
        let mut entries: Vec<Entry> = listed.collect();
        found.with(|found| {
            for (place, own) in found.iter().enumerate() {
                if let Ok(medium) = own.resolve() {
                    entries.push(Entry {
                        value: of_own(place),
                        title: medium.title.words(scale),
                        note: texts::media::own_described(&medium.describe(scale)),
                    });
                }
            }
        });
        entries.push(Entry {
            value: OWN.to_owned(),
            title: texts::piece::OWN_QUENCHANT.to_owned(),
            note: texts::piece::OWN_QUENCHANT_FROM.to_owned(),
        });
        entries
    });
    let chosen = Signal::derive(move || {
        let in_use = |route: &Route| route.quench.medium.listed().map(ToOwned::to_owned);
        bench.route.with(in_use).unwrap_or_else(|| of_own(0))
    });
    let pick = move |name: String| {
        if name == OWN {
            return super::own::lead();
        }
        let own = found.with_untracked(|found| {
            let mut places = 0..found.len();
            let place = places.find(|place| of_own(*place) == name)?;
            found.get(place).cloned()
        });
        let medium = own.map_or(MediumChoice::Named(name), MediumChoice::Own);
        bench.change(|r| r.quench.take_quenchant(medium));
    };
    let used = Memo::new(move |_| bench.route.with(|r| Some(r.quench.medium.clone())));
    view! {
        <BathField
            chosen=used
            set=Callback::new(move |choice| bench.change(|r| r.quench.medium = choice))
        />
        <Opening title=texts::piece::KNOWN_OF_QUENCHANT panel=Panel::MediumFacts(used) />
        <Choice
            name=texts::piece::QUENCHANTS
            entries=entries
            chosen=chosen
            pick=pick
        />
    }
}

/// What the piece is.
#[component]
pub(crate) fn NamePanel() -> impl IntoView {
    let bench = bench();
    view! {
        <h4>{texts::piece::WHAT_IT_IS}</h4>
        <input
            class="text"
            type="text"
            aria-label=texts::piece::NAME_OF_PIECE
            maxlength=LONGEST_NAME
            prop:value=move || bench.route.with(|r| r.piece.clone())
            on:input:target=move |event| {
                let name = event.target().value();
                bench.change(|r| r.piece = name);
            }
        />
    }
}

/// The hardness wanted.
#[component]
pub(crate) fn TargetPanel() -> impl IntoView {
    let bench = bench();
    let target = Memo::new(move |_| bench.route.with(|r| r.target));
    view! {
        <Typed
            label=texts::piece::LOWEST_HARDNESS
            quantity=Signal::stored(
                quantities::plain("\u{a0}HRC", 1, (20.0, 68.0), 0.5, texts::piece::WRITE_THE_LEAST),
            )
            value=Signal::derive(move || target.get().least_hrc)
            set=move |hrc| {
                bench
                    .change(|r| {
                        r.target.least_hrc = hrc;
                        r.target.most_hrc = r.target.most_hrc.max(hrc);
                    })
            }
        />
        <Typed
            label=texts::piece::HIGHEST
            quantity=Signal::stored(
                quantities::plain("\u{a0}HRC", 1, (20.0, 68.0), 0.5, texts::piece::WRITE_THE_MOST),
            )
            value=Signal::derive(move || target.get().most_hrc)
            set=move |hrc| {
                bench
                    .change(|r| {
                        r.target.most_hrc = hrc;
                        r.target.least_hrc = r.target.least_hrc.min(hrc);
                    })
            }
        />
    }
}

/// The sentence.
#[component]
pub(crate) fn Piece() -> impl IntoView {
    let bench = bench();
    let route = bench.route;
    let piece = Signal::derive(move || {
        let name = route.with(|r| r.piece.trim().to_owned());
        if name.is_empty() {
            texts::piece::PIECE.to_owned()
        } else {
            name
        }
    });
    let grade = Signal::derive(move || {
        route.with(|r| {
            r.grade
                .clone()
                .unwrap_or_else(|| texts::piece::OWN_STEEL.to_owned())
        })
    });
    let designations =
        move || route.with(|r| r.listed_grade().map(super::steel::other_designations));
    let size = Memo::new(move |_| size_words(&route.with(|r| r.section), bench.length.get()));
    let target = Memo::new(move |_| route.with(|r| r.target));
    view! {
        <p class="piece">
            <span>
                {move || texts::piece::article(&piece.get())}
                <Word text=piece name=texts::piece::THE_PIECE is_own=true>
                    {panel(Panel::Name)}
                </Word> {texts::piece::OF}
                <Word text=grade name=texts::piece::THE_STEEL mark=",">
                    {panel(Panel::Steel)}
                </Word> " "
                <Word text=Signal::derive(move || size.get().0) name=texts::piece::SECTION>
                    {panel(Panel::Section)}
                </Word> {move || size.get().1} {texts::piece::IN_A_FURNACE}
                <Word
                    text=Signal::derive(move || format_temperature_band(
                        route.with(Route::soak_band_k),
                        bench.scale.get(),
                    ))
                    name=texts::piece::FURNACE
                    mark=","
                >
                    {panel(Panel::Furnace)}
                </Word> {texts::piece::INTO}
                <Word
                    text=Signal::derive(move || {
                        let scale = bench.scale.get();
                        route.with(|r| medium_words(&r.quench.medium, scale))
                    })
                    name=texts::piece::QUENCHANT
                    is_own=Signal::derive(move || {
                        route.with(|r| matches!(r.quench.medium, MediumChoice::Own(_)))
                    })
                    mark=","
                >
                    {panel(Panel::Media)}
                </Word> {texts::piece::FOR}
                <Word
                    text=Signal::derive(move || {
                        let range = target.get();
                        target_words(range.least_hrc, range.most_hrc)
                    })
                    name=texts::piece::TARGET
                    mark="."
                >
                    {panel(Panel::Target)}
                </Word>
            </span>
            <small>{designations}</small>
        </p>
    }
    .into_any()
}
