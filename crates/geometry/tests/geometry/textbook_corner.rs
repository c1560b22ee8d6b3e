//! A published spatial double wishbone with rack and pinion.
//!
//! Hardpoints: G. Rill and A. Arrieta Castro, Road Vehicle Dynamics, 2nd ed., CRC Press 2020, chapter 5, listing "double wishbone, rack and
//! pinion, front axle" (data as printed, in metres there). The results were computed from them by three independent methods that agree to the digits shown.
//! Its camber is top-out positive and taken in the front view; its static values take the spin axis as (0, 1, -0.8 degrees in rad), normalised.

use trammel_geometry::{Corner, Linkage, Point, TieRod, Vector, Wheel};

use crate::corners::{arm, at_arm_angle, carried, linkage, near};

fn corner() -> Corner {
    Corner {
        upper_arm: arm(
            [122.0, 435.0, 230.0],
            [-105.0, 435.0, 196.0],
            [-25.0, 680.0, 162.0],
        ),
        lower_arm: arm(
            [148.0, 320.0, -94.0],
            [-251.0, 320.0, -80.0],
            [13.0, 737.0, -145.0],
        ),
        tie_rod: TieRod {
            inner: Point::new(-150.0, 380.0, -38.0),
            outer: Point::new(-137.0, 690.0, -88.0),
        },
        wheel: Wheel {
            centre: Point::new(0.0, 768.0, 0.0),
            loaded_radius: 285.0,
            toe: 0.0,
            camber: 0.8_f64.to_radians().atan(),
        },
        spring: None,
        rack_axis: Some(Vector::y()),
    }
}

fn front_view_camber(spin: Vector) -> f64 {
    -spin.z.atan2(spin.y).to_degrees()
}

/// Half a unit of the last digit printed: of the degrees, and of the millimetres.
const DEG: f64 = 6e-7;
const MM: f64 = 6e-5;

/// travel, arm angle deg, toe deg, camber deg, wheel centre x and y, x and y of the wheel's own point that is the contact at rest.
const TRAVEL: [[f64; 8]; 15] = [
    [
        -60.0, -8.511558, -0.192331, -0.556595, 3.0395, 751.6916, -7.2907, 754.4236,
    ],
    [
        -50.0, -7.066203, -0.152229, -0.197731, 2.5260, 755.4269, -6.0602, 756.3872,
    ],
    [
        -40.0, -5.633298, -0.116282, 0.098479, 2.0156, 758.7219, -4.8371, 758.2183,
    ],
    [
        -30.0, -4.211460, -0.083677, 0.340541, 1.5079, 761.6058, -3.6204, 759.9047,
    ],
    [
        -25.0, -3.504289, -0.068418, 0.443361, 1.2550, 762.9010, -3.0141, 760.6908,
    ],
    [
        -20.0, -2.799412, -0.053761, 0.534958, 1.0028, 764.1017, -2.4090, 761.4378,
    ],
    [
        -10.0, -1.395963, -0.026009, 0.686775, 0.5002, 766.2281, -1.2024, 762.8114,
    ],
    [0.0, 0.0, 0.0, 0.799948, 0.0, 768.0000, 0.0, 764.0210],
    [
        10.0, 1.389529, 0.024605, 0.877595, -0.4977, 769.4293, 1.1987, 765.0635,
    ],
    [
        20.0, 2.773621, 0.048076, 0.922174, -0.9930, 770.5259, 2.3939, 765.9365,
    ],
    [
        25.0, 3.463928, 0.059455, 0.932681, -1.2398, 770.9518, 2.9903, 766.3088,
    ],
    [
        30.0, 4.153231, 0.070627, 0.935606, -1.4859, 771.2974, 3.5859, 766.6382,
    ],
    [
        40.0, 5.529277, 0.092421, 0.919377, -1.9764, 771.7500, 4.7750, 767.1674,
    ],
    [
        50.0, 6.902648, 0.113586, 0.874596, -2.4644, 771.8883, 5.9612, 767.5232,
    ],
    [
        60.0, 8.274212, 0.134213, 0.802053, -2.9499, 771.7155, 7.1446, 767.7050,
    ],
];

#[test]
fn wheel_travel() {
    let l = linkage(&corner());
    let rest = l.pose(0.0, 0.0).unwrap();
    for [travel, arm_angle, toe, camber, x, y, px, py] in TRAVEL {
        let pose = l.pose(travel, 0.0).unwrap();
        near(pose.arm_angle.to_degrees(), arm_angle, DEG);
        near(l.measures(&pose).toe.to_degrees(), toe, DEG);
        near(front_view_camber(pose.spin_axis), camber, DEG);
        near(pose.wheel_centre.x, x, MM);
        near(pose.wheel_centre.y, y, MM);
        near(pose.wheel_centre.z, travel, 1e-9);
        let p = carried(rest.contact, &rest, &pose);
        near(p.x, px, MM);
        near(p.y, py, MM);
    }
}

#[test]
fn joints_at_the_ends_of_travel() {
    let l = linkage(&corner());
    let joints = |l: &Linkage, travel| {
        let p = l.pose(travel, 0.0).unwrap();
        [p.lower_ball_joint, p.upper_ball_joint, p.tie_rod_outer]
    };
    let droop = [
        [10.8572, 724.1627, -206.0686],
        [-15.8142, 659.8095, 100.6712],
        [-136.8409, 675.2780, -144.8024],
    ];
    let bump = [
        [15.1247, 740.6755, -84.4466],
        [-33.8394, 683.7798, 221.0160],
        [-136.8882, 693.9586, -32.7976],
    ];
    for (travel, wanted) in [(-60.0, droop), (60.0, bump)] {
        for (found, wanted) in joints(&l, travel).iter().zip(wanted) {
            for (f, w) in found.iter().zip(wanted) {
                near(*f, w, MM);
            }
        }
    }
}

#[test]
fn static_values() {
    let l = linkage(&corner());
    let pose = l.pose(0.0, 0.0).unwrap();
    let m = l.measures(&pose);
    near(m.steering_axis_inclination.to_degrees(), 10.518207, DEG);
    near(m.castor.to_degrees(), 7.056096, DEG);
    near(m.mechanical_trail, 30.32555, 6e-6);
    near(m.scrub_radius, 1.03271, 6e-6);
    near(pose.contact.x, 0.0, 1e-12);
    near(pose.contact.y, 764.02104, 6e-6);
    near(pose.contact.z, -284.97222, 6e-6);
}

#[test]
fn rates_at_rest() {
    let l = linkage(&corner());
    let pose = l.pose(0.0, 0.0).unwrap();
    let m = l.measures(&pose);
    near(m.toe_rate.to_degrees() * 1e3, 2.525705, DEG);
    near(m.camber_rate.to_degrees() * 1e3, 9.495071, DEG);
    near(m.roll_centre_height, 86.0131, MM);
    let w = pose.rates.upright;
    let v = pose.rates.wheel_centre + w.cross(&(pose.contact - pose.wheel_centre));
    near(v.y / v.z, 0.11257950, 6e-9);
    near(v.x / v.z, 0.11996893, 6e-9);
}

/// Rack travel, steer deg (left positive), camber deg, with the lower arm held at its design angle.
const RACK: [[f64; 3]; 9] = [
    [-74.5, 39.93620, 10.24724],
    [-53.214286, 24.76238, 5.25735],
    [-31.928571, 13.91801, 2.91413],
    [-10.642857, 4.46747, 1.39093],
    [0.0, 0.0, 0.79995],
    [10.642857, -4.37039, 0.29037],
    [31.928571, -12.96666, -0.53432],
    [53.214286, -21.55332, -1.14026],
    [74.5, -30.30607, -1.53211],
];

#[test]
fn rack_travel_with_the_arm_held() {
    let l = linkage(&corner());
    for [rack, steer, camber] in RACK {
        let pose = at_arm_angle(&l, 0.0, rack);
        // The rack column is rounded to 5e-7 mm; a rack step turns the wheel by half a degree per mm.
        near(l.measures(&pose).steer.to_degrees(), steer, 6e-6);
        near(front_view_camber(pose.spin_axis), camber, 6e-6);
    }
}
