//! The checks: each looks at the guides for one kind of trouble.

pub mod circuits;
pub mod handbook;
pub mod hazards;
pub mod idle;
pub mod learning;
pub mod limits;
pub mod messages;
pub mod names;
pub mod pictures;
pub mod places;
pub mod procedures;
pub mod reach;
pub mod references;
pub mod symptoms;
pub mod torques;
pub mod translations;
pub mod unread;
pub mod values;
pub mod waivers;
pub mod who;
