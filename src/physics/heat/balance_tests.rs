//! The heat that a piece loses is the heat that goes through its faces: for every shape, over the
//! nodes and faces of its own mesh.

use super::blade::Asked;
use super::conduct::Conduction;
use super::cut::{Cut, Kind, View};
use super::element::{NARROW_BAND, SQUARE_BAND};
use super::trace::hermite;
use super::until::{Reached, Until};
use super::{Grind, Material, Medium, Section, medium};

const START_C: f64 = 800.0;
/// Parts of a step and their weights (Boole's rule): a boiling curve bends within a step.
const LOOKS: [(f64, f64); 5] = [
    (0.0, 7.0 / 90.0),
    (0.25, 32.0 / 90.0),
    (0.5, 12.0 / 90.0),
    (0.75, 32.0 / 90.0),
    (1.0, 7.0 / 90.0),
];

/// Heat through the faces over heat lost by the nodes, less one.
fn imbalance(section: Section, medium: &Medium, martensite_start_c: Option<f64>) -> f64 {
    let material =
        martensite_start_c.map_or_else(Material::austenite, Material::austenite_to_martensite);
    let cut = Cut::of(&section, View::Named, Asked::by_bath(medium, 1.0));
    match cut.kind {
        Kind::Narrow => of_mesh::<NARROW_BAND>(&cut, medium, &material),
        Kind::Square => of_mesh::<SQUARE_BAND>(&cut, medium, &material),
    }
}

fn of_mesh<const W: usize>(cut: &Cut, medium: &Medium, material: &Material) -> f64 {
    let mesh = &cut.mesh;
    let mut piece = Conduction::<W>::new(mesh, material, START_C, cut.tolerance_k);
    let mut states: Vec<(f64, Vec<[f64; 2]>)> = Vec::new();
    let until = Until {
        reached: Reached::Cooled(medium.bath_c + 20.0),
        time_s: 1e5,
    };
    piece.stay_in(medium, 1.0, until, |piece| {
        let nodes = piece.temperature_c.iter().zip(&piece.rate_k_per_s);
        let nodes = nodes.map(|(c, rate)| [*c, *rate]).collect();
        states.push((piece.time_s, nodes));
    });
    let through: f64 = states
        .windows(2)
        .map(|pair| {
            let [(start_s, from), (end_s, to)] = pair else {
                return 0.0;
            };
            let step = end_s - start_s;
            let flow = |x: f64| -> f64 {
                let of_face = |&(node, area): &(usize, f64)| {
                    let surface_c = hermite(from[node], to[node], step, x)[0];
                    area * medium.flux(surface_c, 1.0).0
                };
                mesh.faces.iter().map(of_face).sum()
            };
            step * LOOKS
                .iter()
                .map(|(x, weight)| weight * flow(*x))
                .sum::<f64>()
        })
        .sum();
    let last = states.last().map(|(_, nodes)| nodes).expect("a state");
    let lost: f64 = mesh
        .volume
        .iter()
        .zip(last)
        .map(|(volume, [end_c, _])| {
            volume * (material.heat_j_m3(START_C) - material.heat_j_m3(*end_c))
        })
        .sum();
    through / lost - 1.0
}

/// To 0.1 %, in quenchants that boil and in those that do not, with martensite and without.
#[test]
fn heat_lost_is_heat_through_the_faces() {
    let sections = [
        Section::Plate { thickness_mm: 6.0 },
        Section::Round { diameter_mm: 3.0 },
        Section::Round { diameter_mm: 25.0 },
        Section::Square { side_mm: 5.0 },
        Section::Square { side_mm: 20.0 },
        Section::Blade {
            edge_mm: 0.5,
            spine_mm: 4.0,
            height_mm: 26.0,
            grind: Grind::Straight,
        },
        Section::Blade {
            edge_mm: 1.0,
            spine_mm: 8.0,
            height_mm: 60.0,
            grind: Grind::Convex,
        },
    ];
    let mut apart = Vec::new();
    for section in sections {
        for name in [
            "brine10",
            "water60",
            "oil_fast",
            "oil_slow",
            "salt200_still",
            "air_still",
        ] {
            for martensite_start_c in [None, Some(230.0)] {
                let medium = medium(name).expect("in the list");
                let found = imbalance(section, medium, martensite_start_c);
                println!(
                    "{section:?} {name} {martensite_start_c:?}: {:+.3} %",
                    100.0 * found
                );
                if found.abs() >= 1e-3 {
                    apart.push((section, name, martensite_start_c, found));
                }
            }
        }
    }
    assert!(apart.is_empty(), "{apart:#?}");
}
