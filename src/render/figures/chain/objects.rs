//! The objects of the chain, as data. Both arrangements use the same ones.
//!
//! About 2.3 units to the centimetre for outfit, reel and apparatus, twice that on the bench: typical sizes, not limits. Classes:
//! `thread` is the line of current, `branch` thinner, `inside` hidden, `coil` on the drum; `d-o` outline, `d-t` detail.

/// One shape of a drawing.
#[derive(Clone, Copy)]
pub(super) enum Shape {
    /// Class and path data.
    Path(&'static str, &'static str),
    /// Class, centre and radius.
    Ring(&'static str, f64, f64, f64),
    /// A lamp that does not burn, by its centre.
    Dark(f64, f64),
    /// A lamp that burns, by its centre.
    Lit(f64, f64),
}

use Shape::{Dark, Lit, Path, Ring};

/// The jacket, with cuff and sleeves under the conductive vest.
pub(super) const JACKET: &[Shape] = &[
    Path(
        "d-o",
        "M318 157C360 152 404 151 436 139L450 133Q474 145 498 133L512 139C538 146 552 152 560 168L590 262 566 271 545 208V316Q474 336 403 316V207C376 203 350 197 318 190z",
    ),
    Path("d-t", "M326 156v35.5M559 252l25-7.5"),
    Path(
        "d-o lame",
        "M437 139L450 133Q474 145 498 133L511 139Q530 144 536 150 522 178 532 202 536 207 545 209V302Q474 322 403 302V209Q412 207 416 202 426 178 412 150 418 144 437 139z",
    ),
    Path(
        "weave",
        "M437 139L450 133Q474 145 498 133L511 139Q530 144 536 150 522 178 532 202 536 207 545 209V302Q474 322 403 302V209Q412 207 416 202 426 178 412 150 418 144 437 139z",
    ),
    Path(
        "d-t",
        "M450 133q2 10 24 17 22-7 24-17M474 150v20M403 309q71 20 142 0",
    ),
];

/// The mask with its conductive bib, and the mask wire with a clip at each end.
pub(super) const MASK: &[Shape] = &[
    Path(
        "d-o",
        "M437 62Q437 14 474 14t37 48q0 20-7 32h-60q-7-12-7-32z",
    ),
    Path(
        "mesh",
        "M437 62Q437 14 474 14t37 48q0 20-7 32h-60q-7-12-7-32z",
    ),
    Path("d-t", "M441 62Q441 19 474 19t33 43"),
    Path(
        "d-o lame",
        "M438 80q6 20 36 20t36-20l6 13q-2 25-42 31-40-6-42-31z",
    ),
    Path(
        "weave",
        "M438 80q6 20 36 20t36-20l6 13q-2 25-42 31-40-6-42-31z",
    ),
    Path("d-w2", "M505 108C526 108 540 112 536 126S524 140 519 150"),
    Path("d-o", "M499 104h9v8h-9z"),
    Path("d-o", "M514.5 147l6 3-4 11-6-3z"),
];

/// The foil; the line runs in its blade to the socket.
pub(super) const WEAPON: &[Shape] = &[
    Path("d-o", "M30 170.5L238 168.4v7.2L30 173.5z"),
    Path("thread branch", "M30 172H246Q253 172 254 181"),
    Path("d-o", "M15 167.8h15v8.4H15z"),
    Path("d-o", "M9.5 168.5q-2.5 3.5 0 7h5.5v-7z"),
    Path("d-t", "M30 168l8 2.5M30 176l8-2.5"),
    Path("d-o", "M243 147q-17 25 0 50l3.5-1.5q-13-23.5 0-47z"),
    Path("d-t", "M248.5 152q-9 20 0 40"),
    Path("d-o", "M247 167.5q22-3 42 0v9q-20 3-42 0z"),
    Path(
        "d-t",
        "M252 167l3.5 10M257 166.6l3.5 10M262 166.6l3.5 10M267 166.6l3.5 10M272 166.6l3.5 10M277 166.6l3.5 10M282 166.6l3.5 10M287 167l3.5 10",
    ),
    Path("d-o", "M289 166q4-2.5 10-1.5 6 1 6 7.5t-6 7.5q-6 1-10-1.5z"),
    Path("d-t", "M293 165.2v13.6"),
    Path("d-o", "M248 180h11v8h-11z"),
];

/// The body cord: a slack loop, hidden in sleeve and jacket, out at the hem.
pub(super) const CORD: &[Shape] = &[
    Path("thread", "M259 184C288 184 286 212 302 213S318 176 334 174"),
    Path(
        "thread inside",
        "M334 174C380 172 430 172 470 178C516 186 524 240 522 322",
    ),
    Path("d-o", "M257 180h9v8h-9z"),
];

/// The end of the cord on its way to the plug pair, when the reel stands beside the fencer.
pub(super) const CORD_END: &[Shape] = &[Path("thread", "M522 322V330Q522 338 532 338H546")];

/// The jacket clip on its own lead.
pub(super) const CLIP: &[Shape] = &[
    Path("thread branch", "M523 326Q536 330 544 318"),
    Path("d-o", "M540 306l7-2 3 14-7 2z"),
    Path("d-t", "M543.5 312h4"),
];

/// The cord's half of the plug pair.
pub(super) const CORD_PLUG: &[Shape] = &[Path("d-o", "M546 332h16v12h-16z")];

/// The reel cable's half of the plug pair.
pub(super) const REEL_SOCKET: &[Shape] = &[
    Path("d-o", "M566 330h18v16h-18z"),
    Path("d-t", "M562 335h4M562 338h4M562 341h4M572 330v16"),
];

/// The reel cable, plug pair to drum.
pub(super) const REEL_CABLE: &[Shape] = &[Path("thread", "M584 338C618 338 600 283 650 283")];

/// The reel with its drum and sockets.
pub(super) const REEL: &[Shape] = &[
    Path(
        "d-o",
        "M646 264h84v82h-84zM654 346h10v6h-10zM712 346h10v6h-10z",
    ),
    Path("d-o", "M672 264v-9h32v9"),
    Ring("d-o", 688.0, 311.0, 32.0),
    Path("thread", "M646 283H688"),
    Ring("thread coil", 688.0, 311.0, 28.0),
    Ring("thread coil thin-coil", 688.0, 311.0, 21.5),
    Ring("d-o", 688.0, 311.0, 17.0),
    Path("d-t", "M671 311h34M688 294v34"),
    Ring("d-o", 688.0, 311.0, 5.0),
    Path("d-o", "M641 278h8v10h-8z"),
    Path("d-o", "M730 328h10v12h-10z"),
];

/// The floor cable with its loop on the ground, up to the apparatus.
pub(super) const FLOOR: &[Shape] = &[
    Path(
        "thread",
        "M740 334C756 334 752 348 772 348H792C820 348 826 330 806 330S790 348 814 348H832C850 348 851 334 851 316V250Q851 228 868 228",
    ),
    Path("d-o", "M866 222h14v12h-14z"),
];

/// The apparatus on its table; of its four lamps one is lit.
pub(super) const APPARATUS: &[Shape] = &[
    Path(
        "d-o",
        "M864 246h140v6H864zM874 252h6v100h-6zM988 252h6v100h-6z",
    ),
    Path("d-t", "M880 270h108"),
    Path(
        "d-o",
        "M880 176h108v66H880zM888 242h10v4h-10zM970 242h10v4h-10z",
    ),
    Path("d-t", "M880 216h108"),
    Path("d-t", "M934 176v40"),
    Lit(894.0, 197.0),
    Dark(919.0, 197.0),
    Dark(949.0, 197.0),
    Dark(974.0, 197.0),
    Path("thread branch", "M880 228H894V207"),
    Path(
        "d-t",
        "M912 223h44v12h-44zM924 223v12M932 223v12M940 223v12",
    ),
    Ring("d-o", 974.0, 229.0, 4.0),
];

/// The bench tester.
pub(super) const TESTER: &[Shape] = &[
    Path("d-o", "M1046 282h66v70h-66z"),
    Path(
        "d-o",
        "M1056 270h8v12h-8zM1075 270h8v12h-8zM1094 270h8v12h-8z",
    ),
    Path("d-t", "M1052 288h54v58h-54z"),
    Dark(1079.0, 310.0),
    Path("d-o", "M1066 332h26v8h-26z"),
    Ring("d-t", 1057.0, 341.0, 2.0),
    Ring("d-t", 1101.0, 341.0, 2.0),
];

/// The meter with its two probes.
pub(super) const METER: &[Shape] = &[
    Path(
        "d-w2",
        "M1194 338C1216 338 1198 304 1214 287M1194 346C1216 350 1226 346 1226 331",
    ),
    Path("d-o", "M1154 270h40v82h-40z"),
    Path("d-o", "M1160 277h28v17h-28z"),
    Path("d-t", "M1165 289l4-6 4 6M1177 283v6M1182 283v6"),
    Ring("d-o", 1174.0, 315.0, 12.0),
    Path("d-t", "M1174 315l6-8M1160 318h2M1186 318h2M1174 300v3"),
    Ring("d-o", 1166.0, 341.0, 3.5),
    Ring("d-o", 1182.0, 341.0, 3.5),
    Path("d-o", "M1211 268h6v19h-6zM1223 312h6v19h-6z"),
    Path("d-t", "M1214 268v-12M1226 312v-12"),
];

/// The end of the cord when the reel stands below: out of the hem, into a plug pair.
pub(super) const CORD_DOWN: &[Shape] = &[
    Path("thread", "M315.2 199V212"),
    Path("d-o", "M309 210h12v13h-12z"),
];

/// The reel cable from above, into the reel that stands mirrored below.
pub(super) const REEL_CABLE_DOWN: &[Shape] = &[Path(
    "thread",
    "M315.2 240C315.2 268 354 268 354 296Q354 322 345 322",
)];

/// The socket of the plug pair that hangs below the hem.
pub(super) const REEL_SOCKET_DOWN: &[Shape] = &[
    Path("d-o", "M307.5 226h15v15h-15z"),
    Path("d-t", "M312.5 223v3M315.2 223v3M318 223v3M307.5 231h15"),
];
