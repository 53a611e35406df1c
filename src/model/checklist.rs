//! `checklist:` an inspection: items with limits, no diagnosis.

use super::common::{Needs, Picture, Safety, Time, Waiver};
use super::value::{Line, Many, Named, Prose};
use crate::source::Tolerant;
use schemars::JsonSchema;
use serde::{Deserialize, Serialize};

/// An inspection.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct Checklist {
    /// Its id.
    pub checklist: Named,
    /// What it is, in words.
    pub title: Line,
    /// The item it is for, if it is for one.
    pub kit: Option<Named>,
    /// What it is for.
    #[serde(rename = "for")]
    pub purpose: Prose,
    /// Other words for it, for the search.
    #[serde(default)]
    pub also: Many<Line>,
    /// What to lay out.
    #[serde(default)]
    pub needs: Needs,
    /// How long it takes.
    pub minutes: Time,
    /// How its bench sheet is laid out: a `list` for one piece, `rows` for a whole bag, or a `queue` at an event.
    #[serde(default)]
    pub sheet: SheetLayout,
    /// Safety notes that hold for the whole list.
    #[serde(default)]
    pub safety: Many<Tolerant<Safety>>,
    /// The items, most critical first.
    pub items: Many<Tolerant<CheckItem>>,
    /// The last item: what is said or done when the list is complete.
    pub done: Option<Prose>,
    /// Pictures of this guide.
    #[serde(default)]
    pub pictures: Many<Tolerant<Picture>>,
    /// Findings that are accepted, with the reason.
    #[serde(default)]
    pub accepts: Many<Tolerant<Waiver>>,
}

impl Checklist {
    /// The sound items in the order in which the bench sheet numbers them: as written, or in a queue by instrument: looks and tries by
    /// hand first, then those with the same tool together, in the order in which the tools come up.
    pub fn numbered(&self) -> Vec<&CheckItem> {
        let mut items: Vec<&CheckItem> = self.items.iter().filter_map(Tolerant::sound).collect();
        if self.sheet == SheetLayout::Queue {
            let mut tools: Vec<Option<&str>> = vec![None];
            tools.extend(items.iter().map(|item| item.tool()).filter(Option::is_some));
            items.sort_by_key(|item| tools.iter().position(|tool| *tool == item.tool()));
        }
        items
    }
}

/// An item of a checklist.
#[derive(Debug, Clone, PartialEq, Eq, Deserialize, JsonSchema)]
pub struct CheckItem {
    /// Its id.
    pub item: Named,
    /// A heading, where a new group of items starts.
    pub heading: Option<Line>,
    /// What to do, and the state that is wanted.
    #[serde(rename = "do")]
    pub full: Prose,
    /// The same for the practised hand.
    pub short: Option<Prose>,
    /// The place on the item of kit.
    pub place: Option<Named>,
    /// The tool that it takes. In a queue the items with the same tool stand together.
    pub with: Option<Named>,
    /// How many pieces of it each fencer brings, in a queue: 1 to 9, one if it is not said.
    pub pieces: Option<Pieces>,
    /// What to read, if something is read.
    pub read: Option<Line>,
    /// The limit that the reading is held against.
    pub limit: Option<Named>,
    /// Caution before it.
    #[serde(default)]
    pub safety: Many<Tolerant<Safety>>,
    /// A picture.
    pub picture: Option<Named>,
    /// The guide that mends it.
    #[serde(rename = "if not")]
    pub if_not: Option<Named>,
}

impl CheckItem {
    fn tool(&self) -> Option<&str> {
        self.with.as_ref().map(|tool| tool.value.as_str())
    }
}

/// How the bench sheet of a checklist is laid out.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq, Serialize, Deserialize, JsonSchema)]
#[serde(rename_all = "lowercase")]
pub enum SheetLayout {
    /// One piece: item by item, with boxes and blanks.
    #[default]
    List,
    /// Several pieces at once: a row for each, a column for each item.
    Rows,
    /// One sheet for each fencer at an event: by instrument, with a slip to hand back. One page more counts what failed by the guide
    /// that mends it: what to teach next.
    Queue,
}

/// How many pieces: 1 to 9.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Deserialize, JsonSchema)]
#[serde(try_from = "u32")]
pub struct Pieces(#[schemars(range(min = 1, max = 9))] pub u8);

impl TryFrom<u32> for Pieces {
    type Error = String;

    fn try_from(number: u32) -> Result<Pieces, String> {
        let pieces = u8::try_from(number).ok().filter(|pieces| (1..=9).contains(pieces));
        pieces.map(Pieces).ok_or_else(|| format!("`{number}` is no number of pieces: write 1 to 9"))
    }
}
