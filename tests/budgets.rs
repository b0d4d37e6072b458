//! What an outcome may cost, held by counting, so that it is the same on every machine under any load: what is
//! allocated, and what the search for equilibria and conduction do. Times are in `benches/README.md`.
#![cfg(not(target_arch = "wasm32"))]

use allocation_counter::measure;
use recalesce::numeric::effort::{Effort, counting};
use recalesce::route::{Outcome, Prepared, Route, RouteError, run};

/// The most that one way to an outcome may cost.
#[derive(Clone, Copy)]
struct Limit {
    allocations: u64,
    /// All that is allocated, whether or not it is given back meanwhile, kB.
    allocated_kb: u64,
    searches: u32,
    newton_steps: u32,
    node_steps: u32,
}

/// A route with what it may cost from nothing, and with its steel prepared, as while a handle is dragged.
struct Budget {
    piece: &'static str,
    whole: Limit,
    dragged: Limit,
}

const fn limit(
    allocations: u64,
    allocated_kb: u64,
    [searches, newton_steps, node_steps]: [u32; 3],
) -> Limit {
    Limit {
        allocations,
        allocated_kb,
        searches,
        newton_steps,
        node_steps,
    }
}

/// Each limit is about a tenth above what was counted when it was set.
const BUDGETS: [Budget; 6] = [
    Budget {
        piece: "the example",
        whole: limit(11_400, 6_580, [118, 394, 49_400]),
        dragged: limit(1_980, 1_210, [4, 10, 17_000]),
    },
    Budget {
        piece: "plain knife",
        whole: limit(3_480, 1_520, [47, 137, 7_740]),
        dragged: limit(2_000, 1_010, [11, 30, 7_740]),
    },
    Budget {
        piece: "large shaft",
        whole: limit(4_940, 2_670, [71, 247, 18_000]),
        dragged: limit(2_710, 1_660, [17, 54, 18_000]),
    },
    Budget {
        piece: "gas quench",
        whole: limit(4_810, 2_320, [60, 188, 5_580]),
        dragged: limit(2_660, 1_320, [14, 31, 5_580]),
    },
    Budget {
        piece: "scraper, annealed",
        whole: limit(13_700, 7_990, [159, 801, 11_600]),
        dragged: limit(1_140, 588, [14, 101, 11_600]),
    },
    Budget {
        piece: "square shank",
        whole: limit(5_150, 2_870, [71, 214, 53_300]),
        dragged: limit(2_690, 1_910, [16, 38, 53_300]),
    },
];

/// The example, or the reference route of a piece.
fn route_of(piece: &str) -> Route {
    if piece == BUDGETS[0].piece {
        return Route::whole_example();
    }
    let all: Vec<Route> = serde_json::from_str(include_str!("reference/routes.json")).unwrap();
    all.into_iter().find(|route| route.piece == piece).unwrap()
}

/// What a way to an outcome costs against its limit, one line for each excess.
fn excess(
    name: &str,
    limit: Limit,
    way: impl FnOnce() -> Result<Outcome, RouteError>,
) -> Vec<String> {
    let mut effort = Effort::default();
    let allocated = measure(|| {
        let (outcome, counted) = counting(way);
        effort = counted;
        assert!(outcome.is_ok(), "{name}");
    });
    let kb = allocated.bytes_total.div_ceil(1000);
    [
        ("allocations", allocated.count_total, limit.allocations),
        ("kB allocated", kb, limit.allocated_kb),
        ("searches", effort.searches.into(), limit.searches.into()),
        (
            "Newton steps",
            effort.newton_steps.into(),
            limit.newton_steps.into(),
        ),
        (
            "steps of nodes in time",
            effort.node_steps.into(),
            limit.node_steps.into(),
        ),
    ]
    .into_iter()
    .filter(|(_, counted, most)| counted > most)
    .map(|(what, counted, most)| format!("{name}: {counted} {what}, {most} at most"))
    .collect()
}

#[test]
fn outcomes_cost_no_more_than_they_may() {
    // Tables are read once for all routes.
    run(&Route::whole_example()).unwrap();
    let mut all = Vec::new();
    for budget in &BUDGETS {
        let route = route_of(budget.piece);
        all.extend(excess(
            &format!("{}, whole", budget.piece),
            budget.whole,
            || run(&route),
        ));
        // As a drag finds it: the handle has been moved before.
        let prepared = Prepared::of(&route).unwrap();
        let mut moved = route.clone();
        moved.soak.temperature_c += 3.0;
        prepared.run(&moved).unwrap();
        all.extend(excess(
            &format!("{}, dragged", budget.piece),
            budget.dragged,
            || prepared.run(&route),
        ));
    }
    assert!(all.is_empty(), "{}", all.join("\n"));
}

/// A second recompute of the same costs what the first did: nothing is heaped up.
#[test]
fn the_same_again_costs_the_same() {
    let route = Route::whole_example();
    let prepared = Prepared::of(&route).unwrap();
    let mut costs = (0..4).map(|_| {
        let allocated = measure(|| drop(prepared.run(&route).unwrap()));
        assert_eq!(allocated.count_current, 0);
        (allocated.count_total, allocated.bytes_total)
    });
    costs.next();
    let settled = costs.next().unwrap();
    assert!(costs.all(|cost| cost == settled));
}

/// A drag of the soak through forty kelvins leaves nothing behind, once it has been there.
#[test]
fn a_drag_heaps_nothing_up() {
    let route = Route::whole_example();
    let prepared = Prepared::of(&route).unwrap();
    let drag = || {
        for step in 0..40 {
            let mut moved = route.clone();
            moved.soak.temperature_c += f64::from(step);
            prepared.run(&moved).unwrap();
            drop(prepared.overheating(&moved));
        }
    };
    drag();
    let left = measure(drag);
    assert_eq!((left.count_current, left.bytes_current), (0, 0));
}
