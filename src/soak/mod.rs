//! How far a soak gets: carbon dissolved, carbide left, grain grown.

mod decarburisation;
mod dissolution;
mod grain;
mod structure;

pub use decarburisation::decarburised_depth_mm;
pub use structure::StartingStructure;

use crate::phases::{self, PhaseError, SoakLimit};
use crate::sources::astm_e112::grain_number;
use crate::sources::{callister_2007, molinder_1956, paul_1994};
use crate::steel::{Composition, Element, OutOfRange};
use dissolution::{Carbide, Dissolution, Left};

/// Longest soak, s: two days.
pub const LONGEST_S: f64 = 172_800.0;
/// Points of a history.
const HISTORY_POINTS: u16 = 60;
/// Carbon in austenite when ferrite is gone: at most this part of the steel's own carbon, and of
/// what can dissolve at the soak temperature.
const MOST_CARBON_AT_FIRST: f64 = 0.6;
const MOST_OF_LIMIT_AT_FIRST: f64 = 0.75;
/// Austenite that divides what it holds, mass fraction, where there is hardly any.
const LEAST_AUSTENITE: f64 = 1e-6;
/// Gas constant, J/(mol K).
const GAS_CONSTANT: f64 = 8.314;

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
    /// Austenite grain then, as mean intercept, µm.
    pub grain_um: f64,
    /// The way there and beyond, from the beginning to the time asked.
    pub history: Vec<SoakPoint>,
}

/// Why a soak has no outcome.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum SoakError {
    /// Too cold to harden.
    #[error(
        "below A1 nothing hardens: the soak is at {temperature_c:.0} °C, A1 of this steel is \
         {a1_c:.0} °C"
    )]
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
/// of 0.75 times the eutectoid carbon, or 0.6 times the steel's carbon or 0.75 times the carbon at
/// equilibrium if that is less, and hypoeutectoid steel still holds its ferrite, which goes while
/// carbon crosses half its width.
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
    start: StartingStructure,
    eutectoid_carbon_wt: f64,
    annealed: phases::Annealed,
}

impl Stock {
    /// Takes stock of a steel.
    ///
    /// # Errors
    /// When the equilibrium is outside its model's range.
    pub fn new(steel: &Composition, start: StartingStructure) -> Result<Self, SoakError> {
        Ok(Self {
            steel: *steel,
            start,
            eutectoid_carbon_wt: phases::eutectoid_carbon_wt(steel)?,
            annealed: phases::annealed(steel)?,
        })
    }

    /// The steel at a soak temperature, °C.
    ///
    /// # Errors
    /// As [`soak`].
    pub fn at(&self, temperature_c: f64) -> Result<Hold<'_>, SoakError> {
        Ok(Hold {
            stock: self,
            temperature_c,
            limit: phases::soak_limit(&self.steel, temperature_c)?,
        })
    }
}

/// A steel at a soak temperature, for as many times as are asked.
#[derive(Debug, Clone)]
pub struct Hold<'a> {
    stock: &'a Stock,
    temperature_c: f64,
    limit: SoakLimit,
}

impl Hold<'_> {
    /// What `time_s` seconds lead to; the history goes on to `history_end_s`.
    ///
    /// # Errors
    /// For a time outside 0 to two days.
    pub fn soak(&self, time_s: f64, history_end_s: f64) -> Result<SoakOutcome, SoakError> {
        for time_s in [time_s, history_end_s] {
            OutOfRange::check("the soak", "time", "s", time_s, (0.0, LONGEST_S))?;
        }
        let piece = Piece::new(
            &self.stock.steel,
            self.stock.start,
            self.temperature_c,
            &self.limit,
            &self.stock.annealed,
            self.stock.eutectoid_carbon_wt,
        );
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
            grain_um: end.grain_um,
            limit: self.limit,
            history,
        })
    }
}

/// Carbon of ferrite beside austenite, wt %: a straight line from the computed 0.019 at 727 °C to
/// none at 912 °C.
fn ferrite_carbon_wt(temperature_c: f64) -> f64 {
    (0.019 * (912.0 - temperature_c) / (912.0 - 727.0)).max(0.0)
}

/// Diffusivity of carbon in austenite, m²/s.
fn carbon_diffusivity_m2_s(temperature_k: f64) -> f64 {
    callister_2007::CARBON_D0_M2_S
        * (-callister_2007::CARBON_Q_J_MOL / (GAS_CONSTANT * temperature_k)).exp()
}

/// Diffusivity of alloy in austenite, m²/s; chromium's is taken for all.
fn alloy_diffusivity_m2_s(temperature_k: f64) -> f64 {
    paul_1994::CHROMIUM_D0_M2_S
        * (-paul_1994::CHROMIUM_Q_J_MOL / (GAS_CONSTANT * temperature_k)).exp()
}

/// The piece in the furnace.
struct Piece<'a> {
    steel: &'a Composition,
    start: StartingStructure,
    temperature_c: f64,
    limit: &'a SoakLimit,
    first: Carbide,
    last: Carbide,
    /// Mass fraction of ferrite when the soak begins, and the time in which it goes, s.
    ferrite: f64,
    ferrite_s: f64,
}

struct PieceState {
    point: SoakPoint,
    dissolved: Composition,
    carbon_in_solution_wt: f64,
    grain_um: f64,
}

impl<'a> Piece<'a> {
    fn new(
        steel: &'a Composition,
        start: StartingStructure,
        temperature_c: f64,
        limit: &'a SoakLimit,
        annealed: &phases::Annealed,
        eutectoid_carbon_wt: f64,
    ) -> Self {
        let content = carbide_before(steel, start, annealed);
        let first_carbon_wt = (molinder_1956::PART_OF_EUTECTOID * eutectoid_carbon_wt)
            .min(MOST_CARBON_AT_FIRST * steel.c)
            .min(MOST_OF_LIMIT_AT_FIRST * limit.austenite.c);
        let ferrite_in_limit = limit.ferrite_mass_fraction;
        let undissolved_wt = steel.c
            - ferrite_in_limit * limit.ferrite.c
            - (1.0 - ferrite_in_limit) * first_carbon_wt;
        let mass = (undissolved_wt / (content.c - first_carbon_wt).max(1.0))
            .clamp(0.0, annealed.carbide_mass_fraction);
        let last = part_of_piece(
            &limit.carbide,
            limit.carbide_mass_fraction,
            volume_over_matrix(limit.carbide_mass_fraction, limit.carbide_volume_fraction),
        );
        let first = part_of_piece(
            &content,
            mass,
            volume_over_matrix(
                annealed.carbide_mass_fraction,
                annealed.carbide_volume_fraction,
            ),
        );
        // Ferrite that carbon from the carbide regions cannot reach before the soak begins.
        let ferrite_carbon_wt = ferrite_carbon_wt(temperature_c);
        let apart = ((eutectoid_carbon_wt - steel.c) / (eutectoid_carbon_wt - ferrite_carbon_wt))
            .clamp(0.0, 0.95);
        let half_width_m = start.ferrite_half_width_um() * 1e-6;
        let diffusivity = carbon_diffusivity_m2_s(temperature_c + 273.15);
        Self {
            steel,
            start,
            temperature_c,
            limit,
            first: if first.content.c > last.content.c {
                first
            } else {
                last
            },
            last,
            ferrite: apart.max(ferrite_in_limit),
            ferrite_s: half_width_m * half_width_m / (4.0 * diffusivity),
        }
    }

    fn dissolution(&self) -> Dissolution<'_> {
        let radius_m = self.start.carbide_radius_um() * 1e-6;
        let temperature_k = self.temperature_c + 273.15;
        Dissolution {
            steel: self.steel,
            limit: self.limit,
            first: self.first,
            last: self.last,
            pace_per_s: (
                carbon_diffusivity_m2_s(temperature_k) / (radius_m * radius_m),
                alloy_diffusivity_m2_s(temperature_k) / (radius_m * radius_m),
            ),
        }
    }

    fn state(&self, time_s: f64, left: &Left) -> PieceState {
        let Left {
            carbide,
            per_radius,
        } = *left;
        let limit = self.limit;
        let settled = limit.ferrite_mass_fraction;
        let matrix = 1.0 - carbide.mass;
        let ferrite_carbon_wt = if settled > 0.0 {
            limit.ferrite.c
        } else {
            ferrite_carbon_wt(self.temperature_c)
        };
        // Ferrite goes as fast as carbon crosses it; austenite is at least so much that it can hold
        // what carbon is in neither ferrite nor carbide.
        let ferrite = settled + (self.ferrite - settled) * (-time_s / self.ferrite_s).exp();
        let carbon_over_wt = self.steel.c - carbide.content.c - matrix * ferrite_carbon_wt;
        let most_over_wt = (limit.carbon_saturation_wt - ferrite_carbon_wt).max(1e-3);
        let least_austenite = (carbon_over_wt / most_over_wt)
            .max(LEAST_AUSTENITE)
            .min(matrix);
        let austenite = (matrix - ferrite).max(least_austenite);
        let ferrite = matrix - austenite;
        let mut dissolved = Composition::default();
        for element in Element::ALL {
            let matrix_wt =
                (self.steel.get(element) - carbide.content.get(element)) / (1.0 - carbide.mass);
            // Alloy between austenite and ferrite as at equilibrium.
            let settled_wt =
                (self.steel.get(element) - self.last.content.get(element)) / (1.0 - self.last.mass);
            let over = if settled_wt > 0.0 {
                limit.austenite.get(element) / settled_wt
            } else {
                1.0
            };
            dissolved.set(element, (matrix_wt * over).max(0.0));
        }
        dissolved.c =
            ((self.steel.c - ferrite * ferrite_carbon_wt - carbide.content.c) / austenite).max(0.0);
        let carbide_volume_fraction = carbide.volume / (carbide.volume + matrix);
        let ferrite_volume_fraction = (1.0 - carbide_volume_fraction) * ferrite / matrix;
        let first_volume_fraction = self.first.volume / (self.first.volume + 1.0 - self.first.mass);
        let held_um = grain::held_by_carbide_um(
            first_volume_fraction * per_radius / self.start.carbide_radius_um(),
        );
        let grain_um = grain::grain_um(self.steel, self.start, self.temperature_c, time_s, held_um);
        PieceState {
            point: SoakPoint {
                time_s,
                carbon_wt: dissolved.c,
                carbide_volume_fraction,
                ferrite_volume_fraction,
                grain_astm: grain_number(grain_um),
            },
            dissolved,
            carbon_in_solution_wt: self.steel.c - carbide.content.c,
            grain_um,
        }
    }
}

/// Composition of the carbide that a starting structure has, wt % of itself.
fn carbide_before(
    steel: &Composition,
    start: StartingStructure,
    annealed: &phases::Annealed,
) -> Composition {
    let mut carbide = annealed.carbide;
    for element in Element::ALL {
        let (plain, settled) = (steel.get(element), annealed.carbide.get(element));
        let value = match element {
            Element::C | Element::P | Element::S => settled,
            _ => plain + (settled - plain) * start.carbide_enrichment(),
        };
        carbide.set(element, value);
    }
    carbide
}

fn part_of_piece(carbide: &Composition, mass: f64, volume_over_matrix: f64) -> Carbide {
    let mut content = Composition::default();
    for element in Element::ALL {
        content.set(element, carbide.get(element) * mass);
    }
    Carbide {
        mass,
        content,
        volume: mass * volume_over_matrix,
    }
}

/// Volume of carbide over that of the same mass of the rest.
fn volume_over_matrix(mass: f64, volume: f64) -> f64 {
    if mass > 0.0 && mass < 1.0 && volume < 1.0 {
        volume / (1.0 - volume) * (1.0 - mass) / mass
    } else {
        1.0
    }
}
