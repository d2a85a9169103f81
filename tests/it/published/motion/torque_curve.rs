//! Does the curve between typed points run as a monotone cubic does elsewhere?

use crate::published::row::Status::Derived;
use crate::published::row::{assert_rows, published};
use crate::support::vehicles::curve;

const MONOTONE: &str = "PchipInterpolator of scipy 1.17, slopes of Fritsch and Butland";

#[test]
fn torque_between_the_points_is_the_reference_s() {
    let curve = curve(&[
        (1000.0, 120.0),
        (2000.0, 170.0),
        (3000.0, 200.0),
        (4000.0, 200.0),
        (5000.0, 190.0),
        (6000.0, 165.0),
        (6500.0, 140.0),
    ]);
    let rows = [
        (1250.0, 134.492_188),
        (1500.0, 147.812_5),
        (2500.0, 189.687_5),
        (3500.0, 200.0),
        (4500.0, 196.785_714),
        (5500.0, 180.041_209),
        (6250.0, 153.982_372),
    ];
    assert_rows(rows.map(|(rpm, nm)| {
        let found = curve.torque_nm(rpm).unwrap();
        (rpm, found, published(nm, 5e-7, MONOTONE, Derived))
    }));
}

/// What `tests/reference/torque_curves.py` has written.
const REFERENCE: &str = include_str!("../../../reference/torque_curves.txt");

fn pairs(text: &str) -> Vec<(f64, f64)> {
    let pair = |text: &str| {
        let (rpm, nm) = text.split_once(':').unwrap();
        (rpm.parse().unwrap(), nm.parse().unwrap())
    };
    text.split_whitespace().map(pair).collect()
}

#[test]
fn curves_of_every_shape_are_the_reference_s() {
    let mut rows = Vec::new();
    for (number, line) in (1..).zip(REFERENCE.lines()) {
        let (points, between) = line.split_once('|').unwrap();
        let curve = curve(&pairs(points));
        for (rpm, nm) in pairs(between) {
            let found = curve.torque_nm(rpm).unwrap();
            let row = published(nm, 1e-9, MONOTONE, Derived);
            rows.push((format!("line {number}, {rpm} rpm"), found, row));
        }
    }
    assert!(rows.len() > 200);
    assert_rows(rows);
}
