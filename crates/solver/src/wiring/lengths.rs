//! How long a cable has to be, and how long it may be.

use crate::handbook::low_voltage;
use crate::job::kit::Signal;
use crate::ledger::{Given, Label, Ledger, Put, Step};
use crate::units::Length;

/// What is left over at one end where nobody says otherwise.
#[must_use]
pub fn usual_slack() -> Given<Length> {
    Given::new(Length::inches(low_voltage::SLACK_IN.value), low_voltage::SLACK_IN.label)
}

/// The length to cut: the way, and what is left over at each of its two ends.
#[must_use]
pub fn to_cut<L: Ledger>(
    ledger: &mut L,
    way: Given<Length>,
    above: Given<Length>,
    below: Given<Length>,
) -> Given<Length> {
    let length = way.value + above.value + below.value;
    let label = way.label.weaker(above.label).weaker(below.label).worked_out();
    ledger.write(|| Step {
        name: "length to cut",
        formula: "L = way + s_1 + s_2",
        put: vec![Put::given("way", way), Put::given("s_1", above), Put::given("s_2", below)],
        result: length.into(),
        source: low_voltage::SLACK_IN.source,
        label,
    });
    Given::new(length, label)
}

/// A length to cut to the next step of the tape: a cable that is too short is none. A step of nothing changes nothing.
#[must_use]
pub fn up_to(length: Length, step: Length) -> Length {
    if step.mm() > 0.0 { step * (length.mm() / step.mm() - 1e-9).ceil() } else { length }
}

/// How far a cable carries what it carries: what its maker states where given; else, of a passive picture lead, what
/// is advised, and of one of which nobody said what it carries; `None` where no length is known.
#[must_use]
pub fn longest(signal: Option<Signal>, own: Option<Length>) -> Option<Given<Length>> {
    let advised = || {
        let row = low_voltage::PASSIVE_PICTURE_M;
        (matches!(signal, None | Some(Signal::Picture)))
            .then(|| Given::new(Length::millimetres(row.value * 1000.0), row.label))
    };
    own.map(|own| Given::new(own, Label::Stated)).or_else(advised)
}
