//! What a thread holds when it is pulled straight out of side grain (NDS 2018 section 12.2).

use super::bite::Bite;
use super::screw::{Screw, ScrewKind};
use super::why::{Input, Known, Why};
use crate::handbook::{gravity, withdrawal};
use crate::ledger::{Given, Label, Ledger, Put, Step};
use crate::numeric::power;
use crate::units::{Force, ForcePerLength, Ratio};

/// A specific gravity within the range that the equations are valid for.
///
/// # Errors
/// Not known outside of it.
pub fn valid_gravity(given: Given<Ratio>) -> Known<f64> {
    let (least, most) = gravity::VALID.value;
    let value = given.value.value();
    if value >= least && value <= most { Ok(value) } else { Err(Why::OutsideTable(Input::Gravity)) }
}

/// What each length of thread holds, before load duration; by the nominal diameter.
///
/// # Errors
/// Not known where G or D is outside of its table.
pub fn per_length<L: Ledger>(
    ledger: &mut L,
    screw: &Screw,
    wood: Given<Ratio>,
) -> Known<Given<ForcePerLength>> {
    let g = valid_gravity(wood)?;
    let d_in = screw.diameter.value.in_inches();
    if !(d_in > 0.0 && d_in <= 1.25) {
        return Err(Why::OutsideTable(Input::Diameter));
    }
    let (value, formula, source, own) = match (screw.kind, &screw.report) {
        (ScrewKind::WoodScrew, _) => {
            let row = withdrawal::WOOD_SCREW;
            (row.value * g * g * d_in, "W = 2850 G^2 D", row.source, row.label)
        }
        (ScrewKind::Lag, _) => {
            let row = withdrawal::LAG;
            (row.value * power(g, 1.5) * power(d_in, 0.75), "W = 1800 G^(3/2) D^(3/4)", row.source, row.label)
        }
        (ScrewKind::Structural, Some(report)) => {
            let at = report.gravity.value();
            let stated = report.withdrawal.lbf_per_in();
            if !(at > 0.0 && at <= 2.0) {
                return Err(Why::NoValue(Input::Gravity));
            }
            if !(stated > 0.0 && stated <= 1e5) {
                return Err(Why::NoValue(Input::Withdrawal));
            }
            // A softer stud than the report's takes it down, a harder one never up.
            let softer = (g / at).min(1.0);
            (
                stated * softer * softer,
                "W = W_stated min(1, G / G_stated)^2",
                "the screw's report",
                Label::Stated,
            )
        }
        (ScrewKind::Structural, None) => return Err(Why::NoValue(Input::Withdrawal)),
    };
    let label = own.weaker(wood.label).weaker(screw.diameter.label).worked_out();
    let per = ForcePerLength::pounds_force_per_inch(value);
    ledger.write(|| {
        let mut put = vec![Put::given("G", wood)];
        if screw.kind != ScrewKind::Structural {
            put.push(Put::given("D", screw.diameter).being("the nominal diameter"));
        } else if let Some(report) = &screw.report {
            put.push(Put::new("W_stated", report.withdrawal, Label::Stated));
            put.push(Put::new("G_stated", report.gravity, Label::Stated));
        }
        Step { name: "withdrawal per length of thread", formula, put, result: per.into(), source, label }
    });
    Ok(Given::new(per, label))
}

/// What the thread in the stud holds under a load duration factor.
///
/// # Errors
/// As [`per_length`].
pub fn withdrawal<L: Ledger>(
    ledger: &mut L,
    screw: &Screw,
    wood: Given<Ratio>,
    bite: &Bite,
    duration: Given<f64>,
) -> Known<Given<Force>> {
    let per = per_length(ledger, screw, wood)?;
    let holds_lbf = duration.value * per.value.lbf_per_in() * bite.thread.value.in_inches();
    let label = per.label.weaker(bite.thread.label).weaker(duration.label);
    let holds = Force::pounds_force(holds_lbf);
    ledger.write(|| Step {
        name: "withdrawal",
        formula: "W'p = C_D W p_t",
        put: vec![
            Put::new("C_D", crate::ledger::Amount::bare(duration.value), duration.label)
                .because(duration.reason),
            Put::result("W", per.value, per.label),
            Put::result("p_t", bite.thread.value, bite.thread.label),
        ],
        result: holds.into(),
        source: "NDS 2018 section 12.2",
        label,
    });
    Ok(Given::new(holds, label))
}

/// What the screw's own steel may be pulled with; no load duration factor on metal.
#[must_use]
pub fn steel<L: Ledger>(ledger: &mut L, screw: &Screw) -> Given<Force> {
    let row = withdrawal::STEEL_SHARE;
    let root_in = screw.root.value.in_inches();
    let area = std::f64::consts::PI / 4.0 * root_in * root_in;
    let holds = Force::pounds_force(row.value * screw.bending.value.in_psi() * area);
    let label = row.label.weaker(screw.root.label).weaker(screw.bending.label);
    ledger.write(|| Step {
        name: "the screw's own steel",
        formula: "T_s = share F_yb pi D_r^2 / 4",
        put: vec![
            Put::new("share", crate::ledger::Amount::bare(row.value), row.label)
                .because("a third, below the 0.375 of the ultimate strength that steel is usually allowed"),
            Put::given("F_yb", screw.bending),
            Put::given("D_r", screw.root),
        ],
        result: holds.into(),
        source: row.source,
        label,
    });
    Given::new(holds, label)
}
