//! `trammel picture`: the window's content as a PNG.

use crate::arguments::picture::PictureArguments;
use crate::fault::Fault;
use crate::files;
use crate::picture;

pub(crate) fn run(arguments: &PictureArguments) -> Result<(), Fault> {
    let build = files::build(&arguments.build)?;
    if files::same_file(&arguments.out, &arguments.build) {
        return Err(Fault::OverBuild {
            path: arguments.out.clone(),
        });
    }
    picture::draw(build, arguments)
}
