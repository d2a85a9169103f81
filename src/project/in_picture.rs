//! A project's text in a picture: where in a PNG it stands, and how it is found again.
//!
//! It is international text (an iTXt chunk of the PNG specification, third edition, 11.3.3.4) under a
//! keyword of our own, before the pixels. Only chunks are looked at: no pixel is ever unpacked.

use png::text_metadata::ITXtChunk;
use png::{DecodeOptions, Decoded, StreamingDecoder, chunk};

/// The keyword of the text in the picture.
pub const PICTURE_KEYWORD: &str = "Layshaft project";

/// The size of the largest project text that is taken out of a picture, in bytes: 1 MB of
/// 1024 × 1024 bytes.
///
/// The longest project with the longest note has less than a tenth of it.
pub const LARGEST_TEXT_BYTES: usize = 1024 * 1024;

/// The bytes that every PNG begins with.
pub(super) const SIGNATURE: &[u8; 8] = b"\x89PNG\r\n\x1a\n";

/// Why no project comes out of a picture.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum PictureError {
    /// A whole picture without our text.
    #[error("this picture holds no Layshaft project; a host that repacks pictures takes it out")]
    NoProject,
    /// It cannot be read to its end, or what its texts hold does not agree with their checksums.
    #[error(
        "this picture is damaged or cut off, and no Layshaft project is found in it; fetch it anew"
    )]
    Damaged,
    /// A picture that is none of those this program makes.
    #[error("only a PNG that this program made holds a project, and this picture is another kind")]
    OtherKind,
    /// Our text cannot be unpacked, or is no project by its size alone.
    #[error("the project in this picture is damaged, or larger than 1 MB, which no project is")]
    Unpackable,
}

/// Whether these bytes begin as those of a PNG do.
pub(super) fn is_picture(bytes: &[u8]) -> bool {
    bytes.starts_with(SIGNATURE)
}

/// The text of the project that a PNG holds, as long as [`LARGEST_TEXT_BYTES`] at most.
///
/// A picture that is damaged behind the text still gives it.
///
/// # Errors
/// When there is none, or it cannot be had.
pub fn text_in_picture(bytes: &[u8]) -> Result<String, PictureError> {
    let mut options = DecodeOptions::default();
    // A colour profile is packed, may unpack to any size, and is of no use here.
    options.set_ignore_iccp_chunk(true);
    let mut decoder = StreamingDecoder::new_with_options(options);
    let mut rest = bytes;
    let mut is_text_damaged = false;
    while !rest.is_empty() {
        // What cannot be read tells nothing that is of use to whoever has the picture.
        let Ok((read, decoded)) = decoder.update(rest, None) else {
            return Err(PictureError::Damaged);
        };
        rest = &rest[read..];
        match decoded {
            Decoded::ChunkComplete(chunk::iTXt) => {
                let texts = decoder.info().map(|info| &info.utf8_text);
                let newest = texts.and_then(|texts| texts.last());
                if let Some(ours) = newest.filter(|text| text.keyword == PICTURE_KEYWORD) {
                    return unpacked(ours);
                }
            }
            Decoded::BadAncillaryChunk(chunk::iTXt) => is_text_damaged = true,
            Decoded::ChunkComplete(chunk::IEND) if is_text_damaged => break,
            Decoded::ChunkComplete(chunk::IEND) => return Err(PictureError::NoProject),
            _ => {}
        }
    }
    Err(PictureError::Damaged)
}

/// The text of a chunk, which may be packed; no more of it is unpacked than a project can have.
fn unpacked(chunk: &ITXtChunk) -> Result<String, PictureError> {
    let mut chunk = chunk.clone();
    let text = chunk
        .decompress_text_with_limit(LARGEST_TEXT_BYTES)
        .and_then(|()| chunk.get_text());
    text.ok()
        .filter(|text| text.len() <= LARGEST_TEXT_BYTES)
        .ok_or(PictureError::Unpackable)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    /// A picture of one pixel with these texts, packed or not, before or behind the pixel.
    fn picture(texts: &[ITXtChunk], are_behind: bool) -> Vec<u8> {
        let mut bytes = Vec::new();
        let mut encoder = png::Encoder::new(&mut bytes, 1, 1);
        encoder.set_color(png::ColorType::Grayscale);
        let mut writer = encoder.write_header().unwrap();
        let write = |writer: &mut png::Writer<_>| {
            for text in texts {
                writer.write_text_chunk(text).unwrap();
            }
        };
        if !are_behind {
            write(&mut writer);
        }
        writer.write_image_data(&[7]).unwrap();
        if are_behind {
            write(&mut writer);
        }
        writer.finish().unwrap();
        bytes
    }

    fn ours(text: &str, is_packed: bool) -> ITXtChunk {
        let mut chunk = ITXtChunk::new(PICTURE_KEYWORD, text);
        chunk.compressed = is_packed;
        chunk
    }

    fn foreign() -> ITXtChunk {
        ITXtChunk::new("Comment", "(format: 1)")
    }

    #[test]
    fn the_text_is_found_wherever_it_stands_packed_or_not() {
        for is_packed in [false, true] {
            for are_behind in [false, true] {
                let texts = [foreign(), ours("(format: 1, é)", is_packed), foreign()];
                let found = text_in_picture(&picture(&texts, are_behind));
                assert_eq!(found.unwrap(), "(format: 1, é)");
            }
        }
    }

    #[test]
    fn a_foreign_picture_holds_none() {
        for texts in [&[][..], &[foreign()]] {
            let found = text_in_picture(&picture(texts, false));
            assert_eq!(found, Err(PictureError::NoProject));
        }
    }

    #[test]
    fn no_more_is_unpacked_than_a_project_can_have() {
        for is_packed in [false, true] {
            let largest = "x".repeat(LARGEST_TEXT_BYTES);
            let found = text_in_picture(&picture(&[ours(&largest, is_packed)], false));
            assert_eq!(found.unwrap().len(), LARGEST_TEXT_BYTES);
            let larger = largest + "x";
            let found = text_in_picture(&picture(&[ours(&larger, is_packed)], false));
            assert_eq!(found, Err(PictureError::Unpackable));
        }
    }

    #[test]
    fn a_picture_cut_off_before_the_text_is_told_from_one_that_is_cut_off_behind_it() {
        let bytes = picture(&[ours("text", false)], false);
        let end = bytes.windows(4).position(|four| four == b"text").unwrap() + 8;
        for length in 0..bytes.len() {
            let found = text_in_picture(&bytes[..length]);
            if length < end {
                assert_eq!(found, Err(PictureError::Damaged), "{length}");
            } else {
                assert_eq!(found.as_deref(), Ok("text"), "{length}");
            }
        }
    }

    proptest! {
        #[test]
        fn a_damaged_byte_gives_the_text_as_it_was_or_none(
            at in any::<prop::sample::Index>(),
            flipped in 1_u8..,
            is_packed in any::<bool>(),
            are_behind in any::<bool>(),
        ) {
            let mut bytes = picture(&[foreign(), ours("(format: 1)", is_packed)], are_behind);
            let at = at.index(bytes.len());
            bytes[at] ^= flipped;
            if let Ok(text) = text_in_picture(&bytes) {
                prop_assert_eq!(text, "(format: 1)");
            }
        }

        #[test]
        fn no_bytes_lead_it_astray(bytes in prop::collection::vec(any::<u8>(), 0..200)) {
            let _ = text_in_picture(&[&SIGNATURE[..], &bytes].concat());
            prop_assert!(text_in_picture(&bytes).is_err());
        }
    }
}
