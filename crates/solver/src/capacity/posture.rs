//! The cases of load that something on a wall makes: hanging, and handled, at the worst places its mount allows.

use super::case::{Case, CaseName, Posture, PullAt};
use super::duration::Lasting;
use super::hanging::{Hanging, Manner, Spot};
use super::why::Known;
use crate::ledger::{Amount, Label, Ledger, Put, Shown, Step};

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
    for mass in &hanging.masses {
        let spot = hanging.spot(name.posture, mass.right_mm, mass.y_mm, mass.from_back_mm);
        add(ledger, &mut case, "weight", mass.kg * GRAVITY, spot, hanging.label);
    }
    if name.pull.is_some() {
        case.label = case.label.weaker(Label::Chosen);
    }
    match name.pull {
        None => {}
        Some(at @ (PullAt::DownMiddle | PullAt::DownLeft | PullAt::DownRight)) => {
            let half = (hanging.right_mm - hanging.left_mm) / 2.0;
            let right = match at {
                PullAt::DownLeft => -half,
                PullAt::DownRight => half,
                _ => 0.0,
            };
            let spot = hanging.spot(name.posture, right, hanging.bottom_mm, hanging.depth_mm);
            add(ledger, &mut case, "pull down", hanging.pull_n, spot, Label::Chosen);
        }
        Some(at) => {
            let out = hanging.pulled_out(name.posture, at);
            ledger.write(|| Step {
                name: "pull straight out",
                formula: "F at (x, y)",
                put: vec![
                    millimetres("x", out.x_mm, hanging.label),
                    millimetres("y, highest", out.high_y_mm, hanging.label),
                    millimetres("y, lowest", out.low_y_mm, hanging.label),
                ],
                result: Amount::new(out.n, Shown::Newton),
                source: "a setting, how hard somebody may pull (chosen)",
                label: Label::Chosen,
            });
            case.out = Some(out);
        }
    }
    Ok(case)
}

/// Adds what bears down at a place.
fn add<L: Ledger>(ledger: &mut L, case: &mut Case, name: &'static str, n: f64, spot: Spot, own: Label) {
    // What would lie inside the wall lies at it.
    let z_mm = spot.z_mm.max(0.0);
    let label = case.label;
    case.down_n += n;
    case.down_x_nmm += n * spot.x_mm;
    case.down_z_nmm += n * z_mm;
    ledger.write(|| Step {
        name,
        formula: "F z, in front of the wall",
        put: vec![
            Put::new("F", Amount::new(n, Shown::Newton), own),
            millimetres("x", spot.x_mm, label),
            millimetres("z", z_mm, label),
        ],
        result: Amount::turning(n * z_mm),
        source: "statics; standard gravity 9.80665 m/s^2",
        label,
    });
}

fn millimetres(symbol: &'static str, value: f64, label: Label) -> Put {
    Put::new(symbol, Amount::new(value, Shown::Millimetre), label)
}
