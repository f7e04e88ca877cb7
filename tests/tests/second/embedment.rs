//! How much of a fastener is in the stud, once plate, washer and all that lies before the stud are passed
//! (NDS 2018, 12.1.4.6, 12.1.5.6, 12.2, 12.3.5.3).

use super::sizes::{Kind, Threaded};

#[derive(Clone, Copy, Debug)]
pub(crate) struct Embedment {
    /// The whole of it, with the tip.
    pub(crate) whole_in: f64,
    /// The thread that counts in withdrawal.
    pub(crate) thread_in: f64,
    /// The bearing length of the yield equations.
    pub(crate) bearing_in: f64,
    /// Whether it meets the least the standard asks: a lag 4 D without its tip, a wood screw 6 D with it.
    pub(crate) enough: bool,
}

pub(crate) fn embedment(f: &Threaded, washer_in: f64, plate_in: f64, gap_in: f64) -> Embedment {
    let whole_in = f.length_in - washer_in - plate_in - gap_in;
    let thread_in = f.thread_in.min(whole_in);
    let bearing_in = whole_in - f.tip_in / 2.0;
    match f.kind {
        Kind::Lag => Embedment {
            whole_in,
            thread_in: thread_in - f.tip_in,
            bearing_in,
            enough: whole_in - f.tip_in >= 4.0 * f.nominal_in,
        },
        Kind::WoodScrew => {
            Embedment { whole_in, thread_in, bearing_in, enough: whole_in >= 6.0 * f.nominal_in }
        }
    }
}
