//! The phase boundaries that the soak goes by.

use recalesce::phases::{
    UpperLimit, critical_points, critical_temperatures, phase_map, soak_limit,
};
use recalesce::steel::{Composition, grades};

/// Textbook: eutectoid 727 °C and 0.76-0.77 wt %, A3 of iron 912 °C; handbook Acm from memory.
/// Grange's A1 of iron-carbon is 723 °C.
#[test]
fn iron_carbon_is_the_textbook_diagram() {
    let map = phase_map(&Composition::default().with_carbon(0.8)).unwrap();
    assert!((map.eutectoid_carbon_wt - 0.77).abs() < 0.02);
    assert!((map.a1_c - 727.0).abs() < 5.0);
    assert!((map.a3[0][1] - 912.0).abs() < 1.0);
    for (temperature_c, carbon_wt) in [(800.0, 0.95), (900.0, 1.23), (1000.0, 1.50), (1100.0, 1.81)]
    {
        let limit = soak_limit(&Composition::default().with_carbon(1.6), temperature_c);
        let line = limit.unwrap().carbon_saturation_wt;
        assert!(
            (line / carbon_wt - 1.0).abs() < 0.04,
            "{temperature_c}: {line}"
        );
    }
}

/// Two searches over the same energies: one from boundary to boundary, one over all temperatures.
#[test]
fn critical_temperatures_agree_with_a_search_over_all_temperatures() {
    for grade in grades() {
        let found = critical_temperatures(&grade.nominal).unwrap();
        let listed = critical_points(&grade.nominal).unwrap();
        let name = &grade.designation;
        assert!(
            (found.a1_c - listed.a1_lower_c).abs() < 0.1,
            "{name} {found:?} {listed:?}"
        );
        let (at_c, listed_c) = match found.upper {
            UpperLimit::A3 { temperature_c } => (temperature_c, listed.last_ferrite_c),
            UpperLimit::Acm { temperature_c } => (temperature_c, listed.last_pearlitic_carbide_c),
        };
        assert_eq!(listed_c.is_none(), found.upper_is_beyond, "{name}");
        assert!(
            (at_c - listed_c.unwrap_or(1250.0)).abs() < 0.1,
            "{name} {found:?} {listed:?}"
        );
    }
}

#[test]
fn upper_limit_changes_from_a3_to_acm_at_the_eutectoid() {
    let upper = |c| {
        critical_temperatures(&Composition::default().with_carbon(c))
            .unwrap()
            .upper
    };
    assert!(matches!(upper(0.6), UpperLimit::A3 { .. }));
    assert!(matches!(upper(0.9), UpperLimit::Acm { .. }));
}
