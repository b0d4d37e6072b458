//! What the shop owns: entered once, used by the search and by how sure a route is.

use super::decide::Deciding;
use crate::controls::{Quantity, Segment, Typed, live, quantities};
use crate::state::bench;
use leptos::prelude::*;
use recalesce::advise::{ColdMeans, Furnace, Quenchant, Shop, TemperOven};
use recalesce::heat::MediumChoice;
use recalesce::route::{Thermocouple, inside_a_sentence, shop_media};
use recalesce::units::{TemperatureScale, format_temperature, format_temperature_band};
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

fn furnace(deciding: Deciding, place: usize) -> AnyView {
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

fn quenchant(deciding: Deciding, place: usize) -> AnyView {
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
                                    quenchant.medium = MediumChoice::Named(picked);
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

fn cold(deciding: Deciding, place: usize) -> AnyView {
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
            texts::decide::A_COLD_MEANS,
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
fn oven(deciding: Deciding, _: usize) -> AnyView {
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

/// The shop in a line.
fn line(shop: &Shop, scale: TemperatureScale) -> String {
    let furnaces = shop.furnaces.iter().map(|furnace| {
        let to = format_temperature(furnace.most_c, scale);
        if furnace.holds {
            let band = format_temperature_band(furnace.band_k, scale);
            texts::decide::furnace_held(&furnace.name, &to, &band)
        } else {
            texts::decide::furnace_by_eye(&furnace.name, &to)
        }
    });
    let quenchants = shop.quenchants.iter().map(|quenchant| {
        quenchant.medium.resolve().map_or_else(
            |error| error.to_string(),
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
        deciding
            .shop
            .with(|shop| shop.validate().err().map(|error| error.to_string()))
    };
    let is_foreign = move || {
        bench.route.with(|route| {
            let medium = &route.quench.medium;
            let is_listed = matches!(medium, MediumChoice::Named(_));
            let owns = deciding
                .shop
                .with(|shop| shop.quenchants.iter().any(|own| own.medium == *medium));
            !is_listed
                && !owns
                && deciding
                    .shop
                    .with(|shop| shop.quenchants.len() < Shop::MOST_OF_A_KIND)
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
                <Show when=is_foreign>
                    <button
                        type="button"
                        class="press"
                        on:click=move |_| {
                            let medium = bench.route.with_untracked(|r| r.quench.medium.clone());
                            deciding
                                .change_shop(|shop| {
                                    shop.quenchants.push(Quenchant { medium, agitation: 1.0 });
                                });
                        }
                    >
                        {texts::decide::ADD_BENCH_QUENCHANT}
                    </button>
                </Show>
                {list(
                    deciding,
                    texts::decide::COLD_MEANS,
                    texts::decide::ADD_A_COLD_MEANS,
                    |shop| shop.colds.len(),
                    cold,
                    |shop| {
                        shop.colds
                            .push(ColdMeans {
                                name: texts::decide::NEW_COLD_MEANS.to_owned(),
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
        <p class="hint">{words}</p>
        <p class="wrong" role="alert">
            {wrong}
        </p>
    }
    .into_any()
}
