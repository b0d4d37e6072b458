//! The plane of a plot: data units on two axes, css pixels on the sheet.

use super::axis::Axis;

/// A rectangle in css pixels, y downwards.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Rect {
    /// Left edge, px.
    pub left: f64,
    /// Top edge, px.
    pub top: f64,
    /// Right edge, px.
    pub right: f64,
    /// Bottom edge, px.
    pub bottom: f64,
}

impl Rect {
    /// From its four edges; swapped edges are put in order.
    pub fn new(left: f64, top: f64, right: f64, bottom: f64) -> Self {
        Self {
            left: left.min(right),
            top: top.min(bottom),
            right: right.max(left),
            bottom: bottom.max(top),
        }
    }

    /// Width, px.
    pub fn width(&self) -> f64 {
        self.right - self.left
    }

    /// Height, px.
    pub fn height(&self) -> f64 {
        self.bottom - self.top
    }

    /// Whether a point lies inside or on the border.
    pub fn holds(&self, [x, y]: [f64; 2]) -> bool {
        (self.left..=self.right).contains(&x) && (self.top..=self.bottom).contains(&y)
    }

    /// Whether two rectangles share more than a border.
    pub fn meets(&self, other: &Rect) -> bool {
        self.left < other.right
            && other.left < self.right
            && self.top < other.bottom
            && other.top < self.bottom
    }

    /// Grown by so many pixels on every side.
    pub fn grown(&self, by: f64) -> Self {
        Self {
            left: self.left - by,
            top: self.top - by,
            right: self.right + by,
            bottom: self.bottom + by,
        }
    }

    /// The four corners, clockwise from the top left.
    pub fn corners(&self) -> [[f64; 2]; 4] {
        [
            [self.left, self.top],
            [self.right, self.top],
            [self.right, self.bottom],
            [self.left, self.bottom],
        ]
    }
}

/// Two axes laid over a rectangle: x to the right, y upwards.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Plane {
    /// Axis to the right.
    pub x: Axis,
    /// Axis upwards.
    pub y: Axis,
    /// Where the plot lies on the sheet.
    pub rect: Rect,
}

impl Plane {
    /// Two axes over a rectangle.
    pub fn new(x: Axis, y: Axis, rect: Rect) -> Self {
        Self { x, y, rect }
    }

    /// Pixel column of a value on the x axis; not finite where the value has no place.
    pub fn x_px(&self, value: f64) -> f64 {
        self.rect.left + self.x.fraction(value) * self.rect.width()
    }

    /// Pixel row of a value on the y axis; not finite where the value has no place.
    pub fn y_px(&self, value: f64) -> f64 {
        self.rect.bottom - self.y.fraction(value) * self.rect.height()
    }

    /// Pixel of a point in data units.
    pub fn to_px(&self, [x, y]: [f64; 2]) -> [f64; 2] {
        [self.x_px(x), self.y_px(y)]
    }

    /// Point in data units under a pixel.
    pub fn to_data(&self, [x, y]: [f64; 2]) -> [f64; 2] {
        let width = self.rect.width().max(1e-9);
        let height = self.rect.height().max(1e-9);
        [
            self.x.value((x - self.rect.left) / width),
            self.y.value((self.rect.bottom - y) / height),
        ]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn there_and_back() {
        let plane = Plane::new(
            Axis::log10(0.1, 1000.0),
            Axis::linear(-100.0, 1000.0),
            Rect::new(46.0, 8.0, 324.0, 298.0),
        );
        for point in [
            [0.1, -100.0],
            [2.63, 590.0],
            [1000.0, 1000.0],
            [5000.0, -190.0],
        ] {
            let back = plane.to_data(plane.to_px(point));
            assert!((back[0] / point[0] - 1.0).abs() < 1e-12);
            assert!((back[1] - point[1]).abs() < 1e-9);
        }
        assert_eq!(plane.to_px([0.1, 1000.0]), [46.0, 8.0]);
        let corner = plane.to_px([1000.0, -100.0]);
        assert!((corner[0] - 324.0).abs() < 1e-9 && (corner[1] - 298.0).abs() < 1e-9);
        assert!(plane.x_px(0.0).is_nan());
    }
}
