//! The quenchants of the list that a shop can quench in: which stand beside one, and how they are sorted by
//! speed.

use crate::heat::{Family, Medium, Section, media, medium, quasi_steady_s};

/// Fluids of the list that calibrate probes: no shop quenches in them.
const REFERENCE_FLUIDS: [&str; 1] = ["ref_fluid"];

/// The quenchants of the list that a shop can quench in, from fast to slow on a thin plate.
pub fn shop_media() -> impl Iterator<Item = &'static Medium> {
    media().iter().filter(|medium| is_of_a_shop(medium))
}

fn is_of_a_shop(medium: &Medium) -> bool {
    !REFERENCE_FLUIDS.contains(&medium.name.as_str())
}

/// The next slower medium of the list that a shop with this one has or could get: an oil for an
/// oil, gas or air for gas, plates or air for plates. Water and polymer go on to oil.
pub(super) fn next_slower_than(here: &Medium) -> Option<&'static Medium> {
    use Family::{Air, Brine, Gas, HotOil, Oil, Own, Plates, Polymer, Salt, VegetableOil, Water};
    let kind: &[Family] = match here.family {
        Brine | Water | Polymer => &[Brine, Water, Polymer, Oil, VegetableOil],
        Oil | VegetableOil | HotOil => &[Oil, VegetableOil, HotOil],
        Salt => &[Salt],
        Plates => &[Plates, Air],
        Gas | Air => &[Gas, Air],
        Own => return None,
    };
    let list = media();
    let place = list.iter().position(|medium| medium.name == here.name)?;
    list.iter()
        .skip(place + 1)
        .find(|medium| is_of_a_shop(medium) && kind.contains(&medium.family))
}

/// The quenchants of the list that a shop can change to without another tank of another kind: oils
/// with oils, water with brine and polymer, gas and air. From fast to slow, the one of this name
/// among them.
pub fn of_its_kind(name: &str) -> impl Iterator<Item = &'static Medium> + use<> {
    use Family::{Air, Brine, Gas, Oil, Polymer, VegetableOil, Water};
    let kind = |family: Family| match family {
        Brine | Water | Polymer => Water,
        Oil | VegetableOil => Oil,
        Gas | Air => Air,
        other => other,
    };
    let here = medium(name).map(|here| kind(here.family));
    shop_media().filter(move |other| Some(kind(other.family)) == here)
}

/// Sorts quenchants from fast to slow for a section, as far as a glance tells.
pub(super) fn sort_by_speed(list: &mut [&Medium], section: Section) {
    list.sort_by_cached_key(|medium| quasi_steady_s(medium, section).to_bits());
}

/// By how many places a quenchant may stand before or behind where it would by its speed for a section:
/// a test measures it. Water gains most on the others where the surface is far colder than the core.
pub(super) fn out_of_order(section: Section) -> usize {
    match section.thickness_mm() {
        ..=4.0 => 1,
        ..=12.0 => 2,
        ..=30.0 => 4,
        _ => 7,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::heat::{Quenching, cool};

    /// How far quenchants are from where a glance puts them is what the search allows.
    #[test]
    fn quenchants_are_as_far_out_of_order_as_the_search_allows() {
        let plate = |thickness_mm| Section::Plate { thickness_mm };
        let round = |diameter_mm| Section::Round { diameter_mm };
        let square = |side_mm| Section::Square { side_mm };
        let sections = [
            0.5, 2.0, 3.0, 4.0, 6.0, 8.0, 10.0, 12.0, 15.0, 20.0, 30.0, 40.0, 100.0,
        ];
        for section in sections
            .into_iter()
            .flat_map(|mm| [plate(mm), round(mm), square(mm)])
        {
            let to_540_s = |medium: &Medium| {
                let cooled = cool(&Quenching {
                    section,
                    medium,
                    agitation: 1.0,
                    start_c: 800.0,
                    air_delay_s: 0.0,
                    end_c: 530.0,
                    then: &[],
                    martensite_start_c: None,
                });
                cooled.unwrap().slowest().unwrap().time_to_c(540.0).unwrap()
            };
            let mut list: Vec<&Medium> = shop_media().collect();
            sort_by_speed(&mut list, section);
            let times: Vec<f64> = list.iter().map(|medium| to_540_s(medium)).collect();
            let mut order: Vec<usize> = (0..times.len()).collect();
            order.sort_by(|a, b| times[*a].total_cmp(&times[*b]));
            let places = order.iter().enumerate();
            let most = places.map(|(now, listed)| now.abs_diff(*listed)).max();
            assert!(most <= Some(out_of_order(section)), "{section:?}: {most:?}");
        }
    }
}
