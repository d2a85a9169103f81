//! The law of motion, followed from a speed: up where the force is ahead of the load, down where it is
//! behind, as far as the pieces go or to the speed at which both are equal.

use super::drive::DrivePiece;
use super::stretch::{Passage, Stretch};

/// How near motion comes to the speed at which force and load are equal, as a share of it, before it
/// counts as being there: the way on takes for ever.
const AS_GOOD_AS_THERE: f64 = 1e-9;

/// What ends a way along the pieces.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Met {
    /// The highest speed of the pieces, with the force still ahead.
    Top,
    /// The lowest speed of the pieces, with the load still ahead.
    Bottom,
    /// A speed in m/s at which both are equal, so that it stays.
    Balance(f64),
    /// The end of the time, or of what was asked.
    Enough,
}

/// Whether there is more to ask of the way.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum More {
    Asked,
    Enough,
}

/// Follows the motion from a speed within the pieces, which join each other in rising order, for a time in
/// s at most; each stretch of it goes to `taken` with the piece that it lies in.
pub(super) fn follow(
    pieces: &[DrivePiece],
    from_m_s: f64,
    most_s: f64,
    taken: impl FnMut(&DrivePiece, Stretch, Passage) -> More,
) -> Met {
    // The acceleration runs on from piece to piece, but for rounding: both sides of a joint are asked.
    let above = pieces.partition_point(|piece| piece.to_m_s() <= from_m_s);
    let below = pieces.partition_point(|piece| piece.from_m_s() < from_m_s);
    let (lower, upper) = (&pieces[..below], &pieces[above..]);
    let rises = upper
        .first()
        .is_some_and(|piece| piece.acceleration_m_s2(from_m_s) > 0.0);
    let falls = lower
        .last()
        .is_some_and(|piece| piece.acceleration_m_s2(from_m_s) < 0.0);
    if rises {
        along(upper.iter(), from_m_s, Way::Up, most_s, taken)
    } else if falls {
        along(lower.iter().rev(), from_m_s, Way::Down, most_s, taken)
    } else if upper.is_empty() {
        Met::Top
    } else if lower.is_empty() && upper[0].acceleration_m_s2(from_m_s) < 0.0 {
        Met::Bottom
    } else {
        Met::Balance(from_m_s)
    }
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Way {
    Up,
    Down,
}

impl Way {
    /// Whether a difference of speeds or an acceleration leads this way.
    fn is_that_of(self, change: f64) -> bool {
        match self {
            Self::Up => change > 0.0,
            Self::Down => change < 0.0,
        }
    }

    fn end_m_s(self, piece: &DrivePiece) -> f64 {
        match self {
            Self::Up => piece.to_m_s(),
            Self::Down => piece.from_m_s(),
        }
    }

    fn last(self) -> Met {
        match self {
            Self::Up => Met::Top,
            Self::Down => Met::Bottom,
        }
    }
}

fn along<'a>(
    pieces: impl Iterator<Item = &'a DrivePiece>,
    from_m_s: f64,
    way: Way,
    most_s: f64,
    mut taken: impl FnMut(&DrivePiece, Stretch, Passage) -> More,
) -> Met {
    let mut speed_m_s = from_m_s;
    let mut left_s = most_s;
    for piece in pieces {
        if !way.is_that_of(piece.acceleration_m_s2(speed_m_s)) {
            return Met::Balance(speed_m_s);
        }
        let end_m_s = way.end_m_s(piece);
        let balance = balance_m_s(piece, speed_m_s, end_m_s);
        let stop_m_s = balance.map_or(end_m_s, |balance| {
            let margin = AS_GOOD_AS_THERE * balance.max(speed_m_s);
            match way {
                Way::Up => balance - margin,
                Way::Down => balance + margin,
            }
        });
        if let Some(balance) = balance
            && !way.is_that_of(stop_m_s - speed_m_s)
        {
            return Met::Balance(balance);
        }
        let stretch = Stretch::of(piece, speed_m_s, stop_m_s);
        let passage = stretch.passage();
        if passage.time_s > left_s {
            let (gain_m_s, way) = stretch.after_s(left_s);
            taken(piece, stretch.up_to(gain_m_s), way);
            return Met::Enough;
        }
        left_s -= passage.time_s;
        if taken(piece, stretch, passage) == More::Enough {
            return Met::Enough;
        }
        if let Some(balance) = balance {
            return Met::Balance(balance);
        }
        speed_m_s = end_m_s;
    }
    way.last()
}

/// The first speed in m/s from one towards another at which force and load are equal.
fn balance_m_s(piece: &DrivePiece, from_m_s: f64, to_m_s: f64) -> Option<f64> {
    let (low, high) = (from_m_s.min(to_m_s), from_m_s.max(to_m_s));
    let within = piece.surplus.between(low, high);
    if within.has_one_sign() {
        return None;
    }
    let roots = within.roots();
    if from_m_s < to_m_s {
        roots.into_iter().find(|root| *root > from_m_s)
    } else {
        roots.into_iter().rev().find(|root| *root < from_m_s)
    }
}
