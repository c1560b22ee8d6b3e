//! egui's widgets dressed in the tokens.

use egui::{
    Context, CornerRadius, FontId, Margin, Stroke, TextStyle, Theme, Visuals, style::WidgetVisuals,
};

use crate::tokens::Tokens;

/// Sets fonts, spacing and colours. Cheap when nothing changed: call it at the start and when the theme changes.
pub fn apply(ctx: &Context, tokens: &Tokens) {
    let theme = if tokens.dark {
        Theme::Dark
    } else {
        Theme::Light
    };
    ctx.set_theme(theme);
    // The screen has its own keys for it, which keep within what the window holds and are remembered.
    ctx.options_mut(|options| options.zoom_with_keyboard = false);
    ctx.all_styles_mut(|style| {
        style.visuals = visuals(tokens);
        style.text_styles = [
            (TextStyle::Small, FontId::proportional(11.0)),
            (TextStyle::Body, FontId::proportional(13.0)),
            (TextStyle::Button, FontId::proportional(13.0)),
            (TextStyle::Heading, crate::tokens::type_size::head()),
            (TextStyle::Monospace, FontId::proportional(13.0)),
        ]
        .into();
        style.spacing.item_spacing = egui::vec2(8.0, 5.0);
        style.spacing.button_padding = egui::vec2(9.0, 4.0);
        style.spacing.interact_size = egui::vec2(36.0, 24.0);
        style.spacing.menu_margin = Margin::same(8);
        style.interaction.tooltip_delay = 0.35;
        style.url_in_tooltip = false;
    });
}

fn visuals(t: &Tokens) -> Visuals {
    let mut v = if t.dark {
        Visuals::dark()
    } else {
        Visuals::light()
    };
    v.override_text_color = None;
    v.panel_fill = t.panel;
    v.window_fill = t.panel;
    v.window_stroke = Stroke::new(1.0, t.rule);
    v.window_corner_radius = CornerRadius::same(6);
    v.menu_corner_radius = CornerRadius::same(6);
    v.extreme_bg_color = t.table;
    v.text_edit_bg_color = Some(t.table);
    v.faint_bg_color = t.panel_raised.gamma_multiply(0.35);
    v.code_bg_color = t.panel_deep;
    v.hyperlink_color = t.note;
    v.warn_fg_color = t.caution;
    v.error_fg_color = t.danger;
    v.selection.bg_fill = t.panel_raised;
    v.selection.stroke = Stroke::new(1.0, t.accent);
    v.striped = false;
    let dress = |w: &mut WidgetVisuals, fill, stroke, text| {
        w.bg_fill = fill;
        w.weak_bg_fill = fill;
        w.bg_stroke = Stroke::new(1.0, stroke);
        w.fg_stroke = Stroke::new(1.0, text);
        w.corner_radius = CornerRadius::same(5);
        w.expansion = 0.0;
    };
    dress(&mut v.widgets.noninteractive, t.panel, t.rule, t.ink);
    dress(
        &mut v.widgets.inactive,
        t.panel_raised.gamma_multiply(0.55),
        t.rule,
        t.ink,
    );
    dress(&mut v.widgets.hovered, t.panel_raised, t.ink_faint, t.ink);
    dress(&mut v.widgets.active, t.panel_raised, t.accent, t.ink);
    dress(&mut v.widgets.open, t.panel_raised, t.rule, t.ink);
    v
}
