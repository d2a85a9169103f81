//! The list that goes to the lathe: target, tolerance, fillet, run-out and finish.

use super::quantity::{FilletRadius, RunOut, SeatLength};
use crate::units::LengthUnit;
use crate::workshop::fits::{Diameter, SeatFinish, ShaftClass};

/// What is to be made of a journal.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CuttingList {
    /// The new nominal diameter.
    pub diameter: Diameter,
    /// The tolerance class that is wanted there, where one is.
    pub class: Option<ShaftClass>,
    /// How long the seat is, where that is known.
    pub length: Option<SeatLength>,
    /// The fillet, where it is known.
    pub fillet: Option<FilletRadius>,
    /// How much the journal may run out.
    pub run_out: RunOut,
    /// How it is finished.
    pub finish: SeatFinish,
}

/// One line of it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CutLine {
    /// What it is about.
    pub what: &'static str,
    /// What is wanted.
    pub words: String,
}

impl CuttingList {
    /// The least and the most of the new size in mm, to the micrometre; none without a class, or outside its table.
    pub fn limits_mm(&self) -> Option<[f64; 2]> {
        let limits = self.class?.limits(self.diameter)?;
        Some(limits.sizes_mm(self.diameter))
    }

    /// The size to aim at in mm: the middle of the limits, else the new diameter.
    pub fn target_mm(&self) -> f64 {
        let middle = self
            .limits_mm()
            .map(|[least, most]| f64::midpoint(least, most));
        middle.unwrap_or_else(|| self.diameter.mm())
    }

    /// The list line by line, at a bench of that unit; the length only where it is known.
    pub fn lines(&self, unit: LengthUnit) -> Vec<CutLine> {
        let line = |what, words| CutLine { what, words };
        let sign = unit.sign();
        let fillet = match self.fillet {
            Some(radius) => format!("radius {} {sign}, polished", unit.reckoned(radius.mm())),
            None => "the largest that the bearing's chamfer allows, polished".to_owned(),
        };
        let run_out = unit.reckoned(self.run_out.mm());
        let run_out = format!("at most {run_out} {sign}, between centres");
        let target = format!("{} {sign}", unit.seat_size(self.target_mm()));
        let length = self.length.map(|length| {
            let length = unit.figure(length.mm());
            line("length", format!("{length} {sign}, from the shoulder"))
        });
        let sizes = [
            line("target", target),
            line("tolerance", self.tolerance_words(unit)),
        ];
        let form = [
            line("fillet", fillet),
            line("run-out", run_out),
            line("finish", self.finish.words().to_owned()),
        ];
        sizes.into_iter().chain(length).chain(form).collect()
    }

    fn tolerance_words(&self, unit: LengthUnit) -> String {
        let Some(class) = self.class else {
            return "ask the bearing's maker".to_owned();
        };
        match class.limits(self.diameter) {
            Some(limits) => {
                let sizes = limits.size_words_in(self.diameter, unit);
                format!("{sizes} ({class})")
            }
            None => format!("{class}, outside the table: ask the bearing's maker"),
        }
    }
}

impl SeatFinish {
    /// What is asked of the lathe or the grinder: roughness from memory, no source, and in µin as drawings pair it.
    pub fn words(self) -> &'static str {
        match self {
            Self::Ground => "ground, Ra 0.8 µm (32 µin) at most",
            Self::Turned => "turned, Ra 1.6 µm (63 µin) at most",
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn list(mm: f64, class: Option<ShaftClass>) -> CuttingList {
        CuttingList {
            diameter: Diameter::from_mm(mm).unwrap(),
            class,
            length: None,
            fillet: None,
            run_out: RunOut::USUAL,
            finish: SeatFinish::Ground,
        }
    }

    fn words(list: &CuttingList) -> Vec<String> {
        words_in(list, LengthUnit::Millimetre)
    }

    fn words_in(list: &CuttingList, unit: LengthUnit) -> Vec<String> {
        let lines = list.lines(unit).into_iter();
        lines
            .map(|line| format!("{}: {}", line.what, line.words))
            .collect()
    }

    #[test]
    fn a_journal_for_k6_is_cut_to_the_middle_of_its_limits() {
        let mut list = list(39.0, Some(ShaftClass::K6));
        list.fillet = FilletRadius::from_mm(1.0).ok();
        list.length = SeatLength::from_mm(17.5).ok();
        let expected = [
            "target: 39.010 mm",
            "tolerance: 39.002 to 39.018 mm (k6)",
            "length: 17.50 mm, from the shoulder",
            "fillet: radius 1.00 mm, polished",
            "run-out: at most 0.01 mm, between centres",
            "finish: ground, Ra 0.8 µm (32 µin) at most",
        ];
        assert_eq!(words(&list), expected);
        assert_eq!(list.limits_mm(), Some([39.002, 39.018]));
    }

    #[test]
    fn a_lathe_that_reads_inches_gets_inches() {
        let mut list = list(39.0, Some(ShaftClass::K6));
        list.fillet = FilletRadius::from_mm(1.016).ok();
        let words = words_in(&list, LengthUnit::Inch);
        let expected = [
            "target: 1.53583 in",
            "tolerance: 1.53552 to 1.53614 in (k6)",
            "fillet: radius 0.040 in, polished",
            "run-out: at most 0.0004 in, between centres",
        ];
        assert_eq!(words[..4], expected);
    }

    #[test]
    fn without_a_class_or_outside_its_table_the_maker_is_asked() {
        assert!(words(&list(39.0, None))[1].contains("ask the bearing's maker"));
        let small = list(9.0, Some(ShaftClass::K6));
        assert!(words(&small)[1].contains("outside the table"));
        assert_eq!(small.limits_mm(), None);
        assert!((small.target_mm() - 9.0).abs() < 1e-12);
    }
}
