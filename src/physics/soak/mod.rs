//! How far a soak gets: carbon dissolved, carbide left, grain grown, and what air does to the
//! surface.

mod boundary_carbide;
mod diffusion;
mod dissolution;
mod films;
mod grain;
mod overheat;
mod piece;
mod ripening;
mod sizes;
mod skin;
mod structure;
mod walk;

pub use boundary_carbide::{BoundaryCarbide, CEMENTITE_WT, CarbideBalance, Network};
pub use films::{BoundaryFilms, FilmTimes};
pub use overheat::{GrainAt, OVERHEATS_K, overheated};
pub use ripening::Ripening;
pub use skin::{Depth, Skin, decarburised_depth_mm, skin};
pub use structure::{StartingStructure, Structure};

use crate::phases::{Annealed, Eutectoid, PhaseError, SoakLimit, SoakLimits};
use crate::steel::{Composition, OutOfRange};
use piece::{Before, Piece};
use recalesce_texts::soak as texts;

/// Longest soak, s: two days.
pub const LONGEST_S: f64 = 172_800.0;
/// Volume fraction of vanadium carbide for each wt % of vanadium: VC of 5.77 g/cm³ (from memory).
const VANADIUM_CARBIDE_PER_WT: f64 = 0.0169;
/// Points of a history.
const HISTORY_POINTS: u16 = 60;

/// State of the piece at a time of the soak.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct SoakPoint {
    /// Time since the whole piece reached the soak temperature, s.
    pub time_s: f64,
    /// Carbon dissolved in the austenite, wt % of the austenite.
    pub carbon_wt: f64,
    /// Volume fraction of the piece that is carbide.
    pub carbide_volume_fraction: f64,
    /// Volume fraction of the piece that is ferrite.
    pub ferrite_volume_fraction: f64,
    /// ASTM grain number of the austenite.
    pub grain_astm: f64,
}

/// What the carbon of a soaked piece is shared out by. Masses and contents are of the piece.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SoakMasses {
    /// Mass fraction of austenite.
    pub austenite: f64,
    /// Mass fraction of ferrite.
    pub ferrite: f64,
    /// Carbon of that ferrite, wt % of the ferrite.
    pub ferrite_carbon_wt: f64,
    /// Mass fraction of carbide.
    pub carbide: f64,
    /// Volume of the carbide over that of the same mass of the rest, times its mass.
    pub carbide_volume: f64,
    /// What the carbide holds, wt % of the piece.
    pub carbide_content: Composition,
}

/// The piece at one time of a soak.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct SoakEnd {
    /// Its state.
    pub point: SoakPoint,
    /// What is dissolved in the austenite, wt % of the austenite.
    pub dissolved: Composition,
    /// Carbon in solution anywhere in the piece, wt % of the piece: all that is not in carbide.
    pub carbon_in_solution_wt: f64,
    /// What it is shared out by.
    pub masses: SoakMasses,
    /// Austenite grain as mean intercept, µm.
    pub grain_um: f64,
    /// Mean radius by volume of the carbide that is left, a network aside, µm.
    pub carbide_radius_um: f64,
    /// Part of the carbide left, by volume, that is a network on the old grain boundaries.
    pub network_part: f64,
    /// How far alloy has gone into the carbide that is left: 0 as in the steel, 1 equilibrium.
    pub carbide_enrichment: f64,
}

impl SoakEnd {
    /// Mean distance of the carbides that are left and on which cementite grows, µm; infinite where
    /// none is. What vanadium of the steel can bind does not count: cementite passes it by.
    #[must_use]
    pub fn carbide_spacing_um(&self, steel: &Composition) -> f64 {
        let each_um3 = 4.0 / 3.0 * std::f64::consts::PI * self.carbide_radius_um.powi(3);
        let of_vanadium = VANADIUM_CARBIDE_PER_WT * steel.v;
        (each_um3 / (self.point.carbide_volume_fraction - of_vanadium).max(0.0)).cbrt()
    }
}

/// What a soak leads to.
#[derive(Debug, Clone, PartialEq, serde::Serialize)]
pub struct SoakOutcome {
    /// Where the soak tends to, given all the time in the world.
    pub limit: SoakLimit,
    /// The state when the piece leaves the furnace.
    pub end: SoakPoint,
    /// What is dissolved in the austenite then, wt % of the austenite.
    pub dissolved: Composition,
    /// Carbon in solution anywhere in the piece then, wt % of the piece: all that is not in
    /// carbide. Never less after a hotter or longer soak.
    pub carbon_in_solution_wt: f64,
    /// What it is shared out by then.
    #[serde(skip)]
    pub masses: SoakMasses,
    /// Austenite grain then, as mean intercept, µm.
    pub grain_um: f64,
    /// Mean radius by volume of the carbide that is left then, a network aside, µm.
    pub carbide_radius_um: f64,
    /// Carbide left then that is a network on the old grain boundaries, volume fraction.
    pub network_volume_fraction: f64,
    /// The way there and beyond, from the beginning to the time asked.
    pub history: Vec<SoakPoint>,
}

/// Why a soak has no outcome.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum SoakError {
    /// Too cold to harden.
    #[error("{}", texts::below_a1(*temperature_c, *a1_c))]
    BelowA1 {
        /// Soak temperature, °C.
        temperature_c: f64,
        /// Where austenite begins, °C.
        a1_c: f64,
    },
    /// No equilibrium to go by.
    #[error(transparent)]
    Phase(PhaseError),
    /// A time that no soak has.
    #[error(transparent)]
    OutOfRange(#[from] OutOfRange),
}

impl From<PhaseError> for SoakError {
    fn from(error: PhaseError) -> Self {
        match error {
            PhaseError::BelowA1 {
                temperature_c,
                a1_c,
            } => Self::BelowA1 {
                temperature_c,
                a1_c,
            },
            other => Self::Phase(other),
        }
    }
}

/// Soaks a piece of `steel` for `time_s` seconds at `temperature_c`; the history goes on to
/// `history_end_s`.
///
/// Time begins when the whole piece is at temperature. By then the carbide regions are austenite
/// of 0.75 times the eutectoid carbon, and hypoeutectoid steel still holds its ferrite, which goes
/// while carbon crosses half its width. Carbide then dissolves in two stages: within seconds, at
/// the pace of carbon, to the fast limit, at which its alloy has stayed behind at its surface;
/// from there at the pace at which alloy moves away, towards equilibrium. Below 0.75 times the
/// eutectoid carbon the fast limit is where the soak begins.
///
/// Measured only on plain carbon and 1 % C-1.5 % Cr steel. The carbides of high-alloy steel are
/// taken to dissolve by the same law, from the same sizes: primary carbides of D2 and 440C are ten
/// times larger, which matters little as most of them stay. Uncertainty of the dissolved carbon
/// there: 0.1 wt %.
///
/// # Errors
/// [`SoakError::BelowA1`] when no austenite forms; [`SoakError::Phase`] when the equilibrium is
/// outside its model's range; [`SoakError::OutOfRange`] for a time outside 0 to two days.
pub fn soak(
    steel: &Composition,
    start: StartingStructure,
    temperature_c: f64,
    time_s: f64,
    history_end_s: f64,
) -> Result<SoakOutcome, SoakError> {
    Stock::new(steel, start)?
        .at(temperature_c)?
        .soak(time_s, history_end_s)
}

/// A steel in the structure in which it goes into the furnace: what all soaks of it share.
#[derive(Debug, Clone)]
pub struct Stock {
    steel: Composition,
    start: Structure,
    before: Before,
    limits: SoakLimits,
}

impl Stock {
    /// Takes stock of a steel.
    ///
    /// # Errors
    /// When the equilibrium is outside its model's range.
    pub fn new(steel: &Composition, start: impl Into<Structure>) -> Result<Self, SoakError> {
        let start = start.into();
        Ok(Self {
            steel: *steel,
            start,
            before: Before::new(steel, &start)?,
            limits: SoakLimits::of(steel)?,
        })
    }

    /// The same steel in another structure: nothing of its equilibria is computed anew.
    #[must_use]
    pub fn restructured(&self, start: Structure) -> Self {
        Self {
            steel: self.steel,
            start,
            before: self.before.restructured(&self.steel, &start),
            limits: self.limits.clone(),
        }
    }

    /// The structure that it is in.
    #[must_use]
    pub const fn structure(&self) -> &Structure {
        &self.start
    }

    /// Where the steel has austenite of one carbon content beside ferrite and carbide.
    #[must_use]
    pub const fn eutectoid(&self) -> &Eutectoid {
        self.before.eutectoid()
    }

    /// The steel when all its carbon has gone to carbide.
    #[must_use]
    pub const fn annealed(&self) -> &Annealed {
        self.before.annealed()
    }

    /// Part of the carbide, by volume, that lies outside pearlite when the steel cools slowly.
    #[must_use]
    pub const fn outside_pearlite(&self) -> f64 {
        self.before.outside_pearlite()
    }

    /// The steel at a soak temperature, °C.
    ///
    /// # Errors
    /// As [`soak`].
    pub fn at(&self, temperature_c: f64) -> Result<Hold<'_>, SoakError> {
        let limit = self.limits.at(temperature_c)?;
        Ok(Hold {
            stock: self,
            temperature_c,
            limit,
            fast_limit: self.before.fast_limit(temperature_c)?,
            beside_ferrite_wt: self.beside_ferrite_wt(&limit, temperature_c)?,
        })
    }

    /// Carbon of austenite that ferrite stands beside, wt %; zero far above A1, where austenite
    /// holds more from the beginning.
    fn beside_ferrite_wt(&self, limit: &SoakLimit, temperature_c: f64) -> Result<f64, PhaseError> {
        if self.before.is_far_above_ferrite(&self.steel, temperature_c) {
            return Ok(0.0);
        }
        Ok(self.limits.carbon_beside_ferrite_wt(limit, temperature_c)?)
    }
}

/// A steel at a soak temperature, for as many times as are asked.
#[derive(Debug, Clone)]
pub struct Hold<'a> {
    stock: &'a Stock,
    temperature_c: f64,
    limit: SoakLimit,
    /// Austenite where dissolving goes over from the pace of carbon to that of alloy, if it does.
    fast_limit: Option<Composition>,
    /// Carbon of austenite that ferrite stands beside, wt %; zero where none can be left.
    beside_ferrite_wt: f64,
}

impl Hold<'_> {
    /// What `time_s` seconds lead to; the history goes on to `history_end_s`.
    ///
    /// # Errors
    /// For a time outside 0 to two days.
    pub fn soak(&self, time_s: f64, history_end_s: f64) -> Result<SoakOutcome, SoakError> {
        for time_s in [time_s, history_end_s] {
            check_time(time_s)?;
        }
        let piece = Piece::new(self);
        let dissolution = piece.dissolution();
        let course = dissolution.course();
        let last = f64::from(HISTORY_POINTS - 1);
        let mut along = course.follow();
        let history = (0..HISTORY_POINTS)
            .map(|i| {
                let way = f64::from(i) / last;
                let time_s = history_end_s * way * way;
                piece.state(time_s, &along.to(time_s)).point
            })
            .collect();
        let end = piece.state(time_s, &course.follow().to(time_s));
        Ok(SoakOutcome {
            end: end.point,
            dissolved: end.dissolved,
            carbon_in_solution_wt: end.carbon_in_solution_wt,
            masses: end.masses,
            grain_um: end.grain_um,
            carbide_radius_um: end.carbide_radius_um,
            network_volume_fraction: end.network_part * end.point.carbide_volume_fraction,
            limit: self.limit,
            history,
        })
    }

    /// The piece after `time_s` seconds, without the way there: as [`Hold::soak`] has it.
    ///
    /// # Errors
    /// A time outside 0 to two days.
    pub fn end(&self, time_s: f64) -> Result<SoakEnd, OutOfRange> {
        check_time(time_s)?;
        let piece = Piece::new(self);
        let dissolution = piece.dissolution();
        let course = dissolution.course();
        Ok(piece.state(time_s, &course.follow().to(time_s)))
    }
}

fn check_time(time_s: f64) -> Result<(), OutOfRange> {
    OutOfRange::check(texts::THE_SOAK, texts::TIME, "s", time_s, (0.0, LONGEST_S))
}
