//! Where a quantity that takes a solve per value passes zero.

/// A search upwards from a point.
#[derive(Debug, Clone, Copy)]
pub(super) struct Upwards {
    /// Where it begins.
    pub(super) from: f64,
    /// Where it ends.
    pub(super) to: f64,
    /// First step, and the least later on.
    pub(super) step: f64,
    /// The longest step.
    pub(super) longest: f64,
    /// Accuracy of the place.
    pub(super) tolerance: f64,
}

/// Steps of the refinement; false position with the Illinois rule needs about four.
const REFINEMENTS: usize = 60;

impl Upwards {
    /// The first place where `f` has another sign than at the beginning; `None` when there is none
    /// before the end.
    pub(super) fn first_change<E>(
        &self,
        mut f: impl FnMut(f64) -> Result<f64, E>,
    ) -> Result<Option<f64>, E> {
        let mut a = (self.from, f(self.from)?);
        if a.1 == 0.0 {
            return Ok(Some(a.0));
        }
        let mut step = self.step;
        while a.0 < self.to {
            let x = (a.0 + step).min(self.to);
            let b = (x, f(x)?);
            if b.1 * a.1 <= 0.0 {
                return refine(a, b, self.tolerance, f).map(Some);
            }
            // where the line through both points ends, and a little more
            let slope = (b.1 - a.1) / (b.0 - a.0);
            let way = -1.2 * b.1 / slope;
            step = if way > 0.0 {
                way.clamp(self.step, self.longest)
            } else {
                self.longest
            };
            a = b;
        }
        Ok(None)
    }
}

/// Zero between two points with values of different sign.
pub(super) fn refine<E>(
    mut a: (f64, f64),
    mut b: (f64, f64),
    tolerance: f64,
    mut f: impl FnMut(f64) -> Result<f64, E>,
) -> Result<f64, E> {
    let mut last = f64::INFINITY;
    let mut moved_a = None;
    for round in 1..=REFINEMENTS {
        let x = if round % 6 == 0 || a.1 == b.1 {
            f64::midpoint(a.0, b.0)
        } else {
            (a.0 * b.1 - b.0 * a.1) / (b.1 - a.1)
        };
        if (x - last).abs() < tolerance || (b.0 - a.0).abs() < tolerance {
            return Ok(x);
        }
        last = x;
        let y = f(x)?;
        if y == 0.0 {
            return Ok(x);
        }
        let moves_a = y * a.1 > 0.0;
        let stays = if moves_a { &mut b } else { &mut a };
        if moved_a == Some(moves_a) {
            stays.1 *= 0.5;
        }
        *(if moves_a { &mut a } else { &mut b }) = (x, y);
        moved_a = Some(moves_a);
    }
    Ok(last)
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::convert::Infallible;

    #[test]
    fn first_of_several_zeros_is_found() {
        let upwards = Upwards {
            from: 0.0,
            to: 10.0,
            step: 0.5,
            longest: 1.0,
            tolerance: 1e-6,
        };
        let found = upwards.first_change(|x: f64| Ok::<_, Infallible>(x.cos()));
        let zero = std::f64::consts::FRAC_PI_2;
        assert!(found.is_ok_and(|x| x.is_some_and(|x| (x - zero).abs() < 1e-5)));
        let none = upwards.first_change(|x: f64| Ok::<_, Infallible>(1.0 + x));
        assert_eq!(none, Ok(None));
    }
}
