//! Faults of the value reader in plain words: which field, what stands there, what could.

use ron::error::{Error, SpannedError};

use crate::{
    Place, ReadFaultKind,
    nearest::nearest,
    ron_text::{Node, Outline, Value, shown},
};

const POINT: &str = "three numbers in brackets, such as (0.0, 22.0, 6.5)";
const TEXT: &str = "text in double quotes";

/// What the field at a path holds. Names of points are the same wherever they stand; `travel` is the stops of an axle and a length of a rack.
fn expected_at(path: &str) -> &'static str {
    let name = path.rsplit('.').next().unwrap_or(path);
    match name {
        "travel" | "lock" if path.starts_with("load_cases.") => {
            "two numbers in brackets, such as (0.3, 1.0)"
        }
        "direction" if path.contains(".bolt.") => {
            "fore_aft, vertical, lateral or direction(x, y, z)"
        }
        "inner" | "outer" if path.contains("joint_bolts.") => {
            "fore_aft, vertical, lateral or direction(x, y, z)"
        }
        "corners" => "front((y, z), (y, z)) or box((x, y, z), (x, y, z)), two opposite corners",
        "usual" | "made" => "jig_drilled, tape, hand_held or deviation(...)",
        "keep_outs" => {
            "a list, such as [(name: \"engine\", corners: front((-6.0, 4.0), (6.0, 20.0)))]"
        }
        "points" => "a list, such as [(point: \"front.tie_rod.inner\", made: jig_drilled)]",
        "point" => "axle and point in quotes, such as \"front.tie_rod.inner\"",
        "front_pivot" | "rear_pivot" | "ball_joint" | "inner" | "outer" | "centre"
        | "chassis_mount" | "arm_mount" | "face" | "bore_mouth" | "axis" | "direction" => POINT,
        "travel" if matches!(path, "front.travel" | "rear.travel") => {
            "the stops in brackets, such as (bump: 4.0, droop: 3.5)"
        }
        "from" | "to" | "stands" => POINT,
        "format" => "a whole number",
        "spring_tubes" => "1 or 2",
        "section" => "round(diameter, wall), square(side, wall) or bar(diameter)",
        "side_hit" | "rating" | "hand_force" | "kick_back" => {
            "n(...) or lbf(...), such as n(900.0) or lbf(200.0)"
        }
        "yield_strength" | "tensile" | "modulus" => "mpa(...) or ksi(...), such as ksi(60.0)",
        "ears" => "single or double",
        "shear_plane" => "shank or thread",
        "jam_nut_at" => "rack or joint",
        "making" => "rolled or cut",
        "hold" => "rolling or braked",
        "actions" => "a list, such as [force((0.0, 0.0, 4.0), static_wheel_load, contact, wheel)]",
        "joints" => "a list, such as [(at: \"tie_rod.inner\", bolt: (thread: \"1/2-20\"))]",
        "materials" => "a list, such as [(name: \"tube, heat 1234\", yield_strength: ksi(60.0))]",
        "own" => "a list of load cases in brackets",
        "off" => "a list of names, such as [\"kerb, sideways\"]",
        "accepted" => {
            "a list, such as [(caution: \"front/both/tie_rod_angle\", reason: \"only used on grass\")]"
        }
        "unit" => "inch or mm",
        "arm" => "lower or upper",
        "at" if path.contains(".joints.") => {
            "a joint of the linkage in quotes, such as \"tie_rod.inner\""
        }
        "at" => "wheel_centre or contact",
        "mass" => "kg(...) or lb(...), such as kg(300.0) or lb(650.0)",
        "rate" => "n_per_mm(...) or lb_per_in(...), such as lb_per_in(115.0)",
        "title" | "notes" | "thread" | "grade" | "name" | "material" | "adapter_material"
        | "bar_grade" | "listed" | "what" | "source" | "caution" | "reason" => TEXT,
        "locked" => "a list of coordinates, such as [\"front.tie_rod.inner.z\"]",
        "front" | "rear" | "upper_arm" | "lower_arm" | "tie_rod" | "wheel" | "spring"
        | "rack_end" | "joint_bolts" | "rack" | "right" | "tolerances" | "vehicle" | "hit"
        | "limits" | "parts" | "tube" | "end" | "bolt" | "bracket" | "steering" | "load_cases" => {
            "fields in brackets, such as (name: value)"
        }
        _ => "a number, such as 12.625",
    }
}

/// The plain fault behind one of the value reader's, and where it is.
pub(crate) fn explain(
    fault: &SpannedError,
    text: &str,
    outline: &Outline,
) -> (usize, ReadFaultKind) {
    let end = Place {
        line: fault.span.end.line,
        column: fault.span.end.col,
    };
    let at = end.offset(text);
    match &fault.code {
        Error::NoSuchStructField {
            expected, found, ..
        } => {
            let key = key_before(text, outline, found, at);
            let (path, at) = key.unwrap_or_else(|| (found.clone(), at));
            let kind = ReadFaultKind::UnknownField {
                parent: parent_name(&path),
                name: found.clone(),
                nearest: nearest(found, expected.iter().copied()).map(str::to_owned),
                known: expected.iter().map(|name| (*name).to_owned()).collect(),
            };
            (at, kind)
        }
        Error::DuplicateStructField { field, .. } => {
            let key = key_before(text, outline, field, at);
            let (path, at) = key.unwrap_or_else(|| ((*field).to_owned(), at));
            (at, ReadFaultKind::Duplicate { path })
        }
        Error::MissingStructField { field, .. } => {
            let (parent, node) = innermost(text, outline, at, false);
            let (parent, node) = item_at(parent, node, at);
            let path = if parent.is_empty() {
                (*field).to_owned()
            } else {
                format!("{parent}.{field}")
            };
            let kind = ReadFaultKind::Missing {
                parent: named(&parent),
                field: (*field).to_owned(),
                expected: sample(&path).to_owned(),
            };
            (node.span.start, kind)
        }
        code => wrong_value(code, text, outline, at),
    }
}

fn wrong_value(code: &Error, text: &str, outline: &Outline, at: usize) -> (usize, ReadFaultKind) {
    let (mut path, mut node) = innermost(text, outline, at, true);
    if path.is_empty() {
        return (at, ReadFaultKind::Other(code.to_string()));
    }
    // Names inside a point, such as (x: 1.0, ...), are the point's fault.
    if let Some((parent, _)) = path.rsplit_once('.')
        && expected_at(parent) == POINT
        && let Some(point) = outline.node(text, parent)
    {
        (path, node) = (parent.to_owned(), point);
    }
    let expected = match (expected_at(&path), &node.value) {
        (TEXT, Value::Text) => "text in double quotes with every backslash in it written twice",
        (expected, _) => expected,
    };
    let odd = node
        .items()
        .iter()
        .find(|n| !matches!(n.value, Value::Number));
    let kind = ReadFaultKind::Wrong {
        found: found_in(text, node),
        expected: expected.to_owned(),
        path,
    };
    (odd.unwrap_or(node).span.start, kind)
}

fn found_in(text: &str, node: &Node) -> String {
    let found = shown(node.text(text));
    let items = node.items();
    let numbers = items.iter().all(|n| matches!(n.value, Value::Number));
    match &node.value {
        Value::Fields(fields) if fields.is_empty() => "empty".to_owned(),
        // A comma for a decimal point makes more numbers than were meant.
        Value::Items(_) if found.starts_with('(') && numbers && items.len() != 3 => {
            let s = if items.len() == 1 { "" } else { "s" };
            format!("{found}, {} number{s}", items.len())
        }
        _ => found,
    }
}

/// How a missing field would be written.
fn sample(path: &str) -> &'static str {
    match expected_at(path) {
        POINT => "(x, y, z)",
        "inch or mm" => "inch` or `unit: mm",
        "lower or upper" => "lower` or `arm: upper",
        "a number, such as 12.625" => "a number",
        "fields in brackets, such as (name: value)" => "(...)",
        other => other,
    }
}

/// Path and place of the last field name like this one that ends at or before an offset.
fn key_before(text: &str, outline: &Outline, name: &str, at: usize) -> Option<(String, usize)> {
    outline
        .fields(text)
        .into_iter()
        .filter(|(_, f)| f.key.end <= at && text.get(f.key.clone()) == Some(name))
        .max_by_key(|(_, f)| f.key.end)
        .map(|(path, f)| (path, f.key.start))
}

/// The innermost field whose value holds an offset, its closing end counting as inside or not; the root when none does.
fn innermost<'a>(
    text: &'a str,
    outline: &'a Outline,
    at: usize,
    with_end: bool,
) -> (String, &'a Node) {
    outline
        .fields(text)
        .into_iter()
        .rev()
        .find(|(_, f)| {
            f.key.start <= at && (at < f.node.span.end || with_end && at == f.node.span.end)
        })
        .map_or((String::new(), &outline.root), |(path, f)| (path, &f.node))
}

/// Within a list, the value of it that an offset lies in or ends.
fn item_at(path: String, node: &Node, at: usize) -> (String, &Node) {
    let mut items = node.items().iter().zip(1..);
    match items.find(|(item, _)| (item.span.start..=item.span.end).contains(&at)) {
        Some((item, number)) => (format!("{path}.{number}"), item),
        None => (path, node),
    }
}

fn parent_name(path: &str) -> String {
    named(path.rsplit_once('.').map_or("", |(parent, _)| parent))
}

fn named(path: &str) -> String {
    if path.is_empty() {
        "the build".to_owned()
    } else {
        path.to_owned()
    }
}

#[cfg(test)]
mod tests {
    use trammel_build::PointName;

    use super::{POINT, TEXT, expected_at};
    use crate::{Place, ReadFault, ReadFaultKind, read, ron_text::Outline};

    const EVERYTHING: &str = include_str!("../tests/format1/everything.ron");

    /// For every field: its path, and the text with its name and value changed.
    fn each(change: impl Fn(&str, &str) -> String) -> Vec<(String, usize, usize, ReadFault)> {
        let outline = Outline::of(EVERYTHING).expect("a tree");
        let fields = outline.fields(EVERYTHING).into_iter();
        fields
            .filter(|(path, _)| path != "format")
            .map(|(path, field)| {
                let (key, value) = (field.key.clone(), field.node.span.clone());
                let changed = change(&EVERYTHING[key.clone()], &EVERYTHING[value.clone()]);
                let text = format!(
                    "{}{changed}{}",
                    &EVERYTHING[..key.start],
                    &EVERYTHING[value.end..]
                );
                let fault = read(&text).expect_err(&path);
                (path, key.start, value.start, fault)
            })
            .collect()
    }

    #[test]
    fn a_wrong_value_is_named_and_placed_whatever_field_it_stands_in() {
        for (path, _, value, fault) in each(|key, _| format!("{key}: [[true]]")) {
            assert_eq!(
                fault.place.map(|p| p.line),
                Some(Place::of(EVERYTHING, value).line),
                "{path}"
            );
            let wrong = matches!(&fault.kind, ReadFaultKind::Wrong { path: at, .. } if *at == path);
            assert!(wrong, "{path}: {fault}");
        }
    }

    #[test]
    fn an_unknown_name_is_placed_and_the_one_meant_is_offered() {
        for (path, key, _, fault) in each(|key, value| format!("{key}x: {value}")) {
            assert_eq!(fault.place, Some(Place::of(EVERYTHING, key)), "{path}");
            let meant = path.rsplit('.').next();
            let offered = matches!(&fault.kind, ReadFaultKind::UnknownField { nearest, .. } if nearest.as_deref() == meant);
            assert!(offered, "{path}: {fault}");
        }
    }

    #[test]
    fn a_field_twice_is_placed_at_the_second() {
        for (path, key, _, fault) in each(|key, value| format!("{key}: {value}, {key}: {value}")) {
            let second = fault.place.map(|p| p.line);
            assert!(second >= Some(Place::of(EVERYTHING, key).line), "{path}");
            let twice = matches!(&fault.kind, ReadFaultKind::Duplicate { path: at } if *at == path);
            assert!(twice, "{path}: {fault}");
        }
    }

    #[test]
    fn a_point_too_far_away_is_placed_whatever_point_it_is() {
        let points = PointName::ALL.map(|point| format!("front.{point}"));
        let far_away = |key: &str, _: &str| format!("{key}: (1e300, 0.0, 0.0)");
        let mut count = 0;
        for (path, _, value, fault) in each(far_away) {
            if !points.contains(&path) {
                continue;
            }
            assert_eq!(
                fault.place,
                Some(Place::of(EVERYTHING, value)),
                "{path}: {fault}"
            );
            count += 1;
        }
        assert_eq!(count, points.len());
    }

    /// What a wrong value at each kind of field is told to be.
    #[test]
    fn every_kind_of_field_says_what_it_holds() {
        for (path, word) in [
            ("load_cases.own.jump.travel", "(0.3, 1.0)"),
            ("load_cases.own.jump.lock", "(0.3, 1.0)"),
            ("front.parts.rack_end.bolt.direction", "fore_aft"),
            ("front.joint_bolts.inner", "fore_aft"),
            ("front.joint_bolts.outer", "fore_aft"),
            ("keep_outs.engine.corners", "opposite corners"),
            ("tolerances.usual", "jig_drilled"),
            ("tolerances.points.made", "hand_held"),
            ("keep_outs", "engine"),
            ("tolerances.points", "made: jig_drilled"),
            ("tolerances.points.point", "axle and point"),
            ("front.travel", "droop: 3.5"),
            ("rear.travel", "droop: 3.5"),
            ("format", "a whole number"),
            ("front.parts.lower_arm.spring_tubes", "1 or 2"),
            ("front.parts.tie_rod.section", "round(diameter, wall)"),
            ("limits.side_hit", "lbf(200.0)"),
            ("front.parts.joints.rating", "lbf(200.0)"),
            ("limits.hand_force", "lbf(200.0)"),
            ("limits.kick_back", "lbf(200.0)"),
            ("materials.yield_strength", "ksi(60.0)"),
            ("materials.tensile", "ksi(60.0)"),
            ("materials.modulus", "ksi(60.0)"),
            ("front.parts.bracket.ears", "single or double"),
            ("front.parts.bolt.shear_plane", "shank or thread"),
            ("front.rack_end.jam_nut_at", "rack or joint"),
            ("front.rack_end.making", "rolled or cut"),
            ("load_cases.own.hold", "rolling or braked"),
            ("load_cases.own.actions", "static_wheel_load"),
            ("front.parts.joints", "tie_rod.inner"),
            ("materials", "tube, heat 1234"),
            ("load_cases.own", "a list of load cases"),
            ("load_cases.off", "kerb, sideways"),
            ("accepted", "only used on grass"),
            ("unit", "inch or mm"),
            ("front.spring.arm", "lower or upper"),
            ("front.parts.joints.at", "a joint of the linkage"),
            ("hit.at", "wheel_centre or contact"),
            ("vehicle.mass", "lb(650.0)"),
            ("front.spring.rate", "lb_per_in(115.0)"),
            ("locked", "a list of coordinates"),
            ("front.wheel.loaded_radius", "a number, such as 12.625"),
            ("front.rack.travel", "a number, such as 12.625"),
        ] {
            assert!(
                expected_at(path).contains(word),
                "{path}: {}",
                expected_at(path)
            );
        }
        for path in [
            "front.upper_arm.front_pivot",
            "front.tie_rod.inner",
            "keep_outs.engine.from",
            "hit.direction",
        ] {
            assert_eq!(expected_at(path), POINT, "{path}");
        }
        for path in [
            "title",
            "front.rack_end.thread",
            "materials.name",
            "accepted.reason",
        ] {
            assert_eq!(expected_at(path), TEXT, "{path}");
        }
        for path in [
            "front",
            "rear.tie_rod",
            "front.parts",
            "load_cases",
            "limits",
        ] {
            assert_eq!(
                expected_at(path),
                "fields in brackets, such as (name: value)",
                "{path}"
            );
        }
    }
}
