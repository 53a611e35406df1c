//! Values with units, limits and torque.
