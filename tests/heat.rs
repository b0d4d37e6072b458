//! The rows of `checks/quenching.csv` that concern heat, each against its own tolerance and with
//! its own source in the file.
#![cfg(not(target_arch = "wasm32"))]

mod rows;

use recalesce::heat::{Place, Shape};
use rows::heat::solved;

/// Rows out of tolerance, with the reason. A row that comes into tolerance has to leave the list.
const OUT_OF_TOLERANCE: [(&str, &str, &str); 1] = [(
    "published_HTC (factor)",
    "polymer peak",
    "the curve of the 15 % polymer peaks at 4.1 kW/m²K; the published polymer, of unknown \
     concentration, at 7.4",
)];

#[test]
fn check_rows() {
    let rows = rows::heat::rows();
    let problems: Vec<_> = rows
        .iter()
        .filter(|row| row.predicted.is_ok())
        .filter(|row| {
            let known = OUT_OF_TOLERANCE
                .iter()
                .any(|(quantity, case, _)| row.quantity == *quantity && row.case.contains(case));
            row.is_inside() == known
        })
        .collect();
    assert!(problems.is_empty(), "{problems:#?}");
    let score = rows::score(&rows);
    assert!(score.inside > 100, "{score:?}");
    assert_eq!(score.rows, score.predicted);
}

/// The aim for the series is 0.1 % of the range, closer than the tolerance of the rows.
#[test]
fn every_row_of_a_series_is_met_to_a_thousandth_of_the_range() {
    let of_series =
        |quantity: &str| quantity.ends_with("_theta") || quantity == "semi_infinite_unaccomplished";
    let rows = rows::heat::rows();
    let errors: Vec<(f64, &str)> = rows
        .iter()
        .filter(|row| of_series(&row.quantity))
        .map(|row| (row.error().expect("a prediction").abs(), row.case.as_str()))
        .collect();
    assert_eq!(errors.len(), 43);
    let apart: Vec<_> = errors.iter().filter(|(error, _)| *error > 1e-3).collect();
    assert!(apart.is_empty(), "{apart:?}");
}

/// The same early and late, where no row looks: the series of Carslaw and Jaeger, 1959, summed to 200
/// terms by scipy.
#[test]
fn series_to_a_thousandth_of_the_range() {
    for (shape, biot, fourier, place, exact) in [
        // From the rows of the file.
        (Shape::Plate, 0.5, 0.2, Place::Surface, 0.790147),
        (Shape::Plate, 20.0, 0.2, Place::Surface, 0.062154),
        (Shape::Plate, 20.0, 0.2, Place::Centre, 0.804281),
        (Shape::Plate, 20.0, 1.0, Place::Centre, 0.135410),
        (Shape::Plate, 5.0, 1.0, Place::Centre, 0.220721),
        (Shape::Plate, 0.05, 1.0, Place::Surface, 0.936304),
        (Shape::Cylinder, 10.0, 0.1, Place::Centre, 0.900080),
        (Shape::Cylinder, 2.0, 0.1, Place::Centre, 0.959383),
        (Shape::Cylinder, 2.0, 0.2, Place::Surface, 0.370144),
        (Shape::Sphere, 1.0, 0.3, Place::Centre, 0.606804),
        (Shape::Plate, 5.0, 0.02, Place::Surface, 0.523157),
        (Shape::Plate, 20.0, 0.01, Place::Surface, 0.255396),
        (Shape::Plate, 5.0, 0.1, Place::Centre, 0.977309),
    ] {
        let got = solved(shape, biot, fourier, place);
        assert!(
            (got - exact).abs() < 1e-3,
            "{shape:?} Bi {biot} Fo {fourier}: {got} {exact}"
        );
    }
}
