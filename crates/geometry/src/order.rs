//! Lists in the order of a number.

use std::mem;

/// Puts a list in the order of two numbers of each: by the first, the least first, and what is alike in it by the second. What is alike in both stays as it stood; a
/// number that is none comes last (first, if its sign is set).
///
/// The numbers are sorted and the list follows them, so that the program has one sort for every kind of list, not one for each.
pub fn in_order<T>(list: &mut Vec<T>, numbers: impl Fn(&T) -> [f64; 2]) {
    let mut order: Vec<([f64; 2], usize)> = list
        .iter()
        .enumerate()
        .map(|(at, one)| (numbers(one), at))
        .collect();
    sort(&mut order);
    let mut taken: Vec<Option<T>> = mem::take(list).into_iter().map(Some).collect();
    list.extend(
        order
            .into_iter()
            .filter_map(|(_, at)| taken.get_mut(at)?.take()),
    );
}

/// The same by one number.
pub fn least_first<T>(list: &mut Vec<T>, number: impl Fn(&T) -> f64) {
    in_order(list, |one| [number(one), 0.0]);
}

/// The other way round: the greatest first, what is alike as it stood.
pub fn greatest_first<T>(list: &mut Vec<T>, number: impl Fn(&T) -> f64) {
    least_first(list, |one| -number(one));
}

#[inline(never)]
fn sort(order: &mut [([f64; 2], usize)]) {
    order.sort_unstable_by(|([a, b], at), ([c, d], to)| {
        a.total_cmp(c).then(b.total_cmp(d)).then(at.cmp(to))
    });
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_least_comes_first_and_what_is_alike_stays_as_it_stood() {
        let mut list = vec![
            ("c", 3.0),
            ("a", -1.0),
            ("none", f64::NAN),
            ("b", 0.5),
            ("a too", -1.0),
            ("far", f64::INFINITY),
        ];
        least_first(&mut list, |l| l.1);
        let names: Vec<&str> = list.iter().map(|l| l.0).collect();
        assert_eq!(names, ["a", "a too", "b", "c", "far", "none"]);
        greatest_first(&mut list, |l| l.1);
        let names: Vec<&str> = list.iter().map(|l| l.0).collect();
        assert_eq!(names, ["none", "far", "c", "b", "a", "a too"]);
    }

    #[test]
    fn the_second_number_tells_what_is_alike_in_the_first() {
        let mut list = vec![
            (2.0, 1.0, 'd'),
            (1.0, 5.0, 'b'),
            (2.0, 0.0, 'c'),
            (1.0, -5.0, 'a'),
        ];
        in_order(&mut list, |l| [l.0, l.1]);
        assert_eq!(list.iter().map(|l| l.2).collect::<String>(), "abcd");
        in_order(&mut list, |l| [-l.0, l.1]);
        assert_eq!(list.iter().map(|l| l.2).collect::<String>(), "cdab");
    }

    #[test]
    fn it_is_the_order_of_a_stable_sort() {
        // Numbers that repeat, from a linear congruence.
        let mut state = 7_u32;
        let mut list: Vec<(f64, usize)> = (0..500)
            .map(|at| {
                state = state.wrapping_mul(1_664_525).wrapping_add(1_013_904_223);
                (f64::from(state >> 27) - 15.0, at)
            })
            .collect();
        let mut expected = list.clone();
        expected.sort_by(|a, b| a.0.total_cmp(&b.0));
        least_first(&mut list, |l| l.0);
        assert_eq!(list, expected);
        expected.sort_by(|a, b| b.0.total_cmp(&a.0));
        greatest_first(&mut list, |l| l.0);
        assert_eq!(list, expected);
    }
}
