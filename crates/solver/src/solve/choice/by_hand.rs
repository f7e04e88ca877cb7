//! What was chosen by hand of a plate's holes, and a plate for which fasteners of more than one type were chosen.

use super::kind::Kind;
use super::tell::Told;
use crate::capacity::group::Word;
use crate::capacity::why::Why;
use crate::job::kit::FastenerStock;
use crate::job::option::{ByHand, Wanted};
use crate::ledger::Blank;
use crate::plan::piece::HolePlan;
use crate::plan::verdict::{EmptyWhy, Fastening, LeftEmpty, Required};
use crate::subject::Id;
use crate::tape::Offset;
use crate::units::Length;

/// What was chosen by hand, each hole and fastener of it there.
#[derive(Clone, Copy)]
pub(in super::super) struct ByHandOf<'a> {
    pub(super) chosen: &'a [ByHand],
    pub(super) stocks: &'a [FastenerStock],
}

impl<'a> ByHandOf<'a> {
    fn of(self, hole: &Id) -> Option<&'a Wanted> {
        self.chosen.iter().find(|one| one.hole == *hole).map(|one| &one.wanted)
    }

    /// How far along a slot its fastener stands by hand.
    pub(super) fn along(self, hole: &Id) -> Option<Length> {
        self.chosen.iter().find(|one| one.hole == *hole)?.along.map(Offset::length)
    }

    /// Whether a hole is to be used.
    pub(super) fn is_wanted(self, hole: &Id) -> bool {
        matches!(self.of(hole), Some(Wanted::Used | Wanted::UsedWith(_)))
    }

    /// Why a hole takes nothing of a stock by hand, where that is so.
    pub(super) fn refused(self, hole: &Id, stock: &Id) -> Option<EmptyWhy> {
        match self.of(hole)? {
            Wanted::Empty => Some(EmptyWhy::ByHand),
            Wanted::UsedWith(only) if only != stock => {
                let only = self.stocks.iter().find(|stock| stock.id == *only);
                Some(only.map_or(EmptyWhy::NoFastener, |only| EmptyWhy::OnlyWith(only.into())))
            }
            Wanted::Used | Wanted::UsedWith(_) => None,
        }
    }

    /// The fasteners that were chosen, each once, in the order of the job.
    pub(super) fn stocks(self) -> Vec<&'a Id> {
        let mut stocks: Vec<&Id> = Vec::new();
        for one in self.chosen {
            if let Wanted::UsedWith(stock) = &one.wanted
                && !stocks.contains(&stock)
            {
                stocks.push(stock);
            }
        }
        stocks
    }
}

impl Told<'_> {
    /// What goes into each hole where fasteners of more than one type are chosen by hand, by its place among the kinds.
    pub(super) fn in_mixed(&self, kinds: &[Kind<'_>], holes: &[HolePlan]) -> Vec<Result<usize, EmptyWhy>> {
        let each = holes.iter().enumerate().map(|(index, hole)| {
            if !self.by_hand.is_wanted(&hole.id) {
                return Err(self.by_hand.refused(&hole.id, &hole.id).unwrap_or(EmptyWhy::Mixed));
            }
            let mut why = EmptyWhy::NoFastener;
            for (at, kind) in kinds.iter().enumerate() {
                let refused = self.by_hand.refused(&hole.id, &kind.stock.id);
                match refused.map_or_else(|| kind.seat(&mut Blank, self.site, index, hole).map(|_| ()), Err) {
                    Ok(()) => return Ok(at),
                    Err(other) => {
                        if !matches!(other, EmptyWhy::OnlyWith(_)) || why == EmptyWhy::NoFastener {
                            why = other;
                        }
                    }
                }
            }
            Err(why)
        });
        each.collect()
    }

    /// A plate with fasteners of more than one type: what goes where, and that nobody knows whether it holds.
    pub(super) fn mixed(&self, kinds: &[Kind<'_>]) -> Fastening {
        let mut fastening = Fastening::unknown();
        let mut rests = self.load.rests.clone();
        let mut wanted = self.load.wants.clone();
        super::tell::add(&mut wanted, self.site.wants());
        for (hole, goes) in self.holes.iter().zip(self.in_mixed(kinds, self.holes)) {
            match goes.map(|at| kinds.get(at)) {
                Ok(Some(kind)) => {
                    super::tell::add(&mut rests, kind.rests.iter().cloned());
                    super::tell::add(&mut wanted, kind.wants.iter().cloned());
                    fastening.fasteners.push(self.in_use(kind, hole, None));
                }
                Ok(None) => {}
                Err(why) => fastening.left_empty.push(LeftEmpty {
                    hole: hole.id.clone(),
                    subject: hole.subject.clone(),
                    why,
                    wanted: self.by_hand.is_wanted(&hole.id),
                }),
            }
        }
        let verdict = &mut fastening.verdict;
        verdict.word = Word::NotKnown;
        verdict.required = if self.asks.is_free() { Required::Met } else { Required::NotKnown };
        verdict.uncarried = self.first_case.map(|case| (case, Why::Mixed));
        (verdict.rests_on, verdict.wanted) = (rests, wanted);
        fastening
    }
}
