//! What is told of a choice: the word, what it rests on and what it wants, each fastener, each hole left empty.

use super::super::load::Load;
use super::asks::Asks;
use super::by_hand::ByHandOf;
use super::kind::Kind;
use super::sets::{Set, Table};
use super::site::Site;
use crate::capacity::case::{Case, CaseKind, CaseName};
use crate::capacity::group::{Ask, Demand, Outcome, Word};
use crate::capacity::hold::Hold;
use crate::capacity::used::used;
use crate::capacity::why::Why;
use crate::job::framing::WallFraming;
use crate::job::kit::{FastenerKind, FastenerStock};
use crate::ledger::Blank;
use crate::plan::piece::{HolePlan, Meets};
use crate::plan::verdict::{
    CaseVerdict, EmptyWhy, FastenerAsked, FastenerPlan, Fastening, Governing, InBoard, LeftEmpty, Required,
    Verdict, Want,
};
use crate::tolerance::ANCHOR_SHARE;
use crate::units::Force;

/// What is told about.
pub(super) struct Told<'a> {
    pub(super) site: &'a Site<'a>,
    pub(super) load: &'a Load,
    pub(super) holes: &'a [HolePlan],
    pub(super) asks: &'a Asks<'a>,
    pub(super) by_hand: ByHandOf<'a>,
    /// The first case of load.
    pub(super) first_case: Option<CaseName>,
    /// What is on the truck.
    pub(super) stocks: &'a [FastenerStock],
}

impl Told<'_> {
    /// Where no hole takes a fastener.
    pub(super) fn none(&self, kinds: &[Kind<'_>], missing: Vec<Want>, empty_kit: bool) -> Fastening {
        let mut wants = self.load.wants.clone();
        add(&mut wants, self.site.wants());
        // In brick and block only what is stated of a fixing tells anything.
        let takes_any = self.takes_fasteners() || !kinds.is_empty() || !missing.is_empty();
        if takes_any {
            add(&mut wants, missing);
            if self.takes_fasteners() && empty_kit || kinds.is_empty() && !wants.iter().any(is_of_fastener) {
                add(&mut wants, [Want::Fasteners]);
            }
        }
        let depth =
            kinds.iter().flat_map(|kind| &kind.wants).filter(|want| matches!(want, Want::StudDepth(_)));
        add(&mut wants, depth.cloned());
        add(&mut wants, self.wants_hits());
        let left_empty = self.holes.iter().enumerate().map(|(index, hole)| {
            let by_hand = self.by_hand.refused(&hole.id, &hole.id);
            let why = match hole.meets {
                _ if by_hand == Some(EmptyWhy::ByHand) => EmptyWhy::ByHand,
                meets if meets == Meets::Stud || meets == Meets::Masonry && takes_any => {
                    let tried =
                        kinds.iter().find_map(|kind| kind.seat(&mut Blank, self.site, index, hole).err());
                    tried.unwrap_or(EmptyWhy::NoFastener)
                }
                other => EmptyWhy::Meets(other),
            };
            let wanted = self.by_hand.is_wanted(&hole.id);
            LeftEmpty { hole: hole.id.clone(), subject: hole.subject.clone(), why, wanted }
        });
        let left_empty: Vec<LeftEmpty> = left_empty.collect();
        let anchors = self.anchors(&left_empty);
        let mut fastening = Fastening { left_empty, anchors, ..Fastening::unknown() };
        fastening.verdict.wanted = wants;
        fastening.verdict.required = self.required_of_none();
        if fastening.verdict.required == Required::NotMet {
            let verdict = &mut fastening.verdict;
            (verdict.word, verdict.if_probed, verdict.as_stated) = (Word::Short, Word::Short, Word::Short);
        }
        fastening
    }

    /// Whether what the maker requires of holes can still be met where none takes a fastener now: not by a hole that
    /// meets no stud, nor by fewer than are asked for.
    fn required_of_none(&self) -> Required {
        let is_open = |hole: &&HolePlan| {
            matches!(hole.meets, Meets::Stud | Meets::Masonry | Meets::NotKnown)
                && self.by_hand.refused(&hole.id, &hole.id) != Some(EmptyWhy::ByHand)
        };
        let required = || self.holes.iter().filter(|hole| self.asks.is_required(&hole.id));
        let open = self.holes.iter().filter(is_open).count();
        if required().any(|hole| !is_open(&hole)) || open < self.asks.least() {
            Required::NotMet
        } else if self.asks.is_free() {
            Required::Met
        } else {
            Required::NotKnown
        }
    }

    /// Of a chosen set.
    pub(super) fn chosen(&self, table: &Table<'_>, set: &Set) -> Fastening {
        let Some(hold) = table.hold else { return Fastening::unknown() };
        let kind = table.kind;
        let cases = table.cases(set.mask);
        let demand = table.demand(set.mask, cases);
        let outcome = match &demand {
            Ok(demand) => demand.against(&hold),
            Err(why) => Outcome { governing: None, not_known: Some((0, *why)) },
        };
        let members: Vec<_> = table.members(set.mask).collect();
        let used_holes = || members.iter().filter_map(|one| Some((*one, self.holes.get(one.hole)?)));

        let mut wanted = self.load.wants.clone();
        add(&mut wanted, self.site.wants());
        add(&mut wanted, kind.wants.clone());
        add(
            &mut wanted,
            used_holes()
                .filter(|(one, _)| self.site.opening(one.hole).1.is_none())
                .map(|(_, hole)| Want::HoleWidth(hole.subject.clone())),
        );
        add(&mut wanted, kind.wants_height(self.site, used_holes().map(|(_, hole)| hole.place)));
        let measured = wanted.is_empty();
        let all_met = used_holes().all(|(one, _)| one.met);
        add(
            &mut wanted,
            used_holes().filter(|(one, _)| !one.met).map(|(_, hole)| {
                let subject = hole.subject.clone();
                // A probe that met wood there answers no more: it is the edges that are doubtful.
                if hole.met { Want::Edges(subject) } else { Want::Probe(subject) }
            }),
        );

        let required = self.required_by(table, set);
        let word = |stated: bool| match required {
            Required::NotMet => Word::Short,
            Required::NotKnown => Word::NotKnown,
            Required::Met if !measured || !hold.label().bears(stated) => Word::NotKnown,
            Required::Met => outcome.word(),
        };
        let (if_probed, as_stated) = (word(false), word(true));
        let governing = outcome.governing.filter(|_| measured).and_then(|(ask, used)| {
            let one = members.get(ask.seat)?;
            Some(Governing {
                hole: self.holes.get(one.hole)?.subject.clone(),
                case: cases.get(ask.case)?.name,
                used: used.value,
                term: used.term,
            })
        });
        let mut rests_on = self.load.rests.clone();
        add(&mut rests_on, kind.rests.iter().cloned());
        add(&mut rests_on, kind.rests_on_ceiling(self.site));
        let verdict = Verdict {
            word: if if_probed == Word::Holds && !all_met { Word::NotKnown } else { if_probed },
            if_probed,
            as_stated,
            governing,
            uncarried: uncarried(&demand, &outcome, cases),
            by_case: if measured { by_case(table, set, &hold) } else { Vec::new() },
            required,
            rests_on,
            wanted,
            searched: set.searched,
        };
        let asked = |seat: usize| {
            let demand = demand.as_ref().ok().filter(|_| measured)?;
            worst(demand, &hold, seat).map(|(_, asked)| asked)
        };
        let fasteners = members.iter().enumerate().filter_map(|(seat, one)| {
            let hole = self.holes.get(one.hole)?;
            Some(self.in_use(kind, hole, asked(seat)))
        });
        let left_empty = self.left_empty(table, set);
        let anchors = self.anchors(&left_empty);
        Fastening { verdict, fasteners: fasteners.collect(), left_empty, anchors }
    }

    /// What the first rated anchor of the kit would add at the holes over board that are left empty, by hand apart.
    fn anchors(&self, left_empty: &[LeftEmpty]) -> Option<InBoard> {
        let rated =
            self.stocks.iter().filter(|stock| stock.kind == FastenerKind::Anchor && stock.count != Some(0));
        let (stock, report) = rated
            .filter_map(|stock| Some((stock, stock.report.as_ref()?)))
            .find(|(_, report)| report.shear.is_some() || report.pull.is_some())?;
        let on_board = |empty: &&LeftEmpty| empty.why == EmptyWhy::Meets(Meets::Board);
        let holes = left_empty.iter().filter(on_board).count();
        let most = stock.count.map_or(usize::MAX, |count| count as usize);
        let share = |load: Force| Force::newtons(load.n() * ANCHOR_SHARE);
        (holes > 0).then(|| InBoard {
            stock: stock.id.clone(),
            holes: holes.min(most),
            shear: report.shear.map(share),
            pull: report.pull.map(share),
        })
    }

    /// A fastener of a kind in a hole.
    pub(super) fn in_use(
        &self,
        kind: &Kind<'_>,
        hole: &HolePlan,
        asked: Option<FastenerAsked>,
    ) -> FastenerPlan {
        let (lead, bit) = kind.bit(&mut Blank, self.site);
        FastenerPlan {
            hole: hole.id.clone(),
            subject: hole.subject.clone(),
            stock: kind.stock.id.clone(),
            kind: kind.kind(),
            diameter: kind.diameter,
            length: kind.length,
            lead,
            bit,
            shank: kind.shank(self.site),
            depth: kind.depth(&mut Blank, self.site),
            by_hand: self.by_hand.is_wanted(&hole.id),
            asked,
        }
    }

    /// Why each hole that is not in use is left empty.
    fn left_empty(&self, table: &Table<'_>, set: &Set) -> Vec<LeftEmpty> {
        let in_use: Vec<usize> = table.members(set.mask).map(|one| one.hole).collect();
        let why = |index: usize| {
            if let Some((_, why)) = table.refused.iter().find(|(hole, _)| *hole == index) {
                return why.clone();
            }
            let bit = table.seated.iter().position(|one| one.hole == index);
            let near = bit.and_then(|bit| table.near.get(bit)).map_or(0, |near| near & set.mask);
            let nearest = table.members(near).next().and_then(|one| self.holes.get(one.hole));
            let wanted = self.holes.get(index).is_some_and(|hole| self.by_hand.is_wanted(&hole.id));
            let rest = if wanted { EmptyWhy::TooFew } else { EmptyWhy::NotNeeded };
            nearest.map_or(rest, |hole| EmptyWhy::TooNear(hole.id.clone()))
        };
        self.holes
            .iter()
            .enumerate()
            .filter(|(index, _)| !in_use.contains(index))
            .map(|(index, hole)| LeftEmpty {
                hole: hole.id.clone(),
                subject: hole.subject.clone(),
                why: why(index),
                wanted: self.by_hand.is_wanted(&hole.id),
            })
            .collect()
    }

    /// Whether what the maker requires is met: of holes as far as they are named, of fasteners as far as words can be
    /// searched. More of the maker's words nobody but the reader can check.
    fn required_by(&self, table: &Table<'_>, set: &Set) -> Required {
        let of_fastener = self.asks.of_kind(table.kind, self.site.framing);
        if table.has_required(set.mask) || of_fastener == Required::NotMet {
            return of_fastener;
        }
        if table.has_surely_required(set.mask) {
            return Required::NotKnown;
        }
        let in_use: Vec<usize> = table.members(set.mask).map(|one| one.hole).collect();
        let lacking = || {
            let each = self.holes.iter().enumerate();
            each.filter(|(index, hole)| self.asks.is_required(&hole.id) && !in_use.contains(index))
        };
        // A hole that was left empty by hand, or that is no stud's, will not do whatever is found out.
        let unknown = |(_, hole): (usize, &HolePlan)| {
            hole.meets == Meets::NotKnown
                && self.by_hand.refused(&hole.id, &hole.id) != Some(EmptyWhy::ByHand)
        };
        let is_gone = self.asks.lacks(self.holes);
        if is_gone || lacking().any(unknown) { Required::NotKnown } else { Required::NotMet }
    }

    /// Whether published values are known for any fastener in this wall.
    fn takes_fasteners(&self) -> bool {
        match self.site.framing {
            None | Some(WallFraming::NotKnown | WallFraming::Steel(_) | WallFraming::Concrete(_)) => true,
            Some(WallFraming::Wood(studs)) => studs.furring != Some(true),
            Some(WallFraming::Masonry(_) | WallFraming::Veneer | WallFraming::NoFraming) => false,
        }
    }

    /// Where the studs are, where there should be some and nobody looked.
    fn wants_hits(&self) -> Option<Want> {
        let unknown = self.holes.iter().any(|hole| hole.meets == Meets::NotKnown);
        unknown.then(|| Want::Hits(self.site.ground.wall.id.clone()))
    }
}

/// Adds what is not there yet.
pub(super) fn add<T: PartialEq>(to: &mut Vec<T>, more: impl IntoIterator<Item = T>) {
    for one in more {
        if !to.contains(&one) {
            to.push(one);
        }
    }
}

fn is_of_fastener(want: &Want) -> bool {
    matches!(want, Want::FastenerSize(_) | Want::FastenerHead(_) | Want::FastenerReport(_))
}

/// The worst case of a fastener, and what it asks.
pub(super) fn worst<'d>(demand: &'d Demand, hold: &Hold, seat: usize) -> Option<(&'d Ask, FastenerAsked)> {
    let own = demand.asks.iter().filter(|ask| ask.seat == seat);
    let each = own.filter_map(|ask| {
        let used = used(&mut Blank, &ask.asked, hold, ask.lasting).ok()?;
        let (shear_n, pull_n) = (ask.asked.shear_n(), ask.asked.pull_n);
        Some((ask, FastenerAsked { shear_n, pull_n, used: used.value }))
    });
    each.reduce(|worst, one| if one.1.used > worst.1.used { one } else { worst })
}

/// What the cases of each kind come to: of all of them, since those that lead leave out whole kinds.
fn by_case(table: &Table<'_>, set: &Set, hold: &Hold) -> Vec<CaseVerdict> {
    let cases = table.all_cases();
    let Ok(demand) = table.demand(set.mask, cases) else { return Vec::new() };
    let mut kinds: Vec<CaseKind> = cases.iter().map(|case| case.name.kind()).collect();
    kinds.sort_unstable();
    kinds.dedup();
    let each = kinds.into_iter().map(|kind| {
        let is_one = |case: usize| cases.get(case).is_some_and(|case| case.name.kind() == kind);
        let outcome = demand.against_some(hold, is_one);
        let not_known = demand.not_known.iter().filter(|(case, _)| is_one(*case)).map(|(_, why)| *why);
        let turns_most =
            not_known.reduce(|most, one| if turning(&one) > turning(&most) { one } else { most });
        CaseVerdict {
            kind,
            word: if hold.label().bears(false) { outcome.word() } else { Word::NotKnown },
            used: outcome.governing.map(|(_, used)| used.value),
            why: turns_most.or(outcome.not_known.map(|(_, why)| why)),
        }
    });
    each.collect()
}

/// How hard a case turns the plate that nothing published carries; what is not known for another reason before all.
fn turning(why: &Why) -> f64 {
    match why {
        Why::Turns { nmm } => *nmm,
        _ => f64::INFINITY,
    }
}

/// A case that nothing published carries: of those that just hang the one that turns most, else the first.
fn uncarried(demand: &Result<Demand, Why>, outcome: &Outcome, cases: &[Case]) -> Option<(CaseName, Why)> {
    let named = |(case, why): (usize, Why)| Some((cases.get(case)?.name, why));
    let Ok(demand) = demand else { return outcome.not_known.and_then(named) };
    let hanging =
        demand.not_known.iter().filter_map(|one| named(*one)).filter(|(name, _)| name.pull.is_none());
    hanging
        .reduce(|most, one| if turning(&one.1) > turning(&most.1) { one } else { most })
        .or_else(|| outcome.not_known.and_then(named))
}
