//! What does a pasted label say that a value is?

/// What a value is, as far as its label says so.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Tag {
    /// A forward gear, 1 to 12.
    Gear(u8),
    /// One half of a split gear, `1L` or `1H`.
    Half(u8, char),
    /// A gear with the overdrive in.
    Overdriven(u8),
    /// A gear that is called just overdrive.
    Overdrive,
    /// The highest gear, without its number.
    Top,
    /// Opposite of low: top gear, or a transfer box in high.
    High,
    /// A crawler, the first of three, or a transfer box in low.
    Low,
    /// A gear below first.
    Crawler,
    /// The reverse gear.
    Reverse,
    /// A final drive.
    Final,
}

impl Tag {
    /// The gear of that number, where a set can have one.
    pub(super) fn gear(number: &str) -> Option<Self> {
        let is_short = number.len() <= 2 && !number.starts_with('0');
        let number = number.parse::<u8>().ok().filter(|_| is_short)?;
        (1..=12).contains(&number).then_some(Self::Gear(number))
    }

    /// Whether it names a forward gear.
    pub(super) fn is_forward(self) -> bool {
        !matches!(self, Self::Reverse | Self::Final)
    }

    /// Where the gear stands in a set that runs from the shortest to the tallest.
    pub(super) fn place(self) -> u16 {
        match self {
            Self::Crawler => 0,
            Self::Low => 1,
            Self::Gear(n) | Self::Half(n, 'L') => 10 * u16::from(n),
            Self::Half(n, _) | Self::Overdriven(n) => 10 * u16::from(n) + 5,
            Self::Top | Self::High => 200,
            Self::Overdrive => 201,
            Self::Reverse | Self::Final => 300,
        }
    }
}
