//! Names in the order in which they were given, each once.

use std::collections::BTreeMap;

use super::Flaw;

/// Names and their places, from 0.
#[derive(Debug, Clone, Default)]
pub(super) struct Names {
    in_order: Vec<String>,
    places: BTreeMap<String, usize>,
}

impl Names {
    /// Gives the next place to a name; `what` and `most` bound how many there are.
    pub(super) fn enter(&mut self, name: &str, what: &'static str, most: usize) -> Result<usize, Flaw> {
        let place = self.in_order.len();
        if place >= most {
            return Err(Flaw::TooMany(what, most));
        }
        if self.places.contains_key(name) {
            return Err(Flaw::Taken(name.to_owned()));
        }
        self.places.insert(name.to_owned(), place);
        self.in_order.push(name.to_owned());
        Ok(place)
    }

    pub(super) fn place(&self, name: &str) -> Option<usize> {
        self.places.get(name).copied()
    }

    pub(super) fn name(&self, place: usize) -> &str {
        self.in_order.get(place).map_or("?", String::as_str)
    }

    pub(super) fn len(&self) -> usize {
        self.in_order.len()
    }

    pub(super) fn iter(&self) -> impl Iterator<Item = &str> {
        self.in_order.iter().map(String::as_str)
    }

    /// An error that names the place if there is nothing at it.
    pub(super) fn known(&self, place: usize, what: &str) -> Result<(), Flaw> {
        if place < self.len() { Ok(()) } else { Err(Flaw::Unknown(format!("{what} {place}"))) }
    }
}
