//! What a chart shows, in data units: marks on planes, labels, one sentence for those who cannot see.

pub use super::caption::{Anchor, Label, Rank, Spot, Words};
use super::ink::Paint;
use super::plane::{Plane, Rect};

/// A chart: its size on the sheet, its panels from back to front, its meaning in one sentence.
#[derive(Debug, Clone, PartialEq)]
pub struct Scene {
    /// Width and height, css px.
    pub size_px: [f64; 2],
    /// The plane that handles move on: that of the first panel.
    pub plane: Plane,
    /// Planes with their marks.
    pub panels: Vec<Panel>,
    /// Where the page puts its handles; labels keep clear of them and their tags.
    pub handles: Vec<Handle>,
    /// One sentence for screen readers.
    pub summary: String,
}

/// A place for a handle, which the page draws itself so that it can be focused and dragged.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Handle {
    /// Centre, px.
    pub at_px: [f64; 2],
    /// Where its tag goes, px.
    pub tag: Option<Rect>,
    /// The way it moves, if it does.
    pub moves: Option<Moves>,
    /// Colour of its core: that of the steel there.
    pub core: Paint,
}

/// The way a handle moves: two chevrons beside it tell it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Moves {
    /// Left and right.
    Across,
    /// Up and down.
    Upright,
}

/// A plane with what is drawn on it.
#[derive(Debug, Clone, PartialEq)]
pub struct Panel {
    /// The way from data to pixels. Lines, areas and patterns are clipped to its rectangle.
    pub plane: Plane,
    /// From back to front; labels come after all of them.
    pub marks: Vec<Mark>,
}

/// One coordinate of a place: on an axis, or in pixels of the sheet.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Coord {
    /// In the axis' unit.
    Data(f64),
    /// Css px from the left or top of the chart.
    Px(f64),
}

/// A place on the chart.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct At {
    /// To the right.
    pub x: Coord,
    /// Data upwards, px downwards.
    pub y: Coord,
}

/// A place in data units.
pub fn data(x: f64, y: f64) -> At {
    At {
        x: Coord::Data(x),
        y: Coord::Data(y),
    }
}

/// A place in css px from the top left of the chart.
pub fn px(x: f64, y: f64) -> At {
    At {
        x: Coord::Px(x),
        y: Coord::Px(y),
    }
}

impl At {
    /// The pixel it means on a plane.
    pub fn on(self, plane: &Plane) -> [f64; 2] {
        let x = match self.x {
            Coord::Data(value) => plane.x_px(value),
            Coord::Px(value) => value,
        };
        let y = match self.y {
            Coord::Data(value) => plane.y_px(value),
            Coord::Px(value) => value,
        };
        [x, y]
    }
}

/// How far labels keep from lines, px.
pub const CLEAR_PX: f64 = 2.5;

/// How a line is drawn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pen {
    /// Colour.
    pub paint: Paint,
    /// Width, px.
    pub width_px: f64,
    /// 0 to 1.
    pub opacity: f64,
    /// On and off lengths in px; empty for a solid line.
    pub dash: &'static [f64],
}

impl Pen {
    /// A solid line.
    pub fn new(paint: impl Into<Paint>, width_px: f64) -> Self {
        Self {
            paint: paint.into(),
            width_px,
            opacity: 1.0,
            dash: &[],
        }
    }

    /// The same, dashed.
    pub fn dashed(self, dash: &'static [f64]) -> Self {
        Self { dash, ..self }
    }
}

/// How an area is filled.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Fill {
    /// Colour.
    pub paint: Paint,
    /// 0 to 1.
    pub opacity: f64,
}

impl Fill {
    /// Opaque.
    pub fn new(paint: impl Into<Paint>) -> Self {
        Self::thin(paint, 1.0)
    }

    /// Translucent.
    pub fn thin(paint: impl Into<Paint>, opacity: f64) -> Self {
        Self {
            paint: paint.into(),
            opacity,
        }
    }
}

/// A pattern, after what the structure looks like under the microscope.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Pattern {
    /// Martensite.
    Laths,
    /// Austenite.
    Grains,
    /// Carbide particles.
    Particles,
    /// Pearlite.
    Lamellae,
    /// Bainite.
    Sheaves,
    /// Carbide in a field of the phase map.
    SparseParticles,
    /// Pearlite, light, over a plot.
    ThinLamellae,
    /// Bainite, light, over a plot.
    ThinSheaves,
    /// A range to keep out of.
    Hatch,
}

/// Something drawn.
#[derive(Debug, Clone, PartialEq)]
pub enum Mark {
    /// A line through points in data units, clipped to the plot.
    Line {
        /// x, y; a point that is not finite breaks the line.
        points: Vec<[f64; 2]>,
        /// How.
        pen: Pen,
        /// How far labels keep from it, px; none where they may cover it.
        clear_px: Option<f64>,
    },
    /// An area in data units, clipped to the plot.
    Area {
        /// Corners; the last joins the first.
        points: Vec<[f64; 2]>,
        /// Plain colour.
        fill: Option<Fill>,
        /// Pattern and its colour over it.
        pattern: Option<(Pattern, Fill)>,
    },
    /// A straight stroke between two places, not clipped: ticks, leaders, extension lines.
    Stroke {
        /// One end.
        from: At,
        /// Other end.
        to: At,
        /// How.
        pen: Pen,
    },
    /// A filled shape of places, not clipped: arrow heads, boxes.
    Shape {
        /// Corners.
        points: Vec<At>,
        /// How.
        fill: Fill,
    },
    /// A disc.
    Dot {
        /// Centre.
        at: At,
        /// Radius, px.
        radius_px: f64,
        /// Colour.
        paint: Paint,
        /// Rim: colour and width, px.
        rim: Option<(Paint, f64)>,
    },
    /// A colour that changes along an area.
    Ramp(Ramp),
    /// Words.
    Label(Label),
}

/// A colour that changes from left to right or from top to bottom of an area.
#[derive(Debug, Clone, PartialEq)]
pub struct Ramp {
    /// Corners, px; the area is not clipped.
    pub area: Vec<[f64; 2]>,
    /// From top to bottom, else from left to right.
    pub downwards: bool,
    /// Pixel column or row, colour and opacity there, in order.
    pub stops: Vec<(f64, Fill)>,
}

impl Scene {
    /// An empty chart.
    pub fn new(size_px: [f64; 2], plane: Plane) -> Self {
        Self {
            size_px,
            plane,
            panels: vec![Panel {
                plane,
                marks: Vec::new(),
            }],
            handles: Vec::new(),
            summary: String::new(),
        }
    }

    /// Adds a mark to the last panel.
    pub fn add(&mut self, mark: Mark) {
        if let Some(panel) = self.panels.last_mut() {
            panel.marks.push(mark);
        }
    }

    /// Starts another panel.
    pub fn open(&mut self, plane: Plane) {
        self.panels.push(Panel {
            plane,
            marks: Vec::new(),
        });
    }

    /// Adds a label to the last panel.
    pub fn label(&mut self, label: Label) {
        self.add(Mark::Label(label));
    }

    /// Adds a line that labels keep clear of.
    pub fn curve(&mut self, points: Vec<[f64; 2]>, pen: Pen) {
        self.curve_clear(points, pen, CLEAR_PX);
    }

    /// Adds a line that labels keep so far from.
    pub fn curve_clear(&mut self, points: Vec<[f64; 2]>, pen: Pen, clear_px: f64) {
        self.add(Mark::Line {
            points,
            pen,
            clear_px: Some(clear_px),
        });
    }

    /// Adds a line that labels may cover.
    pub fn guide(&mut self, points: Vec<[f64; 2]>, pen: Pen) {
        self.add(Mark::Line {
            points,
            pen,
            clear_px: None,
        });
    }

    /// Adds a plain area.
    pub fn area(&mut self, points: Vec<[f64; 2]>, fill: Fill) {
        self.add(Mark::Area {
            points,
            fill: Some(fill),
            pattern: None,
        });
    }

    /// Adds a pattern without ground.
    pub fn pattern(&mut self, points: Vec<[f64; 2]>, pattern: Pattern, fill: Fill) {
        self.add(Mark::Area {
            points,
            fill: None,
            pattern: Some((pattern, fill)),
        });
    }

    /// Adds a stroke.
    pub fn stroke(&mut self, from: At, to: At, pen: Pen) {
        self.add(Mark::Stroke { from, to, pen });
    }

    /// Adds a filled shape.
    pub fn shape(&mut self, points: Vec<At>, fill: Fill) {
        self.add(Mark::Shape { points, fill });
    }

    /// The curves that labels keep clear of, in px and not clipped: what the pointer can find with
    /// [`super::hit::nearest`].
    pub fn curves_px(&self) -> Vec<Vec<[f64; 2]>> {
        self.panels
            .iter()
            .flat_map(|panel| panel.marks.iter().map(move |mark| (panel, mark)))
            .filter_map(|(panel, mark)| match mark {
                Mark::Line {
                    points,
                    clear_px: Some(_),
                    ..
                } => Some(points.iter().map(|p| panel.plane.to_px(*p)).collect()),
                _ => None,
            })
            .collect()
    }

    /// The plot of the last panel.
    pub fn last_plane(&self) -> Plane {
        self.panels.last().map_or(self.plane, |panel| panel.plane)
    }
}
