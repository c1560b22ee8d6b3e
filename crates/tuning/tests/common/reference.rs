//! Geometries and best places found by an independent optimiser; see `tests/reference/README.md` at the top of the
//! repository.

use serde_json::Value;
use trammel_geometry::{Arm, Corner, Point, TieRod, Vector, Wheel};
use trammel_tuning::Stations;

fn folder() -> std::path::PathBuf {
    std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../../tests/reference")
}

pub(crate) fn read(name: &str) -> Value {
    let path = folder().join(format!("{name}.json"));
    let text = std::fs::read_to_string(&path).unwrap_or_else(|e| panic!("{path:?}: {e}"));
    serde_json::from_str(&text).unwrap()
}

pub(crate) fn number(v: &Value) -> f64 {
    v.as_f64().unwrap_or_else(|| panic!("not a number: {v}"))
}

pub(crate) fn point(v: &Value) -> Point {
    Point::new(number(&v[0]), number(&v[1]), number(&v[2]))
}

/// The corner of a file and the 21 heights that its tables use, rack at centre.
pub(crate) fn corner(name: &str) -> (Corner, Stations) {
    let file = read(name);
    let c = &file["corner"];
    let arm = |a: &Value| Arm {
        front_pivot: point(&a["front_pivot"]),
        rear_pivot: point(&a["rear_pivot"]),
        ball_joint: point(&a["ball_joint"]),
    };
    let corner = Corner {
        upper_arm: arm(&c["upper_arm"]),
        lower_arm: arm(&c["lower_arm"]),
        tie_rod: TieRod {
            inner: point(&c["tie_rod"]["inner"]),
            outer: point(&c["tie_rod"]["outer"]),
        },
        wheel: Wheel {
            centre: point(&c["wheel"]["centre"]),
            loaded_radius: number(&c["wheel"]["loaded_radius"]),
            toe: number(&c["wheel"]["toe_deg"]).to_radians(),
            camber: number(&c["wheel"]["camber_deg"]).to_radians(),
        },
        spring: None,
        rack_axis: c["rack"].get("axis").map(|v| Vector::from(point(v).coords)),
    };
    let (bump, droop) = (number(&c["travel"]["bump"]), number(&c["travel"]["droop"]));
    let travels = (-10..=10)
        .map(|i| f64::from(i) / 10.0 * if i < 0 { droop } else { bump })
        .collect();
    (corner, Stations::new(travels, vec![0.0]).unwrap())
}
