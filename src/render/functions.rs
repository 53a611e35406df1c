//! What templates can call: words, texts, drawings.
//!
//! Filters: `prose`, `line`, `runs`, `yaml`, `place`, `figures`. Functions: `say`, `lamp`, `bar`, `scale_of`, `rail_drawing`, `chain_drawing`, `minutes_rule`,
//! `map_drawing`, `circuit_drawing`, `shapes`, `qr`. None decides what a page says.

use super::figures::{Shapes, chain, circuit, lamp, map, minutes, rail, shares};
use super::forms::Stock;
use super::words::Words;
use super::{code, prose, qr};
use crate::handbook::Targets;
use crate::model::Id;
use fluent_bundle::{FluentArgs, FluentValue};
use serde::Deserialize;
use std::collections::BTreeMap;
use std::io::Write;
use std::sync::{Arc, Mutex, PoisonError};
use tera::{Kwargs, State, Tera, TeraResult, Value};

/// Makes the names known, so that templates can be read before there is a handbook.
pub fn declare(tera: &mut Tera) {
    let words = Arc::new(Words::of("en", &[]));
    let targets = Arc::new(Targets::new());
    texts(tera, &words, &targets);
    languages(tera, &Arc::default());
    drawings(tera, &words, None);
    qr_codes(tera, None);
}

/// Gives the names their meaning for one handbook. With a stock, what drawings share goes there. `address`: where the handbook is on
/// the net.
pub fn register(
    tera: &mut Tera,
    words: &Arc<Words>,
    targets: Targets,
    stock: Option<&Arc<Stock>>,
    address: Option<&str>,
) {
    tera.set_escape_fn(escape);
    texts(tera, words, &Arc::new(targets));
    drawings(tera, words, stock);
    qr_codes(tera, address);
    if stock.is_some() {
        // A file that has to be small shows source without colours.
        tera.register_filter("yaml", |text: &str, _: Kwargs, _: &State<'_>| Value::safe_string(&code::escaped(text)));
    }
}

/// `qr(page=…)`: the code of a page's address on the net; nothing where the handbook has none.
fn qr_codes(tera: &mut Tera, address: Option<&str>) {
    let book = address.map(str::to_owned);
    tera.register_function("qr", move |args: Kwargs, _: &State<'_>| -> TeraResult<String> {
        let page: String = args.must_get("page")?;
        Ok(qr::on_the_net(book.as_deref(), &page).and_then(|address| qr::svg(&address)).unwrap_or_default())
    });
}

/// What the languages of the handbook are called, each in its own words.
pub fn languages(tera: &mut Tera, names: &Arc<BTreeMap<String, String>>) {
    let names = names.clone();
    tera.register_function("language_name", move |args: Kwargs, _: &State<'_>| -> TeraResult<String> {
        let language: String = args.must_get("language")?;
        Ok(names.get(&language).cloned().unwrap_or(language))
    });
}

/// Text as HTML. The template library's own writes letter by letter; most texts need one write.
fn escape(text: &str, out: &mut dyn Write) -> std::io::Result<()> {
    let mut rest = text;
    while let Some(at) = rest.find(['&', '<', '>', '"', '\'']) {
        let (plain, found) = rest.split_at(at);
        out.write_all(plain.as_bytes())?;
        out.write_all(match found.as_bytes().first() {
            Some(b'&') => b"&amp;",
            Some(b'<') => b"&lt;",
            Some(b'>') => b"&gt;",
            Some(b'"') => b"&quot;",
            _ => b"&#39;",
        })?;
        rest = &found[1..];
    }
    out.write_all(rest.as_bytes())
}

fn texts(tera: &mut Tera, words: &Arc<Words>, targets: &Arc<Targets>) {
    let (said, known) = (words.clone(), targets.clone());
    tera.register_filter("prose", move |text: &str, _: Kwargs, _: &State<'_>| {
        Value::safe_string(&prose::block(text, &known, &said))
    });
    let (said, known) = (words.clone(), targets.clone());
    tera.register_filter("line", move |text: &str, _: Kwargs, _: &State<'_>| {
        Value::safe_string(&prose::line(text, &known, &said))
    });
    tera.register_filter("runs", |said: Vec<String>, _: Kwargs, _: &State<'_>| runs(&said));
    tera.register_filter("yaml", |text: &str, _: Kwargs, _: &State<'_>| Value::safe_string(&code::yaml(text)));
    let said = words.clone();
    tera.register_filter("place", move |place: &str, _: Kwargs, _: &State<'_>| place_name(place, &said));
    let said = words.clone();
    tera.register_filter("figures", move |text: &str, _: Kwargs, _: &State<'_>| said.figures(text));
    let said = words.clone();
    tera.register_function("say", move |args: Kwargs, _: &State<'_>| say(&said, &args));
}

/// What is said for 0, 1, 2, …, with those alike but for their number said once: `0:none|1:1 page|2:# pages`.
fn runs(said: &[String]) -> String {
    let mut parts: Vec<(usize, String)> = Vec::new();
    for (number, words) in said.iter().enumerate() {
        let alike = words.replace(&number.to_string(), "#");
        let goes_on = parts.last().is_some_and(|(_, last)| *last == alike && alike.contains('#'));
        if !goes_on {
            parts.push((number, alike));
        }
    }
    let parts: Vec<String> = parts.iter().map(|(number, words)| format!("{number}:{words}")).collect();
    parts.join("|")
}

/// What people call a place: the message for one that the program knows, and the id as words for a club's own.
fn place_name(place: &str, words: &Words) -> String {
    let id = format!("place-{place}");
    if words.knows(&id) { words.say(&id) } else { Id(place.to_owned()).spoken() }
}

fn say(words: &Words, args: &Kwargs) -> TeraResult<String> {
    let id: String = args.must_get("id")?;
    if !words.knows(&id) {
        return Err(tera::Error::message(format!("there is no message `{id}`")));
    }
    let mut given = FluentArgs::new();
    for (name, value) in args.iter() {
        let name = name.to_string();
        if name == "id" {
            continue;
        }
        match value.as_f64() {
            Some(number) => given.set(name, FluentValue::from(number)),
            // What a message calls its value is a figure with its unit.
            None if name == "value" => given.set(name, FluentValue::from(words.figures(&value.to_string()))),
            None => given.set(name, FluentValue::from(value.to_string())),
        }
    }
    Ok(words.say_with(&id, &given))
}

fn drawings(tera: &mut Tera, words: &Arc<Words>, stock: Option<&Arc<Stock>>) {
    let shapes = Value::normal_string(&lamp::shapes());
    tera.register_function("shapes", move |_: Kwargs, _: &State<'_>| shapes.clone());
    tera.register_function("lamp", |args: Kwargs, _: &State<'_>| -> TeraResult<String> {
        let state: String = args.must_get("state")?;
        let light = match args.get::<String>("light")?.as_deref() {
            Some("white") => lamp::Light::White,
            Some("coloured") => lamp::Light::Coloured,
            _ => lamp::Light::Yellow,
        };
        Ok(lamp::lamp(lamp_of(&state), light, Shapes::Shared))
    });
    let shared = stock.cloned();
    tera.register_function("bar", move |args: Kwargs, _: &State<'_>| {
        args.deserialize()
            .map(|given: Bar| shared.as_ref().map_or_else(|| bar(&given), |stock| stock.bar(&bar(&given))))
    });
    tera.register_function("scale_of", |args: Kwargs, _: &State<'_>| -> TeraResult<u64> {
        let given: Scaled = args.deserialize()?;
        // The scale ends at a whole number in 100.
        Ok(shares::scale(&given.rows.iter().map(|row| row.share.in_hundred()).collect::<Vec<_>>()).ceil() as u64)
    });
    let rails = Rails { stock: stock.cloned(), ..Rails::default() };
    tera.register_function("rail_drawing", move |args: Kwargs, _: &State<'_>| {
        args.deserialize().map(|given: RailGiven| rails.of(&given.rail))
    });
    tera.register_function("chain_drawing", |args: Kwargs, _: &State<'_>| -> TeraResult<String> {
        let arrangement: String = args.must_get("arrangement")?;
        let arrangement = if arrangement == "wide" { chain::Arrangement::Wide } else { chain::Arrangement::Tall };
        Ok(chain::chain(arrangement))
    });
    let (said, shared) = (words.clone(), stock.cloned());
    tera.register_function("minutes_rule", move |args: Kwargs, _: &State<'_>| {
        let drawn = args.deserialize().map(|given: RuleGiven| rule(&given, &said))?;
        TeraResult::Ok(shared.as_ref().map_or_else(|| drawn.clone(), |stock| stock.minutes(&drawn)))
    });
    let said = words.clone();
    tera.register_function("circuit_drawing", move |args: Kwargs, _: &State<'_>| {
        args.deserialize().map(|given: CircuitGiven| circuit_of(given, &said))
    });
    let said = words.clone();
    tera.register_function("map_drawing", move |args: Kwargs, _: &State<'_>| {
        args.deserialize().map(|given: MapGiven| map_of(&given, &said))
    });
}

fn lamp_of(state: &str) -> lamp::Lamp {
    match state {
        "lit" => lamp::Lamp::Lit,
        "dark" => lamp::Lamp::Dark,
        _ => lamp::Lamp::ComesAndGoes,
    }
}

#[derive(Deserialize)]
struct ShareGiven {
    fine: u32,
}

impl ShareGiven {
    fn in_hundred(&self) -> f64 {
        f64::from(self.fine) / 100.0
    }
}

#[derive(Deserialize)]
struct Bar {
    share: ShareGiven,
    #[serde(default)]
    rest: bool,
    scale: f64,
}

fn bar(given: &Bar) -> String {
    let kind = if given.rest { shares::Bar::Rest } else { shares::Bar::Cause };
    shares::bar(given.share.in_hundred(), given.scale, kind)
}

#[derive(Deserialize)]
struct Scaled {
    rows: Vec<Row>,
}

#[derive(Deserialize)]
struct Row {
    share: ShareGiven,
}

#[derive(Deserialize)]
struct RailGiven {
    rail: Rail,
}

#[derive(Deserialize)]
struct Rail {
    item: String,
    places: Vec<RailPlace>,
}

#[derive(Deserialize)]
struct RailPlace {
    place: String,
    state: String,
}

/// The rails drawn so far: many pages show the same item with the same places marked.
#[derive(Default)]
struct Rails {
    stock: Option<Arc<Stock>>,
    drawn: Mutex<BTreeMap<(String, Vec<rail::State>), Value>>,
}

impl Rails {
    fn of(&self, given: &Rail) -> Value {
        let states: Vec<rail::State> = given.places.iter().map(RailPlace::state).collect();
        // The places of an item are always the same, so that its states alone tell two drawings apart.
        let key = (given.item.clone(), states);
        let mut drawn = self.drawn.lock().unwrap_or_else(PoisonError::into_inner);
        drawn
            .entry(key)
            .or_insert_with_key(|(_, states)| {
                let rail = rail_of(given, states);
                Value::normal_string(&self.stock.as_ref().map_or_else(|| rail.clone(), |stock| stock.rail(&rail)))
            })
            .clone()
    }
}

impl RailPlace {
    fn state(&self) -> rail::State {
        match self.state.as_str() {
            "here" => rail::State::Here,
            "out" => rail::State::Out,
            _ => rail::State::Plain,
        }
    }
}

fn rail_of(given: &Rail, states: &[rail::State]) -> String {
    match rail::Item::by_id(&given.item) {
        Some(item) => {
            let marks = given.places.iter().zip(states);
            let marks: Vec<rail::Mark<'_>> =
                marks.map(|(place, state)| rail::Mark { place: &place.place, state: *state }).collect();
            rail::rail(item, &marks, Shapes::Own)
        }
        None => rail::strip(states),
    }
}

#[derive(Deserialize)]
struct RuleGiven {
    standing: Standing,
    ids: String,
}

#[derive(Deserialize)]
struct Standing {
    so_far: u64,
    to_go: u64,
    most: u64,
}

fn rule(given: &RuleGiven, words: &Words) -> String {
    let tenths = |tenths: u64| tenths as f64 / 10.0;
    let title = words.say("minutes");
    let most = words.say_n("at-most-n", tenths(given.standing.most).round());
    minutes::rule(&minutes::Minutes {
        prefix: &given.ids,
        title: &title,
        so_far: tenths(given.standing.so_far),
        to_go: tenths(given.standing.to_go),
        at_most: tenths(given.standing.most),
        now: &words.say("now"),
        most: &most,
    })
}

#[derive(Deserialize)]
struct CircuitGiven {
    figure: FigureGiven,
    ids: String,
}

#[derive(Deserialize)]
struct FigureGiven {
    position: Option<String>,
    fault: Option<String>,
    between: Option<[String; 2]>,
    closed: bool,
    places: Vec<String>,
    points: Vec<PointGiven>,
    pieces: Vec<PieceGiven>,
}

#[derive(Deserialize)]
struct PointGiven {
    place: usize,
    way: usize,
    label: Option<String>,
}

#[derive(Deserialize)]
struct PieceGiven {
    from: usize,
    to: usize,
    place: usize,
    kind: String,
    label: Option<String>,
    value: Option<String>,
    live: bool,
    faulty: bool,
}

/// Whether the loop is closed; of another way than the first lamp's loop, from where to where it leads.
fn whether_closed(figure: &FigureGiven, words: &Words) -> String {
    let state = if figure.closed { "closed" } else { "open" };
    let Some([one, other]) = &figure.between else { return words.say(&format!("circuit-{state}")) };
    let mut ends = FluentArgs::new();
    ends.set("one", one.clone());
    ends.set("other", other.clone());
    words.say_with(&format!("circuit-way-{state}"), &ends)
}

fn circuit_of(given: CircuitGiven, words: &Words) -> String {
    let figure = given.figure;
    let position = figure.position.clone().unwrap_or_else(|| words.say("circuit-at-rest"));
    let closed = whether_closed(&figure, words);
    let fault = figure.fault.map_or_else(String::new, |fault| format!("{fault}. "));
    let mut places: Vec<String> = figure.places.iter().map(|place| place_name(place, words)).collect();
    places.push(words.say("circuit-instrument"));
    let point = |point: PointGiven| circuit::Point { place: point.place, way: point.way, label: point.label };
    circuit::circuit(&circuit::Circuit {
        prefix: given.ids,
        title: format!("{fault}{position}. {closed}"),
        fault: words.say("circuit-fault"),
        places,
        points: figure.points.into_iter().map(point).collect(),
        pieces: figure.pieces.into_iter().map(|piece| piece_of(piece, words)).collect(),
    })
}

fn piece_of(piece: PieceGiven, words: &Words) -> circuit::Piece {
    use circuit::{Condition, Contact, Current, Kind};
    let kind = match piece.kind.as_str() {
        "resistor" => Kind::Resistor,
        "broken" => Kind::Broken,
        "push-closed" => Kind::Push(Contact::Closed),
        "push-open" => Kind::Push(Contact::Open),
        "contact-closed" => Kind::Contact(Contact::Closed),
        "contact-open" => Kind::Contact(Contact::Open),
        other => other.strip_prefix("lamp-").map_or(Kind::Wire, |lamp| Kind::Lamp(lamp_of(lamp))),
    };
    circuit::Piece {
        from: piece.from,
        to: piece.to,
        place: piece.place,
        kind,
        value: piece.value.map(|id| words.say(&id)),
        label: piece.label,
        current: if piece.live { Current::Live } else { Current::None },
        condition: if piece.faulty { Condition::Faulty } else { Condition::Sound },
    }
}

#[derive(Deserialize)]
struct MapGiven {
    node: MapNode,
    ids: String,
}

#[derive(Deserialize)]
struct MapNode {
    title: String,
    share: u32,
    minutes: Option<u64>,
    rest: bool,
    branches: Vec<MapBranch>,
}

#[derive(Deserialize)]
struct MapBranch {
    node: MapNode,
}

/// The map's drawing; nothing when there is no question to draw.
fn map_of(given: &MapGiven, words: &Words) -> String {
    let mut number = 0;
    let map::Branch::Ask(first) = drawn(&given.node, words, &mut number) else { return String::new() };
    let title = words.say("map-title");
    map::map(&map::Map {
        prefix: &given.ids,
        title: &title,
        minutes: &words.say("minutes"),
        shares: &words.say("in-100"),
        figure: &|share| if share > 0.0 && share < 0.5 { "<1".to_owned() } else { format!("{}", share.round()) },
        others: &|n| words.say_n("n-others", n as f64),
        first: &first,
    })
}

fn drawn(node: &MapNode, words: &Words, number: &mut usize) -> map::Branch {
    match node.minutes {
        Some(minutes) => {
            *number += 1;
            let own = number.to_string();
            let branches = node.branches.iter().map(|branch| drawn(&branch.node, words, number)).collect();
            map::Branch::Ask(map::Question {
                number: own,
                label: node.title.clone(),
                minutes: minutes as f64 / 10.0,
                branches,
            })
        }
        None => {
            let label = match (node.title.as_str(), node.rest) {
                ("", _) => words.say("not-on-this-list"),
                (title, true) => format!("{title} / {}", words.say("not-on-this-list")),
                (title, false) => title.to_owned(),
            };
            map::Branch::End(map::Ending { label, share: f64::from(node.share) / 100.0 })
        }
    }
}
