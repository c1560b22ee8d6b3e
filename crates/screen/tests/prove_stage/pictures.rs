//! The stage as a picture, and pictures to look at: `cargo test --workspace --test prove_stage -- --ignored`; they go to the temporary folder.

use egui::{Role, vec2};
use trammel_screen::prove::settings::{PartPage, ProvePage};

use crate::{
    common::{Screen, click},
    hand::{names, prove, use_it},
};

#[test]
fn checks_dark_inch() {
    let mut screen = prove("lifted", ProvePage::Checks);
    screen.set_size(vec2(1024.0, 640.0));
    screen.run_steps(3);
    screen.snapshot("prove_checks_dark_inch");
}

#[test]
fn rack_end_light_inch() {
    let mut screen = prove("lifted", ProvePage::RackEnd);
    screen.set_size(vec2(1024.0, 640.0));
    screen.state_mut().set_light(true);
    screen.run_steps(3);
    screen.snapshot("prove_rack_end_light_inch");
}

fn keep(screen: &mut Screen, name: &str) {
    let picture = screen.render().expect("painted");
    picture
        .save(std::env::temp_dir().join(format!("trammel-prove-{name}.png")))
        .expect("written");
}

#[test]
#[ignore = "makes pictures for the eye"]
fn pages() {
    for (size, light, mm) in [
        (vec2(1280.0, 800.0), false, false),
        (vec2(1920.0, 1080.0), true, true),
    ] {
        for page in ProvePage::ALL {
            let mut screen = prove("lifted", page);
            screen.set_size(size);
            screen.state_mut().set_light(light);
            screen.run_steps(3);
            if mm {
                click(&mut screen, "inch");
                crate::hand::settle(&mut screen);
            }
            keep(&mut screen, &format!("{}-{}", page.label(), size.x));
        }
    }
}

#[test]
#[ignore = "makes pictures for the eye"]
fn unfolded() {
    let mut screen = prove("lifted", ProvePage::Checks);
    let row = names(&screen, Role::Button)
        .into_iter()
        .find(|n| n.starts_with("Rack end: yield"))
        .expect("a row");
    use_it(&mut screen, Role::Button, &row);
    keep(&mut screen, "row");
    let caution = names(&screen, Role::Button)
        .into_iter()
        .find(|n| n.starts_with("caution: "))
        .expect("a caution");
    use_it(&mut screen, Role::Button, &caution);
    keep(&mut screen, "caution");
    let mut screen = prove("lifted", ProvePage::LoadCases);
    use_it(&mut screen, Role::Button, "Edit load case: rock, rearward");
    keep(&mut screen, "case");
    for part in PartPage::ALL {
        let mut screen = prove("lifted", ProvePage::Parts);
        screen.set_size(vec2(1920.0, 1080.0));
        screen.run_steps(2);
        click(&mut screen, &format!("Part: {}", part.label()));
        keep(&mut screen, &format!("part-{}", part.label()));
    }
    let mut screen = prove("lifted", ProvePage::Checks);
    screen.set_size(vec2(1280.0, 3600.0));
    screen.run_steps(3);
    keep(&mut screen, "checks-whole");
}

#[test]
#[ignore = "tells how long a frame takes here"]
fn frame_time() {
    for page in ProvePage::ALL {
        let mut screen = prove("lifted", page);
        let to = crate::common::drag_from(
            &mut screen,
            crate::common::INNER,
            trammel_screen::drawing::Projection::Front,
            vec2(0.0, 12.0),
        );
        let mut times: Vec<f64> = (0..60)
            .map(|n| {
                screen.hover_at(to + vec2(0.0, (n % 7) as f32));
                let start = std::time::Instant::now();
                screen.step();
                start.elapsed().as_secs_f64() * 1e3
            })
            .collect();
        times.sort_by(f64::total_cmp);
        println!(
            "{}: median {:.2} ms, worst {:.2} ms",
            page.label(),
            times[30],
            times[59]
        );
    }
}
