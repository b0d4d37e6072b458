//! Shrinkage in time, along paces that are given at some places.

/// Follows `ds/dt = pace(s)`, pace linear between the places where it is given, which has an exact
/// solution. Beyond the last it is zero.
pub(super) struct Walk<'a> {
    /// Places from that before the present one on.
    ahead: &'a [(f64, f64)],
    shrinkage: f64,
    now_s: f64,
}

impl<'a> Walk<'a> {
    /// Starts at a shrinkage.
    pub(super) fn new(paces: &'a [(f64, f64)], from: f64) -> Self {
        // the handover may lie before the beginning, in its cell
        let passed = paces.iter().take_while(|(place, _)| *place <= from).count();
        Self {
            ahead: &paces[passed.saturating_sub(1).min(paces.len())..],
            shrinkage: from,
            now_s: 0.0,
        }
    }

    /// The shrinkage at a time, s; times must ascend.
    pub(super) fn to(&mut self, time_s: f64) -> f64 {
        while self.now_s < time_s {
            let [(from, slow), (to, fast), ..] = *self.ahead else {
                break;
            };
            let slope = (fast - slow) / (to - from);
            let here = slow + slope * (self.shrinkage - from);
            if here <= 0.0 {
                break;
            }
            let cell_s = if fast <= 0.0 {
                f64::INFINITY
            } else if (fast / here - 1.0).abs() < 1e-9 {
                (to - self.shrinkage) / here
            } else {
                (fast / here).ln() / slope
            };
            let step_s = time_s - self.now_s;
            if cell_s <= step_s {
                self.shrinkage = to;
                self.now_s += cell_s;
                self.ahead = &self.ahead[1..];
            } else {
                let way = if (slope * step_s).abs() < 1e-12 {
                    here * step_s
                } else {
                    here * (slope * step_s).exp_m1() / slope
                };
                self.shrinkage = (self.shrinkage + way).min(to);
                self.now_s = time_s;
            }
        }
        self.now_s = self.now_s.max(time_s);
        self.shrinkage
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn walk_solves_decay_exactly() {
        // ds/dt = s_1 - s, from 0: s = s_1 (1 - exp(-t)).
        let width = 0.02;
        let paces = [(0.0, width), (width, 0.0)];
        let mut walk = Walk::new(&paces, 0.0);
        for time_s in [0.1, 0.7, 1.5, 8.0_f64] {
            let exact = width * (1.0 - (-time_s).exp());
            assert!((walk.to(time_s) - exact).abs() < 1e-12 * width);
        }
    }
}
