//! From the set-up fields of the file to a build's, by hand.

use std::collections::BTreeMap;

use trammel_build::{
    Adjusted, AdjustedPart, Adjusters, AxleName, PointName, PointRef, RackEndRange, ReadingRow,
    RodRange, Session, SetUp, Side, StackRange, Statics, SurveyedPoint, ToeMethod, TravelMeasure,
    Weights,
};
use trammel_setup::{Board, Raw, SpotWay, Way};

use super::file;
use crate::convert_pieces::{OddName, bolt};

pub(crate) fn set_up(f: file::SetUp) -> Result<SetUp, OddName> {
    Ok(SetUp {
        adjusters: adjusters(&f.adjusters),
        sessions: f.sessions.into_iter().map(session).collect(),
        surveyed: surveyed(f.surveyed)?,
        survey: f.survey,
        statics: statics(f.statics),
    })
}

fn statics(f: file::Statics) -> Statics {
    Statics {
        toe_deg: [f.toe_left_deg, f.toe_right_deg],
        wanted_toe_deg: f.toe_wanted_deg,
        tape_difference: f.tape_difference,
        camber_deg: [f.camber_left_deg, f.camber_right_deg],
        shock: [f.shock_left, f.shock_right],
        castor_sweep: f.castor_sweep,
        weights: f.weights.map(|w| match w {
            file::Weights::Kg(a, b, c, d) => Weights::Kilograms([a, b, c, d]),
            file::Weights::Lb(a, b, c, d) => Weights::Pounds([a, b, c, d]),
        }),
    }
}

fn adjusters(f: &file::Adjusters) -> Adjusters {
    let stack = |s: file::Stack| StackRange {
        thickness: s.thickness,
        more: s.more,
        fewer: s.fewer,
        only: s.only.map(side),
    };
    Adjusters {
        rack_end: f.rack_end.map(|r| RackEndRange {
            turns_out: r.turns_out,
            turns_in: r.turns_in,
            only: r.only.map(side),
        }),
        washers: f.washers.map(stack),
        washers_along: f.washers_along.map(bolt),
        shims: f.shims.map(stack),
        rod: f.rod.map(|r| RodRange {
            per_turn: r.per_turn,
            shorter: r.shorter,
            longer: r.longer,
        }),
    }
}

fn session(f: file::Session) -> Session {
    Session {
        date: f.date,
        notes: f.notes,
        adjusted: f.adjusted.into_iter().map(adjusted).collect(),
        method: method(f.method),
        accuracy: f.accuracy,
        travel_by: match f.travel_by {
            file::TravelBy::Travel => TravelMeasure::Travel,
            file::TravelBy::WheelHeight => TravelMeasure::WheelHeight,
            file::TravelBy::ShockLength => TravelMeasure::ShockLength,
            file::TravelBy::Blocks => TravelMeasure::Blocks,
        },
        travel_accuracy: f.travel_accuracy,
        rows: f.rows.into_iter().map(row).collect(),
    }
}

fn adjusted(f: file::Adjusted) -> Adjusted {
    Adjusted {
        part: match f.part {
            file::Part::RackEnd => AdjustedPart::RackEnd,
            file::Part::Washers => AdjustedPart::Washers,
            file::Part::Shims => AdjustedPart::Shims,
        },
        side: side(f.side),
        by: f.by,
    }
}

fn side(f: file::Side) -> Side {
    match f {
        file::Side::Left => Side::Left,
        file::Side::Right => Side::Right,
    }
}

fn way(f: file::Way) -> Way {
    match f {
        file::Way::ToeIn => Way::In,
        file::Way::ToeOut => Way::Out,
    }
}

fn method(f: file::Method) -> ToeMethod {
    match f {
        file::Method::TwoDials(spacing, grows) => ToeMethod::TwoDials(spacing, way(grows)),
        file::Method::OneDial(spacing, grows) => ToeMethod::OneDial(spacing, way(grows)),
        file::Method::Tape(across) => ToeMethod::Tape(across),
        file::Method::Laser(distance, board) => ToeMethod::Laser(
            distance,
            match board {
                file::Board::Ahead => Board::Ahead,
                file::Board::Behind => Board::Behind,
            },
        ),
        file::Method::Mirror(distance) => ToeMethod::Mirror(distance),
        file::Method::Degrees => ToeMethod::Degrees,
    }
}

fn row(f: file::Row) -> ReadingRow {
    ReadingRow {
        side: side(f.side),
        run: f.run,
        rack: f.rack,
        place: f.place,
        ride: f.ride,
        shown: match f.shown {
            file::Shown::Pair(front, rear) => Raw::Pair { front, rear },
            file::Shown::Dial(v) => Raw::Dial(v),
            file::Shown::Spot(v, to) => Raw::Spot(
                v,
                match to {
                    file::SpotWay::Inboard => SpotWay::Inboard,
                    file::SpotWay::Outboard => SpotWay::Outboard,
                    file::SpotWay::Ahead => SpotWay::Ahead,
                    file::SpotWay::Back => SpotWay::Back,
                },
            ),
            file::Shown::Degrees(v, to) => Raw::Degrees(v, way(to)),
        },
    }
}

fn surveyed(entries: Vec<file::Surveyed>) -> Result<BTreeMap<PointRef, SurveyedPoint>, OddName> {
    let mut all = BTreeMap::new();
    for (entry, number) in entries.into_iter().zip(1..) {
        let path = format!("set_up.surveyed.{number}.point");
        let known = SurveyedPoint {
            variances: entry.variances,
            covariances: entry.covariances,
        };
        let odd = |expected, found| OddName {
            at: path.clone(),
            path: path.clone(),
            found,
            expected,
        };
        let Some(point) = point_ref(&entry.point) else {
            return Err(odd(
                "axle, side and point, such as \"front.left.tie_rod.inner\"",
                entry.point,
            ));
        };
        if all.insert(point, known).is_some() {
            return Err(odd("every point once", entry.point));
        }
    }
    Ok(all)
}

/// Reads `front.left.tie_rod.inner`.
fn point_ref(text: &str) -> Option<PointRef> {
    let (axle, rest) = text.split_once('.')?;
    let (side, point) = rest.split_once('.')?;
    Some(PointRef {
        axle: [AxleName::Front, AxleName::Rear]
            .into_iter()
            .find(|a| a.word() == axle)?,
        side: [Side::Left, Side::Right]
            .into_iter()
            .find(|s| s.word() == side)?,
        point: PointName::from_path(point)?,
    })
}
