//! The mask and the jacket, from head to hem.
//!
//! Strips cut along the wearer's middle line and laid flat, not to scale: each place as wide as its band, so that it can be
//! pointed at. Mesh is crossed at 45 degrees, conductive cloth is a square weave.

use super::{Place, Plan};

pub(super) const MASK: Plan = Plan {
    places: &[
        Place {
            id: "strap",
            title: "place-strap",
            span: (10.0, 128.0),
            lead: (58.0, 46.0),
        },
        Place {
            id: "padding",
            title: "place-padding",
            span: (128.0, 196.0),
            lead: (166.0, 33.0),
        },
        Place {
            id: "mesh",
            title: "place-mesh",
            span: (196.0, 390.0),
            lead: (292.0, 26.0),
        },
        Place {
            id: "rim",
            title: "place-rim",
            span: (390.0, 426.0),
            lead: (408.0, 20.0),
        },
        Place {
            id: "bib",
            title: "place-bib",
            span: (426.0, 610.0),
            lead: (525.0, 26.0),
        },
        Place {
            id: "clip-point",
            title: "place-clip-point",
            span: (610.0, 690.0),
            lead: (634.0, 42.0),
        },
    ],
    under: &[("d-c", "M2 60h696")],
    parts: &[
        (
            "strap",
            &[
                ("d-o", "M24 46h104v28H24q-14 0-14-14t14-14z"),
                ("d-t", "M24 51h104M24 56h104M24 64h104M24 69h104"),
                ("d-o", "M92 41h12v38H92z"),
            ],
        ),
        (
            "mesh",
            &[("d-o", MESH), ("mesh", MESH), ("d-t", "M293 26v68")],
        ),
        (
            "padding",
            &[
                ("d-o", "M128 48q8-16 68-22v68q-60-6-68-22z"),
                ("d-t", "M140 39v42M154 34v52M168 31v58M182 28v64"),
            ],
        ),
        (
            "rim",
            &[
                ("d-o", "M390 20h36v80h-36z"),
                ("d-t", "M398 20v80M418 20v80"),
                (
                    "d-t",
                    "M408 26v5M408 38v5M408 50v5M408 62v5M408 74v5M408 86v5",
                ),
            ],
        ),
        (
            "bib",
            &[("d-o", BIB), ("weave", BIB), ("d-t", "M432 22v76")],
        ),
        (
            "clip-point",
            &[
                ("d-o", "M604 42h48v36h-48z"),
                ("d-t", "M610 47h36v26h-36z"),
                ("d-p", "M634 54l34-2 8-8 16 2M634 66l34 2 8 8 16-2"),
            ],
        ),
    ],
    over: &[],
};

const MESH: &str = "M196 26h194v68H196z";
const BIB: &str = "M426 22q84 2 154 10 30 4 30 28t-30 28q-70 8-154 10z";

pub(super) const JACKET: Plan = Plan {
    places: &[
        Place {
            id: "collar",
            title: "place-collar",
            span: (14.0, 92.0),
            lead: (50.0, 28.0),
        },
        Place {
            id: "flap",
            title: "place-flap",
            span: (116.0, 184.0),
            lead: (150.0, 12.0),
        },
        Place {
            id: "sleeve",
            title: "place-sleeve",
            span: (208.0, 292.0),
            lead: (250.0, 8.0),
        },
        Place {
            id: "front",
            title: "place-front",
            span: (92.0, 400.0),
            lead: (350.0, 32.0),
        },
        Place {
            id: "zip",
            title: "place-zip",
            span: (400.0, 510.0),
            lead: (450.0, 52.0),
        },
        Place {
            id: "seam",
            title: "place-seam",
            span: (536.0, 564.0),
            lead: (550.0, 32.0),
        },
        Place {
            id: "hem",
            title: "place-hem",
            span: (616.0, 660.0),
            lead: (640.0, 28.0),
        },
    ],
    under: &[("d-c", "M2 60h696")],
    parts: &[
        (
            "collar",
            &[
                ("d-o", "M22 34q34-6 70-6v64q-36 0-70-6-16-26 0-52z"),
                ("d-t", "M84 28v64M30 33q-12 27 0 54"),
            ],
        ),
        (
            "sleeve",
            &[
                ("d-o", "M208 34q14-8 18-28h48q4 20 18 28z"),
                ("d-t", "M226 11h48M214 34q36-10 72 0"),
            ],
        ),
        ("front", &[("d-o", FRONT), ("weave", FRONT)]),
        (
            "flap",
            &[
                ("d-o", "M116 14h68v34h-68z"),
                ("weave", "M116 14h68v34h-68z"),
                ("d-t", "M121 14v34M179 14v34M121 43h58"),
            ],
        ),
        (
            "zip",
            &[
                ("d-o", "M400 51h106q6 9 0 18H400z"),
                (
                    "d-t",
                    "M400 60h96M406 56v8M414 56v8M422 56v8M430 56v8M438 56v8M446 56v8M454 56v8M462 56v8M470 56v8M478 56v8",
                ),
                ("d-o", "M484 54h14v12h-14z"),
            ],
        ),
        (
            "seam",
            &[
                ("d-o", "M540 32h20v56h-20z"),
                (
                    "d-t",
                    "M544 37v6M544 48v6M544 59v6M544 70v6M544 80v6M556 37v6M556 48v6M556 59v6M556 70v6M556 80v6",
                ),
            ],
        ),
        (
            "hem",
            &[
                ("d-o", "M616 28h44v64h-44z"),
                (
                    "d-t",
                    "M624 34v5M624 45v5M624 56v5M624 67v5M624 78v5M652 28v64",
                ),
                ("d-p", "M640 54l34-2 8-8 14 2M640 66l34 2 8 8 14-2"),
            ],
        ),
    ],
    over: &[],
};

const FRONT: &str = "M92 32h524v56H92z";
