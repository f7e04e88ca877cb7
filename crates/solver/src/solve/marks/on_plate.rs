//! The marks read from the plate's two lines: probes, the look into the bay, the entry, the holes.

use super::{Site, mark, step};
use crate::geometry::{Axis, Point};
use crate::job::framing::{Front, Layer};
use crate::plan::mark::{Mark, MarkWhat, Reading, Stage};
use crate::plan::piece::{HolePlan, Meets, MountedPlan, PiecePlan};
use crate::tolerance::{HELD_PLATE_KG, PROBE_BITE_MM, same};
use crate::units::{Length, Mass};

impl Site<'_> {
    /// Everything behind the plate, in the order of work.
    pub(super) fn on_plate(&self, piece: &PiecePlan, mount: &MountedPlan, marks: &mut Vec<Mark>) {
        let used = self.used_holes(mount);
        let probes = self.probes(mount);
        if !probes.is_empty() || !used.is_empty() || mount.entry.is_some() {
            marks.push(step(piece, "make_safe", Stage::Probe, MarkWhat::MakeSafe));
        }
        let (thickness, measured) = self.thickness(mount.frame.origin);
        let depth = Some(thickness + Length::millimetres(PROBE_BITE_MM));
        for hole in probes {
            let what = MarkWhat::Probe { hole: hole.id.clone(), depth, thickness_measured: measured };
            let mut probe = mark(piece, &format!("{}.probe", hole.id), Stage::Probe, what, hole.place);
            probe.readings = self.line_readings(piece, hole.in_plate, hole.place);
            probe.assumed = mount.assumed || mount.holes_assumed;
            marks.push(probe);
        }
        let mass = self.mount_of(&mount.id).and_then(|mount| mount.mass);
        let held = mass.is_none_or(|mass| mass > Mass::kilograms(HELD_PLATE_KG));
        for (index, hole) in used.into_iter().enumerate() {
            let what = MarkWhat::Hole { hole: hole.id.clone(), first: index == 0, held };
            let mut fixed = mark(piece, hole.id.as_str(), Stage::Fix, what, hole.place);
            fixed.readings = self.line_readings(piece, hole.in_plate, hole.place);
            fixed.assumed = mount.assumed || mount.holes_assumed;
            marks.push(fixed);
        }
    }

    /// A place from the plate's middle and top: right and up. The roll of an entry counts for nothing that
    /// a saw could follow, so the turned frame is undone exactly.
    pub(super) fn in_plate(&self, mount: &MountedPlan, place: Point) -> Point {
        mount.frame.from_wall(place)
    }

    pub(super) fn line_readings(&self, piece: &PiecePlan, in_plate: Point, place: Point) -> Vec<Reading> {
        vec![
            self.line_reading(piece, Axis::Upright, in_plate.y, place),
            self.line_reading(piece, Axis::Across, in_plate.x, place),
        ]
    }

    /// The holes to be fixed, first the one in the surest stud in the top row, then row by row from the
    /// left. Where nothing is known of the framing, all.
    fn used_holes<'a>(&self, mount: &'a MountedPlan) -> Vec<&'a HolePlan> {
        let use_it = |hole: &&HolePlan| match mount.fastening.fasteners.is_empty() {
            true => matches!(hole.meets, Meets::Stud | Meets::Masonry | Meets::NotKnown),
            false => in_use(mount, hole),
        };
        let mut used: Vec<&HolePlan> = mount.holes.iter().filter(use_it).collect();
        used.sort_by(|a, b| {
            let rows = b.in_plate.y.mm().total_cmp(&a.in_plate.y.mm());
            rows.then(a.in_plate.x.mm().total_cmp(&b.in_plate.x.mm()))
        });
        let Some(top) = used.first().map(|hole| hole.in_plate.y) else { return used };
        let doubt = |hole: &HolePlan| {
            hole.stud
                .and_then(|stud| self.framing.studs.get(stud))
                .map_or(f64::INFINITY, |stud| stud.doubt.mm())
        };
        let row = used.iter().take_while(|hole| same(hole.in_plate.y, top)).enumerate();
        let surest = row.min_by(|(_, a), (_, b)| doubt(a).total_cmp(&doubt(b))).map_or(0, |(index, _)| index);
        if let Some(upto) = used.get_mut(..=surest) {
            upto.rotate_right(1);
        }
        used
    }

    /// One hole in the upper and one in the lower row of each stud in use, the nearest to its middle.
    fn probes<'a>(&self, mount: &'a MountedPlan) -> Vec<&'a HolePlan> {
        let mut probes: Vec<&HolePlan> = Vec::new();
        for (index, stud) in self.framing.studs.iter().enumerate() {
            let here: Vec<&HolePlan> = mount
                .holes
                .iter()
                .filter(|hole| hole.stud == Some(index))
                .filter(|hole| mount.fastening.fasteners.is_empty() || in_use(mount, hole))
                .collect();
            let heights = here.iter().map(|hole| hole.in_plate.y);
            let (Some(top), Some(bottom)) =
                (heights.clone().reduce(Length::max), heights.reduce(Length::min))
            else {
                continue;
            };
            let off = |hole: &HolePlan| (hole.place.x - stud.centre).mm().abs();
            let rows = if same(top, bottom) { vec![top] } else { vec![top, bottom] };
            for row in rows {
                let in_row = here.iter().filter(|hole| same(hole.in_plate.y, row));
                probes.extend(in_row.min_by(|a, b| off(a).total_cmp(&off(b))));
            }
        }
        probes
    }

    /// What stands in front of the framing, and whether it was measured. Not measured it is the least that
    /// its layers usually come to, since a probe must go no deeper than it must (chosen).
    pub(super) fn thickness(&self, at: Point) -> (Length, bool) {
        let breast = self.survey.breast_at(at.x, Some(at.y)).map(|breast| &breast.id);
        let front = self.wall.front_on(breast);
        if let Some(measured) = front.and_then(|front| front.thickness) {
            return (measured, true);
        }
        let least_mm = |layer: &Layer| match layer {
            // 1/2 in board (common practice, no source); lath 1/4 in and coats 5/8 in (read second-hand);
            // tile and thin panelling 1/4 in (from memory).
            Layer::Board => 12.7,
            Layer::PlasterOnLath => 22.225,
            Layer::Tile | Layer::Panelling => 6.35,
        };
        let layers = |front: &Front| front.layers.iter().map(least_mm).sum::<f64>();
        let supposed = front.map(layers).filter(|sum| *sum > 0.0).unwrap_or(12.7);
        (Length::millimetres(supposed), false)
    }
}

/// Whether the schedule has a fastener for a hole.
fn in_use(mount: &MountedPlan, hole: &HolePlan) -> bool {
    mount.fastening.fasteners.iter().any(|fastener| fastener.hole == hole.id)
}
