//! The section: shape and sizes, typed.

use crate::controls::{Segment, Typed, quantities};
use crate::state::bench;
use leptos::prelude::*;
use recalesce::heat::{Grind, Section};
use recalesce_texts::page as texts;

/// A shape without its sizes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Shape {
    Plate,
    Round,
    Square,
    Blade,
}

const fn shape_of(section: &Section) -> Shape {
    match section {
        Section::Plate { .. } => Shape::Plate,
        Section::Round { .. } => Shape::Round,
        Section::Square { .. } => Shape::Square,
        Section::Blade { .. } => Shape::Blade,
    }
}

/// Thickness that a change of shape carries over, mm.
/// The same thickness in another shape. A blade gets a fine edge and a common height.
fn reshaped(section: &Section, shape: Shape) -> Section {
    let size_mm = section.thickness_mm();
    match shape {
        Shape::Plate => Section::Plate {
            thickness_mm: size_mm,
        },
        Shape::Round => Section::Round {
            diameter_mm: size_mm,
        },
        Shape::Square => Section::Square { side_mm: size_mm },
        Shape::Blade => {
            let spine_mm = size_mm.clamp(0.5, 20.0);
            Section::Blade {
                edge_mm: 0.5_f64.min(spine_mm),
                spine_mm,
                height_mm: 26.0,
                grind: Grind::Straight,
            }
        }
    }
}

/// Shape and sizes.
#[component]
pub(crate) fn SectionPanel() -> impl IntoView {
    let bench = bench();
    let section = Memo::new(move |_| bench.route.with(|r| r.section));
    let shape = Memo::new(move |_| shape_of(&section.get()));
    let size = move |label,
                     range: (f64, f64),
                     step,
                     get: fn(&Section) -> f64,
                     set: fn(&mut Section, f64)| {
        view! {
            <Typed
                label=label
                quantity=Signal::derive(move || quantities::length(bench.length.get(), range, step))
                value=Signal::derive(move || get(&section.get()))
                set=move |mm| bench.change(|r| set(&mut r.section, mm))
            />
        }
    };
    let fields = move || {
        match shape.get() {
        Shape::Plate => size(
            texts::piece::THICKNESS,
            (0.2, 200.0),
            0.5,
            |s| s.thickness_mm(),
            |s, mm| {
                *s = Section::Plate { thickness_mm: mm };
            },
        )
        .into_any(),
        Shape::Round => size(
            texts::piece::DIAMETER,
            (0.2, 300.0),
            0.5,
            |s| s.thickness_mm(),
            |s, mm| {
                *s = Section::Round { diameter_mm: mm };
            },
        )
        .into_any(),
        Shape::Square => size(
            texts::piece::SIDE,
            (0.2, 200.0),
            0.5,
            |s| s.thickness_mm(),
            |s, mm| {
                *s = Section::Square { side_mm: mm };
            },
        )
        .into_any(),
        Shape::Blade => (
            size(
                texts::piece::CUTTING_EDGE,
                (0.1, 20.0),
                0.1,
                edge_mm,
                |s, mm| {
                    if let Section::Blade {
                        edge_mm, spine_mm, ..
                    } = s
                    {
                        *edge_mm = mm;
                        *spine_mm = spine_mm.max(mm);
                    }
                },
            ),
            size(
                texts::piece::SPINE,
                (0.5, 20.0),
                0.25,
                |s| s.thickness_mm(),
                |s, mm| {
                    if let Section::Blade {
                        edge_mm, spine_mm, ..
                    } = s
                    {
                        *spine_mm = mm;
                        *edge_mm = edge_mm.min(mm);
                    }
                },
            ),
            size(
                texts::piece::HEIGHT,
                (5.0, 150.0),
                1.0,
                height_mm,
                |s, mm| {
                    if let Section::Blade { height_mm, .. } = s {
                        *height_mm = mm;
                    }
                },
            ),
            view! {
                <div class="field">
                    <Segment
                        name=texts::piece::FLANKS
                        entries=vec![(Grind::Straight, texts::piece::STRAIGHT), (Grind::Convex, texts::piece::CONVEX)]
                        chosen=Signal::derive(move || grind(&section.get()))
                        pick=move |picked: Grind| {
                            bench
                                .change(|r| {
                                    if let Section::Blade { grind, .. } = &mut r.section {
                                        *grind = picked;
                                    }
                                })
                        }
                    />
                </div>
            },
        )
            .into_any(),
    }
    };
    view! {
        <div class="field">
            <Segment
                name=texts::piece::SHAPE
                entries=vec![
                    (Shape::Blade, texts::piece::BLADE),
                    (Shape::Plate, texts::piece::FLAT),
                    (Shape::Round, texts::piece::ROUND),
                    (Shape::Square, texts::piece::SQUARE),
                ]
                chosen=shape
                pick=move |picked| {
                    if picked != shape.get_untracked() {
                        bench.change(|r| r.section = reshaped(&r.section, picked));
                    }
                }
            />
        </div>
        {fields}
    }
    .into_any()
}

const fn edge_mm(section: &Section) -> f64 {
    match *section {
        Section::Blade { edge_mm, .. } => edge_mm,
        _ => section.thickness_mm(),
    }
}

const fn grind(section: &Section) -> Grind {
    match *section {
        Section::Blade { grind, .. } => grind,
        _ => Grind::Straight,
    }
}

const fn height_mm(section: &Section) -> f64 {
    match *section {
        Section::Blade { height_mm, .. } => height_mm,
        _ => 0.0,
    }
}
