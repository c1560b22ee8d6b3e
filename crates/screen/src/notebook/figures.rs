//! Everything of a build that is not a point: wheel, travel, spring, rack, vehicle, hit, limits, title and notes.

use egui::Ui;
use trammel_analysis::Study;
use trammel_build::{
    AxleName, AxleSpec, Edit, HitPoint, LengthUnit, Mass, SpringRate, SpringSpec, TravelSpec,
    defaults,
};
use trammel_geometry::ArmName;

use super::{
    NotebookInput,
    form::{Form, Takes, Typed, word},
};
use crate::{request::Request, view::View};

const DEGREES: Takes = Takes::Number {
    sign: "°",
    default: None,
};

pub(super) fn ui(
    ui: &mut Ui,
    input: &NotebookInput<'_>,
    study: &Study,
    view: &View,
    requests: &mut Vec<Request>,
) {
    let Some(spec) = input.build.axle_spec(view.axle) else {
        return;
    };
    let mut form = Form {
        unit: input.build.unit,
        tokens: input.tokens,
        requests,
    };
    wheel(ui, &mut form, spec, view.axle);
    travel(ui, &mut form, spec, study, view.axle);
    if let Some(spring) = spec.spring {
        spring_unit(ui, &mut form, spring, view.axle);
    }
    if view.axle == AxleName::Front {
        rack(ui, &mut form, spec);
        rack_end(ui, &mut form, spec);
        hit(ui, &mut form, input);
    }
    vehicle(ui, &mut form, input);
    limits(ui, &mut form, input);
    title(ui, &mut form, input);
    notes(ui, input, requests);
}

fn length_or(default_mm: f64) -> Takes {
    Takes::Length {
        default_mm: Some(default_mm),
    }
}

fn number_or(sign: &'static str, default: f64) -> Takes {
    Takes::Number {
        sign,
        default: Some(default),
    }
}

/// A row whose value must be there: the edit made of what was typed.
fn must(typed: Option<Typed>, edit: impl FnOnce(f64) -> Edit, form: &mut Form<'_>) {
    if let Some(Some(v)) = typed {
        form.edit(edit(v));
    }
}

/// A row that may be left out.
fn may(typed: Option<Typed>, edit: impl FnOnce(Option<f64>) -> Edit, form: &mut Form<'_>) {
    if let Some(v) = typed {
        form.edit(edit(v));
    }
}

fn wheel(ui: &mut Ui, form: &mut Form<'_>, spec: &AxleSpec, axle: AxleName) {
    let wheel = spec.wheel;
    form.group(ui, "Wheel", |form, ui| {
        let typed = form.row(
            ui,
            "Loaded radius",
            Some(wheel.loaded_radius),
            Takes::Length { default_mm: None },
            "From the wheel centre to the ground with the vehicle's weight on the tyre.",
        );
        must(
            typed,
            |v| {
                Edit::SetWheel(
                    axle,
                    trammel_build::WheelSpec {
                        loaded_radius: v,
                        ..wheel
                    },
                )
            },
            form,
        );
        let typed = form.row(
            ui,
            "Static toe",
            Some(wheel.toe_deg),
            DEGREES,
            "Of each wheel. Positive: the front of the wheel points in.",
        );
        must(
            typed,
            |v| {
                Edit::SetWheel(
                    axle,
                    trammel_build::WheelSpec {
                        toe_deg: v,
                        ..wheel
                    },
                )
            },
            form,
        );
        let typed = form.row(
            ui,
            "Static camber",
            Some(wheel.camber_deg),
            DEGREES,
            "Negative: the top of the wheel leans in.",
        );
        must(
            typed,
            |v| {
                Edit::SetWheel(
                    axle,
                    trammel_build::WheelSpec {
                        camber_deg: v,
                        ..wheel
                    },
                )
            },
            form,
        );
    });
}

fn travel(ui: &mut Ui, form: &mut Form<'_>, spec: &AxleSpec, study: &Study, axle: AxleName) {
    let now = study.axle(axle).map(|a| a.model.travel);
    let default = |mm: f64| length_or(mm.abs());
    let (bump_mm, droop_mm) = now.map_or(
        (defaults::TRAVEL_EACH_WAY_MM, defaults::TRAVEL_EACH_WAY_MM),
        |t| (t.bump, -t.droop),
    );
    let unit = form.unit;
    let other = move |typed: Option<f64>, mm: f64| typed.unwrap_or(unit.from_mm(mm));
    let help = "Wheel travel between the stops. Left empty, the spring unit's lengths set it, or 3 in each way.";
    form.group(ui, "Travel", |form, ui| {
        let set = |bump: Typed, droop: Typed| {
            let both = bump.is_some() || droop.is_some();
            let spec = TravelSpec {
                bump: other(bump, bump_mm),
                droop: other(droop, droop_mm),
            };
            Edit::SetTravel(axle, both.then_some(spec))
        };
        let (bump, droop) = (spec.travel.map(|t| t.bump), spec.travel.map(|t| t.droop));
        let typed = form.row(ui, "Bump", bump, default(bump_mm), help);
        may(typed, |v| set(v, v.and(droop)), form);
        let typed = form.row(ui, "Droop", droop, default(droop_mm), help);
        may(typed, |v| set(v.and(bump), v), form);
    });
}

fn spring_unit(ui: &mut Ui, form: &mut Form<'_>, spring: SpringSpec, axle: AxleName) {
    let set = move |s: SpringSpec| Edit::SetSpring(axle, Some(s));
    form.group(ui, "Spring unit", |form, ui| {
        word(ui, "Stands on", "The arm that carries the spring unit.");
        ui.horizontal(|ui| {
            for (arm, word) in [(ArmName::Lower, "lower arm"), (ArmName::Upper, "upper arm")] {
                if ui.selectable_label(spring.arm == arm, word).clicked() && spring.arm != arm {
                    form.edit(set(SpringSpec { arm, ..spring }));
                }
            }
        });
        ui.end_row();
        let typed = optional_length(
            form,
            ui,
            "Open length",
            spring.open_length,
            "Between the mounts, fully extended: it sets the droop travel.",
        );
        may(
            typed,
            |v| {
                set(SpringSpec {
                    open_length: v,
                    ..spring
                })
            },
            form,
        );
        let typed = optional_length(
            form,
            ui,
            "Closed length",
            spring.closed_length,
            "Between the mounts, on its bump stop: it sets the bump travel.",
        );
        may(
            typed,
            |v| {
                set(SpringSpec {
                    closed_length: v,
                    ..spring
                })
            },
            form,
        );
        rate(ui, form, spring, set);
    });
}

/// A length that may be left out without any default.
fn optional_length(
    form: &mut Form<'_>,
    ui: &mut Ui,
    label: &str,
    value: Option<f64>,
    help: &str,
) -> Option<Typed> {
    form.row(ui, label, value, Takes::MaybeLength, help)
}

fn rate(ui: &mut Ui, form: &mut Form<'_>, spring: SpringSpec, set: impl Fn(SpringSpec) -> Edit) {
    let (value, sign) = match (spring.rate, form.unit) {
        (Some(SpringRate::PoundsPerInch(v)), _) => (Some(v), "lb/in"),
        (Some(SpringRate::NewtonsPerMillimetre(v)), _) => (Some(v), "N/mm"),
        (None, LengthUnit::Inch) => (None, "lb/in"),
        (None, LengthUnit::Millimetre) => (None, "N/mm"),
    };
    let typed = form.row(
        ui,
        "Spring rate",
        value,
        Takes::MaybeNumber { sign },
        "Force for each inch or millimetre that the spring shortens.",
    );
    let rate = |v: f64| {
        if sign == "lb/in" {
            SpringRate::PoundsPerInch(v)
        } else {
            SpringRate::NewtonsPerMillimetre(v)
        }
    };
    may(
        typed,
        |v| {
            set(SpringSpec {
                rate: v.map(rate),
                ..spring
            })
        },
        form,
    );
}

fn rack(ui: &mut Ui, form: &mut Form<'_>, spec: &AxleSpec) {
    let rack = spec.rack;
    form.group(ui, "Rack", |form, ui| {
        let typed = form.row(
            ui,
            "Travel each way",
            rack.travel,
            length_or(defaults::RACK_TRAVEL_MM),
            "From the centre to either lock.",
        );
        may(
            typed,
            |v| Edit::SetRack(trammel_build::RackSpec { travel: v, ..rack }),
            form,
        );
        let typed = form.row(
            ui,
            "Travel for one turn",
            rack.travel_per_turn,
            length_or(defaults::RACK_TRAVEL_PER_TURN_MM),
            "How far the rack moves for one turn of the pinion.",
        );
        may(
            typed,
            |v| {
                Edit::SetRack(trammel_build::RackSpec {
                    travel_per_turn: v,
                    ..rack
                })
            },
            form,
        );
    });
}

fn rack_end(ui: &mut Ui, form: &mut Form<'_>, spec: &AxleSpec) {
    let end = spec.rack_end.clone();
    let none_if_empty = |t: String| (!t.is_empty()).then_some(t);
    form.group(ui, "Rack end", |form, ui| {
        let shown = end.thread.as_deref().unwrap_or_default();
        if let Some(t) = form.text_row(ui, "Thread", shown, defaults::THREAD, "Such as 1/2-20, 3/8-24 or M12x1.25.") {
            form.edit(Edit::SetRackEnd(trammel_build::RackEndSpec { thread: none_if_empty(t), ..end.clone() }));
        }
        let shown = end.grade.as_deref().unwrap_or_default();
        if let Some(t) = form.text_row(ui, "Grade", shown, defaults::GRADE, "Such as grade 5, grade 8, 8.8 or 10.9.") {
            form.edit(Edit::SetRackEnd(trammel_build::RackEndSpec { grade: none_if_empty(t), ..end.clone() }));
        }
        let typed = optional_length(form, ui, "Thread engaged", end.engagement, "Length of thread inside the rack bar; about one diameter in steel is handbook practice.");
        may(typed, |v| Edit::SetRackEnd(trammel_build::RackEndSpec { engagement: v, ..end.clone() }), form);
        let typed = optional_length(form, ui, "Jam nut", end.jam_nut, "Thickness of the jam nut on the rack end.");
        may(typed, |v| Edit::SetRackEnd(trammel_build::RackEndSpec { jam_nut: v, ..end.clone() }), form);
    });
}

fn hit(ui: &mut Ui, form: &mut Form<'_>, input: &NotebookInput<'_>) {
    let hit = input.build.hit;
    form.group(ui, "Hit on one front wheel", |form, ui| {
        let typed = form.row(ui, "Size", hit.weights, number_or("× vehicle weight", defaults::HIT_WEIGHTS),
            "The force that the rack end is checked against, in weights of the vehicle, straight back unless the file says otherwise.");
        may(typed, |v| Edit::SetHit(trammel_build::Hit { weights: v, ..hit }), form);
        word(ui, "Acts at",
            "A wheel that rolls freely passes no moment about its spin axis, so a hit on the front of the tyre acts through the wheel centre. A braked wheel passes it: the force acts at the ground.",
        );
        ui.horizontal(|ui| {
            let at = hit.at.unwrap_or(HitPoint::WheelCentre);
            for (point, word) in [(HitPoint::WheelCentre, "wheel centre"), (HitPoint::Contact, "ground")] {
                if ui.selectable_label(at == point, word).clicked() && at != point {
                    form.edit(Edit::SetHit(trammel_build::Hit { at: Some(point), ..hit }));
                }
            }
        });
        ui.end_row();
    });
}

fn vehicle(ui: &mut Ui, form: &mut Form<'_>, input: &NotebookInput<'_>) {
    let vehicle = input.build.vehicle;
    form.group(ui, "Vehicle", |form, ui| {
        let typed = form.row(
            ui,
            "Wheelbase",
            vehicle.wheelbase,
            length_or(defaults::WHEELBASE_MM),
            "Between the axles.",
        );
        may(
            typed,
            |v| {
                Edit::SetVehicle(trammel_build::Vehicle {
                    wheelbase: v,
                    ..vehicle
                })
            },
            form,
        );
        mass(ui, form, vehicle);
        let typed = form.row(
            ui,
            "Front share of weight",
            vehicle.front_share,
            number_or("0 to 1", defaults::FRONT_SHARE),
            "Part of the weight on the front axle, driver aboard.",
        );
        may(
            typed,
            |v| {
                Edit::SetVehicle(trammel_build::Vehicle {
                    front_share: v,
                    ..vehicle
                })
            },
            form,
        );
        let typed = form.row(
            ui,
            "Centre-of-gravity height",
            vehicle.centre_of_gravity_height,
            length_or(defaults::CENTRE_OF_GRAVITY_HEIGHT_MM),
            "Above the ground, driver aboard.",
        );
        may(
            typed,
            |v| {
                Edit::SetVehicle(trammel_build::Vehicle {
                    centre_of_gravity_height: v,
                    ..vehicle
                })
            },
            form,
        );
    });
}

fn mass(ui: &mut Ui, form: &mut Form<'_>, vehicle: trammel_build::Vehicle) {
    let in_pounds = match vehicle.mass {
        Some(Mass::Pounds(_)) => true,
        Some(Mass::Kilograms(_)) => false,
        None => form.unit == LengthUnit::Inch,
    };
    let (sign, default) = if in_pounds {
        (
            "lb",
            (defaults::MASS_KG / defaults::KILOGRAMS_PER_POUND).round(),
        )
    } else {
        ("kg", defaults::MASS_KG)
    };
    let value = vehicle.mass.map(|m| match m {
        Mass::Pounds(v) | Mass::Kilograms(v) => v,
    });
    let typed = form.row(
        ui,
        "All-up mass",
        value,
        number_or(sign, default),
        "Vehicle, driver, fuel.",
    );
    let mass = |v: f64| {
        if in_pounds {
            Mass::Pounds(v)
        } else {
            Mass::Kilograms(v)
        }
    };
    may(
        typed,
        |v| {
            Edit::SetVehicle(trammel_build::Vehicle {
                mass: v.map(mass),
                ..vehicle
            })
        },
        form,
    );
}

fn limits(ui: &mut Ui, form: &mut Form<'_>, input: &NotebookInput<'_>) {
    let l = input.build.limits;
    let set = |l: trammel_build::Limits| Edit::SetLimits(l);
    form.group(ui, "Where cautions begin", |form, ui| {
        let typed = form.row(
            ui,
            "Toe change",
            l.toe_change_deg,
            number_or("°", defaults::TOE_CHANGE_LIMIT_DEG),
            "Greatest toe change of a wheel over its travel.",
        );
        may(
            typed,
            |v| {
                set(trammel_build::Limits {
                    toe_change_deg: v,
                    ..l
                })
            },
            form,
        );
        let typed = form.row(
            ui,
            "Tie-rod angle",
            l.tie_rod_angle_deg,
            number_or("°", defaults::TIE_ROD_ANGLE_LIMIT_DEG),
            "Between tie rod and rack.",
        );
        may(
            typed,
            |v| {
                set(trammel_build::Limits {
                    tie_rod_angle_deg: v,
                    ..l
                })
            },
            form,
        );
        let typed = form.row(
            ui,
            "Joint swivel",
            l.joint_angle_deg,
            number_or("°", defaults::JOINT_ANGLE_LIMIT_DEG),
            "What the tie-rod joints can swivel: see their maker's sheet.",
        );
        may(
            typed,
            |v| {
                set(trammel_build::Limits {
                    joint_angle_deg: v,
                    ..l
                })
            },
            form,
        );
        let typed = form.row(
            ui,
            "Rack-end factor",
            l.rack_end_factor,
            number_or("×", defaults::RACK_END_FACTOR),
            "Wanted yield strength over stress in the rack end.",
        );
        may(
            typed,
            |v| {
                set(trammel_build::Limits {
                    rack_end_factor: v,
                    ..l
                })
            },
            form,
        );
        let typed = form.row(
            ui,
            "Lock-over margin",
            l.lock_over_deg,
            number_or("°", defaults::LOCK_OVER_LIMIT_DEG),
            "Least angle between tie rod and steering arm at any travel and lock.",
        );
        may(
            typed,
            |v| {
                set(trammel_build::Limits {
                    lock_over_deg: v,
                    ..l
                })
            },
            form,
        );
    });
}

fn title(ui: &mut Ui, form: &mut Form<'_>, input: &NotebookInput<'_>) {
    form.group(ui, "Build", |form, ui| {
        if let Some(t) = form.text_row(
            ui,
            "Title",
            &input.build.title,
            "",
            "What you call this build.",
        ) {
            form.edit(Edit::SetTitle(t));
        }
    });
}

/// Free text, taken as one step when the typing is finished.
fn notes(ui: &mut Ui, input: &NotebookInput<'_>, requests: &mut Vec<Request>) {
    let label = ui.label("Notes");
    let kept = ui.scope_id().with("notes being typed");
    let mut text = ui
        .data(|d| d.get_temp::<String>(kept))
        .unwrap_or_else(|| input.build.notes.clone());
    let edit = egui::TextEdit::multiline(&mut text)
        .desired_rows(3)
        .desired_width(f32::INFINITY);
    let response = ui.add(edit).labelled_by(label.id);
    if response.lost_focus() {
        ui.data_mut(|d| d.remove::<String>(kept));
        if text != input.build.notes {
            requests.push(Request::Edit(Edit::SetNotes(text)));
        }
    } else if response.has_focus() {
        ui.data_mut(|d| d.insert_temp(kept, text));
    }
}
