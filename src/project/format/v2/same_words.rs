//! Words of a file that are those of the domain, both ways.

/// Both ways between a word of the file and one of the domain that has the same variants.
macro_rules! same_words {
    ($Entry:ident, $Domain:ident, $($Word:ident),+) => {
        impl From<$Entry> for $Domain {
            fn from(word: $Entry) -> Self {
                match word {
                    $($Entry::$Word => Self::$Word,)+
                }
            }
        }

        impl From<$Domain> for $Entry {
            fn from(word: $Domain) -> Self {
                match word {
                    $($Domain::$Word => Self::$Word,)+
                }
            }
        }
    };
}

pub(super) use same_words;
