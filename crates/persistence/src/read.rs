//! Reading a build from text.

use std::{
    fs::{self, File},
    io::Read,
    path::Path,
};

use ron::{Options, extensions::Extensions};
use trammel_build::{Build, BuildFault, PointName, Side};
use trammel_geometry::CornerFault;

use crate::{
    FORMAT, LARGEST_FILE, OpenFault, Place, ReadFault, ReadFaultKind, convert,
    explain::explain,
    format1,
    outside::not_a_file,
    ron_text::{Node, Outline, SyntaxFault, Value, leading_format, shown, starts_with_bracket},
};

/// A build read from text, with the tree of that text.
pub(crate) struct ReadBuild {
    pub build: Build,
    pub outline: Outline,
}

/// The build in a text.
///
/// # Errors
/// The first [`ReadFault`], with its line and column. Nothing is guessed and nothing is half-read.
pub fn read(text: &str) -> Result<Build, ReadFault> {
    read_with_outline(text).map(|r| r.build)
}

/// The build in the bytes of a file.
///
/// # Errors
/// As [`read`], and bytes that are not UTF-8.
pub fn read_bytes(bytes: &[u8]) -> Result<Build, ReadFault> {
    read(text_of(bytes)?)
}

/// The text of a file, its size checked.
///
/// # Errors
/// [`OpenFault`] when it can't be read, is too large for a build, or is no text.
pub fn read_text(path: &Path) -> Result<String, OpenFault> {
    let file_fault = |source| OpenFault::File {
        path: path.to_owned(),
        source,
    };
    let build_fault = |fault| OpenFault::Build {
        path: path.to_owned(),
        fault: Box::new(fault),
    };
    let meta = fs::metadata(path).map_err(file_fault)?;
    if let Some(found) = not_a_file(meta.file_type()) {
        return Err(OpenFault::NotAFile {
            path: path.to_owned(),
            found,
        });
    }
    if meta.len() > LARGEST_FILE {
        return Err(build_fault(too_large(meta.len())));
    }
    let file = File::open(path).map_err(file_fault)?;
    let mut bytes = Vec::new();
    // One byte more than allowed tells a file that grew meanwhile.
    file.take(LARGEST_FILE + 1)
        .read_to_end(&mut bytes)
        .map_err(file_fault)?;
    let text = text_of(&bytes).map_err(build_fault)?;
    Ok(text.to_owned())
}

fn text_of(bytes: &[u8]) -> Result<&str, ReadFault> {
    if bytes.len() as u64 > LARGEST_FILE {
        return Err(too_large(bytes.len() as u64));
    }
    std::str::from_utf8(bytes).map_err(|e| {
        let byte = e.valid_up_to();
        let before = bytes
            .get(..byte)
            .map(String::from_utf8_lossy)
            .unwrap_or_default();
        ReadFault {
            place: Some(Place::of(&before, byte)),
            kind: ReadFaultKind::NotText { byte },
        }
    })
}

fn too_large(bytes: u64) -> ReadFault {
    ReadFault {
        place: None,
        kind: ReadFaultKind::TooLarge { bytes },
    }
}

pub(crate) fn read_with_outline(text: &str) -> Result<ReadBuild, ReadFault> {
    if text.len() as u64 > LARGEST_FILE {
        return Err(too_large(text.len() as u64));
    }
    let fault = |at: usize, kind| ReadFault {
        place: Some(Place::of(text, at)),
        kind,
    };
    if text.trim_start_matches('\u{feff}').trim().is_empty() {
        return Err(ReadFault {
            place: None,
            kind: ReadFaultKind::Empty,
        });
    }
    if !starts_with_bracket(text) {
        let text = text.trim_start_matches('\u{feff}').trim();
        return Err(ReadFault {
            place: None,
            kind: ReadFaultKind::NotBuild { found: shown(text) },
        });
    }
    let outline = Outline::of(text).map_err(|f| syntax_fault(text, f))?;
    check_format(text, &outline.root).map_err(|(at, kind)| fault(at, kind))?;
    check_numbers(text, &outline).map_err(|(at, kind)| fault(at, kind))?;
    let values = values(text).map_err(|f| {
        let (at, kind) = explain(&f, text, &outline);
        fault(at, kind)
    })?;
    let build = convert::build(values).map_err(|odd| {
        let node = outline.node(text, &odd.at);
        let kind = ReadFaultKind::Wrong {
            path: odd.path,
            found: format!("\"{}\"", shown(&odd.found)),
            expected: odd.expected.to_owned(),
        };
        fault(node.map_or(0, |n| n.span.start), kind)
    })?;
    match first_fault(&build) {
        Some(unusable) => {
            let at = place_of(text, &outline, &unusable);
            Err(fault(at, unusable.into()))
        }
        None => Ok(ReadBuild { build, outline }),
    }
}

fn values(text: &str) -> Result<format1::BuildFile, ron::error::SpannedError> {
    let options = Options::default().with_default_extension(Extensions::IMPLICIT_SOME);
    match text.strip_prefix('\u{feff}') {
        // Keeps every place where it was.
        Some(rest) => options.from_str(&format!(" {rest}")),
        None => options.from_str(text),
    }
}

fn syntax_fault(text: &str, fault: SyntaxFault) -> ReadFault {
    let newer = leading_format(text).and_then(|span| {
        let found = text.get(span.clone())?;
        let newer = found.parse::<u64>().is_ok_and(|f| f > u64::from(FORMAT));
        newer.then(|| (span.start, found.to_owned()))
    });
    let (at, kind) = match newer {
        Some((at, found)) => (at, ReadFaultKind::NewerFormat { found }),
        None => {
            let SyntaxFault {
                at,
                found,
                expected,
            } = fault;
            (at, ReadFaultKind::Syntax { found, expected })
        }
    };
    ReadFault {
        place: Some(Place::of(text, at)),
        kind,
    }
}

fn check_format(text: &str, root: &Node) -> Result<(), (usize, ReadFaultKind)> {
    let Value::Fields(_) = root.value else {
        let found = shown(root.text(text));
        return Err((root.span.start, ReadFaultKind::NotBuild { found }));
    };
    let Some(node) = root.field(text, "format") else {
        return Err((root.span.start, ReadFaultKind::NoFormat));
    };
    let found = node.text(text);
    let kind = match found.parse::<u64>() {
        Ok(n) if n == u64::from(FORMAT) => return Ok(()),
        Ok(n) if n > u64::from(FORMAT) => ReadFaultKind::NewerFormat {
            found: n.to_string(),
        },
        _ => ReadFaultKind::OddFormat {
            found: shown(found),
        },
    };
    Err((node.span.start, kind))
}

/// Refuses numbers that are none or too large to be kept.
fn check_numbers(text: &str, outline: &Outline) -> Result<(), (usize, ReadFaultKind)> {
    for (path, field) in outline.fields(text) {
        for node in field.node.leaves() {
            let found = node.text(text);
            let number = match node.value {
                Value::Number => found.replace('_', "").parse::<f64>().ok(),
                Value::Word if matches!(found, "NaN" | "inf") => Some(f64::NAN),
                _ => None,
            };
            if number.is_some_and(|n| !n.is_finite()) {
                let kind = ReadFaultKind::Wrong {
                    path,
                    found: shown(found),
                    expected: "a finite number, such as 12.625".to_owned(),
                };
                return Err((node.span.start, kind));
            }
        }
    }
    Ok(())
}

fn first_fault(build: &Build) -> Option<BuildFault> {
    let axles = [("front", Some(&build.front)), ("rear", build.rear.as_ref())];
    let springless = axles
        .into_iter()
        .filter_map(|(name, axle)| axle.filter(|a| a.spring.is_none()).map(|a| (name, a)))
        .flat_map(|(name, axle)| axle.right.keys().map(move |point| (name, *point)))
        .find(|(_, point)| {
            matches!(
                point,
                PointName::SpringChassisMount | PointName::SpringArmMount
            )
        });
    match springless {
        Some((axle, point)) => Some(BuildFault::OutOfPlace {
            path: format!("{axle}.right.{point}"),
            reason: "the left side has no spring",
        }),
        None => build.faults().into_iter().next(),
    }
}

/// Where the field stands that a fault is about: itself, or the nearest field around it that the text has.
fn place_of(text: &str, outline: &Outline, fault: &BuildFault) -> usize {
    let path = fault.path();
    let own_right = match fault {
        BuildFault::Corner {
            axle,
            side: Side::Right,
            fault,
        } => own_right(text, outline, axle.word(), fault),
        _ => None,
    };
    let mut path = path.as_str();
    let mut node = own_right.or_else(|| outline.node(text, path));
    while let (None, Some((parent, _))) = (node, path.rsplit_once('.')) {
        path = parent;
        node = outline.node(text, path);
    }
    node.unwrap_or(&outline.root).span.start
}

/// The right-hand point of its own that a fault of the right corner is about.
fn own_right<'a>(
    text: &str,
    outline: &'a Outline,
    axle: &str,
    fault: &CornerFault,
) -> Option<&'a Node> {
    let points = match fault {
        CornerFault::Coincident { first, second } => [*second, *first],
        CornerFault::OnAxis { joint, .. } => [*joint, *joint],
        CornerFault::NotFinite { what } => [*what, *what],
        _ => return None,
    };
    points
        .into_iter()
        .find_map(|point| outline.node(text, &format!("{axle}.right.{point}")))
}
