//! A map as a plain list of numbers, for its way between two threads.

use super::{Boundary, Field, OwnField, PhaseMap};
use crate::phases::PhaseName;

impl PhaseMap {
    /// All of it; [`Self::from_numbers`] reads it back the same.
    #[must_use]
    pub fn to_numbers(&self) -> Vec<f64> {
        let mut numbers = vec![self.a1_c, self.a1_upper_c, self.eutectoid_carbon_wt];
        for line in [&self.a3, &self.acm, &self.a1_lower, &self.a1_upper] {
            put_line(&mut numbers, line);
        }
        numbers.push(self.fields.len() as f64);
        for field in &self.fields {
            numbers.push(bits(&field.phases));
            put_line(&mut numbers, &field.outline);
        }
        numbers.push(self.boundaries.len() as f64);
        for boundary in &self.boundaries {
            numbers.extend([boundary.below as f64, boundary.above as f64]);
            put_line(&mut numbers, &boundary.points);
        }
        for field in &self.own {
            numbers.extend([bits(&field.phases), field.from_c, field.to_c]);
        }
        numbers
    }

    /// Reads what [`Self::to_numbers`] gives; `None` when the list breaks off.
    #[must_use]
    pub fn from_numbers(numbers: &[f64]) -> Option<Self> {
        let mut left = numbers.iter().copied();
        let [a1_c, a1_upper_c, eutectoid_carbon_wt] = [left.next()?, left.next()?, left.next()?];
        let mut map = Self {
            fields: Vec::new(),
            boundaries: Vec::new(),
            own: Vec::new(),
            a1_c,
            a1_upper_c,
            a3: line(&mut left)?,
            acm: line(&mut left)?,
            a1_lower: line(&mut left)?,
            a1_upper: line(&mut left)?,
            eutectoid_carbon_wt,
        };
        for _ in 0..left.next()? as usize {
            map.fields.push(Field {
                phases: names(left.next()?),
                outline: line(&mut left)?,
            });
        }
        for _ in 0..left.next()? as usize {
            map.boundaries.push(Boundary {
                below: left.next()? as usize,
                above: left.next()? as usize,
                points: line(&mut left)?,
            });
        }
        while let Some(phases) = left.next() {
            map.own.push(OwnField {
                phases: names(phases),
                from_c: left.next()?,
                to_c: left.next()?,
            });
        }
        Some(map)
    }
}

fn put_line(numbers: &mut Vec<f64>, line: &[[f64; 2]]) {
    numbers.push(line.len() as f64);
    numbers.extend(line.iter().flatten());
}

fn line(left: &mut impl Iterator<Item = f64>) -> Option<Vec<[f64; 2]>> {
    let count = left.next()? as usize;
    (0..count)
        .map(|_| Some([left.next()?, left.next()?]))
        .collect()
}

fn bits(phases: &[PhaseName]) -> f64 {
    f64::from(
        phases
            .iter()
            .fold(0_u32, |bits, name| bits | 1 << *name as u32),
    )
}

fn names(bits: f64) -> Vec<PhaseName> {
    let has = |name: &PhaseName| bits as u32 & 1 << *name as u32 != 0;
    PhaseName::ALL.into_iter().filter(has).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::steel::Composition;

    #[test]
    fn a_map_is_read_back_the_same() {
        let steel = Composition {
            c: 1.0,
            cr: 1.45,
            ..Composition::default()
        };
        let map = crate::phases::phase_map(&steel).unwrap();
        let numbers = map.to_numbers();
        assert_eq!(PhaseMap::from_numbers(&numbers), Some(map.clone()));
        for end in 0..numbers.len() - 1 {
            assert_ne!(PhaseMap::from_numbers(&numbers[..end]), Some(map.clone()));
        }
    }
}
