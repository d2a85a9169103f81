//! Typed grades: a list of roads whose load is shown.

use super::{Quantity, Reading};
use crate::gearing::list_items;
use crate::motion::Grade;
use crate::project::{Marks, too_many_grades};

/// A grade in per cent.
pub(in crate::app) const GRADE: Quantity<Grade> = Quantity {
    new: Grade::from_percent,
    example: "4",
    unit: "%",
};

/// Grades in per cent; none where nothing is typed.
///
/// # Errors
/// When one of them does not read, or there are too many.
pub(in crate::app) fn grades(text: &str) -> Reading<Option<Marks<Grade>>> {
    if text.trim().is_empty() {
        return Ok(None);
    }
    let items = list_items(text, &["%"]);
    let read = items.iter().map(|item| GRADE.read(item));
    let grades: Vec<Option<Grade>> = read.collect::<Reading<_>>()?;
    let grades = Marks::new(grades.into_iter().flatten().collect());
    grades.map(Some).map_err(too_many_grades)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn grades_are_read_as_people_list_them() {
        let cases: [(&str, &[f64]); 5] = [
            ("4", &[4.0]),
            ("4, 8 %, 12", &[4.0, 8.0, 12.0]),
            ("12 % 8 %", &[8.0, 12.0]),
            ("2,5; 5", &[2.5, 5.0]),
            ("-6 0 6", &[-6.0, 0.0, 6.0]),
        ];
        for (text, wanted) in cases {
            let grades = grades(text).unwrap().unwrap();
            let read: Vec<f64> = grades.as_slice().iter().map(|g| g.percent()).collect();
            assert_eq!(read, wanted, "{text}");
        }
        assert_eq!(grades(" "), Ok(None));
    }

    #[test]
    fn what_is_no_grade_is_told() {
        let nine = "1 2 3 4 5 6 7 8 9";
        let problem = grades(nine).unwrap_err();
        assert_eq!(problem, "at most 8 grades can be shown, not 9");
        assert!(grades("steep").unwrap_err().contains("a grade"));
        assert!(grades("60").unwrap_err().contains("between -50 and 50 %"));
    }
}
