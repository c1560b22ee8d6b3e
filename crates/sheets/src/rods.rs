//! Tie rods and toe links: the sum that gives the tube's length.

use trammel_build::{AxleName, Build, PointName, Section, defaults as usual};
use trammel_drawings::table::Table;
use trammel_fabrication::stock::{CutPiece, StockSection};
use trammel_fabrication::tie_rod::{Hand, RodEnding, RodTube, rod_tube};
use trammel_strength::thread::Thread;

use crate::{
    Shop, defaults,
    draft::{Body, Draft, Group, Made, NotMade, Sawn, axle_word, file_name},
    tabs::pair,
};

pub(crate) fn drafts(build: &Build, axle: AxleName, shop: &Shop) -> Made {
    let word = match axle {
        AxleName::Front => "tie rod",
        AxleName::Rear => "toe link",
    };
    let title = format!("{} {word}", axle_word(axle));
    let fail = |why: String| NotMade::new(title.clone(), why);
    let rod = Rod::of(build, axle, shop).map_err(fail)?;
    let [left, right] = rod.lengths(build, axle).map_err(fail)?;
    let alike = (left - right).abs() < 1e-9;
    let mut tables = Vec::new();
    let mut sawn = Vec::new();
    let mut per_turn = 0.0;
    for (centres, side, count) in [(left, "left", 1), (right, "right", 1)] {
        if alike && side == "right" {
            continue;
        }
        let tube = rod_tube(centres, &rod.ends, defaults::LEAST_DIAMETERS)
            .map_err(|e| fail(e.to_string()))?;
        per_turn = tube.per_turn;
        let name = if alike {
            title.clone()
        } else {
            format!("{title}, {side}")
        };
        tables.push(sum(&name, &tube, shop));
        tables.push(adjustment(&name, &tube, shop));
        sawn.push(Sawn {
            section: rod.section,
            material: rod.material.clone(),
            piece: CutPiece {
                name,
                length: tube.length,
                count: if alike { 2 } else { count },
            },
        });
    }
    tables.push(rod.notes(per_turn, shop));
    Ok(vec![Draft {
        heed: Vec::new(),
        name: file_name(&title),
        kind: "cut length",
        group: Group::Rods,
        at: None,
        material: rod.material.clone(),
        quantity: if alike {
            "make 2".to_owned()
        } else {
            "1 left, 1 right".to_owned()
        },
        body: Body::Tables(tables),
        notes: Vec::new(),
        sawn,
        title,
    }])
}

struct Rod {
    ends: [RodEnding; 2],
    section: StockSection,
    material: String,
    taken: Vec<String>,
}

impl Rod {
    fn of(build: &Build, axle: AxleName, shop: &Shop) -> Result<Self, String> {
        let spec = build.axle_spec(axle).ok_or("the build has no such axle")?;
        let rod = &spec.parts.tie_rod;
        let mm = build.unit.mm();
        let mut taken = Vec::new();
        let name = rod.thread.as_deref().unwrap_or(defaults::ROD_THREAD);
        let thread = Thread::find(name).map_err(|e| e.to_string())?;
        let major = thread.major_diameter();
        let mut or = |typed: Option<f64>, what: &str, value: f64| {
            typed.map_or_else(
                || {
                    taken.push(format!("{what}: {} taken.", shop.text(value)));
                    value
                },
                |v| v * mm,
            )
        };
        let engaged = or(
            rod.engagement,
            "Thread engaged in each adapter",
            defaults::ENGAGED_PER_THREAD * major,
        );
        let showing = or(
            rod.adjustment,
            "Adjustment each way",
            defaults::ROD_ADJUSTMENT,
        );
        let jam_nut = or(rod.jam_nut, "Jam nut", usual::JAM_NUT_PER_THREAD * major);
        let flange = or(
            rod.adapter_length,
            "What each adapter adds",
            defaults::ADAPTER,
        );
        let mut end = |point: PointName, hand| {
            let joint = spec.parts.joints.get(&point);
            let typed = joint.and_then(|p| p.end.as_ref()?.length);
            let what = format!("{}, ball centre to the end of its shank", point.label());
            let length = or(typed, &what, defaults::SHANK_PER_THREAD * major);
            let thread_length = engaged + jam_nut + showing;
            RodEnding {
                thread,
                hand,
                centre_to_thread: length - thread_length,
                thread_length,
                showing,
                jam_nut,
                flange,
                thread_depth: engaged + showing,
            }
        };
        let ends = [
            end(PointName::TieRodInner, Hand::Right),
            end(PointName::TieRodOuter, Hand::Left),
        ];
        if rod.thread.is_none() {
            taken.push(format!("Thread: {name} taken."));
        }
        let (section, material) =
            stock(rod.tube.as_ref(), defaults::ROD_TUBE, mm, shop, &mut taken)?;
        Ok(Self {
            ends,
            section,
            material,
            taken,
        })
    }

    fn lengths(&self, build: &Build, axle: AxleName) -> Result<[f64; 2], String> {
        let inner =
            pair(build, axle, PointName::TieRodInner).ok_or("the build has no tie rod there")?;
        let outer =
            pair(build, axle, PointName::TieRodOuter).ok_or("the build has no tie rod there")?;
        let [left, right] = [0, 1].map(|side: usize| match (inner.get(side), outer.get(side)) {
            (Some(a), Some(b)) => (b - a).norm(),
            _ => f64::NAN,
        });
        Ok([left, right])
    }

    fn notes(&self, per_turn: f64, shop: &Shop) -> Table {
        let mut table = Table::new("To mind", &["What"]);
        let least = self.ends[0].thread.major_diameter() * defaults::LEAST_DIAMETERS;
        let mut row = |text: String| table.row([text]);
        row("Joints are named by what is wound in: first end = inner joint, right-hand thread; second end = outer joint, left-hand thread.".to_owned());
        row(format!(
            "At least {} of thread has to stay in each adapter: one diameter.",
            shop.text(least)
        ));
        row(format!(
            "A whole turn of the tube changes the length by {}.",
            shop.text(per_turn)
        ));
        row("Winding the rod sets static toe. It does not cure toe change over the travel: the inner joint's place does.".to_owned());
        self.taken.iter().cloned().for_each(row);
        table
    }
}

/// The section and material of a tube, typed or taken.
pub(crate) fn stock(
    tube: Option<&trammel_build::Tube>,
    [diameter, wall]: [f64; 2],
    mm: f64,
    shop: &Shop,
    taken: &mut Vec<String>,
) -> Result<(StockSection, String), String> {
    let material = tube
        .and_then(|t| t.material.clone())
        .unwrap_or_else(|| usual::TUBE_MATERIAL.to_owned());
    let section = match tube.map(|t| t.section) {
        Some(Section::Round(d, wall)) => StockSection::round_tube(d * mm, wall * mm),
        Some(Section::Square(side, wall)) => StockSection::square_tube(side * mm, wall * mm),
        Some(Section::Bar(d)) => StockSection::round_bar(d * mm),
        None => {
            taken.push(format!(
                "No tube is given: {} x {} taken.",
                shop.text(diameter),
                shop.text(wall)
            ));
            StockSection::round_tube(diameter, wall)
        }
    };
    Ok((section.map_err(|e| e.to_string())?, material))
}

fn sum(name: &str, tube: &RodTube, shop: &Shop) -> Table {
    let mut table = Table::new(
        format!("{name}: length of the tube"),
        &["Add, take off", "#Length"],
    );
    for line in &tube.sum {
        if line.length != 0.0 {
            table.row([line.what.clone(), shop.text(line.length)]);
        }
    }
    table.row(["= tube, sawn square".to_owned(), shop.text(tube.length)]);
    table
}

fn adjustment(name: &str, tube: &RodTube, shop: &Shop) -> Table {
    let mut table = Table::new(
        format!("{name}: adjustment at each end"),
        &["End", "#Engaged", "#Inwards", "#Outwards"],
    );
    for (end, word) in tube
        .adjustment
        .iter()
        .zip(["first, inner", "second, outer"])
    {
        let low = if end.outwards < 0.0 {
            " - TOO LITTLE THREAD"
        } else {
            ""
        };
        table.row([
            word.to_owned(),
            shop.text(end.engaged),
            shop.text(end.inwards),
            format!("{}{low}", shop.text(end.outwards)),
        ]);
    }
    table
}
