//! A path that is being asked for: what was typed so far, how it goes on, and what it would lead to.

use super::step::After;
use crate::app::completion::{Completion, Entry, completed, only_longer, parted};
use crate::app::file_picker::Purpose;
use crate::app::files::{has_name_of_picture, typed_path, whole_path, with_ending};
use crate::app::folder_look::Looked;
use crate::gearing::quoted;
use crate::project::ends_in_separator;
use std::path::{Path, PathBuf};

/// A path that is being asked for.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct PathQuestion {
    /// What for.
    pub(in crate::app) purpose: Purpose,
    /// What was typed.
    pub(in crate::app) text: String,
    /// The call to the system's dialog, while it has not answered.
    pub(in crate::app) request: Option<u64>,
    /// Why the last try failed.
    pub(in crate::app) problem: Option<String>,
    /// What happens after saving.
    pub(in crate::app) then: Option<After>,
    /// The folder that relative paths begin in, that of the file opened or saved last; without one,
    /// that of the program.
    pub(super) base: Option<PathBuf>,
    /// Where the document stands.
    pub(super) own: Option<PathBuf>,
    /// The folder that was looked into last.
    pub(super) looked: Option<Looked>,
    /// The half-typed name that was warned of: given once more, it is meant.
    pub(super) warned_of: Option<PathBuf>,
    /// The folder, as typed, whose names are offered.
    pub(super) offered_in: Option<String>,
    /// Whether the path is to be completed as soon as its folder was looked into.
    pub(in crate::app) is_awaited: bool,
}

/// What came of the wish for a completion.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in crate::app) enum Completed {
    /// The text goes on, names are offered, or it is said why neither can be.
    Done,
    /// The folder was not looked into yet.
    Later,
    /// There is nothing that it could be completed to.
    Nothing,
}

impl PathQuestion {
    /// A question that begins with a text.
    pub(super) fn new(purpose: Purpose, text: impl Into<String>, own: Option<PathBuf>) -> Self {
        Self {
            purpose,
            text: text.into(),
            request: None,
            problem: None,
            then: None,
            base: None,
            own,
            looked: None,
            warned_of: None,
            offered_in: None,
            is_awaited: false,
        }
    }

    /// The path that a text means here.
    pub(super) fn path(&self, text: &str) -> Option<PathBuf> {
        let path = typed_path(text)?;
        Some(match &self.base {
            Some(base) => base.join(path),
            None => path,
        })
    }

    /// The folder that the typed path leads into, from the root; none where nothing is typed.
    pub(super) fn folder(&self) -> Option<PathBuf> {
        let path = self.path(&self.text)?;
        let folder = if ends_in_separator(&path) {
            path.as_path()
        } else {
            path.parent()
                .filter(|parent| !parent.as_os_str().is_empty())
                .unwrap_or_else(|| Path::new("."))
        };
        whole_path(folder).ok()
    }

    /// What is in that folder, once it was looked into.
    fn known(&self) -> Option<Result<&[Entry], &str>> {
        let folder = self.folder()?;
        let looked = self
            .looked
            .as_ref()
            .filter(|looked| looked.folder == folder)?;
        Some(looked.entries.as_deref().map_err(String::as_str))
    }

    /// Something else was typed: what was said of the text before is over.
    pub(in crate::app) fn follow_typing(&mut self) {
        self.problem = None;
        self.is_awaited = false;
    }

    /// Completes the text as far as it can be.
    pub(in crate::app) fn complete(&mut self) -> Completed {
        self.is_awaited = false;
        let (folder, beginning) = parted(&self.text);
        if typed_path(folder).is_none() && beginning.trim().is_empty()
            || folder.starts_with("file:")
        {
            return Completed::Nothing;
        }
        match self.known() {
            None => {
                self.is_awaited = self.folder().is_some();
                if self.is_awaited {
                    Completed::Later
                } else {
                    Completed::Nothing
                }
            }
            Some(Err(why)) if self.problem.as_deref() == Some(why) => Completed::Nothing,
            Some(Err(why)) => {
                self.problem = Some(why.to_owned());
                Completed::Done
            }
            Some(Ok(entries)) => {
                let Completion {
                    beginning: further,
                    names,
                } = completed(beginning, entries, self.purpose.endings());
                let was_offered = self.offered_in.as_deref() == Some(folder);
                let offered_in = (names.len() > 1).then(|| folder.to_owned());
                let is_further = further != beginning;
                let is_news = is_further || (offered_in.is_some() && !was_offered);
                self.text = format!("{folder}{further}");
                if is_further {
                    // What was said of the text before is over.
                    self.problem = None;
                }
                self.offered_in = offered_in;
                if is_news {
                    Completed::Done
                } else {
                    Completed::Nothing
                }
            }
        }
    }

    /// The names that are offered.
    pub(in crate::app) fn offered(&self) -> Vec<String> {
        let (folder, beginning) = parted(&self.text);
        if self.offered_in.as_deref() != Some(folder) {
            return Vec::new();
        }
        match self.known() {
            Some(Ok(entries)) => completed(beginning, entries, self.purpose.endings()).names,
            Some(Err(_)) | None => Vec::new(),
        }
    }

    /// Takes one of the offered names; of a folder, its own names are offered next.
    pub(in crate::app) fn take(&mut self, name: &str) {
        let (folder, _) = parted(&self.text);
        self.text = format!("{folder}{name}");
        let (folder, beginning) = parted(&self.text);
        self.offered_in = beginning.is_empty().then(|| folder.to_owned());
    }

    /// What the typed path leads to, before anything is done: why its folder will not do, or the whole
    /// path that would be read or written.
    pub(in crate::app) fn words_of_target(&self) -> Option<String> {
        let path = self.path(&self.text)?;
        let whole = whole_path(&path).ok()?;
        if let (Some(Err(why)), None) = (self.known(), &self.problem) {
            return Some(why.to_owned());
        }
        if self.purpose == Purpose::Open {
            let is_relative = typed_path(&self.text)?.is_relative();
            return is_relative.then(|| format!("that is {}", whole.display()));
        }
        if ends_in_separator(&path) {
            return None;
        }
        let target = with_ending(whole.clone(), self.purpose.ending());
        if self.purpose == Purpose::Save && has_name_of_picture(&target) {
            return Some("that is the name of a picture".to_owned());
        }
        let name = |path: &Path| {
            path.file_name()
                .map(|name| name.to_string_lossy().into_owned())
        };
        let is_there = |entries: &[Entry], path: &Path| {
            let name = name(path);
            entries
                .iter()
                .any(|entry| Some(&entry.name) == name.as_ref())
        };
        let is_folder = |entries: &[Entry]| {
            let mut folders = entries.iter().filter(|entry| entry.is_folder);
            folders.any(|folder| Some(&folder.name) == name(&whole).as_ref())
        };
        let words = match self.known() {
            Some(Ok(entries)) if is_folder(entries) => return Some("that is a folder".to_owned()),
            _ if self.purpose == Purpose::Save && self.own.as_ref() == Some(&target) => {
                "the project's own file:"
            }
            Some(Ok(entries)) if is_there(entries, &target) => "in place of a file, if you agree:",
            Some(Ok(_)) => "a new file:",
            Some(Err(_)) | None => "that is",
        };
        Some(format!("{words} {}", target.display()))
    }
}

/// Why a name is taken for half-typed: it is only the beginning of one file's name.
pub(super) fn half_typed<'a>(
    path: &Path,
    names: impl Iterator<Item = &'a str>,
    purpose: Purpose,
) -> Option<String> {
    let beginning = path.file_name()?.to_str()?;
    let longer = only_longer(beginning, names, purpose.ending())?;
    let target = with_ending(path.to_owned(), purpose.ending());
    let name = target.file_name()?.to_string_lossy();
    (name != longer).then(|| {
        let [beginning, longer, name] = [beginning, longer, &*name].map(quoted);
        format!(
            "\"{beginning}\" is only the beginning of \"{longer}\": Tab completes it, saving once more \
             makes a new file \"{name}\"."
        )
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn typed(text: &str) -> PathQuestion {
        PathQuestion::new(Purpose::Open, text, None)
    }

    fn looked(folder: &str, names: &[&str]) -> Looked {
        let entry = |name: &&str| Entry {
            name: (*name).to_owned(),
            is_folder: false,
        };
        Looked {
            folder: PathBuf::from(folder),
            entries: Ok(names.iter().map(entry).collect()),
        }
    }

    #[test]
    fn a_path_is_completed_as_soon_as_its_folder_was_looked_into() {
        let mut question = typed("/a/va");
        assert_eq!(question.complete(), Completed::Later);
        assert!(question.is_awaited);
        // News of another folder are none.
        question.looked = Some(looked("/b", &["vanished.ron"]));
        assert_eq!(question.complete(), Completed::Later);
        question.looked = Some(looked("/a", &["van.ron"]));
        assert_eq!(question.complete(), Completed::Done);
        assert!(!question.is_awaited);
        assert_eq!(question.text, "/a/van.ron");
        assert_eq!(question.complete(), Completed::Nothing);
    }

    #[test]
    fn a_relative_path_begins_in_the_folder_of_the_last_file() {
        let base = |text| {
            let base = Some(PathBuf::from("/a"));
            PathQuestion {
                base,
                ..typed(text)
            }
        };
        assert_eq!(base("b/va").folder(), Some(PathBuf::from("/a/b")));
        assert_eq!(base("va").folder(), Some(PathBuf::from("/a")));
        assert_eq!(base("/c/va").folder(), Some(PathBuf::from("/c")));
        let words = base("va").words_of_target();
        assert_eq!(words.as_deref(), Some("that is /a/va"));
        assert_eq!(base("/c/va").words_of_target(), None);
    }

    #[test]
    fn a_problem_is_over_once_the_text_was_completed() {
        let mut question = typed("/a/va");
        question.looked = Some(looked("/a", &["van.ron"]));
        question.problem = Some("there is no such file: /a/va".to_owned());
        assert_eq!(question.complete(), Completed::Done);
        assert_eq!(question.problem, None);
    }

    #[test]
    fn what_is_typed_on_is_not_completed_any_more() {
        let mut question = typed("/a/va");
        question.complete();
        question.follow_typing();
        assert!(!question.is_awaited);
    }

    #[test]
    fn without_a_text_and_in_an_address_there_is_nothing_to_complete() {
        for text in ["", "  ", "file:///a/va"] {
            let mut question = typed(text);
            assert_eq!(question.complete(), Completed::Nothing, "{text:?}");
            assert!(!question.is_awaited);
        }
    }

    #[test]
    fn names_are_offered_for_the_folder_that_is_being_typed_in_only() {
        let mut question = typed("/a/v");
        question.looked = Some(looked("/a", &["van.ron", "vat.ron"]));
        assert_eq!(question.complete(), Completed::Done);
        assert_eq!(question.offered(), ["van.ron", "vat.ron"]);
        question.text = "/a/b/v".to_owned();
        assert!(question.offered().is_empty());
    }
}
