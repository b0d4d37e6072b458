//! A blade in section: its flanks from edge to spine, and what may stay soft towards the spine.

use super::dimension::{length_short, level_dimension, name_side, remark, small};
use super::{SectionData, fill_core, fill_hardened, outlined};
use crate::chart::ink::Ink;
use crate::chart::labels::Labels;
use crate::chart::numbers::fixed;
use crate::chart::scene::{Anchor, Pen, Scene, px};
use recalesce_texts::charts::section as texts;

/// Straight parts that a flank of a blade is drawn with.
const FLANK_PARTS: u8 = 24;

pub(super) fn blade(
    scene: &mut Scene,
    section: &SectionData,
    labels: &Labels,
    [edge, spine, tall]: [f64; 3],
    is_convex: bool,
) {
    let [width, height] = scene.size_px;
    let left = 12.0;
    let long = (width - 172.0).max(80.0);
    let along = long / tall;
    // The thickness keeps the scale unless the blade is so thin that nothing could be seen in it.
    let across = along.clamp(30.0 / spine, 60.0 / spine);
    let middle = 0.5 * height;
    let half = |mm: f64| {
        let up = (mm / tall).clamp(0.0, 1.0);
        let thicker = if is_convex { up * (2.0 - up) } else { up };
        0.5 * across * (edge + (spine - edge) * thicker)
    };
    let x = |mm: f64| left + along * mm;
    let flank: Vec<[f64; 2]> = (0..=FLANK_PARTS)
        .map(|i| tall * f64::from(i) / f64::from(FLANK_PARTS))
        .map(|mm| [x(mm), half(mm)])
        .collect();
    let upper = flank.iter().map(|[x, half]| [*x, middle - half]);
    let lower = flank.iter().rev().map(|[x, half]| [*x, middle + half]);
    let body: Vec<[f64; 2]> = upper.chain(lower).collect();
    fill_hardened(scene, &body);
    let hardened = section.hardened_mm.max(0.0).min(tall);
    let through = hardened >= tall;
    if !through {
        fill_core(scene, &core(hardened, tall, x, half, middle), section);
    }
    outlined(scene, &body);
    let ext = Pen::new(Ink::Ink2, 0.9);
    let line = middle - half(tall) - 16.0;
    let text = if through {
        texts::through_all(section.through_words(), &labels.length(tall))
    } else {
        texts::part_of(
            &fixed(
                (labels.length)(hardened),
                labels.length_decimals.saturating_sub(1),
            ),
            &length_short(labels, tall),
        )
    };
    for (mm, top) in [(0.0, half(0.0)), (hardened, half(hardened))] {
        scene.stroke(px(x(mm), middle - top - 3.0), px(x(mm), line - 5.0), ext);
    }
    level_dimension(scene, [x(0.0), x(hardened)], line, &text);
    let beside = x(tall) + 3.0;
    for side in [-1.0, 1.0] {
        let row = middle + side * half(tall);
        scene.stroke(px(beside, row), px(beside + 14.0, row), ext);
    }
    scene.stroke(
        px(beside + 9.0, middle - half(tall)),
        px(beside + 9.0, middle + half(tall)),
        Pen::new(Ink::Ink, 1.0),
    );
    name_side(
        scene,
        beside + 16.0,
        middle,
        &labels.given_length(spine),
        texts::SPINE,
    );
    scene.label(small(
        px(left, middle + half(0.0) + 18.0),
        Anchor::Start,
        texts::cutting_edge(&labels.given_length(edge)),
    ));
    if !through {
        remark(
            scene,
            section,
            [x(hardened + 0.7 * (tall - hardened)), middle],
            middle + half(tall),
        );
    }
}

/// The part of a blade that may stay soft: a rounded tongue from the spine towards the edge.
fn core(
    hardened: f64,
    tall: f64,
    x: impl Fn(f64) -> f64,
    half: impl Fn(f64) -> f64,
    middle: f64,
) -> Vec<[f64; 2]> {
    let upper = (0..=16).map(|i| {
        let f = f64::from(i) / 16.0;
        let mm = hardened + (tall - hardened) * f;
        (
            x(mm),
            0.55 * half(mm) * (1.0 - (1.0 - f).powi(3)).max(0.0).sqrt(),
        )
    });
    let upper: Vec<(f64, f64)> = upper.collect();
    let top = upper.iter().map(|(x, h)| [*x, middle - h]);
    let bottom = upper.iter().rev().map(|(x, h)| [*x, middle + h]);
    top.chain(bottom).collect()
}
