//! What a phone puts into a photo does not come out of the handbook: place, name, and the small copy from before it was cut.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on has failed")]

use coquille::handbook::lay_out;
use coquille::proof::proof;
use coquille::render::{Theme, render};
use coquille::source::read;
use image::codecs::{jpeg::JpegEncoder, png::PngEncoder, webp::WebPEncoder};
use image::{ImageEncoder, Rgb, RgbImage};
use std::collections::BTreeMap;

const NAME: &str = "Perdita Featherstonehaugh";

/// A tag of an Exif directory (CIPA DC-008): number, type, how many, and the value or where it stands.
fn tag(number: u16, kind: u16, count: u32, value: [u8; 4]) -> Vec<u8> {
    [&number.to_be_bytes()[..], &kind.to_be_bytes(), &count.to_be_bytes(), &value].concat()
}

fn directory(tags: &[Vec<u8>], next: u32) -> Vec<u8> {
    let count = u16::try_from(tags.len()).unwrap();
    [&count.to_be_bytes()[..], &tags.concat(), &next.to_be_bytes()].concat()
}

/// Exif data with the camera turned (6: the top is on the right), a name, a place and a thumbnail.
fn exif(thumbnail: &[u8]) -> Vec<u8> {
    let (places, artist) = (300_u32, 200_u32);
    let length = |bytes: usize| u32::try_from(bytes).unwrap();
    let first = [
        tag(0x0112, 3, 1, [0, 6, 0, 0]),
        tag(0x013b, 2, length(NAME.len()), artist.to_be_bytes()),
        tag(0x8825, 4, 1, 100_u32.to_be_bytes()),
    ];
    let gps = [tag(0x0001, 2, 2, *b"N\0\0\0"), tag(0x0002, 5, 3, places.to_be_bytes())];
    let small = [tag(0x0201, 4, 1, 400_u32.to_be_bytes()), tag(0x0202, 4, 1, length(thumbnail.len()).to_be_bytes())];
    let mut bytes = b"MM\0\x2a\0\0\0\x08".to_vec();
    let mut put = |at: usize, part: Vec<u8>| {
        bytes.resize(bytes.len().max(at + part.len()), 0);
        bytes[at..at + part.len()].copy_from_slice(&part);
    };
    put(8, directory(&first, 150));
    put(100, directory(&gps, 0));
    put(150, directory(&small, 0));
    put(200, NAME.as_bytes().to_vec());
    put(300, [50_u32, 1, 57, 1, 1234, 100].iter().flat_map(|part| part.to_be_bytes()).collect());
    put(400, thumbnail.to_vec());
    bytes
}

/// A picture of 40 × 20, red on the left, with all that in it.
fn photo(kind: &str) -> Vec<u8> {
    let picture = RgbImage::from_fn(40, 20, |x, _| if x < 20 { Rgb([220, 20, 20]) } else { Rgb([20, 20, 220]) });
    let mut thumbnail = Vec::new();
    JpegEncoder::new(&mut thumbnail).encode_image(&RgbImage::from_pixel(8, 8, Rgb([1, 200, 3]))).unwrap();
    let mut bytes = Vec::new();
    let written = match kind {
        "jpeg" => written(JpegEncoder::new_with_quality(&mut bytes, 95), &picture, &thumbnail),
        "png" => written(PngEncoder::new(&mut bytes), &picture, &thumbnail),
        _ => written(WebPEncoder::new_lossless(&mut bytes), &picture, &thumbnail),
    };
    written.unwrap();
    if kind == "jpeg" {
        // A comment and an XMP packet too, straight behind the first marker.
        let segment = |marker: u8, text: String| {
            let length = u16::try_from(text.len() + 2).unwrap().to_be_bytes();
            [&[0xff, marker][..], &length, text.as_bytes()].concat()
        };
        let more = [segment(0xfe, NAME.to_owned()), segment(0xe1, format!("http://ns.adobe.com/xap/1.0/\0{NAME}"))];
        bytes.splice(2..2, more.concat());
    }
    bytes
}

fn written(mut encoder: impl ImageEncoder, picture: &RgbImage, thumbnail: &[u8]) -> image::ImageResult<()> {
    encoder.set_exif_metadata(exif(thumbnail)).unwrap();
    encoder.write_image(picture, 40, 20, image::ExtendedColorType::Rgb8)
}

fn holds(bytes: &[u8], part: &[u8]) -> usize {
    bytes.windows(part.len()).filter(|window| *window == part).count()
}

fn bound(kind: &str, bytes: &[u8]) -> BTreeMap<String, Vec<u8>> {
    let folder = tempfile::tempdir().unwrap();
    let put = |name: &str, bytes: &[u8]| std::fs::write(folder.path().join(name), bytes).unwrap();
    std::fs::create_dir(folder.path().join("pictures")).unwrap();
    put("handbook.yaml", b"handbook: club\ntitle: A club\nedition: Autumn\nlanguage: en\ncaution: Ask.\nkit: foil\n");
    let job = format!(
        "procedure: polish\ntitle: Polish it\nkit: foil\nfor: Looks.\nhands-on: 5\nsteps: [{{do: Polish it., picture: tip}}]\n\
         pictures: [{{picture: tip, file: pictures/tip.{kind}, alt: The tip.}}]\n"
    );
    put("polish.yaml", job.as_bytes());
    put(&format!("pictures/tip.{kind}"), bytes);
    let read = read(folder.path()).unwrap();
    let proofed = proof(&read);
    assert_eq!(proofed.errors(), 0, "{:?}", proofed.findings);
    render(lay_out(&proofed, &read), &Theme::with(BTreeMap::new()).unwrap()).unwrap()
}

#[test]
fn neither_place_nor_name_nor_thumbnail_of_a_photo_reaches_the_handbook() {
    for kind in ["jpeg", "png", "webp"] {
        let photo = photo(kind);
        assert!(holds(&photo, NAME.as_bytes()) > 0, "the {kind} to begin with has the name in it");
        let files = bound(kind, &photo);
        for (address, bytes) in &files {
            assert_eq!(holds(bytes, NAME.as_bytes()), 0, "{address}");
        }
        let shown = &files[&format!("pictures/tip.{kind}")];
        for secret in [&b"Exif"[..], b"eXIf", b"EXIF", b"ns.adobe.com", &[0, 0, 0, 50, 0, 0, 0, 1]] {
            assert_eq!(holds(shown, secret), 0, "{kind}: {}", String::from_utf8_lossy(secret));
        }
        let starts = usize::from(kind == "jpeg");
        assert_eq!(holds(shown, b"\xff\xd8\xff"), starts, "{kind}: a picture in the picture");
    }
}

#[test]
fn a_photo_is_turned_upright() {
    for kind in ["jpeg", "png", "webp"] {
        let files = bound(kind, &photo(kind));
        let shown = image::load_from_memory(&files[&format!("pictures/tip.{kind}")]).unwrap().into_rgb8();
        assert_eq!(shown.dimensions(), (20, 40), "{kind}");
        // Turned a quarter clockwise, what was on the left is at the top.
        assert!(shown.get_pixel(10, 4)[0] > 150 && shown.get_pixel(10, 36)[2] > 150, "{kind}");
    }
}

#[test]
fn the_same_photo_gives_the_same_bytes() {
    for kind in ["jpeg", "png", "webp"] {
        let photo = photo(kind);
        assert_eq!(bound(kind, &photo), bound(kind, &photo), "{kind}");
    }
}
