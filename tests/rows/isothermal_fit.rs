//! What the isothermal start times are fitted to, with the error of a set of them.

use super::bar::{Band, bands, simulated};
use super::transform::{
    self as transform_rows, at, austenite, grain, half_martensite_rates, read, usually_dissolved,
};
use recalesce::sources::isothermal_fit::StartTime;
use recalesce::transform::{Austenite, Kinetics, Product};

const CHECKS: &str = include_str!("../checks/transformations.csv");

/// A heat at the edge of a band turns faster or slower than the middle one: its start times are
/// shorter or longer by this, as a logarithm. With it the lean bar lies on the lower limits of the
/// bands on average, and the rich one 2 HRC under the upper, whose heats have more carbon as well.
pub const EDGE_LN: f64 = 0.7;
/// Scatter of the middle of a band, HRC.
const BAND_HRC: f64 = 3.0;
/// Start of pearlite at 650 °C, its nose, in isothermal diagrams of steel with molybdenum, where bainite
/// comes first: steel, what is dissolved, grain, s (memory).
const PEARLITE_AT_650_C: [(&str, &str, f64, f64); 2] = [
    (
        "4140",
        "C 0.37 Mn 0.77 Si 0.15 Ni 0.04 Cr 0.98 Mo 0.21",
        7.5,
        85.0,
    ),
    (
        "4340",
        "C 0.42 Mn 0.78 Si 0.25 Ni 1.79 Cr 0.80 Mo 0.33",
        7.5,
        600.0,
    ),
];
/// A steel's bands, whose positions are not independent, count like this many observations.
const BANDS_COUNT: f64 = 1.0;

#[derive(Debug, Clone)]
pub enum Seen {
    /// Time of the first nose and whether bainite makes it.
    Nose { time_s: f64, bainite: bool },
    /// Rate for a martensite fraction.
    Rate {
        rate_k_per_s: f64,
        martensite: f64,
        sigma: f64,
    },
    /// 1 % bainite at a temperature.
    Bainite { temperature_c: f64, time_s: f64 },
    /// 1 % pearlite at a temperature.
    Pearlite { temperature_c: f64, time_s: f64 },
    /// End-quench band: its middle is the mean of a lean and a rich heat.
    Band { band: Band, weight: f64 },
}

#[derive(Debug, Clone)]
pub struct Observation {
    /// Observations of one steel are left out together.
    pub steel: String,
    pub austenite: Austenite,
    pub seen: Seen,
}

/// Every observation.
pub fn observations() -> Vec<Observation> {
    let mut all = Vec::new();
    let lines = read(CHECKS);
    for line in &lines {
        let get = |name| line.get(name);
        let Ok(value) = get("value").parse::<f64>() else {
            continue;
        };
        let (steel, text, condition) = (get("steel"), get("composition"), get("condition"));
        let family = family(&steel);
        let mut push = |austenite, seen| {
            all.push(Observation {
                steel: family.clone(),
                austenite,
                seen,
            });
        };
        match get("quantity").as_str() {
            "IT start nose time (first product)" => {
                let nose_c = lines
                    .iter()
                    .find(|l| {
                        l.get("quantity") == "IT start nose temperature" && l.get("steel") == steel
                    })
                    .and_then(|l| l.get("value").parse::<f64>().ok())
                    .unwrap();
                let mut dissolved = austenite(&text, grain(&condition));
                if steel == "O1" {
                    // The row leaves out the tungsten of the grade.
                    dissolved.composition.w = 0.3;
                }
                push(
                    dissolved,
                    Seen::Nose {
                        time_s: value,
                        bainite: nose_c < 500.0,
                    },
                );
            }
            "critical cooling rate for full martensite" => push(
                usually_dissolved(&steel, &text, &condition),
                Seen::Rate {
                    rate_k_per_s: value,
                    martensite: 0.95,
                    sigma: 1.7,
                },
            ),
            "isothermal bainite start (1 %)" => {
                let temperature_c: f64 = condition
                    .split_whitespace()
                    .find_map(|w| w.parse().ok())
                    .unwrap();
                push(
                    austenite(transform_rows::BEARING, 9.0),
                    Seen::Bainite {
                        temperature_c,
                        time_s: value,
                    },
                );
            }
            _ => {}
        }
    }
    for row in half_martensite_rates() {
        let mut parts = row.case.split(';');
        let steel = parts.next().unwrap();
        all.push(Observation {
            steel: family(steel),
            austenite: austenite(parts.next().unwrap(), 7.0),
            seen: Seen::Rate {
                rate_k_per_s: row.value,
                martensite: 0.5,
                sigma: 1.3,
            },
        });
    }
    for (steel, text, grain_astm, time_s) in PEARLITE_AT_650_C {
        all.push(Observation {
            steel: steel.to_owned(),
            austenite: austenite(text, grain_astm),
            seen: Seen::Pearlite {
                temperature_c: 650.0,
                time_s,
            },
        });
    }
    let bands = bands();
    for band in &bands {
        let steel = family(&band.steel);
        let kin = bands.iter().filter(|b| family(&b.steel) == steel);
        let positions: usize = kin.map(|b| b.positions.len()).sum();
        all.push(Observation {
            steel,
            austenite: austenite(&band.composition, 7.0),
            seen: Seen::Band {
                band: band.clone(),
                weight: BANDS_COUNT / positions as f64,
            },
        });
    }
    all
}

/// The name under which observations of one kind of steel are left out together.
pub fn family(steel: &str) -> String {
    match steel.split([' ', '+']).next().unwrap_or_default() {
        "42CrMo4" => "4140".to_owned(),
        "100Cr6" => "52100".to_owned(),
        other => other.trim_end_matches('H').to_owned(),
    }
}

/// The same start times, later or earlier by a factor given as its logarithm.
pub fn shifted(start_times: &[StartTime; 3], by_ln: f64) -> [StartTime; 3] {
    start_times.map(|product| StartTime {
        constant: product.constant + by_ln,
        ..product
    })
}

impl Observation {
    /// Hardness of the simulated bar at the positions of a band, HRC.
    fn bar(&self, band: &Band, start_times: &[StartTime; 3]) -> Vec<f64> {
        let kinetics = Kinetics::with_start_times(&self.austenite, start_times).unwrap();
        let (x, y) = simulated(&kinetics).unwrap();
        band.positions.iter().map(|p| at(&x, &y, p.at_mm)).collect()
    }

    /// The mean of the lean and the rich bar at the positions of a band, HRC.
    fn middle(&self, band: &Band, start_times: &[StartTime; 3]) -> Vec<f64> {
        let edge = |by_ln| self.bar(band, &shifted(start_times, by_ln));
        let pairs = edge(-EDGE_LN).into_iter().zip(edge(EDGE_LN));
        pairs.map(|(lean, rich)| 0.5 * (lean + rich)).collect()
    }

    /// Errors in units of their scatter.
    pub fn residuals(&self, start_times: &[StartTime; 3]) -> Vec<f64> {
        let kinetics = Kinetics::with_start_times(&self.austenite, start_times).unwrap();
        match self.seen {
            Seen::Nose { time_s, bainite } => {
                let (mut first, mut other) = (f64::INFINITY, f64::INFINITY);
                for product in kinetics.products() {
                    let (_, nose_s) = kinetics.nose(product);
                    let slot = if (product == Product::Bainite) == bainite {
                        &mut first
                    } else {
                        &mut other
                    };
                    *slot = slot.min(nose_s);
                }
                // The atlases estimate what lies under a second.
                let sigma: f64 = if time_s < 1.0 { 2.0 } else { 1.5 };
                // The other kind must not come first.
                let other = (1.3 * time_s / other).ln().max(0.0) / 1.3_f64.ln();
                vec![(first / time_s).ln() / sigma.ln(), other]
            }
            Seen::Rate {
                rate_k_per_s,
                martensite,
                sigma,
            } => {
                let rate = kinetics.critical_cooling(martensite).unwrap().rate_k_per_s;
                vec![(rate / rate_k_per_s).ln() / sigma.ln()]
            }
            Seen::Bainite {
                temperature_c,
                time_s,
            } => {
                let start_s = kinetics.start_s(Product::Bainite, temperature_c);
                // Six points of one curve count like two.
                vec![(start_s / time_s).ln() / 1.5_f64.ln() / 3.0_f64.sqrt()]
            }
            Seen::Pearlite {
                temperature_c,
                time_s,
            } => {
                let start_s = kinetics.start_s(Product::Pearlite, temperature_c);
                vec![(start_s / time_s).ln() / 2.0_f64.ln()]
            }
            Seen::Band { ref band, weight } => {
                let printed = band.positions.iter().map(|p| p.middle_hrc);
                let middle = self.middle(band, start_times);
                let errors = middle.into_iter().zip(printed);
                errors
                    .map(|(ours, hrc)| weight.sqrt() * (ours - hrc) / BAND_HRC)
                    .collect()
            }
        }
    }

    /// Kind of an observation and its errors: the logarithm of predicted over seen; for a band,
    /// HRC, those of the bar of the middle heat and of the mean of lean and rich.
    pub fn errors(&self, set: &[StartTime; 3]) -> Vec<(&'static str, f64)> {
        let kinetics = Kinetics::with_start_times(&self.austenite, set).unwrap();
        match self.seen {
            Seen::Nose { time_s, .. } => {
                let nose_s = kinetics
                    .products()
                    .map(|p| kinetics.nose(p).1)
                    .fold(f64::INFINITY, f64::min);
                vec![("nose time", (nose_s / time_s).ln())]
            }
            Seen::Rate {
                rate_k_per_s,
                martensite,
                ..
            } => {
                let kind = if martensite > 0.9 {
                    "full rate"
                } else {
                    "half rate"
                };
                let rate = kinetics.critical_cooling(martensite).unwrap().rate_k_per_s;
                vec![(kind, (rate / rate_k_per_s).ln())]
            }
            Seen::Bainite {
                temperature_c,
                time_s,
            } => {
                let start_s = kinetics.start_s(Product::Bainite, temperature_c);
                vec![("bainite", (start_s / time_s).ln())]
            }
            Seen::Pearlite {
                temperature_c,
                time_s,
            } => {
                let start_s = kinetics.start_s(Product::Pearlite, temperature_c);
                vec![("pearlite", (start_s / time_s).ln())]
            }
            Seen::Band { ref band, .. } => {
                let (one, middle) = (self.bar(band, set), self.middle(band, set));
                let mut errors = Vec::new();
                for (i, p) in band.positions.iter().enumerate() {
                    errors.push(("bar", one[i] - p.middle_hrc));
                    errors.push(("lean and rich bar", middle[i] - p.middle_hrc));
                    let beyond = (p.least_hrc - one[i]).max(one[i] - p.most_hrc);
                    errors.push(("bar outside of band", beyond.max(0.0)));
                }
                errors
            }
        }
    }
}
