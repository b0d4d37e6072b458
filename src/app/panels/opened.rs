//! An opened number: what stands behind it, and the way on to what stands behind that.

use super::save_table::SaveTable;
use crate::parts::panels::{Panel, panel};
use crate::state::{Bench, bench};
use leptos::html::{Dialog, H2};
use leptos::prelude::*;
use recalesce::route::{Balance, Derivation, NumberKey, beside, explain, why};
use recalesce::units::TemperatureScale;
use recalesce_texts::page as texts;
use recalesce_texts::route::why::{HOW, SOURCE};

/// The way that was gone from number to number.
#[derive(Clone, Copy)]
struct Trail {
    keys: RwSignal<Vec<NumberKey>>,
    at: RwSignal<usize>,
    heading: NodeRef<H2>,
}

impl Trail {
    fn from(key: NumberKey) -> Self {
        Self {
            keys: RwSignal::new(vec![key]),
            at: RwSignal::new(0),
            heading: NodeRef::new(),
        }
    }

    fn now(self) -> Option<NumberKey> {
        self.keys.with(|keys| keys.get(self.at.get()).copied())
    }

    /// Goes back or forth on the way.
    fn go(self, place: usize) {
        self.at.set(place);
        self.begin_reading();
    }

    /// Goes on to a number; what lay ahead is left.
    fn on(self, key: NumberKey) {
        let next = self.at.get_untracked() + 1;
        self.keys.update(|keys| {
            keys.truncate(next);
            keys.push(key);
        });
        self.go(next);
    }

    /// The button that was pressed is gone: who reads by ear or by key goes on from the title.
    fn begin_reading(self) {
        request_animation_frame(move || {
            if let Some(heading) = self.heading.get_untracked() {
                // One that cannot take the focus leaves it where it was.
                let _ = heading.focus();
            }
        });
    }

    /// The way, from the number that was opened first; nothing before it has led anywhere.
    fn crumbs(self, bench: Bench) -> impl IntoView {
        move || {
            let keys = self.keys.get();
            if keys.len() < 2 {
                return None;
            }
            let outcome = bench.outcome()?;
            let scale = bench.scale.get();
            let steps = bench.route.with(|route| {
                let each = keys.iter().enumerate();
                each.map(|(place, key)| {
                    let title = explain(*key, route, &outcome, scale).title;
                    let is_here = move || (self.at.get() == place).then_some("step");
                    view! {
                        <li>
                            <button
                                type="button"
                                aria-current=is_here
                                on:click=move |_| self.go(place)
                            >
                                {title}
                            </button>
                        </li>
                    }
                })
                .collect_view()
            });
            Some(view! {
                <nav class="trail" aria-label=texts::why::THE_WAY>
                    <ol>{steps}</ol>
                </nav>
            })
        }
    }
}

/// Pieces of MathML between which a line may break.
fn set_in_type(pieces: &[String]) -> String {
    let each = pieces
        .iter()
        .map(|piece| format!("<math displaystyle=\"true\">{piece}</math>"));
    each.collect::<Vec<_>>().join(" ")
}

/// What goes in as a table for a spreadsheet, which has no letters set in type.
fn sheet(derivation: &Derivation) -> Vec<Vec<String>> {
    let titles = [
        texts::why::SYMBOL,
        texts::why::WHAT_IT_IS,
        texts::why::VALUE,
    ];
    let titles = titles.map(str::to_owned).to_vec();
    let rows = derivation
        .inputs
        .iter()
        .map(|input| vec![input.symbol.plain(), input.name.clone(), input.figure()]);
    std::iter::once(titles).chain(rows).collect()
}

/// Formula, the same with its numbers, and what goes in.
fn derived(
    derivation: &Derivation,
    scale: TemperatureScale,
    trail: Trail,
) -> impl IntoView + use<> {
    let equation = derivation.balance.as_ref().map(Balance::typeset);
    let formula = derivation.typeset().or(equation).map(|typeset| {
        view! {
            <div class="formula scrolled" tabindex="0" role="group" aria-label=texts::why::FORMULA>
                <p role="math" aria-label=typeset.plain inner_html=set_in_type(&typeset.letters)></p>
                <p aria-hidden="true" inner_html=set_in_type(&typeset.values)></p>
            </div>
        }
    });
    let counts_in_celsius =
        derivation.unit == "°C" || derivation.inputs.iter().any(|input| input.unit == "°C");
    let note = (counts_in_celsius && scale != TemperatureScale::Celsius)
        .then(|| view! { <p class="hint">{texts::why::COUNTS_IN_CELSIUS}</p> });
    let rows = derivation
        .inputs
        .iter()
        .map(|input| {
            let name = input.name.clone();
            let name = match input.came_from {
                Some(key) => view! {
                    <button type="button" class="number" on:click=move |_| trail.on(key)>
                        {name}
                    </button>
                }
                .into_any(),
                None => name.into_any(),
            };
            view! {
                <tr>
                    <td inner_html=set_in_type(&[input.symbol.mathml()])></td>
                    <th scope="row">{name}</th>
                    <td>{input.figure()}</td>
                </tr>
            }
        })
        .collect_view();
    let inputs = (!derivation.inputs.is_empty()).then(|| {
        let sheet = sheet(derivation);
        view! {
            <table class="goes-in">
                <caption>{texts::why::GOES_IN}</caption>
                <tbody>{rows}</tbody>
            </table>
            <SaveTable file="what-goes-in" rows=move || Some(sheet.clone()) />
        }
    });
    view! { {formula} {note} {inputs} }
}

/// How a number comes about.
#[component]
pub(crate) fn Explained(
    /// The number.
    key: NumberKey,
) -> impl IntoView {
    let bench = bench();
    let trail = Trail::from(key);
    let inside = move || {
        let outcome = bench.outcome()?;
        let key = trail.now()?;
        let scale = bench.scale.get();
        let route = bench.real.get();
        let told = explain(key, &route, &outcome, scale);
        let derivation = why(key, &route, &outcome);
        // A number that is told in words has its own rows: of its law only what they lack.
        let more = derivation
            .as_ref()
            .map(Derivation::rows)
            .unwrap_or_default();
        let is_told = matches!(key, NumberKey::Behind(_));
        let more = more
            .into_iter()
            .filter(|(term, _)| !is_told && [HOW, SOURCE].contains(term));
        let rows = told
            .rows
            .into_iter()
            .chain(more)
            .map(|(term, text)| {
                // A publication is named as it is printed.
                let translate = (term == SOURCE).then_some("no");
                view! { <dt>{term}</dt><dd translate=translate>{text}</dd> }
            })
            .collect_view();
        let beside = beside(key)
            .iter()
            .map(|quantity| {
                let key = NumberKey::Behind(*quantity);
                let told = explain(key, &route, &outcome, scale);
                view! {
                    <li>
                        <button type="button" class="number" on:click=move |_| trail.on(key)>
                            {told.title}
                        </button>
                        " "
                        {told.figure}
                    </li>
                }
            })
            .collect::<Vec<_>>();
        let beside = (!beside.is_empty()).then(|| {
            view! {
                <h3>{texts::why::BESIDE_IT}</h3>
                <ul class="beside">{beside}</ul>
            }
        });
        let taught = bench.taught_words();
        let is_shifted = bench.real.with(|route| {
            let off = route.taught().off;
            off.quenched_hrc != 0.0 || off.tempered_hrc != 0.0
        });
        let taught = (!taught.is_empty()).then(|| {
            view! {
                <p class="hint">
                    {texts::why::COUNTED_WITH_LEARNT} {taught.join(" ")}
                    {is_shifted.then_some(texts::why::SHIFT_ON_TOP)}
                </p>
            }
        });
        let equation =
            (!told.equation.is_empty()).then(|| view! { <p class="equation">{told.equation}</p> });
        Some(view! {
            <h2 tabindex="-1" node_ref=trail.heading>{told.title}</h2>
            <p class="figure">{told.figure} " " <small>{told.band}</small></p>
            {taught}
            {equation}
            {derivation.map(|derivation| derived(&derivation, scale, trail))}
            <dl>{rows}</dl>
            {beside}
        })
    };
    view! { {trail.crumbs(bench)} {inside} }.into_any()
}

/// The panel, a modal dialog while a number is open.
#[component]
pub(crate) fn Opened() -> impl IntoView {
    let bench = bench();
    let dialog = NodeRef::<Dialog>::new();
    Effect::new(move |_| {
        let is_open = bench.opened.get().is_some();
        if let Some(element) = dialog.get() {
            if is_open && !element.open() {
                // Refused only where the dialog is open already.
                let _ = element.show_modal();
            } else if !is_open && element.open() {
                element.close();
            }
        }
    });
    let body = move || bench.opened.get().map(|key| panel(Panel::Opened(key)));
    view! {
        <dialog
            class="opened"
            node_ref=dialog
            aria-label=texts::why::WHERE_FROM
            on:close=move |_| bench.opened.set(None)
        >
            {body}
            <button type="button" class="press" on:click=move |_| bench.opened.set(None)>
                {texts::why::CLOSE}
            </button>
        </dialog>
    }
    .into_any()
}
