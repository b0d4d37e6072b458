//! The phase map of one steel with its soak: temperature against carbon.

use super::axis::{Axis, Shown};
use super::face::Weight;
use super::frame;
use super::ink::{Constituent, Ink};
use super::labels::Labels;
use super::numbers::{NBSP, fixed};
use super::plane::{Plane, Rect};
use super::scene::{Anchor, Fill, Handle, Label, Mark, Pattern, Pen, Rank, Scene, Spot, data, px};

/// What the map shows. Curves are `[carbon wt %, temperature °C]` with rising carbon.
#[derive(Debug, Clone, PartialEq)]
pub struct SoakMapData {
    /// Austenite against ferrite, from pure iron down to the eutectoid.
    pub a3: Vec<[f64; 2]>,
    /// Austenite against carbide, from the eutectoid up.
    pub acm: Vec<[f64; 2]>,
    /// Where austenite begins, °C.
    pub a1_c: f64,
    /// Where the three-phase field ends, °C; `a1_c` where there is none.
    pub a1_upper_c: f64,
    /// Carbon of the steel, wt %.
    pub bulk_carbon_wt: f64,
    /// Soak temperature, °C.
    pub soak_c: f64,
    /// Half width of what the furnace wanders, K.
    pub wander_k: f64,
    /// Carbon dissolved at the end of the soak, wt %.
    pub dissolved_wt: f64,
    /// Carbon that would dissolve in the end, wt %.
    pub possible_wt: f64,
    /// Carbon of the austenite on its way there, `[wt %, °C]`.
    pub path: Vec<[f64; 2]>,
}

/// Highest carbon of the map, wt %.
const CARBON_HIGH_WT: f64 = 1.6;

/// The map at a size in css px.
pub fn soak_map(map: &SoakMapData, labels: &Labels, size_px: [f64; 2]) -> Scene {
    let [width, height] = size_px;
    let low_c = ((map.a1_c - 85.0) / 50.0).floor() * 50.0;
    let y = frame::covering([low_c.clamp(400.0, 750.0), 1100.0], [map.soak_c + 40.0]);
    let carbon_high = if map.bulk_carbon_wt > 1.45 {
        2.2
    } else {
        CARBON_HIGH_WT
    };
    let x = Axis::linear(0.0, carbon_high);
    let plane = Plane::new(x, y, Rect::new(46.0, 8.0, width - 10.0, height - 32.0));
    let mut scene = Scene::new(size_px, plane);
    let map = &upwards(map);
    fields(&mut scene, map, &plane);
    frame::temperature_axis(&mut scene, labels, 5);
    frame::bottom_axis(&mut scene, plane.x.ticks(4, Shown::SAME), false);
    frame::axis_title(&mut scene, &format!("carbon, wt{NBSP}%"));
    boundaries(&mut scene, map, &plane);
    field_names(&mut scene, map, &plane);
    soak(&mut scene, map, &plane);
    scene.summary = format!(
        "Phase map: at {} {} of the {} % carbon is dissolved, of {} possible; austenite begins at {}.",
        labels.temperature(map.soak_c),
        fixed(map.dissolved_wt, 2),
        fixed(map.bulk_carbon_wt, 2),
        fixed(map.possible_wt, 2),
        labels.temperature(map.a1_c),
    );
    scene
}

/// The same with the carbide boundary from the eutectoid up, whichever way it came.
fn upwards(map: &SoakMapData) -> SoakMapData {
    let mut map = map.clone();
    let ends = (map.acm.first(), map.acm.last());
    if matches!(ends, (Some(first), Some(last)) if first[1] > last[1]) {
        map.acm.reverse();
    }
    map
}

fn fields(scene: &mut Scene, map: &SoakMapData, plane: &Plane) {
    let (top, floor, right) = (plane.y.high(), plane.y.low(), plane.x.high());
    let a1 = map.a1_c;
    let upper = map.a1_upper_c.max(a1);
    let dots = Fill::new(Constituent::Carbide.line());
    scene.area(frame::level_band(plane, [a1, top]), Fill::new(Ink::FieldA));
    let mut with_carbide = map.acm.clone();
    if let Some([carbon, _]) = with_carbide.last().copied() {
        with_carbide.push([carbon, top]);
        with_carbide.push([right.max(carbon), top]);
        with_carbide.push([right.max(carbon), upper]);
    }
    scene.area(with_carbide.clone(), Fill::new(Ink::FieldAc));
    scene.pattern(with_carbide, Pattern::SparseParticles, dots);
    let mut with_ferrite = map.a3.clone();
    with_ferrite.push([0.0, upper]);
    scene.area(with_ferrite, Fill::new(Ink::FieldAf));
    if upper - a1 > 0.5 {
        let three = frame::level_band(plane, [a1, upper]);
        scene.area(three.clone(), Fill::new(Ink::FieldAf));
        scene.pattern(three, Pattern::SparseParticles, dots);
    }
    let below = frame::level_band(plane, [floor, a1]);
    scene.area(below.clone(), Fill::new(Ink::FieldFc));
    scene.pattern(below, Pattern::SparseParticles, dots);
}

fn boundaries(scene: &mut Scene, map: &SoakMapData, plane: &Plane) {
    let pen = Pen::new(Ink::Ink, 1.5);
    let whole = [plane.x.low(), plane.x.high()];
    scene.curve(map.a3.clone(), pen);
    scene.curve(map.acm.clone(), pen);
    scene.curve(whole.map(|x| [x, map.a1_c]).to_vec(), pen);
    if map.a1_upper_c - map.a1_c > 0.5 {
        scene.curve(
            whole.map(|x| [x, map.a1_upper_c]).to_vec(),
            Pen::new(Ink::Ink2, 1.0).dashed(&[4.0, 3.0]),
        );
    }
    frame::base_line(scene);
    let name = |text: &str| {
        Label::new(px(0.0, 0.0), Anchor::Start, text).styled(Ink::Ink2, 12.0, Weight::Strong)
    };
    let share = |f: f64| plane.y.value(f);
    let on = |curve: &[[f64; 2]], fractions: &[f64]| -> Vec<_> {
        fractions
            .iter()
            .filter_map(|f| frame::place_at(curve, share(*f)))
            .collect()
    };
    let spots = |places: Vec<super::scene::At>, side: f64| -> Vec<Spot> {
        places
            .into_iter()
            .flat_map(|at| {
                [8.0, 14.0].map(|gap| Spot {
                    at,
                    offset_px: [side * gap, -2.0],
                    anchor: if side < 0.0 {
                        Anchor::End
                    } else {
                        Anchor::Start
                    },
                })
            })
            .collect()
    };
    let a3 = on(&map.a3, &[0.42, 0.48, 0.36, 0.3, 0.54]);
    scene.label(name("A_{3}").at_spots(spots(a3, 1.0), Rank::Boundary));
    let acm = on(&map.acm, &[0.8, 0.75, 0.86, 0.7, 0.65, 0.9]);
    scene.label(
        name("A_{cm}")
            .at_spots(spots(acm, -1.0), Rank::Boundary)
            .halo(Ink::FieldA),
    );
    let mut a1 = name("A_{1}").halo(Ink::FieldAc);
    if map.a1_upper_c - map.a1_c > 0.5 {
        a1 = a1.halo(Ink::FieldFc);
    }
    let below = f64::from(u8::from(map.a1_upper_c - map.a1_c > 0.5)) * 18.0;
    scene.label(
        a1.at_spots(
            [0.985, 0.9]
                .map(|f| Spot {
                    at: data(plane.x.value(f), map.a1_c),
                    offset_px: [0.0, -6.0 + below],
                    anchor: Anchor::End,
                })
                .to_vec(),
            Rank::Boundary,
        ),
    );
}

fn field_names(scene: &mut Scene, map: &SoakMapData, plane: &Plane) {
    let name = |text: &str| {
        Label::new(px(0.0, 0.0), Anchor::Start, text).styled(Ink::Ink3, 12.0, Weight::Text)
    };
    let middle = |carbon: f64, temperature_c: f64, lift: f64| Spot {
        at: data(carbon, temperature_c),
        offset_px: [0.0, 4.0 - lift],
        anchor: Anchor::Middle,
    };
    let right = plane.x.high();
    let level = |f: f64| plane.y.value(f);
    // Austenite lies between A3 and Acm; high up on the map it is widest.
    let austenite = [0.87, 0.8, 0.73, 0.66]
        .into_iter()
        .flat_map(|f| {
            let left = frame::reach(&map.a3, level(f)).unwrap_or(0.0);
            let end = frame::reach(&map.acm, level(f)).unwrap_or(right).min(right);
            [0.3, 0.42, 0.2, 0.55].map(|part| middle(left + part * (end - left), level(f), 0.0))
        })
        .collect();
    scene.label(
        name("austenite")
            .at_spots(austenite, Rank::Other)
            .halo(Ink::FieldA),
    );
    let with_carbide = [0.56, 0.5, 0.62, 0.44, 0.36]
        .into_iter()
        .flat_map(|f| {
            let start = frame::reach(&map.acm, level(f)).unwrap_or(right);
            [0.6, 0.68, 0.5, 0.76].map(|part| middle(start + part * (right - start), level(f), 7.0))
        })
        .collect();
    scene.label(
        name("austenite")
            .then(format!("+{NBSP}carbide"), Ink::Ink3, 12.0, Weight::Text)
            .at_spots(with_carbide, Rank::Other)
            .halo(Ink::FieldAc),
    );
    let with_ferrite = [14.0, 28.0, 42.0].map(|lift| Spot {
        at: data(0.0, map.a1_upper_c),
        offset_px: [4.0, 4.0 - lift],
        anchor: Anchor::Start,
    });
    scene.label(name(&format!("+{NBSP}ferrite")).at_spots(with_ferrite.to_vec(), Rank::Other));
    let below = 0.5 * (map.a1_c + plane.y.low());
    scene.label(
        name(&format!("ferrite{NBSP}+{NBSP}carbide"))
            .at_spots(
                [0.23, 0.7, 0.5]
                    .map(|f| middle(f * right, below, 0.0))
                    .to_vec(),
                Rank::Other,
            )
            .halo(Ink::FieldFc),
    );
}

fn soak(scene: &mut Scene, map: &SoakMapData, plane: &Plane) {
    let whole = [plane.x.low(), plane.x.high()];
    let (top, floor) = (plane.y.high(), plane.y.low());
    scene.curve(
        vec![[map.bulk_carbon_wt, floor], [map.bulk_carbon_wt, top]],
        Pen::new(Ink::Ink2, 1.25).dashed(&[6.0, 3.0]),
    );
    scene.label(
        Label::new(
            px(0.0, 0.0),
            Anchor::End,
            format!("carbon of the steel {}", fixed(map.bulk_carbon_wt, 2)),
        )
        .styled(Ink::Ink2, 11.5, Weight::Text)
        .at_spots(
            [(-5.0, Anchor::End), (5.0, Anchor::Start)]
                .map(|(dx, anchor)| Spot {
                    at: data(map.bulk_carbon_wt, top),
                    offset_px: [dx, 12.0],
                    anchor,
                })
                .to_vec(),
            Rank::Boundary,
        )
        .halo(Ink::FieldA),
    );
    let wander = [map.soak_c - map.wander_k, map.soak_c + map.wander_k];
    scene.area(
        frame::level_band(plane, wander),
        Fill::thin(Ink::Mark, 0.13),
    );
    scene.curve(
        whole.map(|x| [x, map.soak_c]).to_vec(),
        Pen::new(Ink::Mark, 1.0),
    );
    scene.curve(map.path.clone(), Pen::new(Ink::Ink, 3.0));
    if map.possible_wt > map.dissolved_wt {
        scene.guide(
            vec![
                [map.dissolved_wt, map.soak_c],
                [map.possible_wt, map.soak_c],
            ],
            Pen::new(Ink::Ink, 2.0).dashed(&[2.0, 3.0]),
        );
    }
    let limit = plane.to_px([map.possible_wt, map.soak_c]);
    scene.stroke(
        px(limit[0], limit[1] - 5.0),
        px(limit[0], limit[1] + 5.0),
        Pen::new(Ink::Ink, 1.5),
    );
    let at = data(map.dissolved_wt, map.soak_c);
    scene.guide(
        vec![[map.dissolved_wt, map.soak_c], [map.dissolved_wt, floor]],
        Pen::new(Ink::Ink2, 1.0).dashed(&[1.0, 3.0]),
    );
    scene.add(Mark::Dot {
        at,
        radius_px: 5.25,
        paint: Ink::Ink.into(),
        rim: Some((Ink::Sheet.into(), 1.5)),
    });
    let mut note = Label::new(
        at,
        Anchor::End,
        format!("{} dissolved", fixed(map.dissolved_wt, 2)),
    )
    .styled(Ink::Ink, 12.0, Weight::Name)
    .then(
        format!("of {} possible", fixed(map.possible_wt, 2)),
        Ink::Ink2,
        11.5,
        Weight::Text,
    )
    .halo(Ink::FieldA);
    note.leader = Some(at);
    let spots = [
        ([18.0, -78.0], Anchor::End),
        ([-8.0, -78.0], Anchor::Start),
        ([18.0, -56.0], Anchor::End),
        ([-20.0, -100.0], Anchor::End),
        ([18.0, -120.0], Anchor::End),
        ([-8.0, -120.0], Anchor::Start),
        ([-8.0, -42.0], Anchor::Start),
        ([18.0, 48.0], Anchor::End),
        ([-8.0, 48.0], Anchor::Start),
        ([24.0, 70.0], Anchor::Start),
    ];
    note.spots = spots
        .map(|(offset_px, anchor)| Spot {
            at,
            offset_px,
            anchor,
        })
        .to_vec();
    note.rank = Rank::Main;
    scene.label(note);
    let row = plane.y_px(plane.y.hold(map.soak_c));
    let column = plane.rect.right - 15.6;
    scene.handles.push(Handle {
        at_px: [column, row],
        tag: Some(Rect::new(
            column - 68.0,
            row - 10.0,
            column - 16.0,
            row + 10.0,
        )),
        core: frame::glow_paint(map.soak_c),
    });
}
