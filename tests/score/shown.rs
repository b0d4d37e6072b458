//! How the rows of the check files are told on the page: sources by their kind, without names of programs,
//! firms and file shares, and quantities in plain words. Authors and years of publications stay.

use recalesce::sources::score::QuantityScore;

/// What a source is told as, by words that stand in it: the first that fits.
const SOURCES: [(&str, &str); 33] = [
    ("pycalphad", COMPUTED),
    ("steel_reduced", COMPUTED),
    ("same parameters", COMPUTED),
    ("computed for the project", COMPUTED),
    (
        "band limits",
        "ASTM A304 / SAE J1268, middle of the band, from memory",
    ),
    (
        "Smith 1946",
        "Smith 1946, as drawn in handbooks, from memory",
    ),
    ("Grange & Baughman 1956", "Grange & Baughman 1956"),
    ("Hollomon & Jaffe 1945", "Hollomon & Jaffe 1945"),
    ("Grange 1961", "Grange 1961"),
    ("Verhoeven", "Verhoeven, from memory"),
    ("handbook value recalled", "handbook value, from memory"),
    ("thesis", "a thesis, quoted at second hand"),
    ("common practice", "common practice, no source"),
    (
        "American Bladesmith Society",
        "a smiths' society's page on the steel",
    ),
    (
        "azom",
        "a data page; ASM Heat Treater's Guide, 2nd ed. 1995",
    ),
    (
        "ASM Heat Treaters Guide",
        "ASM Heat Treater's Guide, 2nd ed. 1995",
    ),
    ("ISO 4957", "ISO 4957, from memory"),
    ("DIN/EN data", "DIN and EN data, from memory"),
    (
        "rest from memory",
        "a steel maker's data sheet; the rest from memory",
    ),
    ("IT atlas", "atlas of isothermal diagrams, from memory"),
    ("CCT", "atlas of continuous-cooling diagrams, from memory"),
    ("MsDatabase", "collected Ms values, Wentzien et al. 2024"),
    ("Schuscha", "collected Bs values, Schuscha et al. 2025"),
    (
        "Buczek",
        "Buczek & Telejko, Int. J. Heat Fluid Flow 44 (2013) 358–364",
    ),
    ("H-band", "end-quench band charts, from memory"),
    ("supplier", "a supplier's data sheet"),
    ("toolsteel", "a supplier's data sheet"),
    ("sheet", "a steel maker's data sheet"),
    ("technical card", "a steel maker's data sheet"),
    ("Lucefin", "a steel maker's data sheet"),
    ("open dataset", "an open data set"),
    ("memory", "from memory"),
    ("no source", "no source"),
];

const COMPUTED: &str = "computed independently with the same parameters";

/// Words that name a program, a firm or a file share.
const UNTOLD: [&str; 17] = [
    "pycalphad",
    "calphad",
    "lucefin",
    "azom",
    "pdfcoffee",
    "expydoc",
    "eng-tips",
    "scribd",
    "docobook",
    "diamondmetals",
    "toolsteel.",
    "raiipa",
    ".csv",
    ".tdb",
    ".com",
    "github",
    "seen",
];

/// Plain words for the names of the check files.
const QUANTITIES: [(&str, &str); 8] = [
    ("T_first_austenite_C", "first austenite on heating"),
    (
        "round_diameter_equivalent",
        "diameter of the round bar that cools alike",
    ),
    ("published_HTC", "greatest heat transfer"),
    (
        "IT start nose time (first product)",
        "time of the nose, first product",
    ),
    ("IT start nose temperature", "temperature of the nose"),
    ("critical temperature Acm", "critical temperature Accm"),
    (
        "jominy_equivalent_of_bar_centre",
        "end-quench position like the centre of a bar",
    ),
    ("typeK_tolerance", "tolerance of a thermocouple of type K"),
];

/// A quantity as the page tells it.
pub(crate) fn quantity(name: &str) -> String {
    let name = name.trim_end_matches(super::rows::FACTOR).trim_end();
    let name = name.strip_suffix(", wt %").unwrap_or(name);
    if let Some((_, words)) = QUANTITIES.iter().find(|(of, _)| *of == name) {
        return (*words).to_owned();
    }
    match name.strip_prefix("T_last_") {
        Some(phase) => format!("last {} on heating", phase.trim_end_matches("_C")),
        None => name.replace('_', " "),
    }
}

/// A case as the page tells it: rows of collections without the names of their files, numbers short.
pub(crate) fn case(case: &str) -> String {
    let case = case
        .replace("MsDB row", "row")
        .replace(
            "HYPEREUTECTOID: dissolved C may be below nominal, test as lower bound on predicted Ms with nominal C",
            "less carbon may be dissolved",
        );
    let words = case.split(' ').map(|word| match word.parse::<f64>() {
        Ok(number) if word.len() > 8 => format!("{}", (number * 1000.0).round() / 1000.0),
        _ => word.to_owned(),
    });
    words.collect::<Vec<_>>().join(" ")
}

/// A source as the page tells it.
pub(crate) fn source(source: &str) -> &str {
    let found = SOURCES.iter().find(|(words, _)| source.contains(words));
    found.map_or(source, |(_, told)| told)
}

/// Unit of the value of a row: that of its group, unless there are several or errors are told otherwise.
pub(crate) fn unit<'a>(of_group: &'a str, quantity: &str) -> &'a str {
    let is = |words: &str| quantity.contains(words);
    match of_group {
        // Differences of temperatures: the values themselves are in °C.
        "K" => "°C",
        "factor" if is("rate") => "K/s",
        "factor" => "s",
        "K, wt %" if is("C in") => "wt %",
        "K, wt %" => "°C",
        "mm, in" if is("round_diameter") => "in",
        "mm, in" => "mm",
        "s, °C" | "s, °C, K/s" if is("temp") => "°C",
        "s, °C, K/s" if is("rate") => "K/s",
        "s, °C" | "s, °C, K/s" => "s",
        "HV, HBW, kJ/mol" if is("decomposition") => "kJ/mol",
        "HV, HBW, kJ/mol" if is("HBW") => "HBW",
        "HV, HBW, kJ/mol" => "HV",
        "mass fraction" | "of the range" | "–" => "",
        unit => unit,
    }
}

/// Fails where what the page tells names a program, a firm or a file share, or is no plain word.
pub(crate) fn check(scores: &[QuantityScore]) {
    let text = serde_json::to_string(scores).expect("JSON").to_lowercase();
    for word in UNTOLD {
        assert!(!text.contains(word), "{word} stands in the score");
    }
    for row in scores.iter().flat_map(|score| &score.outside) {
        assert!(
            !row.quantity.contains('_') && !row.case.contains('_'),
            "{row:?}"
        );
        assert!(!row.unit.contains(','), "{row:?}");
    }
}

#[test]
fn rows_are_told_in_plain_words() {
    assert_eq!(quantity("T_last_MC_C"), "last MC on heating");
    assert_eq!(quantity("published_HTC (factor)"), "greatest heat transfer");
    assert_eq!(case("4150H; 38.099999999999994 mm"), "4150H; 38.1 mm");
    assert_eq!(unit("K, wt %", "C in austenite"), "wt %");
    assert_eq!(unit("factor", "critical cooling rate"), "K/s");
}
