//! The cases of load that something on a wall makes: hanging, and handled, at the worst places its mount allows.

use super::case::{Case, CaseName, Posture, PullAt};
use super::duration::Lasting;
use super::hanging::{Hanging, HungMass, Manner, Spot};
use super::why::Known;
use crate::ledger::{Amount, Label, Ledger, Part, Put, Shown, Step};

/// Standard gravity, m/s^2 (CGPM 1901; NIST SP 330).
pub const GRAVITY: f64 = 9.806_65;

/// Between two swings that are tried, degrees: the worst is often between the ends (chosen).
const SWING_STEP_DEG: f64 = 15.0;

/// How far an arm or head turns where nobody knows: nothing is worse (chosen).
const TURNS_NOT_GIVEN_DEG: f64 = 90.0;

const DOWN: [PullAt; 3] = [PullAt::DownMiddle, PullAt::DownLeft, PullAt::DownRight];

/// Every case, as it hangs first.
///
/// # Errors
/// Not known where a value is not finite, negative where it cannot be, or beyond anything on a wall.
pub fn cases(hanging: &Hanging) -> Known<Vec<Case>> {
    names(hanging)?.into_iter().map(|name| case(&mut crate::ledger::Blank, hanging, name)).collect()
}

/// What the cases are called, in the order of [`cases`].
///
/// # Errors
/// As [`cases`].
pub fn names(hanging: &Hanging) -> Known<Vec<CaseName>> {
    hanging.sound()?;
    let mut names = Vec::new();
    let mut pulled = |posture: Posture, pulls: &[PullAt]| {
        names.extend(pulls.iter().map(|pull| CaseName { posture, pull: Some(*pull) }));
    };
    let out = [PullAt::OutTop, PullAt::OutBottom, PullAt::OutLeft, PullAt::OutRight];
    let mut hung = Vec::new();
    match hanging.manner {
        Manner::Fixed | Manner::Tilting { .. } => {
            for posture in hanging.tilts() {
                hung.push(posture);
                pulled(posture, &DOWN);
                pulled(posture, &out);
            }
        }
        Manner::Arm { hinge_deg, head_deg, .. } => {
            let head = head_deg.unwrap_or(TURNS_NOT_GIVEN_DEG).min(90.0);
            for arm_deg in swings(hinge_deg) {
                for face_deg in faces(arm_deg, head) {
                    let turned = Posture::Swung { arm_deg, face_deg };
                    // A face that is turned moves where it is pulled down, and what hangs off its own axis.
                    if face_deg == 0.0 || hanging.turns_unevenly() {
                        hung.push(turned);
                        pulled(turned, &[PullAt::OutTop, PullAt::OutBottom, PullAt::OutHinge]);
                    }
                    pulled(turned, &DOWN);
                }
            }
        }
    }
    let mut all: Vec<CaseName> = hung.into_iter().map(|posture| CaseName { posture, pull: None }).collect();
    all.append(&mut names);
    Ok(all)
}

/// The swings that are tried: straight out, then to both sides in steps, to the end.
fn swings(hinge_deg: Option<f64>) -> Vec<f64> {
    let most = hinge_deg.unwrap_or(TURNS_NOT_GIVEN_DEG).min(90.0);
    let mut swings = vec![0.0];
    let mut deg = SWING_STEP_DEG;
    while deg < most {
        swings.extend([deg, -deg]);
        deg += SWING_STEP_DEG;
    }
    if most > 0.0 {
        swings.extend([most, -most]);
    }
    swings
}

/// The faces that are tried on a swung arm: to the room, and turned as far as the head goes. Makers tell that from
/// the room or from the arm: both are tried, to both sides (unknown counts as the worse).
fn faces(arm_deg: f64, head: f64) -> Vec<f64> {
    let mut faces = vec![0.0];
    for turned in [head, (arm_deg.abs() + head).min(90.0)] {
        if turned > 0.0 && !faces.contains(&turned) {
            faces.extend([turned, -turned]);
        }
    }
    faces
}

/// One case of what hangs.
///
/// # Errors
/// As [`cases`].
pub fn case<L: Ledger>(ledger: &mut L, hanging: &Hanging, name: CaseName) -> Known<Case> {
    hanging.sound()?;
    let mut case = Case {
        name,
        lasting: if name.pull.is_some() { Lasting::TenMinutes } else { Lasting::Permanent },
        down_n: 0.0,
        down_x_nmm: 0.0,
        down_z_nmm: 0.0,
        out: None,
        label: hanging.label.worked_out(),
    };
    ledger.begin(Part::Places);
    hanging.write_reach(ledger);
    if name.pull.is_some() {
        case.label = case.label.weaker(Label::Chosen);
    }
    for down in downs(hanging, name) {
        case.down_n += down.n;
        case.down_x_nmm += down.n * down.spot.x_mm;
        case.down_z_nmm += down.n * down.z_mm();
        down.write(ledger, hanging, name.posture, case.label);
    }
    if let Some(at) = name.pull.filter(|at| !DOWN.contains(at)) {
        ledger.write(|| pull_step(hanging.pull_n));
        case.out = Some(hanging.pulled_out(ledger, name.posture, at));
    }
    ledger.begin(Part::Totals);
    totals(ledger, hanging, &case);
    Ok(case)
}

/// Something that bears down at a place.
struct Down {
    n: f64,
    spot: Spot,
    /// Which mass; `None` for a pull.
    mass: Option<(usize, HungMass)>,
    /// Where it is as it hangs: right of the middle, how high, in front of the back.
    own: (f64, f64, f64),
}

/// All that bears down in a case: every mass, and a pull down.
fn downs(hanging: &Hanging, name: CaseName) -> impl Iterator<Item = Down> {
    let at = move |n: f64, mass, own: (f64, f64, f64)| {
        let (right_mm, y_mm, from_back_mm) = own;
        Down { n, spot: hanging.spot(name.posture, right_mm, y_mm, from_back_mm), mass, own }
    };
    let half = (hanging.right_mm - hanging.left_mm) / 2.0;
    let right = match name.pull {
        Some(PullAt::DownMiddle) => Some(0.0),
        Some(PullAt::DownLeft) => Some(-half),
        Some(PullAt::DownRight) => Some(half),
        _ => None,
    };
    let masses = hanging.masses.iter().enumerate().map(move |(index, mass)| {
        at(mass.kg * GRAVITY, Some((index, *mass)), (mass.right_mm, mass.y_mm, mass.from_back_mm))
    });
    masses
        .chain(right.map(move |right| at(hanging.pull_n, None, (right, hanging.bottom_mm, hanging.depth_mm))))
}

impl Down {
    /// What would lie inside the wall lies at it.
    fn z_mm(&self) -> f64 {
        self.spot.z_mm.max(0.0)
    }

    /// Writes down how much it is, and where.
    fn write<L: Ledger>(&self, ledger: &mut L, hanging: &Hanging, posture: Posture, label: Label) {
        ledger.write(|| match self.mass {
            None => pull_step(self.n),
            Some((index, mass)) => Step {
                name: if index == 0 {
                    "weight of the piece"
                } else {
                    "weight of the mount, or of what else hangs with the piece"
                },
                formula: "F = m g",
                put: vec![
                    Put::new("m", Amount::new(mass.kg, Shown::Kilogram), hanging.label),
                    Put::new("g", Amount::new(GRAVITY, Shown::MetrePerSecondSquared), Label::Read)
                        .because("standard gravity (CGPM 1901; NIST SP 330)"),
                ],
                result: Amount::new(self.n, Shown::Newton),
                source: "statics",
                label: hanging.label.worked_out(),
            },
        });
        let label = if self.mass.is_some() { hanging.label } else { label };
        hanging.write_spot(ledger, posture, self.own, (self.spot.x_mm, self.z_mm()), label);
    }
}

/// How hard somebody pulls.
fn pull_step(n: f64) -> Step {
    let setting = Put::new("F_pull", Amount::new(n, Shown::Newton), Label::Chosen);
    Step {
        name: "pull of somebody who handles it",
        formula: "F = F_pull",
        put: vec![setting.because("a setting of the job, how hard somebody may pull")],
        result: Amount::new(n, Shown::Newton),
        source: "the settings of the job",
        label: Label::Chosen,
    }
}

/// Writes down what a case comes to.
fn totals<L: Ledger>(ledger: &mut L, hanging: &Hanging, case: &Case) {
    let label = case.label;
    let each = || downs(hanging, case.name);
    let newtons = || each().map(|down| Put::result("F", Amount::new(down.n, Shown::Newton), label));
    let places = |symbol: &'static str, of: fn(&Down) -> f64| {
        each().map(move |down| Put::result(symbol, Amount::new(of(&down), Shown::Millimetre), label))
    };
    let step = |name, formula, put, result| Step { name, formula, put, result, source: "statics", label };
    ledger.write(|| {
        let result = Amount::new(-case.down_n, Shown::Newton);
        step("all that bears down; up is positive", "P_y = -sum(F)", newtons().collect(), result)
    });
    ledger.write(|| {
        let name = "its turning in the plane, anticlockwise about the plate's middle";
        let put = newtons().chain(places("x", |down| down.spot.x_mm)).collect();
        step(name, "M_0 = -sum(F x)", put, Amount::turning(-case.down_x_nmm))
    });
    ledger.write(|| {
        let put = newtons().chain(places("z", Down::z_mm)).collect();
        let result = Amount::turning(case.down_z_nmm);
        step("its turning out of the wall", "M_z = sum(F z)", put, result)
    });
}
