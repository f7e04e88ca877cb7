//! What a finding about the room in front of the wall says: the published figure beside it, and whom to ask.

use super::super::phrase::{amount, beside, mass};
use super::super::things::{piece_words, thing};
use super::called;
use crate::clearances::fire::trim_may_stand_out;
use crate::clearances::reach::{Reach, reached};
use crate::clearances::steady::heaviest;
use crate::finding::{Finding, What};
use crate::handbook::clearances::{PROJECTING, STEADY, TRIM_FREE_IN, TRIM_NONE_IN};
use crate::handbook::lifting::CONSTANT_KG;
use crate::plan::Plan;
use crate::tolerance::{AIR_MM, LIFT_BEGUN_MM, LIFT_OUT_MM};
use crate::units::{Length, Mass, MassUnit};

/// The finding as a clause, without its capital and full stop; empty for any other.
pub(super) fn clause(plan: &Plan, finding: &Finding) -> String {
    let subject = &finding.subject;
    let piece = || piece_words(plan, subject);
    let size = |inches: f64| amount(plan, Length::inches(inches));
    match &finding.what {
        What::StandsOut { out } => {
            let rule = PROJECTING.value;
            let how = match out {
                Some(out) => format!("stands {} out of the wall", amount(plan, *out)),
                None => "stands out of the wall by what nobody measured".to_owned(),
            };
            format!(
                "{} {how}: where people walk past, no more than {} between {} and {} above the floor ({}); check the local \
                 code, or put something under it that a cane meets",
                piece(),
                size(rule.most_in),
                size(rule.above_in),
                size(rule.to_in),
                PROJECTING.source
            )
        }
        What::OutOfReach { height, reach } => {
            let (lowest, highest, source) = reached(*reach);
            let who = match reach {
                Reach::Public => "that everyone reaches",
                Reach::NewDwelling => "asked for in a new dwelling; an older one stays as it is",
            };
            format!(
                "{} is {} above the floor, not within the {} to {} {who} ({source}); check the local code",
                thing(plan, subject),
                amount(plan, *height),
                amount(plan, lowest),
                amount(plan, highest)
            )
        }
        What::OverFire => {
            let at = |inches: f64| {
                trim_may_stand_out(Length::inches(inches)).map_or_else(String::new, |out| amount(plan, out))
            };
            let (none, free) = (TRIM_NONE_IN.value, TRIM_FREE_IN.value);
            format!(
                "{} hangs above a fireplace: measure the temperature at its place with the fire lit, its maker's limit \
                 governs. No rule that was read is about displays; as an analogy only, combustible trim {} from a masonry \
                 fireplace's opening may stand out {}, at {} it may {}, nearer none ({}); at a factory-built or gas one its \
                 manual governs; check the local code",
                piece(),
                size(none),
                at(none),
                size(free),
                at(free),
                TRIM_FREE_IN.source
            )
        }
        What::HeavyLift { mass: weighs, limit } => {
            let limit = match weighs.unit() {
                MassUnit::Pound => Mass::pounds(limit.lb()),
                MassUnit::Kilogram => *limit,
            };
            let most = if limit.kg() < 0.05 { "nothing".to_owned() } else { mass(limit) };
            format!(
                "{}, which weighs {}, is lifted there by two: one person should lift {most} so far out and so high ({}; hands {} \
                 from the ankles, begun at {}, chosen)",
                piece(),
                mass(*weighs),
                CONSTANT_KG.source,
                amount(plan, Length::millimetres(LIFT_OUT_MM)),
                amount(plan, Length::millimetres(LIFT_BEGUN_MM))
            )
        }
        What::PullSmall { push } => format!(
            "the pull that is counted is less than the {:.0} N that a standing display of this mass has to withstand ({}; a \
             fifth of its weight, no more from {:.0} kg on): raise it in the settings",
            push.n().ceil(),
            STEADY.source,
            heaviest().kg()
        ),
        What::DoorMeets { door } => format!(
            "{}, opened against the wall, may meet {}: see which way it opens, and stop it short (common practice, no source)",
            called(plan, door),
            piece()
        ),
        What::Stuffy { side, room } => format!(
            "{} has {} {}: its maker says how much its heat wants ({} where nothing is said; common practice, no source)",
            piece(),
            amount(plan, *room),
            beside(*side),
            amount(plan, Length::millimetres(AIR_MM))
        ),
        _ => String::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::super::super::sample::{self, inches, well_told};
    use super::*;
    use crate::finding::{Level, Mend};
    use crate::geometry::Direction;
    use crate::subject::{Id, Subject};
    use crate::units::Force;

    #[test]
    fn each_says_the_figure_and_whom_to_ask() {
        for (subject, what, said) in [
            ("display-1", What::StandsOut { out: Some(inches("5")) }, "stands 5\" out"),
            ("display-1", What::StandsOut { out: None }, "nobody measured"),
            (
                "window-1",
                What::OutOfReach { height: inches("14"), reach: Reach::Public },
                "15\" to 48\" that everyone",
            ),
            (
                "window-1",
                What::OutOfReach { height: inches("14"), reach: Reach::NewDwelling },
                "new dwelling",
            ),
            ("display-1", What::OverFire, "its maker's limit governs"),
            (
                "display-1",
                What::HeavyLift { mass: Mass::pounds(60.0), limit: Mass::pounds(25.0) },
                "lift 25 lb so",
            ),
            (
                "display-1",
                What::HeavyLift { mass: Mass::pounds(60.0), limit: Mass::pounds(0.0) },
                "lift nothing so",
            ),
            ("wall-1", What::PullSmall { push: Force::newtons(58.84) }, "59 N"),
            ("display-1", What::DoorMeets { door: Id::new("door-1") }, "opens"),
            ("display-1", What::Stuffy { side: Direction::Up, room: inches("1") }, "above it"),
        ] {
            let subject = Subject::read(subject).unwrap();
            let finding = Finding { level: Level::Caution, subject, what, mend: Mend::OnSite };
            let text = super::super::finding(&sample::plan(), &finding);
            text.split_inclusive(". ").for_each(|sentence| well_told(sentence.trim()));
            assert!(text.contains(said), "{text}");
        }
    }
}
