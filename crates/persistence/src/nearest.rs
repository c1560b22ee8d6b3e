//! The known name that a mistyped one is most like.

/// The candidate fewest letters away, if that is at most a third of the name.
pub(crate) fn nearest<'a>(
    name: &str,
    candidates: impl IntoIterator<Item = &'a str>,
) -> Option<&'a str> {
    let most = name.chars().count().div_ceil(3);
    candidates
        .into_iter()
        .map(|c| (distance(name, c), c))
        .min_by_key(|(d, _)| *d)
        .filter(|(d, _)| *d <= most)
        .map(|(_, c)| c)
}

/// Letters to add, drop or change to make one word of the other (the usual row-by-row table).
fn distance(a: &str, b: &str) -> usize {
    let b: Vec<char> = b.chars().collect();
    let mut row: Vec<usize> = (0..=b.len()).collect();
    for (i, ca) in a.chars().enumerate() {
        let mut diagonal = i;
        let mut left = i + 1;
        for (cb, above) in b.iter().zip(row.iter_mut().skip(1)) {
            let here = (diagonal + usize::from(ca != *cb))
                .min(*above + 1)
                .min(left + 1);
            diagonal = *above;
            *above = here;
            left = here;
        }
        if let Some(first) = row.first_mut() {
            *first = i + 1;
        }
    }
    row.last().copied().unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn distances_of_known_words() {
        for (a, b, d) in [
            ("", "", 0),
            ("", "abc", 3),
            ("kitten", "sitting", 3),
            ("centre", "center", 2),
            ("toe_deg", "toe_deg", 0),
            ("abc", "", 3),
        ] {
            assert_eq!(distance(a, b), d, "{a} {b}");
        }
    }

    #[test]
    fn only_a_like_name_is_offered() {
        let names = ["centre", "loaded_radius", "toe_deg"];
        assert_eq!(nearest("center", names), Some("centre"));
        assert_eq!(nearest("radius_loaded", names), None);
    }
}
