//! What the program is built from: every dependency comes from the public registry under a licence that may be passed on.

#![allow(clippy::expect_used, reason = "a test stops where it fails")]

use std::process::Command;

use serde::Deserialize;

/// Licences that may be used, as SPDX names them.
const ALLOWED: [&str; 13] = [
    "MIT",
    "Apache-2.0",
    "Apache-2.0 WITH LLVM-exception",
    "BSD-2-Clause",
    "BSD-3-Clause",
    "BSL-1.0",
    "CC0-1.0",
    "ISC",
    "MIT-0",
    "MPL-2.0",
    "Unicode-3.0",
    "Unlicense",
    "Zlib",
];

#[derive(Deserialize)]
struct Metadata {
    packages: Vec<Package>,
}

#[derive(Deserialize)]
struct Package {
    name: String,
    version: String,
    license: Option<String>,
    source: Option<String>,
}

/// Everything that the lock file brings in, for any system.
fn packages() -> Vec<Package> {
    let manifest = concat!(env!("CARGO_MANIFEST_DIR"), "/../Cargo.toml");
    let output = Command::new(env!("CARGO"))
        .args([
            "metadata",
            "--format-version",
            "1",
            "--locked",
            "--all-features",
            "--manifest-path",
            manifest,
        ])
        .output()
        .expect("cargo tells its metadata");
    assert!(
        output.status.success(),
        "{}",
        String::from_utf8_lossy(&output.stderr)
    );
    serde_json::from_slice::<Metadata>(&output.stdout)
        .expect("metadata reads")
        .packages
}

/// Whether an SPDX expression leaves a way of allowed licences only. Brackets hold `OR` lists joined by `AND`.
fn is_allowed(expression: &str) -> bool {
    let one = |licence: &str| ALLOWED.contains(&licence.trim().trim_matches(['(', ')']).trim());
    let any = |part: &str| part.replace('/', " OR ").split(" OR ").any(one);
    expression.split(" AND ").all(any)
        || expression
            .split(" OR ")
            .any(|choice| choice.split(" AND ").all(one))
}

#[test]
fn every_dependency_may_be_passed_on_and_comes_from_the_registry() {
    let packages = packages();
    assert!(
        packages.len() > 100,
        "the whole tree is looked at: {}",
        packages.len()
    );
    let registry = "registry+https://github.com/rust-lang/crates.io-index";
    for p in packages {
        let Some(source) = &p.source else {
            assert!(
                p.name.starts_with("trammel-"),
                "{} is not ours and has no source",
                p.name
            );
            continue;
        };
        assert_eq!(source, registry, "{} {}", p.name, p.version);
        let licence = p.license.as_deref().unwrap_or("none");
        assert!(is_allowed(licence), "{} {}: {licence}", p.name, p.version);
    }
}

#[test]
fn an_expression_is_read_as_it_is_meant() {
    for good in [
        "MIT",
        "MIT OR Apache-2.0",
        "MIT/Apache-2.0",
        "(MIT OR GPL-3.0) AND Unicode-3.0",
        "GPL-2.0 OR ISC",
    ] {
        assert!(is_allowed(good), "{good}");
    }
    for bad in ["GPL-3.0", "MIT AND GPL-3.0", "none", ""] {
        assert!(!is_allowed(bad), "{bad}");
    }
}
