//! Step 5: the best of the plate's possible places and the best fasteners there; and what moving the piece would give.
//!
//! At each place the set of all usable holes is weighed; every set is tried at the places that lead by it. Where
//! nothing is there to choose from, the place that meets most studs.

mod asks;
mod by_hand;
mod exact;
mod explain;
mod fixed;
mod kind;
mod met;
mod rank;
mod sets;
mod site;
mod tell;

use super::holes::{Ground, holes};
use super::load::Load;
use crate::capacity::case::Case;
use crate::capacity::seat::Edges;
use crate::capacity::why::Known;
use crate::geometry::{Frame, Point, Rect};
use crate::job::kit::Kit;
use crate::job::mount::Mount;
use crate::job::option::ByHand;
use crate::job::plate::Plate;
use crate::plan::explained::Explained;
use crate::plan::piece::{HolePlan, Wish};
use crate::plan::verdict::{Fastening, Want};
use crate::subject::Id;
use crate::tolerance::{SAME_PLACE_MM, WIDEST_BAY_MM};
use crate::units::Length;
pub(super) use asks::Asks;
use by_hand::ByHandOf;
pub(super) use fixed::Fixed;
use kind::{Kind, kinds};
use rank::Rank;
use sets::{Asked, EXACT, Set, Table};
use site::Site;

/// The plate at its chosen place.
pub(super) struct Chosen {
    pub(super) frame: Frame,
    pub(super) offset: Length,
    pub(super) holes: Vec<HolePlan>,
    pub(super) fastening: Fastening,
    pub(super) wish: Wish,
    /// Its working, where that is asked for.
    pub(super) explained: Option<Explained>,
}

/// What a choice is made from.
pub(super) struct Candidates<'a> {
    pub(super) ground: Ground<'a>,
    pub(super) piece: &'a Id,
    pub(super) piece_frame: Frame,
    /// From the piece's middle up to the plate's top.
    pub(super) rise: Length,
    pub(super) mount: &'a Mount,
    pub(super) plate: &'a Plate,
    /// The plate's outline from its middle and top.
    pub(super) outline: Rect,
    /// Whether outline or holes are not its own.
    pub(super) plate_assumed: bool,
    pub(super) load: &'a Load,
    /// What the mount's maker requires.
    pub(super) asks: Asks<'a>,
    /// What is on the truck.
    pub(super) kit: &'a Kit,
    /// What was chosen by hand, of holes and fasteners that are there.
    pub(super) by_hand: &'a [ByHand],
    /// Up to which reserve another fastener is worth its hole.
    pub(super) most_reserve: f64,
    /// How far right of the plate's middle the piece is, where what was done settles that.
    pub(super) held: Option<Length>,
    /// Whether the working is asked for.
    pub(super) explains: bool,
}

/// Of more holes than are tried in every set, the search is made at so many of the leading places (chosen: enough to
/// see past the first).
const SEARCHED_PLACES: usize = 3;

impl Candidates<'_> {
    fn frame(&self, offset: Length) -> Frame {
        Frame { origin: self.piece_frame.to_wall(-offset, self.rise), roll: self.piece_frame.roll }
    }

    fn chosen_by_hand(&self) -> ByHandOf<'_> {
        ByHandOf { chosen: self.by_hand, stocks: &self.kit.fasteners }
    }

    fn holes(&self, offset: Length) -> Vec<HolePlan> {
        let along = |slot: &Id| self.chosen_by_hand().along(slot);
        holes(&self.ground, self.piece, self.plate, self.frame(offset), &along)
    }

    fn place(&self, offset: Length) -> Place {
        Place { offset, holes: self.holes(offset), cases: self.load.cases(offset) }
    }

    /// Every offset that puts a hole, or a slot's middle or end, on a stud's centre, within `reach` of none.
    fn on_studs(&self, least: Length, most: Length) -> Vec<Length> {
        let round = self.plate.holes.iter().map(|hole| Point::new(hole.right.length(), -hole.down));
        let slots = self.plate.slots.iter().flat_map(|slot| {
            let half = if slot.upright { Length::default() } else { slot.travel / 2.0 };
            let middle = slot.right.length();
            let along = self.chosen_by_hand().along(&slot.id).filter(|_| !slot.upright);
            let along = middle + along.map_or(Length::default(), |along| along.min(half).max(-half));
            [middle - half, middle, middle + half, along].map(|right| Point::new(right, -slot.down))
        });
        let mut offsets: Vec<Length> = Vec::new();
        for in_plate in round.chain(slots) {
            let at_none = self.frame(Length::default()).to_wall(in_plate.x, in_plate.y).x;
            let wanted = self.ground.framing.studs.iter().map(|stud| at_none - stud.centre);
            offsets.extend(wanted.filter(|offset| least <= *offset && *offset <= most));
        }
        offsets.sort_by(|a, b| a.mm().total_cmp(&b.mm()));
        offsets.dedup_by(|a, b| (*a - *b).mm().abs() <= SAME_PLACE_MM);
        offsets
    }

    /// Every place of the plate that is tried, the least shift from the middle of the play's own rest first; of two
    /// shifts as large the one to the right: chosen, so that the same job gives the same plan.
    fn offsets(&self) -> Vec<Length> {
        if let Some(held) = self.held {
            return vec![held];
        }
        let (least, most) = self.mount.offsets();
        let rest = self
            .mount
            .arm
            .as_ref()
            .and_then(|arm| arm.parked)
            .map(crate::tape::Offset::length)
            .unwrap_or_default();
        let mut others = self.on_studs(least, most);
        others.extend([least, most]);
        others.sort_by(|a, b| (*a - rest).mm().abs().total_cmp(&(*b - rest).mm().abs()));
        others.insert(0, rest);
        others
    }

    /// The best place and the best fasteners there.
    pub(super) fn choose(&self) -> Chosen {
        let (least, most) = self.mount.offsets();
        let mut places: Vec<Place> = self.offsets().into_iter().map(|offset| self.place(offset)).collect();
        let middle = places.first().map_or(Length::default(), |place| place.offset);
        let site = Site::of(
            self.ground,
            &self.mount.id,
            self.plate,
            self.plate_assumed,
            &self.kit.bits,
            self.middle(middle),
        );
        let by_hand = self.chosen_by_hand();
        let chosen_types = by_hand.stocks();
        let (mut found, mut missing) = kinds(&site, &self.kit.fasteners, &chosen_types);
        if found.is_empty() && !chosen_types.is_empty() {
            let (others, more) = kinds(&site, &self.kit.fasteners, &[]);
            (found, missing) = (others, missing.into_iter().chain(more).collect());
        } else if chosen_types.len() > 1 && found.len() > 1 {
            return self.mixed(&site, &found, places);
        }
        let kinds = found;
        let mut picked = self.pick(&site, &kinds, &places);
        if self.ground.exact == Some(self.piece)
            && let Some(first) = &picked
        {
            picked = self.exact(&site, &kinds, &mut places, first).or(picked);
        }
        let at = picked.as_ref().map_or_else(
            || most_studs(places.iter().map(|place| place.holes.as_slice())),
            |picked| picked.place,
        );
        let Some(place) = places.into_iter().nth(at) else {
            // There is always the place of rest.
            return self.nowhere();
        };
        let fastening = self.tell(&site, &kinds, missing, &place, picked.as_ref());
        let explained = self.explains.then(|| {
            let chosen = picked.as_ref().and_then(|picked| Some((kinds.get(picked.kind)?, &picked.set)));
            let (site, place, fastening) = (&site, &place, &fastening);
            explain::Explains { candidates: self, site, place, fastening, chosen }.explained()
        });
        let wish = self.wish(studs(&place.holes), least, most);
        let frame = self.frame(place.offset);
        Chosen { frame, offset: place.offset, holes: place.holes, fastening, wish, explained }
    }

    /// Where fasteners of more than one type were chosen by hand: at the place where most of them can be put in.
    fn mixed(&self, site: &Site<'_>, kinds: &[Kind<'_>], places: Vec<Place>) -> Chosen {
        let (least, most) = self.mount.offsets();
        let go_in = |place: &Place| {
            self.told(site, place).in_mixed(kinds, &place.holes).iter().filter(|goes| goes.is_ok()).count()
        };
        let mut best: Option<(usize, Place)> = None;
        for place in places {
            let count = go_in(&place);
            if best.as_ref().is_none_or(|(most, _)| count > *most) {
                best = Some((count, place));
            }
        }
        let Some((_, place)) = best else { return self.nowhere() };
        let fastening = self.told(site, &place).mixed(kinds);
        let wish = self.wish(studs(&place.holes), least, most);
        let frame = self.frame(place.offset);
        let explained = self.explains.then(|| Explained::nothing(self.piece.clone()));
        Chosen { frame, offset: place.offset, holes: place.holes, fastening, wish, explained }
    }

    fn told<'t>(&'t self, site: &'t Site<'t>, place: &'t Place) -> tell::Told<'t> {
        tell::Told {
            site,
            load: self.load,
            holes: &place.holes,
            asks: &self.asks,
            by_hand: self.chosen_by_hand(),
            first_case: place.cases().first().map(|case| case.name),
            stocks: &self.kit.fasteners,
        }
    }

    fn nowhere(&self) -> Chosen {
        Chosen {
            frame: self.frame(Length::default()),
            offset: Length::default(),
            holes: Vec::new(),
            fastening: Fastening::unknown(),
            wish: Wish::default(),
            explained: self.explains.then(|| Explained::nothing(self.piece.clone())),
        }
    }

    /// The middle of the plate's outline on the wall.
    fn middle(&self, offset: Length) -> Point {
        let middle = self.outline.centre();
        self.frame(offset).to_wall(middle.x, middle.y)
    }

    /// The fasteners of one kind at one place, ready to be weighed.
    fn table<'k>(&self, site: &Site<'_>, kind: &'k Kind<'k>, place: &Place) -> Table<'k> {
        self.table_with(site, kind, place, &[])
    }

    /// The same with slots' other positions, each by the slot's place in the plate's list.
    fn table_with<'k>(
        &self,
        site: &Site<'_>,
        kind: &'k Kind<'k>,
        place: &Place,
        variants: &[(usize, HolePlan)],
    ) -> Table<'k> {
        let asked = Asked {
            cases: place.cases(),
            edges: Edges {
                left_mm: self.outline.left.mm(),
                right_mm: self.outline.right.mm(),
                bottom_mm: self.outline.bottom.mm(),
                top_mm: self.outline.top.mm(),
            },
            weight_x_mm: self.load.weight_x_mm(place.offset),
            swings_out: self.load.swings_out,
            asks: &self.asks,
            by_hand: self.chosen_by_hand(),
            most_reserve: self.most_reserve,
        };
        Table::of(site, kind, &place.holes, variants, &asked)
    }

    /// The best kind and set; `None` where no hole takes any fastener, or what hangs makes no sense.
    fn pick(&self, site: &Site<'_>, kinds: &[Kind<'_>], places: &[Place]) -> Option<Picked> {
        if kinds.is_empty() || places.iter().any(|place| place.cases.is_err()) {
            return None;
        }
        let mut full: Vec<(usize, Rank)> = Vec::new();
        let mut usable = 0;
        for (index, place) in places.iter().enumerate() {
            let tables = kinds.iter().map(|kind| self.table(site, kind, place));
            let ranks = tables.filter_map(|table| {
                usable = usable.max(table.seated.len());
                table.full()
            });
            let best = ranks.map(|full| full.rank).max_by(Rank::against);
            full.extend(best.map(|rank| (index, rank)));
        }
        let lead = full.iter().map(|(_, rank)| *rank).max_by(Rank::against)?;
        full.retain(|(_, rank)| rank.leads_with(&lead));
        // Stable: of equals the least shift stays first.
        full.sort_by(|(_, a), (_, b)| b.against(a));
        if usable > EXACT {
            full.truncate(SEARCHED_PLACES);
        }
        full.sort_by_key(|(index, _)| *index);
        let mut picked: Option<Picked> = None;
        for (index, _) in full {
            let Some(place) = places.get(index) else { continue };
            for (kind, own) in kinds.iter().enumerate() {
                let to_beat = picked.as_ref().map(|picked| picked.set.rank);
                if let Some(set) = self.table(site, own, place).best(to_beat.as_ref()) {
                    picked = Some(Picked { place: index, kind, set });
                }
            }
        }
        picked
    }

    /// What is told of the choice.
    fn tell(
        &self,
        site: &Site<'_>,
        kinds: &[Kind<'_>],
        missing: Vec<Want>,
        place: &Place,
        picked: Option<&Picked>,
    ) -> Fastening {
        let told = self.told(site, place);
        let chosen = picked.and_then(|picked| Some((kinds.get(picked.kind)?, &picked.set)));
        match chosen {
            Some((kind, set)) => told.chosen(&self.table(site, kind, place), set),
            None => told.none(kinds, missing, self.kit.fasteners.is_empty()),
        }
    }

    /// How far the piece would have to move to either side for more studs.
    fn wish(&self, here: usize, least: Length, most: Length) -> Wish {
        let bay = Length::millimetres(WIDEST_BAY_MM);
        let mut wish = Wish { studs: here, most_studs: here, left: None, right: None };
        if self.held.is_some() {
            // The plate stays where it is held, wherever the piece goes.
            return wish;
        }
        for offset in self.on_studs(least - bay, most + bay) {
            // A larger offset is a plate farther left: the piece has to follow it by what the play lacks.
            let (left, right) = (offset - most, least - offset);
            if left <= Length::default() && right <= Length::default() {
                continue;
            }
            let met = studs(&self.holes(offset));
            if met < wish.most_studs || met <= here {
                continue;
            }
            if met > wish.most_studs {
                wish = Wish { studs: here, most_studs: met, left: None, right: None };
            }
            let (side, by) =
                if left > Length::default() { (&mut wish.left, left) } else { (&mut wish.right, right) };
            *side = Some(side.map_or(by, |known| known.min(by)));
        }
        wish
    }
}

/// The plate at one of its places.
struct Place {
    offset: Length,
    holes: Vec<HolePlan>,
    /// Every case of what hangs there.
    cases: Known<Vec<Case>>,
}

impl Place {
    /// Its cases; none where what hangs makes no sense.
    fn cases(&self) -> &[Case] {
        self.cases.as_deref().unwrap_or_default()
    }
}

/// The best set of holes, of which kind, at which place.
struct Picked {
    place: usize,
    kind: usize,
    set: Set,
}

/// Of the plate's holes at each place, the place that meets most studs, then in solid wood most surely; of equals the
/// first.
fn most_studs<'h>(places: impl Iterator<Item = &'h [HolePlan]>) -> usize {
    let mut best = 0;
    let mut met: Option<(usize, f64)> = None;
    for (index, holes) in places.enumerate() {
        let (more, surer) = (studs(holes), sum_of_chances(holes));
        let is_better =
            met.is_none_or(|(most, sure)| more > most || (more == most && surer > sure + WORTH_A_SHIFT));
        if is_better {
            (best, met) = (index, Some((more, surer)));
        }
    }
    best
}

/// A shift is worth so much more chance of solid wood, over all studs (chosen: less is not worth the plate off its
/// middle).
const WORTH_A_SHIFT: f64 = 0.05;

/// The chances of solid wood, of each stud its least sure hole.
fn sum_of_chances(holes: &[HolePlan]) -> f64 {
    let mut each: Vec<(usize, f64)> =
        holes.iter().filter_map(|hole| Some((hole.stud?, hole.chance.unwrap_or_default()))).collect();
    each.sort_by(|a, b| a.0.cmp(&b.0).then(a.1.total_cmp(&b.1)));
    each.dedup_by_key(|(stud, _)| *stud);
    each.iter().map(|(_, chance)| chance).sum()
}

/// How many different studs are met with room to their edges.
fn studs(holes: &[HolePlan]) -> usize {
    let mut met: Vec<usize> = holes.iter().filter_map(|hole| hole.stud).collect();
    met.sort_unstable();
    met.dedup();
    met.len()
}
