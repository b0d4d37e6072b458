//! Laws that every quench obeys, whatever the numbers, and agreement between ways of computing.
#![cfg(not(target_arch = "wasm32"))]

use proptest::prelude::*;
use recalesce::heat::{
    Cooled, Grind, HeatError, Material, Medium, MediumChoice, OwnMedium, Piece, Place, Quenching,
    Section, Shape, cool, media, medium, nickel_ball_s, probe,
};
use recalesce::units::NumberOutside;

fn quench(section: Section, medium: &Medium) -> Quenching<'_> {
    Quenching {
        section,
        medium,
        agitation: 1.0,
        start_c: 800.0,
        air_delay_s: 0.0,
        end_c: 20.0,
        then: &[],
        martensite_start_c: None,
    }
}

fn plate(thickness_mm: f64) -> Section {
    Section::Plate { thickness_mm }
}

fn listed(name: &str) -> &'static Medium {
    medium(name).unwrap_or_else(|| panic!("{name} is in the list"))
}

fn any_section() -> impl Strategy<Value = Section> {
    prop_oneof![
        (0.2..200.0_f64).prop_map(plate),
        (0.2..300.0_f64).prop_map(|diameter_mm| Section::Round { diameter_mm }),
        (0.2..200.0_f64).prop_map(|side_mm| Section::Square { side_mm }),
        (0.1..3.0_f64, 0.0..10.0_f64, 5.0..150.0_f64, any::<bool>()).prop_map(
            |(edge_mm, more, height_mm, is_convex)| {
                Section::Blade {
                    edge_mm,
                    spine_mm: (edge_mm + more).max(0.5),
                    height_mm,
                    grind: if is_convex {
                        Grind::Convex
                    } else {
                        Grind::Straight
                    },
                }
            }
        ),
    ]
}

/// Curves of up to eight points, as wild as the checks of a user's own curve allow.
fn any_own() -> impl Strategy<Value = OwnMedium> {
    (
        prop::collection::vec((-150.0..1300.0_f64, 0.0..12.2_f64), 2..8),
        -200.0..550.0_f64,
        any::<bool>(),
    )
        .prop_map(|(mut points, bath_c, radiation)| {
            points.sort_by(|a, b| a.0.total_cmp(&b.0));
            points.dedup_by(|a, b| a.0 - b.0 < 1.0);
            if let [only] = points[..] {
                points.push((only.0 + 10.0, only.1));
            }
            OwnMedium {
                h_w_m2k: points.iter().map(|(t, ln_h)| [*t, ln_h.exp()]).collect(),
                bath_c,
                radiation,
                ..OwnMedium::default()
            }
        })
}

fn assert_sound(cooled: &Cooled) {
    assert!(cooled.slowest < cooled.curves.len());
    for curve in &cooled.curves {
        assert_eq!(curve.time_s.len(), curve.temperature_c.len());
        assert_eq!(curve.time_s.len(), curve.rate_k_per_s.len());
        assert!(curve.time_s.len() > 1);
        let all = curve
            .time_s
            .iter()
            .chain(&curve.temperature_c)
            .chain(&curve.rate_k_per_s);
        assert!(all.clone().all(|v| v.is_finite()));
        assert!(curve.time_s.windows(2).all(|pair| pair[0] < pair[1]));
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn every_quench_ends_with_finite_numbers(
        section in any_section(),
        own in any_own(),
        agitation in 0.05..20.0_f64,
        start_c in 100.0..1300.0_f64,
        air_delay_s in prop_oneof![Just(0.0), 0.0..3600.0_f64],
        end_c in -200.0..600.0_f64,
        martensite_start_c in prop::option::of(-200.0..700.0_f64),
    ) {
        let medium = own.resolve().expect("a valid curve");
        match cool(&Quenching {
            section, medium: &medium, agitation, start_c, air_delay_s, end_c, then: &[], martensite_start_c,
        }) {
            Ok(cooled) => {
                assert_sound(&cooled);
                let least = medium.bath_c.min(20.0);
                // Profiles are polynomials, which overshoot where the surface is chilled all at once, the
                // fewer the nodes the more.
                let over = match section {
                    // With three nodes by a tenth, and near an end, which is chilled from two sides, by more.
                    Section::Blade { .. } => 0.2 * (start_c - least),
                    // At the corner of a thick bar more than a hundredth has been seen.
                    Section::Square { .. } => 0.02 * (start_c - least),
                    _ => 0.004 * (start_c - least),
                };
                for curve in &cooled.curves {
                    for t in &curve.temperature_c {
                        prop_assert!((least - over..=start_c + over).contains(t), "{} °C", t);
                    }
                }
            }
            Err(HeatError::Number(NumberOutside { field: "end of quench", .. })) => {
                prop_assert!(end_c > start_c - 5.0);
            }
            Err(HeatError::BathTooHot { .. }) => prop_assert!(medium.bath_c + 5.0 >= start_c),
            Err(other) => prop_assert!(false, "{}", other),
        }
    }
}

/// Heat that goes through the surface of a plate of 800 °C that stays in a bath until its temperature is even,
/// and heat that it then has lost, J/m².
fn through_and_lost(
    medium: &Medium,
    thickness_mm: f64,
    martensite_start_c: Option<f64>,
) -> [f64; 2] {
    let cooled = cool(&Quenching {
        end_c: medium.bath_c,
        martensite_start_c,
        ..quench(plate(thickness_mm), medium)
    })
    .expect("a quench");
    let surface = cooled.at(Place::Surface).expect("a surface");
    let flux = |t: f64| medium.h_w_m2k.at(t) * (t - medium.bath_c);
    let mut through = 0.0;
    for i in 1..surface.time_s.len() {
        let step = surface.time_s[i] - surface.time_s[i - 1];
        let [a, b] = [i - 1, i].map(|i| surface.temperature_c[i]);
        let [rate_a, rate_b] = [i - 1, i].map(|i| surface.rate_k_per_s[i]);
        // Near the bath the chord is too warm by a part of what is left: the cubic with the rates is not.
        let middle = 0.5 * (a + b) + 0.125 * step * (rate_b - rate_a);
        through += step / 6.0 * (flux(a) + 4.0 * flux(middle) + flux(b));
    }
    let material =
        martensite_start_c.map_or_else(Material::austenite, Material::austenite_to_martensite);
    // A parabola from the centre to the surface.
    let end = |place| *cooled.at(place).unwrap().temperature_c.last().unwrap();
    let mean = (2.0 * end(Place::Centre) + end(Place::Surface)) / 3.0;
    let lost = (material.heat_j_m3(800.0) - material.heat_j_m3(mean)) * 0.5e-3 * thickness_mm;
    [through, lost]
}

/// Salt not far below the start of martensite, where heat comes out slowly for long, and steps are drawn
/// that take as long.
#[test]
fn heat_lost_just_below_the_start_of_martensite_is_heat_through_the_surface() {
    let salt = medium("salt200_agit_wet").unwrap();
    for (thickness_mm, start_c) in [(1.0, 217.86), (8.13, 217.86), (1.0, 220.885)] {
        let [through, lost] = through_and_lost(salt, thickness_mm, Some(start_c));
        assert!(
            (through / lost - 1.0).abs() < 1e-3,
            "{through} against {lost}"
        );
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(100))]

    #[test]
    fn a_slower_medium_and_a_thicker_piece_never_cool_faster(
        index in 0..20_usize,
        thickness in 0.5..60.0_f64,
        slower in 0.3..0.97_f64,
        shape in 0..4_usize,
    ) {
        let medium = &media()[index];
        // A blade from 0.7 to 10 mm at the spine, thinner by a factor at the edge, of one height:
        // steeper flanks are outside its model.
        let thickness = if shape == 3 { thickness.clamp(0.7, 10.0) } else { thickness };
        let section = |size: f64| match shape {
            0 => plate(size),
            1 => Section::Round { diameter_mm: size },
            2 => Section::Square { side_mm: size },
            _ => Section::Blade {
                edge_mm: 0.2 * size,
                spine_mm: size.min(20.0),
                height_mm: 80.0,
                grind: Grind::Straight,
            },
        };
        let slower = if shape == 3 { slower.max(0.5) } else { slower };
        let basis = cool(&quench(section(thickness), medium)).expect("a quench");
        let weaker = cool(&Quenching {
            agitation: slower,
            ..quench(section(thickness), medium)
        }).expect("a quench");
        let thicker = cool(&quench(section(thickness / slower), medium)).expect("a quench");
        let places: &[Place] = if shape == 3 {
            &[Place::Edge, Place::Quarter, Place::Middle, Place::ThreeQuarter, Place::Spine]
        } else {
            &[Place::Centre]
        };
        for (place, t) in places
            .iter()
            .flat_map(|place| [700.0, 540.0, 400.0, 250.0].map(|t| (*place, t)))
        {
            let time = |cooled: &Cooled| cooled.at(place).and_then(|c| c.time_to_c(t));
            let Some(before) = time(&basis) else { continue };
            for after in [time(&weaker), time(&thicker)].into_iter().flatten() {
                prop_assert!(
                    after >= before * 0.999,
                    "{:?} {}: {} s, then {} s", place, t, before, after
                );
            }
        }
    }

    #[test]
    fn heat_lost_is_heat_through_the_surface(
        index in 0..20_usize,
        thickness_mm in 1.0..40.0_f64,
        martensite_start_c in prop::option::of(150.0..350.0_f64),
    ) {
        let [through, lost] = through_and_lost(&media()[index], thickness_mm, martensite_start_c);
        prop_assert!((through / lost - 1.0).abs() < 1e-3, "{} against {}", through, lost);
    }
}

#[test]
fn media_stand_in_order_of_speed() {
    let times: Vec<f64> = media()
        .iter()
        .map(|medium| {
            let cooled = cool(&quench(plate(3.0), medium)).unwrap();
            cooled.slowest().unwrap().time_to_c(540.0).unwrap()
        })
        .collect();
    assert!(times.windows(2).all(|pair| pair[0] < pair[1]), "{times:?}");
}

/// Seconds from entry at 800 °C to 540 °C at the centre of plates of 1.5, 3, 6 and 12 mm, as an
/// earlier solver of this project (first order in time, 16 cells) computed them.
#[test]
fn plates_agree_with_the_earlier_solver() {
    for (name, seconds) in [
        ("brine10", [0.21, 0.43, 1.00, 2.98]),
        ("water20", [0.41, 0.79, 1.50, 3.65]),
        ("water60", [3.75, 7.58, 15.4, 31.8]),
        ("polymer15", [0.49, 1.02, 2.22, 5.47]),
        ("oil_fast", [0.64, 1.30, 2.69, 6.19]),
        ("oil_medfast", [0.76, 1.51, 3.11, 7.18]),
        ("canola60", [0.72, 1.51, 3.37, 8.22]),
        ("oil_marq150", [1.33, 2.67, 5.36, 11.1]),
        ("oil_slow", [1.50, 3.03, 6.16, 12.8]),
        ("ref_fluid", [2.94, 5.93, 12.0, 24.2]),
        ("salt200_agit_wet", [1.09, 2.26, 4.89, 11.3]),
        ("N2_6bar", [3.9, 7.9, 16.1, 33.5]),
        ("air_still", [22.8, 45.7, 91.9, 186.0]),
    ] {
        for (thickness, expected) in [1.5, 3.0, 6.0, 12.0].into_iter().zip(seconds) {
            let cooled = cool(&quench(plate(thickness), listed(name))).unwrap();
            let got = cooled.slowest().unwrap().time_to_c(540.0).unwrap();
            // The polymer differs most, 3.8 % at 6 mm: its curve between the given points is not
            // the same.
            let tolerance = if name == "polymer15" { 0.04 } else { 0.025 };
            approx::assert_relative_eq!(got, expected, max_relative = tolerance);
        }
    }
}

/// Figures of the probe and ball that the earlier solver gave for the same curves.
#[test]
fn probe_figures_agree_with_the_earlier_solver() {
    for (name, max_rate, at_c, at_300, to_600, to_400, ball) in [
        ("brine10", 249.1, 668.6, 100.2, 1.7, 2.7, 1.9),
        ("water20", 209.0, 641.7, 88.0, 2.5, 3.6, 3.6),
        ("oil_fast", 105.4, 621.8, 11.2, 3.6, 6.7, 8.0),
        ("oil_medium", 75.2, 618.7, 9.2, 5.1, 9.7, 12.9),
        ("oil_slow", 51.5, 566.7, 7.6, 7.4, 13.1, 18.1),
        ("ref_fluid", 51.4, 509.0, 6.9, 12.9, 20.0, 28.2),
        ("plate_Al_foil", 22.3, 805.8, 9.1, 13.1, 26.5, 36.6),
    ] {
        let figures = probe(listed(name)).unwrap();
        approx::assert_relative_eq!(figures.max_rate_k_per_s, max_rate, max_relative = 0.03);
        approx::assert_abs_diff_eq!(figures.max_rate_at_c, at_c, epsilon = 8.0);
        let rate = figures.rate_at_300c_k_per_s.unwrap();
        approx::assert_relative_eq!(rate, at_300, max_relative = 0.03);
        approx::assert_abs_diff_eq!(figures.time_to_600c_s.unwrap(), to_600, epsilon = 0.06);
        approx::assert_abs_diff_eq!(figures.time_to_400c_s.unwrap(), to_400, epsilon = 0.1);
        let seconds = nickel_ball_s(listed(name)).unwrap().unwrap();
        println!("{name}: ball {seconds:.2} s, then {ball} s");
    }
}

#[test]
fn a_tall_blade_of_even_thickness_is_a_plate() {
    for name in ["water20", "oil_fast", "oil_slow", "plate_Al_foil"] {
        let blade = Section::Blade {
            edge_mm: 4.0,
            spine_mm: 4.0,
            height_mm: 150.0,
            grind: Grind::Straight,
        };
        let blade = cool(&quench(blade, listed(name))).unwrap();
        let plate = cool(&quench(plate(4.0), listed(name))).unwrap();
        for t in [700.0, 540.0, 300.0] {
            approx::assert_relative_eq!(
                blade.at(Place::Middle).unwrap().time_to_c(t).unwrap(),
                plate.at(Place::Centre).unwrap().time_to_c(t).unwrap(),
                max_relative = 0.01
            );
        }
    }
}

/// By linear finite elements in the true shape and backward differentiation, carried on to the limit of
/// fine meshes: `benches/conduction_comparison.py`. Times at which the core of the spine and the edge pass
/// 700, 540, 400, 300 and 200 °C from 800 °C, s; within 0.4 %, 0.6 % where it is tall.
#[test]
fn blades_cool_as_in_their_true_shape() {
    let cases = [
        (
            ([0.5, 4.0, 30.0], "water20", 0.004),
            [0.4267, 0.6897, 0.9164, 1.145, 1.545],
            [0.05005, 0.1116, 0.1434, 0.1650, 0.2114],
        ),
        (
            ([0.5, 4.0, 30.0], "oil_fast", 0.004),
            [0.5604, 1.158, 1.925, 3.796, 10.24],
            [0.06603, 0.1845, 0.3001, 0.6934, 2.572],
        ),
        (
            ([1.0, 6.0, 50.0], "water20", 0.006),
            [0.6939, 1.094, 1.496, 1.920, 2.678],
            [0.08114, 0.1811, 0.2315, 0.2701, 0.3589],
        ),
        (
            ([3.0, 4.0, 40.0], "water20", 0.004),
            [0.4458, 0.7219, 0.9708, 1.227, 1.686],
            [0.1660, 0.3552, 0.4454, 0.5352, 0.8023],
        ),
    ];
    for (([edge_mm, spine_mm, height_mm], name, within), core_s, edge_s) in cases {
        let blade = Section::Blade {
            edge_mm,
            spine_mm,
            height_mm,
            grind: Grind::Straight,
        };
        let cooled = cool(&quench(blade, listed(name))).unwrap();
        for (place, reference_s) in [(Place::Spine, core_s), (Place::Edge, edge_s)] {
            let curve = cooled.at(place).unwrap();
            for (at_c, expected_s) in [700.0, 540.0, 400.0, 300.0, 200.0]
                .into_iter()
                .zip(reference_s)
            {
                let apart = curve.time_to_c(at_c).unwrap() / expected_s - 1.0;
                assert!(
                    apart.abs() < within,
                    "{blade:?} {name} {place:?} {at_c}: {apart}"
                );
            }
        }
    }
}

#[test]
fn the_error_falls_with_the_square_of_the_spacing() {
    let at = |intervals| {
        let piece = Piece {
            intervals,
            tolerance_k: 1e-3,
            ..Piece::new(Shape::Cylinder, 10e-3, Material::constant(25.0, 4.5e6))
        };
        let bath = OwnMedium {
            h_w_m2k: vec![[0.0, 5000.0], [1000.0, 5000.0]],
            bath_c: 50.0,
            ..OwnMedium::default()
        };
        let bath = bath.resolve().unwrap();
        let curves = piece.cool(&bath, 1.0, 850.0, 0.0, 4.0, &[Place::Centre]);
        *curves[0].temperature_c.last().unwrap()
    };
    let [coarse, middle, fine] = [8, 16, 32].map(at);
    let order = ((coarse - middle) / (middle - fine)).log2();
    approx::assert_abs_diff_eq!(order, 2.0, epsilon = 0.15);
}

#[test]
fn air_bath_and_air_follow_each_other() {
    let hot = listed("oil_marq150");
    let cooled = cool(&Quenching {
        air_delay_s: 3.0,
        ..quench(plate(3.0), hot)
    })
    .unwrap();
    assert_sound(&cooled);
    assert_eq!(cooled.bath_entry_s, 3.0);
    let exit = cooled.bath_exit_s.expect("leaves the hot oil");
    let centre = cooled.slowest().unwrap();
    // 28 K/s over the thickness in mm is the rule for air at 800 °C.
    approx::assert_abs_diff_eq!(centre.temperature_at_s(3.0).unwrap(), 772.0, epsilon = 4.0);
    approx::assert_abs_diff_eq!(centre.temperature_at_s(exit).unwrap(), 155.0, epsilon = 0.5);
    approx::assert_abs_diff_eq!(*centre.temperature_c.last().unwrap(), 21.0, epsilon = 0.1);
    // An end above the bath is landed on.
    let warm = cool(&Quenching {
        end_c: 320.0,
        ..quench(plate(12.0), hot)
    })
    .unwrap();
    let last = *warm.slowest().unwrap().temperature_c.last().unwrap();
    approx::assert_abs_diff_eq!(last, 320.0, epsilon = 0.1);
    assert!(warm.complete && warm.bath_exit_s.is_none());
}

#[test]
fn martensite_holds_the_cooling_up_below_its_start() {
    let oil = listed("oil_medium");
    let plain = cool(&quench(plate(6.0), oil)).unwrap();
    let with = cool(&Quenching {
        martensite_start_c: Some(215.0),
        ..quench(plate(6.0), oil)
    })
    .unwrap();
    let time = |cooled: &Cooled, t| cooled.slowest().unwrap().time_to_c(t).unwrap();
    approx::assert_relative_eq!(time(&with, 230.0), time(&plain, 230.0), max_relative = 0.01);
    assert!(time(&with, 120.0) > 1.1 * time(&plain, 120.0));
}

#[test]
fn what_cannot_be_computed_is_refused_in_words() {
    let oil = listed("oil_fast");
    let text = |quenching: &Quenching<'_>| cool(quenching).unwrap_err().to_string();
    assert!(text(&quench(plate(500.0), oil)).contains("thickness: 500 mm"));
    let base = quench(plate(3.0), oil);
    let start = Quenching {
        start_c: f64::NAN,
        ..base.clone()
    };
    assert!(text(&start).contains("quench from: NaN is outside 100 to 1300 °C"));
    let agitation = Quenching {
        agitation: 0.0,
        ..base
    };
    assert!(text(&agitation).contains("times the still bath"));
    let salt = Quenching {
        start_c: 150.0,
        ..quench(plate(3.0), listed("salt200_still"))
    };
    assert!(text(&salt).contains("the bath at 200\u{a0}°C does not cool"));
    assert!(MediumChoice::Named(String::new()).resolve().is_err());
}
