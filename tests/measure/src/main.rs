//! `measure`: counts, times and checks what the kernels cost. `tests/measure/run` and `tests/measure/check` start it.
#![allow(
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "a tool for measuring: its output is what it is for"
)]

use std::{
    env, fs,
    path::{Path, PathBuf},
    process::ExitCode,
};

use trammel_measure::{
    baseline::{self, Cost, Verdict, Way},
    cases::{CALIBRATION, CASES, Case, NEWTON, SWEEP_END, SWEEP_TRAVELS, builds, searched, swept},
    clock, corner, count, table,
};

const HELP: &str = "\
measure check [--accept]   cost of every case against the baseline; ends with 1 where one has grown;
                           --accept makes what is found now the baseline
measure times              least time of every case, as lines of `case<tab>seconds`
measure commands PROGRAM   median time of whole commands of the program, in the same way
measure corners            the corners of the sweep and of the searches, for another solver, as JSON
measure table FOLDER       the table of measurements from the numbers in a folder, as Markdown
measure window FOLDER      of that only start, memory and size
measure go CASE TIMES      does a case so often, for what counts from outside
";

fn main() -> ExitCode {
    let words: Vec<String> = env::args().skip(1).collect();
    let words: Vec<&str> = words.iter().map(String::as_str).collect();
    let done = match words.as_slice() {
        ["check"] => check(false),
        ["check", "--accept"] => check(true),
        ["times"] => times(),
        ["commands", program] => commands(program),
        ["corners"] => {
            println!("{}", corners());
            Ok(true)
        }
        ["table", folder] => table::write(Path::new(folder)).map(|text| {
            print!("{text}");
            true
        }),
        ["window", folder] => table::window_alone(Path::new(folder)).map(|text| {
            print!("{text}");
            true
        }),
        ["go", case, goes] => go(case, goes),
        _ => Err(format!("expected one of\n{HELP}")),
    };
    match done {
        Ok(true) => ExitCode::SUCCESS,
        Ok(false) => ExitCode::from(1),
        Err(why) => {
            eprintln!("measure: {why}");
            ExitCode::from(2)
        }
    }
}

fn all() -> impl Iterator<Item = Case> {
    [CALIBRATION, NEWTON].into_iter().chain(CASES)
}

fn go(case: &str, goes: &str) -> Result<bool, String> {
    let goes: u32 = goes.parse().map_err(|e| format!("{goes}: {e}"))?;
    let found = all().find(|c| c.name == case);
    let mut work = (found.ok_or_else(|| format!("no case {case:?}"))?.ready)();
    (0..goes).for_each(|_| work());
    Ok(true)
}

fn times() -> Result<bool, String> {
    for case in all() {
        println!("{}\t{:e}", case.name, clock::least(&case).case);
    }
    let two = Case {
        name: "scatter, 4,000 builds x 21, two threads",
        goes: 1,
        ready: || builds(2),
    };
    println!("{}\t{:e}", two.name, clock::least(&two).case);
    Ok(true)
}

/// Starts of each command, of which the median is told.
const STARTS: usize = 9;

fn commands(program: &str) -> Result<bool, String> {
    let folder = env::temp_dir().join(format!("trammel-measure-{}", std::process::id()));
    fs::create_dir_all(&folder).map_err(|e| format!("{}: {e}", folder.display()))?;
    let sheets = folder.display().to_string();
    let all: [&[&str]; 7] = [
        &["check", "demo:lifted"],
        &["map", "demo:lifted", "--csv", "-"],
        &["scatter", "demo:lifted"],
        &["tune", "demo:lifted"],
        &["prove", "demo:lifted"],
        &["sheets", "demo:lifted", "--out", &sheets],
        &[
            "picture",
            "demo:lifted",
            "--out",
            &format!("{sheets}/picture.png"),
        ],
    ];
    let timed = all.iter().try_for_each(|words| {
        let seconds = clock::command(program, words, STARTS)?;
        let shown = words.join(" ").replace(&sheets, "FOLDER");
        println!("trammel {shown}\t{seconds:e}");
        Ok(())
    });
    // What is left lies among temporary files.
    let _ = fs::remove_dir_all(&folder);
    timed.map(|()| true)
}

/// Where the baseline is.
fn baseline_path() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("baseline.tsv")
}

fn check(accept: bool) -> Result<bool, String> {
    let path = baseline_path();
    let program = env::current_exe().map_err(|e| e.to_string())?;
    let way = if count::is_there() {
        Way::Counted
    } else {
        let allowed = 1e2 * Way::Timed.allowed();
        eprintln!(
            "\n*** valgrind is not there, so that no instructions are counted. ***\n\
             *** Times by the clock are compared instead, and {allowed:.0} % more is let pass: ***\n\
             *** this finds only what has become very much slower.             ***\n"
        );
        Way::Timed
    };
    if accept {
        return accept_all(&program, &path, way);
    }
    let text = fs::read_to_string(&path).map_err(|e| format!("{}: {e}", path.display()))?;
    let baseline = baseline::read(&text).map_err(|e| format!("{}: {e}", path.display()))?;
    let fixed = match way {
        Way::Counted => count::instructions(&program, &CALIBRATION)?,
        Way::Timed => 1.0,
    };
    let (mut grown, mut told) = (0, Vec::new());
    for case in &CASES {
        let now = match way {
            Way::Counted => count::instructions(&program, case)? / fixed,
            Way::Timed => {
                let times = clock::least(case);
                times.case / times.calibration
            }
        };
        match baseline::compare(&baseline, case.name, now, way) {
            Verdict::Level => println!("level    {} ({now:.3} calibrations)", case.name),
            Verdict::Fallen(words) => told.push(format!("less     {words}")),
            Verdict::Grown(words) | Verdict::Unknown(words) => {
                grown += 1;
                told.push(format!("MORE     {words}"));
            }
        }
    }
    told.iter().for_each(|line| println!("{line}"));
    for gone in baseline
        .iter()
        .filter(|c| CASES.iter().all(|k| k.name != c.case))
    {
        println!(
            "gone     {}: the baseline has it, the program does not",
            gone.case
        );
    }
    if !told.is_empty() {
        println!(
            "\nIf that is meant, make it the new baseline with `tests/measure/check --accept` and commit tests/measure/baseline.tsv with the reason."
        );
    }
    Ok(grown == 0)
}

/// Writes the baseline anew; it needs both counts and times.
fn accept_all(program: &Path, path: &Path, way: Way) -> Result<bool, String> {
    if way == Way::Timed {
        return Err(
            "a baseline has instructions in it, and valgrind, which counts them, is not there"
                .into(),
        );
    }
    let fixed = count::instructions(program, &CALIBRATION)?;
    let cost = |case: &Case| -> Result<Cost, String> {
        let times = clock::least(case);
        Ok(Cost {
            case: case.name.to_owned(),
            counted: count::instructions(program, case)? / fixed,
            timed: times.case / times.calibration,
        })
    };
    let costs: Vec<Cost> = CASES.iter().map(cost).collect::<Result<_, _>>()?;
    fs::write(path, baseline::write(&costs)).map_err(|e| format!("{}: {e}", path.display()))?;
    println!("{} cases written to {}", costs.len(), path.display());
    Ok(true)
}

/// In the form of the geometries in `tests/reference`.
fn corners() -> String {
    let one = corner::as_json;
    format!(
        "{{\"sweep\": {{\"count\": {SWEEP_TRAVELS}, \"end\": {SWEEP_END}, \"corner\": {}}}, \"search\": {}}}",
        one(&swept()),
        one(&searched())
    )
}
