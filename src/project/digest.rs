//! Which short number stands for these bytes, today and in every later version of the program?

/// The 64-bit FNV-1a hash of `bytes`.
///
/// It tells contents apart that differ by accident; against somebody who looks for two of the same
/// digest it is no help. Unlike the standard library's hash it is specified: what one version of the
/// program wrote, every other reads.
///
/// # Source
/// Fowler, Noll, Vo and Eastlake, "The FNV Non-Cryptographic Hash Algorithm", 64-bit FNV-1a.
pub(crate) fn digest(bytes: &[u8]) -> u64 {
    const OFFSET_BASIS: u64 = 0xcbf2_9ce4_8422_2325;
    const PRIME: u64 = 0x0100_0000_01b3;
    bytes.iter().fold(OFFSET_BASIS, |hash, &byte| {
        (hash ^ u64::from(byte)).wrapping_mul(PRIME)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// From the test vectors of the same source.
    #[test]
    fn the_published_digests_come_out() {
        for (text, expected) in [
            ("", 0xcbf2_9ce4_8422_2325),
            ("a", 0xaf63_dc4c_8601_ec8c),
            ("b", 0xaf63_df4c_8601_f1a5),
            ("foobar", 0x8594_4171_f739_67e8),
        ] {
            assert_eq!(digest(text.as_bytes()), expected, "{text}");
        }
    }
}
