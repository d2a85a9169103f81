//! Which views of a project there are, and which of them its write-up shows: the one list that window,
//! write-up, file, command line and settings share.

/// What is looked at: a diagram with its table.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Default)]
pub enum View {
    /// Engine speed against road speed.
    #[default]
    Speed,
    /// The step of each gear over the next.
    Steps,
    /// Tractive effort against road speed.
    Effort,
    /// Road speed against time, from rest.
    Run,
    /// Engine speed against time, from rest.
    Revs,
    /// Distance against time, from rest.
    Distance,
    /// Fuel and load at steady speeds.
    Cruise,
    /// What the speedometer shows above the true speed.
    Speedometer,
}

impl View {
    /// Every view, in the order in which they are offered.
    pub const ALL: [Self; 8] = [
        Self::Speed,
        Self::Steps,
        Self::Effort,
        Self::Run,
        Self::Revs,
        Self::Distance,
        Self::Cruise,
        Self::Speedometer,
    ];

    /// The word that asks for it on the command line.
    pub fn word(self) -> &'static str {
        match self {
            Self::Speed => "speed",
            Self::Steps => "steps",
            Self::Effort => "effort",
            Self::Run => "run",
            Self::Revs => "revs",
            Self::Distance => "distance",
            Self::Cruise => "cruise",
            Self::Speedometer => "speedometer",
        }
    }

    /// What it is called where one is chosen.
    pub fn name(self) -> &'static str {
        match self {
            Self::Speed => "Speed",
            Self::Steps => "Steps",
            Self::Effort => "Effort",
            Self::Run => "Run",
            Self::Revs => "Run: revs",
            Self::Distance => "Run: distance",
            Self::Cruise => "Cruise",
            Self::Speedometer => "Speedometer",
        }
    }

    /// What somebody is looking at, in one sentence.
    pub fn meaning(self) -> &'static str {
        match self {
            Self::Speed => {
                "Engine speed against road speed: a line for each gear, thick where it is driven, \
                 dotted where the needle falls at a change up."
            }
            Self::Steps => {
                "How much wider each gear is than the next: what is level is felt as even, what \
                 falls makes the upper gears close."
            }
            Self::Effort => {
                "How hard each gear pulls at full load, and what the road takes: as far as a line is \
                 above the road's, there is pull left; where they meet, it goes no faster."
            }
            Self::Run => {
                "Road speed against time from rest at full load, with the times to the marked speeds; \
                 dotted with the best shift points."
            }
            Self::Revs => {
                "Engine speed in the run from rest: every gear as long as it drives, with the pauses \
                 between them."
            }
            Self::Distance => {
                "The way from rest against time at full load; dotted with the best shift points."
            }
            Self::Cruise => {
                "What steady speeds burn, or what share of full torque they ask for: top gear thick, \
                 the others thin."
            }
            Self::Speedometer => {
                "How much more than the true speed the speedometer shows behind each set; what a rule \
                 does not allow is shaded."
            }
        }
    }

    /// Whether it shows what follows from engine and vehicle.
    pub fn needs_motion(self) -> bool {
        match self {
            Self::Speed | Self::Steps | Self::Speedometer => false,
            Self::Effort | Self::Run | Self::Revs | Self::Distance | Self::Cruise => true,
        }
    }

    /// Those that have a table of their own, in the order in which they are offered.
    pub fn all_with_tables() -> impl Iterator<Item = Self> {
        Self::ALL.into_iter().filter(|view| view.has_table())
    }

    /// Whether it has a table of its own, see [`View::with_table`].
    pub fn has_table(self) -> bool {
        self.with_table() == self
    }

    /// The view whose table tells what there is to tell of it in figures: itself, where it has one.
    #[must_use]
    pub fn with_table(self) -> Self {
        match self {
            Self::Speed | Self::Steps => Self::Speed,
            Self::Effort => Self::Effort,
            Self::Run | Self::Revs | Self::Distance => Self::Run,
            Self::Cruise => Self::Cruise,
            Self::Speedometer => Self::Speedometer,
        }
    }
}

/// The views of a write-up, one beneath the other: at least one, none twice, in the order of [`View::ALL`].
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Views(Vec<View>);

impl Views {
    /// These views; none where there is not one.
    pub fn new(views: impl IntoIterator<Item = View>) -> Option<Self> {
        let mut views: Vec<View> = views.into_iter().collect();
        views.sort_unstable();
        views.dedup();
        (!views.is_empty()).then_some(Self(views))
    }

    /// All of them, the uppermost first.
    pub fn as_slice(&self) -> &[View] {
        &self.0
    }

    /// Whether one of them is there.
    pub fn has(&self, view: View) -> bool {
        self.0.contains(&view)
    }

    /// Whether any of them shows what follows from engine and vehicle.
    pub fn need_motion(&self) -> bool {
        self.0.iter().any(|view| view.needs_motion())
    }
}

impl Default for Views {
    fn default() -> Self {
        Self(vec![View::default()])
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn views_stand_in_their_order_whatever_was_asked_for_first() {
        let views = Views::new([View::Effort, View::Speed, View::Effort]).unwrap();
        assert_eq!(views.as_slice(), [View::Speed, View::Effort]);
        assert_eq!(Views::new([]), None);
    }
}
