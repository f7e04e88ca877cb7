//! What sheets say besides the plan's own sentences: titles, headings, columns, notes on scale.

use super::called::Called;
use super::fastening::{fastener_name, fine};
use super::phrase::{capital, count as count_of, named, one_line, way};
use super::reading::line_end;
use super::things::{from_lines, hole_name};
use crate::finding::{Finding, Level};
use crate::job::Job;
use crate::numeric::root;
use crate::plan::Plan;
use crate::plan::mark::{How, Mark, Reading};
use crate::plan::piece::{HolePlan, MountedPlan, PiecePlan};
use crate::plan::verdict::{BitFrom, FastenerPlan};
use crate::tape::Graduation;
use crate::units::Length;

/// The elevation alone.
pub const ELEVATION: &str = "Elevation";
/// Elevation, marks, fasteners, cables, findings.
pub const MARK_OUT: &str = "Mark-out";
/// The plate at full size.
pub const TEMPLATE: &str = "Full-size template";
/// In the place of a wall and its option, on a sheet of the whole job: the sheet tells the options.
pub const ALL_WALLS: &str = "all walls";
/// What to bring.
pub const CARRY: &str = "To bring";
/// The option for the customer.
pub const CUSTOMER: &str = "For the customer";
/// What was planned and done.
pub const HANDOVER: &str = "What was done";
/// The wall as the customer will see it.
pub const AS_SEEN: &str = "As it will be seen";
/// Over what the customer agreed to.
pub const AGREED: &str = "Agreed";
/// Over the marks at which something was done.
pub const DONE: &str = "Done, as it stands on the wall";
/// Where nothing was done yet.
pub const NOTHING_DONE: &str = "Nothing yet.";
/// Over the marks that are still to be taken.
pub const NOT_DONE: &str = "Not done";
/// Over what was met in the wall.
pub const MET: &str = "Met in the wall";
/// Over what has to follow.
pub const TO_FOLLOW: &str = "Still to be made good";
/// Over pictures that are of no mark.
pub const PICTURES: &str = "Pictures of the job";
/// Every sheet that there is.
pub const ALL: &str = "All sheets";
/// In the place of a scale's name where none of the usual ones is small enough.
pub const NOT_TO_SCALE: &str = "not to a standard scale";
/// At the foot of every page at full size.
pub const FULL_SIZE_FOOT: &str = "Full size, 1:1: measure the bar, 100 mm and 4 in, before you trust this page. Print at 100 %, not fitted to the \
     page. A plan, not a certificate.";
/// At the foot of every page.
pub const FOOT: &str = "A plan, not a certificate. The mount maker's instructions and local codes govern; probe before a stud is trusted.";
/// Over the marks.
pub const MARKS: &str = "Marks, in the order of work";
/// Over the schedule of fasteners.
pub const FASTENERS: &str = "Fasteners";
/// Over the columns of the schedule.
pub const SCHEDULE: [&str; 4] = ["Hole", "Fastener", "Lead hole", "Deep from the face"];
/// Over the cables' way and lengths.
pub const CABLES: &str = "Cables";
/// Over the findings.
pub const FINDINGS: &str = "Findings";
/// Over what was assumed.
pub const ASSUMED: &str = "Assumed";
/// What the finished piece can be off by.
pub const HOW_TRUE: &str = "How true it will be";
/// How the drawing is read.
pub const KEY: &str = "In the drawing: an underlined figure was measured; what is broken and pale is assumed or lies behind the face; blue \
                       lines are to be struck; green corners are tape; a hexagon rings a hole that takes a fastener, a filled hole \
                       meets a stud.";
/// How the drawing of what was done is read.
pub const KEY_DONE: &str = "In the drawing: teal is done, as it stands on the wall: what is struck, a filled dot for a hole that is \
     drilled, a crossed ring for one that is stripped, a crossed outline for an opening that is cut; blue is \
     planned and not struck yet; a thin line leads from what went elsewhere to a small cross where the plan has it now.";
/// Over the cautions, what is not checked among them.
pub const CAUTIONS: &str = "Not checked, and cautions";
/// In the place of a list that is empty.
pub const NONE: &str = "None.";

/// On a wall without a plate.
pub const NO_PLATE: &str = "Nothing hangs on a plate here, so that there is nothing to draw at full size.";
/// Over what is to be done with the tiles.
pub const HOW_TO: &str = "How to use it";
/// What is to be done with the tiles, in order.
pub const TEMPLATE_STEPS: [&str; 5] = [
    "Print at 100 %, never fitted to the page.",
    "On each page measure the bar at its foot, 100 mm and 4 in, before you trust it.",
    "Lay the tiles over one another so that their register marks fall together, against a window or a lamp, and tape \
     them. A tile with no neighbour is laid by the distances on it.",
    "Make the second check below, with a tape on the joined tiles.",
    "Put its level line and its centre line on the ones struck on the wall. Holes and openings are still probed first; the \
     marks and their readings govern.",
];
/// Over the map of the tiles.
pub const MAP: &str = "The tiles";
/// Over the distances that are measured on the joined tiles.
pub const SECOND_CHECK: &str = "Second check";
/// Over the list of holes, where fasteners are chosen.
pub const HOLES: &str = "Holes; the ringed ones take a fastener";
/// Over the list of holes, where none are.
pub const HOLES_ALONE: &str = "Holes";
/// Of a plate whose place hangs on an assumption.
pub const PLACE_ASSUMED: &str = "Where this plate goes on the wall is assumed in part: the template is of its true size, its place is not to be struck yet.";
/// On the level line.
pub const LEVEL_LINE: &str = "Level line";
/// On the centre line.
pub const CENTRE_LINE: &str = "Centre line";
/// On the opening behind the piece.
pub const ENTRY: &str = "Entry for the cables";
/// On the opening where the cables come out.
pub const EXIT: &str = "Exit for the cables";

/// How many tiles there are, on which paper.
#[must_use]
pub fn tiles(count: usize, paper: &str) -> String {
    format!("{} at full size on {paper} paper, after this.", capital(&count_of(count, "tile", "tiles")))
}

/// A tile by its number.
#[must_use]
pub fn tile(number: usize, of: usize) -> String {
    format!("Tile {number} of {of}")
}

/// On a seam: which tile is joined there.
#[must_use]
pub fn to_tile(number: usize) -> String {
    format!("to tile {number}")
}

/// Why a plate is not drawn at full size.
#[must_use]
pub fn not_measured(plan: &Plan, piece: &PiecePlan) -> String {
    let plate = Called::piece(plan, piece).own("plate");
    format!("The holes of {plate} are not measured: it is drawn at full size only once they are.")
}

/// What a hole is called at its place.
#[must_use]
pub fn hole_label(hole: &HolePlan) -> String {
    capital(&hole_name(&hole.id))
}

/// How far two holes of a plate are apart, middle to middle.
#[must_use]
pub fn apart(first: &HolePlan, second: &HolePlan) -> Length {
    let (a, b) = (first.in_plate, second.in_plate);
    let (x, y) = ((b.x - a.x).mm(), (b.y - a.y).mm());
    Length::millimetres(root(x * x + y * y))
}

/// Two holes and how far they are apart.
#[must_use]
pub fn pair(plan: &Plan, first: &HolePlan, second: &HolePlan) -> String {
    let apart = plan.style.print(apart(first, second));
    format!("{} to {}: {apart}", capital(&hole_name(&first.id)), hole_name(&second.id))
}

/// A hole and an end of the level line as it is drawn, and how far they are apart.
#[must_use]
pub fn to_level_end(plan: &Plan, hole: &HolePlan, end: &str, apart: Length) -> String {
    let name = capital(&hole_name(&hole.id));
    format!("{name} to the level line's {end} end: {}", plan.style.print(apart))
}

/// What the distances between holes are for.
#[must_use]
pub fn second_check(plan: &Plan) -> String {
    format!(
        "Measured with a tape on the joined tiles, from middle to middle. Where one differs by more than {}, do not use the \
         template.",
        plan.style.print_steps(1)
    )
}

/// A hole, where it is from the plate's two lines, and whether it takes a fastener: as a ring of six sides tells on the
/// drawing.
#[must_use]
pub fn hole(plan: &Plan, mount: &MountedPlan, hole: &HolePlan) -> String {
    let [across, upright] = from_lines(plan, hole.in_plate.x, hole.in_plate.y);
    let fastening = &mount.fastening;
    let takes = if fastening.fasteners.iter().any(|one| one.hole == hole.id) {
        "; ringed"
    } else if fastening.fasteners.is_empty() {
        ""
    } else {
        "; stays empty"
    };
    format!("{}: {across}, {upright}{takes}.", capital(&hole_name(&hole.id)))
}

/// Over where the piece's corners are.
#[must_use]
pub fn corners(plan: &Plan, piece: &PiecePlan) -> String {
    capital(Called::piece(plan, piece).own("corners").trim_start_matches("the "))
}

/// A corner of a piece by itself.
#[must_use]
pub fn corner_name(top: bool, left: bool) -> &'static str {
    match (top, left) {
        (true, true) => "top left corner",
        (true, false) => "top right corner",
        (false, true) => "bottom left corner",
        (false, false) => "bottom right corner",
    }
}

/// Where a corner of the piece is, right and up of where the plate's lines cross: a line an entry, and in one sentence
/// for a list that names the piece.
#[must_use]
pub fn corner(
    plan: &Plan,
    piece: &PiecePlan,
    (top, left): (bool, bool),
    right: Length,
    up: Length,
) -> ([String; 3], String) {
    let name = corner_name(top, left);
    let corner = Called::piece(plan, piece).own(name);
    let [across, upright] = from_lines(plan, right, up);
    let listed = format!("{}: {across}, {upright}.", capital(name.trim_end_matches(" corner")));
    (placed(plan, &capital(corner.trim_start_matches("the ")), right, up), listed)
}

/// Where the middle of an opening is, right and up of where the plate's lines cross: a line an entry.
#[must_use]
pub fn opening(plan: &Plan, name: &str, right: Length, up: Length) -> [String; 3] {
    placed(plan, &format!("{name}, its middle"), right, up)
}

fn placed(plan: &Plan, name: &str, right: Length, up: Length) -> [String; 3] {
    let [across, upright] = from_lines(plan, right, up);
    [format!("{name}:"), format!("{across},"), format!("{upright}.")]
}

/// The title of a job's sheets.
#[must_use]
pub fn title(job: &Job) -> String {
    let title = one_line(&job.title);
    if title.is_empty() { "A job without a title".to_owned() } else { title }
}

/// What the customer agreed to; that nothing is kept as agreed where nothing is.
#[must_use]
pub fn agreed(job: &Job, plan: &Plan) -> String {
    let options = job.wall(&plan.wall).map(|wall| wall.options.as_slice()).unwrap_or_default();
    let option = options.iter().find(|one| Some(&one.id) == plan.option.as_ref());
    match option.and_then(|option| option.agreed.as_ref()) {
        Some(agreed) => one_line(&agreed.words),
        None => "Nothing is kept as agreed to yet.".to_owned(),
    }
}

/// The wall and the option, as far as they have names: `Sink wall, over the plate shelf`.
#[must_use]
pub fn wall_and_option(job: &Job, plan: &Plan) -> String {
    wall_then_option(job, plan).into_iter().flatten().collect::<Vec<_>>().join(" \u{2013} ")
}

/// The same apart: the wall, then the option where there is one.
#[must_use]
pub fn wall_then_option(job: &Job, plan: &Plan) -> [Option<String>; 2] {
    let wall = job.wall(&plan.wall);
    let option = wall.and_then(|wall| wall.options.iter().find(|one| Some(&one.id) == plan.option.as_ref()));
    let name = named(wall.and_then(|wall| wall.name.as_ref()), &plan.wall);
    [Some(name), option.map(|option| named(option.name.as_ref(), &option.id))]
}

/// A sheet as a bookmark names it.
#[must_use]
pub fn sheet_of(sheet: &str, job: &Job, plan: &Plan) -> String {
    format!("{sheet}: {}", wall_and_option(job, plan))
}

/// What is to be done first.
#[must_use]
pub fn next(next: &str) -> String {
    format!("Next: {next}")
}

/// Why a text cannot be set on paper, and what to do.
#[must_use]
pub fn unset(text: &str, letter: char) -> String {
    // No letter that moves a terminal's cursor, or turns its lines about.
    let turns =
        |c: char| matches!(u32::from(c), 0x200B..=0x200F | 0x202A..=0x202E | 0x2060..=0x206F | 0xFEFF);
    let shown: String = text.chars().filter(|c| !c.is_control() && !turns(*c)).take(60).collect();
    format!(
        "the typeface for paper cannot set U+{:04X} in \"{shown}\": write that name in Latin, Greek or Cyrillic letters, \
         accented ones as one letter",
        u32::from(letter)
    )
}

/// The wall's verdict, named as such; `None` where nothing hangs on a mount.
#[must_use]
pub fn verdict(plan: &Plan) -> Option<String> {
    super::wall_verdict_line(plan).map(|line| format!("Verdict: {}", super::fastening::uncapital(&line)))
}

/// Which sheet, and which page of it.
#[must_use]
pub fn page(sheet: &str, number: usize, of: usize) -> String {
    format!("{sheet}, page {number} of {of}")
}

/// How many pages there are, on which paper, and how they come to be on it at their true size.
#[must_use]
pub fn pages(count: usize, paper: &str) -> String {
    let pages = capital(&count_of(count, "page", "pages"));
    format!("{pages} on {paper} paper. Print the PDF at 100 %, not fitted to the page.")
}

/// What becomes of pages that are to be printed.
pub const HOW_TO_PRINT: &str =
    "Saves a PDF and opens it in your system's viewer: print it from there at 100 % (actual size)";

/// Where the pages were saved.
#[must_use]
pub fn saved(path: &str, more: usize) -> String {
    let also = if more > 0 { format!(" and {more} more beside it") } else { String::new() };
    format!("Saved as {path}{also}.")
}

/// The next step after a save that is to be printed, where a viewer was opened, or why none was.
#[must_use]
pub fn to_print(viewer: Result<(), String>) -> String {
    let then =
        "print at 100 % (actual size), not fitted to the page, and measure the bar on it before you trust it";
    match viewer {
        Ok(()) => format!(
            "It opens in your system's viewer: {then}. If nothing opens, open the file yourself and do the same."
        ),
        Err(why) => format!("No viewer could be opened ({why}): open the file yourself, {then}."),
    }
}

/// Why there are no pages.
#[must_use]
pub fn not_drawn(why: &str) -> String {
    format!("There are no pages: {why}.")
}

/// The units and the graduation that readings are told in.
#[must_use]
pub fn units(plan: &Plan) -> &'static str {
    match plan.style.graduation {
        Graduation::Eighth => "Inches, to 1/8 in",
        Graduation::Sixteenth => "Inches, to 1/16 in",
        Graduation::ThirtySecond => "Inches, to 1/32 in",
        Graduation::Millimetre => "Millimetres, to 1 mm",
    }
}

/// Whether a letter is one that paper is sure to have: Latin, Greek or Cyrillic, and no accent typed apart.
fn is_plain(letter: char) -> bool {
    matches!(u32::from(letter), 0x20..=0x7E | 0xA0..=0x17F | 0x386..=0x3CE | 0x400..=0x45F)
}

/// The file a sheet was made from.
#[must_use]
pub fn file(name: &str) -> String {
    // A file is found by its name in its folder: letters that paper cannot have are only told as left out.
    let name: String = one_line(name).chars().map(|c| if is_plain(c) { c } else { '?' }).collect();
    if name.is_empty() { "Not saved yet".to_owned() } else { format!("File: {name}") }
}

/// A date as it was given.
#[must_use]
pub fn date(given: &str) -> String {
    one_line(given)
}

/// The readings of a mark in figures, each with its close: `right 24 1/4", closes 75 3/4"`; empty where nothing is
/// to be read, or nothing to be struck.
#[must_use]
pub fn figures(plan: &Plan, mark: &Mark) -> String {
    if mark.assumed || !mark.is_needed {
        return String::new();
    }
    let told: Vec<String> = mark.readings.iter().map(|reading| figure(plan, mark, reading)).collect();
    told.join("; ")
}

fn figure(plan: &Plan, mark: &Mark, reading: &Reading) -> String {
    let end = line_end(mark, reading).map(|end| format!("{end} end ")).unwrap_or_default();
    if reading.how == How::Line && reading.steps == 0 {
        return format!("{end}on {}", super::datum(plan, &reading.from));
    }
    let close = reading
        .close
        .as_ref()
        .map(|close| format!(", closes {}", plan.style.print_steps(close.closing.second.saturating_abs())));
    let (way, shown) = (way(reading.direction), plan.style.print_steps(reading.steps));
    format!("{end}{way} {shown}{}", close.unwrap_or_default())
}

/// A fastener as a row of the schedule, under [`SCHEDULE`].
#[must_use]
pub fn schedule_row(plan: &Plan, fastener: &FastenerPlan) -> [String; 4] {
    let lead = match (fastener.lead, &fastener.bit) {
        (None, _) => "by its own instructions".to_owned(),
        (Some(bit), BitFrom::NotInKit) => format!("{}, not in the kit", fine(bit)),
        (Some(bit), BitFrom::UsualSet | BitFrom::Kit(_)) => fine(bit),
    };
    let deep = fastener.depth.map_or_else(|| "not known".to_owned(), |deep| plan.style.print(deep));
    // Of the smooth shank both are told below the thread's.
    let (lead, deep) = match fastener.shank {
        Some((wide, shank_deep)) => (
            format!("{lead}, shank {}", fine(wide)),
            format!("{deep}, shank {}", plan.style.print(shank_deep)),
        ),
        None => (lead, deep),
    };
    [capital(&hole_name(&fastener.hole)), capital(&fastener_name(plan, fastener)), lead, deep]
}

/// A finding with its level before it.
#[must_use]
pub fn finding(plan: &Plan, finding: &Finding) -> String {
    format!("{}: {}", level(finding.level), super::finding(plan, finding))
}

/// A finding's level as a word.
#[must_use]
pub fn level(level: Level) -> &'static str {
    match level {
        Level::Stop => "Stop",
        Level::Caution => "Caution",
        Level::Note => "Note",
    }
}

#[cfg(test)]
mod tests {
    use super::super::sample;
    use super::*;

    fn told(id: &str) -> String {
        let plan = sample::plan();
        figures(&plan, plan.marks.iter().find(|mark| mark.id.to_string() == id).unwrap())
    }

    #[test]
    fn a_mark_s_figures_are_its_readings_and_closes() {
        assert_eq!(told("display-1.centre_line"), "right 24 1/4\", closes 75 3/4\"");
        assert_eq!(told("display-1.level_line"), "left end up 52\"; right end up 52 1/4\"");
        assert_eq!(told("display-1.hole-2"), "down 1 1/2\"; right 8\"");
        assert_eq!(told("display-1.lift_on"), "");
    }

    #[test]
    fn what_is_not_to_be_struck_shows_no_figures() {
        let mut plan = sample::plan();
        for mark in &mut plan.marks {
            mark.assumed = true;
        }
        assert!(plan.marks.iter().all(|mark| figures(&plan, mark).is_empty()));
    }

    #[test]
    fn a_job_without_names_is_still_titled() {
        let plan = sample::plan();
        let job = Job::new();
        assert_eq!(title(&job), "A job without a title");
        assert_eq!(wall_and_option(&job, &plan), "wall-1");
        assert_eq!(units(&plan), "Inches, to 1/16 in");
        assert_eq!(file(" a\nb.ron"), "File: a b.ron");
        assert_eq!(file(""), "Not saved yet");
    }
}
