//! How much of the plan finds room beside one another, and how wide its columns are.

/// The least width of a part's name, and what its menu takes, in points.
const NAME: f32 = 132.0;
pub(super) const MENU: f32 = 30.0;

/// The widest name beside columns, in points.
const WIDEST_NAME: f32 = 325.0;

/// What the columns of a candidate take beside what is to be done, in points; and the least of that.
const COLUMNS: f32 = 84.0 + 46.0 + 62.0 + 36.0;
const TO_DO: f32 = 92.0;

/// What stays free between fields, in points.
pub(super) const GAP: f32 = 6.0;

/// The fields of a candidate, each with a gap before it.
const GAPS: f32 = 5.0 * GAP;

/// What stays free beside the bar that scrolls, in points.
pub(super) const BAR: f32 = 12.0;

/// How the rows of the plan stand.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Layout {
    /// The columns of all candidates beside one another.
    All,
    /// The columns of one candidate.
    One,
    /// What becomes of a part beneath its name.
    Stacked,
}

impl Layout {
    /// How so many candidates stand in that width, in points.
    pub(super) fn of(width: f32, candidates: usize) -> Self {
        let least = |count: f32| NAME + MENU + GAP + count * (COLUMNS + TO_DO + GAPS) + BAR;
        if width >= least(candidates.max(1) as f32) {
            Self::All
        } else if width >= least(1.0) {
            Self::One
        } else {
            Self::Stacked
        }
    }
}

/// The widths of what grows: names, and what is to be done.
#[derive(Clone, Copy)]
pub(super) struct Widths {
    pub(super) name: f32,
    pub(super) to_do: f32,
}

impl Widths {
    pub(super) fn of(width: f32, candidates: usize) -> Self {
        let count = candidates.max(1) as f32;
        let spare = width - MENU - GAP - count * (COLUMNS + GAPS) - BAR;
        // Names take a share of what grows.
        let name = (spare * 0.45 / count).clamp(NAME, WIDEST_NAME);
        let to_do = ((spare - name) / count).max(TO_DO);
        Self { name, to_do }
    }
}
