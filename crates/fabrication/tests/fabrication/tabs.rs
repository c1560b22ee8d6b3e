use std::f64::consts::PI;

use approx::assert_relative_eq;
use trammel_fabrication::minimums::{Minimum, check};
use trammel_fabrication::plane::{Edge, Point};
use trammel_fabrication::tab::{
    Foot, SADDLE_ACCURACY, Saddle, Tab, TabForm, TabSize, boxing_plate, gusset,
};

/// Half foot 30, hole 40 up, end radius 14: a side runs 48 from the foot's corner (the triple 14, 48, 50).
fn tapered() -> TabSize {
    TabSize {
        form: TabForm::Tapered,
        foot: Foot::Flat,
        foot_width: 60.0,
        height: 40.0,
        lean: 0.0,
        hole: 9.0,
        edge: 14.0,
        thickness: 5.0,
    }
}

#[test]
fn a_tapered_tab_known_by_hand() {
    let part = Tab::new(tapered()).unwrap().part("tab", "M8").unwrap();
    let edges: Vec<Edge> = part.outline.edges().collect();
    assert_eq!(edges.len(), 4);
    assert_relative_eq!(edges[0].length(), 60.0, epsilon = 1e-9);
    assert_relative_eq!(edges[1].length(), 48.0, epsilon = 1e-9);
    assert_relative_eq!(edges[3].length(), 48.0, epsilon = 1e-9);
    let Edge::Arc(end) = edges[2] else {
        panic!("a round end")
    };
    assert_relative_eq!(end.centre, Point::new(0.0, 40.0), epsilon = 1e-9);
    // Each side stands square on the radius that it touches.
    let Edge::Line { from, to } = edges[1] else {
        panic!("a straight side")
    };
    assert_relative_eq!((to - from).dot(&(to - end.centre)), 0.0, epsilon = 1e-6);
    // The round end goes through half a turn less the lean of both sides; by hand: the side's direction from upright is
    // atan(30/40) - asin(14/50).
    let lean = (30.0_f64 / 40.0).atan() - (14.0_f64 / 50.0).asin();
    assert_relative_eq!(end.sweep, PI - 2.0 * lean, epsilon = 1e-9);
    // Area: triangle over the foot, two right triangles 14 x 48, the sector.
    let area = 60.0 * 40.0 / 2.0 + 14.0 * 48.0 + 14.0 * 14.0 / 2.0 * (PI - 2.0 * lean);
    assert_relative_eq!(part.outline.area(), area, epsilon = 1e-6);
    assert_relative_eq!(part.area(), area - PI * 4.5 * 4.5, epsilon = 1e-6);
}

#[test]
fn a_radiused_tab_is_a_rectangle_and_half_a_circle() {
    let size = TabSize {
        form: TabForm::Radiused,
        foot_width: 0.0,
        ..tapered()
    };
    let part = Tab::new(size).unwrap().part("tab", "M8").unwrap();
    assert_relative_eq!(part.outline.area(), 28.0 * 40.0 + PI * 98.0, epsilon = 1e-9);
    assert_relative_eq!(part.bounds().max.y, 54.0, epsilon = 1e-9);
}

#[test]
fn a_coped_foot_lies_on_its_tube() {
    let size = TabSize {
        form: TabForm::Straight,
        foot: Foot::Coped {
            tube_diameter: 50.0,
        },
        foot_width: 40.0,
        ..tapered()
    };
    let part = Tab::new(size).unwrap().part("tab", "M8").unwrap();
    // 15-20-25: the foot's corners lie 25 - 15 = 10 below the tube's crown.
    let Some(Edge::Arc(foot)) = part.outline.edges().next() else {
        panic!("a round foot")
    };
    assert_relative_eq!(foot.centre, Point::new(0.0, -25.0), epsilon = 1e-9);
    assert_relative_eq!(foot.at(0.0), Point::new(-20.0, -10.0), epsilon = 1e-9);
    assert_relative_eq!(foot.at(0.5), Point::new(0.0, 0.0), epsilon = 1e-9);
    assert!(part.outline.contains(Point::new(0.0, 0.1)));
    assert!(
        !part.outline.contains(Point::new(0.0, -0.1)),
        "the tube is free of metal"
    );
}

#[test]
fn a_leaning_tab_keeps_its_edge_distance() {
    let size = TabSize {
        lean: 10.0,
        ..tapered()
    };
    let part = Tab::new(size).unwrap().part("tab", "M8").unwrap();
    assert_relative_eq!(
        part.outline.distance_to(Point::new(10.0, 40.0)),
        14.0,
        epsilon = 1e-9
    );
}

#[test]
fn sizes_that_make_no_tab_are_named() {
    let refused = |size| Tab::new(size).unwrap_err().what;
    assert_eq!(
        refused(TabSize {
            edge: 4.0,
            ..tapered()
        }),
        "the tab's edge distance"
    );
    assert_eq!(
        refused(TabSize {
            foot_width: 20.0,
            ..tapered()
        }),
        "the tab's foot width"
    );
    assert_eq!(
        refused(TabSize {
            height: f64::NAN,
            ..tapered()
        }),
        "the tab's height"
    );
    assert_eq!(
        refused(TabSize {
            lean: 17.0,
            ..tapered()
        }),
        "the tab's foot width"
    );
    let coped = Foot::Coped {
        tube_diameter: 60.0,
    };
    assert_eq!(
        refused(TabSize {
            foot: coped,
            ..tapered()
        }),
        "the tab's foot width"
    );
    let too_tall = TabSize {
        form: TabForm::Radiused,
        height: 4.0,
        ..tapered()
    };
    assert_eq!(refused(too_tall), "the tab's height");
}

#[test]
fn a_tall_tab_is_offered_a_boxing_plate() {
    let noted = |height| {
        let size = TabSize {
            height,
            ..tapered()
        };
        !Tab::new(size)
            .unwrap()
            .part("tab", "M8")
            .unwrap()
            .notes
            .is_empty()
    };
    assert!(!noted(180.0) && noted(181.0), "three widths of 60");
}

#[test]
fn boxing_plate_and_gusset_by_hand() {
    let plate = boxing_plate("box", 30.0, 80.0, 5.0, 3.0).unwrap();
    assert_relative_eq!(plate.area(), 30.0 * 80.0 - 4.0 * 12.5, epsilon = 1e-9);
    let gusset = gusset("gusset", [60.0, 40.0], 6.0, 5.0, 3.0).unwrap();
    // Triangle 5..60 x 5..40 over the rest: 60 x 40 less the outer triangle (55 x 35) / 2 and the inner one 18.
    assert_relative_eq!(
        gusset.area(),
        60.0 * 40.0 - 55.0 * 35.0 / 2.0 - 18.0,
        epsilon = 1e-9
    );
    assert!(boxing_plate("box", 8.0, 80.0, 5.0, 3.0).is_err());
}

#[test]
fn minimums_find_the_hole_too_near_its_edge() {
    let short = |edge| {
        let part = Tab::new(TabSize { edge, ..tapered() })
            .unwrap()
            .part("tab", "M8")
            .unwrap();
        let found = check(&part)
            .into_iter()
            .find(|check| check.what == Minimum::EdgeDistance)
            .unwrap();
        (found.value, found.least, found.holds())
    };
    let (value, least, holds) = short(13.6);
    assert_relative_eq!(value, 13.6, epsilon = 1e-9);
    assert_relative_eq!(least, 13.5);
    assert!(holds && !short(13.4).2);
}

#[test]
fn a_hole_outside_the_outline_has_less_than_no_edge() {
    let mut part = Tab::new(tapered()).unwrap().part("tab", "M8").unwrap();
    part.holes[0].centre = Point::new(0.0, 60.0);
    let found = check(&part);
    assert!(
        found
            .iter()
            .any(|check| check.what == Minimum::EdgeDistance && check.value < 0.0)
    );
}

/// A tab on a tube of 40 mm that runs askew through it.
fn askew(along: f64, up: f64, offset: f64) -> TabSize {
    TabSize {
        form: TabForm::Radiused,
        foot: Foot::Askew(Saddle {
            tube_diameter: 40.0,
            along,
            up,
            offset,
        }),
        ..tapered()
    }
}

/// Every point of the foot's arcs, ten to each; the feet are the edges below the hole that are not upright.
fn foot_points(size: TabSize) -> Vec<Point> {
    let part = Tab::new(size).unwrap().part("tab", "M8").unwrap();
    let arcs = part.outline.edges().filter_map(|edge| match edge {
        Edge::Arc(arc) if arc.centre.y < 20.0 => Some(arc),
        _ => None,
    });
    let points: Vec<Point> = arcs
        .flat_map(|arc| (0..=10).map(move |i| arc.at(f64::from(i) / 10.0)))
        .collect();
    assert!(points.len() > 40);
    points
}

#[test]
fn a_tube_turned_by_sixty_degrees_is_cut_in_an_ellipse_twice_as_wide() {
    // The cut of a cylinder of radius R by a plane 60 degrees off square has the half axes R and R / cos 60 = 2 R.
    let along = 60.0_f64.to_radians().sin();
    for Point { coords: p, .. } in foot_points(askew(along, 0.0, 0.0)) {
        let ellipse = (p.x / 40.0).powi(2) + ((p.y + 20.0) / 20.0).powi(2);
        assert_relative_eq!(ellipse, 1.0, epsilon = 2.0 * SADDLE_ACCURACY / 20.0);
    }
    // Tipped by as much, up is the long way: the ends of the foot drop by 2 (R - sqrt(R^2 - 14^2)).
    let ends = foot_points(askew(0.0, along, 0.0));
    let drop = 2.0 * (20.0 - (400.0_f64 - 196.0).sqrt());
    let least = ends.iter().map(|p| p.y).fold(0.0, f64::min);
    assert_relative_eq!(least, -drop, epsilon = 1e-9);
}

#[test]
fn a_tube_that_runs_straight_through_leaves_the_cope_of_a_circle() {
    let straight = TabSize {
        foot: Foot::Coped {
            tube_diameter: 40.0,
        },
        ..askew(0.0, 0.0, 0.0)
    };
    let area = |size| Tab::new(size).unwrap().part("tab", "M8").unwrap().area();
    assert_relative_eq!(area(straight), area(askew(0.0, 0.0, 0.0)), epsilon = 1e-2);
}

proptest::proptest! {
    #[test]
    fn every_point_of_a_skewed_foot_lies_on_the_tube(
        along in -0.7..0.7_f64, up in -0.6..0.6_f64, offset in -5.0..5.0_f64,
    ) {
        let size = askew(along, up, offset);
        let Foot::Askew(saddle) = size.foot else { panic!("askew") };
        proptest::prop_assume!(saddle.carries(28.0));
        // In space: the middle line through (offset, -rise, 0); the distance from it is the radius.
        let across = (1.0 - along * along - up * up).sqrt();
        let way = nalgebra::Vector3::new(along, up, across);
        let through = nalgebra::Point3::new(offset, -saddle.rise(), 0.0);
        for p in foot_points(size) {
            let from = nalgebra::Point3::new(p.x, p.y, 0.0) - through;
            let distance = from.cross(&way).norm();
            proptest::prop_assert!((distance - 20.0).abs() < 1.5 * SADDLE_ACCURACY, "{distance}");
        }
        proptest::prop_assert!(saddle.at(0.0).abs() < 1e-12);
    }
}

#[test]
fn a_foot_wider_than_its_askew_tube_is_refused() {
    assert!(Tab::new(askew(0.3, 0.0, 8.0)).is_err());
    assert!(Tab::new(askew(1.0, 0.0, 0.0)).is_err());
    assert!(Tab::new(askew(f64::NAN, 0.0, 0.0)).is_err());
}
