//! What to bring, a line a thing, and what asks for it.

mod screws;

use super::cable::up_to_graduation;
use super::fastening::{because, fine, size_name, size_told};
use super::lines::Text;
use super::on_paper::wall_and_option;
use super::phrase::{self, count, list, mass, one_line, sentence};
use super::things::piece_kind;
use crate::carry::{Asks, Carried, CarryLine, Holes, Whose};
use crate::job::Job;
use crate::job::kit::FastenerKind;
use crate::plan::Plan;
use crate::solve::chosen_option;
use crate::units::Length;

/// What to bring, with how many: `5 lag screws...`; without a full stop.
#[must_use]
pub fn carried(plan: &Plan, line: &CarryLine) -> String {
    let print = |length: Length| plan.style.print(length);
    let what = match &line.what {
        Carried::Fasteners { kind, diameter, length, spares } => {
            format!("{}, {}", size_name(plan, *kind, *diameter, *length), to_spare(*spares))
        }
        Carried::Anchors { diameter, length, spares } => {
            format!("{}, {}", size_told(plan, FastenerKind::Anchor, *diameter, *length), to_spare(*spares))
        }
        Carried::NotChosen { holes, mount, whose } => {
            let mount = one_line(mount);
            let of = if mount.is_empty() { format!("the mount of {}", named(whose)) } else { mount };
            format!("fasteners for {holes} {} of {of}", if *holes == 1 { "hole" } else { "holes" })
        }
        Carried::OwnFixings(whose) => format!("what {} is fixed with", named(whose)),
        Carried::Washers { thick, supposed: false } => format!("washer {} thick", fine(*thick)),
        Carried::Washers { thick, supposed: true } => {
            format!("washer {} thick (supposed; measure those on the truck)", print(*thick))
        }
        Carried::Bit { diameter, masonry: true } => format!("masonry bit {}", fine(*diameter)),
        Carried::Bit { diameter, masonry: false } => format!("drill bit {}", fine(*diameter)),
        Carried::BitToFit => "masonry bits as wide as the fasteners' own instructions say".to_owned(),
        Carried::BitExtension => "extension for bits".to_owned(),
        Carried::HammerDrill => "hammer drill".to_owned(),
        Carried::Socket => "sockets and a ratchet".to_owned(),
        Carried::DriverBits => "driver bits".to_owned(),
        Carried::RightAngleDriver => "right-angle driver".to_owned(),
        Carried::Saw => "saw for openings".to_owned(),
        Carried::Box(name) => format!("box: {name}"),
        Carried::Gang { two: false } => "one-gang box or bracket".to_owned(),
        Carried::Gang { two: true } => "two-gang box or bracket".to_owned(),
        Carried::NailPlates => "nail plate".to_owned(),
        Carried::Cable { name, length, stocked } => {
            let name = if name.is_empty() { "cable".to_owned() } else { format!("cable {name}") };
            // A length to cut is told up, as in the plan: one that is too short is none.
            let (how, length) = match *stocked {
                true => ("stocked length", print(*length)),
                false => ("to be cut", up_to_graduation(plan, *length)),
            };
            format!("{name}, {length} ({how})")
        }
        Carried::PullString => "pull string".to_owned(),
        Carried::FishTape => "fish tape".to_owned(),
        Carried::Mirror => "inspection mirror and a light".to_owned(),
        Carried::Patch => "patch material".to_owned(),
        Carried::FireSeal => "approved material to seal fire blocks".to_owned(),
        Carried::Bushings => "bushing for a steel stud".to_owned(),
        Carried::Channel(length) => format!("cable channel for the face, {} in all", print(*length)),
        Carried::PieceScrews { thread, length, .. } => screws::screws(*thread, length),
        Carried::SecondPerson => "second person for the lift".to_owned(),
        Carried::Ledger => "ledger (a straight board and its screws) to stand the plate on".to_owned(),
        Carried::LineLaser => "line laser".to_owned(),
        Carried::LaserOrWaterLevel => "line laser or water level".to_owned(),
        Carried::DistanceMeter => "distance meter and a card to hold on the mark".to_owned(),
        Carried::TapeMeasure => "tape measure".to_owned(),
        Carried::Level => "level".to_owned(),
        Carried::Detector => "stud detector or magnet".to_owned(),
        Carried::Awl => "awl or thin bit to probe with".to_owned(),
        Carried::Tester => "voltage tester".to_owned(),
        Carried::Marking => "pencil, chalk line and painter's tape".to_owned(),
        Carried::Shims => "shims".to_owned(),
        Carried::Vacuum => "vacuum cleaner".to_owned(),
        Carried::DropCloth => "drop cloth".to_owned(),
    };
    match line.count {
        Some(many) => format!("{many} x {what}"),
        None => super::phrase::capital(&what),
    }
}

/// What asks for a line, and how many the kit lacks: a sentence.
#[must_use]
pub fn carried_why(plan: &Plan, line: &CarryLine) -> String {
    let why = match &line.why {
        Asks::Holes(holes) => told(holes, "hole", "holes"),
        Asks::OverBoard(holes) => format!(
            "{}, only if its maker wants those filled: anchors in board count for nothing",
            told(holes, "hole over board", "holes over board")
        ),
        Asks::LeadHoles(holes) => told(holes, "lead hole", "lead holes"),
        Asks::Masonry(holes) => {
            told(holes, "hole in concrete or masonry", "holes in concrete or masonry")
        }
        Asks::Deep(deep, holes) => {
            format!("{}, as deep as {} from the face", told(holes, "hole", "holes"), plan.style.print(*deep))
        }
        Asks::Tight(holes) => {
            let near = "close to a side wall or to what stands out";
            format!("{}, {near}", told(holes, "hole", "holes"))
        }
        Asks::NoneChosen(None) => "no fastener is chosen yet; see the plan".to_owned(),
        Asks::NoneChosen(Some(empty)) => {
            format!("no fastener is chosen yet ({}); see the plan", because(plan, empty))
        }
        Asks::ItsMaker => {
            "no mount of the job holds it, so that it is fixed as its maker says and its holes are not planned"
                .to_owned()
        }
        Asks::Openings(openings) => count(*openings, "opening for cables", "openings for cables"),
        Asks::Cables(cables) => count(*cables, "cable", "cables"),
        Asks::Bored(studs) => format!("{} bored for cables", count(*studs, "stud", "studs")),
        Asks::StudOpenings(openings) => {
            format!(
                "{} that cables pass",
                count(*openings, "opening in a steel stud", "openings in steel studs")
            )
        }
        Asks::Blocks(blocks) => format!("{} that cables pass", count(*blocks, "fire block", "fire blocks")),
        Asks::Uncovered(holes) => format!("{} that nothing covers", count(*holes, "place", "places")),
        Asks::Piece(name) if name.trim().is_empty() => "a piece on brackets".to_owned(),
        Asks::Piece(name) => format!("\"{}\" on brackets", one_line(name)),
        Asks::Weight(weighs) => {
            format!("a piece of {} is more than one person should lift there", mass(*weighs))
        }
        Asks::HeldPlates(of) => {
            let of: Vec<String> = of.iter().map(named).collect();
            let plates = if of.len() == 1 { "plate" } else { "plates" };
            format!(
                "the {plates} of {}, too heavy to hold and drill alone, or not weighed; a second person does as well",
                list(&of)
            )
        }
        Asks::LaserReadings(readings) => {
            format!("{} from its ticks", count(*readings, "reading", "readings"))
        }
        Asks::LineReadings(readings) => {
            let readings = count(*readings, "reading", "readings");
            format!("{readings} from the control line, to check it or strike it again")
        }
        Asks::MeterReadings(readings) => {
            format!("{} by it", count(*readings, "reading", "readings"))
        }
        Asks::OutOfFlat => "a wall that is out of flat under the plate".to_owned(),
        Asks::Marks => "every mark".to_owned(),
        Asks::Drilling => "every wall that is drilled or opened".to_owned(),
    };
    let why = match &line.what {
        Carried::PieceScrews { insert, length, .. } => {
            format!("{why}: {}", screws::screws_why(*insert, length))
        }
        _ => why,
    };
    let short = line.short_by.map_or_else(String::new, |lacks| match line.what {
        Carried::Patch => {
            format!("; the kit lacks it for {}", count(lacks, "of them", "of them"))
        }
        _ => format!("; the kit lacks {lacks}"),
    });
    sentence(&format!("{why}{short}"))
}

fn to_spare(spares: usize) -> String {
    let spare = if spares == 1 { "one".to_owned() } else { spares.to_string() };
    format!("{spare} of them to spare")
}

/// `four lead holes of the plate of Wide screen`.
fn told(holes: &Holes, one: &str, many: &str) -> String {
    let of: Vec<String> = holes.of.iter().map(named).collect();
    let plates = if of.len() == 1 { "plate" } else { "plates" };
    format!("{} of the {plates} of {}", count(holes.count, one, many), list(&of))
}

/// A piece by its name, else by its kind and its wall's name.
fn named(whose: &Whose) -> String {
    let (name, wall) = (one_line(&whose.name), one_line(&whose.wall));
    match (name.is_empty(), wall.is_empty()) {
        (false, _) => name,
        (true, true) => format!("the {}", piece_kind(whose.kind)),
        (true, false) => format!("the {} on {wall}", piece_kind(whose.kind)),
    }
}

/// Which option of each wall the list is for, that which is planned, else the chosen one: a sentence.
#[must_use]
pub fn carried_for(job: &Job, planned: &[&Plan]) -> String {
    let walls: Vec<String> = job
        .walls
        .iter()
        .map(|wall| match planned.iter().find(|plan| plan.wall == wall.id) {
            Some(plan) => wall_and_option(job, plan),
            None => {
                let name = phrase::named(wall.name.as_ref(), &wall.id);
                let option = chosen_option(wall).map(|one| phrase::named(one.name.as_ref(), &one.id));
                option.map_or(name.clone(), |option| format!("{name} \u{2013} {option}"))
            }
        })
        .collect();
    sentence(&format!("for {}", walls.join("; ")))
}

/// The list of a job as text for a terminal, told in the first plan's units; empty for no lines.
#[must_use]
pub fn carry_text(job: &Job, planned: &[&Plan], lines: &[CarryLine]) -> String {
    let mut text = Text::default();
    let Some(plan) = planned.first().filter(|_| !lines.is_empty()) else { return text.written };
    text.line(0, "To bring, for all walls");
    text.line(2, &carried_for(job, planned));
    for line in lines {
        text.line(2, &format!("{}: {}", carried(plan, line), uncapital(&carried_why(plan, line))));
    }
    text.written
}

/// A sentence after a colon: none here begins with a name.
fn uncapital(sentence: &str) -> String {
    let mut letters = sentence.chars();
    letters.next().map_or_else(String::new, |first| first.to_lowercase().chain(letters).collect())
}

#[cfg(test)]
mod tests {
    use super::super::sample::{self, inches, well_told};
    use super::*;
    use crate::carry::{ScrewLength, ToMeasure};
    use crate::job::piece::PieceKind;
    use crate::plan::piece::Meets;
    use crate::plan::verdict::EmptyWhy;
    use crate::units::Mass;

    #[test]
    fn each_line_says_what_and_why() {
        let plan = sample::plan();
        let whose = || Whose { name: "Notices".to_owned(), kind: PieceKind::Display, wall: String::new() };
        let nameless = Whose { name: String::new(), wall: "Sink wall".to_owned(), ..whose() };
        let holes = |count| Holes { count, of: vec![whose(), nameless.clone()] };
        let lag = Carried::Fasteners {
            kind: FastenerKind::Lag,
            diameter: inches("5/16"),
            length: inches("3"),
            spares: 1,
        };
        for (what, count, why, said) in [
            (lag, Some(5), Asks::Holes(holes(4)), "5 x lag screw 5/16\" x 3\", one of them to spare"),
            (Carried::HammerDrill, None, Asks::Masonry(holes(1)), "Hammer drill"),
            (
                Carried::NotChosen { holes: 8, mount: "Flat rail".to_owned(), whose: whose() },
                None,
                Asks::NoneChosen(Some(EmptyWhy::Meets(Meets::Masonry))),
                "Fasteners for 8 holes of Flat rail",
            ),
            (
                Carried::OwnFixings(nameless.clone()),
                None,
                Asks::ItsMaker,
                "What the display on Sink wall is fixed with",
            ),
            (
                Carried::Washers { thick: inches("1/8"), supposed: true },
                Some(5),
                Asks::Tight(holes(4)),
                "5 x washer 1/8\" thick (supposed",
            ),
            (Carried::Saw, None, Asks::Openings(2), "Saw for openings"),
            (Carried::SecondPerson, Some(1), Asks::Weight(Mass::pounds(60.0)), "1 x second person"),
            (Carried::Channel(inches("30")), None, Asks::Cables(2), "30\" in all"),
            (
                Carried::PieceScrews {
                    thread: None,
                    insert: Some(inches("3/4")),
                    length: ScrewLength::NotKnown(vec![ToMeasure::Spacer]),
                },
                Some(4),
                Asks::Piece("Notices".to_owned()),
                "4 x screw of the piece's own thread for the brackets, length not known",
            ),
        ] {
            let line = CarryLine { what, count, why, short_by: Some(2) };
            let text = carried(&plan, &line);
            assert!(text.contains(said), "{text}");
            let why = carried_why(&plan, &line);
            well_told(&why);
            assert!(why.ends_with("; the kit lacks 2."), "{why}");
        }
    }
}
