//! Rates of ferrite, pearlite and bainite in one austenite, tabulated once.

use super::Austenite;
use super::martensite::{self, ms_of};
use super::rate_table::RateTable;
use super::shape::{Progress, STEEP_BAINITE_PART};
use crate::numeric::formula::Number;
use crate::numeric::order::larger;
use crate::soak::{BoundaryFilms, CEMENTITE_WT};
use crate::sources::astm_e112::intercept_um;
use crate::sources::isothermal_fit::{self as fit, StartTime};
use crate::sources::{andrews_1965, grange_1961, van_bohemen_2012};
use crate::steel::{Composition, OutOfRange};
use recalesce_texts::transform as texts;
use std::borrow::Cow;
use std::sync::OnceLock;

/// A product of diffusion that can form before martensite.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, serde::Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Product {
    /// Proeutectoid ferrite.
    Ferrite,
    /// Pearlite.
    Pearlite,
    /// Bainite.
    Bainite,
}

impl Product {
    /// All products in the order in which a slow cooling meets them.
    pub const ALL: [Self; 3] = [Self::Ferrite, Self::Pearlite, Self::Bainite];

    /// Its place in arrays over the products.
    pub(super) const fn index(self) -> usize {
        match self {
            Self::Ferrite => 0,
            Self::Pearlite => 1,
            Self::Bainite => 2,
        }
    }

    /// Its name on the page and in answers.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            Self::Ferrite => texts::FERRITE,
            Self::Pearlite => texts::PEARLITE,
            Self::Bainite => texts::BAINITE,
        }
    }
}

/// Carbon that ferrite keeps in solution, wt %.
const CARBON_OF_FERRITE_WT: f64 = 0.02;
/// Eutectoid carbon of plain-carbon steel, wt %: cap of the one computed from the two limits,
/// whose formulas cross too far to the right in silicon steel.
const LARGEST_EUTECTOID_WT: f64 = 0.77;
/// Ferrite that can form, as a fraction, below which the branch is left out.
const LEAST_FERRITE: f64 = 0.01;
/// Dissolved carbon between which bainite passes from the spread towards the steep shape, of which it
/// then has [`STEEP_BAINITE_PART`], wt %.
const STEEP_BAINITE_WT: (f64, f64) = (0.5, 0.6);
/// Largest shift of Ms that can be asked for, K: several times the error of the model.
pub const LARGEST_MS_OFF_K: f64 = 200.0;

/// Everything about one austenite that its cooling curves share.
#[derive(Debug, Clone)]
pub struct Kinetics {
    pub(super) austenite: Austenite,
    pub(super) ae1_c: f64,
    pub(super) ae3_c: f64,
    pub(super) bs_c: f64,
    pub(super) ms_c: f64,
    /// How far starts of martensite lie from the model's, K.
    ms_off_k: f64,
    /// Martensite rate parameter, 1/K.
    pub(super) rate_parameter_per_k: f64,
    /// Ferrite that can form before the rest is eutectoid, fraction of the austenite.
    pub(super) ferrite_limit: f64,
    pub(super) rates: [RateTable; 3],
    bainite: Cow<'static, Progress>,
    /// Films of carbide on the grain boundaries, found when first asked for: only diagrams and whole
    /// coolings need them, and few austenites have any.
    films: OnceLock<Option<BoundaryFilms>>,
}

impl Kinetics {
    /// Tabulates the rates of an austenite.
    ///
    /// # Errors
    /// When composition, grain or carbide fraction leave the range of the fit or of Ms.
    pub fn new(austenite: &Austenite) -> Result<Self, OutOfRange> {
        Self::with_start_times(austenite, &fit::START_TIMES)
    }

    /// The same with other start times of ferrite, pearlite and bainite: for refits, and for a
    /// heat whose hardenability was measured.
    ///
    /// # Errors
    /// As [`Kinetics::new`].
    pub fn with_start_times(
        austenite: &Austenite,
        start_times: &[StartTime; 3],
    ) -> Result<Self, OutOfRange> {
        Self::with_ms_off(austenite, start_times, 0.0)
    }

    /// The same with all starts of martensite off by `ms_off_k`, K: for what the error of that
    /// model makes of an outcome.
    ///
    /// # Errors
    /// As [`Kinetics::new`], or for a shift beyond 200 K either way.
    pub fn with_ms_off(
        austenite: &Austenite,
        start_times: &[StartTime; 3],
        ms_off_k: f64,
    ) -> Result<Self, OutOfRange> {
        OutOfRange::check(
            texts::START_OF_MARTENSITE,
            texts::SHIFT,
            "K",
            ms_off_k,
            (-LARGEST_MS_OFF_K, LARGEST_MS_OFF_K),
        )?;
        fit::RANGE.check_dissolved(&austenite.composition)?;
        martensite::check(austenite)?;
        let kinetic = counted(&austenite.composition);
        let ae1_c = grange_1961::ae1_c(&kinetic);
        let ae3_c = andrews_1965::ac3_c(&kinetic);
        let bs_c = van_bohemen_2012::bs_c(&kinetic);
        let ms_c = ms_of(&austenite.composition, austenite.grain_astm) + ms_off_k;

        // Carbon at which ferrite's limit has fallen to that of pearlite.
        let ac3_c = |carbon_wt| andrews_1965::ac3_c(&kinetic.with_carbon(carbon_wt));
        let root = ((ac3_c(0.0) - ae1_c) / (ac3_c(0.0) - ac3_c(1.0))).max(0.0);
        let eutectoid_wt = (root * root).min(LARGEST_EUTECTOID_WT);
        let lever = (eutectoid_wt - kinetic.c) / (eutectoid_wt - CARBON_OF_FERRITE_WT);
        let ferrite_limit = if lever.is_finite() && lever > LEAST_FERRITE {
            lever.min(1.0)
        } else {
            0.0
        };

        let low_c = ms_of(
            &austenite
                .composition
                .with_carbon(kinetic.c.max(eutectoid_wt)),
            austenite.grain_astm,
        ) + ms_off_k
            - 5.0;
        let carbide = carbide_factor(austenite.undissolved_carbide_volume_fraction);
        let [ferrite, pearlite, bainite] = start_times;
        let table = |product: &StartTime, factor: f64, limit_c: f64| {
            let term = product.composition_term(&kinetic, austenite.grain_astm) + factor.ln();
            RateTable::new(product, term, low_c.min(limit_c), limit_c)
        };
        let (from, to) = STEEP_BAINITE_WT;
        let steep = STEEP_BAINITE_PART * ((kinetic.c - from) / (to - from)).clamp(0.0, 1.0);
        Ok(Self {
            austenite: *austenite,
            ae1_c,
            ae3_c,
            bs_c,
            ms_c,
            ms_off_k,
            rate_parameter_per_k: martensite::rate_parameter_per_k(&austenite.composition),
            ferrite_limit,
            rates: [
                table(ferrite, 1.0, ae3_c),
                table(pearlite, carbide, ae1_c),
                table(bainite, 1.0, bs_c),
            ],
            bainite: Progress::blended(steep),
            films: OnceLock::new(),
        })
    }

    /// The same austenite with films of carbide that are known better than from what is dissolved, or
    /// with none.
    #[must_use]
    pub fn with_films(self, films: Option<BoundaryFilms>) -> Self {
        Self {
            films: OnceLock::from(films),
            ..self
        }
    }

    /// Films of carbide on the grain boundaries: none of hypoeutectoid austenite, of one that holds
    /// all its carbon down to A1, or where the equilibrium gives none.
    pub(super) fn films(&self) -> Option<&BoundaryFilms> {
        let found = || {
            if self.ferrite_limit > 0.0 {
                return None;
            }
            let Austenite {
                composition,
                grain_astm,
                undissolved_carbide_volume_fraction,
            } = &self.austenite;
            let grain_um = intercept_um(*grain_astm);
            let left = *undissolved_carbide_volume_fraction;
            BoundaryFilms::of(composition, grain_um, left, self.ae1_c).ok()?
        };
        self.films.get_or_init(found).as_ref()
    }

    /// The austenite concerned.
    #[must_use]
    pub const fn austenite(&self) -> &Austenite {
        &self.austenite
    }

    /// Temperature below which austenite starts to turn into pearlite, °C: the clock of a quench
    /// starts here.
    #[must_use]
    pub const fn ae1_c(&self) -> f64 {
        self.ae1_c
    }

    /// Start of bainite, °C.
    #[must_use]
    pub const fn bs_c(&self) -> f64 {
        self.bs_c
    }

    /// Start of martensite of the austenite as it left the furnace, °C.
    #[must_use]
    pub const fn ms_c(&self) -> f64 {
        self.ms_c
    }

    /// Largest fraction of the austenite that can become ferrite before the rest is eutectoid.
    #[must_use]
    pub const fn ferrite_limit(&self) -> f64 {
        self.ferrite_limit
    }

    /// Highest temperature at which anything can form, carbide on grain boundaries with it, °C.
    pub(super) fn first_forming_c(&self) -> f64 {
        let films_c = self.films().map(BoundaryFilms::limit_c);
        larger(self.upper_limit_c(), films_c.unwrap_or_default())
    }

    /// Highest temperature at which a product can form, °C.
    #[must_use]
    pub fn upper_limit_c(&self) -> f64 {
        let pearlite_c = larger(self.ae1_c, self.bs_c);
        if self.ferrite_limit > 0.0 {
            larger(pearlite_c, self.ae3_c)
        } else {
            pearlite_c
        }
    }

    /// Products that this austenite can form.
    pub fn products(&self) -> impl Iterator<Item = Product> + '_ {
        Product::ALL.into_iter().filter(|product| {
            let reachable = self.table(*product).limit_c > self.ms_c;
            reachable && (*product != Product::Ferrite || self.ferrite_limit > 0.0)
        })
    }

    /// Time to 1 % of a product at constant temperature, s; infinite where it does not form.
    /// Ferrite counts in parts of what can form. Below Ms, for what martensite has left, the fit
    /// is extrapolated.
    #[must_use]
    pub fn start_s(&self, product: Product, temperature_c: f64) -> f64 {
        if product == Product::Ferrite && self.ferrite_limit == 0.0 {
            return f64::INFINITY;
        }
        1.0 / self.table(product).rate(temperature_c)
    }

    /// Time to a fraction of a product at constant temperature, s; infinite where it does not form.
    #[must_use]
    pub fn time_to_s(&self, product: Product, temperature_c: f64, fraction: f64) -> f64 {
        self.start_s(product, temperature_c) * self.shape(product).age(fraction)
    }

    /// How far a product goes by an age in multiples of its 1 % start time, where nothing else forms beside
    /// it.
    #[must_use]
    pub fn fraction_at_age(&self, product: Product, age: f64) -> f64 {
        self.shape(product).fraction(age)
    }

    /// Temperature and time of the shortest 1 % start of a product, °C and s.
    #[must_use]
    pub fn nose(&self, product: Product) -> (f64, f64) {
        self.table(product).nose(self.ms_c)
    }

    /// What the start time of a product counts with: its activation energy over the gas constant, K, the
    /// logarithm of what does not depend on temperature, and its upper limit, °C.
    #[must_use]
    pub const fn start_law(&self, product: Product) -> (f64, f64, f64) {
        let table = self.table(product);
        (table.activation_k, table.ln_front, table.limit_c)
    }

    pub(super) const fn table(&self, product: Product) -> &RateTable {
        let [ferrite, pearlite, bainite] = &self.rates;
        match product {
            Product::Ferrite => ferrite,
            Product::Pearlite => pearlite,
            Product::Bainite => bainite,
        }
    }

    pub(super) fn shape(&self, product: Product) -> &Progress {
        match product {
            Product::Ferrite | Product::Pearlite => Progress::steep(),
            Product::Bainite => &self.bainite,
        }
    }

    /// Start of martensite of the austenite left beside films of carbide, °C, and its carbon, wt %, by
    /// mass balance: cementite is as dense as austenite within 3 %.
    pub(super) fn beside_films(&self, volume_fraction: f64) -> (f64, f64) {
        let steel = &self.austenite.composition;
        let taken_wt = volume_fraction * (CEMENTITE_WT - steel.c) / (1.0 - volume_fraction);
        let carbon_wt = steel.c - taken_wt;
        let ms_c = ms_of(&steel.with_carbon(carbon_wt), self.austenite.grain_astm);
        (ms_c + self.ms_off_k, carbon_wt)
    }

    /// The lowest start of martensite that austenite left can have, °C: where all ferrite has formed.
    #[must_use]
    pub fn lowest_ms_c(&self) -> f64 {
        self.remaining_ms_c(1.0)
    }

    /// Start of martensite of the austenite left when ferrite has formed to a part of its limit,
    /// °C, by the mass balance of carbon.
    pub(super) fn remaining_ms_c(&self, ferrite_part: f64) -> f64 {
        let steel = &self.austenite.composition;
        let carbon_wt = enriched(steel.c, self.ferrite_limit * ferrite_part);
        ms_of(&steel.with_carbon(carbon_wt), self.austenite.grain_astm) + self.ms_off_k
    }
}

/// Contents with which the kinetics count, wt %: with the residuals of scrap as least. The fit did not
/// know phosphorus.
#[must_use]
pub fn counted(dissolved: &Composition) -> Composition {
    Composition {
        p: 0.0,
        s: 0.0,
        ..fit::with_residuals(dissolved)
    }
}

/// Factor of undissolved carbide, volume fraction, on the start times of pearlite.
#[must_use]
pub fn carbide_factor<N: Number>(carbide: N) -> N {
    let n = N::constant;
    (n(1.0) - n(fit::CARBIDE_SPEEDING) * carbide).max(n(fit::CARBIDE_LEAST_FACTOR))
}

/// Carbon of the austenite that is left beside a fraction of ferrite, wt %, by mass balance.
pub(super) fn enriched(carbon_wt: f64, ferrite: f64) -> f64 {
    let rejected_wt = (carbon_wt - CARBON_OF_FERRITE_WT).max(0.0);
    carbon_wt - rejected_wt + rejected_wt / (1.0 - ferrite)
}
