//! Does the curve between typed points run as a monotone cubic does elsewhere?

use super::checked::{BETWEEN, CURVE, MONOTONE};
use crate::published::row::Status::Derived;
use crate::published::row::{assert_rows, published};
use crate::support::vehicles::curve;

#[test]
fn torque_between_the_points_is_the_reference_s() {
    let curve = curve(&CURVE);
    assert_rows(BETWEEN.map(|(rpm, expected)| {
        let found = curve.torque_nm(rpm).unwrap();
        (rpm, found, expected)
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
