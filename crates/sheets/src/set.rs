//! All sheets of a build.

use trammel_analysis::Caution;
use trammel_build::{AxleName, Build, PointName};
use trammel_drawings::metrics::Metrics;
use trammel_drawings::part;
use trammel_drawings::sheet::{Content, MADE_WITH, Page, Paper, TitleBlock, lay_out};
use trammel_drawings::table::{self, Table};
use trammel_fabrication::flat_part::FlatPart;
use trammel_fabrication::minimums;
use trammel_geometry::ArmName;

use crate::{
    Group, RoundingCost, Shop, arms, cautions, cut_list,
    cut_list::Plates,
    draft::{Body, Draft, Made, NotMade, Sawn},
    fixture, letters, mount, rack_end, rods, rounding,
    rounding::rounding_costs,
    spacers, tabs, tap,
};

/// One part or list on paper.
#[derive(Clone, Debug, PartialEq)]
pub struct Sheet {
    /// Name of its files, without extension; unique in the set.
    pub name: String,
    /// Its title.
    pub title: String,
    /// Where it belongs.
    pub group: Group,
    /// The joint that it is made for.
    pub at: Option<(AxleName, PointName)>,
    /// How many, as its title block says.
    pub quantity: String,
    /// The part for the cutter, where it is a flat one.
    pub part: Option<FlatPart>,
    /// Its lists.
    pub tables: Vec<Table>,
    /// Its pages.
    pub pages: Vec<Page>,
    /// What does not go or is below its least measure, as the sheet says it too.
    pub heed: Vec<String>,
}

/// Everything that is to be made of a build.
#[derive(Clone, Debug)]
pub struct Sheets {
    /// Title of the build.
    pub title: String,
    /// Paper of the pages.
    pub paper: Paper,
    /// In the order of the file.
    pub sheets: Vec<Sheet>,
    /// What could not be made, and why, each a sentence.
    pub not_made: Vec<String>,
    /// What rounding costs at each wheel.
    pub rounding: Vec<RoundingCost>,
    pub(crate) plates: Vec<Plates>,
}

/// Names of the boxes to sign.
const SIGN_OFFS: [&str; 4] = ["Paper measured", "Cut and drilled", "Welded", "Fitted"];
/// The same on lists.
const CHECKED: [&str; 2] = ["Checked by", "On"];

impl Sheets {
    /// Works out every sheet of a build. Takes a tenth of a second: not for every frame.
    #[must_use]
    pub fn of(build: &Build, paper: Paper, metrics: &Metrics) -> Self {
        let shop = Shop::of(build);
        let found = cautions::of(build);
        let costs = rounding_costs(build);
        let (drafts, not_made, plates) = everything(build, &found, &costs, &shop);
        let block = cautions::block(build, found.as_deref().unwrap_or(&[]));
        let on = OnPaper {
            build,
            paper,
            shop: &shop,
            caution: block,
            metrics,
        };
        let numbered = drafts.iter().zip(1..);
        let mut sheets: Vec<Sheet> = numbered
            .map(|(draft, number)| on.sheet(draft.clone(), number))
            .collect();
        if let Some((index, heed)) = letters::lacking(&sheets, metrics)
            && let (Some(sheet), Some(mut draft)) =
                (sheets.get_mut(index), drafts.into_iter().nth(index))
        {
            draft.heed.push(heed);
            *sheet = on.sheet(draft, index as u32 + 1);
        }
        Self {
            title: title(build).to_owned(),
            paper,
            sheets,
            not_made: not_made.iter().map(NotMade::text).collect(),
            rounding: costs.unwrap_or_default(),
            plates,
        }
    }

    /// The sheet of this name.
    #[must_use]
    pub fn sheet(&self, name: &str) -> Option<&Sheet> {
        self.sheets.iter().find(|s| s.name == name)
    }
}

fn title(build: &Build) -> &str {
    if build.title.is_empty() {
        "Untitled build"
    } else {
        &build.title
    }
}

/// All drafts in order, what could not be made, and flat parts on plates.
fn everything(
    build: &Build,
    found: &Result<Vec<Caution>, String>,
    costs: &Result<Vec<RoundingCost>, String>,
    shop: &Shop,
) -> (Vec<Draft>, Vec<NotMade>, Vec<Plates>) {
    let axles: Vec<AxleName> = [AxleName::Front, AxleName::Rear]
        .into_iter()
        .filter(|axle| build.axle_spec(*axle).is_some())
        .collect();
    let mut all = Gathered::default();
    for axle in &axles {
        for point in tabs::tab_points(build, *axle) {
            all.take(tabs::drafts(build, *axle, point, shop));
        }
    }
    all.take(rack_end::drafts(build, shop));
    all.take(tap::drafts(build, shop));
    all.take(mount::drafts(build, shop));
    for axle in &axles {
        all.take(rods::drafts(build, *axle, shop));
        for arm in [ArmName::Upper, ArmName::Lower] {
            all.take(arms::drafts(build, *axle, arm, shop));
        }
    }
    all.take(spacers::drafts(build, &axles, shop));
    let sawn: Vec<Sawn> = all.drafts.iter().flat_map(|d| d.sawn.clone()).collect();
    let flat: Vec<FlatPart> = all
        .drafts
        .iter()
        .filter_map(|d| match &d.body {
            Body::Flat(part) => Some(part.as_ref().clone()),
            _ => None,
        })
        .collect();
    let plates = cut_list::on_plates(&flat, shop);
    all.take(fixture::drafts(build, &axles, shop));
    all.take(cut_list::drafts(&sawn, &plates, shop));
    all.take(cautions::drafts(build, found));
    all.take(match costs {
        Ok(costs) => rounding::drafts(costs, shop),
        Err(why) => Err(NotMade::new("What rounding costs", why)),
    });
    all.drafts.sort_by_key(|d| d.group);
    (all.drafts, all.not_made, plates)
}

#[derive(Default)]
struct Gathered {
    drafts: Vec<Draft>,
    not_made: Vec<NotMade>,
}

impl Gathered {
    fn take(&mut self, made: Made) {
        match made {
            Ok(drafts) => self.drafts.extend(drafts),
            Err(why) => self.not_made.push(why),
        }
    }
}

/// What turns drafts into pages.
struct OnPaper<'a> {
    build: &'a Build,
    paper: Paper,
    shop: &'a Shop,
    caution: Vec<String>,
    metrics: &'a Metrics,
}

impl OnPaper<'_> {
    fn sheet(&self, mut draft: Draft, number: u32) -> Sheet {
        if let Body::Flat(part) = &draft.body {
            draft.heed.extend(self.too_small(part));
        }
        let pages = self.pages(&draft, &self.block(&draft, number));
        let (part, tables) = match draft.body {
            Body::Flat(part) => (Some(*part), Vec::new()),
            Body::Tables(tables) => (None, tables),
            Body::FullSize(_) | Body::Figure(..) => (None, Vec::new()),
        };
        Sheet {
            name: draft.name,
            title: draft.title,
            group: draft.group,
            at: draft.at,
            quantity: draft.quantity,
            part,
            tables,
            pages,
            heed: draft.heed,
        }
    }

    fn pages(&self, draft: &Draft, block: &TitleBlock) -> Vec<Page> {
        let notes = draft.notes.iter().chain(&draft.heed).cloned().collect();
        let sign_offs: &[&str] = match draft.group {
            Group::Lists => &CHECKED,
            _ => &SIGN_OFFS,
        };
        let around = Content {
            notes,
            caution: self.caution.clone(),
            sign_offs: sign_offs.iter().map(|&name| name.to_owned()).collect(),
            ..Content::default()
        };
        match &draft.body {
            Body::Flat(part) => part::lay_out(
                self.paper,
                block,
                part,
                self.shop.style,
                &around,
                self.metrics,
            ),
            Body::FullSize(drawing) | Body::Figure(drawing, _) => {
                let content = Content {
                    drawing: drawing.as_ref().clone(),
                    ..around
                };
                lay_out(self.paper, block, &content, self.metrics)
            }
            Body::Tables(tables) => {
                table::lay_out(self.paper, block, tables, &around, self.metrics)
            }
        }
    }

    /// Measures below the least that is wanted, each with its source.
    fn too_small(&self, part: &FlatPart) -> Vec<String> {
        let below = minimums::check(part).into_iter().filter(|m| !m.holds());
        let text = |m: minimums::MinimumCheck| {
            format!(
                "TOO SMALL: {} has {}, least {} ({}).",
                m.what.word(),
                self.shop.text(m.value),
                self.shop.text(m.least),
                m.source
            )
        };
        let mut said: Vec<String> = below.map(text).collect();
        said.dedup();
        said
    }

    fn block(&self, draft: &Draft, number: u32) -> TitleBlock {
        let shop = &self.build.shop;
        let said = |text: &Option<String>| text.clone().unwrap_or_default();
        let material = match &draft.body {
            Body::Flat(part) => format!(
                "{} thick, {}",
                self.shop.text(part.thickness),
                draft.material
            ),
            _ => draft.material.clone(),
        };
        let scale = match &draft.body {
            Body::Flat(_) | Body::FullSize(_) => "1:1",
            Body::Figure(_, scale) => scale,
            Body::Tables(_) => "-",
        };
        TitleBlock {
            owner: said(&shop.owner),
            title: draft.title.clone(),
            supplementary: title(self.build).to_owned(),
            kind: draft.kind.to_owned(),
            number: format!("{number:02}"),
            revision: said(&shop.revision),
            date: said(&shop.issued),
            material,
            quantity: draft.quantity.clone(),
            units: self.shop.style.unit_word().to_owned(),
            scale: scale.to_owned(),
            made_with: MADE_WITH.to_owned(),
            ..TitleBlock::default()
        }
    }
}
