//! Plates, rounds and balls of any material in one medium.

use super::conduct::Conduction;
use super::curve::{CoolingCurve, Place};
use super::mesh::{Mesh, Shape};
use super::trace::{Trace, Watch};
use super::until::{Reached, Until};
use super::{Material, Medium};

/// A piece that one coordinate describes, and how finely it is computed.
#[derive(Debug, Clone)]
pub struct Piece {
    /// Shape.
    pub shape: Shape,
    /// Half thickness or radius, m, above zero.
    pub size_m: f64,
    /// Properties.
    pub material: Material,
    /// Intervals from the centre to the surface; at least 2 are used.
    pub intervals: usize,
    /// Largest error that any node may take up in one step in time, K; at least 1e-6 is used.
    pub tolerance_k: f64,
}

impl Piece {
    /// Tolerance that suffices for a quench, K.
    pub const TOLERANCE_K: f64 = 0.03;

    /// Intervals that suffice for a quench: errors against the series stay under 0.1 % of the
    /// range of temperature.
    #[must_use]
    pub const fn intervals(shape: Shape) -> usize {
        match shape {
            Shape::Plate => 14,
            Shape::Cylinder | Shape::Sphere => 18,
        }
    }

    /// A piece computed as finely as a quench needs.
    #[must_use]
    pub fn new(shape: Shape, size_m: f64, material: Material) -> Self {
        Self {
            intervals: Self::intervals(shape),
            shape,
            size_m,
            material,
            tolerance_k: Self::TOLERANCE_K,
        }
    }

    /// Cools the piece from one temperature, °C, in a medium, with its heat transfer times
    /// `agitation`, until no place is hotter than `until_c` or the time, s, is over. One curve for
    /// each place asked for; places of a blade are read at the centre.
    #[must_use]
    pub fn cool(
        &self,
        medium: &Medium,
        agitation: f64,
        start_c: f64,
        until_c: f64,
        time_limit_s: f64,
        places: &[Place],
    ) -> Vec<CoolingCurve> {
        let (mesh, positions) = Mesh::radial(self.shape, self.size_m, self.intervals);
        let watches = places
            .iter()
            .map(|&place| match place {
                Place::Surface => Watch::node(place, mesh.len() - 1),
                Place::Within(fraction) => {
                    Watch::between(place, fraction * self.size_m, &positions, |i| i)
                }
                _ => Watch::node(place, 0),
            })
            .collect();
        let mut trace = Trace::new(watches);
        let mut piece =
            Conduction::<3>::new(&mesh, &self.material, start_c, self.tolerance_k.max(1e-6));
        let until = Until {
            reached: Reached::Cooled(until_c),
            time_s: time_limit_s,
        };
        piece.stay_in(medium, agitation, until, |piece| trace.record(piece));
        trace.into_curves()
    }
}
