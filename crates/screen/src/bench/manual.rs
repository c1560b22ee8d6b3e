//! The manual, read in the window: one page for each stage, carried in the program.

use egui::{Label, RichText, ScrollArea, Ui};

use super::{
    dialogs::heading,
    help::{reading_height, turn_pages},
};
use crate::{
    tokens::{Tokens, type_size},
    view::Stage,
};

/// The page that is read.
#[derive(Clone, Copy, Debug)]
pub(super) struct Reading {
    stage: Stage,
}

impl From<Stage> for Reading {
    fn from(stage: Stage) -> Self {
        Self { stage }
    }
}

/// The text of a stage's page.
fn page(stage: Stage) -> &'static str {
    match stage {
        Stage::LayOut => include_str!("../../../../assets/manual/lay-out.md"),
        Stage::Tune => include_str!("../../../../assets/manual/tune.md"),
        Stage::Prove => include_str!("../../../../assets/manual/prove.md"),
        Stage::Make => include_str!("../../../../assets/manual/make.md"),
        Stage::SetUp => include_str!("../../../../assets/manual/set-up.md"),
    }
}

/// A page of the manual; whether it was closed.
pub(super) fn ui(ui: &mut Ui, reading: &mut Reading, tokens: &Tokens) -> bool {
    heading(ui, "Manual");
    ui.horizontal(|ui| {
        for stage in Stage::ALL {
            let chosen = reading.stage == stage;
            let tab = ui.selectable_label(chosen, stage.label());
            let name = format!("Manual: {}", stage.label());
            tab.widget_info(|| egui::WidgetInfo::selected(egui::Role::Tab, true, chosen, &name));
            if tab.clicked() {
                reading.stage = stage;
            }
        }
    });
    ui.add_space(4.0);
    let height = reading_height(ui);
    ScrollArea::vertical()
        .id_salt(("manual", reading.stage))
        .min_scrolled_height(height)
        .max_height(height)
        .auto_shrink(false)
        .show(ui, |ui| {
            turn_pages(ui, height);
            for block in blocks(page(reading.stage)) {
                show(ui, &block, tokens);
            }
        });
    ui.add_space(6.0);
    let mut close = false;
    ui.horizontal(|ui| {
        close = ui.button("Close").clicked();
        let text = "PageUp and PageDown turn the pages. Every term stands in Help, Glossary.";
        ui.label(RichText::new(text).small().color(tokens.ink_soft));
    });
    close
}

/// A piece of a page.
#[derive(Debug, PartialEq, Eq)]
enum Block {
    Title(String),
    Head(String),
    /// An item of a list, with its number if it has one.
    Item(String, String),
    Text(String),
}

fn show(ui: &mut Ui, block: &Block, tokens: &Tokens) {
    match block {
        Block::Title(text) => {
            ui.label(RichText::new(text).font(type_size::figure()));
            ui.add_space(2.0);
        }
        Block::Head(text) => {
            ui.add_space(5.0);
            ui.label(
                RichText::new(text)
                    .font(type_size::head())
                    .color(tokens.accent),
            );
        }
        Block::Item(mark, text) => {
            ui.horizontal_top(|ui| {
                ui.add_sized([18.0, 18.0], Label::new(mark.as_str()));
                ui.vertical(|ui| ui.add(Label::new(text).wrap()));
            });
        }
        Block::Text(text) => {
            ui.add(Label::new(text).wrap());
            ui.add_space(3.0);
        }
    }
}

/// The pieces of a page: titles, heads, lists and paragraphs are all that its pages use. Pictures are for those who read it elsewhere.
fn blocks(page: &str) -> Vec<Block> {
    let mut blocks: Vec<Block> = Vec::new();
    let mut goes_on = false;
    for line in page.lines().map(str::trim) {
        if line.is_empty() || line.starts_with("![") {
            goes_on = false;
            continue;
        }
        let text = plain(line);
        if let Some(head) = text.strip_prefix("## ") {
            blocks.push(Block::Head(head.to_owned()));
            goes_on = false;
        } else if let Some(title) = text.strip_prefix("# ") {
            blocks.push(Block::Title(title.to_owned()));
            goes_on = false;
        } else if let Some((mark, item)) = item(&text) {
            blocks.push(Block::Item(mark, item.to_owned()));
            goes_on = true;
        } else if let (true, Some(Block::Item(_, so_far) | Block::Text(so_far))) =
            (goes_on, blocks.last_mut())
        {
            so_far.push(' ');
            so_far.push_str(&text);
        } else {
            blocks.push(Block::Text(text));
            goes_on = true;
        }
    }
    blocks
}

/// The mark and the text of an item of a list.
fn item(line: &str) -> Option<(String, &str)> {
    if let Some(text) = line.strip_prefix("- ") {
        return Some(("•".to_owned(), text));
    }
    let (number, text) = line.split_once(". ")?;
    let is_number = !number.is_empty() && number.chars().all(|c| c.is_ascii_digit());
    is_number.then(|| (format!("{number}."), text))
}

/// A line without the signs of links, emphasis and code.
fn plain(line: &str) -> String {
    let mut text = String::new();
    let mut rest = line;
    while let Some((before, after)) = rest.split_once('[') {
        text.push_str(before);
        match after
            .split_once("](")
            .and_then(|(word, link)| Some((word, link.split_once(')')?.1)))
        {
            Some((word, tail)) => {
                text.push_str(word);
                rest = tail;
            }
            None => {
                text.push('[');
                rest = after;
            }
        }
    }
    text.push_str(rest);
    text.replace("**", "").replace(['`', '*'], "")
}

#[cfg(test)]
mod tests {
    use super::{Block, blocks, page, plain};
    use crate::view::Stage;

    #[test]
    fn a_page_is_read_into_its_pieces() {
        let text = "# A\n\nOne [toe](glossary.md#toe)\ntwo.\n![x](y.png)\n\n## B\n1. first\n   more\n- **item**\n";
        let expected = [
            Block::Title("A".into()),
            Block::Text("One toe two.".into()),
            Block::Head("B".into()),
            Block::Item("1.".into(), "first more".into()),
            Block::Item("•".into(), "item".into()),
        ];
        assert_eq!(blocks(text), expected);
        assert_eq!(plain("an [open bracket"), "an [open bracket");
    }

    #[test]
    fn every_stage_has_a_page_with_its_four_parts() {
        for stage in Stage::ALL {
            let heads: Vec<String> = blocks(page(stage))
                .into_iter()
                .filter_map(|b| match b {
                    Block::Head(head) => Some(head),
                    _ => None,
                })
                .collect();
            for wanted in [
                "What it shows",
                "The usual work",
                "What the figures mean",
                "What it does not do",
            ] {
                assert!(heads.iter().any(|h| h == wanted), "{stage:?}: {wanted}");
            }
        }
    }
}
