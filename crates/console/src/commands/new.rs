//! `trammel new`: a plain build to begin with.

use trammel_build::{AxleName, Build, Edit, LengthUnit, begin};
use trammel_persistence::{Document, Expected, save};

use crate::arguments::NewArguments;
use crate::fault::Fault;
use crate::terminal;

pub(crate) fn run(arguments: &NewArguments) -> Result<(), Fault> {
    let expected = if arguments.force {
        Expected::Anything
    } else if arguments.out.symlink_metadata().is_ok() {
        return Err(Fault::Exists {
            path: arguments.out.clone(),
        });
    } else {
        Expected::Nothing
    };
    let build = begun(arguments)?;
    save(&arguments.out, Document::new(&build).text(), expected)?;
    terminal::print(&format!(
        "{}: a plain build; drag, type or survey its points to where they are\n",
        arguments.out.display()
    ))
}

fn begun(arguments: &NewArguments) -> Result<Build, Fault> {
    let unit = LengthUnit::from(arguments.unit);
    let mut build = begin::build(unit);
    if let Some(title) = &arguments.title {
        build = Edit::SetTitle(title.clone()).apply(&build)?;
    }
    let spring = begin::spring_unit(&build.front, unit);
    build = Edit::SetSpring(AxleName::Front, Some(spring)).apply(&build)?;
    if !arguments.front_only {
        let rear = begin::rear_axle(&build);
        build = Edit::SetRear(Some(Box::new(rear))).apply(&build)?;
    }
    Ok(build)
}
