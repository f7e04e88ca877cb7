//! What a load in the plane of the plate asks of each fastener: the elastic method, with a stiffness along and
//! one across for each fastener, 1 or 0.
//!
//! Where a fastener carries along its stud only, turning is borne as up-and-down forces by two studs, and where
//! it stands within its stud is no lever: all fasteners of that stud act at their common middle.

use super::seat::{SAME_ROW_MM, Seat};
use super::why::{Known, Why};
use crate::ledger::{Amount, Label, Ledger, Put, Shown, Step};

/// A load in the plane of the plate.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlaneLoad {
    /// To the right, newtons.
    pub right_n: f64,
    /// Up, newtons.
    pub up_n: f64,
    /// About the origin of the places, anticlockwise, newton millimetres.
    pub turning_nmm: f64,
    /// The weakest of what it is worked out from.
    pub label: Label,
}

/// A group as the elastic method sees it: worked out once for a set of used fasteners.
#[derive(Clone, Debug, PartialEq)]
pub struct Plane {
    carriers: Vec<Carrier>,
    along: f64,
    across: f64,
    middle_x_mm: f64,
    middle_y_mm: f64,
    /// The sum of stiffness times lever squared.
    turn_mm2: f64,
    /// The weakest of the places.
    places: Label,
}

#[derive(Clone, Copy, Debug, PartialEq)]
struct Carrier {
    along: f64,
    across: f64,
    /// From the middle of what carries along.
    right_mm: f64,
    /// From the middle of what carries across.
    above_mm: f64,
}

/// A load as it spreads over a group: worked out once a load.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spread {
    load: PlaneLoad,
    /// About the group's middle.
    turning_nmm: f64,
    /// Up, for each stiffness of 1.
    up_n: f64,
    /// To the right, for each stiffness of 1.
    right_n: f64,
    /// For each millimetre of lever.
    n_per_mm: f64,
    /// The weakest of the load, the places and the method.
    shears: Label,
}

/// A turning that is none where nothing carries turning: 0.5 N m, 50 kg a millimetre aside (chosen).
const NO_TURNING_NMM: f64 = 500.0;

const SOURCE: &str = "the elastic (vector) method for eccentric fastener groups";

impl Plane {
    /// The group of these seats. Places are finite; `places` is the weakest of their labels.
    #[must_use]
    pub fn of<L: Ledger>(ledger: &mut L, seats: &[Seat], places: Label) -> Self {
        let stiffness = |carries: bool| if carries { 1.0 } else { 0.0 };
        let mut carriers: Vec<Carrier> = seats
            .iter()
            .map(|seat| Carrier {
                along: stiffness(seat.along),
                across: stiffness(seat.across),
                right_mm: lever_x_mm(seats, seat),
                above_mm: seat.y_mm,
            })
            .collect();
        let along: f64 = carriers.iter().map(|c| c.along).sum();
        let across: f64 = carriers.iter().map(|c| c.across).sum();
        let mean = |sum: f64, of: f64| if of > 0.0 { sum / of } else { 0.0 };
        let middle_x_mm = mean(carriers.iter().map(|c| c.along * c.right_mm).sum(), along);
        let middle_y_mm = mean(carriers.iter().map(|c| c.across * c.above_mm).sum(), across);
        let mut turn_mm2 = 0.0;
        for c in &mut carriers {
            c.right_mm -= middle_x_mm;
            c.above_mm -= middle_y_mm;
            turn_mm2 += c.along * c.right_mm * c.right_mm + c.across * c.above_mm * c.above_mm;
        }
        let plane = Self { carriers, along, across, middle_x_mm, middle_y_mm, turn_mm2, places };
        ledger.write(|| Step {
            name: "the group in its plane",
            formula: "J = sum(k_y (x - x_0)^2 + k_x (y - y_0)^2)",
            put: vec![
                Put::new("sum k_y", Amount::bare(along), Label::Chosen),
                Put::new("sum k_x", Amount::bare(across), Label::Chosen),
                mm("x_0", middle_x_mm, places),
                mm("y_0", middle_y_mm, places),
            ],
            result: Amount::new(turn_mm2, Shown::SquareMillimetre),
            source: SOURCE,
            label: places.weaker(Label::Chosen),
        });
        plane
    }

    /// How a load spreads over the group.
    ///
    /// # Errors
    /// Not known where nothing carries the load that way, or nothing carries its turning (up to 0.5 N m is none).
    pub fn spread<L: Ledger>(&self, ledger: &mut L, load: &PlaneLoad) -> Known<Spread> {
        if (load.up_n != 0.0 && self.along == 0.0) || (load.right_n != 0.0 && self.across == 0.0) {
            return Err(Why::NothingCarries);
        }
        let turning_nmm = load.turning_nmm - load.up_n * self.middle_x_mm + load.right_n * self.middle_y_mm;
        let n_per_mm = self.turned_by(turning_nmm)?;
        let each = |force: f64, stiffness: f64| if stiffness > 0.0 { force / stiffness } else { 0.0 };
        ledger.write(|| Step {
            name: "turning in the plane",
            formula: "M = M_origin - P_y x_0 + P_x y_0",
            put: vec![
                Put::result("M_origin", Amount::turning(load.turning_nmm), load.label),
                newton("P_y", load.up_n, load.label),
                newton("P_x", load.right_n, load.label),
                mm("x_0", self.middle_x_mm, self.places),
                mm("y_0", self.middle_y_mm, self.places),
            ],
            result: Amount::turning(turning_nmm),
            source: SOURCE,
            label: self.places.weaker(load.label).worked_out(),
        });
        Ok(Spread {
            load: *load,
            turning_nmm,
            up_n: each(load.up_n, self.along),
            right_n: each(load.right_n, self.across),
            n_per_mm,
            shears: self.places.weaker(load.label).weaker(Label::Chosen),
        })
    }

    /// The shear that a load asks of one fastener, in newtons: up, and to the right.
    ///
    /// # Errors
    /// Where there is no such fastener.
    pub fn shear<L: Ledger>(&self, ledger: &mut L, seat: usize, spread: &Spread) -> Known<(f64, f64)> {
        let carrier = self.carriers.get(seat).ok_or(Why::NoFastener)?;
        let up = carrier.along * (spread.up_n + spread.n_per_mm * carrier.right_mm);
        let right = carrier.across * (spread.right_n - spread.n_per_mm * carrier.above_mm);
        let turned = |lever: Put| {
            vec![
                Put::result("M", Amount::turning(spread.turning_nmm), spread.shears),
                lever,
                Put::result(
                    "J",
                    Amount::new(self.turn_mm2, Shown::SquareMillimetre),
                    self.places.weaker(Label::Chosen),
                ),
            ]
        };
        ledger.write(|| {
            let mut put = vec![
                Put::new("k_y", Amount::bare(carrier.along), Label::Chosen),
                newton("P_y", spread.load.up_n, spread.load.label),
                Put::result("sum k_y", Amount::bare(self.along), Label::Chosen),
            ];
            put.extend(turned(mm("x - x_0", carrier.right_mm, self.places)));
            Step {
                name: "shear along the stud",
                formula: "V_y = k_y (P_y / sum k_y + M (x - x_0) / J)",
                put,
                result: Amount::new(up, Shown::Newton),
                source: SOURCE,
                label: spread.shears,
            }
        });
        ledger.write(|| {
            let mut put = vec![
                Put::new("k_x", Amount::bare(carrier.across), Label::Chosen),
                newton("P_x", spread.load.right_n, spread.load.label),
                Put::result("sum k_x", Amount::bare(self.across), Label::Chosen),
            ];
            put.extend(turned(mm("y - y_0", carrier.above_mm, self.places)));
            Step {
                name: "shear across the stud",
                formula: "V_x = k_x (P_x / sum k_x - M (y - y_0) / J)",
                put,
                result: Amount::new(right, Shown::Newton),
                source: SOURCE,
                label: spread.shears,
            }
        });
        Ok((up, right))
    }

    /// Newtons that a turning asks for, for each millimetre of lever.
    fn turned_by(&self, turning_nmm: f64) -> Known<f64> {
        let stiff = self.along + self.across;
        if self.turn_mm2 > stiff * SAME_ROW_MM * SAME_ROW_MM {
            return Ok(turning_nmm / self.turn_mm2);
        }
        if turning_nmm.abs() <= NO_TURNING_NMM { Ok(0.0) } else { Err(Why::Turns { nmm: turning_nmm.abs() }) }
    }
}

/// Where a fastener's up-and-down force acts: at its own place; but where a fastener of its stud carries along
/// only, all of that stud that carry along act at their common middle (chosen: of two readings of mixed studs the
/// one that counts no lever within a stud).
fn lever_x_mm(seats: &[Seat], seat: &Seat) -> f64 {
    let beside = || seats.iter().filter(|other| other.stud == seat.stud && other.along);
    if !seat.along || beside().all(|other| other.across) {
        return seat.x_mm;
    }
    let (sum, count) = beside().fold((0.0, 0.0), |(sum, count), other| (sum + other.x_mm, count + 1.0));
    sum / count
}

fn mm(symbol: &'static str, value: f64, label: Label) -> Put {
    Put::new(symbol, Amount::new(value, Shown::Millimetre), label)
}

fn newton(symbol: &'static str, value: f64, label: Label) -> Put {
    Put::result(symbol, Amount::new(value, Shown::Newton), label)
}
