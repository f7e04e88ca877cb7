//! How each display is seen from each seat: the figures of `sight` for what was measured and placed.

use crate::geometry::{Point, Rect, Span};
use crate::handbook::viewing::{LEAST_FILLED, REVIEW_OFF};
use crate::job::Job;
use crate::job::feature::FeatureKind;
use crate::job::mount::Mount;
use crate::job::piece::{Piece, PieceKind};
use crate::job::seat::{Person, Posture, Seat};
use crate::job::wall::Wall;
use crate::ledger::{Blank, Given, Label};
use crate::plan::piece::PiecePlan;
use crate::plan::sight::{OverMantel, SeatSight, Seen};
use crate::plan::survey::Survey;
use crate::sight::acuity::{in_heights, lines_merge};
use crate::sight::angle::{distance_for, filled, highest, off_axis, up};
use crate::sight::eyes::{Eyes, Who};
use crate::sight::picture;
use crate::tolerance::{DEPTH_MM, SAME_PLACE_MM, STAND_OFF_MM};
use crate::units::{Angle, Length};

/// Every display as it is seen from every seat: seat by seat, in the order of the job.
pub(super) fn sight(job: &Job, wall: &Wall, survey: &Survey, pieces: &[PiecePlan]) -> Vec<SeatSight> {
    let mut all = Vec::new();
    for seat in &wall.seats {
        for at in pieces.iter().filter(|piece| piece.kind == PieceKind::Display) {
            let Some(piece) = job.piece(&at.id) else { continue };
            let mount = at.mount.as_ref().and_then(|mounted| job.mount(&mounted.id));
            all.push(one(seat, survey, at, piece, mount));
        }
    }
    all
}

fn one(seat: &Seat, survey: &Survey, at: &PiecePlan, piece: &Piece, mount: Option<&Mount>) -> SeatSight {
    let placed = survey.seats.iter().find(|placed| placed.id == seat.id);
    let read = placed.and_then(|placed| placed.x);
    let middle = at.frame.origin;
    let x = read.unwrap_or(middle.x);
    let eyes = eyes(seat);
    let (picture, of_case) = picture_on(piece, at);
    // Not measured each is taken to bring the picture nearer to the eyes: what is looked up at is higher then.
    let of_mount = mount.map(|mount| mount.stand_off.unwrap_or(Length::millimetres(STAND_OFF_MM)));
    let stand_off = of_mount.unwrap_or_default();
    let depth = piece.depth.unwrap_or(Length::millimetres(DEPTH_MM));
    let breast = survey.breast_at(middle.x, Some(middle.y)).map(|breast| breast.proud).unwrap_or_default();
    let proud = breast + stand_off + depth;
    let proud_assumed = piece.depth.is_none() || mount.is_some_and(|mount| mount.stand_off.is_none());
    let mut told = SeatSight {
        seat: seat.id.clone(),
        piece: at.id.clone(),
        posture: seat.posture(),
        eyes,
        eyes_at: Point::new(x, survey.floor.y_at(x) + eyes.height),
        from_wall: seat.distance,
        in_front: read.is_none(),
        assumed: at.assumed || placed.is_some_and(|placed| placed.assumed),
        picture,
        of_case,
        proud,
        depth,
        proud_assumed,
        seen: None,
    };
    let distance = seat.distance - proud;
    let is_seen = [picture.width(), picture.height(), distance].iter().all(|one| one.mm() > SAME_PLACE_MM);
    told.seen = is_seen.then(|| seen(&told, survey, at, piece, mount));
    told
}

fn eyes(seat: &Seat) -> Eyes {
    let who = match seat.person {
        None => Who::Anyone,
        Some(Person::Man) => Who::Man,
        Some(Person::Woman) => Who::Woman,
    };
    match (seat.eye_height, seat.posture()) {
        (Some(height), _) => Eyes::measured(height),
        (None, Posture::Standing) => Eyes::standing(who),
        (None, Posture::Seated) => Eyes::seated(who, seat.seat_height),
    }
}

/// The lit picture in the middle of its case, on end where the case is; or the case where the diagonal is not given or
/// gives no picture that lies within.
fn picture_on(piece: &Piece, at: &PiecePlan) -> (Rect, bool) {
    let (middle, case) = (at.frame.origin, at.outline);
    let about = |width, height| Rect::new(Span::about(middle.x, width), Span::about(middle.y, height));
    let lit = piece
        .diagonal
        .map(picture::picture)
        .map(|(wide, narrow)| if case.height() > case.width() { (narrow, wide) } else { (wide, narrow) });
    match lit.filter(|(width, height)| *width <= case.width() && *height <= case.height()) {
        Some((width, height)) => (about(width, height), false),
        None => (about(case.width(), case.height()), true),
    }
}

fn seen(told: &SeatSight, survey: &Survey, at: &PiecePlan, piece: &Piece, mount: Option<&Mount>) -> Seen {
    let ledger = &mut Blank;
    let SeatSight { picture, eyes, eyes_at, proud, .. } = told;
    let (middle, away) = (picture.centre(), told.from_wall - *proud);
    let floor = eyes_at.y - eyes.height;
    let taken = |is_taken: bool| if is_taken { Label::Assumed } else { Label::Measured };
    let of_picture = taken(told.assumed || told.of_case);
    let distance = Given::new(away, taken(told.proud_assumed));
    let aside = Given::new(eyes_at.x - middle.x, taken(told.in_front).weaker(of_picture));
    let above_eyes = |y: Length, eyes_y: Length| Given::new(y - eyes_y, eyes.label.weaker(of_picture));
    let side = |length: Length| Given::new(length, of_picture);
    let rise = above_eyes(middle.y, eyes_at.y);
    let tilt = up(ledger, rise, distance);
    let tilts = mount.and_then(|mount| mount.tilt.as_ref()).and_then(|one| match tilt < Angle::default() {
        true => one.up,
        false => one.down,
    });
    let lines =
        piece.lines.and_then(|lines| Some((lines, lines_merge(ledger, side(picture.height()), lines)?)));
    Seen {
        distance: away,
        heights: in_heights(away, picture.height()),
        horizontal: filled(ledger, side(picture.width()), aside, distance),
        up: tilt,
        up_lowest: up(ledger, above_eyes(middle.y, floor + eyes.low), distance),
        top: up(ledger, above_eyes(picture.top, eyes_at.y), distance),
        off_axis: off_axis(ledger, aside, rise, distance),
        fills_within: distance_for(ledger, side(picture.width()), LEAST_FILLED.given()) + *proud,
        lines: lines.map(|(lines, merge)| (lines, merge + *proud)),
        tilt,
        tilts,
        highest: highest(ledger, Given::new(eyes.height, eyes.label), distance, REVIEW_OFF.given()),
        mantel: over_mantel(survey, at, middle.y).map(|(mantel, lowest)| OverMantel {
            mantel,
            lowest: lowest - floor,
            up: up(ledger, above_eyes(lowest, eyes_at.y), distance),
        }),
    }
}

/// The highest mantel below a display, and how high the picture's middle is where the display stands on it.
fn over_mantel(survey: &Survey, at: &PiecePlan, middle: Length) -> Option<(crate::subject::Id, Length)> {
    let case = at.outline;
    let below = survey.features.iter().filter(|feature| {
        feature.kind == FeatureKind::Mantel
            && feature.rect.across().overlaps(case.across())
            && feature.rect.top.mm() <= case.bottom.mm() + SAME_PLACE_MM
    });
    let mantel = below.max_by(|a, b| a.rect.top.mm().total_cmp(&b.rect.top.mm()))?;
    Some((mantel.id.clone(), mantel.rect.top + (middle - case.bottom)))
}
