//! Every force of a corner over travel and rack.

use trammel_build::{AxleName, Build, BuildFault, LengthUnit, Side, Triple};
use trammel_geometry::{Linkage, Point, Pose, Vector};
use trammel_strength::{
    BadNumber,
    force::UprightLoad,
    loads::{LoadCase, LoadError, Scene},
    rack_end::RackEndGeometry,
    statics::{CornerForces, Equilibrium, StaticsError},
    stress::SectionLoads,
};

use super::{cases::kernel_cases, prepared::scene};
use crate::{
    Span, SweepFault, WorstPose,
    corner_view::{CornerView, HitForce},
    rack_end::geometry,
};

/// Where a force acts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ForcePoint {
    /// The tyre's contact point.
    Contact,
    /// The wheel centre.
    Hub,
}

/// A force of one's own on the wheel, vehicle axes on either side, N; a moment about the vertical, N mm.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct WheelForce {
    /// Where.
    pub at: ForcePoint,
    /// x forward, y to the left, z up.
    pub force: Triple,
    /// About z, turning from x to y.
    pub moment_z: f64,
}

/// Poses asked for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ForceRequest {
    /// Axle.
    pub axle: AxleName,
    /// Side.
    pub side: Side,
    /// Wheel travels, in `unit`; the build's own range where there are none.
    pub travel: Option<Span>,
    /// Rack positions, in `unit`; the centre where there are none.
    pub rack: Option<Span>,
    /// Unit of the lengths asked for.
    pub unit: LengthUnit,
}

/// Forces at a pose, N and N mm, vehicle axes of the side itself.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ForceRow {
    /// Wheel travel, mm.
    pub travel: f64,
    /// Rack travel, mm.
    pub rack: f64,
    /// Every force of the corner.
    pub forces: CornerForces,
    /// Loads of the rack end where it leaves the bar; `None` without a rack.
    pub rack_end: Option<SectionLoads>,
}

/// A table of forces.
#[derive(Clone, Debug, PartialEq)]
pub struct ForceTable {
    /// Rack position by rack position, in order of the travels; poses out of reach are left out.
    pub rows: Vec<ForceRow>,
    /// Poses asked for.
    pub asked: usize,
}

/// Why there are no forces.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum ForceFault {
    /// The build can't be posed.
    #[error(transparent)]
    Build(#[from] BuildFault),
    /// The poses asked for are none.
    #[error(transparent)]
    Sweep(#[from] SweepFault),
    /// The forces are not known.
    #[error(transparent)]
    Statics(#[from] StaticsError),
    /// The load case can't be put on.
    #[error(transparent)]
    Load(#[from] LoadError),
    /// A number that can't be computed with.
    #[error(transparent)]
    BadNumber(#[from] BadNumber),
    /// No load case of that name is put on.
    #[error(
        "the build has no load case \u{201c}{name}\u{201d} switched on; expected one of: {known}"
    )]
    NoCase {
        /// What was asked for.
        name: String,
        /// What there is.
        known: String,
    },
    /// The vehicle's figures can't be used.
    #[error("{0}")]
    Vehicle(String),
}

/// Forces under a force of one's own.
///
/// # Errors
/// [`ForceFault`].
pub fn forces_under(
    build: &Build,
    request: &ForceRequest,
    load: &WheelForce,
) -> Result<ForceTable, ForceFault> {
    let [x, y, z] = load.force;
    // A right corner is worked out in the mirror, where y and a turn about z go the other way.
    let out = match request.side {
        Side::Left => 1.0,
        Side::Right => -1.0,
    };
    let (force, moment) = (
        Vector::new(x, y * out, z),
        Vector::new(0.0, 0.0, load.moment_z * out),
    );
    table(build, request, |pose| {
        let at = match load.at {
            ForcePoint::Contact => pose.contact,
            ForcePoint::Hub => pose.wheel_centre,
        };
        Ok(UprightLoad::force_at(at, force)? + UprightLoad::moment(moment)?)
    })
}

/// Forces under a load case of the build; `sense` is which way a wheel that is turned on the spot is resisted, 1 or -1.
///
/// # Errors
/// [`ForceFault`].
pub fn forces_under_case(
    build: &Build,
    request: &ForceRequest,
    name: &str,
    sense: f64,
) -> Result<ForceTable, ForceFault> {
    let case = case_named(build, name)?;
    let model = build.axle(request.axle)?;
    let spec = build
        .axle_spec(request.axle)
        .ok_or(BuildFault::NoAxle { axle: request.axle })?;
    let scene: Scene = scene(build, &model, spec, &mut Vec::new())
        .map_err(|note| ForceFault::Vehicle(note.text))?;
    let linkage = *model.linkage(request.side);
    table(build, request, |pose| {
        Ok(scene.load(&case, &linkage, pose, sense)?)
    })
}

/// The forces of a load case at a pose, each with the point where it acts: vehicle axes of the side itself, mm and N. Moments, such as a stop's, are not among them.
///
/// # Errors
/// [`ForceFault`]; a pose out of reach has no forces.
pub fn acting_forces(
    build: &Build,
    (axle, side): (AxleName, Side),
    name: &str,
    at: WorstPose,
) -> Result<Vec<(Point, Vector)>, ForceFault> {
    let case = case_named(build, name)?;
    let model = build.axle(axle)?;
    let spec = build.axle_spec(axle).ok_or(BuildFault::NoAxle { axle })?;
    let scene = scene(build, &model, spec, &mut Vec::new())
        .map_err(|note| ForceFault::Vehicle(note.text))?;
    let mut found = Vec::new();
    if let Ok(pose) = model.linkage(side).pose(at.travel, at.rack) {
        scene.each_force(&case, &pose, |point, force| {
            found.push((side.place_in_vehicle(point), side.way_in_vehicle(force)));
        })?;
    }
    Ok(found)
}

fn case_named(build: &Build, name: &str) -> Result<LoadCase, ForceFault> {
    let cases = kernel_cases(build);
    let known = || {
        let names = cases.iter().map(|c| c.name.as_str());
        names.collect::<Vec<_>>().join(", ")
    };
    let found = cases.iter().find(|case| case.name == name);
    found.cloned().ok_or_else(|| ForceFault::NoCase {
        name: name.to_owned(),
        known: known(),
    })
}

fn table(
    build: &Build,
    request: &ForceRequest,
    load: impl Fn(&Pose) -> Result<UprightLoad, ForceFault>,
) -> Result<ForceTable, ForceFault> {
    let model = build.axle(request.axle)?;
    let view = CornerView::of(&model, request.side, HitForce::of(build));
    if request.rack.is_some() && model.rack.is_none() {
        return Err(SweepFault::NoRack { axle: request.axle }.into());
    }
    let end = view.rack_end.map(|place| geometry(&place)).transpose();
    let end = end.map_err(|e| ForceFault::Vehicle(e.to_string()))?;
    let mm = request.unit.mm();
    let own = || {
        Span::new(
            model.travel.droop / mm,
            model.travel.bump / mm,
            crate::DEFAULT_POSITIONS,
        )
    };
    let travels = request.travel.map_or_else(own, Ok)?;
    let racks = request.rack.map_or_else(|| Span::new(0.0, 0.0, 1), Ok)?;
    let asked = travels.count() * racks.count();
    if asked > crate::MOST_ROWS {
        return Err(SweepFault::TooMany { rows: asked }.into());
    }
    let mut rows = Vec::new();
    for rack in racks.iter() {
        for travel in travels.iter() {
            let Ok(pose) = view.linkage.pose(travel * mm, rack * mm) else {
                continue;
            };
            rows.push(row(
                &view.linkage,
                request.side,
                end.as_ref(),
                &pose,
                &load(&pose)?,
            )?);
        }
    }
    Ok(ForceTable { rows, asked })
}

fn row(
    linkage: &Linkage,
    side: Side,
    end: Option<&RackEndGeometry>,
    pose: &Pose,
    load: &UprightLoad,
) -> Result<ForceRow, ForceFault> {
    let forces = Equilibrium::at(linkage, pose)?.under(load)?;
    let rack_end = end.map(|end| end.loads_at_face(forces.force_on_inner_joint));
    Ok(ForceRow {
        travel: pose.travel,
        rack: pose.rack,
        forces: match side {
            Side::Left => forces,
            Side::Right => forces.mirrored(),
        },
        rack_end,
    })
}
