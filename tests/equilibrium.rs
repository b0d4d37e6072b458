//! Equilibrium against outside values, and its properties over random compositions.

#[path = "rows/equilibrium.rs"]
mod equilibrium_rows;
#[path = "rows/mod.rs"]
mod rows;

/// Same parameters, other program (named in the rows' source column).
#[test]
fn every_row_within_its_tolerance() {
    let mut outside = Vec::new();
    let rows = equilibrium_rows::rows();
    for row in &rows {
        let within = row
            .predicted
            .as_ref()
            .is_ok_and(|p| (p - row.value).abs() <= row.tolerance);
        if !within {
            outside.push(format!(
                "{}, {}: {:?} against {} ± {}",
                row.case, row.quantity, row.predicted, row.value, row.tolerance
            ));
        }
    }
    assert!(
        outside.is_empty(),
        "{} of {} outside\n{}",
        outside.len(),
        rows.len(),
        outside.join("\n")
    );
}

#[test]
fn print_map() {
    use recalesce::phases::*;
    for text in [
        "C0.4",
        "C1.0 MN0.35 SI0.25 CR1.45",
        "C1.0 MN0.7 SI0.3 CR5.1 MO1.1 V0.2",
        "C0.75 MN0.7 SI0.25 CR0.8 NI1.6 MO0.3",
        "C1.55 MN0.35 SI0.35 CR11.8 MO0.8 V0.8",
        "C0.9 MN0.7 SI0.3 CR0.5 V0.2 W0.5",
    ] {
        let steel = equilibrium_rows::parse_composition(text);
        let t = std::time::Instant::now();
        let c = critical_points(&steel);
        println!(
            "{text} critical {:?}: {:?}",
            t.elapsed(),
            c.as_ref().map(|c| (
                c.a1_lower_c,
                c.a1_upper_c,
                c.last_ferrite_c,
                c.last_pearlitic_carbide_c,
                c.last_carbide_c
            ))
        );
        let t = std::time::Instant::now();
        let map = isopleth(&steel);
        println!("map {:?}", t.elapsed());
        match map {
            Ok(map) => {
                println!("eut {:?}", map.eutectoid);
                for l in &map.lines {
                    println!(
                        "{:?} below {} {:?}",
                        l.phase,
                        l.stable_below,
                        l.points
                            .iter()
                            .map(|p| (p[0], (p[1] * 10.0).round() / 10.0))
                            .collect::<Vec<_>>()
                    );
                }
            }
            Err(e) => println!("{e}"),
        }
    }
}
