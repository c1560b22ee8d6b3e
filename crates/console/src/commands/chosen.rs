//! The corner of a build that a command is about.

use trammel_analysis::DEFAULT_POSITIONS;
use trammel_build::{
    AxleModel, AxleName, Build, Coordinate, LengthUnit, PointName, PointRef, Side, TapeReading,
    Triple, format_length, parse_length,
};
use trammel_geometry::{Corner, Point};
use trammel_persistence::Document;
use trammel_tuning::Stations;

use crate::arguments::tune::CornerArguments;
use crate::fault::Fault;
use crate::files;

/// A corner of a build, ready for the kernel. Its own frame is the left-hand one: a right corner is seen in the mirror.
pub(crate) struct Chosen {
    pub document: Document,
    pub model: AxleModel,
    pub side: Side,
}

impl Chosen {
    pub(crate) fn of(arguments: &CornerArguments) -> Result<Self, Fault> {
        let document = files::document(&arguments.build)?;
        let model = document.build().axle(arguments.axle.into())?;
        Ok(Self {
            document,
            model,
            side: arguments.side.into(),
        })
    }

    pub(crate) fn build(&self) -> &Build {
        self.document.build()
    }

    pub(crate) fn unit(&self) -> LengthUnit {
        self.build().unit
    }

    pub(crate) fn axle(&self) -> AxleName {
        self.model.name
    }

    pub(crate) fn corner(&self) -> &Corner {
        self.model.linkage(self.side).corner()
    }

    pub(crate) fn point(&self, point: PointName) -> PointRef {
        PointRef {
            axle: self.axle(),
            side: self.side,
            point,
        }
    }

    /// As many travels between the stops as `sweep` has by itself.
    pub(crate) fn stations(&self, rack: f64) -> Result<Stations, Fault> {
        let range = self.model.travel;
        let stations = Stations::even(range.droop, range.bump, DEFAULT_POSITIONS, vec![rack])?;
        Ok(stations)
    }

    /// A place of the corner's own frame in vehicle axes and the build's unit.
    pub(crate) fn typed(&self, place: Point) -> Triple {
        let there = self.in_vehicle(place);
        [there.x, there.y, there.z].map(|v| tidy(self.unit().from_mm(v)))
    }

    pub(crate) fn in_vehicle(&self, place: Point) -> Point {
        self.side.place_in_vehicle(place)
    }

    /// Name of the first keep-out that holds a tie-rod joint at a place of the corner's own frame.
    pub(crate) fn keep_out(&self, place: Point) -> Option<&str> {
        let held = |k: &&trammel_build::KeepOut| k.holds(self.axle(), place, self.unit());
        self.build()
            .keep_outs
            .iter()
            .find(held)
            .map(|k| k.name.as_str())
    }

    pub(crate) fn is_locked(&self, point: PointName, axis: trammel_build::Axis) -> bool {
        self.build().locked.contains(&Coordinate {
            axle: self.axle(),
            point,
            axis,
        })
    }

    /// A length of the command line, mm.
    pub(crate) fn length(&self, option: &'static str, text: &str) -> Result<f64, Fault> {
        length(option, text, self.unit())
    }

    /// The same, or so many in or mm where nothing was said.
    pub(crate) fn length_or(
        &self,
        option: &'static str,
        text: Option<&str>,
        [inch, mm]: [f64; 2],
    ) -> Result<f64, Fault> {
        match (text, self.unit()) {
            (Some(text), _) => self.length(option, text),
            (None, LengthUnit::Inch) => Ok(inch * LengthUnit::Inch.mm()),
            (None, LengthUnit::Millimetre) => Ok(mm),
        }
    }
}

/// A length of the command line, mm.
pub(crate) fn length(option: &'static str, text: &str, unit: LengthUnit) -> Result<f64, Fault> {
    parse_length(text, unit)
        .map(|v| v * unit.mm())
        .map_err(|fault| Fault::Length { option, fault })
}

/// A length of so many mm as a tape reads it, to 1/64 in or a tenth of a millimetre, with its unit.
pub(crate) fn on_tape(mm: f64, unit: LengthUnit) -> String {
    let value = match unit {
        LengthUnit::Inch => TapeReading::of(unit.from_mm(mm), 64).reading,
        LengthUnit::Millimetre => (mm * 10.0).round() / 10.0,
    };
    format!("{} {}", format_length(value + 0.0, unit), unit.sign())
}

/// Without float dust, far below anything a shop can measure.
pub(crate) fn tidy(value: f64) -> f64 {
    // Minus nought would only puzzle.
    (value * 1e7).round() / 1e7 + 0.0
}
