//! Where on the way down pearlite and bainite formed: what their hardness follows.

/// A product as it formed while cooling.
#[derive(Debug, Clone, Copy, PartialEq, serde::Serialize)]
pub struct FormedProduct {
    /// Mean temperature at which it formed, °C.
    pub temperature_c: f64,
    /// Carbon of the austenite that it formed from, wt %.
    pub carbon_wt: f64,
}

/// What formed before martensite, apart from ferrite, whose hardness does not follow how it formed.
#[derive(Debug, Clone, Copy, PartialEq, Default, serde::Serialize)]
pub struct Formed {
    /// Pearlite; none where none formed.
    pub pearlite: Option<FormedProduct>,
    /// Bainite; none where none formed.
    pub bainite: Option<FormedProduct>,
}
