//! A table as a spreadsheet saves it: RFC 4180, with commas, semicolons or tabs.
//!
//! In: the text. Out: rows of cells, each with the line and column where it begins. Leaves to others: what the cells mean.

/// A cell.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Cell {
    /// What stands in it, without quotes and without gaps at its ends.
    pub text: String,
    /// The line, from 1.
    pub line: usize,
    /// The column in characters, from 1.
    pub column: usize,
}

impl Cell {
    /// Whether a spreadsheet would take the cell for a formula and run it.
    pub fn is_formula(&self) -> bool {
        self.text.starts_with(['=', '+', '-', '@', '\t', '\r', '＝', '＋', '－', '＠'])
    }
}

/// The rows of a table; lines without a cell are left out. The sign between cells is the one that the first line has most of.
///
/// # Errors
/// The line of a quote that is never closed: everything behind it would be one cell.
pub fn rows(text: &str) -> Result<Vec<Vec<Cell>>, usize> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let first = text.lines().next().unwrap_or("");
    let often = |sign: char| first.matches(sign).count();
    let sign = [',', ';', '\t'].into_iter().max_by_key(|sign| (often(*sign), *sign == ',')).unwrap_or(',');
    let mut reading =
        Reading { sign, rows: Vec::new(), row: Vec::new(), text: String::new(), at: (1, 1), begun: (1, 1) };
    reading.read(text).map_or(Ok(()), Err)?;
    reading.rows.retain(|row| row.iter().any(|cell| !cell.text.is_empty()));
    Ok(reading.rows)
}

struct Reading {
    sign: char,
    rows: Vec<Vec<Cell>>,
    row: Vec<Cell>,
    text: String,
    at: (usize, usize),
    begun: (usize, usize),
}

impl Reading {
    /// Reads it all; the line of a quote that is still open at the end.
    fn read(&mut self, text: &str) -> Option<usize> {
        let mut letters = text.chars().peekable();
        let (mut quoted, mut opened) = (false, 0);
        while let Some(letter) = letters.next() {
            match letter {
                '"' if quoted && letters.peek() == Some(&'"') => {
                    letters.next();
                    self.at.1 += 1;
                    self.text.push('"');
                }
                '"' if quoted || self.text.trim().is_empty() => {
                    quoted = !quoted;
                    opened = self.at.0;
                }
                '\n' if !quoted => {
                    self.cell();
                    self.rows.push(std::mem::take(&mut self.row));
                }
                letter if letter == self.sign && !quoted => self.cell(),
                letter => self.text.push(letter),
            }
            self.step(letter);
            if self.text.is_empty() && !quoted && (letter == '\n' || letter == self.sign) {
                self.begun = self.at;
            }
        }
        if !self.row.is_empty() || !self.text.is_empty() {
            self.cell();
            self.rows.push(std::mem::take(&mut self.row));
        }
        quoted.then_some(opened)
    }

    fn step(&mut self, letter: char) {
        self.at = if letter == '\n' { (self.at.0 + 1, 1) } else { (self.at.0, self.at.1 + 1) };
    }

    fn cell(&mut self) {
        let text = std::mem::take(&mut self.text);
        // A tab at the front of a cell is a danger, not a gap.
        let text = text.trim_end().trim_start_matches([' ', '\n']).to_owned();
        self.row.push(Cell { text, line: self.begun.0, column: self.begun.1 });
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn texts(table: &str) -> Vec<Vec<String>> {
        rows(table).unwrap().into_iter().map(|row| row.into_iter().map(|cell| cell.text).collect()).collect()
    }

    #[test]
    fn quotes_hold_signs_and_line_breaks() {
        assert_eq!(texts("a,b\r\n\"x, \"\"y\"\"\nz\", 2\n\n"), [["a", "b"], ["x, \"y\"\nz", "2"]]);
        assert_eq!(texts("\u{feff}a;b\n1,5;2"), [["a", "b"], ["1,5", "2"]]);
    }

    #[test]
    fn a_cell_knows_where_it_begins() {
        let rows = rows("a,b,c\n1,\"two\nlines\",3\nx,y,z\n").unwrap();
        let at: Vec<_> = rows.iter().flatten().map(|cell| (cell.line, cell.column)).collect();
        assert_eq!(at, [(1, 1), (1, 3), (1, 5), (2, 1), (2, 3), (3, 8), (4, 1), (4, 3), (4, 5)]);
    }

    #[test]
    fn a_quote_that_is_never_closed_is_told_with_its_line() {
        assert_eq!(rows("a,b\n1,2\n3,\"4\n5,6\n"), Err(3));
    }

    #[test]
    fn a_formula_is_one_however_it_begins() {
        let formula = |text: &str| rows(text).unwrap().remove(0).remove(0).is_formula();
        for bad in ["=1+1", "+1", "-1", "@SUM(A1)", "  =1", "\"=1\"", "\"\t=1\"", "＝1"] {
            assert!(formula(bad), "{bad}");
        }
        assert!(!formula("1 - 2"));
    }
}
