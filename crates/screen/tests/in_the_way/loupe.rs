//! The loupe by keyboard.

use super::*;

fn loupe_value(screen: &Screen) -> String {
    let loupe = screen.get_by_label("Loupe of the toe map");
    loupe.value().unwrap_or_default()
}

#[test]
fn the_loupe_is_read_and_used_by_keyboard() {
    let mut screen = in_the_way("badly-placed-rack");
    // What is in the way at a place is read too, once it is known.
    wait_for_clear(&mut screen);
    let before = screen.state().build().clone();
    screen.get_by_label("Loupe of the toe map").focus();
    screen.run_steps(3);
    let at_joint = loupe_value(&screen);
    assert!(at_joint.contains("y 7 9/16, z 9 1/2"), "{at_joint}");
    for _ in 0..4 {
        press(&mut screen, Modifiers::NONE, Key::ArrowDown);
    }
    press(&mut screen, Modifiers::NONE, Key::ArrowLeft);
    let read = loupe_value(&screen);
    assert!(read.contains("y 7 1/2, z 9 1/4"), "{read}");
    assert!(read.contains('°'), "{read}");
    assert_eq!(screen.state().build(), &before, "reading moves nothing");
    press(&mut screen, Modifiers::NONE, Key::Enter);
    let inner = place(&screen, INNER);
    assert_eq!([inner[1], inner[2]], [7.5, 9.25]);
    press(&mut screen, Modifiers::COMMAND, Key::Z);
    assert_eq!(screen.state().build(), &before, "one step");
    press(&mut screen, Modifiers::NONE, Key::Home);
    assert_eq!(loupe_value(&screen), at_joint);

    let width = screen.state().view().tune.map_width;
    press(&mut screen, Modifiers::NONE, Key::Plus);
    assert!(screen.state().view().tune.map_width > width);
    press(&mut screen, Modifiers::NONE, Key::Minus);
    assert!((screen.state().view().tune.map_width - width).abs() < 1e-9);
}

#[test]
fn the_loupe_grows_and_shrinks_back() {
    let mut screen = in_the_way("good");
    let width = |s: &Screen| s.get_by_label("Loupe of the toe map").rect().width();
    let usual = width(&screen);
    screen.get_by_label("Loupe larger").focus();
    screen.run_steps(2);
    press(&mut screen, Modifiers::NONE, Key::Enter);
    assert!(width(&screen) > 1.2 * usual);
    click(&mut screen, "Loupe smaller");
    assert_eq!(width(&screen), usual);
}
