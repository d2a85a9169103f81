//! What unsaved work did windows leave that are gone?

use super::lock::Lock;
use super::sweeping::sweep;
use super::{lock_of, now_unix_s};
use crate::app::files;
use crate::project::{Difference, EntryKind, FileSystem, RecoveryCopy, differences};
use std::path::{Path, PathBuf};

/// Unsaved work of a window that is gone.
#[derive(Debug, Clone, PartialEq)]
pub(in crate::app) struct Abandoned {
    /// Where it lies.
    pub(in crate::app) path: PathBuf,
    /// The work.
    pub(in crate::app) copy: RecoveryCopy,
}

/// What is to be told of it.
#[derive(Debug)]
pub(in crate::app) struct Report {
    /// What it is, in a few sentences.
    pub(in crate::app) text: String,
    /// In what it differs from its file, a line each.
    pub(in crate::app) details: Vec<String>,
    /// How it stands to its file.
    pub(in crate::app) standing: Standing,
}

/// How unsaved work stands to its file.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(in crate::app) enum Standing {
    /// The file is as it was when the work began, or there is none.
    Ahead,
    /// Both hold the same.
    Same,
    /// Somebody else has changed the file since, or nobody knows what it held.
    Apart,
    /// The file cannot be read.
    Unreadable,
}

/// Everything that windows left that are gone, the newest first.
pub(in crate::app) fn abandoned(fs: &dyn FileSystem, folder: &Path) -> Vec<Abandoned> {
    sweep(fs, folder);
    let mut found: Vec<Abandoned> = fs
        .names(folder)
        .unwrap_or_default()
        .into_iter()
        .map(|name| folder.join(name))
        .filter(|path| path.extension().is_some_and(|ending| ending == "ron"))
        // A link that somebody put there is none of ours.
        .filter(|path| {
            fs.entry_facts(path)
                .is_ok_and(|f| f.kind == EntryKind::File)
        })
        .filter(|path| !Lock::is_held(fs, &lock_of(path)))
        .filter_map(|path| {
            let copy = RecoveryCopy::read(fs, &path)?;
            Some(Abandoned { path, copy })
        })
        .collect();
    found.sort_by_key(|left| std::cmp::Reverse(left.copy.written_unix_s));
    found
}

impl Abandoned {
    /// What it is, how old it is, and how it stands to its file as that is now.
    pub(in crate::app) fn report(&self, fs: &dyn FileSystem) -> Report {
        let title = self.copy.project.title.as_ref();
        let title = title.map_or_else(
            || "a project without a title".to_owned(),
            |t| format!("\"{t}\""),
        );
        let age = age_text(now_unix_s().saturating_sub(self.copy.written_unix_s));
        let (standing, details) = self.standing(fs);
        let against = match (&self.copy.file, standing) {
            (None, _) => "It was never saved.".to_owned(),
            (Some(file), Standing::Unreadable) => {
                format!("Its file {} cannot be read now:", file.display())
            }
            (Some(file), Standing::Same) => {
                format!("It is the same as its file {} is now.", file.display())
            }
            (Some(file), Standing::Ahead) => format!("Against its file {}:", file.display()),
            (Some(file), Standing::Apart) => format!(
                "Meanwhile somebody else has changed its file {}. Yours is the unsaved work, theirs \
                 is what the file holds now:",
                file.display()
            ),
        };
        Report {
            text: format!("Layshaft ended {age} with unsaved work in {title}. {against}"),
            details,
            standing,
        }
    }

    /// How the work stands to its file, and in what it differs, a line each.
    fn standing(&self, fs: &dyn FileSystem) -> (Standing, Vec<String>) {
        let Some(file) = &self.copy.file else {
            return (Standing::Ahead, Vec::new());
        };
        let opened = match files::open(fs, file) {
            Ok(opened) => opened,
            Err(problem) => return (Standing::Unreadable, vec![problem.to_string()]),
        };
        let found = differences(&opened.project, &self.copy.project);
        if found.is_empty() {
            return (Standing::Same, Vec::new());
        }
        let is_theirs = self.copy.began_from != Some(opened.digest);
        if is_theirs {
            let words = found.iter().map(Difference::words_of_two);
            (Standing::Apart, words.collect())
        } else {
            let words = found.iter().map(Difference::words);
            (Standing::Ahead, words.collect())
        }
    }

    /// Takes the copy and its lock away.
    pub(in crate::app) fn remove(&self, fs: &dyn FileSystem) {
        for path in [self.path.clone(), lock_of(&self.path)] {
            // What is gone already needs no taking away.
            let _ = fs.remove(&path);
        }
    }
}

/// `12 minutes ago`: how long ago something was, in words.
fn age_text(seconds: u64) -> String {
    let (count, unit) = match seconds {
        0..60 => return "less than a minute ago".to_owned(),
        60..3600 => (seconds / 60, "minute"),
        3600..86_400 => (seconds / 3600, "hour"),
        _ => (seconds / 86_400, "day"),
    };
    let plural = if count == 1 { "" } else { "s" };
    format!("{count} {unit}{plural} ago")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ages_are_told_in_words() {
        assert_eq!(age_text(5), "less than a minute ago");
        assert_eq!(age_text(60), "1 minute ago");
        assert_eq!(age_text(7300), "2 hours ago");
        assert_eq!(age_text(86_400 * 3), "3 days ago");
    }

    #[cfg(unix)]
    #[test]
    fn a_copy_that_a_link_leads_to_is_none_of_ours() {
        use crate::project::Disk;
        use crate::project::examples::EXAMPLES;
        let folder = tempfile::tempdir().unwrap();
        let kept = folder.path().join("kept");
        std::fs::create_dir(&kept).unwrap();
        let copy = RecoveryCopy {
            file: None,
            began_from: None,
            written_unix_s: 7,
            project: std::sync::Arc::new(EXAMPLES[0].project().unwrap()),
        };
        copy.write(&Disk, &folder.path().join("1-1.ron")).unwrap();
        copy.write(&Disk, &kept.join("2-2.ron")).unwrap();
        std::os::unix::fs::symlink("../1-1.ron", kept.join("1-1.ron")).unwrap();
        let found = abandoned(&Disk, &kept);
        let paths: Vec<_> = found.iter().map(|left| left.path.clone()).collect();
        assert_eq!(paths, [kept.join("2-2.ron")]);
    }
}
