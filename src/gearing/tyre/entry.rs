//! The reader of the one tyre field, for sizes and measured figures.
//!
//! A size, or one measured figure together with the word that says what was measured.
//! A bare length is never guessed to be a diameter or a circumference.

use super::super::number::{parse_decimal, quoted};
use super::super::{OutOfRange, OverallDiameter, RollingCircumference};
use super::{Construction, RevsPerKm, RevsPerMile, Tyre, TyreDiameter, TyreError, TyreSize};
use crate::units::MM_PER_INCH;

/// The tyre that `text` names.
///
/// A size, or a figure with a word: `diameter 632 mm`, `circumference 1935 mm`,
/// `520 revs per km`, `682 revs per mile`. Lengths in mm (also without a unit), cm, m or inches;
/// other lengths than mm are rounded to 0.001 mm. A diameter is taken for that of a radial tyre
/// unless cross-ply stands with it.
///
/// # Errors
/// When the text names no tyre, leaves open what was measured, or names a tyre that cannot exist.
///
/// # Example
/// ```
/// let tyre = layshaft::gearing::parse_tyre("roll-out 1,935 m")?;
/// assert_eq!(tyre.to_string(), "circumference 1935 mm");
/// # Ok::<(), layshaft::gearing::TyreError>(())
/// ```
pub fn parse_tyre(text: &str) -> Result<Tyre, TyreError> {
    if text.trim().is_empty() {
        return Err(TyreError::Empty);
    }
    let words = Words::of(text);
    if words.are_a_measure() {
        words.tyre()
    } else {
        Ok(Tyre::Size(text.parse::<TyreSize>()?))
    }
}

/// What a word means in the tyre field.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Word {
    Circumference,
    Rolling,
    Diameter,
    Radius,
    Revs,
    Per,
    Km,
    Mile,
    Mm,
    Cm,
    Metre,
    Inch,
    Radial,
    CrossPly,
    /// Says nothing.
    Filler,
}

/// The meaning of a bare word, or of a sign. Common practice, no source.
fn meaning(word: &str) -> Option<Word> {
    Some(match word {
        "circumference" | "circ" | "roll" | "rollout" | "roll-out" => Word::Circumference,
        "rolling" => Word::Rolling,
        "diameter" | "dia" | "diam" | "od" | "o.d" | "ø" | "⌀" | "∅" => Word::Diameter,
        "radius" => Word::Radius,
        "rev" | "revs" | "revolution" | "revolutions" | "turn" | "turns" => Word::Revs,
        "per" | "/" => Word::Per,
        "km" | "kilometre" | "kilometres" | "kilometer" | "kilometers" => Word::Km,
        "mi" | "mile" | "miles" => Word::Mile,
        "mm" | "millimetre" | "millimetres" | "millimeter" | "millimeters" => Word::Mm,
        "cm" | "centimetre" | "centimetres" | "centimeter" | "centimeters" => Word::Cm,
        "m" | "metre" | "metres" | "meter" | "meters" => Word::Metre,
        "in" | "inch" | "inches" | "\"" | "″" | "”" => Word::Inch,
        "radial" => Word::Radial,
        "cross-ply" | "crossply" | "cross" | "bias-ply" | "bias" | "diagonal" => Word::CrossPly,
        "overall" | "outer" | "outside" | "out" | "ply" | "of" | "is" | "tyre" | "tire" => {
            Word::Filler
        }
        ":" | "=" | "," | ";" | "(" | ")" => Word::Filler,
        _ => return None,
    })
}

/// The text of the field, word by word; the order of the words does not matter.
struct Words<'a> {
    text: &'a str,
    figures: Vec<&'a str>,
    known: Vec<Word>,
    unknown: Option<&'a str>,
}

impl<'a> Words<'a> {
    fn of(text: &'a str) -> Self {
        let mut words = Self {
            text,
            figures: Vec::new(),
            known: Vec::new(),
            unknown: None,
        };
        let mut rest = text.trim_start();
        while let Some(first) = rest.chars().next() {
            let (word, after) = rest.split_at(word_length(rest));
            if first.is_ascii_digit() {
                words.figures.push(word.trim_end_matches(['.', ',']));
            } else if let Some(meaning) = meaning(&bare(word)) {
                words.known.push(meaning);
            } else {
                words.unknown = words.unknown.or(Some(word));
            }
            rest = after.trim_start();
        }
        words
    }

    fn has(&self, word: Word) -> bool {
        self.known.contains(&word)
    }

    /// Whether this is a measured figure rather than a size: a word of measure tells, or nothing
    /// but one figure with a unit.
    fn are_a_measure(&self) -> bool {
        use Word::{Circumference, Cm, Diameter, Km, Mile, Mm, Radius, Revs, Rolling};
        let tells = [
            Circumference,
            Rolling,
            Diameter,
            Radius,
            Revs,
            Km,
            Mile,
            Mm,
            Cm,
        ];
        tells.iter().any(|&word| self.has(word))
            || (self.unknown.is_none() && self.figures.len() == 1)
    }

    fn tyre(&self) -> Result<Tyre, TyreError> {
        let text = quoted(self.text);
        if let Some(word) = self.unknown {
            return Err(TyreError::UnknownWord { word: quoted(word) });
        }
        let figure = match *self.figures.as_slice() {
            [] => return Err(TyreError::NoFigure { text }),
            [figure] => figure,
            _ => return Err(TyreError::SeveralFigures { text }),
        };
        let circumference = self.has(Word::Circumference) || self.has(Word::Rolling);
        let diameter = self.has(Word::Diameter);
        let revs = [Word::Revs, Word::Per, Word::Km, Word::Mile];
        let revs = revs.iter().any(|&word| self.has(word));
        if self.has(Word::Radius) || (diameter && self.has(Word::Rolling)) {
            return Err(TyreError::RadiusOrRollingDiameter);
        }
        match (circumference, diameter, revs) {
            (true, false, false) => self.by_circumference(figure),
            (false, true, false) => self.by_diameter(figure),
            (false, false, true) => self.by_revs(figure),
            (false, false, false) => Err(TyreError::Ambiguous { text }),
            _ => Err(TyreError::Mixed { text }),
        }
    }

    fn by_circumference(&self, figure: &str) -> Result<Tyre, TyreError> {
        let mm = self.length_mm(figure)?;
        let circumference = RollingCircumference::from_mm(mm)
            .map_err(|error| self.length_out_of_range(figure, &error))?;
        Ok(Tyre::RollingCircumference(circumference))
    }

    fn by_diameter(&self, figure: &str) -> Result<Tyre, TyreError> {
        let construction = match (self.has(Word::Radial), self.has(Word::CrossPly)) {
            (_, false) => Construction::Radial,
            (false, true) => Construction::CrossPly,
            (true, true) => return Err(self.mixed()),
        };
        let mm = self.length_mm(figure)?;
        let tyre = OverallDiameter::from_mm(mm)
            .and_then(|diameter| TyreDiameter::new(diameter, construction))
            .map_err(|error| self.length_out_of_range(figure, &error))?;
        Ok(Tyre::OverallDiameter(tyre))
    }

    fn by_revs(&self, figure: &str) -> Result<Tyre, TyreError> {
        if self.length_units().next().is_some() || (self.has(Word::Km) && self.has(Word::Mile)) {
            return Err(self.mixed());
        }
        let revs = parse_decimal(figure)?;
        let tyre = match (
            self.has(Word::Per),
            self.has(Word::Km),
            self.has(Word::Mile),
        ) {
            (true, true, _) => RevsPerKm::new(revs).map(Tyre::RevsPerKm),
            (true, _, true) => RevsPerMile::new(revs).map(Tyre::RevsPerMile),
            _ => {
                return Err(TyreError::IncompleteRevs {
                    text: quoted(self.text),
                });
            }
        };
        tyre.map_err(|error| self.out_of_range(&error))
    }

    fn length_units(&self) -> impl Iterator<Item = Word> {
        let units = [Word::Mm, Word::Cm, Word::Metre, Word::Inch];
        units.into_iter().filter(|&unit| self.has(unit))
    }

    /// The figure in mm, which it is without a unit too.
    fn length_mm(&self, figure: &str) -> Result<f64, TyreError> {
        let number = parse_decimal(figure)?;
        let mut units = self.length_units();
        let mm_per_unit = match (units.next(), units.next()) {
            (None | Some(Word::Mm), None) => return Ok(number),
            (Some(Word::Cm), None) => 10.0,
            (Some(Word::Metre), None) => 1000.0,
            (Some(Word::Inch), None) => MM_PER_INCH,
            _ => return Err(self.mixed()),
        };
        // Without the dust that the multiplication leaves: 24.9 in is 632.46 mm.
        Ok((number * mm_per_unit * 1000.0).round() / 1000.0)
    }

    /// Says so where a length in mm was written with a mark between its thousands, or in metres.
    fn length_out_of_range(&self, figure: &str, error: &OutOfRange) -> TyreError {
        let in_mm = self.length_units().all(|unit| unit == Word::Mm);
        let grouped = figure
            .split_once(['.', ','])
            .filter(|(_, rest)| in_mm && rest.len() == 3)
            .and_then(|(thousands, rest)| format!("{thousands}{rest}").parse().ok())
            .filter(|mm| (300..=13_000).contains(mm));
        match grouped {
            Some(ungrouped_mm) => TyreError::Thousands {
                figure: quoted(figure),
                ungrouped_mm,
            },
            None => self.out_of_range(error),
        }
    }

    fn out_of_range(&self, error: &OutOfRange) -> TyreError {
        TyreError::OutOfRange {
            what: error.what,
            bounds: error.bounds,
            text: quoted(self.text),
        }
    }

    fn mixed(&self) -> TyreError {
        TyreError::Mixed {
            text: quoted(self.text),
        }
    }
}

/// The bytes of the word that opens `text`: a figure, a word with its hyphens and points, or a sign.
fn word_length(text: &str) -> usize {
    let is_figure = text.starts_with(|c: char| c.is_ascii_digit());
    let is_word = text.starts_with(char::is_alphabetic);
    let goes_on = |c: char| match c {
        '.' => is_figure || is_word,
        ',' => is_figure,
        '-' => is_word,
        c => (is_figure && c.is_ascii_digit()) || (is_word && c.is_alphabetic()),
    };
    let end = text.find(|c| !goes_on(c)).unwrap_or(text.len());
    let first = text.chars().next().map_or(0, char::len_utf8);
    end.max(first)
}

/// A word in lower case without the point of an abbreviation or a hyphen behind it.
fn bare(word: &str) -> String {
    word.trim_end_matches(['.', '-']).to_lowercase()
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn canonical(text: &str) -> String {
        match parse_tyre(text) {
            Ok(tyre) => tyre.to_string(),
            Err(error) => format!("{text}: {error}"),
        }
    }

    #[test]
    fn every_usual_way_of_naming_a_tyre_is_read() {
        for (text, spelling) in [
            ("195/65r15 91T", "195/65 R 15 91T"),
            ("31x10.50R15LT", "31x10.50 R 15 LT"),
            ("31\"x10.50\" R15", "31x10.50 R 15"),
            ("130/90-16 M/C 67H M+S", "130/90 - 16 M/C 67H"),
            ("1935 mm rolling", "circumference 1935 mm"),
            ("circumference 1935", "circumference 1935 mm"),
            ("Circ. 1935mm", "circumference 1935 mm"),
            ("rolling circumference 1,935 m", "circumference 1935 mm"),
            ("rolling circumference: 193.5 cm", "circumference 1935 mm"),
            ("roll-out 1.935 m", "circumference 1935 mm"),
            ("rollout = 76.18 in", "circumference 1934.972 mm"),
            ("roll out 1935.25 mm", "circumference 1935.25 mm"),
            ("circumference 1935 mm radial", "circumference 1935 mm"),
            ("diameter 632 mm", "diameter 632 mm"),
            ("Overall diameter 632", "diameter 632 mm"),
            ("dia 24.9 in", "diameter 632.46 mm"),
            ("dia. 24.9\"", "diameter 632.46 mm"),
            ("O.D. 24,9 inches", "diameter 632.46 mm"),
            ("Ø 632 mm", "diameter 632 mm"),
            ("Ø632", "diameter 632 mm"),
            ("⌀ 63.2 cm", "diameter 632 mm"),
            ("632 mm diameter", "diameter 632 mm"),
            ("diameter 632 mm cross-ply", "diameter 632 mm cross-ply"),
            ("cross ply, diameter 632 mm", "diameter 632 mm cross-ply"),
            ("diameter 632 mm (bias-ply)", "diameter 632 mm cross-ply"),
            ("682 revs/mile", "682 revs per mile"),
            ("682 rev/mi", "682 revs per mile"),
            ("682 per mile", "682 revs per mile"),
            ("revs per mile: 682", "682 revs per mile"),
            ("520 revs per km", "520 revs per km"),
            ("520/km", "520 revs per km"),
            ("516,8 Turns Per Kilometre", "516.8 revs per km"),
        ] {
            assert_eq!(canonical(text), spelling);
        }
    }

    #[test]
    fn a_bare_length_is_asked_for_with_both_forms() {
        for text in [
            "1935",
            "1935 mm",
            "632",
            "24.9 in",
            "1,935 m",
            "31\"",
            "632 mm radial",
        ] {
            let sentence = canonical(text);
            for form in ["diameter", "circumference"].map(|word| format!("{word} {text}")) {
                assert!(sentence.contains(&form), "{form} in: {sentence}");
            }
        }
    }

    #[test]
    fn what_names_no_tyre_is_answered_with_what_is_wrong() {
        for (text, answer) in [
            ("", "there is no tyre yet"),
            ("  \t ", "there is no tyre yet"),
            ("mud terrain", "is not a tyre size"),
            ("-1935", "is not a tyre size"),
            ("155 R 13", "no aspect ratio"),
            ("195/65", "has no rim"),
            ("diameter", "has no figure"),
            ("circumference mm", "has no figure"),
            ("revs per mile", "has no figure"),
            ("circumference 1 935 mm", "more than one figure"),
            ("195/65 R 15 1935 mm rolling", "is not understood"),
            ("195/65 15 circumference 1935", "more than one figure"),
            ("circumference 1.9.35 m", "more than one decimal mark"),
            ("circumference -1935 mm", "\"-\" is not understood"),
            ("circumference 1935 yards", "\"yards\" is not understood"),
            ("circumference 1e3", "\"e\" is not understood"),
            ("circumference NaN mm", "\"NaN\" is not understood"),
            ("diameter 632 circumference 1935", "more than one figure"),
            ("diameter circumference 1935", "mixes"),
            ("diameter 632 mm cm", "mixes"),
            ("diameter 632 mm radial cross-ply", "mixes"),
            ("circumference 520 revs per km", "mixes"),
            ("520 mm per km", "mixes"),
            ("520 revs per km mile", "mixes"),
            ("520 revs", "does not say how often"),
            ("520 km", "does not say how often"),
            ("520 revs km", "does not say how often"),
            ("rolling radius 308 mm", "a radius or a rolling diameter"),
            ("rolling diameter 616 mm", "a radius or a rolling diameter"),
            (
                "rolling circumference 1,935 mm",
                "leave the mark out (1935 mm)",
            ),
            ("circumference 1.935", "leave the mark out (1935 mm)"),
            ("diameter 0,632", "leave the mark out (632 mm)"),
            ("circumference 0.000", "between 900 and 13000 mm"),
            ("circumference 899 mm", "between 900 and 13000 mm"),
            ("circumference 14 m", "between 900 and 13000 mm"),
            ("circumference 0", "between 900 and 13000 mm"),
            ("diameter 24.9", "between 300 and 4000 mm"),
            ("diameter 4001", "between 300 and 4000 mm"),
            ("diameter 300 cross-ply", "between 900 and 13000 mm"),
            ("76 revs per km", "between 76.93 and 1111.1 per km"),
            ("1789 revs per mile", "between 123.8 and 1788.1 per mile"),
        ] {
            let sentence = parse_tyre(text).unwrap_err().to_string();
            assert!(sentence.contains(answer), "{text:?}: {sentence}");
            assert!(sentence.chars().count() < 250, "{text:?}: {sentence}");
        }
    }

    #[test]
    fn a_long_text_is_quoted_short() {
        let nines = "9".repeat(400);
        for text in [
            nines.clone(),
            format!("diameter {nines}"),
            format!("Ä{nines}/{nines}R{nines}"),
        ] {
            let sentence = parse_tyre(&text).unwrap_err().to_string();
            assert!(sentence.chars().count() < 250, "{sentence}");
        }
    }

    proptest! {
        #[test]
        fn a_canonical_measure_reads_back_to_the_same_tyre(
            diameter_mm in 302.0..=4000.0,
            circumference_mm in 900.0..=13_000.0,
            revs_per_km in 76.93..=1111.1,
            revs_per_mile in 123.8..=1788.1,
            cross_ply: bool,
        ) {
            let construction = if cross_ply { Construction::CrossPly } else { Construction::Radial };
            let diameter = OverallDiameter::from_mm(diameter_mm).unwrap();
            let circumference = RollingCircumference::from_mm(circumference_mm).unwrap();
            for tyre in [
                Tyre::OverallDiameter(TyreDiameter::new(diameter, construction).unwrap()),
                Tyre::RollingCircumference(circumference),
                Tyre::RevsPerKm(RevsPerKm::new(revs_per_km).unwrap()),
                Tyre::RevsPerMile(RevsPerMile::new(revs_per_mile).unwrap()),
            ] {
                prop_assert_eq!(parse_tyre(&tyre.to_string()), Ok(tyre));
            }
        }

        #[test]
        fn no_text_makes_the_reader_panic_or_gives_a_tyre_out_of_range(
            text in prop_oneof![
                any::<String>(),
                "((diameter|circ|rolling|revs|per|km|mi|mm|m|in|Ø|-|/|bias)[ .,]?|[0-9.,]{1,7} ?){1,6}",
            ]
        ) {
            if let Ok(tyre) = parse_tyre(&text) {
                let mm = tyre.rolling_circumference_mm();
                prop_assert!((900.0..=13_000.0).contains(&mm), "{} rolls {} mm", tyre, mm);
                prop_assert_eq!(parse_tyre(&tyre.to_string()), Ok(tyre));
            }
        }
    }
}
