//! A build: the hardpoints and figures of one vehicle as its builder typed them.
//!
//! A [`Build`] is plain data in its own length unit, so nothing drifts when it is saved and opened again. Every change is an [`Edit`]: a
//! named command that turns one build into another. [`Build::axle`] turns it into the kernel's millimetres.
//!
//! | where | what |
//! |---|---|
//! | [`Build`], [`AxleSpec`], [`Vehicle`] ... | the data; what is left out stays `None` |
//! | [`JointBolts`], [`KeepOut`], [`Tolerances`] | which way joint bolts stand, where no joint may go, how exactly points are made |
//! | [`SetUp`], [`Session`] | what can be adjusted, the log of readings, how well surveyed points are known |
//! | [`Part`] | a spindle, rack, spring or joint measured on the bench, to be put into any build |
//! | [`AxleParts`], [`MaterialSpec`], [`SteeringSpec`] | what a build is made of: tubes, joints, bolts, brackets |
//! | [`ShopSpec`], [`ShopStep`] | how the shop prints and saws |
//! | [`LoadCases`], [`AcceptedCaution`] | what it is proved against, and which cautions stay, with the reason |
//! | [`PointName`], [`PointRef`], [`Coordinate`] | names of hardpoints, as files, screens and messages use them |
//! | [`defaults`] | what is taken for whatever a build leaves out |
//! | [`Build::axle`], [`AxleModel`] | a build resolved into the kernel's units: linkages, rack, travel range |
//! | [`Edit`], [`PartsEdit`] | every change that can be made, with its name |
//! | [`LengthUnit`] | inch or millimetre |
//! | [`parse_length`], [`format_length`] | lengths as they are typed and shown |
//! | [`decimal`], [`signed`] | other numbers as they are shown |

mod accepted;
mod access;
pub mod begin;
mod check;
mod convert;
mod decimal;
pub mod defaults;
mod edit;
mod fault;
mod joint_bolts;
mod keep_out;
mod length;
mod load_case;
mod measured;
mod parts;
mod parts_edit;
mod points;
mod resolve;
mod set_up;
mod shop;
mod spec;
mod steering;
mod tolerances;
mod unit;

pub use accepted::AcceptedCaution;
pub use access::mirror;
pub use decimal::{decimal, signed};
pub use edit::{Edit, EditFault, RideHeight};
pub use fault::BuildFault;
pub use joint_bolts::{BoltAxis, JointBolts};
pub use keep_out::{KeepOut, KeepOutCorners};
pub use length::{
    LengthFault, LengthProblem, TapeReading, convert_length, format_length, parse_length,
};
pub use load_case::{
    Hold, LoadAction, LoadAxes, LoadCaseSpec, LoadCases, LoadPlace, LoadUnit, RimHalf, TyrePatch,
};
pub use measured::{
    JointPart, Part, PartFault, PartKind, RackPart, SpindlePart, SpringPart, SteeringArm,
    guide as measuring_guide,
};
pub use parts::{
    ArmParts, AxleParts, BoltSpec, BracketSpec, Ears, Force, FrameTube, HoleFit, JointEnd,
    JointParts, MaterialSpec, Pressure, RackMount, Section, ShearPlane, Stress, TabOutline,
    TieRodParts, Tube, WheelParts,
};
pub use parts_edit::PartsEdit;
pub use points::{AxleName, Coordinate, PointName, PointRef, Side};
pub use resolve::{AxleModel, RackEndPlace, RackModel, Stop, TravelRange};
pub use set_up::{
    Adjusted, AdjustedPart, Adjusters, RackEndRange, ReadingRow, RodRange, Session, SessionFault,
    SetUp, SideSheet, StackRange, Statics, SurveyedPoint, ToeMethod, TravelMeasure, Weights,
};
pub use shop::{ShopSpec, ShopStep};
pub use spec::{
    ArmPoints, AxleSpec, Build, Hit, HitPoint, JamNutAt, Limits, Mass, RackEndSpec, RackSpec,
    RightPoints, SpringRate, SpringSpec, ThreadMaking, TieRodPoints, TravelSpec, Triple, Vehicle,
    WheelSpec,
};
pub use steering::SteeringSpec;
pub use tolerances::{MadeBy, Tolerances};
pub use unit::LengthUnit;

pub use trammel_geometry::Axis;
