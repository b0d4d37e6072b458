//! The magnetic ordering function of Inden, Hillert and Jarl, and its share of the Gibbs energy.

#![allow(
    clippy::needless_range_loop,
    reason = "indices run over several arrays at once"
)]

use super::lattice::Magnetism;
use super::polynomial::{Derivatives, MOST};

/// f of the magnetic term, with its first and second derivative in reduced temperature.
fn ordering(reduced: f64, p: f64) -> (f64, f64, f64) {
    let inverse_share = 1.0 / p - 1.0;
    let scale = 518.0 / 1125.0 + 11692.0 / 15975.0 * inverse_share;
    if reduced <= 1.0 {
        let t = reduced;
        let t2 = t * t;
        let t3 = t2 * t;
        let t6 = t3 * t3;
        let t7 = t6 * t;
        let t9 = t6 * t3;
        let t13 = t7 * t6;
        let t15 = t9 * t6;
        let a = 79.0 / (140.0 * p);
        let b = 474.0 / 497.0 * inverse_share;
        (
            1.0 - (a / t + b * (t3 / 6.0 + t9 / 135.0 + t15 / 600.0)) / scale,
            -(-a / t2 + b * (t2 / 2.0 + t2 * t6 / 15.0 + t7 * t7 / 40.0)) / scale,
            -(2.0 * a / t3 + b * (t + t7 * 8.0 / 15.0 + t13 * 14.0 / 40.0)) / scale,
        )
    } else {
        let i = 1.0 / reduced;
        let i2 = i * i;
        let i5 = i2 * i2 * i;
        let i15 = i5 * i5 * i5;
        let i25 = i15 * i5 * i5;
        (
            -(i5 / 10.0 + i15 / 315.0 + i25 / 1500.0) / scale,
            (i5 / 2.0 + i15 / 21.0 + i25 / 60.0) * i / scale,
            -(i5 * 3.0 + i15 * 16.0 / 21.0 + i25 * 26.0 / 60.0) * i2 / scale,
        )
    }
}

/// Adds the magnetic Gibbs energy, J per mole of formula units, with gradient and the upper
/// triangle of the Hessian, from ordering temperature (K) and moment.
pub(crate) fn add_magnetic(
    magnetism: Magnetism,
    gas_constant_times_t: f64,
    kelvin: f64,
    ordering_k: &Derivatives,
    moment: &Derivatives,
    count: usize,
    out: &mut Derivatives,
) {
    let factor = |value: f64| {
        if value < 0.0 {
            1.0 / magnetism.antiferromagnetic_factor
        } else {
            1.0
        }
    };
    let (tc_factor, b_factor) = (factor(ordering_k.value), factor(moment.value));
    let tc = ordering_k.value * tc_factor;
    let b = moment.value * b_factor;
    // below a hundredth of the temperature the term is under 1e-10 of RT
    if tc < 0.01 * kelvin || b <= 0.0 {
        return;
    }
    let reduced = kelvin / tc;
    let (f, f_t, f_tt) = ordering(reduced, magnetism.short_range_share);
    let first = -f_t * reduced / tc * tc_factor;
    let second = (f_tt * reduced + 2.0 * f_t) * reduced / (tc * tc) * tc_factor * tc_factor;
    let log = b.ln_1p();
    let log_first = b_factor / (1.0 + b);
    let log_second = -log_first * log_first;
    let rt = gas_constant_times_t;
    out.value += rt * log * f;
    let mut hessian_rows = [0.0; MOST];
    for i in 0..count {
        let (ti, bi) = (ordering_k.gradient[i], moment.gradient[i]);
        out.gradient[i] += rt * (log_first * bi * f + log * first * ti);
        for j in i..count {
            let (tj, bj) = (ordering_k.gradient[j], moment.gradient[j]);
            hessian_rows[j] = log_second * bi * bj * f
                + log_first * moment.hessian[i][j] * f
                + log_first * first * (bi * tj + bj * ti)
                + log * (second * ti * tj + first * ordering_k.hessian[i][j]);
        }
        for j in i..count {
            out.hessian[i][j] += rt * hessian_rows[j];
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn derivatives_of_the_ordering_function_match_differences() {
        for reduced in [0.3, 0.8, 0.999, 1.001, 1.4, 3.0] {
            let h = 1e-5;
            let (low, _, _) = ordering(reduced - h, 0.4);
            let (mid, first, second) = ordering(reduced, 0.4);
            let (high, _, _) = ordering(reduced + h, 0.4);
            if (reduced - 1.0_f64).abs() > h {
                approx::assert_relative_eq!(first, (high - low) / (2.0 * h), max_relative = 1e-5);
                approx::assert_relative_eq!(
                    second,
                    (high - 2.0 * mid + low) / (h * h),
                    max_relative = 1e-3,
                    epsilon = 1e-5
                );
            }
        }
    }
}
