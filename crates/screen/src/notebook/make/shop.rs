//! How the shop prints and saws, and the plate under the rack: all that sheets read and no curve does.

use egui::{RichText, Ui};
use trammel_build::{Edit, PartsEdit, RackMount, ShopSpec, Triple};
use trammel_sheets::{Shop, defaults as made};

use super::super::{
    NotebookInput,
    form::{Field, Form, Takes},
    tune::choice,
};
use crate::request::Request;

fn edit(shop: ShopSpec) -> Edit {
    Edit::Parts(PartsEdit::Shop(Box::new(shop)))
}

/// The shop's page.
pub(super) fn ui(ui: &mut Ui, input: &NotebookInput<'_>, requests: &mut Vec<Request>) {
    let shop = &input.build.shop;
    let units = [
        (false, "one", "Lengths in the unit of the step alone"),
        (true, "both", "The other unit in square brackets behind"),
    ];
    let help = "Whether every printed length stands in both units";
    let both = Shop::of(input.build).style.both;
    if let Some(both) = choice(ui, input.tokens, "Units", help, &units, both) {
        requests.push(Request::Edit(edit(ShopSpec {
            both_units: Some(both),
            ..shop.clone()
        })));
    }
    let mut form = Form {
        unit: input.build.unit,
        tokens: input.tokens,
        requests,
    };
    form.group(ui, "Title block", |form, ui| words(form, ui, shop));
    form.group(ui, "Datum of the fixture", |form, ui| {
        form.fields(ui, shop, edit, &datum(shop));
    });
    form.group(ui, "Stock", |form, ui| {
        form.fields(ui, shop, edit, &stock(shop));
    });
    ui.add_space(8.0);
    rack_mount(ui, input, requests);
}

fn words(form: &mut Form<'_>, ui: &mut Ui, shop: &ShopSpec) {
    type Set = fn(&mut ShopSpec, Option<String>);
    let rows: [(&str, &Option<String>, &str, Set); 3] = [
        ("Owner", &shop.owner, "Whose sheets they are.", |s, t| {
            s.owner = t;
        }),
        (
            "Revision",
            &shop.revision,
            "As it is to be printed; the box stays open to write in where it is left empty.",
            |s, t| s.revision = t,
        ),
        (
            "Date of issue",
            &shop.issued,
            "As it is to be printed; no date is taken from the clock, and the box stays open to write in where it is left empty.",
            |s, t| s.issued = t,
        ),
    ];
    for (label, value, help, set) in rows {
        let shown = value.as_deref().unwrap_or_default();
        if let Some(typed) = form.text_row(ui, label, shown, "left open", help) {
            let mut next = shop.clone();
            set(&mut next, (!typed.is_empty()).then_some(typed));
            form.edit(edit(next));
        }
    }
}

fn datum(shop: &ShopSpec) -> [Field<ShopSpec>; 3] {
    fn put(shop: &mut ShopSpec, axis: usize, typed: Option<f64>) {
        let mut datum: Triple = shop.datum.unwrap_or_default();
        if let Some(slot) = datum.get_mut(axis) {
            *slot = typed.unwrap_or(0.0);
        }
        shop.datum = (datum != [0.0; 3]).then_some(datum);
    }
    let [x, y, z] = shop.datum.map_or([None; 3], |d| d.map(Some));
    let takes = Takes::length_or(0.0);
    [
        Field {
            label: "Datum ahead",
            value: x,
            takes,
            help: "Where lengths are measured from on the fixture, such as the table's edge: ahead of the front axle, vehicle axes.",
            set: |s, v| put(s, 0, v),
        },
        Field {
            label: "Datum to the left",
            value: y,
            takes,
            help: "Left of the centre plane; 0 is the centreline.",
            set: |s, v| put(s, 1, v),
        },
        Field {
            label: "Datum above ground",
            value: z,
            takes,
            help: "Such as the table's top.",
            set: |s, v| put(s, 2, v),
        },
    ]
}

fn stock(shop: &ShopSpec) -> [Field<ShopSpec>; 4] {
    let side = |at: usize| shop.plate.and_then(|p| p.get(at).copied());
    [
        Field {
            label: "Bars as bought",
            value: shop.stock_length,
            takes: Takes::length_or(made::STOCK_LENGTH),
            help: "Length of bars and tubes; the cutting plan fills them.",
            set: |s, v| s.stock_length = v,
        },
        Field {
            label: "Saw cut",
            value: shop.kerf,
            takes: Takes::length_or(made::KERF),
            help: "What a saw cut takes.",
            set: |s, v| s.kerf = v,
        },
        Field {
            label: "Plate, length",
            value: side(0),
            takes: Takes::MaybeLength,
            help: "Of the plate that flat parts are nested on; 48 in (1219.2 mm) where both sides are left empty.",
            set: |s, v| s.plate = sides(s, v, 0),
        },
        Field {
            label: "Plate, width",
            value: side(1),
            takes: Takes::MaybeLength,
            help: "24 in (609.6 mm) where both sides are left empty.",
            set: |s, v| s.plate = sides(s, v, 1),
        },
    ]
}

/// Both sides with one of them typed; a side that nobody typed yet is a square's. One emptied empties both.
fn sides(shop: &ShopSpec, typed: Option<f64>, at: usize) -> Option<[f64; 2]> {
    let typed = typed?;
    let mut plate = shop.plate.unwrap_or([typed; 2]);
    if let Some(slot) = plate.get_mut(at) {
        *slot = typed;
    }
    Some(plate)
}

/// The plate that the rack is bolted to.
pub(super) fn rack_mount(ui: &mut Ui, input: &NotebookInput<'_>, requests: &mut Vec<Request>) {
    let mm = input.build.unit.mm();
    let typed = input.build.front.parts.rack_mount.as_ref();
    let usual = || {
        // Rounded far below what a shop can measure, so that a converted length shows no dust.
        let [width, height, thickness, along, across] =
            made::MOUNT.map(|v| (v / mm * 1e6).round() / 1e6);
        RackMount {
            width,
            height,
            thickness,
            along,
            across,
            thread: None,
        }
    };
    let mount = typed.cloned().unwrap_or_else(usual);
    let edit = |m: RackMount| Edit::Parts(PartsEdit::RackMount(Some(Box::new(m))));
    let mut form = Form {
        unit: input.build.unit,
        tokens: input.tokens,
        requests,
    };
    form.group(ui, "Rack mount plate", |form, ui| {
        form.fields(ui, &mount, edit, &plate(&mount));
        let shown = mount.thread.as_deref().unwrap_or_default();
        let help = "Thread of the bolts through the rack's feet.";
        if let Some(typed) = form.text_row(ui, "Mount bolts", shown, made::MOUNT_BOLT, help) {
            let thread = (!typed.is_empty()).then_some(typed);
            form.edit(edit(RackMount {
                thread,
                ..mount.clone()
            }));
        }
    });
    if typed.is_none() {
        let text =
            "None is given: these sizes are taken. Measure the feet of your rack and type them.";
        ui.label(RichText::new(text).small().color(input.tokens.caution));
    } else if ui
        .small_button("Take the usual plate")
        .on_hover_text("Forget the typed plate")
        .clicked()
    {
        requests.push(Request::Edit(Edit::Parts(PartsEdit::RackMount(None))));
    }
}

fn plate(m: &RackMount) -> [Field<RackMount>; 5] {
    let takes = Takes::Length { default_mm: None };
    [
        Field {
            label: "Plate along the rack",
            value: Some(m.width),
            takes,
            help: "Side of the plate along the rack.",
            set: |m, v| m.width = v.unwrap_or(m.width),
        },
        Field {
            label: "Plate across it",
            value: Some(m.height),
            takes,
            help: "Side of the plate across the rack.",
            set: |m, v| m.height = v.unwrap_or(m.height),
        },
        Field {
            label: "Plate thickness",
            value: Some(m.thickness),
            takes,
            help: "Of the plate.",
            set: |m, v| m.thickness = v.unwrap_or(m.thickness),
        },
        Field {
            label: "Holes along the rack",
            value: Some(m.along),
            takes,
            help: "From hole to hole, measured on the feet of your rack.",
            set: |m, v| m.along = v.unwrap_or(m.along),
        },
        Field {
            label: "Holes across it",
            value: Some(m.across),
            takes,
            help: "From hole to hole across the rack.",
            set: |m, v| m.across = v.unwrap_or(m.across),
        },
    ]
}
