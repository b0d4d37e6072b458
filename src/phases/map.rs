//! The phase map: boundaries of austenite against carbon for the alloy content of a steel.

use super::critical::{Boundaries, Eutectoid, TOLERANCE_K, check};
use super::search::Upwards;
use super::{EquilibriumError, PhaseError};
use crate::steel::Composition;

/// Boundaries for the map of one alloy content; points are `[carbon wt %, temperature °C]`.
#[derive(Debug, Clone, PartialEq)]
pub struct PhaseMap {
    /// Where austenite begins at the steel's own carbon, °C.
    pub a1_c: f64,
    /// Where the three phases end at the steel's own carbon, °C; above `a1_c` in alloy steel.
    pub a1_upper_c: f64,
    /// Where the last ferrite goes, from no carbon down to the eutectoid. Where ferrite lasts to
    /// 1200 °C, as in steels of 12 % Cr and more, the first piece is the top of the map, and carbon
    /// may fall on the way down.
    pub a3: Vec<[f64; 2]>,
    /// Where the last carbide other than MC and M6C goes, from the eutectoid up to 2 wt % carbon
    /// or 1200 °C. Where A3 and Acm meet above 1200 °C (17 % Cr) each is given from the upper end
    /// of A1 on, as if the other second phase were held back.
    pub acm: Vec<[f64; 2]>,
    /// Where austenite begins, in order of carbon: the lower end of A1.
    pub a1_lower: Vec<[f64; 2]>,
    /// Where ferrite and carbide no longer stand beside austenite together, in order of
    /// carbon: the upper end of A1.
    pub a1_upper: Vec<[f64; 2]>,
    /// Carbon of the eutectoid, wt %.
    pub eutectoid_carbon_wt: f64,
}

/// Most carbon on the map, wt %.
const MOST_CARBON_WT: f64 = 2.0;
/// Least carbon of the lines A1, wt %: below, they end in the boundaries of ferrite.
const LEAST_CARBON_WT: f64 = 0.03;
/// Least carbon to which A3 is followed, wt %.
const NO_CARBON_WT: f64 = 1e-4;
/// Top of the map, °C.
const TOP_C: f64 = 1200.0;
/// Pieces into which A3 and Acm are cut, and the lines A1.
const PIECES: u8 = 48;
const PIECES_OF_A1: u8 = 24;
/// Accuracy in carbon, wt %.
const TOLERANCE_WT: f64 = 1e-5;

/// The map of a steel's alloy content.
///
/// # Errors
/// As [`super::critical_temperatures`].
pub fn phase_map(steel: &Composition) -> Result<PhaseMap, PhaseError> {
    check(steel)?;
    let mut boundaries = Boundaries::default();
    let own = steel.with_carbon(steel.c.clamp(LEAST_CARBON_WT, MOST_CARBON_WT));
    let a1_c = boundaries.first_austenite_c(&own)?;
    let eutectoid = boundaries.eutectoid(steel, a1_c)?;
    let a1_upper_c = end_of_three_c(&mut boundaries, &own, a1_c, eutectoid)?;
    let mut a1_lower = Vec::with_capacity(usize::from(PIECES_OF_A1) + 1);
    let mut a1_upper = Vec::with_capacity(usize::from(PIECES_OF_A1) + 1);
    for i in 0..=PIECES_OF_A1 {
        let carbon_wt =
            LEAST_CARBON_WT + part(i, PIECES_OF_A1) * (MOST_CARBON_WT - LEAST_CARBON_WT);
        let here = steel.with_carbon(carbon_wt);
        // with little carbon and much chromium there may be none at all
        let Some(lower_c) = boundaries.austenite_from_c(&here)? else {
            continue;
        };
        let upper_c = end_of_three_c(&mut boundaries, &here, lower_c, eutectoid)?;
        a1_lower.push([carbon_wt, lower_c]);
        a1_upper.push([carbon_wt, upper_c]);
    }
    let bottom = if eutectoid.temperature_c < TOP_C {
        Bottom::Eutectoid(eutectoid)
    } else {
        Bottom::Apart {
            carbon_wt: eutectoid.carbon_wt,
            temperature_c: a1_upper_c,
        }
    };
    Ok(PhaseMap {
        a1_c,
        a1_upper_c,
        a3: a3(&mut boundaries, steel, bottom)?,
        acm: acm(&mut boundaries, steel, bottom)?,
        a1_lower,
        a1_upper,
        eutectoid_carbon_wt: eutectoid.carbon_wt,
    })
}

/// Where the lines A3 and Acm begin.
#[derive(Debug, Clone, Copy)]
enum Bottom {
    /// Both where they meet.
    Eutectoid(Eutectoid),
    /// They meet above the map: each at this temperature, somewhere about this carbon.
    Apart { carbon_wt: f64, temperature_c: f64 },
}

impl Bottom {
    const fn temperature_c(self) -> f64 {
        match self {
            Self::Eutectoid(at) => at.temperature_c,
            Self::Apart { temperature_c, .. } => temperature_c,
        }
    }

    const fn carbon_wt(self) -> f64 {
        match self {
            Self::Eutectoid(at) => at.carbon_wt,
            Self::Apart { carbon_wt, .. } => carbon_wt,
        }
    }
}

fn part(i: u8, of: u8) -> f64 {
    f64::from(i) / f64::from(of)
}

/// Where one of the two phases beside austenite is gone, °C.
fn end_of_three_c(
    boundaries: &mut Boundaries,
    steel: &Composition,
    a1_c: f64,
    eutectoid: Eutectoid,
) -> Result<f64, EquilibriumError> {
    let first = if steel.c < eutectoid.carbon_wt {
        boundaries.last_carbide_c(steel, a1_c)
    } else {
        boundaries.last_ferrite_c(steel, a1_c)
    }?;
    Ok(first.map_or(TOP_C, |t_c| t_c.min(TOP_C)))
}

/// The line A3, downwards.
fn a3(
    boundaries: &mut Boundaries,
    steel: &Composition,
    bottom: Bottom,
) -> Result<Vec<[f64; 2]>, EquilibriumError> {
    let bottom_c = bottom.temperature_c();
    let end_c = boundaries.last_ferrite_c(&steel.with_carbon(0.0), bottom_c)?;
    let end_c = end_c.filter(|t_c| *t_c < TOP_C);
    let top_c = end_c.unwrap_or(TOP_C);
    let mut line = Line::from(bottom);
    let last = if end_c.is_some() { PIECES - 1 } else { PIECES };
    for i in line.first..=last {
        let t_c = bottom_c + part(i, PIECES) * (top_c - bottom_c);
        let height = |c_wt| boundaries.ferrite_height(&steel.with_carbon(c_wt), t_c);
        if !line.go_on(t_c, 1.0, height)? {
            break;
        }
    }
    let mut points = line.points;
    // the line ends without carbon, or the field beside it at the top of the map
    points.push([0.0, top_c]);
    points.reverse();
    Ok(points)
}

/// The line of the last carbide, upwards.
fn acm(
    boundaries: &mut Boundaries,
    steel: &Composition,
    bottom: Bottom,
) -> Result<Vec<[f64; 2]>, EquilibriumError> {
    let bottom_c = bottom.temperature_c();
    let mut line = Line::from(bottom);
    let mut last_c = bottom_c;
    for i in line.first..=PIECES {
        let t_c = bottom_c + part(i, PIECES) * (TOP_C - bottom_c);
        let height = |c_wt| boundaries.carbide_height(&steel.with_carbon(c_wt), t_c);
        if !line.go_on(t_c, -1.0, height)? {
            // the line leaves the map at its side
            let side = Upwards {
                from: last_c,
                to: t_c,
                step: 2.0,
                longest: 10.0,
                tolerance: TOLERANCE_K,
            };
            let most = steel.with_carbon(MOST_CARBON_WT);
            let side_c = side.first_change(|t_c| boundaries.carbide_height(&most, t_c))?;
            line.points.extend(side_c.map(|t_c| [MOST_CARBON_WT, t_c]));
            break;
        }
        last_c = t_c;
    }
    Ok(line.points)
}

/// A line followed from temperature to temperature.
struct Line {
    points: Vec<[f64; 2]>,
    carbon_wt: f64,
    /// The first piece whose end is to be found.
    first: u8,
}

impl Line {
    fn from(bottom: Bottom) -> Self {
        let carbon_wt = bottom.carbon_wt();
        match bottom {
            Bottom::Eutectoid(at) => Self {
                points: vec![[at.carbon_wt, at.temperature_c]],
                carbon_wt,
                first: 1,
            },
            Bottom::Apart { .. } => Self {
                points: Vec::new(),
                carbon_wt,
                first: 0,
            },
        }
    }

    /// Adds the point where `height`, which has the sign `rises` at high carbon, is zero; false
    /// when there is none on the map.
    fn go_on(
        &mut self,
        temperature_c: f64,
        rises: f64,
        mut height: impl FnMut(f64) -> Result<f64, EquilibriumError>,
    ) -> Result<bool, EquilibriumError> {
        // carbon is counted downwards, so that both ways are upwards
        let here = height(self.carbon_wt)?;
        let way = if here * rises < 0.0 { 1.0 } else { -1.0 };
        let search = Upwards {
            from: way * self.carbon_wt,
            to: if way > 0.0 {
                MOST_CARBON_WT
            } else {
                -NO_CARBON_WT
            },
            step: 0.005,
            longest: 0.2,
            tolerance: TOLERANCE_WT,
        };
        let found = search.first_change(|x| height(way * x))?;
        if let Some(x) = found {
            self.carbon_wt = way * x;
            self.points.push([self.carbon_wt, temperature_c]);
        }
        Ok(found.is_some())
    }
}
