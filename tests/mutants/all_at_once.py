"""Tries every mutant that cargo-mutants lists for a crate, all of them in one build.

One build per mutant, as cargo-mutants does it, takes most of a day for our kernels. Here every function's body becomes a choice
by number between itself and its mutants, the crate is built once, and its tests are run once for each number.

    python3 tests/mutants/all_at_once.py geometry [--file REGEX] [--skip TEST] [--jobs 2] [--work FOLDER] [--out FILE.json]
        [--again FILE.json]

Needs cargo-mutants (`cargo install cargo-mutants`). Works on a copy of what git knows of, in FOLDER, whose `target` is kept for
the next time. Mutants that don't compile are not viable and are left out. What stands in a constant or a `const fn` can't be chosen
while running; those mutants get a build each at the end (`--no-constants` leaves them out). `--again` takes an
earlier run's outcomes from its FILE.json, tries only what was missed there, and counts all of them; lines must not have moved.
"""

import argparse
import collections
import concurrent.futures
import json
import math
import os
import pathlib
import re
import resource
import signal
import subprocess
import sys
import tempfile

ROOT = pathlib.Path(__file__).resolve().parents[2]
PROFILE = """
[profile.mutants]
inherits = "test"
debug = 0
incremental = true
codegen-units = 16
opt-level = 1
[profile.mutants.package."*"]
opt-level = 1
"""
CHOICE = """
pub(crate) fn mutant_id() -> u32 {
    static NUMBER: std::sync::LazyLock<u32> = std::sync::LazyLock::new(|| {
        let number = std::env::var("MUTANT").ok().and_then(|v| v.parse().ok()).unwrap_or(0);
        if number != 0 {
            // The first failure is enough.
            std::panic::set_hook(Box::new(|_| {
                eprintln!("caught by {}", std::thread::current().name().unwrap_or("?"));
                std::process::exit(101);
            }));
        }
        number
    });
    *NUMBER
}
"""
# Processor seconds for one test binary. None of the unchanged ones may need more than a third of it: skip what does.
LONGEST_S = 6
# How many times as long as unchanged a binary may take, and a second to start with.
TIMES_AS_LONG = 3
# Random cases per property: enough to be sure, few enough for thousands of runs.
CASES = "16"


class Crate:
    """A copy of the workspace with one crate's mutants."""

    def __init__(self, name, work, only, skip):
        self.name, self.work = name, work
        self.skip = [word for test in skip for word in ("--skip", test)]
        listed = subprocess.run(
            ["cargo", "mutants", "--list", "--json", "-p", f"trammel-{name}"],
            cwd=ROOT, check=True, capture_output=True, text=True)
        every = json.loads(listed.stdout)
        self.mutants = {i: m for i, m in enumerate(every, 1) if re.search(only, m["file"])}
        self.not_viable, self.in_constants = set(), []
        self.lines = {}
        work.mkdir(parents=True, exist_ok=True)
        files = subprocess.run(["git", "ls-files", "-z"], cwd=ROOT, check=True, capture_output=True).stdout
        archive = subprocess.run(["tar", "c", "--null", "-T", "-"], cwd=ROOT, input=files, capture_output=True).stdout
        subprocess.run(["tar", "x", "--touch"], cwd=work, input=archive, check=True)
        with open(work / "Cargo.toml", "a", encoding="utf-8") as manifest:
            manifest.write(PROFILE)

    def write(self):
        """Writes the crate's sources with the viable mutants in them."""
        by_file = collections.defaultdict(list)
        for number, mutant in self.mutants.items():
            by_file[mutant["file"]].append((number, mutant))
        self.in_constants, self.lines = [], {}
        written = {}
        for file, mutants in by_file.items():
            written[file] = self.with_choices(file, (ROOT / file).read_text(encoding="utf-8"), mutants)
        lib = f"crates/{self.name}/src/lib.rs"
        text = written.get(lib) or (ROOT / lib).read_text(encoding="utf-8")
        head = "#![allow(warnings, arithmetic_overflow, unconditional_panic)] "
        written[lib] = head + text + CHOICE
        for file, text in written.items():
            (self.work / file).write_text(text, encoding="utf-8")

    def with_choices(self, file, text, mutants):
        starts = [0]
        for line in text.split("\n"):
            starts.append(starts[-1] + len(line) + 1)

        def at(place):
            return starts[place["line"] - 1] + place["column"] - 1

        functions = collections.defaultdict(list)
        for number, mutant in mutants:
            function = mutant.get("function")
            if not function:
                self.in_constants.append(number)
                continue
            span = function["span"]
            functions[at(span["start"]), at(span["end"])].append((number, mutant))
        out, done, lines = "", 0, []
        for (start, end), inside in sorted(functions.items()):
            opening = body(text, start, end)
            head = text[start:opening]
            if start < done or re.search(r"\bconst fn\b", head):
                self.in_constants += [number for number, _ in inside]
                continue
            wrap = boxed(head)
            arms = [(0, text[opening + 1:end - 1])]
            for number, mutant in inside:
                if number not in self.not_viable:
                    a, b = at(mutant["span"]["start"]), at(mutant["span"]["end"])
                    arms.insert(-1, (number, f"{text[opening + 1:a]}{mutant['replacement']} {text[b:end - 1]}"))
            out += text[done:opening] + "{ match crate::mutant_id() {\n"
            for number, arm in arms:
                first = out.count("\n") + 1
                out += f"{f'{number}u32' if number else '_'} => {{ {wrap(arm)} }}\n"
                lines.append((first, out.count("\n"), number))
            out += "} }"
            done = end
        self.lines[file] = lines
        return out + text[done:]

    def cargo(self, *args, optimised=1):
        return subprocess.run(
            ["cargo", *args, "--profile", "mutants", "-p", f"trammel-{self.name}", "--message-format", "json"],
            cwd=self.work, capture_output=True, text=True, env=dict(os.environ, CARGO_PROFILE_MUTANTS_OPT_LEVEL=str(optimised)))

    def leave_out_what_does_not_compile(self):
        while True:
            self.write()
            checked = self.cargo("check", "--lib")
            if checked.returncode == 0:
                return
            wrong = set()
            for line in checked.stdout.splitlines():
                message = json.loads(line).get("message")
                if isinstance(message, dict) and message["level"] == "error":
                    for span in message["spans"]:
                        if span["is_primary"]:
                            wrong |= {n for a, b, n in self.lines.get(span["file_name"], ()) if a <= span["line_start"] <= b}
            wrong.discard(0)
            if not wrong:
                sys.exit(checked.stderr)
            self.not_viable |= wrong

    def tests(self, *which, optimised=1):
        """Builds the tests: their binaries, or nothing when they don't compile."""
        built = self.cargo("test", *(which or ("--lib", "--tests")), "--no-run", optimised=optimised)
        if built.returncode:
            return None
        found = (json.loads(line) for line in built.stdout.splitlines())
        return [f["executable"] for f in found
                if f.get("executable") and f["profile"]["test"] and f"crates/{self.name}" in f["package_id"]]

    def cheapest_first(self, binaries):
        """Each binary with the processor seconds it may take; nothing when the unchanged crate fails."""
        measured = []
        for binary in binaries:
            before = resource.getrusage(resource.RUSAGE_CHILDREN)
            outcome, by = self.run([(binary, LONGEST_S)], 0)
            if outcome != "missed":
                print(f"{outcome} {by} {binary}", file=sys.stderr)
                return None
            after = resource.getrusage(resource.RUSAGE_CHILDREN)
            took = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
            measured.append((took, binary))
            print(f"{took:6.2f} s {pathlib.Path(binary).name}", file=sys.stderr, flush=True)
        return [(binary, min(LONGEST_S, 1 + math.ceil(TIMES_AS_LONG * took))) for took, binary in sorted(measured)]

    def run(self, binaries, number):
        """Runs the tests with a mutant: what came of it, and the test that failed first."""
        with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as temporary:
            env = dict(os.environ, MUTANT=str(number), PROPTEST_CASES=CASES, PROPTEST_MAX_SHRINK_ITERS="0",
                       PROPTEST_DISABLE_FAILURE_PERSISTENCE="true", RUST_BACKTRACE="0", TMPDIR=temporary)
            for binary, longest in binaries:
                with tempfile.TemporaryFile("w+", errors="replace") as said:
                    code = self.run_binary(binary, longest, env, said)
                    if code in (None, -9, -24):
                        return "timeout", ""
                    if code:
                        said.seek(0)
                        text = said.read()
                        by = re.search(r"caught by (\S+)", text)
                        return "caught", by[1] if by else text[-200:]
        return "missed", ""

    def run_binary(self, binary, longest, env, said):
        """Its exit code, or nothing when it takes too long. What it started and left behind is ended with it."""
        process = subprocess.Popen(
            [binary, "-q", "--test-threads", "1", "--nocapture", *self.skip], cwd=self.work / "crates" / self.name, env=env,
            stdin=subprocess.DEVNULL, stdout=said, stderr=subprocess.STDOUT, start_new_session=True,
            preexec_fn=lambda: limits(longest))
        try:
            return process.wait(timeout=40 * longest)
        except subprocess.TimeoutExpired:
            return None
        finally:
            try:
                os.killpg(process.pid, signal.SIGKILL)
            except ProcessLookupError:
                pass
            process.wait()

    def run_constant(self, number):
        """Builds and runs the one mutant: the unit tests first, the others only where those pass."""
        mutant = self.mutants[number]
        path, text = self.work / mutant["file"], (ROOT / mutant["file"]).read_text(encoding="utf-8")
        lines = text.split("\n")
        start, end = mutant["span"]["start"], mutant["span"]["end"]
        before = "\n".join(lines[:start["line"] - 1] + [lines[start["line"] - 1][:start["column"] - 1]])
        after = "\n".join([lines[end["line"] - 1][end["column"] - 1:]] + lines[end["line"]:])
        path.write_text(f"{before}{mutant['replacement']} {after}", encoding="utf-8")
        for which in (("--lib",), ("--test", "*")):
            binaries = self.tests(*which, optimised=0)
            outcome = self.run([(b, 2 * LONGEST_S) for b in binaries], 0) if binaries is not None else ("not viable", "")
            if outcome[0] != "missed":
                break
        path.write_text(text, encoding="utf-8")
        return outcome


def body(text, start, end):
    """Where the function's body opens: the first brace outside of brackets after the word `fn`."""
    at = next(m.end() for m in re.finditer(r"^[^\n/#\"]*\bfn\b", text[start:], re.M)) + start
    depth = 0
    while at < end:
        if text.startswith("//", at):
            at = text.index("\n", at)
        depth += (text[at] in "([") - (text[at] in ")]")
        if text[at] == "{" and depth == 0:
            return at
        at += 1
    raise ValueError(text[start:end])


def boxed(head):
    """Bodies of one function that returns `impl Trait` are of different types until they are boxed."""
    if "-> impl " not in head:
        return lambda arm: arm
    kind = head.split("-> impl ")[-1].strip()
    if "&" in head and "'" not in kind:
        kind += " + '_"
    return lambda arm: f"Box::new({{ {arm} }}) as Box<dyn {kind}>"


def limits(longest):
    os.nice(10)
    resource.setrlimit(resource.RLIMIT_CPU, (longest, longest))
    resource.setrlimit(resource.RLIMIT_AS, (6 << 30, 6 << 30))


def save(out, mutants, outcomes):
    if out:
        named = [{"mutant": mutants[n]["name"], "outcome": o, "by": by} for n, (o, by) in sorted(outcomes.items())]
        out.write_text(json.dumps(named, indent=1), encoding="utf-8")


def main():
    ask = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    ask.add_argument("crate", help="its folder's name under crates")
    ask.add_argument("--file", default="", help="only files whose path this matches")
    ask.add_argument("--jobs", type=int, default=2)
    ask.add_argument("--work", type=pathlib.Path, default=pathlib.Path(tempfile.gettempdir()) / "trammel-mutants")
    ask.add_argument("--out", type=pathlib.Path, help="every mutant's outcome as JSON")
    ask.add_argument("--skip", action="append", default=[], metavar="TEST", help="a test that takes too long, by part of its name")
    ask.add_argument("--no-constants", action="store_true")
    ask.add_argument("--again", type=pathlib.Path, help="only what this JSON lists as missed")
    args = ask.parse_args()
    crate = Crate(args.crate, args.work, args.file, args.skip)
    outcomes = {}
    if args.again:
        before = {m["mutant"]: (m["outcome"], m["by"]) for m in json.loads(args.again.read_text(encoding="utf-8"))}
        outcomes = {n: before[m["name"]] for n, m in crate.mutants.items() if before.get(m["name"], ("missed",))[0] != "missed"}
    every = crate.mutants
    crate.mutants = {n: m for n, m in every.items() if n not in outcomes}
    crate.leave_out_what_does_not_compile()
    binaries = crate.cheapest_first(crate.tests() or [])
    if not binaries:
        sys.exit("the unchanged crate does not pass its tests")
    numbers = [n for n in crate.mutants if n not in crate.not_viable and n not in set(crate.in_constants)]
    with concurrent.futures.ThreadPoolExecutor(args.jobs) as pool:
        for number, outcome in zip(numbers, pool.map(lambda n: crate.run(binaries, n), numbers)):
            outcomes[number] = outcome
            if len(outcomes) % 50 == 0:
                print(f"{len(outcomes)} of {len(every)}", file=sys.stderr, flush=True)
                save(args.out, every, outcomes)
    outcomes.update((n, ("not viable", "")) for n in crate.not_viable)
    if not args.no_constants:
        for file in crate.lines:
            (crate.work / file).write_text((ROOT / file).read_text(encoding="utf-8"), encoding="utf-8")
        lib = f"crates/{args.crate}/src/lib.rs"
        (crate.work / lib).write_text((ROOT / lib).read_text(encoding="utf-8"), encoding="utf-8")
        for number in crate.in_constants:
            outcomes[number] = crate.run_constant(number)
            save(args.out, every, outcomes)
    save(args.out, every, outcomes)
    counts = collections.Counter(o for o, _ in outcomes.values())
    viable = len(outcomes) - counts["not viable"]
    caught = counts["caught"] + counts["timeout"]
    for number, (outcome, _) in sorted(outcomes.items()):
        if outcome == "missed":
            print("missed", every[number]["name"])
    print(f"{args.crate}: {len(outcomes)} mutants, {viable} viable, {counts['caught']} caught, {counts['timeout']} timed out, "
          f"{counts['missed']} missed: {100 * caught / max(viable, 1):.1f} per cent caught or timed out")


if __name__ == "__main__":
    main()
