//! Rows on conduction, quench media, probes and thermometry, each with the tolerance and source of
//! its line.

use super::{FACTOR, Row};
use recalesce::heat::{
    HeatTransfer, Material, Medium, OwnMedium, Piece, Place, Shape, ThermocoupleClass,
    furnace_uniformity_k, grossmann_ideal_diameter_mm, half_temperature_fourier,
    jominy_rate_at_704c, media, medium, probe, type_k_tolerance_k,
};
use recalesce::sources::{en_1993_1_2_2005, grossmann_1964, hagel_1956};

const CHECKS: &str = include_str!("../checks/quenching.csv");

/// Quantities of the file that the soak answers.
const OF_THE_SOAK: &str = "E112";

/// Quantities that the equivalence of bars and end-quench positions answers.
const OF_ROUNDS: [&str; 4] = [
    "jominy_equivalent_of_bar_centre",
    "bar_diameter_for_J12.5mm",
    "critical_diameter",
    "round_diameter_equivalent",
];

/// Every row of the file but those of the soak and of rounds.
pub fn rows() -> Vec<Row> {
    csv::Reader::from_reader(CHECKS.as_bytes())
        .records()
        .map(|record| {
            let record = record.expect("a row");
            Line {
                quantity: record[0].to_owned(),
                condition: record[1].to_owned(),
                value: record[2].parse().expect("a value"),
                tolerance: record[4].to_owned(),
                source: format!("{} ({})", &record[5], &record[6]),
            }
        })
        .filter(|line| !line.quantity.starts_with(OF_THE_SOAK))
        .filter(|line| !OF_ROUNDS.contains(&line.quantity.as_str()))
        .map(|line| {
            let predicted = compute(&line).ok_or_else(|| "no number for this case".to_owned());
            let (mark, value, tolerance) = line.value_and_tolerance();
            Row {
                quantity: [line.quantity.as_str(), mark].join(" ").trim().to_owned(),
                case: line.condition,
                predicted,
                value,
                tolerance,
                source: line.source,
            }
        })
        .collect()
}

struct Line {
    quantity: String,
    condition: String,
    value: f64,
    tolerance: String,
    source: String,
}

impl Line {
    /// The number that follows a word of the condition.
    fn number(&self, word: &str) -> f64 {
        let (_, rest) = self
            .condition
            .split_once(word)
            .unwrap_or_else(|| panic!("{word:?} in {:?}", self.condition));
        let end = rest
            .find(|c: char| !(c.is_ascii_digit() || c == '.'))
            .unwrap_or(rest.len());
        rest[..end]
            .trim_end_matches('.')
            .parse()
            .unwrap_or_else(|_| panic!("a number after {word:?} in {:?}", self.condition))
    }

    fn has(&self, word: &str) -> bool {
        self.condition.contains(word)
    }

    /// The medium that the condition describes: knots in braces, or a constant.
    fn medium(&self) -> Medium {
        let points = match self.condition.split_once('{') {
            Some((_, rest)) => rest
                .split_once('}')
                .expect("a closing brace")
                .0
                .split([';', ','])
                .map(|pair| {
                    let (t, h) = pair.trim().split_once(':').expect("a pair");
                    [t.parse().expect("°C"), h.parse().expect("W/m²K")]
                })
                .collect(),
            None => {
                let h = self.number("h=");
                vec![[0.0, h], [1000.0, h]]
            }
        };
        own(points, self.number("bath "), false)
    }

    /// Value and tolerance as a row states them: a range is its middle and half its width.
    fn value_and_tolerance(&self) -> (&'static str, f64, f64) {
        let tolerance = self.tolerance.as_str();
        let number = |text: &str| -> f64 {
            text.split([' ', ';'])
                .find_map(|word| word.parse().ok())
                .unwrap_or_else(|| panic!("a number in {text:?}"))
        };
        let between = |mark: &str| {
            let (_, range) = self.condition.split_once(mark).expect("a range");
            let (least, most) = range.split_once('-').expect("a range");
            let most = most.split(' ').next().expect("an end");
            let [least, most]: [f64; 2] = [least, most].map(|end| end.parse().expect("an end"));
            ("", 0.5 * (least + most), 0.5 * (most - least))
        };
        if tolerance == "band" {
            between("band ")
        } else if tolerance == "inside the range" {
            between("range ")
        } else if tolerance == "exact" {
            ("", self.value, 0.0)
        } else if let Some(factor) = tolerance.strip_prefix("factor ") {
            (FACTOR, self.value, number(factor))
        } else if tolerance.contains('%') {
            let percent = number(&tolerance.replace('%', " "));
            ("", self.value, self.value * percent / 100.0)
        } else {
            let absolute = tolerance.strip_prefix("abs ").expect("a tolerance");
            ("", self.value, number(absolute))
        }
    }
}

fn own(h_w_m2k: Vec<[f64; 2]>, bath_c: f64, radiation: bool) -> Medium {
    OwnMedium {
        h_w_m2k,
        bath_c,
        radiation,
        ..OwnMedium::default()
    }
    .resolve()
    .expect("a usable medium")
}

/// Excess temperature over that at the start, by the solver, with constant properties.
pub fn solved(shape: Shape, biot: f64, fourier: f64, place: Place) -> f64 {
    let (conductivity, capacity, size) = (25.0, 4.5e6, 5e-3);
    let h = biot * conductivity / size;
    let time = fourier * size * size * capacity / conductivity;
    let material = Material::constant(conductivity, capacity);
    let bath = own(vec![[0.0, h], [1000.0, h]], 50.0, false);
    let curve = &Piece::new(shape, size, material).cool(&bath, 1.0, 850.0, 0.0, time, &[place])[0];
    (curve.temperature_c.last().expect("a point") - 50.0) / 800.0
}

/// Smallest root of the equation of the eigenvalues.
fn first_eigenvalue(equation: impl Fn(f64) -> f64, [mut low, mut high]: [f64; 2]) -> f64 {
    for _ in 0..60 {
        let middle = 0.5 * (low + high);
        if equation(middle) < 0.0 {
            low = middle;
        } else {
            high = middle;
        }
    }
    low
}

/// Computes what the row states; nothing where another room does.
fn compute(row: &Line) -> Option<f64> {
    let series = |shape, place| solved(shape, row.number("Bi="), row.number("Fo="), place);
    Some(match row.quantity.as_str() {
        "plate_centre_theta" => series(Shape::Plate, Place::Centre),
        "plate_surface_theta" => series(Shape::Plate, Place::Surface),
        "cylinder_centre_theta" => series(Shape::Cylinder, Place::Centre),
        "cylinder_surface_theta" => series(Shape::Cylinder, Place::Surface),
        "sphere_centre_theta" => series(Shape::Sphere, Place::Centre),
        "semi_infinite_unaccomplished" => {
            // A plate so thick that its centre stays hot: h√(at)/k = Bi √Fo with Fo small.
            let fourier = 0.04;
            let biot = row.number("h*sqrt(a*t)/k=") / f64::sqrt(fourier);
            let depth = 2.0 * f64::sqrt(fourier) * row.number("x/(2 sqrt(a t))=");
            1.0 - solved(Shape::Plate, biot, fourier, Place::Within(1.0 - depth))
        }
        "plate_first_eigenvalue" => {
            let biot = row.number("Bi=");
            first_eigenvalue(
                |z| z * z.sin() - biot * z.cos(),
                [0.0, 0.5 * std::f64::consts::PI],
            )
        }
        "cylinder_first_eigenvalue" => {
            let biot = row.number("Bi=");
            first_eigenvalue(|z| z * libm::j1(z) - biot * libm::j0(z), [0.0, 2.404825])
        }
        "half_temperature_Fourier_ideal_cylinder_centre" => half_temperature_fourier(f64::INFINITY),
        "grossmann_ideal_diameter_DI" => {
            let diameter_mm = 25.4 * row.number("diameter D=");
            grossmann_ideal_diameter_mm(diameter_mm, row.number("H=")).ok()? / 25.4
        }
        "lumped_time_800_to_500" => {
            // Conductivity so high that the plate has one temperature.
            let material = Material::constant(25e3, row.number("rho=") * row.number("cp="));
            let size = 0.5e-3 * row.number("plate ");
            let piece = Piece::new(Shape::Plate, size, material);
            piece.cool(&row.medium(), 1.0, 800.0, 400.0, 1e3, &[Place::Centre])[0]
                .time_to_c(500.0)?
        }
        "air_delay_temperature" => {
            let material = Material::constant(25e3, row.number("rho=") * row.number("cp="));
            let size = 0.5e-3 * row.number("plate ");
            let h = row.number("hc=");
            let air = own(
                vec![[0.0, h], [1000.0, h]],
                row.number("surroundings "),
                true,
            );
            let time = row.number("after ");
            let piece = Piece::new(Shape::Plate, size, material);
            *piece.cool(&air, 1.0, 800.0, 0.0, time, &[Place::Centre])[0]
                .temperature_c
                .last()?
        }
        "probe_time_to_600" => probe(&row.medium()).ok()?.time_to_600c_s?,
        "probe_time_to_400" => probe(&row.medium()).ok()?.time_to_400c_s?,
        "probe_time_to_200" => probe(&row.medium()).ok()?.time_to_200c_s?,
        "probe_max_rate" => probe(&row.medium()).ok()?.max_rate_k_per_s,
        "probe_temp_at_max_rate" => probe(&row.medium()).ok()?.max_rate_at_c,
        "plate_centre_time_to_540" | "plate_centre_time_to_300" => {
            let end = if row.quantity.ends_with("540") {
                540.0
            } else {
                300.0
            };
            let size = 0.5e-3 * row.number("plate ");
            let piece = Piece::new(Shape::Plate, size, Material::austenite());
            piece.cool(&row.medium(), 1.0, 800.0, 200.0, 1e4, &[Place::Centre])[0].time_to_c(end)?
        }
        "jominy_cooling_rate_at_704C" => jominy_rate_at_704c(row.number("in (")).ok()?,
        "grossmann_H" => {
            let table = [
                ("oil", grossmann_1964::OIL),
                ("water", grossmann_1964::WATER),
                ("brine", grossmann_1964::BRINE),
                ("air", grossmann_1964::AIR),
            ];
            use grossmann_1964::Agitation::{Good, Mild, Moderate, Still, Strong, Violent};
            let words = [
                ("none", Still),
                ("mild", Mild),
                ("moderate", Moderate),
                ("good", Good),
                ("strong", Strong),
                ("violent", Violent),
            ];
            let bath = table
                .iter()
                .find(|(name, _)| row.condition.starts_with(name))?;
            let (_, agitation) = words
                .iter()
                .find(|(word, _)| row.has(&format!("agitation {word}")))?;
            let [least, most] = grossmann_1964::severity_per_in(&bath.1, *agitation)?;
            0.5 * (least + most)
        }
        "ref_fluid_temp_at_max" => probe(medium("ref_fluid")?).ok()?.max_rate_at_c,
        "ref_fluid_rate_at_300" => probe(medium("ref_fluid")?).ok()?.rate_at_300c_k_per_s?,
        "ref_fluid_time_to_600" => probe(medium("ref_fluid")?).ok()?.time_to_600c_s?,
        "published_HTC" => {
            // The nearest that the list has to offer.
            let family = if row.has("polymer") {
                "polymer"
            } else {
                "oil_"
            };
            let curves = media().iter().filter(|m| {
                m.name.starts_with(family) || (family == "oil_" && m.name == "ref_fluid")
            });
            let at = |curve: &HeatTransfer| {
                if row.has("peak") {
                    curve.points().map(|p| p[1]).fold(0.0, f64::max)
                } else if row.has("150") {
                    curve.at(150.0)
                } else {
                    curve.at(800.0)
                }
            };
            curves.map(|m| at(&m.h_w_m2k)).min_by(|a, b| {
                (a / row.value)
                    .ln()
                    .abs()
                    .total_cmp(&(b / row.value).ln().abs())
            })?
        }
        "latent_heat_pearlite" if row.has("with 1.85 Mn") => hagel_1956::WITH_MN_OR_MO_KJ_KG,
        "latent_heat_pearlite" => hagel_1956::EUTECTOID_KJ_KG,
        "typeK_tolerance" => {
            let class = if row.has("class 1") {
                ThermocoupleClass::One
            } else {
                ThermocoupleClass::Two
            };
            type_k_tolerance_k(class, row.number(""))?
        }
        "AMS2750_uniformity" => furnace_uniformity_k(row.number("class ") as u8)?,
        "EC3_specific_heat" => en_1993_1_2_2005::heat_capacity_j_kgk(row.number(""))?,
        "EC3_conductivity" => en_1993_1_2_2005::conductivity_w_mk(row.number(""))?,
        _ => return None,
    })
}
