//! How does a path go on that is being typed?
//!
//! As shells do it: one name that begins so is completed, several to what they have in common. Text and
//! names in, text and names out; who looks into folders is somebody else.

use std::path::is_separator;

/// Something in a folder.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Entry {
    /// What it is called.
    pub(super) name: String,
    /// Whether it is a folder.
    pub(super) is_folder: bool,
}

/// How a name goes on.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(super) struct Completion {
    /// The beginning that was typed, as far as it can be completed.
    pub(super) beginning: String,
    /// All names that begin so, in their order; folders end in a separator.
    pub(super) names: Vec<String>,
}

/// A typed path up to its last separator, and the beginning of a name behind it.
pub(super) fn parted(text: &str) -> (&str, &str) {
    let at = text.rfind(is_separator).map_or(0, |at| at + 1);
    text.split_at(at)
}

/// How the beginning of a name goes on in a folder, where files of those endings are wanted.
///
/// Folders and such files come first; others only where none of these begins so. Upper and lower case
/// are one only where nothing begins as typed. What is hidden shows itself once a dot was typed.
pub(super) fn completed(beginning: &str, entries: &[Entry], endings: &[&str]) -> Completion {
    let seen: Vec<&Entry> = entries
        .iter()
        .filter(|entry| beginning.starts_with('.') || !entry.name.starts_with('.'))
        .filter(|entry| !entry.name.chars().any(char::is_control))
        .collect();
    let is_wanted = |entry: &Entry| {
        let mut endings = endings.iter();
        entry.is_folder || endings.any(|ending| has_ending(&entry.name, ending))
    };
    let begins = |entry: &Entry| entry.name.starts_with(beginning);
    let begins_somehow = |entry: &Entry| {
        let [name, beginning] = [&entry.name, beginning].map(str::to_lowercase);
        name.starts_with(&beginning)
    };
    let matching = |begins: &dyn Fn(&Entry) -> bool| {
        let all = || seen.iter().copied().filter(|entry| begins(entry));
        let wanted: Vec<&Entry> = all().filter(|entry| is_wanted(entry)).collect();
        if wanted.is_empty() {
            all().collect()
        } else {
            wanted
        }
    };
    let mut found = matching(&begins);
    if found.is_empty() {
        found = matching(&begins_somehow);
    }
    found.sort_by_cached_key(|entry| (entry.name.to_lowercase(), entry.name.clone()));
    let names: Vec<String> = found.into_iter().map(spelled).collect();
    let common = common_beginning(&names);
    let is_further = common.chars().count() >= beginning.chars().count();
    Completion {
        beginning: if is_further { common } else { beginning }.to_owned(),
        names,
    }
}

/// The one file of that ending that a name is only the beginning of, where there is exactly one.
pub(super) fn only_longer<'a>(
    beginning: &str,
    mut names: impl Iterator<Item = &'a str>,
    ending: &str,
) -> Option<&'a str> {
    let is_longer = |name: &&str| {
        name.len() > beginning.len() && name.starts_with(beginning) && has_ending(name, ending)
    };
    let only = names.find(is_longer)?;
    names.find(is_longer).is_none().then_some(only)
}

fn has_ending(name: &str, ending: &str) -> bool {
    let found = name.rsplit_once('.').map(|(_, ending)| ending);
    found.is_some_and(|found| found.eq_ignore_ascii_case(ending))
}

fn spelled(entry: &Entry) -> String {
    let end = if entry.is_folder { "/" } else { "" };
    format!("{}{end}", entry.name)
}

/// What all names begin with.
fn common_beginning(names: &[String]) -> &str {
    let Some((first, others)) = names.split_first() else {
        return "";
    };
    let mut common = first.as_str();
    for other in others {
        let both = common.chars().zip(other.chars());
        let alike = both.take_while(|(a, b)| a == b);
        let end: usize = alike.map(|(c, _)| c.len_utf8()).sum();
        common = &common[..end];
    }
    common
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn entry(name: &str) -> Entry {
        let is_folder = name.ends_with('/');
        let name = name.trim_end_matches('/').to_owned();
        Entry { name, is_folder }
    }

    fn entries(names: &[&str]) -> Vec<Entry> {
        names.iter().map(|name| entry(name)).collect()
    }

    /// What a beginning is completed to, and the names that begin so.
    fn of(beginning: &str, names: &[&str]) -> (String, Vec<String>) {
        let completion = completed(beginning, &entries(names), &["ron"]);
        (completion.beginning, completion.names)
    }

    #[test]
    fn a_path_is_parted_at_its_last_separator() {
        assert_eq!(parted("/home/a/va"), ("/home/a/", "va"));
        assert_eq!(parted("~/"), ("~/", ""));
        assert_eq!(parted("va"), ("", "va"));
        assert_eq!(parted(""), ("", ""));
    }

    #[test]
    fn one_name_is_completed_and_a_folder_gets_its_separator() {
        let names = ["van.ron", "boxes/", "truck.ron"];
        assert_eq!(of("v", &names).0, "van.ron");
        assert_eq!(of("bo", &names).0, "boxes/");
        assert_eq!(of("x", &names), ("x".to_owned(), vec![]));
    }

    #[test]
    fn several_names_are_completed_to_what_they_have_in_common() {
        let (beginning, names) = of("v", &["van-2.ron", "van.ron", "vans/", "truck.ron"]);
        assert_eq!(beginning, "van");
        assert_eq!(names, ["van-2.ron", "van.ron", "vans/"]);
        assert_eq!(of("", &["a.ron", "b.ron"]).0, "");
        assert_eq!(of("é", &["étape.ron", "été.ron"]).0, "ét");
    }

    #[test]
    fn other_files_are_offered_only_where_nothing_else_begins_so() {
        let names = ["van.ron", "van.png", "notes.txt"];
        assert_eq!(of("van", &names).0, "van.ron");
        assert_eq!(of("no", &names).0, "notes.txt");
    }

    #[test]
    fn what_is_hidden_is_offered_once_a_dot_was_typed() {
        let names = [".old.ron", "van.ron"];
        assert_eq!(of("", &names).0, "van.ron");
        assert_eq!(of(".", &names).0, ".old.ron");
    }

    #[test]
    fn case_counts_unless_nothing_begins_as_typed() {
        let names = ["Van.ron", "van.ron"];
        assert_eq!(of("V", &names).0, "Van.ron");
        assert_eq!(
            of("VA", &names),
            ("VA".to_owned(), names.map(str::to_owned).to_vec())
        );
        assert_eq!(of("tr", &["Truck.ron"]).0, "Truck.ron");
    }

    #[test]
    fn a_name_that_is_the_beginning_of_exactly_one_file_is_known() {
        let longer = |names: &[&'static str]| only_longer("va", names.iter().copied(), "ron");
        assert_eq!(
            longer(&["van.ron", "truck.ron", "vault.txt"]),
            Some("van.ron")
        );
        assert_eq!(longer(&["van.ron", "vans.ron"]), None);
        assert_eq!(longer(&["truck.ron"]), None);
        assert_eq!(only_longer("van.ron", ["van.ron"].into_iter(), "ron"), None);
    }

    proptest! {
        #[test]
        fn what_was_typed_is_never_lost_and_completing_twice_is_completing_once(
            beginning in "[.aAä]{0,3}",
            names in proptest::collection::vec("[.aAäb]{1,5}(/|\\.ron|\\.txt)?", 0..8),
        ) {
            let names: Vec<&str> = names.iter().map(String::as_str).collect();
            let (once, offered) = of(&beginning, &names);
            let [longer, typed] = [&once, &beginning].map(|text| text.to_lowercase());
            prop_assert!(longer.starts_with(&typed));
            for name in &offered {
                prop_assert!(name.to_lowercase().starts_with(&longer), "{} {}", name, once);
            }
            if !once.ends_with('/') {
                prop_assert_eq!(of(&once, &names).0, once);
            }
        }
    }
}
