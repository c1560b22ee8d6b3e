fn main() {
    for demo in trammel_persistence::demos() {
        let build =
            trammel_persistence::read(demo.text).unwrap_or_else(|e| panic!("{} {e}", demo.name));
        for depth in [
            trammel_analysis::ProofDepth::Quick,
            trammel_analysis::ProofDepth::Full,
        ] {
            let start = std::time::Instant::now();
            let proof = trammel_analysis::prove(&build, depth, &|| false).unwrap();
            println!(
                "== {} {depth:?} {:?} rows {}",
                demo.name,
                start.elapsed(),
                proof.rows.len()
            );
            if depth == trammel_analysis::ProofDepth::Quick {
                continue;
            }
            let mut seen = vec![];
            for r in &proof.rows {
                if seen.contains(&(r.axle, r.part, r.check)) {
                    continue;
                }
                seen.push((r.axle, r.part, r.check));
                if r.standing().is_none_or(|s| s > 2.0) {
                    continue;
                }
                println!(
                    "{:?} {} | {} | {} | {:.3?}/{} {:?} {:.1} vs {:.1} {}",
                    r.axle,
                    r.part.label(),
                    r.check,
                    r.load_case.as_deref().unwrap_or("-"),
                    r.factor,
                    r.wanted,
                    r.grade(),
                    r.shown(build.unit).value,
                    r.shown(build.unit).limit,
                    r.shown(build.unit).unit
                );
                for m in &r.remedies {
                    println!("     - {}", m.text)
                }
            }
            for n in &proof.notes {
                println!("  {:?} {}: {}", n.kind, n.about, n.text)
            }
            println!("{:?}", proof.steering);
            let start = std::time::Instant::now();
            let t = trammel_analysis::thread_comparison(&build, trammel_build::Side::Left);
            println!("threads {} {:?}", t.len(), start.elapsed());
        }
    }
}
