//! Charts as scenes in data units: clipping, planes, hit testing, colours, drawing over any backend.
//!
//! A chart is made in three steps, each of them pure: a function such as [`quench_chart`] turns
//! plain data into a [`Scene`]; [`draw()`] projects, clips and paints it on a [`Surface`]; the scene's
//! [`Plane`] leads from data to pixels and back for the handles that the page lays over it.

pub mod axis;
mod caption;
mod class_chart;
pub mod clip;
mod continuous_chart;
mod draw;
mod end_quench_chart;
pub mod face;
mod field_names;
mod frame;
pub mod glow;
pub mod hit;
mod influence_chart;
pub mod ink;
mod labels;
mod logbook_chart;
pub mod numbers;
mod outcome;
mod overlay_chart;
mod own_quenchant;
pub mod oxide;
pub mod pattern;
pub mod place;
pub mod plane;
pub mod qr;
mod quench_chart;
mod quench_margin;
mod replay_view;
mod route_strip;
pub mod scene;
mod section_view;
mod soak_history;
mod soak_map;
pub mod surface;
pub mod svg;
mod sweep_chart;
mod temper_chart;
mod trade_off_chart;

pub use class_chart::class_chart;
pub use continuous_chart::{ContinuousData, FanCurve, ProductField, continuous_chart};
pub use draw::draw;
pub use end_quench_chart::{EndQuenchData, end_quench_chart};
pub use field_names::MapField;
pub use influence_chart::{InfluenceRow, influence_chart};
pub use ink::{Constituent, Ink, Paint, Palette};
pub use labels::Labels;
pub use logbook_chart::{LoggedHardness, logbook_chart};
pub use outcome::{LadderRow, hardness_ladder, ladder_height_px, phase_bar, swatch};
pub use overlay_chart::{MOST_LINES, OverlayData, OverlayLine, overlay_chart};
pub use own_quenchant::{
    HeatTransferData, HeatTransferPoint, ProbePoint, heat_transfer, probe_test,
};
pub use plane::{Plane, Rect};
pub use quench_chart::{BathChange, CoolingTrace, ProductCurves, QuenchData, Role, quench_chart};
pub use quench_margin::{Margin, Verdict};
pub use replay_view::{Across, ReplayData, replay_view};
pub use route_strip::{RouteData, RouteStep, RouteStrip, route_strip};
pub use scene::{Handle, Moves, Scene};
pub use section_view::{Outline, SectionData, section_view};
pub use soak_history::{HistoryPoint, SoakHistoryData, soak_history};
pub use soak_map::{SoakMapData, soak_map};
pub use surface::{DrawError, Surface};
pub use sweep_chart::{SweepData, sweep_chart};
pub use temper_chart::{TemperData, TemperPoint, temper_chart};
pub use trade_off_chart::{TradeOffPoint, trade_off_chart};
