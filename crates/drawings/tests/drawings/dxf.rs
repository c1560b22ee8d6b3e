use approx::assert_relative_eq;
use trammel_drawings::model::{Drawing, Layer, Line, Shape, Text};
use trammel_drawings::part::{for_the_cutter, template};
use trammel_drawings::{DrawingError, dxf};
use trammel_fabrication::plane::{Contour, Edge, Point, Vertex};
use trammel_fabrication::shown::LengthStyle;

use crate::sample::{bracket, metrics, tab};

/// Pairs of group code and value.
fn groups(text: &str) -> Vec<(u16, String)> {
    let lines: Vec<&str> = text.lines().collect();
    lines
        .chunks(2)
        .map(|pair| (pair[0].trim().parse().unwrap(), pair[1].to_owned()))
        .collect()
}

/// The contours of a file, read back: for each polyline its layer, whether it is closed, and its edges.
fn polylines(text: &str) -> Vec<(String, bool, Vec<Edge>)> {
    let mut found = Vec::new();
    let groups = groups(text);
    let starts: Vec<usize> = (0..groups.len()).filter(|&i| groups[i].0 == 0).collect();
    let entity = |i: usize| &groups[starts[i]..starts.get(i + 1).copied().unwrap_or(groups.len())];
    let value = |pairs: &[(u16, String)], code: u16| {
        pairs
            .iter()
            .find(|pair| pair.0 == code)
            .map(|pair| pair.1.clone())
    };
    let number = |pairs: &[(u16, String)], code| {
        value(pairs, code).map_or(0.0, |text| text.parse::<f64>().unwrap())
    };
    let mut i = 0;
    while i < starts.len() {
        if groups[starts[i]].1 == "POLYLINE" {
            let (layer, closed) = (value(entity(i), 8).unwrap(), number(entity(i), 70) == 1.0);
            let mut vertices = Vec::new();
            i += 1;
            while groups[starts[i]].1 == "VERTEX" {
                let pairs = entity(i);
                vertices.push((
                    Point::new(number(pairs, 10), number(pairs, 20)),
                    number(pairs, 42),
                ));
                i += 1;
            }
            assert_eq!(groups[starts[i]].1, "SEQEND");
            let next = vertices.iter().cycle().skip(1);
            let edges = vertices
                .iter()
                .zip(next)
                .map(|(a, b)| Edge::between(a.0, b.0, a.1))
                .collect();
            found.push((layer, closed, edges));
        }
        i += 1;
    }
    found
}

#[test]
fn the_outline_reads_back_closed_and_to_size() {
    let part = tab();
    let file = dxf::write(&for_the_cutter(&part), &metrics()).unwrap();
    let found = polylines(&file);
    assert_eq!(found.len(), 1);
    let (layer, closed, edges) = &found[0];
    assert!(layer == "CUT" && *closed);
    let arcs = edges
        .iter()
        .filter(|edge| matches!(edge, Edge::Arc(_)))
        .count();
    assert_eq!(arcs, 2, "the cope and the end are arcs");
    let length: f64 = edges.iter().map(Edge::length).sum();
    assert_relative_eq!(length, part.outline.length(), epsilon = 1e-4);
    let vertices = edges.iter().zip(part.outline.edges());
    for (read, drawn) in vertices {
        assert_relative_eq!(read.from(), drawn.from(), epsilon = 1e-6);
    }
}

#[test]
fn holes_are_circles_and_bends_lie_on_their_layer() {
    let file = dxf::write(&for_the_cutter(&bracket()), &metrics()).unwrap();
    let groups = groups(&file);
    let after = |entity: &str| {
        groups
            .iter()
            .zip(groups.iter().skip(1))
            .filter(|(a, _)| a.0 == 0 && a.1 == entity)
            .map(|(_, b)| b.1.clone())
            .collect::<Vec<_>>()
    };
    assert_eq!(after("CIRCLE"), ["CUT", "CUT", "CUT"]);
    assert_eq!(after("LINE"), ["BEND", "BEND"]);
    assert!(
        groups
            .iter()
            .any(|pair| pair.0 == 999 && pair.1.contains("Kerf is not taken off"))
    );
    assert!(
        groups
            .windows(2)
            .any(|pair| pair[0].1 == "$INSUNITS" && pair[1].1 == "4")
    );
}

#[test]
fn nothing_of_the_sheet_reaches_the_cutter() {
    let m = metrics();
    let sheet = dxf::write(&template(&tab(), LengthStyle::INCH), &m).unwrap();
    assert_eq!(sheet, dxf::write(&for_the_cutter(&tab()), &m).unwrap());
    assert!(!sheet.contains("TEXT"));
}

#[test]
fn lettering_stands_on_the_mark_layer_only() {
    let mut drawing = Drawing::new("marked");
    for layer in [Layer::Cut, Layer::Mark, Layer::Bend] {
        drawing.add(
            layer,
            Line::NARROW,
            Shape::Text(Text::new(
                1.0,
                2.0,
                3.0,
                format!("\u{2300} 5 on {}", layer.name()),
            )),
        );
    }
    let file = dxf::write(&drawing, &metrics()).unwrap();
    assert_eq!(file.matches("\nTEXT\n").count(), 1);
    assert!(file.contains("%%c 5 on MARK"));
}

#[test]
fn a_coordinate_that_is_no_number_stops_the_file() {
    let mut drawing = Drawing::new("bad");
    drawing.add(
        Layer::Cut,
        Line::WIDE,
        Shape::Polyline(vec![Point::origin(), Point::new(f64::NAN, 1.0)]),
    );
    let bad = DrawingError::NotFinite {
        drawing: "bad".to_owned(),
    };
    assert_eq!(dxf::write(&drawing, &metrics()), Err(bad));
}

#[test]
fn clockwise_arcs_bulge_the_other_way() {
    // A square with a bite of half a circle in its right side.
    let vertices = vec![
        Vertex::straight(0.0, 0.0),
        Vertex::straight(20.0, 0.0),
        Vertex::arc(20.0, 5.0, -std::f64::consts::PI),
        Vertex::straight(20.0, 15.0),
        Vertex::straight(20.0, 20.0),
        Vertex::straight(0.0, 20.0),
    ];
    let mut drawing = Drawing::new("bite");
    drawing.add(
        Layer::Cut,
        Line::WIDE,
        Shape::Contour(Contour::new(vertices).unwrap()),
    );
    let found = polylines(&dxf::write(&drawing, &metrics()).unwrap());
    let Edge::Arc(bite) = found[0].2[2] else {
        panic!("an arc")
    };
    assert_relative_eq!(bite.centre, Point::new(20.0, 10.0), epsilon = 1e-6);
    assert!(bite.sweep < 0.0);
}
