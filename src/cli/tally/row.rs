//! A row of a table under the names of its columns: what stands in it, or why it is left out.
//!
//! In: rows of cells. Out: cells by column. Leaves to others: what they mean (`cases`, `failures`).

use super::table::Cell;
use crate::handbook::plain_words;
use crate::model::is_day;

/// Why a row was left out.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Bad {
    /// The line, from 1.
    pub line: usize,
    /// The column in characters, from 1.
    pub column: usize,
    /// What is wrong, and what to do.
    pub why: String,
}

impl Bad {
    /// At a cell.
    pub fn at(cell: &Cell, why: impl Into<String>) -> Bad {
        Bad { line: cell.line, column: cell.column, why: why.into() }
    }
}

/// The columns of a table, by the names in its first line, whatever their order and whatever else stands there.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Columns<const N: usize> {
    names: [&'static str; N],
    at: [usize; N],
}

/// A row; its cells are asked for by the number of the column's name.
#[derive(Debug, Clone, Copy)]
pub struct Row<'t, const N: usize> {
    names: [&'static str; N],
    cells: [Option<&'t Cell>; N],
    /// All of it, whatever the columns are called.
    all: &'t [Cell],
}

/// Whether the first line of a table names a column.
pub fn has_column(head: &[Cell], name: &str) -> bool {
    head.iter().any(|cell| plain_words(&cell.text) == name)
}

impl<const N: usize> Columns<N> {
    /// Finds the columns. Errors: the first that is missing, in words that go on from the table's name.
    pub fn of(head: &[Cell], names: [&'static str; N]) -> Result<Columns<N>, String> {
        let written: Vec<String> = head.iter().map(|cell| plain_words(&cell.text)).collect();
        let mut at = [0; N];
        for (place, wanted) in at.iter_mut().zip(names) {
            *place = written.iter().position(|name| name == wanted).ok_or_else(|| {
                format!("its first line names no column `{wanted}`; it must name: {}", names.join(", "))
            })?;
        }
        Ok(Columns { names, at })
    }

    /// A row under these columns. What a spreadsheet would run is refused, in whatever cell it stands.
    pub fn row<'t>(&self, all: &'t [Cell]) -> Result<Row<'t, N>, Bad> {
        match all.iter().find(|cell| cell.is_formula()) {
            Some(cell) => Err(Bad::at(cell, "this is a formula; write the words or the number itself")),
            None => Ok(Row { names: self.names, cells: self.at.map(|at| all.get(at)), all }),
        }
    }
}

impl<'t, const N: usize> Row<'t, N> {
    /// A cell that may be empty.
    pub fn maybe(&self, column: usize) -> Option<&'t Cell> {
        self.cells.get(column).copied().flatten().filter(|cell| !cell.text.is_empty())
    }

    /// A cell that must not be empty.
    pub fn there(&self, column: usize) -> Result<&'t Cell, Bad> {
        let why = || format!("`{}` is empty", self.names.get(column).copied().unwrap_or_default());
        let place = || {
            let empty = self.cells.get(column).copied().flatten().or(self.all.first());
            empty.map_or((1, 1), |cell| (cell.line, cell.column))
        };
        self.maybe(column).ok_or_else(|| Bad { line: place().0, column: place().1, why: why() })
    }

    /// The texts of the whole row, to see rows that stand twice.
    pub fn texts(&self) -> Vec<String> {
        self.all.iter().map(|cell| cell.text.clone()).collect()
    }

    /// A cell with a day.
    pub fn day(&self, column: usize) -> Result<&'t Cell, Bad> {
        let day = self.there(column)?;
        let is = is_date(&day.text);
        if is { Ok(day) } else { Err(Bad::at(day, "this is no date; write it as 2026-11-25 or 25.11.2026")) }
    }
}

/// A day as `2026-11-25`, `25.11.2026` or `25/11/2026`.
fn is_date(text: &str) -> bool {
    let parts: Vec<&str> = text.split(['-', '.', '/']).collect();
    let [first, month, last] = parts.as_slice() else { return false };
    let (year, day) = if first.len() == 4 { (first, last) } else { (last, first) };
    let number = |text: &str| text.parse::<u32>().ok().filter(|_| text.bytes().all(|byte| byte.is_ascii_digit()));
    let (Some(year), Some(month), Some(day)) = (number(year), number(month), number(day)) else { return false };
    (1900..2200).contains(&year) && is_day(year, month, day)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn days_are_read_as_people_write_them() {
        for day in ["2026-11-25", "25.11.2026", "29/2/2028"] {
            assert!(is_date(day), "{day}");
        }
        for none in ["29.2.2026", "2026-13-01", "yesterday", "2026-11", "+1.1.2026"] {
            assert!(!is_date(none), "{none}");
        }
    }
}
