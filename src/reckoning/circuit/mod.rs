//! Networks of resistances with contacts and faults, and what lamps and meters show.
