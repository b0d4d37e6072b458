//! The temperature of a bath.

use crate::controls::{Quantity, Typed, quantities};
use crate::state::bench;
use leptos::prelude::*;
use recalesce::heat::{BathRange, MediumChoice};
use recalesce::units::{TemperatureScale, format_temperature};
use recalesce_texts::page as texts;
use std::sync::Arc;

/// A temperature of a bath. The line below the field tells the range, so what is wrong does not tell
/// it again.
fn within(scale: TemperatureScale, range: BathRange) -> Quantity {
    let (least, most) = (range.least_c, range.most_c);
    let quantity = quantities::temperature(scale, (least, most));
    let read = quantity.read;
    Quantity {
        read: Arc::new(move |text| {
            let bath_c = read(text)?;
            if (least..=most).contains(&bath_c) {
                Ok(bath_c)
            } else {
                Err(texts::quench::NOT_IN_RANGE.to_owned())
            }
        }),
        ..quantity
    }
}

/// The temperature of a quenchant's bath, within what it may be; nothing for one of the user's own,
/// which has its bath with its curve.
#[component]
pub(super) fn BathField(
    /// The quenchant.
    chosen: Memo<Option<MediumChoice>>,
    /// Takes it with its bath at another temperature.
    set: Callback<MediumChoice>,
) -> impl IntoView {
    let bench = bench();
    let medium = Memo::new(move |_| chosen.with(|choice| choice.as_ref()?.resolve().ok()));
    let range = Memo::new(move |_| medium.with(|medium| medium.as_ref()?.bath_range()));
    move || {
        let range = range.get()?;
        Some(view! {
            <Typed
                label=texts::quench::BATH_TEMPERATURE
                quantity=Signal::derive(move || within(bench.scale.get(), range))
                value=Signal::derive(move || {
                    medium.with(|medium| medium.as_ref().map_or(range.least_c, |m| m.bath_c))
                })
                set=move |bath_c| {
                    if let Some(choice) = chosen.get_untracked() {
                        set.run(choice.with_bath(bath_c));
                    }
                }
            />
            <p class="hint">
                {move || {
                    let scale = bench.scale.get();
                    let [least, most] = [range.least_c, range.most_c]
                        .map(|c| format_temperature(c, scale));
                    texts::quench::bath_range(&least, &most, range.reason)
                }}
            </p>
        })
    }
}
