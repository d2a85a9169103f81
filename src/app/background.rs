//! Work that goes on beside the window, on a thread of its own, and how it wakes the window.
//!
//! The window wishes for something and looks in for news; it never waits. News are results, or how
//! far the work has come. Whoever works may pass over all wishes but the newest, and long work asks
//! at times whether a newer one has overtaken it.

use std::cell::Cell;
use std::sync::atomic::{AtomicU64, Ordering};
use std::sync::mpsc::{Receiver, RecvTimeoutError, Sender, channel};
use std::sync::{Arc, OnceLock};
use std::thread::JoinHandle;
use std::time::Duration;

/// The window's end of the work. Whoever drops it lets the work go and does not wait for it.
pub(super) struct Background<Wish, News> {
    wishes: Option<Sender<Wish>>,
    news: Receiver<News>,
    /// How often something was wished.
    wished: Arc<AtomicU64>,
    thread: Option<JoinHandle<()>>,
}

impl<Wish: Send + 'static, News: Send + 'static> Background<Wish, News> {
    /// Begins the work; `wake` is called whenever there is news.
    pub(super) fn started(
        wake: Wake,
        work: impl FnOnce(&Task<Wish, News>) + Send + 'static,
    ) -> Self {
        let (wishes, wishes_there) = channel();
        let (news_there, news) = channel();
        let wished = Arc::<AtomicU64>::default();
        let task = Task {
            wishes: wishes_there,
            news: news_there,
            wished: Arc::clone(&wished),
            taken: Cell::new(0),
            wake,
        };
        Self {
            wishes: Some(wishes),
            news,
            wished,
            thread: Some(std::thread::spawn(move || work(&task))),
        }
    }

    /// Wishes for something.
    pub(super) fn wish(&self, wish: Wish) {
        if let Some(wishes) = &self.wishes {
            self.wished.fetch_add(1, Ordering::SeqCst);
            // A thread that is gone fulfils nothing; the window goes on.
            let _ = wishes.send(wish);
        }
    }

    /// The next news, if there is any.
    pub(super) fn news(&self) -> Option<News> {
        self.news.try_recv().ok()
    }

    /// Lets the work do what was wished until now, and waits until it has ended.
    pub(super) fn finish(&mut self) {
        self.wishes = None;
        if let Some(thread) = self.thread.take() {
            // What a panic had to say is said already.
            let _ = thread.join();
        }
    }
}

impl<Wish, News> Drop for Background<Wish, News> {
    fn drop(&mut self) {
        self.wished.fetch_add(1, Ordering::SeqCst);
    }
}

impl<Wish, News> std::fmt::Debug for Background<Wish, News> {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Background").finish_non_exhaustive()
    }
}

/// The thread's end of the work.
pub(super) struct Task<Wish, News> {
    wishes: Receiver<Wish>,
    news: Sender<News>,
    /// How often something was wished, and how much of it was taken.
    wished: Arc<AtomicU64>,
    taken: Cell<u64>,
    wake: Wake,
}

impl<Wish, News> Task<Wish, News> {
    /// The next wish; waits for it, for as long as that or for ever.
    ///
    /// # Errors
    /// When there was none for so long, or nobody wishes any more.
    pub(super) fn next(&self, at_most: Option<Duration>) -> Result<Wish, RecvTimeoutError> {
        let wish = match at_most {
            Some(at_most) => self.wishes.recv_timeout(at_most)?,
            None => self.wishes.recv()?,
        };
        self.taken.set(self.taken.get() + 1);
        Ok(wish)
    }

    /// The newest wish; waits for one, and passes over the others. None once nobody wishes any more.
    pub(super) fn newest(&self) -> Option<Wish> {
        let mut newest = self.next(None).ok()?;
        while let Ok(newer) = self.next(Some(Duration::ZERO)) {
            newest = newer;
        }
        Some(newest)
    }

    /// Whether something newer is wished than what was taken, or the work was let go.
    pub(super) fn is_overtaken(&self) -> bool {
        self.wished.load(Ordering::SeqCst) > self.taken.get()
    }

    /// Tells the window, and wakes it.
    pub(super) fn tell(&self, news: News) {
        // Nobody listens any more once the work was let go: then it is moot.
        let _ = self.news.send(news);
        self.wake.wake();
    }
}

/// Wakes the window, which may be asleep when an answer comes.
/// Its clones wake the same window; before there is one, nobody is woken.
#[derive(Clone, Default)]
pub struct Wake(Arc<OnceLock<Box<dyn Fn() + Send + Sync>>>);

impl Wake {
    /// From now on `wake` is called; only the first one counts.
    pub fn connect(&self, wake: impl Fn() + Send + Sync + 'static) {
        self.0.get_or_init(|| Box::new(wake));
    }

    /// Whether there is a window to be woken.
    pub fn is_connected(&self) -> bool {
        self.0.get().is_some()
    }

    /// Wakes the window.
    pub fn wake(&self) {
        if let Some(wake) = self.0.get() {
            wake();
        }
    }
}

impl std::fmt::Debug for Wake {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.debug_struct("Wake").finish_non_exhaustive()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::sync::atomic::AtomicUsize;

    /// Work that tells every newest wish, and a way to let it go on, wish by wish.
    fn held_back(wake: Wake) -> (Background<u32, u32>, Sender<()>) {
        let (go, may_go) = channel();
        let background = Background::started(wake, move |task| {
            while may_go.recv().is_ok() {
                match task.newest() {
                    Some(wish) => task.tell(wish),
                    None => return,
                }
            }
        });
        (background, go)
    }

    #[test]
    fn of_several_wishes_the_newest_is_fulfilled() {
        let (mut background, go) = held_back(Wake::default());
        (1..=3).for_each(|wish| background.wish(wish));
        go.send(()).unwrap();
        drop(go);
        background.finish();
        assert_eq!((background.news(), background.news()), (Some(3), None));
    }

    #[test]
    fn news_wake_the_window() {
        let (wake, woken) = (Wake::default(), Arc::<AtomicUsize>::default());
        let count = Arc::clone(&woken);
        wake.connect(move || {
            count.fetch_add(1, Ordering::SeqCst);
        });
        let mut background = Background::<u32, u32>::started(wake, |task| {
            task.tell(50);
            task.tell(100);
        });
        background.finish();
        assert_eq!(woken.load(Ordering::SeqCst), 2);
        assert_eq!(
            (background.news(), background.news()),
            (Some(50), Some(100))
        );
    }

    #[test]
    fn work_learns_that_it_is_overtaken_or_let_go() {
        let (sender, told) = channel();
        let (go, may_go) = channel::<()>();
        let background = Background::<u32, u32>::started(Wake::default(), move |task| {
            for _ in 0..2 {
                task.next(None).unwrap();
                sender.send(task.is_overtaken()).unwrap();
                may_go.recv().unwrap();
                sender.send(task.is_overtaken()).unwrap();
            }
        });
        background.wish(1);
        assert_eq!(told.recv(), Ok(false));
        background.wish(2);
        go.send(()).unwrap();
        assert_eq!((told.recv(), told.recv()), (Ok(true), Ok(false)));
        drop(background);
        go.send(()).unwrap();
        assert_eq!(told.recv(), Ok(true));
    }

    #[test]
    fn what_was_wished_before_the_end_is_still_done() {
        let mut background = Background::started(Wake::default(), |task: &Task<u32, u32>| {
            while let Ok(wish) = task.next(None) {
                task.tell(wish);
            }
        });
        (1..=3).for_each(|wish| background.wish(wish));
        background.finish();
        let news: Vec<u32> = std::iter::from_fn(|| background.news()).collect();
        assert_eq!(news, [1, 2, 3]);
    }

    #[test]
    fn nobody_waits_for_work_that_is_let_go() {
        let (go, may_go) = channel::<()>();
        let background = Background::<u32, u32>::started(Wake::default(), move |_| {
            let _ = may_go.recv();
        });
        // Would never come back if it waited.
        drop(background);
        drop(go);
    }
}
