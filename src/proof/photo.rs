//! Pictures made fit to be shown: turned upright, scaled, and stripped of everything but the picture itself.
//!
//! In: the bytes of a jpeg, png or webp. Out: bytes of the same kind, the same on every machine; or why there is no showing them.
//! A phone's photo tells where and when it was taken and by whom, and holds a small copy of itself from before it was cut: what goes out
//! is written anew from the dots alone, so none of it can. The colour profile goes too.
//! Same bytes: decoding without the instructions that differ by processor, scaling by sums and products only.

use image::codecs::jpeg::JpegEncoder;
use image::codecs::png::PngEncoder;
use image::codecs::webp::{WebPDecoder, WebPEncoder};
use image::imageops::FilterType;
use image::metadata::Orientation;
use image::{DynamicImage, ImageDecoder, ImageFormat, ImageReader, Limits, RgbImage};
use std::io::Cursor;
use zune_core::bytestream::ZCursor;
use zune_core::colorspace::ColorSpace;
use zune_core::options::DecoderOptions;
use zune_jpeg::JpegDecoder;

/// Longest side of a picture that is shown, in pixels.
pub const LONGEST: u32 = 1600;
/// Longest side of a picture that is taken, in pixels.
const LONGEST_TAKEN: u32 = 20_000;
/// Most pixels of a picture that is taken: what a phone of today makes fits.
const MOST_PIXELS: u64 = 120_000_000;
/// How good a jpeg is written, of 100.
const QUALITY: u8 = 85;

/// Why a picture cannot be shown.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Unfit {
    /// It says that it is so wide and high.
    Vast(u32, u32),
    /// Its bytes are of another kind than its name says.
    Other(&'static str),
    /// It cannot be made out.
    Broken,
}

/// A picture fit to be shown. `kind` is what its name says: `jpeg`, `png` or `webp`.
///
/// # Errors
/// Why it cannot be shown. Its size is known before any of it is decoded.
pub fn fit(bytes: &[u8], kind: &str) -> Result<Vec<u8>, Unfit> {
    let found = kind_of(bytes).ok_or(Unfit::Broken)?;
    if found != kind {
        return Err(Unfit::Other(found));
    }
    let (width, height) = dimensions(bytes, kind).ok_or(Unfit::Broken)?;
    if width.max(height) > LONGEST_TAKEN || u64::from(width) * u64::from(height) > MOST_PIXELS {
        return Err(Unfit::Vast(width, height));
    }
    let (mut picture, turn) = match kind {
        "jpeg" => jpeg(bytes),
        "png" => other(bytes, ImageFormat::Png),
        _ => webp(bytes),
    }
    .ok_or(Unfit::Broken)?;
    picture.apply_orientation(turn);
    written(&scaled(picture), kind).ok_or(Unfit::Broken)
}

/// The kind of a picture by its first bytes, `heic` among them.
fn kind_of(bytes: &[u8]) -> Option<&'static str> {
    let brand = bytes.get(4..12);
    match bytes {
        [0xff, 0xd8, 0xff, ..] => Some("jpeg"),
        [0x89, b'P', b'N', b'G', ..] => Some("png"),
        [b'R', b'I', b'F', b'F', ..] if bytes.get(8..12) == Some(b"WEBP") => Some("webp"),
        [b'G', b'I', b'F', b'8', ..] => Some("gif"),
        _ => brand.filter(|brand| brand.starts_with(b"ftyp")).map(|_| "heic"),
    }
}

fn format_of(kind: &str) -> ImageFormat {
    match kind {
        "jpeg" => ImageFormat::Jpeg,
        "png" => ImageFormat::Png,
        _ => ImageFormat::WebP,
    }
}

/// Width and height as the head of the file says.
fn dimensions(bytes: &[u8], kind: &str) -> Option<(u32, u32)> {
    ImageReader::with_format(Cursor::new(bytes), format_of(kind)).into_dimensions().ok()
}

fn jpeg(bytes: &[u8]) -> Option<(DynamicImage, Orientation)> {
    if !is_whole_jpeg(bytes) {
        return None;
    }
    let options = DecoderOptions::new_safe()
        .set_use_unsafe(false)
        .set_max_width(LONGEST_TAKEN as usize)
        .set_max_height(LONGEST_TAKEN as usize)
        .jpeg_set_out_colorspace(ColorSpace::RGB);
    let mut decoder = JpegDecoder::new_with_options(ZCursor::new(bytes), options);
    let dots = decoder.decode().ok()?;
    let info = decoder.info()?;
    let turn = decoder.exif().and_then(|exif| Orientation::from_exif_chunk(exif));
    let picture = RgbImage::from_raw(u32::from(info.width), u32::from(info.height), dots)?;
    Some((DynamicImage::ImageRgb8(picture), turn.unwrap_or(Orientation::NoTransforms)))
}

/// Whether the picture's data comes to its end. A decoder fills what was cut off with grey. The small copy that a camera puts into the head
/// has an end of its own, so the head is passed over segment by segment (ITU-T T.81, B.1.1.4).
fn is_whole_jpeg(bytes: &[u8]) -> bool {
    let mut rest = bytes.get(2..).unwrap_or_default();
    loop {
        match rest {
            [0xff, 0xda, data @ ..] => return data.windows(2).any(|pair| pair == [0xff, 0xd9]),
            [0xff, 0xff, ..] => rest = &rest[1..],
            [0xff, _, high, low, ..] => {
                let length = usize::from(u16::from_be_bytes([*high, *low]));
                rest = rest.get(2 + length..).unwrap_or_default();
            }
            _ => return false,
        }
    }
}

fn other(bytes: &[u8], format: ImageFormat) -> Option<(DynamicImage, Orientation)> {
    let mut reader = ImageReader::with_format(Cursor::new(bytes), format);
    reader.limits(limits());
    let mut decoder = reader.into_decoder().ok()?;
    let turn = decoder.orientation().unwrap_or(Orientation::NoTransforms);
    Some((eight_bits(DynamicImage::from_decoder(decoder).ok()?), turn))
}

fn webp(bytes: &[u8]) -> Option<(DynamicImage, Orientation)> {
    let mut decoder = WebPDecoder::new(Cursor::new(bytes)).ok()?;
    decoder.set_limits(limits()).ok()?;
    let turn = decoder.orientation().unwrap_or(Orientation::NoTransforms);
    Some((eight_bits(DynamicImage::from_decoder(decoder).ok()?), turn))
}

fn limits() -> Limits {
    let mut limits = Limits::default();
    limits.max_image_width = Some(LONGEST_TAKEN);
    limits.max_image_height = Some(LONGEST_TAKEN);
    limits.max_alloc = Some(MOST_PIXELS * 8);
    limits
}

/// Eight bits a colour are what a page shows.
fn eight_bits(picture: DynamicImage) -> DynamicImage {
    match picture.color().has_alpha() {
        true => DynamicImage::ImageRgba8(picture.into_rgba8()),
        false => DynamicImage::ImageRgb8(picture.into_rgb8()),
    }
}

/// The triangle filter needs no function that differs by system.
fn scaled(picture: DynamicImage) -> DynamicImage {
    match picture.width().max(picture.height()) > LONGEST {
        true => picture.resize(LONGEST, LONGEST, FilterType::Triangle),
        false => picture,
    }
}

fn written(picture: &DynamicImage, kind: &str) -> Option<Vec<u8>> {
    let mut bytes = Vec::new();
    let done = match kind {
        "jpeg" => picture.write_with_encoder(JpegEncoder::new_with_quality(&mut bytes, QUALITY)),
        "png" => picture.write_with_encoder(PngEncoder::new(&mut bytes)),
        _ => picture.write_with_encoder(WebPEncoder::new_lossless(&mut bytes)),
    };
    done.ok().map(|()| bytes)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_declared_size_is_looked_at_before_anything_is_decoded() {
        // A PNG's head alone: 50,000 × 50,000.
        let mut head = b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR".to_vec();
        let body = [&50_000_u32.to_be_bytes()[..], &50_000_u32.to_be_bytes()[..], &[8, 2, 0, 0, 0]].concat();
        let mut summed = b"IHDR".to_vec();
        summed.extend(&body);
        head.extend(&body);
        head.extend(crc(&summed).to_be_bytes());
        head.extend(b"\0\0\0\0IDAT\x35\xaf\x06\x1e");
        assert_eq!(fit(&head, "png"), Err(Unfit::Vast(50_000, 50_000)));
    }

    /// The checksum of a PNG's chunk (ISO/IEC 15948, annex D).
    fn crc(bytes: &[u8]) -> u32 {
        !bytes.iter().fold(u32::MAX, |sum, byte| {
            (0..8).fold(sum ^ u32::from(*byte), |sum, _| if sum & 1 == 1 { 0xedb8_8320 ^ (sum >> 1) } else { sum >> 1 })
        })
    }

    #[test]
    fn the_name_must_say_what_the_bytes_are() {
        assert_eq!(fit(b"\0\0\0\x18ftypheic....", "jpeg"), Err(Unfit::Other("heic")));
        assert_eq!(fit(b"\x89PNG\r\n\x1a\n", "jpeg"), Err(Unfit::Other("png")));
        assert_eq!(fit(b"\xff\xd8\xff\xe0", "jpeg"), Err(Unfit::Broken));
        assert_eq!(fit(b"hello", "png"), Err(Unfit::Broken));
    }

    #[test]
    fn a_large_picture_becomes_smaller_and_a_small_one_stays() {
        let size = |width, height| {
            let picture = DynamicImage::ImageRgb8(RgbImage::from_pixel(width, height, image::Rgb([120, 60, 30])));
            let bytes = written(&picture, "png").and_then(|bytes| fit(&bytes, "png").ok()).expect("a picture");
            dimensions(&bytes, "png")
        };
        assert_eq!(size(2000, 1000), Some((1600, 800)));
        assert_eq!(size(300, 400), Some((300, 400)));
    }
}
