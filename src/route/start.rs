//! Routes to start from: the project's own example, and a grade's handbook practice.

use super::furnace::Thermocouple;
use super::plan::{Cold, Quench, Route, Soak, Target, Temper, first_seed};
use crate::heat::{Grind, MediumChoice, Section};
use crate::soak::StartingStructure;
use crate::steel::{Composition, Grade};
use recalesce_texts::route::plan::EXAMPLE;

impl Route {
    /// The example that the page opens with: a marking knife of a made-up small workshop.
    #[must_use]
    pub fn example() -> Self {
        let temper = Temper {
            temperature_c: 190.0,
            time_min: 60.0,
        };
        Self {
            piece: EXAMPLE.to_owned(),
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
            section: Section::Blade {
                edge_mm: 0.4,
                spine_mm: 4.0,
                height_mm: 26.0,
                grind: Grind::Straight,
            },
            furnace_band_k: 8.0,
            thermocouple: Thermocouple::Checked,
            furnace_offset_k: 0.0,
            soak: Soak {
                temperature_c: 830.0,
                time_min: 12.0,
            },
            quench: Quench {
                then: Vec::new(),
                medium: MediumChoice::Named("oil_medium".to_owned()),
                agitation: 1.2,
                air_delay_s: 1.0,
                end_c: 20.0,
            },
            cold: Some(Cold {
                temperature_c: -75.0,
                time_min: 60.0,
                delay_min: 10.0,
                snap: None,
            }),
            tempers: vec![temper; 2],
            target: Target {
                least_hrc: 61.0,
                most_hrc: 63.0,
            },
            seed: first_seed(),
            taught: None,
        }
    }

    /// Takes a grade: its contents, and the middle of its handbook hardening practice. Section, quenchant
    /// and the rest stay as they are.
    pub fn take_grade(&mut self, grade: &Grade) {
        self.take_contents(grade);
        if let Some((from_c, to_c)) = grade.austenitise_c.span {
            self.soak.temperature_c = (0.5 * (from_c + to_c)).round();
        }
        if let Some((from_min, to_min)) = grade.soak_min.span {
            self.soak.time_min = (0.5 * (from_min + to_min)).round();
        }
    }

    /// Takes a grade's designation and nominal composition, and nothing of its practice. An end-quench
    /// test goes, as it was of another heat.
    pub fn take_contents(&mut self, grade: &Grade) {
        self.grade = Some(grade.designation.clone());
        self.composition = grade.nominal;
        self.end_quench.clear();
    }
}
