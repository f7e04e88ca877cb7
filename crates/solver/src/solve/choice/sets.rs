//! The best set of holes for one size of fastener with the plate at one place: every set of up to eight usable holes,
//! above that a search by single steps.

use super::asks::Asks;
use super::by_hand::ByHandOf;
use super::kind::{Kind, Seated};
use super::rank::{Rank, chance_steps};
use super::site::Site;
use crate::capacity::case::Case;
use crate::capacity::group::{Demand, Group, Outcome};
use crate::capacity::hold::Hold;
use crate::capacity::leading::leading;
use crate::capacity::seat::{Edges, SAME_ROW_MM, Seat};
use crate::capacity::steel::group_on_steel;
use crate::capacity::why::Why;
use crate::job::framing::WallFraming;
use crate::ledger::{Blank, Label};
use crate::plan::piece::HolePlan;
use crate::plan::verdict::{EmptyWhy, Required};
use crate::subject::Id;

/// Up to so many usable holes every set is tried.
pub(in super::super) const EXACT: usize = 8;
/// More usable holes than this are not looked at: a set is a mask of bits.
const MOST: usize = 60;

/// The usable holes of one size of fastener with the plate at one place.
pub(in super::super) struct Table<'a> {
    pub(super) seated: Vec<Seated>,
    /// Of every hole of the plate that takes none, why.
    pub(super) refused: Vec<(usize, EmptyWhy)>,
    /// For each usable hole, those that stand too near it.
    pub(super) near: Vec<u64>,
    required: u64,
    required_count: usize,
    /// So many fasteners the maker asks for at least.
    least: usize,
    /// So many the maker may ask for: the number may as well be a size.
    perhaps: usize,
    /// Those that were chosen by hand.
    wanted: u64,
    /// Those that are drilled already.
    drilled: u64,
    /// Whether this kind and all of the required holes can do what the maker requires.
    requirable: bool,
    pub(super) hold: Option<Hold>,
    /// The cases that can be the worst of a set that carries them all.
    leading: Vec<Case>,
    all: Vec<Case>,
    edges: Edges,
    /// The weakest label of where they stand.
    places: Label,
    weight_x_mm: f64,
    steel: bool,
    swings_out: bool,
    most: usize,
    most_reserve: f64,
    length: crate::units::Length,
    pub(super) kind: &'a Kind<'a>,
}

/// What a table is made for.
pub(in super::super) struct Asked<'a> {
    pub(super) cases: &'a [Case],
    pub(super) edges: Edges,
    pub(super) weight_x_mm: f64,
    pub(super) swings_out: bool,
    /// What the maker requires.
    pub(super) asks: &'a Asks<'a>,
    pub(super) by_hand: ByHandOf<'a>,
    /// Up to which reserve another fastener is worth its hole.
    pub(super) most_reserve: f64,
}

/// A set of usable holes and how good it is.
#[derive(Clone, Copy, Debug)]
pub(in super::super) struct Set {
    pub(in super::super) mask: u64,
    pub(in super::super) rank: Rank,
    pub(super) searched: bool,
}

impl<'a> Table<'a> {
    pub(super) fn of(
        site: &Site<'_>,
        kind: &'a Kind<'a>,
        holes: &[HolePlan],
        variants: &[(usize, HolePlan)],
        asked: &Asked<'_>,
    ) -> Self {
        let (mut seated, mut refused): (Vec<Seated>, _) = (Vec::new(), Vec::new());
        let others = variants.iter().enumerate().map(|(at, (index, hole))| (*index, Some(at), hole));
        for (index, variant, hole) in
            holes.iter().enumerate().map(|(index, hole)| (index, None, hole)).chain(others)
        {
            let seat = match asked.by_hand.refused(&hole.id, &kind.stock.id) {
                Some(why) => Err(why),
                None => kind.seat(&mut Blank, site, index, hole),
            };
            match seat {
                Ok(seat) if seated.len() < MOST => seated.push(Seated { variant, ..seat }),
                Ok(_) => refused.push((index, EmptyWhy::NotNeeded)),
                Err(why) => refused.push((index, why)),
            }
        }
        let near = seated
            .iter()
            .map(|one| {
                bits(seated.iter().map(|other: &Seated| {
                    // Two positions of one slot are one hole.
                    let is_same = one.hole == other.hole && one.variant == other.variant;
                    !is_same && (one.hole == other.hole || kind.too_near(site, &one.seat, &other.seat))
                }))
            })
            .collect();
        let of =
            |one: &Seated, is: &dyn Fn(&Id) -> bool| holes.get(one.hole).is_some_and(|hole| is(&hole.id));
        let required = bits(seated.iter().map(|one| of(one, &|hole| asked.asks.is_required(hole))));
        let wanted = bits(seated.iter().map(|one| of(one, &|hole| asked.by_hand.is_wanted(hole))));
        let is_drilled = |hole: usize| holes.get(hole).is_some_and(|hole| site.is_drilled(&hole.subject));
        let drilled = bits(seated.iter().map(|one| is_drilled(one.hole)));
        let count = asked.asks.count(holes);
        let mut can: Vec<usize> = seated
            .iter()
            .enumerate()
            .filter(|(bit, _)| required >> bit & 1 == 1)
            .map(|(_, one)| one.hole)
            .collect();
        can.sort_unstable();
        can.dedup();
        let all = can.len() == count;
        let across = seated.iter().any(|one| one.seat.across);
        let leading = if kind.alike() || !across { leading(asked.cases) } else { asked.cases.to_vec() };
        Self {
            seated,
            refused,
            near,
            required,
            required_count: count,
            least: asked.asks.least(),
            perhaps: asked.asks.perhaps(),
            wanted,
            drilled,
            requirable: all && asked.asks.of_kind(kind, site.framing) == Required::Met,
            hold: kind.hold.ok(),
            leading,
            all: asked.cases.to_vec(),
            edges: asked.edges,
            places: site.places,
            weight_x_mm: asked.weight_x_mm,
            steel: matches!(site.framing, Some(WallFraming::Steel(_))),
            swings_out: asked.swings_out,
            most: kind.stock.count.map_or(usize::MAX, |count| count as usize),
            most_reserve: asked.most_reserve,
            length: kind.length,
            kind,
        }
    }

    /// The plate's edges.
    pub(super) fn edges(&self) -> &Edges {
        &self.edges
    }

    /// Whether they go into steel.
    pub(super) fn is_steel(&self) -> bool {
        self.steel
    }

    /// Whether all that the maker requires of holes is in a set, and as many as the maker may ask for.
    pub(super) fn has_required(&self, mask: u64) -> bool {
        self.has_asked(mask, self.least.max(self.perhaps))
    }

    /// Whether all is that is surely required.
    pub(super) fn has_surely_required(&self, mask: u64) -> bool {
        self.has_asked(mask, self.least)
    }

    fn has_asked(&self, mask: u64, least: usize) -> bool {
        let is =
            |bits: u64, enough: &dyn Fn(usize) -> bool| usize::try_from(bits.count_ones()).is_ok_and(enough);
        is(mask & self.required, &|count| count == self.required_count) && is(mask, &|count| count >= least)
    }

    /// The seats of a set.
    pub(super) fn seats(&self, mask: u64) -> Vec<Seat> {
        self.members(mask).map(|one| one.seat).collect()
    }

    /// The fasteners of a set.
    pub(super) fn members(&self, mask: u64) -> impl Iterator<Item = &Seated> {
        self.seated.iter().enumerate().filter(move |(bit, _)| mask >> bit & 1 == 1).map(|(_, one)| one)
    }

    /// Whether the kit has enough of them and no two are too near.
    pub(super) fn is_allowed(&self, mask: u64) -> bool {
        mask != 0
            && usize::try_from(mask.count_ones()).is_ok_and(|count| count <= self.most)
            && self.near.iter().enumerate().all(|(bit, near)| mask >> bit & 1 == 0 || mask & near == 0)
    }

    /// Everything of a rank that needs no load; the rest at its best.
    fn at_best(&self, mask: u64) -> Rank {
        let chance = self.members(mask).map(|one| one.chance).fold(1.0, f64::min);
        let symmetric = self
            .members(mask)
            .all(|one| self.members(mask).any(|other| self.mirrors(&one.seat, &other.seat)));
        Rank {
            by_hand: (mask & self.wanted).count_ones() as usize,
            required: self.requirable && self.has_required(mask),
            holds: 2,
            known: true,
            drilled: (mask & self.drilled).count_ones(),
            reserve: f64::INFINITY,
            chance: chance_steps(chance),
            symmetric,
            count: mask.count_ones() as usize,
            length: self.length,
        }
    }

    /// What all cases, or these, ask of a set.
    pub(super) fn demand(&self, mask: u64, cases: &[Case]) -> Result<Demand, Why> {
        let seats = self.seats(mask);
        if self.steel {
            group_on_steel(&seats, self.swings_out)?;
        }
        Ok(Group::of(&mut Blank, &seats, &self.edges, self.places)?.demand(cases))
    }

    /// The cases that a set is weighed by: where it does not carry all of those that lead, the worst of what it carries
    /// may be any.
    pub(super) fn cases(&self, mask: u64) -> &[Case] {
        let carries_all = self.demand(mask, &self.leading).is_ok_and(|demand| demand.not_known.is_empty());
        if carries_all { &self.leading } else { &self.all }
    }

    /// Every case.
    pub(super) fn all_cases(&self) -> &[Case] {
        &self.all
    }

    /// The worst of a set under these cases.
    pub(super) fn outcome(&self, mask: u64, hold: &Hold, cases: &[Case]) -> Outcome {
        match self.demand(mask, cases) {
            Ok(demand) => demand.against(hold),
            Err(why) => Outcome { governing: None, not_known: Some((0, why)) },
        }
    }

    /// How good a set is; `None` where it cannot be better than `than`. `hardest` is a case to try first: where one
    /// case alone makes a set no better, the others are spared.
    pub(super) fn rank(&self, mask: u64, than: Option<&Rank>, hardest: &mut Option<Case>) -> Option<Rank> {
        let hold = self.hold.as_ref()?;
        let best = self.at_best(mask);
        let beaten = |rank: &Rank| than.is_some_and(|than| rank.against(than).is_le());
        if beaten(&best.unloaded(hold, self.most_reserve)) {
            return None;
        }
        if let (Some(case), Some(_)) = (*hardest, than) {
            let outcome = self.outcome(mask, hold, &[case]);
            let one = best.with(&outcome, hold, self.most_reserve);
            // More cases only take from what one leaves; one that is not known says nothing of the others' reserve.
            let reserve = if outcome.governing.is_some() { one.reserve } else { f64::INFINITY };
            if beaten(&Rank { reserve, ..one }) {
                return None;
            }
        }
        let mut cases = &self.leading;
        let mut outcome = self.outcome(mask, hold, cases);
        if outcome.not_known.is_some() {
            if beaten(&Rank { reserve: f64::INFINITY, ..best.with(&outcome, hold, self.most_reserve) }) {
                return None;
            }
            cases = &self.all;
            outcome = self.outcome(mask, hold, cases);
        }
        if let Some(case) = outcome.governing.and_then(|(ask, _)| cases.get(ask.case)) {
            *hardest = Some(*case);
        }
        let rank = best.with(&outcome, hold, self.most_reserve);
        (!beaten(&rank)).then_some(rank)
    }

    /// The set of all usable holes, the later of two too near left out, as many as the kit has; those chosen by hand
    /// first.
    pub(super) fn full(&self) -> Option<Set> {
        let mut mask = 0;
        let is_wanted = |bit: &usize| self.wanted >> bit & 1 == 1;
        let (wanted, others): (Vec<usize>, Vec<usize>) = (0..self.seated.len()).partition(is_wanted);
        for bit in wanted.into_iter().chain(others) {
            let more = mask | 1 << bit;
            if self.is_allowed(more) {
                mask = more;
            }
        }
        let rank = if mask == 0 { None } else { self.rank(mask, None, &mut None) };
        rank.map(|rank| Set { mask, rank, searched: false })
    }

    /// The best set that is better than `than`.
    pub(super) fn best(&self, than: Option<&Rank>) -> Option<Set> {
        if self.seated.len() <= EXACT { self.every(than) } else { self.search(than) }
    }

    /// Every set is tried. Of equals the first.
    fn every(&self, than: Option<&Rank>) -> Option<Set> {
        let mut best: Option<Set> = None;
        let mut hardest = None;
        let all = (1_u64 << self.seated.len()) - 1;
        // The fullest first: they leave most in reserve, so that the others are soon cut.
        for mask in (1..=all).rev().filter(|mask| self.is_allowed(*mask)) {
            let to_beat = best.as_ref().map(|best| best.rank);
            if let Some(rank) = self.rank(mask, to_beat.as_ref().or(than), &mut hardest) {
                best = Some(Set { mask, rank, searched: false });
            }
        }
        best
    }

    /// From all holes, and from the corners: one hole in, one out, or one for another, as long as it gets better.
    fn search(&self, than: Option<&Rank>) -> Option<Set> {
        let mut best: Option<Set> = None;
        let mut hardest = None;
        let starts = [self.full().map(|full| full.mask), self.corners()];
        for mut mask in starts.into_iter().flatten() {
            let Some(mut rank) = self.rank(mask, None, &mut hardest) else { continue };
            loop {
                let mut step = None;
                for next in self.steps(mask) {
                    let to_beat = step.map_or(rank, |(_, rank)| rank);
                    if let Some(better) = self.rank(next, Some(&to_beat), &mut hardest) {
                        step = Some((next, better));
                    }
                }
                let Some((next, better)) = step else { break };
                (mask, rank) = (next, better);
            }
            let to_beat = best.as_ref().map(|best| best.rank);
            if to_beat.as_ref().or(than).is_none_or(|than| rank.against(than).is_gt()) {
                best = Some(Set { mask, rank, searched: true });
            }
        }
        best
    }

    /// The usable hole that mirrors one about the load.
    fn mirror_of(&self, bit: usize) -> Option<usize> {
        let one = self.seated.get(bit)?;
        self.seated.iter().position(|other| self.mirrors(&one.seat, &other.seat))
    }

    fn mirrors(&self, one: &Seat, other: &Seat) -> bool {
        let x_mm = 2.0 * self.weight_x_mm - one.x_mm;
        (other.x_mm - x_mm).abs() <= SAME_ROW_MM && (other.y_mm - one.y_mm).abs() <= SAME_ROW_MM
    }

    /// The outermost holes of the top and bottom rows.
    fn corners(&self) -> Option<u64> {
        let mut mask = 0;
        for (up, right) in [(1.0, -1.0), (1.0, 1.0), (-1.0, -1.0), (-1.0, 1.0)] {
            let far = |one: &Seated| one.seat.y_mm * up * 4.0 + one.seat.x_mm * right;
            let corner = self.seated.iter().enumerate().max_by(|(_, a), (_, b)| far(a).total_cmp(&far(b)));
            mask |= corner.map_or(0, |(bit, _)| 1 << bit);
        }
        self.is_allowed(mask).then_some(mask)
    }

    /// The sets one step away: one hole in, one out, one for another, or two that mirror each other about the load.
    fn steps(&self, mask: u64) -> impl Iterator<Item = u64> {
        let count = self.seated.len();
        let mirrored = (0..count).filter_map(move |bit| {
            let other = self.mirror_of(bit).filter(|other| *other > bit)?;
            Some(mask ^ (1 << bit | 1 << other))
        });
        let single = (0..count).map(move |bit| mask ^ 1 << bit);
        let swapped = (0..count).flat_map(move |out| {
            (0..count)
                .filter(move |into| mask >> out & 1 == 1 && mask >> into & 1 == 0)
                .map(move |into| mask ^ (1 << out | 1 << into))
        });
        single.chain(swapped).chain(mirrored).filter(|mask| self.is_allowed(*mask))
    }
}

/// A bit for each.
fn bits(each: impl Iterator<Item = bool>) -> u64 {
    each.enumerate().fold(0, |mask, (bit, set)| if set { mask | 1 << bit } else { mask })
}
