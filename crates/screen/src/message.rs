//! One line that is said to the user, above the bottom bar.

use egui::{Align2, Context, RichText, vec2};

use crate::tokens::Tokens;

/// Seconds that a plain remark stays.
const SECONDS: f64 = 6.0;

/// Something said.
#[derive(Clone, Debug, PartialEq)]
pub struct Message {
    /// What.
    pub text: String,
    /// Whether something could not be done. Such a message stays until it is clicked or replaced.
    pub problem: bool,
    /// When it was said, on the window's clock.
    pub since: f64,
}

/// Shows the message over the table; `true` when it is done with.
#[must_use]
pub fn ui(ctx: &Context, message: &Message, tokens: &Tokens, corner: egui::Pos2) -> bool {
    let now = ctx.input(|i| i.time);
    let age = now - message.since;
    let mut done = !message.problem && age > SECONDS;
    if !message.problem && !done {
        ctx.request_repaint_after(std::time::Duration::from_secs_f64(
            (SECONDS - age).max(0.05),
        ));
    }
    egui::Area::new(egui::Id::unique("message"))
        .pivot(Align2::LEFT_BOTTOM)
        .fixed_pos(corner + vec2(12.0, -10.0))
        .order(egui::Order::Foreground)
        .show(ctx, |ui| {
            let edge = if message.problem {
                tokens.danger
            } else {
                tokens.rule
            };
            let frame = egui::Frame::popup(ui.style())
                .fill(tokens.panel)
                .stroke(egui::Stroke::new(1.0, edge));
            frame.show(ui, |ui| {
                ui.set_max_width(520.0);
                ui.horizontal(|ui| {
                    ui.add(egui::Label::new(RichText::new(&message.text)).wrap());
                    if message.problem && ui.small_button("Close").clicked() {
                        done = true;
                    }
                });
            });
        });
    done
}
