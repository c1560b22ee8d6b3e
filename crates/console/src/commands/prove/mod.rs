//! `trammel prove`: every check as a row.

mod json;
mod text;

use trammel_analysis::{Grade, Proof, ProofDepth, effective_load_cases, prove};
use trammel_build::Build;

use crate::arguments::prove::ProveArguments;
use crate::fault::Fault;
use crate::files;
use crate::terminal;

/// Prints the rows; whether one of them is a danger.
pub(crate) fn run(arguments: &ProveArguments) -> Result<bool, Fault> {
    let build = files::build(&arguments.build)?;
    for axle in [
        trammel_build::AxleName::Front,
        trammel_build::AxleName::Rear,
    ] {
        if build.axle_spec(axle).is_some() {
            build.axle(axle)?;
        }
    }
    let proof = match &arguments.case {
        Some(name) => of_case(&build, name)?,
        None => proof(&build),
    };
    if arguments.json {
        terminal::print(&json::text(&build, &proof)?)?;
    } else {
        terminal::print(&text::text(&build, &proof))?;
    }
    Ok(proof
        .rows
        .iter()
        .any(|row| row.grade() == Some(Grade::Danger)))
}

fn proof(build: &Build) -> Proof {
    prove(build, ProofDepth::Full, &|| false).unwrap_or_default()
}

/// The rows of one load case, switched on for this where it is off.
fn of_case(build: &Build, name: &str) -> Result<Proof, Fault> {
    let cases = effective_load_cases(build);
    let names: Vec<&str> = cases.iter().map(|(case, _)| case.name.as_str()).collect();
    if !names.contains(&name) {
        return Err(Fault::NoCase {
            name: name.to_owned(),
            known: names.join("; "),
        });
    }
    let mut alone = build.clone();
    let others = names.iter().filter(|other| **other != name);
    alone.load_cases.off = others.map(|other| (*other).to_owned()).collect();
    let mut proof = proof(&alone);
    proof
        .rows
        .retain(|row| row.load_case.as_deref() == Some(name));
    Ok(proof)
}
