//! Reading the reference geometries.
#![allow(
    clippy::unwrap_used,
    reason = "helpers of tests: a bad reference file has to stop the test"
)]

use std::path::Path;

use serde_json::Value;
use trammel_geometry::{Arm, ArmName, Corner, Point, Spring, TieRod, Vector, Wheel};

/// A file of the reference folder.
pub(crate) fn reference(name: &str) -> Value {
    let path = Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../../tests/reference")
        .join(name);
    serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap()
}

fn triple(value: &Value) -> Vector {
    Vector::from_iterator((0..3).map(|i| value[i].as_f64().unwrap()))
}

fn point(value: &Value) -> Point {
    triple(value).into()
}

fn arm(value: &Value) -> Arm {
    Arm {
        front_pivot: point(&value["front_pivot"]),
        rear_pivot: point(&value["rear_pivot"]),
        ball_joint: point(&value["ball_joint"]),
    }
}

/// The corner of a reference file.
pub(crate) fn corner(document: &Value) -> Corner {
    let spec = &document["corner"];
    let wheel = &spec["wheel"];
    let angle = |key: &str| wheel[key].as_f64().unwrap().to_radians();
    let spring = &spec["spring"];
    Corner {
        upper_arm: arm(&spec["upper_arm"]),
        lower_arm: arm(&spec["lower_arm"]),
        tie_rod: TieRod {
            inner: point(&spec["tie_rod"]["inner"]),
            outer: point(&spec["tie_rod"]["outer"]),
        },
        wheel: Wheel {
            centre: point(&wheel["centre"]),
            loaded_radius: wheel["loaded_radius"].as_f64().unwrap(),
            toe: angle("toe_deg"),
            camber: angle("camber_deg"),
        },
        spring: Some(Spring {
            arm: if spring["arm"] == "upper" {
                ArmName::Upper
            } else {
                ArmName::Lower
            },
            chassis_mount: point(&spring["chassis_mount"]),
            arm_mount: point(&spring["arm_mount"]),
        }),
        rack_axis: spec["rack"]["axis"]
            .as_array()
            .map(|_| triple(&spec["rack"]["axis"])),
    }
}
