//! Pictures inside a file: each once, as a data URI, and referred to from every page that shows it.
//!
//! In: a picture's address and bytes. Out: a symbol to stand once in the file, and its size. A picture keeps out of the page's reach
//! as it does in an `img`: an image inside a drawing runs no script and fetches nothing (SVG 2, "secure static mode").

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use html5gum::{Token, Tokenizer};

/// The media type of a picture, by its ending.
pub fn media_type(address: &str) -> &'static str {
    let ending = address.rsplit('.').next().unwrap_or("").to_ascii_lowercase();
    match ending.as_str() {
        "svg" => "image/svg+xml",
        "png" => "image/png",
        "jpg" | "jpeg" => "image/jpeg",
        "webp" => "image/webp",
        "gif" => "image/gif",
        _ => "application/octet-stream",
    }
}

/// A picture as a data URI.
pub fn data_uri(address: &str, bytes: &[u8]) -> String {
    format!("data:{};base64,{}", media_type(address), STANDARD.encode(bytes))
}

/// Width and height, in pixels or in the drawing's own units; nothing when they cannot be made out.
pub fn size(address: &str, bytes: &[u8]) -> Option<(f64, f64)> {
    if media_type(address) == "image/svg+xml" {
        return drawn_size(&String::from_utf8_lossy(bytes));
    }
    let size = imagesize::blob_size(bytes).ok()?;
    Some((size.width as f64, size.height as f64))
}

/// A drawing's view box, or else its width and height.
fn drawn_size(svg: &str) -> Option<(f64, f64)> {
    let tag = Tokenizer::new(svg).find_map(|token| match token {
        Ok(Token::StartTag(tag)) if tag.name.as_slice() == b"svg" => Some(tag),
        _ => None,
    })?;
    let get = |name: &[u8]| tag.attributes.get(name).map(|value| String::from_utf8_lossy(value).into_owned());
    if let Some(view) = get(b"viewbox") {
        let numbers: Vec<f64> = view.split([' ', ',']).filter_map(|part| part.parse().ok()).collect();
        if let [_, _, width, height] = numbers[..] {
            return Some((width, height));
        }
    }
    let number = |text: String| text.trim_end_matches("px").parse().ok();
    Some((get(b"width").and_then(number)?, get(b"height").and_then(number)?))
}

/// The symbol that holds a picture.
pub fn symbol(id: &str, address: &str, bytes: &[u8], (width, height): (f64, f64)) -> String {
    let uri = data_uri(address, bytes);
    format!(
        "<symbol id=\"{id}\" viewBox=\"0 0 {width} {height}\"><image href=\"{uri}\" width=\"{width}\" height=\"{height}\"/></symbol>"
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_drawing_is_as_large_as_its_view_box() {
        assert_eq!(
            size("a.svg", b"<?xml version=\"1.0\"?><svg viewBox='0 0 340 120' width=\"9\"></svg>"),
            Some((340.0, 120.0))
        );
        assert_eq!(size("a.svg", b"<svg width=\"30px\" height=\"20\"></svg>"), Some((30.0, 20.0)));
        assert_eq!(size("a.svg", b"<p>"), None);
    }

    #[test]
    fn a_pixel_is_one_by_one() {
        // The smallest PNG: header, one grey pixel, end (PNG Third Edition, 11.2.1 for the header).
        let png = b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR\0\0\0\x01\0\0\0\x01\x08\0\0\0\0";
        assert_eq!(size("a.png", png), Some((1.0, 1.0)));
    }
}
