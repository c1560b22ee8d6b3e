//! The set-up part of a build as fields of its file.

use trammel_build::{
    Adjusted, Adjusters, ReadingRow, Session, SetUp, Side, StackRange, Statics, ToeMethod,
    TravelMeasure, Weights,
};
use trammel_setup::{Board, Raw, SpotWay, Way};

use super::{
    item::{Entry, Item},
    pieces::bolt_axis,
};

pub(super) fn set_up(s: &SetUp) -> Item {
    let mut entries = vec![entry("adjusters", adjusters(&s.adjusters))];
    if !s.sessions.is_empty() {
        entries.push(entry(
            "sessions",
            Item::List(s.sessions.iter().map(session).collect()),
        ));
    }
    let surveyed = s.surveyed.iter().map(|(p, known)| {
        let name = format!("{}.{}.{}", p.axle.word(), p.side.word(), p.point);
        Item::Fields(vec![
            entry("point", Item::Text(name)),
            entry("variances", Item::Triple(known.variances)),
            entry("covariances", Item::Triple(known.covariances)),
        ])
    });
    entries.push(entry("surveyed", Item::List(surveyed.collect())));
    let survey = s.survey.iter().cloned().map(Item::Text).collect();
    entries.push(entry("survey", Item::List(survey)));
    entries.push(entry("statics", statics(&s.statics)));
    Item::Fields(entries)
}

fn statics(s: &Statics) -> Item {
    let [toe_left, toe_right] = s.toe_deg;
    let [camber_left, camber_right] = s.camber_deg;
    let [shock_left, shock_right] = s.shock;
    let mut all: Vec<Entry> = [
        ("toe_left_deg", toe_left),
        ("toe_right_deg", toe_right),
        ("toe_wanted_deg", s.wanted_toe_deg),
        ("tape_difference", s.tape_difference),
        ("camber_left_deg", camber_left),
        ("camber_right_deg", camber_right),
        ("shock_left", shock_left),
        ("shock_right", shock_right),
    ]
    .into_iter()
    .filter_map(|(name, v)| v.map(|v| entry(name, Item::Number(v))))
    .collect();
    all.extend(
        s.castor_sweep
            .map(|v| entry("castor_sweep", Item::Triple(v))),
    );
    all.extend(s.weights.map(|w| {
        let word = match w {
            Weights::Kilograms(_) => "kg",
            Weights::Pounds(_) => "lb",
        };
        let figures = w.figures().map(Item::Number).to_vec();
        entry("weights", Item::Tuple(word, figures))
    }));
    Item::Fields(all)
}

fn entry(name: &'static str, item: Item) -> Entry {
    Entry { name, item }
}

fn adjusters(a: &Adjusters) -> Item {
    let mut all = Vec::new();
    let number = |name, v| entry(name, Item::Number(v));
    all.extend(a.rack_end.map(|r| {
        let mut turns = vec![
            number("turns_out", r.turns_out),
            number("turns_in", r.turns_in),
        ];
        turns.extend(only(r.only));
        entry("rack_end", Item::Fields(turns))
    }));
    all.extend(a.washers.map(|s| entry("washers", stack(s))));
    all.extend(
        a.washers_along
            .map(|b| entry("washers_along", bolt_axis(b))),
    );
    all.extend(a.shims.map(|s| entry("shims", stack(s))));
    all.extend(a.rod.map(|r| {
        let rod = vec![
            number("per_turn", r.per_turn),
            number("shorter", r.shorter),
            number("longer", r.longer),
        ];
        entry("rod", Item::Fields(rod))
    }));
    Item::Fields(all)
}

fn stack(s: StackRange) -> Item {
    let mut all = vec![
        entry("thickness", Item::Number(s.thickness)),
        entry("more", Item::Count(s.more)),
        entry("fewer", Item::Count(s.fewer)),
    ];
    all.extend(only(s.only));
    Item::Fields(all)
}

/// The only side that has an adjuster.
fn only(side: Option<Side>) -> Option<Entry> {
    side.map(|s| entry("only", Item::Word(s.word())))
}

fn session(s: &Session) -> Item {
    let mut all = Vec::new();
    for (name, text) in [("date", &s.date), ("notes", &s.notes)] {
        if !text.is_empty() {
            all.push(entry(name, Item::Text(text.clone())));
        }
    }
    if !s.adjusted.is_empty() {
        all.push(entry(
            "adjusted",
            Item::List(s.adjusted.iter().map(adjusted).collect()),
        ));
    }
    all.push(entry("method", method(s.method)));
    all.extend(s.accuracy.map(|v| entry("accuracy", Item::Number(v))));
    let by = match s.travel_by {
        TravelMeasure::Travel => "travel",
        TravelMeasure::WheelHeight => "wheel_height",
        TravelMeasure::ShockLength => "shock_length",
        TravelMeasure::Blocks => "blocks",
    };
    all.push(entry("travel_by", Item::Word(by)));
    all.extend(
        s.travel_accuracy
            .map(|v| entry("travel_accuracy", Item::Number(v))),
    );
    all.push(entry("rows", Item::List(s.rows.iter().map(row).collect())));
    Item::Fields(all)
}

fn adjusted(a: &Adjusted) -> Item {
    Item::Fields(vec![
        entry("part", Item::Word(a.part.word())),
        entry("side", Item::Word(a.side.word())),
        entry("by", Item::Number(a.by)),
    ])
}

fn way(w: Way) -> Item {
    Item::Word(match w {
        Way::In => "toe_in",
        Way::Out => "toe_out",
    })
}

fn method(m: ToeMethod) -> Item {
    match m {
        ToeMethod::TwoDials(v, grows) => {
            Item::Tuple("two_dials", vec![Item::Number(v), way(grows)])
        }
        ToeMethod::OneDial(v, grows) => Item::Tuple("one_dial", vec![Item::Number(v), way(grows)]),
        ToeMethod::Tape(v) => Item::Measure("tape", v),
        ToeMethod::Laser(v, board) => {
            let board = match board {
                Board::Ahead => "ahead",
                Board::Behind => "behind",
            };
            Item::Tuple("laser", vec![Item::Number(v), Item::Word(board)])
        }
        ToeMethod::Mirror(v) => Item::Measure("mirror", v),
        ToeMethod::Degrees => Item::Word("degrees"),
    }
}

fn row(r: &ReadingRow) -> Item {
    let mut all = vec![
        entry("side", Item::Word(r.side.word())),
        entry("run", Item::Count(r.run)),
    ];
    if r.rack != 0.0 {
        all.push(entry("rack", Item::Number(r.rack)));
    }
    all.push(entry("place", Item::Number(r.place)));
    if r.ride {
        all.push(entry("ride", Item::Word("true")));
    }
    all.push(entry("shown", shown(r.shown)));
    Item::Fields(all)
}

fn shown(raw: Raw) -> Item {
    match raw {
        Raw::Pair { front, rear } => {
            Item::Tuple("pair", vec![Item::Number(front), Item::Number(rear)])
        }
        Raw::Dial(v) => Item::Measure("dial", v),
        Raw::Spot(v, to) => {
            let to = match to {
                SpotWay::Inboard => "inboard",
                SpotWay::Outboard => "outboard",
                SpotWay::Ahead => "ahead",
                SpotWay::Back => "back",
            };
            Item::Tuple("spot", vec![Item::Number(v), Item::Word(to)])
        }
        Raw::Degrees(v, to) => Item::Tuple("degrees", vec![Item::Number(v), way(to)]),
    }
}
