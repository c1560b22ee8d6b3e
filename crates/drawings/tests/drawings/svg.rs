use trammel_drawings::model::{Drawing, Layer, Line, Shape, Text};
use trammel_drawings::part::{for_the_cutter, template};
use trammel_drawings::svg;
use trammel_fabrication::plane::Point;
use trammel_fabrication::shown::LengthStyle;

use crate::sample::{bracket, metrics, tab};

#[test]
fn size_and_view_box_are_millimetres() {
    let part = bracket();
    let file = svg::write(&for_the_cutter(&part), &Layer::FOR_THE_CUTTER, &metrics()).unwrap();
    // A stroke of 0.35 all round.
    let (width, height) = (part.bounds().width() + 0.7, part.bounds().height() + 0.7);
    let expected = format!("width=\"{width:.6}");
    assert!(
        file.contains(expected.trim_end_matches('0')),
        "{expected} {file}"
    );
    assert!(
        height - 38.8 < 1e-9 && file.contains("height=\"38.8mm\""),
        "{file}"
    );
    assert_eq!(file.matches("<circle").count(), 3);
    assert!(
        file.contains("<g id=\"CUT\"")
            && file.contains("<g id=\"BEND\"")
            && !file.contains("SHEET")
    );
}

#[test]
fn the_end_of_a_tab_is_an_arc_that_bulges_outwards() {
    let file = svg::write(&for_the_cutter(&tab()), &[Layer::Cut], &metrics()).unwrap();
    // The end runs anticlockwise, with y down that is flag 0; the cope runs clockwise: flag 1.
    assert!(
        file.contains(" A16 16 0 0 0 ") || file.contains(" A16 16 0 1 0 "),
        "{file}"
    );
    assert!(file.contains(" A40 40 0 0 1 "), "{file}");
}

#[test]
fn a_template_letters_its_measures() {
    let layers = [Layer::Cut, Layer::Bend, Layer::Sheet];
    let file = svg::write(&template(&tab(), LengthStyle::INCH), &layers, &metrics()).unwrap();
    assert!(file.contains("3/8 bolt, close"));
    assert!(file.contains("\u{2300}"));
}

#[test]
fn signs_of_xml_are_escaped() {
    let mut drawing = Drawing::new("a < b & \"c\"");
    drawing.letter(Text::new(0.0, 0.0, 3.0, "<&>"));
    let file = svg::write(&drawing, &[Layer::Sheet], &metrics()).unwrap();
    assert!(
        file.contains("<title>a &lt; b &amp; &quot;c&quot;</title>")
            && file.contains("&lt;&amp;&gt;")
    );
}

#[test]
fn an_empty_drawing_is_a_file_without_size_and_nan_is_refused() {
    let m = metrics();
    let empty = svg::write(&Drawing::new("nothing"), &[Layer::Cut], &m).unwrap();
    assert!(empty.contains("viewBox=\"0 0 0 0\""));
    let mut drawing = Drawing::new("bad");
    drawing.add(
        Layer::Cut,
        Line::WIDE,
        Shape::Circle {
            centre: Point::origin(),
            radius: f64::INFINITY,
        },
    );
    assert!(svg::write(&drawing, &[Layer::Cut], &m).is_err());
}
