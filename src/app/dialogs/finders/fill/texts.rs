//! What the texts of the dialog mean: how a set is to be filled with steps, and what was moved by hand since.

use crate::app::typed::{self, Quantity, Reading};
use crate::finders::{FillWish, LayoutError, Progression, StepLayout};
use crate::gearing::{Drivetrain, GearSet, Ratio, quoted};
use crate::project::SetId;
use crate::units::plain_number;

/// How steps are laid out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) enum Law {
    /// All of them alike.
    #[default]
    Geometric,
    /// Each wider than the next by one factor.
    Progressive,
    /// As the set has them.
    AsNow,
}

impl Law {
    pub(super) const ALL: [Self; 3] = [Self::Geometric, Self::Progressive, Self::AsNow];

    pub(super) fn text(self) -> &'static str {
        match self {
            Self::Geometric => "geometric",
            Self::Progressive => "progressive",
            Self::AsNow => "as they are",
        }
    }
}

/// What is typed and chosen.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct Typed {
    pub(super) law: Law,
    pub(super) gears: String,
    pub(super) first: String,
    pub(super) top: String,
    pub(super) progression: String,
}

/// What stands in the dialog.
#[derive(Debug, Clone, PartialEq, Default)]
pub(in crate::app) struct FillTexts {
    pub(super) typed: Typed,
    /// The steps that were moved by hand, and what was typed then.
    moved: Option<(Typed, StepLayout)>,
    /// The set that it was typed for, and the ratios of its gears then.
    of: Option<(SetId, Vec<Ratio>)>,
}

const PROGRESSION: Quantity<Progression> = Quantity {
    new: Progression::from_factor,
    example: "1.1",
    unit: "",
};

impl FillTexts {
    /// What stands there, if it was typed for the set as it is; else the set's own figures.
    pub(super) fn for_set(mut self, id: SetId, set: &GearSet) -> Self {
        let ratios: Vec<Ratio> = set.chain().map(|gear| gear.ratio.clone()).collect();
        let of = Some((id, ratios));
        if self.of == of {
            return self;
        }
        self.of = of;
        self.moved = None;
        let text = |ratio: Option<&Ratio>| ratio.map_or_else(String::new, Ratio::to_string);
        let ratios = self.of.iter().flat_map(|(_, ratios)| ratios);
        let typed = &mut self.typed;
        typed.gears = plain_number(ratios.clone().count() as f64);
        typed.first = text(ratios.clone().next());
        typed.top = text(ratios.last());
        if typed.progression.is_empty() {
            "1.1".clone_into(&mut typed.progression);
        }
        self
    }

    pub(super) fn gears(&self) -> Reading<usize> {
        let text = self.typed.gears.trim();
        let is_whole = !text.is_empty() && text.bytes().all(|byte| byte.is_ascii_digit());
        let count = text.parse().ok().filter(|_| is_whole);
        let count = count.filter(|count| (2..=GearSet::MOST_GEARS).contains(count));
        count.ok_or_else(|| {
            let most = GearSet::MOST_GEARS;
            format!(
                "a number of gears is a whole number from 2 to {most}, not \"{}\"",
                quoted(text)
            )
        })
    }

    pub(super) fn first(&self) -> Reading<Ratio> {
        typed::reduction(&self.typed.first)
    }

    pub(super) fn top(&self) -> Reading<Ratio> {
        typed::any_ratio(&self.typed.top)
    }

    pub(super) fn progression(&self) -> Reading<Progression> {
        match self.typed.law {
            Law::Geometric | Law::AsNow => Ok(Progression::EVEN),
            Law::Progressive => {
                let read = PROGRESSION.read(&self.typed.progression)?;
                read.ok_or_else(|| "type how much wider each step is, such as 1.1".to_owned())
            }
        }
    }

    /// How the set is to be filled.
    ///
    /// # Errors
    /// When something does not read, which its field says.
    pub(super) fn wish(&self) -> Reading<FillWish> {
        Ok(FillWish {
            gears: self.gears()?,
            first: self.first()?,
            top: self.top()?,
        })
    }

    /// The steps that are laid out, as they were moved since.
    ///
    /// # Errors
    /// A sentence, when there are none.
    pub(super) fn layout(
        &self,
        wish: &FillWish,
        (set, drivetrain): (&GearSet, &Drivetrain),
    ) -> Reading<StepLayout> {
        if let Some((_, layout)) = self
            .moved
            .as_ref()
            .filter(|(typed, _)| *typed == self.typed)
        {
            return Ok(layout.clone());
        }
        let law = wish.layout(set, self.progression()?);
        let law = law.map_err(|why: LayoutError| why.to_string())?;
        if self.typed.law != Law::AsNow {
            return Ok(law);
        }
        let present = drivetrain.chain().map(|gear| gear.overall_ratio);
        let mut ratios: Vec<f64> = present.collect();
        if ratios.len() != law.ratios().len() {
            return Err("the set has another number of gears now".to_owned());
        }
        let last = ratios.len() - 1;
        for end in [0, last] {
            ratios[end] = law.ratios()[end];
        }
        StepLayout::of(ratios).map_err(|why| why.to_string())
    }

    /// Keeps steps that were moved by hand.
    pub(super) fn keep_moved(&mut self, layout: StepLayout) {
        self.moved = Some((self.typed.clone(), layout));
    }

    /// Whether steps were moved by hand.
    pub(super) fn is_moved(&self) -> bool {
        self.moved
            .as_ref()
            .is_some_and(|(typed, _)| *typed == self.typed)
    }

    /// Lays the steps anew.
    pub(super) fn lay_anew(&mut self) {
        self.moved = None;
    }
}
