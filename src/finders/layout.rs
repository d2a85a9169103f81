//! Steps that are laid out: the ratios from a first gear to a top gear, even or each wider than the next, and
//! what becomes of a set that takes them.

use crate::gearing::{
    Gear, GearRole, GearSet, GearSetError, GearSetSpec, Ratio, RatioError, quantity, ratio_behind,
};
use crate::units::{plain_number, round_to};

quantity! {
    /// How much wider each step is than the step after it: 0.5 to 2, 1 where all are the same.
    Progression, from_factor, factor, "a progression", "between 0.5 and 2",
    |factor| (0.5..=2.0).contains(&factor)
}

impl Progression {
    /// That of geometric steps.
    pub const EVEN: Self = Self(1.0);
}

/// Why steps cannot be laid out.
#[derive(Debug, Clone, PartialEq, thiserror::Error)]
pub enum LayoutError {
    /// One gear has no step, and more than that a set cannot have.
    #[error("steps are laid out for 2 to 12 gears, not {0}")]
    GearCount(usize),
    /// First is no shorter than top.
    #[error("first gear must be shorter than top, and {first} is not above {top}")]
    NotFalling {
        /// The ratio of first gear, with what stands behind it.
        first: String,
        /// The same of top.
        top: String,
    },
    /// A gear is no shorter than the next.
    #[error(
        "every gear must be shorter than the next, and {} is not above {}",
        plain_number(round_to(*.0, 1e-4)), plain_number(round_to(*.1, 1e-4))
    )]
    NotFallingBetween(f64, f64),
    /// The last steps would go the other way.
    #[error(
        "with a progression of {} some gears would be shorter than the one before: take one nearer to 1",
        plain_number(*.0)
    )]
    Progression(f64),
    /// A ratio that cannot be.
    #[error(transparent)]
    Ratio(#[from] RatioError),
    /// The set would not be valid.
    #[error(transparent)]
    GearSet(#[from] GearSetError),
}

/// The ratios of gears from first to top, at least two.
#[derive(Debug, Clone, PartialEq)]
pub struct StepLayout(Vec<f64>);

impl StepLayout {
    /// The least step that a hand can leave.
    pub const LEAST_STEP: f64 = 1.01;

    /// The ratios of `gears` gears from `first` to `top`, each step `progression` times as wide as the next.
    ///
    /// iₙ = iₜ · φ₁^(z−n) · φ₂^(½ (z−n)(z−n−1)), φ₁ = (spread ÷ φ₂^(½ (z−1)(z−2)))^(1 ÷ (z−1)), iₜ the ratio of
    /// top, z the number of gears, φ₁ the last step, φ₂ the progression; with φ₂ = 1 the steps are geometric.
    ///
    /// # Errors
    /// When there are not 2 to 12 gears, first is not shorter than top, or a step would not be above 1.
    ///
    /// # Source
    /// Naunheimer and Lechner, Automotive Transmissions, ch. 4 (from memory).
    ///
    /// # Example
    /// ```
    /// use layshaft::finders::{Progression, StepLayout};
    /// let even = StepLayout::between(8.0, 1.0, 4, Progression::EVEN)?;
    /// assert!((even.ratios()[1] - 4.0).abs() < 1e-12);
    /// # Ok::<(), layshaft::finders::LayoutError>(())
    /// ```
    pub fn between(
        first: f64,
        top: f64,
        gears: usize,
        progression: Progression,
    ) -> Result<Self, LayoutError> {
        if !(2..=GearSet::MOST_GEARS).contains(&gears) {
            return Err(LayoutError::GearCount(gears));
        }
        let spread = first / top;
        if spread.partial_cmp(&1.0) != Some(std::cmp::Ordering::Greater) {
            let [first, top] = [first, top].map(|ratio| plain_number(round_to(ratio, 1e-4)));
            return Err(LayoutError::NotFalling { first, top });
        }
        let steps = gears - 1;
        let factor = progression.factor();
        let last_step = (spread / factor.powf(triangle(steps))).powf(1.0 / steps as f64);
        let above_top = |count: usize| {
            let steps = last_step.powf(count as f64);
            top * steps * factor.powf(triangle(count))
        };
        let mut ratios: Vec<f64> = (0..gears).rev().map(above_top).collect();
        ratios[0] = first;
        ratios[steps] = top;
        if ratios.windows(2).any(|pair| pair[0] <= pair[1]) {
            return Err(LayoutError::Progression(factor));
        }
        Ok(Self(ratios))
    }

    /// These ratios, first to top.
    ///
    /// # Errors
    /// When there are not 2 to 12, or one is not shorter than the next.
    pub fn of(ratios: Vec<f64>) -> Result<Self, LayoutError> {
        if !(2..=GearSet::MOST_GEARS).contains(&ratios.len()) {
            return Err(LayoutError::GearCount(ratios.len()));
        }
        match ratios.windows(2).find(|pair| pair[0] <= pair[1]) {
            Some(pair) => Err(LayoutError::NotFallingBetween(pair[0], pair[1])),
            None => Ok(Self(ratios)),
        }
    }

    /// The ratios, first to top.
    pub fn ratios(&self) -> &[f64] {
        &self.0
    }

    /// Each ratio over the next, one fewer than gears.
    pub fn steps(&self) -> Vec<f64> {
        self.0.windows(2).map(|pair| pair[0] / pair[1]).collect()
    }

    /// The least and the greatest that the step at that place can become; none where it cannot be moved, as
    /// the only one between first and top.
    pub fn range_of_step(&self, at: usize) -> Option<[f64; 2]> {
        let [one, _, other] = self.around(self.moved_with(at)?)?;
        let both = one / other;
        let most = both / Self::LEAST_STEP;
        (most > Self::LEAST_STEP).then_some([Self::LEAST_STEP, most])
    }

    /// The same ratios with another step at that place, kept within its range: the gear behind it moves and
    /// the step after it makes up for it; before top, the gear before it and the step before. First and top
    /// stay.
    #[must_use]
    pub fn with_step(&self, at: usize, step: f64) -> Self {
        let mut ratios = self.0.clone();
        if let Some(gear) = self.moved_with(at)
            && let Some([least, most]) = self.range_of_step(at)
            && step.is_finite()
        {
            let step = step.clamp(least, most);
            ratios[gear] = if gear > at {
                ratios[at] / step
            } else {
                ratios[at + 1] * step
            };
        }
        Self(ratios)
    }

    /// The gear that moves with the step at that place, neither first nor top.
    fn moved_with(&self, at: usize) -> Option<usize> {
        let top = self.0.len() - 1;
        let gear = if at + 1 < top { at + 1 } else { at };
        (at < top && gear > 0).then_some(gear)
    }

    /// The ratio of a gear between those beside it.
    fn around(&self, gear: usize) -> Option<[f64; 3]> {
        let before = self.0.get(gear.checked_sub(1)?)?;
        Some([*before, *self.0.get(gear)?, *self.0.get(gear + 1)?])
    }
}

/// A set that is to be filled with steps.
#[derive(Debug, Clone, PartialEq)]
pub struct FillWish {
    /// The ratio of first gear.
    pub first: Ratio,
    /// The ratio of top gear.
    pub top: Ratio,
    /// How many gears are shifted through.
    pub gears: usize,
}

impl FillWish {
    /// The overall ratios of the filled set but for the tyre, which the steps are laid out in: gears may
    /// stand on several output shafts.
    ///
    /// # Errors
    /// As of [`StepLayout::between`], and when the parts do not fit together.
    pub fn layout(
        &self,
        set: &GearSet,
        progression: Progression,
    ) -> Result<StepLayout, LayoutError> {
        if !(2..=GearSet::MOST_GEARS).contains(&self.gears) {
            return Err(LayoutError::GearCount(self.gears));
        }
        let behind = behind_chain(&self.room(set)?)?;
        let [Some(before), Some(after)] = [behind.first(), behind.last()] else {
            return Err(LayoutError::GearCount(behind.len()));
        };
        let first = self.first.value() * before;
        let top = self.top.value() * after;
        StepLayout::between(first, top, self.gears, progression)
    }

    /// The set with these overall ratios; first and top as they were typed, the others to the fourth decimal.
    /// Gears beyond the wished number go, missing ones are added above top, on its output shaft.
    ///
    /// # Errors
    /// When a ratio cannot be, or the parts do not fit together.
    pub fn filled(&self, set: &GearSet, layout: &StepLayout) -> Result<GearSetSpec, LayoutError> {
        let mut spec = self.room(set)?;
        let behind = behind_chain(&spec)?;
        let last = behind.len().saturating_sub(1);
        let chain = spec
            .gears
            .iter_mut()
            .filter(|gear| gear.role == GearRole::Shifted);
        let ratios = layout.ratios().iter().zip(&behind);
        for ((at, gear), (overall, behind)) in chain.enumerate().zip(ratios) {
            gear.ratio = match at {
                0 => self.first.clone(),
                at if at == last => self.top.clone(),
                _ => Ratio::from_number(round_to(overall / behind, TAKEN_GRAIN))?,
            };
        }
        Ok(GearSet::try_from(spec)?.to_spec())
    }

    /// The set with as many gears as are wished.
    fn room(&self, set: &GearSet) -> Result<GearSetSpec, LayoutError> {
        let mut spec = set.to_spec();
        let chain: Vec<Gear> = set.chain().cloned().collect();
        for gone in chain.iter().skip(self.gears) {
            spec.gears.retain(|gear| gear.id != gone.id);
            spec.forget_in_stages(gone.id);
        }
        for _ in chain.len()..self.gears {
            let added = added_above_top(&spec);
            let (place, gear) = added.ok_or(LayoutError::GearCount(self.gears))?;
            spec.gears.insert(place, gear);
        }
        Ok(spec)
    }
}

/// To how many parts a ratio that was reckoned is taken over.
pub const TAKEN_GRAIN: f64 = 1e-4;

/// ½ n (n − 1): how often the progression is in n steps.
fn triangle(count: usize) -> f64 {
    let count = count as f64;
    0.5 * count * (count - 1.0)
}

/// A gear like top, above it, and its place.
fn added_above_top(spec: &GearSetSpec) -> Option<(usize, Gear)> {
    let is_shifted = |gear: &Gear| gear.role == GearRole::Shifted;
    let place = spec.gears.iter().rposition(is_shifted)?;
    let gear = Gear {
        id: spec.unused_id(),
        label: spec.unused_label()?,
        shift: None,
        ..spec.gears[place].clone()
    };
    Some((place + 1, gear))
}

/// What stands between each gear of the shift chain and the wheels.
fn behind_chain(spec: &GearSetSpec) -> Result<Vec<f64>, LayoutError> {
    let set = GearSet::try_from(spec.clone())?;
    let behind = set.chain().filter_map(|gear| ratio_behind(&set, gear.id));
    Ok(behind.collect())
}
