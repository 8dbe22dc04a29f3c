//! What every answer has, whatever the call: an id, security headers, a deadline, one line in the log; and failures
//! of every origin written as problems.
//!
//! - [`request_id`] the id of a request
//! - [`security`] the headers that keep browsers careful
//! - [`finish`] the middleware around everything else

pub mod finish;
pub mod request_id;
pub mod security;
