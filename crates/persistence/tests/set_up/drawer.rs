//! The drawer of measured parts.

use trammel_persistence::{Drawer, DrawerFault};

use super::*;

fn drawer() -> Drawer {
    let part = |name: &str, kind| Part {
        name: name.into(),
        unit: LengthUnit::Inch,
        notes: "left one".into(),
        kind,
    };
    Drawer {
        parts: vec![
            part(
                "quad",
                PartKind::Spindle(SpindlePart {
                    ball_joint_spacing: 6.5,
                    inclination_deg: 9.0,
                    spindle_height: 2.25,
                    wheel_out: 3.0,
                    arm_length: 3.75,
                    arm: SteeringArm::Behind,
                    arm_height: 1.5,
                    arm_out: -0.5,
                }),
            ),
            part(
                "rack",
                PartKind::Rack(RackPart {
                    joint_to_joint: 17.0,
                    travel: 1.5,
                    travel_per_turn: 2.0,
                    end_thread: "1/2-20".into(),
                    hard_to: None,
                }),
            ),
            part(
                "shock",
                PartKind::Spring(SpringPart {
                    open: 16.0,
                    closed: 12.0,
                    rate: Some(SpringRate::PoundsPerInch(95.0)),
                }),
            ),
            part(
                "heim",
                PartKind::Joint(JointPart {
                    ball_width: 0.5,
                    swivel_deg: 13.0,
                    rating: Some(9000.0),
                }),
            ),
        ],
    }
}

#[test]
fn the_drawer_comes_back_from_its_file() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("deep/drawer.ron");
    assert_eq!(Drawer::load(&path).unwrap(), Drawer::default());
    drawer().save(&path).unwrap();
    assert_eq!(Drawer::load(&path).unwrap(), drawer());
}

#[test]
fn a_damaged_or_newer_drawer_is_said_and_left() {
    assert!(matches!(
        Drawer::read("(format: 1, parts: [("),
        Err(DrawerFault::NotDrawer(_))
    ));
    let newer = drawer().write().unwrap().replace("format: 1", "format: 2");
    assert!(matches!(
        Drawer::read(&newer),
        Err(DrawerFault::NewerFormat(2))
    ));
}

#[test]
fn a_drawer_that_can_not_be_read_is_no_empty_one() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("drawer.ron");
    drawer().save(&file).unwrap();
    let below = Drawer::load(&file.join("drawer.ron"));
    assert!(matches!(below, Err(DrawerFault::File(_))), "{below:?}");
    // A byte more than 4 MiB is refused by its size; just as much is looked into.
    let size = |bytes| {
        let open = std::fs::File::options().write(true).open(&file).unwrap();
        open.set_len(bytes).unwrap();
        Drawer::load(&file)
    };
    let larger = size((4 << 20) + 1);
    assert!(
        matches!(larger, Err(DrawerFault::TooLarge(4_194_305))),
        "{larger:?}"
    );
    let largest = size(4 << 20);
    assert!(
        matches!(largest, Err(DrawerFault::NotDrawer(_))),
        "{largest:?}"
    );
}
