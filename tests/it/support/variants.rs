//! Has every variant of an enum a row in a table of tests?

/// Names the variants of an enum: `$name` tells the one of a value, `$all` lists them.
///
/// The match has no wildcard, so that a new variant does not compile until it is listed, and the
/// list is what the table of tests is then held against.
macro_rules! variants {
    ($all:ident, $name:ident, $Enum:ident { $($Variant:ident),+ $(,)? }) => {
        const $all: &[&str] = &[$(stringify!($Variant)),+];

        fn $name(value: &$Enum) -> &'static str {
            match value {
                $($Enum::$Variant { .. } => stringify!($Variant),)+
            }
        }
    };
}

pub(crate) use variants;

/// Fails unless every name of `all` is among those met.
#[track_caller]
pub(crate) fn assert_all_met(all: &[&str], met: impl IntoIterator<Item = &'static str>) {
    let met: Vec<_> = met.into_iter().collect();
    let missing: Vec<_> = all.iter().filter(|name| !met.contains(name)).collect();
    assert!(missing.is_empty(), "no row for {missing:?}");
}
