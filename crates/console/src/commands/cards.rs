//! `trammel cards`: the cards for setting up, as a PDF.

use crate::arguments::set_up::CardsArguments;
use crate::fault::Fault;
use crate::files;

pub(crate) fn run(arguments: &CardsArguments) -> Result<(), Fault> {
    let build = files::build(&arguments.build)?;
    if !arguments.force && arguments.out.symlink_metadata().is_ok() {
        return Err(Fault::Exists {
            path: arguments.out.clone(),
        });
    }
    let bytes = if arguments.measuring_sheet {
        trammel_cards::measuring_pdf(build.unit, arguments.paper)
    } else {
        trammel_cards::pdf(&build, arguments.paper)
    }
    .map_err(Box::new)?;
    files::write(&arguments.out, &bytes)
}
