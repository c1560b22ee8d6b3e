//! A build as the fields of its file: what is written and in which order. What was left out of the build is left out here.

use trammel_build::{
    ArmPoints, AxleSpec, Build, Hit, HitPoint, JamNutAt, JointBolts, KeepOut, KeepOutCorners,
    Limits, MadeBy, Mass, RackEndSpec, RackSpec, RightPoints, SpringRate, SpringSpec, ThreadMaking,
    Tolerances, Vehicle,
};
use trammel_geometry::ArmName;

use super::{
    item::{Entry, Item},
    load_case_fields::load_cases,
    parts_fields::{accepted, materials, parts, steering},
    pieces::{bolt_axis, entry, force, numbers, texts, triples},
    shop_fields::shop,
};

/// All fields of a build's file, even those that say nothing.
pub(super) fn whole(build: &Build) -> Item {
    let locked = build.locked.iter().map(ToString::to_string).collect();
    let mut entries = vec![
        entry("format", Item::Format),
        entry("title", Item::Text(build.title.clone())),
        entry("unit", Item::Word(build.unit.word())),
        entry("front", axle(&build.front)),
    ];
    entries.extend(build.rear.as_ref().map(|r| entry("rear", axle(r))));
    entries.extend([
        entry("vehicle", vehicle(&build.vehicle)),
        entry("hit", hit(&build.hit)),
        entry("limits", limits(&build.limits)),
        entry("keep_outs", keep_outs(&build.keep_outs)),
        entry("tolerances", tolerances(&build.tolerances)),
        entry("set_up", super::set_up::set_up(&build.set_up)),
        entry("steering", steering(&build.steering)),
        entry("materials", materials(&build.materials)),
        entry("load_cases", load_cases(&build.load_cases)),
        entry("shop", shop(&build.shop)),
        entry("accepted", accepted(&build.accepted)),
        entry("locked", Item::Names(locked)),
        entry("notes", Item::Text(build.notes.clone())),
    ]);
    Item::Fields(entries)
}

/// The same without the fields that say nothing.
pub(super) fn without_nothing(item: Item) -> Item {
    match item {
        Item::Fields(entries) => Item::Fields(
            entries
                .into_iter()
                .map(|e| entry(e.name, without_nothing(e.item)))
                .filter(|e| !e.says_nothing())
                .collect(),
        ),
        other => other,
    }
}

fn axle(a: &AxleSpec) -> Item {
    let wheel = numbers([
        ("loaded_radius", Some(a.wheel.loaded_radius)),
        ("toe_deg", Some(a.wheel.toe_deg)),
        ("camber_deg", Some(a.wheel.camber_deg)),
    ]);
    let mut entries = vec![
        entry("upper_arm", arm(&a.upper_arm)),
        entry("lower_arm", arm(&a.lower_arm)),
        entry(
            "tie_rod",
            Item::Fields(triples([
                ("inner", Some(a.tie_rod.inner)),
                ("outer", Some(a.tie_rod.outer)),
            ])),
        ),
        entry(
            "wheel",
            Item::Fields([triples([("centre", Some(a.wheel.centre))]), wheel].concat()),
        ),
    ];
    entries.extend(a.spring.as_ref().map(|s| entry("spring", spring(s))));
    entries.extend(a.travel.map(|t| {
        let stops = numbers([("bump", Some(t.bump)), ("droop", Some(t.droop))]);
        entry("travel", Item::Fields(stops))
    }));
    entries.extend([
        entry("rack", rack(&a.rack)),
        entry("rack_end", rack_end(&a.rack_end)),
        entry("joint_bolts", joint_bolts(&a.joint_bolts)),
        entry("parts", parts(&a.parts)),
        entry("right", right(&a.right)),
    ]);
    Item::Fields(entries)
}

fn arm(a: &ArmPoints) -> Item {
    Item::Fields(triples([
        ("front_pivot", Some(a.front_pivot)),
        ("rear_pivot", Some(a.rear_pivot)),
        ("ball_joint", Some(a.ball_joint)),
    ]))
}

fn spring(s: &SpringSpec) -> Item {
    let arm = Item::Word(match s.arm {
        ArmName::Lower => "lower",
        ArmName::Upper => "upper",
    });
    let rate = s.rate.map(|rate| match rate {
        SpringRate::NewtonsPerMillimetre(v) => Item::Measure("n_per_mm", v),
        SpringRate::PoundsPerInch(v) => Item::Measure("lb_per_in", v),
    });
    let mut entries = vec![entry("arm", arm)];
    entries.extend(triples([
        ("chassis_mount", Some(s.chassis_mount)),
        ("arm_mount", Some(s.arm_mount)),
    ]));
    entries.extend(numbers([
        ("open_length", s.open_length),
        ("closed_length", s.closed_length),
    ]));
    entries.extend(rate.map(|r| entry("rate", r)));
    Item::Fields(entries)
}

fn rack(r: &RackSpec) -> Item {
    let mut entries = triples([("axis", r.axis)]);
    entries.extend(numbers([
        ("travel", r.travel),
        ("travel_per_turn", r.travel_per_turn),
    ]));
    entries.extend(triples([("face", r.face), ("bore_mouth", r.bore_mouth)]));
    Item::Fields(entries)
}

fn rack_end(r: &RackEndSpec) -> Item {
    let mut entries = texts([("thread", &r.thread), ("grade", &r.grade)]);
    entries.extend(numbers([
        ("engagement", r.engagement),
        ("jam_nut", r.jam_nut),
    ]));
    let at = |at| match at {
        JamNutAt::Rack => "rack",
        JamNutAt::Joint => "joint",
    };
    entries.extend(r.jam_nut_at.map(|v| entry("jam_nut_at", Item::Word(at(v)))));
    entries.extend(numbers([("bar_diameter", r.bar_diameter)]));
    entries.extend(texts([("bar_grade", &r.bar_grade)]));
    entries.extend(numbers([
        ("bore_depth", r.bore_depth),
        ("hard_to", r.hard_to),
    ]));
    let making = |making| match making {
        ThreadMaking::Rolled => "rolled",
        ThreadMaking::Cut => "cut",
    };
    entries.extend(r.making.map(|v| entry("making", Item::Word(making(v)))));
    Item::Fields(entries)
}

/// Points of the right side, gathered under the part that they belong to.
fn right(points: &RightPoints) -> Item {
    let mut parts: Vec<Entry> = Vec::new();
    for (point, at) in points {
        let Some((part, name)) = point.path().split_once('.') else {
            continue;
        };
        let at = entry(name, Item::Triple(*at));
        match parts.last_mut() {
            Some(Entry {
                name,
                item: Item::Fields(points),
            }) if *name == part => points.push(at),
            _ => parts.push(entry(part, Item::Fields(vec![at]))),
        }
    }
    Item::Fields(parts)
}

fn vehicle(v: &Vehicle) -> Item {
    let mass = v.mass.map(|mass| match mass {
        Mass::Kilograms(v) => Item::Measure("kg", v),
        Mass::Pounds(v) => Item::Measure("lb", v),
    });
    let mut entries = numbers([("wheelbase", v.wheelbase)]);
    entries.extend(mass.map(|m| entry("mass", m)));
    entries.extend(numbers([
        ("front_share", v.front_share),
        ("centre_of_gravity_height", v.centre_of_gravity_height),
    ]));
    Item::Fields(entries)
}

fn hit(h: &Hit) -> Item {
    let mut entries = numbers([("weights", h.weights)]);
    entries.extend(triples([("direction", h.direction)]));
    entries.extend(h.at.map(|at| {
        let word = match at {
            HitPoint::WheelCentre => "wheel_centre",
            HitPoint::Contact => "contact",
        };
        entry("at", Item::Word(word))
    }));
    Item::Fields(entries)
}

fn limits(l: &Limits) -> Item {
    let mut entries = numbers([
        ("toe_change_deg", l.toe_change_deg),
        ("tie_rod_angle_deg", l.tie_rod_angle_deg),
        ("joint_angle_deg", l.joint_angle_deg),
        ("rack_end_factor", l.rack_end_factor),
        ("lock_over_deg", l.lock_over_deg),
        ("strength_factor", l.strength_factor),
        ("clearance", l.clearance),
        ("rack_end_toe_deg", l.rack_end_toe_deg),
    ]);
    let forces = [("hand_force", l.hand_force), ("kick_back", l.kick_back)];
    entries.extend(
        forces
            .into_iter()
            .filter_map(|(name, f)| f.map(|f| entry(name, force(f)))),
    );
    Item::Fields(entries)
}

fn joint_bolts(b: &JointBolts) -> Item {
    let joints = [("inner", b.inner), ("outer", b.outer)];
    Item::Fields(
        joints
            .into_iter()
            .filter_map(|(name, axis)| axis.map(|a| entry(name, bolt_axis(a))))
            .collect(),
    )
}

fn keep_outs(all: &[KeepOut]) -> Item {
    let numbers = |v: &[f64]| Item::Tuple("", v.iter().copied().map(Item::Number).collect());
    let corners = |k: &KeepOut| match &k.corners {
        KeepOutCorners::Front(a, b) => Item::Tuple("front", vec![numbers(a), numbers(b)]),
        KeepOutCorners::Box(a, b) => Item::Tuple("box", vec![numbers(a), numbers(b)]),
    };
    Item::List(
        all.iter()
            .map(|k| {
                Item::Fields(vec![
                    entry("name", Item::Text(k.name.clone())),
                    entry("corners", corners(k)),
                ])
            })
            .collect(),
    )
}

fn tolerances(t: &Tolerances) -> Item {
    let mut entries = numbers([
        ("jig_drilled", t.jig_drilled),
        ("tape", t.tape),
        ("hand_held", t.hand_held),
    ]);
    entries.extend(t.usual.map(|made| entry("usual", made_by(made))));
    let points = t
        .points
        .iter()
        .map(|((axle, point), made)| made_point(format!("{}.{point}", axle.word()), *made));
    let coordinates = t
        .coordinates
        .iter()
        .map(|(at, made)| made_point(at.to_string(), *made));
    let all = points.chain(coordinates).collect();
    entries.push(entry("points", Item::List(all)));
    Item::Fields(entries)
}

fn made_point(name: String, made: MadeBy) -> Item {
    Item::Fields(vec![
        entry("point", Item::Text(name)),
        entry("made", made_by(made)),
    ])
}

fn made_by(made: MadeBy) -> Item {
    match made {
        MadeBy::JigDrilled => Item::Word("jig_drilled"),
        MadeBy::Tape => Item::Word("tape"),
        MadeBy::HandHeld => Item::Word("hand_held"),
        MadeBy::Deviation(v) => Item::Measure("deviation", v),
    }
}
