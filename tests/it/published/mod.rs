//! Do the laws give the numbers others have published?

mod tyres;
