//! How each display is seen from each seat.

use crate::geometry::{Point, Rect};
use crate::job::seat::Posture;
use crate::sight::eyes::Eyes;
use crate::subject::Id;
use crate::units::{Angle, Length};

/// A display as it is seen from a seat.
#[derive(Clone, Debug, PartialEq)]
pub struct SeatSight {
    /// The seat.
    pub seat: Id,
    /// The display.
    pub piece: Id,
    /// How people are there.
    pub posture: Posture,
    /// How high their eyes are above the floor.
    pub eyes: Eyes,
    /// Their eyes as seen face-on against the wall; the floor is taken to go out from the wall level.
    pub eyes_at: Point,
    /// From the wall's own face to the eyes.
    pub from_wall: Length,
    /// Whether the seat is taken to be straight in front, since nobody read where along the wall it is.
    pub in_front: bool,
    /// Whether where the display or the seat is hangs on an assumed value.
    pub assumed: bool,
    /// The picture, upright: what is lit, or the whole case where the display's diagonal was not given.
    pub picture: Rect,
    /// Whether the case stands in for the picture.
    pub of_case: bool,
    /// From the wall's own face to the picture's: the chimney breast that the display is on, stand-off and depth.
    pub proud: Length,
    /// How deep the display is, behind its picture's face.
    pub depth: Length,
    /// Whether the stand-off or the depth in it was not measured, and taken on the safe side.
    pub proud_assumed: bool,
    /// What follows; `None` where the eyes are no farther from the wall than the picture is.
    pub seen: Option<Seen>,
}

/// How a picture is seen. Angles up are from level; below the eyes they are negative.
#[derive(Clone, Debug, PartialEq)]
pub struct Seen {
    /// From the eyes to the picture's face, square to the wall.
    pub distance: Length,
    /// The same in heights of the picture.
    pub heights: f64,
    /// The angle that the picture fills from side to side.
    pub horizontal: Angle,
    /// Up to its middle.
    pub up: Angle,
    /// Up to its middle for the lowest eyes of the range.
    pub up_lowest: Angle,
    /// Up to its top.
    pub top: Angle,
    /// Between the picture's perpendicular at its middle and the line from there to the eyes.
    pub off_axis: Angle,
    /// How far from the wall a seat in front of it fills the least published angle.
    pub fills_within: Length,
    /// How many lines the picture has, and how far from the wall they can no longer be told apart; `None` where nobody
    /// said how many.
    pub lines: Option<(u32, Length)>,
    /// How far the picture has to be tilted forward, where it hangs, to be square to the eyes in height; back is
    /// negative. Its middle at the height of the eyes needs none.
    pub tilt: Angle,
    /// How far its mount tilts that way; `None` where not given.
    pub tilts: Option<Angle>,
    /// How high above the floor its middle may be within the published angle up.
    pub highest: Length,
    /// What a mantel under it asks for.
    pub mantel: Option<OverMantel>,
}

/// What a mantel costs in neck: the display cannot hang lower than on it.
#[derive(Clone, Debug, PartialEq)]
pub struct OverMantel {
    /// The mantel.
    pub mantel: Id,
    /// How high above the floor the picture's middle is where the display stands on the mantel.
    pub lowest: Length,
    /// Up to its middle there.
    pub up: Angle,
}

/// A seat `seat-1` that looks up at a display `display-1`, for tests.
#[cfg(test)]
pub(crate) fn sample() -> SeatSight {
    use crate::geometry::Span;
    use crate::sight::eyes::Who;
    let inches = Length::inches;
    SeatSight {
        seat: Id::new("seat-1"),
        piece: Id::new("display-1"),
        posture: Posture::Seated,
        eyes: Eyes::seated(Who::Anyone, Some(inches(18.0))),
        eyes_at: Point::new(inches(60.0), inches(49.0)),
        from_wall: inches(108.0),
        in_front: false,
        assumed: false,
        picture: Rect::new(Span::new(inches(26.0), inches(70.0)), Span::new(inches(50.0), inches(76.0))),
        of_case: false,
        proud: inches(4.0),
        depth: inches(3.0),
        proud_assumed: false,
        seen: Some(Seen {
            distance: inches(104.0),
            heights: 2.7,
            horizontal: Angle::degrees(31.2),
            up: Angle::degrees(9.46),
            up_lowest: Angle::degrees(11.0),
            top: Angle::degrees(17.44),
            off_axis: Angle::degrees(20.0),
            fills_within: inches(109.0),
            lines: Some((2160, inches(52.0))),
            tilt: Angle::degrees(9.46),
            tilts: Some(Angle::degrees(5.0)),
            highest: inches(77.0),
            mantel: Some(OverMantel {
                mantel: Id::new("mantel-1"),
                lowest: inches(56.0),
                up: Angle::degrees(4.0),
            }),
        }),
    }
}
