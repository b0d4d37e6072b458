//! The phase map: its fields cover it without gap or overlap and hold what an equilibrium there
//! holds, whatever the steel; its lines are those of the textbook and of the critical temperatures.

use proptest::prelude::*;
use recalesce::phases::PhaseName::{Austenite, Cementite, Ferrite};
use recalesce::phases::{
    Field, PhaseMap, PhaseName, UpperLimit, critical_temperatures, equilibrium, phase_map,
};
use recalesce::steel::{Composition, grades};

fn area(points: &[[f64; 2]]) -> f64 {
    let ends = points.iter().zip(points.iter().cycle().skip(1));
    ends.map(|(a, b)| 0.5 * (a[0] * b[1] - b[0] * a[1])).sum()
}

/// Sides of an outline with their direction.
fn sides(field: &Field) -> Vec<[[f64; 2]; 2]> {
    let next = field.outline.iter().cycle().skip(1);
    let pairs = field.outline.iter().zip(next);
    pairs.map(|(a, b)| [*a, *b]).collect()
}

fn is_inside(outline: &[[f64; 2]], [x, y]: [f64; 2]) -> bool {
    let ends = outline.iter().zip(outline.iter().cycle().skip(1));
    let crossed = ends.filter(|(a, b)| {
        let level = (a[1] > y) != (b[1] > y);
        level && x < a[0] + (y - a[1]) / (b[1] - a[1]) * (b[0] - a[0])
    });
    crossed.count() % 2 == 1
}

/// Distance to a line, in units of 0.02 wt % and 4 K.
fn distance(points: &[[f64; 2]], [x, y]: [f64; 2]) -> f64 {
    let scaled = |p: [f64; 2]| [(p[0] - x) / 0.02, (p[1] - y) / 4.0];
    let pieces = points.windows(2).map(|pair| {
        let ([ax, ay], [bx, by]) = (scaled(pair[0]), scaled(pair[1]));
        let (dx, dy) = (bx - ax, by - ay);
        let share = (-(ax * dx + ay * dy) / (dx * dx + dy * dy)).clamp(0.0, 1.0);
        (ax + share * dx).hypot(ay + share * dy)
    });
    pieces.fold(f64::INFINITY, f64::min)
}

/// Every side is the rim of the map or the side of one other field, the other way round, and the
/// areas add up to that of the map: so the fields neither overlap nor leave anything out.
fn assert_covers(map: &PhaseMap, case: &str) {
    let [low_c, high_c] = PhaseMap::RANGE_C;
    let all: Vec<_> = map.fields.iter().flat_map(sides).collect();
    for [a, b] in &all {
        let on_rim = [
            (0, 0.0),
            (0, PhaseMap::MOST_CARBON_WT),
            (1, low_c),
            (1, high_c),
        ]
        .iter()
        .any(|(axis, at)| a[*axis] == *at && b[*axis] == *at);
        let beside = all.iter().filter(|other| **other == [*b, *a]).count();
        assert_eq!(beside, usize::from(!on_rim), "{case}: {a:?} {b:?}");
    }
    let sum: f64 = map.fields.iter().map(|f| area(&f.outline)).sum();
    let whole = PhaseMap::MOST_CARBON_WT * (high_c - low_c);
    assert!((sum - whole).abs() < 1e-9, "{case}: {sum}");
    for field in &map.fields {
        assert!(area(&field.outline) > 0.0, "{case}: {field:?}");
    }
    for boundary in &map.boundaries {
        let fields = [boundary.below, boundary.above].map(|i| &map.fields[i].phases);
        assert_ne!(fields[0], fields[1], "{case}");
    }
}

/// Places all over the map hold what an equilibrium there holds, unless they are so near to a line
/// that it may be on either side.
fn assert_holds(map: &PhaseMap, steel: &Composition, places: &[[f64; 2]]) {
    let [low_c, high_c] = PhaseMap::RANGE_C;
    for [x, y] in places {
        let at = [PhaseMap::MOST_CARBON_WT * x, low_c + (high_c - low_c) * y];
        let mut lines = map.boundaries.iter();
        if lines.any(|line| distance(&line.points, at) < 1.0) {
            continue;
        }
        let here = steel.with_carbon(at[0]);
        let found = equilibrium(&here, at[1]).unwrap();
        let phases: Vec<PhaseName> = found.phases.iter().map(|p| p.name).collect();
        let mut fields = map.fields.iter();
        let field = fields.find(|f| is_inside(&f.outline, at)).unwrap();
        assert_eq!(field.phases, phases, "{here:?} at {} °C", at[1]);
    }
}

/// A spread of places over the map that is the same on every run.
fn spread(count: u32) -> Vec<[f64; 2]> {
    // steps of the two-dimensional golden ratio
    let places = 1..=count;
    places
        .map(|i| [0.754_877_666, 0.569_840_291].map(|step| (0.5 + step * f64::from(i)).fract()))
        .collect()
}

#[test]
fn fields_of_every_grade_cover_the_map_and_hold_what_equilibria_do() {
    for grade in grades() {
        let map = phase_map(&grade.nominal).unwrap();
        assert_covers(&map, &grade.designation);
        assert_holds(&map, &grade.nominal, &spread(60));
    }
}

/// Textbook: A3 of iron 912 °C, eutectoid 727 °C and 0.76 to 0.77 wt %, at most 0.022 wt % in
/// ferrite; handbook Acm from memory.
#[test]
fn iron_and_carbon_is_the_textbook_diagram() {
    let map = phase_map(&Composition::default().with_carbon(0.8)).unwrap();
    assert_covers(&map, "iron and carbon");
    let mut phases: Vec<_> = map.fields.iter().map(|f| f.phases.clone()).collect();
    phases.sort_unstable();
    let expected = [
        vec![Austenite],
        vec![Austenite, Ferrite],
        vec![Austenite, Cementite],
        vec![Ferrite],
        vec![Ferrite, Cementite],
    ];
    assert_eq!(phases, expected);
    assert!((map.a3[0][1] - 912.0).abs() < 1.0, "{:?}", map.a3[0]);
    let eutectoid = map.acm[0];
    assert_eq!(map.a3.last(), Some(&eutectoid));
    assert!((eutectoid[1] - 727.0).abs() < 1.0, "{eutectoid:?}");
    assert!((0.76..=0.77).contains(&eutectoid[0]), "{eutectoid:?}");
    let ferrite = map.fields.iter().find(|f| f.phases == [Ferrite]).unwrap();
    let most_wt = ferrite.outline.iter().map(|p| p[0]).fold(0.0, f64::max);
    assert!((most_wt - 0.022).abs() < 0.005, "{most_wt}");
    for (temperature_c, carbon_wt) in [(800.0, 0.95), (900.0, 1.23), (1000.0, 1.50)] {
        let line = along(&map.acm, 1, temperature_c).unwrap();
        assert!(
            (line / carbon_wt - 1.0).abs() < 0.03,
            "{temperature_c}: {line}"
        );
    }
    // one temperature for the whole of A1
    assert_eq!(map.a1_lower, map.a1_upper);
    assert!(map.a1_lower.iter().all(|p| (p[1] - 727.0).abs() < 1.0));
}

/// The other coordinate of a line where one has a value.
fn along(line: &[[f64; 2]], axis: usize, value: f64) -> Option<f64> {
    line.windows(2).find_map(|pair| {
        let (a, b) = (pair[0], pair[1]);
        let share = (value - a[axis]) / (b[axis] - a[axis]);
        let other = 1 - axis;
        (0.0..=1.0)
            .contains(&share)
            .then(|| a[other] + share * (b[other] - a[other]))
    })
}

/// The critical temperatures come from searches of their own, from boundary to boundary.
#[test]
fn lines_pass_through_the_critical_temperatures() {
    for grade in grades() {
        let map = phase_map(&grade.nominal).unwrap();
        let points = critical_temperatures(&grade.nominal).unwrap();
        let name = &grade.designation;
        let carbon_wt = grade.nominal.c;
        let [least_c, most_c] = PhaseMap::RANGE_C;
        for (line, at_c) in [
            (&map.a1_lower, points.a1_c),
            (&map.a1_upper, points.a1_upper_c),
            match points.upper {
                UpperLimit::A3 { temperature_c } => (&map.a3, temperature_c),
                UpperLimit::Acm { temperature_c } => (&map.acm, temperature_c),
            },
        ] {
            if at_c < most_c {
                let found = along(line, 0, carbon_wt);
                let found = found.unwrap_or_else(|| panic!("{name}: {points:?}"));
                assert!((found - at_c).abs() < 0.3, "{name}: {found} {points:?}");
            }
        }
        assert!((map.a1_c - points.a1_c).abs() < 0.1, "{name}");
        assert!(
            (map.a1_upper_c - points.a1_upper_c.min(most_c)).abs() < 0.3,
            "{name}"
        );
        let own = &map.own;
        assert_eq!((own[0].from_c, own[own.len() - 1].to_c), (least_c, most_c));
        assert!(own.windows(2).all(|pair| pair[0].to_c == pair[1].from_c));
    }
}

fn steel() -> impl Strategy<Value = Composition> {
    let content = |most: f64| prop_oneof![1 => Just(0.0), 2 => 0.0..most];
    let alloy = (
        content(3.0),
        content(3.0),
        content(18.0),
        content(4.0),
        content(2.0),
        content(1.2),
        content(4.0),
    );
    (0.0..2.0, alloy).prop_map(|(c, (mn, si, cr, ni, mo, v, w))| Composition {
        c,
        mn,
        si,
        cr,
        ni,
        mo,
        v,
        w,
        ..Composition::default()
    })
}

/// Plain and low-alloy steel.
fn low_alloy() -> impl Strategy<Value = Composition> {
    let content = |most: f64| prop_oneof![1 => Just(0.0), 2 => 0.0..most];
    (
        content(1.5),
        content(1.0),
        content(2.0),
        content(2.0),
        content(0.3),
    )
        .prop_map(|(mn, si, cr, ni, mo)| Composition {
            c: 0.6,
            mn,
            si,
            cr,
            ni,
            mo,
            ..Composition::default()
        })
}

/// Three carbides take turns along Acm within ten kelvin, so that one strip has several corners.
#[test]
fn acm_rises_where_carbides_take_turns() {
    let steel = Composition {
        c: 0.6,
        mn: 1.343_181_515_316_449,
        cr: 1.881_492_527_212_776_7,
        mo: 0.215_152_942_896_412_43,
        ..Composition::default()
    };
    let map = phase_map(&steel).unwrap();
    // where M7C3 and cementite change over, as bare equilibria have it at every 0.05 K
    let corner_c = along(&map.acm, 0, 0.6608).unwrap();
    assert!((corner_c - 755.4).abs() < 0.4, "{corner_c}");
    for pair in map.acm.windows(2) {
        assert!(pair[0][1] <= pair[1][1], "{pair:?}");
    }
}

/// Ferrite at every temperature without carbon, and fields that begin on the column beside it.
#[test]
fn a_field_that_begins_on_a_column_leaves_no_gap() {
    let steel = Composition {
        mn: 2.489_961_601_499_080_4,
        si: 2.694_225_009_168_01,
        ni: 0.461_215_546_996_280_03,
        v: 0.523_909_565_843_557_6,
        w: 0.364_823_750_516_689_6,
        ..Composition::default()
    };
    assert_covers(&phase_map(&steel).unwrap(), "silicon steel");
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 12,
        failure_persistence: None,
        ..ProptestConfig::default()
    })]

    #[test]
    fn any_steel_has_a_map_that_is_covered(steel in steel()) {
        // some have no austenite at any temperature, or no meeting of A3 and Acm
        if let Ok(map) = phase_map(&steel) {
            assert_covers(&map, &format!("{steel:?}"));
            assert_holds(&map, &steel, &spread(12));
            for [carbon_wt, lower_c] in &map.a1_lower {
                let upper_c = along(&map.a1_upper, 0, *carbon_wt);
                prop_assert!(upper_c.is_none_or(|c| c >= lower_c - 0.3), "{carbon_wt}");
            }
        }
    }

    /// Carbon holds austenite together against ferrite, and drives it to carbide. Next to the
    /// eutectoid the lines are not followed but foreseen, and may end a few kelvin off.
    #[test]
    fn a3_falls_and_acm_rises_with_carbon_in_low_alloy_steel(steel in low_alloy()) {
        const FORESEEN_WT: f64 = 0.02;
        let map = phase_map(&steel).unwrap();
        let followed = |line: &[[f64; 2]]| -> Vec<[f64; 2]> {
            let is_away = |p: &&[f64; 2]| (p[0] - map.eutectoid_carbon_wt).abs() > FORESEEN_WT;
            line.iter().filter(is_away).copied().collect()
        };
        let (a3, acm) = (followed(&map.a3), followed(&map.acm));
        prop_assert!(a3.len() > 4 && acm.len() > 4, "{} {}", a3.len(), acm.len());
        for pair in a3.windows(2) {
            prop_assert!(pair[0][0] < pair[1][0] && pair[0][1] >= pair[1][1], "A3 {pair:?}");
        }
        for pair in acm.windows(2) {
            prop_assert!(pair[0][0] < pair[1][0] && pair[0][1] <= pair[1][1], "Acm {pair:?}");
        }
    }
}
