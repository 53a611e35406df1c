//! A set of up to 256 small numbers: the classes that are still possible, or the probes that are left out.

/// A set of numbers below 256.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub(super) struct Set([u64; 4]);

impl Set {
    /// The numbers below `count`, at most 256 of them.
    pub fn below(count: usize) -> Self {
        (0..count.min(256)).fold(Set::default(), |set, i| set.with(i))
    }

    /// This set and `index`; numbers of 256 and more are not kept.
    pub fn with(mut self, index: usize) -> Self {
        if let Some(word) = self.0.get_mut(index / 64) {
            *word |= 1 << (index % 64);
        }
        self
    }

    pub fn has(&self, index: usize) -> bool {
        self.0.get(index / 64).is_some_and(|word| word >> (index % 64) & 1 == 1)
    }

    pub fn and(&self, other: &Self) -> Self {
        Set(std::array::from_fn(|i| self.0[i] & other.0[i]))
    }

    pub fn or(&self, other: &Self) -> Self {
        Set(std::array::from_fn(|i| self.0[i] | other.0[i]))
    }

    pub fn minus(&self, other: &Self) -> Self {
        Set(std::array::from_fn(|i| self.0[i] & !other.0[i]))
    }

    pub fn is_empty(&self) -> bool {
        self.0 == [0; 4]
    }

    pub fn within(&self, other: &Self) -> bool {
        self.minus(other).is_empty()
    }

    pub fn len(&self) -> usize {
        self.0.iter().map(|word| word.count_ones() as usize).sum()
    }

    pub fn first(&self) -> Option<usize> {
        self.iter().next()
    }

    /// The members, least first.
    pub fn iter(&self) -> impl Iterator<Item = usize> + use<> {
        self.0.into_iter().enumerate().flat_map(|(place, word)| Bits(word).map(move |bit| place * 64 + bit))
    }
}

/// The set bits of a word, least first.
pub(super) struct Bits(pub u64);

impl Iterator for Bits {
    type Item = usize;

    fn next(&mut self) -> Option<usize> {
        if self.0 == 0 {
            return None;
        }
        let bit = self.0.trailing_zeros() as usize;
        self.0 &= self.0 - 1;
        Some(bit)
    }
}
