//! The book on the line: a value beside every limit, and the spine as it is formed.

mod limits;

pub use limits::{Answer, LIMITS, LimitCheck, LimitId, Room, check_limits};
