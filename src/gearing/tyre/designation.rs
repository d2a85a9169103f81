//! The reader of a tyre size's designation, in its many spellings.
//!
//! A size is taken apart into its numbers and what stands between them; from what stands between
//! the first two follows which kind of size it is. The many spellings end in one value; what
//! changes the tyre is never guessed.

use std::str::FromStr;

use super::super::number::quoted;
use super::mark::{mark, mark_before_rim};
use super::marking::Markings;
use super::rim::Rim;
use super::size::{Prefix, Section, TyreSize};
use super::size_error::{SizePart, TyreSizeError};

impl FromStr for TyreSize {
    type Err = TyreSizeError;

    fn from_str(text: &str) -> Result<Self, TyreSizeError> {
        let not_a_size = || TyreSizeError::NotASize { size: quoted(text) };
        let plain = normalised(text);
        let (prefix, unprefixed) = split_prefix(plain.trim());
        let parts = Parts::of(unprefixed).ok_or_else(not_a_size)?;
        let (before_rim, rim) = parts.rim(text)?;
        let section = parts.section()?;
        let (speed_before_rim, mark) = mark_before_rim(&before_rim, text)?;
        let rim = read_rim(rim)?;
        let Markings { purpose, service } = Markings::of(parts.tail)?;
        let size = Self {
            prefix,
            section,
            speed_before_rim,
            mark,
            rim,
            suffix: purpose,
            service,
        };
        going_round_its_rim(size)
    }
}

/// The size, if the tyre it makes can exist.
fn going_round_its_rim(size: TyreSize) -> Result<TyreSize, TyreSizeError> {
    let (overall_diameter_mm, rim_mm) = (size.overall_diameter_mm(), size.rim.diameter_mm());
    if overall_diameter_mm <= rim_mm {
        return Err(TyreSizeError::InsideItsRim {
            overall_diameter_mm,
            rim_mm,
        });
    }
    if overall_diameter_mm < 300 || size.rolling_circumference_mm() < 900.0 {
        return Err(TyreSizeError::TooSmall {
            overall_diameter_mm,
        });
    }
    Ok(size)
}

/// `text` in upper case, with one kind of dash, slash and blank and without inch marks.
fn normalised(text: &str) -> String {
    let spelling = |c: char| match c {
        '"' | '″' | '“' | '”' => None,
        '‐' | '‑' | '‒' | '–' | '—' | '−' => Some('-'),
        '\\' => Some('/'),
        '×' => Some('X'),
        c if c.is_whitespace() => Some(' '),
        c => Some(c.to_ascii_uppercase()),
    };
    text.chars().filter_map(spelling).collect()
}

fn split_prefix(plain: &str) -> (Option<Prefix>, &str) {
    let spellings = [
        ("LT", Prefix::LightTruck),
        ("ST", Prefix::Trailer),
        ("P", Prefix::Passenger),
        ("T", Prefix::Temporary),
    ];
    for (spelling, prefix) in spellings {
        if let Some(rest) = plain.strip_prefix(spelling) {
            return (Some(prefix), rest.trim_start());
        }
    }
    (None, plain)
}

/// A size taken apart: `195` `/` `65` `R` `15` ` 91T`.
struct Parts<'a> {
    first: &'a str,
    between: String,
    second: &'a str,
    /// What stands before the third number, and the number.
    third: Option<(String, &'a str)>,
    tail: &'a str,
}

impl<'a> Parts<'a> {
    /// The parts, if there are two numbers at least.
    fn of(plain: &'a str) -> Option<Self> {
        let (first, rest) = split_number(plain)?;
        let (between, second, rest) = split_next(rest)?;
        let next = split_next(rest);
        let tail = next.as_ref().map_or(rest, |&(_, _, tail)| tail);
        Some(Self {
            first,
            between,
            second,
            third: next.map(|(between, number, _)| (between, number)),
            tail,
        })
    }

    /// What stands before the rim, and the rim; this also finds sizes without aspect ratio.
    fn rim(&self, text: &str) -> Result<(String, &'a str), TyreSizeError> {
        let size = quoted(text);
        let is_mark = |separator: &str| mark(separator).is_some();
        match (self.between.as_str(), &self.third) {
            ("/" | "X" | "*" | "", Some(third)) => Ok(third.clone()),
            // A width in inches is smaller than its rim, a diameter is larger: `7.50x16`.
            ("X" | "*", None) if hundredths(self.first) < hundredths(self.second) => {
                Err(TyreSizeError::MissingAspect { size })
            }
            ("/" | "X" | "*", None) => Err(TyreSizeError::MissingRim { size }),
            // With a second mark, as in `195-65 R 15`, the first is no mark.
            (between, Some((next, _))) if is_mark(between) && is_mark(next) => {
                Err(TyreSizeError::NotASize { size })
            }
            (between, _) if is_mark(between) => Err(TyreSizeError::MissingAspect { size }),
            _ => Err(TyreSizeError::NotASize { size }),
        }
    }

    fn section(&self) -> Result<Section, TyreSizeError> {
        if matches!(self.between.as_str(), "X" | "*") || in_inches(self.first, self.second) {
            read_flotation(self.first, self.second)
        } else {
            read_metric(self.first, self.second)
        }
    }
}

/// The number that opens `text`, with a decimal mark only where digits follow it, and the rest.
fn split_number(text: &str) -> Option<(&str, &str)> {
    let digits = |text: &str| text.bytes().take_while(u8::is_ascii_digit).count();
    let whole = digits(text);
    let decimals = match text[whole..].strip_prefix(['.', ',']) {
        Some(behind) => digits(behind),
        None => 0,
    };
    let end = whole + if decimals > 0 { decimals + 1 } else { 0 };
    (whole > 0).then(|| text.split_at(end))
}

/// What stands before the next number, without its blanks, the number, and the rest.
fn split_next(text: &str) -> Option<(String, &str, &str)> {
    let at = text.find(|c: char| c.is_ascii_digit())?;
    let (number, rest) = split_number(&text[at..])?;
    Some((text[..at].replace(' ', ""), number, rest))
}

/// Whether `31/10.50` is meant, an inch size with a slash: no metric tyre is so small.
fn in_inches(first: &str, second: &str) -> bool {
    let range = |text, low, high| hundredths(text).is_some_and(|h| (low..high).contains(&h));
    range(first, 1600, 5000) && range(second, 200, 2000)
}

fn read_flotation(diameter: &str, width: &str) -> Result<Section, TyreSizeError> {
    let nominal = hundredths(diameter).filter(|h| (1300..=15_700).contains(h));
    let width_hundredths = hundredths(width).filter(|h| (200..=2350).contains(h));
    Ok(Section::Flotation {
        nominal_hundredths: nominal
            .ok_or_else(|| out_of_range(SizePart::NominalDiameter, diameter))?,
        width_hundredths: width_hundredths
            .ok_or_else(|| out_of_range(SizePart::NominalWidth, width))?,
    })
}

/// A second number above 100 is the overall diameter of a race size.
fn read_metric(width: &str, aspect: &str) -> Result<Section, TyreSizeError> {
    let (width_mm, height) = (whole(width), whole(aspect));
    if let (Some(20..=100), Some(105..300)) = (width_mm, height) {
        return Err(TyreSizeError::Swapped {
            width: aspect.to_owned(),
            aspect: width.to_owned(),
        });
    }
    let width_mm = width_mm
        .filter(|mm| (50..=600).contains(mm))
        .ok_or_else(|| out_of_range(SizePart::Width, width))?;
    match height {
        Some(aspect_percent @ 20..=100) => Ok(Section::Metric {
            width_mm,
            aspect_percent,
        }),
        Some(diameter_mm @ 300..=4000) => Ok(Section::Race {
            width_mm,
            diameter_mm,
        }),
        _ => Err(out_of_range(SizePart::Aspect, aspect)),
    }
}

fn read_rim(number: &str) -> Result<Rim, TyreSizeError> {
    let hundredths = hundredths(number).unwrap_or(u32::MAX);
    if hundredths < 100 * 100 {
        let half_codes = hundredths.is_multiple_of(50).then_some(hundredths / 50);
        return half_codes.and_then(Rim::from_half_codes).ok_or_else(|| {
            TyreSizeError::UnknownRimCode {
                rim: quoted(number),
            }
        });
    }
    whole(number)
        .and_then(Rim::from_mm)
        .ok_or_else(|| out_of_range(SizePart::RimDiameter, number))
}

fn out_of_range(part: SizePart, value: &str) -> TyreSizeError {
    TyreSizeError::OutOfRange {
        part,
        value: quoted(value),
    }
}

/// A whole number, also one written with a zero behind its decimal mark.
fn whole(number: &str) -> Option<u32> {
    hundredths(number)
        .filter(|hundredths| hundredths.is_multiple_of(100))
        .map(|hundredths| hundredths / 100)
}

/// A number in hundredths: below 100000 and with two decimals at most, for no tyre needs more.
fn hundredths(number: &str) -> Option<u32> {
    let (whole, decimals) = number.split_once(['.', ',']).unwrap_or((number, ""));
    let decimals: u32 = match decimals.len() {
        0 => 0,
        1 => decimals.parse::<u32>().ok()? * 10,
        2 => decimals.parse().ok()?,
        _ => return None,
    };
    let whole: u32 = whole.parse().ok().filter(|&whole| whole < 100_000)?;
    Some(whole * 100 + decimals)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn canonical(text: &str) -> String {
        match text.parse::<TyreSize>() {
            Ok(size) => size.to_string(),
            Err(error) => format!("{text}: {error}"),
        }
    }

    #[test]
    fn every_usual_spelling_of_a_metric_size_is_read() {
        for (text, spelling) in [
            ("195/65R15", "195/65 R 15"),
            ("195/65 R 15 91T", "195/65 R 15 91T"),
            (" 195 / 65 r 15 ", "195/65 R 15"),
            ("195/65/15", "195/65 R 15"),
            ("195/65 15", "195/65 R 15"),
            ("195/65 15 91H", "195/65 R 15 91H"),
            ("195 65 15", "195/65 R 15"),
            ("195 65 R15", "195/65 R 15"),
            ("195/65/R15", "195/65 R 15"),
            ("195/65-R15", "195/65 R 15"),
            ("195\\65R15", "195/65 R 15"),
            ("195/65\u{a0}R\u{a0}15", "195/65 R 15"),
            ("195/65R15\"", "195/65 R 15"),
            ("195/65R15 91T XL M+S", "195/65 R 15 91T"),
            ("205/55ZR16", "205/55 ZR 16"),
            ("205/55 zr16 (91W)", "205/55 ZR 16 91W"),
            ("245/40ZRF18", "245/40 ZR 18"),
            ("245/40RF19 98Y", "245/40 R 19 98Y"),
            ("185/70HR13", "185/70 HR 13"),
            ("185/70 hr 13 86v", "185/70 HR 13 86V"),
            ("215/65R16C", "215/65 R 16 C"),
            ("215/65 R 16C 109/107R", "215/65 R 16 C 109/107R"),
            ("P215/60R16", "P215/60 R 16"),
            ("lt245/75r16 120/116S E", "LT245/75 R 16 120/116S"),
            ("LT 245/75R16/E", "LT245/75 R 16"),
            ("ST205/75D15", "ST205/75 D 15"),
            ("T125/70D17", "T125/70 D 17"),
            ("245/75R16LT", "245/75 R 16 LT"),
            ("315/80 R 22,5", "315/80 R 22.5"),
            ("315/80R22.5 156/150L", "315/80 R 22.5 156/150L"),
            ("190/65 R 390", "190/65 R 390"),
        ] {
            assert_eq!(canonical(text), spelling);
        }
    }

    #[test]
    fn cross_ply_motorcycle_race_and_inch_sizes_are_read() {
        for (text, spelling) in [
            ("130/90-16", "130/90 - 16"),
            ("130/90 – 16 67H TT", "130/90 - 16 67H"),
            ("130/90B16", "130/90 B 16"),
            ("130/90HB16 M/C", "130/90 HB 16 M/C"),
            ("180/55ZR17M/C (73W)", "180/55 ZR 17 M/C 73W"),
            ("180/55 zr 17 m/c(73w) tl", "180/55 ZR 17 M/C 73W"),
            ("225/640R18", "225/640 R 18"),
            ("225/640-18", "225/640 - 18"),
            ("31x10.50R15LT", "31x10.50 R 15 LT"),
            ("31X10.5-15", "31x10.50 - 15"),
            ("31*10.50 R 15", "31x10.50 R 15"),
            ("31 × 10,5 r 15", "31x10.50 R 15"),
            ("31x10.5x15", "31x10.50 R 15"),
            ("31\"x10.50\"R15", "31x10.50 R 15"),
            ("31/10.50R15", "31x10.50 R 15"),
            ("LT31x10.50R15 109Q", "LT31x10.50 R 15 109Q"),
            ("24.5x9.0-13", "24.5x9.00 - 13"),
            ("23.25x8.75-13", "23.25x8.75 - 13"),
            ("35x12.50R16.5", "35x12.50 R 16.5"),
        ] {
            assert_eq!(canonical(text), spelling);
        }
    }

    #[test]
    fn a_missing_aspect_ratio_is_asked_for() {
        for text in [
            "7.50 R 16",
            "7.50-16",
            "7.50x16",
            "6.00-16 6PR",
            "185R14C",
            "185 R 14 C 102/100Q",
            "155 R 13",
            "155SR13",
            "155-13",
            "195/R15",
            "11R22.5",
            "4.00-18",
        ] {
            let size = text.to_owned();
            let expected = Err(TyreSizeError::MissingAspect { size });
            assert_eq!(text.parse::<TyreSize>(), expected);
        }
    }

    #[test]
    fn the_sentence_about_a_missing_aspect_ratio_names_both_readings() {
        let sentence = canonical("155 R 13");
        for part in ["aspect ratio", "80", "82", "circumference 1935 mm"] {
            assert!(sentence.contains(part), "{part} in: {sentence}");
        }
    }

    #[test]
    fn what_is_no_size_is_answered_with_what_is_wrong() {
        for (text, answer) in [
            ("", "is not a tyre size"),
            ("hello", "is not a tyre size"),
            ("195", "is not a tyre size"),
            ("195 65", "is not a tyre size"),
            ("195-65-15", "is not a tyre size"),
            ("195.65.15", "is not a tyre size"),
            ("195/65 RR 15", "is not a tyre size"),
            ("MT90B16", "is not a tyre size"),
            ("R15 195/65", "is not a tyre size"),
            ("-195/65R15", "is not a tyre size"),
            ("195//65R15", "is not a tyre size"),
            ("195/65", "has no rim"),
            ("195/65 R", "has no rim"),
            ("31x10.50", "has no rim"),
            ("195/65 Q 15", "the Q before the rim"),
            ("130/90 H 16", "the H before the rim"),
            ("65/195 R 15", "is 195/65 meant?"),
            ("45/225R15", "is 225/45 meant?"),
            ("49/65R15", "the tyre's width must be"),
            ("601/65R15", "the tyre's width must be"),
            ("195.5/65R15", "the tyre's width must be"),
            ("4.25/85-18", "the tyre's width must be"),
            ("99999999999999999999/65R15", "the tyre's width must be"),
            ("195/19R15", "the aspect ratio must be"),
            ("195/101R15", "the aspect ratio must be"),
            ("195/65.5R15", "the aspect ratio must be"),
            ("195/4001R15", "the aspect ratio must be"),
            ("195/65R7.5", "7.5 is not a known rim code"),
            ("195/65R0", "0 is not a known rim code"),
            ("195/65R15.25", "15.25 is not a known rim code"),
            ("710/70R42", "the tyre's width must be"),
            ("520/70R42", "42 is not a known rim code"),
            ("195/65R253", "the rim diameter in mm must be"),
            ("195/65R1591T", "the rim diameter in mm must be"),
            ("195/65R390.5", "the rim diameter in mm must be"),
            ("12x10.50R8", "the diameter in an inch size must be"),
            ("195x65R15", "the diameter in an inch size must be"),
            ("31.125x10.5R15", "the diameter in an inch size must be"),
            ("31x33R15", "the width in an inch size must be"),
            ("225/430R18", "does not go round a rim of 457 mm"),
            ("15x8.00R15", "does not go round a rim of 381 mm"),
            ("50/20R8", "only 223 mm in diameter"),
            ("50/301D8", "only 301 mm in diameter"),
            ("195/65R15 cross-ply", "\"CROSS-PLY\" behind the tyre size"),
            (
                "195/65R15 / 205/55R16",
                "\"205/55R16\" behind the tyre size",
            ),
            ("195/65R15 Ä", "\"Ä\" behind the tyre size"),
        ] {
            let sentence = text.parse::<TyreSize>().unwrap_err().to_string();
            assert!(sentence.contains(answer), "{text:?}: {sentence}");
            assert!(sentence.chars().count() < 250, "{text:?}: {sentence}");
        }
    }

    /// Sizes of all kinds, some of them impossible.
    fn size_text() -> impl Strategy<Value = String> {
        let section = prop_oneof![
            (50..=600_u32, 20..=100_u32).prop_map(|(w, a)| format!("{w}/{a}")),
            (50..=600_u32, 300..=4000_u32).prop_map(|(w, d)| format!("{w}/{d}")),
            (1300..=15_700_u32, 200..=2350_u32).prop_map(|(d, w)| {
                format!("{}.{:02}x{}.{:02}", d / 100, d % 100, w / 100, w % 100)
            }),
        ];
        let rim = prop_oneof![
            (16..=60_u32).prop_map(|h| format!("{}", f64::from(h) / 2.0)),
            (254..=1000_u32).prop_map(|mm| mm.to_string()),
        ];
        let prefix = prop::sample::select(vec!["", "P", "LT", "ST ", "t"]);
        let mark = prop::sample::select(vec![
            "R", " ZR ", "HR", " vb", "D", " b", "-", "/", " ", "x",
        ]);
        let suffix = prop::sample::select(vec![
            "",
            "C",
            " LT",
            "M/C 67H",
            " 91T XL",
            "C 104/102 R",
            " (9A8)",
        ]);
        (prefix, section, mark, rim, suffix).prop_map(|(p, s, m, r, x)| format!("{p}{s}{m}{r}{x}"))
    }

    proptest! {
        #[test]
        fn a_canonical_size_reads_back_to_the_same_size(text in size_text()) {
            if let Ok(size) = text.parse::<TyreSize>() {
                prop_assert_eq!(size.to_string().parse(), Ok(size));
                let mm = size.rolling_circumference_mm();
                prop_assert!((900.0..=13_000.0).contains(&mm), "{} rolls {} mm", size, mm);
            }
        }

        #[test]
        fn no_text_makes_the_reader_panic(text in any::<String>()) {
            let _ = text.parse::<TyreSize>();
        }

        #[test]
        fn no_text_made_of_a_size_s_letters_makes_the_reader_panic(
            text in "[0-9/xXRrZzDBLTPSMCHA.,*×\"() -]{0,24}"
        ) {
            if let Ok(size) = text.parse::<TyreSize>() {
                prop_assert_eq!(size.to_string().parse(), Ok(size));
            }
        }
    }
}
