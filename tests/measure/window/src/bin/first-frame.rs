//! A stopwatch for windows: how long from the start of a program to the first frame that is seen, and what it holds in memory a second later.
//!
//! `first-frame RUNS COMMAND COMMAND ...` starts each command in turn, RUNS rounds of them, and writes a line of CSV for every start. It looks from outside, as the
//! display does, so it needs no help from the programs and sees the same event in all of them: a window of theirs is mapped, then pixels of it have a colour. The
//! display must be a bare one (no window manager, a black root window), and is named by DISPLAY.
#![allow(
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "a tool for measuring: its output is what it is for"
)]

use std::{
    error::Error,
    fs,
    process::{Child, Command, ExitCode, Stdio},
    thread::sleep,
    time::{Duration, Instant},
};

use x11rb::{
    connection::Connection,
    protocol::{
        Event,
        xproto::{
            ChangeWindowAttributesAux, ConnectionExt, EventMask, ImageFormat, MapState, Window,
        },
    },
    rust_connection::RustConnection,
};

type Outcome<T> = Result<T, Box<dyn Error>>;

/// A window narrower than this is no program's main window.
const NARROWEST: u16 = 800;
/// How long a program may take to its first frame.
const PATIENCE: Duration = Duration::from_secs(60);
/// Between looks at the window.
const PAUSE: Duration = Duration::from_micros(300);
/// Memory is read this long after the first frame.
const SETTLED: Duration = Duration::from_secs(1);

fn main() -> ExitCode {
    match run() {
        Ok(()) => ExitCode::SUCCESS,
        Err(why) => {
            eprintln!("first-frame: {why}");
            ExitCode::FAILURE
        }
    }
}

fn run() -> Outcome<()> {
    let mut arguments = std::env::args().skip(1);
    let rounds: u32 = arguments.next().ok_or("how many rounds?")?.parse()?;
    let commands: Vec<String> = arguments.collect();
    if commands.is_empty() {
        return Err("which commands?".into());
    }
    println!("command,round,mapped_ms,painted_ms,worked_ms,resident_kb,peak_kb,private_kb");
    for round in 0..rounds {
        for command in &commands {
            let seen = watch(command).map_err(|e| format!("{command}: {e}"))?;
            println!("{command},{round},{seen}");
        }
    }
    Ok(())
}

/// Ends the program however the watch ends.
struct Running(Child);

impl Drop for Running {
    fn drop(&mut self) {
        // It may have ended by itself; then there is nothing to do.
        let _ = self.0.kill();
        let _ = self.0.wait();
    }
}

fn watch(command: &str) -> Outcome<String> {
    let (display, screen) = x11rb::connect(None)?;
    let root = display.setup().roots.get(screen).ok_or("no screen")?.root;
    let watching = ChangeWindowAttributesAux::new().event_mask(EventMask::SUBSTRUCTURE_NOTIFY);
    display.change_window_attributes(root, &watching)?.check()?;

    let mut words = command.split_whitespace();
    let mut program = Command::new(words.next().ok_or("an empty command")?);
    program.args(words).stdin(Stdio::null());
    let start = Instant::now();
    let mut running = Running(program.spawn()?);
    let mut still_going = || -> Outcome<()> {
        if let Some(status) = running.0.try_wait()? {
            return Err(format!("it ended before its first frame ({status})").into());
        }
        if start.elapsed() > PATIENCE {
            return Err(format!("no frame within {} s", PATIENCE.as_secs()).into());
        }
        sleep(PAUSE);
        Ok(())
    };
    let window = loop {
        match display.poll_for_event()? {
            Some(Event::MapNotify(map)) if width(&display, map.window)? >= NARROWEST => {
                break map.window;
            }
            Some(_) => {}
            None => still_going()?,
        }
    };
    let mapped = start.elapsed();
    while !has_colour(&display, window)? {
        still_going()?;
    }
    let painted = start.elapsed();
    let worked = worked(running.0.id())?;
    sleep(SETTLED);
    let [resident, peak, private] = memory(running.0.id())?;
    drop(running);
    wait_until_gone(&display, window);
    let [mapped, painted] = [mapped, painted].map(|t| t.as_secs_f64() * 1e3);
    Ok(format!(
        "{mapped:.1},{painted:.1},{worked:.1},{resident},{peak},{private}"
    ))
}

fn width(display: &RustConnection, window: Window) -> Outcome<u16> {
    Ok(display.get_geometry(window)?.reply()?.width)
}

/// Whether anything in a row across the middle of the window is not black.
fn has_colour(display: &RustConnection, window: Window) -> Outcome<bool> {
    let size = display.get_geometry(window)?.reply()?;
    let middle = i16::try_from(size.height / 2)?;
    let image = display.get_image(
        ImageFormat::Z_PIXMAP,
        window,
        0,
        middle,
        size.width,
        1,
        u32::MAX,
    )?;
    // The fourth byte of a pixel says nothing.
    Ok(image
        .reply()?
        .data
        .chunks(4)
        .any(|p| p.iter().take(3).any(|b| *b != 0)))
}

/// Milliseconds that the program's threads have had a processor, which is what its start costs however busy the machine is.
fn worked(id: u32) -> Outcome<f64> {
    let mut nanoseconds = 0;
    for thread in fs::read_dir(format!("/proc/{id}/task"))? {
        // A thread may have ended in between.
        let Ok(text) = fs::read_to_string(thread?.path().join("schedstat")) else {
            continue;
        };
        let first = text.split_whitespace().next().ok_or("no time")?;
        nanoseconds += first.parse::<u64>()?;
    }
    Ok(nanoseconds as f64 / 1e6)
}

/// Resident memory, its peak and what is the program's alone, kB.
fn memory(id: u32) -> Outcome<[u64; 3]> {
    let status = fs::read_to_string(format!("/proc/{id}/status"))?;
    let parts = fs::read_to_string(format!("/proc/{id}/smaps_rollup"))?;
    let private = kilobytes(&parts, "Private_Clean:")? + kilobytes(&parts, "Private_Dirty:")?;
    Ok([
        kilobytes(&status, "VmRSS:")?,
        kilobytes(&status, "VmHWM:")?,
        private,
    ])
}

fn kilobytes(text: &str, name: &str) -> Outcome<u64> {
    let line = text.lines().find_map(|l| l.strip_prefix(name));
    let figure = line.and_then(|l| l.split_whitespace().next());
    Ok(figure.ok_or_else(|| format!("no {name}"))?.parse()?)
}

/// The next program must not be watched on top of this one's window.
fn wait_until_gone(display: &RustConnection, window: Window) {
    let gone = || -> Outcome<bool> {
        let there = display.get_window_attributes(window)?.reply();
        Ok(there.map_or(true, |w| w.map_state == MapState::UNMAPPED))
    };
    let start = Instant::now();
    while start.elapsed() < SETTLED && !gone().unwrap_or(true) {
        sleep(PAUSE);
    }
}
