//! A final drive in format 2: a ratio as in format 1, or a chain with its two sprockets.

use super::super::shared::ratio::{FactorEntry, RatioEntry, RatioParts};
use super::super::shared::values::FactorNumber;
use crate::gearing::{FinalDrive, RatioError, Sprockets};
use serde::{Deserialize, Serialize};

/// A final drive is checked where it stands, so that an error points at it.
#[derive(Clone, Serialize, Deserialize)]
#[serde(try_from = "FinalDriveParts", into = "FinalDriveParts")]
pub(crate) struct FinalDriveV2(pub(crate) FinalDrive);

#[derive(Serialize, Deserialize)]
#[serde(rename = "FinalDrive", deny_unknown_fields)]
enum FinalDriveParts {
    Number(FactorNumber),
    Teeth { driven: u16, driving: u16 },
    Product(Vec<FactorEntry>),
    Chain { front: u16, rear: u16 },
}

impl TryFrom<FinalDriveParts> for FinalDriveV2 {
    type Error = RatioError;

    fn try_from(parts: FinalDriveParts) -> Result<Self, RatioError> {
        let ratio = match parts {
            FinalDriveParts::Chain { front, rear } => {
                return Sprockets::new(front, rear).map(|chain| Self(chain.into()));
            }
            FinalDriveParts::Number(number) => RatioParts::Number(number),
            FinalDriveParts::Teeth { driven, driving } => RatioParts::Teeth { driven, driving },
            FinalDriveParts::Product(factors) => RatioParts::Product(factors),
        };
        RatioEntry::try_from(ratio).map(Self::from)
    }
}

impl From<FinalDriveV2> for FinalDriveParts {
    fn from(drive: FinalDriveV2) -> Self {
        let ratio = match drive.0 {
            FinalDrive::Chain(sprockets) => {
                return Self::Chain {
                    front: sprockets.front(),
                    rear: sprockets.rear(),
                };
            }
            FinalDrive::Gears(ratio) => RatioEntry(ratio),
        };
        match RatioParts::from(ratio) {
            RatioParts::Number(number) => Self::Number(number),
            RatioParts::Teeth { driven, driving } => Self::Teeth { driven, driving },
            RatioParts::Product(factors) => Self::Product(factors),
        }
    }
}

impl From<RatioEntry> for FinalDriveV2 {
    fn from(ratio: RatioEntry) -> Self {
        Self(ratio.0.into())
    }
}
