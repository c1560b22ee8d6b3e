use trammel_drawings::ink::{Ink, bounds, strokes};
use trammel_drawings::model::{Drawing, Line, Shape, Text};
use trammel_drawings::part::template;
use trammel_drawings::sheet::{Content, Page, Paper, lay_out};
use trammel_drawings::wrap;
use trammel_fabrication::coping::Cope;
use trammel_fabrication::flat_part::FlatPart;
use trammel_fabrication::plane::{Bounds, Contour, Point};
use trammel_fabrication::shown::LengthStyle;

use crate::sample::{block, bracket, content, metrics, tab};

/// Every text of a page with the room it takes on it.
fn texts(page: &Page) -> Vec<(String, Bounds)> {
    let m = metrics();
    let mut found = Vec::new();
    for placed in &page.placed {
        for stroke in strokes(&placed.drawing, &m) {
            if let Ink::Text(text) = stroke.ink {
                let room = m.bounds(&text);
                let room = Bounds {
                    min: room.min + placed.shift,
                    max: room.max + placed.shift,
                };
                if placed
                    .window
                    .is_none_or(|window| window.contains(room.min) && window.contains(room.max))
                {
                    found.push((text.content, room));
                }
            }
        }
    }
    found
}

fn overlap(a: &Bounds, b: &Bounds) -> bool {
    a.min.x < b.max.x && b.min.x < a.max.x && a.min.y < b.max.y && b.min.y < a.max.y
}

#[test]
fn no_text_overlaps_another_or_leaves_the_frame() {
    for paper in Paper::ALL {
        for part in [tab(), bracket()] {
            let around = Content {
                notes: Vec::new(),
                ..content(&part)
            };
            let pages = trammel_drawings::part::lay_out(
                paper,
                &block(&part.name),
                &part,
                LengthStyle::INCH,
                &around,
                &metrics(),
            );
            assert!(
                pages.len() == 1 || paper == Paper::Letter,
                "{paper}: {}",
                part.name
            );
            for page in pages {
                let [width, height] = paper.size();
                let frame = Bounds {
                    min: Point::new(20.0, 10.0),
                    max: Point::new(width - 10.0, height - 10.0),
                };
                let texts = texts(&page);
                for (index, (text, room)) in texts.iter().enumerate() {
                    assert!(
                        frame.contains(room.min) && frame.contains(room.max),
                        "{paper}: {text:?} {room:?}"
                    );
                    for (other, taken) in texts.iter().skip(index + 1) {
                        assert!(!overlap(room, taken), "{paper}: {text:?} on {other:?}");
                    }
                }
            }
        }
    }
}

#[test]
fn a_small_part_takes_one_page_at_full_size() {
    let part = tab();
    let pages = lay_out(Paper::A4, &block(&part.name), &content(&part), &metrics());
    assert_eq!(pages.len(), 1);
    // Nothing on a page can scale a drawing: it is only shifted.
    let drawn = pages[0]
        .placed
        .iter()
        .find(|placed| placed.drawing.title == part.name)
        .unwrap();
    assert_eq!(drawn.drawing, template(&part, LengthStyle::INCH));
}

fn deck() -> FlatPart {
    let outline = Contour::rectangle(Point::origin(), Point::new(400.0, 300.0), 10.0).unwrap();
    FlatPart::plain("deck", outline, 3.0)
}

#[test]
fn tiles_cover_a_large_part_and_overlap() {
    let m = metrics();
    let pages = lay_out(Paper::A4, &block("deck"), &content(&deck()), &m);
    assert!(pages.len() >= 4, "{}", pages.len());
    let all = bounds(&content(&deck()).drawing, &m);
    // What each page shows, in the part's own plane.
    let shown: Vec<Bounds> = pages
        .iter()
        .flat_map(|page| &page.placed)
        .filter_map(|placed| {
            placed.window.map(|w| Bounds {
                min: w.min - placed.shift,
                max: w.max - placed.shift,
            })
        })
        .collect();
    assert_eq!(shown.len(), pages.len());
    let mut y = all.min.y;
    while y <= all.max.y {
        let mut x = all.min.x;
        while x <= all.max.x {
            assert!(
                shown
                    .iter()
                    .any(|tile| tile.grown(1e-6).contains(Point::new(x, y))),
                "{x} {y} is on no tile"
            );
            x += 5.0;
        }
        y += 5.0;
    }
    let overlaps = shown
        .iter()
        .enumerate()
        .filter(|(i, a)| shown.iter().skip(i + 1).any(|b| overlap(a, b)))
        .count();
    assert_eq!(overlaps, shown.len() - 1);
}

#[test]
fn every_register_mark_is_on_two_tiles_or_more() {
    let pages = lay_out(Paper::A4, &block("deck"), &content(&deck()), &metrics());
    let tiles: Vec<_> = pages
        .iter()
        .flat_map(|page| &page.placed)
        .filter(|placed| placed.window.is_some())
        .collect();
    let marks: Vec<Point> = tiles[0]
        .drawing
        .items
        .iter()
        .filter_map(|item| match item.shape {
            Shape::Circle {
                centre,
                radius: 2.0,
            } => Some(centre),
            _ => None,
        })
        .collect();
    assert!(marks.len() >= 8);
    for mark in marks {
        let whole = |shift, window: Bounds| window.grown(-4.0).contains(mark + shift);
        let on = tiles
            .iter()
            .filter(|tile| tile.window.is_some_and(|window| whole(tile.shift, window)))
            .count();
        assert!(on >= 2, "{mark} is on {on}");
    }
}

#[test]
fn crowded_holes_keep_their_measures_apart() {
    let mut part = tab();
    for step in 0..5 {
        let mut hole = part.holes[0].clone();
        hole.centre += trammel_fabrication::plane::Vector::new(
            f64::from(step) * 0.7 - 1.4,
            f64::from(step) * 0.4,
        );
        part.holes.push(hole);
    }
    let drawing = template(&part, LengthStyle::MILLIMETRE);
    let page = Page {
        paper: Paper::A4,
        placed: vec![trammel_drawings::sheet::Placed::whole(drawing)],
    };
    let texts = texts(&page);
    for (index, (text, room)) in texts.iter().enumerate() {
        for (other, taken) in texts.iter().skip(index + 1) {
            assert!(!overlap(room, taken), "{text:?} on {other:?}");
        }
    }
}

#[test]
fn an_empty_drawing_is_an_empty_sheet() {
    let content = Content {
        drawing: Drawing::new("nothing"),
        ..Content::default()
    };
    assert_eq!(
        lay_out(Paper::Letter, &block("nothing"), &content, &metrics()).len(),
        1
    );
}

#[test]
fn paper_is_known_by_its_name() {
    assert_eq!("tabloid".parse::<Paper>(), Ok(Paper::Tabloid));
    assert!(
        "a5".parse::<Paper>()
            .unwrap_err()
            .to_string()
            .contains("expected a4, a3, letter or tabloid")
    );
}

#[test]
fn hatch_stays_inside_its_contour() {
    let m = metrics();
    let contour = tab().outline;
    let mut drawing = Drawing::new("hatch");
    let shape = Shape::Hatch {
        contour: contour.clone(),
        angle: 0.7,
        spacing: 2.0,
    };
    drawing.add(trammel_drawings::model::Layer::Sheet, Line::NARROW, shape);
    let lines = strokes(&drawing, &m);
    assert!(lines.len() > 20);
    let mut length = 0.0;
    for stroke in lines {
        let Ink::Path { edges, .. } = stroke.ink else {
            panic!("a line")
        };
        let middle = edges[0].from() + (edges[0].to() - edges[0].from()) / 2.0;
        assert!(contour.contains(middle), "{middle}");
        length += edges[0].length();
    }
    // Lines 2 mm apart: their length times 2 is the area.
    assert!((length * 2.0 / contour.area() - 1.0).abs() < 0.02);
}

#[test]
fn the_wrap_template_is_as_long_as_the_tubes_girth() {
    let cope = Cope::new(25.4, 38.1, 1.2, 0.0).unwrap();
    let drawing = wrap::wrap_templates("rear tube", &[("inner end", &cope)]).unwrap();
    let paths = drawing
        .items
        .iter()
        .filter(|item| !matches!(item.shape, Shape::Text(_)));
    let outline = Drawing {
        items: paths.cloned().collect(),
        ..drawing
    };
    let room = bounds(&outline, &metrics());
    let girth = std::f64::consts::PI * (25.4 + 0.1);
    assert!(
        (room.width() - girth - 8.0).abs() < 1e-6,
        "girth and the tongue"
    );
}

/// A square fish mouth of 1 in on 2 in, by hand: its ears at the sides stand 2 x 1/2 in - sqrt(1 - 1/4) in = 3.403 mm over its bottom, in the arm's plane. The metal is below the
/// curve: the paper is higher where the metal stands out.
#[test]
fn the_paper_is_highest_at_the_ears_of_a_fish_mouth() {
    let cope = Cope::new(25.4, 50.8, std::f64::consts::FRAC_PI_2, 0.0).unwrap();
    let drawing = wrap::wrap_templates("tube", &[("end", &cope), ("other end", &cope)]).unwrap();
    let papers: Vec<_> = drawing
        .items
        .iter()
        .filter_map(|item| match &item.shape {
            Shape::Polyline(points) if points.len() > 100 => Some(points),
            _ => None,
        })
        .collect();
    assert_eq!(papers.len(), 2);
    for points in papers {
        let low = points.iter().fold(f64::INFINITY, |least, p| least.min(p.y));
        let height = |quarter: usize| points[quarter * 90].y - low;
        for (quarter, stands_out) in [(0, 0.0), (1, 3.403), (2, 0.0), (3, 3.403), (4, 0.0)] {
            let wanted = wrap::SKIRT + stands_out;
            assert!((height(quarter) - wanted).abs() < 1e-3, "{quarter}");
        }
    }
}

#[test]
fn wrapped_text_is_no_wider_than_asked() {
    let m = metrics();
    let text =
        "A long note with averyveryverylongwordthatnolineholds in it, and figures 1 17/32 (1.531).";
    let lines = m.wrapped(text, 2.2, 40.0);
    assert!(lines.iter().all(|line| m.width(line, 2.2, false) <= 40.0));
    assert_eq!(lines.concat().replace(' ', ""), text.replace(' ', ""));
    assert!(m.bounds(&Text::new(0.0, 0.0, 2.0, "")).width() < 1e-9);
}
