//! The heat of transformation in a cooling piece: recalescence, and that it changes nothing where
//! nothing forms.
#![cfg(not(target_arch = "wasm32"))]

use recalesce::heat::{Cooled, Place, Quenching, Section, cool, cool_turning, medium};
use recalesce::steel::Composition;
use recalesce::transform::{Austenite, Kinetics, TurningPiece};

/// Steel with 0.8 % C and 0.7 % Mn, soaked fine.
fn plain() -> Kinetics {
    kinetics(0.8, 0.7, 0.0, 0.0)
}

fn kinetics(c: f64, mn: f64, cr: f64, mo: f64) -> Kinetics {
    Kinetics::new(&Austenite {
        composition: Composition {
            c,
            mn,
            cr,
            mo,
            si: 0.2,
            ..Composition::default()
        },
        grain_astm: 8.0,
        undissolved_carbide_volume_fraction: 0.0,
    })
    .unwrap()
}

fn quenching(name: &str, thickness_mm: f64) -> Quenching<'_> {
    Quenching {
        section: Section::Plate { thickness_mm },
        medium: medium(name).unwrap(),
        agitation: 1.0,
        start_c: 820.0,
        air_delay_s: 0.0,
        end_c: 40.0,
        then: &[],
        martensite_start_c: None,
    }
}

fn both(kinetics: &Kinetics, name: &str, thickness_mm: f64) -> [Cooled; 2] {
    let quench = quenching(name, thickness_mm);
    let turned = cool_turning(&quench, &mut TurningPiece::new(kinetics, 0.0)).unwrap();
    let plain = cool(&Quenching {
        martensite_start_c: Some(kinetics.ms_c()),
        ..quench
    })
    .unwrap();
    [turned, plain]
}

/// Largest rise of the centre on the way down, K.
fn glow_back_k(cooled: &Cooled) -> f64 {
    let mut lowest = f64::MAX;
    let mut rise = 0.0_f64;
    for &t in &cooled.at(Place::Centre).unwrap().temperature_c {
        lowest = lowest.min(t);
        rise = rise.max(t - lowest);
    }
    rise
}

/// Notes of the project, an estimate: in still air a glow-back of some tens of kelvins is seen near
/// 650 to 600 °C; in oil an arrest and no rise.
#[test]
fn plain_steel_glows_back_in_air_and_not_in_oil() {
    let [air, without] = both(&plain(), "air_still", 6.0);
    let rise = glow_back_k(&air);
    assert!((3.0..60.0).contains(&rise), "{rise} K");
    assert!(glow_back_k(&without) < 0.01);
    let [oil, _] = both(&plain(), "oil_medium", 3.0);
    assert!(glow_back_k(&oil) < 1.0, "{} K", glow_back_k(&oil));
}

#[test]
fn where_nothing_forms_nothing_changes() {
    let kinetics = kinetics(0.6, 0.8, 1.0, 0.5);
    let [turned, plain] = both(&kinetics, "oil_fast", 3.0);
    for t in [700.0, 540.0, 300.0, 150.0] {
        let [a, b] = [&turned, &plain].map(|c| c.at(Place::Centre).unwrap().time_to_c(t).unwrap());
        approx::assert_relative_eq!(a, b, max_relative = 1e-3);
    }
}

/// What the nodes turn into is what their cooling curves tell afterwards.
#[test]
fn the_curve_tells_the_same_fractions_as_the_nodes() {
    for (name, thickness_mm) in [
        ("air_still", 6.0),
        ("oil_medium", 12.0),
        ("plate_Al_foil", 8.0),
    ] {
        let kinetics = plain();
        let mut turning = Remembering(TurningPiece::new(&kinetics, 0.0), 0.0, 0.0);
        let cooled = cool_turning(&quenching(name, thickness_mm), &mut turning).unwrap();
        let curve = cooled.at(Place::Centre).unwrap();
        let told = kinetics.along(&curve.time_s, &curve.temperature_c).unwrap();
        let formed = told.fractions.ferrite + told.fractions.pearlite + told.fractions.bainite;
        approx::assert_abs_diff_eq!(formed, turning.2, epsilon = 0.01);
    }
}

/// Remembers how far the first node, the centre, has turned.
struct Remembering<'a>(TurningPiece<'a>, f64, f64);

impl recalesce::heat::Turning for Remembering<'_> {
    fn begin(&mut self, nodes: usize) -> f64 {
        self.0.begin(nodes)
    }

    fn after(&mut self, node: usize, from_c: f64, to_c: f64, duration_s: f64) -> f64 {
        let after = self.0.after(node, from_c, to_c, duration_s);
        if node == 0 {
            self.1 = after;
        }
        after
    }

    fn keep(&mut self) {
        self.2 = self.1;
        self.0.keep();
    }

    fn martensite_start_c(&self) -> f64 {
        self.0.martensite_start_c()
    }
}
