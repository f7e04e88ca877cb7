//! How well uprights are told from hits, on walls made up so that the truth is known.
//!
//! While the model was worked on other seeds were used; the seed held out is run at the end only, here and by the
//! tests.

mod made;
mod measure;
mod probing;

use crate::demo::{busiest, machine, median, verdict};
use measure::{Tally, plan};
use probing::{Probing, next_probe_ms};
use std::process::ExitCode;
use std::time::Instant;

/// The seed that nothing was chosen by.
const HELD_OUT: u64 = 318_407;
/// So many walls of each kind.
const WALLS: usize = 2000;
/// One inference from 10 hits, at most, with all else that a solve of a wall without pieces does.
pub(crate) const BOUND_MS: f64 = 0.5;

/// The next probe, at most: on all walls of the busiest demo, and at 10 hits and 8 holes.
const NEXT_PROBE_MS: f64 = 50.0;

/// A figure, what it is to be held to, and whether it holds.
struct Row {
    name: &'static str,
    figure: f64,
    bound: String,
    holds: bool,
}

impl Row {
    fn least(name: &'static str, figure: f64, least: f64) -> Self {
        Self { name, figure, bound: format!("{least:.3} or more"), holds: figure >= least }
    }

    fn most(name: &'static str, figure: f64, most: f64) -> Self {
        Self { name, figure, bound: format!("{most:.3} or less"), holds: figure <= most }
    }

    fn between(name: &'static str, figure: f64, least: f64, most: f64) -> Self {
        let bound = format!("{least:.3} to {most:.3}");
        Self { name, figure, bound, holds: (least..=most).contains(&figure) }
    }
}

/// Prints the table of so many walls of a seed (2,000 and the one held out where not said) and says whether the
/// bounds held. With `untimed` nothing is timed.
pub(crate) fn report(arguments: &[String]) -> ExitCode {
    let timed = !arguments.iter().any(|one| one == "untimed");
    let mut numbers = arguments.iter().filter_map(|one| one.parse::<u64>().ok());
    let walls = numbers.next().and_then(|walls| usize::try_from(walls).ok()).unwrap_or(WALLS);
    let seed = numbers.next().unwrap_or(HELD_OUT);
    println!("framing: {walls} walls, seed {seed} ({})", machine());
    let rows = rows(&Tally::of(walls, seed, &made::PLAIN));
    let heavy = self::rows(&Tally::of(walls, seed, &made::HEAVY));
    println!("{:<46} {:>8} {:>8}   bound", "", "plain", "heavy");
    for (plain, heavy) in rows.iter().zip(&heavy) {
        println!("{:<46} {:>8.3} {:>8.3}   {}", plain.name, plain.figure, heavy.figure, plain.bound);
    }
    let mut more = vec![];
    let probing = Probing::of(walls / 10, seed);
    more.push(Row::most("probes by the usual way's, each hole 95 % sure", probing.share(), 0.7));
    more.push(Row::least("plates with wood in reach, every hole met", probing.sure.share(), 0.98));
    more.push(Row::least("holes called sure that are", probing.right.share(), 0.95));
    if probing.said_so.all > 0 {
        more.push(Row::least("plates without wood in reach not called met", probing.said_so.share(), 0.95));
    }
    if timed {
        match busiest() {
            Ok((_, job)) => more.push(Row::most("the next probe, ms", next_probe_ms(&job), NEXT_PROBE_MS)),
            Err(why) => {
                eprintln!("{why}");
                return ExitCode::from(2);
            }
        }
        more.push(Row::most("one inference from 10 hits, ms", inference_ms(10), BOUND_MS));
        more.push(Row::most(
            "ten times the hits take as much longer",
            inference_ms(200) / inference_ms(20),
            15.0,
        ));
    }
    for row in &more {
        println!("{:<46} {:>8.3} {:>8}   {}", row.name, row.figure, "-", row.bound);
    }
    let short: Vec<String> =
        rows.iter().chain(&more).filter(|row| !row.holds).map(|row| row.name.to_owned()).collect();
    verdict("framing", &short)
}

/// What is held: the bounds are of the plain noise, the other is only told.
fn rows(tally: &Tally) -> Vec<Row> {
    vec![
        Row::least("spacing right, four bays spanned", tally.spacing_right.share(), 0.975),
        Row::most("regular studs' error, root mean square, mm", tally.error_mm(), 3.2),
        // A lone reading is off by 3.9 mm, and no pattern helps.
        Row::most("the same beside openings, mm", tally.extra_error_mm(), 6.35),
        Row::most("spacing's probability off, 3 or 4 hits", tally.few.off(), 0.05),
        Row::most("the same, 5 to 10 hits", tally.many.off(), 0.05),
        Row::between("90 % intervals that hold the truth", tally.within.share(), 0.87, 0.93),
        Row::most("chance of solid wood off", tally.solid.off(), 0.04),
        Row::least("wrong hits found", tally.wrong_found.share(), 0.85),
        Row::most("good hits called wrong", tally.good_called_wrong.share(), 0.03),
        Row::least("no pattern given to random uprights", tally.no_pattern.share(), 0.95),
    ]
}

/// The median of a solve of a wall with so many hits and nothing to hang, in milliseconds.
pub(crate) fn inference_ms(hits: usize) -> f64 {
    let mut chance = crate::chance::Chance::of(1);
    let one = |_| {
        let made = made::Made::of(&mut chance, &made::PLAIN, hits, true);
        let start = Instant::now();
        std::hint::black_box(plan(&made));
        start.elapsed().as_secs_f64() * 1000.0
    };
    median((0..101).map(one).collect())
}
