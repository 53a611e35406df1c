//! A sheet as the layout draws it: a head, fields to fill in, and blocks of lines with boxes and blanks.
//!
//! In: a sheet's page data. Out: [`Printed`], once for every number. What the blocks of each kind of sheet are, `parts` says.

use super::text::{Para, Run, Setter};
use super::{parts, table};
use crate::handbook::Cover;
use crate::handbook::page::{Page, Queue, Sheet, SheetOf};
use crate::render::qr;
use serde::Serialize;

/// A sheet, ready for the layout.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Printed {
    /// What it is a sheet of.
    pub title: String,
    /// Of which handbook.
    pub of: String,
    /// Minutes, waiting, who may do it, what was seen.
    pub facts: Vec<Fact>,
    /// What is filled in at the top: number, owner, date, name.
    pub fields: Vec<Field>,
    /// What stands below.
    pub blocks: Vec<Block>,
    /// Who decides.
    pub law: Vec<Para>,
    /// The club's label for the edition.
    pub edition: String,
    /// The page's code in two groups of four.
    pub code: String,
    /// The word for it.
    pub code_word: String,
    /// The code of its address on the net.
    pub qr: Option<Qr>,
}

/// A fact in a frame.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Fact {
    /// What it is.
    pub what: String,
    /// How much.
    pub value: String,
}

/// A field to write in.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Field {
    /// What to write.
    pub what: String,
    /// What is printed in already.
    pub value: Option<String>,
}

/// A QR code.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Qr {
    /// The drawing.
    pub svg: String,
    /// What it is, for who cannot see it.
    pub alt: String,
}

/// A part of a sheet.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(tag = "is", rename_all = "kebab-case")]
pub enum Block {
    /// A heading over lines.
    Heading {
        /// Its words.
        words: String,
    },
    /// A line of work: never parted by the end of a page.
    Line(Box<Line>),
    /// What was found or done, to write and tick at the end.
    Told(Told),
    /// A row for each piece, a column for each check.
    Table(Table),
    /// A slip to cut off and hand back.
    Slip(Slip),
    /// What failed at an event, by the guide that mends it.
    Index(Index),
}

/// A line of work.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Line {
    /// Its number.
    pub number: Option<String>,
    /// DANGER, WARNING, CAUTION, NOTICE before it.
    pub notes: Vec<Note>,
    /// What to do, in the heavier voice.
    pub does: Vec<Run>,
    /// Whether the line itself has a box.
    pub ticked: bool,
    /// Minutes, and the share found so far.
    pub aside: Option<String>,
    /// What is opened for it first, each with a box.
    pub opens: Vec<Vec<Run>>,
    /// Paragraphs below, in the lighter voice.
    pub says: Vec<Para>,
    /// Single instructions, each with a box, one below the other.
    pub subs: Vec<Vec<Run>>,
    /// Boxes side by side.
    pub boxes: Vec<Vec<Run>>,
    /// Blanks for readings.
    pub blanks: Vec<Blank>,
    /// Values in frames.
    pub frames: Vec<String>,
    /// A line to write why something did not pass.
    pub why: Option<String>,
}

/// A safety note.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Note {
    /// `danger`, `warning`, `caution` or `notice`.
    pub signal: &'static str,
    /// The signal word.
    pub word: String,
    /// What it says.
    pub says: Vec<Para>,
}

/// A blank to write a reading in.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Blank {
    /// What to read.
    pub label: Vec<Run>,
    /// The unit to read in.
    pub unit: String,
    /// The limit.
    pub limit: Option<String>,
}

/// What was found or done.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Told {
    /// Its heading.
    pub heading: String,
    /// What can be ticked.
    pub boxes: Vec<String>,
    /// How many lines there are to write on.
    pub lines: usize,
}

/// A row for each piece, a column for each check.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Table {
    /// What is written in the first column.
    pub first: String,
    /// The checks.
    pub columns: Vec<Column>,
    /// The rows' numbers; empty ones to fill in.
    pub rows: Vec<String>,
}

/// A check as a column.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Column {
    /// Its number, as in the list above the table.
    pub number: String,
    /// What is read, or a short form of the limit.
    pub limit: Option<String>,
    /// For a reading: its unit. Without one the cell has a box.
    pub unit: Option<String>,
}

/// A slip to cut off and hand back.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Slip {
    /// Its heading.
    pub heading: String,
    /// What to do with it.
    pub how: String,
    /// What to write on it.
    pub fields: Vec<Field>,
    /// What failed: the check with its limit, and the guide that mends it.
    pub rows: Vec<SlipRow>,
    /// What stands before a guide.
    pub mended_by: String,
}

/// A check that may have failed.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct SlipRow {
    /// The check with its limit.
    pub what: Vec<Run>,
    /// The guide that mends it.
    pub guide: Option<String>,
}

/// What failed at an event, by the guide that mends it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct Index {
    /// How it is used.
    pub how: String,
    /// The four columns: the guide, what leads to it, strokes, their number.
    pub heads: Vec<String>,
    /// A row for each guide.
    pub rows: Vec<IndexRow>,
}

/// A guide with the checks that lead to it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub struct IndexRow {
    /// The guide.
    pub guide: String,
    /// The checks, each with its number.
    pub items: Vec<Vec<Run>>,
}

/// A sheet's form, to be printed once or for every number.
#[derive(Debug)]
pub struct Form<'f> {
    /// What is said of the handbook.
    pub cover: &'f Cover,
    /// Where its pages can be found on the net.
    pub home: Option<&'f str>,
    /// The sheet's page.
    pub page: &'f Page,
    /// The sheet.
    pub sheet: &'f Sheet,
    /// The numbers to print in.
    pub numbers: &'f [String],
}

impl Form<'_> {
    /// The sheet, once for each number, or once with a blank for it. A sheet with a row for each piece takes all numbers at once. A
    /// queue's index of what failed comes after them all.
    pub fn printed(&self, setter: &mut Setter<'_>) -> Vec<Printed> {
        let mut printed = match self.numbers {
            numbers if numbers.is_empty() || parts::has_rows(self.sheet) => vec![self.one(setter, None)],
            numbers => numbers.iter().map(|number| self.one(setter, Some(number))).collect(),
        };
        if let SheetOf::Queue(queue) = &self.sheet.of {
            printed.push(self.index(queue, setter));
        }
        printed
    }

    fn one(&self, setter: &mut Setter<'_>, number: Option<&str>) -> Printed {
        Printed {
            title: setter.plain(&self.page.title),
            facts: parts::facts(self.sheet, setter),
            fields: parts::fields(self.sheet, number, setter),
            blocks: parts::blocks(self.sheet, self.numbers, setter),
            ..self.framed(setter)
        }
    }

    fn index(&self, queue: &Queue, setter: &mut Setter<'_>) -> Printed {
        let title = setter.plain(&self.page.title);
        Printed {
            title: setter.say_with("failures-title", &[("title", &title)]),
            fields: table::fields_of_failures(setter),
            blocks: table::of_failures(&queue.failures, setter),
            ..self.framed(setter)
        }
    }

    /// What stands on every sheet, whatever it is of.
    fn framed(&self, setter: &mut Setter<'_>) -> Printed {
        let book = setter.plain(&self.cover.title);
        let (first, second) = self.page.code.split_at_checked(4).unwrap_or((&self.page.code, ""));
        Printed {
            title: String::new(),
            of: setter.say_with("sheet-of", &[("book", &book)]),
            facts: Vec::new(),
            fields: Vec::new(),
            blocks: Vec::new(),
            law: setter.paras(&self.cover.caution),
            edition: setter.plain(&self.cover.edition),
            code: format!("{first} {second}"),
            code_word: setter.say("sheet-code"),
            qr: self.qr(setter),
        }
    }

    fn qr(&self, setter: &Setter<'_>) -> Option<Qr> {
        let address = qr::on_the_net(self.home, &self.page.address)?;
        let alt = setter.say_with("sheet-qr", &[("address", &address)]);
        Some(Qr { svg: qr::svg(&address)?, alt })
    }
}
