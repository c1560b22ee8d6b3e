//! What can be wrong with a build.

use trammel_geometry::CornerFault;

use crate::{AxleName, Side};

/// A fault of a build, named by the path of the field that it is about.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum BuildFault {
    /// The points of a corner do not make a linkage.
    #[error("{} {} corner: {fault}", axle.word(), side.word())]
    Corner {
        /// Axle.
        axle: AxleName,
        /// Side.
        side: Side,
        /// What is wrong.
        fault: CornerFault,
    },
    /// A figure is outside what it can be.
    #[error("{path} is {found}, expected {expected}")]
    Figure {
        /// Path of the field, such as `vehicle.front_share`.
        path: String,
        /// What was found.
        found: String,
        /// What can stand there.
        expected: &'static str,
    },
    /// Something stands where it has no meaning.
    #[error("{path} has no place here: {reason}")]
    OutOfPlace {
        /// Path of the field.
        path: String,
        /// Why.
        reason: &'static str,
    },
    /// The build has no such axle.
    #[error("this build has no {} axle", axle.word())]
    NoAxle {
        /// The axle asked for.
        axle: AxleName,
    },
}

impl BuildFault {
    /// Path of the field or point that the fault is about, such as `front.upper_arm.ball_joint`.
    #[must_use]
    pub fn path(&self) -> String {
        match self {
            Self::Corner { axle, fault, .. } => match corner_point(fault) {
                Some(point) => format!("{}.{point}", axle.word()),
                None => axle.word().to_owned(),
            },
            Self::Figure { path, .. } | Self::OutOfPlace { path, .. } => path.clone(),
            Self::NoAxle { axle } => axle.word().to_owned(),
        }
    }
}

fn corner_point(fault: &CornerFault) -> Option<&'static str> {
    match fault {
        CornerFault::NotFinite { what } => Some(what),
        CornerFault::Coincident { second, .. } => Some(second),
        CornerFault::OnAxis { joint, .. } => Some(joint),
        CornerFault::NoRadius => Some("wheel.loaded_radius"),
        CornerFault::NoRackAxis => Some("rack.axis"),
        CornerFault::Locked { .. } | CornerFault::NoTravel { .. } => None,
    }
}
