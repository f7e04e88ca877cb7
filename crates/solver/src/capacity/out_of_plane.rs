//! What tips the plate off the wall, and the fasteners that hold it: two forces, the outermost used row on the
//! pulled side against the last used row on the pressed side.
//!
//! Always at least as much as a linear spread over all rows. Board crushes under a plate's edge, hence a row as
//! the pivot and not the edge, except where all used fasteners stand in one row.

use super::seat::{Edges, SAME_ROW_MM, Seat};
use super::why::{Known, Why};
use crate::ledger::{Amount, Label, Ledger, Put, Shown, Step};

/// Which side of the plate is pulled.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Side {
    /// The upper rows, pivoting about the lowest.
    Top,
    /// The lower rows, pivoting about the highest.
    Bottom,
    /// The columns on the right, pivoting about the leftmost.
    Right,
    /// The columns on the left, pivoting about the rightmost.
    Left,
}

/// A force straight out of the wall, at its place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Out {
    /// Newtons, zero or more.
    pub n: f64,
    /// To the right.
    pub x_mm: f64,
    /// Up, the highest it may act: where it levers the top.
    pub high_y_mm: f64,
    /// Up, the lowest it may act: where it levers the bottom.
    pub low_y_mm: f64,
}

/// How a group levers on one side.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Lever {
    pivot_mm: f64,
    /// From the pivot to the outermost row; 0 where there is none.
    lever_mm: f64,
    /// How many fasteners share it.
    sharing: f64,
}

/// What a load asks of one side.
#[derive(Clone, Copy, Debug, PartialEq, Default)]
struct OneSide {
    moment_nmm: f64,
    /// Of each fastener that stands outermost there.
    each_n: f64,
}

/// What a load asks of the top, the bottom, the right and the left.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Sides {
    four: [OneSide; 4],
    /// The weakest of what the load is worked out from.
    label: Label,
    /// The weakest of that, the places and the method.
    pub(super) pulls: Label,
}

const SIDES: [Side; 4] = [Side::Top, Side::Bottom, Side::Right, Side::Left];

/// How a group holds the plate to the wall: worked out once for a set of used fasteners.
#[derive(Clone, Debug, PartialEq)]
pub struct Levers {
    top: Lever,
    bottom: Lever,
    right: Lever,
    left: Lever,
    /// The weakest of the places.
    places: Label,
    /// For each seat, whether it stands in the outermost row of top, bottom, right, left.
    outermost: Vec<[bool; 4]>,
}

impl Levers {
    /// The levers of these seats on a plate of this outline. There is at least one seat, and places are finite;
    /// `places` is the weakest of their labels.
    #[must_use]
    pub fn of(seats: &[Seat], edges: &Edges, places: Label) -> Self {
        let (top, bottom) = levers(seats.iter().map(|seat| seat.y_mm), edges.bottom_mm, edges.top_mm);
        let (right, left) = levers(seats.iter().map(|seat| seat.x_mm), edges.left_mm, edges.right_mm);
        let (high_y, low_y) = ends(seats.iter().map(|seat| seat.y_mm));
        let (high_x, low_x) = ends(seats.iter().map(|seat| seat.x_mm));
        let outermost = seats
            .iter()
            .map(|seat| {
                [
                    seat.y_mm >= high_y - SAME_ROW_MM,
                    seat.y_mm <= low_y + SAME_ROW_MM,
                    seat.x_mm >= high_x - SAME_ROW_MM,
                    seat.x_mm <= low_x + SAME_ROW_MM,
                ]
            })
            .collect();
        Self { top, bottom, right, left, places, outermost }
    }

    /// What a load asks of each side: worked out once a load.
    ///
    /// `down_nmm` is the moment of all that bears down in front of the wall: each force times how far in front it
    /// acts. It pulls the top and would relieve the bottom, where it is therefore left out; so is a pull straight
    /// out where it acts beyond the pivot. `label` is the weakest of what the load is worked out from.
    ///
    /// # Errors
    /// Not known where all fasteners stand in one row at the plate's own edge and something tips it there.
    pub fn sides<L: Ledger>(
        &self,
        ledger: &mut L,
        down_nmm: f64,
        out: Option<&Out>,
        label: Label,
    ) -> Known<Sides> {
        let (n, x) = out.map_or((0.0, 0.0), |out| (out.n, out.x_mm));
        let (high, low) = out.map_or((0.0, 0.0), |out| (out.high_y_mm, out.low_y_mm));
        let tips = |arm_mm: f64| (n * arm_mm).max(0.0);
        let one = |lever: &Lever, moment_nmm: f64| {
            if moment_nmm <= 0.0 {
                Ok(OneSide::default())
            } else if lever.lever_mm <= SAME_ROW_MM {
                Err(Why::NoLever)
            } else {
                Ok(OneSide { moment_nmm, each_n: moment_nmm / (lever.lever_mm * lever.sharing) })
            }
        };
        let four = [
            one(&self.top, down_nmm.max(0.0) + tips(high - self.top.pivot_mm))?,
            one(&self.bottom, tips(self.bottom.pivot_mm - low))?,
            one(&self.right, tips(x - self.right.pivot_mm))?,
            one(&self.left, tips(self.left.pivot_mm - x))?,
        ];
        for ((side, lever), one) in SIDES.into_iter().zip(self.four()).zip(&four) {
            if one.moment_nmm > 0.0 {
                write_moment(ledger, side, lever, (down_nmm, out), one, (label, self.places));
            }
        }
        Ok(Sides { four, label, pulls: label.weaker(self.places).weaker(Label::Chosen) })
    }

    /// In the order of [`SIDES`].
    fn four(&self) -> [&Lever; 4] {
        [&self.top, &self.bottom, &self.right, &self.left]
    }

    /// The pull that a load asks of one fastener, newtons.
    ///
    /// Of two directions of an axis the larger counts; both axes are added, so that a pull counts twice (chosen, on
    /// the safe side).
    ///
    /// # Errors
    /// Where there is no such fastener.
    pub fn pull<L: Ledger>(&self, ledger: &mut L, seat: usize, sides: &Sides) -> Known<f64> {
        let stands_in = self.outermost.get(seat).ok_or(Why::NoFastener)?;
        let mut pulls = [0.0; 4];
        for ((pull, stands_in_it), side) in pulls.iter_mut().zip(stands_in).zip(&sides.four) {
            if *stands_in_it {
                *pull = side.each_n;
            }
        }
        let [top, bottom, right, left] = pulls;
        let pull = top.max(bottom) + right.max(left);
        for (((side, lever), one), each_n) in SIDES.into_iter().zip(self.four()).zip(&sides.four).zip(pulls) {
            if each_n > 0.0 {
                let moment = Amount::turning(one.moment_nmm);
                write_side(ledger, side, lever, (moment, sides.label), each_n, self.places);
            }
        }
        ledger.write(|| Step {
            name: "pull",
            formula: "T = max(T_top, T_bottom) + max(T_right, T_left)",
            put: [("T_top", top), ("T_bottom", bottom), ("T_right", right), ("T_left", left)]
                .map(|(symbol, value)| Put::result(symbol, Amount::new(value, Shown::Newton), sides.pulls))
                .to_vec(),
            result: Amount::new(pull, Shown::Newton),
            source: "both axes added, so that a pull counts twice (chosen, on the safe side)",
            label: sides.pulls,
        });
        Ok(pull)
    }
}

/// What a pivot is.
const PIVOT: &str = "what the plate turns about: the last row or column in use, or the plate's edge";

/// Writes down what turns the plate over one side.
fn write_moment<L: Ledger>(
    ledger: &mut L,
    side: Side,
    lever: &Lever,
    (down_nmm, out): (f64, Option<&Out>),
    one: &OneSide,
    (label, places): (Label, Label),
) {
    ledger.write(|| {
        let (name, formula, at_mm, at) = match (side, out) {
            (Side::Top, Some(out)) => (
                "turning over the lowest row in use",
                "M_top = M_z + max(F (y - y_p), 0)",
                out.high_y_mm,
                ("y", "y_p"),
            ),
            (Side::Top, None) => ("turning over the lowest row in use", "M_top = M_z", 0.0, ("y", "y_p")),
            (Side::Bottom, _) => (
                "turning over the highest row in use",
                "M_bottom = F (y_p - y)",
                out.map_or(0.0, |out| out.low_y_mm),
                ("y", "y_p"),
            ),
            (Side::Right, _) => (
                "turning over the leftmost column in use",
                "M_right = F (x - x_p)",
                out.map_or(0.0, |out| out.x_mm),
                ("x", "x_p"),
            ),
            (Side::Left, _) => (
                "turning over the rightmost column in use",
                "M_left = F (x_p - x)",
                out.map_or(0.0, |out| out.x_mm),
                ("x", "x_p"),
            ),
        };
        let mut put = Vec::new();
        if side == Side::Top {
            put.push(Put::result("M_z", Amount::turning(down_nmm), label));
        }
        if let Some(out) = out {
            let mm = |symbol, value, label| Put::new(symbol, Amount::new(value, Shown::Millimetre), label);
            put.push(Put::new("F", Amount::new(out.n, Shown::Newton), Label::Chosen));
            put.push(mm(at.0, at_mm, label).because("where the pull acts"));
            put.push(mm(at.1, lever.pivot_mm, places).because(PIVOT));
        }
        Step {
            name,
            formula,
            put,
            result: Amount::turning(one.moment_nmm),
            source: "statics, about the last row or column in use (about the plate's edge where there is one only)",
            label: label.weaker(places).worked_out(),
        }
    });
}

fn write_side<L: Ledger>(
    ledger: &mut L,
    side: Side,
    lever: &Lever,
    (moment, label): (Amount, Label),
    pull: f64,
    places: Label,
) {
    ledger.write(|| {
        let (name, formula, symbol, ends) = match side {
            Side::Top => {
                ("pull of the upper row", "T_top = M_top / (n h); h = y - y_p", "M_top", ("y", "y_p"))
            }
            Side::Bottom => (
                "pull of the lower row",
                "T_bottom = M_bottom / (n h); h = y_p - y",
                "M_bottom",
                ("y", "y_p"),
            ),
            Side::Right => (
                "pull of the right column",
                "T_right = M_right / (n h); h = x - x_p",
                "M_right",
                ("x", "x_p"),
            ),
            Side::Left => {
                ("pull of the left column", "T_left = M_left / (n h); h = x_p - x", "M_left", ("x", "x_p"))
            }
        };
        let way = if matches!(side, Side::Top | Side::Right) { 1.0 } else { -1.0 };
        let mm = |symbol, value| Put::new(symbol, Amount::new(value, Shown::Millimetre), places);
        Step {
            name,
            formula,
            put: vec![
                Put::result(symbol, moment, label),
                Put::new("n", Amount::bare(lever.sharing), Label::Chosen)
                    .because("how many stand outermost there: they alone are pulled, alike"),
                Put::result("h", Amount::new(lever.lever_mm, Shown::Millimetre), places),
                mm(ends.0, lever.pivot_mm + way * lever.lever_mm)
                    .because("where the outermost row or column stands"),
                mm(ends.1, lever.pivot_mm).because(PIVOT),
            ],
            result: Amount::new(pull, Shown::Newton),
            source: "statics: two forces, the outermost used row against the last on the pressed side",
            label: places.weaker(label).weaker(Label::Chosen),
        }
    });
}

/// The largest and the smallest.
fn ends(places: impl Iterator<Item = f64>) -> (f64, f64) {
    places.fold((f64::NEG_INFINITY, f64::INFINITY), |(high, low), at| (high.max(at), low.min(at)))
}

/// The lever toward larger places and that toward smaller ones.
fn levers(places: impl Iterator<Item = f64> + Clone, low_edge: f64, high_edge: f64) -> (Lever, Lever) {
    let (high, low) = ends(places.clone());
    let count =
        |in_row: &dyn Fn(f64) -> bool| places.clone().filter(|at| in_row(*at)).map(|_| 1.0).sum::<f64>();
    let one_row = high - low <= SAME_ROW_MM;
    let plus_pivot = if one_row { low_edge } else { low };
    let minus_pivot = if one_row { high_edge } else { high };
    let plus = Lever {
        pivot_mm: plus_pivot,
        lever_mm: (high - plus_pivot).max(0.0),
        sharing: count(&|at| at >= high - SAME_ROW_MM),
    };
    let minus = Lever {
        pivot_mm: minus_pivot,
        lever_mm: (minus_pivot - low).max(0.0),
        sharing: count(&|at| at <= low + SAME_ROW_MM),
    };
    (plus, minus)
}
