//! Step 2: uprights from hits. Pairs edges, takes centres, merges what is one stud, keeps each kind's doubt.

use crate::job::feature::FeatureKind;
use crate::job::framing::WallFraming;
use crate::job::hit::HitKind;
use crate::job::wall::Wall;
use crate::plan::framing::{Framing, Stud};
use crate::plan::survey::{PlacedHit, Survey};
use crate::subject::Id;
use crate::tolerance::{BOARD_SCREW_EDGE_MM, SENSED_DOUBT_MM};
use crate::units::Length;

/// One hit's word on where an upright's middle is.
struct Estimate {
    centre_mm: f64,
    doubt_mm: f64,
    hits: Vec<Id>,
}

/// The uprights of a wall and of each chimney breast on it, from left to right.
pub(super) fn framing(wall: &Wall, survey: &Survey) -> Framing {
    let mut studs = plane(survey, None, wall.framing.as_ref());
    let mut known = !wall.hits.is_empty() || built_solid(wall.framing.as_ref());
    for breast in survey.features.iter().filter(|feature| feature.kind == FeatureKind::ChimneyBreast) {
        let own = wall.framing_on(Some(&breast.id));
        studs.extend(plane(survey, Some(&breast.id), own));
        known |= built_solid(own);
    }
    studs.sort_by(|a, b| a.centre.mm().total_cmp(&b.centre.mm()));
    Framing { known, studs }
}

/// Whether a wall is known to be built without uprights.
fn built_solid(framing: Option<&WallFraming>) -> bool {
    matches!(
        framing,
        Some(
            WallFraming::Masonry(_) | WallFraming::Concrete(_) | WallFraming::Veneer | WallFraming::NoFraming
        )
    )
}

/// The uprights of one plane: a chimney breast, or the wall beside the breasts.
fn plane(survey: &Survey, on: Option<&Id>, framing: Option<&WallFraming>) -> Vec<Stud> {
    let framing = framing.unwrap_or(&WallFraming::NotKnown);
    let Some(face) = framing.face() else { return Vec::new() };
    let mut hits: Vec<&PlacedHit> = survey
        .hits
        .iter()
        .filter(|hit| survey.breast_at(hit.x, hit.y).map(|breast| &breast.id) == on)
        .collect();
    hits.sort_by(|a, b| a.x.mm().total_cmp(&b.x.mm()));
    let mut estimates = estimates(&hits, face.mm(), matches!(framing, WallFraming::Steel(_)));
    estimates.sort_by(|a, b| a.centre_mm.total_cmp(&b.centre_mm));
    merge(estimates, face.mm())
        .into_iter()
        .map(|one| Stud {
            centre: Length::millimetres(one.centre_mm),
            left: Length::millimetres(one.centre_mm) - face / 2.0,
            right: Length::millimetres(one.centre_mm) + face / 2.0,
            doubt: Length::millimetres(one.doubt_mm),
            hits: one.hits,
            on: on.cloned(),
        })
        .collect()
}

/// Each hit's word; an edge followed by the opposite edge about a face away is one word.
fn estimates(hits: &[&PlacedHit], face_mm: f64, steel: bool) -> Vec<Estimate> {
    let mut found = Vec::new();
    let mut open_edge: Option<&PlacedHit> = None;
    let single = |hit: &PlacedHit, centre_mm: f64, doubt_mm: f64| Estimate {
        centre_mm,
        doubt_mm,
        hits: vec![hit.id.clone()],
    };
    let alone = |hit: &PlacedHit| single(hit, hit.x.mm() + face_mm / 2.0, SENSED_DOUBT_MM);
    for hit in hits {
        let x_mm = hit.x.mm();
        match hit.kind {
            HitKind::LeftEdge => {
                found.extend(open_edge.replace(hit).map(alone));
            }
            HitKind::RightEdge => match open_edge.take() {
                // A doubled stud is up to two faces wide; edges farther apart are two studs.
                Some(left) if x_mm - left.x.mm() <= 2.0 * face_mm + SENSED_DOUBT_MM => found.push(Estimate {
                    centre_mm: (left.x.mm() + x_mm) / 2.0,
                    doubt_mm: SENSED_DOUBT_MM / std::f64::consts::SQRT_2,
                    hits: vec![left.id.clone(), hit.id.clone()],
                }),
                other => {
                    found.extend(other.map(alone));
                    found.push(single(hit, x_mm - face_mm / 2.0, SENSED_DOUBT_MM));
                }
            },
            HitKind::Centre => found.push(single(hit, x_mm, SENSED_DOUBT_MM)),
            HitKind::Magnet => {
                found.push(single(hit, x_mm, (face_mm / 2.0 - BOARD_SCREW_EDGE_MM).max(SENSED_DOUBT_MM)));
            }
            HitKind::Wood => found.push(single(hit, x_mm, face_mm / 2.0)),
            HitKind::Metal if steel => found.push(single(hit, x_mm, face_mm / 2.0)),
            HitKind::Air | HitKind::ShallowWood | HitKind::Metal => {}
        }
    }
    found.extend(open_edge.map(alone));
    found
}

/// Joins words nearer to one another than a face, the nearest two first: one stud. Each weighs by its doubt. Of
/// two pairs as near, the left one is joined first.
fn merge(mut words: Vec<Estimate>, face_mm: f64) -> Vec<Estimate> {
    loop {
        let gaps = words.windows(2).map(|pair| match pair {
            [a, b] => b.centre_mm - a.centre_mm,
            _ => f64::INFINITY,
        });
        let nearest = gaps.enumerate().min_by(|(_, a), (_, b)| a.total_cmp(b));
        let Some((left, _)) = nearest.filter(|(_, gap_mm)| *gap_mm < face_mm) else { return words };
        let right = words.remove(left + 1);
        if let Some(word) = words.get_mut(left) {
            word.join(right);
        }
    }
}

impl Estimate {
    /// Takes another word on the same middle in.
    fn join(&mut self, mut other: Self) {
        let weight = |one: &Self| 1.0 / (one.doubt_mm * one.doubt_mm);
        let (own, others) = (weight(self), weight(&other));
        self.centre_mm = (self.centre_mm * own + other.centre_mm * others) / (own + others);
        self.doubt_mm = (1.0 / (own + others)).sqrt();
        self.hits.append(&mut other.hits);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn hit(id: &str, kind: HitKind, x_in: f64) -> PlacedHit {
        PlacedHit { id: Id::new(id), kind, x: Length::inches(x_in).quantised(), y: None }
    }

    fn centres_in(hits: &[PlacedHit]) -> Vec<f64> {
        let hits: Vec<_> = hits.iter().collect();
        let merged = merge(estimates(&hits, 38.1, false), 38.1);
        merged.iter().map(|one| (one.centre_mm / 25.4 * 1e6).round() / 1e6).collect()
    }

    #[test]
    fn two_edges_make_one_stud() {
        assert_eq!(
            centres_in(&[hit("a", HitKind::LeftEdge, 15.25), hit("b", HitKind::RightEdge, 16.75)]),
            [16.0]
        );
    }

    #[test]
    fn a_lone_edge_stands_half_a_face_off() {
        assert_eq!(centres_in(&[hit("a", HitKind::LeftEdge, 15.25)]), [16.0]);
        assert_eq!(centres_in(&[hit("a", HitKind::RightEdge, 16.75)]), [16.0]);
    }

    #[test]
    fn readings_of_one_stud_are_merged_and_surer() {
        let hits = [hit("a", HitKind::Centre, 15.9), hit("b", HitKind::Centre, 16.1)];
        assert_eq!(centres_in(&hits), [16.0]);
        let refs: Vec<_> = hits.iter().collect();
        assert!(merge(estimates(&refs, 38.1, false), 38.1)[0].doubt_mm < SENSED_DOUBT_MM);
    }

    #[test]
    fn the_nearest_readings_are_joined_first_from_whichever_side() {
        // A face is 1 1/2 in: the middle one is nearer to the right one, and then 1.85 in from the left one.
        let hits = [0.0, 1.3, 2.4].map(|x| hit("a", HitKind::Centre, 10.0 + x));
        assert_eq!(centres_in(&hits), [10.0, 11.85]);
        let mirrored = [2.4, 1.3, 0.0].map(|x| hit("a", HitKind::Centre, 20.0 - x));
        assert_eq!(centres_in(&mirrored), [18.15, 20.0]);
    }

    #[test]
    fn air_and_lath_are_no_studs() {
        assert!(centres_in(&[hit("a", HitKind::Air, 10.0), hit("b", HitKind::ShallowWood, 12.0)]).is_empty());
    }
}
