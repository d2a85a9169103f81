//! What was typed in one text, to be taken back word by word.
//!
//! A step ends where a new word begins, where nobody typed for a while, and where somebody types at
//! another place or deletes instead. It knows texts only: where the caret stood follows from where two
//! of them differ.

/// After so long without a key a new step begins, in seconds.
const PAUSE: f64 = 1.0;

/// More characters than fingers type between two frames: they were pasted, and are a step of their own.
const MOST_AT_ONCE: usize = 4;

/// How many steps can be taken back.
const MOST_STEPS: usize = 200;

/// A text with what it was and what was undone.
#[derive(Debug, Clone)]
pub(super) struct TextHistory {
    past: Vec<String>,
    present: String,
    future: Vec<String>,
    /// The step that the next key may belong to.
    running: Option<Running>,
}

/// A step that still grows.
#[derive(Debug, Clone, Copy)]
struct Running {
    kind: Kind,
    /// Where the next key must act to belong to it, in characters.
    place: usize,
    /// When the last key of it came, in seconds.
    at: f64,
    /// Whether what was typed last parts words.
    ends_in_blank: bool,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Kind {
    Typing,
    Deleting,
}

/// A text to be shown, and where its caret stands, in characters.
pub(super) type Turned<'a> = (&'a str, usize);

impl TextHistory {
    /// A text that nothing was typed in yet.
    pub(super) fn new(text: &str) -> Self {
        Self {
            past: Vec::new(),
            present: text.to_owned(),
            future: Vec::new(),
            running: None,
        }
    }

    /// The text as it stands.
    pub(super) fn text(&self) -> &str {
        &self.present
    }

    /// Whether there is something to be taken back.
    pub(super) fn has_undo(&self) -> bool {
        !self.past.is_empty()
    }

    /// Whether there is something to be brought back.
    pub(super) fn has_redo(&self) -> bool {
        !self.future.is_empty()
    }

    /// Takes note of what the text is now; `now` is the window's clock, in seconds.
    pub(super) fn typed(&mut self, text: &str, now: f64) {
        if text == self.present {
            return;
        }
        let change = Change::between(&self.present, text);
        let belongs = self
            .running
            .is_some_and(|step| change.belongs_to(step, now));
        let before = std::mem::replace(&mut self.present, text.to_owned());
        if !belongs {
            self.past.push(before);
            if self.past.len() > MOST_STEPS {
                self.past.remove(0);
            }
        }
        self.future.clear();
        self.running = change.running(now);
    }

    /// Takes the last step back.
    pub(super) fn undo(&mut self) -> Option<Turned<'_>> {
        let before = self.past.pop()?;
        let after = std::mem::replace(&mut self.present, before);
        let caret = self.turned_from(&after);
        self.future.push(after);
        Some((&self.present, caret))
    }

    /// Brings the last step back that was undone.
    pub(super) fn redo(&mut self) -> Option<Turned<'_>> {
        let after = self.future.pop()?;
        let before = std::mem::replace(&mut self.present, after);
        let caret = self.turned_from(&before);
        self.past.push(before);
        Some((&self.present, caret))
    }

    /// Where the caret stands after what has become another text.
    fn turned_from(&mut self, other: &str) -> usize {
        self.running = None;
        let change = Change::between(other, &self.present);
        change.place + change.inserted.chars().count()
    }
}

/// In what one text differs from the one before it.
struct Change<'a> {
    /// Where, in characters.
    place: usize,
    /// How many characters are gone.
    removed: usize,
    /// What has come in their place.
    inserted: &'a str,
}

impl<'a> Change<'a> {
    fn between(before: &str, after: &'a str) -> Self {
        let same = |(a, b): &(char, char)| a == b;
        let alike = before.chars().zip(after.chars()).take_while(same);
        let start: usize = alike.clone().map(|(c, _)| c.len_utf8()).sum();
        let (rest_before, rest_after) = (&before[start..], &after[start..]);
        let ends = rest_before.chars().rev().zip(rest_after.chars().rev());
        let end: usize = ends.take_while(same).map(|(c, _)| c.len_utf8()).sum();
        let without_end = |rest: &'_ str| rest.len() - end;
        Self {
            place: alike.count(),
            removed: rest_before[..without_end(rest_before)].chars().count(),
            inserted: &rest_after[..without_end(rest_after)],
        }
    }

    fn kind(&self) -> Kind {
        if self.inserted.is_empty() {
            Kind::Deleting
        } else {
            Kind::Typing
        }
    }

    fn belongs_to(&self, step: Running, now: f64) -> bool {
        if self.kind() != step.kind || now - step.at > PAUSE {
            return false;
        }
        match step.kind {
            Kind::Typing => {
                let is_pasted = self.inserted.chars().count() > MOST_AT_ONCE;
                let begins_word = self.inserted.starts_with(|c: char| !c.is_whitespace());
                let is_new_word = step.ends_in_blank && begins_word;
                self.removed == 0 && self.place == step.place && !is_pasted && !is_new_word
            }
            // Backwards or forwards.
            Kind::Deleting => self.place + self.removed == step.place || self.place == step.place,
        }
    }

    /// The step that a further key may belong to.
    fn running(&self, now: f64) -> Option<Running> {
        let count = self.inserted.chars().count();
        (count <= MOST_AT_ONCE).then(|| Running {
            kind: self.kind(),
            place: self.place + count,
            at: now,
            ends_in_blank: self.inserted.ends_with(char::is_whitespace),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// Types at the end of the text, a key every tenth of a second.
    fn type_at_end(history: &mut TextHistory, keys: &str, from: f64) -> f64 {
        let mut now = from;
        for key in keys.chars() {
            now += 0.1;
            let text = format!("{}{key}", history.text());
            history.typed(&text, now);
        }
        now
    }

    fn undone(history: &mut TextHistory) -> Vec<String> {
        std::iter::from_fn(|| history.undo().map(|(text, _)| text.to_owned())).collect()
    }

    fn redone(history: &mut TextHistory) -> Vec<String> {
        std::iter::from_fn(|| history.redo().map(|(text, _)| text.to_owned())).collect()
    }

    #[test]
    fn words_are_taken_back_one_by_one_and_come_back() {
        let mut history = TextHistory::new("");
        type_at_end(&mut history, "Two up.\nCold start", 0.0);
        let words = ["Two up.\nCold ", "Two up.\n", "Two ", ""];
        assert_eq!(undone(&mut history), words);
        let forth = ["Two ", "Two up.\n", "Two up.\nCold ", "Two up.\nCold start"];
        assert_eq!(redone(&mut history), forth);
    }

    #[test]
    fn a_pause_within_a_word_parts_it() {
        let mut history = TextHistory::new("");
        let now = type_at_end(&mut history, "gear", 0.0);
        type_at_end(&mut history, "box", now + 2.0 * PAUSE);
        assert_eq!(undone(&mut history), ["gear", ""]);
    }

    #[test]
    fn deleting_is_a_step_apart_from_typing() {
        let mut history = TextHistory::new("");
        let now = type_at_end(&mut history, "boxes", 0.0);
        history.typed("boxe", now + 0.1);
        history.typed("box", now + 0.2);
        type_at_end(&mut history, "ing", now + 0.2);
        assert_eq!(undone(&mut history), ["box", "boxes", ""]);
    }

    #[test]
    fn typing_elsewhere_and_pasting_begin_a_step() {
        let mut history = TextHistory::new("a b");
        history.typed("xa b", 0.1);
        history.typed("xa by", 0.2);
        history.typed("xa by pasted", 0.3);
        history.typed("xa by pasted!", 0.4);
        let steps = ["xa by pasted", "xa by", "xa b", "a b"];
        assert_eq!(undone(&mut history), steps);
    }

    #[test]
    fn the_caret_stands_behind_what_came_back() {
        let mut history = TextHistory::new("first gear");
        history.typed("first low gear", 0.1);
        assert_eq!(history.undo(), Some(("first gear", 6)));
        assert_eq!(history.redo(), Some(("first low gear", 10)));
    }

    #[test]
    fn what_is_typed_after_undoing_leaves_nothing_to_redo() {
        let mut history = TextHistory::new("");
        type_at_end(&mut history, "one two", 0.0);
        assert_eq!(history.undo(), Some(("one ", 4)));
        history.typed("one 2", 1.0);
        assert!(!history.has_redo());
        assert_eq!(undone(&mut history), ["one ", ""]);
    }

    proptest! {
        #[test]
        fn whatever_was_typed_all_steps_undone_give_the_start_and_all_redone_the_end(
            texts in proptest::collection::vec(("[aä \n]{0,6}", 0.0..2.0), 0..30),
        ) {
            let mut history = TextHistory::new("start");
            let mut now = 0.0;
            for (text, pause) in &texts {
                now += pause;
                history.typed(text, now);
            }
            let end = history.text().to_owned();
            let back = undone(&mut history);
            prop_assert_eq!(back.last().map_or(end.as_str(), String::as_str), history.text());
            prop_assert!(texts.is_empty() || history.text() == "start" || back.is_empty());
            redone(&mut history);
            prop_assert_eq!(history.text(), end);
        }
    }
}
