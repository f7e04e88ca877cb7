//! Step 4: what the plate's holes meet at one of its places. A pure function of that place.

use crate::geometry::{Frame, Point};
use crate::handbook::boring::PLATE_WITHIN_IN;
use crate::job::feature::FeatureKind;
use crate::job::framing::WallFraming;
use crate::job::hit::HitKind;
use crate::job::plate::{Plate, PlateSlot};
use crate::job::wall::Wall;
use crate::plan::fact::PlacedFact;
use crate::plan::framing::{Framing, Known};
use crate::plan::piece::{HolePlan, Meets};
use crate::plan::survey::{PlacedHit, Survey};
use crate::subject::{Id, Subject};
use crate::tolerance::{EDGE_NEED_MM, PROBED_BESIDE_MM, PROBED_WITHIN_MM, SAME_PLACE_MM};
use crate::units::Length;

/// A fastener of another piece's plate on the same wall.
pub(super) struct InUse {
    /// The hole that it is in.
    pub(super) hole: Subject,
    pub(super) place: Point,
    /// Which stud it is in.
    pub(super) stud: Option<usize>,
    pub(super) diameter: Length,
}

/// What the holes are seen against.
#[derive(Clone, Copy)]
pub(super) struct Ground<'a> {
    pub(super) wall: &'a Wall,
    pub(super) survey: &'a Survey,
    pub(super) framing: &'a Framing,
    /// What was done.
    pub(super) facts: &'a [PlacedFact],
    /// The chance of solid wood from which a fastener counts as met.
    pub(super) level: f64,
    /// The piece of which every set of holes is to be tried at every place.
    pub(super) exact: Option<&'a Id>,
    /// The fasteners of the plates that were chosen for before.
    pub(super) in_use: &'a [InUse],
}

/// What each hole meets with the plate at `frame`: round holes, then slots, in the order of the job. A slot of which
/// `along` tells has its fastener there, any other where it meets a stud best.
pub(super) fn holes(
    ground: &Ground<'_>,
    piece: &Id,
    plate: &Plate,
    frame: Frame,
    along: &dyn Fn(&Id) -> Option<Length>,
) -> Vec<HolePlan> {
    let round = plate.holes.iter().map(|hole| {
        let in_plate = Point::new(hole.right.length(), -hole.down);
        ground.hole(piece, &hole.id, frame, in_plate, hole.diameter)
    });
    let slots = plate.slots.iter().map(|slot| {
        let middle = Point::new(slot.right.length(), -slot.down);
        let half = slot.travel / 2.0;
        let shift = match along(&slot.id) {
            Some(along) => along.min(half).max(-half),
            None if slot.upright => Length::default(),
            None => ground.toward_stud(frame, middle, half),
        };
        ground.hole(piece, &slot.id, frame, in_slot(slot, shift), slot.width)
    });
    round.chain(slots).collect()
}

/// A place in a slot, so far along it from its middle.
pub(super) fn in_slot(slot: &PlateSlot, along: Length) -> Point {
    let middle = Point::new(slot.right.length(), -slot.down);
    if slot.upright { Point::new(middle.x, middle.y + along) } else { Point::new(middle.x + along, middle.y) }
}

impl Ground<'_> {
    /// What a hole meets at its place in a plate.
    pub(super) fn hole(
        &self,
        piece: &Id,
        id: &Id,
        frame: Frame,
        in_plate: Point,
        width: Option<Length>,
    ) -> HolePlan {
        let place = frame.to_wall(in_plate.x, in_plate.y);
        let (meets, stud, hidden) = self.meets(place, width.unwrap_or_default() / 2.0);
        let (meets, stud) = if self.is_metal(place) { (Meets::Hidden, None) } else { (meets, stud) };
        // Whatever the odds: nothing is fastened where a probe met no wood.
        let is_empty = meets == Meets::Stud && self.is_empty(place, Length::millimetres(EDGE_NEED_MM));
        let (meets, stud) = if is_empty { (Meets::Board, None) } else { (meets, stud) };
        let chance = if is_empty { Some(0.0) } else { self.chance(place) };
        let met = stud.is_some_and(|stud| self.is_met(stud, place, chance));
        let subject = piece.part(id.as_str());
        HolePlan { id: id.clone(), subject, place, in_plate, meets, stud, hidden, chance, met }
    }

    /// How far along a sideways slot the fastener moves: to the nearest stud's centre, or as near to it as it goes
    /// where it then has room to the stud's edge; else not.
    fn toward_stud(&self, frame: Frame, middle: Point, reach: Length) -> Length {
        let place = frame.to_wall(middle.x, middle.y);
        let on = self.survey.breast_at(place.x, Some(place.y)).map(|breast| &breast.id);
        let here = self.framing.studs.iter().filter(|stud| stud.on.as_ref() == on);
        let shifts = here.map(|stud| (stud.middle_at(place.y) - place.x, stud));
        let nearest = shifts.min_by(|(a, _), (b, _)| a.mm().abs().total_cmp(&b.mm().abs()));
        let Some((shift, stud)) = nearest else { return Length::default() };
        let beyond = (shift.abs() - reach).mm();
        let room_mm = (stud.right - stud.left).mm() / 2.0 - EDGE_NEED_MM;
        if beyond <= SAME_PLACE_MM {
            shift
        } else if beyond <= room_mm {
            // At the slot's end it still has room to the stud's edge.
            reach * shift.mm().signum()
        } else {
            Length::default()
        }
    }

    /// Whether a probe met metal beside a place, near its height, that is no stud of steel.
    fn is_metal(&self, place: Point) -> bool {
        let met = |hit: &PlacedHit| {
            hit.kind == HitKind::Metal
                && (hit.x - place.x).abs() <= Length::inches(PLATE_WITHIN_IN.value)
                && hit.y.is_none_or(|y| (y - place.y).mm().abs() <= PROBED_WITHIN_MM)
        };
        let on = || self.survey.breast_at(place.x, Some(place.y)).map(|breast| &breast.id);
        self.survey.hits.iter().any(met) && !matches!(self.wall.framing_on(on()), Some(WallFraming::Steel(_)))
    }

    /// Whether a probe met no wood within so much to either side of a place, near its height, and none noted later met
    /// some there. The odds may have it that the probe was noted wrongly; of two readings the safer is taken (chosen).
    pub(super) fn is_empty(&self, place: Point, need: Length) -> bool {
        let at_height = |hit: &PlacedHit| hit.y.is_none_or(|y| (y - place.y).mm().abs() <= PROBED_WITHIN_MM);
        let hits = &self.survey.hits;
        hits.iter().enumerate().any(|(index, empty)| {
            let met_none = matches!(empty.kind, HitKind::Air | HitKind::ShallowWood);
            let near = (empty.x - place.x).abs() <= need;
            let met_later = |hit: &PlacedHit| {
                matches!(hit.kind, HitKind::Wood | HitKind::Metal)
                    && (hit.x - empty.x).mm().abs() <= PROBED_BESIDE_MM
                    && at_height(hit)
            };
            met_none && near && at_height(empty) && !hits.iter().skip(index + 1).any(met_later)
        })
    }

    /// The chance of solid wood at a place; `None` where nothing tells.
    fn chance(&self, place: Point) -> Option<f64> {
        let on = self.survey.breast_at(place.x, Some(place.y)).map(|breast| &breast.id);
        let told = self.framing.planes.iter().any(|plane| plane.on.as_ref() == on);
        let need = Length::millimetres(EDGE_NEED_MM);
        told.then(|| self.framing.chance(on, place.x, place.y, need))
    }

    /// Whether a fastener at a place in a stud is met.
    fn is_met(&self, stud: usize, place: Point, chance: Option<f64>) -> bool {
        let Some(stud) = self.framing.studs.get(stud) else { return false };
        if matches!(self.wall.framing_on(stud.on.as_ref()), Some(WallFraming::Steel(_))) {
            return stud.known == Known::Met;
        }
        let near = |hit: &&PlacedHit| {
            let height = hit.y.is_some_and(|y| (y - place.y).mm().abs() <= PROBED_WITHIN_MM);
            hit.kind == HitKind::Wood && height && stud.hits.contains(&hit.id)
        };
        chance.is_some_and(|chance| chance >= self.level) && self.survey.hits.iter().any(|hit| near(&hit))
    }

    /// What a hole meets, the stud where it has room in one, and the hidden thing where it meets that.
    fn meets(&self, place: Point, radius: Length) -> (Meets, Option<usize>, Option<Id>) {
        let opening =
            |kind: FeatureKind| matches!(kind, FeatureKind::Window | FeatureKind::Door | FeatureKind::Vent);
        let over = |feature: &&crate::plan::survey::PlacedFeature| {
            opening(feature.kind) && feature.rect.holds(place)
        };
        if !self.survey.outline.holds(place) || self.survey.features.iter().find(over).is_some() {
            return (Meets::OffWall, None, None);
        }
        if let Some(hidden) = self.survey.hidden.iter().find(|hidden| hidden.rect.grown(radius).holds(place))
        {
            return (Meets::Hidden, None, Some(hidden.id.clone()));
        }
        let on = self.survey.breast_at(place.x, Some(place.y)).map(|breast| &breast.id);
        match self.wall.framing_on(on) {
            Some(WallFraming::Masonry(_) | WallFraming::Concrete(_)) => return (Meets::Masonry, None, None),
            Some(WallFraming::Veneer | WallFraming::NoFraming) => return (Meets::Board, None, None),
            Some(WallFraming::Wood(_) | WallFraming::Steel(_) | WallFraming::NotKnown) | None => {}
        }
        let studs = self.framing.studs.iter().enumerate().filter(|(_, stud)| stud.on.as_ref() == on);
        let mut any = false;
        for (index, stud) in studs {
            any = true;
            let off_mm = (place.x - stud.middle_at(place.y)).mm().abs();
            let half_mm = (stud.right - stud.left).mm() / 2.0;
            if off_mm <= half_mm - EDGE_NEED_MM + SAME_PLACE_MM {
                return (Meets::Stud, Some(index), None);
            }
            if off_mm <= half_mm + SAME_PLACE_MM {
                return (Meets::StudEdge, None, None);
            }
        }
        (if any { Meets::Board } else { Meets::NotKnown }, None, None)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::Rect;
    use crate::job::wall::End;
    use crate::plan::framing::Stud;
    use crate::plan::survey::Floor;
    use crate::tape::Offset;

    #[test]
    fn a_slot_reaches_a_stud_at_its_very_end() {
        let mm = Length::millimetres;
        let (wall, size) = (Wall::default(), mm(3000.0));
        let survey = Survey {
            outline: Rect { left: mm(0.0), right: size, bottom: mm(0.0), top: size },
            left_end: End::Open,
            right_end: End::Open,
            floor: Floor::default(),
            control_line_y: None,
            features: Vec::new(),
            hidden: Vec::new(),
            hits: Vec::new(),
            humps: Vec::new(),
            seats: Vec::new(),
            misfits: Vec::new(),
        };
        for tenth in 0..2000 {
            let (centre, half) = (mm(1000.0 + f64::from(tenth) / 10.0), mm(19.05));
            let framing = Framing {
                known: true,
                studs: vec![Stud {
                    centre,
                    left: centre - half,
                    right: centre + half,
                    doubt: mm(6.35),
                    at_height: Length::millimetres(1500.0),
                    probability: 0.98,
                    known: Known::Inferred,
                    lean: 0.0,
                    lean_doubt: 0.0,
                    hits: Vec::new(),
                    on: None,
                }],
                planes: Vec::new(),
            };
            // 29.7 to either side of its middle: the plate stands so that its left end is on the stud.
            let slot = PlateSlot {
                id: Id::new("slot-1"),
                right: Offset(mm(12.1)),
                down: mm(10.0),
                travel: mm(59.4),
                upright: false,
                width: None,
            };
            let plate = Plate { slots: vec![slot], ..Plate::default() };
            let end = mm(12.1) - mm(59.4) / 2.0;
            let frame =
                Frame { origin: Point::new(centre - end, mm(1500.0)), roll: crate::units::Angle::default() };
            let ground = Ground {
                wall: &wall,
                survey: &survey,
                framing: &framing,
                facts: &[],
                level: 0.95,
                exact: None,
                in_use: &[],
            };
            let met = holes(&ground, &Id::new("display-1"), &plate, frame, &|_| None);
            assert_eq!(met[0].meets, Meets::Stud, "stud at {} mm", centre.mm());
        }
    }
}
