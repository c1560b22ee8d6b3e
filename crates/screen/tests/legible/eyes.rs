//! How far colours are apart, to every kind of eye.

use egui::Color32;

/// Red, green and blue as light, 0 to 1.
type Light = [f64; 3];

/// What an eye lacks.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Eye {
    Usual,
    Protanopia,
    Deuteranopia,
    Tritanopia,
}

impl Eye {
    pub const ALL: [Self; 4] = [
        Self::Usual,
        Self::Protanopia,
        Self::Deuteranopia,
        Self::Tritanopia,
    ];

    /// On light, not on sRGB values: G. M. Machado, M. M. Oliveira and L. A. F. Fernandes, "A physiologically-based model for simulation of color
    /// vision deficiency", IEEE Transactions on Visualization and Computer Graphics 15(6), 2009; severity 1.0. Figures from memory; each row adds up
    /// to one, so that grey stays grey.
    #[rustfmt::skip]
    pub fn matrix(self) -> [[f64; 3]; 3] {
        match self {
            Self::Usual => [[1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]],
            Self::Protanopia => [
                [0.152_286, 1.052_583, -0.204_868],
                [0.114_503, 0.786_281, 0.099_216],
                [-0.003_882, -0.048_116, 1.051_998],
            ],
            Self::Deuteranopia => [
                [0.367_322, 0.860_646, -0.227_968],
                [0.280_085, 0.672_501, 0.047_413],
                [-0.011_820, 0.042_940, 0.968_881],
            ],
            Self::Tritanopia => [
                [1.255_528, -0.076_749, -0.178_779],
                [-0.078_411, 0.930_809, 0.147_602],
                [0.004_733, 0.691_367, 0.303_900],
            ],
        }
    }

    fn sees(self, [r, g, b]: Light) -> Light {
        self.matrix()
            .map(|[x, y, z]| (x * r + y * g + z * b).clamp(0.0, 1.0))
    }

    /// Difference of two colours to this eye: CIEDE2000.
    pub fn difference(self, a: Color32, b: Color32) -> f64 {
        ciede2000(lab(self.sees(light(a))), lab(self.sees(light(b))))
    }

    /// Lightness L* to this eye, 0 to 100.
    pub fn lightness(self, colour: Color32) -> f64 {
        lab(self.sees(light(colour)))[0]
    }
}

/// IEC 61966-2-1.
fn light(c: Color32) -> Light {
    [c.r(), c.g(), c.b()].map(|v| {
        let v = f64::from(v) / 255.0;
        if v <= 0.040_45 {
            v / 12.92
        } else {
            ((v + 0.055) / 1.055).powf(2.4)
        }
    })
}

/// Contrast of WCAG 2.2: (lighter + 0.05) over (darker + 0.05) in relative luminance.
pub fn contrast(a: Color32, b: Color32) -> f64 {
    let luminance = |c| {
        let [r, g, b] = light(c);
        0.2126 * r + 0.7152 * g + 0.0722 * b
    };
    let (a, b) = (luminance(a) + 0.05, luminance(b) + 0.05);
    (a / b).max(b / a)
}

/// A translucent colour over another, as the screen blends: premultiplied, in sRGB values.
pub fn over(top: Color32, under: Color32) -> Color32 {
    let left = 1.0 - f64::from(top.a()) / 255.0;
    let mix = |t: u8, u: u8| (f64::from(t) + left * f64::from(u)).round().min(255.0) as u8;
    Color32::from_rgb(
        mix(top.r(), under.r()),
        mix(top.g(), under.g()),
        mix(top.b(), under.b()),
    )
}

/// CIE 1976 L*a*b* under D65.
fn lab([r, g, b]: Light) -> [f64; 3] {
    let x = (0.412_456_4 * r + 0.357_576_1 * g + 0.180_437_5 * b) / 0.950_47;
    let y = 0.212_672_9 * r + 0.715_152_2 * g + 0.072_175 * b;
    let z = (0.019_333_9 * r + 0.119_192 * g + 0.950_304_1 * b) / 1.088_83;
    let f = |t: f64| {
        if t > (6.0_f64 / 29.0).powi(3) {
            t.cbrt()
        } else {
            t / (3.0 * (6.0_f64 / 29.0).powi(2)) + 4.0 / 29.0
        }
    };
    [
        116.0 * f(y) - 16.0,
        500.0 * (f(x) - f(y)),
        200.0 * (f(y) - f(z)),
    ]
}

/// CIEDE2000 (CIE 142-2001; ISO/CIE 11664-6), written out after G. Sharma, W. Wu and E. N. Dalal, Color Research and Application 30(1), 2005.
fn ciede2000([l1, a1, b1]: [f64; 3], [l2, a2, b2]: [f64; 3]) -> f64 {
    let p7 = |c: f64| c.powi(7) / (c.powi(7) + 25.0_f64.powi(7));
    let mean_chroma = 0.5 * (a1.hypot(b1) + a2.hypot(b2));
    let g = 0.5 * (1.0 - p7(mean_chroma).sqrt());
    let (a1, a2) = (a1 * (1.0 + g), a2 * (1.0 + g));
    let (c1, c2) = (a1.hypot(b1), a2.hypot(b2));
    let hue = |a: f64, b: f64| {
        if a == 0.0 && b == 0.0 {
            0.0
        } else {
            b.atan2(a).to_degrees().rem_euclid(360.0)
        }
    };
    let (h1, h2) = (hue(a1, b1), hue(a2, b2));
    let grey = c1 * c2 == 0.0;
    let mut dh = if grey { 0.0 } else { h2 - h1 };
    if dh > 180.0 {
        dh -= 360.0;
    } else if dh < -180.0 {
        dh += 360.0;
    }
    let (dl, dc) = (l2 - l1, c2 - c1);
    let dh_big = 2.0 * (c1 * c2).sqrt() * (0.5 * dh).to_radians().sin();
    let (l, c) = (0.5 * (l1 + l2), 0.5 * (c1 + c2));
    let h = if grey {
        h1 + h2
    } else if (h1 - h2).abs() <= 180.0 {
        0.5 * (h1 + h2)
    } else if h1 + h2 < 360.0 {
        0.5 * (h1 + h2 + 360.0)
    } else {
        0.5 * (h1 + h2 - 360.0)
    };
    let cos = |deg: f64| deg.to_radians().cos();
    let t = 1.0 - 0.17 * cos(h - 30.0) + 0.24 * cos(2.0 * h) + 0.32 * cos(3.0 * h + 6.0)
        - 0.20 * cos(4.0 * h - 63.0);
    let turn = 30.0 * (-((h - 275.0) / 25.0).powi(2)).exp();
    let rc = 2.0 * p7(c).sqrt();
    let sl = 1.0 + 0.015 * (l - 50.0).powi(2) / (20.0 + (l - 50.0).powi(2)).sqrt();
    let sc = 1.0 + 0.045 * c;
    let sh = 1.0 + 0.015 * c * t;
    let rt = -(2.0 * turn).to_radians().sin() * rc;
    let (x, y, z) = (dl / sl, dc / sc, dh_big / sh);
    (x * x + y * y + z * z + rt * y * z).max(0.0).sqrt()
}

#[test]
fn the_difference_is_that_of_the_published_pairs() {
    // From the table of Sharma, Wu and Dalal, from memory.
    for (a, b, wanted) in [
        ([50.0, 2.6772, -79.7751], [50.0, 0.0, -82.7485], 2.0425),
        ([50.0, 2.5, 0.0], [73.0, 25.0, -18.0], 27.1492),
        ([50.0, 2.5, 0.0], [50.0, 3.2592, 0.3350], 1.0),
        (
            [60.2574, -34.0099, 36.2677],
            [60.4626, -34.1751, 39.4387],
            1.2644,
        ),
        (
            [2.0776, 0.0795, -1.1350],
            [0.9033, -0.0636, -0.5514],
            0.9082,
        ),
    ] {
        let found = ciede2000(a, b);
        assert!((found - wanted).abs() < 1e-4, "{found} for {wanted}");
    }
}

#[test]
fn grey_is_grey_to_every_eye() {
    for eye in Eye::ALL {
        for row in eye.matrix() {
            assert!((row.iter().sum::<f64>() - 1.0).abs() < 2e-6, "{eye:?}");
        }
    }
    assert!((contrast(Color32::WHITE, Color32::BLACK) - 21.0).abs() < 1e-9);
}
