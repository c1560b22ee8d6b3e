use approx::assert_relative_eq;
use trammel_drawings::metrics::Metrics;
use trammel_drawings::model::Layer;
use trammel_drawings::part::{for_the_cutter, nested, template};
use trammel_drawings::{dxf, svg};
use trammel_fabrication::flat_part::{FlatPart, Quantity};
use trammel_fabrication::nest::{StockPlate, nest};
use trammel_fabrication::shown::LengthStyle;

use crate::sample::{bracket, tab};
use crate::tools::{at_hand, python, script};

pub fn ezdxf() -> bool {
    at_hand(
        "ezdxf (pip install ezdxf)",
        python().args(["-c", "import ezdxf"]),
    )
}

fn read_back(drawing: &trammel_drawings::model::Drawing) -> serde_json::Value {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("part.dxf");
    let text = dxf::write(drawing, &Metrics::new().expect("metrics")).expect("a DXF");
    std::fs::write(&file, text).expect("written");
    script("dxf_check.py", &file)
}

fn clean(found: &serde_json::Value) {
    assert_eq!(found["errors"], serde_json::json!([]), "{found}");
    assert_eq!(found["repairs"], serde_json::json!([]), "{found}");
    assert_eq!(found["units"], 4, "millimetres");
    assert_eq!(found["open_contours"], 0);
}

#[test]
fn a_tab_is_one_closed_contour_of_its_size_with_true_arcs() {
    if !ezdxf() {
        return;
    }
    let part = tab();
    // The template has dimensions and lettering; none of it may come through.
    let found = read_back(&template(&part, LengthStyle::INCH));
    clean(&found);
    assert_eq!(found["layers"], serde_json::json!(["CUT"]));
    assert_eq!(found["kinds"], serde_json::json!(["CIRCLE", "POLYLINE"]));
    assert_eq!(found["arcs_in_contours"], 2);
    let bounds = part.bounds();
    for (read, drawn) in found["size"]
        .as_array()
        .expect("size")
        .iter()
        .zip([bounds.width(), bounds.height()])
    {
        assert_relative_eq!(read.as_f64().expect("mm"), drawn, epsilon = 0.02);
    }
    assert_relative_eq!(
        found["contour_lengths"][0].as_f64().expect("mm"),
        part.outline.length(),
        epsilon = 1e-3
    );
    assert_eq!(found["circles"], serde_json::json!([[0.0, 40.0, 5.0]]));
}

#[test]
fn bends_have_their_own_layer() {
    if !ezdxf() {
        return;
    }
    let found = read_back(&for_the_cutter(&bracket()));
    clean(&found);
    assert_eq!(found["layers"], serde_json::json!(["BEND", "CUT"]));
    assert_eq!(found["circles"].as_array().map(Vec::len), Some(3));
}

#[test]
fn a_nested_plate_holds_every_part_closed() {
    if !ezdxf() {
        return;
    }
    let several = Quantity {
        as_drawn: 3,
        mirrored: 2,
    };
    let parts = [
        FlatPart {
            quantity: several,
            ..tab()
        },
        bracket(),
    ];
    let plate = StockPlate {
        width: 600.0,
        height: 300.0,
        margin: 10.0,
        gap: 6.0,
    };
    let nesting = nest(&parts, &plate).expect("it fits");
    assert_eq!(nesting.plates, 1);
    let placed: Vec<FlatPart> = nesting
        .parts
        .iter()
        .map(|n| parts[n.part].placed(&n.placement))
        .collect();
    let found = read_back(&nested("plate 1", &placed));
    clean(&found);
    assert_eq!(found["contour_lengths"].as_array().map(Vec::len), Some(6));
    assert_eq!(found["arcs_in_contours"], 10, "two in each tab");
}

#[test]
fn an_svg_reads_as_xml_in_millimetres() {
    if !at_hand("Python", python().arg("--version")) {
        return;
    }
    let (part, folder) = (bracket(), tempfile::tempdir().expect("a folder"));
    let file = folder.path().join("part.svg");
    let text = svg::write(
        &for_the_cutter(&part),
        &Layer::FOR_THE_CUTTER,
        &Metrics::new().expect("metrics"),
    )
    .expect("an SVG");
    std::fs::write(&file, text).expect("written");
    let found = script("svg_check.py", &file);
    assert_eq!(found["root"], true);
    let size: Vec<f64> = found["size"]
        .as_array()
        .expect("size")
        .iter()
        .map(|n| n.as_f64().expect("mm"))
        .collect();
    // Half a line's width hangs over, 0.35 mm are left free.
    assert_relative_eq!(size[0], part.bounds().width() + 0.7, epsilon = 1e-5);
    assert_relative_eq!(size[1], part.bounds().height() + 0.7, epsilon = 1e-5);
    assert_eq!(
        found["view_box"],
        serde_json::json!([0.0, 0.0, size[0], size[1]])
    );
    assert_eq!(found["groups"], serde_json::json!(["CUT", "BEND"]));
    assert_eq!(found["closed_paths"], 1);
    assert_eq!(found["circles"].as_array().map(Vec::len), Some(3));
    assert_eq!(found["texts"], serde_json::json!([]));
}
