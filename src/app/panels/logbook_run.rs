//! An open run: what was planned and predicted, and fields for what was done and measured. A field
//! that is wrong keeps its text, with the reason below it.

use super::logbook::signed;
use super::logbook_photos::Photos;
use crate::controls::live;
use crate::logbook::Log;
use crate::state::bench;
use leptos::html::H2;
use leptos::prelude::*;
use recalesce::advise::ReadAt;
use recalesce::hardness::Scale;
use recalesce::heat::Section;
use recalesce::route::place_words;
use recalesce::save::logbook::{After, Compared, Done, Draft, DraftReading, DraftUseTest, Run};
use recalesce::units::{TemperatureScale, format_fixed};
use recalesce_texts::page as texts;

/// What a field shows.
#[derive(Clone, Copy, PartialEq)]
enum Kind {
    Line,
    Day,
    Lines,
}

/// A field of the draft, with what is wrong with it.
fn field(
    log: Log,
    label: &'static str,
    name: String,
    kind: Kind,
    text: String,
    set: impl Fn(&mut Draft, String) + 'static,
) -> AnyView {
    boxed_field(log, label, name, kind, text, Box::new(set))
}

/// Takes a text into the draft.
type TakeText = Box<dyn Fn(&mut Draft, String)>;

/// The same for all fields, so that they share one piece of the program.
fn boxed_field(
    log: Log,
    label: &'static str,
    name: String,
    kind: Kind,
    text: String,
    set: TakeText,
) -> AnyView {
    let id = format!("run-{}", name.replace([' ', '.'], "-"));
    let wrong_id = format!("{id}-wrong");
    let of_this = name;
    let wrong = Memo::new(move |_| {
        log.faults.with(|faults| {
            let fault = faults.iter().find(|fault| fault.field == of_this);
            fault.map(|fault| fault.message.clone())
        })
    });
    let is_wrong = Signal::derive(move || wrong.with(Option::is_some).to_string());
    let input = match kind {
        Kind::Lines => view! {
            <textarea
                class="text"
                id=id.clone()
                rows="2"
                prop:value=text
                aria-invalid=is_wrong
                aria-describedby=wrong_id.clone()
                on:input:target=move |event| {
                    let text = event.target().value();
                    log.type_in(|draft| set(draft, text));
                }
            ></textarea>
        }
        .into_any(),
        Kind::Line | Kind::Day => view! {
            <input
                class="text"
                id=id.clone()
                type=if kind == Kind::Day { "date" } else { "text" }
                autocomplete="off"
                prop:value=text
                aria-invalid=is_wrong
                aria-describedby=wrong_id.clone()
                on:change:target=move |event| {
                    let text = event.target().value();
                    log.type_in(|draft| set(draft, text));
                }
            />
        }
        .into_any(),
    };
    view! {
        <div class="field">
            <label for=id>{label}</label>
            {input}
            <span class="wrong" id=wrong_id role="alert">
                {wrong}
            </span>
        </div>
    }
    .into_any()
}

/// A list to pick from for the row of a key, by the place in the list.
fn pick(
    log: Log,
    label: &'static str,
    words: &[&'static str],
    chosen: usize,
    set: fn(&mut Draft, usize, usize),
    key: usize,
) -> AnyView {
    let options = words
        .iter()
        .enumerate()
        .map(|(at, words)| view! { <option selected=at == chosen>{*words}</option> });
    view! {
        <label class="field">
            <span class="label">{label}</span>
            <select
                class="text"
                aria-label=label
                on:change:target=move |event| {
                    let at = usize::try_from(event.target().selected_index()).unwrap_or(0);
                    log.type_in(|draft| set(draft, key, at));
                }
            >
                {options.collect_view()}
            </select>
        </label>
    }
    .into_any()
}

pub(super) fn button(words: &'static str, press: impl Fn() + 'static) -> AnyView {
    let press: Box<dyn Fn()> = Box::new(press);
    view! {
        <button type="button" class="press" on:click=move |_| press()>
            {words}
        </button>
    }
    .into_any()
}

/// Goes back or forward by one change, where there is one.
pub(super) fn turn(
    words: &'static str,
    can: impl Fn() -> bool + Send + Sync + 'static,
    go: impl Fn() + 'static,
) -> AnyView {
    let can = Signal::derive(can);
    view! {
        <button type="button" class="press" disabled=move || !can.get() on:click=move |_| go()>
            {words}
        </button>
    }
    .into_any()
}

const SCALES: [Scale; 4] = [Scale::Hrc, Scale::Hv, Scale::Hbw, Scale::Hrb];

/// Changes the reading of a key, if it is still there.
fn in_reading(draft: &mut Draft, key: usize, change: impl FnOnce(&mut DraftReading)) {
    if let Some(row) = draft.readings.iter_mut().find(|row| row.key == key) {
        change(row);
    }
}

/// The same for a test in use.
fn in_use_test(draft: &mut Draft, key: usize, change: impl FnOnce(&mut DraftUseTest)) {
    if let Some(row) = draft.use_tests.iter_mut().find(|row| row.key == key) {
        change(row);
    }
}

fn reading_view(log: Log, row: DraftReading) -> AnyView {
    let key = row.key;
    let scale = SCALES.iter().position(|scale| *scale == row.scale);
    let after = After::ALL.iter().position(|after| *after == row.after);
    view! {
        <li class="row">
            {field(log, texts::logbook::HARDNESS, format!("readings {key}"), Kind::Line, row.value, move |d, text| {
                in_reading(d, key, |row| row.value = text);
            })}
            {pick(log, texts::logbook::SCALE, &SCALES.map(Scale::symbol), scale.unwrap_or(0), |d, key, at| {
                in_reading(d, key, |row| row.scale = SCALES[at.min(SCALES.len() - 1)]);
            }, key)}
            {field(log, texts::logbook::PLACE, format!("place {key}"), Kind::Line, row.place, move |d, text| {
                in_reading(d, key, |row| row.place = text);
            })}
            {pick(log, texts::logbook::WHEN, &After::ALL.map(After::words), after.unwrap_or(0), |d, key, at| {
                in_reading(d, key, |row| row.after = After::ALL[at.min(After::ALL.len() - 1)]);
            }, key)}
            {button(texts::logbook::REMOVE, move || log.type_in(|d| d.readings.retain(|row| row.key != key)))}
        </li>
    }
    .into_any()
}

fn use_test_view(log: Log, row: DraftUseTest) -> AnyView {
    let key = row.key;
    view! {
        <li class="row test">
            {field(log, texts::logbook::TEST, format!("use_tests {key}"), Kind::Line, row.name, move |d, text| {
                in_use_test(d, key, |row| row.name = text);
            })}
            {field(log, texts::logbook::RESULT, format!("result {key}"), Kind::Line, row.value, move |d, text| {
                in_use_test(d, key, |row| row.value = text);
            })}
            {field(log, texts::logbook::UNIT, format!("unit {key}"), Kind::Line, row.unit, move |d, text| {
                in_use_test(d, key, |row| row.unit = text);
            })}
            {button(texts::logbook::REMOVE, move || log.type_in(|d| d.use_tests.retain(|row| row.key != key)))}
        </li>
    }
    .into_any()
}

/// Predicted and measured in sentences, place by place.
fn came_out(run: &Run) -> String {
    let Some(predicted) = &run.predicted else {
        return texts::logbook::NO_HARDNESS_GIVEN.to_owned();
    };
    let learnt = if predicted.is_taught {
        texts::logbook::COUNTED_WITH_LEARNT
    } else {
        ""
    };
    let model = texts::logbook::by_model(&predicted.model) + learnt;
    let compared = run.compared();
    let of_place = |(number, at): (usize, &Compared)| {
        let model = if number == 0 { &model } else { "" };
        let figure = at.predicted.words();
        let said = match at.predicted.place {
            Some(place) => texts::logbook::predicted_at(place_words(place), &figure, model),
            None => texts::logbook::predicted(&figure, model),
        };
        match (at.measured_hrc, at.difference_hrc(), at.is_inside()) {
            (Some(measured), Some(difference), Some(is_inside)) => {
                let side = if is_inside {
                    texts::logbook::INSIDE
                } else {
                    texts::logbook::OUTSIDE
                };
                let measured = format_fixed(measured, 1);
                texts::logbook::measured(&said, &measured, &signed(difference), side)
            }
            _ => texts::logbook::not_measured(&said),
        }
    };
    let told = compared.iter().enumerate().map(of_place);
    let counts = predicted.place.map(|_| {
        let section = run.route.section;
        let words = [ReadAt::Outside, ReadAt::Deciding].map(|place| place.word(section));
        match section {
            Section::Blade { .. } => texts::logbook::counts_where_told(words),
            _ => texts::logbook::counts_outside(words),
        }
    });
    let elsewhere = run.read_elsewhere().into_iter().map(|place| match place {
        "" => texts::logbook::NO_PLACE,
        place => place,
    });
    let elsewhere = elsewhere.collect::<Vec<_>>().join("; ");
    let elsewhere = (!elsewhere.is_empty()).then(|| texts::logbook::read_elsewhere(&elsewhere));
    told.chain(counts)
        .chain(elsewhere)
        .collect::<Vec<_>>()
        .join(" ")
}

/// The open run.
#[component]
pub(super) fn OpenRun(log: Log) -> impl IntoView {
    let bench = bench();
    let run = Memo::new(move |_| log.opened());
    let heading = NodeRef::<H2>::new();
    Effect::new(move || {
        if let Some(heading) = heading.get() {
            // Where it cannot be focused the focus stays.
            let _ = heading.focus();
        }
    });
    let of_run = move |text: fn(&Run, TemperatureScale) -> String| {
        Signal::derive(move || {
            let scale = bench.scale.get();
            run.with(|run| {
                run.as_ref()
                    .map_or_else(String::new, |run| text(run, scale))
            })
        })
    };
    let planned = move || {
        run.with(|run| {
            let run = run.as_ref()?;
            Some(super::shelf::summary(&run.route, bench))
        })
    };
    let load = move || {
        if let Some(run) = run.get_untracked() {
            bench.put(run.route);
        }
    };
    let remove = move || {
        if let Some(run) = run.get_untracked() {
            let words = texts::logbook::run_deleted(&run.route.piece, run.day);
            log.remove(vec![run.id], words);
        }
    };
    // Another run has other fields; what is typed leaves them as they are.
    let is_there = Memo::new(move |_| run.with(Option::is_some));
    let fields = live(move || {
        log.open.track();
        let draft = log.draft.get_untracked().filter(|_| is_there.get());
        draft.map(|draft| fields(log, draft)).into_any()
    });
    view! {
        <h2 node_ref=heading tabindex="-1" translate="no">
            {of_run(|run, _| format!("{}, {}", run.route.piece, run.grade()))}
        </h2>
        <div class="actions">
            {button(texts::logbook::ALL_RUNS, move || log.close())}
            {button(texts::logbook::PUT_ROUTE_ON_BENCH, load)}
            {turn(texts::logbook::UNDO_OF_RUN, move || log.can.get().0, move || log.undo())}
            {turn(texts::logbook::REDO_OF_RUN, move || log.can.get().1, move || log.redo())}
            {button(texts::logbook::DELETE, remove)}
        </div>
        <p>{planned}</p>
        <p role="status">{of_run(|run, _| came_out(run))}</p>
        {fields}
        <Photos log=log />
    }
    .into_any()
}

fn fields(log: Log, mut draft: Draft) -> AnyView {
    type Part = fn(&mut Done) -> &mut String;
    let done: [(&str, &str, Part); 5] = [
        (texts::steps::BEFORE_HARDENING, "done.before", |done| {
            &mut done.before
        }),
        (texts::general::SOAK, "done.soak", |done| &mut done.soak),
        (texts::general::QUENCH, "done.quench", |done| {
            &mut done.quench
        }),
        (texts::logbook::COLD, "done.cold", |done| &mut done.cold),
        (texts::general::TEMPER, "done.temper", |done| {
            &mut done.temper
        }),
    ];
    let done = done.map(|(label, name, part)| {
        let text = part(&mut draft.done).clone();
        field(
            log,
            label,
            name.to_owned(),
            Kind::Lines,
            text,
            move |draft, text| {
                *part(&mut draft.done) = text;
            },
        )
    });
    let last = untrack(|| log.opened()).map_or(After::Temper, |run| After::last_of(&run.route));
    let readings = move || {
        log.draft
            .get()
            .map(|draft| draft.readings)
            .unwrap_or_default()
    };
    let use_tests = move || {
        log.draft
            .get()
            .map(|draft| draft.use_tests)
            .unwrap_or_default()
    };
    view! {
        <div class="entry" on:focusin=move |_| log.note_down()>
            <section>
                <h3>{texts::logbook::MEASURED}</h3>
                {field(log, texts::logbook::DAY_OF_QUENCH, "day".to_owned(), Kind::Day, draft.day, |d, text| d.day = text)}
                <ul>
                    <For each=readings key=|row| row.key let:row>
                        {reading_view(log, row)}
                    </For>
                </ul>
                {button(texts::logbook::ADD_A_READING, move || log.type_in(|d| d.add_reading(last)))}
                <div class="two">
                    {field(
                        log,
                        texts::logbook::GRAIN_BY_FRACTURE,
                        "fracture_grain_astm".to_owned(),
                        Kind::Line,
                        draft.fracture_grain_astm,
                        |d, text| d.fracture_grain_astm = text,
                    )}
                    {field(
                        log,
                        texts::logbook::AUSTENITE_VOL,
                        "austenite_vol_percent".to_owned(),
                        Kind::Line,
                        draft.austenite_vol_percent,
                        |d, text| d.austenite_vol_percent = text,
                    )}
                </div>
                {field(
                    log,
                    texts::logbook::COUPON,
                    "coupon".to_owned(),
                    Kind::Lines,
                    draft.coupon,
                    |d, text| d.coupon = text,
                )}
                <h3>{texts::logbook::IN_USE}</h3>
                <p class="hint">
                    {texts::logbook::ABOUT_USE}
                </p>
                <ul>
                    <For each=use_tests key=|row| row.key let:row>
                        {use_test_view(log, row)}
                    </For>
                </ul>
                {button(texts::logbook::ADD_A_TEST, move || log.type_in(Draft::add_use_test))}
            </section>
            <section>
                <h3>{texts::logbook::REALLY_DONE}</h3>
                {done}
                {field(log, texts::logbook::NOTES, "notes".to_owned(), Kind::Lines, draft.notes, |d, text| d.notes = text)}
            </section>
        </div>
    }
    .into_any()
}
