//! What is asked about a document: questions as data, their answers as steps.

use super::path_question::PathQuestion;
use super::step::Step;

/// What is being asked.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) enum Asked {
    /// Something with a few answers.
    Question(Question),
    /// A path, chosen in the system's dialog or typed.
    Path(PathQuestion),
}

/// A question with its answers.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct Question {
    /// The matter, as a heading.
    pub(in crate::app) heading: &'static str,
    /// What happens, in a sentence or two.
    pub(in crate::app) text: String,
    /// What it is about in particular, a line each; as many as there are.
    pub(in crate::app) details: Vec<String>,
    /// The way on that loses nothing first, leaving everything as it is last.
    pub(in crate::app) answers: Vec<Answer>,
}

/// One answer: what it is called, and what it leads to.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct Answer {
    /// What stands on its button.
    pub(in crate::app) words: &'static str,
    /// What it leads to.
    pub(in crate::app) step: Step,
    /// Whether it is the way on that loses nothing: of every question, exactly one is.
    pub(in crate::app) is_safe: bool,
}

impl Question {
    /// A question without an answer yet.
    pub(super) fn new(heading: &'static str, text: impl Into<String>) -> Self {
        Self {
            heading,
            text: text.into(),
            details: Vec::new(),
            answers: Vec::new(),
        }
    }

    /// The same with particulars beneath the text.
    pub(super) fn with(mut self, details: Vec<String>) -> Self {
        self.details = details;
        self
    }

    /// The same with the answer that loses nothing, which the focus begins on.
    pub(super) fn safely(self, words: &'static str, step: Step) -> Self {
        self.with_answer(words, step, true)
    }

    /// The same with one more answer.
    pub(super) fn or(self, words: &'static str, step: Step) -> Self {
        self.with_answer(words, step, false)
    }

    fn with_answer(mut self, words: &'static str, step: Step, is_safe: bool) -> Self {
        self.answers.push(Answer {
            words,
            step,
            is_safe,
        });
        self
    }
}
