//! The card for drilling and tapping the rack ends.

use trammel_analysis::rack_end_winding;
use trammel_build::{AxleName, Build, PointName, PointRef, defaults as usual};
use trammel_drawings::table::Table;
use trammel_fabrication::tap_card::{LadderStep, REMINDERS, TapCard};
use trammel_strength::thread::Thread;

use crate::{
    Shop, defaults,
    draft::{Body, Draft, Group, Made, NotMade, file_name},
};

const TITLE: &str = "Rack end: drill and tap";

pub(crate) fn drafts(build: &Build, shop: &Shop) -> Made {
    let fail = |why: String| NotMade::new(TITLE, why);
    let spec = &build.front.rack_end;
    let mm = build.unit.mm();
    let name = spec.thread.as_deref().unwrap_or(usual::THREAD);
    let thread = Thread::find(name).map_err(|e| fail(e.to_string()))?;
    let bar = spec.bar_diameter.map_or(defaults::RACK_BAR, |v| v * mm);
    let asked = spec.engagement.map_or(0.0, |v| v * mm) + rack_end_winding(build);
    let depth = spec
        .bore_depth
        .map_or(asked.max(TapCard::usual_depth(thread)), |v| v * mm);
    let card = TapCard::new(thread, bar, 0.0, depth, LadderStep::Sixteenth)
        .map_err(|e| fail(e.to_string()))?;
    let hard = HardTeeth::of(build, &card);
    let mut taken = Vec::new();
    if spec.thread.is_none() {
        taken.push(format!("No thread is given: {name} taken."));
    }
    if hard.is_none() {
        taken.push("How far the hardened teeth reach is not given, or the rack's face is not: try with a file before the hole goes deeper than the end that was turned.".to_owned());
    }
    if spec.bar_diameter.is_none() {
        taken.push(format!("The rack bar's diameter is not given: {} taken. Measure it: what is left of the wall depends on it.", shop.text(bar)));
    }
    Ok(vec![Draft {
        heed: heed(&card, hard, shop),
        name: file_name(TITLE),
        title: TITLE.to_owned(),
        kind: "work card",
        group: Group::Rack,
        at: None,
        material: spec.bar_grade.clone().unwrap_or_default(),
        quantity: "both rack ends".to_owned(),
        body: Body::Tables(vec![
            figures(&card, hard, shop),
            ladder(&card, shop),
            reminders(&taken),
        ]),
        notes: Vec::new(),
        sawn: Vec::new(),
    }])
}

/// Where the hole ends and where the hardened teeth begin, from the middle of the bar, mm.
#[derive(Clone, Copy)]
struct HardTeeth {
    to: f64,
    hole_to: f64,
}

impl HardTeeth {
    /// Of the left end; the right one is its mirror.
    fn of(build: &Build, card: &TapCard) -> Option<Self> {
        let face = build.point_mm(PointRef::left(AxleName::Front, PointName::RackFace))?;
        let to = build.front.rack_end.hard_to? * build.unit.mm();
        let from_middle = face.y / build.front.rack.direction().y;
        (from_middle.is_finite()).then_some(Self {
            to,
            hole_to: from_middle - card.hole_depth,
        })
    }

    fn reached(self) -> bool {
        self.hole_to < self.to
    }
}

fn heed(card: &TapCard, hard: Option<HardTeeth>, shop: &Shop) -> Vec<String> {
    let mut heed = Vec::new();
    if card.wall < card.least_wall {
        heed.push(format!(
            "TOO THIN: wall around the thread has {}, wanted {}.",
            shop.text(card.wall),
            shop.text(card.least_wall)
        ));
    }
    if let Some(hard) = hard.filter(|h| h.reached()) {
        heed.push(format!(
            "TOO DEEP: the hole ends {} from the middle of the bar, the hardened teeth reach to {}.",
            shop.text(hard.hole_to),
            shop.text(hard.to)
        ));
    }
    heed
}

fn figures(card: &TapCard, hard: Option<HardTeeth>, shop: &Shop) -> Table {
    let mut table = Table::new("What to make", &["Figure", "Value", "From"]);
    let thin = if card.wall < card.least_wall {
        " - TOO THIN"
    } else {
        ""
    };
    let rows = [
        (
            "thread",
            card.thread.designation().to_owned(),
            card.thread.source().to_string(),
        ),
        (
            "tap drill",
            format!(
                "{} = {}",
                card.tap_drill.name,
                shop.style.drill(card.tap_drill.diameter)
            ),
            card.tap_drill.source.to_string(),
        ),
        (
            "part of a full thread",
            format!("{:.0} %", 100.0 * card.fraction_of_thread),
            String::new(),
        ),
        (
            "depth of full thread",
            shop.text(card.full_thread),
            String::new(),
        ),
        (
            "depth of the hole",
            shop.text(card.hole_depth),
            String::new(),
        ),
        (
            "turns of the tap",
            format!("{:.1}", card.turns),
            String::new(),
        ),
        (
            "wall left around the thread",
            format!(
                "{}, wanted {}{thin}",
                shop.text(card.wall),
                shop.text(card.least_wall)
            ),
            String::new(),
        ),
    ];
    for (what, value, from) in rows {
        table.row([what.to_owned(), value, from]);
    }
    if let Some(hard) = hard {
        let deep = if hard.reached() { " - TOO DEEP" } else { "" };
        table.row([
            "hole and hard teeth".to_owned(),
            format!(
                "hole to {}, teeth to {}{deep}",
                shop.text(hard.hole_to),
                shop.text(hard.to)
            ),
            "from the middle of the bar".to_owned(),
        ]);
    }
    table
}

fn ladder(card: &TapCard, shop: &Shop) -> Table {
    let mut table = Table::new(
        "Drills in order, from the solid; start after the bore that is there",
        &["#Step", "Drill", "Diameter", "Done"],
    );
    for (drill, step) in card.ladder.iter().zip(1..) {
        table.row([
            step.to_string(),
            drill.name.clone(),
            shop.style.drill(drill.diameter),
            String::new(),
        ]);
    }
    table
}

fn reminders(taken: &[String]) -> Table {
    let mut table = Table::new("To mind", &["#", "What"]);
    let all = REMINDERS
        .iter()
        .map(|r| (*r).to_owned())
        .chain(taken.iter().cloned());
    for (text, number) in all.zip(1..) {
        table.row([number.to_string(), text]);
    }
    table
}
