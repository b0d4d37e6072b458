//! The soak at both ends of the furnace's band, and the piece as quenched after it.

use super::hardening::{Hardened, Hardening};
use super::outcome::FurnaceBand;
use super::plan::Route;
use crate::heat::{Cooled, CoolingCurve};
use crate::numeric::order::larger;
use crate::soak::{SoakEnd, Stock};
use crate::transform::Kinetics;

/// One end.
pub(super) struct FurnaceEnd {
    soaked: SoakEnd,
    pub(super) hardened: Option<(Hardening, Hardened)>,
}

impl FurnaceEnd {
    pub(super) fn at(route: &Route, stock: &Stock, soak_c: f64, cooled: &Cooled) -> Option<Self> {
        let soaked = stock
            .at(soak_c)
            .ok()?
            .end(60.0 * route.soak.time_min)
            .ok()?;
        let hardening = Hardening::of_route(route, &soaked.point, &soaked.dissolved);
        let hardened = hardening.ok().and_then(|hardening| {
            let piece = hardening.quench(cooled.slowest()?).ok()?;
            Some((hardening, piece))
        });
        Some(Self { soaked, hardened })
    }

    pub(super) fn kinetics(&self) -> Option<&Kinetics> {
        Some(self.hardened.as_ref()?.0.kinetics())
    }

    fn hrc(&self) -> Option<f64> {
        Some(self.hardened.as_ref()?.1.hardness.hrc_carried())
    }

    /// As quenched along the cooling curve of another place.
    pub(super) fn quenched_along(&self, curve: &CoolingCurve) -> Option<Hardened> {
        let (hardening, _) = self.hardened.as_ref()?;
        hardening.quench(curve).ok()
    }

    /// With bainite, which is wanted in a hot bath.
    fn hardened_part(&self) -> Option<f64> {
        let fractions = &self.hardened.as_ref()?.1.fractions;
        Some(fractions.hardened() + fractions.bainite_of_matrix())
    }
}

/// What the ends make of the soak.
pub(super) fn furnace_band(route: &Route, ends: &[Option<FurnaceEnd>; 2]) -> FurnaceBand {
    let [cold, hot] = ends.each_ref().map(Option::as_ref);
    let hrc = |end: &FurnaceEnd| Some(end.hrc()? + route.taught().off.quenched_hrc);
    FurnaceBand {
        set_point_c: route.set_point_c(),
        coldest_c: route.soak.temperature_c - route.soak_band_k(),
        hottest_c: route.soak.temperature_c + route.soak_band_k(),
        carbon_at_coldest_wt: cold.map(|end| end.soaked.point.carbon_wt),
        carbon_at_hottest_wt: hot.map(|end| end.soaked.point.carbon_wt),
        hardened_at_coldest: cold.and_then(FurnaceEnd::hardened_part).unwrap_or_default(),
        hrc_at_coldest: cold.and_then(hrc),
        hrc_at_hottest: hot.and_then(hrc),
        austenite_at_hottest: hot
            .and_then(|end| Some(end.hardened.as_ref()?.1.fractions.austenite)),
    }
}

/// How far the coldest or the hottest soak, whichever moves it more, moves a hardness as quenched, HRC. After a
/// coldest soak in which nothing dissolves the piece is as soft as the scale can tell.
pub(super) fn swing_hrc([coldest_hrc, hottest_hrc]: [Option<f64>; 2], planned_hrc: f64) -> f64 {
    let ends = [Some(coldest_hrc.unwrap_or_default()), hottest_hrc];
    let apart = ends.into_iter().flatten();
    let apart = apart.map(|hrc| (hrc - planned_hrc).abs());
    apart.fold(0.0, larger)
}
