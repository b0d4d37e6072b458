//! Which steps before hardening make sense at all.

use super::allowed::{RouteFieldError, allowed, fault, fault_in_degrees, fault_of_medium};
use super::prior::{PriorStep, SlowCooling, Work};
use super::validate::{STEP_MIN, text};
use recalesce_texts::grammar::inside_a_sentence;
use recalesce_texts::route::fields as texts;

/// Most steps before hardening.
pub const MOST_PRIOR_STEPS: usize = 24;
/// The field of all of them, as the saved route names it.
const FIELD: &str = "prior";
/// Temperatures that a step before hardening may have, °C.
const TEMPERATURE_C: (f64, f64) = (100.0, 1250.0);

/// Checks the steps before hardening, in order.
pub(super) fn prior(steps: &[PriorStep]) -> Result<(), RouteFieldError> {
    if steps.len() > MOST_PRIOR_STEPS {
        return Err(fault(
            FIELD,
            texts::too_many_prior_steps(steps.len(), MOST_PRIOR_STEPS),
        ));
    }
    for (i, step) in steps.iter().enumerate() {
        one(step).map_err(|e| {
            let title = inside_a_sentence(step.work.title());
            e.of_step(&texts::prior_step(i + 1, &title))
        })?;
    }
    Ok(())
}

fn one(step: &PriorStep) -> Result<(), RouteFieldError> {
    allowed(FIELD, texts::TEMPERATURE, TEMPERATURE_C, "°C").check(step.temperature_c)?;
    allowed(FIELD, texts::TIME, STEP_MIN, "min").check(step.time_min)?;
    if let Work::Forge { finish_c, heats } = step.work {
        let finish = (TEMPERATURE_C.0, step.temperature_c);
        allowed(FIELD, texts::FINISHING_TEMPERATURE, finish, "°C").check(finish_c)?;
        allowed(FIELD, texts::HEATS, (1.0, 50.0), "").check(f64::from(heats))?;
    }
    match &step.cooling {
        SlowCooling::Medium { medium } => {
            if let Some(name) = medium.listed() {
                text(FIELD, texts::MEDIUM, name)?;
            }
            let bath_c = medium
                .resolve()
                .map_err(|e| fault_of_medium(FIELD, &e))?
                .bath_c;
            let leaves_c = match step.work {
                Work::Forge { finish_c, .. } => finish_c,
                _ => step.temperature_c,
            };
            if bath_c + 2.0 > leaves_c {
                return Err(fault_in_degrees(
                    FIELD,
                    [bath_c, leaves_c],
                    texts::bath_does_not_cool,
                ));
            }
            Ok(())
        }
        SlowCooling::Furnace {
            rate_k_per_h,
            until_c,
        } => {
            allowed(FIELD, texts::FURNACE_COOLING, (1.0, 5000.0), "K/h").check(*rate_k_per_h)?;
            let until = (20.0, step.temperature_c);
            allowed(FIELD, texts::FURNACE_COOLING_END, until, "°C").check(*until_c)
        }
    }
}

#[cfg(test)]
mod tests {
    use crate::route::{PriorStep, Route, SlowCooling, Work, validate};

    fn normalise() -> PriorStep {
        PriorStep {
            work: Work::Normalise,
            temperature_c: 885.0,
            time_min: 10.0,
            cooling: SlowCooling::still_air(),
        }
    }

    fn fault_of(steps: Vec<PriorStep>) -> Option<String> {
        let route = Route {
            prior: steps,
            ..Route::example()
        };
        validate(&route).err().map(|e| e.message)
    }

    #[test]
    fn a_fault_names_its_step() {
        assert_eq!(fault_of(vec![normalise()]), None);
        let hot = PriorStep {
            temperature_c: 1400.0,
            ..normalise()
        };
        assert_eq!(
            fault_of(vec![normalise(), hot]).as_deref(),
            Some("step 2 (normalise): temperature 1400 °C is outside 100 to 1250 °C")
        );
        let backwards = PriorStep {
            work: Work::Forge {
                finish_c: 1100.0,
                heats: 2,
            },
            temperature_c: 1000.0,
            ..normalise()
        };
        assert!(fault_of(vec![backwards]).unwrap().contains("finishing"));
        let rising = PriorStep {
            cooling: SlowCooling::Furnace {
                rate_k_per_h: 10.0,
                until_c: 900.0,
            },
            ..normalise()
        };
        assert!(fault_of(vec![rising]).unwrap().contains("furnace cooling"));
        assert!(fault_of(vec![normalise(); 25]).unwrap().contains("24"));
        let not_a_number = PriorStep {
            time_min: f64::NAN,
            ..normalise()
        };
        assert!(fault_of(vec![not_a_number]).unwrap().contains("time NaN"));
    }
}
