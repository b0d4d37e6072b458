//! A test coupon: what it is, what it had, and what was measured on it.

use super::own_work::Own;
use crate::controls::{Quantity, Segment, Typed, quantities};
use crate::state::{Bench, bench};
use leptos::prelude::*;
use recalesce::advise::{Coupon, USUAL_TESTER_HRC};
use recalesce::heat::{MediumChoice, Section};
use recalesce::route::{Route, shop_media};
use recalesce::steel::{find, grades};
use recalesce_texts::page as texts;

/// Coupon that is offered first, mm: thick enough that an oil hardens few steels through.
const FIRST_MM: f64 = 6.0;
/// Quenchant that is offered first where the route has one of its own.
const FIRST_LIKE: &str = "oil_medium";
const SIZE_MM: (f64, f64) = (0.2, 200.0);
const SOAK_C: (f64, f64) = (650.0, 1300.0);
const SOAK_MIN: (f64, f64) = (0.0, 600.0);
const AIR_S: (f64, f64) = (0.0, 120.0);
const HRC: (f64, f64) = (0.0, 70.0);
const TESTER_HRC: (f64, f64) = (0.2, 5.0);

/// A coupon of the bench's steel, soaked as planned there, not measured yet.
pub(super) fn of_route(route: &Route) -> Coupon {
    Coupon {
        composition: route.composition,
        start: route.start,
        section: Section::Plate {
            thickness_mm: FIRST_MM,
        },
        soak: route.soak,
        air_delay_s: route.quench.air_delay_s,
        like: route
            .quench
            .medium
            .listed()
            .unwrap_or(FIRST_LIKE)
            .to_owned(),
        bath_c: 0.0,
        centre_hrc: None,
        surface_hrc: None,
        tester_hrc: USUAL_TESTER_HRC,
    }
}

const fn size_mm(section: &Section) -> f64 {
    match *section {
        Section::Plate { thickness_mm: size } | Section::Round { diameter_mm: size } => size,
        Section::Square { side_mm: size } | Section::Blade { spine_mm: size, .. } => size,
    }
}

const fn shaped(is_round: bool, size_mm: f64) -> Section {
    if is_round {
        Section::Round {
            diameter_mm: size_mm,
        }
    } else {
        Section::Plate {
            thickness_mm: size_mm,
        }
    }
}

/// One of a list of names, as the browser lets it be picked.
fn pick(
    id: &'static str,
    label: &'static str,
    options: Vec<(String, Signal<String>)>,
    chosen: Signal<String>,
    set: impl Fn(String) + 'static,
) -> AnyView {
    let options = options
        .into_iter()
        .map(|(value, title)| {
            let is_chosen = {
                let value = value.clone();
                move || chosen.get() == value
            };
            view! {
                <option value=value selected=is_chosen>
                    {title}
                </option>
            }
        })
        .collect_view();
    view! {
        <div class="field">
            <label for=id>{label}</label>
            <select id=id class="text" on:change:target=move |event| set(event.target().value())>
                {options}
            </select>
        </div>
    }
    .into_any()
}

fn steel(bench: Bench, own: Own) -> AnyView {
    let this = (
        String::new(),
        Signal::stored(texts::own::THAT_ON_BENCH.to_owned()),
    );
    let listed = grades().iter().map(|grade| {
        let name = &grade.designation;
        (name.clone(), Signal::stored(name.clone()))
    });
    pick(
        "coupon-steel",
        texts::own::ITS_STEEL,
        std::iter::once(this).chain(listed).collect(),
        own.coupon_steel.into(),
        move |name| {
            // Its usual soak comes with a grade.
            if let Ok(grade) = find(&name) {
                let mut route = bench.route.get_untracked();
                route.take_grade(grade);
                own.coupon.update(|coupon| coupon.soak = route.soak);
            }
            own.coupon_steel.set(name);
        },
    )
}

fn like(bench: Bench, own: Own) -> AnyView {
    let titles = shop_media()
        .map(|medium| {
            let title = Signal::derive(move || medium.title.words(bench.scale.get()));
            (medium.name.clone(), title)
        })
        .collect();
    pick(
        "coupon-like",
        texts::own::NEAREST_IN_KIND,
        titles,
        Signal::derive(move || own.coupon.with(|coupon| coupon.like.clone())),
        move |name| {
            own.expect_bath(&MediumChoice::Named(name.clone()));
            own.coupon.update(|coupon| coupon.like = name);
        },
    )
}

/// How a field reads the coupon, and how it writes it.
type Reads = fn(&Coupon) -> f64;
type Writes = fn(&mut Coupon, f64);

fn typed(
    own: Own,
    label: &'static str,
    quantity: impl Fn() -> Quantity + Send + Sync + 'static,
    get: Reads,
    set: Writes,
) -> AnyView {
    view! {
        <Typed
            label=label
            quantity=Signal::derive(quantity)
            value=Signal::derive(move || own.coupon.with(get))
            set=move |value| own.coupon.update(|coupon| set(coupon, value))
        />
    }
    .into_any()
}

fn hrc(range: (f64, f64), step: f64) -> Quantity {
    quantities::plain("", 1, range, step, texts::own::WRITE_A_HARDNESS)
}

fn known(value: f64) -> Option<f64> {
    Some(value).filter(|value| !value.is_nan())
}

/// The fields of a coupon.
#[component]
pub(super) fn CouponFields(own: Own) -> impl IntoView {
    let bench = bench();
    let is_round = Memo::new(move |_| {
        own.coupon
            .with(|coupon| matches!(coupon.section, Section::Round { .. }))
    });
    let degrees = move |range| quantities::temperature(bench.scale.get(), range);
    let soak: [AnyView; 3] = [
        typed(
            own,
            texts::own::SOAK,
            move || degrees(SOAK_C),
            |c| c.soak.temperature_c,
            |c, to| {
                c.soak.temperature_c = to;
            },
        ),
        typed(
            own,
            texts::own::TIME_AT_TEMPERATURE,
            || quantities::minutes(SOAK_MIN, 1.0),
            |c| c.soak.time_min,
            |c, to| {
                c.soak.time_min = to;
            },
        ),
        typed(
            own,
            texts::own::TIME_IN_AIR,
            || quantities::seconds(AIR_S, 0.5),
            |c| c.air_delay_s,
            |c, to| {
                c.air_delay_s = to;
            },
        ),
    ];
    let measured: [AnyView; 3] = [
        typed(
            own,
            texts::own::CENTRE_HRC,
            || hrc(HRC, 0.5).optional(),
            |c| c.centre_hrc.unwrap_or(f64::NAN),
            |c, to| {
                c.centre_hrc = known(to);
            },
        ),
        typed(
            own,
            texts::own::SURFACE_HRC,
            || hrc(HRC, 0.5).optional(),
            |c| c.surface_hrc.unwrap_or(f64::NAN),
            |c, to| {
                c.surface_hrc = known(to);
            },
        ),
        typed(
            own,
            texts::own::TESTER_ERROR_HRC,
            || hrc(TESTER_HRC, 0.1),
            |c| c.tester_hrc,
            |c, to| {
                c.tester_hrc = to;
            },
        ),
    ];
    view! {
        <div class="two">
            {steel(bench, own)} {like(bench, own)}
        </div>
        <div class="actions">
            <Segment
                name=texts::own::SHAPE_OF_COUPON
                entries=vec![(false, texts::own::FLAT), (true, texts::own::ROUND)]
                chosen=is_round
                pick=move |round| {
                    own.coupon
                        .update(|coupon| coupon.section = shaped(round, size_mm(&coupon.section)));
                }
            />
        </div>
        <div class="two">
            {typed(own, texts::own::ITS_THICKNESS, move || quantities::length(bench.length.get(), SIZE_MM, 0.5), |c| size_mm(&c.section), |c, to| {
                c.section = shaped(matches!(c.section, Section::Round { .. }), to);
            })}
            {soak} {measured}
        </div>
    }
    .into_any()
}

/// The coupon with the steel that was picked for it, in a bath.
pub(super) fn complete(own: Own, route: &Route) -> Coupon {
    let name = own.coupon_steel.get_untracked();
    let composition = find(&name).map_or(route.composition, |grade| grade.nominal);
    Coupon {
        composition,
        start: route.start,
        bath_c: own.bath_c.get_untracked(),
        ..own.coupon.get_untracked()
    }
}
