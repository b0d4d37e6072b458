//! Labels of charts: their lines, where they may stand, how much they matter.

use super::face::Weight;
use super::ink::{Ink, Paint};
use super::scene::At;

/// Which end of a line of text sits at its place.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Anchor {
    /// The place is at the start of the text.
    Start,
    /// In the middle.
    Middle,
    /// At the end.
    End,
}

/// A line of a label.
#[derive(Debug, Clone, PartialEq)]
pub struct Words {
    /// The text; lowered parts written `A_{cm}`.
    pub text: String,
    /// Size, px.
    pub size_px: f64,
    /// Weight.
    pub weight: Weight,
    /// Colour.
    pub paint: Paint,
}

/// A place a label may take.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Spot {
    /// What the label belongs to.
    pub at: At,
    /// Base line of the first line from there, px.
    pub offset_px: [f64; 2],
    /// Which end of the text.
    pub anchor: Anchor,
}

/// How much a label matters when the plot is crowded. Fixed ones are never moved or left out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Rank {
    /// Left out first.
    Other,
    /// Boundaries.
    Boundary,
    /// The main curve.
    Main,
    /// The margin.
    Margin,
    /// Axis numbers and what is placed by hand.
    Fixed,
}

/// Words at the first of its spots that is free.
#[derive(Debug, Clone, PartialEq)]
pub struct Label {
    /// Lines from top to bottom.
    pub lines: Vec<Words>,
    /// Distance of base lines, px.
    pub leading_px: f64,
    /// Colour of the halo, 4 px wide.
    pub halo: Option<Paint>,
    /// Colour of a box behind the words, where a halo does not keep them readable.
    pub ground: Option<Paint>,
    /// How much it matters.
    pub rank: Rank,
    /// Where it may stand, best first.
    pub spots: Vec<Spot>,
    /// Whether a thin leader goes to what it belongs to where it stands away from that.
    pub leads: bool,
}

impl Label {
    /// A plain label of 12 px that may not move.
    pub fn new(at: At, anchor: Anchor, text: impl Into<String>) -> Self {
        Self {
            lines: vec![Words {
                text: text.into(),
                size_px: 12.0,
                weight: Weight::Text,
                paint: Ink::Ink.into(),
            }],
            leading_px: 13.0,
            halo: None,
            ground: None,
            rank: Rank::Fixed,
            spots: vec![Spot {
                at,
                offset_px: [0.0, 4.0],
                anchor,
            }],
            leads: false,
        }
    }

    /// Colour, size and weight of all lines so far.
    pub fn styled(mut self, paint: impl Into<Paint>, size_px: f64, weight: Weight) -> Self {
        let paint = paint.into();
        for line in &mut self.lines {
            line.paint = paint;
            line.size_px = size_px;
            line.weight = weight;
        }
        self
    }

    /// Moved by px from its place.
    pub fn nudged(mut self, dx: f64, dy: f64) -> Self {
        for spot in &mut self.spots {
            spot.offset_px[0] += dx;
            spot.offset_px[1] += dy;
        }
        self
    }

    /// With a halo in the colour of the ground.
    pub fn halo(mut self, paint: impl Into<Paint>) -> Self {
        self.halo = Some(paint.into());
        self
    }

    /// With a box in the colour of the ground.
    pub fn grounded(mut self, paint: impl Into<Paint>) -> Self {
        self.ground = Some(paint.into());
        self
    }

    /// With another line below.
    pub fn then(
        mut self,
        text: impl Into<String>,
        paint: impl Into<Paint>,
        size_px: f64,
        weight: Weight,
    ) -> Self {
        self.lines.push(Words {
            text: text.into(),
            size_px,
            weight,
            paint: paint.into(),
        });
        self
    }

    /// Free to stand left, right, above or below each of some places, so many px away, in that
    /// order, and to be left out by rank.
    pub fn around(mut self, places: &[At], gap_px: f64, rank: Rank) -> Self {
        let height = self.leading_px * (self.lines.len() as f64 - 1.0);
        let level = 4.0 - 0.5 * height;
        self.rank = rank;
        self.spots = places
            .iter()
            .flat_map(|at| {
                [
                    ([-gap_px, level], Anchor::End),
                    ([gap_px, level], Anchor::Start),
                    ([0.0, -gap_px - height], Anchor::Middle),
                    ([0.0, gap_px + 9.0], Anchor::Middle),
                ]
                .map(|(offset_px, anchor)| Spot {
                    at: *at,
                    offset_px,
                    anchor,
                })
            })
            .collect();
        self
    }

    /// Else farther off on either side of the places, so many px away.
    pub fn farther(mut self, places: &[At], gaps_px: &[f64]) -> Self {
        for gap_px in gaps_px {
            let sides = [(-gap_px, Anchor::End), (*gap_px, Anchor::Start)];
            self.spots.extend(places.iter().flat_map(|at| {
                sides.map(|(dx, anchor)| Spot {
                    at: *at,
                    offset_px: [dx, 4.0],
                    anchor,
                })
            }));
        }
        self
    }

    /// With a leader where it stands away from what it belongs to.
    pub fn led(mut self) -> Self {
        self.leads = true;
        self
    }

    /// With its spots as given, and to be left out by rank.
    pub fn at_spots(mut self, spots: Vec<Spot>, rank: Rank) -> Self {
        self.spots = spots;
        self.rank = rank;
        self
    }
}
