//! Every way that would do, the best first: bay by bay inside the wall, through studs where no bay will do alone or
//! boring was asked for, and in a raceway on the face.

use super::Cabling;
use super::bays::Bay;
use super::ends::{Ends, anywhere_in, in_bay, pin_zone};
use super::space::Space;
use crate::geometry::{Point, Rect, Span};
use crate::job::feature::FeatureKind;
use crate::job::framing::WallFraming;
use crate::job::hidden::HiddenKind;
use crate::job::option::Surface;
use crate::plan::cable::{Against, Crosses, Lead, OpeningSize, Way, WayBy};
use crate::plan::survey::PlacedFeature;
use crate::route::{Area, Beside, Cost, Field, Found, Goal, Place, Start, Zone, cheapest, nm};
use crate::subject::Id;
use crate::tolerance::{OTHER_WAYS, RACEWAY_MM};
use crate::units::Length;

/// What was found.
pub(super) struct Ways {
    /// The best first.
    pub(super) ways: Vec<Way>,
    pub(super) hidden: Rect,
    pub(super) in_the_way: Option<Id>,
    pub(super) sizes: [OpeningSize; 2],
    /// Whether the studs beside the best are known.
    pub(super) framing_known: bool,
    /// Where the entry and the exit may be, whatever is asked for.
    pub(super) zones: (Zone, Zone),
}

impl Cabling<'_> {
    /// The ways of these cables; none for none.
    pub(super) fn ways(&self, leads: &[Lead]) -> Ways {
        let hidden = self.hidden_zone();
        let [entry, exit] =
            [&self.wished.entry_kind, &self.wished.exit_kind].map(|kind| self.size(kind.as_ref(), leads));
        let sizes = [self.as_cut("entry", entry), self.as_cut("exit", exit)];
        let zones = Default::default();
        let mut all = Ways { ways: Vec::new(), hidden, in_the_way: None, sizes, framing_known: true, zones };
        let Some(near) = self.ports_middle() else { return all };
        let beside = self.beside_any(leads);
        let mut ways: Vec<(bool, Way)> = Vec::new();
        let mut space = None;
        if !self.wished.is_on_face() && self.framing().is_none_or(WallFraming::has_bays) {
            let space = space.insert(self.space(leads));
            let mut ends = self.ends(space, near, sizes, beside, hidden);
            if leads.iter().any(|lead| lead.in_wall == Some(false)) {
                ends.against.push(Against::Unlisted);
                ends.bar();
            }
            if leads.iter().any(Lead::is_cord) {
                ends.against.push(Against::Cord);
                ends.bar();
            }
            let inside = self.inside(space, &ends, sizes);
            all.zones = ends.zones.clone();
            all.in_the_way = self.in_the_way(space, near, &ends.goal, inside.first().map(|(_, way)| way));
            ways.extend(inside);
        }
        let has_allowed = ways.iter().any(|(last, way)| !last && way.cost.not_allowed == 0);
        // Not said: a way that shows is for where there is no other that is allowed.
        let last = self.wished.on_face == Some(false) || self.wished.surface.is_none() && has_allowed;
        let (face, face_zone) = self.on_face(leads, near, beside).unzip();
        ways.extend(face.map(|way| (last, way)));
        ways.sort_by_key(|(last, way)| self.rank(*last, way));
        all.ways = told(ways.into_iter().map(|(_, way)| way));
        if all.ways.first().is_some_and(|way| way.by == WayBy::OnFace) {
            all.zones = (Zone::default(), face_zone.unwrap_or_default());
        }
        let inside = all.ways.first().filter(|way| way.by == WayBy::InWall);
        all.framing_known = inside.zip(space).is_none_or(|(way, space)| {
            space.knows_studs(&way.run.iter().map(|at| Place::of(*at)).collect::<Vec<_>>())
        });
        all
    }

    /// The ways inside the wall, the best first. Those come last that end higher than was wished, since nothing leads
    /// down to there: a cable that comes out halfway up the wall is not what was asked for.
    fn inside(&self, space: &Space, ends: &Ends, sizes: [OpeningSize; 2]) -> Vec<(bool, Way)> {
        let mut ways = Vec::new();
        let asked = self.wished.bay.map(nm);
        let is_asked = |bay: &Bay| asked.is_none_or(|x| bay.left <= x && x <= bay.right);
        let below = nm(self.at.outline.bottom);
        let mut goals = Vec::new();
        for bay in &space.bays {
            let Some(mut goal) = in_bay(&ends.goal, *bay) else { continue };
            if !is_asked(bay) {
                goal.cost.not_allowed += 1;
            }
            let low = anywhere_in(&Goal { cost: goal.cost, ..ends.goal.clone() }, *bay, below);
            goals.push(goal.clone());
            let room = ends.start.zone.room;
            if room.right < bay.left || bay.right < room.left {
                continue;
            }
            let bounds = Area { left: bay.left, right: bay.right, ..space.bounds };
            let leads_to = |goal: Goal| best_start(space, bounds, ends, &[goal]);
            let wished = leads_to(goal).map(|found| (false, found));
            let found = wished.or_else(|| Some((true, leads_to(low?)?)));
            ways.extend(found.map(|(last, found)| (last, self.way(space, ends, sizes, &found, &is_asked))));
        }
        let is_allowed = |(last, way): &(bool, Way)| !last && way.cost.not_allowed == 0;
        if self.wished.bore == Some(true) || !ways.iter().any(is_allowed) {
            let found = best_start(space, space.bounds, ends, &goals);
            ways.extend(found.map(|found| (false, self.way(space, ends, sizes, &found, &is_asked))));
        }
        ways.sort_by_key(|(last, way)| self.rank(*last, way));
        ways
    }

    /// What ways are put in order by: where all but the length is alike, the one that goes in through the plate's own
    /// opening first.
    fn rank(&self, last: bool, way: &Way) -> (bool, u32, bool, Cost, bool, Cost) {
        // What was asked for inside the wall stays there, whatever speaks against it: that is told.
        let is_kept = self.wished.on_face == Some(false)
            || self.wished.entry_at.is_some()
            || self.wished.bay.is_some()
            || self.cut("entry").is_some();
        let is_aside = is_kept && way.by == WayBy::OnFace;
        let opening = self.plate_opening();
        let is_in_plate =
            way.entry.zip(opening).is_some_and(|(entry, opening)| opening.holds(entry.centre()));
        (is_aside, way.cost.not_allowed, last, way.cost.but_length(), !is_in_plate, way.cost)
    }

    fn way(
        &self,
        space: &Space,
        ends: &Ends,
        sizes: [OpeningSize; 2],
        found: &Found,
        is_asked: &dyn Fn(&Bay) -> bool,
    ) -> Way {
        let run: Vec<Point> = found.corners.iter().map(|place| place.on_wall()).collect();
        let first = run.first().copied().unwrap_or_default();
        let last = run.last().copied().unwrap_or_default();
        let opening = |at: Point, size: OpeningSize| {
            Rect::new(Span::about(at.x, size.width.value), Span::about(at.y, size.height.value))
        };
        let [entry_size, exit_size] = sizes;
        let last_place = found.corners.last().copied().unwrap_or_default();
        let bay = space.bays.iter().find(|bay| bay.left <= last_place.x && last_place.x <= bay.right);
        let mut against = ends.against.clone();
        if bay.is_some_and(|bay| !is_asked(bay)) {
            against.push(Against::Bay);
        }
        let crosses = self.crosses(space, &found.corners);
        // One that was begun inside of a stud or block cost the search nothing, and is bored all the same.
        let count = |all: usize| u32::try_from(all).unwrap_or(u32::MAX);
        let bored = count(crosses.iter().filter(|one| matches!(one, Crosses::Stud(_))).count());
        let begun = bored.saturating_sub(found.cost.studs_bored);
        let stud_is_against = space.studs.iter().any(|stud| stud.crossing.cost.not_allowed > 0);
        let is_block = |one: &&Crosses| matches!(one, Crosses::Hidden(_, HiddenKind::FireBlock, _));
        let passed = count(crosses.iter().filter(is_block).count()).saturating_sub(found.cost.blocks);
        let cost = Cost {
            studs_bored: found.cost.studs_bored + begun,
            blocks: found.cost.blocks + passed,
            patches: found.cost.patches + begun + passed,
            not_allowed: found.cost.not_allowed + if stud_is_against { begun } else { 0 },
            ..found.cost
        };
        if cost.studs_bored > 0 && stud_is_against {
            let is_steel = matches!(self.framing(), Some(WallFraming::Steel(_)));
            against.push(if is_steel { Against::Steel } else { Against::Bore });
        }
        Way {
            by: WayBy::InWall,
            entry: Some(opening(first, entry_size)),
            exit: opening(last, exit_size),
            run,
            cost,
            crosses,
            against,
            in_bay: ends.goal.beside.is_none_or(|beside| beside.holds(last_place)),
        }
    }

    /// What a way inside the wall goes through, from its entry on.
    fn crosses(&self, space: &Space, corners: &[Place]) -> Vec<Crosses> {
        let mut crosses = Vec::new();
        if self.ground.wall.insulated == Some(true) {
            crosses.push(Crosses::Insulation);
        }
        for pair in corners.windows(2) {
            let [from, to] = pair else { continue };
            let piece = Area {
                left: from.x.min(to.x),
                right: from.x.max(to.x),
                bottom: from.y.min(to.y),
                top: from.y.max(to.y),
            };
            let meets = |area: Area| {
                area.left < piece.right.max(piece.left + 1)
                    && piece.left < area.right
                    && area.bottom < piece.top.max(piece.bottom + 1)
                    && piece.bottom < area.top
            };
            let mut here: Vec<(i64, Crosses)> = Vec::new();
            for stud in &space.studs {
                let area = stud.crossing.area;
                let is_level = from.y == to.y && area.bottom < from.y && from.y < area.top;
                if is_level && meets(area) {
                    let at = Place { x: nm(stud.middle), y: from.y }.on_wall();
                    let what = stud.opening.clone().map_or(Crosses::Stud(at), |opening| {
                        Crosses::Hidden(opening, HiddenKind::StudOpening, at)
                    });
                    here.push(((nm(stud.middle) - from.x).abs(), what));
                }
            }
            for (id, block) in &space.blocks {
                if from.x == to.x && meets(block.area) {
                    let away = (block.area.top - from.y).abs();
                    let middle = i64::midpoint(block.area.bottom, block.area.top);
                    let at = Place { x: from.x, y: middle }.on_wall();
                    here.push((away, Crosses::Hidden(id.clone(), HiddenKind::FireBlock, at)));
                }
            }
            for hidden in self.ground.survey.hidden.iter().filter(|hidden| hidden.kind == HiddenKind::Cable) {
                let rect = Area::of(hidden.rect);
                if meets(rect) {
                    let away = Place { x: rect.left, y: rect.top }.away(*from);
                    here.push((away, Crosses::Hidden(hidden.id.clone(), hidden.kind, hidden.rect.centre())));
                }
            }
            here.sort_by_key(|(away, _)| *away);
            crosses.extend(here.into_iter().map(|(_, what)| what));
        }
        crosses
    }

    /// What stands in the straight drop from the ports down to the exit, where the way chosen is not that drop.
    fn in_the_way(&self, space: &Space, near: Point, goal: &Goal, way: Option<&Way>) -> Option<Id> {
        let near = Place::of(near);
        let away = |bay: &&Bay| (bay.left - near.x).max(near.x - bay.right).max(0);
        let bay = space.bays.iter().min_by_key(away)?;
        let way = way?;
        let (first, last) = (Place::of(*way.run.first()?), Place::of(*way.run.last()?));
        let is_here = bay.left <= first.x && first.x <= bay.right;
        let comes_down = last.y == goal.wished_y;
        if is_here && comes_down && way.cost.blocks == 0 && way.cost.tight_bends == 0 {
            return None;
        }
        let drop = Area { left: bay.left, right: bay.right, bottom: goal.wished_y, top: near.y };
        let in_drop = |area: Area| area.overlaps(drop);
        let block =
            space.blocks.iter().filter(|(_, block)| in_drop(block.area)).map(|(id, b)| (b.area.top, id));
        let others = self.ground.survey.hidden.iter().filter(|hidden| {
            !matches!(hidden.kind, HiddenKind::Cable | HiddenKind::FireBlock | HiddenKind::StudOpening)
                && in_drop(Area::of(hidden.rect))
        });
        let others = others.map(|hidden| (nm(hidden.rect.top), &hidden.id));
        // The first that is met on the way down.
        block.chain(others).max_by_key(|(top, _)| *top).map(|(_, id)| id.clone())
    }

    /// The way on the face, in a raceway, and where its end may be, whatever is asked for; `None` where none leads to
    /// a place to end.
    fn on_face(&self, leads: &[Lead], near: Point, beside: Option<&PlacedFeature>) -> Option<(Way, Zone)> {
        let (plane, features) = self.plane();
        let half = Length::millimetres(RACEWAY_MM) / 2.0;
        let half_nm = nm(half);
        let floor = self.floor_top(plane);
        let bounds = Area {
            left: nm(plane.left + half),
            right: nm(plane.right - half),
            bottom: nm(floor + half),
            top: nm(plane.top - half),
        };
        // A raceway goes over flat trim, and over nothing that is opened, warm or deep.
        let is_passed = |kind: FeatureKind| {
            matches!(
                kind,
                FeatureKind::Baseboard
                    | FeatureKind::Panelling
                    | FeatureKind::Trim
                    | FeatureKind::Crown
                    | FeatureKind::Curtain
            )
        };
        // What it may end behind is no bar to it, and hides it.
        let behind = |feature: &&&PlacedFeature| Some(&feature.id) == self.wished.behind.as_ref();
        let barred = features.iter().filter(|feature| !is_passed(feature.kind) && !behind(feature));
        let barred = barred.map(|feature| feature.rect);
        let barred = barred.chain(self.other_breasts());
        let barred: Vec<Area> = barred.map(|rect| Area::of(rect).grown(half_nm, half_nm)).collect();
        // It ends clear of every piece, beside what it is to end at.
        let mut kept = barred.clone();
        kept.extend(self.around.outlines.iter().map(|rect| Area::of(*rect).grown(half_nm, half_nm)));
        let beside_at = beside.map(|feature| {
            let x = nm(feature.rect.centre().x);
            Beside { x, bay: (x, x) }
        });
        let is_cord = leads.iter().any(Lead::is_cord);
        let not_allowed = u32::from(self.wished.surface == Some(Surface::No)) + u32::from(is_cord);
        let cost = Cost { not_allowed, ..Cost::NONE };
        let wished_y = nm(self.wished_height(beside)).clamp(bounds.bottom, bounds.top);
        let mut goal = Goal { zone: Zone { room: bounds, barred: kept }, wished_y, beside: beside_at, cost };
        let all = Bay { left: bounds.left, right: bounds.right };
        let allowed = self.near_zone(&goal.zone);
        let mut against = Vec::new();
        if self.wished.surface == Some(Surface::No) {
            against.push(Against::Face);
        }
        if is_cord {
            against.push(Against::Cord);
        }
        if let Some(place) = self.exit_kept().map(Place::of) {
            goal.wished_y = place.y;
            if pin_zone(&mut goal.zone, place) {
                against.push(Against::ExitPlace);
                goal.cost.not_allowed += 1;
            }
        }
        let start = Place::of(near);
        let room = Area { left: start.x, right: start.x, bottom: start.y, top: start.y };
        let field = Field {
            bounds,
            barred,
            crossings: Vec::new(),
            hides: Some(
                self.around
                    .outlines
                    .iter()
                    .copied()
                    .chain(features.iter().filter(behind).map(|feature| feature.rect))
                    .map(Area::of)
                    .collect(),
            ),
            starts: vec![Start { zone: Zone { room, barred: Vec::new() }, near: start, cost: Cost::NONE }],
            goals: vec![in_bay(&goal, all)?],
        };
        let found = cheapest(&field)?;
        let run: Vec<Point> = found.corners.iter().map(|place| place.on_wall()).collect();
        let last = run.last().copied().unwrap_or_default();
        let way = Way {
            by: WayBy::OnFace,
            entry: None,
            exit: Rect { left: last.x, right: last.x, bottom: last.y, top: last.y },
            run,
            cost: found.cost,
            crosses: Vec::new(),
            against,
            in_bay: true,
        };
        Some((way, allowed))
    }
}

/// The ways that are told, the best first: each once, and the face among them where it is one.
fn told(all: impl Iterator<Item = Way>) -> Vec<Way> {
    let mut ways: Vec<Way> = Vec::new();
    for way in all {
        if !ways.iter().any(|one| one.by == way.by && one.run == way.run) {
            ways.push(way);
        }
    }
    let on_face = ways.iter().position(|way| way.by == WayBy::OnFace);
    if let Some(index) = on_face.filter(|index| *index > OTHER_WAYS) {
        let way = ways.remove(index);
        ways.insert(OTHER_WAYS, way);
    }
    ways.truncate(1 + OTHER_WAYS);
    ways
}

/// The cheapest way from the plate's own opening, unless one from elsewhere costs less in more than its length.
fn best_start(space: &Space, bounds: Area, ends: &Ends, goals: &[Goal]) -> Option<Found> {
    let from = |start: &Start| cheapest(&field(space, bounds, start.clone(), goals.to_vec()));
    let any = from(&ends.start)?;
    let begins_in = |start: &Start| any.corners.first().is_some_and(|first| start.zone.allows(*first));
    let reaches = |start: &Start| !start.zone.room.within(bounds).is_empty();
    // The cheapest of all is looked for no second time.
    let in_plate = ends.in_plate.as_ref().filter(|start| !begins_in(start) && reaches(start)).and_then(from);
    Some(in_plate.filter(|own| own.cost.but_length() <= any.cost.but_length()).unwrap_or(any))
}

/// The field of a stretch of the wall: only what touches it.
fn field(space: &Space, bounds: Area, start: Start, goals: Vec<Goal>) -> Field {
    let near = bounds.grown(1, 1);
    let touches = |area: &Area| area.overlaps(near);
    let studs = space.studs.iter().map(|stud| &stud.crossing);
    let crossings = studs.chain(space.blocks.iter().map(|(_, crossing)| crossing));
    let mut start = start;
    start.zone.barred.retain(touches);
    Field {
        bounds,
        barred: space.barred.iter().copied().filter(touches).collect(),
        crossings: crossings.copied().filter(|crossing| crossing.area.overlaps(bounds)).collect(),
        hides: None,
        starts: vec![start],
        goals,
    }
}
