//! Karts that were built a little off everywhere, read with noise, and set up round by round.

#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::panic,
    reason = "a test stops where it fails"
)]

use trammel_geometry::{Corner, Linkage, Vector};
use trammel_setup::{
    Adjuster, JointShift, Question, RodThread, Round, ToePoint, ToeReadings, advise, learn,
};
use trammel_tuning::{Spread, Stations, ToeCurves, Tolerance, default_tolerances};

/// How a kart is built, read and judged.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Shop {
    /// Standard deviation of every coordinate, mm.
    pub build: f64,
    /// Standard deviation of one reading of toe, rad.
    pub reading: f64,
    /// Standard deviation of wheel travel, mm.
    pub travel: f64,
    /// Standard deviation of a move as it is made, mm.
    pub moving: f64,
    /// Largest toe change allowed, rad.
    pub limit: f64,
}

/// A stream of standard normal numbers, always the same for a seed (a 64-bit linear congruential generator with Knuth's constants, high
/// bits only, twelve sums).
pub(crate) struct Noise(u64);

impl Noise {
    pub(crate) fn new(seed: u64) -> Self {
        let mut noise = Self(seed.wrapping_mul(0x9E37_79B9_7F4A_7C15) ^ 0x5851_F42D);
        for _ in 0..4 {
            noise.even();
        }
        noise
    }

    fn even(&mut self) -> f64 {
        self.0 = self
            .0
            .wrapping_mul(6_364_136_223_846_793_005)
            .wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }

    pub(crate) fn normal(&mut self) -> f64 {
        (0..12).map(|_| self.even()).sum::<f64>() - 6.0
    }
}

/// 13 stations over 75 mm each way.
pub(crate) fn judged() -> Stations {
    Stations::even(-75.0, 75.0, 13, vec![0.0]).unwrap()
}

/// Rack ends on 1/2-20, washers of 1/16 in under the outer joint, shims of 1/32 in under the rack.
pub(crate) fn adjusters() -> Vec<Adjuster> {
    vec![
        Adjuster::rack_end(1.27, 6.0, 6.0).unwrap(),
        Adjuster::outer_washer(1.5875, Vector::z(), 4, 3).unwrap(),
        Adjuster::rack_shim(0.79375, 4, 4).unwrap(),
    ]
}

pub(crate) const ROD: RodThread = RodThread {
    per_turn: 2.54,
    range: Some((20.0, 20.0)),
};

pub(crate) fn tolerances(build: f64) -> Vec<Tolerance> {
    default_tolerances(Spread::Normal(build))
}

/// A corner off in every coordinate.
pub(crate) fn misbuilt(drawn: &Corner, build: f64, noise: &mut Noise) -> Corner {
    let mut corner = *drawn;
    for t in tolerances(build) {
        *t.coordinate.of(&mut corner) += build * noise.normal();
    }
    corner
}

/// What would be read of a corner over 75 mm each way by 25 mm, with noise in toe, in the zero and in travel.
pub(crate) fn read(truth: &Corner, shop: &Shop, noise: &mut Noise) -> ToeReadings {
    let linkage = Linkage::new(truth).unwrap();
    let zero = shop.reading * noise.normal();
    let mut points = Vec::new();
    for i in (-3..=3).filter(|i| *i != 0) {
        let travel = 25.0 * f64::from(i);
        let really = Stations::new(vec![travel + shop.travel * noise.normal()], vec![0.0]).unwrap();
        let curves = ToeCurves::of(&linkage, &really).unwrap();
        let change = curves.changes().next().unwrap();
        let slope = curves.curves[0].slope;
        points.push(ToePoint {
            rack: 0.0,
            travel,
            change: change + shop.reading * noise.normal() - zero,
            deviation: shop.reading.hypot(shop.travel * slope),
        });
    }
    ToeReadings::new(points, shop.reading).unwrap()
}

/// The largest toe change that a corner really has, rad.
pub(crate) fn largest(corner: &Corner) -> f64 {
    ToeCurves::of(&Linkage::new(corner).unwrap(), &judged())
        .unwrap()
        .score()
        .largest
}

/// The largest toe change of a corner as built and after each of three rounds of reading, learning and moving.
pub(crate) fn rounds(drawn: &Corner, shop: &Shop, seed: u64) -> [f64; 4] {
    let mut noise = Noise::new(seed);
    let truth = misbuilt(drawn, shop.build, &mut noise);
    let tolerances = tolerances(shop.build);
    let stations = judged();
    let mut adjusters = adjusters();
    let (mut told, mut really) = (JointShift::NONE, JointShift::NONE);
    let mut seen: Vec<Round> = Vec::new();
    let mut found = [largest(&truth); 4];
    for slot in found.iter_mut().skip(1) {
        let readings = read(&really.on(&truth), shop, &mut noise);
        seen.push(Round {
            shift: told,
            readings,
        });
        let learned = learn(drawn, &tolerances, &seen).unwrap();
        let question = Question {
            learned: &learned,
            now: told,
            adjusters: &adjusters,
            stations: &stations,
            limit: shop.limit,
            rod: ROD,
        };
        let plan = advise(&question).unwrap().best;
        for m in &plan.moves {
            adjusters[m.adjuster] = adjusters[m.adjuster].after(m.steps);
            let one = adjusters[m.adjuster].one_step(drawn);
            let off = shop.moving * noise.normal() / adjusters[m.adjuster].step();
            told = told.and(&one.times(f64::from(m.steps)));
            really = really.and(&one.times(f64::from(m.steps) + off));
        }
        *slot = largest(&really.on(&truth));
    }
    found
}

/// Share of karts, both sides, within the limit as built and after each round.
pub(crate) fn shares(drawn: &Corner, shop: &Shop, karts: u64) -> [f64; 4] {
    let mut within = [0_u32; 4];
    for kart in 0..karts {
        let left = rounds(drawn, shop, 2 * kart + 1);
        let right = rounds(drawn, shop, 2 * kart + 2);
        for (w, (l, r)) in within.iter_mut().zip(left.iter().zip(&right)) {
            *w += u32::from(l.max(*r) <= shop.limit);
        }
    }
    within.map(|w| f64::from(w) / karts as f64)
}
