//! What one fastener in a stud may carry, put together.

use super::bite::{Stack, bite};
use super::dowel_bearing::Grain;
use super::duration::{Lasting, for_connection};
use super::hold::{Hold, InWood};
use super::lateral::lateral;
use super::screw::Screw;
use super::why::Known;
use super::withdrawal::{steel, withdrawal};
use crate::ledger::{Given, Label, Ledger, Part};
use crate::units::Ratio;

/// What one fastener in a stud may carry, under what always hangs and under a pull.
///
/// `wood` is the stud's specific gravity: [`crate::handbook::gravity::UNIDENTIFIED`] where nobody knows it.
///
/// # Errors
/// Refused where it is too shallow or reaches past the stud; not known where a value is outside of its table or
/// makes no sense.
pub fn in_wood<L: Ledger>(ledger: &mut L, screw: &Screw, wood: Given<Ratio>, stack: &Stack) -> Known<Hold> {
    ledger.begin(Part::Depth);
    let bite = bite(ledger, screw, stack)?;
    ledger.begin(Part::Pull);
    let metal = steel(ledger, screw);
    let mut weakest = metal.label;
    let mut under = |ledger: &mut L, lasting: Lasting| -> Known<InWood> {
        let factor = for_connection(lasting.factor())?;
        ledger.begin(Part::Along);
        let along = lateral(ledger, screw, wood, stack, &bite, Grain::Along, factor)?;
        ledger.begin(Part::Across);
        let across = lateral(ledger, screw, wood, stack, &bite, Grain::Across, factor)?;
        ledger.begin(Part::Pull);
        let pulled = withdrawal(ledger, screw, wood, &bite, factor)?;
        let labels = [along.holds.label, across.holds.label, pulled.label];
        weakest = labels.into_iter().fold(weakest, Label::weaker);
        Ok(InWood {
            along_n: along.holds.value.n(),
            across_n: across.holds.value.n(),
            withdrawal_n: pulled.value.n(),
            steel_n: metal.value.n(),
        })
    };
    let permanent = under(ledger, Lasting::Permanent)?;
    let ten_minutes = under(ledger, Lasting::TenMinutes)?;
    Ok(Hold::Wood { permanent, ten_minutes, label: weakest })
}
