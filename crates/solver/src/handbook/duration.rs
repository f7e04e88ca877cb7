//! How long a load lasts, and what wood bears more for a shorter one.

use super::Row;

/// Permanent load: what always hangs.
pub const PERMANENT: Row<f64> = Row::read(0.9, "NDS 2018 Table 2.3.2, permanent");

/// Ten minutes in all over the life: a pull of some seconds, now and then.
pub const TEN_MINUTES: Row<f64> = Row::read(1.6, "NDS 2018 Table 2.3.2, ten minutes");

/// No connection may be counted with more, impact included.
pub const MOST_FOR_CONNECTIONS: Row<f64> = Row::read(1.6, "NDS 2018 section 11.3.2");
