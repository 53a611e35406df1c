//! The reel and the tester, from the fencer's side to the apparatus's.
//!
//! The reel is opened along its shaft, the tester along its case: sections, typical shapes, not to one scale. Sockets keep the
//! rule's spacing of the pins, 15 mm and 20 mm from the middle one, at about 1.1 units to the millimetre.

use super::{Place, Plan};

pub(super) const REEL: Plan = Plan {
    places: &[
        Place {
            id: "cable-socket",
            title: "place-cable-socket",
            span: (12.0, 92.0),
            lead: (50.0, 32.0),
        },
        Place {
            id: "cable",
            title: "place-cable",
            span: (94.0, 202.0),
            lead: (150.0, 56.0),
        },
        Place {
            id: "drum",
            title: "place-drum",
            span: (202.0, 300.0),
            lead: (250.0, 24.0),
        },
        Place {
            id: "spring",
            title: "place-spring",
            span: (318.0, 382.0),
            lead: (350.0, 28.0),
        },
        Place {
            id: "rings",
            title: "place-rings",
            span: (412.0, 490.0),
            lead: (450.0, 18.0),
        },
        Place {
            id: "frame",
            title: "place-frame",
            span: (194.0, 580.0),
            lead: (550.0, 34.0),
        },
        Place {
            id: "outlet",
            title: "place-outlet",
            span: (606.0, 690.0),
            lead: (650.0, 32.0),
        },
    ],
    under: &[("d-c", "M2 60h696")],
    parts: &[
        (
            "frame",
            &[
                ("d-o", "M194 108h398v8H194z"),
                ("d-o", "M530 34h36v74h-36z"),
                ("d-t", "M200 112h6M580 112h6"),
                ("d-t", "M536 41h8M552 41h8M536 101h8M552 101h8"),
            ],
        ),
        (
            "cable",
            &[
                ("d-o", "M150 55H92v10h56q-5-3-1-5t3-5z"),
                ("d-o", "M162 55h44v10h-46q-5-3-1-5t3-5z"),
            ],
        ),
        (
            "drum",
            &[
                ("d-o", "M210 48h82v24h-82z"),
                ("d-o", COILS_ABOVE),
                ("d-o", COILS_BELOW),
                ("d-o", "M202 14h8v92h-8zM292 14h8v92h-8z"),
                ("d-o", "M300 55h230v10H300z"),
            ],
        ),
        (
            "spring",
            &[
                ("d-o", "M318 60a32 32 0 1 1 64 0a32 32 0 1 1-64 0z"),
                (
                    "d-t",
                    "M357 60a8 8 0 0 1-16 0a11 11 0 0 1 22 0a14 14 0 0 1-28 0a17 17 0 0 1 34 0a20 20 0 0 1-40 0a23 23 0 0 1 46 0a26 26 0 0 1-50 8",
                ),
                ("d-o", "M345 60a5 5 0 1 1 10 0a5 5 0 1 1-10 0z"),
            ],
        ),
        (
            "rings",
            &[
                (
                    "d-o",
                    "M412 38h14v44h-14zM444 38h14v44h-14zM476 38h14v44h-14z",
                ),
                (
                    "d-o",
                    "M414 24h10v14h-10zM446 24h10v14h-10zM478 24h10v14h-10z",
                ),
                ("d-o", "M408 16h86v8h-86z"),
                ("d-t", "M419 16v8M451 16v8M483 16v8"),
            ],
        ),
        (
            "cable-socket",
            &[
                ("d-o", "M12 32h56v56H12z"),
                ("d-o", "M68 50l24 5v10l-24 5z"),
                ("d-t", "M12 38h30v6H12M12 54h30v6H12M12 76h30v6H12M60 32v56"),
            ],
        ),
        (
            "outlet",
            &[
                ("d-o", "M566 56h48v8h-48z"),
                ("d-o", "M606 32h56v56h-56z"),
                ("d-o", "M662 38h28v6h-28zM662 54h28v6h-28zM662 76h28v6h-28z"),
                ("d-t", "M614 32v56M654 32v56"),
            ],
        ),
    ],
    over: &[],
};

const COILS_ABOVE: &str = "M212 42a6 6 0 1 1 12 0a6 6 0 1 1-12 0zM225 42a6 6 0 1 1 12 0a6 6 0 1 1-12 0zM238 42a6 6 0 1 1 12 0a6 6 0 1 1-12 0z\
     M251 42a6 6 0 1 1 12 0a6 6 0 1 1-12 0zM264 42a6 6 0 1 1 12 0a6 6 0 1 1-12 0zM277 42a6 6 0 1 1 12 0a6 6 0 1 1-12 0z\
     M218 30a6 6 0 1 1 12 0a6 6 0 1 1-12 0zM231 30a6 6 0 1 1 12 0a6 6 0 1 1-12 0zM244 30a6 6 0 1 1 12 0a6 6 0 1 1-12 0z\
     M257 30a6 6 0 1 1 12 0a6 6 0 1 1-12 0zM270 30a6 6 0 1 1 12 0a6 6 0 1 1-12 0z";
const COILS_BELOW: &str = "M212 78a6 6 0 1 1 12 0a6 6 0 1 1-12 0zM225 78a6 6 0 1 1 12 0a6 6 0 1 1-12 0zM238 78a6 6 0 1 1 12 0a6 6 0 1 1-12 0z\
     M251 78a6 6 0 1 1 12 0a6 6 0 1 1-12 0zM264 78a6 6 0 1 1 12 0a6 6 0 1 1-12 0zM277 78a6 6 0 1 1 12 0a6 6 0 1 1-12 0z\
     M218 90a6 6 0 1 1 12 0a6 6 0 1 1-12 0zM231 90a6 6 0 1 1 12 0a6 6 0 1 1-12 0zM244 90a6 6 0 1 1 12 0a6 6 0 1 1-12 0z\
     M257 90a6 6 0 1 1 12 0a6 6 0 1 1-12 0zM270 90a6 6 0 1 1 12 0a6 6 0 1 1-12 0z";

pub(super) const TESTER: Plan = Plan {
    places: &[
        Place {
            id: "sockets",
            title: "place-sockets",
            span: (12.0, 96.0),
            lead: (50.0, 36.0),
        },
        Place {
            id: "case",
            title: "place-case",
            span: (96.0, 690.0),
            lead: (150.0, 16.0),
        },
        Place {
            id: "leads",
            title: "place-leads",
            span: (104.0, 318.0),
            lead: (250.0, 38.0),
        },
        Place {
            id: "lamp",
            title: "place-lamp",
            span: (322.0, 378.0),
            lead: (350.0, 32.0),
        },
        Place {
            id: "switch",
            title: "place-switch",
            span: (418.0, 482.0),
            lead: (450.0, 8.0),
        },
        Place {
            id: "holder",
            title: "place-holder",
            span: (512.0, 678.0),
            lead: (546.0, 34.0),
        },
        Place {
            id: "battery",
            title: "place-battery",
            span: (566.0, 662.0),
            lead: (640.0, 42.0),
        },
    ],
    under: &[("d-c", "M2 60h696")],
    parts: &[
        ("case", &[("d-o", "M96 16h594v88H96zM102 22v76h582v-76z")]),
        (
            "leads",
            &[(
                "d-o",
                "M104 38h198q16 0 26 8l-3 4q-9-7-23-7H104zM104 54h216v5H104zM104 76h198q16 0 26-8l-3-4q-9 7-23 7H104z",
            )],
        ),
        (
            "sockets",
            &[
                ("d-o", "M12 36h92v10H12zM12 52h92v10H12zM12 74h92v10H12z"),
                (
                    "d-t",
                    "M12 41h40M12 57h40M12 79h40M72 36v10M72 52v10M72 74v10",
                ),
            ],
        ),
        (
            "lamp",
            &[
                ("d-o", "M322 60a28 28 0 1 1 56 0a28 28 0 1 1-56 0z"),
                ("d-t", "M330.2 40.2l39.6 39.6M369.8 40.2l-39.6 39.6"),
            ],
        ),
        (
            "switch",
            &[
                ("d-o", "M436 8h28v14h-28z"),
                ("d-o", "M424 22h52v10h-52z"),
                ("d-o", "M418 50h22v8h-22zM460 50h22v8h-22z"),
                ("d-o", "M430 40h40v6h-40z"),
                ("d-t", "M450 32v8M378 57h40M482 57h30"),
            ],
        ),
        (
            "holder",
            &[
                ("d-o", "M512 34h166v52H512z"),
                ("d-o", "M520 40h150v40H520z"),
                ("d-t", "M524 60l5-12 6 24 6-24 6 24 6-24 6 12h7"),
            ],
        ),
        (
            "battery",
            &[
                ("d-o", "M566 42h90v36h-90z"),
                ("d-o", "M656 53h6v14h-6z"),
                ("d-t", "M630 42v36M640 56v8M636 60h8M578 60h8"),
            ],
        ),
    ],
    over: &[],
};
