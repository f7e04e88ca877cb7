//! The wall's free space: how far a cable may go, what it never goes through, and what it passes at a cost.

use super::Cabling;
use super::bays::{Bay, bays};
use crate::geometry::{Axis, Rect, Span};
use crate::handbook::{boring, low_voltage};
use crate::job::feature::FeatureKind;
use crate::job::framing::WallFraming;
use crate::job::hidden::HiddenKind;
use crate::job::wall::Beyond;
use crate::ledger::{Blank, Given, Label};
use crate::plan::cable::{Lead, StudLimits};
use crate::plan::survey::PlacedFeature;
use crate::route::{Area, Cost, Crossing, Place, nm};
use crate::subject::Id;
use crate::tolerance::{
    ENTRY_CLEAR_MM, SOLE_PLATE_MM, THICKEST_FRONT_MM, TOP_PLATES_MM, TUBE_OUTSIDE, WIDEST_BAY_MM,
};
use crate::units::Length;
use crate::wiring::bored::{Bears, deepest_notch, largest_bore, largest_without_plate, needed};
use crate::wiring::lengths::up_to;

/// A stud, or a part of one.
pub(super) struct StudPart {
    /// The stud's middle.
    pub(super) middle: Length,
    pub(super) crossing: Crossing,
    /// The opening that it is, if it is one.
    pub(super) opening: Option<Id>,
}

/// The free space inside the wall, for the middle of what is drawn through it.
pub(super) struct Space {
    /// The plane that the piece hangs on, as it is.
    pub(super) plane: Rect,
    /// How far the middle of the cables may go.
    pub(super) bounds: Area,
    /// What is never gone through.
    pub(super) barred: Vec<Area>,
    /// Studs, each with its middle: whole, or in parts where it has an opening.
    pub(super) studs: Vec<StudPart>,
    /// Fire blocks, each as wide as the bays that it stands in.
    pub(super) blocks: Vec<(Id, Crossing)>,
    /// The bays, from left to right.
    pub(super) bays: Vec<Bay>,
    /// Half of the hole that the cables need: all of the above is grown by it.
    pub(super) half: i64,
}

impl Cabling<'_> {
    /// The chimney breast that the piece hangs on.
    pub(super) fn breast(&self) -> Option<&PlacedFeature> {
        let middle = self.at.outline.centre();
        self.ground.survey.breast_at(middle.x, Some(middle.y))
    }

    /// What the plane is made of, where told.
    pub(super) fn framing(&self) -> Option<&WallFraming> {
        self.ground.wall.framing_on(self.breast().map(|breast| &breast.id))
    }

    /// What stands in front of the framing; not measured it is taken to be as thick as any.
    pub(super) fn front(&self) -> Given<Length> {
        let on = self.breast().map(|breast| &breast.id);
        let measured = self.ground.wall.front_on(on).and_then(|front| front.thickness);
        let thickest = Given::new(Length::millimetres(THICKEST_FRONT_MM), Label::Assumed);
        measured.map_or(thickest, Given::measured)
    }

    /// The plane, and the features on it, the breast that it is left out.
    pub(super) fn plane(&self) -> (Rect, Vec<&PlacedFeature>) {
        let survey = self.ground.survey;
        let breast = self.breast();
        let on = breast.map(|breast| &breast.id);
        let here = |feature: &&PlacedFeature| feature.on.as_ref() == on && Some(&feature.id) != on;
        (breast.map_or(survey.outline, |breast| breast.rect), survey.features.iter().filter(here).collect())
    }

    /// The highest place of the floor along the plane: what is above it is above the floor everywhere.
    pub(super) fn floor_top(&self, plane: Rect) -> Length {
        let floor = &self.ground.survey.floor;
        let inside = floor.readings.iter().filter(|at| plane.across().holds(at.x)).map(|at| at.y);
        inside.chain([floor.y_at(plane.left), floor.y_at(plane.right)]).fold(plane.bottom, Length::max)
    }

    /// The hole that a stud needs for these cables.
    pub(super) fn bore(&self, leads: &[Lead]) -> Given<Length> {
        let cables: Vec<_> = leads.iter().map(|lead| (lead.plug, lead.outside)).collect();
        let bore = self.wished.tube;
        let taken = || Some(Given::new(bore? * TUBE_OUTSIDE, Label::Assumed));
        let tube = self.wished.tube_outside.map(|own| Given::measured(own.max(bore.unwrap_or_default())));
        needed(&mut Blank, &cables, tube.or_else(taken))
    }

    /// What a stud here may lose; `None` where it is no wood stud of known depth, or furring.
    pub(super) fn stud_limits(&self) -> Option<StudLimits> {
        let Some(WallFraming::Wood(studs)) = self.framing() else { return None };
        if studs.furring == Some(true) {
            return None;
        }
        let depth = Given::measured(studs.depth?);
        // An outside wall counts as bearing whatever is said of it.
        let is_free =
            self.ground.wall.bearing == Some(false) && matches!(self.ground.wall.beyond, Some(Beyond::Room));
        let bears = if is_free { Bears::Not } else { Bears::Bearing };
        Some(StudLimits {
            bore: largest_bore(&mut Blank, depth, bears),
            without_plate: largest_without_plate(&mut Blank, depth),
            notch: deepest_notch(&mut Blank, depth, bears),
        })
    }

    /// Whether studs may be bored for these cables: it was asked for, and the rule allows the hole as it is drilled,
    /// by the graduation above what is needed.
    pub(super) fn may_bore(&self, leads: &[Lead]) -> bool {
        let drilled = up_to(self.bore(leads).value, self.job.style().length_of(1));
        let fits = |limits: StudLimits| drilled <= limits.bore.value;
        self.wished.bore == Some(true) && self.stud_limits().is_some_and(fits)
    }

    /// The chimney breasts that stand out from the plane.
    pub(super) fn other_breasts(&self) -> impl Iterator<Item = Rect> {
        let on_wall = self.breast().is_none();
        let breasts = self.ground.survey.features.iter();
        let breasts = breasts.filter(move |feature| on_wall && feature.kind == FeatureKind::ChimneyBreast);
        breasts.map(|breast| breast.rect)
    }

    /// The free space for these cables.
    pub(super) fn space(&self, leads: &[Lead]) -> Space {
        let (plane, features) = self.plane();
        let half = self.bore(leads).value / 2.0;
        let half_nm = nm(half);
        // At each end of a wall or breast stands at least one upright.
        let (below, above) = (Length::millimetres(SOLE_PLATE_MM), Length::millimetres(TOP_PLATES_MM));
        let end = below + half;
        let bounds = Area {
            left: nm(plane.left + end),
            right: nm(plane.right - end),
            bottom: nm(self.floor_top(plane) + below + half),
            top: nm(plane.top - above - half),
        };
        let stud_cost =
            Cost { not_allowed: u32::from(!self.may_bore(leads)), studs_bored: 1, patches: 1, ..Cost::NONE };
        let on = self.breast().map(|breast| &breast.id);
        let is_steel = matches!(self.framing(), Some(WallFraming::Steel(_)));
        // A stud that leans takes what it may take of a bay at any height that the cables come to.
        let heights = Span::new(self.floor_top(plane), self.at.outline.top);
        let studs =
            self.ground.framing.studs.iter().filter(|stud| stud.on.as_ref() == on).flat_map(|stud| {
                let face = stud.face_within(heights);
                let area = Area { left: nm(face.from - half), right: nm(face.to + half), ..bounds };
                // Its ends are beyond the bounds: nothing passes over it.
                let area = area.grown(0, half_nm + 1);
                let hidden = self.ground.survey.hidden.iter();
                let openings = hidden.filter(|one| {
                    is_steel
                        && one.kind == HiddenKind::StudOpening
                        && face.overlaps(one.rect.across())
                        // A smaller one is passed by nothing.
                        && one.rect.height() > half * 2.0
                });
                let openings = openings.map(|one| (one.id.clone(), one.rect.upright().grown(-half)));
                stud_parts(area, stud_cost, openings.collect())
                    .into_iter()
                    .map(|(crossing, opening)| StudPart { middle: stud.centre, crossing, opening })
            });
        let studs: Vec<_> = studs.collect();
        let bays = bays(bounds, studs.iter().map(|stud| stud.crossing.area));
        let mut barred: Vec<Area> =
            features.iter().filter_map(|feature| in_wall(feature, plane, half)).collect();
        // Nor through a fastener: in its stud, or beside it where its point may have come out.
        let clear = half + Length::millimetres(ENTRY_CLEAR_MM);
        barred.extend(self.around.fastened.iter().map(|one| Area::of(one.grown(clear))));
        barred.extend(self.other_breasts().map(|breast| Area::of(breast).grown(half_nm, half_nm)));
        // Nor through the boxes of another piece's cables.
        barred.extend(self.around.opened.iter().map(|other| Area::of(*other).grown(half_nm, half_nm)));
        let mut blocks = Vec::new();
        for hidden in &self.ground.survey.hidden {
            let area = Area::of(hidden.rect).grown(half_nm, half_nm);
            match hidden.kind {
                // A cable is gone past, and an opening is a part of its stud.
                HiddenKind::Cable | HiddenKind::StudOpening => {}
                HiddenKind::FireBlock => {
                    let cost = Cost { patches: 1, blocks: 1, ..Cost::NONE };
                    let area = bays_of(Area::of(hidden.rect), &bays).map_or(area, |(left, right)| Area {
                        left: left.min(area.left) - 1,
                        right: right.max(area.right) + 1,
                        ..area
                    });
                    blocks.push((hidden.id.clone(), Crossing { area, axis: Axis::Upright, cost }));
                }
                HiddenKind::Pipe
                | HiddenKind::Drain
                | HiddenKind::Duct
                | HiddenKind::Flue
                | HiddenKind::Header
                | HiddenKind::Brace
                | HiddenKind::PocketDoor
                | HiddenKind::BoxBehind
                | HiddenKind::Other => barred.push(area),
            }
        }
        // A stud or block is passed where the face can be opened, and nothing else is met by the bit.
        let ends: Vec<Place> = self.ends_kept().map(Place::of).collect();
        for kept in self.no_passage() {
            let kept = Area::of(kept).grown(half_nm, half_nm);
            let crossed = studs.iter().map(|stud| stud.crossing.area);
            let crossed = crossed.chain(blocks.iter().map(|(_, block)| block.area));
            let bars = crossed.map(|area| area.within(kept)).filter(|bar| !bar.is_empty());
            // What is opened there whatever is told against it, is led from.
            barred.extend(bars.filter(|bar| !ends.iter().any(|end| bar.grown(1, 1).holds(*end))));
        }
        Space { plane, bounds, barred, studs, blocks, bays, half: half_nm }
    }
}

impl Space {
    /// Whether the studs beside every place of a way are known: its bays are no wider than studs ever stand apart.
    pub(super) fn knows_studs(&self, corners: &[Place]) -> bool {
        let widest = nm(Length::millimetres(WIDEST_BAY_MM));
        let xs = corners.iter().map(|place| place.x);
        let (Some(left), Some(right)) = (xs.clone().min(), xs.max()) else { return false };
        let met = || self.bays.iter().filter(|bay| bay.left <= right && left <= bay.right);
        !self.studs.is_empty() && met().count() > 0 && met().all(|bay| bay.right - bay.left <= widest)
    }
}

/// A stud's area in parts from below: what is solid at its own cost, and the openings, each where the middle of the
/// cables may pass it, at that of the face that is opened to put a bushing in. Of openings that overlap the lower is
/// taken.
fn stud_parts(stud: Area, solid: Cost, mut openings: Vec<(Id, Span)>) -> Vec<(Crossing, Option<Id>)> {
    openings.sort_by(|(_, a), (_, b)| a.from.mm().total_cmp(&b.from.mm()));
    let opened = Cost { patches: 1, ..Cost::NONE };
    let part = |area: Area, cost: Cost| Crossing { area, axis: Axis::Across, cost };
    let (mut parts, mut from) = (Vec::new(), stud.bottom);
    for (id, span) in openings {
        let (bottom, top) = (nm(span.from), nm(span.to));
        if bottom < from || top < bottom || stud.top < top {
            continue;
        }
        parts.push((part(Area { bottom: from, top: bottom, ..stud }, solid), None));
        // Its edges are inside of it, where only edges of what is solid lie.
        parts.push((part(Area { bottom: bottom - 1, top: top + 1, ..stud }, opened), Some(id)));
        from = top;
    }
    parts.push((part(Area { bottom: from, ..stud }, solid), None));
    parts
}

/// What a feature takes of the wall's inside; `None` for what is on its face alone.
fn in_wall(feature: &PlacedFeature, plane: Rect, half: Length) -> Option<Area> {
    let rect = feature.rect;
    let beside = Length::inches(boring::BESIDE_OPENING_IN.value);
    let apart = Length::inches(low_voltage::FROM_POWER_IN.value);
    let grown = match feature.kind {
        // Studs and trimmers beside it, a sill below, above it a header of which nobody knows how high it is.
        FeatureKind::Window | FeatureKind::Door => Rect { top: plane.top + beside, ..rect.grown(beside) },
        FeatureKind::Outlet | FeatureKind::Switch => rect.grown(apart),
        FeatureKind::Vent | FeatureKind::Thermostat => rect,
        _ => return None,
    };
    Some(Area::of(grown.grown(half)))
}

/// From where to where the bays reach that a block stands in; `None` where it stands in none.
fn bays_of(block: Area, bays: &[Bay]) -> Option<(i64, i64)> {
    let met = bays.iter().filter(|bay| bay.left < block.right && block.left < bay.right);
    met.map(|bay| (bay.left, bay.right)).reduce(|a, b| (a.0.min(b.0), a.1.max(b.1)))
}
