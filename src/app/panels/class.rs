//! A class: the routes that students have exported, beside each other. Files are read in this browser and
//! nothing of them leaves it or is kept.

use super::class_views::{ClassChart, ClassTable};
use super::piece::bath_words;
use crate::browser::files;
use crate::controls::live;
use crate::state::{Bench, Notice, Undo};
use leptos::ev;
use leptos::html::Input;
use leptos::prelude::*;
use recalesce::teach::{
    ClassOrder, ClassRow, Handed, LARGEST_CLASS_FILE_BYTES, MOST_CLASS_FILES, MOST_CLASS_ROUTES,
    class_csv, class_order, read_handed,
};
use recalesce::units::TemperatureScale;
use recalesce_texts::page as texts;
use std::collections::VecDeque;
use std::sync::Arc;
use std::time::Duration;
use web_sys::FileList;

/// Name of the table of numbers.
const FILE_NAME: &str = "recalesce-class.csv";
/// So many routes come into view at once: chart and table are made anew for them.
const TOGETHER: usize = 15;
/// The columns across and upwards that the chart begins with: carbon in solution, final hardness.
const FIRST_AXES: (usize, usize) = (4, 7);

/// What the class holds; it stays while another place is looked at.
#[derive(Clone, Copy)]
pub(super) struct Class {
    pub(super) bench: Bench,
    pub(super) rows: RwSignal<Vec<Arc<ClassRow>>>,
    faults: RwSignal<Vec<String>>,
    /// Routes that have not come into view yet, and as many of their first as are computed.
    waiting: RwSignal<VecDeque<Handed>>,
    computed: StoredValue<Vec<Arc<ClassRow>>>,
    /// Files that are still being read.
    reading: RwSignal<usize>,
    /// Counts the classes: what is still read or computed for one before is left.
    turn: StoredValue<u32>,
    /// The columns on the axes of the chart.
    pub(super) across: RwSignal<usize>,
    pub(super) upwards: RwSignal<usize>,
    /// The order of the table, and whether it falls.
    pub(super) order: RwSignal<(ClassOrder, bool)>,
}

impl Class {
    pub(super) fn open(bench: Bench) -> Self {
        Self {
            bench,
            rows: RwSignal::default(),
            faults: RwSignal::default(),
            waiting: RwSignal::default(),
            computed: StoredValue::default(),
            reading: RwSignal::new(0),
            turn: StoredValue::new(0),
            across: RwSignal::new(FIRST_AXES.0),
            upwards: RwSignal::new(FIRST_AXES.1),
            order: RwSignal::new((ClassOrder::Name, false)),
        }
    }

    fn fault(self, line: String) {
        self.faults.update(|faults| faults.push(line));
    }

    /// Reads files; what is wrong with one is a line, and the others go on.
    fn take(self, list: &FileList) {
        let count = list.length();
        if count as usize > MOST_CLASS_FILES {
            return self.fault(texts::class::too_many_files(count, MOST_CLASS_FILES));
        }
        for file in (0..count).filter_map(|i| list.get(i)) {
            let name = file.name();
            if file.size() > LARGEST_CLASS_FILE_BYTES as f64 {
                let most = LARGEST_CLASS_FILE_BYTES / 1_000_000;
                self.fault(texts::class::file_too_large(&name, most));
                continue;
            }
            self.reading.update(|reading| *reading += 1);
            let turn = self.turn.get_value();
            files::read_text(&file, move |text| {
                if self.turn.get_value() != turn {
                    return;
                }
                self.reading.update(|reading| *reading -= 1);
                let Some(text) = text else {
                    return self.fault(texts::class::file_unreadable(&name));
                };
                let (handed, faults) = read_handed(&name, &text);
                faults.into_iter().for_each(|line| self.fault(line));
                self.queue(&name, handed);
            });
        }
    }

    /// Puts routes with those that wait, as far as there is room.
    fn queue(self, file: &str, handed: Vec<Handed>) {
        let waiting = self.waiting.with_untracked(VecDeque::len);
        let taken = waiting + self.rows.with_untracked(Vec::len);
        let room = MOST_CLASS_ROUTES.saturating_sub(taken);
        if handed.len() > room {
            let left_out = handed.len() - room;
            self.fault(texts::class::no_room(file, left_out, MOST_CLASS_ROUTES));
        }
        self.waiting
            .update(|all| all.extend(handed.into_iter().take(room)));
        if waiting == 0 {
            self.compute();
        }
    }

    /// Computes the next that waits, and so on when the browser has had its turn.
    fn compute(self) {
        let turn = self.turn.get_value();
        let next = move || {
            if self.turn.get_value() != turn {
                return;
            }
            let done = self.computed.with_value(Vec::len);
            let next = self.waiting.with_untracked(|all| all.get(done).cloned());
            let is_last = next.is_none();
            if let Some(handed) = next {
                let row = Arc::new(ClassRow::of(handed, self.bench.scale.get_untracked()));
                if let Some(why) = &row.fault {
                    self.fault(format!("“{}”: {why}", row.handed.name));
                }
                self.computed.update_value(|computed| computed.push(row));
            }
            if is_last || done + 1 >= TOGETHER {
                let mut computed = self
                    .computed
                    .try_update_value(std::mem::take)
                    .unwrap_or_default();
                let count = computed.len();
                if count > 0 {
                    self.rows.update(|rows| rows.append(&mut computed));
                    self.waiting
                        .update(|all| drop(all.drain(..count.min(all.len()))));
                }
            }
            if !is_last {
                self.compute();
            }
        };
        set_timeout(next, Duration::ZERO);
    }

    fn clear(self) {
        self.turn.update_value(|turn| *turn = turn.wrapping_add(1));
        self.reading.set(0);
        self.waiting.update(VecDeque::clear);
        self.computed.update_value(Vec::clear);
        self.rows.update(Vec::clear);
        self.faults.update(Vec::clear);
    }

    /// Puts a route on the bench; what was there comes back with the undo.
    pub(super) fn put(self, row: &ClassRow) {
        let bench = self.bench;
        let before = bench.route.get_untracked();
        bench.put(row.handed.route.clone());
        let undo: Undo = Arc::new(move || bench.route.set(before.clone()));
        bench.notice.set(Some(Notice {
            text: texts::class::on_the_bench(&row.handed.name),
            is_wrong: false,
            undo: Some(undo),
        }));
    }

    /// The rows in the order of the table.
    pub(super) fn ordered(self) -> Vec<Arc<ClassRow>> {
        let (by, is_falling) = self.order.get();
        self.rows.with(|rows| {
            let places = class_order(rows, by, is_falling).into_iter();
            places
                .filter_map(|place| rows.get(place).cloned())
                .collect()
        })
    }

    fn export(self) {
        let rows = untrack(|| self.ordered());
        let table = class_csv(&rows, |route| {
            bath_words(&route.quench, TemperatureScale::Celsius)
        });
        if files::offer_table(FILE_NAME, &table).is_none() {
            self.bench.warn(texts::general::NO_FILE_OFFERED.to_owned());
        }
    }
}

/// The class.
#[component]
pub(super) fn ClassView(class: Class) -> impl IntoView {
    let field = NodeRef::<Input>::new();
    let picked = move |_| {
        if let Some(input) = field.get_untracked() {
            if let Some(list) = input.files() {
                class.take(&list);
            }
            // So that the same files can be picked again.
            input.set_value("");
        }
    };
    let press = move |_| {
        if let Some(input) = field.get_untracked() {
            input.click();
        }
    };
    let dropped = move |drop: ev::DragEvent| {
        if let Some(list) = drop.data_transfer().and_then(|data| data.files()) {
            drop.prevent_default();
            class.take(&list);
        }
    };
    let has_rows = Memo::new(move |_| class.rows.with(|rows| !rows.is_empty()));
    let progress = move || {
        let there = class.rows.with(Vec::len);
        match (
            there,
            class.waiting.with(VecDeque::len) + class.reading.get(),
        ) {
            (0, 0) => texts::class::NO_FILE_YET.to_owned(),
            (1, 0) => texts::class::ONE_ROUTE.to_owned(),
            (there, 0) => texts::class::routes(there),
            (there, left) => texts::class::still_computed(there, left),
        }
    };
    let faults = live(move || {
        let lines = class.faults.get();
        let lines = lines.into_iter().map(|line| view! { <li>{line}</li> });
        view! { <ul class="wrong">{lines.collect_view()}</ul> }.into_any()
    });
    let together = live(move || {
        if has_rows.get() {
            view! {
                <ClassChart class=class />
                <ClassTable class=class />
            }
            .into_any()
        } else {
            ().into_any()
        }
    });
    view! {
        <section
            class="class"
            aria-label=texts::class::TOGETHER
            on:dragover=|over: ev::DragEvent| over.prevent_default()
            on:drop=dropped
        >
            <p>
                {texts::class::ABOUT}
            </p>
            <p class="hint">
                {texts::class::most_taken(MOST_CLASS_FILES, MOST_CLASS_ROUTES, LARGEST_CLASS_FILE_BYTES / 1_000_000)}
            </p>
            <div class="actions">
                <button type="button" class="press go" on:click=press>
                    {texts::class::CHOOSE_FILES}
                </button>
                <input
                    node_ref=field
                    class="unseen"
                    type="file"
                    multiple
                    accept=".json,application/json"
                    tabindex="-1"
                    aria-label=texts::class::FILES_OF_CLASS
                    on:change=picked
                />
                <button
                    type="button"
                    class="press"
                    disabled=move || !has_rows.get()
                    on:click=move |_| class.export()
                >
                    {texts::class::EXPORT_TABLE}
                </button>
                <button
                    type="button"
                    class="press"
                    disabled=move || !has_rows.get() && class.faults.with(Vec::is_empty)
                    on:click=move |_| class.clear()
                >
                    {texts::class::START_AGAIN}
                </button>
                <span role="status">{progress}</span>
            </div>
            <div role="alert">{faults}</div>
            {together}
        </section>
    }
    .into_any()
}
