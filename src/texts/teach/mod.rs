//! Words of experiments and of a class: numbers that are asked for, and what is wrong with a file or a link.
//! The experiments themselves stand in `experiments/` beside this folder.

pub mod class;
pub mod experiment;
pub mod link;
pub mod number;
