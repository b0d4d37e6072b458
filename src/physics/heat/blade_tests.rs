//! The mesh of a blade: sums, heat and times.

use super::*;
use crate::heat::conduct::Conduction;
use crate::heat::trace::{Trace, Watch};
use crate::heat::until::{Reached, Until};
use crate::heat::{LaterBath, Leave, Material, Medium, Place, Section, medium};

#[test]
fn volumes_and_faces_add_up() {
    let slope: f64 = 1.75 / 30.0;
    // A convex flank begins twice as steep as a straight one and ends level.
    for (grind, mean, flank) in [
        (Grind::Straight, 2.25, 30f64.hypot(1.75)),
        (
            Grind::Convex,
            0.5 + 3.5 * 2.0 / 3.0,
            30.0 * (1.0 + slope * slope * 2.0 / 3.0),
        ),
    ] {
        for through in [&QUARTIC, &PARABOLA] {
            let Blade {
                mesh, heights_m, ..
            } = Blade::in_elements([0.5, 4.0, 30.0], grind, ELEMENTS, through);
            assert_eq!(mesh.len(), heights_m.len() * through.squares.len());
            assert!(heights_m.is_sorted() && heights_m.last() == Some(&30.0));
            let volume: f64 = mesh.volume.iter().sum();
            approx::assert_relative_eq!(volume, 0.5 * 30.0 * mean, max_relative = 1e-12);
            let area: f64 = mesh.faces.iter().map(|face| face.1).sum();
            approx::assert_relative_eq!(area, flank + 0.25 + 2.0, max_relative = 1e-4);
        }
    }
}

/// In a field that is level in sum, what flows into a node inside flows out of it, however the layers
/// lean.
#[test]
fn a_harmonic_field_leaves_no_heat_inside() {
    let height_m = 30.0;
    for through in [&QUARTIC, &PARABOLA] {
        let Blade {
            mesh, heights_m, ..
        } = Blade::in_elements([0.5, 4.0, height_m], Grind::Straight, ELEMENTS, through);
        let layers = through.squares.len();
        let field = |node: usize| {
            let x = heights_m[node / layers];
            let half = 0.5 * (0.5 + 3.5 * x / height_m);
            x * x - half * half * through.squares[node % layers]
        };
        let mut left = vec![0.0; mesh.len()];
        let mut moved = vec![0.0; mesh.len()];
        for link in &mesh.links {
            let flow = link.conductance * (field(link.from) - field(link.to));
            for (node, flow) in [(link.from, -flow), (link.to, flow)] {
                left[node] += flow;
                moved[node] += flow.abs();
            }
        }
        let faces: Vec<usize> = mesh.faces.iter().map(|face| face.0).collect();
        for node in (0..mesh.len()).filter(|node| !faces.contains(node)) {
            assert!(
                left[node].abs() < 1e-10 * moved[node],
                "{node}: {}",
                left[node]
            );
        }
    }
}

/// Quarter, middle, three quarters and core of a blade, and when each passes 700 to 200 °C, s.
fn times_s(
    blade: (f64, f64, f64, Grind),
    elements: usize,
    through: &'static Through,
    medium: &Medium,
) -> Vec<f64> {
    let (edge_mm, spine_mm, height_mm, grind) = blade;
    let sizes_m = [edge_mm, spine_mm, height_mm].map(|mm| 1e-3 * mm);
    let [_, spine_m, height_m] = sizes_m;
    let Blade {
        mesh, heights_m, ..
    } = Blade::in_elements(sizes_m, grind, elements, through);
    let layers = through.squares.len();
    let core = (height_m - 0.5 * spine_m) / height_m;
    let watches = [0.25, 0.5, 0.75, core].map(|part| {
        Watch::between(Place::Within(part), part * height_m, &heights_m, |column| {
            column * layers
        })
    });
    let material = Material::austenite();
    let mut trace = Trace::new(watches.into_iter().collect());
    let mut piece = Conduction::<NARROW_BAND>::new(&mesh, &material, 800.0, 0.1);
    let until = Until {
        reached: Reached::Cooled(150.0),
        time_s: 1e4,
    };
    piece.stay_in(medium, 1.0, until, |piece| trace.record(piece));
    let curves = trace.into_curves();
    let times = curves
        .iter()
        .flat_map(|curve| [700.0, 540.0, 400.0, 300.0, 200.0].map(|c| curve.time_to_c(c).unwrap()));
    times.collect()
}

/// Just inside its limit, and a bath behind that is too fast for it.
#[test]
fn a_parabola_will_do_where_flanks_take_heat_slowly() {
    for (blade, name, stir) in [
        ((0.5, 4.0, 30.0, Grind::Straight), "oil_medium", 1.28),
        ((0.3, 2.5, 50.0, Grind::Convex), "oil_fast", 1.36),
        ((0.5, 6.0, 45.0, Grind::Straight), "plate_Al_clamped", 1.75),
    ] {
        let (edge_mm, spine_mm, height_mm, grind) = blade;
        let bath = medium(name).unwrap();
        let gentle = Quenching {
            section: Section::Blade {
                edge_mm,
                spine_mm,
                height_mm,
                grind,
            },
            medium: bath,
            agitation: stir,
            start_c: 800.0,
            air_delay_s: 1.0,
            end_c: 100.0,
            then: &[],
            martensite_start_c: None,
        };
        let layers = |quenching: &Quenching<'_>| {
            let sizes_m = [edge_mm, spine_mm, height_mm].map(|mm| 1e-3 * mm);
            Blade::new(sizes_m, grind, Asked::by(quenching)).layers()
        };
        assert_eq!(layers(&gentle), 2, "{name}");
        let water = [LaterBath {
            medium: medium("water20").unwrap().clone(),
            agitation: 1.0,
            leave: Leave::AtC(200.0),
        }];
        let then_water = Quenching {
            then: &water,
            ..gentle.clone()
        };
        assert_eq!(layers(&then_water), 3);
        let stirred = Medium {
            h_w_m2k: bath.h_w_m2k.times(stir),
            ..bath.clone()
        };
        let [two, three] =
            [&PARABOLA, &QUARTIC].map(|through| times_s(blade, ELEMENTS, through, &stirred));
        for (number, (two, three)) in two.iter().zip(three).enumerate() {
            let apart = (two / three - 1.0).abs();
            // The first of each place is that to 700 °C.
            let within = if number % 5 == 0 { 2e-2 } else { 1e-2 };
            assert!(apart < within, "{blade:?} {name} {number}: {apart}");
        }
    }
}

#[test]
fn places_cool_as_with_many_more_elements() {
    for blade in [
        (0.5, 4.0, 30.0, Grind::Straight),
        (0.3, 2.5, 50.0, Grind::Convex),
        (1.0, 6.0, 50.0, Grind::Straight),
        (3.0, 4.0, 40.0, Grind::Straight),
    ] {
        for (name, elements, within) in [
            ("water20", ELEMENTS_FOR_A_FRONT, 6e-3),
            ("water60", ELEMENTS_FOR_A_FRONT, 0.075),
            ("brine10", ELEMENTS, 8e-3),
            ("oil_fast", ELEMENTS, 6e-3),
        ] {
            let [usual, fine] =
                [elements, 60].map(|count| times_s(blade, count, &QUARTIC, medium(name).unwrap()));
            for (place, (usual, fine)) in usual.iter().zip(fine).enumerate() {
                let apart = (usual / fine - 1.0).abs();
                assert!(apart < within, "{blade:?} {name} {place}: {apart}");
            }
        }
    }
}
