//! Joints, bolts and brackets in the strength crate's words.

use trammel_build::{
    AxleSpec, BoltAxis, BoltSpec, BracketSpec, Build, Ears, JointEnd, JointParts, PointName,
    ShearPlane, Triple, defaults,
};
use trammel_geometry::{ArmName, Point, Vector};
use trammel_strength::{
    bolt::{Bolt, ShearPlaneAt, ShearPlanes},
    bracket::{Bracket, BracketSize},
    joint_room::{BodyRoom, NutRoom},
    proof::{Body, JointPlace, Mounted, PartKind},
    rod_end::{Joint, ListedRodEnd},
    source::{Limit, Source},
    thread::Thread,
    weld::Fillet,
};

use super::{Note, ProofPart, materials};
use crate::{bolt_hole, corner_view::CornerView};

/// Thickness of an ear where no bracket is given, mm (3/16 in flat bar: common practice, no source).
const EAR_MM: f64 = 4.762_5;
/// Width of a ball over its bolt where none is given: AS81935/1 has 1.25 to 1.33.
const BALL_PER_BOLT: f64 = 1.33;

/// One joint of a corner.
#[derive(Clone, Copy)]
pub(super) struct Place<'a> {
    pub build: &'a Build,
    pub spec: &'a AxleSpec,
    pub view: &'a CornerView,
    pub point: PointName,
    pub parts: &'a JointParts,
}

type Kind = Result<Option<PartKind>, String>;

impl Place<'_> {
    pub(super) fn end(&self) -> Option<&JointEnd> {
        self.parts.end.as_ref()
    }

    pub(super) fn mm(&self, v: f64) -> f64 {
        v * self.build.unit.mm()
    }

    fn listed(&self) -> Result<Option<&'static ListedRodEnd>, String> {
        let Some(name) = self.end().and_then(|e| e.listed.as_deref()) else {
            return Ok(None);
        };
        let all = ListedRodEnd::all();
        let wanted = name.trim().to_lowercase();
        let found = all.iter().find(|end| end.name().to_lowercase() == wanted);
        let names = || {
            all.iter()
                .map(ListedRodEnd::name)
                .collect::<Vec<_>>()
                .join(", ")
        };
        found.map(Some).ok_or_else(|| {
            format!(
                "\u{201c}{name}\u{201d} is not in the table of rod ends; expected one of: {}",
                names()
            )
        })
    }

    /// The rod end or ball joint, where something of it is known to check.
    pub(super) fn joint(&self, notes: &mut Vec<Note>) -> Kind {
        let Some(end) = self.end() else {
            return Ok(None);
        };
        let about = ProofPart::Joint(self.point).label();
        let listed = self.listed()?;
        let mut joint = Joint::default();
        match end.rating {
            Some(rating) => joint = joint.with_rating(rating.n()).map_err(|e| e.to_string())?,
            None => notes.push(Note::left_out(
                about.clone(),
                "No rating is given: the load on it is not checked.",
            )),
        }
        let typed = end.swivel_deg.map(|degrees| Limit {
            value: degrees.to_radians(),
            unit: "rad",
            source: Source::USER,
        });
        let swivel = typed.or_else(|| listed.and_then(ListedRodEnd::misalignment));
        let on_rod = self.is_on_the_rod();
        match swivel {
            Some(limit) => joint = joint.with_misalignment(limit).map_err(|e| e.to_string())?,
            None if on_rod => notes.push(Note::left_out(
                about.clone(),
                "No swivel is given: its misalignment is not checked.",
            )),
            None => {}
        }
        joint = self.with_room(joint, end, listed)?;
        if let Some(room) = self.end_room(end, listed, notes)? {
            joint = joint.with_end(room);
        }
        let mounted = if on_rod && swivel.is_some() {
            let bolt = self.joint_bolt();
            if bolt.is_none() {
                notes.push(Note::left_out(
                    about,
                    "Its bolt's direction is not given: its misalignment is not checked.",
                ));
            }
            bolt.map(|_| self.mounted(notes)).transpose()?
        } else {
            None
        };
        Ok(Some(PartKind::Joint(self.place(), mounted, joint)))
    }

    /// Body between the ears, and jam nut before them, where the build says enough.
    fn with_room(
        &self,
        mut joint: Joint,
        end: &JointEnd,
        listed: Option<&ListedRodEnd>,
    ) -> Result<Joint, String> {
        let bad = |e: trammel_strength::BadNumber| e.to_string();
        let size = |typed: Option<f64>, listed: Option<f64>| typed.map(|v| self.mm(v)).or(listed);
        let ball = size(end.ball_width, listed.map(ListedRodEnd::ball_width));
        let body = size(end.body_width, listed.map(ListedRodEnd::body_width));
        let head = size(end.head_diameter, listed.map(ListedRodEnd::head_diameter));
        let spacer = self
            .parts
            .bolt
            .as_ref()
            .and_then(|b| b.spacer)
            .unwrap_or(0.0);
        if let (Some(ball), Some(body), Some(head)) = (ball, body, head) {
            joint = joint.with_body(BodyRoom::new(ball, body, head, self.mm(spacer)).map_err(bad)?);
        }
        let rod = &self.spec.parts.tie_rod;
        if let (true, Some(length), Some(engaged)) =
            (self.is_on_the_rod(), end.length, rod.engagement)
        {
            let bracket = self.parts.bracket.as_ref();
            let edge = bracket.map_or(0.0, |b| self.mm(b.edge.unwrap_or(b.width / 2.0)));
            let nut = NutRoom {
                length: self.mm(length),
                engagement: self.mm(engaged),
                adjustment: self.mm(rod.adjustment.unwrap_or(0.0)),
                jam_nut: self.mm(rod.jam_nut.unwrap_or(0.0)),
                obstacle: edge.max(head.unwrap_or(0.0) / 2.0),
            };
            joint = joint.with_nut(&nut).map_err(bad)?;
        }
        Ok(joint)
    }

    fn is_on_the_rod(&self) -> bool {
        matches!(self.point, PointName::TieRodInner | PointName::TieRodOuter)
    }

    pub(super) fn bolt(&self, notes: &mut Vec<Note>) -> Kind {
        let Some(bolt) = self.parts.bolt.as_ref() else {
            let about = ProofPart::Bolt(self.point).label();
            notes.push(Note::left_out(
                about,
                "No bolt is given: it is not checked.",
            ));
            return Ok(None);
        };
        let (thread, strength) = self.bolt_strength(bolt, notes)?;
        let at = match bolt.shear_plane {
            Some(ShearPlane::Shank) => ShearPlaneAt::Shank(thread.major_diameter()),
            Some(ShearPlane::Thread) | None => ShearPlaneAt::Thread(thread),
        };
        let bracket = self.parts.bracket.as_ref();
        let about = ProofPart::Bolt(self.point).label();
        let planes = match bracket {
            Some(bracket) => planes(bracket),
            None => {
                notes.push(Note::taken(
                    about.clone(),
                    "No bracket is given: single shear in a tab of 4.8 mm taken.",
                ));
                ShearPlanes::Single
            }
        };
        let ear = bracket.map_or(EAR_MM, |b| self.mm(b.thickness));
        let width = self.ball_width(thread, &about, notes)?;
        let gap = self.mm(bolt.spacer.unwrap_or(0.0));
        let bolt = Bolt::new(at, strength, planes, [ear, width, gap]).map_err(|e| e.to_string())?;
        Ok(Some(PartKind::Bolt(self.mounted(notes)?, bolt)))
    }

    fn bolt_strength(
        &self,
        bolt: &BoltSpec,
        notes: &mut Vec<Note>,
    ) -> Result<(Thread, trammel_strength::grade::Strength), String> {
        let about = ProofPart::Bolt(self.point).label();
        let name = bolt
            .thread
            .as_deref()
            .ok_or("The bolt's thread is not given: it is not checked.")?;
        let thread = Thread::find(name).map_err(|e| e.to_string())?;
        let grade = bolt.grade.as_deref().unwrap_or_else(|| {
            notes.push(Note::taken(
                about,
                format!("{} taken.", defaults::BOLT_GRADE),
            ));
            defaults::BOLT_GRADE
        });
        let strength = materials::grade(self.build, grade)?
            .strength(thread.major_diameter())
            .map_err(|e| e.to_string())?;
        Ok((thread, strength))
    }

    fn ball_width(
        &self,
        thread: Thread,
        about: &str,
        notes: &mut Vec<Note>,
    ) -> Result<f64, String> {
        if let Some(width) = self.end().and_then(|e| e.ball_width) {
            return Ok(self.mm(width));
        }
        if let Some(listed) = self.listed()? {
            return Ok(listed.ball_width());
        }
        let width = BALL_PER_BOLT * thread.major_diameter();
        notes.push(Note::taken(
            about,
            format!("A ball {width:.1} mm wide taken."),
        ));
        Ok(width)
    }

    pub(super) fn bracket(&self, notes: &mut Vec<Note>) -> Kind {
        let about = ProofPart::Bracket(self.point).label();
        let Some(bracket) = self.parts.bracket.as_ref() else {
            notes.push(Note::left_out(
                about,
                "No bracket is given: it is not checked.",
            ));
            return Ok(None);
        };
        let bolt = self.parts.bolt.as_ref();
        let thread = bolt
            .and_then(|b| b.thread.as_deref())
            .ok_or("The bolt's thread is not given: the bracket's hole is not checked.")?;
        let thread = Thread::find(thread).map_err(|e| e.to_string())?;
        let diameter = thread.major_diameter();
        let mm = |v: f64| self.mm(v);
        let spacer = mm(bolt.and_then(|b| b.spacer).unwrap_or(0.0));
        let gap = match bracket.gap {
            Some(gap) => mm(gap),
            None => self.ball_width(thread, &about, notes)? + 2.0 * spacer,
        };
        let size = BracketSize {
            ears: planes(bracket),
            thickness: mm(bracket.thickness),
            width: mm(bracket.width),
            height: mm(bracket.height),
            bolt: diameter,
            hole: bolt_hole(Some(bracket), thread, self.build.unit.mm()).diameter,
            edge: bracket.edge.map_or(mm(bracket.width) / 2.0, mm),
            gap,
            boxing: bracket.boxing.map_or(0.0, mm),
        };
        let material = bracket.material.as_deref().unwrap_or_else(|| {
            notes.push(Note::taken(
                about.clone(),
                format!("{} taken.", defaults::PLATE_MATERIAL),
            ));
            defaults::PLATE_MATERIAL
        });
        let strength = materials::strength(self.build, material, size.thickness)?;
        let leg = bracket
            .weld
            .map_or(defaults::WELD_LEG_SHARE * size.thickness, mm);
        if bracket.weld.is_none() {
            notes.push(Note::taken(
                about,
                format!("A fillet with a leg of {leg:.1} mm taken."),
            ));
        }
        let weld = Fillet::new(leg, bracket.electrode.unwrap_or(defaults::ELECTRODE_KSI))
            .map_err(|e| e.to_string())?;
        let bracket = Bracket::new(size, strength, Some(weld)).map_err(|e| e.to_string())?;
        Ok(Some(PartKind::Bracket(self.mounted(notes)?, bracket)))
    }

    fn place(&self) -> JointPlace {
        match self.point {
            PointName::TieRodOuter => JointPlace::TieRodOuter,
            PointName::UpperBallJoint => JointPlace::BallJoint(ArmName::Upper),
            PointName::LowerBallJoint => JointPlace::BallJoint(ArmName::Lower),
            PointName::UpperFrontPivot => JointPlace::FrontPivot(ArmName::Upper),
            PointName::UpperRearPivot => JointPlace::RearPivot(ArmName::Upper),
            PointName::LowerFrontPivot => JointPlace::FrontPivot(ArmName::Lower),
            PointName::LowerRearPivot => JointPlace::RearPivot(ArmName::Lower),
            PointName::SpringChassisMount | PointName::SpringArmMount => JointPlace::Spring,
            _ => JointPlace::TieRodInner,
        }
    }

    fn body(&self) -> Body {
        match self.point {
            PointName::TieRodOuter | PointName::UpperBallJoint | PointName::LowerBallJoint => {
                Body::Upright
            }
            PointName::SpringArmMount => {
                self.spec.spring.map_or(Body::Chassis, |s| Body::Arm(s.arm))
            }
            _ => Body::Chassis,
        }
    }

    /// The bolt's direction of a tie-rod joint as the axle gives it.
    fn joint_bolt(&self) -> Option<Vector> {
        let axis = match self.point {
            PointName::TieRodInner => self.spec.joint_bolts.inner,
            PointName::TieRodOuter => self.spec.joint_bolts.outer,
            _ => None,
        };
        axis.map(BoltAxis::direction)
    }

    /// Bolt and height, in the frame of the corner.
    fn mounted(&self, notes: &mut Vec<Note>) -> Result<Mounted, String> {
        let typed = self.parts.bolt.as_ref().and_then(|b| b.direction);
        let bolt = match typed.map(BoltAxis::direction).or_else(|| self.joint_bolt()) {
            Some(bolt) => bolt,
            None => self.usual_bolt(notes),
        };
        let mounted = Mounted::new(self.place(), self.body(), bolt).map_err(|e| e.to_string())?;
        let Some(bracket) = self.parts.bracket.as_ref() else {
            return Ok(mounted);
        };
        mounted
            .standing(self.stands(bracket))
            .map_err(|e| e.to_string())
    }

    /// Along the pivots' axis, along the steering axis, or upright.
    fn usual_bolt(&self, notes: &mut Vec<Note>) -> Vector {
        let corner = self.view.linkage.corner();
        let axis = |arm: &trammel_geometry::Arm| arm.front_pivot - arm.rear_pivot;
        match self.point {
            PointName::UpperFrontPivot | PointName::UpperRearPivot => axis(&corner.upper_arm),
            PointName::LowerFrontPivot | PointName::LowerRearPivot => axis(&corner.lower_arm),
            PointName::UpperBallJoint | PointName::LowerBallJoint => {
                corner.upper_arm.ball_joint - corner.lower_arm.ball_joint
            }
            PointName::SpringChassisMount | PointName::SpringArmMount => {
                match corner.spring.map(|s| s.arm) {
                    Some(ArmName::Upper) => axis(&corner.upper_arm),
                    _ => axis(&corner.lower_arm),
                }
            }
            _ => {
                let about = ProofPart::Bolt(self.point).label();
                notes.push(Note::taken(
                    about,
                    "An upright bolt taken: its direction is not given.",
                ));
                Vector::z()
            }
        }
    }

    /// From base to hole.
    fn stands(&self, bracket: &BracketSpec) -> Vector {
        let vector = |t: Triple| Vector::new(t[0], t[1], t[2]);
        let typed = bracket.stands.map(vector);
        let hole = self.at(self.point);
        let from_tube = || {
            let tube = bracket.tube?;
            let [from, to] =
                [tube.from, tube.to].map(|t| Point::from(vector(t) * self.build.unit.mm()));
            let along = (to - from).try_normalize(0.0)?;
            let foot = from + along * along.dot(&(hole - from));
            Some(hole - foot).filter(|v| v.norm() > 0.0)
        };
        // What is typed is the left side's, and a right corner is seen in the mirror: both are left-handed here.
        typed
            .or_else(from_tube)
            .unwrap_or_else(|| self.usual_stand())
    }

    /// Away from the frame, or from the part that carries it.
    fn usual_stand(&self) -> Vector {
        let corner = self.view.linkage.corner();
        let hole = self.at(self.point);
        match self.point {
            PointName::UpperFrontPivot | PointName::UpperRearPivot => {
                corner.upper_arm.ball_joint - hole
            }
            PointName::LowerFrontPivot | PointName::LowerRearPivot => {
                corner.lower_arm.ball_joint - hole
            }
            PointName::TieRodInner => corner.tie_rod.outer - hole,
            PointName::TieRodOuter => hole - corner.lower_arm.ball_joint,
            PointName::SpringChassisMount => self.at(PointName::SpringArmMount) - hole,
            PointName::SpringArmMount => self.at(PointName::SpringChassisMount) - hole,
            _ => Vector::y(),
        }
    }

    fn at(&self, point: PointName) -> Point {
        let corner = self.view.linkage.corner();
        match point {
            PointName::UpperFrontPivot => corner.upper_arm.front_pivot,
            PointName::UpperRearPivot => corner.upper_arm.rear_pivot,
            PointName::UpperBallJoint => corner.upper_arm.ball_joint,
            PointName::LowerFrontPivot => corner.lower_arm.front_pivot,
            PointName::LowerRearPivot => corner.lower_arm.rear_pivot,
            PointName::LowerBallJoint => corner.lower_arm.ball_joint,
            PointName::TieRodOuter => corner.tie_rod.outer,
            PointName::SpringChassisMount => corner
                .spring
                .map_or(corner.tie_rod.inner, |s| s.chassis_mount),
            PointName::SpringArmMount => {
                corner.spring.map_or(corner.tie_rod.inner, |s| s.arm_mount)
            }
            _ => corner.tie_rod.inner,
        }
    }
}

fn planes(bracket: &BracketSpec) -> ShearPlanes {
    match bracket.ears {
        Some(Ears::Single) => ShearPlanes::Single,
        Some(Ears::Double) | None => ShearPlanes::Double,
    }
}
