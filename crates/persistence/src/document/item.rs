//! A build as the fields of its file: what is written and in which order. What was left out of the build is left out here.

use trammel_build::{
    ArmPoints, AxleSpec, Build, Hit, HitPoint, Limits, Mass, RackEndSpec, RackSpec, RightPoints,
    SpringRate, SpringSpec, Triple, Vehicle,
};
use trammel_geometry::ArmName;

use crate::FORMAT;

/// A value of the file.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Item {
    Format,
    Number(f64),
    Text(String),
    Word(&'static str),
    /// A number in a unit of its own: `kg(300.0)`.
    Measure(&'static str, f64),
    Triple(Triple),
    Names(Vec<String>),
    Fields(Vec<Entry>),
}

/// A named value of the file.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Entry {
    pub name: &'static str,
    pub item: Item,
}

impl Entry {
    /// Whether leaving it out would say the same. An empty thread or grade is not the same as none.
    fn says_nothing(&self) -> bool {
        match &self.item {
            Item::Text(text) => matches!(self.name, "title" | "notes") && text.is_empty(),
            Item::Names(names) => names.is_empty(),
            Item::Fields(entries) => entries.is_empty(),
            _ => false,
        }
    }
}

impl Item {
    /// The entry of this name, where this is a set of fields.
    pub(super) fn entry(&self, name: &str) -> Option<&Item> {
        self.entries()
            .iter()
            .find(|e| e.name == name)
            .map(|e| &e.item)
    }

    pub(super) fn entries(&self) -> &[Entry] {
        match self {
            Self::Fields(entries) => entries,
            _ => &[],
        }
    }

    /// The value as it stands in the file on one line.
    pub(super) fn text(&self) -> String {
        match self {
            Self::Format => FORMAT.to_string(),
            Self::Number(v) => number(*v),
            Self::Text(text) => quoted(text),
            Self::Word(word) => (*word).to_owned(),
            Self::Measure(unit, v) => format!("{unit}({})", number(*v)),
            Self::Triple(t) => format!("({})", t.map(number).join(", ")),
            Self::Names(names) => {
                let quoted: Vec<String> = names.iter().map(|n| quoted(n)).collect();
                format!("[{}]", quoted.join(", "))
            }
            Self::Fields(entries) => {
                let fields: Vec<String> = entries
                    .iter()
                    .map(|e| format!("{}: {}", e.name, e.item.text()))
                    .collect();
                format!("({})", fields.join(", "))
            }
        }
    }
}

/// The shortest digits that read back as the same number.
pub(super) fn number(v: f64) -> String {
    format!("{v:?}")
}

fn quoted(text: &str) -> String {
    let mut quoted = String::from("\"");
    for c in text.chars() {
        match c {
            '"' | '\\' => quoted.extend(['\\', c]),
            // Line ends of notes stay line ends, so that they can be read; a lone return could be lost.
            '\n' | '\t' => quoted.push(c),
            c if c.is_control() || c == '\u{feff}' => {
                quoted.push_str(&format!("\\u{{{:x}}}", u32::from(c)));
            }
            c => quoted.push(c),
        }
    }
    quoted.push('"');
    quoted
}

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

fn entry(name: &'static str, item: Item) -> Entry {
    Entry { name, item }
}

fn numbers<const N: usize>(fields: [(&'static str, Option<f64>); N]) -> Vec<Entry> {
    fields
        .into_iter()
        .filter_map(|(name, v)| v.map(|v| entry(name, Item::Number(v))))
        .collect()
}

fn triples<const N: usize>(fields: [(&'static str, Option<Triple>); N]) -> Vec<Entry> {
    fields
        .into_iter()
        .filter_map(|(name, v)| v.map(|v| entry(name, Item::Triple(v))))
        .collect()
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
    let texts = [("thread", &r.thread), ("grade", &r.grade)];
    let mut entries: Vec<Entry> = texts
        .into_iter()
        .filter_map(|(name, v)| v.clone().map(|v| entry(name, Item::Text(v))))
        .collect();
    entries.extend(numbers([
        ("engagement", r.engagement),
        ("jam_nut", r.jam_nut),
    ]));
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
    Item::Fields(numbers([
        ("toe_change_deg", l.toe_change_deg),
        ("tie_rod_angle_deg", l.tie_rod_angle_deg),
        ("joint_angle_deg", l.joint_angle_deg),
        ("rack_end_factor", l.rack_end_factor),
        ("lock_over_deg", l.lock_over_deg),
    ]))
}
