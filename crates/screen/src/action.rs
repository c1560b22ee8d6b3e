//! Everything that can be asked for by menu, button or key, in one list.

use egui::{Key, KeyboardShortcut, Modifiers};

use crate::{drawing::Projection, view::Stage};

/// A thing that the user can ask for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Action {
    /// A plain build to begin a vehicle of one's own with.
    New,
    /// Open a build.
    Open,
    /// Save under the name it has.
    Save,
    /// Save under another name.
    SaveAs,
    /// Read points from a table file.
    ImportPoints,
    /// Write points to a table file.
    ExportPoints,
    /// Copy the point table to the clipboard.
    CopyPoints,
    /// Place points from a table on the clipboard.
    PastePoints,
    /// Take the last step back.
    Undo,
    /// Make the undone step again.
    Redo,
    /// Inch or millimetre.
    SwitchUnit,
    /// Light or dark.
    SwitchTheme,
    /// Words and controls a step larger.
    Larger,
    /// Words and controls a step smaller.
    Smaller,
    /// Words and controls as large as usual.
    UsualScale,
    /// Another stage of the job.
    Go(Stage),
    /// Front or rear axle on the table.
    SwitchAxle,
    /// Run the wheel through its travel.
    Play,
    /// Travel and rack back to the design position.
    ResetPose,
    /// Instant-centre lines.
    InstantCentres,
    /// One projection on the whole table, or all three.
    Fill(Projection),
    /// Everything back in sight.
    Fit,
    /// The whole point table.
    PointTable,
    /// Lock or free the selected point.
    LockPoint,
    /// Give the right side its own point, or mirror it again.
    MirrorPoint,
    /// The guided tour, on the demo.
    Tour,
    /// The manual.
    Manual,
    /// The glossary.
    Glossary,
    /// List of shortcuts.
    Shortcuts,
    /// What Trammel is, with its cautions.
    About,
    /// Leave.
    Quit,
}

const COMMAND: Modifiers = Modifiers::COMMAND;
const COMMAND_SHIFT: Modifiers = Modifiers::COMMAND.plus(Modifiers::SHIFT);

impl Action {
    /// All of them, in the order of the shortcut list.
    pub const ALL: [Self; 37] = [
        Self::New,
        Self::Open,
        Self::Save,
        Self::SaveAs,
        Self::ImportPoints,
        Self::ExportPoints,
        Self::CopyPoints,
        Self::PastePoints,
        Self::Undo,
        Self::Redo,
        Self::Go(Stage::LayOut),
        Self::Go(Stage::Tune),
        Self::Go(Stage::Prove),
        Self::Go(Stage::Make),
        Self::Go(Stage::SetUp),
        Self::Play,
        Self::ResetPose,
        Self::PointTable,
        Self::LockPoint,
        Self::MirrorPoint,
        Self::InstantCentres,
        Self::Fill(Projection::Front),
        Self::Fill(Projection::Plan),
        Self::Fill(Projection::Side),
        Self::Fit,
        Self::SwitchAxle,
        Self::SwitchUnit,
        Self::SwitchTheme,
        Self::Larger,
        Self::Smaller,
        Self::UsualScale,
        Self::Tour,
        Self::Manual,
        Self::Glossary,
        Self::Shortcuts,
        Self::About,
        Self::Quit,
    ];

    /// What menus and the shortcut list call it.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::New => "New build",
            Self::Open => "Open…",
            Self::Save => "Save",
            Self::SaveAs => "Save as…",
            Self::ImportPoints => "Points from a CSV file…",
            Self::ExportPoints => "Points to a CSV file…",
            Self::CopyPoints => "Copy point table",
            Self::PastePoints => "Paste point table",
            Self::Undo => "Undo",
            Self::Redo => "Redo",
            Self::SwitchUnit => "Convert between inch and mm",
            Self::SwitchTheme => "Light or dark",
            Self::Larger => "Everything larger",
            Self::Smaller => "Everything smaller",
            Self::UsualScale => "Everything as large as usual",
            Self::Go(Stage::LayOut) => "Stage: lay out",
            Self::Go(Stage::Tune) => "Stage: tune",
            Self::Go(Stage::Prove) => "Stage: prove",
            Self::Go(Stage::Make) => "Stage: make",
            Self::Go(Stage::SetUp) => "Stage: set up",
            Self::SwitchAxle => "Front or rear axle",
            Self::Play => "Run through the travel",
            Self::ResetPose => "Back to the design position",
            Self::InstantCentres => "Instant-centre lines",
            Self::Fill(Projection::Front) => "Front view on the whole table",
            Self::Fill(Projection::Plan) => "Plan on the whole table",
            Self::Fill(Projection::Side) => "Side view on the whole table",
            Self::Fit => "Fit the drawing",
            Self::PointTable => "Points page",
            Self::LockPoint => "Lock or free the selected point",
            Self::MirrorPoint => "Own right-hand point, or mirror again",
            Self::Tour => "Guided tour",
            Self::Manual => "Manual",
            Self::Glossary => "Glossary",
            Self::Shortcuts => "Keys",
            Self::About => "About and cautions",
            Self::Quit => "Quit",
        }
    }

    /// The key that asks for it, if it has one.
    #[must_use]
    pub fn shortcut(self) -> Option<KeyboardShortcut> {
        let (modifiers, key) = match self {
            Self::New => (COMMAND, Key::N),
            Self::Open => (COMMAND, Key::O),
            Self::Save => (COMMAND, Key::S),
            Self::SaveAs => (COMMAND_SHIFT, Key::S),
            Self::Undo => (COMMAND, Key::Z),
            Self::Redo => (COMMAND_SHIFT, Key::Z),
            Self::Quit => (COMMAND, Key::Q),
            Self::SwitchUnit => (Modifiers::NONE, Key::U),
            Self::SwitchTheme => (Modifiers::NONE, Key::D),
            Self::Larger => (COMMAND, Key::Plus),
            Self::Smaller => (COMMAND, Key::Minus),
            Self::UsualScale => (COMMAND, Key::Num0),
            Self::Go(Stage::LayOut) => (Modifiers::NONE, Key::F2),
            Self::Go(Stage::Tune) => (Modifiers::NONE, Key::F3),
            Self::Go(Stage::Prove) => (Modifiers::NONE, Key::F4),
            Self::Go(Stage::Make) => (Modifiers::NONE, Key::F5),
            Self::Go(Stage::SetUp) => (Modifiers::NONE, Key::F6),
            Self::SwitchAxle => (Modifiers::NONE, Key::X),
            Self::Play => (Modifiers::NONE, Key::R),
            Self::ResetPose => (Modifiers::NONE, Key::Num0),
            Self::InstantCentres => (Modifiers::NONE, Key::I),
            Self::Fill(Projection::Front) => (Modifiers::NONE, Key::Num1),
            Self::Fill(Projection::Plan) => (Modifiers::NONE, Key::Num2),
            Self::Fill(Projection::Side) => (Modifiers::NONE, Key::Num3),
            Self::Fit => (Modifiers::NONE, Key::F),
            Self::PointTable => (Modifiers::NONE, Key::T),
            Self::LockPoint => (Modifiers::NONE, Key::L),
            Self::MirrorPoint => (Modifiers::NONE, Key::M),
            Self::Shortcuts => (Modifiers::NONE, Key::F1),
            Self::Manual => (Modifiers::SHIFT, Key::F1),
            Self::Glossary => (Modifiers::NONE, Key::G),
            Self::ImportPoints
            | Self::ExportPoints
            | Self::CopyPoints
            | Self::PastePoints
            | Self::Tour
            | Self::About => return None,
        };
        Some(KeyboardShortcut::new(modifiers, key))
    }

    /// Another key that asks for the same, where keyboards differ: plus is on the key of the equals sign.
    fn other_shortcut(self) -> Option<KeyboardShortcut> {
        (self == Self::Larger).then(|| KeyboardShortcut::new(COMMAND, Key::Equals))
    }

    /// Whether its key works while a number or a name is being typed.
    fn works_while_typing(self) -> bool {
        matches!(
            self,
            Self::New
                | Self::Open
                | Self::Save
                | Self::SaveAs
                | Self::Quit
                | Self::Shortcuts
                | Self::Larger
                | Self::Smaller
                | Self::UsualScale
        )
    }
}

/// The actions whose keys were pressed, taken out of the input. Shortcuts with more modifiers are looked at first.
#[must_use]
pub fn pressed(ctx: &egui::Context) -> Vec<Action> {
    let typing = ctx.text_edit_focused();
    let mut all: Vec<_> = Action::ALL
        .into_iter()
        .flat_map(|a| {
            let keys = a.shortcut().into_iter().chain(a.other_shortcut());
            keys.map(move |s| (a, s))
        })
        .collect();
    all.sort_by_key(|(_, s)| {
        std::cmp::Reverse(u8::from(s.modifiers.shift) + u8::from(s.modifiers.command))
    });
    ctx.input_mut(|input| {
        all.into_iter()
            .filter(|(action, shortcut)| {
                let allowed = !typing || action.works_while_typing();
                allowed && input.consume_shortcut(shortcut)
            })
            .map(|(action, _)| action)
            .collect()
    })
}
