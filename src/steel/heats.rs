//! Heats of a grade: how far its composition may be from the usual one.

use super::{Composition, Element, Grade};

impl Grade {
    /// A lean and a rich heat, wt %: the contents that nine in ten heats of the grade lie between,
    /// as far as one number can say it.
    ///
    /// The alloying elements vary independently, so no heat has all of them at their limits. Each
    /// is taken so much nearer to the usual content that their effects together come to what they
    /// would in quadrature, were they alike: by the root of their number. What the standard does
    /// not limit stays as in the usual heat, and so do phosphorus and sulphur.
    #[must_use]
    pub fn lean_and_rich(&self) -> [Composition; 2] {
        let alloying = || {
            self.limits.iter().filter(|limits| {
                let is_alloying = !matches!(limits.element, Element::P | Element::S);
                is_alloying && limits.most_wt > limits.least_wt
            })
        };
        let nearer = (alloying().count().max(1) as f64).sqrt();
        let mut heats = [self.nominal; 2];
        let [lean, rich] = &mut heats;
        for limits in alloying() {
            let usual_wt = self.nominal.get(limits.element);
            let toward = |limit_wt: f64| usual_wt + (limit_wt - usual_wt) / nearer;
            let least_wt = limits.least_wt.unwrap_or(0.0).min(usual_wt);
            lean.set(limits.element, toward(least_wt));
            if let Some(most_wt) = limits.most_wt {
                rich.set(limits.element, toward(most_wt.max(usual_wt)));
            }
        }
        heats
    }
}

#[cfg(test)]
mod tests {
    use crate::steel::{Element, find, grades};

    #[test]
    fn heats_lie_within_the_limits_on_both_sides_of_the_usual_one() {
        for grade in grades() {
            let [lean, rich] = grade.lean_and_rich();
            for element in Element::ALL {
                let usual = grade.nominal.get(element);
                assert!(lean.get(element) <= usual && usual <= rich.get(element));
            }
            for heat in [lean, rich] {
                assert_eq!(heat.validate(), Ok(()), "{}", grade.designation);
            }
        }
    }

    /// 1095 by ASTM A29: 0.90 to 1.03 % C, 0.30 to 0.50 % Mn, and no other limit that counts.
    #[test]
    fn two_elements_each_come_to_their_part_of_the_way() {
        let grade = find("1095").unwrap();
        let [lean, rich] = grade.lean_and_rich();
        let way = |heat: f64, usual: f64, limit: f64| (heat - usual) / (limit - usual);
        let c = grade.nominal.c;
        for part in [
            way(lean.c, c, 0.90),
            way(rich.c, c, 1.03),
            way(lean.mn, 0.4, 0.3),
            way(rich.mn, 0.4, 0.5),
        ] {
            approx::assert_relative_eq!(part, 0.5_f64.sqrt(), max_relative = 1e-9);
        }
        assert_eq!(lean.si, grade.nominal.si);
    }
}
