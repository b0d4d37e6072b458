//! The probe and the heat transfer of a quenchant of the user's own.

use super::labels;
use crate::own::Found;
use crate::state::Bench;
use recalesce::chart::{
    HeatTransferData, HeatTransferPoint, ProbePoint, Scene, heat_transfer, probe_test,
};
use recalesce::numeric::quantile::NINE_IN_TEN;

/// The probe as measured and as computed; none where nothing was measured.
pub(crate) fn probe_scene(bench: Bench, found: &Found, width: f64, height: f64) -> Option<Scene> {
    let points: Vec<ProbePoint> = found
        .points
        .iter()
        .map(|&[time_s, measured_c, computed_c]| ProbePoint {
            time_s,
            measured_c,
            computed_c,
        })
        .collect();
    (!points.is_empty()).then(|| probe_test(&points, &labels(bench), [width, height]))
}

/// The heat-transfer curve, with the band of each point where that is known.
pub(crate) fn transfer_scene(bench: Bench, found: &Found, width: f64, height: f64) -> Scene {
    let own = &found.medium;
    let points: Vec<HeatTransferPoint> = if found.knots.is_empty() {
        let band_factor = own.h_band_factor.unwrap_or(1.0);
        let points = own.h_w_m2k.iter();
        points
            .map(|&[surface_c, h_w_m2k]| HeatTransferPoint {
                surface_c,
                h_w_m2k,
                band_factor,
                is_weak: false,
            })
            .collect()
    } else {
        let knots = found.knots.iter();
        knots
            .map(|knot| HeatTransferPoint {
                surface_c: knot.surface_c,
                h_w_m2k: knot.h_w_m2k,
                band_factor: (NINE_IN_TEN * knot.ln_h_sd).exp(),
                is_weak: knot.from_neighbours,
            })
            .collect()
    };
    let data = HeatTransferData {
        points,
        bath_c: own.bath_c,
        is_measured: !found.knots.is_empty(),
    };
    heat_transfer(&data, &labels(bench), [width, height])
}
