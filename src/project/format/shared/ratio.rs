//! A ratio as it stands in a file: a number, a pair of tooth counts, or a product of these.

use super::values::FactorNumber;
use crate::gearing::{Factor, Ratio, RatioError, ToothPair};
use serde::{Deserialize, Serialize};

/// A ratio is checked where it stands, so that an error points at it.
#[derive(Clone, Serialize, Deserialize)]
#[serde(try_from = "RatioParts", into = "RatioParts")]
pub(crate) struct RatioEntry(pub(crate) Ratio);

#[derive(Serialize, Deserialize)]
#[serde(rename = "Ratio", deny_unknown_fields)]
pub(crate) enum RatioParts {
    Number(FactorNumber),
    Teeth { driven: u16, driving: u16 },
    Product(Vec<FactorEntry>),
}

#[derive(Serialize, Deserialize)]
#[serde(rename = "Factor", deny_unknown_fields)]
pub(crate) enum FactorEntry {
    Number(FactorNumber),
    Teeth { driven: u16, driving: u16 },
}

impl TryFrom<RatioParts> for RatioEntry {
    type Error = RatioError;

    fn try_from(parts: RatioParts) -> Result<Self, RatioError> {
        let factors = match parts {
            RatioParts::Number(number) => vec![FactorEntry::Number(number)],
            RatioParts::Teeth { driven, driving } => vec![FactorEntry::Teeth { driven, driving }],
            RatioParts::Product(factors) => factors,
        };
        let factors: Result<Vec<Factor>, RatioError> = factors
            .into_iter()
            .map(|factor| match factor {
                FactorEntry::Number(number) => Ok(Factor::Number(number.0)),
                FactorEntry::Teeth { driven, driving } => {
                    ToothPair::new(driven, driving).map(Factor::Teeth)
                }
            })
            .collect();
        Ratio::from_factors(factors?).map(Self)
    }
}

impl From<RatioEntry> for RatioParts {
    fn from(ratio: RatioEntry) -> Self {
        match *ratio.0.factors() {
            [Factor::Number(number)] => Self::Number(FactorNumber(number)),
            [Factor::Teeth(pair)] => Self::Teeth {
                driven: pair.driven(),
                driving: pair.driving(),
            },
            ref factors => Self::Product(factors.iter().map(FactorEntry::from).collect()),
        }
    }
}

impl From<&Factor> for FactorEntry {
    fn from(factor: &Factor) -> Self {
        match factor {
            Factor::Number(number) => Self::Number(FactorNumber(*number)),
            Factor::Teeth(pair) => Self::Teeth {
                driven: pair.driven(),
                driving: pair.driving(),
            },
        }
    }
}
