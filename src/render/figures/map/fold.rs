//! Folding a tree that is too big for one look.
//!
//! The rarest cases are folded first: a question whose answers all end becomes one ending, or the two rarest endings of a
//! question become one. A folded ending says how many it stands for, and its minute is the one at which its questions begin.

use super::{Branch, Ending, Question};

/// As many questions and endings are shown at most.
const ROWS: usize = 26;

/// The tree, folded until it can be read.
pub(super) fn folded(first: &Question, others: &dyn Fn(usize) -> String) -> Question {
    let mut tree = Ask::of(first);
    while tree.rows() > ROWS {
        let Some((_, way)) = tree.rarest(Rank::First) else {
            break;
        };
        tree.fold(&way);
    }
    tree.read(others)
}

/// A question whose endings remember how many they stand for.
struct Ask {
    /// Its own branches are empty: they are in `branches`.
    question: Question,
    branches: Vec<Bundle>,
}

enum Bundle {
    Ask(Ask),
    End { ending: Ending, count: usize },
}

/// The first question cannot become an ending.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Rank {
    First,
    Later,
}

impl Ask {
    fn of(question: &Question) -> Self {
        let branches = question.branches.iter().map(|branch| match branch {
            Branch::Ask(next) => Bundle::Ask(Self::of(next)),
            Branch::End(ending) => Bundle::End {
                ending: ending.clone(),
                count: 1,
            },
        });
        Self {
            branches: branches.collect(),
            question: Question {
                branches: Vec::new(),
                ..question.clone()
            },
        }
    }

    fn rows(&self) -> usize {
        let below = self.branches.iter().map(|branch| match branch {
            Bundle::Ask(next) => next.rows(),
            Bundle::End { .. } => 1,
        });
        1 + below.sum::<usize>()
    }

    /// The question at which folding hides the fewest cases: how many in 100, and the way there, branch by branch.
    fn rarest(&self, rank: Rank) -> Option<(f64, Vec<usize>)> {
        let below = self
            .branches
            .iter()
            .enumerate()
            .filter_map(|(index, branch)| match branch {
                Bundle::Ask(next) => {
                    let (share, way) = next.rarest(Rank::Later)?;
                    Some((share, std::iter::once(index).chain(way).collect()))
                }
                Bundle::End { .. } => None,
            });
        let own = self.hidden(rank).map(|share| (share, Vec::new()));
        own.into_iter()
            .chain(below)
            .reduce(|least, next| if next.0 < least.0 { next } else { least })
    }

    /// How many cases in 100 a fold at this very question would hide.
    fn hidden(&self, rank: Rank) -> Option<f64> {
        let ends = self.ends();
        if self.pairs() {
            Some(ends.iter().take(2).map(|(share, _)| share).sum())
        } else if rank == Rank::Later && ends.len() == self.branches.len() {
            Some(ends.iter().map(|(share, _)| share).sum())
        } else {
            None
        }
    }

    /// Whether two endings can be put together here and still leave a choice.
    fn pairs(&self) -> bool {
        self.branches.len() > 2 && self.ends().len() > 1
    }

    /// The endings of this question, the rarest first: share and index.
    fn ends(&self) -> Vec<(f64, usize)> {
        let shares = self
            .branches
            .iter()
            .enumerate()
            .filter_map(|(index, branch)| match branch {
                Bundle::End { ending, .. } => Some((ending.cases(), index)),
                Bundle::Ask(_) => None,
            });
        let mut ends: Vec<(f64, usize)> = shares.collect();
        ends.sort_by(|a, b| a.0.total_cmp(&b.0));
        ends
    }

    fn fold(&mut self, way: &[usize]) {
        match way {
            [] => self.fold_pair(),
            [last] => match self.branches.get_mut(*last) {
                Some(Bundle::Ask(next)) if next.pairs() => next.fold_pair(),
                Some(whole) => *whole = whole.ended(),
                None => {}
            },
            [index, rest @ ..] => {
                if let Some(Bundle::Ask(next)) = self.branches.get_mut(*index) {
                    next.fold(rest);
                }
            }
        }
    }

    /// Puts the two rarest endings together, where the later one stood.
    fn fold_pair(&mut self) {
        if let [(_, one), (_, other), ..] = *self.ends() {
            let gone = self.branches.remove(one.min(other));
            if let Some(kept) = self.branches.get_mut(one.max(other) - 1) {
                *kept = together([&gone, &*kept]);
            }
        }
    }

    fn read(self, others: &dyn Fn(usize) -> String) -> Question {
        let branches = self.branches.into_iter().map(|branch| match branch {
            Bundle::Ask(next) => Branch::Ask(next.read(others)),
            Bundle::End { ending, count: 1 } => Branch::End(ending),
            Bundle::End { ending, count } => Branch::End(Ending {
                label: others(count),
                ..ending
            }),
        });
        Question {
            branches: branches.collect(),
            ..self.question
        }
    }
}

impl Bundle {
    /// Everything below as one ending.
    fn ended(&self) -> Bundle {
        match self {
            Bundle::Ask(ask) => together(&ask.branches),
            Bundle::End { ending, count } => Bundle::End {
                ending: ending.clone(),
                count: *count,
            },
        }
    }
}

fn together<'a>(parts: impl IntoIterator<Item = &'a Bundle>) -> Bundle {
    let (mut share, mut count) = (0.0, 0);
    for part in parts {
        if let Bundle::End {
            ending,
            count: more,
        } = part.ended()
        {
            share += ending.cases();
            count += more;
        }
    }
    Bundle::End {
        ending: Ending {
            label: String::new(),
            share,
        },
        count,
    }
}
