//! The fields of one thing that the shop owns: of a furnace, a quenchant, a means of cold, the oven.

use super::decide::Deciding;
use crate::controls::{Quantity, Segment, Typed, live, quantities};
use crate::state::bench;
use leptos::prelude::*;
use recalesce::advise::{Furnace, Shop, TemperOven};
use recalesce::heat::MediumChoice;
use recalesce::route::shop_media;
use recalesce::units::TemperatureScale;
use recalesce_texts::page as texts;

/// Most letters of a name.
const LONGEST_NAME: &str = "60";
/// What stands for a quenchant that is not of the list.
const OWN: &str = "own";

/// A typed number of the shop.
fn number(
    deciding: Deciding,
    label: &'static str,
    quantity: fn(TemperatureScale) -> Quantity,
    get: impl Fn(&Shop) -> Option<f64> + Send + Sync + 'static,
    set: impl Fn(&mut Shop, f64) + Send + Sync + 'static,
) -> AnyView {
    let bench = bench();
    view! {
        <Typed
            label=label
            quantity=Signal::derive(move || quantity(bench.scale.get()))
            value=Signal::derive(move || deciding.shop.with(|shop| get(shop)).unwrap_or_default())
            set=move |value| deciding.change_shop(|shop| set(shop, value))
        />
    }
    .into_any()
}

/// What the shop calls something.
fn name(
    deciding: Deciding,
    get: impl Fn(&Shop) -> Option<String> + Send + Sync + 'static,
    set: impl Fn(&mut Shop, String) + Send + Sync + 'static,
) -> AnyView {
    view! {
        <label class="field">
            <span class="label">{texts::decide::NAME}</span>
            <input
                class="text"
                type="text"
                maxlength=LONGEST_NAME
                autocomplete="off"
                prop:value=move || deciding.shop.with(|shop| get(shop)).unwrap_or_default()
                on:change:target=move |event| {
                    let text = event.target().value();
                    deciding.change_shop(|shop| set(shop, text));
                }
            />
        </label>
    }
    .into_any()
}

/// A button that takes something out of the shop.
fn remove(
    deciding: Deciding,
    what: &'static str,
    take: impl Fn(&mut Shop) + Send + Sync + 'static,
) -> AnyView {
    view! {
        <button
            type="button"
            class="press"
            aria-label=texts::decide::remove_this(what)
            on:click=move |_| deciding.change_shop(&take)
        >
            {texts::decide::REMOVE}
        </button>
    }
    .into_any()
}

pub(super) fn furnace(deciding: Deciding, place: usize) -> AnyView {
    let of = move |get: fn(&Furnace) -> f64| move |shop: &Shop| shop.furnaces.get(place).map(get);
    let to = move |set: fn(&mut Furnace, f64)| {
        move |shop: &mut Shop, value| {
            if let Some(furnace) = shop.furnaces.get_mut(place) {
                set(furnace, value);
            }
        }
    };
    let temperature = |scale| quantities::temperature(scale, Shop::FURNACE_C);
    let holds = Signal::derive(move || {
        deciding
            .shop
            .with(|shop| shop.furnaces.get(place).is_none_or(|furnace| furnace.holds))
    });
    view! {
        {name(
            deciding,
            move |shop| shop.furnaces.get(place).map(|furnace| furnace.name.clone()),
            move |shop, text| {
                if let Some(furnace) = shop.furnaces.get_mut(place) {
                    furnace.name = text;
                }
            },
        )}
        {number(deciding, texts::decide::FROM, temperature, of(|f| f.least_c), to(|f, c| f.least_c = c))}
        {number(deciding, texts::decide::TO, temperature, of(|f| f.most_c), to(|f, c| f.most_c = c))}
        {number(
            deciding,
            texts::decide::WANDERS_BY,
            |scale| quantities::band(scale, Shop::BAND_K),
            of(|f| f.band_k),
            to(|f, k| f.band_k = k),
        )}
        {number(
            deciding,
            texts::decide::HOTTER_BY,
            |scale| quantities::difference(scale, Shop::OFFSET_K),
            of(|f| f.offset_k),
            to(|f, k| f.offset_k = k),
        )}
        <Segment
            name=texts::decide::TEMPERATURE
            entries=vec![(true, texts::decide::HELD), (false, texts::decide::BY_EYE)]
            chosen=holds
            pick=move |picked| {
                deciding
                    .change_shop(|shop| {
                        if let Some(furnace) = shop.furnaces.get_mut(place) {
                            furnace.holds = picked;
                        }
                    });
            }
        />
        {remove(
            deciding,
            texts::decide::A_FURNACE,
            move |shop| {
                if place < shop.furnaces.len() {
                    shop.furnaces.remove(place);
                }
            },
        )}
    }
    .into_any()
}

pub(super) fn quenchant(deciding: Deciding, place: usize) -> AnyView {
    let bench = bench();
    let options = live(move || {
        let scale = bench.scale.get();
        let now = deciding.shop.with_untracked(|shop| {
            shop.quenchants
                .get(place)
                .map(|quenchant| quenchant.medium.clone())
        });
        let listed = shop_media().map(|medium| {
            let is_now = matches!(&now, Some(MediumChoice::Named(name)) if *name == medium.name);
            view! {
                <option value=medium.name.clone() selected=is_now>
                    {medium.title.words(scale)}
                </option>
            }
        });
        let listed = listed.collect_view();
        let own = now
            .filter(|choice| !matches!(choice, MediumChoice::Named(_)))
            .and_then(|choice| choice.resolve().ok())
            .map(|medium| {
                view! {
                    <option value=OWN selected=true>
                        {medium.title.words(scale)}
                    </option>
                }
            });
        view! {
            {own}
            {listed}
        }
        .into_any()
    });
    view! {
        <label class="field wide">
            <span class="label">{texts::decide::A_QUENCHANT}</span>
            <select
                class="text"
                on:change:target=move |event| {
                    let picked = event.target().value();
                    if picked != OWN {
                        deciding
                            .change_shop(|shop| {
                                if let Some(quenchant) = shop.quenchants.get_mut(place) {
                                    quenchant.take(MediumChoice::Named(picked));
                                }
                            });
                    }
                }
            >
                {options}
            </select>
        </label>
        {number(
            deciding,
            texts::decide::MOVED,
            |_| quantities::plain("", 2, Shop::AGITATION, 0.1, texts::decide::WRITE_A_STIR),
            move |shop| shop.quenchants.get(place).map(|quenchant| quenchant.agitation),
            move |shop, factor| {
                if let Some(quenchant) = shop.quenchants.get_mut(place) {
                    quenchant.agitation = factor;
                }
            },
        )}
        {remove(
            deciding,
            texts::decide::A_QUENCHANT,
            move |shop| {
                if place < shop.quenchants.len() {
                    shop.quenchants.remove(place);
                }
            },
        )}
    }
    .into_any()
}

pub(super) fn cold(deciding: Deciding, place: usize) -> AnyView {
    view! {
        {name(
            deciding,
            move |shop| shop.colds.get(place).map(|cold| cold.name.clone()),
            move |shop, text| {
                if let Some(cold) = shop.colds.get_mut(place) {
                    cold.name = text;
                }
            },
        )}
        {number(
            deciding,
            texts::decide::DOWN_TO,
            |scale| quantities::temperature(scale, Shop::COLD_C),
            move |shop| shop.colds.get(place).map(|cold| cold.temperature_c),
            move |shop, c| {
                if let Some(cold) = shop.colds.get_mut(place) {
                    cold.temperature_c = c;
                }
            },
        )}
        {remove(
            deciding,
            texts::decide::A_COLD_BATH,
            move |shop| {
                if place < shop.colds.len() {
                    shop.colds.remove(place);
                }
            },
        )}
    }
    .into_any()
}

/// The oven for tempers, as a list of none or one.
pub(super) fn oven(deciding: Deciding, _: usize) -> AnyView {
    let of = |get: fn(&TemperOven) -> f64| move |shop: &Shop| shop.temper_oven.as_ref().map(get);
    let to = |set: fn(&mut TemperOven, f64)| {
        move |shop: &mut Shop, value| {
            if let Some(oven) = &mut shop.temper_oven {
                set(oven, value);
            }
        }
    };
    let temperature = |scale| quantities::temperature(scale, Shop::OVEN_C);
    view! {
        {number(deciding, texts::decide::FROM, temperature, of(|o| o.least_c), to(|o, c| o.least_c = c))}
        {number(deciding, texts::decide::TO, temperature, of(|o| o.most_c), to(|o, c| o.most_c = c))}
        {number(
            deciding,
            texts::decide::WANDERS_BY,
            |scale| quantities::band(scale, Shop::BAND_K),
            of(|o| o.band_k),
            to(|o, k| o.band_k = k),
        )}
        {remove(deciding, texts::decide::AN_OVEN, |shop| shop.temper_oven = None)}
    }
    .into_any()
}
