//! What random events once broke.
