//! The builds that come with the program, all of our own invention.

/// A demo build.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Demo {
    /// Short name, as on the command line.
    pub name: &'static str,
    /// Name of its file.
    pub file_name: &'static str,
    /// What it shows.
    pub about: &'static str,
    /// Its text, a build file.
    pub text: &'static str,
}

/// The four demo builds, the good one first.
#[must_use]
pub fn demos() -> [Demo; 4] {
    [
        Demo {
            name: "good",
            file_name: "demo-good.ron",
            about: "a two-seat trail kart whose wheels keep their toe over the whole travel",
            text: include_str!("../../../assets/demo-good.ron"),
        },
        Demo {
            name: "lifted",
            file_name: "demo-lifted.ron",
            about: "the same kart with its frame raised for ground clearance: steep tie rods, rack ends that bend",
            text: include_str!("../../../assets/demo-lifted.ron"),
        },
        Demo {
            name: "badly-placed-rack",
            file_name: "demo-badly-placed-rack.ron",
            about: "the same kart with its rack too high and too wide: drag the inner tie-rod joint until the toe curve is flat",
            text: include_str!("../../../assets/demo-badly-placed-rack.ron"),
        },
        Demo {
            name: "measured",
            file_name: "demo-measured.ron",
            about: "the good kart finished and measured: toe read with two dials on both wheels, joints by tape; turn to Set up",
            text: include_str!("../../../assets/demo-measured.ron"),
        },
    ]
}
