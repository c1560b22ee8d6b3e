//! Every page of every stage, to be turned to by a test.

use trammel_screen::{
    Bench,
    make::MakeNotes,
    prove::settings::ProvePage,
    set_up::settings::SetUpPage,
    tune::settings::TunePage,
    view::{Page, Stage},
};

/// A page of a stage's notebook.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Turn {
    LayOut(Page),
    Tune(TunePage),
    Prove(ProvePage),
    Make(MakeNotes),
    SetUp(SetUpPage),
}

impl Turn {
    pub fn all() -> Vec<Self> {
        (Page::ALL.into_iter().map(Self::LayOut))
            .chain(TunePage::ALL.into_iter().map(Self::Tune))
            .chain(ProvePage::ALL.into_iter().map(Self::Prove))
            .chain(MakeNotes::ALL.into_iter().map(Self::Make))
            .chain(SetUpPage::ALL.into_iter().map(Self::SetUp))
            .collect()
    }

    pub fn to(self, bench: &mut Bench) {
        let stage = match self {
            Self::LayOut(page) => {
                bench.view_mut().page = page;
                Stage::LayOut
            }
            Self::Tune(page) => {
                bench.view_mut().tune.page = page;
                Stage::Tune
            }
            Self::Prove(page) => {
                bench.view_mut().prove.page = page;
                Stage::Prove
            }
            Self::Make(page) => {
                bench.view_mut().make.notes = page;
                Stage::Make
            }
            Self::SetUp(page) => {
                bench.view_mut().set_up.page = page;
                Stage::SetUp
            }
        };
        bench.go(stage);
    }
}
