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

/// What x and y are.
const RIGHT: &str = "where each fastener stands, right of the plate's middle; on one stud with one that carries along only, their mean";
const UP: &str = "where each fastener stands, above the plate's top";

/// Why a stiffness is 1 or 0.
const STIFF: &str =
    "1 where a fastener carries that way, else 0: the plate is rigid and all fasteners are alike";

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
        plane.write(ledger, seats);
        plane
    }

    /// Writes down its middle and its levers.
    fn write<L: Ledger>(&self, ledger: &mut L, seats: &[Seat]) {
        let (label, places) = (self.places.weaker(Label::Chosen), self.places);
        let each = |k: &'static str, of: fn(&Carrier) -> f64| {
            self.carriers.iter().map(move |c| Put::new(k, Amount::bare(of(c)), Label::Chosen).because(STIFF))
        };
        let along = || each("k_y", |c| c.along);
        let across = || each("k_x", |c| c.across);
        let count = |symbol, value| Put::result(symbol, Amount::bare(value), Label::Chosen);
        for (name, formula, put, result) in [
            ("how many carry along the stud", "n_y = sum(k_y)", along().collect::<Vec<_>>(), self.along),
            ("how many carry across the stud", "n_x = sum(k_x)", across().collect(), self.across),
        ] {
            ledger.write(|| Step { name, formula, put, result: Amount::bare(result), source: SOURCE, label });
        }
        if self.along > 0.0 {
            ledger.write(|| Step {
                name: "the middle of what carries along the stud, right of the plate's middle",
                formula: "x_0 = sum(k_y x) / n_y",
                put: along()
                    .chain(seats.iter().map(|seat| mm("x", lever_x_mm(seats, seat), places).because(RIGHT)))
                    .chain([count("n_y", self.along)])
                    .collect(),
                result: Amount::new(self.middle_x_mm, Shown::Millimetre),
                source: SOURCE,
                label,
            });
        }
        if self.across > 0.0 {
            ledger.write(|| Step {
                name: "the middle of what carries across the stud, above the plate's top",
                formula: "y_0 = sum(k_x y) / n_x",
                put: across()
                    .chain(seats.iter().map(|seat| mm("y", seat.y_mm, places).because(UP)))
                    .chain([count("n_x", self.across)])
                    .collect(),
                result: Amount::new(self.middle_y_mm, Shown::Millimetre),
                source: SOURCE,
                label,
            });
        }
        ledger.write(|| Step {
            name: "what the group turns with",
            formula: if self.across > 0.0 {
                "J = sum(k_y r_x^2 + k_x r_y^2)"
            } else {
                "J = sum(k_y r_x^2)"
            },
            put: along()
                .chain(self.carriers.iter().map(|c| mm("r_x", c.right_mm, places)))
                .chain(across().filter(|_| self.across > 0.0))
                .chain(
                    self.carriers.iter().filter(|_| self.across > 0.0).map(|c| mm("r_y", c.above_mm, places)),
                )
                .collect(),
            result: Amount::new(self.turn_mm2, Shown::SquareMillimetre),
            source: "the elastic method: each fastener's lever from the middle, r_x = x - x_0 and r_y = y - y_0",
            label,
        });
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
        ledger.write(|| {
            let mut put = vec![
                Put::result("M_0", Amount::turning(load.turning_nmm), load.label),
                newton("P_y", load.up_n, load.label),
                mm("x_0", self.middle_x_mm, self.places),
            ];
            let is_sideways = load.right_n != 0.0;
            if is_sideways {
                put.push(newton("P_x", load.right_n, load.label));
                put.push(mm("y_0", self.middle_y_mm, self.places));
            }
            Step {
                name: "turning in the plane, about the group's middle",
                formula: if is_sideways { "M = M_0 - P_y x_0 + P_x y_0" } else { "M = M_0 - P_y x_0" },
                put,
                result: Amount::turning(turning_nmm),
                source: SOURCE,
                label: self.places.weaker(load.label).worked_out(),
            }
        });
        let n_per_mm = self.turned_by(turning_nmm)?;
        let each = |force: f64, stiffness: f64| if stiffness > 0.0 { force / stiffness } else { 0.0 };
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
        let turns = spread.n_per_mm != 0.0;
        let turned = |lever: &'static str, lever_mm: f64| {
            let label = self.places.weaker(Label::Chosen);
            let levers = vec![
                Put::result("M", Amount::turning(spread.turning_nmm), spread.shears),
                mm(lever, lever_mm, self.places),
                Put::result("J", Amount::new(self.turn_mm2, Shown::SquareMillimetre), label),
            ];
            levers.into_iter().filter(move |_| turns)
        };
        let direct = |n: &'static str, count: f64, p: &'static str, force: f64| {
            [newton(p, force, spread.load.label), Put::result(n, Amount::bare(count), Label::Chosen)]
        };
        ledger.write(|| Step {
            name: "shear along the stud asked of it",
            formula: match (carrier.along > 0.0, turns) {
                (false, _) => "V_y = 0",
                (true, false) => "V_y = P_y / n_y",
                (true, true) => "V_y = P_y / n_y + M r_x / J",
            },
            put: direct("n_y", self.along, "P_y", spread.load.up_n)
                .into_iter()
                .chain(turned("r_x", carrier.right_mm))
                .filter(|_| carrier.along > 0.0)
                .collect(),
            result: Amount::new(up, Shown::Newton),
            source: if carrier.along > 0.0 { SOURCE } else { "its slot lets it slide that way" },
            label: spread.shears,
        });
        let is_sideways = spread.load.right_n != 0.0;
        ledger.write(|| Step {
            name: "shear across the stud asked of it",
            formula: match (carrier.across > 0.0, is_sideways, turns) {
                (false, ..) | (true, false, false) => "V_x = 0",
                (true, false, true) => "V_x = -M r_y / J",
                (true, true, false) => "V_x = P_x / n_x",
                (true, true, true) => "V_x = P_x / n_x - M r_y / J",
            },
            put: direct("n_x", self.across, "P_x", spread.load.right_n)
                .into_iter()
                .filter(|_| is_sideways)
                .chain(turned("r_y", carrier.above_mm))
                .filter(|_| carrier.across > 0.0)
                .collect(),
            result: Amount::new(right, Shown::Newton),
            source: if carrier.across > 0.0 {
                SOURCE
            } else {
                "it carries along the stud only: by its slot, or a lag in a face too narrow for a load across"
            },
            label: spread.shears,
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
