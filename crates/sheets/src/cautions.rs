//! What is near or past a limit, and what the builder accepted, for the sheets.

use trammel_analysis::{
    Caution, Depth, Findings, Grade, ProofDepth, Study, USUAL_CAUTIONS, not_in_it, prove,
};
use trammel_build::Build;
use trammel_drawings::table::Table;

use crate::draft::{Draft, Made, NotMade};

const TITLE: &str = "Cautions";

/// The cautions of a build, its proof's included.
///
/// # Errors
/// In words, why the build can't be posed.
pub(crate) fn of(build: &Build) -> Result<Vec<Caution>, String> {
    let study = Study::of(build).map_err(|e| e.to_string())?;
    let findings = Findings::to_depth(build, &study, Depth::Quick);
    // What is printed stays: the pose that is worst is looked for in earnest.
    let proof = prove(build, ProofDepth::Full, &|| false);
    Ok(match proof {
        Some(proof) => findings.with_proof(build, &study, &proof).cautions,
        None => findings.cautions,
    })
}

/// The block on every sheet.
pub(crate) fn block(build: &Build, cautions: &[Caution]) -> Vec<String> {
    let open = |grade: Grade| {
        let of = cautions.iter().filter(|c| c.grade == grade);
        of.filter(|c| c.accepted(build).is_none()).count()
    };
    let mut block = vec![
        "Nothing on this sheet says that a part is strong enough: a static check of nominal stress is silent about fatigue, welds, bent parts and play.".to_owned(),
        format!(
            "Open in this build: dangers {}, cautions {}; see the sheet Cautions.",
            open(Grade::Danger),
            open(Grade::Caution)
        ),
    ];
    let accepted: Vec<&Caution> = cautions
        .iter()
        .filter(|c| c.accepted(build).is_some())
        .collect();
    if !accepted.is_empty() {
        block.push(format!(
            "Accepted by the builder: {}, each with its reason there.",
            accepted.len()
        ));
    }
    block.push("Check every measure on the frame before you cut.".to_owned());
    block
}

pub(crate) fn drafts(build: &Build, cautions: &Result<Vec<Caution>, String>) -> Made {
    let cautions = cautions.as_ref().map_err(|why| NotMade::new(TITLE, why))?;
    let mut open = Table::new(
        "Near or past a limit, worst first",
        &["Grade", "What", "Where", "Limit from"],
    );
    let mut accepted = Table::new("Accepted by the builder", &["Grade", "What", "Because"]);
    for caution in cautions {
        let grade = caution.grade.word().to_owned();
        match caution.accepted(build) {
            None => open.row([
                grade,
                caution.headline.clone(),
                caution.detail.clone(),
                caution.source.clone(),
            ]),
            Some(a) => {
                let worse = if caution.worse_than_accepted(a) {
                    " WORSE NOW than when it was accepted."
                } else {
                    ""
                };
                accepted.row([
                    grade,
                    caution.headline.clone(),
                    format!("{}{worse}", a.reason),
                ]);
            }
        }
    }
    if open.rows().is_empty() {
        open.row([String::new(), "None of what was checked.".to_owned()]);
    }
    let mut always = Table::new("Whatever the figures say", &["Always"]);
    for line in USUAL_CAUTIONS {
        always.row([line.to_owned()]);
    }
    let mut unknown = Table::new("Not in any figure", &["Left out"]);
    for line in not_in_it() {
        unknown.row([(*line).to_owned()]);
    }
    let tables = [open, accepted, always, unknown]
        .into_iter()
        .filter(|t| !t.rows().is_empty());
    Ok(vec![Draft::lists(TITLE, "list", tables.collect())])
}
