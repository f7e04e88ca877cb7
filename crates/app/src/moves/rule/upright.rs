//! How high a piece goes.

use super::{outline, rect, whole};
use strikeline_solver::job::place::{UpDown, UprightDatum};
use strikeline_solver::job::rule::{Follow, PieceHeight, UprightRule};
use strikeline_solver::plan::Plan;
use strikeline_solver::subject::{Id, Subject};
use strikeline_solver::units::Length;

/// A kind of rule.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum UprightKind {
    /// So far above or below something.
    Height,
    /// A gap above a thing.
    Above,
    /// A gap below a thing.
    Below,
    /// Level with an edge.
    Level,
}

impl UprightKind {
    /// All kinds, in the order in which they are offered.
    pub const ALL: [Self; 4] = [Self::Height, Self::Above, Self::Below, Self::Level];

    /// The kind of a rule.
    #[must_use]
    pub fn of(rule: &UprightRule) -> Self {
        match rule {
            UprightRule::Height { .. } => Self::Height,
            UprightRule::Gap { side: UpDown::Up, .. } => Self::Above,
            UprightRule::Gap { side: UpDown::Down, .. } => Self::Below,
            UprightRule::Aligned { .. } => Self::Level,
        }
    }
}

/// A rule of a kind to begin with: the middle's height above the floor, the gap to the nearest thing on that side,
/// or that of its edges which is nearest level with one of the piece's own heights. `None` where there is no thing.
#[must_use]
pub fn upright_rule(plan: &Plan, piece: &Id, kind: UprightKind, things: &[Id]) -> Option<UprightRule> {
    let gap = |side| {
        let nearest = things.iter().min_by(|a, b| {
            let away = |of: &Id| strangeness(plan, piece, side, of);
            away(a).total_cmp(&away(b))
        });
        nearest.map(|of| gap_rule(plan, piece, side, of, Follow::default()))
    };
    match kind {
        UprightKind::Height => Some(height_rule(plan, piece, PieceHeight::Centre, UprightDatum::Floor)),
        UprightKind::Above => gap(UpDown::Up),
        UprightKind::Below => gap(UpDown::Down),
        UprightKind::Level => {
            let now = outline(plan, piece);
            let own = [PieceHeight::Centre, PieceHeight::Top, PieceHeight::Bottom];
            let pairs =
                super::level_edges(things).into_iter().flat_map(|with| own.map(|of| (of, with.clone())));
            let away = |(of, with): &(PieceHeight, Subject)| {
                edge_y(plan, with, now.centre().x)
                    .map_or(f64::INFINITY, |y| (y - height_y(plan, piece, *of)).abs().mm())
            };
            let (of, with) = pairs.min_by(|a, b| away(a).total_cmp(&away(b)))?;
            Some(UprightRule::Aligned { of, with })
        }
    }
}

/// How unlikely a thing is to be meant by a gap, in millimetres: the gap itself; what lies to the side of the piece,
/// or is not on that side of it, comes after all that does not.
fn strangeness(plan: &Plan, piece: &Id, side: UpDown, of: &Id) -> f64 {
    let now = outline(plan, piece);
    let Some(rect) = rect(plan, of) else { return f64::INFINITY };
    let gap = gap(plan, piece, side, of).mm();
    let is_beside = rect.right <= now.left || now.right <= rect.left;
    let far = 1e7;
    gap.abs() + if is_beside { far } else { 0.0 } + if gap < 0.0 { 2.0 * far } else { 0.0 }
}

/// One of a piece's own heights, from the floor, the control line or an edge: up from it or down, as the piece is.
#[must_use]
pub fn height_rule(plan: &Plan, piece: &Id, of: PieceHeight, from: UprightDatum) -> UprightRule {
    let x = outline(plan, piece).centre().x;
    let (datum, away) = match &from {
        UprightDatum::Floor => (Some(plan.survey.floor.y_at(x)), UpDown::Up),
        UprightDatum::ControlLine => (plan.survey.control_line_y, UpDown::Up),
        UprightDatum::Edge(edge) => {
            (edge_y(plan, edge, x), if edge.part_str() == "bottom" { UpDown::Down } else { UpDown::Up })
        }
    };
    let up = height_y(plan, piece, of) - datum.unwrap_or_default();
    let way = if up < Length::default() { UpDown::Down } else { UpDown::Up };
    UprightRule::Height { of, from, toward: (way != away).then_some(way), by: whole(up.abs(), plan) }
}

/// A gap above or below a thing; none where the piece is not on that side of it, or the thing is not there.
#[must_use]
pub fn gap_rule(plan: &Plan, piece: &Id, side: UpDown, of: &Id, follow: Follow) -> UprightRule {
    let by = whole(gap(plan, piece, side, of), plan);
    UprightRule::Gap { side, of: of.clone(), by, follow }
}

/// How far a piece is above or below a thing; negative where it is not on that side of it.
fn gap(plan: &Plan, piece: &Id, side: UpDown, of: &Id) -> Length {
    let now = outline(plan, piece);
    let x = now.centre().x;
    match side {
        UpDown::Up => edge_y(plan, &of.part("top"), x).map(|top| now.bottom - top),
        UpDown::Down => edge_y(plan, &of.part("bottom"), x).map(|bottom| bottom - now.top),
    }
    .unwrap_or_default()
}

fn height_y(plan: &Plan, piece: &Id, of: PieceHeight) -> Length {
    let now = outline(plan, piece);
    match of {
        PieceHeight::Top => now.top,
        PieceHeight::Centre => now.centre().y,
        PieceHeight::Bottom => now.bottom,
    }
}

/// The height of an edge or the middle of a feature or piece, at a place along the wall.
fn edge_y(plan: &Plan, edge: &Subject, x: Length) -> Option<Length> {
    let feature = plan.survey.features.iter().find(|feature| feature.id == edge.id);
    let (bottom, top) = match feature {
        Some(feature) => (feature.bottom_at(x), feature.top_at(x)),
        None => rect(plan, &edge.id).map(|rect| (rect.bottom, rect.top))?,
    };
    Some(match edge.part_str() {
        "bottom" => bottom,
        "top" => top,
        _ => (bottom + top) / 2.0,
    })
}

#[cfg(test)]
mod tests {
    use super::super::super::sample::{job, plan};
    use super::*;
    use strikeline_solver::job::Job;

    const OWN: [PieceHeight; 3] = [PieceHeight::Top, PieceHeight::Centre, PieceHeight::Bottom];

    fn display() -> Id {
        Id::new("display-1")
    }

    /// The sample with a low bench under the display, up to a height.
    fn room(top: &str) -> Job {
        let mut job = job();
        let bench = format!(
            "(id: \"bench-1\", kind: bench, across: (left: (by: \"20 in\"), width: \"50 in\"), \
             upright: (bottom: (by: \"0 in\"), top: (by: \"{top}\")))"
        );
        let options =
            ron::Options::default().with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME);
        job.walls[0].features.push(options.from_str(&bench).unwrap());
        job
    }

    /// How far a rule moves the display of a room, in millimetres, and by how much it may.
    fn moved_mm(room: &Job, rule: UprightRule) -> (f64, f64) {
        let before = plan(room);
        let mut after = room.clone();
        after.walls[0].options[0].hangings[0].upright = rule;
        let off = plan(&after).pieces[0].outline.centre().y - before.pieces[0].outline.centre().y;
        (off.mm().abs(), before.style.length_of(1).mm() / 2.0 + 1e-6)
    }

    #[test]
    fn a_height_from_anything_leaves_the_piece_where_it_is() {
        let room = room("30 in");
        let before = plan(&room);
        let edges = ["top", "bottom"].map(|part| UprightDatum::Edge(Id::new("door-1").part(part)));
        for of in OWN {
            for from in std::iter::once(UprightDatum::Floor).chain(edges.clone()) {
                let (off, most) = moved_mm(&room, height_rule(&before, &display(), of, from.clone()));
                assert!(off <= most, "{of:?} {from:?}: {off}");
            }
        }
    }

    #[test]
    fn a_gap_leaves_the_piece_where_it_is_on_the_side_where_it_is() {
        let room = room("30 in");
        let before = plan(&room);
        let bench = Id::new("bench-1");
        let rule = gap_rule(&before, &display(), UpDown::Up, &bench, Follow::default());
        let (off, most) = moved_mm(&room, rule);
        assert!(off <= most, "{off}");
        // 60 in up, 28 in high, over a bench of 30 in: 16 in.
        let UprightRule::Gap { by, .. } =
            gap_rule(&before, &display(), UpDown::Up, &bench, Follow::SplitTheDifference)
        else {
            panic!("a gap")
        };
        assert_eq!(by, Length::inches(16.0).quantised());
        let UprightRule::Gap { by, .. } =
            gap_rule(&before, &display(), UpDown::Down, &bench, Follow::default())
        else {
            panic!("a gap")
        };
        assert_eq!(by, Length::default(), "a gap is never below nothing");
    }

    #[test]
    fn a_kind_begins_with_what_is_near() {
        let room = room("45 in");
        let before = plan(&room);
        let things = [Id::new("door-1"), Id::new("bench-1")];
        let rule = |kind| upright_rule(&before, &display(), kind, &things);
        let Some(UprightRule::Gap { of, .. }) = rule(UprightKind::Above) else { panic!("a gap") };
        assert_eq!(of, things[1], "the bench under it, not the door beside it");
        // Its lower edge at 46 in is 1 in off the bench's top, and all else is farther off.
        let level = rule(UprightKind::Level);
        let with = things[1].part("top");
        assert_eq!(level, Some(UprightRule::Aligned { of: PieceHeight::Bottom, with }));
        for kind in UprightKind::ALL {
            assert_eq!(rule(kind).as_ref().map(UprightKind::of), Some(kind));
            let without = upright_rule(&before, &display(), kind, &[]);
            assert_eq!(without.is_some(), kind == UprightKind::Height);
        }
    }
}
