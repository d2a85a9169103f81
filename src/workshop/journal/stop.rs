//! What stops a shaft from being turned down, in plain sentences.

use super::quantity::CaseDepth;
use super::turned::TurnedShaft;
use crate::units::plain_number;
use crate::workshop::fits::Diameter;

/// Why a shaft is not turned down.
#[derive(Debug, Clone, Copy, PartialEq, thiserror::Error)]
pub enum Stop {
    /// Nothing comes off.
    #[error("the new diameter, {} mm, is not below the old one, {} mm: nothing is turned down", plain_number(new.mm()), plain_number(old.mm()))]
    NotSmaller {
        /// The old diameter.
        old: Diameter,
        /// The new one.
        new: Diameter,
    },
    /// The bore is as wide as the shaft.
    #[error("a bore of {} mm leaves no wall in a shaft of {} mm", plain_number(bore.mm()), plain_number(new.mm()))]
    NoWall {
        /// The bore.
        bore: Diameter,
        /// The new diameter.
        new: Diameter,
    },
    /// It carries splines there.
    #[error(
        "there are splines here: turned down they no longer fill their hub, and nothing centres it"
    )]
    Splines,
    /// Needles run on it.
    #[error(
        "needles run on the shaft here: they need its full size and its hardened, ground surface"
    )]
    NeedleTrack,
    /// A synchroniser rubs on it.
    #[error(
        "there is a synchroniser cone here: turned down it lets its ring touch the dogs, and no longer synchronises"
    )]
    SynchroniserCone,
    /// Nothing is left of the hardened layer.
    #[error(
        "nothing is left of the hardened layer: the soft core wears under a seal and creeps under a ring"
    )]
    NoCaseLeft,
}

/// What is on a shaft where it would be turned down: asked, because the program cannot see it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub struct OnShaft {
    /// Whether there are splines.
    pub splines: bool,
    /// Whether needles run on it.
    pub needle_track: bool,
    /// Whether there is a synchroniser cone.
    pub synchroniser_cone: bool,
}

/// A shaft that somebody means to turn down.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct MeantShaft {
    /// Its diameter.
    pub old: Diameter,
    /// The one that it is to have.
    pub new: Diameter,
    /// Its bore, where it is hollow.
    pub bore: Option<Diameter>,
    /// How deep it is hardened, where that is known.
    pub case_depth: Option<CaseDepth>,
    /// What is on it there.
    pub on_shaft: OnShaft,
}

impl MeantShaft {
    /// The shaft as it would be.
    ///
    /// # Errors
    /// When there cannot be such a shaft.
    pub fn turned(&self) -> Result<TurnedShaft, Stop> {
        TurnedShaft::new(self.old, self.new, self.bore)
    }

    /// All that stops the job; nothing where it may be done.
    pub fn stops(&self) -> Vec<Stop> {
        let OnShaft {
            splines,
            needle_track,
            synchroniser_cone,
        } = self.on_shaft;
        let turned = self.turned();
        let left_mm = turned.ok().zip(self.case_depth);
        let left_mm = left_mm.map(|(turned, depth)| turned.case_left_mm(depth));
        let asked = [
            (splines, Stop::Splines),
            (needle_track, Stop::NeedleTrack),
            (synchroniser_cone, Stop::SynchroniserCone),
            (left_mm.is_some_and(|mm| mm <= 0.0), Stop::NoCaseLeft),
        ];
        let asked = asked
            .into_iter()
            .filter_map(|(is, stop)| is.then_some(stop));
        turned.err().into_iter().chain(asked).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn meant(new: f64, case: Option<f64>, on_shaft: OnShaft) -> MeantShaft {
        let at = |mm| Diameter::from_mm(mm).unwrap();
        MeantShaft {
            old: at(40.0),
            new: at(new),
            bore: None,
            case_depth: case.map(|mm| CaseDepth::from_mm(mm).unwrap()),
            on_shaft,
        }
    }

    #[test]
    fn a_plain_journal_with_case_enough_may_be_turned() {
        assert_eq!(
            meant(39.0, Some(0.8), OnShaft::default()).stops(),
            Vec::new()
        );
        assert_eq!(meant(39.0, None, OnShaft::default()).stops(), Vec::new());
    }

    #[test]
    fn everything_that_stops_a_job_is_told() {
        let all = OnShaft {
            splines: true,
            needle_track: true,
            synchroniser_cone: true,
        };
        let stops = meant(39.0, Some(0.5), all).stops();
        let expected = [
            Stop::Splines,
            Stop::NeedleTrack,
            Stop::SynchroniserCone,
            Stop::NoCaseLeft,
        ];
        assert_eq!(stops, expected);
        let sentence = meant(40.5, None, OnShaft::default()).stops()[0].to_string();
        let says =
            "the new diameter, 40.5 mm, is not below the old one, 40 mm: nothing is turned down";
        assert_eq!(sentence, says);
    }
}
