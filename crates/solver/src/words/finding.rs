//! What a finding says.

mod clearance;
pub(super) mod cable;
mod holding;

use super::fastening::{because, brittle};
use super::phrase::{amount, beside, edge, mass, sentence};
use super::things::{piece_part, piece_words, thing, whole};
use crate::finding::{Finding, MissingWhat, What};
use crate::geometry::Direction;
use crate::handbook::viewing::REVIEW_OFF;
use crate::job::hidden::HiddenKind;
use crate::plan::Plan;
use crate::subject::Id;

/// What a finding says, with its values.
#[must_use]
pub fn finding(plan: &Plan, finding: &Finding) -> String {
    sentence(&clause(plan, finding))
}

pub(super) fn called(plan: &Plan, id: &Id) -> String {
    whole(plan, id).map_or_else(|| format!("\"{id}\""), |called| called.words)
}

/// The finding as a clause, without its capital and full stop.
pub(super) fn clause(plan: &Plan, finding: &Finding) -> String {
    let subject = &finding.subject;
    let piece = || piece_words(plan, subject);
    let plate = || piece_part(plan, subject, "plate");
    let part = || if subject.part_str() == "plate" { plate() } else { piece() };
    let size = |length| amount(plan, length);
    match &finding.what {
        What::OffWall { side, by } => {
            format!("{} goes {} past {}", part(), size(*by), limit(*side))
        }
        What::OverFeature { feature, .. } => format!("{} covers {}", piece(), called(plan, feature)),
        What::OverPiece { other } => format!("{} and {} cover each other", piece(), called(plan, other)),
        What::PlateShows { side, by } => {
            format!("{} shows {} past the {} of {}", plate(), size(*by), edge(*side), piece())
        }
        What::HoleOnHidden { hidden, .. } => {
            format!("{} would go into {}; leave it empty or move", thing(plan, subject), called(plan, hidden))
        }
        What::OverRating { mass: hung, rated } => format!(
            "{} weighs {}, its mount is rated for {} by its maker; choose another mount",
            piece(),
            mass(*hung),
            mass(*rated)
        ),
        What::PatternOutside { across, upright } => format!(
            "the mounting pattern of {}, {} by {}, is outside what its mount takes",
            piece(),
            size(*across),
            size(*upright)
        ),
        What::BracketsOffThreads { apart, across } => format!(
            "the brackets on {} were measured {} apart, and its threads are {} apart: measure the brackets and the play on it",
            piece(),
            size(*apart),
            size(*across)
        ),
        What::NoLiftRoom { side, room, needs } => format!(
            "{} needs {} {} to be put on, and there is {}",
            piece(),
            size(*needs),
            beside(*side),
            size(*room)
        ),
        What::NoAccessBelow { room, needs } => format!(
            "the mount asks for {} of free height below {} to lock it, and there is {}",
            size(*needs),
            piece(),
            size(*room)
        ),
        What::SwingMeets { other, .. } => {
            format!("swung out, {} can meet {}; limit the swing or move", piece(), thing(plan, other))
        }
        What::TiltMeets { other } => {
            format!("tilted, {} can meet {}; limit the tilt or raise it", piece(), thing(plan, other))
        }
        What::SeatTooNear { piece } => format!(
            "{} is no farther from the wall than {}: measure it again",
            thing(plan, &finding.subject),
            thing(plan, &piece.whole())
        ),
        What::LooksUp { piece, up } => format!(
            "from {} the middle of {} is {:.1} degrees up, over the {:.0} published ({}); hang it lower or tilt it",
            thing(plan, &finding.subject),
            thing(plan, &piece.whole()),
            up.deg(),
            REVIEW_OFF.value,
            REVIEW_OFF.source
        ),
        What::StandsOut { .. }
        | What::OutOfReach { .. }
        | What::OverFire
        | What::HeavyLift { .. }
        | What::PullSmall { .. }
        | What::DoorMeets { .. }
        | What::Stuffy { .. } => clearance::clause(plan, finding),
        What::PlateOverHump { proud } => {
            format!("{} lies where the wall is {} out of flat; shim it, never pull it in", plate(), size(*proud))
        }
        What::PlateOverProud { feature, proud } => format!(
            "{} lies over {}, which stands {} proud",
            plate(),
            called(plan, feature),
            size(*proud)
        ),
        What::NearBox { feature: None, .. } => format!(
            "{} is in the band along the wall's top or beside its inside corner, where cables may run; probe with care, \
             circuit off",
            thing(plan, subject)
        ),
        What::NearBox { feature: Some(feature), in_line } => format!(
            "{} {} {}: a cable may run there; probe with care, circuit off",
            thing(plan, subject),
            if *in_line { "is straight above, below or beside" } else { "is level with" },
            called(plan, feature)
        ),
        What::WetWall => "the wall is wet: pipes may be in it; probe before each hole".to_owned(),
        What::BehindHole { hidden, kind } => match kind {
            HiddenKind::PocketDoor => {
                format!("{} would go into the pocket of {}", thing(plan, subject), called(plan, hidden))
            }
            _ => format!("behind {} stands {}", thing(plan, subject), called(plan, hidden)),
        },
        What::Veneer => "veneer carries nothing: find what stands behind it".to_owned(),
        What::NoFraming => format!(
            "{} would be fixed to a wall without framing, which has nothing for a fastener to hold in; choose another wall or a stand",
            piece()
        ),
        What::OldWall { year, lead, asbestos } => {
            let age = year.map_or("the year built is not known".to_owned(), |year| format!("built in {year}"));
            let what = match (lead, asbestos) {
                (true, true) => "paint may hold lead and board or plaster asbestos",
                (true, false) => "paint may hold lead",
                _ => "board or plaster may hold asbestos",
            };
            format!("{age}: {what}; have it tested before any drilling or cutting")
        }
        What::FloorOutOfLevel { rise } => {
            let side = if rise.mm() < 0.0 { "left" } else { "right" };
            format!("the floor is {} higher at the {side} end of {}: strike a level line, do not measure both ends from the floor", size(rise.abs()), piece())
        }
        What::FloorNotRead => {
            "a level floor is taken: read it at each end of the level line".to_owned()
        }
        What::CrookedEdge { feature, left, right, split } => format!(
            "{} is out of level: the gap is {} at the left end of {} and {} at its right; it {}",
            called(plan, feature),
            size(*left),
            piece(),
            size(*right),
            if *split { "splits the difference" } else { "follows true level" }
        ),
        What::DoesNotClose { used, other } => format!(
            "the readings of {} do not close: {} is used, the other says {}, off by {}; measure it again",
            thing(plan, subject),
            size(*used),
            size(*other),
            size((*used - *other).abs())
        ),
        What::HeldAway { .. }
        | What::HoleApart { .. }
        | What::StruckElsewhere { .. }
        | What::CutOpening { .. }
        | What::LeftByOption { .. }
        | What::MovedSinceAgreed { .. } => done::clause(plan, finding),
        What::Ring => format!("{} is measured from what is measured from it; give one place from the wall", thing(plan, subject)),
        What::NotThere { named } => {
            format!("{} is measured from, placed by or fixed with \"{named}\", which is not there", thing(plan, subject))
        }
        What::Missing { what } => missing(*what, &piece()),
        What::ZeroSize => format!("{} has a size of nothing; measure it", thing(plan, subject)),
        What::ByHandNotMet => {
            let mut empty = plan
                .pieces
                .iter()
                .filter_map(|piece| piece.mount.as_ref())
                .flat_map(|mount| &mount.fastening.left_empty);
            let why = empty.find(|empty| empty.subject == *subject).map(|empty| because(plan, &empty.why));
            format!(
                "you chose {} by hand, and it takes no fastener: {}",
                thing(plan, subject),
                why.unwrap_or_default()
            )
        }
        What::Brittle => brittle().trim_end_matches('.').to_owned(),
        What::PastStud { by } => format!(
            "a fastener in {} would reach {} past the stud, where nobody knows what is; take a shorter one, or measure how \
             deep the studs are",
            thing(plan, subject),
            size(*by)
        ),
        What::MetalMet { hole } => {
            let then = match hole {
                Some(hole) => format!("{} is in line with it: find out what it is before any hole there", thing(plan, hole)),
                None => "what it is may run on up and down".to_owned(),
            };
            format!("metal was met at {}: no fastener goes near it, and {then}", thing(plan, subject))
        }
        What::SteelByMetal => format!(
            "{} is on studs met by metal and a magnet: pipes, ducts and armoured cable are metal too; make sure that it \
             is a stud before drilling",
            plate()
        ),
        What::PlateShort { used } => holding::short(&plate(), *used),
        What::PlateNotKnown { .. } => holding::not_known(plan, subject, &plate()),
        What::NoStudMet => format!("no hole of {} meets a stud", plate()),
        What::MoreStudsNear { studs, most, left, right } => {
            let mut ways = Vec::new();
            ways.extend(left.map(|by| format!("{} to the left", size(by))));
            ways.extend(right.map(|by| format!("{} to the right", size(by))));
            format!("{} meets {studs} of the studs; moved {} it meets {most}", plate(), ways.join(" or "))
        }
        What::NoEntry => format!(
            "there is no way inside the wall from behind {}: no room for the cables' entry, or nothing leads down from it",
            piece()
        ),
        What::Cable(what) => cable::clause(plan, finding, what),
        What::NoBay => {
            format!("the wall behind {} has no bays: run the cables on its surface and cut nothing", piece())
        }
        What::WithHelp { .. } => format!("{} cannot be reached with a tape alone: take it with help", thing(plan, subject)),
        What::OtherSide { outside, neighbour } => if *neighbour {
            "a neighbour, shaft or garage is on the other side: the wall may be fire-rated; ask before cutting"
        } else if *outside {
            "the wall is an outside one: cutting it breaks its seal; do not drill through"
        } else {
            "what is on the other side is not known: do not drill through"
        }
        .to_owned(),
        What::PlansOnly => "this plans and does not certify: the mount maker's instructions and local codes govern; the stud, the wall, the plate's own strength and the display's threads are not checked".to_owned(),
    }
}

/// The edge of the wall on a side.
fn limit(side: Direction) -> &'static str {
    match side {
        Direction::Left => "the wall's left end",
        Direction::Right => "the wall's right end",
        Direction::Up => "the ceiling",
        Direction::Down => "the floor",
    }
}

fn missing(what: MissingWhat, piece: &str) -> String {
    match what {
        MissingWhat::Mass => format!("the mass of {piece} is not given: weigh it or read it off the box"),
        MissingWhat::Pattern => format!("the mounting pattern of {piece} is not given: measure it"),
        MissingWhat::Rating => format!("the rating of the mount of {piece} is not given: read its label"),
        MissingWhat::Hits => {
            "the wall has no hits: what it is made of is not known; sweep it first".to_owned()
        }
        MissingWhat::Holes => format!("the holes of the plate of {piece} are not given: measure them"),
        MissingWhat::Mount => format!("{piece} has no mount and hangs on nothing"),
        MissingWhat::Thickness => {
            "the thickness in front of the framing is not given: the first probe to meet air gives it"
                .to_owned()
        }
        MissingWhat::Droop => {
            format!("how far the arm comes down under {piece} is not given: measure after hanging")
        }
    }
}

pub(super) mod done;
#[cfg(test)]
mod tests;
