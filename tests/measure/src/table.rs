//! The table of measurements, from the numbers that `tests/measure/run` keeps.

use std::{collections::BTreeMap, fmt::Write as _, fs, path::Path};

use crate::{
    cases::{NEWTON, SWEEP_TRAVELS},
    clock::median,
};

/// The two programs whose windows are compared, by the last part of their paths.
const OURS: &str = "trammel";
const EMPTY: &str = "empty-window";

/// Times of Trammel's own that stand beside those of general solvers.
const JOINTS: &str = "sweep of 41 travels, joints and velocities";
const MEASURES: &str = "sweep of 41 travels, every measure";
const BEST: &str = "best spot, least RMS";
const SCIPY_SWEEP: &str = "sweep by SciPy's fsolve";
const SCIPY_SEARCH: &str = "search by SciPy's least_squares";

/// The table as Markdown: the files of the folder are those that `tests/measure/run` writes.
///
/// # Errors
///
/// What is missing or can't be read, in words.
pub fn write(folder: &Path) -> Result<String, String> {
    let text = |name: &str| text(folder, name);
    // A run that was broken off has measured the first parts only, and that is said.
    let part = |name: &str, made: &dyn Fn(&str) -> Result<String, String>| {
        if folder.join(name).exists() {
            made(&text(name)?)
        } else {
            Ok("Not measured in this run.\n".to_owned())
        }
    };
    let mut out =
        String::from("# Measured\n\nWritten by `tests/measure/run`; `README.md` says how.\n\n");
    out += &text("machine.txt")?;
    out += "\n## The window beside an empty one\n\n";
    out += &window_alone(folder)?;
    out += "\n## Work of a frame\n\n";
    out += &part("frames.txt", &rows_of)?;
    out += "\n## Solving beside general solvers\n\n";
    out += &part("kernels.tsv", &|kernels| {
        solvers(&figures(kernels)?, &figures(&text("general.tsv")?)?)
    })?;
    out += "\n## Every case of the kernels\n\n";
    out += &part("kernels.tsv", &|kernels| Ok(times(&figures(kernels)?)))?;
    out += "\n## Whole commands, start to end\n\n";
    out += &part("commands.tsv", &|all| Ok(commands(&figures(all)?)))?;
    Ok(out)
}

fn text(folder: &Path, name: &str) -> Result<String, String> {
    let path = folder.join(name);
    fs::read_to_string(&path).map_err(|e| format!("{}: {e}", path.display()))
}

/// Start, memory and size only.
///
/// # Errors
///
/// What is missing or can't be read, in words.
pub fn window_alone(folder: &Path) -> Result<String, String> {
    let sizes = figures(&text(folder, "sizes.tsv")?)?;
    window(&text(folder, "windows.csv")?, &sizes)
}

/// Names and figures in the order of the file.
type Figures = Vec<(String, f64)>;

fn figures(text: &str) -> Result<Figures, String> {
    let one = |line: &str| {
        let (name, figure) = line.split_once('\t')?;
        Some((name.to_owned(), figure.trim().parse().ok()?))
    };
    text.lines()
        .map(|l| one(l).ok_or_else(|| format!("expected a name, a tab and a figure, found {l:?}")))
        .collect()
}

fn find(figures: &Figures, name: &str) -> Result<f64, String> {
    let found = figures.iter().find(|(n, _)| n == name);
    found
        .map(|(_, f)| *f)
        .ok_or_else(|| format!("no figure for {name:?}"))
}

/// Medians of a program's starts by the name of the column.
fn medians(csv: &str, program: &str) -> Result<BTreeMap<String, f64>, String> {
    let mut lines = csv.lines();
    let heading: Vec<&str> = lines.next().unwrap_or_default().split(',').collect();
    let mut columns: BTreeMap<String, Vec<f64>> = BTreeMap::new();
    for line in lines {
        let cells: Vec<&str> = line.split(',').collect();
        let command = cells.first().unwrap_or(&"");
        let named = command.split_whitespace().next().unwrap_or("");
        if named.rsplit('/').next() != Some(program) {
            continue;
        }
        for (name, cell) in heading.iter().zip(&cells).skip(1) {
            let figure = cell
                .parse()
                .map_err(|_| format!("a figure in {line:?} can't be read"))?;
            columns.entry((*name).to_owned()).or_default().push(figure);
        }
    }
    let middle = |(name, mut all): (String, Vec<f64>)| Some((name, median(&mut all)?));
    Ok(columns.into_iter().filter_map(middle).collect())
}

fn window(csv: &str, sizes: &Figures) -> Result<String, String> {
    let (ours, empty) = (medians(csv, OURS)?, medians(csv, EMPTY)?);
    let mut out = String::from(
        "| what, median | empty window | Trammel | ratio | wanted |\n|---|---|---|---|---|\n",
    );
    let mut row = |what: &str, unit: &str, [empty, ours]: [f64; 2], wanted: Option<f64>| {
        let ratio = ours / empty;
        let wanted = wanted.map_or(String::new(), |w| {
            let held = if ratio <= w { "held" } else { "NOT held" };
            format!("at most {w}: {held}")
        });
        let _ = writeln!(
            out,
            "| {what} | {empty:.1} {unit} | {ours:.1} {unit} | {ratio:.2} | {wanted} |"
        );
    };
    let seen = [
        (
            "start to first frame painted",
            "painted_ms",
            "ms",
            Some(1.3),
        ),
        ("start to window mapped", "mapped_ms", "ms", None),
        (
            "processor time until the first frame, all threads",
            "worked_ms",
            "ms",
            None,
        ),
        (
            "resident memory a second later",
            "resident_kb",
            "MB",
            Some(1.5),
        ),
        (
            "peak of resident memory until then",
            "peak_kb",
            "MB",
            Some(1.5),
        ),
        (
            "of it the program's own, not shared",
            "private_kb",
            "MB",
            None,
        ),
    ];
    for (what, column, unit, wanted) in seen {
        let of = |all: &BTreeMap<String, f64>| {
            let figure = all.get(column).ok_or_else(|| format!("no {column}"))?;
            Ok::<f64, String>(if unit == "MB" {
                figure / 1024.0
            } else {
                *figure
            })
        };
        row(what, unit, [of(&empty)?, of(&ours)?], wanted);
    }
    let megabytes = |name| find(sizes, name).map(|bytes| bytes / 1024.0 / 1024.0);
    row(
        "size of the program",
        "MB",
        [megabytes(EMPTY)?, megabytes(OURS)?],
        Some(1.6),
    );
    Ok(out)
}

/// The rows of a printed table.
fn rows_of(printed: &str) -> Result<String, String> {
    let rows: Vec<&str> = printed.lines().filter(|l| l.starts_with('|')).collect();
    if rows.len() < 3 {
        return Err("no table of frames was printed".into());
    }
    Ok(rows.join("\n") + "\n")
}

fn solvers(kernels: &Figures, general: &Figures) -> Result<String, String> {
    let mut out = String::from(
        "| problem | by | ms | poses a second | Trammel is faster by |\n|---|---|---|---|---|\n",
    );
    let ours = find(kernels, JOINTS)?;
    let mut sweep = |by: &str, seconds: f64| {
        let each = f64::from(SWEEP_TRAVELS) / seconds;
        let _ = writeln!(
            out,
            "| one corner at 41 wheel travels, joints | {by} | {:.4} | {each:.0} | {:.1} |",
            1e3 * seconds,
            seconds / ours
        );
    };
    sweep("Trammel, velocities included", ours);
    sweep("Trammel, every measure", find(kernels, MEASURES)?);
    sweep(
        "Newton with nalgebra's LU, analytic Jacobian",
        find(kernels, NEWTON.name)?,
    );
    if general.is_empty() {
        out += "| the same | SciPy: not there when this was measured | | | |\n";
        return Ok(out);
    }
    sweep("SciPy's fsolve", find(general, SCIPY_SWEEP)?);
    let (best, scipy) = (find(kernels, BEST)?, find(general, SCIPY_SEARCH)?);
    for (by, seconds) in [
        ("Trammel, over the whole reach", best),
        ("SciPy's least_squares, from one start", scipy),
    ] {
        let _ = writeln!(
            out,
            "| place of the inner joint with the least RMS toe change | {by} | {:.3} | | {:.1} |",
            1e3 * seconds,
            seconds / best
        );
    }
    Ok(out)
}

fn times(kernels: &Figures) -> String {
    let mut out = String::from("| case | ms | calibrations |\n|---|---|---|\n");
    let fixed = kernels.first().map_or(f64::NAN, |(_, seconds)| *seconds);
    for (name, seconds) in kernels {
        let _ = writeln!(
            out,
            "| {name} | {:.4} | {:.3} |",
            1e3 * seconds,
            seconds / fixed
        );
    }
    out
}

fn commands(all: &Figures) -> String {
    let mut out = String::from("| command | ms, median |\n|---|---|\n");
    for (name, seconds) in all {
        let _ = writeln!(out, "| `{name}` | {:.0} |", 1e3 * seconds);
    }
    out
}

#[cfg(test)]
mod tests {
    use super::{figures, window};

    #[test]
    fn a_ratio_over_what_is_wanted_is_said() {
        let csv = "command,round,mapped_ms,painted_ms,worked_ms,resident_kb,peak_kb,private_kb\n\
            /a/empty-window,0,90,100,80,1024,1024,512\n/a/trammel demo:good,0,100,129,90,1536,1600,512\n\
            /a/empty-window,1,90,100,80,1024,1024,512\n/a/trammel demo:good,1,100,129,90,1536,1600,512\n";
        let sizes = figures("empty-window\t1000000\ntrammel\t1700000\n").unwrap();
        let told = window(csv, &sizes).unwrap();
        let line = |what: &str| told.lines().find(|l| l.contains(what)).unwrap().to_owned();
        assert!(line("painted").contains("1.29 | at most 1.3: held"));
        assert!(line("resident memory a").contains("1.50 | at most 1.5: held"));
        assert!(line("peak").contains("1.56 | at most 1.5: NOT held"));
        assert!(line("size").contains("1.70 | at most 1.6: NOT held"));
    }
}
