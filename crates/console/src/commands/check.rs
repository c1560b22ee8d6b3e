//! `trammel check`: the cautions of a build.

use trammel_analysis::{Findings, Grade, ProofDepth, Study, prove};

use super::{findings_json, findings_text};
use crate::arguments::CheckArguments;
use crate::fault::Fault;
use crate::files;
use crate::terminal;

/// Prints the cautions; whether one of them is a danger.
pub(crate) fn run(arguments: &CheckArguments) -> Result<bool, Fault> {
    let build = files::build(&arguments.build)?;
    let study = Study::of(&build)?;
    let proof = prove(&build, ProofDepth::Full, &|| false).unwrap_or_default();
    let findings = Findings::of(&build, &study).with_proof(&build, &study, &proof);
    if arguments.json {
        terminal::print(&findings_json::text(&build, &findings)?)?;
    } else {
        terminal::print(&findings_text::text(&build, &findings))?;
    }
    Ok(findings.cautions.iter().any(|c| c.grade == Grade::Danger))
}
