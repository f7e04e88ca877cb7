//! The twin: every place of the plate, size of the kit, set of holes and position of a slot, every case, no short way.

use crate::rooms::{Install, Into, plan};
use strikeline_solver::capacity::bite::Stack;
use strikeline_solver::capacity::case::Case;
use strikeline_solver::capacity::concrete::{ConcreteScrew, in_concrete};
use strikeline_solver::capacity::group::Group;
use strikeline_solver::capacity::hanging::{Hanging, HungMass, Manner};
use strikeline_solver::capacity::hold::Hold;
use strikeline_solver::capacity::opening::{Opening, Runs, takes};
use strikeline_solver::capacity::placing::{
    Carries, InFace, apart_in_concrete, apart_in_steel, carries, edge_in_steel, edge_needs, too_near_in_stud,
};
use strikeline_solver::capacity::posture::cases;
use strikeline_solver::capacity::screw::Screw;
use strikeline_solver::capacity::seat::{Edges, Seat};
use strikeline_solver::capacity::steel::{group_on_steel, in_steel};
use strikeline_solver::capacity::wood::in_wood;
use strikeline_solver::job::Job;
use strikeline_solver::job::kit::{FastenerKind, FastenerStock};
use strikeline_solver::ledger::{Blank, Given, Label};
use strikeline_solver::plan::framing::Framing;
use strikeline_solver::units::{Length, Ratio, Stress};

/// A set's worth, the first key first: holds, known, reserve, many where no case is known, chance, symmetric, few,
/// short.
pub(crate) type Worth = (bool, bool, i64, i64, i64, bool, i64, i64);

/// The display's middle, and the plate's top above it.
const MIDDLE_MM: (f64, f64) = (2000.0, 1500.0);
const RISE_MM: f64 = 170.0;

/// One size of the kit.
pub(crate) struct Size {
    stock: FastenerStock,
    screw: Option<Screw>,
    hold: Option<Hold>,
}

/// A fastener of a size in a hole.
#[derive(Clone, Copy)]
pub(crate) struct Stands {
    seat: Seat,
    chance: f64,
}

pub(crate) struct Twin<'a> {
    job: &'a Job,
    install: &'a Install,
    framing: Framing,
    pub(crate) sizes: Vec<Size>,
}

/// A place in the plate, from its middle and top.
type InPlate = (f64, f64);

impl<'a> Twin<'a> {
    pub(crate) fn of(job: &'a Job, install: &'a Install) -> Self {
        // What is known of the studs before anything hangs.
        let mut bare = job.clone();
        bare.walls[0].options[0].hangings.clear();
        let framing = plan(&bare).framing;
        let sizes = job.kit.fasteners.iter().map(|stock| size(install, stock)).collect();
        Self { job, install, framing, sizes }
    }

    fn plate(&self) -> &strikeline_solver::job::plate::Plate {
        self.job.mounts[0].plate.as_ref().unwrap()
    }

    /// Every place of the plate: at rest, at both ends of the play, and each that puts a hole, or a slot's middle or
    /// end, on a stud's centre.
    pub(crate) fn places(&self) -> Vec<f64> {
        let mount = &self.job.mounts[0];
        let least = -mount.play_left.map_or(0.0, Length::mm);
        let most = mount.play_right.map_or(0.0, Length::mm);
        let mut spots: Vec<f64> = self.plate().holes.iter().map(|hole| hole.right.length().mm()).collect();
        for slot in &self.plate().slots {
            let half = if slot.upright { 0.0 } else { slot.travel.mm() / 2.0 };
            spots.extend([-half, 0.0, half].map(|shift| slot.right.length().mm() + shift));
        }
        let mut places = vec![0.0, least, most];
        for spot in spots {
            for stud in &self.framing.studs {
                let offset = MIDDLE_MM.0 + spot - stud.centre.mm();
                if offset >= least && offset <= most && !places.iter().any(|one| (one - offset).abs() < 1e-9)
                {
                    places.push(offset);
                }
            }
        }
        places
    }

    /// Where a fastener can stand in each hole with the plate at a place.
    fn positions(&self, offset: f64) -> Vec<Vec<InPlate>> {
        let plate = self.plate();
        let mut all: Vec<Vec<InPlate>> =
            plate.holes.iter().map(|hole| vec![(hole.right.length().mm(), -hole.down.mm())]).collect();
        for slot in &plate.slots {
            let (x, y, half) = (slot.right.length().mm(), -slot.down.mm(), slot.travel.mm() / 2.0);
            let mut at = Vec::new();
            if slot.upright {
                at.extend([(x, y), (x, y - half), (x, y + half)]);
            } else {
                if self.framing.studs.is_empty() {
                    at.push((x, y));
                }
                at.extend([(x - half, y), (x + half, y)]);
                for stud in &self.framing.studs {
                    let along = stud.centre.mm() - (MIDDLE_MM.0 - offset + x);
                    if along.abs() <= half {
                        at.push((x + along, y));
                    }
                }
            }
            all.push(at);
        }
        all
    }

    /// A fastener of a size at a place in the plate; `None` where it cannot stand there.
    fn stands(&self, size: &Size, hole: usize, (x, y): InPlate, offset: f64) -> Option<Stands> {
        let plate = self.plate();
        let (runs, width) = match plate.holes.get(hole) {
            Some(round) => (Runs::Nowhere, round.diameter?),
            None => {
                let slot = &plate.slots[hole - plate.holes.len()];
                (if slot.upright { Runs::Upright } else { Runs::Sideways }, slot.width?)
            }
        };
        let diameter = size.stock.diameter?;
        takes(&Opening { width, runs }, diameter, size.stock.head?).ok()?;
        size.hold.as_ref()?;
        if matches!(self.install.into, Into::Concrete { .. }) {
            let seat = Seat::in_stud(x, y, hole, Carries::Both, runs);
            return Some(Stands { seat, chance: 1.0 });
        }
        let (wall_x, wall_y) = (MIDDLE_MM.0 - offset + x, MIDDLE_MM.1 + RISE_MM + y);
        let near = |stud: &strikeline_solver::plan::framing::Stud| (wall_x - stud.centre.mm()).abs();
        // 3/8 in to each edge.
        let has_room = |stud: &strikeline_solver::plan::framing::Stud| {
            near(stud) <= (stud.right - stud.left).mm() / 2.0 - 9.525 + 1e-6
        };
        let index = self.framing.studs.iter().position(has_room)?;
        let stud = &self.framing.studs[index];
        let face = if size.screw.is_some() { 1.5 } else { 1.25 };
        let at = InFace {
            face: Given::measured(Length::inches(face)),
            drift: Given::measured(Length::millimetres(near(stud))),
            doubt: Given::measured(Length::default()),
        };
        let chance = |need: Length| {
            let mm = Length::millimetres;
            self.framing.chance(None, mm(wall_x), mm(wall_y), need)
        };
        let Some(screw) = &size.screw else {
            edge_in_steel(&mut Blank, diameter, &at).ok()?;
            let seat = Seat::in_stud(x, y, index, Carries::Both, runs);
            return Some(Stands { seat, chance: chance(Length::millimetres(9.525)) });
        };
        carries(&mut Blank, screw, &at).ok()?;
        // The stud's doubt decides whether it carries across.
        let doubted = InFace { doubt: Given::measured(stud.doubt), ..at };
        let carry = carries(&mut Blank, screw, &doubted).unwrap_or(Carries::Along);
        let seat = Seat::in_stud(x, y, index, carry, runs);
        Some(Stands { seat, chance: chance(edge_needs(screw).0) })
    }

    fn cases(&self, offset: f64) -> Vec<Case> {
        let manner = self.install.reach.map_or(Manner::Fixed, |reach_mm| Manner::Arm {
            hinge_x_mm: offset,
            reach_mm,
            hinge_deg: None,
            head_deg: None,
            tilt_deg: 0.0,
            to_edge_mm: 0.0,
            lowers_mm: 0.0,
        });
        let hanging = Hanging {
            left_mm: offset - self.install.width / 2.0,
            right_mm: offset + self.install.width / 2.0,
            bottom_mm: -RISE_MM - self.install.height / 2.0,
            top_mm: -RISE_MM + self.install.height / 2.0,
            depth_mm: 60.0,
            stand_off_mm: 40.0,
            masses: vec![HungMass { kg: self.install.kg, right_mm: 0.0, y_mm: -RISE_MM, from_back_mm: 30.0 }],
            manner,
            pull_n: 220.0,
            label: Label::Measured,
        };
        cases(&hanging).unwrap()
    }

    fn too_near(&self, size: &Size, a: &Stands, b: &Stands) -> bool {
        let (across, along) = (a.seat.x_mm - b.seat.x_mm, a.seat.y_mm - b.seat.y_mm);
        match &size.screw {
            Some(screw) => {
                a.seat.stud == b.seat.stud
                    && too_near_in_stud(screw, true, Length::inches(1.5), across, along)
            }
            None => {
                let diameter = size.stock.diameter.unwrap();
                let needs = match self.install.into {
                    Into::Concrete { .. } => apart_in_concrete(&mut Blank, diameter),
                    _ => apart_in_steel(&mut Blank, diameter),
                };
                across.hypot(along) < needs.mm() - 1e-6
            }
        }
    }

    /// How much a set is worth. Case by case, fastener by fastener: no case is left out, none is skipped.
    fn worth(&self, size: &Size, offset: f64, cases: &[Case], set: &[Stands]) -> Worth {
        let seats: Vec<Seat> = set.iter().map(|one| one.seat).collect();
        let edges = Edges { left_mm: -250.0, right_mm: 250.0, bottom_mm: -340.0, top_mm: 0.0 };
        let allowed = match self.install.into {
            Into::Steel { .. } => group_on_steel(&seats, self.install.reach.is_some()).is_ok(),
            _ => true,
        };
        let group = Group::of(&mut Blank, &seats, &edges, Label::Measured).ok().filter(|_| allowed);
        let (mut worst, mut known) = (None, group.is_some());
        if let Some(group) = group {
            let told = group.demand(cases).by_case(size.hold.as_ref().unwrap());
            let each = told.iter().filter_map(|(_, found)| found.as_ref().ok()).map(|(_, used)| used.value);
            worst = each.reduce(f64::max);
            known = told.iter().all(|(_, found)| found.is_ok());
        }
        let reserve = worst.map_or(-1.0, |used| (1.0 / used - 1.0).min(1.0));
        let chance = set.iter().map(|one| one.chance).fold(1.0, f64::min);
        let symmetric = seats.iter().all(|a| {
            seats
                .iter()
                .any(|b| (2.0 * offset - a.x_mm - b.x_mm).abs() <= 1.0 && (a.y_mm - b.y_mm).abs() <= 1.0)
        });
        #[expect(clippy::cast_possible_truncation, reason = "small whole numbers")]
        let whole = |value: f64| value.round() as i64;
        (
            known && worst.is_some_and(|used| used <= 1.0),
            known,
            whole(reserve * 100.0),
            if worst.is_none() { i64::try_from(set.len()).unwrap() } else { 0 },
            whole(chance * 20.0),
            symmetric,
            -i64::try_from(set.len()).unwrap(),
            -whole(size.stock.length.unwrap().mm() * 1000.0),
        )
    }

    /// The worth of fasteners of a size at these places in these holes; `None` where one cannot stand there.
    pub(crate) fn worth_of(&self, size: usize, offset: f64, at: &[(usize, InPlate)]) -> Option<Worth> {
        let size = &self.sizes[size];
        let set: Option<Vec<Stands>> =
            at.iter().map(|(hole, in_plate)| self.stands(size, *hole, *in_plate, offset)).collect();
        let set = set?;
        let near = set
            .iter()
            .enumerate()
            .any(|(index, a)| set[index + 1..].iter().any(|b| self.too_near(size, a, b)));
        (!near && !set.is_empty()).then(|| self.worth(size, offset, &self.cases(offset), &set))
    }

    /// The best of all; with `only` at one place of the plate with these positions. How many sets were looked at.
    pub(crate) fn best(&self, only: Option<(f64, Vec<Vec<InPlate>>)>) -> (Option<Worth>, usize) {
        let (mut best, mut sets) = (None, 0);
        let places = only.as_ref().map_or_else(|| self.places(), |(offset, _)| vec![*offset]);
        for offset in places {
            let cases = self.cases(offset);
            let positions =
                only.as_ref().map_or_else(|| self.positions(offset), |(_, positions)| positions.clone());
            for size in &self.sizes {
                let stand = |(hole, at): (usize, &Vec<InPlate>)| -> Vec<Stands> {
                    at.iter().filter_map(|one| self.stands(size, hole, *one, offset)).collect()
                };
                let holes: Vec<Vec<Stands>> = positions.iter().enumerate().map(stand).collect();
                let mut all: Vec<Vec<Stands>> = vec![Vec::new()];
                for hole in holes.iter().filter(|hole| !hole.is_empty()) {
                    let mut more = Vec::new();
                    for set in &all {
                        for one in hole {
                            if !set.iter().any(|other| self.too_near(size, one, other)) {
                                more.push(set.iter().copied().chain([*one]).collect());
                            }
                        }
                    }
                    all.extend(more);
                }
                for set in all.iter().filter(|set| !set.is_empty()) {
                    sets += 1;
                    best = best.max(Some(self.worth(size, offset, &cases, set)));
                }
            }
        }
        (best, sets)
    }

    /// The most holes that one size can use at one place.
    pub(crate) fn usable(&self) -> usize {
        let count = |offset: f64| {
            let positions = self.positions(offset);
            let of = |size: &Size| {
                let each = positions.iter().enumerate();
                each.filter(|(hole, at)| {
                    at.iter().any(|one| self.stands(size, *hole, *one, offset).is_some())
                })
                .count()
            };
            self.sizes.iter().map(of).max().unwrap_or(0)
        };
        self.places().into_iter().map(count).max().unwrap_or(0)
    }
}

fn size(install: &Install, stock: &FastenerStock) -> Size {
    let (diameter, length) =
        (Given::measured(stock.diameter.unwrap()), Given::measured(stock.length.unwrap()));
    let sheet = Given::measured(Length::inches(0.075));
    let (screw, hold) = match install.into {
        Into::Lags { gap } => {
            let screw = match stock.kind {
                FastenerKind::Lag => Screw::lag(diameter, length),
                _ => Screw::wood_screw(diameter, length),
            };
            let screw = screw.unwrap();
            let stack = Stack {
                washer: Given::measured(Length::default()),
                plate: sheet,
                plate_bearing: Given::measured(Stress::psi(61_850.0)),
                gap: Given::measured(Length::inches(gap)),
                stud_depth: Given::measured(Length::inches(3.5)),
            };
            let hold = in_wood(&mut Blank, &screw, Given::chosen(Ratio::bare(0.36)), &stack).ok();
            (Some(screw), hold)
        }
        Into::Steel { mil, gap } => {
            let (steel, gap) = (Given::measured(Length::mils(mil)), Given::measured(Length::inches(gap)));
            (None, in_steel(&mut Blank, diameter, steel, gap).ok().map(Hold::Linear))
        }
        Into::Concrete { gap } => {
            let gap = Given::measured(Length::inches(gap));
            let screw = ConcreteScrew {
                diameter,
                depth: Given::measured(length.value - sheet.value - gap.value),
                gap,
                edge: Given::measured(Length::inches(100.0)),
                strength: None,
                normal_weight: true,
            };
            (None, in_concrete(&mut Blank, &screw).ok().map(Hold::Linear))
        }
    };
    Size { stock: stock.clone(), screw, hold }
}
