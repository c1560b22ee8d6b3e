//! What sits at a joint: typed in the build, of the table of rod ends, or taken, and then said.

use trammel_analysis::bolt_hole;
use trammel_build::{
    AxleName, AxleSpec, BracketSpec, Build, Ears, JointParts, PointName, defaults as usual,
};
use trammel_fabrication::spacer::pair_gap;
use trammel_strength::rod_end::ListedRodEnd;
use trammel_strength::thread::Thread;

use crate::{Shop, defaults};

/// Bolt, ball and bracket of a joint, mm.
#[derive(Clone, Debug)]
pub(crate) struct Hardware {
    pub thread: Thread,
    pub grade: String,
    pub ball_width: f64,
    pub ball_bore: Option<f64>,
    pub head_diameter: f64,
    pub spacer: f64,
    pub ears: u32,
    pub thickness: f64,
    pub width: f64,
    pub height: f64,
    pub hole: f64,
    /// `3/8-24 bolt, close`.
    pub purpose: String,
    pub edge: f64,
    pub gap: f64,
    pub grip: f64,
    pub boxing: Option<f64>,
    pub weld: f64,
    pub electrode: f64,
    pub material: String,
    /// What was taken, to be said on the sheet.
    pub taken: Vec<String>,
}

impl Hardware {
    /// The joint's hardware.
    ///
    /// # Errors
    /// In words: a name that no table knows, sizes that don't go together.
    pub(crate) fn at(
        build: &Build,
        axle: AxleName,
        point: PointName,
        shop: &Shop,
    ) -> Result<Self, String> {
        let spec = build.axle_spec(axle).ok_or("the build has no such axle")?;
        let parts = spec.parts.joints.get(&point);
        let mm = build.unit.mm();
        let mut taken = Vec::new();
        let thread = thread(parts, spec, point, &mut taken)?;
        let major = thread.major_diameter();
        let bracket = parts.and_then(|p| p.bracket.as_ref());
        let listed = listed(parts)?;
        let ball_width = ball_width(parts, listed, major, mm, shop, &mut taken);
        let end = parts.and_then(|p| p.end.as_ref());
        let head_diameter = end
            .and_then(|e| e.head_diameter)
            .map(|v| v * mm)
            .or(listed.map(ListedRodEnd::head_diameter))
            .unwrap_or(usual::JOINT_HEAD_PER_BOLT * major);
        let bolt = parts.and_then(|p| p.bolt.as_ref());
        let spacer = bolt.and_then(|b| b.spacer).unwrap_or(0.0) * mm;
        let size = Size::of(bracket, usual_width(major), mm, shop, &mut taken);
        let hole = bolt_hole(bracket, thread, mm);
        let pair = pair_gap(
            ball_width,
            spacer,
            defaults::PAIR_PLAY,
            size.thickness,
            defaults::WASHER,
        )
        .map_err(|e| e.to_string())?;
        let gap = bracket.and_then(|b| b.gap).map_or(pair.gap, |v| v * mm);
        Ok(Self {
            grade: bolt
                .and_then(|b| b.grade.clone())
                .unwrap_or_else(|| usual::BOLT_GRADE.to_owned()),
            ball_width,
            ball_bore: listed.map(ListedRodEnd::bore),
            head_diameter,
            spacer,
            ears: ears(bracket),
            thickness: size.thickness,
            width: size.width,
            height: size.height,
            hole: hole.diameter,
            purpose: format!("{} bolt, {}", thread.designation(), hole.fit),
            edge: bracket
                .and_then(|b| b.edge)
                .map_or(size.width / 2.0, |v| v * mm),
            gap,
            grip: pair.grip - pair.gap + gap,
            boxing: bracket.and_then(|b| b.boxing).map(|v| v * mm),
            weld: bracket
                .and_then(|b| b.weld)
                .map_or(usual::WELD_LEG_SHARE * size.thickness, |v| v * mm),
            electrode: bracket
                .and_then(|b| b.electrode)
                .unwrap_or(usual::ELECTRODE_KSI),
            material: bracket
                .and_then(|b| b.material.clone())
                .unwrap_or_else(|| usual::PLATE_MATERIAL.to_owned()),
            thread,
            taken,
        })
    }

    /// What goes through the pair.
    pub(crate) fn mating(&self, shop: &Shop) -> String {
        format!(
            "Bolt {} {}, grip {} with a washer of {} under head and nut.",
            self.thread.designation(),
            self.grade,
            shop.text(self.grip),
            shop.text(defaults::WASHER)
        )
    }
}

/// Width of the bar that a tab is taken from for a bolt of this diameter, mm.
pub(crate) fn usual_width(major: f64) -> f64 {
    if major > defaults::WIDE_FROM {
        defaults::WIDE_TAB_WIDTH
    } else {
        defaults::TAB_WIDTH
    }
}

struct Size {
    thickness: f64,
    width: f64,
    height: f64,
}

impl Size {
    fn of(
        bracket: Option<&BracketSpec>,
        usual: f64,
        mm: f64,
        shop: &Shop,
        taken: &mut Vec<String>,
    ) -> Self {
        if let Some(b) = bracket {
            return Self {
                thickness: b.thickness * mm,
                width: b.width * mm,
                height: b.height * mm,
            };
        }
        taken.push(format!(
            "No bracket is given: flat bar {} x {}, hole {} over the tube's face taken.",
            shop.text(usual),
            shop.text(defaults::TAB_THICKNESS),
            shop.text(defaults::TAB_HEIGHT)
        ));
        Self {
            thickness: defaults::TAB_THICKNESS,
            width: usual,
            height: defaults::TAB_HEIGHT,
        }
    }
}

fn ears(bracket: Option<&BracketSpec>) -> u32 {
    match bracket.and_then(|b| b.ears) {
        Some(Ears::Single) => 1,
        Some(Ears::Double) | None => 2,
    }
}

fn thread(
    parts: Option<&JointParts>,
    spec: &AxleSpec,
    point: PointName,
    taken: &mut Vec<String>,
) -> Result<Thread, String> {
    let typed = parts.and_then(|p| p.bolt.as_ref()?.thread.as_deref());
    let on_rod = matches!(point, PointName::TieRodInner | PointName::TieRodOuter);
    let name = typed.unwrap_or_else(|| {
        let rod = spec
            .parts
            .tie_rod
            .thread
            .as_deref()
            .unwrap_or(defaults::ROD_THREAD);
        let name = if on_rod { rod } else { defaults::BOLT };
        taken.push(format!("No bolt is given: {name} taken."));
        name
    });
    Thread::find(name).map_err(|e| e.to_string())
}

pub(crate) fn listed(parts: Option<&JointParts>) -> Result<Option<&'static ListedRodEnd>, String> {
    let Some(name) = parts.and_then(|p| p.end.as_ref()?.listed.as_deref()) else {
        return Ok(None);
    };
    let wanted = name.trim().to_lowercase();
    let found = ListedRodEnd::all()
        .iter()
        .find(|end| end.name().to_lowercase() == wanted);
    found
        .map(Some)
        .ok_or_else(|| format!("\u{201c}{name}\u{201d} is not in the table of rod ends"))
}

fn ball_width(
    parts: Option<&JointParts>,
    listed: Option<&ListedRodEnd>,
    major: f64,
    mm: f64,
    shop: &Shop,
    taken: &mut Vec<String>,
) -> f64 {
    let typed = parts
        .and_then(|p| p.end.as_ref()?.ball_width)
        .map(|v| v * mm);
    typed
        .or(listed.map(ListedRodEnd::ball_width))
        .unwrap_or_else(|| {
            let width = defaults::BALL_PER_BOLT * major;
            taken.push(format!(
                "No ball or bush width is given: {} taken. Measure yours before you set the gap.",
                shop.text(width)
            ));
            width
        })
}
