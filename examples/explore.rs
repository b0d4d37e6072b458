use recalesce::heat::*;
use std::time::Instant;
fn main() {
    let blade = Section::Blade {
        edge_mm: 0.5,
        spine_mm: 4.0,
        height_mm: 30.0,
    };
    for m in media() {
        let q = Quenching {
            section: blade,
            medium: m,
            agitation: 1.0,
            start_c: 800.,
            air_delay_s: 0.,
            end_c: 20.,
            martensite_start_c: None,
        };
        let t0 = Instant::now();
        let c = cool(&q).unwrap();
        let us = t0.elapsed().as_secs_f64() * 1e6;
        let v: Vec<String> = c
            .curves
            .iter()
            .map(|c| {
                format!(
                    "{:.3}",
                    c.time_to_c(540.).unwrap() - c.time_to_c(727.).unwrap()
                )
            })
            .collect();
        let e: Vec<String> = c
            .curves
            .iter()
            .map(|c| format!("{:.3}", c.time_to_c(540.).unwrap()))
            .collect();
        println!(
            "{:16} {us:.0} us pts {} slow {} {:?} {} | {}",
            m.name,
            c.curves[0].time_s.len(),
            c.slowest,
            c.bath_exit_s,
            v.join(" / "),
            e.join(" ")
        );
    }
    for m in media() {
        let mut s = String::new();
        let mut us = 0.;
        for th in [1.5, 3., 6., 12.] {
            let q = Quenching {
                section: Section::Plate { thickness_mm: th },
                medium: m,
                agitation: 1.0,
                start_c: 800.,
                air_delay_s: 0.,
                end_c: 20.,
                martensite_start_c: None,
            };
            let t0 = Instant::now();
            let c = cool(&q).unwrap();
            us += t0.elapsed().as_secs_f64() * 1e6 / 4.;
            let c = &c.curves[0];
            s += &format!(
                " {:.2} ({:.2})",
                c.time_to_c(540.).unwrap(),
                c.time_to_c(540.).unwrap() - c.time_to_c(727.).unwrap()
            );
        }
        println!("{:16} {us:.0} {s}", m.name);
    }
}
