//! From the composition to the austenite that leaves the furnace.

use super::workings::Workings;
use super::{Derivation, Quantity, contents, given};
use crate::numeric::formula::{Formula, Number};
use crate::phases::{Bound, UpperLimit, height_at_bound};
use crate::route::run::hot_s;
use crate::soak::decarburised_depth_mm;
use crate::sources::astm_e112::{self, grain_number_of};
use crate::sources::{
    agren_1979, bearing_card_1999, callister_2007, lee_2008, paidassi_1958, paul_1994,
    pilling_bedworth_1923, smith_1948,
};
use crate::steel::Element;
use recalesce_texts::grammar::at_the_head;
use recalesce_texts::route::why::{self as shared, soak as texts};

pub(super) fn derive(quantity: Quantity, w: &Workings<'_>) -> Option<Derivation> {
    Some(match quantity {
        Quantity::Content(element) => Derivation::new(
            shared::of_the_steel(&at_the_head(element.name())),
            element.symbol(),
            w.route.composition.get(element),
            "wt %",
        )
        .how(texts::CONTENT_HOW),
        Quantity::A1 => {
            bound(Bound::A1, texts::A1, "A_1", w.outcome.critical.a1_c, w).how(texts::A1_HOW)
        }
        Quantity::SecondPhase => match w.outcome.critical.upper {
            UpperLimit::A3 { temperature_c } => {
                bound(Bound::A3, texts::A3, "A_3", temperature_c, w)
            }
            UpperLimit::Acm { temperature_c } => {
                bound(Bound::Acm, texts::ACM, "A_cm", temperature_c, w)
            }
        }
        .how(texts::SECOND_PHASE_HOW),
        Quantity::AllowedCarbon => allowed_carbon(w),
        Quantity::Dissolved(Element::C) => dissolved_carbon(w),
        Quantity::Dissolved(element) => dissolved(element, w),
        Quantity::CarbideMass => carbide_mass(w),
        Quantity::CarbideVolume => carbide_volume(w),
        Quantity::Intercept => {
            Derivation::new(texts::INTERCEPT, "d", w.outcome.soak.grain_um, "µm")
                .from(vec![
                    given(
                        "T",
                        texts::SOAK_TEMPERATURE,
                        w.route.soak.temperature_c,
                        "°C",
                    ),
                    given("t", texts::SOAK_TIME, w.route.soak.time_min, "min"),
                    w.input(
                        "x_K",
                        shared::CARBIDE_LEFT,
                        w.outcome.soak.end.carbide_volume_fraction,
                        "",
                        Quantity::CarbideVolume,
                    ),
                ])
                .how(texts::INTERCEPT_HOW)
                .source(&[
                    &lee_2008::SOURCE,
                    &bearing_card_1999::SOURCE,
                    &smith_1948::SOURCE,
                ])
                .errs(texts::intercept_error(&bearing_card_1999::LEFT_OUT.words()))
        }
        Quantity::Grain => Derivation::new(
            texts::AUSTENITE_GRAIN,
            "G",
            w.outcome.soak.end.grain_astm,
            "ASTM",
        )
        .by(
            vec![w.input(
                "d",
                texts::BETWEEN_BOUNDARIES,
                w.outcome.soak.grain_um,
                "µm",
                Quantity::Intercept,
            )],
            |x| grain_number_of(x.get("d")),
        )
        .source(&[&astm_e112::SOURCE])
        .errs(texts::GRAIN_ERROR),
        Quantity::Decarburised => decarburised(w)?,
        Quantity::Scale => scale(w)?,
        Quantity::Stock => stock(w)?,
        _ => return None,
    })
}

/// How far from a bound the check may look to say what its accuracy allows, K: what the search leaves open,
/// and the digits of the solver.
const BESIDE_K: f64 = 0.05;

/// A temperature at which a phase comes or goes, with the equation that it solves.
fn bound(
    bound: Bound,
    title: &'static str,
    symbol: &'static str,
    value_c: f64,
    w: &Workings<'_>,
) -> Derivation {
    let derivation = Derivation::new(title, symbol, value_c, "°C")
        .from(nominal(w))
        .valid(texts::EQUILIBRIUM_VALIDITY)
        .errs(texts::BOUND_ERROR);
    let steel = w.route.composition;
    let height =
        move |temperature_c| height_at_bound(&steel, bound, temperature_c).unwrap_or(f64::NAN);
    let beside = [-BESIDE_K, BESIDE_K].map(|off_k| height(value_c + off_k));
    let [below, above] = beside;
    // Where the second phase is still there at the highest temperature there is nothing to solve.
    if below * above >= 0.0 || (below * above).is_nan() {
        return derivation;
    }
    let phase = match bound {
        Bound::A1 => shared::AUSTENITE,
        Bound::A3 => shared::FERRITE,
        Bound::Acm => shared::CARBIDE,
    };
    derivation.solves(
        Formula::symbol(symbol, value_c).curve("Δg", height),
        beside.map(f64::abs).into_iter().fold(0.0, f64::max),
        texts::bound_solves(phase),
    )
}

fn nominal(w: &Workings<'_>) -> Vec<super::Input> {
    let steel = &w.route.composition;
    let there: Vec<Element> = Element::ALL
        .into_iter()
        .filter(|element| steel.get(*element) > 0.0)
        .collect();
    contents(&there, steel, shared::of_the_steel, |element| {
        w.key(Quantity::Content(element))
    })
}

fn allowed_carbon(w: &Workings<'_>) -> Derivation {
    let limit = &w.outcome.soak.limit;
    Derivation::new(texts::ALLOWED_CARBON, "C_eq", limit.austenite.c, "wt %")
        .by(
            vec![
                w.input(
                    "C_0",
                    shared::CARBON_OF_STEEL,
                    w.route.composition.c,
                    "wt %",
                    Quantity::Content(Element::C),
                ),
                given(
                    "m_F",
                    texts::FERRITE_AT_EQUILIBRIUM,
                    limit.ferrite_mass_fraction,
                    "",
                ),
                given("C_F", texts::CARBON_OF_FERRITE, limit.ferrite.c, "wt %"),
                given(
                    "m_K",
                    texts::CARBIDE_AT_EQUILIBRIUM,
                    limit.carbide_mass_fraction,
                    "",
                ),
                given("C_K", texts::CARBON_OF_CARBIDE, limit.carbide.c, "wt %"),
                given(
                    "m_A",
                    texts::AUSTENITE_AT_EQUILIBRIUM,
                    limit.austenite_mass_fraction,
                    "",
                ),
            ],
            |x| {
                (x.get("C_0") - x.get("m_F") * x.get("C_F") - x.get("m_K") * x.get("C_K"))
                    / x.get("m_A")
            },
        )
        .how(texts::allowed_carbon_how())
        .valid(texts::EQUILIBRIUM_VALIDITY)
        .errs(texts::ALLOWED_CARBON_ERROR)
}

fn dissolved_carbon(w: &Workings<'_>) -> Derivation {
    let soak = &w.outcome.soak;
    let masses = &soak.masses;
    Derivation::new(texts::CARBON_IN_SOLUTION, "C", soak.end.carbon_wt, "wt %")
        .by(
            vec![
                w.input(
                    "C_0",
                    shared::CARBON_OF_STEEL,
                    w.route.composition.c,
                    "wt %",
                    Quantity::Content(Element::C),
                ),
                given(
                    "K_C",
                    texts::CARBON_IN_CARBIDE,
                    masses.carbide_content.c,
                    "wt %",
                ),
                given("m_F", texts::FERRITE_LEFT_BY_MASS, masses.ferrite, ""),
                given(
                    "C_F",
                    texts::CARBON_OF_FERRITE,
                    masses.ferrite_carbon_wt,
                    "wt %",
                ),
                given("m_A", texts::AUSTENITE_BY_MASS, masses.austenite, ""),
            ],
            |x| (x.get("C_0") - x.get("m_F") * x.get("C_F") - x.get("K_C")) / x.get("m_A"),
        )
        .how(texts::dissolved_carbon_how(soak.limit.austenite.c))
        .source(&[
            &agren_1979::SOURCE,
            &callister_2007::SOURCE,
            &paul_1994::SOURCE,
        ])
        .errs(texts::DISSOLUTION_ERROR)
}

fn dissolved(element: Element, w: &Workings<'_>) -> Derivation {
    let soak = &w.outcome.soak;
    let (masses, limit) = (&soak.masses, &soak.limit);
    let last_wt = limit.carbide.get(element) * limit.carbide_mass_fraction;
    let settled_wt =
        (w.route.composition.get(element) - last_wt) / (1.0 - limit.carbide_mass_fraction);
    let over = if settled_wt > 0.0 {
        limit.austenite.get(element) / settled_wt
    } else {
        1.0
    };
    let (whole, held) = (
        format!("{}_0", element.symbol()),
        format!("K_{}", element.symbol()),
    );
    Derivation::new(
        shared::in_solution(&at_the_head(element.name())),
        element.symbol(),
        w.dissolved().get(element),
        "wt %",
    )
    .by(
        vec![
            w.input(
                whole.clone(),
                shared::of_the_steel(element.name()),
                w.route.composition.get(element),
                "wt %",
                Quantity::Content(element),
            ),
            given(
                held.clone(),
                texts::in_carbide(element.name()),
                masses.carbide_content.get(element),
                "wt %",
            ),
            w.input(
                "m_K",
                texts::CARBIDE_LEFT_BY_MASS,
                masses.carbide,
                "",
                Quantity::CarbideMass,
            ),
            given("r", texts::OVER_SETTLED, over, ""),
        ],
        |x| {
            let one = Formula::constant(1.0);
            (x.get(&whole) - x.get(&held)) / (one - x.get("m_K")) * x.get("r")
        },
    )
    .how(texts::DISSOLUTION)
    .source(&[&agren_1979::SOURCE, &paul_1994::SOURCE])
    .errs(texts::DISSOLVED_ERROR)
}

fn carbide_mass(w: &Workings<'_>) -> Derivation {
    let masses = &w.outcome.soak.masses;
    Derivation::new(texts::CARBIDE_MASS, "m_K", masses.carbide, "")
        .by(
            vec![
                given("m_A", texts::AUSTENITE_BY_MASS, masses.austenite, ""),
                given("m_F", texts::FERRITE_LEFT_BY_MASS, masses.ferrite, ""),
            ],
            |x| Formula::constant(1.0) - x.get("m_A") - x.get("m_F"),
        )
        .how(texts::DISSOLUTION)
        .errs(texts::DISSOLUTION_ERROR)
}

fn carbide_volume(w: &Workings<'_>) -> Derivation {
    let soak = &w.outcome.soak;
    let masses = &soak.masses;
    Derivation::new(
        texts::CARBIDE_VOLUME,
        "x_K",
        soak.end.carbide_volume_fraction,
        "",
    )
    .by(
        vec![
            given("v_K", texts::VOLUME_OF_CARBIDE, masses.carbide_volume, ""),
            w.input(
                "m_K",
                texts::CARBIDE_LEFT_BY_MASS,
                masses.carbide,
                "",
                Quantity::CarbideMass,
            ),
        ],
        |x| {
            let one = Formula::constant(1.0);
            x.get("v_K") / (x.get("v_K") + (one - x.get("m_K")))
        },
    )
    .how(texts::DISSOLUTION)
    .errs(texts::DISSOLUTION_ERROR)
}

/// A depth that grows with the root of time.
fn by_root_of_time(
    (title, symbol, value_mm): (&'static str, &'static str, f64),
    (first, first_mm): (&'static str, f64),
    w: &Workings<'_>,
) -> Derivation {
    let hot_s = hot_s(w.route, &w.outcome.heating);
    Derivation::new(title, symbol, value_mm, "mm")
        .by(
            vec![
                given("z_1", first, first_mm, "mm"),
                given("t", texts::TIME_HOT, hot_s, "s"),
            ],
            |x| x.get("z_1") * x.get("t").sqrt(),
        )
        .errs(texts::UPPER_BOUND)
}

fn decarburised(w: &Workings<'_>) -> Option<Derivation> {
    let depth_mm = w.outcome.skin.given()?.decarburised.most_mm;
    let first_mm = decarburised_depth_mm(w.route.soak.temperature_c, 1.0);
    let first = (texts::DECARBURISED_IN_FIRST_SECOND, first_mm);
    Some(
        by_root_of_time((texts::DECARBURISED, "z_C", depth_mm), first, w)
            .how(texts::DECARBURISED_HOW)
            .source(&[&callister_2007::SOURCE])
            .valid(texts::DECARBURISED_VALIDITY),
    )
}

fn scale(w: &Workings<'_>) -> Option<Derivation> {
    let scale_mm = w.outcome.skin.given()?.scale.most_mm;
    let first_mm = paidassi_1958::scale_mm(w.route.soak.temperature_c + 273.15, 1.0);
    let first = (texts::SCALE_IN_FIRST_SECOND, first_mm);
    Some(
        by_root_of_time((texts::SCALE, "z_S", scale_mm), first, w)
            .how(texts::SCALE_HOW)
            .source(&[&paidassi_1958::SOURCE])
            .valid(texts::SCALE_VALIDITY),
    )
}

fn stock(w: &Workings<'_>) -> Option<Derivation> {
    let skin = w.outcome.skin.given()?;
    Some(
        Derivation::new(texts::STOCK, "z", skin.stock_per_side_mm, "mm")
            .by(
                vec![
                    w.input(
                        "z_C",
                        texts::DEPTH_WITHOUT_CARBON,
                        skin.decarburised.most_mm,
                        "mm",
                        Quantity::Decarburised,
                    ),
                    w.input(
                        "z_S",
                        texts::ITS_SCALE,
                        skin.scale.most_mm,
                        "mm",
                        Quantity::Scale,
                    ),
                    given(
                        "q",
                        texts::SCALE_OVER_IRON,
                        pilling_bedworth_1923::WUSTITE_ON_IRON,
                        "",
                    ),
                ],
                |x| x.get("z_C") + x.get("z_S") / x.get("q"),
            )
            .source(&[&pilling_bedworth_1923::SOURCE])
            .errs(texts::UPPER_BOUND),
    )
}
