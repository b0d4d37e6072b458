//! What several routes do in soak, quench or temper, laid over one another on a chart.

use super::decide_compare::Compared;
use crate::controls::Segment;
use crate::plot::Plot;
use crate::state::Bench;
use leptos::prelude::*;
use recalesce::advise::Courses;
use recalesce::chart::{OverlayData, OverlayLine, overlay_chart};
use recalesce::units::TemperatureScale;
use recalesce_texts::page as texts;
use std::sync::Arc;

/// What several routes do, on the same axes.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Course {
    Carbon,
    Cooling,
    Temper,
}

impl Course {
    const fn title(self) -> &'static str {
        match self {
            Self::Carbon => texts::decide::COURSE_OF_CARBON,
            Self::Cooling => texts::decide::COURSE_OF_COOLING,
            Self::Temper => texts::decide::COURSE_OF_TEMPER,
        }
    }

    /// Abscissa and ordinate with their units.
    fn axes(self, scale: TemperatureScale) -> [String; 2] {
        let degrees = scale.symbol();
        match self {
            Self::Carbon => [
                texts::decide::TIME_AT_TEMPERATURE_MIN,
                texts::decide::CARBON_PERCENT,
            ]
            .map(str::to_owned),
            Self::Cooling => [
                texts::decide::TIME_FROM_FURNACE_S.to_owned(),
                texts::decide::temperature_in(degrees),
            ],
            Self::Temper => [
                texts::decide::temper_in(degrees),
                texts::decide::HARDNESS_HRC.to_owned(),
            ],
        }
    }

    const fn of(self, courses: &Courses) -> &Vec<[f64; 2]> {
        match self {
            Self::Carbon => &courses.carbon,
            Self::Cooling => &courses.cooling,
            Self::Temper => &courses.temper,
        }
    }

    fn data(self, compared: &Compared, scale: TemperatureScale) -> OverlayData {
        let degrees = |[x, y]: [f64; 2]| match self {
            Self::Carbon => [x, y],
            Self::Cooling => [x, scale.of_celsius(y)],
            Self::Temper => [scale.of_celsius(x), y],
        };
        let routes = compared.routes.iter().zip(&compared.come_out).zip(1..);
        OverlayData {
            title: self.title().to_owned(),
            axes: self.axes(scale),
            is_log: self == Self::Cooling,
            lines: routes
                .filter_map(|(((name, _), come_out), number)| {
                    let (_, courses) = come_out.as_ref().ok()?;
                    let points: Vec<[f64; 2]> =
                        self.of(courses).iter().copied().map(degrees).collect();
                    (!points.is_empty()).then(|| OverlayLine {
                        number,
                        name: name.clone(),
                        points,
                    })
                })
                .collect(),
        }
    }
}

/// What the routes do, over one another.
pub(super) fn overlay(bench: Bench, compared: Arc<Compared>, course: RwSignal<Course>) -> AnyView {
    let scene = move |width, height| {
        overlay_chart(
            &course.get().data(&compared, bench.scale.get()),
            [width, height],
        )
    };
    view! {
        <Segment
            name=texts::decide::LAID_OVER
            entries=vec![
                (Course::Carbon, texts::outcome::SOAK),
                (Course::Cooling, texts::outcome::QUENCH),
                (Course::Temper, texts::outcome::TEMPER),
            ]
            chosen=course
            pick=move |one| course.set(one)
        />
        <p class="hint">
            {move || course.get().title()}
            {texts::decide::LINE_NUMBERS}
        </p>
        <Plot class="trade" file="routes-compared" scene=scene nothing=texts::decide::NOTHING_FOR_ROUTES />
    }
    .into_any()
}
