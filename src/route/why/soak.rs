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

const EQUILIBRIUM: &str = "Equilibrium: the amounts and contents of all phases at which the Gibbs energy of the steel is least, found by Newton's method from published parameters for each phase.";
const EQUILIBRIUM_VALIDITY: &str =
    "up to 2.5 % C, 18 % Cr, 3 % Mn or Si, 4 % Ni, 2 % Mo, 1.2 % V, 4 % W";
const DISSOLUTION: &str = "How much carbide is left was followed in time: spheres that shrink as carbon first, then the alloy of the carbide, moves away.";
const DISSOLUTION_ERROR: &str =
    "equilibrium ±0.02 to 0.04 % C; published soaks of 1 C–1.5 Cr steel differ by 0.1 %";

pub(super) fn derive(quantity: Quantity, w: &Workings<'_>) -> Option<Derivation> {
    Some(match quantity {
        Quantity::Content(element) => Derivation::new(
            format!("{} of the steel", capital(element.name())),
            element.symbol(),
            w.route.composition.get(element),
            "wt %",
        )
        .how("Given with the route: the grade's usual content, or what was entered."),
        Quantity::A1 => bound(Bound::A1, "A1", "A_1", w.outcome.critical.a1_c, w)
            .how("The lowest temperature at which equilibrium holds austenite, found by false position to 0.02 K. On heating in a shop it begins 10 to 40 K higher."),
        Quantity::SecondPhase => match w.outcome.critical.upper {
            UpperLimit::A3 { temperature_c } => bound(Bound::A3, "A3", "A_3", temperature_c, w),
            UpperLimit::Acm { temperature_c } => bound(Bound::Acm, "Acm", "A_cm", temperature_c, w),
        }
        .how("The temperature at which the last of the second phase is gone at equilibrium, found by false position to 0.02 K."),
        Quantity::AllowedCarbon => allowed_carbon(w),
        Quantity::Dissolved(Element::C) => dissolved_carbon(w),
        Quantity::Dissolved(element) => dissolved(element, w),
        Quantity::CarbideMass => carbide_mass(w),
        Quantity::CarbideVolume => carbide_volume(w),
        Quantity::Intercept => Derivation::new(
            "Mean distance between grain boundaries",
            "d",
            w.outcome.soak.grain_um,
            "µm",
        )
        .from(vec![
            given("T", "soak temperature", w.route.soak.temperature_c, "°C"),
            given("t", "soak time", w.route.soak.time_min, "min"),
            w.input("x_K", "carbide left", w.outcome.soak.end.carbide_volume_fraction, "", Quantity::CarbideVolume),
        ])
        .how("Growth in time from the first grain, as far as the carbide that is left lets the boundaries go.")
        .source(&[&lee_2008::SOURCE, &bearing_card_1999::SOURCE, &smith_1948::SOURCE])
        .errs(format!("a quarter; the table's law: {}", bearing_card_1999::LEFT_OUT.words())),
        Quantity::Grain => Derivation::new("Austenite grain", "G", w.outcome.soak.end.grain_astm, "ASTM")
            .by(
                vec![w.input("d", "mean distance between boundaries", w.outcome.soak.grain_um, "µm", Quantity::Intercept)],
                |x| grain_number_of(x.get("d")),
            )
            .source(&[&astm_e112::SOURCE])
            .errs("about one grain number"),
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
        .valid(EQUILIBRIUM_VALIDITY)
        .errs("5 K for plain carbon steel, 10 K for low alloy, 20 K for 5 to 18 % Cr");
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
        Bound::A1 => "austenite",
        Bound::A3 => "ferrite",
        Bound::Acm => "carbide",
    };
    derivation.solves(
        Formula::symbol(symbol, value_c).curve("Δg", height),
        beside.map(f64::abs).into_iter().fold(0.0, f64::max),
        format!("Δg is how far {phase} lies above the equilibrium of the other phases, as a Gibbs energy in RT for each mole of atoms: less than zero where {phase} is stable."),
    )
}

fn capital(name: &str) -> String {
    let mut letters = name.chars();
    let first = letters.next().map(|c| c.to_ascii_uppercase());
    first.into_iter().chain(letters).collect()
}

fn nominal(w: &Workings<'_>) -> Vec<super::Input> {
    let steel = &w.route.composition;
    let there: Vec<Element> = Element::ALL
        .into_iter()
        .filter(|element| steel.get(*element) > 0.0)
        .collect();
    contents(&there, steel, "of the steel", |element| {
        w.key(Quantity::Content(element))
    })
}

fn allowed_carbon(w: &Workings<'_>) -> Derivation {
    let limit = &w.outcome.soak.limit;
    Derivation::new(
        "Carbon that equilibrium allows in solution",
        "C_eq",
        limit.austenite.c,
        "wt %",
    )
    .by(
        vec![
            w.input(
                "C_0",
                "carbon of the steel",
                w.route.composition.c,
                "wt %",
                Quantity::Content(Element::C),
            ),
            given(
                "m_F",
                "ferrite at equilibrium, by mass",
                limit.ferrite_mass_fraction,
                "",
            ),
            given("C_F", "carbon of that ferrite", limit.ferrite.c, "wt %"),
            given(
                "m_K",
                "carbide at equilibrium, by mass",
                limit.carbide_mass_fraction,
                "",
            ),
            given("C_K", "carbon of that carbide", limit.carbide.c, "wt %"),
            given(
                "m_A",
                "austenite at equilibrium, by mass",
                limit.austenite_mass_fraction,
                "",
            ),
        ],
        |x| {
            (x.get("C_0") - x.get("m_F") * x.get("C_F") - x.get("m_K") * x.get("C_K"))
                / x.get("m_A")
        },
    )
    .how(format!(
        "{EQUILIBRIUM} The carbon of the parts adds up to that of the steel."
    ))
    .valid(EQUILIBRIUM_VALIDITY)
    .errs("0.02 % C for plain carbon steel, 0.04 for low alloy, 0.05 for 5 to 18 % Cr")
}

fn dissolved_carbon(w: &Workings<'_>) -> Derivation {
    let soak = &w.outcome.soak;
    let masses = &soak.masses;
    Derivation::new("Carbon in solution", "C", soak.end.carbon_wt, "wt %")
        .by(
            vec![
                w.input(
                    "C_0",
                    "carbon of the steel",
                    w.route.composition.c,
                    "wt %",
                    Quantity::Content(Element::C),
                ),
                given(
                    "K_C",
                    "carbon in carbide, of the piece",
                    masses.carbide_content.c,
                    "wt %",
                ),
                given("m_F", "ferrite left, by mass", masses.ferrite, ""),
                given(
                    "C_F",
                    "carbon of that ferrite",
                    masses.ferrite_carbon_wt,
                    "wt %",
                ),
                given("m_A", "austenite, by mass", masses.austenite, ""),
            ],
            |x| (x.get("C_0") - x.get("m_F") * x.get("C_F") - x.get("K_C")) / x.get("m_A"),
        )
        .how(format!(
            "{DISSOLUTION} Equilibrium would allow {:.2} %.",
            soak.limit.austenite.c
        ))
        .source(&[
            &agren_1979::SOURCE,
            &callister_2007::SOURCE,
            &paul_1994::SOURCE,
        ])
        .errs(DISSOLUTION_ERROR)
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
        format!("{} in solution", capital(element.name())),
        element.symbol(),
        w.dissolved().get(element),
        "wt %",
    )
    .by(
        vec![
            w.input(
                whole.clone(),
                format!("{} of the steel", element.name()),
                w.route.composition.get(element),
                "wt %",
                Quantity::Content(element),
            ),
            given(
                held.clone(),
                format!("{} in carbide, of the piece", element.name()),
                masses.carbide_content.get(element),
                "wt %",
            ),
            w.input(
                "m_K",
                "carbide left, by mass",
                masses.carbide,
                "",
                Quantity::CarbideMass,
            ),
            given(
                "r",
                "content of austenite over that of austenite and ferrite",
                over,
                "",
            ),
        ],
        |x| {
            let one = Formula::constant(1.0);
            (x.get(&whole) - x.get(&held)) / (one - x.get("m_K")) * x.get("r")
        },
    )
    .how(DISSOLUTION)
    .source(&[&agren_1979::SOURCE, &paul_1994::SOURCE])
    .errs("not measured by itself; follows the carbide left")
}

fn carbide_mass(w: &Workings<'_>) -> Derivation {
    let masses = &w.outcome.soak.masses;
    Derivation::new("Carbide left, by mass", "m_K", masses.carbide, "")
        .by(
            vec![
                given("m_A", "austenite, by mass", masses.austenite, ""),
                given("m_F", "ferrite left, by mass", masses.ferrite, ""),
            ],
            |x| Formula::constant(1.0) - x.get("m_A") - x.get("m_F"),
        )
        .how(DISSOLUTION)
        .errs(DISSOLUTION_ERROR)
}

fn carbide_volume(w: &Workings<'_>) -> Derivation {
    let soak = &w.outcome.soak;
    let masses = &soak.masses;
    Derivation::new(
        "Carbide left undissolved",
        "x_K",
        soak.end.carbide_volume_fraction,
        "",
    )
    .by(
        vec![
            given(
                "v_K",
                "volume of the carbide, in that of the steel's mass",
                masses.carbide_volume,
                "",
            ),
            w.input(
                "m_K",
                "carbide left, by mass",
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
    .how(DISSOLUTION)
    .errs(DISSOLUTION_ERROR)
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
                given("t", "time hot, heating up with it", hot_s, "s"),
            ],
            |x| x.get("z_1") * x.get("t").sqrt(),
        )
        .errs("an upper bound")
}

fn decarburised(w: &Workings<'_>) -> Option<Derivation> {
    let depth_mm = w.outcome.skin.given()?.decarburised.most_mm;
    let first_mm = decarburised_depth_mm(w.route.soak.temperature_c, 1.0);
    let first = ("depth in the first second, 2 √D", first_mm);
    Some(
        by_root_of_time(("Depth without carbon, at most", "z_C", depth_mm), first, w)
            .how("Diffusion of carbon to a surface that loses all of it at once.")
            .source(&[&callister_2007::SOURCE])
            .valid("carbon and low-alloy steel in still air, without foil or coating"),
    )
}

fn scale(w: &Workings<'_>) -> Option<Derivation> {
    let scale_mm = w.outcome.skin.given()?.scale.most_mm;
    let first_mm = paidassi_1958::scale_mm(w.route.soak.temperature_c + 273.15, 1.0);
    let first = ("scale of the first second on clean iron", first_mm);
    Some(
        by_root_of_time(("Scale, at most", "z_S", scale_mm), first, w)
            .how("Scale grows with the root of time, on steel at most as on clean iron.")
            .source(&[&paidassi_1958::SOURCE])
            .valid("700 to 1250 °C, still air; chromium scales less"),
    )
}

fn stock(w: &Workings<'_>) -> Option<Derivation> {
    let skin = w.outcome.skin.given()?;
    Some(
        Derivation::new(
            "Stock to leave on each side",
            "z",
            skin.stock_per_side_mm,
            "mm",
        )
        .by(
            vec![
                w.input(
                    "z_C",
                    "depth without carbon",
                    skin.decarburised.most_mm,
                    "mm",
                    Quantity::Decarburised,
                ),
                w.input("z_S", "scale", skin.scale.most_mm, "mm", Quantity::Scale),
                given(
                    "q",
                    "volume of scale over that of its iron",
                    pilling_bedworth_1923::WUSTITE_ON_IRON,
                    "",
                ),
            ],
            |x| x.get("z_C") + x.get("z_S") / x.get("q"),
        )
        .source(&[&pilling_bedworth_1923::SOURCE])
        .errs("an upper bound"),
    )
}
