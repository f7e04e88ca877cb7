//! What the fasteners of a plate go into: the same for the whole plate, whatever its place.

use super::super::holes::Ground;
use crate::capacity::opening::Runs;
use crate::geometry::Point;
use crate::job::fact::FactState;
use crate::job::feature::{Feature, FeatureKind};
use crate::job::framing::WallFraming;
use crate::job::kit::DrillBit;
use crate::job::plate::Plate;
use crate::ledger::{Given, Label};
use crate::numeric::root;
use crate::plan::fact::PlacedFact;
use crate::plan::verdict::Want;
use crate::subject::{Id, Subject};
use crate::tolerance::{CUT_CLEAR_MM, SAME_HOLE_MM, STRIPPED_WITHIN_MM};
use crate::units::Length;

/// In front of the framing where nobody measured it: 7/8 in (chosen; assumed, so it makes no verdict).
const FRONT_NOT_MEASURED_IN: f64 = 0.875;
/// A plate whose sheet nobody measured: 0.075 in (chosen; assumed).
const PLATE_NOT_MEASURED_IN: f64 = 0.075;

/// What a plate is fixed to, and what is in between.
pub(in super::super) struct Site<'a> {
    pub(in super::super) ground: Ground<'a>,
    /// The chimney breast that the plate's middle is on.
    pub(super) on: Option<Id>,
    pub(super) framing: Option<&'a WallFraming>,
    pub(super) plate: &'a Plate,
    /// The thickness of the plate's sheet.
    pub(super) sheet: Given<Length>,
    /// What stands in front of the framing.
    pub(super) front: Given<Length>,
    /// Whether the plate's outline or holes are not its own.
    plate_assumed: bool,
    /// Where its fasteners stand in the plate: holes as they were measured; in a slot where the plan puts them; of a
    /// usual plate as is assumed.
    pub(super) places: Label,
    mount: &'a Id,
    /// The kit's drill bits.
    pub(super) bits: &'a [DrillBit],
}

impl<'a> Site<'a> {
    /// What a plate about a middle is fixed to.
    pub(in super::super) fn of(
        ground: Ground<'a>,
        mount: &'a Id,
        plate: &'a Plate,
        plate_assumed: bool,
        bits: &'a [DrillBit],
        middle: Point,
    ) -> Self {
        let breast = ground.survey.breast_at(middle.x, Some(middle.y));
        let on = breast.map(|breast| breast.id.clone());
        let measured = ground.wall.front_on(on.as_ref()).and_then(|front| front.thickness);
        let given = |value: Option<Length>, stand_in_in: f64| {
            let assumed =
                Given::new(Length::inches(stand_in_in), Label::Assumed).because("nobody measured it");
            value.map_or(assumed, Given::measured)
        };
        let plate_assumed = plate_assumed || plate.solids.is_empty();
        let places = match (plate_assumed, plate.slots.is_empty()) {
            (true, _) => Label::Assumed,
            (false, false) => Label::Chosen,
            (false, true) => Label::Measured,
        };
        Self {
            ground,
            framing: ground.wall.framing_on(on.as_ref()),
            on,
            plate,
            sheet: given(plate.thickness, PLATE_NOT_MEASURED_IN),
            front: given(measured, FRONT_NOT_MEASURED_IN),
            plate_assumed,
            places,
            mount,
            bits,
        }
    }

    /// What of plate and wall is not measured.
    pub(super) fn wants(&self) -> Vec<Want> {
        let wall = &self.ground.wall.id;
        let mut wants = Vec::new();
        // A chimney breast of which nobody said what it is built of may be built otherwise than its wall.
        let breast = self
            .on
            .as_ref()
            .filter(|on| ground_feature(&self.ground, on).is_none_or(|feature| feature.framing.is_none()));
        wants.extend(breast.map(|breast| Want::Framing(breast.clone())));
        if self.plate_assumed {
            wants.push(Want::Plate(self.mount.clone()));
        }
        if self.sheet.label == Label::Assumed {
            wants.push(Want::PlateThickness(self.mount.clone()));
        }
        match self.framing {
            None | Some(WallFraming::NotKnown) => wants.push(Want::Framing(wall.clone())),
            Some(WallFraming::Steel(studs)) => {
                if studs.thickness.is_none() {
                    wants.push(Want::SteelThickness(wall.clone()));
                }
                if studs.face.is_none() {
                    wants.push(Want::Face(wall.clone()));
                }
            }
            Some(WallFraming::Concrete(concrete)) => {
                if concrete.normal_weight != Some(true) {
                    wants.push(Want::NormalWeight(wall.clone()));
                }
                if self.ground.wall.width.is_none() || self.ground.wall.height.is_none() {
                    wants.push(Want::WallSize(wall.clone()));
                }
            }
            Some(
                WallFraming::Wood(_) | WallFraming::Masonry(_) | WallFraming::Veneer | WallFraming::NoFraming,
            ) => {}
        }
        if self.front.label == Label::Assumed {
            let own = self.on.as_ref().filter(|on| {
                ground_feature(&self.ground, on).is_some_and(|feature| feature.framing.is_some())
            });
            wants.push(Want::Front(own.unwrap_or(wall).clone()));
        }
        wants
    }

    /// Which way a hole of the plate is long, and how wide it is; holes first, then slots.
    pub(super) fn opening(&self, index: usize) -> (Runs, Option<Length>) {
        if let Some(hole) = self.plate.holes.get(index) {
            return (Runs::Nowhere, hole.diameter);
        }
        let slot = index.checked_sub(self.plate.holes.len()).and_then(|index| self.plate.slots.get(index));
        slot.map_or((Runs::Nowhere, None), |slot| {
            (if slot.upright { Runs::Upright } else { Runs::Sideways }, slot.width)
        })
    }

    /// The width of an upright's face, and whether it is measured.
    pub(super) fn face(&self) -> Given<Length> {
        let usual = self.framing.and_then(WallFraming::face).unwrap_or(Length::inches(1.5));
        let measured = match self.framing {
            Some(WallFraming::Wood(studs)) => studs.face.is_some(),
            Some(WallFraming::Steel(studs)) => studs.face.is_some(),
            _ => false,
        };
        let reason = if measured { "" } else { "the usual face of a stud" };
        Given::new(usual, if measured { Label::Measured } else { Label::Chosen }).because(reason)
    }

    /// Whether a hole of the plate is drilled already, for this option.
    pub(super) fn is_drilled(&self, hole: &Subject) -> bool {
        let own = |fact: &PlacedFact| fact.is_own && fact.state == FactState::Drilled && fact.mark == *hole;
        self.ground.facts.iter().any(own)
    }

    /// Whether something is bored or cut beside a place, and not just there, whatever it was for: a hole of this plate
    /// that is not where the plate has it, of one that hung here before, of another option; an opening.
    pub(super) fn is_beside_a_hole(&self, place: Point) -> bool {
        self.ground.facts.iter().any(|fact| {
            let Some(spot) = fact.place else { return false };
            match fact.state {
                FactState::Drilled => {
                    let (right, up) = ((place.x - spot.x).mm(), (place.y - spot.y).mm());
                    let off_mm = root(right * right + up * up);
                    SAME_HOLE_MM < off_mm && off_mm < STRIPPED_WITHIN_MM
                }
                FactState::Cut => {
                    let clear = Length::millimetres(CUT_CLEAR_MM);
                    fact.opening().is_some_and(|opening| opening.grown(clear).holds(place))
                }
                FactState::Done | FactState::Struck | FactState::Stripped => false,
            }
        })
    }

    /// Whether the hole that is at a place already was bored for another fastener of the kit.
    pub(super) fn is_bored_for_another(&self, place: Point, stock: &Id) -> bool {
        self.ground.facts.iter().filter(|fact| fact.state == FactState::Drilled).any(|fact| {
            let at = fact.place.is_some_and(|spot| {
                let (right, up) = ((place.x - spot.x).mm(), (place.y - spot.y).mm());
                root(right * right + up * up) <= SAME_HOLE_MM
            });
            at && fact.fastener.as_ref().is_some_and(|bored_for| bored_for != stock)
        })
    }

    /// Whether a fastener spins at a place or beside it: whichever option it was drilled for, the wood is gone there.
    pub(super) fn is_stripped(&self, place: Point) -> bool {
        let stripped = self.ground.facts.iter().filter(|fact| fact.state == FactState::Stripped);
        stripped.filter_map(|fact| fact.place).any(|spot| {
            let (right, up) = (place.x - spot.x, place.y - spot.y);
            right.mm() * right.mm() + up.mm() * up.mm() < STRIPPED_WITHIN_MM * STRIPPED_WITHIN_MM
        })
    }

    /// From a place to the nearest edge of the concrete: the plane's own ends and whatever opens or ends it.
    pub(super) fn to_edge(&self, place: Point) -> Length {
        to_edge(&self.ground, self.on.as_ref(), place)
    }
}

fn ground_feature<'a>(ground: &Ground<'a>, id: &Id) -> Option<&'a Feature> {
    ground.wall.features.iter().find(|feature| feature.id == *id)
}

/// What opens or ends concrete: whatever is cut into it, what is told as something else (it may be a niche or a fire's
/// opening), another plane, and every hidden thing, since it lies in a hollow.
fn to_edge(ground: &Ground<'_>, on: Option<&Id>, place: Point) -> Length {
    let survey = ground.survey;
    let plane = survey.features.iter().find(|feature| Some(&feature.id) == on);
    let outline = plane.map_or(survey.outline, |breast| breast.rect);
    let ends =
        [place.x - outline.left, outline.right - place.x, place.y - outline.bottom, outline.top - place.y];
    let opens = |kind: FeatureKind| {
        matches!(
            kind,
            FeatureKind::Window
                | FeatureKind::Door
                | FeatureKind::Vent
                | FeatureKind::Outlet
                | FeatureKind::Switch
                | FeatureKind::Thermostat
                | FeatureKind::ChimneyBreast
                | FeatureKind::Other
        )
    };
    let features = survey.features.iter().filter(|feature| opens(feature.kind) && Some(&feature.id) != on);
    let cut = ground.facts.iter().filter(|fact| fact.state == FactState::Cut);
    let holes = features
        .map(|feature| feature.rect)
        .chain(survey.hidden.iter().map(|hidden| hidden.rect))
        .chain(cut.filter_map(PlacedFact::opening));
    let to_holes = holes.map(|rect| {
        let aside = |low: Length, at: Length, high: Length| (low - at).mm().max((at - high).mm()).max(0.0);
        // No longer than the straight way.
        aside(rect.left, place.x, rect.right).max(aside(rect.bottom, place.y, rect.top))
    });
    let nearest_mm = ends.into_iter().map(Length::mm).chain(to_holes).fold(f64::INFINITY, f64::min);
    Length::millimetres(nearest_mm.max(0.0))
}
