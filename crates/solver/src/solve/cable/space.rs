//! The wall's free space: how far a cable may go, what it never goes through, and what it passes at a cost.

use super::Cabling;
use super::bays::{Bay, bays};
use crate::geometry::{Axis, Rect};
use crate::handbook::{boring, low_voltage};
use crate::job::feature::FeatureKind;
use crate::job::framing::WallFraming;
use crate::job::hidden::HiddenKind;
use crate::job::wall::Beyond;
use crate::ledger::{Blank, Given, Label};
use crate::plan::cable::Lead;
use crate::plan::survey::PlacedFeature;
use crate::route::{Area, Cost, Crossing, nm};
use crate::subject::Id;
use crate::units::Length;
use crate::wiring::bored::{Bears, largest_bore};

/// The free space inside the wall, for the middle of what is drawn through it.
pub(super) struct Space {
    /// The plane that the piece hangs on, as it is.
    pub(super) plane: Rect,
    /// How far the middle of the cables may go.
    pub(super) bounds: Area,
    /// What is never gone through.
    pub(super) barred: Vec<Area>,
    /// Studs, each with its middle.
    pub(super) studs: Vec<(Length, Crossing)>,
    /// Fire blocks, each as wide as the bays that it stands in.
    pub(super) blocks: Vec<(Id, Crossing)>,
    /// The bays, from left to right.
    pub(super) bays: Vec<Bay>,
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

    /// What stands in front of the framing, as far as it was measured.
    pub(super) fn front(&self) -> Length {
        self.ground.wall.front.as_ref().and_then(|front| front.thickness).unwrap_or_default()
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

    /// The hole that a stud needs for these cables: as wide as the widest plug.
    pub(super) fn bore(&self, leads: &[Lead]) -> Given<Length> {
        leads.iter().map(|lead| lead.plug).fold(Given::measured(Length::default()), |a, b| {
            Given::new(a.value.max(b.value), a.label.weaker(b.label))
        })
    }

    /// Whether studs may be bored for these cables: it was asked for, and the rule allows so wide a hole.
    fn may_bore(&self, leads: &[Lead]) -> bool {
        let Some(WallFraming::Wood(studs)) = self.framing() else { return false };
        let Some(depth) = studs.depth else { return false };
        // An outside wall counts as bearing whatever is said of it.
        let is_free =
            self.ground.wall.bearing == Some(false) && matches!(self.ground.wall.beyond, Some(Beyond::Room));
        let bears = if is_free { Bears::Not } else { Bears::Bearing };
        let most = largest_bore(&mut Blank, Given::new(depth, Label::Measured), bears);
        self.wished.bore == Some(true) && self.bore(leads).value <= most.value
    }

    /// The free space for these cables.
    pub(super) fn space(&self, leads: &[Lead]) -> Space {
        let (plane, features) = self.plane();
        let half = self.bore(leads).value / 2.0;
        let half_nm = nm(half);
        // At each end of a wall or breast stands at least one upright.
        let end = Length::inches(boring::PLATES_IN.value.0) + half;
        let (below, above) = boring::PLATES_IN.value;
        let bounds = Area {
            left: nm(plane.left + end),
            right: nm(plane.right - end),
            bottom: nm(self.floor_top(plane) + Length::inches(below) + half),
            top: nm(plane.top - Length::inches(above) - half),
        };
        let stud_cost =
            Cost { not_allowed: u32::from(!self.may_bore(leads)), studs_bored: 1, patches: 1, ..Cost::NONE };
        let on = self.breast().map(|breast| &breast.id);
        let studs = self.ground.framing.studs.iter().filter(|stud| stud.on.as_ref() == on).map(|stud| {
            let area = Area {
                left: nm(stud.left - stud.doubt - half),
                right: nm(stud.right + stud.doubt + half),
                ..bounds
            };
            // Its ends are beyond the bounds: nothing passes over it.
            (stud.centre, Crossing { area: area.grown(0, half_nm + 1), axis: Axis::Across, cost: stud_cost })
        });
        let studs: Vec<_> = studs.collect();
        let bays = bays(bounds, studs.iter().map(|(_, crossing)| crossing.area));
        let mut barred: Vec<Area> =
            features.iter().filter_map(|feature| in_wall(feature, plane, half)).collect();
        if on.is_none() {
            let breasts = self.ground.survey.features.iter();
            let breasts = breasts.filter(|feature| feature.kind == FeatureKind::ChimneyBreast);
            barred.extend(breasts.map(|breast| Area::of(breast.rect).grown(half_nm, half_nm)));
        }
        let mut blocks = Vec::new();
        for hidden in &self.ground.survey.hidden {
            let area = Area::of(hidden.rect).grown(half_nm, half_nm);
            match hidden.kind {
                // A cable is gone past.
                HiddenKind::Cable => {}
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
        Space { plane, bounds, barred, studs, blocks, bays }
    }
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
