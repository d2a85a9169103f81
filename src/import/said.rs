//! What is said about a reading: what was guessed, each sentence once, then what was left out.

/// How many things are named in one sentence.
pub(super) const MOST_NAMED: usize = 4;

/// How many things are said; nobody reads more.
const MOST_SENTENCES: usize = 12;

/// Why something in a text was left out.
pub(super) trait Reason: Copy + PartialEq + 'static {
    /// All reasons, in the order in which they are told.
    const ALL: &'static [Self];

    /// The end of the sentence "Left out …" for one or several.
    fn reason(self) -> &'static str;
}

/// The sentences about one reading.
#[derive(Debug, Clone)]
pub(super) struct Said<R> {
    sentences: Vec<String>,
    left_out: Vec<Omission<R>>,
}

/// What was left out for one reason: the first few by name, and how many there were.
#[derive(Debug, Clone)]
struct Omission<R> {
    why: R,
    named: Vec<String>,
    count: usize,
}

impl<R> Default for Said<R> {
    fn default() -> Self {
        Self {
            sentences: Vec::new(),
            left_out: Vec::new(),
        }
    }
}

impl<R: Reason> Said<R> {
    /// Adds a sentence, once.
    pub(super) fn say(&mut self, sentence: String) {
        if self.sentences.len() < MOST_SENTENCES && !self.sentences.contains(&sentence) {
            self.sentences.push(sentence);
        }
    }

    /// Notes that something is not taken, as it stands in a sentence.
    pub(super) fn leave_out(&mut self, name: String, why: R) {
        let at = self.left_out.iter().position(|known| known.why == why);
        let at = at.unwrap_or_else(|| {
            self.left_out.push(Omission {
                why,
                named: Vec::new(),
                count: 0,
            });
            self.left_out.len() - 1
        });
        let omission = &mut self.left_out[at];
        omission.count += 1;
        if omission.named.len() < MOST_NAMED {
            omission.named.push(name);
        }
    }

    /// What was left out for a reason, the first few by name; none where nothing was.
    pub(super) fn named(&self, why: R) -> &[String] {
        let known = self.left_out.iter().find(|known| known.why == why);
        known.map_or(&[], |omission| &omission.named)
    }

    /// All sentences: what was guessed, then what was left out.
    pub(super) fn into_sentences(self) -> Vec<String> {
        let mut sentences = self.sentences;
        let mut left_out = self.left_out;
        left_out.sort_by_key(|omission| R::ALL.iter().position(|why| *why == omission.why));
        sentences.extend(left_out.into_iter().map(|omission| {
            let named = listed(omission.named, omission.count);
            format!("Left out: {named} ({}).", omission.why.reason())
        }));
        sentences
    }
}

/// The first few of `count` things, and how many more there are.
pub(super) fn listed(mut named: Vec<String>, count: usize) -> String {
    named.truncate(MOST_NAMED);
    match count.saturating_sub(named.len()) {
        0 => named.join(", "),
        more => format!("{} and {more} more", named.join(", ")),
    }
}
