#![allow(missing_docs)]
use trammel_analysis::*;
fn min<T>(n: usize, mut f: impl FnMut() -> T) -> f64 {
    let mut m = f64::MAX;
    for _ in 0..n {
        let t = std::time::Instant::now();
        std::hint::black_box(f());
        m = m.min(t.elapsed().as_secs_f64());
    }
    m * 1e6
}
fn main() {
    for d in trammel_persistence::demos() {
        println!("=== {}", d.name);
        let b = trammel_persistence::read(d.text).unwrap();
        let s = Study::of(&b).unwrap();
        let f = Findings::of(&b, &s);
        println!(
            "us min: study {:.0} findings {:.0} axle(front) {:.0} faults {:.0} clone {:.1}",
            min(300, || Study::of(&b)),
            min(300, || Findings::of(&b, &s)),
            min(300, || b.axle(trammel_build::AxleName::Front)),
            min(300, || b.faults()),
            min(300, || b.clone())
        );
        for c in &f.cautions {
            println!(
                "[{}] {} | {}\n    {}\n    {}",
                c.grade.word(),
                c.headline,
                c.detail,
                c.reason,
                c.source
            );
            for r in &c.remedies {
                println!(
                    "      - {} {}",
                    r.text,
                    if r.edit.is_some() { "*" } else { "" }
                );
            }
        }
    }
}
