//! Room that is kept while something is worked out, so that what stands below it doesn't move away from under the hand.

use egui::{Id, Ui};

/// Adds what is told; while it is `waiting` it takes no less room than it took when it was last known, and never less than `least`, points.
pub(super) fn steady(
    ui: &mut Ui,
    name: &str,
    waiting: bool,
    least: f32,
    add: impl FnOnce(&mut Ui),
) {
    let id = Id::unique(("steady", name));
    let held = ui.data(|d| d.get_temp::<f32>(id)).unwrap_or_default();
    let taken = ui
        .vertical(|ui| {
            add(ui);
            let taken = ui.min_rect().height();
            let wanted = if waiting { held.max(least) } else { least };
            ui.add_space((wanted - taken).max(0.0));
            taken
        })
        .inner;
    if !waiting {
        ui.data_mut(|d| d.insert_temp(id, taken));
    }
}
