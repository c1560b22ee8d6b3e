//! What must be true whatever was done.

use egui::{Key, Modifiers};
use trammel_build::Build;
use trammel_persistence::{Document, read, write};

use crate::{
    common::{Screen, press, seen},
    hand::Hand,
};

/// Holds a bench against what must be true, and remembers where its history began.
pub struct Watch {
    begun: Build,
}

impl Watch {
    pub fn new(screen: &Screen) -> Self {
        Self {
            begun: screen.state().build().clone(),
        }
    }

    /// After every event: with nothing to take back, this is where the history begins.
    pub fn after_event(&mut self, screen: &Screen) {
        if screen.state().undo_name().is_none() {
            self.begun.clone_from(screen.state().build());
        }
    }

    pub fn after_burst(&self, screen: &Screen, when: &str) {
        let bench = screen.state();
        let results = bench.results();
        assert!(
            results.study.is_some() && results.fault.is_none(),
            "{when}: {:?}",
            results.fault
        );
        assert_eq!(
            bench.build().faults(),
            [],
            "{when}: the build is not usable"
        );
        let painted = seen::words(screen);
        assert_eq!(seen::no_number(&painted), None, "{when}");
        let text = write(bench.build());
        assert_eq!(read(&text).as_ref(), Ok(bench.build()), "{when}: read back");
        let text = Document::new(&self.begun).text_for(bench.build());
        assert_eq!(
            read(&text).as_ref(),
            Ok(bench.build()),
            "{when}: read back as edited"
        );
    }

    /// Back to where the history began, and forward again: equal to the last bit.
    pub fn back_and_forth(&mut self, screen: &mut Screen, hand: &mut Hand, when: &str) {
        hand.let_go(screen);
        screen.set_size(egui::vec2(1280.0, 800.0));
        screen.run_steps(2);
        for _ in 0..4 {
            press(screen, Modifiers::NONE, Key::Escape);
            screen.ctx.memory_mut(egui::Memory::stop_text_input);
            self.after_event(screen);
        }
        let end = screen.state().build().clone();
        let mut steps = 0;
        while screen.state().undo_name().is_some() {
            press(screen, Modifiers::COMMAND, Key::Z);
            steps += 1;
            assert!(steps <= 1000, "{when}: undo comes to no end");
        }
        assert_eq!(screen.state().build(), &self.begun, "{when}: the start");
        for _ in 0..steps {
            press(screen, Modifiers::COMMAND.plus(Modifiers::SHIFT), Key::Z);
        }
        assert_eq!(screen.state().build(), &end, "{when}: the end");
    }
}
