//! What a job comes to: its state, and what is said of it line by line.

/// How far a job has come.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum JobState {
    /// Nothing of it is known yet.
    Open,
    /// Something must be measured, or measured again.
    ToMeasure,
    /// What was measured is not as it must be.
    ToChange,
    /// It is as it must be.
    Done,
}

impl JobState {
    /// All states, in the order in which a job goes through them.
    pub const ALL: [Self; 4] = [Self::Open, Self::ToMeasure, Self::ToChange, Self::Done];

    /// The state in words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Open => "open",
            Self::ToMeasure => "to be measured",
            Self::ToChange => "to be changed",
            Self::Done => "done",
        }
    }
}

/// What a job comes to.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Answer {
    /// How far it has come.
    pub state: JobState,
    /// What is said of it, the most important first.
    pub lines: Vec<AnswerLine>,
}

/// A line of an answer.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AnswerLine {
    /// What it is.
    pub kind: LineKind,
    /// What it says.
    pub text: String,
}

/// What a line of an answer is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum LineKind {
    /// What to do, or whether it is as it must be.
    Result,
    /// A figure on the way, or what is missing.
    Said,
    /// The name of a list whose lines follow it.
    Heading,
    /// Something that must not be overlooked.
    Warning,
}

impl Answer {
    /// An answer of which nothing is said yet.
    pub(super) fn new(state: JobState) -> Self {
        Self {
            state,
            lines: Vec::new(),
        }
    }

    fn with(mut self, kind: LineKind, text: impl Into<String>) -> Self {
        let text = text.into();
        self.lines.push(AnswerLine { kind, text });
        self
    }

    /// The same with a result.
    pub(super) fn result(self, text: impl Into<String>) -> Self {
        self.with(LineKind::Result, text)
    }

    /// The same with something that is said.
    pub(super) fn said(self, text: impl Into<String>) -> Self {
        self.with(LineKind::Said, text)
    }

    /// The same with the name of a list, and its lines.
    pub(super) fn list(self, name: &str, lines: impl IntoIterator<Item = String>) -> Self {
        let headed = self.with(LineKind::Heading, name);
        lines.into_iter().fold(headed, Self::said)
    }

    /// The same with a warning.
    pub(super) fn warning(self, text: impl Into<String>) -> Self {
        self.with(LineKind::Warning, text)
    }

    /// The same with warnings.
    pub(super) fn warnings(self, texts: impl IntoIterator<Item = String>) -> Self {
        texts.into_iter().fold(self, Self::warning)
    }
}
