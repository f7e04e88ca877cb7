//! Tilted down, a piece's lower edge swings back toward the wall; tilted up, its upper edge does. An edge
//! that swings back by more than the stand-off meets the wall, or sooner what stands proud behind it. The
//! front's lower edge first comes down a little, on a mantel, shelf, bench or sound bar close below (derived:
//! each edge goes round the pivot).

use super::hung::{self, Hung};
use super::plane::proud_of;
use super::side::gap;
use crate::finding::{Finding, Level, Mend, What};
use crate::geometry::{Direction, Span};
use crate::job::Job;
use crate::job::mount::{Mount, MountKind, Tilt};
use crate::job::wall::Wall;
use crate::numeric::{cosine, sine};
use crate::plan::Plan;
use crate::subject::Subject;
use crate::tolerance::{DEPTH_MM, SAME_PLACE_MM, TILT_DEG};
use crate::units::{Angle, Length};

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let all = hung::all(job, wall, plan);
    let mut told = Vec::new();
    for (hung, _, mount) in hung::mounted(job, wall, plan) {
        let Some(swing) = Swing::of(&hung, mount) else { continue };
        let mut met: Vec<Subject> = Vec::new();
        if swing.back_at(hung.at.outline.upright()).mm() < -SAME_PLACE_MM {
            met.push(wall.id.whole());
        }
        met.extend(met_behind(plan, &hung, &swing));
        met.extend(met_below(plan, &all, &hung, &swing));
        for other in met {
            let what = What::TiltMeets { other };
            let subject = hung.at.id.whole();
            told.push(Finding { level: Level::Caution, subject, what, mend: Mend::Choose });
        }
    }
    told
}

/// How a piece turns about its pivot.
struct Swing {
    pivot_y: Length,
    stand_off: Length,
    down: Angle,
    up: Angle,
    below_pivot: Length,
    depth: Length,
}

impl Swing {
    /// How a piece turns; `None` where it does not. Of a tilt that is given, a way not given is not there.
    fn of(hung: &Hung<'_>, mount: &Mount) -> Option<Self> {
        let unknown = Tilt { down: Some(Angle::degrees(TILT_DEG)), ..Tilt::default() };
        let tilt = match (&mount.tilt, mount.kind) {
            (Some(tilt), _) => tilt,
            (None, MountKind::Tilting) => &unknown,
            (None, _) => return None,
        };
        let outline = hung.at.outline;
        let pivot_y = outline.top - tilt.pivot_down.unwrap_or(outline.height() / 2.0);
        Some(Self {
            pivot_y,
            stand_off: hung.stand_off(),
            down: tilt.down.unwrap_or_default(),
            up: tilt.up.unwrap_or_default(),
            below_pivot: pivot_y - outline.bottom,
            depth: hung.piece.depth.unwrap_or(Length::millimetres(DEPTH_MM)),
        })
    }

    /// How far from the wall the piece's back comes at the least, anywhere in a stretch of its height.
    fn back_at(&self, upright: Span) -> Length {
        let below = (self.pivot_y - upright.from).max(Length::default());
        let above = (upright.to - self.pivot_y).max(Length::default());
        self.stand_off - (below * sine(self.down)).max(above * sine(self.up))
    }

    /// How far the front's lower edge comes down on the way: the most of d sin t - b (1 - cos t).
    fn comes_down(&self) -> Length {
        let (below, depth) = (self.below_pivot, self.depth);
        // It is lowest when the front's lower edge stands straight below the pivot: tan t = d / b.
        let lowest = crate::numeric::slope_angle(depth.mm() / below.mm().max(SAME_PLACE_MM));
        let turn = if self.down < lowest { self.down } else { lowest };
        (depth * sine(turn) - below * (1.0 - cosine(turn))).max(Length::default())
    }
}

/// What stands behind the piece, clear of its back until it tilts.
fn met_behind(plan: &Plan, hung: &Hung<'_>, swing: &Swing) -> Vec<Subject> {
    let (own, centre) = (hung.bounds(), hung.at.outline.centre());
    let features = plan.survey.features.iter().filter(|feature| feature.rect.overlaps(own));
    let met = features.filter(|feature| {
        let shared = Span { from: feature.rect.bottom.max(own.bottom), to: feature.rect.top.min(own.top) };
        let proud = proud_of(&plan.survey, centre, feature);
        // What stands out past the back is in its way before it tilts: another rule tells of it.
        proud.mm() > SAME_PLACE_MM && proud <= swing.stand_off && proud > swing.back_at(shared)
    });
    met.map(|feature| feature.id.whole()).collect()
}

/// What stands out close below the piece, nearer than its lower edge comes down.
fn met_below(plan: &Plan, all: &[Hung<'_>], hung: &Hung<'_>, swing: &Swing) -> Vec<Subject> {
    let (own, centre) = (hung.bounds(), hung.at.outline.centre());
    let nearest_back = swing.back_at(own.upright());
    let features = plan
        .survey
        .features
        .iter()
        .filter(|feature| proud_of(&plan.survey, centre, feature) > nearest_back.max(Length::default()))
        .map(|feature| (feature.id.whole(), feature.rect));
    // What hangs on the piece tilts with it.
    let others = all
        .iter()
        .filter(|other| other.at.id != hung.at.id && !other.hangs_on(hung) && !hung.hangs_on(other))
        .map(|other| (other.at.id.whole(), other.bounds()));
    let met = features.chain(others).filter(|(_, rect)| {
        let gap = gap(own, *rect, Direction::Down);
        let below = rect.across().overlaps(own.across()) && gap.mm() >= -SAME_PLACE_MM;
        below && (swing.comes_down() - gap).mm() > SAME_PLACE_MM
    });
    met.map(|(subject, _)| subject).collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::{Sample, mm};
    use super::*;
    use crate::job::feature::FeatureKind;
    use crate::job::piece::PieceKind;

    fn tilting(down: Option<f64>, up: Option<f64>, stand_off: f64) -> Sample {
        let mut room = Sample::good();
        let mount = &mut room.job.mounts[0];
        mount.stand_off = Some(mm(stand_off));
        mount.tilt =
            Some(Tilt { down: down.map(Angle::degrees), up: up.map(Angle::degrees), pivot_down: None });
        room
    }

    fn caution(other: &str) -> (Level, String, What) {
        (Level::Caution, "display-1".to_owned(), What::TiltMeets { other: Subject::read(other).unwrap() })
    }

    #[test]
    fn either_edge_meets_the_wall_past_the_stand_off() {
        assert!(Sample::good().told(check).is_empty());
        // 350 mm from the pivot to either edge: 350 sin 10 = 60.776.
        for (down, up) in [(Some(10.0), None), (None, Some(10.0))] {
            assert!(tilting(down, up, 60.8).told(check).is_empty());
            assert_eq!(tilting(down, up, 60.7).told(check), [caution("wall-1")]);
        }
    }

    #[test]
    fn the_pivot_counts_and_a_tilt_not_given_is_taken_as_15_degrees() {
        let mut room = tilting(Some(10.0), None, 60.8);
        room.job.mounts[0].tilt.as_mut().unwrap().pivot_down = Some(mm(340.0));
        assert_eq!(room.told(check), [caution("wall-1")]);
        // 350 sin 15 = 90.587.
        let mut room = tilting(None, None, 90.6);
        (room.job.mounts[0].tilt, room.job.mounts[0].kind) = (None, MountKind::Tilting);
        assert!(room.told(check).is_empty());
        room.job.mounts[0].stand_off = Some(mm(90.5));
        assert_eq!(room.told(check), [caution("wall-1")]);
    }

    #[test]
    fn what_is_behind_the_lower_edge_is_met_before_the_wall() {
        // The back comes to 100 - 60.776 = 39.224 at its lower edge, and no nearer than 100 at its pivot.
        let mut room = tilting(Some(10.0), None, 100.0);
        room.feature("panel-1", FeatureKind::Other, (1900.0, 2100.0), (1500.0, 1600.0), 45.0);
        room.feature("box-1", FeatureKind::Other, (1900.0, 2100.0), (1100.0, 1300.0), 39.0);
        assert!(room.told(check).is_empty());
        room.plan.survey.features[1].proud = mm(39.5);
        assert_eq!(room.told(check), [caution("box-1")]);
    }

    #[test]
    fn what_is_close_below_is_met_by_the_front() {
        // Lowest where tan t = 50 / 350: sqrt(350^2 + 50^2) - 350 = 3.553 mm down.
        let mut room = tilting(Some(10.0), None, 100.0);
        room.feature("mantel-1", FeatureKind::Mantel, (1000.0, 3000.0), (1000.0, 1146.4), 150.0);
        assert!(room.told(check).is_empty());
        room.plan.survey.features[0].rect.top = mm(1146.5);
        assert_eq!(room.told(check), [caution("mantel-1")]);
        room.plan.survey.features.clear();
        room.second_piece("bar-1", PieceKind::SoundBar, (1600.0, 2400.0), (1070.0, 1147.0));
        assert_eq!(room.told(check), [caution("bar-1")]);
        room.second_hanging().hung_on = Some(crate::subject::Id::new("display-1"));
        assert!(room.told(check).is_empty());
    }
}
