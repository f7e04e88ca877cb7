//! A first look at a place of a piece: what its plate's holes meet and whether an opening behind it can be hidden. No
//! fasteners are weighed, no way of cables is looked for and nothing is read with a tape.

use super::Notes;
use super::again::Again;
use super::cable::{Around, Cabling};
use super::holes::Ground;
use super::mounted::mounted_by;
use super::pieces::{mount_of, piece_plan};
use super::placement::Placed;
use crate::geometry::{Frame, Point, Rect};
use crate::plan::Plan;
use crate::plan::piece::{Meets, MountedPlan, PiecePlan};

/// What a place of a piece gives, as far as a first look tells.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Coarse {
    /// How many studs its plate's holes can meet.
    pub studs: usize,
    /// How many of its plate's holes meet one there.
    pub holes_in_studs: usize,
    /// The least chance of solid wood at those holes, 0 to 1; `None` where there are none, or nothing tells.
    pub chance: Option<f64>,
    /// Whether an opening for its cables finds a place that the piece hides; `None` where no cable asks for one.
    /// Whether a way leads on from there is not said.
    pub entry_hidden: Option<bool>,
}

impl Again {
    /// A first look at a piece of a plan with its middle elsewhere.
    pub(crate) fn look(&self, plan: &Plan, piece: &PiecePlan, centre: Point) -> Coarse {
        let Some((wall, hanging)) = self.hanging() else { return Coarse::default() };
        let Some(own) = self.job.piece(&piece.id) else { return Coarse::default() };
        let was = piece.outline.centre();
        let place = Placed {
            outline: piece.outline.moved(centre.x - was.x, centre.y - was.y),
            ruled_centre: piece.ruled_centre,
            frame: Frame { origin: centre, roll: piece.frame.roll },
            assumed: piece.assumed,
        };
        let ground = Ground {
            wall,
            survey: &self.behind.survey,
            framing: &self.behind.framing,
            facts: &self.behind.facts,
            level: self.job.settings.chance().value(),
            exact: None,
            in_use: &[],
        };
        let mut notes = Notes::default();
        let mut at = piece_plan(hanging, own, &place);
        at.mount = mount_of(&self.job, hanging, &mut notes).map(|mount| {
            let what = (hanging, own, mount);
            mounted_by(&self.job, ground, what, (&place, None), &[], &mut notes, &|candidates| {
                candidates.most_met()
            })
        });
        let outlines: Vec<Rect> = plan
            .pieces
            .iter()
            .map(|one| if one.hanging == piece.hanging { place.outline } else { one.outline })
            .collect();
        let around = Around { outlines: &outlines, ..Around::default() };
        let entry_hidden = Cabling::of(&self.job, ground, hanging, own, &at, around).may_hide();
        let holes = at.mount.iter().flat_map(|mount| &mount.holes);
        let in_studs = holes.filter(|hole| hole.meets == Meets::Stud);
        Coarse {
            studs: at.mount.as_ref().map_or(0, MountedPlan::studs_met),
            holes_in_studs: in_studs.clone().count(),
            chance: in_studs.filter_map(|hole| hole.chance).reduce(f64::min),
            entry_hidden,
        }
    }
}
