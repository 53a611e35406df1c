//! The epee, from tip to pommel.
//!
//! Scales as at the foil: in front about 5 units to the millimetre across (crown 8 mm, travel 1.5 mm), behind about 0.85 (guard
//! 13.5 cm across and about 5 cm deep, so it fills the drawing). Two wires in the groove; the socket has three pins in a line.

use super::{Place, Plan, foil};

pub(super) const PLAN: Plan = Plan {
    places: &[
        Place {
            id: "tip",
            title: "place-tip",
            span: (40.0, 78.0),
            lead: (54.0, 40.0),
        },
        Place {
            id: "barrel",
            title: "place-barrel",
            span: (78.0, 188.0),
            lead: (134.0, 40.0),
        },
        Place {
            id: "blade",
            title: "place-blade",
            span: (190.0, 378.0),
            lead: (240.0, 50.0),
        },
        Place {
            id: "guard",
            title: "place-guard",
            span: (378.0, 428.0),
            lead: (402.0, 14.0),
        },
        Place {
            id: "socket",
            title: "place-socket",
            span: (412.0, 456.0),
            lead: (434.0, 20.0),
        },
        Place {
            id: "grip",
            title: "place-grip",
            span: (444.0, 596.0),
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
                ("d-o", "M240 50H188v20h50q-6-6-1-10t3-10z"),
                ("d-t", "M188 66H238"),
                ("d-o", "M252 49l128-3v28l-130-3q-6-5-1-10t3-12z"),
                ("d-t", "M250 66l130 3"),
            ],
        ),
        (
            "tip",
            &[
                ("d-o", "M60 48h26v24H60z"),
                ("d-o", "M42 42q-4 18 0 36l3 2h20V40H45z"),
                ("d-t", "M50 40v40M55 40v40M60 40v40"),
            ],
        ),
        (
            "barrel",
            &[
                ("d-o", "M78 40h84v40H78z"),
                ("d-o", "M162 43l26 7v20l-26 7z"),
                ("d-t", "M84 40v40M156 40v40"),
                ("d-o", "M98 40h14v7H98zM98 73h14v7H98z"),
                ("d-t", "M105 40v7M105 73v7"),
            ],
        ),
        ("grip", foil::GRIP),
        (
            "guard",
            &[
                (
                    "d-o",
                    "M424 3C368 22 368 98 424 117l3-4C378 94 378 26 427 7z",
                ),
                (
                    "d-t",
                    "M430 20C394 34 394 86 430 100l4-4C403 82 403 38 434 24z",
                ),
            ],
        ),
        (
            "socket",
            &[
                ("d-o", "M412 20h44v22h-44z"),
                ("d-t", "M419 20v22M426 20v22"),
                ("d-t", "M412 42v6h9"),
                ("d-p", "M456 16h40v30h-40zM496 31h24"),
                ("d-t", "M450 25h6M450 29h6M450 37h6"),
            ],
        ),
        ("pommel", foil::POMMEL),
    ],
    over: &[(
        "d-w",
        "M188 56H236M188 60H235M256 56H378Q396 56 402 44T412 30M256 60H380Q399 59 405 48T412 35",
    )],
};
