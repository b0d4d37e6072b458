//! Points that fill the unit cube evenly: a Sobol sequence scrambled after Owen, by the hash of
//! Burley (2020), as the crate `sobol_burley` has it. A seed gives the same points everywhere.

/// Most points of a sequence.
pub(super) const MOST_POINTS: u32 = 1 << 16;
/// Half of the last digit of a coordinate: it keeps points off the faces of the cube, where a normal
/// distribution has no value.
const HALF_STEP: f64 = 1.0 / (1_u64 << 25) as f64;

/// A point by its number, with as many coordinates as asked, each above 0 and below 1.
///
/// Sequences of other seeds are independent. Up to 65 536 points of 256 coordinates; beyond, they
/// repeat.
pub(super) fn point(number: u32, coordinates: usize, seed: u32) -> Vec<f64> {
    (0..sobol_burley::NUM_DIMENSIONS)
        .cycle()
        .take(coordinates)
        .map(|dimension| {
            f64::from(sobol_burley::sample(number % MOST_POINTS, dimension, seed)) + HALF_STEP
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_stratum_of_every_coordinate_has_one_point() {
        for seed in [0, 1, 77] {
            let points: Vec<Vec<f64>> = (0..64).map(|i| point(i, 12, seed)).collect();
            for coordinate in 0..12 {
                let mut strata: Vec<u32> = points
                    .iter()
                    .map(|p| (64.0 * p[coordinate]) as u32)
                    .collect();
                strata.sort_unstable();
                assert!(strata.into_iter().eq(0..64), "{seed}, {coordinate}");
            }
        }
    }

    #[test]
    fn a_seed_is_its_points() {
        assert_eq!(point(5, 4, 9), point(5, 4, 9));
        assert_ne!(point(5, 4, 9), point(5, 4, 10));
        assert!(point(0, 40, 3).iter().all(|x| *x > 0.0 && *x < 1.0));
    }
}
