//! The body cord and the mask cord, from fencer to apparatus.
//!
//! About 1.1 units to the millimetre across (reel plug: outer pins 15 mm and 20 mm from the middle one); the cable is broken, as it is
//! far too long. The clip's own lead leaves the reel plug on the label side.

use super::{Place, Plan};

pub(super) const BODY: Plan = Plan {
    places: &[
        Place {
            id: "weapon-plug",
            title: "place-weapon-plug",
            span: (8.0, 94.0),
            lead: (50.0, 42.0),
        },
        Place {
            id: "weapon-end",
            title: "place-weapon-end",
            span: (94.0, 196.0),
            lead: (150.0, 55.0),
        },
        Place {
            id: "cable",
            title: "place-cable",
            span: (198.0, 500.0),
            lead: (230.0, 55.0),
        },
        Place {
            id: "clip",
            title: "place-clip",
            span: (308.0, 398.0),
            lead: (350.0, 9.0),
        },
        Place {
            id: "clip-lead",
            title: "place-clip-lead",
            span: (398.0, 616.0),
            lead: (450.0, 20.0),
        },
        Place {
            id: "reel-end",
            title: "place-reel-end",
            span: (502.0, 602.0),
            lead: (564.0, 50.0),
        },
        Place {
            id: "reel-plug",
            title: "place-reel-plug",
            span: (602.0, 690.0),
            lead: (646.0, 32.0),
        },
    ],
    under: &[("d-c", "M2 60h696")],
    parts: &[
        (
            "weapon-plug",
            &[
                ("d-o", "M8 50h22v6H8zM8 64h22v6H8z"),
                ("d-o", "M28 42h48v36H28z"),
                ("d-o", "M76 48h18v24H76z"),
                ("d-t", "M36 42v36M42 42v36M48 42v36M70 42v36"),
            ],
        ),
        (
            "weapon-end",
            &[
                ("d-o", "M94 50l42 5v10l-42 5z"),
                ("d-o", "M136 55h60v10h-60z"),
                ("d-t", "M104 51v18M112 52v16M120 53v14M128 54v12"),
                ("d-t", "M150 65l8-10M166 65l8-10M182 65l8-10"),
            ],
        ),
        (
            "cable",
            &[
                ("d-o", "M248 55H196v10h50q-5-3-1-5t3-5z"),
                ("d-o", "M260 55h242v10H258q-5-3-1-5t3-5z"),
                (
                    "d-t",
                    "M206 65l8-10M222 65l8-10M276 65l8-10M308 65l8-10M340 65l8-10M372 65l8-10M404 65l8-10M436 65l8-10M468 65l8-10",
                ),
            ],
        ),
        (
            "clip-lead",
            &[("d-o", "M396 17H598q18 0 18 20h-5q0-15-13-15H396z")],
        ),
        (
            "reel-end",
            &[
                ("d-o", "M502 55h58v10h-58z"),
                ("d-o", "M560 55l42-6v22l-42-6z"),
                ("d-t", "M510 65l8-10M528 65l8-10M546 65l8-10"),
                ("d-t", "M568 54v12M576 53v14M584 52v16M592 51v18"),
            ],
        ),
        (
            "reel-plug",
            &[
                ("d-o", "M658 38h32v6h-32zM658 54h32v6h-32zM658 76h32v6h-32z"),
                ("d-o", "M602 32h56v56h-56z"),
                ("d-t", "M610 32v56M616 32v56M652 32v56"),
            ],
        ),
        (
            "clip",
            &[
                ("d-o", "M310 16l42-1 12-9 32 3 2 8-24 3-22 0-42 1z"),
                ("d-o", "M310 22l42 1 12 9 32-3 2-8-24-2-22 0-42-1z"),
                ("d-t", "M316 17l3 4 3-4 3 4 3-4 3 4 3-4 3 4 3-4"),
                ("d-o", "M358 19a5 5 0 1 1 10 0a5 5 0 1 1-10 0z"),
            ],
        ),
    ],
    over: &[],
};

pub(super) const MASK: Plan = Plan {
    places: &[
        Place {
            id: "mask-clip",
            title: "place-mask-clip",
            span: (20.0, 136.0),
            lead: (70.0, 50.0),
        },
        Place {
            id: "mask-end",
            title: "place-mask-end",
            span: (138.0, 258.0),
            lead: (210.0, 55.0),
        },
        Place {
            id: "wire",
            title: "place-wire",
            span: (260.0, 440.0),
            lead: (350.0, 55.0),
        },
        Place {
            id: "jacket-end",
            title: "place-jacket-end",
            span: (442.0, 562.0),
            lead: (490.0, 55.0),
        },
        Place {
            id: "jacket-clip",
            title: "place-jacket-clip",
            span: (564.0, 680.0),
            lead: (630.0, 50.0),
        },
    ],
    under: &[("d-c", "M2 60h696")],
    parts: &[
        (
            "mask-end",
            &[
                ("d-o", "M122 52l38 4v8l-38 4z"),
                ("d-o", "M160 56h98v8h-98z"),
                ("d-t", "M130 53v14M138 54v12M146 55v10"),
            ],
        ),
        (
            "mask-clip",
            &[
                ("d-o", "M20 55l60-5 16-18 38 5 4 14-34 7-26 1-58 2z"),
                ("d-o", "M20 65l60 5 16 18 38-5 4-14-34-7-26-1-58-2z"),
                ("d-t", "M26 57l5 6 5-6 5 6 5-6 5 6 5-6 5 6 5-6 5 6"),
                ("d-o", "M88 60a7 7 0 1 1 14 0a7 7 0 1 1-14 0z"),
            ],
        ),
        (
            "wire",
            &[
                ("d-o", "M346 56H258v8h86q-5-2-1-4t3-4z"),
                ("d-o", "M358 56h84v8h-86q-5-2-1-4t3-4z"),
            ],
        ),
        (
            "jacket-end",
            &[
                ("d-o", "M578 52l-38 4v8l38 4z"),
                ("d-o", "M540 56h-98v8h98z"),
                ("d-t", "M570 53v14M562 54v12M554 55v10"),
            ],
        ),
        (
            "jacket-clip",
            &[
                ("d-o", "M680 55l-60-5-16-18-38 5-4 14 34 7 26 1 58 2z"),
                ("d-o", "M680 65l-60 5-16 18-38-5-4-14 34-7 26-1 58-2z"),
                ("d-t", "M674 57l-5 6-5-6-5 6-5-6-5 6-5-6-5 6-5-6-5 6"),
                ("d-o", "M598 60a7 7 0 1 1 14 0a7 7 0 1 1-14 0z"),
            ],
        ),
    ],
    over: &[],
};
