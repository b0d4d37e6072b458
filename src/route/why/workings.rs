//! The inside of a computed route, by the same functions that computed it.

use super::{Input, Quantity, number};
use crate::hardness::{AsQuenched, Hardness, QuenchedParts, TemperedParts, Tempering};
use crate::heat::CoolingCurve;
use crate::route::NumberKey;
use crate::route::hardening::{Hardened, Hardening, KineticsOff};
use crate::route::outcome::{Outcome, QuenchTransformed, Stage, Step};
use crate::route::plan::{Cold, Route};
use crate::route::tempering::step_of;
use crate::steel::{Composition, Element};
use crate::transform::{Kinetics, Transformed};
use recalesce_texts::route::why as texts;

pub(super) struct Workings<'a> {
    pub(super) route: &'a Route,
    pub(super) outcome: &'a Outcome,
    pub(super) hardening: Option<Hardening>,
    pub(super) quenched: Option<Hardened>,
    pub(super) transformed: Option<Transformed>,
    /// The piece after the cold bath, planned or weighed.
    pub(super) chilled: Option<Hardened>,
}

impl<'a> Workings<'a> {
    pub(super) fn of(route: &'a Route, outcome: &'a Outcome) -> Self {
        let soak = &outcome.soak;
        let hardening = Hardening::of_route(route, &soak.end, &soak.dissolved).ok();
        let curve = outcome.quench.deciding_curve();
        let quenched = hardening
            .as_ref()
            .and_then(|hardening| hardening.quench(curve?).ok());
        let transformed = hardening.as_ref().and_then(|hardening| {
            let curve = curve?;
            let kinetics = hardening.kinetics();
            kinetics.along(&curve.time_s, &curve.temperature_c).ok()
        });
        let cold = route.cold.unwrap_or(Cold::FIRST_OFFERED);
        let chilled = hardening.as_ref().and_then(|hardening| {
            let quenched = quenched.as_ref()?;
            hardening.cold(&route.composition, quenched, &cold).ok()
        });
        Self {
            route,
            outcome,
            hardening,
            quenched,
            transformed,
            chilled,
        }
    }

    pub(super) fn kinetics(&self) -> Option<&Kinetics> {
        Some(self.hardening.as_ref()?.kinetics())
    }

    pub(super) fn quench(&self) -> Option<&QuenchTransformed> {
        self.outcome.quench.transformed.given()
    }

    pub(super) fn curve(&self) -> Option<&CoolingCurve> {
        self.outcome.quench.deciding_curve()
    }

    pub(super) const fn dissolved(&self) -> &Composition {
        &self.outcome.soak.dissolved
    }

    /// Logarithm of the factor by which an end-quench test, and what runs have taught, lets all transformations begin later.
    pub(super) fn later(&self) -> f64 {
        KineticsOff::of(self.route).ln_later
    }

    pub(super) fn key(&self, quantity: Quantity) -> NumberKey {
        quantity.key(self.outcome)
    }

    /// A number of the route as what goes into another.
    pub(super) fn input(
        &self,
        symbol: impl Into<std::borrow::Cow<'static, str>>,
        name: impl Into<String>,
        value: f64,
        unit: &'static str,
        quantity: Quantity,
    ) -> Input {
        number(symbol, name, value, unit, self.key(quantity))
    }

    pub(super) fn dissolved_inputs(&self, elements: &[Element]) -> Vec<Input> {
        super::contents(elements, self.dissolved(), texts::in_solution, |element| {
            self.key(Quantity::Dissolved(element))
        })
    }

    pub(super) fn stage(&self, step: Step) -> Option<&Stage> {
        self.outcome.stages.iter().find(|stage| stage.step == step)
    }

    pub(super) fn hardness(&self, step: Step) -> Option<Hardness> {
        self.stage(step)?.hardness
    }

    /// The step before a temper, whose hardness is known.
    pub(super) fn before_tempers(&self) -> Step {
        if self.stage(Step::Cold).is_some() {
            Step::Cold
        } else {
            Step::Quench
        }
    }

    /// The piece after the quench, or after a cold bath without snap temper.
    pub(super) fn piece(&self, step: Step) -> Option<AsQuenched> {
        match step {
            Step::Quench => Some(self.quenched.as_ref()?.as_quenched()),
            Step::Cold if self.route.cold?.snap.is_none() => {
                Some(self.chilled.as_ref()?.as_quenched())
            }
            _ => None,
        }
    }

    pub(super) fn quenched_parts(&self, step: Step) -> Option<(AsQuenched, QuenchedParts)> {
        let piece = self.piece(step)?;
        let parts = QuenchedParts::of(
            &piece.dissolved,
            &piece.constituents,
            &piece.formed,
            &piece.auto_tempered,
        );
        Some((piece, parts.ok()?))
    }

    /// The piece when so many tempers are done.
    pub(super) fn tempered(&self, count: usize) -> Option<(Tempering, TemperedParts)> {
        let steel = &self.route.composition;
        let ready = self.route.cold.and(self.chilled.as_ref());
        let start = ready.or(self.quenched.as_ref()).map_or_else(
            || AsQuenched::fully_martensitic(steel),
            Hardened::as_quenched,
        );
        let mut piece = Tempering::new(&start, steel).ok()?;
        for temper in self.route.tempers.get(..count)? {
            piece.hold(&step_of(temper)).ok()?;
        }
        let parts = piece.parts();
        Some((piece, parts))
    }

    /// Half width of the models' band after a step, HRC, and what else is open before the tempers.
    pub(super) fn model_band_hrc(&self, step: Step) -> Option<[f64; 2]> {
        match step {
            Step::Temper(count) => {
                let band_hrc = self.tempered(count)?.0.now().ok()?.band_hrc;
                let ready = self.route.cold.and(self.chilled.as_ref());
                let open_hrc = ready.map_or(0.0, Hardened::open_hrc);
                Some([band_hrc, open_hrc])
            }
            Step::Quench => Some([crate::hardness::AS_QUENCHED_BAND_HRC, 0.0]),
            Step::Cold => {
                let piece = self.chilled.as_ref()?;
                let open_hrc = piece.open_hrc();
                let band_hrc = piece.stage(step).band_hrc;
                Some([
                    (band_hrc * band_hrc - open_hrc * open_hrc).max(0.0).sqrt(),
                    open_hrc,
                ])
            }
            Step::Soak | Step::Snap => None,
        }
    }
}
