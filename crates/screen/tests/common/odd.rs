//! Builds at the edge of what a screen has to show: long names, nothing named, poses out of reach.

use trammel_build::{
    AcceptedCaution, Build, Edit, KeepOut, LengthUnit, LoadCaseSpec, PartsEdit, TravelSpec,
};

/// Eighty letters and more.
pub const LONG: &str =
    "The machine with the long name that somebody typed in one evening on a bench, mark two";

pub fn demo(name: &str) -> Build {
    let demo = trammel_persistence::demos()
        .into_iter()
        .find(|d| d.name == name)
        .expect("the demo is there");
    trammel_persistence::read(demo.text).expect("a demo can be read")
}

fn with(build: Build, edits: impl IntoIterator<Item = Edit>) -> Build {
    edits.into_iter().fold(build, |build, edit| {
        edit.apply(&build).expect("the build takes it")
    })
}

/// Long names wherever there are names.
pub fn long_names() -> Build {
    let build = demo("lifted");
    let keep_outs = (build.keep_outs.iter().enumerate())
        .map(|(i, k)| KeepOut {
            name: format!("{i}, {LONG}"),
            ..k.clone()
        })
        .collect();
    let cases: Vec<LoadCaseSpec> = (trammel_analysis::usual_load_cases(build.unit).iter())
        .take(1)
        .map(|c| LoadCaseSpec {
            name: format!("{LONG}: kerb"),
            what: LONG.repeat(3),
            ..c.clone()
        })
        .collect();
    let accepted = AcceptedCaution {
        caution: "nothing of this name".into(),
        reason: LONG.into(),
        figure: None,
    };
    with(
        build,
        [
            Edit::SetTitle(LONG.into()),
            Edit::SetNotes(LONG.repeat(4)),
            Edit::SetKeepOuts(keep_outs),
            Edit::Parts(PartsEdit::Accept(accepted)),
        ]
        .into_iter()
        .chain(
            cases
                .into_iter()
                .map(|c| Edit::Parts(PartsEdit::LoadCase(Box::new(c)))),
        ),
    )
}

/// Points and a wheel, and nothing else: what a new build is.
pub fn empty() -> Build {
    let build = demo("good");
    Build::new("", LengthUnit::Millimetre, {
        let mm = Edit::ConvertUnit(LengthUnit::Millimetre)
            .apply(&build.unlocked())
            .expect("it can be converted");
        trammel_build::AxleSpec::new(
            mm.front.upper_arm,
            mm.front.lower_arm,
            mm.front.tie_rod,
            mm.front.wheel,
        )
    })
}

/// Travel that the linkage does not reach, and a rack that goes over centre.
pub fn out_of_reach() -> Build {
    let build = demo("good");
    let rack = trammel_build::RackSpec {
        travel: Some(9.0),
        ..build.front.rack
    };
    with(
        build,
        [
            Edit::SetSpring(trammel_build::AxleName::Front, None),
            Edit::SetTravel(
                trammel_build::AxleName::Front,
                Some(TravelSpec {
                    bump: 14.0,
                    droop: 13.0,
                }),
            ),
            Edit::SetRack(rack),
        ],
    )
}
