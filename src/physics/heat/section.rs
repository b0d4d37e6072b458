//! Shape and size of the piece.

use recalesce_texts::heat::quench as texts;
use serde::{Deserialize, Serialize};

/// Sizes that the heat model covers, mm.
const PLATE_MM: (f64, f64) = (0.2, 200.0);
const ROUND_MM: (f64, f64) = (0.2, 300.0);
const SQUARE_MM: (f64, f64) = (0.2, 200.0);
const EDGE_MM: (f64, f64) = (0.1, 20.0);
const SPINE_MM: (f64, f64) = (0.5, 20.0);
const HEIGHT_MM: (f64, f64) = (5.0, 150.0);

/// Shape and size of the piece, in millimetres.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(tag = "shape", rename_all = "snake_case", deny_unknown_fields)]
pub enum Section {
    /// A flat piece, cooled from both faces.
    Plate {
        /// Thickness, mm.
        thickness_mm: f64,
    },
    /// A long round bar.
    Round {
        /// Diameter, mm.
        diameter_mm: f64,
    },
    /// A long square bar.
    Square {
        /// Side, mm.
        side_mm: f64,
    },
    /// A blade that tapers from spine to edge.
    Blade {
        /// Thickness at the edge, mm.
        edge_mm: f64,
        /// Thickness at the spine, mm.
        spine_mm: f64,
        /// Height from edge to spine, mm.
        height_mm: f64,
        /// How the flanks run.
        #[serde(default, skip_serializing_if = "Grind::is_straight")]
        grind: Grind,
    },
}

/// How the flanks of a blade run from edge to spine.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Grind {
    /// Straight.
    #[default]
    Straight,
    /// Convex: parabolas that come into the spine parallel.
    Convex,
}

impl Grind {
    #[allow(
        clippy::trivially_copy_pass_by_ref,
        reason = "the signature that serde calls"
    )]
    const fn is_straight(&self) -> bool {
        matches!(self, Self::Straight)
    }

    /// Part of the way from the thickness of the edge to that of the spine at a part of the
    /// height, both from 0 to 1.
    #[must_use]
    pub fn thickening(self, height_part: f64) -> f64 {
        match self {
            Self::Straight => height_part,
            Self::Convex => height_part * (2.0 - height_part),
        }
    }
}

/// What is wrong with a section.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum SectionError {
    /// A size is not a number or outside what the heat model covers.
    #[error("{}", texts::size_outside(field, *value, *least, *largest))]
    Size {
        /// Name of the size.
        field: &'static str,
        /// The value given, mm.
        value: f64,
        /// Smallest size, mm.
        least: f64,
        /// Largest size, mm.
        largest: f64,
    },
    /// The edge is thicker than the spine.
    #[error("{}", texts::edge_over_spine(*edge_mm, *spine_mm))]
    EdgeOverSpine {
        /// Thickness at the edge, mm.
        edge_mm: f64,
        /// Thickness at the spine, mm.
        spine_mm: f64,
    },
}

impl Section {
    /// Thickness of plate, round or square, and of the spine of a blade, mm.
    #[must_use]
    pub const fn thickness_mm(self) -> f64 {
        match self {
            Self::Plate { thickness_mm } => thickness_mm,
            Self::Round { diameter_mm } => diameter_mm,
            Self::Square { side_mm } => side_mm,
            Self::Blade { spine_mm, .. } => spine_mm,
        }
    }

    /// Height of [`super::Place::Spine`] above the edge of a blade, mm: half a spine thickness below the face of
    /// the spine, but not below three quarters of the height; none of other shapes.
    #[must_use]
    pub fn spine_core_mm(self) -> Option<f64> {
        match self {
            Self::Blade {
                spine_mm,
                height_mm,
                ..
            } => Some((height_mm - 0.5 * spine_mm).max(0.75 * height_mm)),
            _ => None,
        }
    }

    /// The same shape thicker by so much, mm; in a blade, edge and spine both.
    #[must_use]
    pub fn thicker_by(self, more_mm: f64) -> Self {
        self.with_thicknesses(|mm, _| mm + more_mm)
    }

    /// The same shape with every thickness in the range that the heat model covers.
    #[must_use]
    pub fn within_covered(self) -> Self {
        self.with_thicknesses(|mm, (least, most)| mm.clamp(least, most))
    }

    /// The same shape with other thicknesses, mm: `change` gets each with the range that is covered.
    fn with_thicknesses(self, change: impl Fn(f64, (f64, f64)) -> f64) -> Self {
        match self {
            Self::Plate { thickness_mm } => Self::Plate {
                thickness_mm: change(thickness_mm, PLATE_MM),
            },
            Self::Round { diameter_mm } => Self::Round {
                diameter_mm: change(diameter_mm, ROUND_MM),
            },
            Self::Square { side_mm } => Self::Square {
                side_mm: change(side_mm, SQUARE_MM),
            },
            Self::Blade {
                edge_mm,
                spine_mm,
                height_mm,
                grind,
            } => Self::Blade {
                edge_mm: change(edge_mm, EDGE_MM),
                spine_mm: change(spine_mm, SPINE_MM),
                height_mm,
                grind,
            },
        }
    }

    /// Checks that every size is a number in its range.
    ///
    /// # Errors
    /// The first size out of range, or an edge thicker than the spine.
    pub fn validate(&self) -> Result<(), SectionError> {
        let check = |field, value: f64, (least, largest): (f64, f64)| {
            if (least..=largest).contains(&value) {
                Ok(())
            } else {
                Err(SectionError::Size {
                    field,
                    value,
                    least,
                    largest,
                })
            }
        };
        match *self {
            Self::Plate { thickness_mm } => check(texts::THICKNESS, thickness_mm, PLATE_MM),
            Self::Round { diameter_mm } => check(texts::DIAMETER, diameter_mm, ROUND_MM),
            Self::Square { side_mm } => check(texts::SIDE, side_mm, SQUARE_MM),
            Self::Blade {
                edge_mm,
                spine_mm,
                height_mm,
                ..
            } => {
                check(texts::EDGE, edge_mm, EDGE_MM)?;
                check(texts::SPINE, spine_mm, SPINE_MM)?;
                check(texts::HEIGHT, height_mm, HEIGHT_MM)?;
                if edge_mm > spine_mm {
                    return Err(SectionError::EdgeOverSpine { edge_mm, spine_mm });
                }
                Ok(())
            }
        }
    }
}
