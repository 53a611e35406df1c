//! The items of kit that the program knows, and their places from tip to plug, or from fencer to apparatus.
//!
//! A rail is drawn for each (`render::figures::rail`); a club's own item names its places in `handbook.yaml`.

/// The items that the program knows, each with its places in the order of the rail.
pub const BUILT_IN: [(&str, &[&str]); 9] = [
    ("foil", &["tip", "barrel", "blade", "guard", "socket", "grip", "pommel"]),
    ("epee", &["tip", "barrel", "blade", "guard", "socket", "grip", "pommel"]),
    ("sabre", &["point", "blade", "guard", "lining", "socket", "grip", "pommel"]),
    ("body-cord", &["weapon-plug", "weapon-end", "cable", "clip", "clip-lead", "reel-end", "reel-plug"]),
    ("mask-cord", &["mask-clip", "mask-end", "wire", "jacket-end", "jacket-clip"]),
    ("mask", &["strap", "padding", "mesh", "rim", "bib", "clip-point"]),
    ("jacket", &["collar", "flap", "sleeve", "front", "zip", "seam", "hem"]),
    ("reel", &["cable-socket", "cable", "drum", "spring", "rings", "frame", "outlet"]),
    ("tester", &["sockets", "case", "leads", "lamp", "switch", "holder", "battery"]),
];

/// The places of an item that the program knows.
pub fn built_in_places(item: &str) -> Option<&'static [&'static str]> {
    BUILT_IN.iter().find(|(known, _)| *known == item).map(|(_, places)| *places)
}
