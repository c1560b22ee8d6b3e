//! From a build to steel: its parts, and the sheets that they are made from.
//!
//! Everything is derived from a [`Build`](trammel_build::Build) and never saved in it. What the build leaves out is taken from [`defaults`] or from the build's
//! own defaults, and said on the sheet. The same build gives the same sheets, byte for byte. Nothing here reads a clock or writes a file.
//!
//! | where | what |
//! |---|---|
//! | [`Sheets::of`] | everything at once: every sheet with its pages, what could not be made and why |
//! | [`Sheet`], [`Group`] | one part or list, its pages, its flat part, its tables |
//! | [`Shop`] | unit and step of printed lengths, datum, stock |
//! | [`RoundingCost`] | what rounding every printed coordinate to the shop's step does to the toe curve |
//! | [`flat_part_at`], [`bracket_at`] | the tab of one joint alone, for editing it live, and the bracket that it is made from |
//! | [`OutFile`], [`Format`], [`Which`] | the files of a set of sheets, as bytes |
//!
//! | inside | what |
//! |---|---|
//! | `hardware` | bolt, ball, hole and gap at a joint, typed or taken |
//! | `feet` | what the ears of a tab stand on: flat, coped, or askew on a round tube |
//! | `tabs`, `rack_end`, `tap`, `mount`, `rods`, `arms`, `spacers` | parts |
//! | `fixture`, `cut_list`, `rounding`, `cautions` | lists |
//! | `draft`, `set` | from a part to pages |

mod arms;
mod cautions;
mod cut_list;
pub mod defaults;
mod draft;
mod feet;
mod files;
mod fixture;
mod hardware;
mod letters;
mod mount;
mod plot;
mod rack_end;
mod rods;
mod rounding;
mod set;
mod shop;
mod spacers;
mod tabs;
mod tap;

pub use draft::Group;
pub use files::{
    FileFault, FileName, Format, FormatError, OutFile, Which, file_names, file_of, files_of,
};
pub use rounding::{RoundingCost, rounding_costs};
pub use set::{Sheet, Sheets};
pub use shop::Shop;
pub use tabs::{bracket_at, flat_part_at, tab_points};
