//! The groups of rows, each with the aim of the project where there is one.

use super::rows::{self, Row, Score};
use recalesce::sources::score::Against;

/// What the project aims at for a group.
#[derive(Debug, Clone, Copy)]
pub(super) enum Aim {
    None,
    /// Largest error.
    Largest(f64),
    /// Mean absolute error.
    Mean(f64),
    /// Root of the mean square; for rows with a factor as a factor.
    Rms(f64),
    /// Part of the predicted rows inside their tolerance.
    Inside(f64),
}

impl Aim {
    pub(super) fn reached(self, score: &Score, is_factor: bool) -> Option<bool> {
        let shown = |x: f64| if is_factor { x.exp() } else { x };
        match self {
            Self::None => None,
            Self::Largest(most) => Some(shown(score.largest) <= most),
            Self::Mean(most) => Some(shown(score.mean) <= most),
            Self::Rms(most) => Some(shown(score.rms) <= most),
            Self::Inside(part) => Some(score.inside as f64 >= part * score.predicted as f64),
        }
    }

    pub(super) fn words(self) -> String {
        match self {
            Self::None => String::new(),
            Self::Largest(most) => format!("no error above {most}"),
            Self::Mean(most) => format!("mean error {most}"),
            Self::Rms(most) => format!("rms {most}"),
            Self::Inside(part) => format!("{:.0} % inside", 100.0 * part),
        }
    }
}

/// A group of rows of one quantity.
pub(super) struct Group {
    pub(super) title: &'static str,
    pub(super) unit: &'static str,
    pub(super) takes: fn(&Row) -> bool,
    pub(super) aim: Aim,
    /// What its values are.
    pub(super) against: Against,
    /// Rows inside their tolerance when this was last written: never fewer.
    pub(super) ratchet: usize,
}

const fn group(
    title: &'static str,
    unit: &'static str,
    takes: fn(&Row) -> bool,
    aim: Aim,
    ratchet: usize,
) -> Group {
    Group {
        title,
        unit,
        takes,
        aim,
        against: Against::Published,
        ratchet,
    }
}

impl Group {
    /// The same, of values that are no published ones.
    const fn of(self, against: Against) -> Self {
        Self { against, ..self }
    }
}

/// A row belongs to the first group that takes it.
pub(super) const GROUPS: [Group; 43] = [
    group(
        "equilibria that the reference misses",
        "–",
        rows::equilibrium::reference_is_incomplete,
        Aim::None,
        17,
    )
    .of(Against::FaultyReference),
    group(
        "phase fractions at equilibrium",
        "mass fraction",
        |r| is(r, "mass fraction of"),
        Aim::Largest(0.005),
        1138,
    )
    .of(Against::Computed),
    group(
        "carbon in austenite at equilibrium",
        "wt %",
        |r| r.quantity == "C in austenite, wt %",
        Aim::Largest(0.005),
        264,
    )
    .of(Against::Computed),
    group(
        "alloy in austenite at equilibrium",
        "wt %",
        |r| r.quantity.ends_with("in austenite, wt %"),
        Aim::None,
        528,
    )
    .of(Against::Computed),
    group(
        "boundaries against computed ones",
        "K",
        |r| is(r, "transition") || is(r, "T_"),
        Aim::Largest(1.0),
        74,
    )
    .of(Against::Computed),
    group(
        "carbon beside cementite for the soak",
        "wt %",
        |r| is(r, "carbon in austenite beside"),
        Aim::None,
        53,
    )
    .of(Against::Computed),
    group(
        "iron and carbon of the textbook",
        "K, wt %",
        |r| {
            ["A3 pure iron", "eutectoid", "max C in", "C in austenite in"]
                .iter()
                .any(|q| is(r, q))
        },
        Aim::None,
        14,
    ),
    group(
        "regressions of Ae1 and Ae3",
        "K",
        |r| r.quantity.starts_with("Ae"),
        Aim::None,
        33,
    ),
    group(
        "austenite of stainless steels",
        "wt %",
        |r| r.quantity.contains(" in austenite at"),
        Aim::None,
        3,
    ),
    group(
        "heating points Ac1, Ac3, Accm",
        "K",
        |r| is(r, "critical temperature"),
        Aim::None,
        5,
    ),
    group(
        "regressions as keyed in",
        "K",
        |r| is(r, "regression"),
        Aim::None,
        34,
    )
    .of(Against::OwnData),
    group(
        "dissolved carbon after a soak",
        "wt %",
        |r| is(r, "dissolved carbon"),
        Aim::None,
        5,
    ),
    group(
        "carbide left after a soak",
        "vol %",
        |r| is(r, "carbide left"),
        Aim::None,
        2,
    ),
    group(
        "austenite grain",
        "ASTM number",
        |r| is(r, "austenite grain"),
        Aim::None,
        4,
    ),
    group(
        "forging windows of handbooks",
        "K",
        |r| is(r, "forging"),
        Aim::None,
        47,
    ),
    group(
        "grain numbers of the standard",
        "grains/in², µm",
        |r| is(r, "E112"),
        Aim::None,
        4,
    )
    .of(Against::OwnData),
    group(
        "conduction against series",
        "of the range",
        |r| r.quantity.ends_with("_theta") || is(r, "semi_infinite"),
        Aim::Largest(0.001),
        43,
    )
    .of(Against::Computed),
    group(
        "eigenvalues and half-temperature time",
        "–",
        |r| r.quantity.ends_with("eigenvalue") || is(r, "half_temperature"),
        Aim::None,
        5,
    )
    .of(Against::Computed),
    group(
        "plates and lumps in given baths",
        "s, °C",
        |r| is(r, "plate_centre_time") || is(r, "lumped") || is(r, "air_delay"),
        Aim::None,
        14,
    )
    .of(Against::Computed),
    group(
        "probe figures",
        "s, °C, K/s",
        |r| is(r, "probe_") || is(r, "ref_fluid"),
        Aim::Inside(1.0),
        23,
    )
    .of(Against::Computed),
    group(
        "severity and ideal diameter of bars",
        "in",
        |r| is(r, "grossmann_"),
        Aim::None,
        23,
    )
    .of(Against::Computed),
    group(
        "cooling of the end-quench bar",
        "K/s",
        |r| is(r, "jominy_cooling_rate"),
        Aim::None,
        13,
    ),
    group(
        "bars and end-quench positions",
        "mm, in",
        |r| {
            is(r, "jominy_equivalent")
                || is(r, "bar_diameter")
                || is(r, "critical_diameter")
                || is(r, "round_diameter")
                || is(r, "equivalent Jominy")
                || is(r, "largest bar")
        },
        Aim::None,
        14,
    ),
    group(
        "hardness across quenched rounds",
        "HRC",
        |r| is(r, "hardness in round"),
        Aim::None,
        3,
    ),
    group(
        "heat transfer as published",
        "W/m²K",
        |r| is(r, "published_HTC"),
        Aim::None,
        4,
    ),
    group(
        "properties, furnaces, thermocouples",
        "–",
        |r| is(r, "latent") || is(r, "typeK") || is(r, "AMS") || is(r, "EC3"),
        Aim::None,
        15,
    ),
    group(
        "Ms, 0.2 to 0.7 % C dissolved",
        "K",
        |r| r.quantity == "Ms" && carbon(r) < 0.7,
        Aim::Rms(18.0),
        35,
    ),
    group(
        "Ms, 0.7 to 1.3 % C dissolved",
        "K",
        |r| r.quantity == "Ms",
        Aim::Rms(33.0),
        21,
    ),
    group(
        "Mf, M90 and Bs",
        "K",
        |r| ["Mf", "M90", "Bs"].contains(&r.quantity.as_str()),
        Aim::None,
        9,
    ),
    group(
        "retained austenite",
        "vol %",
        |r| is(r, "retained austenite after"),
        Aim::Mean(3.0),
        5,
    ),
    group(
        "time of the first nose",
        "factor",
        |r| is(r, "IT start nose time"),
        Aim::Inside(0.8),
        8,
    ),
    group(
        "temperature of the first nose",
        "K",
        |r| is(r, "IT start nose temp"),
        Aim::None,
        5,
    ),
    group(
        "isothermal bainite",
        "factor",
        |r| is(r, "isothermal bainite"),
        Aim::None,
        12,
    ),
    group(
        "half-martensite end-quench rate",
        "factor",
        |r| is(r, "half-martensite"),
        Aim::Rms(1.4),
        7,
    ),
    group(
        "critical cooling, time past the nose",
        "factor",
        |r| is(r, "critical cooling") || is(r, "time allowed"),
        Aim::None,
        4,
    ),
    group(
        "end-quench curve",
        "HRC",
        |r| is(r, "Jominy"),
        Aim::Mean(2.0),
        77,
    ),
    group(
        "end-quench bar, simulated",
        "HRC",
        |r| is(r, "simulated end-quench"),
        Aim::Mean(2.0),
        70,
    ),
    group(
        "ideal critical diameter",
        "in",
        |r| is(r, "ideal critical"),
        Aim::None,
        3,
    ),
    group(
        "as-quenched hardness",
        "HRC",
        |r| is(r, "as-quenched") || is(r, "hardness of 50") || is(r, "50% martensite"),
        Aim::Mean(1.2),
        30,
    ),
    group(
        "bars normalised in air",
        "HV",
        |r| is(r, "hardness of a bar normalised"),
        Aim::None,
        8,
    ),
    group(
        "tempered hardness, the models' own data",
        "HRC",
        |r| is(r, "tempered") && is_own_tempering(r),
        Aim::None,
        99,
    )
    .of(Against::OwnData),
    group(
        "tempered hardness, data not used",
        "HRC",
        |r| is(r, "tempered"),
        Aim::Mean(1.8),
        52,
    ),
    group(
        "conversions, decomposition of austenite",
        "HV, HBW, kJ/mol",
        |r| is(r, "conversion") || is(r, "retained austenite decomposition"),
        Aim::None,
        29,
    ),
];

fn is(row: &Row, quantity: &str) -> bool {
    row.quantity.starts_with(quantity)
}

/// Whether the law of tempering was fitted to a row, or the table of its grade is made of such sheets.
fn is_own_tempering(row: &Row) -> bool {
    let is_tabled = ["A2", "D2", "S7"]
        .iter()
        .any(|name| row.case.starts_with(name));
    is_tabled || row.source.contains("raiipa")
}

/// Carbon of the composition in a row's case.
fn carbon(row: &Row) -> f64 {
    let words = row.case.split(';').nth(1).unwrap_or_default();
    rows::transform::composition(words).c
}
