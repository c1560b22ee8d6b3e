//! Numbers as they are shown: a true minus sign, and no sign on nought.

/// A true minus sign and as many decimals as asked for; nought has no sign.
#[must_use]
pub fn decimal(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    let nought = text.chars().all(|c| matches!(c, '-' | '0' | '.'));
    match text.strip_prefix('-') {
        Some(rest) if nought => rest.to_owned(),
        Some(rest) => format!("−{rest}"),
        None => text,
    }
}

/// The same with a plus sign when positive.
#[must_use]
pub fn signed(value: f64, decimals: usize) -> String {
    let text = decimal(value, decimals);
    if text.starts_with('−') || text.chars().all(|c| matches!(c, '0' | '.')) {
        text
    } else {
        format!("+{text}")
    }
}

#[cfg(test)]
mod tests {
    use super::{decimal, signed};

    #[test]
    fn nought_has_no_sign_and_minus_is_a_minus() {
        assert_eq!(decimal(-0.5, 1), "−0.5");
        assert_eq!(decimal(-0.04, 1), "0.0");
        assert_eq!(decimal(12.0, 0), "12");
        assert_eq!(signed(0.25, 2), "+0.25");
        assert_eq!(signed(-0.25, 1), "−0.2");
        assert_eq!(signed(-0.001, 2), "0.00");
    }
}
