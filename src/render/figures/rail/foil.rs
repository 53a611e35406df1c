//! The foil, from tip to pommel.
//!
//! Two scales, parted by the break in the blade: in front about 5 units to the millimetre across (head 5.5 mm, barrel 7 mm),
//! behind about 1.1 (guard 10 cm, grip 18 cm, pommel 4 cm). Typical sizes, not limits. The guard is cut so that socket and
//! wire show; the body cord's plug is a neighbour and drawn as one.

use super::{Place, Plan};

pub(super) const PLAN: Plan = Plan {
    places: &[
        Place {
            id: "tip",
            title: "place-tip",
            span: (44.0, 92.0),
            lead: (52.0, 46.0),
        },
        Place {
            id: "barrel",
            title: "place-barrel",
            span: (92.0, 188.0),
            lead: (136.0, 42.0),
        },
        Place {
            id: "blade",
            title: "place-blade",
            span: (190.0, 384.0),
            lead: (236.0, 53.0),
        },
        Place {
            id: "guard",
            title: "place-guard",
            span: (384.0, 420.0),
            lead: (398.0, 14.0),
        },
        Place {
            id: "socket",
            title: "place-socket",
            span: (404.0, 440.0),
            lead: (426.0, 24.0),
        },
        Place {
            id: "grip",
            title: "place-grip",
            span: (442.0, 596.0),
            lead: (530.0, 49.0),
        },
        Place {
            id: "pommel",
            title: "place-pommel",
            span: (596.0, 654.0),
            lead: (624.0, 46.0),
        },
    ],
    under: &[("d-c", "M8 60h684")],
    parts: &[
        (
            "blade",
            &[
                ("d-o", "M240 53H188v14h50q-6-4-1-7t3-7z"),
                ("d-t", "M196 53l6 14M206 53l6 14M216 53l6 14M226 53l5 12"),
                ("d-o", "M252 54l132-1v14l-134-1q-6-3-1-6t3-6z"),
            ],
        ),
        (
            "barrel",
            &[
                ("d-o", "M92 42h76v36H92z"),
                ("d-o", "M168 44l20 9v14l-20 9z"),
                ("d-t", "M98 42v36M162 42v36"),
                ("d-o", "M110 60a6 6 0 1 1 12 0a6 6 0 1 1-12 0z"),
                ("d-t", "M112.5 56.5l7 7"),
            ],
        ),
        (
            "tip",
            &[
                ("d-o", "M62 52h31v16H62z"),
                ("d-o", "M46 49q-6 11 0 22l13 3h3q3 0 3-3V49q0-3-3-3h-3z"),
                ("d-t", "M52 47.5v25M56 47v26"),
            ],
        ),
        ("grip", GRIP),
        ("guard", GUARD),
        ("socket", SOCKET),
        ("pommel", POMMEL),
    ],
    over: &[("d-w", "M168 57H236M258 57.5H384Q396 57 398 46T404 33")],
};

pub(super) const GRIP: &[super::Stroke] = &[
    (
        "d-o",
        "M404 51q46-3 96-2 60 0 96 4v14q-36 5-96 4-50 0-96-2z",
    ),
    (
        "d-t",
        "M420 51l8 18M436 50l9 20M452 50l9 20M468 49l9 22M484 49l9 22M500 49l9 22M516 49l9 22M532 50l9 21M548 50l9 21M564 51l8 18\
         M580 52l6 16",
    ),
];

const GUARD: &[super::Stroke] = &[
    ("d-o", "M408 5q-46 55 0 110l4-3q-40-52 0-104z"),
    ("d-t", "M414 20q-27 40 0 80l6-4q-22-36 0-72z"),
];

const SOCKET: &[super::Stroke] = &[
    ("d-o", "M404 24h36v17h-36z"),
    ("d-t", "M410 24v17M416 24v17"),
    ("d-t", "M404 41v8h10"),
    ("d-p", "M440 21h40v23h-40zM480 32.5h24"),
];

pub(super) const POMMEL: &[super::Stroke] = &[
    (
        "d-o",
        "M596 53q8-7 24-7h10q16 2 18 14-2 12-18 14h-10q-16 0-24-7z",
    ),
    ("d-t", "M604 48.5v23M624 46v28"),
    ("d-o", "M648 55h6v10h-6z"),
];
