//! Diameters of a seat as they were measured: along it and round about, their mean, taper and roundness.

use super::limits::{SizeLimits, SizeVerdict};
use super::quantity::Diameter;

/// Diameters at one place or more along a seat, at each read across once or more.
#[derive(Debug, Clone, PartialEq)]
pub struct MeasuredDiameters(Vec<Vec<Diameter>>);

/// Diameters that were read across at one place.
#[derive(Debug, Clone, PartialEq)]
pub struct PlaceDiameters(Vec<Diameter>);

impl PlaceDiameters {
    /// As many as anybody takes.
    pub const MOST: usize = 100;

    /// These readings; none where there is not one, or there are more than [`Self::MOST`].
    pub fn new(readings: Vec<Diameter>) -> Option<Self> {
        let count = readings.len();
        (1..=Self::MOST).contains(&count).then_some(Self(readings))
    }

    /// All of them, in the order in which they were read.
    pub fn as_slice(&self) -> &[Diameter] {
        &self.0
    }
}

/// What a measured seat is beside its limits.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MeasuredVerdict {
    /// The smallest reading.
    pub smallest: SizeVerdict,
    /// The mean.
    pub mean: SizeVerdict,
    /// The largest reading.
    pub largest: SizeVerdict,
}

impl MeasuredVerdict {
    /// Whether every reading lies within.
    pub fn is_within(self) -> bool {
        [self.smallest, self.mean, self.largest]
            .iter()
            .all(|verdict| *verdict == SizeVerdict::Within)
    }
}

impl MeasuredDiameters {
    /// The readings, place by place along the seat; none where there is no place, or one without a reading.
    ///
    /// # Example
    /// ```
    /// use layshaft::workshop::{Diameter, MeasuredDiameters};
    /// let at = |mm: [f64; 2]| mm.map(|mm| Diameter::from_mm(mm).unwrap()).to_vec();
    /// let places = vec![at([40.010, 40.012]), at([40.006, 40.005])];
    /// let measured = MeasuredDiameters::new(places).unwrap();
    /// assert!((measured.mean_mm() - 40.00825).abs() < 1e-9);
    /// assert!((measured.taper_mm() - 0.0055).abs() < 1e-9);
    /// assert!((measured.out_of_round_mm() - 0.002).abs() < 1e-9);
    /// ```
    pub fn new(places: Vec<Vec<Diameter>>) -> Option<Self> {
        let is_whole = !places.is_empty() && places.iter().all(|place| !place.is_empty());
        is_whole.then_some(Self(places))
    }

    /// The places along the seat with their readings.
    pub fn places(&self) -> &[Vec<Diameter>] {
        &self.0
    }

    /// The mean of all places in mm, each with the mean of its readings.
    pub fn mean_mm(&self) -> f64 {
        mean(self.0.iter().map(|place| place_mean_mm(place)))
    }

    /// The smallest and the largest reading in mm.
    pub fn extremes_mm(&self) -> [f64; 2] {
        extremes(self.0.iter().flatten().map(|reading| reading.mm()))
    }

    /// How much the means of the places differ, in mm; 0 of a single place.
    pub fn taper_mm(&self) -> f64 {
        difference(self.0.iter().map(|place| place_mean_mm(place)))
    }

    /// The most by which the readings of one place differ, in mm; 0 where none has two.
    pub fn out_of_round_mm(&self) -> f64 {
        let places = self.0.iter();
        let differences = places.map(|place| difference(place.iter().map(|reading| reading.mm())));
        differences.fold(0.0, f64::max)
    }

    /// What was measured as limits about a nominal diameter, for the fit that it makes.
    pub fn limits(&self, nominal: Diameter) -> SizeLimits {
        SizeLimits::measured(self.extremes_mm(), nominal)
    }

    /// What was measured beside the limits that are wanted.
    pub fn verdict(&self, wanted: SizeLimits, nominal: Diameter) -> MeasuredVerdict {
        let [smallest, largest] = self.extremes_mm();
        MeasuredVerdict {
            smallest: wanted.verdict(nominal, smallest),
            mean: wanted.verdict(nominal, self.mean_mm()),
            largest: wanted.verdict(nominal, largest),
        }
    }
}

fn place_mean_mm(place: &[Diameter]) -> f64 {
    mean(place.iter().map(|reading| reading.mm()))
}

fn mean(values: impl Iterator<Item = f64>) -> f64 {
    let (sum, count) = values.fold((0.0, 0.0), |(sum, count), value| (sum + value, count + 1.0));
    sum / count
}

fn extremes(values: impl Iterator<Item = f64>) -> [f64; 2] {
    values.fold([f64::MAX, f64::MIN], |[smallest, largest], value| {
        [smallest.min(value), largest.max(value)]
    })
}

fn difference(values: impl Iterator<Item = f64>) -> f64 {
    let [smallest, largest] = extremes(values);
    largest - smallest
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::workshop::ShaftClass;

    fn place(mm: &[f64]) -> Vec<Diameter> {
        let readings = mm.iter().map(|mm| Diameter::from_mm(*mm).unwrap());
        readings.collect()
    }

    #[test]
    fn a_seat_is_within_when_every_reading_is() {
        let nominal = Diameter::from_mm(40.0).unwrap();
        let k6 = ShaftClass::K6.limits(nominal).unwrap();
        let verdict = |places: Vec<Vec<Diameter>>| {
            let measured = MeasuredDiameters::new(places).unwrap();
            measured.verdict(k6, nominal)
        };
        let good = verdict(vec![place(&[40.002, 40.010]), place(&[40.018])]);
        assert!(good.is_within());
        let worn = verdict(vec![place(&[40.010, 40.012]), place(&[39.999])]);
        assert!(!worn.is_within());
        assert_eq!(worn.mean, SizeVerdict::Within);
        assert_eq!(worn.smallest.words(), "below by 3 µm");
    }

    #[test]
    fn a_place_without_a_reading_is_no_measurement() {
        assert_eq!(MeasuredDiameters::new(Vec::new()), None);
        assert_eq!(
            MeasuredDiameters::new(vec![place(&[40.0]), Vec::new()]),
            None
        );
    }
}
