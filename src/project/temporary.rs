//! What is a file called that is not finished, and whose is it?

use std::ffi::OsStr;
use std::sync::atomic::{AtomicU64, Ordering};

/// The end of every temporary name; see [`temporary_name`].
const TEMPORARY_SUFFIX: &str = ".layshaft-tmp";

/// How much of the target's name stands in the temporary name, in bytes.
///
/// Names may have 255 bytes (143 on some encrypted disks), and the rest needs up to 46.
const LONGEST_NAME_PART: usize = 90;

/// A name for a file beside the file `name`, which this process has not used before:
/// `.{name}-{process id}-{n}.layshaft-tmp`, a long name cut short.
pub(super) fn temporary_name(name: &OsStr) -> String {
    static COUNT: AtomicU64 = AtomicU64::new(0);
    let n = COUNT.fetch_add(1, Ordering::Relaxed);
    let name = name.to_string_lossy();
    let part = &name[..name.floor_char_boundary(LONGEST_NAME_PART)];
    format!(".{part}-{}-{n}{TEMPORARY_SUFFIX}", std::process::id())
}

/// The process id in a name of exactly the form of [`temporary_name`].
pub(super) fn process_id_in(name: &str) -> Option<u32> {
    let inner = name.strip_prefix('.')?.strip_suffix(TEMPORARY_SUFFIX)?;
    let (rest, n) = inner.rsplit_once('-')?;
    let (part, process_id) = rest.rsplit_once('-')?;
    // Numbers as we write them: no sign, no leading zero.
    let n_is_ours = n.parse::<u64>().is_ok_and(|number| number.to_string() == n);
    let id = process_id
        .parse::<u32>()
        .ok()
        .filter(|id| id.to_string() == process_id)?;
    (n_is_ours && !part.is_empty()).then_some(id)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_temporary_name_tells_its_process_and_is_never_used_twice() {
        for name in [
            "van.ron",
            ".hidden",
            "a-b-3",
            "коробка",
            "🚚.ron",
            "no extension",
        ] {
            let first = temporary_name(OsStr::new(name));
            assert!(first.starts_with(&format!(".{name}-")), "{first}");
            assert_eq!(process_id_in(&first), Some(std::process::id()), "{first}");
            assert_ne!(first, temporary_name(OsStr::new(name)));
        }
    }

    #[test]
    fn the_temporary_name_of_a_name_of_255_bytes_is_shorter_than_143() {
        for name in ["a".repeat(255), "ё".repeat(127), "🚚".repeat(63)] {
            let temporary = temporary_name(OsStr::new(&name));
            assert!(temporary.len() < 143, "{temporary}");
            assert_eq!(process_id_in(&temporary), Some(std::process::id()));
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
            assert_eq!(process_id_in(name), None, "{name}");
        }
        assert_eq!(process_id_in(".van.ron-12-0.layshaft-tmp"), Some(12));
    }
}
