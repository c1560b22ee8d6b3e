//! The build's file: opening, saving, unsaved work, recent files.

use std::path::{Path, PathBuf};

use egui::Context;
use trammel_build::Build;

use super::{Bench, dialogs::Dialog};
use crate::{host::{Host, Picked}, request::Request};

/// What the bench starts with.
#[derive(Clone, Debug)]
pub enum Start {
    /// The first demo build.
    Demo,
    /// A demo build by its name.
    NamedDemo(String),
    /// A file.
    File(PathBuf),
}

/// What comes after a question about unsaved work.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Next {
    Open(PathBuf),
    Demo(&'static str),
    Quit,
}

/// Unsaved work of an earlier run.
#[derive(Clone, Debug)]
pub(super) struct Leftover(String);
impl Leftover {
    pub(super) fn title(&self) -> &str { &self.0 }
    pub(super) fn about(&self) -> String { String::new() }
}

pub(super) struct Files { saved: Build, recent: Vec<PathBuf> }

pub(super) fn begin(_host: &dyn Host, _start: Start) -> (Build, Files, Option<Dialog>, Option<String>) {
    let b = trammel_persistence::read(trammel_persistence::demos()[0].text).unwrap();
    (b.clone(), Files { saved: b, recent: vec![] }, None, None)
}

impl Files {
    pub(super) fn differs_from_file(&self, b: &Build) -> bool { *b != self.saved }
    pub(super) fn name(&self) -> Option<String> { None }
    pub(super) fn recent(&self) -> &[PathBuf] { &self.recent }
    pub(super) fn folder(&self) -> Option<PathBuf> { None }
}
impl Bench {
    pub(super) fn files_before_frame(&mut self, ctx: &Context, _r: &mut Vec<Request>) { if let Some(p) = self.host.answer() { self.picked(ctx, match p { Picked::Path(p) => Some(p), Picked::Nothing => None }); } }
    pub(super) fn save(&mut self, _c: &Context) {}
    pub(super) fn suggested_path(&self) -> String { String::new() }
    pub(super) fn suggested_table_path(&self) -> String { String::new() }
    pub(super) fn copy_points(&mut self, _c: &Context) {}
    pub(super) fn paste_points(&mut self, _c: &Context, _t: &str) {}
    pub(super) fn ask_then(&mut self, _c: &Context, _n: Next) {}
    pub(super) fn go_on(&mut self, _c: &Context, _n: Next) {}
    pub(super) fn save_then(&mut self, _c: &Context, _n: Next) {}
    pub(super) fn save_over(&mut self, _c: &Context, _p: &Path) {}
    pub(super) fn recover(&mut self, _c: &Context, _l: &Leftover) {}
    pub(super) fn discard(&mut self, _l: &[Leftover]) {}
    pub(super) fn path_given(&mut self, _c: &Context, _w: super::dialogs::PathFor, _p: PathBuf) {}
}
