//! Which routes make sense at all: every number in a range that a shop could mean. The models
//! have narrower ranges of their own and refuse by themselves.

use super::allowed::{RouteFieldError, allowed, fault, fault_in_degrees, fault_of_medium};
use super::validate_prior::prior;
use super::{Cold, NextBath, Quench, Route, Soak, Target, Temper};
use crate::heat::{AGITATION, Leave, MediumChoice};
use crate::transform::measured_heat;
use recalesce_texts::route::{fields as texts, plan as plan_texts};

/// Longest text in a route, characters.
pub const LONGEST_TEXT: usize = 200;
/// Most tempers in a route.
pub const MOST_TEMPERS: usize = 6;
/// Most baths of a quench after the first.
pub const MOST_LATER_BATHS: usize = 3;
/// Temperatures of a snap temper, °C: cooler it takes little of the stress, hotter it is a temper.
/// 130 to 180 °C are usual (from memory).
pub const SNAP_C: (f64, f64) = (120.0, 200.0);
/// Times of a snap temper, min: long enough to go through, short of a temper.
pub const SNAP_MIN: (f64, f64) = (5.0, 480.0);
/// How much hotter the piece may be than the furnace reads, K.
pub(crate) const FURNACE_OFFSET_K: (f64, f64) = (-100.0, 100.0);
/// Temperatures of the soak, °C.
pub(super) const SOAK_C: (f64, f64) = (500.0, 1300.0);
/// Temperatures of a temper, °C.
pub(crate) const TEMPER_C: (f64, f64) = (20.0, 750.0);
/// Longest time of any step, h.
pub const LONGEST_STEP_H: f64 = 1000.0;

pub(super) const STEP_MIN: (f64, f64) = (0.0, LONGEST_STEP_H * 60.0);

/// Checks that every number of a route is in a range that a shop could mean, that texts are not
/// absurdly long, and that ranges are the right way round.
///
/// # Errors
/// The first field that makes no sense, with what is allowed.
pub fn validate(route: &Route) -> Result<(), RouteFieldError> {
    text("piece", texts::PIECE, &route.piece)?;
    if let Some(grade) = &route.grade {
        text("grade", texts::GRADE, grade)?;
    }
    route
        .composition
        .validate()
        .map_err(|e| fault("composition", e))?;
    if !route.end_quench.is_empty() {
        measured_heat(&route.composition, &route.end_quench).map_err(|e| fault("end_quench", e))?;
    }
    route.section.validate().map_err(|e| fault("section", e))?;
    allowed("furnace_band_k", texts::FURNACE_BAND, (0.0, 100.0), "K")
        .check(route.furnace_band_k)?;
    allowed(
        "furnace_offset_k",
        texts::FURNACE_OFFSET,
        FURNACE_OFFSET_K,
        "K",
    )
    .check(route.furnace_offset_k)?;
    prior(&route.prior)?;
    soak(&route.soak)?;
    quench(&route.quench)?;
    if let Some(bath) = &route.cold {
        cold(bath)?;
    }
    tempers(&route.tempers)?;
    target(&route.target)
}

pub(super) fn text(
    field: &'static str,
    words: &'static str,
    written: &str,
) -> Result<(), RouteFieldError> {
    let length = written.chars().count();
    if length > LONGEST_TEXT {
        return Err(fault(field, texts::too_long(words, length, LONGEST_TEXT)));
    }
    Ok(())
}

fn soak(soak: &Soak) -> Result<(), RouteFieldError> {
    allowed("soak.temperature_c", texts::SOAK_TEMPERATURE, SOAK_C, "°C")
        .check(soak.temperature_c)?;
    allowed("soak.time_min", texts::SOAK_TIME, STEP_MIN, "min").check(soak.time_min)
}

fn quench(quench: &Quench) -> Result<(), RouteFieldError> {
    if let Some(name) = quench.medium.listed() {
        text("quench.medium", texts::QUENCHANT, name)?;
    }
    quench
        .medium
        .resolve()
        .map_err(|e| fault_of_medium("quench.medium", &e))?;
    allowed("quench.agitation", texts::AGITATION, AGITATION, "").check(quench.agitation)?;
    allowed("quench.air_delay_s", texts::AIR_DELAY, (0.0, 120.0), "s").check(quench.air_delay_s)?;
    allowed("quench.end_c", texts::QUENCH_END, (-200.0, 400.0), "°C").check(quench.end_c)?;
    if quench.then.len() > MOST_LATER_BATHS {
        return Err(fault(
            "quench.then",
            texts::too_many_baths(quench.then.len(), MOST_LATER_BATHS),
        ));
    }
    let mut before = &quench.medium;
    for next in &quench.then {
        next_bath(before, next)?;
        before = &next.medium;
    }
    Ok(())
}

fn next_bath(before: &MediumChoice, next: &NextBath) -> Result<(), RouteFieldError> {
    const FIELD: &str = "quench.then";
    const STAY_S: (f64, f64) = (0.0, 86_400.0);
    const LEAVES_C: (f64, f64) = (-200.0, 900.0);
    if let Some(name) = next.medium.listed() {
        text(FIELD, texts::QUENCHANT, name)?;
    }
    let bath_c = next
        .medium
        .resolve()
        .map_err(|e| fault_of_medium(FIELD, &e))?
        .bath_c;
    let before_c = before
        .resolve()
        .map_err(|e| fault_of_medium(FIELD, &e))?
        .bath_c;
    allowed(FIELD, texts::AGITATION, AGITATION, "").check(next.agitation)?;
    match next.leave {
        Leave::AfterS(stay_s) => allowed(FIELD, texts::BATH_TIME, STAY_S, "s").check(stay_s),
        Leave::AtC(temperature_c) => {
            allowed(FIELD, texts::OUT_OF_BATH, LEAVES_C, "°C").check(temperature_c)?;
            let warmer_c = before_c.max(bath_c);
            if temperature_c <= warmer_c {
                return Err(fault_in_degrees(
                    FIELD,
                    [temperature_c, warmer_c],
                    texts::not_above_both_baths,
                ));
            }
            Ok(())
        }
    }
}

fn cold(cold: &Cold) -> Result<(), RouteFieldError> {
    const TEMPERATURE_C: (f64, f64) = (-200.0, 20.0);
    allowed("cold.temperature_c", texts::COLD_BATH, TEMPERATURE_C, "°C")
        .check(cold.temperature_c)?;
    allowed("cold.time_min", texts::COLD_TIME, STEP_MIN, "min").check(cold.time_min)?;
    allowed("cold.delay_min", texts::COLD_DELAY, STEP_MIN, "min").check(cold.delay_min)?;
    if let Some(snap) = &cold.snap {
        allowed("cold.snap", texts::SNAP_TEMPER, SNAP_C, "°C").check(snap.temperature_c)?;
        allowed("cold.snap", texts::SNAP_TIME, SNAP_MIN, "min").check(snap.time_min)?;
    }
    Ok(())
}

fn tempers(tempers: &[Temper]) -> Result<(), RouteFieldError> {
    if tempers.len() > MOST_TEMPERS {
        return Err(fault(
            "tempers",
            texts::too_many_tempers(tempers.len(), MOST_TEMPERS),
        ));
    }
    for (i, temper) in tempers.iter().enumerate() {
        allowed("tempers", texts::TEMPER_TEMPERATURE, TEMPER_C, "°C")
            .check(temper.temperature_c)
            .and_then(|()| {
                allowed("tempers", texts::TEMPER_TIME, STEP_MIN, "min").check(temper.time_min)
            })
            .map_err(|e| e.of_step(&plan_texts::temper(i + 1)))?;
    }
    Ok(())
}

fn target(target: &Target) -> Result<(), RouteFieldError> {
    const HRC: (f64, f64) = (20.0, 70.0);
    allowed("target.least_hrc", texts::LEAST_HARDNESS, HRC, "HRC").check(target.least_hrc)?;
    allowed("target.most_hrc", texts::MOST_HARDNESS, HRC, "HRC").check(target.most_hrc)?;
    if target.least_hrc > target.most_hrc {
        return Err(fault(
            "target.most_hrc",
            texts::target_upside_down(target.least_hrc, target.most_hrc),
        ));
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heat::{ListedAt, OwnMedium, Section};
    use crate::route::Thermocouple;
    use crate::soak::StartingStructure;
    use crate::steel::Composition;
    use crate::transform::BarPoint;
    use crate::units::TemperatureScale;

    fn knife() -> Route {
        Route {
            piece: "Marking knife".to_owned(),
            grade: Some("52100".to_owned()),
            composition: Composition {
                c: 1.0,
                mn: 0.35,
                si: 0.25,
                cr: 1.45,
                ..Composition::default()
            },
            end_quench: Vec::new(),
            start: StartingStructure::Spheroidised,
            prior: Vec::new(),
            section: Section::Plate { thickness_mm: 3.0 },
            furnace_band_k: 8.0,
            thermocouple: Thermocouple::Checked,
            furnace_offset_k: 0.0,
            soak: Soak {
                temperature_c: 845.0,
                time_min: 12.0,
            },
            quench: Quench {
                then: Vec::new(),
                medium: MediumChoice::Named("oil_fast".to_owned()),
                agitation: 1.0,
                air_delay_s: 1.0,
                end_c: 20.0,
            },
            cold: None,
            tempers: vec![
                Temper {
                    temperature_c: 180.0,
                    time_min: 120.0,
                };
                2
            ],
            target: Target {
                least_hrc: 61.0,
                most_hrc: 63.0,
            },
            seed: 1,
            taught: None,
        }
    }

    #[test]
    fn an_end_quench_test_has_to_show_the_fall() {
        let with = |points: &[(f64, f64)]| {
            fault_after(|route| {
                route.take_grade(crate::steel::find("4140").unwrap());
                let points = points.iter();
                route.end_quench = points
                    .map(|&(distance_mm, hrc)| BarPoint { distance_mm, hrc })
                    .collect();
            })
        };
        assert_eq!(
            with(&[(1.5, 56.0), (9.0, 53.0), (20.0, 44.0), (40.0, 37.0)]),
            None
        );
        let flat = with(&[(1.5, 56.0), (3.0, 56.0), (5.0, 56.0)]).unwrap();
        assert_eq!(flat.0, "end_quench");
    }

    /// Field and message of the fault that a change brings in.
    fn fault_after(change: impl FnOnce(&mut Route)) -> Option<(&'static str, String)> {
        let mut route = knife();
        change(&mut route);
        validate(&route).err().map(|e| (e.field, e.to_string()))
    }

    #[test]
    fn a_plain_route_makes_sense() {
        assert_eq!(fault_after(|_| {}), None);
    }

    #[test]
    fn each_absurd_number_is_named_with_what_is_allowed() {
        assert_eq!(
            fault_after(|r| r.soak.temperature_c = 1600.0),
            Some((
                "soak.temperature_c",
                "soak temperature 1600 °C is outside 500 to 1300 °C".to_owned()
            ))
        );
        assert_eq!(
            fault_after(|r| r.quench.agitation = f64::NAN),
            Some((
                "quench.agitation",
                "agitation NaN is outside 0.05 to 20".to_owned()
            ))
        );
        assert_eq!(
            fault_after(|r| r.tempers[1].temperature_c = 900.0),
            Some((
                "tempers",
                "temper 2: temper temperature 900 °C is outside 20 to 750 °C".to_owned()
            ))
        );
        let fields = [
            fault_after(|r| r.composition.c = -1.0),
            fault_after(|r| r.section = Section::Plate { thickness_mm: 1e9 }),
            fault_after(|r| r.furnace_band_k = 101.0),
            fault_after(|r| r.furnace_offset_k = -101.0),
            fault_after(|r| r.soak.time_min = 60_001.0),
            fault_after(|r| r.quench.air_delay_s = -0.1),
            fault_after(|r| r.quench.end_c = 500.0),
            fault_after(|r| {
                r.cold = Some(Cold {
                    temperature_c: 30.0,
                    time_min: 60.0,
                    delay_min: 5.0,
                    snap: None,
                });
            }),
            fault_after(|r| {
                r.cold = Some(Cold {
                    snap: Some(Temper {
                        temperature_c: 230.0,
                        time_min: 60.0,
                    }),
                    ..Cold::FIRST_OFFERED
                });
            }),
            fault_after(|r| r.tempers = vec![r.tempers[0]; 7]),
            fault_after(|r| r.target.most_hrc = 60.0),
            fault_after(|r| r.piece = "x".repeat(201)),
        ]
        .map(|f| f.map(|(field, _)| field));
        assert_eq!(
            fields,
            [
                "composition",
                "section",
                "furnace_band_k",
                "furnace_offset_k",
                "soak.time_min",
                "quench.air_delay_s",
                "quench.end_c",
                "cold.temperature_c",
                "cold.snap",
                "tempers",
                "target.most_hrc",
                "piece"
            ]
            .map(Some)
        );
    }

    /// On a page in °F what is allowed is told in °F, differences among it; what is no temperature stays.
    #[test]
    fn what_is_allowed_is_told_on_a_scale() {
        let told = |change: fn(&mut Route)| {
            let mut route = knife();
            change(&mut route);
            let error = crate::route::RouteError::from(validate(&route).unwrap_err());
            let words = error.words(TemperatureScale::Fahrenheit);
            (error.words(TemperatureScale::Celsius), words)
        };
        assert_eq!(
            told(|r| r.soak.temperature_c = 1600.0),
            (
                "soak temperature 1600 °C is outside 500 to 1300 °C".to_owned(),
                "soak temperature 2912 °F is outside 932 to 2372 °F".to_owned()
            )
        );
        let band = told(|r| r.furnace_band_k = 110.0);
        assert_eq!(band.1, "furnace band 198 °F is outside 0 to 180 °F");
        let temper = told(|r| r.tempers[1].temperature_c = 900.0);
        assert_eq!(
            temper.1,
            "temper 2: temper temperature 1652 °F is outside 68 to 1382 °F"
        );
        let bath = told(|r| {
            r.quench.medium = MediumChoice::At(ListedAt {
                listed: "water20".to_owned(),
                bath_c: 90.0,
            });
        });
        assert!(
            bath.0
                .contains("a bath of 90\u{a0}°C is outside 10 to 60\u{a0}°C")
        );
        assert!(
            bath.1
                .contains("a bath of 194\u{a0}°F is outside 50 to 140\u{a0}°F")
        );
        let time = told(|r| r.soak.time_min = 60_001.0);
        assert_eq!(time.0, time.1);
    }

    #[test]
    fn the_quenchant_must_be_one_of_the_list_or_a_usable_curve() {
        let with = |medium: MediumChoice| fault_after(|r| r.quench.medium = medium);
        let own = |h_w_m2k: Vec<[f64; 2]>| {
            with(MediumChoice::Own(OwnMedium {
                h_w_m2k,
                bath_c: 50.0,
                ..OwnMedium::default()
            }))
        };
        assert_eq!(own(vec![[70.0, 300.0], [265.0, 485.0]]), None);
        let faults = [
            with(MediumChoice::Named("quicksilver".to_owned())),
            with(MediumChoice::Named("x".repeat(201))),
            own(vec![]),
            own(vec![[265.0, 485.0], [70.0, 300.0]]),
        ];
        for fault in faults {
            assert_eq!(fault.map(|(field, _)| field), Some("quench.medium"));
        }
    }
}
