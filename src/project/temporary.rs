//! What is a file called that is not finished, and whose is it?

use std::ffi::OsStr;
use std::sync::atomic::{AtomicU64, Ordering};

use super::digest::digest;

/// The end of every temporary name; see [`temporary_name`].
const TEMPORARY_SUFFIX: &str = ".layshaft-tmp";

/// How much of the target's name stands in the temporary name, in bytes.
///
/// Names may have 255 bytes (143 on some encrypted disks), and the rest needs up to 55.
const LONGEST_NAME_PART: usize = 80;

/// Who made a temporary file.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Origin {
    /// The mark of the machine; none where it had none, and in names of older programs.
    machine: Option<String>,
    /// The process on that machine.
    pub(super) process_id: u32,
}

impl Origin {
    /// Whether it was made on this machine, which is certain only where machines are told apart.
    pub(super) fn is(&self, machine: Option<&str>) -> bool {
        self.machine.is_some() && self.machine == machine.map(mark)
    }
}

/// A name for a file beside the file `name`, which this process has not used before:
/// `.{name}-{mark of the machine}-{process id}-{n}.layshaft-tmp`, a long name cut short; without the
/// mark where nothing tells this machine from others.
pub(super) fn temporary_name(name: &OsStr, machine: Option<&str>) -> String {
    static COUNT: AtomicU64 = AtomicU64::new(0);
    let n = COUNT.fetch_add(1, Ordering::Relaxed);
    let name = name.to_string_lossy();
    let part = &name[..name.floor_char_boundary(LONGEST_NAME_PART)];
    let mark = machine.map_or_else(String::new, |machine| format!("-{}", mark(machine)));
    format!(".{part}{mark}-{}-{n}{TEMPORARY_SUFFIX}", std::process::id())
}

/// Who made the file, where its name is of exactly the form of [`temporary_name`].
pub(super) fn origin(name: &OsStr) -> Option<Origin> {
    let inner = name
        .to_str()?
        .strip_prefix('.')?
        .strip_suffix(TEMPORARY_SUFFIX)?;
    let (rest, n) = inner.rsplit_once('-')?;
    let (rest, process_id) = rest.rsplit_once('-')?;
    // Numbers as we write them: no sign, no leading zero.
    let n_is_ours = n.parse::<u64>().is_ok_and(|number| number.to_string() == n);
    let process_id = process_id
        .parse::<u32>()
        .ok()
        .filter(|id| id.to_string() == process_id)?;
    let (part, machine) = match rest.rsplit_once('-') {
        Some((part, mark)) if is_mark(mark) => (part, Some(mark.to_owned())),
        _ => (rest, None),
    };
    (n_is_ours && !part.is_empty()).then_some(Origin {
        machine,
        process_id,
    })
}

/// The eight digits that stand for a machine in a name.
fn mark(machine: &str) -> String {
    format!("{:08x}", digest(machine.as_bytes()) >> 32)
}

fn is_mark(text: &str) -> bool {
    text.len() == 8 && text.bytes().all(|b| matches!(b, b'0'..=b'9' | b'a'..=b'f'))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn origin_of(name: &str) -> Option<Origin> {
        origin(OsStr::new(name))
    }

    #[test]
    fn a_temporary_name_tells_machine_and_process_and_is_never_used_twice() {
        for name in [
            "van.ron",
            ".hidden",
            "a-b-3",
            "van-0123abcd",
            "коробка",
            "🚚.ron",
            "no extension",
        ] {
            let first = temporary_name(OsStr::new(name), Some("workshop"));
            assert!(first.starts_with(&format!(".{name}-")), "{first}");
            let origin = origin_of(&first).unwrap();
            assert_eq!(origin.process_id, std::process::id(), "{first}");
            assert!(origin.is(Some("workshop")), "{first}");
            assert!(!origin.is(Some("office")) && !origin.is(None), "{first}");
            assert_ne!(first, temporary_name(OsStr::new(name), Some("workshop")));
        }
    }

    #[test]
    fn without_a_mark_nobody_is_certain_whose_it_is() {
        let name = temporary_name(OsStr::new("van.ron"), None);
        let origin = origin_of(&name).unwrap();
        assert_eq!(origin.process_id, std::process::id());
        assert!(!origin.is(None) && !origin.is(Some("workshop")));
    }

    #[test]
    fn the_temporary_name_of_a_name_of_255_bytes_is_shorter_than_143() {
        for name in ["a".repeat(255), "ё".repeat(127), "🚚".repeat(63)] {
            let temporary = temporary_name(OsStr::new(&name), Some("workshop"));
            // As if process id and count had all the digits they can have.
            let most = temporary.len() + 10 + 20 - 2;
            assert!(most < 143, "{temporary}");
            assert!(origin_of(&temporary).is_some());
        }
    }

    #[test]
    fn a_name_of_another_form_is_not_ours() {
        let others = [
            "van.ron",
            ".van.ron-12-0.tmp",
            "van.ron-12-0.layshaft-tmp",
            ".van.ron-12.layshaft-tmp",
            ".van.ron-12-0.layshaft-tmp.ron",
            ".-12-0.layshaft-tmp",
            ".-0123abcd-12-0.layshaft-tmp",
            ".van.ron-12-x.layshaft-tmp",
            ".van.ron-12-.layshaft-tmp",
            ".van.ron-+12-0.layshaft-tmp",
            ".van.ron-012-0.layshaft-tmp",
            ".van.ron-12-00.layshaft-tmp",
            ".van.ron-4294967296-0.layshaft-tmp",
            ".layshaft-tmp",
            "",
        ];
        for name in others {
            assert_eq!(origin_of(name), None, "{name}");
        }
        let of_older_program = origin_of(".van.ron-12-0.layshaft-tmp").unwrap();
        assert_eq!(of_older_program.process_id, 12);
        assert_eq!(of_older_program.machine, None);
    }
}
