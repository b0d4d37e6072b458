//! Heats of a grade: how far its composition may be from the usual one.

use super::{Composition, Element, Grade};

/// How far a content may be from the usual one in heats of a grade.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct OpenContent {
    /// The element.
    pub element: Element,
    /// Least by the standard, wt %.
    pub least_wt: f64,
    /// In a usual heat, wt %.
    pub usual_wt: f64,
    /// Most by the standard, wt %.
    pub most_wt: f64,
}

impl Grade {
    /// The alloying elements whose contents the standard leaves open between limits, which are
    /// never narrower than the usual heat. Phosphorus and sulphur are not among them.
    pub fn open_contents(&self) -> impl Iterator<Item = OpenContent> + Clone + '_ {
        self.limits
            .iter()
            .filter(|limits| {
                let is_alloying = !matches!(limits.element, Element::P | Element::S);
                is_alloying && limits.most_wt > limits.least_wt
            })
            .map(|limits| {
                let usual_wt = self.nominal.get(limits.element);
                OpenContent {
                    element: limits.element,
                    least_wt: limits.least_wt.unwrap_or(0.0).min(usual_wt),
                    usual_wt,
                    most_wt: limits.most_wt.map_or(usual_wt, |most| most.max(usual_wt)),
                }
            })
    }

    /// A lean and a rich heat, wt %: the contents that nine in ten heats of the grade lie between,
    /// as far as one number can say it.
    ///
    /// The alloying elements vary independently, so no heat has all of them at their limits. Each
    /// is taken so much nearer to the usual content that their effects together come to what they
    /// would in quadrature, were they alike: by the root of their number. What the standard does
    /// not limit stays as in the usual heat, and so do phosphorus and sulphur.
    #[must_use]
    pub fn lean_and_rich(&self) -> [Composition; 2] {
        let open = self.open_contents();
        let nearer = (open.clone().count().max(1) as f64).sqrt();
        let mut heats = [self.nominal; 2];
        let [lean, rich] = &mut heats;
        for content in open {
            let usual_wt = content.usual_wt;
            let toward = |limit_wt: f64| usual_wt + (limit_wt - usual_wt) / nearer;
            lean.set(content.element, toward(content.least_wt));
            rich.set(content.element, toward(content.most_wt));
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
