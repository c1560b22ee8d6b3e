//! The rack end as a cantilever under the build's hit.

use trammel_build::{AxleName, PointName, RackEndSpec, defaults};
use trammel_strength::grade::short_name as short_grade;

use super::Case;
use crate::{
    Bound, Caution, CautionKind, Figure, FigureUnit, Grade, RackEndStudy,
    rack_end::{Fastening, RackEndCase},
    words::{angle, factor, force, length},
};

pub(super) fn check(case: &Case<'_>) -> (Option<RackEndStudy>, Option<Caution>) {
    let spec = &case.build.front.rack_end;
    let wanted = case.build.limits.rack_end_factor;
    let wanted = wanted.unwrap_or(defaults::RACK_END_FACTOR);
    let Some(bend) = Bend::of(case, spec, wanted) else {
        return (None, None);
    };
    let caution = (bend.study.factor < wanted).then(|| bend.caution(spec));
    (Some(bend.study), caution)
}

/// A rack end with its worst pose.
pub(super) struct Bend<'a> {
    pub case: &'a Case<'a>,
    pub fastening: Fastening,
    pub rack_end: RackEndCase,
    pub study: RackEndStudy,
    rod_angle: f64,
}

impl<'a> Bend<'a> {
    fn of(case: &'a Case<'a>, spec: &RackEndSpec, wanted: f64) -> Option<Self> {
        let fastening = Fastening::of(spec)?;
        let rack_end = RackEndCase::new(case.view.rack_end?, &fastening).ok()?;
        let worst = rack_end.worst(&case.view, &case.grid)?;
        let study = rack_end.study(
            case.build,
            &case.view,
            &fastening.grade,
            &worst.reading,
            wanted,
        )?;
        Some(Self {
            case,
            fastening,
            rack_end,
            study,
            rod_angle: worst.reading.rod_angle,
        })
    }

    fn caution(&self, spec: &RackEndSpec) -> Caution {
        let (case, study) = (self.case, &self.study);
        let grade = if study.factor < 1.0 {
            Grade::Danger
        } else {
            Grade::Caution
        };
        Caution {
            kind: CautionKind::RackEndBending,
            grade,
            axle: AxleName::Front,
            side: case.side,
            headline: format!(
                "{} bends: factor {}, wanted {}",
                case.subject("rack end"),
                factor(study.factor),
                factor(study.wanted)
            ),
            detail: self.detail(spec),
            figure: Some(Figure {
                value: study.factor,
                limit: study.wanted,
                bound: Bound::AtLeast,
                unit: FigureUnit::Factor,
            }),
            worst: Some(study.worst),
            reason: self.reason(),
            remedies: case.mended(|| self.remedies(spec)),
            point: Some(case.point(PointName::TieRodInner)),
            source: format!(
                "cantilever at the thread's minor diameter, nominal stress without notch factor; thread by {}; yield by {}; hit and wanted factor: common practice, no source",
                study.thread.source(),
                study.rack_face.strength.source
            ),
        }
    }

    fn detail(&self, spec: &RackEndSpec) -> String {
        let (case, study) = (self.case, &self.study);
        let assumed = |typed: bool| if typed { "" } else { " (assumed)" };
        let offset = study.bracket_offset.norm();
        let bracket = if offset > 0.5 {
            format!(", {} off the rack's line", length(offset, case.unit()))
        } else {
            String::new()
        };
        format!(
            "{}{} {}{}, {} out{bracket}; hit of {}, {}.",
            study.thread.short_name(),
            assumed(spec.thread.is_some()),
            short_grade(study.grade.name()),
            assumed(spec.grade.is_some()),
            length(study.free_length, case.unit()),
            force(study.hit.norm(), case.unit()),
            case.pose_words(study.worst.travel, study.worst.rack),
        )
    }

    fn reason(&self) -> String {
        let study = &self.study;
        format!(
            "A hit of {} on the wheel puts {} into the tie rod at {} to the rack: a rack end that bends or snaps leaves the wheel unsteered.",
            force(study.hit.norm(), self.case.unit()),
            force(study.tie_rod_tension.abs(), self.case.unit()),
            angle(self.rod_angle.to_degrees()),
        )
    }
}
