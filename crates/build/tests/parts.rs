//! Parts, load cases, materials and accepted cautions: edits, units, and what is refused.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a test stops where it fails"
)]

mod common;

use common::build;
use trammel_build::{
    AcceptedCaution, AxleName, AxleParts, BoltAxis, BoltSpec, BracketSpec, Build, Edit, Force,
    FrameTube, Hold, JointParts, LengthUnit, LoadAction, LoadAxes, LoadCaseSpec, LoadPlace,
    LoadUnit, MaterialSpec, PartsEdit, PointName, RimHalf, Section, SteeringSpec, Stress,
    TieRodParts, Tube, TyrePatch,
};
use trammel_geometry::ArmName;

fn apply(build: &Build, edit: PartsEdit) -> Result<Build, String> {
    Edit::Parts(edit).apply(build).map_err(|e| e.to_string())
}

fn bracket() -> BracketSpec {
    BracketSpec {
        tube: Some(FrameTube {
            from: [200.0, 120.0, 180.0],
            to: [-200.0, 120.0, 180.0],
            section: Section::Square(40.0, 3.0),
        }),
        ..BracketSpec::new(5.0, 38.0, 30.0)
    }
}

fn with_bracket(bracket: BracketSpec) -> PartsEdit {
    let parts = JointParts {
        bracket: Some(bracket),
        ..JointParts::default()
    };
    PartsEdit::Joint(AxleName::Front, PointName::LowerFrontPivot, Box::new(parts))
}

fn landing() -> LoadCaseSpec {
    LoadCaseSpec {
        name: "landing".into(),
        what: "Off the ramp.".into(),
        actions: vec![LoadAction::Force(
            [0.0, 0.0, 4.0],
            LoadUnit::StaticWheelLoad,
            LoadPlace::Contact,
            LoadAxes::Wheel,
        )],
        hold: Hold::Rolling,
        braking: 0.0,
        cornering: 0.0,
        travel: [0.0, 1.0],
        lock: [0.0, 1.0],
    }
}

#[test]
fn each_edit_changes_its_own_part_and_has_a_name() {
    let build = build();
    let rod = TieRodParts {
        thread: Some("1/2-20".into()),
        ..TieRodParts::default()
    };
    let edits = [
        PartsEdit::TieRod(AxleName::Front, Box::new(rod)),
        PartsEdit::Arm(
            AxleName::Front,
            ArmName::Lower,
            Box::new(trammel_build::ArmParts {
                tube: None,
                spring_tubes: Some(2),
            }),
        ),
        PartsEdit::SpringDiameter(AxleName::Front, Some(60.0)),
        with_bracket(bracket()),
        PartsEdit::Steering(SteeringSpec {
            stop: Some(30.0),
            ..SteeringSpec::default()
        }),
        PartsEdit::LoadCase(Box::new(landing())),
        PartsEdit::SwitchLoadCase("kerb, sideways".into(), false),
        PartsEdit::Accept(AcceptedCaution {
            caution: "front/both/tie_rod_angle".into(),
            reason: "only on grass".into(),
            figure: None,
        }),
    ];
    let mut names = Vec::new();
    for edit in edits {
        let edit = Edit::Parts(edit);
        let after = edit.apply(&build).unwrap();
        assert_ne!(after, build, "{}", edit.name());
        assert!(!names.contains(&edit.name()));
        names.push(edit.name());
    }
}

#[test]
fn what_is_put_in_comes_out_again() {
    let build = build();
    let with = apply(&build, with_bracket(bracket())).unwrap();
    let nothing = PartsEdit::Joint(AxleName::Front, PointName::LowerFrontPivot, Box::default());
    assert_eq!(apply(&with, nothing).unwrap(), build);
    let case = apply(&build, PartsEdit::LoadCase(Box::new(landing()))).unwrap();
    let twice = apply(&case, PartsEdit::LoadCase(Box::new(landing()))).unwrap();
    assert_eq!(twice.load_cases.own.len(), 1);
    assert_eq!(
        apply(&twice, PartsEdit::DropLoadCase("landing".into())).unwrap(),
        build
    );
    let off = apply(&build, PartsEdit::SwitchLoadCase("x".into(), false)).unwrap();
    assert_eq!(
        apply(&off, PartsEdit::SwitchLoadCase("x".into(), true)).unwrap(),
        build
    );
    let accepted = AcceptedCaution {
        caution: "front/both/toe_change".into(),
        reason: "as bought".into(),
        figure: Some(0.4),
    };
    let kept = apply(&build, PartsEdit::Accept(accepted)).unwrap();
    assert_eq!(
        apply(&kept, PartsEdit::Withdraw("front/both/toe_change".into())).unwrap(),
        build
    );
    assert!(apply(&build, PartsEdit::SpringDiameter(AxleName::Rear, None)).is_err());
}

/// An inch is 25.4 mm; forces are no lengths.
#[test]
fn parts_are_converted_with_the_unit() {
    let mut build = apply(&build(), with_bracket(bracket())).unwrap();
    build.front.parts.tie_rod.tube = Some(Tube {
        section: Section::Round(1.0, 0.1),
        material: None,
    });
    build.front.parts.tie_rod.side_hit = Some(Force::Newtons(900.0));
    build.steering.wheel_diameter = Some(10.0);
    build.limits.clearance = Some(0.5);
    build.load_cases.own.push(LoadCaseSpec {
        actions: vec![LoadAction::TurnedOnTheSpot(0.8, TyrePatch::Length(5.0))],
        ..landing()
    });
    let metric = Edit::ConvertUnit(LengthUnit::Millimetre)
        .apply(&build)
        .unwrap();
    let tube = metric.front.parts.tie_rod.tube.as_ref().unwrap();
    assert_eq!(tube.section, Section::Round(25.4, 2.54));
    assert_eq!(
        metric.front.parts.tie_rod.side_hit,
        Some(Force::Newtons(900.0))
    );
    assert_eq!(metric.steering.wheel_diameter, Some(254.0));
    assert_eq!(metric.limits.clearance, Some(12.7));
    let LoadAction::TurnedOnTheSpot(_, TyrePatch::Length(patch)) =
        metric.load_cases.own[0].actions[0]
    else {
        panic!("a patch");
    };
    assert!((patch - 127.0).abs() < 1e-12);
    let frame = metric.front.parts.joints[&PointName::LowerFrontPivot]
        .bracket
        .as_ref()
        .unwrap()
        .tube
        .unwrap();
    assert!((frame.from[0] - 200.0 * 25.4).abs() < 1e-9);
}

#[test]
fn figures_that_are_none_are_refused_by_name() {
    let build = build();
    let refused = |edit: PartsEdit, says: &str| {
        let fault = apply(&build, edit).expect_err(says);
        assert!(fault.contains(says), "{fault}");
    };
    refused(
        with_bracket(BracketSpec {
            thickness: 0.0,
            ..bracket()
        }),
        "bracket.thickness is 0",
    );
    refused(
        with_bracket(BracketSpec {
            weld: Some(f64::NAN),
            ..bracket()
        }),
        "bracket.weld",
    );
    refused(
        with_bracket(BracketSpec {
            stands: Some([0.0; 3]),
            ..bracket()
        }),
        "no direction",
    );
    let thick = FrameTube {
        section: Section::Square(40.0, 30.0),
        ..bracket().tube.unwrap()
    };
    refused(
        with_bracket(BracketSpec {
            tube: Some(thick),
            ..bracket()
        }),
        "at most half",
    );
    let mut parts = AxleParts::default();
    parts.joints.insert(
        PointName::WheelCentre,
        JointParts {
            bracket: Some(bracket()),
            ..JointParts::default()
        },
    );
    refused(
        PartsEdit::Axle(AxleName::Front, Box::new(parts)),
        "no joint, bolt or bracket",
    );
    let bolt = BoltSpec {
        direction: Some(BoltAxis::Vertical),
        ..BoltSpec::default()
    };
    let turned = JointParts {
        bolt: Some(bolt),
        ..JointParts::default()
    };
    refused(
        PartsEdit::Joint(AxleName::Front, PointName::TieRodInner, Box::new(turned)),
        "joint_bolts",
    );
    refused(
        PartsEdit::Steering(SteeringSpec {
            friction: Some(1.0),
            ..SteeringSpec::default()
        }),
        "0 to 0.9",
    );
    let steel = |name: &str, v: f64| MaterialSpec {
        name: name.into(),
        yield_strength: Stress::Ksi(v),
        tensile: None,
        modulus: None,
        source: String::new(),
    };
    refused(
        PartsEdit::Materials(vec![steel(" ", 50.0)]),
        "materials.1.name",
    );
    refused(
        PartsEdit::Materials(vec![steel("a", -1.0)]),
        "yield_strength",
    );
    refused(
        PartsEdit::Materials(vec![steel("a", 50.0), steel("A ", 50.0)]),
        "no other material",
    );
    let case = |change: &dyn Fn(&mut LoadCaseSpec)| {
        let mut case = landing();
        change(&mut case);
        PartsEdit::LoadCase(Box::new(case))
    };
    refused(case(&|c| c.actions.clear()), "at least one");
    refused(case(&|c| c.travel = [0.0, 2.0]), "full bump");
    refused(case(&|c| c.lock = [-0.5, 1.0]), "full lock");
    refused(case(&|c| c.name.clear()), "name");
    let rim = LoadPlace::Rim(RimHalf::Front, 1.5, 0.0);
    let odd = LoadAction::Force(
        [1.0, 0.0, 0.0],
        LoadUnit::VehicleWeight,
        rim,
        LoadAxes::Vehicle,
    );
    refused(case(&|c| c.actions = vec![odd]), "from -1 to 1");
    refused(
        case(&|c| c.actions = vec![LoadAction::AgainstStop(Force::Newtons(0.0))]),
        "above nought",
    );
}
