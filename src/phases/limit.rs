//! What a soak tends to: austenite beside what carbide or ferrite remains at equilibrium, and
//! the carbide of the annealed steel from which it starts. Closed forms.

use super::PhaseError;
use super::critical::{HIGHEST_C, Lines, RANGE, bisect, saturation_wt, vanadium_carbide_product};
use crate::sources::closed_form_2026::{
    CEMENTITE_CARBON_WT, CEMENTITE_OVER_AUSTENITE, CEMENTITE_OVER_FERRITE, FERRITE_CARBON_WT,
    VANADIUM_CARBIDE_CARBON,
};
use crate::steel::{Composition, Element, OutOfRange};

/// Equilibrium at a soak temperature. Mass and volume fractions are of the whole piece.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct SoakLimit {
    /// Austenite, wt % of itself.
    pub austenite: Composition,
    /// Ferrite, wt % of itself; all zero where there is none.
    pub ferrite: Composition,
    /// All carbide together, wt % of itself; all zero where there is none.
    pub carbide: Composition,
    /// Mass fraction of austenite.
    pub austenite_mass_fraction: f64,
    /// Mass fraction of ferrite.
    pub ferrite_mass_fraction: f64,
    /// Mass fraction of carbide.
    pub carbide_mass_fraction: f64,
    /// Volume fraction of austenite.
    pub austenite_volume_fraction: f64,
    /// Volume fraction of ferrite.
    pub ferrite_volume_fraction: f64,
    /// Volume fraction of carbide.
    pub carbide_volume_fraction: f64,
    /// Carbon at which austenite with this alloy dissolved would be saturated, wt %: its own
    /// carbon while cementite or a like carbide remains, more above Acm.
    pub carbon_saturation_wt: f64,
}

/// Carbide of the annealed steel: at equilibrium with ferrite just below A1.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Annealed {
    /// All carbide together, wt % of itself.
    pub carbide: Composition,
    /// Mass fraction of carbide.
    pub carbide_mass_fraction: f64,
    /// Volume fraction of carbide.
    pub carbide_volume_fraction: f64,
}

/// Densities at room temperature, g/cm³, from memory: steel matrix, cementite, vanadium carbide.
const MATRIX_G_CM3: f64 = 7.84;
const CEMENTITE_G_CM3: f64 = 7.69;
const VANADIUM_CARBIDE_G_CM3: f64 = 5.7;

/// Equilibrium of a steel at a soak temperature.
///
/// Carbon in austenite beside cementite holds to about 0.02 wt % for plain and low-alloy steels.
/// Ferrite holds the alloy content of the austenite beside it: no partition between the two.
///
/// # Errors
/// [`PhaseError::BelowA1`] under A1; [`PhaseError::OutOfRange`] above 1147 °C and outside the
/// compositions of [`super::critical_temperatures`].
pub fn soak_limit(steel: &Composition, temperature_c: f64) -> Result<SoakLimit, PhaseError> {
    steel.validate()?;
    RANGE.check(steel)?;
    let lines = Lines::of(steel);
    OutOfRange::check(
        RANGE.model,
        "temperature",
        "°C",
        temperature_c,
        (20.0, HIGHEST_C),
    )?;
    if temperature_c < lines.a1_c {
        return Err(PhaseError::BelowA1 {
            temperature_c,
            a1_c: lines.a1_c,
        });
    }
    let beside_ferrite = steel.c < lines.eutectoid_carbon_wt && temperature_c < lines.a3_c(steel.c);
    Ok(if beside_ferrite {
        with_ferrite(steel, temperature_c, &lines)
    } else {
        with_carbide(steel, temperature_c)
    })
}

/// Carbide of the steel after a long anneal below A1, in ferrite.
///
/// # Errors
/// As [`super::critical_temperatures`].
pub fn annealed(steel: &Composition) -> Result<Annealed, PhaseError> {
    steel.validate()?;
    RANGE.check(steel)?;
    let vanadium_carbide = steel.v * (1.0 + VANADIUM_CARBIDE_CARBON) / 100.0;
    let carbon_wt = (steel.c - VANADIUM_CARBIDE_CARBON * steel.v - FERRITE_CARBON_WT).max(0.0);
    let cementite = carbon_wt / (CEMENTITE_CARBON_WT - FERRITE_CARBON_WT);
    let mut content = Composition::default().with_carbon(CEMENTITE_CARBON_WT);
    for (element, over) in CEMENTITE_OVER_FERRITE {
        let in_ferrite_wt = steel.get(element) / (1.0 + cementite * (over - 1.0));
        content.set(element, over * in_ferrite_wt);
    }
    let (carbide, volume) = together(&content, cementite, vanadium_carbide);
    let mass = cementite + vanadium_carbide;
    Ok(Annealed {
        carbide,
        carbide_mass_fraction: mass,
        carbide_volume_fraction: volume / (volume + (1.0 - mass) / MATRIX_G_CM3),
    })
}

/// Carbon of ferrite beside austenite, wt %: a straight line to pure iron at 912 °C.
pub(crate) fn ferrite_carbon_wt(temperature_c: f64) -> f64 {
    (FERRITE_CARBON_WT * (912.0 - temperature_c) / (912.0 - 727.0)).max(0.0)
}

/// Austenite beside ferrite: hypoeutectoid between A1 and A3, by the lever. Vanadium carbide is
/// taken to be spread over both as it is beside the austenite.
fn with_ferrite(steel: &Composition, temperature_c: f64, lines: &Lines) -> SoakLimit {
    let line_wt = lines.a3_carbon_wt(temperature_c).max(steel.c);
    let beside = State::of(&steel.with_carbon(line_wt), temperature_c, &[], 0.0);
    let ferrite_carbon_wt = ferrite_carbon_wt(temperature_c).min(0.9 * steel.c);
    let most_bound_wt = (steel.c - ferrite_carbon_wt) / VANADIUM_CARBIDE_CARBON;
    let bound_wt = beside.bound_wt.min(most_bound_wt);
    let vanadium_carbide = bound_wt * (1.0 + VANADIUM_CARBIDE_CARBON) / 100.0;
    let matrix = 1.0 - vanadium_carbide;

    let carbon_wt = (steel.c - VANADIUM_CARBIDE_CARBON * bound_wt) / matrix;
    let austenite_carbon_wt = beside.austenite.c.max(carbon_wt);
    let ferrite = matrix * (austenite_carbon_wt - carbon_wt)
        / (austenite_carbon_wt - ferrite_carbon_wt).max(1e-9);
    let mut dissolved = *steel;
    for element in Element::ALL {
        dissolved.set(element, steel.get(element) / matrix);
    }
    dissolved.v = (steel.v - bound_wt) / matrix;
    let (carbide, volume) = together(&Composition::default(), 0.0, vanadium_carbide);
    let carbide_volume_fraction = volume / (volume + matrix / MATRIX_G_CM3);
    let ferrite_volume_fraction = (1.0 - carbide_volume_fraction) * ferrite / matrix;
    SoakLimit {
        austenite: dissolved.with_carbon(austenite_carbon_wt),
        ferrite: dissolved.with_carbon(ferrite_carbon_wt),
        carbide,
        austenite_mass_fraction: matrix - ferrite,
        ferrite_mass_fraction: ferrite,
        carbide_mass_fraction: vanadium_carbide,
        austenite_volume_fraction: 1.0 - carbide_volume_fraction - ferrite_volume_fraction,
        ferrite_volume_fraction,
        carbide_volume_fraction,
        carbon_saturation_wt: saturation_wt(temperature_c, &dissolved).max(austenite_carbon_wt),
    }
}

/// Austenite beside cementite and vanadium carbide, or alone.
fn with_carbide(steel: &Composition, temperature_c: f64) -> SoakLimit {
    let inverse = 1000.0 / (temperature_c + 273.15);
    let over = CEMENTITE_OVER_AUSTENITE
        .map(|(element, at, slope)| (element, (at + slope * inverse).exp()));
    let state = |cementite: f64| State::of(steel, temperature_c, &over, cementite);
    let most = (steel.c / CEMENTITE_CARBON_WT).min(0.5);
    let cementite = if state(0.0).excess_wt() <= 0.0 {
        0.0
    } else {
        bisect(0.0, most, |cementite| state(cementite).excess_wt())
    };
    let State {
        austenite,
        vanadium_carbide,
        saturation_wt,
        ..
    } = state(cementite);
    let mut content = Composition::default().with_carbon(CEMENTITE_CARBON_WT);
    for (element, over) in over {
        content.set(element, over * austenite.get(element));
    }
    let (carbide, volume) = together(&content, cementite, vanadium_carbide);
    let mass = cementite + vanadium_carbide;
    let carbide_volume_fraction = volume / (volume + (1.0 - mass) / MATRIX_G_CM3);
    SoakLimit {
        austenite,
        ferrite: Composition::default(),
        carbide,
        austenite_mass_fraction: 1.0 - mass,
        ferrite_mass_fraction: 0.0,
        carbide_mass_fraction: mass,
        austenite_volume_fraction: 1.0 - carbide_volume_fraction,
        ferrite_volume_fraction: 0.0,
        carbide_volume_fraction,
        carbon_saturation_wt: saturation_wt.max(austenite.c),
    }
}

/// Mean composition of cementite and vanadium carbide, and their volume per 1 g of piece, cm³.
fn together(cementite: &Composition, mass: f64, vanadium_carbide: f64) -> (Composition, f64) {
    let total = mass + vanadium_carbide;
    let mut mean = Composition::default();
    if total > 0.0 {
        for element in Element::ALL {
            mean.set(element, cementite.get(element) * mass / total);
        }
        let vanadium_wt = 100.0 / (1.0 + VANADIUM_CARBIDE_CARBON);
        mean.v += vanadium_wt * vanadium_carbide / total;
        mean.c += (100.0 - vanadium_wt) * vanadium_carbide / total;
    }
    let volume = mass / CEMENTITE_G_CM3 + vanadium_carbide / VANADIUM_CARBIDE_G_CM3;
    (mean, volume)
}

/// The piece with a given mass fraction of cementite, all masses in balance.
struct State {
    austenite: Composition,
    /// Vanadium bound in carbide, wt % of the piece, and mass fraction of that carbide.
    bound_wt: f64,
    vanadium_carbide: f64,
    saturation_wt: f64,
}

impl State {
    fn of(
        steel: &Composition,
        temperature_c: f64,
        over: &[(Element, f64)],
        cementite: f64,
    ) -> Self {
        let carbon_out_wt = CEMENTITE_CARBON_WT * cementite;
        // Dissolved vanadium v obeys v (c - r (V - v)) = P, with c carbon outside cementite.
        let product = vanadium_carbide_product(temperature_c);
        let free_wt = (steel.c - carbon_out_wt).max(0.0) - VANADIUM_CARBIDE_CARBON * steel.v;
        let root = (free_wt * free_wt + 4.0 * VANADIUM_CARBIDE_CARBON * product).sqrt();
        let dissolved_wt = if free_wt > 0.0 {
            2.0 * product / (free_wt + root)
        } else {
            (root - free_wt) / (2.0 * VANADIUM_CARBIDE_CARBON)
        };
        let bound_wt = (steel.v - dissolved_wt).max(0.0);
        let vanadium_carbide = bound_wt * (1.0 + VANADIUM_CARBIDE_CARBON) / 100.0;
        let matrix = 1.0 - cementite - vanadium_carbide;
        let mut austenite = *steel;
        for element in Element::ALL {
            austenite.set(element, steel.get(element) / matrix);
        }
        for &(element, over) in over {
            let wt = steel.get(element) / (matrix + cementite * over);
            austenite.set(element, wt);
        }
        austenite.v = (steel.v - bound_wt) / matrix;
        austenite.c =
            ((steel.c - carbon_out_wt - VANADIUM_CARBIDE_CARBON * bound_wt) / matrix).max(0.0);
        let saturation_wt = saturation_wt(temperature_c, &austenite);
        Self {
            austenite,
            bound_wt,
            vanadium_carbide,
            saturation_wt,
        }
    }

    /// Carbon that austenite holds beyond saturation, wt %.
    fn excess_wt(&self) -> f64 {
        self.austenite.c - self.saturation_wt
    }
}
