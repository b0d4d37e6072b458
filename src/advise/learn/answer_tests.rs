//! What is answered about a logbook.

use super::simulated::{estimated, logged, plate, reading};
use super::*;
use crate::advise::law::NINE_IN_TEN;
use crate::advise::shop::{Furnace, Quenchant, Shop, Tester};
use crate::advise::{Tolerances, spread};
use crate::hardness::Scale;
use crate::heat::{MediumChoice, Section};
use crate::route::{Deviation, Step, Thermocouple, trial};
use crate::steel::{Composition, find};
use crate::units::{LengthUnit, TemperatureScale};

fn of_kind(found: &Learned, kind: UnknownKind) -> &Learnt {
    let mut all = found.unknowns.iter().filter(|learnt| learnt.kind == kind);
    let first = all.next().unwrap();
    assert!(all.next().is_none());
    first
}

fn width(band: Band) -> f64 {
    band.most - band.least
}

/// Without a run the band of the next piece is that of a sample: what is straightened is nearly
/// straight for a piece that hardens through.
#[test]
fn what_is_known_beforehand_is_what_a_sample_tells() {
    let route = plate("52100", 3.0, &[180.0]);
    let found = estimated(LearnRun::new(&[], None, Some(&route)).unwrap());
    let tolerances = Tolerances {
        certificate_part: 0.0,
        ..Tolerances::default()
    };
    let sampled = spread(&route, &tolerances, 256, 1)
        .unwrap()
        .final_hrc
        .unwrap();
    let before = found.prediction.unwrap().before;
    approx::assert_abs_diff_eq!(before.mean, sampled.mean, epsilon = 0.15);
    let sampled = sampled.p95 - sampled.p05;
    approx::assert_relative_eq!(width(before), sampled, max_relative = 0.1);
    // Nothing is learnt from nothing.
    for learnt in &found.unknowns {
        assert_eq!(learnt.before, learnt.after);
        assert!(learnt.words.contains("next to nothing"), "{}", learnt.words);
    }
    assert!(found.entangled.is_empty());
}

/// One coupon, 3 HRC softer than predicted, and as much softer after its temper.
#[test]
fn a_single_coupon_moves_it_sensibly() {
    let route = plate("52100", 3.0, &[180.0]);
    let run = logged(
        &route,
        vec![reading(62.3, Step::Quench), reading(58.5, Step::Temper(1))],
    );
    let found = learn(&[run], None, Some(&route)).unwrap();
    for compared in &found.compared {
        let Compared {
            measured,
            before,
            after,
            ..
        } = compared;
        assert!(
            *measured < after.mean && after.mean < before.mean - 0.5,
            "{compared:?}"
        );
        assert!(width(*after) < width(*before));
    }
    for kind in [UnknownKind::QuenchedHardness, UnknownKind::TemperedHardness] {
        let learnt = of_kind(&found, kind);
        assert!(learnt.after.mean < -0.4 && learnt.after.mean > learnt.before.least);
        assert!((0.05..0.6).contains(&learnt.narrower_part), "{learnt:?}");
        assert!(
            learnt.words.contains("HRC below the computed one"),
            "{}",
            learnt.words
        );
    }
    let Prediction { before, after } = found.prediction.unwrap();
    assert!(after.mean < before.mean && width(after) < width(before));
    // What is offered next is in order, and all of it narrows.
    assert!(found.next.is_sorted_by(|a, b| a.band_hrc <= b.band_hrc));
    let now = 0.5 * width(after);
    assert!(found.next.iter().all(|next| next.band_hrc <= now + 1e-9));
    let coupons = found
        .next
        .iter()
        .filter(|next| matches!(next.measurement, Measurement::Coupon { .. }));
    assert_eq!(coupons.count(), 1);
    assert!(found.next.len() >= 6);
}

/// What was learnt of the hardness after a temper knows of which tempers: not of one whose reading lies
/// far off, nor of one after which nothing was read.
#[test]
fn what_is_learnt_of_tempers_knows_of_which() {
    let tempered = |temper_c: f64, after: Step, by: f64| {
        let route = plate("52100", 3.0, &[temper_c, 160.0]);
        let computed = trial(&route, &Deviation::default()).unwrap();
        let stage = computed.stages.iter().find(|stage| stage.step == after);
        let hrc = stage.unwrap().hardness.unwrap().hrc_carried();
        logged(&route, vec![reading(hrc + by, after)])
    };
    let last = Step::Temper(2);
    let runs = [
        tempered(180.0, last, -1.0),
        tempered(210.0, last, -1.2),
        tempered(200.0, last, -0.8),
        tempered(195.0, last, -1.1),
        tempered(300.0, last, -15.0),
        tempered(400.0, Step::Quench, 0.0),
    ];
    let found = estimated(LearnRun::new(&runs, None, None).unwrap());
    assert!(found.compared.iter().any(|compared| compared.is_outlier));
    let hardness = of_kind(&found, UnknownKind::TemperedHardness);
    assert_eq!(hardness.tempers_c, Some([180.0, 210.0]));
    for learnt in found.correction().learnt {
        let is_of_tempers = learnt.kind == UnknownKind::TemperedHardness;
        assert_eq!(learnt.tempers_c.is_some(), is_of_tempers);
    }
}

/// Three readings on another piece of the route narrow its band by what was foretold.
#[test]
fn a_measurement_teaches_what_was_foretold() {
    let route = plate("52100", 3.0, &[180.0]);
    let first = logged(&route, vec![reading(64.0, Step::Quench)]);
    let found = learn(std::slice::from_ref(&first), None, Some(&route)).unwrap();
    let foretold = found
        .next
        .iter()
        .find(|next| next.measurement == Measurement::AsTempered)
        .unwrap();
    let hrc = found.prediction.unwrap().after.mean;
    let second = logged(&route, vec![reading(hrc, Step::Temper(1)); 3]);
    let again = estimated(LearnRun::new(&[first, second], None, Some(&route)).unwrap());
    let band_hrc = 0.5 * width(again.prediction.unwrap().after);
    approx::assert_relative_eq!(band_hrc, foretold.band_hrc, max_relative = 0.03);
    assert!(foretold.narrower_hrc > 0.1);
}

#[test]
fn what_teaches_nothing_is_told_with_its_reason() {
    let route = plate("1095", 5.0, &[200.0]);
    let at = |place: &str| LoggedReading {
        place: place.to_owned(),
        ..reading(50.0, Step::Quench)
    };
    let on = |value: f64, scale: Scale| LoggedReading {
        scale,
        place: "core".to_owned(),
        ..reading(value, Step::Quench)
    };
    let mut run = logged(
        &route,
        vec![
            at("surface, left"),
            at("centre, cut through"),
            on(12.0, Scale::Hrc),
            on(510.0, Scale::Hv),
            reading(50.0, Step::Cold),
            at(""),
        ],
    );
    run.fracture_grain_astm = Some(8.0);
    run.austenite_vol_percent = Some(101.0);
    let mut cold = logged(&route, vec![reading(20.0, Step::Quench)]);
    cold.route.soak.temperature_c = 650.0;
    let found = estimated(LearnRun::new(&[run, cold], None, Some(&route)).unwrap());
    let told: Vec<(usize, String, String)> = found
        .not_used
        .iter()
        .map(|not_used| {
            (
                not_used.run,
                not_used.unused.field(),
                not_used.reason.to_string(),
            )
        })
        .collect();
    let expected = [
        (0, "readings[0]", "surface, left"),
        (0, "readings[2]", "12 HRC has no number"),
        (0, "readings[4]", "no such step"),
        (0, "readings[5]", "where it was read is not told"),
        (0, "austenite_vol_percent", "101 vol %"),
        (0, "fracture_grain_astm", "fracture grain"),
        (
            1,
            "readings[0]",
            "the models do not tell what comes of this route",
        ),
    ];
    assert_eq!(told.len(), expected.len(), "{told:?}");
    for (told, (run, field, words)) in told.iter().zip(expected) {
        assert_eq!((told.0, told.1.as_str()), (run, field));
        assert!(told.2.contains(words), "{told:?}");
    }
    assert_eq!(found.not_used[1].unused.words(), "reading 3");
    assert_eq!(found.compared.len(), 1);
    assert_eq!(found.compared[0].readings, 2);
}

/// The surface of a piece that hardens through with room to spare is as hard as its centre.
#[test]
fn where_a_piece_hardens_alike_it_does_not_matter_where_it_was_read() {
    let mut route = plate("52100", 3.0, &[]);
    route.quench.medium = MediumChoice::Named("water20".to_owned());
    let mut at_surface = reading(65.0, Step::Quench);
    at_surface.place = "Surface".to_owned();
    let found = estimated(LearnRun::new(&[logged(&route, vec![at_surface])], None, None).unwrap());
    assert!(found.not_used.is_empty(), "{:?}", found.not_used);
}

fn shop() -> Shop {
    let furnace = |name: &str, band_k: f64| Furnace {
        name: name.to_owned(),
        least_c: 100.0,
        most_c: 1100.0,
        band_k,
        offset_k: 4.0,
        thermocouple: Thermocouple::Checked,
        holds: true,
    };
    Shop {
        furnaces: vec![furnace("kiln", 6.0), furnace("old kiln", 15.0)],
        quenchants: vec![Quenchant {
            medium: MediumChoice::Named("oil_fast".to_owned()),
            agitation: 1.0,
        }],
        tester: Some(Tester { error_hrc: 3.0 }),
        ..Shop::default()
    }
}

#[test]
fn a_shop_tells_its_furnaces_and_its_tester() {
    let mut route = plate("52100", 3.0, &[180.0]);
    route.furnace_offset_k = 4.0;
    let in_furnace = |band_k: f64| {
        let mut run = logged(&route, vec![reading(64.0, Step::Quench)]);
        run.route.furnace_band_k = band_k;
        run
    };
    let runs = [in_furnace(6.0), in_furnace(15.0), in_furnace(40.0)];
    let found = estimated(LearnRun::new(&runs, Some(&shop()), None).unwrap());
    let named: Vec<&str> = found
        .unknowns
        .iter()
        .filter(|learnt| learnt.kind == UnknownKind::FurnaceOffset)
        .map(|learnt| learnt.of.as_str())
        .collect();
    // That of the last run first: it is the one that is asked about.
    assert_eq!(
        named,
        [
            "the furnace",
            "the furnace “kiln”",
            "the furnace “old kiln”"
        ]
    );
    assert!(
        found.unknowns.iter().all(|learnt| {
            learnt.kind != UnknownKind::FurnaceOffset || learnt.before.mean == 4.0
        })
    );
    let tester = of_kind(&found, UnknownKind::Tester);
    approx::assert_relative_eq!(
        tester.before.most,
        3.0 * 0.75_f64.sqrt(),
        max_relative = 0.02
    );
    let broken = Shop {
        tester: Some(Tester { error_hrc: -1.0 }),
        ..shop()
    };
    assert!(LearnRun::new(&runs, Some(&broken), None).is_err());
    assert!(matches!(
        LearnRun::new(&[], None, None),
        Err(AdviseError::NoRun)
    ));
}

/// A heat of which only the grade is known may be lean or rich, which adds to what the model leaves
/// open.
#[test]
fn a_certificate_narrows_what_is_open_about_a_heat() {
    let certified = plate("1095", 4.0, &[]);
    let by_grade = Route {
        grade: Some("1095".to_owned()),
        ..certified.clone()
    };
    let ln_sd = |route: &Route| {
        let found = estimated(LearnRun::new(&[], None, Some(route)).unwrap());
        of_kind(&found, UnknownKind::Hardenability).before.most.ln() / NINE_IN_TEN
    };
    let ln_margin = |heat: Composition| {
        let of_heat = Route {
            composition: heat,
            ..certified.clone()
        };
        let trial = trial(&of_heat, &Deviation::default()).unwrap();
        trial.margin_factor.unwrap().ln()
    };
    let [lean, rich] = find("1095").unwrap().lean_and_rich().map(ln_margin);
    let of_heats = 0.5 * (rich - lean) / NINE_IN_TEN;
    assert!(of_heats > 0.05);
    let together = ln_sd(&certified).hypot(of_heats);
    approx::assert_relative_eq!(ln_sd(&by_grade), together, max_relative = 1e-6);
}

/// The whole offset of a furnace is learnt: what was planned with another offset is set right by
/// the difference.
#[test]
fn a_correction_is_off_until_it_is_switched_on() {
    let route = plate("52100", 3.0, &[180.0]);
    let run = logged(&route, vec![reading(62.0, Step::Quench)]);
    let mut owned = shop();
    owned.furnaces.truncate(1);
    owned.furnaces[0].offset_k = 0.0;
    owned.furnaces[0].band_k = route.furnace_band_k;
    owned.furnaces[0].thermocouple = route.thermocouple;
    let found = estimated(LearnRun::new(&[run], Some(&owned), Some(&route)).unwrap());
    let mut correction = found.correction();
    for (learnt, corrected) in found.unknowns.iter().zip(&correction.learnt) {
        let half =
            (!learnt.kind.is_factor()).then_some(0.5 * (learnt.after.most - learnt.after.least));
        assert_eq!(corrected.half_band, half);
        assert!(corrected.entangled_with.is_empty());
    }
    assert!(correction.check().is_ok());
    // What is not told apart goes along, to either side.
    let place = |kind| {
        let mut all = found.unknowns.iter();
        all.position(|learnt| learnt.kind == kind).unwrap()
    };
    let [offset, hardness] = [UnknownKind::FurnaceOffset, UnknownKind::QuenchedHardness];
    let unknowns = [place(offset), place(hardness)];
    let mut not_apart = found.clone();
    not_apart.entangled.push(Entangled {
        unknowns,
        correlation: -0.8,
        words: String::new(),
    });
    let not_apart = not_apart.correction();
    let with = unknowns.map(|place| not_apart.learnt[place].entangled_with.clone());
    assert_eq!(with, [vec![hardness], vec![offset]]);
    assert_eq!(
        correction.taught(&route).unwrap_or_default().off,
        Deviation::default()
    );
    correction.is_on = true;
    let off = correction.taught(&route).unwrap_or_default().off;
    let learnt = of_kind(&found, UnknownKind::QuenchedHardness);
    assert_eq!(off.quenched_hrc, learnt.after.mean);
    assert!(off.quenched_hrc < -0.5);
    // Of what next to nothing was learnt, nothing is shifted.
    assert!(of_kind(&found, UnknownKind::FurnaceOffset).narrower_part < 0.05);
    assert_eq!(off.soak_k, 0.0);
    for learnt in &mut correction.learnt {
        if learnt.kind == UnknownKind::FurnaceOffset {
            (learnt.value, learnt.left_part) = (12.0, 0.5);
        }
    }
    let off = correction.taught(&route).unwrap_or_default().off;
    assert_eq!(off.soak_k, 12.0);
    let mut surveyed = route.clone();
    surveyed.furnace_offset_k = 5.0;
    let less = correction.taught(&surveyed).unwrap_or_default().off;
    approx::assert_abs_diff_eq!(less.soak_k, off.soak_k - 5.0, epsilon = 1e-12);
    // Another heat in another quenchant is not told of.
    let mut other = plate("1095", 3.0, &[]);
    other.quench.medium = MediumChoice::Named("water20".to_owned());
    let of_other = correction.taught(&other).unwrap_or_default().off;
    assert_eq!(
        (of_other.quenched_hrc, of_other.heat_transfer_factor),
        (0.0, 1.0)
    );
    let text = serde_json::to_string(&correction).unwrap();
    assert_eq!(
        serde_json::from_str::<Correction>(&text).unwrap(),
        correction
    );
}

#[test]
fn a_worker_may_look_in_and_stop() {
    let mut route = plate("1095", 4.0, &[]);
    route.section = Section::Plate { thickness_mm: 4.0 };
    let run = logged(&route, vec![reading(60.0, Step::Quench)]);
    let mut learning = LearnRun::new(&[run], None, None).unwrap();
    let mut before = learning.progress();
    assert!(learning.so_far().is_none());
    while learning.step().unwrap() {
        let now = learning.progress();
        assert!((before..1.0).contains(&now), "{before} {now}");
        before = now;
    }
    assert_eq!(learning.progress(), 1.0);
    assert!(!learning.so_far().unwrap().next.is_empty());
    assert!(!learning.step().unwrap());
}

/// What is foretold of the next piece is what a sample comes to that counts with what was learnt, in a
/// shop that has learnt enough for most bands to have moved.
#[test]
fn a_sample_with_what_was_learnt_is_what_is_foretold() {
    let route = plate("52100", 3.0, &[180.0]);
    let run = |by: f64| {
        let readings = vec![
            reading(62.6 + by, Step::Quench),
            reading(59.4 - by, Step::Temper(1)),
        ];
        logged(&route, readings)
    };
    let runs: Vec<LoggedRun> = (0..12).map(|i| run(0.3 * f64::from(i % 3 - 1))).collect();
    let found = learn(&runs, None, Some(&route)).unwrap();
    let mut correction = found.correction();
    let tolerances = Tolerances {
        certificate_part: 0.0,
        ..Tolerances::default()
    };
    let sampled = |correction: &Correction| {
        let route = Route {
            taught: correction.taught(&route),
            ..route.clone()
        };
        spread(&route, &tolerances, 512, 1)
            .unwrap()
            .final_hrc
            .unwrap()
    };
    let before = sampled(&correction);
    assert_eq!(
        before,
        spread(&route, &tolerances, 512, 1)
            .unwrap()
            .final_hrc
            .unwrap()
    );
    correction.is_on = true;
    assert_eq!(correction.check(), Ok(()));
    let after = sampled(&correction);
    let foretold = found.prediction.unwrap().after;
    approx::assert_abs_diff_eq!(after.mean, foretold.mean, epsilon = 0.25);
    let sampled_width = after.p95 - after.p05;
    // That unknowns hang together is left out: rather too wide, never much too narrow.
    assert!(sampled_width < 0.95 * (before.p95 - before.p05));
    assert!(
        sampled_width > 0.9 * width(foretold),
        "{sampled_width} {foretold:?}"
    );
    // It is said what acts, by how much and from how many runs.
    let words = correction.words(&route, TemperatureScale::Celsius);
    assert!(
        !words.is_empty() && words.iter().all(|told| told.contains("(from 12 runs;")),
        "{words:?}"
    );
    correction.is_on = false;
    assert!(
        correction
            .words(&route, TemperatureScale::Celsius)
            .is_empty()
    );
    let wild = Correction {
        learnt: vec![Corrected {
            value: f64::NAN,
            ..found.correction().learnt[0].clone()
        }],
        ..correction
    };
    assert!(wild.check().is_err());
}

/// Temperatures and their differences are told on the scale that is asked for.
#[test]
fn what_is_learnt_is_told_on_a_scale() {
    let mut route = plate("1084", 3.0, &[180.0]);
    route.quench.medium = MediumChoice::Named("canola60".to_owned());
    let run = logged(&route, vec![reading(60.0, Step::Quench)]);
    let told = |scale| {
        let run = LearnRun::new(std::slice::from_ref(&run), Some(&shop()), Some(&route));
        let run = run.unwrap().on_scale(scale);
        let inches = scale == TemperatureScale::Fahrenheit;
        let mut run = run.in_lengths(if inches {
            LengthUnit::Inch
        } else {
            LengthUnit::Millimetre
        });
        while run.step().unwrap() {}
        let found = run.so_far().unwrap();
        let learnt = found.unknowns.into_iter().map(|one| one.words);
        let next = found.next.into_iter().map(|one| one.words);
        let words: Vec<String> = learnt.chain(next).collect();
        words.join(" ").replace('\u{a0}', " ")
    };
    let [celsius, fahrenheit] = [TemperatureScale::Celsius, TemperatureScale::Fahrenheit].map(told);
    assert!(
        celsius.contains(" °C") && !celsius.contains("°F"),
        "{celsius}"
    );
    // A minus sign as printed, and nothing in kelvin.
    assert!(
        celsius.contains('\u{2212}') && !celsius.contains(" -"),
        "{celsius}"
    );
    assert!(!celsius.contains(" K "), "{celsius}");
    assert!(celsius.contains("A coupon of 4.5 mm"), "{celsius}");
    assert!(fahrenheit.contains("A coupon of 0.177 in"), "{fahrenheit}");
    assert!(
        fahrenheit.contains("°F") && !fahrenheit.contains("°C"),
        "{fahrenheit}"
    );
    assert!(!fahrenheit.contains(" K"), "{fahrenheit}");
}
