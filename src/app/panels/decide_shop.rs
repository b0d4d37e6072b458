//! What the shop owns: entered once, used by the search and by how sure a route is.

use super::decide::Deciding;
use super::decide_shop_owned::{cold, furnace, oven, quenchant};
use crate::controls::live;
use crate::state::bench;
use leptos::prelude::*;
use recalesce::advise::{ColdBath, Furnace, Quenchant, Shop, TemperOven};
use recalesce::heat::MediumChoice;
use recalesce::route::{Thermocouple, inside_a_sentence};
use recalesce::units::{TemperatureScale, format_temperature, format_temperature_band};
use recalesce_texts::page as texts;

/// A list of one kind of thing, with a button that adds one.
fn list(
    deciding: Deciding,
    title: &'static str,
    adds: &'static str,
    count: fn(&Shop) -> usize,
    row: fn(Deciding, usize) -> AnyView,
    add: fn(&mut Shop),
    most: usize,
) -> AnyView {
    let rows = Memo::new(move |_| deciding.shop.with(count));
    view! {
        <section aria-label=title>
            <h4>{title}</h4>
            {live(move || {
                (0..rows.get())
                    .map(|place| {
                        let name = format!("{title}, {}", place + 1);
                        view! {
                            <div class="owned" role="group" aria-label=name>
                                {row(deciding, place)}
                            </div>
                        }
                    })
                    .collect_view()
                    .into_any()
            })}
            <Show when=move || rows.get() < most>
                <button type="button" class="press" on:click=move |_| deciding.change_shop(add)>
                    {adds}
                </button>
            </Show>
        </section>
    }
    .into_any()
}

/// The shop in a line.
fn line(shop: &Shop, scale: TemperatureScale) -> String {
    let furnaces = shop.furnaces.iter().map(|furnace| {
        let to = format_temperature(furnace.most_c, scale);
        let band = format_temperature_band(furnace.band_k(), scale);
        if furnace.holds {
            texts::decide::furnace_held(&furnace.name, &to, &band)
        } else {
            texts::decide::furnace_by_eye(&furnace.name, &to, &band)
        }
    });
    let quenchants = shop.quenchants.iter().map(|quenchant| {
        quenchant.medium.resolve().map_or_else(
            |error| error.words(scale),
            |medium| inside_a_sentence(&medium.title.words(scale)),
        )
    });
    let colds = shop.colds.iter().map(|cold| {
        let to = format_temperature(cold.temperature_c, scale);
        texts::decide::cold_down_to(&cold.name, &to)
    });
    let oven = shop.temper_oven.iter().map(|oven| {
        let to = format_temperature(oven.most_c, scale);
        texts::decide::oven_to(&to)
    });
    let all: Vec<String> = furnaces
        .chain(quenchants)
        .chain(colds)
        .chain(oven)
        .collect();
    if all.is_empty() {
        texts::decide::NOTHING_YET.to_owned()
    } else {
        all.join("; ")
    }
}

/// The fields.
#[component]
pub(super) fn ShopFields(deciding: Deciding) -> impl IntoView {
    let bench = bench();
    let is_open = RwSignal::new(false);
    let words = move || deciding.shop.with(|shop| line(shop, bench.scale.get()));
    let wrong = move || {
        deciding.shop.with(|shop| {
            shop.validate()
                .err()
                .map(|error| error.words(bench.scale.get()))
        })
    };
    let is_example = move || deciding.shop.with(|shop| *shop == Shop::example());
    let foreign = move || {
        let medium = bench.route.with(|route| route.quench.medium.clone());
        let lacks = deciding.shop.with(|shop| {
            let mut owned = shop.quenchants.iter().map(|own| &own.medium);
            shop.quenchants.len() < Shop::MOST_OF_A_KIND && owned.all(|own| *own != medium)
        });
        if matches!(medium, MediumChoice::Named(_)) || !lacks {
            return None;
        }
        let title = medium.resolve().ok()?.title.words(bench.scale.get());
        let add = move |_| {
            let medium = medium.clone();
            deciding.change_shop(|shop| {
                shop.quenchants.push(Quenchant {
                    medium,
                    agitation: 1.0,
                });
            });
        };
        Some(view! {
            <p>
                {texts::decide::not_in_shop(&title)} " "
                <button type="button" class="press" on:click=add>
                    {texts::decide::ADD_TO_SHOP}
                </button>
            </p>
        })
    };
    let inside = move || {
        is_open.get().then(|| {
            view! {
                {list(
                    deciding,
                    texts::decide::FURNACES,
                    texts::decide::ADD_A_FURNACE,
                    |shop| shop.furnaces.len(),
                    furnace,
                    |shop| {
                        shop.furnaces
                            .push(Furnace {
                                name: texts::decide::new_furnace(shop.furnaces.len() + 1),
                                least_c: 100.0,
                                most_c: 1100.0,
                                band_k: 8.0,
                                offset_k: 0.0,
                                thermocouple: Thermocouple::default(),
                                holds: true,
                            });
                    },
                    Shop::MOST_OF_A_KIND,
                )}
                {list(
                    deciding,
                    texts::decide::QUENCHANTS,
                    texts::decide::ADD_A_QUENCHANT,
                    |shop| shop.quenchants.len(),
                    quenchant,
                    |shop| {
                        shop.quenchants
                            .push(Quenchant {
                                medium: MediumChoice::Named("oil_medium".to_owned()),
                                agitation: 1.0,
                            });
                    },
                    Shop::MOST_OF_A_KIND,
                )}
                {list(
                    deciding,
                    texts::decide::COLD_BATHS,
                    texts::decide::ADD_A_COLD_BATH,
                    |shop| shop.colds.len(),
                    cold,
                    |shop| {
                        shop.colds
                            .push(ColdBath {
                                name: texts::decide::NEW_COLD_BATH.to_owned(),
                                temperature_c: -18.0,
                            });
                    },
                    Shop::MOST_OF_A_KIND,
                )}
                {list(
                    deciding,
                    texts::decide::OVEN,
                    texts::decide::ADD_AN_OVEN,
                    |shop| usize::from(shop.temper_oven.is_some()),
                    oven,
                    |shop| {
                        shop.temper_oven
                            .get_or_insert(TemperOven {
                                least_c: 100.0,
                                most_c: 300.0,
                                band_k: 8.0,
                            });
                    },
                    1,
                )}
                <p class="hint">
                    {texts::decide::WITHOUT_OVEN}
                </p>
            }
        })
    };
    view! {
        <details
            class="decided"
            on:toggle=move |event| {
                is_open.set(event_target::<web_sys::Element>(&event).has_attribute("open"));
            }
        >
            <summary>{texts::decide::THE_SHOP}</summary>
            {inside}
        </details>
        <p class="hint">
            {words} {move || is_example().then_some(texts::decide::SHOP_IS_MADE_UP)}
        </p>
        {foreign}
        <p class="wrong" role="alert">
            {wrong}
        </p>
    }
    .into_any()
}
