//! Words of how it comes about what the quench makes of the austenite.

pub const MS_OF_REST: &str = "Start of martensite of the austenite left";
pub const MS_OF_WHOLE: &str = "start of martensite of the whole";
pub const MS_OF_REST_HOW: &str = "The same law for the austenite that is left: ferrite that has formed before drives its carbon into it, carbide on grain boundaries takes some out.";
pub const RATE_PARAMETER: &str = "Rate parameter of martensite";
pub const RATE_PARAMETER_HOW: &str =
    "The mean of two published values, which together miss retained austenite by less than either.";
pub const RATE_PARAMETER_ERROR: &str =
    "retained austenite 1.5 vol % on plain steels, up to 4 vol % otherwise";
pub const CARBIDE_WITH_BOUNDARIES: &str = "carbide, with that on grain boundaries";
pub const MS_OF_WHAT_IS_LEFT: &str = "start of martensite of what is left";
pub const COLDEST_OF_QUENCH: &str = "coldest temperature of the quench";
pub const BELOW_MS_HOW: &str = "What is still austenite at Ms turns by the law of martensite: only cooling goes on with it, not time.";
pub const RETAINED_AUSTENITE: &str = "Retained austenite";
pub const MARTENSITE: &str = "Martensite";
pub const AUSTENITE_ERROR: &str = "1.5 vol % on plain steels, up to 4 vol % otherwise";
pub const AUSTENITE_AFTER_SNAP: &str = "retained austenite after the snap temper";
pub const AUSTENITE_AFTER_COLD: &str = "Retained austenite after the cold bath";
pub const COLDEST_SO_FAR: &str = "coldest temperature so far";
pub const LAG: &str = "lag by waiting at room, and warm";
pub const COLD_BATH: &str = "cold bath";
pub const AFTER_COLD_HOW: &str =
    "The law of martensite goes on from the coldest temperature so far, less a lag by waiting.";
pub const AFTER_COLD_ERROR: &str = "a trend; the numbers of the stabilisation are from memory";
pub const HOW_MUCH_HARDENED: &str = "How much hardened";
pub const HARDENED_HOW: &str = "Martensite and the austenite that it left, of all but carbide.";
