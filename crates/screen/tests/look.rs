//! Pictures to look at: `cargo test -p trammel-screen --test look -- --ignored`.
use trammel_raster::{View, render};
use trammel_screen::{
    Bench, Start, fonts,
    host::{Host, Pick, Picked},
};

struct Nobody;
impl Host for Nobody {
    fn ask_for_file(&mut self, _: &Pick, _: Option<&std::path::Path>) {}
    fn answer(&mut self) -> Option<Picked> {
        None
    }
    fn state_folder(&self) -> Option<std::path::PathBuf> {
        None
    }
    fn quit(&mut self) {}
}

#[test]
#[ignore = "makes pictures for the eye"]
fn pictures() {
    for demo in ["good", "lifted", "badly-placed-rack"] {
        for (w, h) in [(1280.0, 800.0), (1920.0, 1080.0)] {
            for light in [false, true] {
                for page in trammel_screen::view::Page::ALL {
                    let mut bench = Bench::new(Box::new(Nobody), Start::NamedDemo(demo.into()));
                    bench.set_light(light);
                    bench.view_mut().page = page;
                    bench.view_mut().travel = 40.0;
                    let picture = render(
                        &View {
                            size_points: egui::vec2(w, h),
                            pixels_per_point: 1.0,
                            settle_frames: 3,
                        },
                        |ctx| ctx.set_fonts(fonts::definitions()),
                        |ui| bench.ui(ui),
                    )
                    .unwrap();
                    picture
                        .write_png(std::path::Path::new(&format!(
                            "/tmp/look-{demo}-{w}-{}-{}.png",
                            if light { "light" } else { "dark" },
                            page.label()
                        )))
                        .unwrap();
                }
            }
        }
    }
}

#[test]
#[ignore = "makes pictures for the eye"]
fn tune_pictures() {
    let pages = trammel_screen::tune::settings::TunePage::ALL;
    for demo in ["good", "lifted", "badly-placed-rack"] {
        for (w, h) in [(1280.0, 800.0), (1920.0, 1080.0)] {
            for light in [false, true] {
                for page in pages {
                    if std::env::var("LOOK")
                        .is_ok_and(|l| !format!("{demo}-{w}-{light}-{page:?}").contains(&l))
                    {
                        continue;
                    }
                    let mut bench = Bench::new(Box::new(Nobody), Start::NamedDemo(demo.into()));
                    bench.set_light(light);
                    bench.go(trammel_screen::view::Stage::Tune);
                    bench.view_mut().tune.page = page;
                    let picture = render(
                        &View {
                            size_points: egui::vec2(w, h),
                            pixels_per_point: 1.0,
                            settle_frames: 12,
                        },
                        |ctx| ctx.set_fonts(fonts::definitions()),
                        |ui| {
                            std::thread::sleep(std::time::Duration::from_millis(40));
                            bench.ui(ui)
                        },
                    )
                    .unwrap();
                    picture
                        .write_png(std::env::temp_dir().join(format!(
                            "tune-{demo}-{w}-{}-{page:?}.png",
                            if light { "light" } else { "dark" }
                        )))
                        .unwrap();
                }
            }
        }
    }
}
