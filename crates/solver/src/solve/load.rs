//! What hangs on a plate, put together for the cases of load: what is not measured is taken on the safe side, labelled
//! assumed, and asked for.

use super::placement::Placed;
use crate::capacity::case::Case;
use crate::capacity::hanging::{Hanging, HungMass, Manner};
use crate::capacity::posture::{GRAVITY, cases};
use crate::capacity::why::Known;
use crate::geometry::Rect;
use crate::job::mount::{Mount, MountKind};
use crate::job::piece::Piece;
use crate::ledger::Label;
use crate::plan::verdict::{Rest, Want};
use crate::tolerance::ARM_REACH_MM;
use crate::units::{Angle, Force, Length, Mass};

/// Of a piece that nobody weighed: kilograms for every square metre of its outline (chosen; assumed, so it makes no
/// verdict, and only ranks the holes).
const UNWEIGHED_KG_PER_M2: f64 = 30.0;
/// Of a piece whose depth nobody measured (chosen; assumed).
const DEPTH_NOT_MEASURED_MM: f64 = 80.0;
/// Of a mount whose stand-off nobody measured (chosen; assumed).
const STAND_OFF_NOT_MEASURED_MM: f64 = 60.0;
/// Of a mount that nobody weighed (chosen; assumed).
const UNWEIGHED_MOUNT_KG: f64 = 5.0;
/// Nothing turns farther to count (a quarter turn is the worst).
const QUARTER_TURN_DEG: f64 = 90.0;

/// What a load is put together from.
pub(super) struct Loaded<'a> {
    /// How hard somebody may pull.
    pub(super) pull: Force,
    pub(super) piece: &'a Piece,
    pub(super) mount: &'a Mount,
    pub(super) place: &'a Placed,
    /// From the piece's top down to the plate's top, and whether that is assumed.
    pub(super) drop: (Length, bool),
    /// What else hangs on the piece, at its place.
    pub(super) with: &'a [(&'a Piece, Rect)],
}

/// What hangs on a plate.
pub(super) struct Load {
    /// With the piece's middle at the plate's.
    hanging: Hanging,
    /// How far the arm's hinge is from the piece's middle as it is parked.
    parked_mm: f64,
    /// The middle of all outlines, right of the piece's own.
    middle_mm: f64,
    /// Whether the mount's mass stays at the plate's middle.
    mount_stays: bool,
    /// What is not measured.
    pub(super) wants: Vec<Want>,
    /// The chosen values it rests on.
    pub(super) rests: Vec<Rest>,
    /// Whether the piece comes out of the wall: an arm or a pull-down.
    pub(super) swings_out: bool,
}

impl Load {
    /// What hangs on a mount at its place.
    pub(super) fn of(loaded: &Loaded<'_>) -> Self {
        let Loaded { pull, piece, mount, place, drop: (drop, drop_assumed), with } = *loaded;
        let (mut wants, mut rests) = (Vec::new(), Vec::new());
        if piece.width.is_none() || piece.height.is_none() {
            wants.push(Want::Size(piece.id.clone()));
        }
        if place.assumed && !wants.contains(&Want::Size(piece.id.clone())) {
            wants.push(Want::Place(piece.id.clone()));
        }
        if drop_assumed {
            wants.push(Want::Drop(mount.id.clone()));
        }
        rests.push(Rest::Pull(pull));

        // On the plate's axes: x from its middle, y from its top; the piece's middle is at x = 0.
        let centre = place.outline.centre();
        let rise_mm = (place.outline.height() / 2.0 - drop).mm();
        let mut outline = place.outline;
        let mut deepest_mm: f64 = 0.0;
        let mut masses = Vec::new();
        // Nothing weighs nothing, and nothing is without depth: such a figure was not measured.
        let is_more = |measured: &f64| *measured > 0.0;
        for (one, rect) in std::iter::once((piece, place.outline)).chain(with.iter().copied()) {
            outline = around(outline, rect);
            let depth_mm = one.depth.map(Length::mm).filter(is_more).unwrap_or_else(|| {
                let want = Want::Size(one.id.clone());
                if !wants.contains(&want) {
                    wants.push(want);
                }
                DEPTH_NOT_MEASURED_MM
            });
            deepest_mm = deepest_mm.max(depth_mm);
            let size = Want::Size(one.id.clone());
            if (one.width.is_none() || one.height.is_none()) && !wants.contains(&size) {
                wants.push(size);
            }
            let kg = one.mass.map(Mass::kg).filter(is_more).unwrap_or_else(|| {
                wants.push(Want::Mass(one.id.clone()));
                rect.width().mm() * rect.height().mm() * 1e-6 * UNWEIGHED_KG_PER_M2
            });
            let told = one.centre_of_mass.as_ref();
            if told.is_none_or(|told| told.right.is_none() || told.up.is_none() || told.forward.is_none())
                && !rests.contains(&Rest::Middle)
            {
                rests.push(Rest::Middle);
            }
            let off = |offset: Option<crate::tape::Offset>| offset.map_or(0.0, |offset| offset.length().mm());
            let own = rect.centre();
            masses.push(HungMass {
                kg,
                right_mm: (own.x - centre.x).mm() + off(told.and_then(|told| told.right)),
                y_mm: (own.y - centre.y).mm() - rise_mm + off(told.and_then(|told| told.up)),
                from_back_mm: told.and_then(|told| told.forward).map_or(depth_mm / 2.0, Length::mm),
            });
        }
        if mount.comes_out() {
            // An arm turns the piece about its own middle: what sticks out to one side is taken to do so to both, for
            // the pulls at its ends (chosen: safer); the masses stay where they are.
            let half = (outline.right - centre.x).max(centre.x - outline.left);
            outline = Rect { left: centre.x - half, right: centre.x + half, ..outline };
        }
        let middle_mm = (outline.centre().x - centre.x).mm();
        for mass in &mut masses {
            mass.right_mm -= middle_mm;
        }
        let manner = manner(mount, (place, outline), drop, &mut wants, &mut rests);
        let swings_out = matches!(manner, Manner::Arm { .. });
        let mount_kg = mount.mass.map(Mass::kg).unwrap_or_else(|| {
            wants.push(Want::MountMass(mount.id.clone()));
            UNWEIGHED_MOUNT_KG
        });
        // Its own mass hangs nearer the wall: at the piece's back is the worse.
        rests.push(Rest::MountMass);
        masses.push(HungMass { kg: mount_kg, right_mm: 0.0, y_mm: 0.0, from_back_mm: 0.0 });
        let stand_off_mm = match (mount.stand_off, swings_out) {
            (Some(stand_off), _) => stand_off.mm(),
            (None, true) => 0.0,
            (None, false) => {
                wants.push(Want::StandOff(mount.id.clone()));
                STAND_OFF_NOT_MEASURED_MM
            }
        };
        let half_mm = outline.width().mm() / 2.0;
        let y_mm = |y: Length| (y - centre.y).mm() - rise_mm;
        let hanging = Hanging {
            left_mm: middle_mm - half_mm,
            right_mm: middle_mm + half_mm,
            bottom_mm: y_mm(outline.bottom),
            top_mm: y_mm(outline.top),
            depth_mm: deepest_mm,
            stand_off_mm,
            masses,
            manner,
            pull_n: pull.n(),
            label: if wants.is_empty() { Label::Measured } else { Label::Assumed },
        };
        let parked = mount.arm.as_ref().and_then(|arm| arm.parked);
        let parked_mm = parked.map_or(0.0, |parked| parked.length().mm());
        Self { hanging, parked_mm, middle_mm, mount_stays: !swings_out, wants, rests, swings_out }
    }

    /// What hangs, with the piece's middle so far right of the plate's.
    pub(super) fn at(&self, offset: Length) -> Hanging {
        let mut hanging = self.hanging.clone();
        hanging.left_mm += offset.mm();
        hanging.right_mm += offset.mm();
        if let Manner::Arm { hinge_x_mm, .. } = &mut hanging.manner {
            *hinge_x_mm = offset.mm() - self.parked_mm;
        }
        if self.mount_stays
            && let Some(mount) = hanging.masses.last_mut()
        {
            mount.right_mm = -offset.mm() - self.middle_mm;
        }
        hanging
    }

    /// Its cases.
    pub(super) fn cases(&self, offset: Length) -> Known<Vec<Case>> {
        cases(&self.at(offset))
    }

    /// Where its weight bears, right of the plate's middle.
    pub(super) fn weight_x_mm(&self, offset: Length) -> f64 {
        let hanging = self.at(offset);
        let middle_mm = (hanging.left_mm + hanging.right_mm) / 2.0;
        let (n, nmm) = hanging.masses.iter().fold((0.0, 0.0), |(n, nmm), mass| {
            let own = mass.kg * GRAVITY;
            (n + own, nmm + own * (middle_mm + mass.right_mm))
        });
        if n > 0.0 { nmm / n } else { middle_mm }
    }
}

/// The rectangle round two.
fn around(a: Rect, b: Rect) -> Rect {
    Rect {
        left: a.left.min(b.left),
        right: a.right.max(b.right),
        bottom: a.bottom.min(b.bottom),
        top: a.top.max(b.top),
    }
}

/// How a mount lets its piece move.
fn manner(
    mount: &Mount,
    (place, outline): (&Placed, Rect),
    drop: Length,
    wants: &mut Vec<Want>,
    rests: &mut Vec<Rest>,
) -> Manner {
    let arm = mount.arm.as_ref();
    if mount.comes_out() {
        let reach_mm = arm.and_then(|arm| arm.reach).map(Length::mm).unwrap_or_else(|| {
            wants.push(Want::Reach(mount.id.clone()));
            ARM_REACH_MM
        });
        let turns = |given: Option<Angle>, rest: fn(Angle) -> Rest, rests: &mut Vec<Rest>| {
            given.map(|angle| angle.deg().abs()).unwrap_or_else(|| {
                rests.push(rest(Angle::degrees(QUARTER_TURN_DEG)));
                QUARTER_TURN_DEG
            })
        };
        let hinge_deg = turns(arm.and_then(|arm| arm.hinge), Rest::Hinge, rests);
        let head_deg = turns(arm.and_then(|arm| arm.head), Rest::Head, rests);
        let (tilt_deg, to_edge_mm) = arm_tilt(mount, (place.outline, outline), wants, rests);
        return Manner::Arm {
            hinge_x_mm: 0.0,
            reach_mm,
            hinge_deg: Some(hinge_deg),
            head_deg: Some(head_deg),
            tilt_deg,
            to_edge_mm,
            lowers_mm: lowers(mount, wants),
        };
    }
    let (down, up) = tilts(mount);
    if mount.kind == MountKind::Tilting && !is_told(down, up) {
        wants.push(Want::Tilt(mount.id.clone()));
    }
    if down.is_none() && up.is_none() {
        return Manner::Fixed;
    }
    let pivot_down = pivot_down(mount, place.outline, wants);
    Manner::Tilting {
        down_deg: one_way(down, up, rests),
        up_deg: one_way(up, down, rests),
        // From the plate's top: the piece's top is a drop above it.
        pivot_y_mm: (drop - pivot_down).mm(),
    }
}

/// How far a mount tilts, down and up.
fn tilts(mount: &Mount) -> (Option<Angle>, Option<Angle>) {
    let tilt = mount.tilt.as_ref();
    (tilt.and_then(|tilt| tilt.down), tilt.and_then(|tilt| tilt.up))
}

/// Whether that is enough to go by: both ways, or one that is more than nothing, which the other then counts as too.
fn is_told(down: Option<Angle>, up: Option<Angle>) -> bool {
    let tilts = |angle: Angle| angle.deg() != 0.0;
    match (down, up) {
        (Some(_), Some(_)) => true,
        (Some(angle), None) | (None, Some(angle)) => tilts(angle),
        (None, None) => false,
    }
}

/// How far it tilts one way, degrees: a way that was not given counts as far as the other.
fn one_way(given: Option<Angle>, other: Option<Angle>, rests: &mut Vec<Rest>) -> f64 {
    match (given, other) {
        (Some(angle), _) => angle.deg().abs(),
        (None, Some(angle)) if angle.deg() != 0.0 => {
            rests.push(Rest::Tilt(angle));
            angle.deg().abs()
        }
        (None, _) => 0.0,
    }
}

/// How far an arm's head tilts, the larger of both ways, in degrees, and from the line that it tilts about to the
/// farther edge of all that hangs, in millimetres.
///
/// Where neither way was told, or one only and as 0, it is 0 and asked for: no angle short of a quarter turn would be
/// on the safe side, and one that does not tilt is told by a 0 each way.
fn arm_tilt(
    mount: &Mount,
    (piece, all): (Rect, Rect),
    wants: &mut Vec<Want>,
    rests: &mut Vec<Rest>,
) -> (f64, f64) {
    let (down, up) = tilts(mount);
    if !is_told(down, up) {
        wants.push(Want::Tilt(mount.id.clone()));
    }
    let most_deg = one_way(down, up, rests).max(one_way(up, down, rests)).min(QUARTER_TURN_DEG);
    if most_deg <= 0.0 {
        return (0.0, 0.0);
    }
    rests.push(Rest::ArmTilt(Angle::degrees(most_deg)));
    let turns_y = piece.top - pivot_down(mount, piece, wants);
    let to_edge = (all.top - turns_y).max(turns_y - all.bottom).max(Length::default());
    (most_deg, to_edge.mm())
}

/// How far below its top a piece turns when it tilts, asked for where nobody measured it: its middle, the mildest place
/// that it can be.
fn pivot_down(mount: &Mount, piece: Rect, wants: &mut Vec<Want>) -> Length {
    mount.tilt.as_ref().and_then(|tilt| tilt.pivot_down).unwrap_or_else(|| {
        wants.push(Want::Pivot(mount.id.clone()));
        piece.height() / 2.0
    })
}

/// How far a pull-down comes down, millimetres; 0 for anything else, and asked for where nobody measured it.
fn lowers(mount: &Mount, wants: &mut Vec<Want>) -> f64 {
    let lowers = mount.arm.as_ref().and_then(|arm| arm.lowers);
    if mount.kind == MountKind::PullDown && lowers.is_none() {
        wants.push(Want::Lowering(mount.id.clone()));
    }
    lowers.map_or(0.0, Length::mm)
}
