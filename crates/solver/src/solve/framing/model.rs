//! What is taken to be so of walls and of readings. All chosen where no source is named.

use crate::job::framing::{Layer, WallFraming};
use crate::job::wall::Wall;
use crate::subject::Id;
use crate::tolerance::SENSED_DOUBT_MM;

/// What walls are usually laid out at, from middle to middle, in millimetres: 16, 24 and 19.2 in (common practice, no
/// source, but for 16 and 24 in: IRC Table R602.3(5), read second-hand), 400, 450 and 600 mm (NHBC 6.3.9 and 6.3.12
/// and practice for 1200 mm boards, read).
pub(super) const SPACINGS_MM: [f64; 6] = [406.4, 609.6, 487.68, 400.0, 450.0, 600.0];

/// How often uprights follow no pattern at all (chosen: old and altered walls; fewer, and random
/// uprights are too often given a pattern).
pub(super) const NO_PATTERN: f64 = 0.15;

/// How often a sensor or a magnet tells of something else: a pipe, a strap, a cable (chosen: one in ten).
pub(super) const WRONG_SENSED: f64 = 0.1;

/// How often a probe in a bay meets wood that is no upright: a block, a brace (chosen; bays are ten times as wide as
/// uprights, so that one probe in fifty that meets wood is misled).
pub(super) const WOOD_BUT_NO_STUD: f64 = 0.002;

/// How often a probe in an upright is noted as air (chosen: a knot hole, a gap, a slip of the hand).
pub(super) const AIR_IN_STUD: f64 = 0.005;

/// How often an upright of the pattern is not there (chosen).
pub(super) const MISSING: f64 = 0.02;

/// How often an upright has a second ply at one side; as often at the other (chosen: the most at which two probes, each
/// to a side at the half face less a lag's drift, still settle a stud).
pub(super) const DOUBLED: f64 = 0.014;

/// How well the place of a bit or a magnet's pull is known: the face's edge is blurred by so much (chosen).
pub(super) const PLACE_BLUR_MM: f64 = 0.5;

/// How far apart uprights are on average where no pattern is (chosen: between the usual spacings).
pub(super) const MEAN_SPACING_MM: f64 = 450.0;

/// Uprights that are not of the pattern, in a millimetre of wall: one in 60 bays (chosen).
pub(super) const EXTRA_ANYWHERE: f64 = 3.7e-5;

/// The same beside a window or a door, where two plies stand within `BESIDE_OPENING_MM` (framing practice, read).
pub(super) const EXTRA_BESIDE_OPENING: f64 = 0.014;

/// How often the upright beside an opening is a pair, a full one and the one under the header (chosen).
pub(super) const PAIRED: f64 = 0.9;

/// How far from an opening's edge its uprights' middles may be: two plies, and a trim over the gap (chosen).
pub(super) const BESIDE_OPENING_MM: f64 = 110.0;

/// The same at an end of the wall, where the last upright stands within `BESIDE_END_MM` (chosen).
pub(super) const EXTRA_BESIDE_END: f64 = 0.012;

/// How far from the wall's end its last upright's middle may be (chosen: an upright's face and a gap).
pub(super) const BESIDE_END_MM: f64 = 60.0;

/// So many sensed hits of one upright tell of how many uprights there are; more were looked for there (chosen).
pub(super) const CHOSEN_BY_CHANCE: f64 = 3.0;

/// The width of a step of the starts that are tried (chosen: fine beside the doubt of a start).
pub(super) const START_STEP_MM: f64 = 2.0;

/// The widest cell of a stretch (chosen: fine beside the doubt of a hit).
pub(super) const WIDEST_CELL_MM: f64 = 1.6;

/// What is taken of one plane.
#[derive(Clone, Copy, Debug)]
pub(super) struct Model {
    pub(super) face_mm: f64,
    /// One standard deviation of a sensed edge or centre.
    pub(super) sensed_sd_mm: f64,
    pub(super) steel: bool,
}

impl Model {
    /// The model of a plane; `None` where there are no uprights.
    pub(super) fn of(wall: &Wall, on: Option<&Id>) -> Option<Self> {
        let framing = wall.framing_on(on).unwrap_or(&WallFraming::NotKnown);
        let face_mm = framing.face()?.mm();
        let plaster = wall.front_on(on).is_some_and(|front| front.layers.contains(&Layer::PlasterOnLath));
        // A 90 % doubt is 1.645 standard deviations. Detectors are unreliable on plaster (read, without a
        // figure): twice the doubt (chosen).
        let sensed_sd_mm = SENSED_DOUBT_MM / crate::tolerance::NINETY * if plaster { 2.0 } else { 1.0 };
        let usable = face_mm.is_finite() && face_mm > 0.0;
        usable.then_some(Self {
            // Held to what a face can be, so that a stretch stays a few hundred cells.
            face_mm: face_mm.clamp(10.0, 150.0),
            sensed_sd_mm,
            steel: matches!(framing, WallFraming::Steel(_)),
        })
    }

    /// The width of a cell: a face is a whole number of them.
    pub(super) fn cell_mm(&self) -> f64 {
        self.face_mm / (self.face_mm / WIDEST_CELL_MM).ceil()
    }

    /// How many cells a face is wide.
    pub(super) fn cells_of_face(&self) -> usize {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "from 7 to 94")]
        let cells = (self.face_mm / WIDEST_CELL_MM).ceil() as usize;
        cells
    }
}
