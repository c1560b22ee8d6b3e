//! Setting up in another length unit.

use trammel_setup::Raw;

use super::{Session, SetUp, ToeMethod};

/// Puts every length through `length`.
pub(crate) fn convert(set_up: &mut SetUp, length: &impl Fn(&mut f64), area: impl Fn(&mut f64)) {
    let a = &mut set_up.adjusters;
    a.washers
        .iter_mut()
        .chain(&mut a.shims)
        .for_each(|s| length(&mut s.thickness));
    if let Some(rod) = &mut a.rod {
        [&mut rod.per_turn, &mut rod.shorter, &mut rod.longer]
            .into_iter()
            .for_each(length);
    }
    set_up.statics.lengths().for_each(length);
    set_up.sessions.iter_mut().for_each(|s| session(s, length));
    for point in set_up.surveyed.values_mut() {
        point
            .variances
            .iter_mut()
            .chain(&mut point.covariances)
            .for_each(&area);
    }
}

fn session(session: &mut Session, length: &impl Fn(&mut f64)) {
    let in_degrees = session.method == ToeMethod::Degrees;
    method(&mut session.method, length);
    session.adjusted.iter_mut().for_each(|m| length(&mut m.by));
    session.travel_accuracy.iter_mut().for_each(length);
    if !in_degrees {
        session.accuracy.iter_mut().for_each(length);
    }
    for row in &mut session.rows {
        length(&mut row.rack);
        length(&mut row.place);
        match &mut row.shown {
            Raw::Pair { front, rear } => [front, rear].into_iter().for_each(length),
            Raw::Dial(v) | Raw::Spot(v, _) => length(v),
            Raw::Degrees(..) => {}
        }
    }
}

impl Session {
    /// The same session with every length put through `length`.
    #[must_use]
    pub fn converted(mut self, length: impl Fn(&mut f64)) -> Self {
        session(&mut self, &length);
        self
    }
}

fn method(method: &mut ToeMethod, length: &impl Fn(&mut f64)) {
    match method {
        ToeMethod::TwoDials(v, _)
        | ToeMethod::OneDial(v, _)
        | ToeMethod::Tape(v)
        | ToeMethod::Laser(v, _)
        | ToeMethod::Mirror(v) => length(v),
        ToeMethod::Degrees => {}
    }
}
