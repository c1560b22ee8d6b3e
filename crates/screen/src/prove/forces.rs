//! Member forces of the chosen load case: at the present pose, and over travel or rack.

use trammel_analysis::{
    FactorRequest, FactorRow, ForceRequest, ForceRow, Span, SteeringForces, WorstPose,
    acting_forces, effective_load_cases, factors_over, forces_under_case, steering_forces,
};
use trammel_build::{AxleName, Build, LoadAction, LoadCaseSpec, Side};
use trammel_geometry::{ArmName, Point, Vector};

use super::settings::{Over, Plotted, ProveView};
use crate::terms::{self, Term};

/// Positions of a plot.
const POSITIONS: usize = 41;

/// A force of the table.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Member {
    /// In the tie rod, tension positive.
    TieRod,
    /// In the spring unit, compression positive.
    Spring,
    /// Of the rod along the rack, to the left positive.
    Rack,
    /// At an arm's ball joint, on the upright.
    BallJoint(ArmName),
    /// At an arm's front pivot, on the frame.
    FrontPivot(ArmName),
    /// At an arm's rear pivot, on the frame.
    RearPivot(ArmName),
    /// Bending moment of the rack end at the face.
    EndBending,
    /// Its torsion.
    EndTorsion,
    /// Its force along the rack, tension positive.
    EndAxial,
    /// Its force across the rack.
    EndShear,
}

/// A figure of the table.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Figure {
    /// A signed force, N.
    Along(f64),
    /// A force in vehicle axes, N.
    Vector(Vector),
    /// A moment, N mm.
    Moment(f64),
}

impl Figure {
    /// What a plot shows: the signed force, the size of a vector, the moment.
    #[must_use]
    pub fn size(self) -> f64 {
        match self {
            Self::Along(v) | Self::Moment(v) => v,
            Self::Vector(v) => v.norm(),
        }
    }
}

impl Member {
    /// In the order of the table.
    pub const ALL: [Self; 13] = [
        Self::TieRod,
        Self::Rack,
        Self::Spring,
        Self::BallJoint(ArmName::Upper),
        Self::FrontPivot(ArmName::Upper),
        Self::RearPivot(ArmName::Upper),
        Self::BallJoint(ArmName::Lower),
        Self::FrontPivot(ArmName::Lower),
        Self::RearPivot(ArmName::Lower),
        Self::EndBending,
        Self::EndTorsion,
        Self::EndAxial,
        Self::EndShear,
    ];

    /// Its name in the table.
    #[must_use]
    pub fn label(self) -> &'static str {
        use ArmName::{Lower, Upper};
        match self {
            Self::TieRod => "Tie rod",
            Self::Rack => "Rack",
            Self::Spring => "Spring unit",
            Self::BallJoint(Upper) => "Upper ball joint",
            Self::FrontPivot(Upper) => "Upper front pivot",
            Self::RearPivot(Upper) => "Upper rear pivot",
            Self::BallJoint(Lower) => "Lower ball joint",
            Self::FrontPivot(Lower) => "Lower front pivot",
            Self::RearPivot(Lower) => "Lower rear pivot",
            Self::EndBending => "Rack end, bending",
            Self::EndTorsion => "Rack end, torsion",
            Self::EndAxial => "Rack end, along",
            Self::EndShear => "Rack end, across",
        }
    }

    /// What it is, and its sign.
    #[must_use]
    pub fn term(self) -> Term {
        match self {
            Self::TieRod => terms::TIE_ROD_FORCE,
            Self::Rack => terms::RACK_FORCE,
            Self::Spring => terms::SPRING_FORCE,
            Self::BallJoint(_) => terms::BALL_JOINT_FORCE,
            Self::FrontPivot(_) | Self::RearPivot(_) => terms::PIVOT_FORCE,
            Self::EndBending => terms::END_BENDING,
            Self::EndTorsion => terms::END_TORSION,
            Self::EndAxial => terms::END_AXIAL,
            Self::EndShear => terms::END_SHEAR,
        }
    }

    /// Its figure in a row; none without a rack.
    #[must_use]
    pub fn figure(self, row: &ForceRow) -> Option<Figure> {
        let f = &row.forces;
        let end = row.rack_end;
        Some(match self {
            Self::TieRod => Figure::Along(f.tie_rod_tension),
            Self::Rack => Figure::Along(f.rack_force?),
            Self::Spring => Figure::Along(f.spring_force),
            Self::BallJoint(arm) => Figure::Vector(f.arm(arm).ball_joint_on_upright),
            Self::FrontPivot(arm) => Figure::Vector(-f.arm(arm).front_pivot),
            Self::RearPivot(arm) => Figure::Vector(-f.arm(arm).rear_pivot),
            Self::EndBending => Figure::Moment(end?.bending),
            Self::EndTorsion => Figure::Moment(end?.torsion),
            Self::EndAxial => Figure::Along(end?.axial),
            Self::EndShear => Figure::Along(end?.shear),
        })
    }
}

/// What is asked for, of which build.
#[derive(Clone, Debug, PartialEq)]
struct Ask {
    build: Build,
    of: Of,
}

/// What is asked for.
#[derive(Clone, Debug, PartialEq)]
struct Of {
    place: Place,
    case: String,
    sense: f64,
    over: Over,
    plotted: Plotted,
}

/// What came of it.
type Rows = Result<Vec<ForceRow>, String>;

/// What is known of it.
struct Known {
    here: Rows,
    along: Rows,
    /// What acts on the wheel at the present pose, each with its place, mm and N.
    acting: Vec<(Point, Vector)>,
    /// Both sides on the rack at the present pose, and what they ask of the hands.
    steering: Option<SteeringForces>,
    /// The factor at the present pose, then over travel or rack; empty while a force is plotted.
    factor_here: Option<FactorRow>,
    factors: Vec<FactorRow>,
}

/// Forces of the chosen load case, worked out anew when something they depend on changes.
#[derive(Default)]
pub(crate) struct ForcesWork {
    known: Option<(Ask, Known)>,
}

impl ForcesWork {
    /// Works out what is not known yet: some fifty poses.
    pub(crate) fn go_on(&mut self, build: &Build, lock: f64, place: &Place, view: &ProveView) {
        let Some(case) = chosen_case(build, view) else {
            self.known = None;
            return;
        };
        let of = Of {
            place: *place,
            case: case.name,
            sense: view.sense,
            over: view.over,
            plotted: view.plotted,
        };
        let same = |(known, _): &(Ask, Known)| known.of == of && known.build == *build;
        if self.known.as_ref().is_some_and(same) {
            return;
        }
        let ask = Ask {
            build: build.clone(),
            of,
        };
        let known = ask.work_out(lock);
        self.known = Some((ask, known));
    }

    /// Forces at the present pose, or why there are none.
    pub(crate) fn here(&self) -> Option<Result<&ForceRow, &str>> {
        let (_, known) = self.known.as_ref()?;
        Some(match &known.here {
            Ok(rows) => rows.first().ok_or("The linkage can't reach this pose."),
            Err(why) => Err(why),
        })
    }

    /// What acts on the wheel at the present pose.
    pub(crate) fn acting(&self) -> &[(Point, Vector)] {
        self.known.as_ref().map_or(&[], |(_, known)| &known.acting)
    }

    /// Both sides on the rack at the present pose; none on an axle without one.
    pub(crate) fn steering(&self) -> Option<SteeringForces> {
        self.known.as_ref().and_then(|(_, known)| known.steering)
    }

    /// Forces over travel or rack.
    pub(crate) fn along(&self) -> &[ForceRow] {
        let known = self.known.as_ref();
        known.map_or(&[], |(_, known)| known.along.as_deref().unwrap_or(&[]))
    }

    /// The factor at the present pose, and over travel or rack.
    pub(crate) fn factors(&self) -> (Option<FactorRow>, &[FactorRow]) {
        let known = self.known.as_ref();
        known.map_or((None, &[]), |(_, k)| (k.factor_here, &k.factors))
    }
}

impl Ask {
    fn work_out(&self, lock: f64) -> Known {
        let Place { travel, rack, .. } = self.of.place;
        let at_travel = Span::new(travel, travel, 1).ok();
        // An axle without a rack has no rack positions to ask for.
        let steered = |span: Option<Span>| span.filter(|_| lock > 0.0);
        let at_rack = steered(Span::new(rack, rack, 1).ok());
        let here = self.rows(at_travel, at_rack);
        let along = match self.of.over {
            Over::Travel => self.rows(None, at_rack),
            Over::Rack => self.rows(at_travel, steered(Span::new(-lock, lock, POSITIONS).ok())),
        };
        let poses = |rows: &Rows| -> Vec<WorstPose> {
            let rows = rows.iter().flatten();
            let pose = |row: &ForceRow| WorstPose {
                travel: row.travel,
                rack: row.rack,
            };
            rows.map(pose).collect()
        };
        let place = self.of.place;
        let pose = WorstPose { travel, rack };
        let corner = (place.axle, place.side);
        Known {
            // Why there are none is said with the forces.
            acting: acting_forces(&self.build, corner, &self.of.case, pose).unwrap_or_default(),
            steering: self.steering(pose),
            factor_here: self.factors(&poses(&here)).into_iter().next(),
            factors: self.factors(&poses(&along)),
            here,
            along,
        }
    }

    fn rows(&self, travel: Option<Span>, rack: Option<Span>) -> Rows {
        let request = ForceRequest {
            axle: self.of.place.axle,
            side: self.of.place.side,
            travel,
            rack,
            unit: trammel_build::LengthUnit::Millimetre,
        };
        forces_under_case(&self.build, &request, &self.of.case, self.of.sense)
            .map(|table| table.rows)
            .map_err(|fault| fault.to_string())
    }

    fn steering(&self, pose: WorstPose) -> Option<SteeringForces> {
        let Of { place, sense, .. } = self.of;
        let front = place.axle == AxleName::Front;
        front.then(|| steering_forces(&self.build, place.side, &self.of.case, pose, sense))?
    }

    fn factors(&self, poses: &[WorstPose]) -> Vec<FactorRow> {
        let Plotted::Factor(part, check) = self.of.plotted else {
            return Vec::new();
        };
        let asked = FactorRequest {
            axle: self.of.place.axle,
            side: self.of.place.side,
            part,
            check,
            load_case: self.of.case.clone(),
        };
        factors_over(&self.build, &asked, poses)
    }
}

/// Where the linkage is looked at.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Place {
    pub axle: AxleName,
    pub side: Side,
    pub travel: f64,
    pub rack: f64,
}

/// The load case whose forces are shown: the one that was chosen, while it is put on, or the first that is.
#[must_use]
pub fn chosen_case(build: &Build, view: &ProveView) -> Option<LoadCaseSpec> {
    let on: Vec<LoadCaseSpec> = effective_load_cases(build)
        .into_iter()
        .filter(|(_, on)| *on)
        .map(|(case, _)| case)
        .collect();
    let chosen = on
        .iter()
        .find(|case| Some(&case.name) == view.case.as_ref());
    chosen.or(on.first()).cloned()
}

/// Whether a case may act either way round.
#[must_use]
pub fn has_two_senses(case: &LoadCaseSpec) -> bool {
    case.actions
        .iter()
        .any(|a| matches!(a, LoadAction::TurnedOnTheSpot(..)))
}
