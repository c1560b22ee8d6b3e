//! The card for drilling and tapping the rack ends.

use trammel_analysis::rack_end_winding;
use trammel_build::{Build, defaults as usual};
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
    let mut taken = Vec::new();
    if spec.thread.is_none() {
        taken.push(format!("No thread is given: {name} taken."));
    }
    if spec.bar_diameter.is_none() {
        taken.push(format!("The rack bar's diameter is not given: {} taken. Measure it: what is left of the wall depends on it.", shop.text(bar)));
    }
    Ok(vec![Draft {
        heed: Vec::new(),
        name: file_name(TITLE),
        title: TITLE.to_owned(),
        kind: "work card",
        group: Group::Rack,
        at: None,
        material: spec.bar_grade.clone().unwrap_or_default(),
        quantity: "both rack ends".to_owned(),
        body: Body::Tables(vec![
            figures(&card, shop),
            ladder(&card, shop),
            reminders(&taken),
        ]),
        notes: Vec::new(),
        sawn: Vec::new(),
    }])
}

fn figures(card: &TapCard, shop: &Shop) -> Table {
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
