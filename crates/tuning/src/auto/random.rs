//! Pseudo-random numbers: SplitMix64 (Steele, Lea and Flood, OOPSLA 2014, from memory). Same seed, same numbers, on
//! every machine.

#[derive(Clone, Debug)]
pub(crate) struct Random(u64);

impl Random {
    pub(crate) fn new(seed: u64) -> Self {
        Self(seed)
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// Evenly in 0 <= x < 1.
    pub(crate) fn share(&mut self) -> f64 {
        (self.next() >> 11) as f64 / 2.0_f64.powi(53)
    }

    /// Evenly below `count`, which is not nought.
    pub(crate) fn below(&mut self, count: usize) -> usize {
        ((self.share() * count as f64) as usize).min(count - 1)
    }
}

#[cfg(test)]
mod tests {
    use super::Random;

    #[test]
    fn shares_are_even() {
        let mut r = Random::new(7);
        let n = 20_000;
        let mean: f64 = (0..n).map(|_| r.share()).sum::<f64>() / f64::from(n);
        assert!((mean - 0.5).abs() < 0.01, "{mean}");
        let mut counts = [0; 5];
        for _ in 0..n {
            counts[r.below(5)] += 1;
        }
        assert!(
            counts.iter().all(|c| (3700..4300).contains(c)),
            "{counts:?}"
        );
    }
}
