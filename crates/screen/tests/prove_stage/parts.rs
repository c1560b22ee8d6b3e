//! Parts: what is typed lands in its own place.

use egui::Role;
use egui_kittest::kittest::Queryable;
use trammel_build::{
    BoltAxis, Ears, Force, JamNutAt, PointName, Section, ShearPlane, Stress, ThreadMaking,
};
use trammel_screen::prove::settings::{PartPage, ProvePage};

use crate::{
    common::{Screen, click},
    hand::{fill, names, prove, use_it},
};

fn parts(page: PartPage) -> Screen {
    let mut screen = prove("good", ProvePage::Parts);
    click(&mut screen, &format!("Part: {}", page.label()));
    screen
}

fn fill_all(screen: &mut Screen, fields: &[(&str, &str)]) {
    for (field, text) in fields {
        fill(screen, field, text);
    }
}

#[test]
fn the_rack_end_is_entered() {
    let mut screen = parts(PartPage::RackEnd);
    fill_all(
        &mut screen,
        &[
            ("Rack-end thread", "5/8-18"),
            ("Rack-end grade", "grade 8"),
            ("Steel of the bar", "8.8"),
            ("Thread engaged", "5/8"),
            ("Jam-nut thickness", "3/8"),
            ("Bar diameter", "1 1/8"),
            ("Depth of the bore", "1 3/8"),
            ("Hard teeth to", "3 1/4"),
        ],
    );
    use_it(&mut screen, Role::RadioButton, "Jam nut: joint");
    use_it(&mut screen, Role::RadioButton, "Made: cut");
    let end = &screen.state().build().front.rack_end;
    let names = [&end.thread, &end.grade, &end.bar_grade].map(|n| n.as_deref());
    assert_eq!(names, [Some("5/8-18"), Some("grade 8"), Some("8.8")]);
    let lengths = [
        end.engagement,
        end.jam_nut,
        end.bar_diameter,
        end.bore_depth,
        end.hard_to,
    ];
    assert_eq!(
        lengths,
        [
            Some(0.625),
            Some(0.375),
            Some(1.125),
            Some(1.375),
            Some(3.25)
        ]
    );
    assert_eq!(end.jam_nut_at, Some(JamNutAt::Joint));
    assert_eq!(end.making, Some(ThreadMaking::Cut));
    fill(&mut screen, "Bar diameter", "");
    assert_eq!(screen.state().build().front.rack_end.bar_diameter, None);
}

#[test]
fn the_tie_rod_is_entered_with_its_tube() {
    let mut screen = parts(PartPage::TieRod);
    if screen.query_by_label("Take the tie-rod tube out").is_some() {
        use_it(&mut screen, Role::Button, "Take the tie-rod tube out");
    }
    assert_eq!(screen.state().build().front.parts.tie_rod.tube, None);
    use_it(&mut screen, Role::Button, "Enter the tie-rod tube");
    use_it(
        &mut screen,
        Role::RadioButton,
        "tie-rod tube: shape: square tube",
    );
    fill_all(
        &mut screen,
        &[
            ("tie-rod tube: across", "7/8"),
            ("tie-rod tube: wall", "0.12"),
            ("tie-rod tube: material", "ASTM A36 plate and bar"),
            ("Rod-end thread", "7/16-20"),
            ("Rod-end grade", "grade 8"),
            ("Adapter material", "ASTM A36 plate and bar"),
            ("Adapter length", "1 1/2"),
            ("Thread in adapter", "3/4"),
            ("Adjustment each way", "1/4"),
            ("Rod's jam nut", "1/4"),
            ("Hit at mid-span", "150"),
        ],
    );
    let rod = &screen.state().build().front.parts.tie_rod;
    let tube = rod.tube.as_ref().expect("a tube");
    assert_eq!(tube.section, Section::Square(0.875, 0.12));
    assert_eq!(tube.material.as_deref(), Some("ASTM A36 plate and bar"));
    let lengths = [
        rod.adapter_length,
        rod.engagement,
        rod.adjustment,
        rod.jam_nut,
    ];
    assert_eq!(lengths, [Some(1.5), Some(0.75), Some(0.25), Some(0.25)]);
    assert_eq!(
        (rod.thread.as_deref(), rod.grade.as_deref()),
        (Some("7/16-20"), Some("grade 8"))
    );
    assert!(
        matches!(rod.side_hit, Some(Force::PoundsForce(150.0))),
        "{:?}",
        rod.side_hit
    );
}

#[test]
fn an_arms_tubes_are_entered() {
    let mut screen = parts(PartPage::Arms);
    for what in ["upper-arm tube", "lower-arm tube"] {
        let enter = format!("Enter the {what}");
        if screen.query_by_label(&enter).is_some() {
            use_it(&mut screen, Role::Button, &enter);
        }
    }
    fill(&mut screen, "lower-arm tube: across", "1 1/8");
    fill(&mut screen, "lower-arm tube: wall", "0.12");
    use_it(
        &mut screen,
        Role::RadioButton,
        "Lower arm: spring on: both tubes",
    );
    let arm = &screen.state().build().front.parts.lower_arm;
    let across = arm.tube.as_ref().expect("a tube").section;
    assert_eq!((across.across(), across.wall()), (1.125, 0.12));
    assert_eq!(arm.spring_tubes, Some(2));
}

#[test]
fn joint_bolt_and_bracket_of_a_point_are_entered() {
    let mut screen = parts(PartPage::Joints);
    use_it(&mut screen, Role::ComboBox, "Joint at");
    let point = PointName::LowerFrontPivot;
    let entries = names(&screen, Role::Button);
    let entry = entries
        .iter()
        .find(|l| l.trim_end_matches(" (nothing entered)") == point.label());
    click(&mut screen, entry.expect("in the list"));
    assert_eq!(screen.state().view().prove.joint, point);
    fill_all(
        &mut screen,
        &[
            ("Listed size", "AS81935/1-06"),
            ("Rating", "2800"),
            ("Swivel each way", "11"),
            ("Ball width", "1/2"),
            ("Body width", "0.42"),
            ("Head diameter", "1 1/32"),
            ("Ball to shank end", "1 7/8"),
            ("Bolt thread", "3/8-24"),
            ("Bolt grade", "grade 8"),
            ("Spacer", "1/8"),
        ],
    );
    use_it(&mut screen, Role::RadioButton, "Shear through: shank");
    use_it(&mut screen, Role::RadioButton, "Bolt stands: fore-and-aft");
    if screen.query_by_label("Enter the bracket").is_some() {
        use_it(&mut screen, Role::Button, "Enter the bracket");
    }
    use_it(&mut screen, Role::RadioButton, "Ears: one tab");
    fill_all(
        &mut screen,
        &[
            ("Tab thickness", "1/4"),
            ("Tab width", "1 3/4"),
            ("Hole above tube", "1 1/8"),
            ("Hole diameter", "0.39"),
            ("Hole to edge", "3/4"),
            ("Leg of the weld", "3/16"),
            ("Electrode class", "70"),
            ("Tab material", "ASTM A36 plate and bar"),
        ],
    );
    let joints = &screen.state().build().front.parts.joints;
    let joint = joints.get(&point).expect("entered");
    let end = joint.end.as_ref().expect("a joint");
    assert_eq!(end.listed.as_deref(), Some("AS81935/1-06"));
    assert!(matches!(end.rating, Some(Force::PoundsForce(2800.0))));
    let figures = [
        end.swivel_deg,
        end.ball_width,
        end.body_width,
        end.head_diameter,
        end.length,
    ];
    assert_eq!(
        figures,
        [
            Some(11.0),
            Some(0.5),
            Some(0.42),
            Some(1.03125),
            Some(1.875)
        ]
    );
    let bolt = joint.bolt.as_ref().expect("a bolt");
    assert_eq!(
        (bolt.spacer, bolt.shear_plane),
        (Some(0.125), Some(ShearPlane::Shank))
    );
    assert_eq!(bolt.direction, Some(BoltAxis::ForeAft));
    let bracket = joint.bracket.as_ref().expect("a bracket");
    assert_eq!(bracket.ears, Some(Ears::Single));
    assert_eq!(
        (bracket.thickness, bracket.width, bracket.height),
        (0.25, 1.75, 1.125)
    );
    let more = [bracket.hole, bracket.edge, bracket.weld, bracket.electrode];
    assert_eq!(more, [Some(0.39), Some(0.75), Some(0.1875), Some(70.0)]);
    use_it(&mut screen, Role::Button, "Take the bracket out");
    assert!(
        screen.state().build().front.parts.joints[&point]
            .bracket
            .is_none()
    );
}

#[test]
fn the_bolts_of_the_tie_rods_joints_are_the_axles() {
    let mut screen = parts(PartPage::Joints);
    use_it(&mut screen, Role::RadioButton, "Bolt stands: crosswise");
    let bolts = screen.state().build().front.joint_bolts;
    assert_eq!(bolts.inner, Some(BoltAxis::Lateral));
}

#[test]
fn wheel_spring_steering_and_limits_are_entered() {
    let mut screen = parts(PartPage::Wheel);
    fill_all(
        &mut screen,
        &[
            ("Rim diameter", "10"),
            ("Rim width", "6"),
            ("Rim thickness", "1/8"),
            ("Tyre diameter", "22"),
            ("Tyre width", "7 1/2"),
            ("Diameter over coil", "2 3/4"),
        ],
    );
    click(&mut screen, "Part: steering");
    fill_all(
        &mut screen,
        &[
            ("Steering-wheel diameter", "11 1/2"),
            ("Lost to friction", "0.1"),
            ("Positive stop at", "1 3/8"),
        ],
    );
    click(&mut screen, "Part: limits");
    fill_all(
        &mut screen,
        &[
            ("Rack-end factor", "2.5"),
            ("Factor of other parts", "1.8"),
            ("Gap", "1/4"),
            ("Toe from bending", "0.15"),
            ("Force of the hands", "40"),
            ("Kick-back", "60"),
        ],
    );
    let build = screen.state().build();
    let (w, s, l) = (build.front.parts.wheel, build.steering, build.limits);
    let wheel = [
        w.rim_diameter,
        w.rim_width,
        w.rim_thickness,
        w.tyre_diameter,
        w.tyre_width,
    ];
    assert_eq!(
        wheel,
        [Some(10.0), Some(6.0), Some(0.125), Some(22.0), Some(7.5)]
    );
    assert_eq!(build.front.parts.spring_diameter, Some(2.75));
    let steering = [s.wheel_diameter, s.friction, s.stop];
    assert_eq!(steering, [Some(11.5), Some(0.1), Some(1.375)]);
    let limits = [
        l.rack_end_factor,
        l.strength_factor,
        l.clearance,
        l.rack_end_toe_deg,
    ];
    assert_eq!(limits, [Some(2.5), Some(1.8), Some(0.25), Some(0.15)]);
    assert!(matches!(l.hand_force, Some(Force::PoundsForce(40.0))));
    assert!(matches!(l.kick_back, Some(Force::PoundsForce(60.0))));
}

#[test]
fn a_material_is_added_and_removed() {
    let mut screen = parts(PartPage::Materials);
    let before = screen.state().build().materials.len();
    use_it(&mut screen, Role::Button, "Add a material");
    let number = before + 1;
    fill(
        &mut screen,
        &format!("Material {number}, name"),
        "shed tube",
    );
    fill(&mut screen, &format!("Material {number}, yield"), "48");
    fill(&mut screen, &format!("Material {number}, tensile"), "60");
    fill(
        &mut screen,
        &format!("Material {number}, source"),
        "invoice 12",
    );
    let own = screen
        .state()
        .build()
        .materials
        .last()
        .expect("added")
        .clone();
    assert_eq!(own.name, "shed tube");
    assert_eq!(own.yield_strength, Stress::Ksi(48.0));
    assert_eq!(own.tensile, Some(Stress::Ksi(60.0)));
    assert_eq!(own.source, "invoice 12");
    use_it(
        &mut screen,
        Role::Button,
        &format!("Remove material {number}"),
    );
    assert_eq!(screen.state().build().materials.len(), before);
}
