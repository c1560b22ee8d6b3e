//! What the tie-rod joints' bolts see, worked out when the build has changed and no drag goes on.

use trammel_analysis::{AxleStudy, BoltStudy};
use trammel_build::{AxleName, Build};

/// The figures with what they were worked out from.
#[derive(Default)]
pub(crate) struct BoltWork {
    of: Option<(Build, AxleName)>,
    found: Option<[BoltStudy; 2]>,
}

impl BoltWork {
    /// Brings the figures up to the build.
    pub(crate) fn go_on(&mut self, build: &Build, axle: &AxleStudy) {
        let name = axle.model.name;
        let known = self.of.as_ref();
        if known.is_some_and(|(b, a)| b == build && *a == name) {
            return;
        }
        self.found = BoltStudy::of(build, &axle.model);
        self.of = Some((build.clone(), name));
    }

    /// Inner and outer joint.
    pub(crate) fn shown(&self) -> Option<&[BoltStudy; 2]> {
        self.found.as_ref()
    }
}
