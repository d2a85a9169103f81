//! How does a test stand in for the system's file dialog? It answers when it likes, or never.

use layshaft::app::{Answer, FilePicker, Purpose, Wake};
use std::cell::RefCell;
use std::collections::VecDeque;
use std::path::PathBuf;
use std::rc::Rc;

#[derive(Debug, Default)]
struct Script {
    asked: Vec<(Purpose, Option<PathBuf>)>,
    answers: VecDeque<Answer>,
    shows_nothing: bool,
}

/// A file dialog without a window; its clones share one script.
#[derive(Debug, Clone, Default)]
pub(crate) struct ScriptedPicker(Rc<RefCell<Script>>);

impl ScriptedPicker {
    /// From now on no dialog can be shown: each call is answered at once, with nothing.
    pub(crate) fn show_nothing(&self) {
        self.0.borrow_mut().shows_nothing = true;
    }

    /// How often a dialog was wanted.
    pub(crate) fn calls(&self) -> u64 {
        self.0.borrow().asked.len() as u64
    }

    /// What the last dialog was wanted for, and what was suggested.
    pub(crate) fn last_asked(&self) -> (Purpose, Option<PathBuf>) {
        let script = self.0.borrow();
        script.asked.last().expect("nothing was asked").clone()
    }

    /// Answers the last call: this file was chosen, or none.
    pub(crate) fn answer(&self, path: Option<PathBuf>) {
        self.answer_to(self.calls(), path);
    }

    /// Answers an earlier call, counted from 1.
    pub(crate) fn answer_to(&self, request: u64, path: Option<PathBuf>) {
        self.0.borrow_mut().answers.push_back(Answer {
            request,
            path,
            was_unseen: false,
        });
    }
}

impl FilePicker for ScriptedPicker {
    fn start(&mut self, purpose: Purpose, suggested: Option<PathBuf>, _wake: Wake) -> u64 {
        let mut script = self.0.borrow_mut();
        script.asked.push((purpose, suggested));
        let request = script.asked.len() as u64;
        if script.shows_nothing {
            script.answers.push_back(Answer {
                request,
                path: None,
                was_unseen: true,
            });
        }
        request
    }

    fn poll(&mut self) -> Option<Answer> {
        self.0.borrow_mut().answers.pop_front()
    }
}
