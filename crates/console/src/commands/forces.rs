//! `trammel forces`: the forces of a corner as CSV.

use trammel_analysis::{ForceRequest, ForceRow, WheelForce, forces_under};
use trammel_build::LengthUnit;
use trammel_geometry::Vector;

use super::table;
use crate::arguments::prove::ForcesArguments;
use crate::fault::Fault;
use crate::files;
use crate::terminal;

/// Joints with three columns each, in the order of the table.
const JOINTS: [&str; 6] = [
    "upper_ball_joint",
    "lower_ball_joint",
    "upper_front_pivot",
    "upper_rear_pivot",
    "lower_front_pivot",
    "lower_rear_pivot",
];

pub(crate) fn run(arguments: &ForcesArguments) -> Result<(), Fault> {
    let build = files::build(&arguments.build)?;
    let poses = &arguments.poses;
    let unit = poses.unit.map_or(build.unit, Into::into);
    let request = ForceRequest {
        axle: poses.axle.into(),
        side: poses.side.into(),
        travel: poses.travel,
        rack: poses.rack,
        unit,
    };
    let load = WheelForce {
        at: arguments.at.into(),
        force: arguments.force.0,
        moment_z: arguments.moment_z * unit.mm(),
    };
    let found = forces_under(&build, &request, &load)?;
    let missing = found.asked - found.rows.len();
    let left_out = (missing > 0).then(|| {
        format!(
            "{missing} of {} poses are out of reach and left out",
            found.asked
        )
    });
    if found.rows.is_empty() {
        return Err(Fault::NothingReached(left_out.unwrap_or_default()));
    }
    let rows = found.rows.iter().map(|row| cells(row, unit));
    let csv = table::csv(header(), rows).map_err(Fault::Output)?;
    table::deliver(&csv, &poses.csv, &arguments.build)?;
    if let Some(line) = left_out {
        terminal::complain(&line);
    }
    Ok(())
}

fn header() -> Vec<String> {
    let plain = |name: &str| name.to_owned();
    let mut names: Vec<String> = ["travel", "rack", "tie_rod_tension", "spring_force"]
        .map(plain)
        .to_vec();
    for joint in JOINTS {
        names.extend(["x", "y", "z"].map(|axis| format!("{joint}_{axis}")));
    }
    let rack = [
        "rack_force",
        "rack_end_bending",
        "rack_end_torsion",
        "rack_end_axial",
        "rack_end_shear",
    ];
    names.extend(rack.map(plain));
    names
}

fn cells(row: &ForceRow, unit: LengthUnit) -> Vec<Option<f64>> {
    let forces = &row.forces;
    let mut cells = vec![
        Some(unit.from_mm(row.travel)),
        Some(unit.from_mm(row.rack)),
        Some(forces.tie_rod_tension),
        Some(forces.spring_force),
    ];
    let joints: [Vector; 6] = [
        forces.upper.ball_joint_on_upright,
        forces.lower.ball_joint_on_upright,
        forces.upper.front_pivot,
        forces.upper.rear_pivot,
        forces.lower.front_pivot,
        forces.lower.rear_pivot,
    ];
    cells.extend(
        joints
            .iter()
            .flat_map(|v| [Some(v.x), Some(v.y), Some(v.z)]),
    );
    cells.push(forces.rack_force);
    let end = row.rack_end;
    cells.push(end.map(|e| unit.from_mm(e.bending)));
    cells.push(end.map(|e| unit.from_mm(e.torsion)));
    cells.push(end.map(|e| e.axial));
    cells.push(end.map(|e| e.shear));
    cells
}
