//! The quench of a piece: air on the way, the bath, and still air after it.

use super::blade::Asked;
use super::conduct::Conduction;
use super::curve::{CoolingCurve, Place};
use super::cut::{Cut, Kind, View};
use super::element::{NARROW_BAND, SQUARE_BAND};
use super::quenching::{HeatError, LEAVES_BATH_K, LONGEST_S, Quenching};
use super::trace::Trace;
use super::turning::{Turned, Turning};
use super::until::{Reached, Until};
use super::{Leave, Material, media};
use serde::Serialize;

/// The piece is left in the bath, or in air, until its hottest place is so near to it, K.
const NEAR_K: f64 = 1.0;
/// Temperature by which the slowest place is chosen, °C: near the nose of pearlite.
const NOSE_C: f64 = 540.0;

/// A computed quench.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Cooled {
    /// Plate and round: centre, surface. Square: centre, middle of a face, corner. Blade: edge,
    /// quarter, middle, three quarters and spine on the middle plane, and the flank at the spine.
    /// All have the same times, from leaving the furnace.
    pub curves: Vec<CoolingCurve>,
    /// Index of the curve of the place that is slowest to 540 °C.
    pub slowest: usize,
    /// When the piece enters the bath, s.
    pub bath_entry_s: f64,
    /// When it goes into each of the later baths, s.
    pub changes_s: Vec<f64>,
    /// When the piece leaves the bath for still air, s; none when it ends in the bath.
    pub bath_exit_s: Option<f64>,
    /// Whether the piece reached the end within the time limit.
    pub complete: bool,
}

impl Cooled {
    /// The curve of a place.
    #[must_use]
    pub fn at(&self, place: Place) -> Option<&CoolingCurve> {
        self.curves.iter().find(|curve| curve.place == place)
    }

    /// The curve of the place that is slowest to 540 °C.
    #[must_use]
    pub fn slowest(&self) -> Option<&CoolingCurve> {
        self.curves.get(self.slowest)
    }
}

/// Computes a quench.
///
/// The piece passes through still air for the delay, then into the bath. It stays there until
/// its hottest place is at `end_c`, or within 1 K of the bath where that is warmer; but where the
/// bath is well above both `end_c` and the room, the piece leaves it once it is within 5 K, and
/// goes on to `end_c`, or to within 1 K of the room, in still air. With later baths each is left as
/// they tell, and the last as said before; one that is warmer than the piece warms it first, unless it
/// is left at a temperature that the piece is below already. Still air of the list is used as it is;
/// `agitation` acts on the first bath only.
///
/// Holds for plates, rounds and square bars up to a few hundred millimetres, away from their ends, and for
/// blades. Heat of transformation is left out, but for martensite where its start is given;
/// [`cool_turning`] has it all. Against far more nodes and shorter steps the core passes 700 to 300 °C
/// within 0.2 %, a blade's within 1 %, at 700 °C 2 %, in warm water, where wetting runs up a blade as a front, within 8 % at
/// worst; the surface of a thick piece in water or brine may be off by some
/// hundredths of a second at first. Profiles are polynomials: where a surface is chilled all at once, as by
/// no quenchant of the list, places overshoot by up to 0.4 % of the fall, a square bar's by 2 %, a
/// blade's by 20 %. The heat transfer of the medium is uncertain by 30 % and more.
///
/// # Errors
/// Any number out of the range given at its field, or a bath that does not cool the piece.
pub fn cool(quenching: &Quenching<'_>) -> Result<Cooled, HeatError> {
    quenching.compute(None, View::Named)
}

/// The core of a plate, a round or a square bar at a glance, for searches over many quenches: fewer nodes and
/// longer steps. From 700 to 300 °C its times are within 0.4 % of those of [`cool`] in brine and water, and
/// within 0.2 % in oil and air, up to 120 mm; of a blade it is the slowest place of [`cool`].
///
/// # Errors
/// As [`cool`].
pub fn cool_core(quenching: &Quenching<'_>) -> Result<Option<CoolingCurve>, HeatError> {
    let mut cooled = quenching.compute(None, View::Glance)?;
    let core = cooled.slowest;
    Ok((core < cooled.curves.len()).then(|| cooled.curves.swap_remove(core)))
}

/// The same as [`cool`], with the properties of ferrite, pearlite and bainite and their heat as they
/// form: slow cooling holds at their temperature, or glows back. The start of martensite is that of the
/// austenite that turns.
///
/// # Errors
/// As [`cool`].
pub fn cool_turning(
    quenching: &Quenching<'_>,
    turning: &mut dyn Turning,
) -> Result<Cooled, HeatError> {
    turning_from(quenching, turning).compute(Some(turning), View::Named)
}

/// As [`cool_turning`], looked at from the centre to the surface, or in a blade from edge to spine
/// on the middle plane: places [`Place::Within`], evenly spaced, all with the same times.
///
/// # Errors
/// As [`cool`].
pub fn cool_across(
    quenching: &Quenching<'_>,
    turning: &mut dyn Turning,
) -> Result<Vec<CoolingCurve>, HeatError> {
    let cooled = turning_from(quenching, turning).compute(Some(turning), View::Across)?;
    Ok(cooled.curves)
}

fn turning_from<'a>(quenching: &Quenching<'a>, turning: &dyn Turning) -> Quenching<'a> {
    Quenching {
        martensite_start_c: Some(turning.martensite_start_c()),
        ..quenching.clone()
    }
}

impl Quenching<'_> {
    fn compute(&self, turning: Option<&mut dyn Turning>, view: View) -> Result<Cooled, HeatError> {
        self.validate()?;
        let turning_c = self.martensite_start_c;
        let to_martensite = turning_c.map(Material::austenite_to_martensite);
        let material = to_martensite.as_ref().unwrap_or(Material::of_austenite());
        let cut = Cut::of(&self.section, view, Asked::by(self));
        let cooled = self.cooled(material, turning, cut);
        let finite = |curve: &CoolingCurve| {
            [&curve.time_s, &curve.temperature_c, &curve.rate_k_per_s]
                .iter()
                .all(|values| values.iter().all(|v| v.is_finite()))
        };
        if cooled.curves.iter().all(finite) {
            Ok(cooled)
        } else {
            Err(HeatError::NotFinite)
        }
    }

    fn cooled(&self, material: &Material, turning: Option<&mut dyn Turning>, cut: Cut) -> Cooled {
        match cut.kind {
            Kind::Narrow => self.run::<NARROW_BAND>(material, turning, cut),
            Kind::Square => self.run::<SQUARE_BAND>(material, turning, cut),
        }
    }

    /// Takes the piece through air, bath and air.
    fn run<const W: usize>(
        &self,
        material: &Material,
        turning: Option<&mut dyn Turning>,
        cut: Cut,
    ) -> Cooled {
        let Cut {
            mesh,
            watches,
            tolerance_k,
            turn_together,
            ..
        } = cut;
        let mut trace = Trace::new(watches);
        let mut piece = Conduction::<W>::new(&mesh, material, self.start_c, tolerance_k);
        if let Some(turning) = turning {
            let turned = Turned::new(turning, material, mesh.len(), turn_together, self.start_c);
            piece = piece.turning(turned);
        }
        let air = media::medium("air_still");
        if let Some(air) = air.filter(|_| self.air_delay_s > 0.0) {
            let until = Until {
                reached: Reached::Cooled(air.bath_c + NEAR_K),
                time_s: self.air_delay_s,
            };
            piece.stay_in(air, 1.0, until, |piece| trace.record(piece));
        }
        let bath_entry_s = piece.time_s;
        let mut bath = (self.medium, self.agitation);
        let mut complete = true;
        let mut changes_s = Vec::with_capacity(self.then.len());
        for later in self.then {
            let until = left_for_next(later.leave, bath.0.bath_c, piece.time_s);
            let reached = piece.stay_in(bath.0, bath.1, until, |piece| trace.record(piece));
            complete &= reached || matches!(later.leave, Leave::AfterS(_));
            changes_s.push(piece.time_s);
            bath = (&later.medium, later.agitation);
        }
        let bath_c = bath.0.bath_c;
        let then_air = air.filter(|air| bath_c > self.end_c.max(air.bath_c) + LEAVES_BATH_K);
        let near = if then_air.is_some() {
            LEAVES_BATH_K
        } else {
            NEAR_K
        };
        let near_bath = if piece.hottest_c() < bath_c {
            Until {
                reached: Reached::Heated(bath_c - near),
                time_s: piece.time_s + LONGEST_S,
            }
        } else {
            self.cooled_to(bath_c + near, piece.time_s)
        };
        complete &= piece.stay_in(bath.0, bath.1, near_bath, |piece| trace.record(piece));
        let mut bath_exit_s = None;
        if let Some(air) = then_air {
            bath_exit_s = Some(piece.time_s);
            let cold = self.cooled_to(air.bath_c + NEAR_K, piece.time_s);
            complete &= piece.stay_in(air, 1.0, cold, |piece| trace.record(piece));
        }
        let curves = trace.into_curves();
        Cooled {
            slowest: slowest(&curves),
            curves,
            bath_entry_s,
            changes_s,
            bath_exit_s,
            complete,
        }
    }

    /// Cooled to where the quench ends, or to what is as cold as it gets, from a time on, s.
    fn cooled_to(&self, coldest_c: f64, from_s: f64) -> Until {
        Until {
            reached: Reached::Cooled(self.end_c.max(coldest_c)),
            time_s: from_s + LONGEST_S,
        }
    }
}

/// When a bath, °C, that the piece is in from a time on, s, is left for the next.
fn left_for_next(leave: Leave, bath_c: f64, from_s: f64) -> Until {
    match leave {
        Leave::AfterS(stay_s) => Until {
            reached: Reached::Cooled(f64::NEG_INFINITY),
            time_s: from_s + stay_s,
        },
        Leave::AtC(temperature_c) => Until {
            reached: Reached::Cooled(temperature_c.max(bath_c + NEAR_K)),
            time_s: from_s + LONGEST_S,
        },
    }
}

/// The curve that comes to the nose last; of those that are alike, the first.
fn slowest(curves: &[CoolingCurve]) -> usize {
    let to_nose = |curve: &CoolingCurve| curve.time_to_c(NOSE_C).unwrap_or(f64::INFINITY);
    curves
        .iter()
        .enumerate()
        .max_by(|a, b| to_nose(a.1).total_cmp(&to_nose(b.1)).then(b.0.cmp(&a.0)))
        .map_or(0, |(index, _)| index)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heat::mesh::Shape;
    use crate::heat::{Grind, LaterBath, OwnMedium, Piece, Section};

    /// With constant properties a square bar is the product of two plates, at every place; the bath is at 0 °C
    /// and the start at 1000.
    #[test]
    fn a_square_bar_is_the_product_of_two_plates() {
        let half_m = 5e-3;
        let material = Material::constant(25.0, 5e6);
        for biot in [0.1, 1.0, 10.0] {
            let bath = OwnMedium {
                h_w_m2k: [-100.0, 1400.0].map(|t| [t, biot * 25.0 / half_m]).to_vec(),
                bath_c: 0.0,
                ..OwnMedium::default()
            };
            let bath = bath.resolve().unwrap();
            let quenching = Quenching {
                section: Section::Square { side_mm: 10.0 },
                medium: &bath,
                agitation: 1.0,
                start_c: 1000.0,
                air_delay_s: 0.0,
                end_c: 1.0,
                then: &[],
                martensite_start_c: None,
            };
            let cut = Cut::of(&quenching.section, View::Named, Asked::by(&quenching));
            let square = quenching.cooled(&material, None, cut);
            let plate = Piece {
                intervals: 60,
                tolerance_k: 1e-3,
                ..Piece::new(Shape::Plate, half_m, material.clone())
            };
            let places = [Place::Centre, Place::Surface];
            let plate = plate.cool(&bath, 1.0, 1000.0, 1.0, 1e4, &places);
            for fourier in [0.1, 0.5, 1.0] {
                let time_s = fourier * half_m * half_m * 5e6 / 25.0;
                let [centre, surface] = [0, 1].map(|i| plate[i].temperature_at_s(time_s).unwrap());
                for (place, product) in [
                    (Place::Centre, centre * centre),
                    (Place::Surface, centre * surface),
                    (Place::Corner, surface * surface),
                ] {
                    let computed = square.at(place).unwrap().temperature_at_s(time_s).unwrap();
                    let within = if biot > 1.0 { 2.0 } else { 1.0 };
                    approx::assert_abs_diff_eq!(computed, product / 1000.0, epsilon = within);
                }
            }
        }
    }

    fn apart_at_a_glance(quenching: &Quenching<'_>) -> f64 {
        let glance = cool_core(quenching).unwrap().unwrap();
        let whole = cool(quenching).unwrap();
        let times = [700.0, 540.0, 400.0, 300.0].into_iter().filter_map(|c| {
            let [glance, whole] = [&glance, whole.slowest()?].map(|curve| curve.time_to_c(c));
            Some((glance? / whole? - 1.0).abs())
        });
        times.reduce(f64::max).unwrap()
    }

    /// A glance at the core is as near to the whole quench as searches need.
    #[test]
    fn a_glance_sees_the_core_as_the_whole_quench_does() {
        let fast_oil = media::medium("oil_fast").unwrap();
        let baths = [LaterBath {
            medium: fast_oil.clone(),
            agitation: 1.0,
            leave: Leave::AfterS(2.0),
        }];
        for (name, within) in [
            ("brine10", 4e-3),
            ("water40", 4e-3),
            ("oil_fast", 2e-3),
            ("oil_slow", 2e-3),
            ("air_still", 2e-3),
        ] {
            for size_mm in [0.5, 2.0, 4.0, 10.0, 25.0, 60.0, 120.0] {
                for section in [
                    Section::Plate {
                        thickness_mm: size_mm,
                    },
                    Section::Round {
                        diameter_mm: size_mm,
                    },
                    Section::Square { side_mm: size_mm },
                ] {
                    let still = Quenching {
                        section,
                        medium: media::medium(name).unwrap(),
                        agitation: 1.0,
                        start_c: 850.0,
                        air_delay_s: 1.0,
                        end_c: 280.0,
                        then: &[],
                        martensite_start_c: None,
                    };
                    let stirred = Quenching {
                        agitation: 1.7,
                        then: &baths,
                        ..still.clone()
                    };
                    for quenching in [still, stirred] {
                        let apart = apart_at_a_glance(&quenching);
                        assert!(
                            apart < within,
                            "{section:?}, {name}, {}: {apart}",
                            quenching.agitation
                        );
                    }
                }
            }
        }
        let blade = Quenching {
            section: Section::Blade {
                edge_mm: 0.5,
                spine_mm: 4.0,
                height_mm: 30.0,
                grind: Grind::Straight,
            },
            medium: fast_oil,
            agitation: 1.0,
            start_c: 850.0,
            air_delay_s: 1.0,
            end_c: 100.0,
            then: &[],
            martensite_start_c: None,
        };
        let whole = cool(&blade).unwrap();
        assert_eq!(cool_core(&blade).unwrap().as_ref(), whole.slowest());
    }
}
