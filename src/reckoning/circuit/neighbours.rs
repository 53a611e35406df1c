//! Which edges meet at which numbered point: the searches through a network ask for it again and again.
//!
//! In: the two ends of every edge. Out: for each point its edges in the order given, and where they lead.

/// The edges of a network by their points.
pub(super) struct Neighbours {
    /// Where in `ways` those of a point begin; those of the next one begin where they end.
    starts: Vec<usize>,
    /// An edge, and the point at its other end.
    ways: Vec<(usize, usize)>,
}

impl Neighbours {
    /// An edge from a point to itself leads nowhere and is left out.
    pub(super) fn of(ends: &[(usize, usize)]) -> Neighbours {
        let edges = || ends.iter().enumerate().filter(|(_, (from, to))| from != to);
        let points = ends.iter().map(|(from, to)| from.max(to) + 1).max().unwrap_or(0);
        let mut starts = vec![0; points + 1];
        for point in edges().flat_map(|(_, &(from, to))| [from, to]) {
            if let Some(count) = starts.get_mut(point + 1) {
                *count += 1;
            }
        }
        let mut before = 0;
        for start in &mut starts {
            before += *start;
            *start = before;
        }
        let mut free = starts.clone();
        let mut ways = vec![(0, 0); before];
        for (edge, &(from, to)) in edges() {
            for (point, next) in [(from, to), (to, from)] {
                let place = free.get_mut(point).map(|place| std::mem::replace(place, *place + 1));
                if let Some(way) = place.and_then(|place| ways.get_mut(place)) {
                    *way = (edge, next);
                }
            }
        }
        Neighbours { starts, ways }
    }

    /// One more than the highest number of a point.
    pub(super) fn points(&self) -> usize {
        self.starts.len() - 1
    }

    /// The edges of a point, rising, and where each leads.
    pub(super) fn at(&self, point: usize) -> &[(usize, usize)] {
        let place = |point: usize| self.starts.get(point).copied().unwrap_or(self.ways.len());
        self.ways.get(place(point)..place(point + 1)).unwrap_or(&[])
    }
}

#[cfg(test)]
mod tests {
    use super::Neighbours;

    #[test]
    fn each_point_has_its_edges_in_the_order_given() {
        let neighbours = Neighbours::of(&[(0, 4), (4, 2), (2, 2), (4, 0)]);
        assert_eq!(neighbours.at(4), [(0, 0), (1, 2), (3, 0)]);
        assert_eq!(neighbours.at(0), [(0, 4), (3, 4)]);
        assert_eq!(neighbours.at(2), [(1, 4)]);
        assert!(neighbours.at(1).is_empty() && neighbours.at(9).is_empty());
        assert_eq!(neighbours.points(), 5);
        assert_eq!(Neighbours::of(&[]).points(), 0);
    }
}
