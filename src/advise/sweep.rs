//! One input of a route taken through a range, with what comes out at every step of it.

use super::error::{AdviseError, check};
use super::learn::Correction;
use super::spread::{austenite, hrc};
use crate::heat::{AGITATION, Section};
use crate::route::{Route, TrialSteel, validate};
use crate::units::TemperatureScale;
use serde::{Deserialize, Serialize};

/// Fewest and most steps of a range.
const STEPS: (u32, u32) = (2, 400);
/// Steps that are enough for a curve.
pub const USUAL_STEPS: u32 = 41;

/// An input of a route that can be taken through a range.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum SweptInput {
    /// Temperature of the soak, °C.
    SoakC,
    /// Time at temperature, min.
    SoakMin,
    /// Thickness, mm; of a blade that of its spine.
    ThicknessMm,
    /// Factor on the heat transfer of the still bath.
    Agitation,
    /// Time in air before the bath, s.
    AirDelayS,
    /// Temperature of all tempers, °C.
    TemperC,
    /// Time of every temper, min.
    TemperMin,
}

/// What comes out of a route that is looked at: none where the models do not reach.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
pub struct Numbers {
    /// Carbon in solution, wt % of the austenite.
    pub carbon_wt: Option<f64>,
    /// Undissolved carbide after the soak, volume fraction.
    pub carbide: Option<f64>,
    /// ASTM grain number.
    pub grain_astm: Option<f64>,
    /// Factor by which the quench may be slower and still harden.
    pub margin_factor: Option<f64>,
    /// Hardness as quenched, HRC.
    pub quenched_hrc: Option<f64>,
    /// Retained austenite as quenched, volume fraction.
    pub quenched_austenite: Option<f64>,
    /// Hardness after the last step, HRC.
    pub final_hrc: Option<f64>,
    /// Retained austenite after the last step, volume fraction.
    pub final_austenite: Option<f64>,
}

/// A step of a sweep.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct SweepPoint {
    /// The input, in its unit.
    pub input: f64,
    /// What comes out; nothing where it is refused.
    pub numbers: Numbers,
    /// Why nothing does.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub refused: Option<String>,
}

impl SweptInput {
    /// All of them, in the order of the route.
    pub const ALL: [Self; 7] = [
        Self::SoakC,
        Self::SoakMin,
        Self::ThicknessMm,
        Self::AirDelayS,
        Self::Agitation,
        Self::TemperC,
        Self::TemperMin,
    ];

    /// Its name as a column of a table, with its unit.
    #[must_use]
    pub const fn column(self) -> &'static str {
        match self {
            Self::SoakC => "soak_c",
            Self::SoakMin => "soak_min",
            Self::ThicknessMm => "thickness_mm",
            Self::Agitation => "agitation",
            Self::AirDelayS => "air_delay_s",
            Self::TemperC => "temper_c",
            Self::TemperMin => "temper_min",
        }
    }

    /// Smallest and largest value that makes sense, in its unit.
    #[must_use]
    pub const fn allowed(self) -> (f64, f64) {
        match self {
            Self::SoakC => (650.0, 1250.0),
            Self::SoakMin => (0.0, 600.0),
            Self::ThicknessMm => (0.3, 120.0),
            Self::Agitation => AGITATION,
            Self::AirDelayS => (0.0, 600.0),
            Self::TemperC => (20.0, 720.0),
            Self::TemperMin => (1.0, 6000.0),
        }
    }

    /// What a route has now; none where it has no such step.
    #[must_use]
    pub fn of(self, route: &Route) -> Option<f64> {
        Some(match self {
            Self::SoakC => route.soak.temperature_c,
            Self::SoakMin => route.soak.time_min,
            Self::ThicknessMm => route.section.thickness_mm(),
            Self::Agitation => route.quench.agitation,
            Self::AirDelayS => route.quench.air_delay_s,
            Self::TemperC => route.tempers.last()?.temperature_c,
            Self::TemperMin => route.tempers.last()?.time_min,
        })
    }

    /// The route with another value, in its unit.
    #[must_use]
    pub fn put(self, route: &Route, value: f64) -> Route {
        let mut route = route.clone();
        match self {
            Self::SoakC => route.soak.temperature_c = value,
            Self::SoakMin => route.soak.time_min = value,
            Self::ThicknessMm => route.section = as_thick(route.section, value),
            Self::Agitation => route.quench.agitation = value,
            Self::AirDelayS => route.quench.air_delay_s = value,
            Self::TemperC => route
                .tempers
                .iter_mut()
                .for_each(|t| t.temperature_c = value),
            Self::TemperMin => route.tempers.iter_mut().for_each(|t| t.time_min = value),
        }
        route
    }

    /// Whether the steel in its structure stays what it is: the steps before hardening go by the
    /// section.
    fn keeps_steel(self, route: &Route) -> bool {
        self != Self::ThicknessMm || route.prior.is_empty()
    }
}

/// The same shape at another thickness, mm: of a blade the spine, with an edge as much thinner or
/// thicker in proportion.
fn as_thick(section: Section, value_mm: f64) -> Section {
    match section {
        Section::Plate { .. } => Section::Plate {
            thickness_mm: value_mm,
        },
        Section::Round { .. } => Section::Round {
            diameter_mm: value_mm,
        },
        Section::Square { .. } => Section::Square { side_mm: value_mm },
        Section::Blade {
            edge_mm,
            spine_mm,
            height_mm,
            grind,
        } => Section::Blade {
            edge_mm: edge_mm * value_mm / spine_mm,
            spine_mm: value_mm,
            height_mm,
            grind,
        },
    }
}

impl Numbers {
    /// Those of a route, with what runs have taught of it where that is put to it.
    ///
    /// # Errors
    /// As [`crate::route::trial`].
    pub fn of(route: &Route) -> Result<Self, AdviseError> {
        Self::of_steel(&TrialSteel::of(route)?, route)
    }

    fn of_steel(steel: &TrialSteel, route: &Route) -> Result<Self, AdviseError> {
        let trial = steel.trial(route, &route.taught().off)?;
        let (quenched, finished) = (trial.quenched(), trial.finished(route));
        Ok(Self {
            carbon_wt: Some(trial.soak.carbon_wt),
            carbide: Some(trial.soak.carbide_volume_fraction),
            grain_astm: Some(trial.soak.grain_astm),
            margin_factor: trial.margin_factor,
            quenched_hrc: quenched.and_then(hrc),
            quenched_austenite: quenched.and_then(austenite),
            final_hrc: finished.and_then(hrc),
            final_austenite: finished.and_then(austenite),
        })
    }
}

/// Takes one input of a route from one value to another in equal steps.
///
/// # Errors
/// A route without such a step or that makes no sense, a range out of what is allowed, or fewer
/// than 2 or more than 400 steps. What is refused at single steps is told there.
pub fn sweep(
    route: &Route,
    input: SweptInput,
    [from, to]: [f64; 2],
    steps: u32,
) -> Result<Vec<SweepPoint>, AdviseError> {
    let mut run = SweepRun::new(route, input, [from, to], steps)?;
    while run.step() {}
    Ok(run.points)
}

/// A sweep as a table: a column for the input and one for each number, named with their units, empty
/// where there is no outcome.
///
/// # Errors
/// None that can be met: the table is written to memory.
pub fn sweep_csv(input: SweptInput, points: &[SweepPoint]) -> Result<String, csv::Error> {
    let mut table = csv::Writer::from_writer(Vec::new());
    table.write_record([
        input.column(),
        "carbon_wt_percent",
        "carbide_volume_fraction",
        "grain_astm",
        "margin_factor",
        "quenched_hrc",
        "quenched_austenite_volume_fraction",
        "final_hrc",
        "final_austenite_volume_fraction",
        "refused",
    ])?;
    for point in points {
        let n = &point.numbers;
        let numbers = [
            n.carbon_wt,
            n.carbide,
            n.grain_astm,
            n.margin_factor,
            n.quenched_hrc,
            n.quenched_austenite,
            n.final_hrc,
            n.final_austenite,
        ];
        let cell = |value: Option<f64>| value.map_or_else(String::new, |value| value.to_string());
        let cells = std::iter::once(point.input.to_string())
            .chain(numbers.map(cell))
            .chain([point.refused.clone().unwrap_or_default()]);
        table.write_record(cells)?;
    }
    let bytes = table
        .into_inner()
        .map_err(csv::IntoInnerError::into_error)?;
    Ok(String::from_utf8_lossy(&bytes).into_owned())
}

/// A sweep, one step at a time; see [`super::SpreadRun`].
pub struct SweepRun {
    route: Route,
    input: SweptInput,
    steel: Option<TrialSteel>,
    range: [f64; 2],
    steps: u32,
    scale: TemperatureScale,
    correction: Correction,
    /// What is done so far.
    pub points: Vec<SweepPoint>,
}

impl SweepRun {
    /// Prepares a sweep.
    ///
    /// # Errors
    /// As [`sweep`].
    pub fn new(
        route: &Route,
        input: SweptInput,
        range: [f64; 2],
        steps: u32,
    ) -> Result<Self, AdviseError> {
        let column = input.column();
        for end in range {
            check(column, end, input.allowed(), "")?;
        }
        let (fewest, most) = STEPS;
        check("steps", steps.into(), (fewest.into(), most.into()), "")?;
        if input.of(route).is_none() {
            return Err(AdviseError::NoStep { input: column });
        }
        let steel = TrialSteel::of(route)?;
        Ok(Self {
            steel: input.keeps_steel(route).then_some(steel),
            route: route.clone(),
            input,
            range,
            steps,
            scale: TemperatureScale::Celsius,
            correction: Correction::default(),
            points: Vec::new(),
        })
    }

    /// The same with what a logbook has taught, where that acts: at each step what it tells of that
    /// route.
    #[must_use]
    pub fn counting_with(self, correction: &Correction) -> Self {
        Self {
            correction: correction.clone(),
            ..self
        }
    }

    /// The same, telling temperatures on a scale.
    #[must_use]
    pub fn on_scale(self, scale: TemperatureScale) -> Self {
        Self { scale, ..self }
    }

    /// Computes the next step; false when all are done.
    pub fn step(&mut self) -> bool {
        let done = self.points.len() as u32;
        if done >= self.steps {
            return false;
        }
        let [from, to] = self.range;
        let input = from + (to - from) * f64::from(done) / f64::from(self.steps - 1);
        let mut route = self.input.put(&self.route, input);
        route.taught = self.correction.taught(&route);
        let numbers = match (&self.steel, validate(&route)) {
            (_, Err(why)) => Err(AdviseError::Route(why.into())),
            (Some(steel), Ok(())) => Numbers::of_steel(steel, &route),
            (None, Ok(())) => Numbers::of(&route),
        };
        self.points.push(match numbers {
            Ok(numbers) => SweepPoint {
                input,
                numbers,
                refused: None,
            },
            Err(why) => SweepPoint {
                input,
                numbers: Numbers::default(),
                refused: Some(why.words(self.scale)),
            },
        });
        true
    }

    /// Part of the steps that is done.
    #[must_use]
    pub fn progress(&self) -> f64 {
        self.points.len() as f64 / f64::from(self.steps)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn swept(input: SweptInput, range: [f64; 2]) -> Vec<SweepPoint> {
        sweep(&Route::example(), input, range, 9).unwrap()
    }

    #[test]
    fn every_step_is_the_trial_of_that_route() {
        let route = Route::example();
        for input in SweptInput::ALL {
            let now = input.of(&route).unwrap();
            let (least, most) = input.allowed();
            assert!((least..=most).contains(&now), "{input:?}");
            let points = sweep(&route, input, [now, (now * 1.1).min(most)], 2).unwrap();
            let own = Numbers::of(&route).unwrap();
            assert_eq!(points[0].numbers, own, "{input:?}");
            assert_eq!(
                input.of(&input.put(&route, points[1].input)),
                Some(points[1].input)
            );
        }
    }

    #[test]
    fn trends_are_those_of_the_trade() {
        let of = |points: &[SweepPoint], get: fn(&Numbers) -> Option<f64>| -> Vec<f64> {
            points.iter().map(|p| get(&p.numbers).unwrap()).collect()
        };
        let rises = |all: &[f64]| all.windows(2).all(|pair| pair[1] >= pair[0]);
        let falls = |all: &[f64]| all.windows(2).all(|pair| pair[1] <= pair[0]);
        let hotter = swept(SweptInput::SoakC, [790.0, 880.0]);
        assert!(rises(&of(&hotter, |n| n.carbon_wt)) && falls(&of(&hotter, |n| n.grain_astm)));
        assert!(rises(&of(&hotter, |n| n.quenched_austenite)));
        let thicker = swept(SweptInput::ThicknessMm, [3.0, 9.0]);
        assert!(falls(&of(&thicker, |n| n.margin_factor)));
        let tempered = swept(SweptInput::TemperC, [150.0, 400.0]);
        assert!(falls(&of(&tempered, |n| n.final_hrc)));
    }

    #[test]
    fn what_makes_no_sense_is_refused_and_one_step_without_outcome_is_told() {
        let route = Route::example();
        let untempered = Route {
            tempers: Vec::new(),
            ..route.clone()
        };
        let refused = sweep(&untempered, SweptInput::TemperC, [150.0, 200.0], 5);
        assert_eq!(refused, Err(AdviseError::NoStep { input: "temper_c" }));
        assert!(sweep(&route, SweptInput::SoakC, [20.0, 900.0], 5).is_err());
        assert!(sweep(&route, SweptInput::SoakC, [f64::NAN, 900.0], 5).is_err());
        assert!(sweep(&route, SweptInput::SoakC, [800.0, 900.0], 1).is_err());
        let blade = Route {
            section: Section::Blade {
                edge_mm: 0.5,
                spine_mm: 4.0,
                height_mm: 30.0,
                grind: crate::heat::Grind::default(),
            },
            ..route.clone()
        };
        let thick = sweep(&blade, SweptInput::ThicknessMm, [4.0, 60.0], 3).unwrap();
        assert!(thick[0].refused.is_none() && thick[2].refused.is_some());
        let cold = sweep(&route, SweptInput::SoakC, [680.0, 830.0], 4).unwrap();
        assert!(cold[0].refused.is_some() && cold[0].numbers == Numbers::default());
        assert!(cold[3].refused.is_none());
        let table = sweep_csv(SweptInput::SoakC, &cold).unwrap();
        let lines: Vec<&str> = table.lines().collect();
        assert_eq!(lines.len(), 5);
        assert!(lines[0].starts_with("soak_c,carbon_wt_percent,"));
        assert!(lines[1].starts_with("680,,,,,,,,,"));
        assert!(lines[4].starts_with("830,0."));
    }
}
