//! Load cases as the fields of their file.

use trammel_build::{
    Hold, LoadAction, LoadAxes, LoadCaseSpec, LoadCases, LoadPlace, LoadUnit, Pressure, RimHalf,
    TyrePatch,
};

use super::{
    item::Item,
    pieces::{entry, force},
};

pub(super) fn load_cases(cases: &LoadCases) -> Item {
    Item::Fields(vec![
        entry("own", Item::List(cases.own.iter().map(load_case).collect())),
        entry("off", Item::Names(cases.off.iter().cloned().collect())),
    ])
}

fn load_case(case: &LoadCaseSpec) -> Item {
    let hold = match case.hold {
        Hold::Rolling => "rolling",
        Hold::Braked => "braked",
    };
    let pair = |[from, to]: [f64; 2]| Item::Tuple("", vec![Item::Number(from), Item::Number(to)]);
    let mut entries = vec![
        entry("name", Item::Text(case.name.clone())),
        entry("what", Item::Text(case.what.clone())),
        entry(
            "actions",
            Item::List(case.actions.iter().map(|a| action(*a)).collect()),
        ),
        entry("hold", Item::Word(hold)),
    ];
    for (name, v) in [("braking", case.braking), ("cornering", case.cornering)] {
        entries.extend((v != 0.0).then(|| entry(name, Item::Number(v))));
    }
    entries.push(entry("travel", pair(case.travel)));
    entries.push(entry("lock", pair(case.lock)));
    Item::Fields(entries)
}

fn action(a: LoadAction) -> Item {
    match a {
        LoadAction::Force(size, unit, at, axes) => {
            let unit = match unit {
                LoadUnit::Newtons => "newtons",
                LoadUnit::StaticWheelLoad => "static_wheel_load",
                LoadUnit::WheelLoad => "wheel_load",
                LoadUnit::VehicleWeight => "vehicle_weight",
            };
            let axes = match axes {
                LoadAxes::Vehicle => "vehicle",
                LoadAxes::Wheel => "wheel",
            };
            Item::Tuple(
                "force",
                vec![
                    Item::Triple(size),
                    Item::Word(unit),
                    place(at),
                    Item::Word(axes),
                ],
            )
        }
        LoadAction::TurnedOnTheSpot(friction, patch) => {
            let patch = match patch {
                TyrePatch::Pressure(Pressure::Kilopascals(v)) => Item::Measure("kpa", v),
                TyrePatch::Pressure(Pressure::Psi(v)) => Item::Measure("psi", v),
                TyrePatch::Length(v) => Item::Measure("length", v),
            };
            Item::Tuple("turned_on_the_spot", vec![Item::Number(friction), patch])
        }
        LoadAction::AgainstStop(f) => Item::Tuple("against_stop", vec![force(f)]),
    }
}

fn place(at: LoadPlace) -> Item {
    match at {
        LoadPlace::Contact => Item::Word("contact"),
        LoadPlace::WheelCentre => Item::Word("wheel_centre"),
        LoadPlace::Rim(half, height, outboard) => {
            let half = match half {
                RimHalf::Front => "front",
                RimHalf::Rear => "rear",
            };
            Item::Tuple(
                "rim",
                vec![
                    Item::Word(half),
                    Item::Number(height),
                    Item::Number(outboard),
                ],
            )
        }
    }
}
