//! Findings of the cables' way.

use super::super::cable::{against_words, up_to_graduation};
use super::super::phrase::{amount, count, list};
use super::super::things::piece_words;
use super::called;
use crate::finding::Finding;
use crate::finding::cable::CableWhat;
use crate::handbook::old_paint::MINOR_FT2;
use crate::handbook::power_wiring::BENDS_DEG;
use crate::plan::Plan;
use crate::plan::cable::Unknown;
use crate::units::LengthUnit;

/// Square metres of a square foot, exactly.
const M2_PER_FT2: f64 = 0.3048 * 0.3048;

/// A finding as a clause.
pub(super) fn clause(plan: &Plan, finding: &Finding, what: &CableWhat) -> String {
    let piece = || piece_words(plan, &finding.subject);
    let size = |length| amount(plan, length);
    let opening = |exit: &bool| if *exit { "the cables' exit" } else { "the cables' entry" };
    match what {
        CableWhat::NoWay { is_there: false, .. } => {
            format!("no way leads from the ports of {} to where the cables should end", piece())
        }
        CableWhat::NoWay { against, .. } => {
            let told: Vec<String> = against.iter().map(|one| against_words(*one).to_owned()).collect();
            format!(
                "no way for the cables of {} is both hidden and allowed; the least bad is told, and {}",
                piece(),
                list(&told)
            )
        }
        CableWhat::EntryShows { swung: false } => {
            format!("the cables' entry is not fully hidden behind {}", piece())
        }
        CableWhat::EntryShows { swung: true } => {
            format!("swung out, {} does not hide the cables' entry", piece())
        }
        CableWhat::FaceInstead { against, shows } => {
            let mut told: Vec<String> = against.iter().map(|one| against_words(*one).to_owned()).collect();
            if plan.style.steps(*shows) > 0 {
                told.push(format!(
                    "{} would show, since nothing leads down to where it should end",
                    size(*shows)
                ));
            }
            format!(
                "the cables of {} run on the wall's face: of the best way inside it, {}",
                piece(),
                list(&told)
            )
        }
        CableWhat::WayShows { shows } => format!(
            "the cables of {} cannot come out where they should inside the wall, and {} of them shows",
            piece(),
            size(*shows)
        ),
        CableWhat::BayBlocked { by, passed: true } => {
            format!("{} stands in the cables' way straight down, and they go through it", called(plan, by))
        }
        CableWhat::BayBlocked { by, passed: false } => {
            format!("{} stands in the cables' way straight down, so they go another way", called(plan, by))
        }
        CableWhat::ExitBay { beside, shows } => format!(
            "the cables come out in another bay than {}: {} of them shows",
            called(plan, beside),
            size(*shows)
        ),
        CableWhat::SealPierced { insulated, barrier, outside } => {
            let mut through = Vec::new();
            through.extend(insulated.then(|| "insulation".to_owned()));
            through.extend(barrier.then(|| "a vapour barrier".to_owned()));
            through.extend(outside.then(|| "the seal of an outside wall".to_owned()));
            format!(
                "the cables' entry and exit go through {}: close them again round the cables",
                list(&through)
            )
        }
        CableWhat::NearOpening { feature: Some(feature), exit } => format!(
            "a cable of {} may run behind {}: circuit off, look in before cutting",
            called(plan, feature),
            opening(exit)
        ),
        CableWhat::NearOpening { feature: None, exit } => format!(
            "{} is in the band along the wall's top or beside its inside corner, where cables may run",
            opening(exit)
        ),
        CableWhat::NearPassage(feature) => format!(
            "a cable of {} may run where a stud or block is passed: circuit off, look in before boring",
            called(plan, feature)
        ),
        CableWhat::PowerApart { other, apart, wanted } => format!(
            "the cables come within {} of {}; keep {} from power",
            size(*apart),
            called(plan, other),
            size(*wanted)
        ),
        CableWhat::TooLong { length, longest, stocked: true, .. } => format!(
            "the stocked cable for {} is {}, and such a one carries over {}: bring a shorter one, which is long enough",
            piece(),
            size(*length),
            size(*longest)
        ),
        CableWhat::TooLong { length, longest, unknown: true, .. } => format!(
            "a cable of {} has to be {}, and a passive picture lead carries over {}: say what it carries",
            piece(),
            size(*length),
            size(*longest)
        ),
        CableWhat::TooLong { length, longest, .. } => format!(
            "a cable of {} has to be {} and carries over {}; take an active or optical one, or a shorter way",
            piece(),
            size(*length),
            size(*longest)
        ),
        CableWhat::BendTight { needs, room } => format!(
            "a plug or the bend of its cable needs {} behind {}, and there is {}",
            size(*needs),
            piece(),
            size(*room)
        ),
        CableWhat::RoomNotKnown { stand_off, plug, cable } => {
            let asked = [
                (*stand_off, "how far it stands off the wall"),
                (*plug, "which way its plugs point and how far they reach"),
                (*cable, "the cable's least bend or its diameter"),
            ];
            let asked: Vec<String> =
                asked.iter().filter(|(is_asked, _)| *is_asked).map(|(_, what)| (*what).to_owned()).collect();
            format!(
                "whether plugs and bends find room behind {} is not known: measure {}",
                piece(),
                list(&asked)
            )
        }
        CableWhat::StudsNotKnown => format!(
            "the studs where the cables of {} run are not known: sweep and look there before anything is cut",
            piece()
        ),
        CableWhat::FewOutlets { found, wanted } => format!(
            "a dwelling's wall as wide has {} at least and {} measured: look behind furniture, since a cable of power \
             runs to each",
            count(*wanted, "outlet", "outlets"),
            match found {
                0 => "none was".to_owned(),
                1 => "one was".to_owned(),
                more => format!("{more} were"),
            }
        ),
        CableWhat::BlocksExpected { each } => format!(
            "a wall so high has {} in each bay at least, and not as many were found: look before the cables are fished",
            count(*each, "fire block", "fire blocks")
        ),
        CableWhat::BoxDeep { deep, room: None, exit, .. } => format!(
            "whether the box for {}, {} deep, goes in is not known: measure how deep the studs are",
            opening(exit),
            size(*deep)
        ),
        CableWhat::BoxDeep { deep, room: Some(room), no_front: true, exit } => format!(
            "the box for {} is {} deep and the studs {}: measure what stands in front of them first",
            opening(exit),
            size(*deep),
            size(*room)
        ),
        CableWhat::BoxDeep { deep, room: Some(room), exit, .. } => format!(
            "the box for {} is {} deep, and the wall has {} behind its face",
            opening(exit),
            size(*deep),
            size(*room)
        ),
        CableWhat::BoxNotMeasured { exit } => {
            format!("whether the box for {} goes in is not known: measure how deep it is", opening(exit))
        }
        CableWhat::WayNotKnown { why } => {
            let why: Vec<String> = why.iter().map(|one| to_find(plan, one)).collect();
            format!("whether the cables may go this way is not known: {}", list(&why))
        }
        CableWhat::NailPlate { left, thick } => format!(
            "a bored hole leaves {} to the stud's face: nail a steel plate over it, at least {} thick (the rule is for power wiring, and good \
             practice for these cables)",
            size(*left),
            up_to_graduation(plan, *thick)
        ),
        CableWhat::SealBlock { block } => format!(
            "where the cables pass {}, seal it again with an approved material and patch the face",
            called(plan, block)
        ),
        CableWhat::Bushing { opening } => format!(
            "put a bushing into {} before cables are drawn through it, and patch the face: its edge cuts them",
            called(plan, opening)
        ),
        CableWhat::PaintDisturbed { hundredths, about } => {
            let about = if *about { "about " } else { "" };
            let (much, limit) = match plan.style.graduation.unit() {
                LengthUnit::Inch | LengthUnit::Mil => {
                    (format!("{} square feet", decimal(*hundredths)), format!("{:.0}", MINOR_FT2.value))
                }
                LengthUnit::Millimetre => {
                    let metres = f64::from(*hundredths) / 100.0 * M2_PER_FT2;
                    (format!("{metres:.2} square metres"), format!("{:.3}", MINOR_FT2.value * M2_PER_FT2))
                }
            };
            format!(
                "{about}{much} of paint are disturbed on this wall: old paint may hold lead, and {limit} or more in one \
                 room, its other walls counted in, is no minor repair"
            )
        }
        CableWhat::BreastWay => {
            "the cables run in a chimney breast: have the flue found first, heat ends a cable".to_owned()
        }
        CableWhat::PowerCord => format!(
            "the power cord of {} never goes into the wall or on to its face: ask a licensed electrician for an outlet behind \
             it where there is none, or for an in-wall power kit if listed for it",
            piece()
        ),
        CableWhat::NotListed { unknown: true } => {
            "whether every cable is listed for inside a wall is not known: read its jacket".to_owned()
        }
        CableWhat::NotListed { unknown: false } => {
            "a cable is not listed for inside a wall: take one that is".to_owned()
        }
        CableWhat::TubeFull { percent, most } => {
            format!("the tube would be {percent} % full, and may be {most} %")
        }
        CableWhat::StockShort { needs } => {
            format!(
                "no cable like the one chosen is left on the truck that is long enough for {}: {} are needed",
                piece(),
                up_to_graduation(plan, *needs)
            )
        }
        CableWhat::ManyBends => format!(
            "the way turns by more than {:.0} degrees: leave a place to pull from between",
            BENDS_DEG.value
        ),
    }
}

/// What finds out what a way hangs on.
pub(in super::super) fn to_find(plan: &Plan, one: &Unknown) -> String {
    match one {
        Unknown::Framing(of) if *of == plan.wall => "find out what the wall is built of".to_owned(),
        Unknown::Framing(of) => format!("find out what {} is built of", called(plan, of)),
        Unknown::Flange => "measure how wide the flange of the steel studs is".to_owned(),
        Unknown::Supposed(id) => format!("see whether {} is where it is supposed", called(plan, id)),
        Unknown::Bore => "measure the plugs, the cables or the tube: how large a hole the stud loses hangs on them".to_owned(),
        Unknown::FireRating => {
            "ask whether the wall is fire-rated, since a neighbour is beyond it; then what goes into it is for that rating"
                .to_owned()
        }
        Unknown::Flue(breast) => format!("find out where the flue runs in {}", called(plan, breast)),
    }
}

/// Hundredths as a number with two places.
fn decimal(hundredths: u32) -> String {
    format!("{}.{:02}", hundredths / 100, hundredths % 100)
}
