//! The drawer of measured parts: one RON file in the user's folder.

use std::{fs, io, path::Path};

use serde::{Deserialize, Serialize};
use trammel_build::{
    JointPart, LengthUnit, Part, PartKind, RackPart, SpindlePart, SpringPart, SpringRate,
    SteeringArm,
};

use crate::{outside::kept_text, save::write_file};

/// A longer drawer was not written here, bytes.
const LARGEST: u64 = 4 * 1024 * 1024;
/// The format of the drawer's file.
const DRAWER_FORMAT: u32 = 1;

/// Measured parts.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Drawer {
    /// The parts, in their owner's order.
    pub parts: Vec<Part>,
}

/// Why a drawer can't be opened. The file stays as it is.
#[derive(Debug, thiserror::Error)]
pub enum DrawerFault {
    /// The system refuses.
    #[error("the drawer of parts can't be read: {0}")]
    File(#[from] io::Error),
    /// Larger than any drawer.
    #[error(
        "the drawer's file has {0} bytes, more than any drawer of parts; nothing of it is used"
    )]
    TooLarge(u64),
    /// Not a drawer.
    #[error(
        "the drawer's file can't be read: {0}; mend it by hand or put it aside, it is not written over until then"
    )]
    NotDrawer(#[from] ron::error::SpannedError),
    /// From a newer program.
    #[error("the drawer's file has format {0}; this program reads format {DRAWER_FORMAT}")]
    NewerFormat(u32),
}

impl Drawer {
    /// The drawer in a file; empty when there is none.
    ///
    /// # Errors
    /// [`DrawerFault`].
    pub fn load(path: &Path) -> Result<Self, DrawerFault> {
        let size = match fs::metadata(path) {
            Ok(found) => found.len(),
            Err(e) if e.kind() == io::ErrorKind::NotFound => return Ok(Self::default()),
            Err(e) => return Err(e.into()),
        };
        if size > LARGEST {
            return Err(DrawerFault::TooLarge(size));
        }
        Self::read(&kept_text(path, LARGEST)?)
    }

    /// The drawer in a text.
    ///
    /// # Errors
    /// [`DrawerFault`].
    pub fn read(text: &str) -> Result<Self, DrawerFault> {
        let options = ron::Options::default()
            .with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME);
        let file: FileDrawer = options.from_str(text)?;
        if file.format != DRAWER_FORMAT {
            return Err(DrawerFault::NewerFormat(file.format));
        }
        Ok(Self {
            parts: file.parts.into_iter().map(Into::into).collect(),
        })
    }

    /// The drawer as text.
    ///
    /// # Errors
    /// When a figure is no number.
    pub fn write(&self) -> io::Result<String> {
        let file = FileDrawer {
            format: DRAWER_FORMAT,
            parts: self.parts.iter().map(Into::into).collect(),
        };
        let config =
            ron::ser::PrettyConfig::default().extensions(ron::extensions::Extensions::empty());
        ron::ser::to_string_pretty(&file, config)
            .map(|t| t + "\n")
            .map_err(io::Error::other)
    }

    /// Saves it whole or not at all.
    ///
    /// # Errors
    /// When the system refuses; the old drawer is whole then.
    pub fn save(&self, path: &Path) -> io::Result<()> {
        if let Some(folder) = path.parent() {
            fs::create_dir_all(folder)?;
        }
        write_file(path, self.write()?.as_bytes())
    }
}

#[derive(Deserialize, Serialize)]
#[serde(deny_unknown_fields, rename = "drawer")]
struct FileDrawer {
    format: u32,
    parts: Vec<FilePart>,
}

#[derive(Deserialize, Serialize)]
#[serde(deny_unknown_fields, rename = "part")]
struct FilePart {
    name: String,
    unit: Unit,
    #[serde(default)]
    notes: String,
    kind: Kind,
}

#[derive(Clone, Copy, Deserialize, Serialize)]
#[serde(rename_all = "snake_case")]
enum Unit {
    Inch,
    Mm,
}

#[derive(Deserialize, Serialize)]
#[serde(rename_all = "snake_case")]
enum Kind {
    Spindle {
        ball_joint_spacing: f64,
        inclination_deg: f64,
        spindle_height: f64,
        wheel_out: f64,
        arm_length: f64,
        arm: Arm,
        arm_height: f64,
        arm_out: f64,
    },
    Rack {
        joint_to_joint: f64,
        travel: f64,
        travel_per_turn: f64,
        end_thread: String,
        #[serde(default)]
        hard_to: Option<f64>,
    },
    Spring {
        open: f64,
        closed: f64,
        #[serde(default)]
        rate: Option<Rate>,
    },
    Joint {
        ball_width: f64,
        swivel_deg: f64,
        #[serde(default)]
        rating_n: Option<f64>,
    },
}

#[derive(Clone, Copy, Deserialize, Serialize)]
#[serde(rename_all = "snake_case")]
enum Arm {
    Ahead,
    Behind,
}

#[derive(Clone, Copy, Deserialize, Serialize)]
#[serde(rename_all = "snake_case")]
enum Rate {
    NPerMm(f64),
    LbPerIn(f64),
}

impl From<FilePart> for Part {
    fn from(f: FilePart) -> Self {
        let unit = match f.unit {
            Unit::Inch => LengthUnit::Inch,
            Unit::Mm => LengthUnit::Millimetre,
        };
        Self {
            name: f.name,
            unit,
            notes: f.notes,
            kind: f.kind.into(),
        }
    }
}

impl From<Kind> for PartKind {
    fn from(kind: Kind) -> Self {
        match kind {
            Kind::Spindle {
                ball_joint_spacing,
                inclination_deg,
                spindle_height,
                wheel_out,
                arm_length,
                arm,
                arm_height,
                arm_out,
            } => Self::Spindle(SpindlePart {
                ball_joint_spacing,
                inclination_deg,
                spindle_height,
                wheel_out,
                arm_length,
                arm: match arm {
                    Arm::Ahead => SteeringArm::Ahead,
                    Arm::Behind => SteeringArm::Behind,
                },
                arm_height,
                arm_out,
            }),
            Kind::Rack {
                joint_to_joint,
                travel,
                travel_per_turn,
                end_thread,
                hard_to,
            } => Self::Rack(RackPart {
                joint_to_joint,
                travel,
                travel_per_turn,
                end_thread,
                hard_to,
            }),
            Kind::Spring { open, closed, rate } => Self::Spring(SpringPart {
                open,
                closed,
                rate: rate.map(|r| match r {
                    Rate::NPerMm(v) => SpringRate::NewtonsPerMillimetre(v),
                    Rate::LbPerIn(v) => SpringRate::PoundsPerInch(v),
                }),
            }),
            Kind::Joint {
                ball_width,
                swivel_deg,
                rating_n,
            } => Self::Joint(JointPart {
                ball_width,
                swivel_deg,
                rating: rating_n,
            }),
        }
    }
}

impl From<&Part> for FilePart {
    fn from(p: &Part) -> Self {
        let unit = match p.unit {
            LengthUnit::Inch => Unit::Inch,
            LengthUnit::Millimetre => Unit::Mm,
        };
        Self {
            name: p.name.clone(),
            unit,
            notes: p.notes.clone(),
            kind: (&p.kind).into(),
        }
    }
}

impl From<&PartKind> for Kind {
    fn from(kind: &PartKind) -> Self {
        match kind {
            PartKind::Spindle(s) => Self::Spindle {
                ball_joint_spacing: s.ball_joint_spacing,
                inclination_deg: s.inclination_deg,
                spindle_height: s.spindle_height,
                wheel_out: s.wheel_out,
                arm_length: s.arm_length,
                arm: match s.arm {
                    SteeringArm::Ahead => Arm::Ahead,
                    SteeringArm::Behind => Arm::Behind,
                },
                arm_height: s.arm_height,
                arm_out: s.arm_out,
            },
            PartKind::Rack(r) => Self::Rack {
                joint_to_joint: r.joint_to_joint,
                travel: r.travel,
                travel_per_turn: r.travel_per_turn,
                end_thread: r.end_thread.clone(),
                hard_to: r.hard_to,
            },
            PartKind::Spring(s) => Self::Spring {
                open: s.open,
                closed: s.closed,
                rate: s.rate.map(|r| match r {
                    SpringRate::NewtonsPerMillimetre(v) => Rate::NPerMm(v),
                    SpringRate::PoundsPerInch(v) => Rate::LbPerIn(v),
                }),
            },
            PartKind::Joint(j) => Self::Joint {
                ball_width: j.ball_width,
                swivel_deg: j.swivel_deg,
                rating_n: j.rating,
            },
        }
    }
}
