//! A build with the text that it was read from, so that saving disturbs nothing that was not edited.

mod comments;
mod fields;
mod item;
mod layout;
mod load_case_fields;
mod parts_fields;
mod patch;
mod pieces;
mod set_up;
mod shop_fields;

use trammel_build::Build;

pub use layout::write;

use crate::{
    ReadFault,
    read::{ReadBuild, read_with_outline},
    ron_text::Outline,
};

/// A build file's text and the build in it.
#[derive(Clone, Debug)]
pub struct Document {
    text: String,
    build: Build,
    outline: Option<Outline>,
}

impl Document {
    /// Reads a text.
    ///
    /// # Errors
    /// As [`crate::read`].
    pub fn read(text: &str) -> Result<Self, ReadFault> {
        let ReadBuild { build, outline } = read_with_outline(text)?;
        Ok(Self {
            text: text.to_owned(),
            build,
            outline: Some(outline),
        })
    }

    /// A new document in the canonical layout.
    #[must_use]
    pub fn new(build: &Build) -> Self {
        let text = write(build);
        Self {
            outline: Outline::of(&text).ok(),
            text,
            build: build.clone(),
        }
    }

    /// The text.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }

    /// The build in it.
    #[must_use]
    pub fn build(&self) -> &Build {
        &self.build
    }

    /// The text that holds `build`: this very text when nothing was edited; with only the edited values replaced where they stand when that
    /// can be done; otherwise laid out anew, the old text's comments gathered at its end.
    #[must_use]
    pub fn text_for(&self, build: &Build) -> String {
        if *build == self.build {
            return self.text.clone();
        }
        let Some(outline) = &self.outline else {
            return write(build);
        };
        let (old, new) = (fields::whole(&self.build), fields::whole(build));
        let convert = |text: String| {
            let converted = build.unit != self.build.unit && !outline.comments.is_empty();
            if converted {
                comments::with_conversion(&text, self.build.unit.word(), build.unit.word())
            } else {
                text
            }
        };
        patch::patched(&self.text, outline, &old, &new)
            .map(convert)
            // The patched text must hold exactly the edited build; if it does not, the layout gives way.
            .filter(|text| crate::read(text).is_ok_and(|read| read == *build))
            .unwrap_or_else(|| convert(write(build) + &comments::carried(&self.text, outline)))
    }

    /// The document that holds `build`, its text as [`Document::text_for`] makes it.
    #[must_use]
    pub fn with(&self, build: &Build) -> Self {
        let text = self.text_for(build);
        Self {
            outline: Outline::of(&text).ok(),
            text,
            build: build.clone(),
        }
    }
}
