//! Which turns of the upright a map's tie rods ask for, looked for at a few of its places.

use trammel_geometry::Arms;

use super::{rod::Rod, table::Range};
use crate::Stations;

/// Places looked at: corners, middles of the edges, middle.
const PLACES: [(f64, f64); 9] = [
    (0.0, 0.0),
    (-1.0, -1.0),
    (-1.0, 0.0),
    (-1.0, 1.0),
    (0.0, -1.0),
    (0.0, 1.0),
    (1.0, -1.0),
    (1.0, 0.0),
    (1.0, 1.0),
];
/// The range is wider than what was found by this part of it, and by this, rad, at either end.
const MARGIN: f64 = 0.12;
const LEAST_MARGIN: f64 = 2e-3;
/// Newton steps, the longest, and the last one's size, rad: a range needs no more.
const STEPS: usize = 12;
const LONGEST_STEP: f64 = 0.2;
const CLOSE: f64 = 1e-3;
/// Rack positions on the way to the one wanted.
const RACK_STRIDES: usize = 4;

/// A place's tie rod followed from station to station.
#[derive(Clone, Copy)]
struct Follower {
    place: (f64, f64),
    turn: f64,
    near: f64,
    growth_at_design: f64,
}

impl Follower {
    fn new(arms: &Arms, rod: &Rod, place: (f64, f64)) -> Option<Self> {
        let design = arms.stance(0.0, 0.0, 0.0)?;
        let (_, growth_at_design) = rod.at(&design, 0.0, place.0, place.1);
        Some(Self {
            place,
            turn: 0.0,
            near: 0.0,
            growth_at_design,
        })
    }

    /// On to a travel and rack position; `None` when the tie rod gets near a dead point on the way.
    fn on_to(mut self, arms: &Arms, rod: &Rod, travel: f64, rack: f64) -> Option<Self> {
        for _ in 0..STEPS {
            let stance = arms.stance(travel, self.turn, self.near)?;
            let (excess, growth) = rod.at(&stance, rack, self.place.0, self.place.1);
            if !(growth * self.growth_at_design.signum() > 0.05 * self.growth_at_design.abs()) {
                return None;
            }
            let step = excess / growth;
            self.turn -= step.clamp(-LONGEST_STEP, LONGEST_STEP);
            self.near = stance.arm_angle;
            if step.abs() < CLOSE {
                return Some(self);
            }
        }
        None
    }
}

/// The ranges at one rack position: at the design height, and at each travel; `None` where no place of the map could
/// be followed to.
pub(crate) fn ranges(
    arms: &Arms,
    rod: &Rod,
    stations: &Stations,
    rack: f64,
) -> (Option<Range>, Vec<Option<Range>>) {
    let mut at_design: Vec<Follower> = PLACES
        .iter()
        .filter_map(|&p| Follower::new(arms, rod, p))
        .collect();
    if rack != 0.0 {
        for i in 1..=RACK_STRIDES {
            let at = rack * i as f64 / RACK_STRIDES as f64;
            advance(&mut at_design, arms, rod, 0.0, at);
        }
    }
    let travels = stations.travels();
    let below = travels.partition_point(|&t| t < 0.0);
    let follow = |way: &mut dyn Iterator<Item = &f64>| {
        let mut followers = at_design.clone();
        let mut found = Vec::new();
        for &travel in way {
            advance(&mut followers, arms, rod, travel, rack);
            found.push(range_of(&followers, travel, rack));
        }
        found
    };
    let mut all = follow(&mut travels.iter().take(below).rev());
    all.reverse();
    all.extend(follow(&mut travels.iter().skip(below)));
    (range_of(&at_design, 0.0, rack), all)
}

fn advance(followers: &mut Vec<Follower>, arms: &Arms, rod: &Rod, travel: f64, rack: f64) {
    *followers = followers
        .iter()
        .filter_map(|f| f.on_to(arms, rod, travel, rack))
        .collect();
}

fn range_of(followers: &[Follower], travel: f64, rack: f64) -> Option<Range> {
    let first = followers.first()?;
    let (least, most) = followers
        .iter()
        .fold((first.turn, first.turn), |(l, m), f| {
            (l.min(f.turn), m.max(f.turn))
        });
    let margin = MARGIN * (most - least) + LEAST_MARGIN;
    Some(Range {
        travel,
        rack,
        least: least - margin,
        most: most + margin,
        near: first.near,
    })
}
