//! Every length of an axle's parts, with its name: for checking and for changing the unit.

use super::{
    ArmParts, AxleParts, BoltSpec, BracketSpec, JointEnd, RackMount, Section, TieRodParts, Tube,
    WheelParts,
};
use crate::PointName;

/// What a number may be.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LengthKind {
    /// Above nought.
    Size,
    /// Nought or more.
    SizeOrNone,
    /// A coordinate.
    Place,
}

/// Told the path of a length under the axle's `parts`, its kind, and the length.
pub(crate) type Visit<'a> = dyn FnMut(&str, &'static str, LengthKind, &mut f64) + 'a;

fn sizes<const N: usize>(
    at: &str,
    fields: [(&'static str, &mut Option<f64>); N],
    visit: &mut Visit<'_>,
) {
    for (name, value) in fields {
        if let Some(value) = value {
            visit(at, name, LengthKind::Size, value);
        }
    }
}

impl AxleParts {
    /// Visits every length.
    pub(crate) fn each_length(&mut self, visit: &mut Visit<'_>) {
        self.tie_rod.each_length(visit);
        self.upper_arm.each_length("upper_arm", visit);
        self.lower_arm.each_length("lower_arm", visit);
        self.wheel.each_length(visit);
        sizes("", [("spring_diameter", &mut self.spring_diameter)], visit);
        if let Some(mount) = &mut self.rack_mount {
            mount.each_length(visit);
        }
        for (point, joint) in &mut self.joints {
            let at = joint_path(*point);
            if let Some(end) = &mut joint.end {
                end.each_length(&format!("{at}.end"), visit);
            }
            if let Some(bolt) = &mut joint.bolt {
                bolt.each_length(&format!("{at}.bolt"), visit);
            }
            if let Some(bracket) = &mut joint.bracket {
                bracket.each_length(&format!("{at}.bracket"), visit);
            }
        }
    }
}

/// How messages call a joint of the list.
pub(crate) fn joint_path(point: PointName) -> String {
    format!("joints ({point})")
}

impl Section {
    fn each_length(&mut self, at: &str, visit: &mut Visit<'_>) {
        match self {
            Self::Round(across, wall) | Self::Square(across, wall) => {
                visit(at, "section", LengthKind::Size, across);
                visit(at, "section", LengthKind::Size, wall);
            }
            Self::Bar(across) => visit(at, "section", LengthKind::Size, across),
        }
    }
}

fn tube_lengths(at: &str, tube: &mut Option<Tube>, visit: &mut Visit<'_>) {
    if let Some(tube) = tube {
        tube.section.each_length(&format!("{at}.tube"), visit);
    }
}

impl TieRodParts {
    fn each_length(&mut self, visit: &mut Visit<'_>) {
        let at = "tie_rod";
        tube_lengths(at, &mut self.tube, visit);
        let fields = [
            ("adapter_length", &mut self.adapter_length),
            ("engagement", &mut self.engagement),
            ("adjustment", &mut self.adjustment),
            ("jam_nut", &mut self.jam_nut),
        ];
        sizes(at, fields, visit);
    }
}

impl ArmParts {
    fn each_length(&mut self, at: &str, visit: &mut Visit<'_>) {
        tube_lengths(at, &mut self.tube, visit);
    }
}

impl RackMount {
    fn each_length(&mut self, visit: &mut Visit<'_>) {
        let fields = [
            ("width", &mut self.width),
            ("height", &mut self.height),
            ("thickness", &mut self.thickness),
            ("along", &mut self.along),
            ("across", &mut self.across),
        ];
        for (name, value) in fields {
            visit("rack_mount", name, LengthKind::Size, value);
        }
    }
}

impl WheelParts {
    fn each_length(&mut self, visit: &mut Visit<'_>) {
        let fields = [
            ("rim_diameter", &mut self.rim_diameter),
            ("rim_width", &mut self.rim_width),
            ("rim_thickness", &mut self.rim_thickness),
            ("tyre_diameter", &mut self.tyre_diameter),
            ("tyre_width", &mut self.tyre_width),
        ];
        sizes("wheel", fields, visit);
    }
}

impl JointEnd {
    fn each_length(&mut self, at: &str, visit: &mut Visit<'_>) {
        let fields = [
            ("ball_width", &mut self.ball_width),
            ("body_width", &mut self.body_width),
            ("head_diameter", &mut self.head_diameter),
            ("length", &mut self.length),
        ];
        sizes(at, fields, visit);
    }
}

impl BoltSpec {
    fn each_length(&mut self, at: &str, visit: &mut Visit<'_>) {
        if let Some(spacer) = &mut self.spacer {
            visit(at, "spacer", LengthKind::SizeOrNone, spacer);
        }
    }
}

impl BracketSpec {
    fn each_length(&mut self, at: &str, visit: &mut Visit<'_>) {
        let needed = [
            ("thickness", &mut self.thickness),
            ("width", &mut self.width),
            ("height", &mut self.height),
        ];
        for (name, value) in needed {
            visit(at, name, LengthKind::Size, value);
        }
        let fields = [
            ("hole", &mut self.hole),
            ("edge", &mut self.edge),
            ("gap", &mut self.gap),
            ("boxing", &mut self.boxing),
            ("weld", &mut self.weld),
        ];
        sizes(at, fields, visit);
        if let Some(tube) = &mut self.tube {
            let at = format!("{at}.tube");
            tube.section.each_length(&at, visit);
            for (name, place) in [("from", &mut tube.from), ("to", &mut tube.to)] {
                for value in place {
                    visit(&at, name, LengthKind::Place, value);
                }
            }
        }
    }
}
