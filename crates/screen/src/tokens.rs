//! Colours, line weights and sizes: the only place where they are written down.
//!
//! Member colours are from the Okabe-Ito set (M. Okabe and K. Ito, Color Universal Design, 2008), which colour-blind readers tell apart;
//! shape and word always say the same thing as colour. On paper they are darkened until they can be read; `tests/legible` holds every pair that must be
//! told apart against three kinds of colour blindness, and every text against its ground.

use egui::{Color32, FontId};
use trammel_build::PointName;

/// Everything that is painted takes its look from here.
#[derive(Clone, Debug, PartialEq)]
pub struct Tokens {
    /// Dark or light.
    pub dark: bool,
    /// The marking-out table: background of the drawing and of plots.
    pub table: Color32,
    /// Grid scribed faintly on the table.
    pub grid: Color32,
    /// Every so many lines of it, a little stronger.
    pub grid_bold: Color32,
    /// Background of strips and the notebook.
    pub panel: Color32,
    /// Background of the caution panel.
    pub panel_deep: Color32,
    /// A chosen row or field.
    pub panel_raised: Color32,
    /// Hairlines between panels.
    pub rule: Color32,
    /// Main text and solid scribed lines.
    pub ink: Color32,
    /// Second text.
    pub ink_soft: Color32,
    /// What is taken where a field is empty, written in it.
    pub ink_hint: Color32,
    /// Projection lines, centre lines, ghosts; never words.
    pub ink_faint: Color32,
    /// The one accent.
    pub accent: Color32,
    /// Text on the accent.
    pub on_accent: Color32,
    /// Upper arm.
    pub upper_arm: Color32,
    /// Lower arm.
    pub lower_arm: Color32,
    /// Tie rod and toe curve.
    pub tie_rod: Color32,
    /// Spring unit.
    pub spring: Color32,
    /// Rack, upright, wheel.
    pub steel: Color32,
    /// Grade danger.
    pub danger: Color32,
    /// Grade caution.
    pub caution: Color32,
    /// Grade note.
    pub note: Color32,
    /// The band within the limit on a plot.
    pub within: Color32,
    /// A sheet of paper, which is white by any light.
    pub paper: Color32,
    /// What is printed on it.
    pub paper_ink: Color32,
}

const fn rgb(hex: u32) -> Color32 {
    Color32::from_rgb((hex >> 16) as u8, (hex >> 8) as u8, hex as u8)
}

impl Tokens {
    /// The light or the dark table.
    #[must_use]
    pub fn of(light: bool) -> Self {
        if light { Self::light() } else { Self::dark() }
    }

    /// The table in layout blue.
    #[must_use]
    pub fn dark() -> Self {
        Self {
            dark: true,
            table: rgb(0x13_2F_4C),
            grid: rgb(0x18_35_53),
            grid_bold: rgb(0x20_40_60),
            panel: rgb(0x0F_22_36),
            panel_deep: rgb(0x0A_18_29),
            panel_raised: rgb(0x24_46_6B),
            rule: rgb(0x2A_4A_6B),
            ink: rgb(0xF2_F6_FA),
            ink_soft: rgb(0xB4_C4_D4),
            ink_hint: rgb(0x86_9F_B8),
            ink_faint: rgb(0x6E_89_A4),
            accent: rgb(0xE3_B5_4C),
            on_accent: rgb(0x14_1C_26),
            upper_arm: rgb(0x2F_C0_94),
            lower_arm: rgb(0x56_B4_E9),
            tie_rod: rgb(0xE6_9F_00),
            spring: rgb(0xE0_93_BE),
            steel: rgb(0xE8_EE_F4),
            danger: rgb(0xFF_7A_4D),
            caution: rgb(0xE3_B5_4C),
            note: rgb(0x7C_C4_F0),
            within: Color32::from_rgba_premultiplied(12, 52, 46, 90),
            paper: rgb(0xFB_FB_F8),
            paper_ink: rgb(0x12_14_18),
        }
    }

    /// The same table on white paper.
    #[must_use]
    pub fn light() -> Self {
        Self {
            dark: false,
            table: rgb(0xFB_FC_FD),
            grid: rgb(0xF0_F3_F7),
            grid_bold: rgb(0xE3_E9_F0),
            panel: rgb(0xF0_F3_F6),
            panel_deep: rgb(0xE4_E9_EF),
            panel_raised: rgb(0xCF_DE_EC),
            rule: rgb(0xC3_CE_D9),
            ink: rgb(0x15_20_2B),
            ink_soft: rgb(0x45_56_67),
            ink_hint: rgb(0x60_70_80),
            ink_faint: rgb(0x8A_99_A8),
            accent: rgb(0x82_55_00),
            on_accent: rgb(0xFF_FF_FF),
            upper_arm: rgb(0x00_7E_5B),
            lower_arm: rgb(0x00_72_B2),
            tie_rod: rgb(0xA0_60_00),
            spring: rgb(0xA8_4C_7F),
            steel: rgb(0x2B_38_45),
            danger: rgb(0xC0_20_20),
            caution: rgb(0x74_50_00),
            note: rgb(0x00_6B_A8),
            within: Color32::from_rgba_premultiplied(0, 22, 16, 30),
            paper: rgb(0xFF_FF_FF),
            paper_ink: rgb(0x12_14_18),
        }
    }

    /// The colour of the member that a point belongs to.
    #[must_use]
    pub fn point(&self, point: PointName) -> Color32 {
        use PointName as P;
        match point {
            P::UpperFrontPivot | P::UpperRearPivot | P::UpperBallJoint => self.upper_arm,
            P::LowerFrontPivot | P::LowerRearPivot | P::LowerBallJoint => self.lower_arm,
            P::TieRodInner | P::TieRodOuter => self.tie_rod,
            P::SpringChassisMount | P::SpringArmMount => self.spring,
            P::WheelCentre | P::RackFace | P::RackBoreMouth => self.steel,
        }
    }

    /// The same colour for what is not at rest: moved members, constructions.
    #[must_use]
    pub fn ghost(&self, colour: Color32) -> Color32 {
        colour.gamma_multiply(if self.dark { 0.62 } else { 0.7 })
    }

    /// A wash of a colour, for halos and backs of labels.
    #[must_use]
    pub fn wash(&self, colour: Color32, strength: f32) -> Color32 {
        colour.gamma_multiply(strength)
    }

    /// A bar of what keeps its limit.
    #[must_use]
    pub fn within_bar(&self) -> Color32 {
        self.wash(self.upper_arm, 0.45)
    }

    /// The colour of a grade.
    #[must_use]
    pub fn grade(&self, grade: trammel_analysis::Grade) -> Color32 {
        match grade {
            trammel_analysis::Grade::Danger => self.danger,
            trammel_analysis::Grade::Caution => self.caution,
            trammel_analysis::Grade::Note => self.note,
        }
    }
}

/// Line weights, points (ISO 128: wide and narrow lines stand two to one).
pub mod weight {
    /// Members at rest.
    pub const WIDE: f32 = 2.4;
    /// Joint symbols, the spring.
    pub const SYMBOL: f32 = 1.5;
    /// Outlines.
    pub const NARROW: f32 = 1.2;
    /// Projection lines, centre lines, grid.
    pub const HAIR: f32 = 0.8;
}

/// Type sizes.
pub mod type_size {
    use super::FontId;

    /// Small labels on drawings and plots.
    #[must_use]
    pub fn small() -> FontId {
        FontId::proportional(11.0)
    }

    /// Running text.
    #[must_use]
    pub fn text() -> FontId {
        FontId::proportional(13.0)
    }

    /// Heads.
    #[must_use]
    pub fn head() -> FontId {
        FontId::new(13.5, bold())
    }

    /// Large figures.
    #[must_use]
    pub fn figure() -> FontId {
        FontId::new(19.0, bold())
    }

    /// The family of the bold cut.
    #[must_use]
    pub fn bold() -> egui::FontFamily {
        egui::FontFamily::Name("bold".into())
    }
}
