//! The sabre, from the folded point to the pommel.
//!
//! Scales as at the foil: in front about 5 units to the millimetre (point 4 to 6 mm, blade 4 mm), behind about 0.85 (guard 14 cm with its
//! bow, handle at most 17 cm). No groove and no wire: the blade itself is the conductor. The lining is what insulates the
//! inside of the guard.

use super::{Place, Plan};

pub(super) const PLAN: Plan = Plan {
    places: &[
        Place {
            id: "point",
            title: "place-point",
            span: (44.0, 72.0),
            lead: (56.0, 47.0),
        },
        Place {
            id: "blade",
            title: "place-blade",
            span: (74.0, 384.0),
            lead: (150.0, 50.0),
        },
        Place {
            id: "guard",
            title: "place-guard",
            span: (384.0, 646.0),
            lead: (387.0, 44.0),
        },
        Place {
            id: "lining",
            title: "place-lining",
            span: (398.0, 424.0),
            lead: (413.0, 24.0),
        },
        Place {
            id: "socket",
            title: "place-socket",
            span: (412.0, 456.0),
            lead: (434.0, 24.0),
        },
        Place {
            id: "grip",
            title: "place-grip",
            span: (446.0, 590.0),
            lead: (530.0, 49.0),
        },
        Place {
            id: "pommel",
            title: "place-pommel",
            span: (590.0, 646.0),
            lead: (622.0, 47.0),
        },
    ],
    under: &[("d-c", "M8 60h684")],
    parts: &[
        (
            "blade",
            &[
                ("d-o", "M240 51L72 51v18l166 0q-6-5-1-9t3-9z"),
                ("d-t", "M72 56H236"),
                ("d-o", "M252 51l134-2v22l-136-2q-6-5-1-9t3-9z"),
                ("d-t", "M252 57l134-1"),
            ],
        ),
        (
            "point",
            &[
                ("d-o", "M74 49H52q-8 0-8 11t8 11h22z"),
                ("d-t", "M52 55h22M52 55q-3 5 0 10h22"),
            ],
        ),
        (
            "grip",
            &[
                (
                    "d-o",
                    "M404 52q46-4 92-2 56 1 94 6v12q-38 5-94 4-46 0-92-3z",
                ),
                (
                    "d-t",
                    "M424 51l7 19M440 50l8 21M456 50l8 21M472 49l9 22M488 49l9 23M504 50l9 22M520 50l9 22M536 51l8 21M552 52l8 20\
                     M568 54l7 17",
                ),
            ],
        ),
        (
            "guard",
            &[
                (
                    "d-o",
                    "M412 6Q370 56 398 106 440 124 520 112 606 100 642 68L637 64Q602 94 519 106 442 118 403 102 378 56 416 10z",
                ),
                ("d-t", "M398 106l5-4"),
            ],
        ),
        (
            "lining",
            &[("d-o", "M420 14Q386 56 407 99L412 97Q393 56 425 18z")],
        ),
        (
            "socket",
            &[
                ("d-o", "M414 24h40v18h-40z"),
                ("d-t", "M421 24v18M428 24v18"),
                ("d-t", "M414 42v7h9"),
                ("d-p", "M454 21h40v24h-40zM494 33h24"),
            ],
        ),
        (
            "pommel",
            &[
                (
                    "d-o",
                    "M590 54q8-7 22-7h12q16 1 18 13-2 12-18 13h-12q-14 0-22-7z",
                ),
                ("d-t", "M598 49v22M620 47v26"),
                ("d-o", "M642 56h5v8h-5z"),
            ],
        ),
    ],
    over: &[],
};
