//! Test coupons: from the hardness of a quench of known speed back to that speed.
#![cfg(not(target_arch = "wasm32"))]

use recalesce::advise::{
    Coupon, CouponError, CouponFit, CouponNote, FactorRange, Reading, USUAL_TESTER_HRC, fit_coupon,
};
use recalesce::heat::{ListedAt, MediumChoice, Section, medium};
use recalesce::route::{Quench, Route, Step, run};
use recalesce::soak::StartingStructure;
use recalesce::steel::find;

/// A coupon of a grade, soaked as its handbook range has it, without readings.
fn coupon(designation: &str, section: Section, like: &str, bath_c: f64) -> Coupon {
    let mut route = Route::example();
    route.take_grade(find(designation).unwrap());
    Coupon {
        composition: route.composition,
        start: StartingStructure::Spheroidised,
        section,
        soak: route.soak,
        air_delay_s: 1.0,
        like: like.to_owned(),
        bath_c,
        centre_hrc: None,
        surface_hrc: None,
        tester_hrc: USUAL_TESTER_HRC,
    }
}

/// The hardness that the route computes at the centre, with the quenchant times a factor.
fn centre_hrc(coupon: &Coupon, factor: f64) -> f64 {
    centre_hrc_in(coupon, MediumChoice::Named(coupon.like.clone()), factor)
}

fn centre_hrc_in(coupon: &Coupon, medium: MediumChoice, factor: f64) -> f64 {
    let route = Route {
        composition: coupon.composition,
        start: coupon.start,
        section: coupon.section,
        soak: coupon.soak,
        cold: None,
        quench: Quench {
            medium,
            agitation: factor,
            air_delay_s: coupon.air_delay_s,
            end_c: 20.0,
            then: Vec::new(),
        },
        ..Route::example()
    };
    let outcome = run(&route).unwrap();
    let quenched = outcome.stages.iter().find(|s| s.step == Step::Quench);
    quenched.unwrap().hardness.unwrap().hrc_carried()
}

/// A bath that the quenchant cannot have elsewhere it cannot have here, and warm water is warm water.
#[test]
fn the_bath_is_one_that_the_quenchant_may_have() {
    let mut wet = coupon("1045", round(20.0), "water20", 200.0);
    wet.centre_hrc = Some(30.0);
    let error = fit_coupon(&wet).unwrap_err();
    assert!(matches!(error, CouponError::Medium(_)), "{error}");
    assert!(error.to_string().contains("10 to 60\u{a0}°C"), "{error}");
    let mut warm = coupon("1045", round(20.0), "water20", 50.0);
    let listed = MediumChoice::At(ListedAt {
        listed: "water20".to_owned(),
        bath_c: 50.0,
    });
    warm.centre_hrc = Some(centre_hrc_in(&warm, listed, 0.8));
    assert_within(&fit_coupon(&warm).unwrap(), 0.8);
}

const fn plate(thickness_mm: f64) -> Section {
    Section::Plate { thickness_mm }
}

const fn round(diameter_mm: f64) -> Section {
    Section::Round { diameter_mm }
}

fn assert_within(fit: &CouponFit, factor: f64) {
    println!(
        "{factor}: {:?}, taken {:.3}, same steel {:?}, ball {:?}",
        fit.factor, fit.taken, fit.same_steel_band_factor, fit.figures.nickel_ball_s
    );
    assert!(fit.factor.least.is_none_or(|least| least <= factor));
    assert!(fit.factor.most.is_none_or(|most| factor <= most));
}

/// Coupons between hard and soft, by steels and shapes; the hardness is the route's own.
#[test]
fn a_known_severity_comes_back() {
    for (designation, section, like, bath_c, factor) in [
        ("1095", plate(5.0), "oil_fast", 50.0, 1.6),
        ("1095", plate(3.0), "oil_medium", 50.0, 1.25),
        ("1095", round(10.0), "water40", 40.0, 1.2),
        ("1045", plate(6.0), "oil_fast", 50.0, 1.5),
        ("4140", round(60.0), "oil_medium", 50.0, 0.9),
        ("52100", round(22.0), "oil_slow", 50.0, 1.2),
    ] {
        let mut coupon = coupon(designation, section, like, bath_c);
        let hrc = centre_hrc(&coupon, factor);
        coupon.centre_hrc = Some(hrc);
        let fit = fit_coupon(&coupon).unwrap();
        print!("{designation} {section:?} {hrc:.1} HRC: ");
        assert_within(&fit, factor);
        let best = fit.factor.best.unwrap();
        approx::assert_relative_eq!(best, factor, max_relative = 0.01);
        // The curve that the route takes is the listed one times the factor.
        let listed = medium(like).unwrap().h_w_m2k.at(600.0);
        let own = fit.medium.resolve().unwrap();
        approx::assert_relative_eq!(own.h_w_m2k.at(600.0), best * listed, max_relative = 1e-9);
        assert_eq!(own.bath_c, bath_c);
        assert_eq!(own.h_band_factor, fit.h_band_factor);
        // The steel's own nose is most of the uncertainty.
        assert!(fit.same_steel_band_factor.unwrap() < fit.h_band_factor);
        assert!(
            (1.3..4.5).contains(&fit.h_band_factor),
            "{}",
            fit.h_band_factor
        );
        let [reading] = fit.readings[..] else {
            panic!("one reading")
        };
        approx::assert_abs_diff_eq!(reading.computed_hrc, hrc, epsilon = 0.3);
    }
}

/// Centre and surface together limit more than each; the factor lies between theirs.
#[test]
fn two_readings_are_cut_with_each_other() {
    let mut coupon = coupon("1095", plate(5.0), "oil_fast", 50.0);
    coupon.centre_hrc = Some(51.0);
    coupon.surface_hrc = Some(55.0);
    let fit = fit_coupon(&coupon).unwrap();
    println!("{:?}", fit.readings);
    let [centre, surface] = fit.readings[..] else {
        panic!("two readings")
    };
    let both = |of: fn(&FactorRange) -> Option<f64>| [of(&centre.alone), of(&surface.alone)];
    let [a, b] = both(|range| range.best).map(Option::unwrap);
    approx::assert_relative_eq!(
        fit.factor.best.unwrap(),
        (a * b).sqrt(),
        max_relative = 1e-9
    );
    let [a, b] = both(|range| range.most).map(Option::unwrap);
    assert_eq!(fit.factor.most, Some(a.min(b)));
    let [a, b] = both(|range| range.least).map(Option::unwrap);
    assert_eq!(fit.factor.least, Some(a.max(b)));
}

/// With a tester's scatter the true factor stays within the band, and both readings narrow it.
#[test]
fn scatter_of_the_tester_stays_within_the_band() {
    let mut coupon = coupon("1095", plate(5.0), "oil_fast", 50.0);
    let at_centre = centre_hrc(&coupon, 1.6);
    for off_hrc in [-1.5, -0.7, 0.4, 1.5] {
        coupon.centre_hrc = Some(at_centre + off_hrc);
        assert_within(&fit_coupon(&coupon).unwrap(), 1.6);
    }
    coupon.centre_hrc = Some(at_centre);
    let width = |tester_hrc: f64| {
        let fit = fit_coupon(&Coupon {
            tester_hrc,
            ..coupon.clone()
        });
        let range = fit.unwrap().factor;
        range.most.unwrap() / range.least.unwrap()
    };
    assert!(width(4.0) > width(1.0) && width(1.0) > width(0.3));
}

/// At the ceiling a coupon limits the quench from below, at the floor from above; what is taken
/// stays that of the list as far as the limit lets it.
#[test]
fn hard_and_soft_coupons_limit_one_side() {
    let mut thin = coupon("1095", plate(2.0), "oil_medium", 50.0);
    thin.centre_hrc = Some(centre_hrc(&thin, 5.0));
    thin.surface_hrc = thin.centre_hrc;
    let fit = fit_coupon(&thin).unwrap();
    let least = fit.factor.least.unwrap();
    assert_eq!((fit.factor.best, fit.factor.most), (None, None));
    assert!((0.5..5.0).contains(&least), "{least}");
    assert_eq!(fit.taken, (2.0 * least).max(1.0));
    assert_eq!(fit.same_steel_band_factor, None);
    assert!(matches!(
        fit.notes[..],
        [CouponNote::ShapeOf { .. }, CouponNote::AtLeast { .. }]
    ));

    let mut thick = coupon("1095", plate(3.0), "oil_medium", 50.0);
    thick.centre_hrc = Some(centre_hrc(&thick, 0.3) - 4.0);
    let fit = fit_coupon(&thick).unwrap();
    assert_eq!((fit.factor.least, fit.factor.best), (None, None));
    assert!((0.1..0.3).contains(&fit.factor.most.unwrap()));
    assert!(matches!(fit.notes[..], [_, CouponNote::AtMost { .. }]));
}

/// A surface far softer than its centre, as where carbon was lost.
#[test]
fn centre_and_surface_at_odds_are_told() {
    let mut coupon = coupon("1095", plate(5.0), "oil_fast", 50.0);
    let centre = centre_hrc(&coupon, 1.6);
    coupon.centre_hrc = Some(centre);
    coupon.surface_hrc = Some(centre - 8.0);
    let fit = fit_coupon(&coupon).unwrap();
    assert!(fit.notes.contains(&CouponNote::AtOdds), "{:?}", fit.notes);
    let [at_centre, at_surface] = fit.readings[..] else {
        panic!("two readings")
    };
    assert_eq!(at_centre.place, Reading::Centre);
    assert!(at_surface.alone.most.unwrap() < at_centre.alone.most.unwrap());
    // All that either allows.
    assert!(fit.factor.most.unwrap() >= at_centre.alone.most.unwrap());

    coupon.centre_hrc = Some(66.0);
    coupon.surface_hrc = Some(28.0);
    assert_eq!(fit_coupon(&coupon), Err(CouponError::AtOdds));
}

#[test]
fn readings_that_cannot_be_are_refused_with_what_can() {
    let given = |coupon: &Coupon, hrc: f64| {
        let coupon = Coupon {
            centre_hrc: Some(hrc),
            ..coupon.clone()
        };
        fit_coupon(&coupon).unwrap_err()
    };
    let mild = coupon("1045", plate(6.0), "oil_fast", 50.0);
    let error = given(&mild, 66.0);
    assert!(
        matches!(error, CouponError::TooHard { most_hrc, .. } if (60.0..65.5).contains(&most_hrc))
    );
    assert!(
        error
            .to_string()
            .starts_with("66.0\u{a0}HRC at the centre is harder than"),
        "{error}"
    );
    assert!(matches!(given(&mild, 5.0), CouponError::TooSoft { .. }));
    // Even a tenth of the heat transfer hardens it through.
    let deep = coupon("52100", plate(1.5), "brine10", 25.0);
    let error = given(&deep, 63.0);
    assert!(matches!(error, CouponError::TellsNothing { .. }), "{error}");
    for (wrong, part) in [
        (
            Coupon {
                centre_hrc: None,
                ..mild.clone()
            },
            "no hardness is given",
        ),
        (
            Coupon {
                centre_hrc: Some(f64::NAN),
                ..mild.clone()
            },
            "hardness of the centre: NaN",
        ),
        (
            Coupon {
                surface_hrc: Some(71.0),
                ..mild.clone()
            },
            "surface: 71 is outside 0 to 70 HRC",
        ),
        (
            Coupon {
                section: Section::Square { side_mm: 5.0 },
                ..mild.clone()
            },
            "plate or a round",
        ),
        (
            Coupon {
                like: "mystery".to_owned(),
                centre_hrc: Some(50.0),
                ..mild.clone()
            },
            "no quenchant",
        ),
        (
            Coupon {
                bath_c: 400.0,
                centre_hrc: Some(50.0),
                ..mild.clone()
            },
            "bath: 400 is outside",
        ),
        (
            Coupon {
                tester_hrc: 0.0,
                centre_hrc: Some(50.0),
                ..mild.clone()
            },
            "0.2 to 5 HRC",
        ),
        (
            Coupon {
                section: plate(-1.0),
                centre_hrc: Some(50.0),
                ..mild.clone()
            },
            "-1 mm",
        ),
    ] {
        let error = fit_coupon(&wrong).unwrap_err().to_string();
        let error = error.replace('\u{a0}', " ");
        assert!(error.contains(part), "{error}");
    }
}
