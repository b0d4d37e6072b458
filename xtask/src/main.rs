//! The builder: `cargo xtask serve`, `cargo xtask test`, `cargo xtask dist`.

fn main() {}
