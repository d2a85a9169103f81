//! Which final drive serves which gear?

use super::amount::Amount;
use super::naming::label;
use super::remarks::Remarks;
use super::tags::Tag;

/// The final drives, as far as gears are concerned.
pub(super) struct Shafts {
    /// The gears in the brackets of each final drive.
    listed: Vec<Vec<Tag>>,
}

impl Shafts {
    pub(super) fn of(finals: &[Amount]) -> Self {
        Self {
            listed: finals.iter().map(|amount| amount.gears.clone()).collect(),
        }
    }

    /// The final drive that lists the gear, or else the first that lists none, or else the first.
    pub(super) fn serving(&self, gear: Tag) -> usize {
        let lists = self.listed.iter().position(|gears| gears.contains(&gear));
        let is_free = |gears: &Vec<Tag>| gears.is_empty();
        lists
            .or_else(|| self.listed.iter().position(is_free))
            .unwrap_or(0)
    }

    pub(super) fn remark(&self, gears: &[(Tag, Amount)], remarks: &mut Remarks) {
        let is_unlisted = |tag: Tag| !self.listed.iter().any(|gears| gears.contains(&tag));
        let unlisted = gears.iter().filter(|(tag, _)| is_unlisted(*tag));
        let unlisted: Vec<String> = unlisted.map(|(tag, _)| label(*tag)).collect();
        if self.listed.is_empty() {
            remarks.say("No final drive was found; type it in.".to_owned());
        } else if self.listed.len() > 1 && unlisted.len() == gears.len() {
            remarks.say(
                "Several final drives were found, but not for which gears; all gears were given the first."
                    .to_owned(),
            );
        } else if self.listed.len() > 1 && !unlisted.is_empty() {
            remarks.say(format!(
                "No final drive names gear {}; check which one it uses.",
                unlisted.join(", ")
            ));
        }
    }
}
