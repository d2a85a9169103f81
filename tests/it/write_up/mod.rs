//! Does the write-up give others what they need: texts, and a window to make them in?

mod texts;
mod views;
mod window;
