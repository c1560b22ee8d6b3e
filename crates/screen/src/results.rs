//! What is worked out from the build, made anew when the build changes and only then.

use trammel_analysis::{Caution, Grade, Study, cautions};
use trammel_build::{Build, PointRef};

/// Study and cautions of the build as it stands.
#[derive(Clone, Debug)]
pub struct Results {
    /// The study of the build, or of the last build that could be studied.
    pub study: Option<Study>,
    /// Why the build can't be studied, if so.
    pub fault: Option<String>,
    /// Worst first.
    pub cautions: Vec<Caution>,
    /// Worst grade at each point that has a caution.
    pub marks: Vec<(PointRef, Grade)>,
}

impl Results {
    /// Works the build out.
    #[must_use]
    pub fn of(build: &Build) -> Self {
        match Study::of(build) {
            Ok(study) => {
                let cautions = cautions(build, &study);
                let marks = marks(&cautions);
                Self {
                    study: Some(study),
                    fault: None,
                    cautions,
                    marks,
                }
            }
            Err(fault) => Self {
                study: None,
                fault: Some(fault.to_string()),
                cautions: Vec::new(),
                marks: Vec::new(),
            },
        }
    }
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
