//! The phase map of one steel with its soak: temperature against carbon.

use super::axis::{Axis, Shown};
use super::face::Weight;
use super::field_names::{MapField, name_fields};
use super::frame;
use super::ink::{Constituent, Ink};
use super::labels::Labels;
use super::numbers::fixed;
use super::plane::{Plane, Rect};
use super::scene::{
    Anchor, Fill, Handle, Label, Mark, Moves, Pattern, Pen, Rank, Scene, Spot, data, px,
};
use recalesce_texts::charts::soak as texts;

/// What the map shows. Lines are `[carbon wt %, temperature °C]`.
#[derive(Debug, Clone, PartialEq)]
pub struct SoakMapData {
    /// Fields; they cover the map.
    pub fields: Vec<MapField>,
    /// Where fields touch.
    pub boundaries: Vec<Vec<[f64; 2]>>,
    /// Lowest and highest temperature of the map, °C.
    pub range_c: [f64; 2],
    /// Austenite against ferrite, down to the eutectoid.
    pub a3: Vec<[f64; 2]>,
    /// Austenite against carbide, from the eutectoid up.
    pub acm: Vec<[f64; 2]>,
    /// Where ferrite and carbide begin to turn into austenite.
    pub a1_lower: Vec<[f64; 2]>,
    /// Where the three no longer stand side by side.
    pub a1_upper: Vec<[f64; 2]>,
    /// Where austenite begins at the steel's own carbon, °C.
    pub a1_c: f64,
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
    /// Carbon of the austenite on its way there, `[wt %, °C]`; empty where there is no soak to tell of.
    pub path: Vec<[f64; 2]>,
}

/// Highest carbon shown, wt %, and the same for steels of much carbon.
const CARBON_HIGH_WT: f64 = 1.6;
const CARBON_HIGHEST_WT: f64 = 2.0;

/// How far labels keep from the line of the steel's carbon, px.
const CARBON_CLEAR_PX: f64 = 5.0;

/// Temperatures that the axis has at least, °C.
const USUAL_LOW_C: f64 = 750.0;
const USUAL_HIGH_C: f64 = 1100.0;

/// The map at a size in css px.
pub fn soak_map(map: &SoakMapData, labels: &Labels, size_px: [f64; 2]) -> Scene {
    let [width, height] = size_px;
    let [least_c, most_c] = map.range_c;
    let low_c = ((map.a1_c - 85.0) / 50.0).floor() * 50.0;
    let high_c = (map.soak_c + 40.0).clamp(USUAL_HIGH_C, most_c.max(USUAL_HIGH_C));
    let y = frame::covering(
        [
            low_c.clamp(least_c.min(USUAL_LOW_C), USUAL_LOW_C),
            USUAL_HIGH_C,
        ],
        [high_c],
    );
    let carbon_high = if map.bulk_carbon_wt > 1.45 {
        CARBON_HIGHEST_WT
    } else {
        CARBON_HIGH_WT
    };
    let x = Axis::linear(0.0, carbon_high);
    let plane = Plane::new(x, y, Rect::new(46.0, 8.0, width - 10.0, height - 32.0));
    let mut scene = Scene::new(size_px, plane);
    fields(&mut scene, map);
    frame::temperature_axis(&mut scene, labels, 5);
    frame::bottom_axis(&mut scene, plane.x.ticks(4, Shown::SAME), false);
    frame::axis_title(&mut scene, texts::CARBON_AXIS);
    boundaries(&mut scene, map, &plane);
    name_fields(&mut scene, &map.fields, &plane);
    soak(&mut scene, map, &plane);
    let [soak, a1] = [map.soak_c, map.a1_c].map(|c| labels.temperature(c));
    let [dissolved, carbon, possible] =
        [map.dissolved_wt, map.bulk_carbon_wt, map.possible_wt].map(|wt| fixed(wt, 2));
    scene.summary = if map.path.is_empty() {
        texts::map_alone(&soak, &carbon, &a1)
    } else {
        texts::map(&soak, &dissolved, &carbon, &possible, &a1)
    };
    scene
}

fn fields(scene: &mut Scene, map: &SoakMapData) {
    for field in &map.fields {
        scene.area(field.outline.clone(), Fill::new(field.ink()));
        if !field.carbides.is_empty() {
            scene.pattern(
                field.outline.clone(),
                Pattern::SparseParticles,
                Fill::new(Constituent::Carbide.line()),
            );
        }
    }
}

fn boundaries(scene: &mut Scene, map: &SoakMapData, plane: &Plane) {
    let pen = Pen::new(Ink::Ink, 1.5);
    for line in &map.boundaries {
        scene.curve(line.clone(), Pen::new(Ink::Ink3, 0.75));
    }
    for line in [&map.a3, &map.acm, &map.a1_lower] {
        scene.curve(line.clone(), pen);
    }
    if map.a1_upper != map.a1_lower {
        let pen = Pen::new(Ink::Ink2, 1.0).dashed(&[4.0, 3.0]);
        scene.curve(map.a1_upper.clone(), pen);
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
    // below the line: above it there may be a band
    let a1 = [0.985, 0.9, 0.8, 0.6].into_iter().filter_map(|share| {
        let carbon_wt = plane.x.value(share);
        let at_c = frame::height_at(&map.a1_lower, carbon_wt)?;
        Some(Spot {
            at: data(carbon_wt, at_c),
            offset_px: [0.0, 14.0],
            anchor: Anchor::End,
        })
    });
    let a1 = a1.collect();
    scene.label(
        name("A_{1}")
            .halo(Ink::FieldFc)
            .at_spots(a1, Rank::Boundary),
    );
}

fn soak(scene: &mut Scene, map: &SoakMapData, plane: &Plane) {
    let whole = [plane.x.low(), plane.x.high()];
    let (top, floor) = (plane.y.high(), plane.y.low());
    scene.curve_clear(
        vec![[map.bulk_carbon_wt, floor], [map.bulk_carbon_wt, top]],
        Pen::new(Ink::Ink2, 1.25).dashed(&[6.0, 3.0]),
        CARBON_CLEAR_PX,
    );
    scene.label(
        Label::new(
            px(0.0, 0.0),
            Anchor::End,
            texts::carbon_of_steel(&fixed(map.bulk_carbon_wt, 2)),
        )
        .styled(Ink::Ink2, 11.5, Weight::Text)
        .at_spots(
            [(-6.0, Anchor::End), (6.0, Anchor::Start)]
                .map(|(dx, anchor)| Spot {
                    at: data(map.bulk_carbon_wt, top),
                    offset_px: [dx, 12.0],
                    anchor,
                })
                .to_vec(),
            Rank::Main,
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
    if !map.path.is_empty() {
        dissolved(scene, map, plane);
    }
    let row = plane.y_px(plane.y.hold(map.soak_c));
    let column = plane.rect.right - 15.6;
    let mut tag = Rect::new(column - 68.0, row - 10.0, column - 16.0, row + 10.0);
    // Beside the line of the soak where it would cover what is dissolved.
    let seen = [map.dissolved_wt, map.possible_wt].map(|carbon_wt| plane.x_px(carbon_wt) + 7.0);
    if seen.iter().any(|x| *x > tag.left) {
        let aside = if row - 29.0 < plane.rect.top {
            19.0
        } else {
            -19.0
        };
        (tag.top, tag.bottom) = (tag.top + aside, tag.bottom + aside);
    }
    scene.handles.push(Handle {
        at_px: [column, row],
        tag: Some(tag),
        moves: Some(Moves::Upright),
        core: frame::glow_paint(map.soak_c),
    });
}

/// What has dissolved in the soak, and what could.
fn dissolved(scene: &mut Scene, map: &SoakMapData, plane: &Plane) {
    let floor = plane.y.low();
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
    // On either side of its leader or beyond the line of the carbon; above the line of the soak
    // before below it.
    let beyond = plane.x_px(map.bulk_carbon_wt) - plane.x_px(map.dissolved_wt);
    let rows = [-78.0, -56.0, -100.0, -42.0, -120.0, 48.0, 70.0, 96.0, 130.0];
    let spots = rows.into_iter().flat_map(|row| {
        let sides = [
            (18.0, Anchor::End),
            (-8.0, Anchor::Start),
            (-8.0, Anchor::End),
            (8.0, Anchor::Start),
            (beyond + 8.0, Anchor::Start),
        ];
        sides.map(|(dx, anchor)| Spot {
            at,
            offset_px: [dx, row],
            anchor,
        })
    });
    scene.label(
        Label::new(
            at,
            Anchor::End,
            texts::dissolved(&fixed(map.dissolved_wt, 2)),
        )
        .styled(Ink::Ink, 12.0, Weight::Name)
        .then(
            texts::possible(&fixed(map.possible_wt, 2)),
            Ink::Ink2,
            11.5,
            Weight::Text,
        )
        .halo(Ink::FieldA)
        .at_spots(spots.collect(), Rank::Main)
        .led(),
    );
}
