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
        whole: limit(12_000, 6_800, [118, 394, 49_000]),
        dragged: limit(2_100, 1_400, [4, 10, 17_000]),
    },
    Budget {
        piece: "plain knife",
        whole: limit(3_600, 1_700, [47, 137, 7_100]),
        dragged: limit(2_200, 1_200, [11, 30, 7_100]),
    },
    Budget {
        piece: "large shaft",
        whole: limit(5_200, 3_000, [71, 247, 16_000]),
        dragged: limit(2_900, 1_900, [17, 54, 16_000]),
    },
    Budget {
        piece: "gas quench",
        whole: limit(5_000, 2_500, [60, 188, 5_100]),
        dragged: limit(2_800, 1_500, [14, 31, 5_100]),
    },
    Budget {
        piece: "scraper, annealed",
        whole: limit(14_000, 8_100, [159, 801, 12_000]),
        dragged: limit(1_200, 607, [14, 101, 12_000]),
    },
    Budget {
        piece: "square shank",
        whole: limit(5_300, 3_000, [71, 214, 49_000]),
        dragged: limit(2_800, 2_100, [16, 38, 49_000]),
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
