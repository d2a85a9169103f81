//! A final drive: what stands behind the gearbox's output shaft, gears or a chain.

use super::number::quoted;
use super::ratio::{Factor, Ratio, RatioError, ToothPair, parse_ratio, read_reduction};
use crate::units::ratio_text;
use std::fmt;

/// What drives the wheels from an output shaft.
#[derive(Debug, Clone, PartialEq)]
pub enum FinalDrive {
    /// A pair of gears, or a number from a data sheet.
    Gears(Ratio),
    /// A chain or a toothed belt over two sprockets.
    Chain(Sprockets),
}

/// The tooth counts of a chain's two sprockets, whose ratio lies between 0.001 and 400.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Sprockets(ToothPair);

/// One of a chain's two sprockets.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Sprocket {
    /// On the gearbox's output shaft; it drives.
    Front,
    /// On the wheel; it is driven.
    Rear,
}

/// Why a text is no final drive.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum FinalDriveError {
    /// It is no ratio, or its teeth make none.
    #[error(transparent)]
    Ratio(#[from] RatioError),
    /// It begins as a chain and goes on as something else.
    #[error("\"{0}\" is not a chain; type front and rear teeth such as chain 16/46")]
    NotAChain(String),
}

impl Sprocket {
    /// Both, in the order in which they are spelled.
    pub const BOTH: [Self; 2] = [Self::Front, Self::Rear];

    /// What it is called.
    pub fn word(self) -> &'static str {
        match self {
            Self::Front => "front",
            Self::Rear => "rear",
        }
    }
}

impl Sprockets {
    /// A front and a rear sprocket.
    ///
    /// # Errors
    /// When a count is not between 1 and 999, or rear ÷ front leaves 0.001 to 400.
    pub fn new(front: u16, rear: u16) -> Result<Self, RatioError> {
        let pair = ToothPair::new(rear, front)?;
        Ratio::from_factors(vec![Factor::Teeth(pair)])?;
        Ok(Self(pair))
    }

    /// The sprockets of a ratio that is a single tooth pair; none of any other.
    pub fn of(ratio: &Ratio) -> Option<Self> {
        match *ratio.factors() {
            [Factor::Teeth(pair)] => Some(Self(pair)),
            _ => None,
        }
    }

    /// Teeth of the sprocket on the output shaft.
    pub fn front(self) -> u16 {
        self.0.driving()
    }

    /// Teeth of the sprocket on the wheel.
    pub fn rear(self) -> u16 {
        self.0.driven()
    }

    /// Teeth of one of them.
    pub fn teeth(self, of: Sprocket) -> u16 {
        match of {
            Sprocket::Front => self.front(),
            Sprocket::Rear => self.rear(),
        }
    }

    /// The same chain with another sprocket in the place of one.
    ///
    /// # Errors
    /// As of [`Sprockets::new`].
    pub fn with(self, of: Sprocket, teeth: u16) -> Result<Self, RatioError> {
        match of {
            Sprocket::Front => Self::new(teeth, self.rear()),
            Sprocket::Rear => Self::new(self.front(), teeth),
        }
    }

    /// The same teeth as a pair of gears.
    ///
    /// # Errors
    /// None: the ratio of sprockets is one of gears.
    pub fn as_gears(self) -> Result<Ratio, RatioError> {
        Ratio::from_factors(vec![Factor::Teeth(self.0)])
    }

    /// Turns of the output shaft for one turn of the wheel: rear ÷ front teeth.
    pub fn ratio(self) -> f64 {
        self.0.ratio()
    }
}

impl fmt::Display for Sprockets {
    /// As the trade writes them: `16/46`, front / rear.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}/{}", self.front(), self.rear())
    }
}

impl FinalDrive {
    /// Turns of the output shaft for one turn of the wheel.
    pub fn value(&self) -> f64 {
        match self {
            Self::Gears(ratio) => ratio.value(),
            Self::Chain(sprockets) => sprockets.ratio(),
        }
    }

    /// How it was understood: `37 driven by 9 = 4.111`, `chain front 16 rear 46 = 2.875`; just the
    /// number for a
    /// plain one.
    pub fn reading(&self) -> String {
        match self {
            Self::Gears(ratio) => ratio.reading(),
            Self::Chain(sprockets) => {
                let [front, rear] = Sprocket::BOTH.map(|of| sprockets.teeth(of));
                let ratio = ratio_text(sprockets.ratio());
                format!("{CHAIN} front {front} rear {rear} = {ratio}")
            }
        }
    }
}

impl From<Ratio> for FinalDrive {
    fn from(ratio: Ratio) -> Self {
        Self::Gears(ratio)
    }
}

impl From<Sprockets> for FinalDrive {
    fn from(sprockets: Sprockets) -> Self {
        Self::Chain(sprockets)
    }
}

impl fmt::Display for FinalDrive {
    /// The spelling that reads back: `4.06`, `37:9`, `chain 16/46`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Gears(ratio) => ratio.fmt(f),
            Self::Chain(sprockets) => write!(f, "{CHAIN} {sprockets}"),
        }
    }
}

const CHAIN: &str = "chain";

/// The final drive that `text` spells: a chain (`chain 16/46`, front / rear; `front 16 rear 46` and
/// `rear 46 front 16` say it themselves), else a ratio that reduces, see [`read_reduction`].
///
/// # Errors
/// A sentence that says why it is none.
///
/// # Example
/// ```
/// let chain = layshaft::gearing::parse_final_drive("chain 16/46").unwrap();
/// assert!((chain.value() - 2.875).abs() < 1e-12);
/// ```
pub fn parse_final_drive(text: &str) -> Result<FinalDrive, FinalDriveError> {
    Ok(match parse_chain(text)? {
        Some(sprockets) => sprockets.into(),
        None => read_reduction(&parse_ratio(text)?).into(),
    })
}

/// The sprockets of a chain that `text` spells; none where it speaks of none.
///
/// # Errors
/// When it speaks of a chain whose teeth do not read.
pub fn parse_chain(text: &str) -> Result<Option<Sprockets>, FinalDriveError> {
    let lower = text.trim().to_lowercase();
    let opens = [CHAIN, Sprocket::Front.word(), Sprocket::Rear.word()];
    if !opens.iter().any(|word| lower.starts_with(word)) {
        return Ok(None);
    }
    let not_a_chain = || FinalDriveError::NotAChain(quoted(text));
    let behind = lower.strip_prefix(CHAIN).unwrap_or(&lower);
    let marks = [' ', '\t', ',', ';', '/', ':', '='];
    let words: Vec<&str> = behind.split(marks).filter(|w| !w.is_empty()).collect();
    let (front, rear) = match words[..] {
        ["front", front, "rear", rear] | ["rear", rear, "front", front] => (front, rear),
        [front, rear] if behind.contains(['/', ':']) => (front, rear),
        _ => return Err(not_a_chain()),
    };
    let [front, rear] = [front, rear].map(sprocket_teeth);
    Ok(Some(Sprockets::new(front?, rear?)?))
}

/// The teeth of one sprocket.
///
/// # Errors
/// When the text is no whole number from 1 to 999.
pub fn sprocket_teeth(text: &str) -> Result<u16, RatioError> {
    let text = text.trim();
    let is_whole = !text.is_empty() && text.bytes().all(|b| b.is_ascii_digit());
    let teeth = text.parse().ok().filter(|_| is_whole);
    let teeth = teeth.filter(|teeth| ToothPair::new(*teeth, 1).is_ok());
    teeth.ok_or_else(|| RatioError::Teeth(quoted(text)))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn chain(front: u16, rear: u16) -> FinalDrive {
        Sprockets::new(front, rear).unwrap().into()
    }

    #[test]
    fn a_chain_drives_the_wheel_by_rear_over_front() {
        let drive = chain(16, 46);
        assert!((drive.value() - 2.875).abs() < 1e-12);
        assert_eq!(drive.reading(), "chain front 16 rear 46 = 2.875");
    }

    #[test]
    fn every_spelling_that_says_which_sprocket_is_which_is_read() {
        for text in [
            "chain 16/46",
            "Chain 16 : 46",
            "chain front 16 rear 46",
            "front 16, rear 46",
            " rear 46 / front 16 ",
            "front=16 rear=46",
        ] {
            assert_eq!(parse_final_drive(text), Ok(chain(16, 46)), "{text}");
        }
    }

    #[test]
    fn the_order_of_a_chain_is_kept_and_not_guessed() {
        for drive in [chain(46, 16), chain(1, 40), chain(20, 20)] {
            assert_eq!(parse_final_drive(&drive.to_string()), Ok(drive));
        }
    }

    #[test]
    fn what_is_no_chain_is_answered_with_a_sentence() {
        for (text, says) in [
            ("chain", "\"chain\" is not a chain"),
            ("chain 46", "such as chain 16/46"),
            ("chain 16 46", "such as chain 16/46"),
            ("chains 16/46", "such as chain 16/46"),
            ("front 16 front 46", "such as chain 16/46"),
            ("chain 16/46/2", "such as chain 16/46"),
            ("chain 0/46", "from 1 to 999, not 0"),
            ("chain 16/1000", "from 1 to 999, not 1000"),
            ("chain 16.5/46", "from 1 to 999, not 16.5"),
            ("chain 1/999", "between 0.001 and 400, not 999"),
        ] {
            let error = parse_final_drive(text).expect_err(text).to_string();
            assert!(error.contains(says), "{text}: {error}");
        }
    }

    #[test]
    fn what_speaks_of_no_chain_is_a_ratio_that_reduces() {
        let read = |text| parse_final_drive(text).unwrap().to_string();
        assert_eq!(
            (read("9:37"), read("16/46")),
            ("37:9".into(), "46:16".into())
        );
    }
}
