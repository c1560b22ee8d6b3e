//! Pictures to look at: `cargo test -p trammel-screen --test drawing -- --ignored pictures`. They go to the folder for temporary files.

use egui::vec2;
use trammel_analysis::Grade;
use trammel_build::{Axis, AxleName, Coordinate, PointName};
use trammel_raster::{View, render};
use trammel_screen::{drawing::Projection, tokens::Tokens};

use crate::bench::{Bench, build, left, set_fonts};

fn picture(name: &str, size: [f32; 2], mut bench: Bench) {
    let view = View {
        size_points: vec2(size[0], size[1]),
        pixels_per_point: 1.0,
        settle_frames: 2,
    };
    let picture = render(&view, set_fonts, |ui| bench.ui(ui)).unwrap();
    let path = std::env::temp_dir().join(format!("trammel-drawing-{name}.png"));
    picture.write_png(path).unwrap();
}

fn busy() -> Bench {
    let mut build = build();
    for axis in [Axis::Y, Axis::Z] {
        build.locked.insert(Coordinate {
            axle: AxleName::Front,
            point: PointName::LowerFrontPivot,
            axis,
        });
    }
    let mut bench = Bench::new(build);
    bench.travel = 2.0 * 25.4;
    bench.rack = 0.75 * 25.4;
    bench.selected = Some(left(PointName::TieRodInner));
    bench.marks = vec![
        (left(PointName::RackFace), Grade::Danger),
        (left(PointName::TieRodOuter), Grade::Caution),
        (left(PointName::UpperBallJoint), Grade::Note),
    ];
    bench
}

#[test]
#[ignore = "makes pictures to look at"]
fn pictures() {
    picture("rest-dark", [860.0, 700.0], Bench::new(build()));
    let mut light = Bench::new(build());
    light.tokens = Tokens::light();
    picture("rest-light", [860.0, 700.0], light);
    picture("busy-dark", [860.0, 700.0], busy());
    let mut light = busy();
    light.tokens = Tokens::light();
    picture("busy-light", [860.0, 700.0], light);
    picture("small", [500.0, 300.0], busy());
    picture("large", [2000.0, 1300.0], busy());
    for projection in Projection::ALL {
        let mut bench = busy();
        bench.drawing.fill = Some(projection);
        picture(&format!("fill-{}", projection.word()), [860.0, 700.0], bench);
    }
    let mut bench = Bench::new(build());
    bench.instant_centres = true;
    picture("centres", [860.0, 700.0], bench);
    let mut bench = Bench::new(build());
    bench.travel = 20.0 * 25.4;
    bench.tokens = Tokens::light();
    picture("out-of-reach", [860.0, 700.0], bench);
}
