//! A case of load, and why a fastener or a case has no number, in words.

use super::phrase::amount;
use crate::capacity::case::{CaseKind, CaseName, Posture, PullAt, Pulled, Stance};
use crate::capacity::why::{Input, Why};
use crate::plan::Plan;
use crate::wiring::lengths::up_to;

/// A case of load as a clause: `pulled down at its left end`.
#[must_use]
pub fn case(name: &CaseName) -> String {
    let pull = name.pull.map(|pull| match pull {
        PullAt::DownMiddle => "pulled down at its middle",
        PullAt::DownLeft => "pulled down at its left end",
        PullAt::DownRight => "pulled down at its right end",
        PullAt::OutTop => "pulled out at the top",
        PullAt::OutBottom => "pulled out at the bottom",
        PullAt::OutLeft => "pulled out at its left edge",
        PullAt::OutRight => "pulled out at its right edge",
        PullAt::OutHinge => "pulled out at the arm's outer hinge",
    });
    let pull = pull.unwrap_or("hanging");
    match name.posture {
        Posture::AsHung => pull.to_owned(),
        Posture::TiltedDown => format!("{pull}, tilted down"),
        Posture::TiltedUp => format!("{pull}, tilted up"),
        Posture::Swung { arm_deg, face_deg } => {
            let side = |deg: f64| if deg < 0.0 { "left" } else { "right" };
            let arm = if arm_deg == 0.0 {
                "straight out".to_owned()
            } else {
                format!("swung {:.0} degrees to the {}", arm_deg.abs(), side(arm_deg))
            };
            let face = if face_deg == 0.0 {
                String::new()
            } else {
                format!(", its face turned {:.0} degrees to the {}", face_deg.abs(), side(face_deg))
            };
            format!("{pull}, {arm}{face}")
        }
    }
}

/// A kind of case as a clause: `pulled at a side, straight out`.
#[must_use]
pub fn case_kind(kind: &CaseKind) -> String {
    let pulled = match kind.pulled {
        Pulled::Not => "hanging",
        Pulled::Middle => "pulled at the middle",
        Pulled::Side => "pulled at a side",
    };
    let stance = match kind.stance {
        Stance::AsHung => return pulled.to_owned(),
        Stance::TiltedDown => "tilted down",
        Stance::TiltedUp => "tilted up",
        Stance::StraightOut => "straight out",
        Stance::Aside => "swung or turned aside",
    };
    format!("{pulled}, {stance}")
}

/// Why there is no number, as a clause.
#[must_use]
pub fn why(plan: &Plan, why: &Why) -> String {
    let print = |length| amount(plan, length);
    match why {
        Why::NoValue(input) => format!("{} makes no sense", of(*input)),
        Why::OutsideTable(input) => format!("no published value for {}", of(*input)),
        Why::Shallow { has, needs } if has.mm() <= 0.0 => {
            format!("the fastener does not reach, and {} deep is needed", print(*needs))
        }
        Why::Shallow { has, needs } => {
            format!("the fastener is only {} deep, and {} is needed", print(*has), print(*needs))
        }
        Why::PastStud { by, supposed: false } => {
            format!("the fastener would reach {} past the stud", print(*by))
        }
        Why::PastStud { by, supposed: true } => format!(
            "the fastener would reach {} past the stud, if that is as shallow as any usual one: measure how deep it is",
            print(*by)
        ),
        Why::Edge { has, needs } if has.mm() <= 0.0 => format!("at an edge, and {} is needed", print(*needs)),
        Why::Edge { has, needs } => {
            format!("only {} to an edge, and {} is needed", print(*has), print(*needs))
        }
        Why::AboveCap => "a load duration factor above what connections may have".to_owned(),
        Why::NothingCarries => "nothing in use carries load that way".to_owned(),
        Why::Turns { nmm } => format!(
            "it turns the plate with {:.0} N\u{b7}m, and no published value carries that on one stud",
            nmm / 1000.0
        ),
        Why::NoLever => "all fasteners stand in one row at the plate's edge".to_owned(),
        Why::NoFastener => "no fastener is in use".to_owned(),
        Why::Mixed => {
            "with fasteners of more than one type the load is not shared as the method supposes, by equal stiffness"
                .to_owned()
        }
        Why::ArmOnSteel => "no published value for an arm or pull-down on steel studs".to_owned(),
        Why::RowOnOneStud => "on steel studs each row in use has to be screwed to two studs".to_owned(),
        Why::NotNormalWeight => "nobody said that the concrete is of normal weight".to_owned(),
        Why::OffTheConcrete { assumed: true, .. } => {
            "nobody measured what is between the plate and the concrete or masonry".to_owned()
        }
        Why::OffTheConcrete { gap, assumed: false } => {
            // To the graduation above: rounded down it might read as what is allowed.
            let gap = up_to(*gap, plan.style.length_of(1));
            format!("{} between the plate and the concrete: cut it away under the plate", print(gap))
        }
        Why::Hollow => "the brick or block is hollow, and nobody knows what a fixing carries in it".to_owned(),
        Why::DoesNotPass => "the fastener does not pass the hole".to_owned(),
        Why::DoesNotCover => "neither head nor washer covers the hole".to_owned(),
    }
}

fn of(input: Input) -> &'static str {
    match input {
        Input::Diameter => "this diameter",
        Input::Length => "this length",
        Input::Head => "this head",
        Input::Washer => "this washer",
        Input::Bending => "this bending strength",
        Input::Withdrawal => "this withdrawal",
        Input::Gravity => "this wood's gravity",
        Input::Plate => "this thickness of plate",
        Input::PlateBearing => "what the plate bears",
        Input::Gap => "what stands in front of the framing",
        Input::StudDepth => "this depth of stud",
        Input::Face => "this face of stud",
        Input::Hole => "this hole",
        Input::Concrete => "this concrete",
        Input::Steel => "this thickness of steel",
        Input::Load => "this load",
        Input::Mass => "this mass",
        Input::Place => "this place",
        Input::Seat => "this hole's place",
        Input::Angle => "this angle",
        Input::Duration => "this load's duration",
    }
}

#[cfg(test)]
mod tests {
    use super::super::sample;
    use super::*;

    #[test]
    fn a_case_is_told_by_its_pull_and_how_it_stands() {
        let swung = |arm_deg, face_deg| Posture::Swung { arm_deg, face_deg };
        let told = [
            (Posture::AsHung, None, "hanging"),
            (Posture::AsHung, Some(PullAt::DownMiddle), "pulled down at its middle"),
            (Posture::TiltedDown, Some(PullAt::DownLeft), "pulled down at its left end, tilted down"),
            (Posture::TiltedUp, Some(PullAt::DownRight), "pulled down at its right end, tilted up"),
            (Posture::AsHung, Some(PullAt::OutTop), "pulled out at the top"),
            (Posture::AsHung, Some(PullAt::OutBottom), "pulled out at the bottom"),
            (Posture::AsHung, Some(PullAt::OutLeft), "pulled out at its left edge"),
            (Posture::AsHung, Some(PullAt::OutRight), "pulled out at its right edge"),
            (swung(0.0, 0.0), Some(PullAt::OutHinge), "pulled out at the arm's outer hinge, straight out"),
            (swung(-45.0, 0.0), None, "hanging, swung 45 degrees to the left"),
            (
                swung(90.0, -30.0),
                None,
                "hanging, swung 90 degrees to the right, its face turned 30 degrees to the left",
            ),
        ];
        for (posture, pull, words) in told {
            assert_eq!(case(&CaseName { posture, pull }), words);
        }
    }

    #[test]
    fn a_reason_tells_its_own_numbers() {
        let inches = crate::units::Length::inches;
        let plan = sample::plan();
        let told = [
            (Why::NoValue(Input::Mass), "this mass makes no sense"),
            (Why::OutsideTable(Input::Diameter), "no published value for this diameter"),
            (
                Why::Shallow { has: inches(1.0), needs: inches(1.25) },
                "the fastener is only 1\" deep, and 1 1/4\" is needed",
            ),
            (
                Why::Shallow { has: inches(-0.5), needs: inches(1.25) },
                "the fastener does not reach, and 1 1/4\" deep is needed",
            ),
            (
                Why::PastStud { by: inches(0.5), supposed: false },
                "the fastener would reach 1/2\" past the stud",
            ),
            (
                Why::PastStud { by: inches(0.01), supposed: false },
                "the fastener would reach less than 1/16\" past the stud",
            ),
            (
                Why::Edge { has: inches(0.25), needs: inches(0.5) },
                "only 1/4\" to an edge, and 1/2\" is needed",
            ),
            (Why::Edge { has: inches(0.0), needs: inches(0.5) }, "at an edge, and 1/2\" is needed"),
            (
                Why::Turns { nmm: 54_600.0 },
                "it turns the plate with 55 N\u{b7}m, and no published value carries that on one stud",
            ),
            (
                Why::OffTheConcrete { gap: inches(0.5), assumed: false },
                "1/2\" between the plate and the concrete: cut it away under the plate",
            ),
            (
                Why::OffTheConcrete { gap: inches(0.875), assumed: true },
                "nobody measured what is between the plate and the concrete or masonry",
            ),
        ];
        for (reason, words) in told {
            assert_eq!(why(&plan, &reason), words);
        }
        let plain = [
            Why::AboveCap,
            Why::NothingCarries,
            Why::NoLever,
            Why::NoFastener,
            Why::ArmOnSteel,
            Why::RowOnOneStud,
            Why::NotNormalWeight,
            Why::DoesNotPass,
            Why::DoesNotCover,
        ];
        let all: std::collections::BTreeSet<String> = plain.iter().map(|reason| why(&plan, reason)).collect();
        assert_eq!(all.len(), plain.len(), "no two reasons are told alike");
        for told in all {
            sample::well_told(&crate::words::phrase::sentence(&told));
        }
    }
}
