//! What stays in the wall, and what drills and turns it in.

use super::{Asks, Carried, CarryLine, Holes, Whose, short};
use crate::job::Job;
use crate::job::feature::FeatureKind;
use crate::job::kit::FastenerKind;
use crate::plan::Plan;
use crate::plan::piece::{HolePlan, Meets, MountedPlan, PiecePlan};
use crate::plan::verdict::{EmptyWhy, FastenerPlan, LeftEmpty, Rest};
use crate::subject::Id;
use crate::units::Length;

/// One to spare for so many, and one at least (chosen: one drops, one spins).
const SPARE_IN: usize = 4;

/// A hole so near to a side wall is drilled and driven at a right angle (chosen: a drill and its battery).
const TIGHT_MM: f64 = 200.0;

/// What stands out less than this leaves a drill room beside it (chosen: half of a drill).
const TIGHT_PROUD_MM: f64 = 40.0;

/// A bit in its chuck reaches so deep where the kit does not say (chosen: a usual twist bit).
const BIT_REACH_MM: f64 = 90.0;

/// A hole that takes a fastener, or will once one is chosen.
struct Use<'a> {
    plan: &'a Plan,
    whose: Whose,
    mount: &'a MountedPlan,
    hole: &'a HolePlan,
    fastener: Option<&'a FastenerPlan>,
}

impl Use<'_> {
    fn is_masonry(&self) -> bool {
        self.hole.meets == Meets::Masonry
    }
}

pub(super) fn fasteners(job: &Job, plans: &[&Plan]) -> Vec<CarryLine> {
    let uses: Vec<Use<'_>> = plans.iter().flat_map(|plan| uses(job, plan)).collect();
    let mut lines = chosen(job, &uses);
    lines.extend(anchors(job, plans));
    lines.extend(not_chosen(job, plans, &uses));
    lines.extend(bits(job, &uses));
    lines.extend(drivers(&uses));
    lines
}

fn uses<'a>(job: &Job, plan: &'a Plan) -> Vec<Use<'a>> {
    let mounted = plan.pieces.iter().filter_map(|piece| Some((piece, piece.mount.as_ref()?)));
    let each = mounted.flat_map(|(piece, mount)| {
        let whose = whose(job, plan, piece);
        holes(mount).into_iter().map(move |(hole, fastener)| Use {
            plan,
            whose: whose.clone(),
            mount,
            hole,
            fastener,
        })
    });
    each.collect()
}

/// A piece as a list of the whole job names it.
pub(super) fn whose(job: &Job, plan: &Plan, piece: &PiecePlan) -> Whose {
    let wall = job.wall(&plan.wall).and_then(|wall| wall.name.clone()).unwrap_or_default();
    Whose { name: piece.name.clone(), kind: piece.kind, wall }
}

/// The holes of a plate that take a fastener; where none is chosen, those that may take one yet, or all where none may.
fn holes(mount: &MountedPlan) -> Vec<(&HolePlan, Option<&FastenerPlan>)> {
    let fasteners = &mount.fastening.fasteners;
    let with = |hole| (hole, None);
    if fasteners.is_empty() {
        let empty = &mount.fastening.left_empty;
        let may = |hole: &&HolePlan| empty.iter().any(|one| one.hole == hole.id && is_open(&one.why));
        let open: Vec<_> = mount.holes.iter().filter(may).map(with).collect();
        return if open.is_empty() { mount.holes.iter().map(with).collect() } else { open };
    }
    let chosen = mount.holes.iter().map(|hole| (hole, fasteners.iter().find(|one| one.hole == hole.id)));
    chosen.filter(|(_, fastener)| fastener.is_some()).collect()
}

/// Whether a hole that stays empty may take a fastener once more is known, or another fastener is on the truck.
fn is_open(why: &EmptyWhy) -> bool {
    match why {
        EmptyWhy::Meets(meets) => matches!(meets, Meets::Stud | Meets::Masonry | Meets::NotKnown),
        EmptyWhy::Refused(_)
        | EmptyWhy::NoFastener
        | EmptyWhy::OnlyWith(_)
        | EmptyWhy::Mixed
        | EmptyWhy::TooFew => true,
        _ => false,
    }
}

/// How many holes these are, and of which pieces, each once.
fn told<'a>(uses: impl IntoIterator<Item = &'a Use<'a>>) -> Holes {
    let mut told = Holes { count: 0, of: Vec::new() };
    for one in uses {
        told.count += 1;
        if !told.of.contains(&one.whose) {
            told.of.push(one.whose.clone());
        }
    }
    told
}

fn line(what: Carried, count: Option<usize>, why: Asks) -> CarryLine {
    CarryLine { what, count, why, short_by: None }
}

/// The fasteners that are chosen, a size a line, with their washers.
fn chosen(job: &Job, uses: &[Use<'_>]) -> Vec<CarryLine> {
    let mut lines = Vec::new();
    let mut stocks: Vec<&Id> = Vec::new();
    for one in uses.iter().filter_map(|one| one.fastener) {
        if !stocks.contains(&&one.stock) {
            stocks.push(&one.stock);
        }
    }
    for stock in stocks {
        let is_alike = |one: &&Use<'_>| one.fastener.is_some_and(|fastener| fastener.stock == *stock);
        let alike: Vec<&Use<'_>> = uses.iter().filter(is_alike).collect();
        let Some(first) = alike.iter().find_map(|one| one.fastener) else { continue };
        let FastenerPlan { kind, diameter, length, .. } = *first;
        let spares = alike.len().div_ceil(SPARE_IN);
        let needed = alike.len() + spares;
        let of_kit = job.kit.fasteners.iter().find(|one| one.id == *stock);
        let short_by = of_kit.and_then(|one| short(needed, one.count));
        let why = Asks::Holes(told(alike.iter().copied()));
        let what = Carried::Fasteners { kind, diameter, length, spares };
        lines.push(CarryLine { short_by, ..line(what, Some(needed), why) });
        let measured = of_kit.and_then(|one| one.washer);
        if let Some(thick) = measured.filter(|washer| washer.mm() > 0.0) {
            let why = Asks::Holes(told(alike.iter().copied()));
            // The kit counts a fastener with the washer under its head.
            let what = Carried::Washers { thick, supposed: false };
            lines.push(CarryLine { short_by, ..line(what, Some(needed), why) });
        }
        let supposed = |one: &&Use<'_>| measured.is_none().then(|| supposed_washer(one.mount)).flatten();
        let on_supposed: Vec<&Use<'_>> = alike.into_iter().filter(|one| supposed(one).is_some()).collect();
        if let Some(thick) = on_supposed.first().and_then(supposed) {
            let count = on_supposed.len() + on_supposed.len().div_ceil(SPARE_IN);
            let what = Carried::Washers { thick, supposed: true };
            lines.push(line(what, Some(count), Asks::Holes(told(on_supposed))));
        }
    }
    lines
}

/// How thick the washer is that a plate's verdict rests on without anybody having measured it.
fn supposed_washer(mount: &MountedPlan) -> Option<Length> {
    mount.fastening.verdict.rests_on.iter().find_map(|rest| match rest {
        Rest::Washer(thick) => Some(*thick),
        _ => None,
    })
}

/// Anchors of the kit for the holes over board of plates that fasteners hold, should the maker want those filled.
fn anchors(job: &Job, plans: &[&Plan]) -> Option<CarryLine> {
    let all = || job.kit.fasteners.iter().filter(|stock| stock.kind == FastenerKind::Anchor);
    // That of which the plan tells what it would add; else one that the truck has.
    let told = |mount: &MountedPlan| mount.fastening.anchors.as_ref().map(|one| one.stock.clone());
    let mounts = || plans.iter().flat_map(|plan| &plan.pieces).filter_map(|piece| piece.mount.as_ref());
    let rated = mounts().find_map(told).and_then(|id| all().find(|stock| stock.id == id));
    let stock = rated.or_else(|| all().find(|stock| stock.count != Some(0))).or_else(|| all().next())?;
    let mut over = Holes { count: 0, of: Vec::new() };
    for (plan, piece) in plans.iter().flat_map(|plan| plan.pieces.iter().map(move |piece| (plan, piece))) {
        let fastening = piece.mount.as_ref().map(|mount| &mount.fastening);
        // Where nothing holds yet an anchor would be taken for what does.
        let Some(fastening) = fastening.filter(|one| !one.fasteners.is_empty()) else { continue };
        let on_board = |empty: &&LeftEmpty| empty.why == EmptyWhy::Meets(Meets::Board);
        let holes = fastening.left_empty.iter().filter(on_board).count();
        if holes > 0 {
            over.count += holes;
            over.of.push(whose(job, plan, piece));
        }
    }
    if over.count == 0 {
        return None;
    }
    let spares = over.count.div_ceil(SPARE_IN);
    let needed = over.count + spares;
    Some(CarryLine {
        what: Carried::Anchors { diameter: stock.diameter, length: stock.length, spares },
        count: Some(needed),
        short_by: short(needed, stock.count),
        why: Asks::OverBoard(over),
    })
}

/// What is to hold each plate for which nothing is chosen, and what hangs on no mount.
fn not_chosen(job: &Job, plans: &[&Plan], uses: &[Use<'_>]) -> Vec<CarryLine> {
    let mut lines = Vec::new();
    for plan in plans {
        for piece in &plan.pieces {
            let whose = whose(job, plan, piece);
            let Some(mount) = &piece.mount else {
                lines.push(line(Carried::OwnFixings(whose), None, Asks::ItsMaker));
                continue;
            };
            let open: Vec<&Use<'_>> =
                uses.iter().filter(|one| std::ptr::eq(one.mount, mount) && one.fastener.is_none()).collect();
            if open.is_empty() {
                continue;
            }
            let why = |one: &&Use<'_>| {
                let empty = &mount.fastening.left_empty;
                empty.iter().find(|empty| empty.hole == one.hole.id).map(|empty| empty.why.clone())
            };
            let why = Asks::NoneChosen(open.iter().find_map(why));
            let name = job.mount(&mount.id).and_then(|mount| mount.name.clone()).unwrap_or_default();
            let what = Carried::NotChosen { holes: open.len(), mount: name, whose };
            lines.push(line(what, None, why));
        }
    }
    lines
}

fn bits(job: &Job, uses: &[Use<'_>]) -> Vec<CarryLine> {
    let mut sizes: Vec<(Length, bool)> = Vec::new();
    let drills = |fastener: &FastenerPlan| {
        fastener.lead.into_iter().chain(fastener.shank.map(|(wide, _)| wide)).collect::<Vec<_>>()
    };
    for one in uses {
        for wide in one.fastener.map(drills).unwrap_or_default() {
            if !sizes.contains(&(wide, one.is_masonry())) {
                sizes.push((wide, one.is_masonry()));
            }
        }
    }
    let mut lines = Vec::new();
    for (diameter, masonry) in sizes {
        let of_it = uses.iter().filter(|one| {
            one.is_masonry() == masonry && one.fastener.is_some_and(|it| drills(it).contains(&diameter))
        });
        let stocked = job.kit.bits.iter().any(|bit| bit.diameter == Some(diameter));
        // A kit that tells of no bits does not count them.
        let short_by = (!stocked && !job.kit.bits.is_empty()).then_some(1);
        let what = Carried::Bit { diameter, masonry };
        lines.push(CarryLine { short_by, ..line(what, Some(1), Asks::LeadHoles(told(of_it))) });
    }
    let masonry = || uses.iter().filter(|one| one.is_masonry());
    let unknown = told(masonry().filter(|one| one.fastener.is_none_or(|fastener| fastener.lead.is_none())));
    if unknown.count > 0 {
        lines.push(line(Carried::BitToFit, None, Asks::Masonry(unknown)));
    }
    if masonry().next().is_some() {
        lines.push(line(Carried::HammerDrill, None, Asks::Masonry(told(masonry()))));
    }
    let depth = |one: &Use<'_>| one.fastener.and_then(|fastener| fastener.depth);
    let reach = job.kit.bits.iter().filter_map(|bit| bit.length).reduce(Length::max);
    let reach = reach.unwrap_or(Length::millimetres(BIT_REACH_MM));
    let is_deep = |one: &&Use<'_>| depth(one).is_some_and(|depth| depth > reach);
    if let Some(deepest) = uses.iter().filter(is_deep).filter_map(depth).reduce(Length::max) {
        let why = Asks::Deep(deepest, told(uses.iter().filter(is_deep)));
        lines.push(line(Carried::BitExtension, Some(1), why));
    }
    lines
}

fn drivers(uses: &[Use<'_>]) -> Vec<CarryLine> {
    let mut lines = Vec::new();
    let hex = |kind: FastenerKind| matches!(kind, FastenerKind::Lag | FastenerKind::ConcreteScrew);
    for (what, is_hex) in [(Carried::Socket, true), (Carried::DriverBits, false)] {
        let of_it = uses.iter().filter(|one| one.fastener.is_some_and(|it| hex(it.kind) == is_hex));
        let of_it = told(of_it);
        if of_it.count > 0 {
            lines.push(line(what, None, Asks::Holes(of_it)));
        }
    }
    let tight = told(uses.iter().filter(|one| is_tight(one.plan, one.hole)));
    if tight.count > 0 {
        lines.push(line(Carried::RightAngleDriver, None, Asks::Tight(tight)));
    }
    lines
}

/// Whether a hole is near a side wall, or beside, under or over what stands out farther than a drill is wide.
fn is_tight(plan: &Plan, hole: &HolePlan) -> bool {
    use crate::job::wall::End;
    let survey = &plan.survey;
    let near = |end: End, off: Length| end == End::InsideCorner && off.mm() < TIGHT_MM;
    let stands_out = |one: &&crate::plan::survey::PlacedFeature| {
        one.proud.mm() > TIGHT_PROUD_MM && one.kind != FeatureKind::ChimneyBreast
    };
    let mut out = survey.features.iter().filter(stands_out);
    near(survey.left_end, hole.place.x - survey.outline.left)
        || near(survey.right_end, survey.outline.right - hole.place.x)
        || out.any(|one| one.rect.grown(Length::millimetres(TIGHT_MM)).holds(hole.place))
}
