//! A handbook of any size, made up, with everything that a real one has: for the benchmark and the kill test.
//!
//! In: how many fault-finding guides, and the edition. Out: files by their path inside the handbook's folder; the same every time.
//! Each guide has five or six causes, three to five probes in the author's order, two opening jobs and two jobs of its own: one
//! that lasts and one that is a stop-gap; every text is put together from a stock of phrases, so that no two guides read the same.

#![allow(clippy::unwrap_used, reason = "test support: a panic is the report")]

use coquille::model::built_in_places;
use std::collections::BTreeMap;
use std::fmt::Write;
use std::path::Path;

const KIT: [&str; 8] = ["foil", "epee", "sabre", "body-cord", "mask-cord", "mask", "jacket", "reel"];
const DOES: [&str; 6] =
    ["stays lit", "stays dark", "flickers", "burns too long", "comes late", "goes out when it moves"];
const LOOKS: [&str; 8] = [
    "Look at it from all sides in bright light.",
    "Hold it under the lamp and turn it slowly.",
    "Wipe it with a dry cloth before you look.",
    "Bend it gently, first one way, then the other.",
    "Follow it with a loupe from one end to the other.",
    "Press it with a thumb and let it go ten times.",
    "Pull it lightly, as a fencer's step would.",
    "Compare it with a sound one from the drawer.",
];
const SIGNS: [&str; 8] = [
    "A dull place is *worn*; a bright one has been rubbed lately.",
    "Green or grey dust is corrosion, and **it conducts** when it is damp.",
    "A <word:strand> that stands out touches what it should not.",
    "What moves by more than a hair's breadth is loose.",
    "A reading that jumps is a bad <word:contact>, not a bad meter.",
    "If you are not sure, let somebody else look as well.",
    "The <limit:contact-ohms> holds for a clean contact only.",
    "Remember where each screw came from: they are not all of one length.",
];
const WHYS: [&str; 6] = [
    "Sweat dries into a salt that draws water again.",
    "Each hit bends it a little, always in the same place.",
    "The bag presses on it on the way home.",
    "It was fitted in a hurry before an event.",
    "The thread had play from the start.",
    "Heat has made the sleeve hard.",
];
const TOOLS: [&str; 6] = ["bench-tester", "clamp", "screwdriver", "loupe", "tray", "ohmmeter"];
const PARTS: [&str; 4] = ["spring", "screw", "wire", "sleeve"];

/// The handbook's files, by path.
pub fn handbook(guides: usize, edition: &str) -> BTreeMap<String, String> {
    let mut files = BTreeMap::new();
    files.insert("handbook.yaml".to_owned(), cover(edition));
    files.insert("stores/bench.yaml".to_owned(), STORES.to_owned());
    files.insert("limits/shop.yaml".to_owned(), LIMITS.to_owned());
    files.insert("words/trade.yaml".to_owned(), WORDS.to_owned());
    for number in 0..guides {
        let guide = Guide::of(number, guides);
        files.insert(format!("faults/{}.yaml", guide.id), guide.symptom());
        files.insert(format!("jobs/{}.yaml", guide.lasting()), guide.job(Holds::ForGood));
        files.insert(format!("jobs/{}.yaml", guide.stop_gap()), guide.job(Holds::ForATime));
    }
    files
}

/// Writes a handbook's files below a folder.
pub fn write(folder: &Path, files: &BTreeMap<String, String>) {
    for (name, text) in files {
        let path = folder.join(name);
        std::fs::create_dir_all(path.parent().unwrap()).unwrap();
        std::fs::write(path, text).unwrap();
    }
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Holds {
    ForGood,
    ForATime,
}

/// What varies from guide to guide.
struct Guide {
    number: usize,
    id: String,
    /// The guide whose lasting job is this one's second remedy.
    neighbour: String,
    kit: &'static str,
    places: &'static [&'static str],
    probes: usize,
}

fn id(number: usize) -> String {
    format!("{}-fault-{number}", KIT[number % KIT.len()])
}

impl Guide {
    fn of(number: usize, guides: usize) -> Guide {
        let kit = KIT[number % KIT.len()];
        let neighbour = id((number + KIT.len()) % guides);
        Guide {
            number,
            id: id(number),
            neighbour,
            kit,
            places: built_in_places(kit).unwrap(),
            probes: 3 + number / 3 % 3,
        }
    }

    fn lasting(&self) -> String {
        format!("mend-{}", self.id)
    }

    fn stop_gap(&self) -> String {
        format!("nurse-{}", self.id)
    }

    fn place(&self, at: usize) -> &'static str {
        self.places[(self.number + at) % self.places.len()]
    }

    /// One of a stock, by the guide's number and a salt: neighbours differ, and so do the texts of one guide.
    fn pick(&self, stock: &[&'static str], salt: usize) -> &'static str {
        let mixed = (self.number * 2_654_435_761 + salt * 40_503) >> 7;
        stock[mixed % stock.len()]
    }

    fn two(&self, salt: usize) -> String {
        format!("{} {}", self.pick(&LOOKS, salt), self.pick(&SIGNS, salt + 1))
    }

    fn symptom(&self) -> String {
        let Guide { number, id, kit, probes, .. } = self;
        let mut text = format!(
            "symptom: {id}\ntitle: The lamp {} at the {}, no. {number}\nkit: {kit}\nseen on: tester\n\
             lamps: {{at rest: {}, pressed: {}}}\nsays: >-\n  Seen on the tester with a good cord. {}\n  {} See also <word:contact>.\n\
             also: [trouble {number}, {} fault {number}]\n",
            self.pick(&DOES, 1),
            spoken(self.place(0)),
            self.pick(&["lit", "dark"], 2),
            self.pick(&["lit", "dark", "comes and goes"], 3),
            self.pick(&WHYS, 4),
            self.two(5),
            spoken(self.place(1)),
        );
        self.first(&mut text);
        self.causes(&mut text);
        self.access(&mut text);
        write!(
            text,
            "order: as written\nwhy: >-\n  From one end to the other, so that nothing is skipped. {}\nprobes:\n",
            self.pick(&WHYS, 6)
        )
        .unwrap();
        (0..*probes).for_each(|at| self.probe(&mut text, at));
        write!(
            text,
            "not on this list:\n  says: >-\n    The list covers about nine in ten cases. {} Tag it and put it aside.\n  lasting: {}\n",
            self.pick(&SIGNS, 7),
            self.lasting()
        )
        .unwrap();
        text
    }

    fn first(&self, text: &mut String) {
        write!(
            text,
            "first:\n  - first: item-alone\n    ask: With {} alone on the tester, is it still so?\n    do: >-\n      {}\n    \
             short: Alone on the tester.\n    minutes: 0.5\n    answers:\n      - {{answer: still, title: Still so, then: go on, \
             says: It is this item.}}\n      - {{answer: gone, title: It is gone, then: {}, says: It is another item.}}\n",
            spoken(self.kit),
            self.two(10),
            self.neighbour
        )
        .unwrap();
    }

    /// A cause a probe, and one that the first probe finds as well.
    fn causes(&self, text: &mut String) {
        text.push_str("shares: estimated\ncauses:\n");
        for at in 0..=self.probes {
            let remedy = if at % 2 == 0 { self.lasting() } else { format!("mend-{}", self.neighbour) };
            let share = 10 + (self.number + at * 3) % 7;
            write!(
                text,
                "  - cause: c{at}\n    title: {} at the {}\n    place: {}\n    share: {share}\n    lasting: {remedy}\n    says: {}\n",
                self.pick(&["Worn through", "Dirt", "A loose end", "A break", "A bent part", "Damp"], 20 + at),
                spoken(self.place(at)),
                self.place(at),
                self.pick(&WHYS, 30 + at),
            )
            .unwrap();
            if at == 1 {
                writeln!(text, "    stop-gap: {}", self.stop_gap()).unwrap();
            }
        }
    }

    fn access(&self, text: &mut String) {
        write!(
            text,
            "access:\n  - {{access: cover-off, title: Take the cover off, closing: Put the cover back, open: 1, close: {}}}\n  \
             - access: inner-out\n    title: Take the inner part out\n    closing: Put the inner part back\n    open: 1.5\n    close: 3\n    \
             needs: cover-off\n    safety: {{caution: A spring may throw small parts. Keep your face away.}}\n    procedure: {}\n",
            1 + self.number % 3,
            self.lasting()
        )
        .unwrap();
    }

    fn probe(&self, text: &mut String, at: usize) {
        let place = self.place(at);
        write!(
            text,
            "  - probe: p{at}\n    ask: Is the {} {}?\n    do: >-\n      {}\n      {}\n    short: {}\n    place: {place}\n    minutes: {}\n",
            spoken(place),
            self.pick(&["worn", "loose", "dirty", "bent", "damp", "cracked"], 40 + at),
            self.two(50 + at),
            self.pick(&WHYS, 60 + at),
            self.pick(&LOOKS, 70 + at),
            1 + (self.number + at) % 4,
        )
        .unwrap();
        text.push_str(match at {
            0 => "",
            1 | 3 => "    needs: cover-off\n",
            _ => "    needs: inner-out\n",
        });
        if at == 2 && self.number.is_multiple_of(4) {
            writeln!(text, "    mends: c2\n    procedure: {}", self.lasting()).unwrap();
            return;
        }
        let last = self.probes;
        let means = if at == 0 { format!("[c0, c{}]", last - last % 2) } else { format!("c{at}") };
        let means = if at == 1 && last % 2 == 1 { format!("[c1, c{last}]") } else { means };
        write!(
            text,
            "    answers:\n      - {{answer: so, title: It is, lamp: dark, means: {means}}}\n      \
             - {{answer: not, title: It is not, lamp: lit, means: otherwise}}\n"
        )
        .unwrap();
    }

    fn job(&self, holds: Holds) -> String {
        let (id, what) = match holds {
            Holds::ForGood => (self.lasting(), "Mend"),
            Holds::ForATime => (self.stop_gap(), "Nurse"),
        };
        let salt = if holds == Holds::ForGood { 100 } else { 200 };
        let mut text = format!(
            "procedure: {id}\ntitle: {what} the {}, no. {}\nkit: {}\nplace: {}\nfor: >-\n  {}\nnot when: {}\nalso: [{what} job {}]\n",
            spoken(self.place(0)),
            self.number,
            self.kit,
            self.place(0),
            self.two(salt),
            self.pick(&WHYS, salt + 1),
            self.number,
        );
        if holds == Holds::ForATime {
            writeln!(text, "holds: some weeks\nlasting: {}", self.lasting()).unwrap();
        }
        write!(
            text,
            "needs:\n  tools: [{}, {}]\n  parts: [{{id: {}, quantity: {}}}]\n  consumables: [{{id: swab, quantity: 2}}]\nhands-on: {}\nwho: anyone\nsteps:\n",
            TOOLS[(self.number + salt / 100) % 3],
            TOOLS[3 + self.number % 3],
            PARTS[self.number % PARTS.len()],
            1 + self.number % 2,
            5 + self.number % 20,
        )
        .unwrap();
        (0..4 + self.number % 4).for_each(|at| self.step(&mut text, salt + 10 * at));
        write!(
            text,
            "prove:\n  - do: {}\n    short: Look again.\n  - {{read: Resistance over the {}, limit: contact-ohms}}\nnext: Go back to <symptom:{}>.\n",
            self.pick(&LOOKS, salt + 2),
            spoken(self.place(0)),
            self.id
        )
        .unwrap();
        text
    }

    fn step(&self, text: &mut String, salt: usize) {
        write!(
            text,
            "  - do: >-\n      {}\n    short: {}\n    learner: >-\n      {} {}\n",
            self.two(salt + 3),
            self.pick(&LOOKS, salt + 4),
            self.pick(&WHYS, salt + 5),
            self.pick(&SIGNS, salt + 6)
        )
        .unwrap();
        match salt % 40 {
            0 => text.push_str("    safety: {caution: Wear <tool:loupe> or glasses. Small parts may fly.}\n"),
            10 => text.push_str("    wait: 2\n    wait for: it dries\n"),
            _ => {}
        }
    }
}

fn spoken(id: &str) -> String {
    id.replace('-', " ")
}

fn cover(edition: &str) -> String {
    let kit: String = KIT.iter().map(|item| format!("  - {item}\n")).collect();
    format!(
        "handbook: long-shelf\ntitle: Long Shelf Fencing Club\nedition: {edition}\nlanguage: en-GB\nunits: metric\npaper: A4\n\
         says: An invented club with a great many guides.\ncaution: >-\n  The rules in force at an event, local law and the weapon control \
         on the day decide. Anything that runs on mains power is for a qualified person.\nkit:\n{kit}"
    )
}

const LIMITS: &str = "\
limits: shop
title: Our own limits
source: shop
looked up: 2026-11-25
entries:
  - limit: contact-ohms
    title: Resistance of a contact
    at most: 0.5 Ω
    at: meter's own leads taken off
    how: Read it three times.
";

const WORDS: &str = "\
words: trade
title: Words
entries:
  - word: contact
    says: Where two metals touch and current passes.
    also: [junction]
  - word: strand
    says: One of the fine threads of copper that make up a wire.
    also: [hair]
";

const STORES: &str = "\
stores: bench
title: The bench
parts:
  - {part: spring, title: Spring, says: Of the same make as the rest.}
  - {part: screw, title: Screw, says: Keep fifty.}
  - {part: wire, title: Wire, says: With its cup.}
  - {part: sleeve, title: Sleeve, says: Thin tube.}
tools:
  - {tool: bench-tester, title: Bench tester, says: Battery and lamp.}
  - {tool: clamp, title: Clamp, says: With soft jaws.}
  - {tool: screwdriver, title: Screwdriver, says: The small one.}
  - {tool: loupe, title: Loupe, says: Five times or more.}
  - {tool: tray, title: Tray, says: With a rim.}
  - {tool: ohmmeter, title: Ohmmeter, says: To a tenth of an ohm.}
consumables:
  - {consumable: swab, title: Swab, says: Dry ones.}
";
