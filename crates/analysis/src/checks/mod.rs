//! The checks, one file each.

mod joint_angle;
mod lock_over;
mod moves;
mod names;
mod rack_end_bending;
mod rack_end_remedies;
mod rack_height;
mod reach;
mod stops;
mod thread_engagement;
mod tie_rod_angle;
mod toe_change;
mod toggle;

use trammel_build::{
    AxleModel, AxleName, Build, Coordinate, Edit, LengthUnit, PointName, PointRef, Side,
};

use crate::{
    AxleStudy, Caution, Depth, Findings, RackEndStudy, Remedy, corner_view::CornerView,
    corner_view::HitForce, pose_grid::PoseGrid, words,
};

/// One corner under examination.
pub(crate) struct Case<'a> {
    pub build: &'a Build,
    pub axle: &'a AxleStudy,
    pub view: CornerView,
    pub grid: PoseGrid,
    /// `None` when the other side is alike.
    pub side: Option<Side>,
    pub depth: Depth,
}

/// Every caution of an axle, and its rack ends.
pub(crate) fn examine(build: &Build, axle: &AxleStudy, depth: Depth, findings: &mut Findings) {
    let hit = HitForce::of(build);
    let alike = sides_alike(build, &axle.model);
    let sides: &[Side] = if alike {
        &[Side::Left]
    } else {
        &[Side::Left, Side::Right]
    };
    for &side in sides {
        let view = CornerView::of(&axle.model, side, hit);
        let case = Case {
            build,
            axle,
            view,
            grid: PoseGrid::of(&view),
            side: (!alike).then_some(side),
            depth,
        };
        case.examine(alike, findings);
    }
    if axle.model.name == AxleName::Front {
        let found = &mut findings.cautions;
        found.extend(names::check(build));
        found.extend(thread_engagement::check(build));
    }
}

/// Whether the right corner is the left one's mirror image at the opposite rack travel.
pub(crate) fn sides_alike(build: &Build, model: &AxleModel) -> bool {
    let own = build
        .axle_spec(model.name)
        .is_some_and(|spec| !spec.right.is_empty());
    !own && model
        .rack
        .is_none_or(|r| r.axis.x == 0.0 && r.axis.z == 0.0)
}

impl Case<'_> {
    fn examine(&self, alike: bool, findings: &mut Findings) {
        let found: &mut Vec<Caution> = &mut findings.cautions;
        found.extend(reach::check(self));
        if !self.tie_rod_runs_out() {
            found.extend(lock_over::check(self));
        }
        found.extend(toggle::check(self));
        found.extend(toe_change::check(self));
        found.extend(joint_angle::check(self));
        if self.view.rack_end.is_some() {
            found.extend(tie_rod_angle::check(self));
            let (study, caution) = rack_end_bending::check(self);
            found.extend(caution);
            let other = study.as_ref().filter(|_| alike).map(RackEndStudy::mirrored);
            findings.rack_ends.extend(study);
            findings.rack_ends.extend(other);
        }
    }

    fn tie_rod_runs_out(&self) -> bool {
        let mut ends = self.grid.ends.iter();
        ends.any(|end| end.member == trammel_geometry::Member::TieRod)
    }

    pub(crate) fn name(&self) -> AxleName {
        self.axle.model.name
    }

    pub(crate) fn unit(&self) -> LengthUnit {
        self.build.unit
    }

    /// A point of this side.
    pub(crate) fn point(&self, point: PointName) -> PointRef {
        PointRef {
            axle: self.name(),
            side: self.view.side,
            point,
        }
    }

    /// `Left rack end`, or `Rack end` with both sides alike; the rear axle is named.
    pub(crate) fn subject(&self, what: &str) -> String {
        match self.name() {
            AxleName::Front => words::sided(self.side, what),
            AxleName::Rear => words::sided(self.side, &format!("rear {what}")),
        }
    }

    pub(crate) fn pose_words(&self, travel: f64, rack: f64) -> String {
        words::pose(travel, rack, self.view.travel, self.view.lock, self.unit())
    }

    /// Remedies, where they are wanted.
    pub(crate) fn mended<R: IntoIterator<Item = Remedy>>(
        &self,
        remedies: impl FnOnce() -> R,
    ) -> Vec<Remedy> {
        match self.depth {
            Depth::Full => remedies().into_iter().collect(),
            Depth::Quick => Vec::new(),
        }
    }

    /// This corner in the build that an edit makes of this one; `None` where the edit can't be made.
    pub(crate) fn after(&self, edit: &Edit) -> Option<After> {
        let build = edit.apply(self.build).ok()?;
        let model = build.axle(self.name()).ok()?;
        let view = CornerView::of(&model, self.view.side, HitForce::of(&build));
        Some(After { build, model, view })
    }

    /// Whether a coordinate of a point is locked.
    pub(crate) fn is_locked(&self, point: PointName, axis: trammel_build::Axis) -> bool {
        self.build.locked.contains(&Coordinate {
            axle: self.name(),
            point,
            axis,
        })
    }
}

/// A corner of an edited build.
pub(crate) struct After {
    pub build: Build,
    pub model: AxleModel,
    pub view: CornerView,
}
