//! QR codes (ISO/IEC 18004) of addresses, as SVG.
//!
//! In: the handbook's address on the net and a page's in the handbook. Out: SVG text, black on white with its quiet zone; no size of
//! its own. Leaves to others: how large it is printed.

use crate::handbook::Handbook;
use qrcode::{Color, EcLevel, QrCode};
use std::fmt::Write;

/// Light modules around the code; the standard asks for four.
const QUIET: usize = 4;

/// Where a page can be found on the net, if the handbook can.
pub fn on_the_net(book: Option<&str>, page: &str) -> Option<String> {
    let book = book?.trim_end_matches('/');
    (!book.is_empty()).then(|| format!("{book}/{page}"))
}

/// Where the pages of a handbook can be found on the net: for another language in that language's folder.
pub fn home(handbook: &Handbook) -> Option<String> {
    let address = handbook.cover.address.as_deref()?.trim_end_matches('/');
    Some(handbook.folder.as_ref().map_or_else(|| address.to_owned(), |folder| format!("{address}/{folder}")))
}

/// The code of an address; nothing for one that no code can hold (about 2,300 letters).
pub fn svg(address: &str) -> Option<String> {
    let code = QrCode::with_error_correction_level(address.as_bytes(), EcLevel::M).ok()?;
    let (width, side) = (code.width(), code.width() + 2 * QUIET);
    let mut path = String::new();
    for (row, colours) in code.to_colors().chunks(width).enumerate() {
        let mut at = 0;
        while at < width {
            let run = colours.iter().skip(at).take_while(|colour| **colour == Color::Dark).count();
            if run > 0 {
                // Writing to a string cannot fail.
                let _ = write!(path, "M{} {}h{run}v1h-{run}z", at + QUIET, row + QUIET);
            }
            at += run.max(1);
        }
    }
    Some(format!(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {side} {side}\" shape-rendering=\"crispEdges\" aria-hidden=\"true\">\
         <path fill=\"#fff\" d=\"M0 0h{side}v{side}h-{side}z\"/><path fill=\"#000\" d=\"{path}\"/></svg>"
    ))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_code_has_its_quiet_zone_and_its_three_finders() {
        let code = svg("https://club.example/sheets/rewire-foil.html").expect("an address fits");
        // 44 bytes at level M want version 4 (ISO/IEC 18004, table 7: version 3 holds 42, version 4 holds 62), which is 33 modules wide;
        // with the quiet zone 41.
        assert!(code.contains("viewBox=\"0 0 41 41\""), "{code}");
        // The outer rings of the finders, top left and top right.
        assert!(code.contains("M4 4h7v1h-7z") && code.contains("M30 4h7v1h-7z"));
    }

    #[test]
    fn a_handbook_without_an_address_has_no_code() {
        assert_eq!(on_the_net(None, "sheets/a.html"), None);
        assert_eq!(on_the_net(Some("https://a.example/"), "b.html").as_deref(), Some("https://a.example/b.html"));
        assert_eq!(svg(&"x".repeat(3000)), None);
    }
}
