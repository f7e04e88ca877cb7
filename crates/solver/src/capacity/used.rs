//! How much of what it may carry a fastener is asked for: 1 is all of it.

use super::duration::Lasting;
use super::hold::{Hold, InWood, Linear};
use super::why::{Input, Known, Why};
use crate::ledger::{Amount, Label, Ledger, Put, Shown, Step};
use crate::numeric::root;

/// What one fastener is asked to carry, in newtons.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Asked {
    /// Shear up and down, along the stud; its sign does not matter.
    pub along_n: f64,
    /// Shear sideways.
    pub across_n: f64,
    /// Pull out of the wall, zero or more.
    pub pull_n: f64,
    /// The weakest of what it is worked out from.
    pub label: Label,
}

impl Asked {
    /// The whole shear.
    #[must_use]
    pub fn shear_n(&self) -> f64 {
        // Most fasteners carry along only: the root of a square is spared them.
        if self.across_n == 0.0 {
            self.along_n.abs()
        } else {
            root(self.along_n * self.along_n + self.across_n * self.across_n)
        }
    }
}

/// What governs a use.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Term {
    /// Shear alone, V / Z'.
    Shear,
    /// Withdrawal alone, T / (W'p).
    Withdrawal,
    /// The screw's own steel in the pull.
    ScrewSteel,
    /// Shear and withdrawal together, Eq. 12.4-1.
    Combined,
    /// Shear and pull added in proportion.
    Linear,
}

/// How much is used, and by what.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Used {
    /// 1 is all of what it may carry; above is short.
    pub value: f64,
    /// What governs.
    pub term: Term,
}

impl Used {
    /// What could be added to all loads, as a share of them: 1/use - 1, never more than `most`. `label`
    /// is the weakest of what the use rests on.
    #[must_use]
    pub fn reserve<L: Ledger>(&self, ledger: &mut L, most: f64, label: Label) -> f64 {
        let reserve = if self.value > 0.0 { (1.0 / self.value - 1.0).min(most) } else { most };
        ledger.write(|| Step {
            name: "reserve: what could be added to all loads, as a share of them",
            formula: if self.value > 0.0 { "r = min(1 / use - 1, r_most)" } else { "r = r_most" },
            put: [
                (self.value > 0.0).then(|| Put::result("use", Amount::bare(self.value), label)),
                Some(
                    Put::new("r_most", Amount::bare(most), Label::Chosen)
                        .because("more is not counted in the choice of fasteners"),
                ),
            ]
            .into_iter()
            .flatten()
            .collect(),
            result: Amount::bare(reserve),
            source: "arithmetic",
            label: label.weaker(Label::Chosen),
        });
        reserve
    }
}

/// How much of a hold is used.
///
/// # Errors
/// Not known where a load is not a number, a pull is negative, or a hold is not above zero.
pub fn used<L: Ledger>(ledger: &mut L, asked: &Asked, hold: &Hold, lasting: Lasting) -> Known<Used> {
    let most = super::why::MOST_N;
    let good = asked.along_n.abs() <= most && asked.across_n.abs() <= most;
    if !(good && asked.pull_n >= 0.0 && asked.pull_n <= most) {
        return Err(Why::NoValue(Input::Load));
    }
    match hold {
        Hold::Wood { permanent, ten_minutes, label } => {
            let wood = if lasting == Lasting::Permanent { permanent } else { ten_minutes };
            in_wood(ledger, asked, wood, *label)
        }
        Hold::Linear(linear) => in_proportion(ledger, asked, linear),
    }
}

/// Whether no more than `most` of a hold can be used, told without working it out: of the combined equation no
/// more comes than the root of both squares.
pub(super) fn surely_within(most: f64, asked: &Asked, hold: &Hold, lasting: Lasting) -> bool {
    match hold {
        Hold::Wood { permanent, ten_minutes, .. } => {
            let wood = if lasting == Lasting::Permanent { permanent } else { ten_minutes };
            let (v, t) = (shear_use(asked, wood), asked.pull_n);
            let pull = (t / wood.withdrawal_n).max(t / wood.steel_n);
            v * v + pull * pull <= most * most * SURE
        }
        Hold::Linear(_) => false,
    }
}

/// Below 1 by far more than rounding.
const SURE: f64 = 1.0 - 1e-9;

/// The largest of V/Z', T/(W'p), T over the screw's steel, and Eq. 12.4-1.
///
/// The equation alone would let a fastener carry more shear because it is pulled, wherever W'p > 2 Z'. Behind a
/// gap that is always so: hence the first two.
fn in_wood<L: Ledger>(ledger: &mut L, asked: &Asked, wood: &InWood, label: Label) -> Known<Used> {
    let holds = [wood.along_n, wood.across_n, wood.withdrawal_n, wood.steel_n];
    if !holds.iter().all(|n| *n > 0.0 && n.is_finite()) {
        return Err(Why::NoValue(Input::Load));
    }
    let (v, t) = (asked.shear_n(), asked.pull_n);
    let shear = shear_use(asked, wood);
    let pull = t / wood.withdrawal_n;
    let metal = t / wood.steel_n;
    let demand = root(v * v + t * t);
    // Z'_alpha = W'p Z' / (W'p cos^2 + Z' sin^2), with V/Z' written as `shear` and T/(W'p) as `pull`.
    let combined = if demand > 0.0 { (v * shear + t * pull) / demand } else { 0.0 };
    let mut governing = Used { value: shear, term: Term::Shear };
    for (value, term) in [(pull, Term::Withdrawal), (metal, Term::ScrewSteel), (combined, Term::Combined)] {
        if value > governing.value {
            governing = Used { value, term };
        }
    }
    let bare = |symbol, value| Put::result(symbol, Amount::bare(value), label.weaker(asked.label));
    let own = |symbol, value| newton(symbol, value, label);
    let all = label.weaker(asked.label);
    write_shear(ledger, asked);
    let share = |name, formula, put, value, source| Step {
        name,
        formula,
        put,
        result: Amount::bare(value),
        source,
        label: all,
    };
    ledger.write(|| {
        let mut put = vec![newton("V", v, asked.label), own("Z_y", wood.along_n)];
        if asked.across_n != 0.0 {
            put.extend([
                newton("V_y", asked.along_n, asked.label),
                newton("V_x", asked.across_n, asked.label),
                own("Z_x", wood.across_n),
            ]);
            let formula = "u_V = min(abs(V_y) / Z_y + abs(V_x) / Z_x, V / Z_x)";
            share("use in shear", formula, put, shear, "the lesser of two bounds (chosen, on the safe side)")
        } else {
            share("use in shear", "u_V = V / Z_y", put, shear, EACH)
        }
    });
    ledger.write(|| {
        let put = vec![newton("T", t, asked.label), own("W'p", wood.withdrawal_n)];
        share("use in withdrawal", "u_T = T / W'p", put, pull, EACH)
    });
    ledger.write(|| {
        let put = vec![newton("T", t, asked.label), own("T_s", wood.steel_n)];
        share("use of the screw's own steel", "u_s = T / T_s", put, metal, EACH)
    });
    if demand > 0.0 {
        ledger.write(|| {
            let put = vec![
                newton("V", v, asked.label),
                bare("u_V", shear),
                newton("T", t, asked.label),
                bare("u_T", pull),
            ];
            let formula = "u_VT = (V u_V + T u_T) / sqrt(V^2 + T^2)";
            let source = "NDS 2018 Eq. 12.4-1, with V / Z' written as u_V and T / W'p as u_T";
            share("use in shear and withdrawal together", formula, put, combined, source)
        });
    }
    ledger.write(|| {
        let mut put = vec![bare("u_V", shear), bare("u_T", pull), bare("u_s", metal)];
        let formula = if demand > 0.0 {
            put.push(bare("u_VT", combined));
            "use = max(u_V, u_T, u_s, u_VT)"
        } else {
            "use = max(u_V, u_T, u_s)"
        };
        let source =
            "the equation, and each part alone: it lets a fastener carry more shear because it is pulled";
        share("use", formula, put, governing.value, source)
    });
    Ok(governing)
}

/// Where the parts of a use are from.
const EACH: &str = "NDS 2018 section 12.4, each part alone";

/// The whole shear, written down.
fn write_shear<L: Ledger>(ledger: &mut L, asked: &Asked) {
    ledger.write(|| {
        let mut put = vec![newton("V_y", asked.along_n, asked.label)];
        let is_along = asked.across_n == 0.0;
        if !is_along {
            put.push(newton("V_x", asked.across_n, asked.label));
        }
        Step {
            name: "shear",
            formula: if is_along { "V = abs(V_y)" } else { "V = sqrt(V_y^2 + V_x^2)" },
            put,
            result: Amount::new(asked.shear_n(), Shown::Newton),
            source: "statics",
            label: asked.label,
        }
    });
}

/// V / Z' of a shear that may run at an angle to the stud.
///
/// The lesser of two bounds, each above the equations at any angle and each rising with both parts of the
/// shear: all of it across, and both parts added (chosen, on the safe side).
fn shear_use(asked: &Asked, wood: &InWood) -> f64 {
    let along = asked.along_n.abs() / wood.along_n;
    if asked.across_n == 0.0 {
        return along;
    }
    let across = asked.across_n.abs() / wood.across_n;
    (along + across).min(asked.shear_n() / wood.across_n)
}

/// V/Va + T/Ta.
fn in_proportion<L: Ledger>(ledger: &mut L, asked: &Asked, linear: &Linear) -> Known<Used> {
    let Linear { shear_n, pull_n, label } = *linear;
    if !(shear_n > 0.0 && shear_n.is_finite() && pull_n > 0.0 && pull_n.is_finite()) {
        return Err(Why::NoValue(Input::Load));
    }
    let (v, t) = (asked.shear_n(), asked.pull_n);
    let value = v / shear_n + t / pull_n;
    let label = label.weaker(asked.label).weaker(Label::Chosen);
    write_shear(ledger, asked);
    ledger.write(|| Step {
        name: "use",
        formula: "use = V / V_a + T / T_a",
        put: vec![
            newton("V", v, asked.label),
            newton("T", t, asked.label),
            newton("V_a", shear_n, linear.label),
            newton("T_a", pull_n, linear.label),
        ],
        result: Amount::bare(value),
        source: "both added in proportion (chosen, on the safe side of every published interaction)",
        label,
    });
    Ok(Used { value, term: Term::Linear })
}

fn newton(symbol: &'static str, value: f64, label: Label) -> Put {
    Put::result(symbol, Amount::new(value, Shown::Newton), label)
}
