//! Pictures to look at: `cargo test -p trammel-screen --test drawing -- --ignored pictures`. They go to the folder for temporary files.

use egui::vec2;
use trammel_analysis::Grade;
use trammel_build::{Axis, AxleName, Coordinate, PointName};
use trammel_raster::{View, render};
use trammel_screen::{drawing::Projection, tokens::Tokens};

use crate::bench::{Bench, build, left, set_fonts};

fn picture(name: &str, size: [f32; 2], bench: Bench) {
    scaled(name, size, 1.0, bench);
}

fn scaled(name: &str, size: [f32; 2], scale: f32, mut bench: Bench) {
    let view = View {
        size_points: vec2(size[0], size[1]),
        pixels_per_point: scale,
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
    scaled("double", [860.0, 700.0], 2.0, busy());
    for projection in Projection::ALL {
        let mut bench = busy();
        bench.drawing.fill = Some(projection);
        picture(
            &format!("fill-{}", projection.word()),
            [860.0, 700.0],
            bench,
        );
    }
    let mut bench = Bench::new(build());
    bench.instant_centres = true;
    picture("centres", [860.0, 700.0], bench);
    for demo in trammel_persistence::demos() {
        let Ok(build) = trammel_persistence::read(demo.text) else {
            panic!("{} is no build", demo.name)
        };
        let mut bench = Bench::new(build.clone());
        bench.instant_centres = true;
        bench.rack = 30.0;
        bench.hovered = Some(left(PointName::LowerBallJoint));
        picture(&format!("demo-{}", demo.name), [860.0, 700.0], bench);
        let mut bench = Bench::new(build);
        bench.axle = AxleName::Rear;
        bench.tokens = Tokens::light();
        bench.travel = -40.0;
        picture(&format!("rear-{}", demo.name), [860.0, 700.0], bench);
    }
    let mut bench = Bench::new(build());
    bench.travel = 20.0 * 25.4;
    bench.tokens = Tokens::light();
    picture("out-of-reach", [860.0, 700.0], bench);
}

#[test]
#[ignore = "tells how long a frame takes here"]
fn frame_time() {
    let context = egui::Context::default();
    set_fonts(&context);
    let mut bench = busy();
    let input = || egui::RawInput {
        screen_rect: Some(egui::Rect::from_min_size(
            egui::Pos2::ZERO,
            vec2(860.0, 700.0),
        )),
        ..egui::RawInput::default()
    };
    let (mut work, mut mesh, mut shapes) = (Vec::new(), Vec::new(), 0);
    for _ in 0..300 {
        let mut inside = 0.0;
        let mut output = context.run_ui(input(), |ui| {
            let start = std::time::Instant::now();
            bench.ui(ui);
            inside = start.elapsed().as_secs_f64() * 1e3;
        });
        output.textures_delta.clear();
        shapes = output.shapes.len();
        work.push(inside);
        let start = std::time::Instant::now();
        context.tessellate(output.shapes, output.pixels_per_point);
        mesh.push(start.elapsed().as_secs_f64() * 1e3);
    }
    work.sort_by(f64::total_cmp);
    mesh.sort_by(f64::total_cmp);
    println!(
        "drawing {:.3} ms, tessellation {:.3} ms (medians of 300), {shapes} shapes",
        work[150], mesh[150]
    );
}
