//! The fasteners of a plate as a plan chose them, weighed under something else than what hangs: beside `solve`, by the
//! same functions.

use super::Notes;
use super::choice::{Asks, Candidates, Fixed};
use super::framing::framing;
use super::holes::Ground;
use super::load::{Load, Loaded};
use super::mounted::by_hand;
use super::pieces::hung_on;
use super::placement::{self, Placed};
use crate::geometry::Rect;
use crate::job::Job;
use crate::job::mount::Mount;
use crate::job::option::Hanging;
use crate::job::piece::Piece;
use crate::plan::Plan;
use crate::plan::piece::PiecePlan;
use crate::units::{Force, Length};

/// What hangs and how it may be pulled: what a trial changes.
#[derive(Clone)]
pub(crate) struct Hung {
    /// The piece.
    pub(crate) piece: Piece,
    /// Its mount.
    pub(crate) mount: Mount,
    /// How hard somebody may pull.
    pub(crate) pull: Force,
}

/// A plate with its chosen fasteners.
pub(crate) struct Trial<'a> {
    fixed: Fixed,
    /// What hangs as the job has it.
    pub(crate) hung: Hung,
    place: Placed,
    drop: (Length, bool),
    with: Vec<(&'a Piece, Rect)>,
}

impl<'a> Trial<'a> {
    /// Of a piece of a job's plan; `None` where it has no plate of its own whose fasteners published values carry.
    pub(crate) fn of(job: &'a Job, plan: &Plan, piece: &PiecePlan) -> Option<Self> {
        let wall = job.wall(&plan.wall)?;
        let mounted = piece.mount.as_ref()?;
        let mount = job.mount(&mounted.id)?;
        let plate = mount.plate.as_ref()?;
        let outline = plate.outline_in_plate()?;
        let level = job.settings.chance().value();
        // Not the plan's own: its studs are told at the height of the holes.
        let framing = framing(wall, &plan.survey, level);
        let option = wall.options.iter().find(|option| Some(&option.id) == plan.option.as_ref());
        let hangings = option.map(|option| option.hangings.as_slice()).unwrap_or_default();
        let settled: Vec<(&Hanging, &Piece, Rect)> = plan
            .pieces
            .iter()
            .filter_map(|one| {
                let hanging = hangings.iter().find(|hanging| hanging.id == one.hanging)?;
                Some((hanging, job.piece(&one.id)?, one.outline))
            })
            .collect();
        let with = hung_on(&piece.id, &settled);
        let place = placed(piece);
        let own = job.piece(&piece.id)?;
        let drop = placement::drop(own, mount, place.outline.height(), &mut Notes::default());
        let pull = job.settings.pull();
        let load = Load::of(&Loaded { pull, piece: own, mount, place: &place, drop, with: &with });
        let hanging = hangings.iter().find(|hanging| hanging.id == piece.hanging);
        let by_hand =
            hanging.map(|hanging| by_hand(job, hanging, plate, &mut Notes::default())).unwrap_or_default();
        let candidates = Candidates {
            ground: Ground {
                wall,
                survey: &plan.survey,
                framing: &framing,
                facts: &plan.facts,
                level,
                exact: None,
                in_use: &[],
            },
            piece: &piece.id,
            piece_frame: place.frame,
            rise: place.outline.height() / 2.0 - drop.0,
            mount,
            plate,
            outline,
            plate_assumed: false,
            load: &load,
            asks: Asks::of(mount.required.as_ref()),
            kit: &job.kit,
            by_hand: &by_hand,
            most_reserve: job.settings.reserve().value(),
            explains: false,
            held: None,
        };
        let fixed = candidates.fixed(mounted.offset, &mounted.fastening)?;
        Some(Self { fixed, hung: Hung { piece: own.clone(), mount: mount.clone(), pull }, place, drop, with })
    }

    /// Whether the fasteners hold something else in the place of what hangs, which stays where it is.
    pub(crate) fn holds(&self, hung: &Hung) -> bool {
        let load = Load::of(&Loaded {
            pull: hung.pull,
            piece: &hung.piece,
            mount: &hung.mount,
            place: &self.place,
            drop: self.drop,
            with: &self.with,
        });
        self.fixed.holds(&load)
    }
}

fn placed(piece: &PiecePlan) -> Placed {
    Placed {
        outline: piece.outline,
        ruled_centre: piece.ruled_centre,
        frame: piece.frame,
        assumed: piece.assumed,
    }
}
