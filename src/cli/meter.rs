//! `coquille meter`: what lamps and meters show on a circuit, with every fault and in every position.
//!
//! Leaves to others: the computing (`reckoning::circuit`), wiring the guides up (`proof`).

use super::args::{MeterJob, TableFormat};
use super::proof::{findings, opened};
use super::terminal::{Outcome, Terminal};
use crate::model::{Circuit, fill};
use crate::proof::network::{Circuits, Label, Wired, network};
use crate::proof::sights::names_meant;
use crate::proof::{did_you_mean, listed, proof, shown};
use crate::reckoning::circuit::{FaultId, Network, PositionId, Reading, ReadingId, Seen, Span};
use crate::source::{Folder, Tolerant};
use serde_json::{Value, json};
use std::collections::{BTreeMap, BTreeSet};

/// How wide a line may be.
const WIDTH: usize = 80;

/// Runs it. Only the circuit is wired up; the rest of the guides is proofed only to say what is wrong with it.
pub fn run(job: &MeterJob, terminal: &mut Terminal) -> Outcome {
    let Some(folder) = opened(&job.guides, terminal) else { return Outcome::CouldNotRun };
    let (guides, _) = fill(&folder);
    let circuits: Circuits<'_> = guides.circuits.iter().map(|(_, c)| (c.circuit.value.as_str(), c)).collect();
    let asked = asked(&job.circuit);
    let Some(guide) = circuits.get(asked) else {
        if guides.broken.contains(asked) {
            return unsound(asked, &folder, job, terminal);
        }
        terminal.tell(unknown(asked, &circuits, job));
        return Outcome::CouldNotRun;
    };
    let wired = network(guide, &circuits);
    if !wired.is_whole() {
        return unsound(asked, &folder, job, terminal);
    }
    let Some(table) = Table::of(job, guide, &wired, terminal) else { return Outcome::CouldNotRun };
    match job.format {
        TableFormat::Human => terminal.say(table.human().trim_end()),
        TableFormat::Json => terminal.say(format!("{:#}", table.json())),
    }
    Outcome::Good
}

/// There is no such circuit: which there are, or how to begin one.
fn unknown(asked: &str, circuits: &Circuits<'_>, job: &MeterJob) -> String {
    let guides = job.guides.display();
    let known = || circuits.keys().copied();
    match circuits.len() {
        0 => format!(
            "There is no circuit in `{guides}` yet, so there is nothing to read off.\nBegin one: coquille begin --guide circuit"
        ),
        1 => format!("There is no circuit `{asked}` in `{guides}`.\nThere is {}.", listed(known())),
        _ => {
            let all = format!("There are {}.", listed(known()).replace(" or ", " and "));
            format!("There is no circuit `{asked}` in `{guides}`.\n{}", did_you_mean(asked, known(), &all))
        }
    }
}

/// The id that is asked for, by itself or as the name of its file.
fn asked(circuit: &str) -> &str {
    let name = circuit.rsplit(['/', '\\']).next().unwrap_or(circuit);
    name.strip_suffix(".yaml").or(name.strip_suffix(".yml")).unwrap_or(name)
}

fn unsound(id: &str, folder: &Folder, job: &MeterJob, terminal: &mut Terminal) -> Outcome {
    findings(&proof(folder), folder, &job.guides, terminal);
    terminal.tell(format!("The circuit `{id}` is not sound, so nothing can be read off it."));
    Outcome::Faulty
}

/// What is to be shown of a circuit.
struct Table<'w> {
    guide: &'w Circuit,
    wired: &'w Wired,
    positions: Vec<PositionId>,
    faults: Vec<Option<FaultId>>,
    asked: Asked,
    buzzers: BTreeSet<String>,
}

/// Whether one fault was asked for.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Asked {
    OneFault,
    AllFaults,
}

impl<'w> Table<'w> {
    fn of(job: &MeterJob, guide: &'w Circuit, wired: &'w Wired, terminal: &mut Terminal) -> Option<Table<'w>> {
        let readings = guide.readings.iter().filter_map(Tolerant::sound);
        let sounding = readings.filter(|reading| reading.sounds_under.is_some());
        let buzzers = sounding.map(|reading| reading.reading.value.0.clone()).collect();
        let network = &wired.network;
        let positions = match &job.position {
            Some(asked) => {
                vec![network.find_position(&meant("position", asked, network.positions_by_name(), terminal)?)?]
            }
            None => network.positions().collect(),
        };
        let (faults, asked) = match &job.fault {
            Some(asked) => {
                let fault = network.find_fault(&meant("fault", asked, network.faults_by_name(), terminal)?)?;
                (vec![None, Some(fault)], Asked::OneFault)
            }
            None => ([None].into_iter().chain(network.faults().map(Some)).collect(), Asked::AllFaults),
        };
        Some(Table { guide, wired, positions, faults, asked, buzzers })
    }

    fn network(&self) -> &'w Network {
        &self.wired.network
    }

    fn seen(&self, reading: ReadingId, position: PositionId, fault: Option<FaultId>) -> Option<Seen> {
        self.network().seen(reading, position, fault).ok()
    }

    /// A buzzer sounds where a lamp is lit.
    fn heard(&self, reading: &str, words: String) -> String {
        if self.buzzers.contains(reading) { words.replace("lit", "sounds").replace("dark", "silent") } else { words }
    }

    fn human(&self) -> String {
        let mut lines = vec![format!("{} ({})", self.guide.title.value, self.guide.circuit.value)];
        if self.network().readings().next().is_none() {
            lines.push("No lamp or meter is read on this circuit by itself; look at one that uses it.".to_owned());
        }
        for position in &self.positions {
            let name = self.network().position_name(*position);
            lines.push(format!("\n{} ({name})", words(&self.wired.labels.positions, name)));
            lines.extend(match self.asked {
                Asked::OneFault => self.one_by_one(*position),
                Asked::AllFaults => self.blocks(*position),
            });
        }
        lines.push("\nA dot: as sound kit. `lit/dark`: may go either way. `lit~dark`: comes and goes.".to_owned());
        lines.push("Ohms are from the least to the most.".to_owned());
        lines.join("\n")
    }

    /// One line a reading: with the fault, and without.
    fn one_by_one(&self, position: PositionId) -> Vec<String> {
        let network = self.network();
        let lines = network.readings().flat_map(|reading| {
            let id = network.reading_name(reading);
            let kind = network.reading_of(reading);
            let said = |seen: Seen| self.heard(id, shown::seen_with_figure(&seen, kind));
            let shows = |fault| self.seen(reading, position, fault).map_or_else(String::new, said);
            let (sound, faulty) = (shows(None), self.faults.last().map_or_else(String::new, |fault| shows(*fault)));
            let same = if sound == faulty { "as sound kit".to_owned() } else { format!("sound: {sound}") };
            wrapped(&format!("  {id:<24} {faulty:<24} {same}"), &format!("{:<27}", ""))
        });
        lines.collect()
    }

    /// Faults down, readings across, as many side by side as fit.
    fn blocks(&self, position: PositionId) -> Vec<String> {
        let network = self.network();
        let names: Vec<&str> =
            self.faults.iter().map(|fault| fault.map_or("sound", |id| network.fault_name(id))).collect();
        let first = names.iter().map(|name| letters(name)).max().unwrap_or(0).max(5);
        let columns: Vec<(usize, Vec<String>)> =
            network.readings().map(|reading| self.column(reading, position)).collect();
        let mut lines = Vec::new();
        let mut rest = columns.as_slice();
        while !rest.is_empty() {
            let fitting = fitting(rest, first);
            let (now, later) = rest.split_at(fitting);
            let row = |index: usize, name: &str| {
                let cells = now.iter().filter_map(|(width, cells)| Some(padded(cells.get(index)?, width + 2)));
                format!("  {}{}", padded(name, first + 2), cells.collect::<String>()).trim_end().to_owned()
            };
            lines.push(row(0, ""));
            lines.extend(names.iter().enumerate().map(|(index, name)| row(index + 1, name)));
            lines.push(String::new());
            rest = later;
        }
        lines.pop();
        lines
    }

    /// The cells of a reading, its name first, and the widest of them.
    fn column(&self, reading: ReadingId, position: PositionId) -> (usize, Vec<String>) {
        let (sound, id) = (self.seen(reading, position, None), self.network().reading_name(reading));
        let cells = self.faults.iter().map(|fault| {
            let seen = self.seen(reading, position, *fault);
            let as_sound = seen.map(|seen| seen.faulty) == sound.map(|seen| seen.faulty);
            if fault.is_some() && as_sound {
                "·".to_owned()
            } else {
                seen.map_or_else(String::new, |seen| self.heard(id, cell(&seen)))
            }
        });
        let cells: Vec<String> = [id.to_owned()].into_iter().chain(cells).collect();
        (cells.iter().map(|cell| letters(cell)).max().unwrap_or(0), cells)
    }

    fn json(&self) -> Value {
        let network = self.network();
        let named = |id: &str, labels: &BTreeMap<String, Label>| json!({ "id": id, "title": words(labels, id) });
        let labels = &self.wired.labels;
        let readings = network.readings().map(|reading| named(network.reading_name(reading), &labels.readings));
        let positions =
            self.positions.iter().map(|position| named(network.position_name(*position), &labels.positions));
        let faults = self.faults.iter().flatten().map(|fault| named(network.fault_name(*fault), &labels.faults));
        json!({
            "format": 1,
            "circuit": self.guide.circuit.value.as_str(),
            "title": self.guide.title.value,
            "readings": readings.collect::<Vec<_>>(),
            "positions": positions.collect::<Vec<_>>(),
            "faults": faults.collect::<Vec<_>>(),
            "rows": self.rows(),
        })
    }

    fn rows(&self) -> Vec<Value> {
        let network = self.network();
        let mut rows = Vec::new();
        for fault in &self.faults {
            for position in &self.positions {
                for reading in network.readings() {
                    let Some(seen) = self.seen(reading, *position, *fault) else { continue };
                    rows.push(json!({
                        "fault": fault.map(|fault| network.fault_name(fault)),
                        "position": network.position_name(*position),
                        "reading": network.reading_name(reading),
                        "shows": seen.answers().iter().map(shown::answer).collect::<Vec<_>>(),
                        "away": seen.away.map(|away| away.answers.iter().map(shown::answer).collect::<Vec<_>>()),
                        "figure": seen.faulty.figure.and_then(figure),
                        "unit": unit(network.reading_of(reading)),
                    }));
                }
            }
        }
        rows
    }
}

/// The name that is meant, with or without its prefix.
fn meant<'n>(noun: &str, asked: &str, names: impl Iterator<Item = &'n str>, terminal: &mut Terminal) -> Option<String> {
    let names: Vec<&str> = names.collect();
    match names_meant(asked, &names).as_slice() {
        [one] => Some((*one).to_owned()),
        [] => {
            terminal.tell(format!("This circuit has no {noun} `{asked}`."));
            let all = format!("There are {}.", listed(names.iter().copied()).replace(" or ", " and "));
            terminal.tell(did_you_mean(asked, names.iter().copied(), &all));
            None
        }
        several => {
            terminal.tell(format!("`{asked}` could be {}.", listed(several.iter().copied())));
            None
        }
    }
}

fn words(labels: &BTreeMap<String, Label>, id: &str) -> String {
    match labels.get(id) {
        Some(label) => label.title.clone(),
        None if id == "rest" => "At rest".to_owned(),
        None => id.to_owned(),
    }
}

/// A reading in a few letters.
fn cell(seen: &Seen) -> String {
    let state = |outcome: crate::reckoning::circuit::Outcome| {
        let words: Vec<&str> = outcome.answers.iter().map(shown::answer).collect();
        match outcome.figure.filter(|_| !words.contains(&"lit") && !words.contains(&"dark")).and_then(shown::ohms) {
            Some(figure) => figure.strip_suffix(" Ω").unwrap_or(&figure).replace(" to ", ".."),
            None => words.join("/"),
        }
    };
    match seen.away {
        Some(away) if away.answers != seen.faulty.answers => format!("{}~{}", state(seen.faulty), state(away)),
        _ => state(seen.faulty),
    }
}

fn figure(span: Span) -> Option<Value> {
    match span {
        Span::Within { least, usual, most } => Some(json!({ "least": least, "usual": usual, "most": most })),
        _ => None,
    }
}

fn unit(reading: Option<&Reading>) -> Option<&'static str> {
    match reading? {
        Reading::Lamp { .. } | Reading::Ohmmeter { .. } => Some("Ω"),
        Reading::TesterLamp { .. } => Some("A"),
        Reading::ApparatusLamp { .. } => None,
    }
}

fn letters(text: &str) -> usize {
    text.chars().count()
}

fn padded(text: &str, width: usize) -> String {
    let blank = width.saturating_sub(letters(text));
    format!("{text}{}", " ".repeat(blank))
}

/// How many columns fit beside the faults' names; at least one.
fn fitting(columns: &[(usize, Vec<String>)], first: usize) -> usize {
    let mut used = first + 4;
    let fit = columns.iter().take_while(|(width, _)| {
        used += width + 2;
        used <= WIDTH + 2
    });
    fit.count().max(1)
}

/// A line broken at spaces so that it fits.
fn wrapped(line: &str, indent: &str) -> Vec<String> {
    let mut lines = Vec::new();
    let mut rest = line.trim_end().to_owned();
    while letters(&rest) > WIDTH {
        let upto: Vec<usize> =
            rest.char_indices().take(WIDTH).filter(|(_, letter)| *letter == ' ').map(|(at, _)| at).collect();
        let Some(at) = upto.last().copied().filter(|at| *at > indent.len()) else { break };
        let later = rest.split_off(at);
        lines.push(rest.trim_end().to_owned());
        rest = format!("{indent}{}", later.trim_start());
    }
    lines.push(rest);
    lines
}
