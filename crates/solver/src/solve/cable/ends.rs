//! Where the wall may be opened: behind the piece, and low where the cables come out.

use super::Cabling;
use super::bays::Bay;
use super::plate_opening::enclosed;
use super::space::Space;
use crate::geometry::{Point, Rect, Span};
use crate::handbook::low_voltage;
use crate::job::CodeSet;
use crate::job::feature::FeatureKind;
use crate::job::hidden::HiddenKind;
use crate::plan::cable::{Against, Lead, OpeningSize};
use crate::plan::fact::PlacedFact;
use crate::plan::survey::PlacedFeature;
use crate::route::{Area, Beside, Cost, Goal, Place, Start, Zone, nm};
use crate::subject::Id;
use crate::tolerance::{
    ENTRY_CLEAR_MM, ENTRY_HIDDEN_MM, EXIT_UP_MM, EXIT_UP_UK_MM, SOLE_PLATE_MM, TOP_PLATES_MM, WIDEST_BAY_MM,
};
use crate::units::Length;

/// Where a way may begin or end, and what speaks against each place that was asked for.
pub(super) struct Ends {
    pub(super) start: Start,
    /// The part of it that is in the plate's own opening, where there is one and the entry may be anywhere.
    pub(super) in_plate: Option<Start>,
    pub(super) goal: Goal,
    pub(super) against: Vec<Against>,
    /// Where an entry and an exit may be, whatever is asked for.
    pub(super) zones: (Zone, Zone),
}

impl Ends {
    /// Counts something that is not allowed, wherever a way begins.
    pub(super) fn bar(&mut self) {
        for start in std::iter::once(&mut self.start).chain(&mut self.in_plate) {
            start.cost.not_allowed += 1;
        }
    }
}

impl Cabling<'_> {
    /// The outlet or box that a cable should end beside.
    pub(super) fn beside(&self, wish: &Id) -> Option<&PlacedFeature> {
        let wish = self.wishes.iter().find(|one| one.id == *wish)?;
        let id = wish.ends_at.as_ref()?;
        self.ground.survey.features.iter().find(|feature| feature.id == *id)
    }

    /// The first that any cable of low voltage should end beside.
    pub(super) fn beside_any(&self, leads: &[Lead]) -> Option<&PlacedFeature> {
        leads.iter().find_map(|lead| self.beside(&lead.id))
    }

    /// How high the exit's middle should be.
    pub(super) fn wished_height(&self, beside: Option<&PlacedFeature>) -> Length {
        let up = match self.job.codes {
            Some(CodeSet::Uk) => EXIT_UP_UK_MM,
            _ => EXIT_UP_MM,
        };
        let floor = self.ground.survey.floor.y_at(self.at.outline.centre().x);
        beside.map_or(floor + Length::millimetres(up), |feature| feature.rect.centre().y)
    }

    /// Where a way inside the wall may begin and end, and for those not pinned what is barred there.
    pub(super) fn ends(
        &self,
        space: &Space,
        near: Point,
        sizes: [OpeningSize; 2],
        beside: Option<&PlacedFeature>,
        hidden: Rect,
    ) -> Ends {
        let mut against = Vec::new();
        let [entry, exit] = sizes;
        let mut start = self.start(space, near, entry, hidden);
        let mut goal = self.goal(space, exit, beside);
        let zones = (start.zone.clone(), self.near_zone(&goal.zone));
        let mut in_plate = self.in_plate(&start, entry);
        if let Some(cut) = self.cut("entry") {
            start.zone = at(Place::of(cut));
            in_plate = None;
        } else if let Some(place) = self.entry_kept() {
            in_plate = None;
            if pin_zone(&mut start.zone, Place::of(place)) {
                against.push(Against::EntryPlace);
                start.cost.not_allowed += 1;
            }
        }
        if let Some(cut) = self.cut("exit") {
            goal.zone = at(Place::of(cut));
            goal.wished_y = nm(cut.y);
        } else if let Some(place) = self.exit_kept() {
            goal.wished_y = nm(place.y);
            if pin_zone(&mut goal.zone, Place::of(place)) {
                against.push(Against::ExitPlace);
                goal.cost.not_allowed += 1;
            }
        }
        Ends { start, in_plate, goal, against, zones }
    }

    /// The part of the exit's zone that is told: under the piece and a bay to either side. What is farther off is no
    /// exit of these cables, and what stands there changes nothing.
    pub(super) fn near_zone(&self, whole: &Zone) -> Zone {
        let reach = self.at.outline.across().grown(Length::millimetres(WIDEST_BAY_MM));
        let (left, right) = (nm(reach.from), nm(reach.to));
        let room = Area { left: whole.room.left.max(left), right: whole.room.right.min(right), ..whole.room };
        zone(room, whole.barred.clone())
    }

    /// Where the exit has to be.
    pub(super) fn exit_kept(&self) -> Option<Point> {
        let pin = self.wished.exit_at?;
        Some(Point::new(pin.across, self.ground.survey.floor.y_at(pin.across) + pin.up))
    }

    /// Where the entry was asked for.
    fn entry_kept(&self) -> Option<Point> {
        let pin = self.wished.entry_at?;
        Some(self.at.frame.to_wall(pin.right.length(), pin.up.length()))
    }

    /// Where openings are whatever speaks against them: cut, or asked for.
    pub(super) fn ends_kept(&self) -> impl Iterator<Item = Point> {
        let (entry, exit) = (self.cut("entry"), self.cut("exit"));
        [entry.or_else(|| self.entry_kept()), exit.or_else(|| self.exit_kept())].into_iter().flatten()
    }

    /// Where an opening was struck or cut in this option, where that is.
    pub(super) fn cut(&self, part: &str) -> Option<Point> {
        self.opened(part)?.place
    }

    /// What was struck or cut as an opening in this option.
    pub(super) fn opened(&self, part: &str) -> Option<&PlacedFact> {
        let of_piece =
            |fact: &&PlacedFact| fact.is_own && fact.mark.id == self.at.id && fact.mark.part_str() == part;
        self.ground.facts.iter().find(of_piece).filter(|_| !self.is_free)
    }

    /// Behind the piece: hidden, clear of the plate, brackets, fasteners, studs, what is seen and what is not.
    pub(super) fn start(&self, space: &Space, near: Point, size: OpeningSize, hidden: Rect) -> Start {
        let room = inner(hidden, size);
        let clear = Length::millimetres(ENTRY_CLEAR_MM);
        let mut kept: Vec<Rect> = Vec::new();
        if let Some(mount) = &self.at.mount {
            kept.extend(mount.solids.iter().chain(&mount.brackets).map(|rect| rect.grown(clear)));
            let used = |id: &Id| mount.fastening.fasteners.iter().any(|fastener| fastener.hole == *id);
            let used = mount.holes.iter().filter(|hole| used(&hole.id));
            kept.extend(used.map(|hole| Rect::at(hole.place).grown(clear)));
        }
        kept.extend(self.in_the_face(None));
        let mut barred = grown(kept, size);
        barred.extend(self.framing_for(size, space, hidden.upright()));
        Start { zone: zone(room, barred), near: Place::of(near), cost: Cost::NONE }
    }

    /// What of the entry's zone is in the opening of the plate.
    fn in_plate(&self, start: &Start, size: OpeningSize) -> Option<Start> {
        let room = inner(self.plate_opening()?, size).within(start.zone.room);
        (!room.is_empty()).then(|| Start { zone: zone(room, start.zone.barred.clone()), ..start.clone() })
    }

    /// What the solid parts of the plate enclose.
    pub(super) fn plate_opening(&self) -> Option<Rect> {
        self.at.mount.as_ref().and_then(|mount| enclosed(&mount.solids))
    }

    /// Low on the wall: clear of studs, of what is seen and what is not, of power by the distance set, of every piece.
    fn goal(&self, space: &Space, size: OpeningSize, beside: Option<&PlacedFeature>) -> Goal {
        let plane = space.plane;
        let floor = self.floor_top(plane);
        let upright = Span::new(
            floor + Length::millimetres(SOLE_PLATE_MM),
            (plane.top - Length::millimetres(TOP_PLATES_MM)).max(floor),
        );
        let mut room = inner(Rect::new(plane.across(), upright), size);
        let behind = self.wished.behind.as_ref();
        let hides =
            behind.and_then(|id| self.ground.survey.features.iter().find(|feature| feature.id == *id));
        if let Some(hides) = hides {
            room = room.within(inner(hides.rect.grown(-Length::millimetres(ENTRY_HIDDEN_MM)), size));
        }
        let kept = self.in_the_face(behind).chain(self.around.outlines.iter().copied());
        let mut barred = grown(kept.collect(), size);
        barred.extend(self.framing_for(size, space, Span::new(floor, self.at.outline.bottom.max(floor))));
        let wished_y = nm(self.wished_height(beside));
        let beside = beside.map(|feature| {
            let x = nm(feature.rect.centre().x);
            let bay = space.bays.iter().find(|bay| bay.left <= x && x <= bay.right);
            Beside { x, bay: bay.map_or((x, x), |bay| (bay.left, bay.right)) }
        });
        Goal { zone: zone(room, barred), wished_y, beside, cost: Cost::NONE }
    }

    /// What is kept clear of power.
    fn apart_from_power(&self) -> Length {
        let from_power = self.wished.from_power.unwrap_or(Length::inches(low_voltage::FROM_POWER_IN.value));
        from_power.max(Length::millimetres(ENTRY_CLEAR_MM))
    }

    /// Where the face is not opened to pass a stud or a block: at what is on it, behind a plate that is screwed against
    /// it, and on a cable in the wall, grown by what is kept clear.
    pub(super) fn no_passage(&self) -> Vec<Rect> {
        let clear = Length::millimetres(ENTRY_CLEAR_MM);
        let mut kept: Vec<Rect> = self.on_the_face(self.wished.behind.as_ref()).collect();
        kept.extend(self.around.solids.iter().map(|solid| solid.grown(clear)));
        let cables = self.ground.survey.hidden.iter().filter(|hidden| hidden.kind == HiddenKind::Cable);
        kept.extend(cables.map(|cable| cable.rect.grown(self.apart_from_power())));
        kept
    }

    /// What is on the face where no opening can be, grown by what is kept clear. `but` is let alone.
    fn on_the_face<'b>(&'b self, but: Option<&'b Id>) -> impl Iterator<Item = Rect> + 'b {
        let clear = Length::millimetres(ENTRY_CLEAR_MM);
        let (_, features) = self.plane();
        let features: Vec<Rect> = features
            .into_iter()
            .filter(|feature| Some(&feature.id) != but && feature.kind != FeatureKind::Panelling)
            .map(|feature| match feature.kind {
                FeatureKind::Outlet | FeatureKind::Switch => feature.rect.grown(self.apart_from_power()),
                _ => feature.rect.grown(clear),
            })
            .collect();
        // Whoever hangs on the wall itself does not cut into a breast.
        features.into_iter().chain(self.other_breasts().map(move |breast| breast.grown(clear)))
    }

    /// What is on the face or behind it where no opening can be, grown by what is kept clear. `but` is let alone.
    fn in_the_face<'b>(&'b self, but: Option<&'b Id>) -> impl Iterator<Item = Rect> + 'b {
        let clear = Length::millimetres(ENTRY_CLEAR_MM);
        // An opening in a stud is that stud's: it takes nothing of the bays beside it.
        let hidden = self.ground.survey.hidden.iter().filter(|one| one.kind != HiddenKind::StudOpening);
        let hidden = hidden.map(move |hidden| match hidden.kind {
            HiddenKind::Cable => hidden.rect.grown(self.apart_from_power()),
            _ => hidden.rect.grown(clear),
        });
        let opened = self.around.opened.iter().map(move |other| other.grown(clear));
        self.on_the_face(but).chain(hidden).chain(opened)
    }

    /// The studs as an opening's middle somewhere between two heights keeps clear of them, by half its width and
    /// their doubt; and the fire blocks, over all of the bays that they stand in: an opening beside one that was felt
    /// shorter would be cut on it.
    fn framing_for(&self, size: OpeningSize, space: &Space, heights: Span) -> Vec<Area> {
        let on = self.breast().map(|breast| &breast.id);
        let here = self.ground.framing.studs.iter().filter(|stud| stud.on.as_ref() == on);
        let studs = here.map(|stud| {
            let face = stud.face_within(heights).grown(size.width.value / 2.0);
            Area::of(Rect::new(face, space.plane.upright().grown(size.height.value)))
        });
        let clear = nm(Length::millimetres(ENTRY_CLEAR_MM) + size.height.value / 2.0) - space.half;
        studs.chain(space.blocks.iter().map(|(_, block)| block.area.grown(0, clear))).collect()
    }
}

/// The goal in one bay, at any height up to `top`.
pub(super) fn anywhere_in(goal: &Goal, bay: Bay, top: i64) -> Option<Goal> {
    let whole = goal.zone.room;
    let room = Area {
        left: whole.left.max(bay.left),
        right: whole.right.min(bay.right),
        bottom: whole.bottom,
        top: whole.top.min(top),
    };
    if room.is_empty() {
        return None;
    }
    let is_near = |area: &Area| area.left < room.right + 1 && room.left - 1 < area.right;
    let barred = goal.zone.barred.iter().copied().filter(is_near).collect();
    Some(Goal { zone: Zone { room, barred }, ..goal.clone() })
}

/// The goal in one bay: at the wished height where the bay has room there, else at the nearest height where it has. How
/// high it ends is not weighed against patches: a cable that comes out halfway up the wall is not what was asked for.
pub(super) fn in_bay(goal: &Goal, bay: Bay) -> Option<Goal> {
    let goal = anywhere_in(goal, bay, i64::MAX)?;
    let Zone { room, barred } = goal.zone.clone();
    let mut heights = vec![goal.wished_y.clamp(room.bottom, room.top), room.bottom, room.top];
    heights.extend(barred.iter().flat_map(|area| [area.bottom, area.top]));
    heights.retain(|y| room.bottom <= *y && *y <= room.top);
    // The lower of two as near.
    heights.sort_unstable_by_key(|y| ((y - goal.wished_y).abs(), *y));
    let is_free = |y: i64| {
        let mut xs = vec![room.left, room.right];
        xs.extend(barred.iter().flat_map(|area| [area.left, area.right]));
        xs.retain(|x| room.left <= *x && *x <= room.right);
        xs.into_iter().any(|x| !barred.iter().any(|area| area.has_inside(Place { x, y })))
    };
    let y = heights.into_iter().find(|y| is_free(*y))?;
    let room = Area { bottom: y, top: y, ..room };
    Some(Goal { zone: Zone { room, barred }, ..goal })
}

/// Where the middle of an opening may be inside of a rectangle: inside out where the opening is too large.
fn inner(rect: Rect, size: OpeningSize) -> Area {
    Area::of(rect).grown(-nm(size.width.value / 2.0), -nm(size.height.value / 2.0))
}

/// What the middle of an opening keeps clear of.
fn grown(rects: Vec<Rect>, size: OpeningSize) -> Vec<Area> {
    let (across, upright) = (nm(size.width.value / 2.0), nm(size.height.value / 2.0));
    rects.into_iter().map(|rect| Area::of(rect).grown(across, upright)).collect()
}

/// A zone, without what does not touch it.
fn zone(room: Area, mut barred: Vec<Area>) -> Zone {
    barred.retain(|area| !room.is_empty() && (area.overlaps(room) || is_thin(room)));
    Zone { room, barred }
}

/// Whether a room has no inside of its own, so that nothing overlaps it.
fn is_thin(room: Area) -> bool {
    room.left == room.right || room.bottom == room.top
}

/// One place and nothing else.
fn at(place: Place) -> Zone {
    let room = Area { left: place.x, right: place.x, bottom: place.y, top: place.y };
    Zone { room, barred: Vec::new() }
}

/// Narrows a zone to a place; whether that was none of it.
pub(super) fn pin_zone(zone: &mut Zone, place: Place) -> bool {
    let is_against = !zone.allows(place);
    *zone = at(place);
    is_against
}
