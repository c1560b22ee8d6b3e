//! Parts, materials, load cases and accepted cautions as the fields of their file.

use trammel_build::{
    AcceptedCaution, ArmParts, AxleParts, BoltSpec, BracketSpec, Ears, FrameTube, HoleFit,
    JointEnd, JointParts, MaterialSpec, PointName, RackMount, Section, ShearPlane, SteeringSpec,
    Stress, TabOutline, TieRodParts, Tube, WheelParts,
};

use super::{
    item::{Entry, Item},
    pieces::{bolt_axis, entry, force, numbers, texts, triples},
};

pub(super) fn parts(p: &AxleParts) -> Item {
    let mut entries = vec![
        entry("tie_rod", tie_rod(&p.tie_rod)),
        entry("upper_arm", arm(&p.upper_arm)),
        entry("lower_arm", arm(&p.lower_arm)),
        entry("wheel", wheel(&p.wheel)),
    ];
    entries.extend(numbers([("spring_diameter", p.spring_diameter)]));
    entries.extend(
        p.rack_mount
            .iter()
            .map(|m| entry("rack_mount", rack_mount(m))),
    );
    let joints = p.joints.iter().map(|(point, parts)| joint(*point, parts));
    entries.push(entry("joints", Item::List(joints.collect())));
    Item::Fields(entries)
}

fn tie_rod(t: &TieRodParts) -> Item {
    let mut entries: Vec<Entry> = t.tube.iter().map(|t| entry("tube", tube(t))).collect();
    entries.extend(texts([
        ("thread", &t.thread),
        ("grade", &t.grade),
        ("adapter_material", &t.adapter_material),
    ]));
    entries.extend(numbers([
        ("adapter_length", t.adapter_length),
        ("engagement", t.engagement),
        ("adjustment", t.adjustment),
        ("jam_nut", t.jam_nut),
    ]));
    entries.extend(t.side_hit.map(|f| entry("side_hit", force(f))));
    Item::Fields(entries)
}

fn arm(a: &ArmParts) -> Item {
    let mut entries: Vec<Entry> = a.tube.iter().map(|t| entry("tube", tube(t))).collect();
    entries.extend(
        a.spring_tubes
            .map(|n| entry("spring_tubes", Item::Count(n))),
    );
    Item::Fields(entries)
}

fn wheel(w: &WheelParts) -> Item {
    Item::Fields(numbers([
        ("rim_diameter", w.rim_diameter),
        ("rim_width", w.rim_width),
        ("rim_thickness", w.rim_thickness),
        ("tyre_diameter", w.tyre_diameter),
        ("tyre_width", w.tyre_width),
    ]))
}

fn tube(t: &Tube) -> Item {
    let mut entries = vec![entry("section", section(t.section))];
    entries.extend(texts([("material", &t.material)]));
    Item::Fields(entries)
}

fn section(s: Section) -> Item {
    let tuple = |word, numbers: &[f64]| {
        Item::Tuple(word, numbers.iter().map(|v| Item::Number(*v)).collect())
    };
    match s {
        Section::Round(across, wall) => tuple("round", &[across, wall]),
        Section::Square(side, wall) => tuple("square", &[side, wall]),
        Section::Bar(diameter) => tuple("bar", &[diameter]),
    }
}

fn stress(s: Stress) -> Item {
    match s {
        Stress::Megapascals(v) => Item::Measure("mpa", v),
        Stress::Ksi(v) => Item::Measure("ksi", v),
    }
}

fn joint(point: PointName, parts: &JointParts) -> Item {
    let mut entries = vec![entry("at", Item::Text(point.path().to_owned()))];
    entries.extend(parts.end.iter().map(|e| entry("end", end(e))));
    entries.extend(parts.bolt.iter().map(|b| entry("bolt", bolt(b))));
    entries.extend(parts.bracket.iter().map(|b| entry("bracket", bracket(b))));
    Item::Fields(entries)
}

fn end(e: &JointEnd) -> Item {
    let mut entries = texts([("listed", &e.listed)]);
    entries.extend(e.rating.map(|f| entry("rating", force(f))));
    entries.extend(numbers([
        ("swivel_deg", e.swivel_deg),
        ("ball_width", e.ball_width),
        ("body_width", e.body_width),
        ("head_diameter", e.head_diameter),
        ("length", e.length),
    ]));
    Item::Fields(entries)
}

fn bolt(b: &BoltSpec) -> Item {
    let mut entries = texts([("thread", &b.thread), ("grade", &b.grade)]);
    entries.extend(numbers([("spacer", b.spacer)]));
    let plane = |plane| match plane {
        ShearPlane::Shank => "shank",
        ShearPlane::Thread => "thread",
    };
    entries.extend(
        b.shear_plane
            .map(|p| entry("shear_plane", Item::Word(plane(p)))),
    );
    entries.extend(b.direction.map(|axis| entry("direction", bolt_axis(axis))));
    Item::Fields(entries)
}

fn bracket(b: &BracketSpec) -> Item {
    let ears = |ears| match ears {
        Ears::Single => "single",
        Ears::Double => "double",
    };
    let mut entries: Vec<Entry> = b
        .ears
        .iter()
        .map(|e| entry("ears", Item::Word(ears(*e))))
        .collect();
    entries.extend(numbers([
        ("thickness", Some(b.thickness)),
        ("width", Some(b.width)),
        ("height", Some(b.height)),
    ]));
    entries.extend(b.form.map(|f| entry("form", Item::Word(outline(f)))));
    entries.extend(numbers([("hole", b.hole)]));
    entries.extend(b.fit.map(|f| entry("fit", Item::Word(fit(f)))));
    entries.extend(numbers([
        ("edge", b.edge),
        ("gap", b.gap),
        ("boxing", b.boxing),
        ("weld", b.weld),
        ("electrode", b.electrode),
    ]));
    entries.extend(texts([("material", &b.material)]));
    entries.extend(b.tube.iter().map(|t| entry("tube", frame_tube(t))));
    entries.extend(triples([("stands", b.stands)]));
    Item::Fields(entries)
}

fn outline(form: TabOutline) -> &'static str {
    match form {
        TabOutline::Straight => "straight",
        TabOutline::Radiused => "radiused",
        TabOutline::Tapered => "tapered",
    }
}

fn fit(fit: HoleFit) -> &'static str {
    match fit {
        HoleFit::Reamed => "reamed",
        HoleFit::Close => "close",
        HoleFit::Normal => "normal",
        HoleFit::Loose => "loose",
    }
}

fn rack_mount(m: &RackMount) -> Item {
    let mut entries = numbers([
        ("width", Some(m.width)),
        ("height", Some(m.height)),
        ("thickness", Some(m.thickness)),
        ("along", Some(m.along)),
        ("across", Some(m.across)),
    ]);
    entries.extend(texts([("thread", &m.thread)]));
    Item::Fields(entries)
}

fn frame_tube(t: &FrameTube) -> Item {
    let mut entries = triples([("from", Some(t.from)), ("to", Some(t.to))]);
    entries.push(entry("section", section(t.section)));
    Item::Fields(entries)
}

pub(super) fn steering(s: &SteeringSpec) -> Item {
    Item::Fields(numbers([
        ("wheel_diameter", s.wheel_diameter),
        ("friction", s.friction),
        ("stop", s.stop),
    ]))
}

pub(super) fn materials(all: &[MaterialSpec]) -> Item {
    let material = |m: &MaterialSpec| {
        let mut entries = vec![
            entry("name", Item::Text(m.name.clone())),
            entry("yield_strength", stress(m.yield_strength)),
        ];
        entries.extend(m.tensile.map(|s| entry("tensile", stress(s))));
        entries.extend(m.modulus.map(|s| entry("modulus", stress(s))));
        let source = (!m.source.is_empty()).then(|| Item::Text(m.source.clone()));
        entries.extend(source.map(|s| entry("source", s)));
        Item::Fields(entries)
    };
    Item::List(all.iter().map(material).collect())
}

pub(super) fn accepted(all: &[AcceptedCaution]) -> Item {
    let one = |a: &AcceptedCaution| {
        let mut entries = vec![
            entry("caution", Item::Text(a.caution.clone())),
            entry("reason", Item::Text(a.reason.clone())),
        ];
        entries.extend(numbers([("figure", a.figure)]));
        Item::Fields(entries)
    };
    Item::List(all.iter().map(one).collect())
}
