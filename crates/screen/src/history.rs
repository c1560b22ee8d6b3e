//! Undo and redo: named steps, one for each finished change.

use trammel_build::{Build, Edit, EditFault};

/// Steps kept. A build is small; this is hours of work.
const MOST_STEPS: usize = 1000;

/// A finished change: its name and the build as it was before (in the undo list) or after it (in the redo list).
#[derive(Clone, Debug)]
struct Step {
    name: String,
    build: Build,
}

/// A change that is still going on, such as a drag: one undo step however many edits it takes.
#[derive(Clone, Debug)]
struct Transaction {
    name: String,
    before: Build,
}

/// The build being worked on, with its past and its undone future.
#[derive(Clone, Debug)]
pub struct History {
    build: Build,
    done: Vec<Step>,
    undone: Vec<Step>,
    open: Option<Transaction>,
}

impl History {
    /// Starts with a build and no past.
    #[must_use]
    pub fn new(build: Build) -> Self {
        Self {
            build,
            done: Vec::new(),
            undone: Vec::new(),
            open: None,
        }
    }

    /// The build as it is now.
    #[must_use]
    pub fn build(&self) -> &Build {
        &self.build
    }

    /// Makes an edit as one step of its own, or as a part of the transaction that is open.
    ///
    /// # Errors
    /// [`EditFault`]; the build stays as it was.
    pub fn edit(&mut self, edit: &Edit) -> Result<(), EditFault> {
        let next = edit.apply(&self.build)?;
        if next == self.build {
            return Ok(());
        }
        let before = std::mem::replace(&mut self.build, next);
        if self.open.is_none() {
            self.push(edit.name(), before);
        }
        Ok(())
    }

    /// Opens a transaction; edits until [`History::commit`] make one step called `name`.
    pub fn begin(&mut self, name: String) {
        self.commit();
        self.open = Some(Transaction {
            name,
            before: self.build.clone(),
        });
    }

    /// Ends the open transaction and keeps what it did.
    pub fn commit(&mut self) {
        if let Some(t) = self.open.take().filter(|t| t.before != self.build) {
            self.push(t.name, t.before);
        }
    }

    /// Ends the open transaction and puts the build back to where it began.
    pub fn abort(&mut self) {
        if let Some(t) = self.open.take() {
            self.build = t.before;
        }
    }

    /// Whether a transaction is open.
    #[must_use]
    pub fn is_open(&self) -> bool {
        self.open.is_some()
    }

    fn push(&mut self, name: String, before: Build) {
        if self.done.len() == MOST_STEPS {
            self.done.remove(0);
        }
        self.done.push(Step {
            name,
            build: before,
        });
        self.undone.clear();
    }

    /// Takes the last step back; a transaction that is open is given up instead.
    pub fn undo(&mut self) {
        if self.is_open() {
            self.abort();
        } else if let Some(step) = self.done.pop() {
            let after = std::mem::replace(&mut self.build, step.build);
            self.undone.push(Step {
                name: step.name,
                build: after,
            });
        }
    }

    /// Makes the last undone step again.
    pub fn redo(&mut self) {
        self.commit();
        if let Some(step) = self.undone.pop() {
            let before = std::mem::replace(&mut self.build, step.build);
            self.done.push(Step {
                name: step.name,
                build: before,
            });
        }
    }

    /// Name of the step that undo would take back.
    #[must_use]
    pub fn undo_name(&self) -> Option<&str> {
        self.open
            .as_ref()
            .map(|t| t.name.as_str())
            .or_else(|| self.done.last().map(|s| s.name.as_str()))
    }

    /// Name of the step that redo would make again.
    #[must_use]
    pub fn redo_name(&self) -> Option<&str> {
        self.undone.last().map(|s| s.name.as_str())
    }
}
