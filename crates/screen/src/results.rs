//! What is worked out from the build, made anew when the build changes and only then.

use trammel_analysis::{AxleStudy, Caution, CautionKind, Depth, Findings, Grade, Proof, Study};
use trammel_build::{AxleName, Build, PointName, PointRef, Side};

use crate::words::decimal;

/// Study and cautions of the build as it stands.
#[derive(Clone, Debug)]
pub struct Results {
    /// The study of the build, or of the last build that could be studied.
    pub study: Option<Study>,
    /// Why the build can't be studied, if so.
    pub fault: Option<String>,
    /// Worst first.
    pub cautions: Vec<Caution>,
    /// Whether the remedies of the cautions are worked out; during a drag they are not.
    pub depth: Depth,
    /// Worst grade at each point that has a caution.
    pub marks: Vec<(PointRef, Grade)>,
    /// What is written beside points on the drawing.
    pub remarks: Vec<(PointRef, Option<Grade>, String)>,
    /// What the checks of the layout found, without those of the proof.
    found: Findings,
}

impl Results {
    /// The study of an axle, where there is one.
    #[must_use]
    pub fn axle(&self, axle: AxleName) -> Option<&AxleStudy> {
        self.study.as_ref()?.axle(axle)
    }

    /// Works the build out.
    #[must_use]
    pub fn of(build: &Build, depth: Depth) -> Self {
        match Study::of(build) {
            Ok(study) => {
                let found = Findings::to_depth(build, &study, depth);
                let marks = marks(&found.cautions);
                let remarks = remarks(&found);
                Self {
                    study: Some(study),
                    fault: None,
                    cautions: found.cautions.clone(),
                    depth,
                    marks,
                    remarks,
                    found,
                }
            }
            Err(fault) => Self {
                study: None,
                fault: Some(fault.to_string()),
                cautions: Vec::new(),
                depth,
                marks: Vec::new(),
                remarks: Vec::new(),
                found: Findings::default(),
            },
        }
    }

    /// Lists the cautions of a proof with those of the layout, worst first.
    pub fn take_proof(&mut self, build: &Build, proof: Option<&Proof>) {
        let (Some(study), Some(proof), None) = (&self.study, proof, &self.fault) else {
            return;
        };
        self.cautions = self.found.clone().with_proof(build, study, proof).cautions;
        self.marks = marks(&self.cautions);
    }
}

/// The factor of the left rack end at its joint.
fn remarks(found: &Findings) -> Vec<(PointRef, Option<Grade>, String)> {
    let bent = found
        .cautions
        .iter()
        .find(|c| c.kind == CautionKind::RackEndBending);
    found
        .rack_ends
        .iter()
        .filter(|end| end.side == Side::Left)
        .map(|end| {
            let point = PointRef::left(AxleName::Front, PointName::TieRodInner);
            // Rounded down, as the caution has it: a factor is never shown better than it is.
            let factor = (end.factor * 10.0).floor() / 10.0;
            (
                point,
                bent.map(|c| c.grade),
                format!("rack end, factor {}", decimal(factor, 1)),
            )
        })
        .collect()
}

fn marks(cautions: &[Caution]) -> Vec<(PointRef, Grade)> {
    let mut marks: Vec<(PointRef, Grade)> = Vec::new();
    for caution in cautions {
        let Some(point) = caution.point else { continue };
        match marks.iter_mut().find(|(p, _)| *p == point) {
            Some((_, grade)) => *grade = (*grade).max(caution.grade),
            None => marks.push((point, caution.grade)),
        }
    }
    marks
}
