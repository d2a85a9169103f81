//! Opens the dialogs in which something is found for a set, and takes over what was found.

use super::dialogs::Dialog;
use super::dialogs::finders::{
    CountDialog, FillDialog, Finder, FinderAnswer, PairDialog, Taken, WishDialog,
};
use super::window::App;
use crate::project::{Edit, SetEdit};
use std::sync::Arc;

impl App {
    /// Opens the dialog in which that is found.
    pub(super) fn find(&mut self, finder: Finder) {
        let desk = self.desk();
        let texts = self.view.finders.clone();
        self.dialog = Some(match finder {
            Finder::Wish(set, at) => {
                Dialog::Wish(Box::new(WishDialog::over(desk, (set, at), texts.wish)))
            }
            Finder::Pair(set, spot) => {
                Dialog::Pair(Box::new(PairDialog::over(desk, (set, spot), texts.pair)))
            }
            Finder::Fill(set) => Dialog::Fill(Box::new(FillDialog::over(desk, set, texts.fill))),
        });
    }

    /// Opens the dialog in which what is fitted is counted.
    pub(super) fn count(&mut self) {
        let texts = self.view.finders.count.clone();
        self.dialog = Some(Dialog::Count(Box::new(CountDialog { texts })));
    }

    /// Goes on with a dialog, or does what was answered.
    pub(super) fn after_finding(&mut self, answer: Option<FinderAnswer>, dialog: Dialog) {
        match answer {
            None => self.dialog = Some(dialog),
            Some(FinderAnswer::Take(taken)) => self.take_found(taken),
            Some(FinderAnswer::Teeth(teeth)) => {
                let texts = self.view.finders.pair.clone();
                let dialog = PairDialog::for_teeth(self.desk(), &teeth, texts);
                self.dialog = Some(Dialog::Pair(Box::new(dialog)));
            }
            Some(FinderAnswer::Cancel) => {}
        }
    }

    /// Takes over what was found, as one step; what it came to is said.
    fn take_found(&mut self, taken: Taken) {
        self.lifecycle.hush();
        self.drafts.settle();
        self.history().commit();
        self.view.typed.keep_to(self.lifecycle.desk.project());
        let before = self.desk().history.revision();
        match taken {
            Taken::Part(edit) => {
                self.let_figures_go(&edit);
                self.edit(edit);
            }
            Taken::Parts(set, _, what) => match taken.applied_to(self.desk().project()) {
                Ok(project) => {
                    self.view.typed.forget_set(set);
                    self.history().replace(Arc::new(project), what);
                }
                Err(problem) => self.say(problem.to_string()),
            },
        }
        if self.desk().history.revision() != before {
            let named = self.desk().history.undoable().map(|change| change.named());
            if let Some(named) = named {
                self.say(format!("Taken over: {named}"));
            }
        }
    }

    /// The wish was about ratios as they are: figures that stay would move them away from it.
    fn let_figures_go(&mut self, edit: &Edit) {
        match edit {
            Edit::Set(_, SetEdit::Ratio(..)) => {}
            Edit::Set(set, _) => self.view.typed.forget_set(*set),
            _ => self.view.typed.forget_figures(),
        }
    }
}
