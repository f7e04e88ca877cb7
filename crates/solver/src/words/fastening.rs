//! The verdict on a plate, its schedule of fasteners and its empty holes.

mod clauses;

pub(super) use clauses::want;
pub use clauses::{rests_on, wanted};

use super::called::Called;
use super::case::{case, case_kind, why};
use super::phrase::{capital, count, list, mass, one_line, sentence};
use super::things::{hole_name, piece_of, thing};
use crate::capacity::group::Word;
use crate::capacity::why::Why;
use crate::choosing::BetterHoles;
use crate::handbook::wood_screw;
use crate::job::Job;
use crate::job::kit::{FastenerKind, FastenerStock};
use crate::plan::Plan;
use crate::plan::piece::{Meets, PiecePlan};
use crate::plan::verdict::{
    BitFrom, EmptyWhy, FastenerPlan, Fastening, InBoard, LeftEmpty, OfKit, Required, Rest, Verdict,
};
use crate::subject::Id;
use crate::tolerance::SAME_SIZE_IN;
use crate::units::{Length, LengthUnit};

/// A verdict's word.
#[must_use]
pub fn verdict_word(word: Word) -> &'static str {
    match word {
        Word::Holds => "holds",
        Word::Short => "short",
        Word::NotKnown => "not known",
    }
}

/// The verdict for the one line over the drawing: the word, how much is used and what to do first.
#[must_use]
pub fn verdict_line(plan: &Plan, fastening: &Fastening) -> String {
    let verdict = &fastening.verdict;
    let mut line = capital(verdict_word(verdict.word));
    if let Some(governing) = &verdict.governing {
        line.push_str(&format!(", {} used", share(governing.used)));
    }
    match verdict.wanted.first() {
        Some(first) if verdict.word == Word::NotKnown => {
            let probed = if verdict.if_probed == Word::NotKnown {
                String::new()
            } else {
                format!(" ({} if probed)", verdict_word(verdict.if_probed))
            };
            format!("{line}{probed}: {}.", want(plan, first))
        }
        _ => format!("{line}."),
    }
}

/// The verdict in full, a sentence an entry; what it rests on comes last.
#[must_use]
pub fn verdict(plan: &Plan, fastening: &Fastening) -> Vec<String> {
    let mut told = verdict_alone(plan, fastening);
    let rests = rests_on(plan, fastening);
    if !rests.is_empty() {
        told.push(format!("It rests on what is chosen: {}.", rests.join("; ")));
    }
    told
}

/// On how many chosen values it rests, as a title.
#[must_use]
pub fn rests_on_title(values: usize) -> String {
    format!("Rests on {}", count(values, "chosen value", "chosen values"))
}

/// The verdict without what it rests on, a sentence an entry.
#[must_use]
pub fn verdict_alone(plan: &Plan, fastening: &Fastening) -> Vec<String> {
    let verdict = &fastening.verdict;
    let mut told = vec![cases(plan, verdict)];
    told.extend(case_by_case(plan, verdict));
    match verdict.required {
        Required::Met => {}
        Required::NotMet => {
            told.push("What the mount's maker requires is not met: that is short.".to_owned());
        }
        Required::NotKnown => {
            told.push("Whether what the mount's maker requires is met is not known yet.".to_owned());
        }
    }
    if verdict.if_probed != verdict.word {
        told.push(format!(
            "If each stud in use is met where it is expected: {}.",
            verdict_word(verdict.if_probed)
        ));
    }
    if verdict.as_stated != verdict.if_probed {
        let used = verdict.governing.as_ref().map(|governing| format!(", {} used", share(governing.used)));
        told.push(format!(
            "By the maker's values: {}{}.",
            verdict_word(verdict.as_stated),
            used.unwrap_or_default()
        ));
    }
    if verdict.searched {
        told.push(
            "The fasteners are the best that a search by single holes found, not of every set.".to_owned(),
        );
    }
    told.extend(fastening.anchors.as_ref().map(in_board));
    let wanted = wanted(plan, fastening);
    if !wanted.is_empty() {
        told.push(sentence(&list(&wanted)));
    }
    told
}

/// Why a drywall screw is refused, as a sentence.
#[must_use]
pub fn brittle() -> &'static str {
    "A drywall screw is hardened and brittle: it snaps without a warning, so that it is no structural fastener and the \
     plan never uses it."
}

/// What anchors in board would add.
fn in_board(anchors: &InBoard) -> String {
    let each = [(anchors.shear, "shear"), (anchors.pull, "pull")]
        .into_iter()
        .filter_map(|(load, way)| Some(format!("{:.0} N of {way}", load?.n().floor())));
    let each: Vec<String> = each.collect();
    let holes = if anchors.holes == 1 { "1 hole".to_owned() } else { format!("{} holes", anchors.holes) };
    format!(
        "Anchors in board are no part of this: by their maker's rating, taken at a quarter, each would add {} at {holes} \
         over board.",
        list(&each)
    )
}

/// Case by case: what is known, and what is not.
fn cases(plan: &Plan, verdict: &Verdict) -> String {
    let word = verdict_word(verdict.word);
    let worst = verdict.governing.as_ref().map(|governing| {
        let hole = hole_name(&Id::new(governing.hole.part_str()));
        format!("{}, {} used at {hole}", case(&governing.case), share(governing.used))
    });
    let beyond =
        verdict.uncarried.map(|(name, reason)| format!("{}: not known, {}", case(&name), why(plan, &reason)));
    match (worst, beyond) {
        (Some(worst), None) => format!("Verdict: {word}. The worst is {worst}."),
        (Some(worst), Some(beyond)) => {
            let known = verdict.governing.as_ref().is_some_and(|governing| governing.used <= 1.0);
            let known = verdict_word(if known { Word::Holds } else { Word::Short });
            format!("Verdict: {word}. Of what is known the worst is {worst}: {known}; {beyond}.")
        }
        (None, Some(beyond)) => format!("Verdict: {word}. {}.", capital(&beyond)),
        (None, None) => format!("Verdict: {word}."),
    }
}

/// What each kind of case comes to, where they do not all come to the same.
fn case_by_case(plan: &Plan, verdict: &Verdict) -> Option<String> {
    let first = verdict.by_case.first()?;
    if verdict.by_case.iter().all(|one| one.word == first.word) {
        return None;
    }
    let each = verdict.by_case.iter().map(|one| {
        let used = one.used.map(|used| format!(", {} used", share(used))).unwrap_or_default();
        let told = match (one.word, one.why) {
            (Word::NotKnown, Some(Why::Turns { nmm })) => {
                format!("not known, turned with {:.0} N\u{b7}m", nmm / 1000.0)
            }
            (Word::NotKnown, Some(reason)) => format!("not known, {}", why(plan, &reason)),
            (word, _) => format!("{}{used}", verdict_word(word)),
        };
        format!("{}: {told}", case_kind(&one.kind))
    });
    let each: Vec<String> = each.collect();
    Some(format!("Case by case, by published values and as if probed: {}.", each.join("; ")))
}

/// How much is used: up, so that nothing is told as less than it is.
pub(super) fn share(used: f64) -> String {
    if used > 99.0 {
        return "far more than all".to_owned();
    }
    format!("{:.2}", (used * 100.0 - 1e-6).ceil() / 100.0)
}

/// One line of the schedule of fasteners.
#[must_use]
pub fn fastener(plan: &Plan, fastener: &FastenerPlan) -> String {
    let mut told = format!("{}: {}", capital(&hole_name(&fastener.hole)), fastener_name(plan, fastener));
    if fastener.by_hand {
        told.push_str(", your choice");
    }
    if let Some(lead) = lead(plan, fastener) {
        told.push_str(&format!("; {lead}"));
    }
    if let Some(asked) = fastener.asked {
        told.push_str(&format!(
            "; shear {:.0} N, pull {:.0} N, {} used",
            asked.shear_n,
            asked.pull_n,
            share(asked.used)
        ));
    }
    told.push('.');
    told
}

/// `lag screw 5/16" x 3"`.
pub(super) fn fastener_name(plan: &Plan, fastener: &FastenerPlan) -> String {
    size_told(plan, fastener.kind, Some(fastener.diameter), Some(fastener.length))
}

/// A size of fastener.
pub(super) fn size_name(plan: &Plan, kind: FastenerKind, diameter: Length, length: Length) -> String {
    size_told(plan, kind, Some(diameter), Some(length))
}

/// A fastener of the kit: `lag screw 5/16" x 3"`, with what is measured of it.
#[must_use]
pub fn stock(plan: &Plan, stock: &FastenerStock) -> String {
    of_kit(plan, &OfKit::from(stock))
}

/// The same, where the plan names it.
fn of_kit(plan: &Plan, stock: &OfKit) -> String {
    size_told(plan, stock.kind, stock.diameter, stock.length)
}

/// The same, of what is known of its size.
pub(super) fn size_told(
    plan: &Plan,
    kind: FastenerKind,
    diameter: Option<Length>,
    length: Option<Length>,
) -> String {
    let name = kind_name(kind);
    let numbered = matches!(kind, FastenerKind::WoodScrew | FastenerKind::SheetMetalScrew);
    let number = |d_in: f64| {
        let size = wood_screw::SIZES
            .iter()
            .find(|row| numbered && (row.value.diameter_in - d_in).abs() <= SAME_SIZE_IN);
        size.map(|row| format!("#{}", row.value.number))
    };
    let wide = diameter.map(|wide| format!(" {}", number(wide.in_inches()).unwrap_or_else(|| fine(wide))));
    let long = length.map(|long| format!(" x {}", plan.style.print(long)));
    format!("{name}{}{}", wide.unwrap_or_default(), long.unwrap_or_default())
}

/// A type of fastener.
pub(super) fn kind_name(kind: FastenerKind) -> &'static str {
    match kind {
        FastenerKind::WoodScrew => "wood screw",
        FastenerKind::Lag => "lag screw",
        FastenerKind::StructuralScrew => "structural screw",
        FastenerKind::SheetMetalScrew => "sheet-metal screw",
        FastenerKind::ConcreteScrew => "concrete screw",
        FastenerKind::Anchor => "anchor",
        FastenerKind::Fixing => "fixing",
        FastenerKind::DrywallScrew => "drywall screw",
    }
}

/// `lead hole 11/64", 2 15/16" deep from the wall's face`; of a fastener of which no rule tells how wide, how deep.
pub(super) fn lead(plan: &Plan, fastener: &FastenerPlan) -> Option<String> {
    let deep = fastener.depth.map(|depth| format!("{} deep from the wall's face", plan.style.print(depth)));
    let Some(bit) = fastener.lead else {
        return deep.map(|deep| format!("hole as wide as its own instructions say, {deep}"));
    };
    let bit = match &fastener.bit {
        BitFrom::UsualSet => fine(bit),
        BitFrom::Kit(_) => format!("{}, a bit of the kit", fine(bit)),
        BitFrom::NotInKit => format!("{}, a bit that is not in the kit", fine(bit)),
    };
    let shank = fastener.shank.map_or_else(String::new, |(wide, deep)| {
        format!(", and {} for its smooth shank, {} deep", fine(wide), plan.style.print(deep))
    });
    Some(match deep {
        Some(deep) => format!("lead hole {bit}, {deep}{shank}"),
        None => format!("lead hole {bit}{shank}"),
    })
}

/// To a 64th of an inch, or a tenth of a millimetre, as bits and diameters are named.
pub(super) fn fine(length: Length) -> String {
    if length.unit() == LengthUnit::Millimetre {
        let tenths = format!("{:.1}", length.mm());
        return format!("{} mm", tenths.strip_suffix(".0").unwrap_or(&tenths));
    }
    let sixty_fourths = (length.in_inches() * 64.0).round();
    let (mut over, mut under) = (sixty_fourths, 64.0);
    while under > 1.0 && over % 2.0 == 0.0 {
        (over, under) = (over / 2.0, under / 2.0);
    }
    let whole = (over / under).floor();
    match (whole > 0.0, over - whole * under) {
        (true, 0.0) => format!("{whole}\""),
        (true, rest) => format!("{whole} {rest}/{under}\""),
        (false, rest) => format!("{rest}/{under}\""),
    }
}

/// A better choice of holes, as sentences: what it gains, and which holes it is.
#[must_use]
pub fn better_holes(better: &BetterHoles) -> String {
    let (now, then) = (&better.now, &better.then);
    let used = |fastening: &Fastening| fastening.verdict.governing.as_ref().map(|one| share(one.used));
    let gain = if then.verdict.if_probed != now.verdict.if_probed {
        format!(
            "is {} instead of {}, if each stud is met",
            verdict_word(then.verdict.if_probed),
            verdict_word(now.verdict.if_probed)
        )
    } else if let (Some(then), Some(now)) = (used(then), used(now))
        && then < now
    {
        format!("leaves more in reserve: {then} used instead of {now}")
    } else if then.fasteners.len() < now.fasteners.len() {
        format!("is as good with {} fasteners instead of {}", then.fasteners.len(), now.fasteners.len())
    } else {
        "is surer to meet wood, or more even about the load".to_owned()
    };
    let holes: Vec<String> = then.fasteners.iter().map(|one| hole_name(&one.hole)).collect();
    let searched = if better.searched {
        " With slots so long it is the best of the fullest sets, not of every set."
    } else {
        ""
    };
    format!("Another choice of holes {gain}. It is {}.{searched}", list(&holes))
}

/// Why a hole is left empty, as a sentence.
#[must_use]
pub fn left_empty(plan: &Plan, empty: &LeftEmpty) -> String {
    format!("{} stays empty: {}.", capital(&hole_name(&empty.hole)), because(plan, &empty.why))
}

/// Why a hole takes no fastener, as a clause.
pub(super) fn because(plan: &Plan, empty: &EmptyWhy) -> String {
    match empty {
        EmptyWhy::Meets(meets) => match meets {
            Meets::Stud => "no fastener of the kit is made for it".to_owned(),
            Meets::StudEdge => "too near a stud's edge".to_owned(),
            Meets::Board => "nothing behind the face that counts".to_owned(),
            Meets::Hidden => "it would meet something hidden".to_owned(),
            Meets::Masonry => "no published value for this masonry".to_owned(),
            Meets::OffWall => "off the wall or over an opening".to_owned(),
            Meets::NotKnown => "not known what it meets".to_owned(),
        },
        EmptyWhy::OtherPlane => "on another plane than the plate's middle".to_owned(),
        EmptyWhy::Stripped => "a fastener spins in the wood there".to_owned(),
        EmptyWhy::BesideHole => "a hole that is drilled, or an opening, is beside it".to_owned(),
        EmptyWhy::BoredForAnother => "it was bored for another fastener of the kit".to_owned(),
        EmptyWhy::OverOpening => {
            "above a window or door, where nobody knows how high its header is".to_owned()
        }
        EmptyWhy::TooNear(hole) => format!("too near {}", hole_name(hole)),
        EmptyWhy::NearOther(hole) => format!("too near the fastener in {}", thing(plan, hole)),
        EmptyWhy::Refused(reason) => why(plan, reason),
        EmptyWhy::NoFastener => "the kit has no fastener for this wall".to_owned(),
        EmptyWhy::NotNeeded => {
            "the plate holds no worse without it; fill it where the mount's maker asks for it".to_owned()
        }
        EmptyWhy::ByHand => "your choice".to_owned(),
        EmptyWhy::OnlyWith(stock) => format!(
            "you chose the {} for it, which is not made for this wall or of which too little is measured",
            of_kit(plan, stock)
        ),
        EmptyWhy::Mixed => {
            "with more than one type of fastener chosen by hand the plan adds none of its own".to_owned()
        }
        EmptyWhy::TooFew => "the kit has too few of that fastener".to_owned(),
    }
}

/// What the maker of a mount asks for and how much it is rated for, on a line of its own: neither makes a verdict.
#[must_use]
pub fn asks(job: &Job, mount: &Id) -> Option<String> {
    let mount = job.mount(mount)?;
    let rated = mount.rating.as_ref().and_then(|rating| rating.mass);
    let asks = mount.required.as_ref().and_then(|required| required.fasteners.as_deref()).map(one_line);
    let rated = rated.map(|rated| format!("The maker rates the mount for {}.", mass(rated)));
    let asks = asks.filter(|asks| !asks.is_empty()).map(|asks| {
        format!("The maker asks for: {}. See yourself that it is so.", asks.trim_end_matches('.'))
    });
    let told: Vec<String> = rated.into_iter().chain(asks).collect();
    (!told.is_empty()).then(|| told.join(" "))
}

/// How hard somebody may pull, as it was counted: a sentence; `None` where nothing was counted.
#[must_use]
pub fn pull(fastening: &Fastening) -> Option<String> {
    let pull = fastening.verdict.rests_on.iter().find_map(|rest| match rest {
        Rest::Pull(pull) => Some(pull),
        _ => None,
    });
    pull.map(|pull| format!("Counted with somebody who pulls with {:.0} N, a setting of the job.", pull.n()))
}

/// A fastener with its lead hole, without its hole's name: `Lag screw 5/16" x 3"; lead hole 11/64", 3" deep ...`.
#[must_use]
pub fn fastener_and_bit(plan: &Plan, fastener: &FastenerPlan) -> String {
    let name = capital(&fastener_name(plan, fastener));
    lead(plan, fastener).map_or(name.clone(), |lead| format!("{name}; {lead}"))
}

/// What the schedule has for a hole of a piece's plate.
pub(super) fn fastener_at<'a>(plan: &'a Plan, piece: &PiecePlan, hole: &Id) -> Option<&'a FastenerPlan> {
    let piece = piece_of(plan, &piece.id.whole())?;
    piece.mount.as_ref()?.fastening.fasteners.iter().find(|fastener| fastener.hole == *hole)
}

/// The wall's verdict, the worst of its pieces, with the piece; `None` where nothing hangs on a mount.
#[must_use]
pub fn wall_verdict(plan: &Plan) -> Option<(&PiecePlan, &Fastening)> {
    let mounted = plan.pieces.iter().filter_map(|piece| Some((piece, &piece.mount.as_ref()?.fastening)));
    mounted.reduce(|worst, one| if one.1.verdict.word > worst.1.verdict.word { one } else { worst })
}

/// The verdict of the whole wall, naming the piece where there are several.
#[must_use]
pub fn wall_verdict_line(plan: &Plan) -> Option<String> {
    let (piece, fastening) = wall_verdict(plan)?;
    let line = verdict_line(plan, fastening);
    let several = plan.pieces.iter().filter(|piece| piece.mount.is_some()).count() > 1;
    Some(if several {
        format!("{}: {}", capital(Called::piece(plan, piece).bare()), uncapital(&line))
    } else {
        line
    })
}

/// The text with its first letter small.
pub(super) fn uncapital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_lowercase().chain(letters).collect())
}

#[cfg(test)]
mod tests;
