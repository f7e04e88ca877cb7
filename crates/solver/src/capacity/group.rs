//! A set of used fasteners under cases of load: what each is asked, and the worst of it against what one may
//! carry.
//!
//! For a choice over many sets and types: [`Group::of`] once a set, [`Group::demand`] once a set, and
//! [`Demand::against`] once a type, which only divides.

use super::case::Case;
use super::duration::Lasting;
use super::hold::Hold;
use super::in_plane::{Plane, Spread};
use super::out_of_plane::{Levers, Sides};
use super::seat::{Edges, Seat, sound};
use super::used::{Asked, Used, surely_within, used};
use super::why::{Input, Known, MOST_MM, MOST_N, Why, within};
use crate::ledger::{Blank, Label, Ledger};

/// A set of used fasteners.
#[derive(Clone, Debug, PartialEq)]
pub struct Group {
    plane: Plane,
    levers: Levers,
    count: usize,
}

/// What a case asks of a fastener.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ask {
    /// The case's place in the list.
    pub case: usize,
    /// The fastener's place in the list.
    pub seat: usize,
    /// How long the case lasts.
    pub lasting: Lasting,
    /// What is asked.
    pub asked: Asked,
}

/// What all cases ask of a set of fasteners.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Demand {
    /// Of the cases that could be worked out: each case of each fastener, by case, then by fastener.
    pub asks: Vec<Ask>,
    /// The cases that could not, and why.
    pub not_known: Vec<(usize, Why)>,
}

/// A verdict's word.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Word {
    /// Every case is carried.
    Holds,
    /// No case is too much, and at least one is not known.
    NotKnown,
    /// A case is too much.
    Short,
}

/// The worst of all cases.
#[derive(Clone, Debug, PartialEq)]
pub struct Outcome {
    /// The fastener and case that use most; `None` where no case could be worked out.
    pub governing: Option<(Ask, Used)>,
    /// The first case that is not known, and why.
    pub not_known: Option<(usize, Why)>,
}

impl Group {
    /// The group of these seats on a plate of this outline; `places` is the weakest label of where they stand.
    ///
    /// # Errors
    /// Not known without a seat, or where a place is not finite.
    pub fn of<L: Ledger>(ledger: &mut L, seats: &[Seat], edges: &Edges, places: Label) -> Known<Self> {
        sound(seats, edges)?;
        let plane = Plane::of(ledger, seats, places);
        Ok(Self { plane, levers: Levers::of(seats, edges, places), count: seats.len() })
    }

    /// What a case asks of one fastener.
    ///
    /// # Errors
    /// Not known where the group cannot carry the case by published values, or the case makes no sense.
    pub fn asked<L: Ledger>(&self, ledger: &mut L, seat: usize, case: &Case) -> Known<Asked> {
        let (spread, sides) = self.under(ledger, case)?;
        self.of_seat(ledger, seat, &spread, &sides)
    }

    /// How a case spreads over the group: what one of its fasteners does not carry, none does.
    fn under<L: Ledger>(&self, ledger: &mut L, case: &Case) -> Known<(Spread, Sides)> {
        let most_nmm = MOST_N * MOST_MM;
        within(case.down_n, MOST_N, Input::Load)?;
        within(case.down_x_nmm, most_nmm, Input::Load)?;
        within(case.down_z_nmm, most_nmm, Input::Load)?;
        if let Some(out) = &case.out {
            if !(out.n >= 0.0 && out.n <= MOST_N) {
                return Err(Why::NoValue(Input::Load));
            }
            within(out.x_mm, MOST_MM, Input::Place)?;
            within(out.high_y_mm, MOST_MM, Input::Place)?;
            within(out.low_y_mm, MOST_MM, Input::Place)?;
        }
        let spread = self.plane.spread(ledger, &case.in_plane())?;
        Ok((spread, self.levers.sides(ledger, case.down_z_nmm, case.out.as_ref(), case.label)?))
    }

    /// What a case that is spread so asks of one fastener.
    fn of_seat<L: Ledger>(
        &self,
        ledger: &mut L,
        seat: usize,
        spread: &Spread,
        sides: &Sides,
    ) -> Known<Asked> {
        let (along_n, across_n) = self.plane.shear(ledger, seat, spread)?;
        let pull_n = self.levers.pull(ledger, seat, sides)?;
        Ok(Asked { along_n, across_n, pull_n, label: sides.pulls })
    }

    /// What all cases ask of all its fasteners.
    #[must_use]
    pub fn demand(&self, cases: &[Case]) -> Demand {
        let mut demand = Demand { asks: Vec::with_capacity(cases.len() * self.count), not_known: Vec::new() };
        for (index, case) in cases.iter().enumerate() {
            match self.under(&mut Blank, case) {
                Err(why) => demand.not_known.push((index, why)),
                Ok((spread, sides)) => demand.asks.extend((0..self.count).filter_map(|seat| {
                    let asked = self.of_seat(&mut Blank, seat, &spread, &sides).ok()?;
                    Some(Ask { case: index, seat, lasting: case.lasting, asked })
                })),
            }
        }
        demand
    }
}

impl Demand {
    /// The worst of it against what one fastener of the group may carry. Of equals the first.
    #[must_use]
    pub fn against(&self, hold: &Hold) -> Outcome {
        self.against_some(hold, |_| true)
    }

    /// The same of some of its cases, by their places in the list.
    #[must_use]
    pub fn against_some(&self, hold: &Hold, is_one: impl Fn(usize) -> bool) -> Outcome {
        let not_known = self.not_known.iter().find(|(case, _)| is_one(*case)).copied();
        let mut outcome = Outcome { governing: None, not_known };
        for ask in self.asks.iter().filter(|ask| is_one(ask.case)) {
            let known = outcome
                .governing
                .is_some_and(|(_, most)| surely_within(most.value, &ask.asked, hold, ask.lasting));
            if known {
                continue;
            }
            match used(&mut Blank, &ask.asked, hold, ask.lasting) {
                Ok(used) if outcome.governing.is_none_or(|(_, most)| used.value > most.value) => {
                    outcome.governing = Some((*ask, used));
                }
                Ok(_) => {}
                Err(why) => outcome.not_known = outcome.not_known.or(Some((ask.case, why))),
            }
        }
        outcome
    }

    /// Case by case, the worst fastener; a case that is not known with its reason. In the order of the cases.
    #[must_use]
    pub fn by_case(&self, hold: &Hold) -> Vec<(usize, Known<(Ask, Used)>)> {
        let mut told: Vec<(usize, Known<(Ask, Used)>)> = Vec::new();
        for ask in &self.asks {
            let found = used(&mut Blank, &ask.asked, hold, ask.lasting).map(|used| (*ask, used));
            match told.last_mut() {
                Some((case, worst)) if *case == ask.case => match (&worst, &found) {
                    (Ok((_, most)), Ok((_, used))) if used.value <= most.value => {}
                    (Err(_), Ok(_)) => {}
                    _ => *worst = found,
                },
                _ => told.push((ask.case, found)),
            }
        }
        told.extend(self.not_known.iter().map(|(case, why)| (*case, Err(*why))));
        told.sort_by_key(|(case, _)| *case);
        told
    }
}

impl Outcome {
    /// Short before not known before holds. Says nothing yet of what the numbers rest on.
    #[must_use]
    pub fn word(&self) -> Word {
        match (&self.governing, &self.not_known) {
            (Some((_, used)), _) if used.value > 1.0 => Word::Short,
            (None, _) | (_, Some(_)) => Word::NotKnown,
            (Some(_), None) => Word::Holds,
        }
    }
}
