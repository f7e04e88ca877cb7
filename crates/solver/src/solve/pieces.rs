//! Steps 3 to 6 for every piece of an option, those first that others are placed by.

use super::Notes;
use super::cable::{Around, Cabling};
use super::gaps::gaps;
use super::held::{HeldPlate, Holds};
use super::holes::{Ground, InUse};
use super::leaning::named_by;
use super::mounted::mounted;
use super::placement::{self, Placed, Surroundings};
use crate::finding::What;
use crate::geometry::Rect;
use crate::job::Job;
use crate::job::mount::Mount;
use crate::job::option::{Hanging, Opening, WallOption};
use crate::job::piece::Piece;
use crate::job::place::UprightDatum;
use crate::job::rule::UprightRule;
use crate::job::wall::Wall;
use crate::letters::composed;
use crate::plan::cable::WayBy;
use crate::plan::piece::{Gaps, MountedPlan, PiecePlan, PortPlan};
use crate::plan::survey::Survey;
use crate::subject::{Id, Subject};

/// Every piece of an option at its place, in the option's order.
pub(super) fn pieces(
    job: &Job,
    ground: Ground<'_>,
    option: &WallOption,
    notes: &mut Notes,
) -> Vec<PiecePlan> {
    let Ground { wall, survey, .. } = ground;
    let mut placed: Vec<PiecePlan> = Vec::new();
    // What is mounted once all are placed: what hangs on a piece bears on its mount.
    let mut settled: Vec<Settled<'_>> = Vec::new();
    let mut waiting: Vec<&Hanging> = Vec::new();
    for hanging in &option.hangings {
        match job.piece(&hanging.piece) {
            Some(_) => waiting.push(hanging),
            None => notes.stop(hanging.id.whole(), What::NotThere { named: hanging.piece.whole() }),
        }
    }
    loop {
        let before = waiting.len();
        let mut later = Vec::new();
        for hanging in waiting {
            let around = Surroundings { wall, survey, placed: &placed };
            let piece = job.piece(&hanging.piece);
            let found =
                piece.and_then(|piece| Some((piece, placement::place(&around, hanging, piece, notes)?)));
            match found {
                Some((piece, mut place)) => {
                    let held = held(job, &ground, hanging, piece, &mut place);
                    placed.push(piece_plan(hanging, piece, &place));
                    settled.push(Settled { hanging, piece, place, held });
                }
                None => later.push(hanging),
            }
        }
        waiting = later;
        if waiting.len() == before || waiting.is_empty() {
            break;
        }
    }
    for hanging in waiting {
        let what = match missing(wall, survey, option, hanging) {
            Some(named) => What::NotThere { named },
            None => What::Ring,
        };
        notes.stop(hanging.piece.whole(), what);
    }
    for one in &settled {
        for named in names_missing(job, survey, one) {
            notes.stop(one.piece.id.whole(), What::NotThere { named });
        }
    }
    let outlines: Vec<_> = settled.iter().map(|one| (one.hanging, one.piece, one.place.outline)).collect();
    // Fasteners of two plates in one stud keep as far apart as those of one: the later plate gives way.
    let mut in_use: Vec<InUse> = Vec::new();
    for (one, plan) in settled.iter().zip(&mut placed) {
        let ground = Ground { in_use: &in_use, ..ground };
        let with = hung_on(&one.hanging.piece, &outlines);
        plan.mount = mount_of(job, one.hanging, notes).map(|mount| {
            mounted(
                job,
                ground,
                (one.hanging, one.piece, mount),
                (&one.place, one.held.as_ref()),
                &with,
                notes,
            )
        });
        let more = plan.mount.iter().flat_map(fasteners_in_use).collect::<Vec<_>>();
        in_use.extend(more);
    }
    let all: Vec<Rect> = placed.iter().map(|piece| piece.outline).collect();
    let fastened = fastened(&placed);
    let solids: Vec<Rect> = placed
        .iter()
        .filter_map(|piece| piece.mount.as_ref())
        .flat_map(|mount| mount.solids.clone())
        .collect();
    let mut taken = Vec::new();
    let mut opened: Vec<Rect> = Vec::new();
    for (one, plan) in settled.iter().zip(&mut placed) {
        let around = Around { outlines: &all, fastened: &fastened, solids: &solids, opened: &opened };
        let cabling = Cabling::of(job, ground, one.hanging, one.piece, plan, around);
        let cable = cabling.plan(&mut taken);
        let wanted = cabling.wanted_entry(cable.as_ref());
        if let Some(mount) = &mut plan.mount {
            mount.entry = cable.as_ref().and_then(|cable| cable.way.as_ref()).and_then(|way| way.entry);
            mount.entry_wanted = wanted;
        }
        let way = cable.as_ref().and_then(|cable| cable.way.as_ref());
        let inside = way.filter(|way| way.by == WayBy::InWall);
        opened.extend(inside.into_iter().flat_map(|way| way.entry.into_iter().chain([way.exit])));
        plan.cable = cable;
    }
    let order = |id: &Id| option.hangings.iter().position(|hanging| hanging.id == *id);
    placed.sort_by_key(|piece| order(&piece.hanging));
    let outlines: Vec<(Id, Rect)> = placed.iter().map(|piece| (piece.id.clone(), piece.outline)).collect();
    for piece in &mut placed {
        piece.gaps = gaps(wall, survey, piece, &outlines);
    }
    placed
}

/// What a piece's cables name that the job does not have: ports, cables, what they end at or behind, boxes.
fn names_missing(job: &Job, survey: &Survey, one: &Settled<'_>) -> Vec<Subject> {
    let Hanging { cables, way, .. } = one.hanging;
    let port = |id: &Id| one.piece.ports.iter().any(|port| port.id == *id);
    let cable = |id: &Id| job.kit.cables.iter().any(|cable| cable.id == *id);
    let feature = |id: &Id| survey.features.iter().any(|feature| feature.id == *id);
    let stocked = |opening: &Option<Opening>| match opening {
        Some(Opening::Stocked(id)) => Some(id.clone()),
        _ => None,
    };
    let mut missing: Vec<&Id> = Vec::new();
    for wish in cables {
        missing.extend(Some(&wish.port).filter(|id| !port(id)));
        missing.extend(wish.cable.as_ref().filter(|id| !cable(id)));
        missing.extend(wish.ends_at.as_ref().filter(|id| !feature(id)));
    }
    missing.extend(way.behind.as_ref().filter(|id| !feature(id)));
    let boxes = [stocked(&way.entry_kind), stocked(&way.exit_kind)];
    let no_box = |id: &&Id| !job.kit.boxes.iter().any(|one| one.id == **id);
    missing.extend(boxes.iter().flatten().filter(no_box));
    missing.sort_unstable();
    missing.dedup();
    missing.into_iter().map(Id::whole).collect()
}

/// The fasteners of a plate, each at its hole.
fn fasteners_in_use(mount: &MountedPlan) -> impl Iterator<Item = InUse> {
    mount.fastening.fasteners.iter().filter_map(|fastener| {
        let hole = mount.holes.iter().find(|hole| hole.id == fastener.hole)?;
        Some(InUse {
            hole: hole.subject.clone(),
            place: hole.place,
            stud: hole.stud,
            diameter: fastener.diameter,
        })
    })
}

/// The fasteners in use, each as wide as it is.
fn fastened(pieces: &[PiecePlan]) -> Vec<Rect> {
    let mounted = pieces.iter().filter_map(|piece| piece.mount.as_ref());
    let each = mounted.flat_map(|mount| {
        mount.fastening.fasteners.iter().filter_map(|fastener| {
            let hole = mount.holes.iter().find(|hole| hole.id == fastener.hole)?;
            Some(Rect::at(hole.place).grown(fastener.diameter / 2.0))
        })
    });
    each.collect()
}

/// A piece at its place.
struct Settled<'a> {
    hanging: &'a Hanging,
    piece: &'a Piece,
    place: Placed,
    held: Option<HeldPlate>,
}

/// Moves a piece to where what was done holds its plate; `None` where nothing was.
fn held(
    job: &Job,
    ground: &Ground<'_>,
    hanging: &Hanging,
    piece: &Piece,
    place: &mut Placed,
) -> Option<HeldPlate> {
    if ground.facts.is_empty() {
        return None;
    }
    let mount = job.mount(hanging.mount.as_ref()?)?;
    let holds = Holds::of(ground.facts, &piece.id, mount.plate.as_ref(), job.style())?;
    // What is assumed of it is noted when it is mounted.
    let (drop, _) = placement::drop(piece, mount, place.outline.height(), &mut Notes::default());
    Some(holds.settle(place, place.outline.height() / 2.0 - drop, mount))
}

/// What hangs on a piece, and what hangs on that, at its place. What hangs on itself in a ring counts once.
pub(super) fn hung_on<'a>(piece: &Id, settled: &[(&Hanging, &'a Piece, Rect)]) -> Vec<(&'a Piece, Rect)> {
    let mut bear: Vec<&Id> = vec![piece];
    let mut with = Vec::new();
    let mut at = 0;
    while let Some(below) = bear.get(at).copied() {
        at += 1;
        for (hanging, piece, outline) in settled {
            if hanging.hung_on.as_ref() == Some(below) && !bear.contains(&&hanging.piece) {
                bear.push(&hanging.piece);
                with.push((*piece, *outline));
            }
        }
    }
    with
}

/// The mount that a hanging names.
pub(super) fn mount_of<'a>(job: &'a Job, hanging: &Hanging, notes: &mut Notes) -> Option<&'a Mount> {
    let id = hanging.mount.as_ref()?;
    let mount = job.mount(id);
    if mount.is_none() {
        notes.stop(hanging.piece.whole(), What::NotThere { named: id.whole() });
    }
    mount
}

/// A piece at its place, without its mount.
pub(super) fn piece_plan(hanging: &Hanging, piece: &Piece, place: &Placed) -> PiecePlan {
    let width = place.outline.width();
    let used = |id: &Id| hanging.cables.is_empty() || hanging.cables.iter().any(|wish| wish.port == *id);
    let ports: Vec<PortPlan> = piece
        .ports
        .iter()
        .map(|port| {
            let right = port.from_left_in_front(width) - width / 2.0;
            let place = place.frame.to_wall(right, port.up - place.outline.height() / 2.0);
            let name = composed(port.name.as_deref().unwrap_or_default());
            PortPlan { id: port.id.clone(), name, place, used: used(&port.id) }
        })
        .collect();
    PiecePlan {
        id: piece.id.clone(),
        hanging: hanging.id.clone(),
        kind: piece.kind,
        name: composed(piece.name.as_deref().unwrap_or_default()),
        outline: place.outline,
        ruled_centre: place.ruled_centre,
        frame: place.frame,
        mount: None,
        ports,
        cable: None,
        gaps: Gaps::default(),
        assumed: place.assumed,
    }
}

/// What a hanging's rules name that the wall and its option do not have.
fn missing(wall: &Wall, survey: &Survey, option: &WallOption, hanging: &Hanging) -> Option<Subject> {
    if let UprightRule::Height { from: UprightDatum::ControlLine, .. } = &hanging.upright
        && survey.control_line_y.is_none()
    {
        return Some(wall.id.part("control_line"));
    }
    let is_there = |id: &Id| {
        wall.id == *id
            || survey.features.iter().any(|feature| feature.id == *id)
            || option.hangings.iter().any(|other| other.piece == *id)
    };
    named_by(wall, hanging).into_iter().find(|id| !is_there(id)).map(|id| id.whole())
}
