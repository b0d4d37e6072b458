//! What too hot or too long does: the grain grows, and air takes off the skin.

use recalesce::phases::PhaseError;
use recalesce::soak::{LONGEST_S, SoakError, StartingStructure, Stock, overheated, skin, soak};
use recalesce::steel::find;

/// A normalised piece has finer grain after the same soak than one straight from the forge.
#[test]
fn as_forged_stays_coarse() {
    let steel = find("1075").unwrap().nominal;
    let grain = |start| {
        soak(&steel, start, 800.0, 300.0, 0.0)
            .unwrap()
            .end
            .grain_astm
    };
    assert!(grain(StartingStructure::AsForged) < grain(StartingStructure::FinePearlite) - 1.0);
    assert!(grain(StartingStructure::QuenchedAndRefined) > grain(StartingStructure::FinePearlite));
}

/// Producer's card: 100Cr6 heated to 850 °C has ASTM 7 to 8, to 950 °C 6, to 1050 °C 4. Beyond
/// 1250 °C nothing is told.
#[test]
fn overheated_bearing_steel_grows_as_its_card_says() {
    let steel = find("52100").unwrap().nominal;
    let stock = Stock::new(&steel, StartingStructure::Spheroidised).unwrap();
    let after = |temperature_c| {
        overheated(&stock, temperature_c, 1800.0).map(|found| found.map(|g| g.grain_astm))
    };
    assert!((after(820.0).unwrap()[0] - 7.5).abs() < 1.0);
    assert!((after(850.0).unwrap()[2] - 6.0).abs() < 1.0);
    assert!((after(950.0).unwrap()[2] - 4.0).abs() < 1.0);
    assert!(matches!(
        after(1160.0),
        Err(SoakError::Phase(PhaseError::OutOfRange(_)))
    ));
}

/// Shop figures from memory: 0.05 to 0.15 mm of scale in an hour at 900 °C, 0.15 to 0.3 mm at
/// 1000 °C; 0.05 mm in a quarter of an hour at 850 °C.
#[test]
fn scale_is_that_of_the_shop() {
    for (temperature_c, time_s, thin_mm, thick_mm) in [
        (900.0, 3600.0, 0.05, 0.15),
        (1000.0, 3600.0, 0.15, 0.3),
        (850.0, 900.0, 0.05, 0.05),
    ] {
        let scale = skin(temperature_c, time_s).unwrap().scale;
        assert!(
            scale.least_mm <= thin_mm + 0.005,
            "{temperature_c} {scale:?}"
        );
        assert!(scale.most_mm >= thick_mm, "{temperature_c} {scale:?}");
    }
}

#[test]
fn hotter_or_longer_in_air_takes_more_off() {
    let depths = |temperature_c, time_s| {
        let skin = skin(temperature_c, time_s).unwrap();
        [
            skin.decarburised.least_mm,
            skin.decarburised.most_mm,
            skin.scale.least_mm,
            skin.scale.most_mm,
            skin.stock_per_side_mm,
        ]
    };
    for temperature_c in [700.0, 780.0, 850.0, 1000.0, 1200.0] {
        assert_eq!(depths(temperature_c, 0.0), [0.0; 5]);
        for time_s in [1.0, 60.0, 900.0, 36_000.0] {
            let here = depths(temperature_c, time_s);
            assert!(here[0] < here[1] && here[2] < here[3] && here[1] < here[4]);
            for more in [
                depths(temperature_c + 20.0, time_s),
                depths(temperature_c, 1.1 * time_s),
            ] {
                assert!(here.iter().zip(more).all(|(here, more)| *here < more));
            }
            // fourfold time, twice the depth
            let twice = depths(temperature_c, 4.0 * time_s);
            assert!(
                here.iter()
                    .zip(twice)
                    .all(|(h, t)| (t / h - 2.0).abs() < 1e-9)
            );
        }
    }
    for (temperature_c, time_s) in [
        (690.0, 60.0),
        (1260.0, 60.0),
        (f64::NAN, 60.0),
        (850.0, -1.0),
        (850.0, LONGEST_S + 1.0),
        (850.0, f64::NAN),
    ] {
        assert!(skin(temperature_c, time_s).is_err());
    }
}
