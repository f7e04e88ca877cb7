//! Random rooms: walls of every make, features of many kinds, hits of every kind, a display on a plate.

use proptest::prelude::*;
use strikeline_solver::job::feature::{Feature, FeatureKind};
use strikeline_solver::job::framing::{Masonry, SteelStuds, WallFraming, WoodStuds};
use strikeline_solver::job::hit::{Hit, HitKind};
use strikeline_solver::job::kit::{Measure, MeasureKind};
use strikeline_solver::job::mount::Mount;
use strikeline_solver::job::option::{CableWay, Hanging, Nudge, WallOption};
use strikeline_solver::job::piece::Piece;
use strikeline_solver::job::place::{
    AcrossDatum, AcrossExtent, AcrossReading, Sideways, UpDown, UprightDatum, UprightExtent, UprightReading,
};
use strikeline_solver::job::plate::{Plate, PlateHole, PlateSlot, Solid};
use strikeline_solver::job::port::{Carries, Port, ReadFrom};
use strikeline_solver::job::rule::{AcrossRule, Follow, PieceHeight, UprightRule};
use strikeline_solver::job::wall::{ControlLine, End, FloorReading, Wall};
use strikeline_solver::job::{Job, Units};
use strikeline_solver::plan::Plan;
use strikeline_solver::solve::solve;
use strikeline_solver::subject::Id;
use strikeline_solver::tape::Offset;
use strikeline_solver::units::{Length, LengthUnit};

/// Every kind of hit.
pub(crate) const HIT_KINDS: [HitKind; 8] = [
    HitKind::LeftEdge,
    HitKind::RightEdge,
    HitKind::Centre,
    HitKind::Magnet,
    HitKind::Wood,
    HitKind::Air,
    HitKind::ShallowWood,
    HitKind::Metal,
];

/// The kinds of feature that rooms have; the later ones more rarely.
pub(crate) const FEATURE_KINDS: [FeatureKind; 12] = [
    FeatureKind::Window,
    FeatureKind::Shelf,
    FeatureKind::Outlet,
    FeatureKind::Mantel,
    FeatureKind::Trim,
    FeatureKind::Door,
    FeatureKind::Baseboard,
    FeatureKind::Crown,
    FeatureKind::Curtain,
    FeatureKind::Switch,
    FeatureKind::Soffit,
    FeatureKind::ChimneyBreast,
];

/// A feature's numbers, in millimetres.
#[derive(Clone, Debug)]
pub(crate) struct Thing {
    pub(crate) kind: usize,
    /// From the wall's left end, or from its right.
    pub(crate) x: f64,
    pub(crate) from_right: bool,
    pub(crate) width: f64,
    pub(crate) bottom: f64,
    pub(crate) height: f64,
    pub(crate) proud: f64,
    /// How much higher its upper edge is at its right end; only a mantel's counts.
    pub(crate) crooked: f64,
}

/// A hit's numbers: near which upright, which kind, how far off, whether its height was noted.
#[derive(Clone, Debug)]
pub(crate) struct Found {
    pub(crate) upright: usize,
    pub(crate) kind: usize,
    pub(crate) off: f64,
    pub(crate) y: Option<f64>,
    pub(crate) from_right: bool,
}

/// A room's numbers, in millimetres.
#[derive(Clone, Debug)]
pub(crate) struct Room {
    pub(crate) width: f64,
    ends: (usize, usize),
    control_line: usize,
    floor: Option<f64>,
    pub(crate) things: Vec<Thing>,
    framing: usize,
    first_upright: f64,
    spacing: f64,
    pub(crate) hits: Vec<Found>,
    size: (f64, f64, f64),
    /// Which of the rules, and its own number.
    pub(crate) rules: (usize, f64, usize, f64),
    pub(crate) nudge: (f64, f64),
    drop: f64,
    play: (f64, f64),
    plate: Option<(f64, f64, f64, f64)>,
    slot: Option<(f64, f64)>,
    port: Option<(f64, f64)>,
    pub(crate) meter: bool,
    pub(crate) metric: bool,
}

fn thing() -> impl Strategy<Value = Thing> {
    let kind = prop_oneof![5 => 0..7_usize, 2 => 7..11_usize, 1 => Just(11_usize)];
    let across = (0.0..3600.0_f64, any::<bool>(), 40.0..900.0_f64);
    (kind, across, 0.0..1900.0_f64, 30.0..500.0_f64, 0.0..60.0_f64, -30.0..30.0_f64).prop_map(
        |(kind, (x, from_right, width), bottom, height, proud, crooked)| {
            // A breast stands from the floor to the ceiling and holds a display.
            let breast = FEATURE_KINDS[kind] == FeatureKind::ChimneyBreast;
            let (width, bottom, height) =
                if breast { (900.0 + width, 0.0, 2600.0) } else { (width, bottom, height) };
            Thing { kind, x, from_right, width, bottom, height, proud, crooked }
        },
    )
}

fn found() -> impl Strategy<Value = Found> {
    let y = prop::option::weighted(0.3, 200.0..2200.0_f64);
    let off = prop_oneof![3 => -7.0..7.0_f64, 1 => -40.0..40.0_f64];
    (0..9_usize, 0..HIT_KINDS.len(), off, y, any::<bool>())
        .prop_map(|(upright, kind, off, y, from_right)| Found { upright, kind, off, y, from_right })
}

/// Rooms with hits; `width` is the wall's.
pub(crate) fn rooms_of_width(width: std::ops::Range<f64>) -> impl Strategy<Value = Room> {
    let wall = (width, (0..3_usize, 0..3_usize), 0..3_usize, prop::option::weighted(0.8, -25.0..25.0_f64));
    let things = prop::collection::vec(thing(), 0..6);
    let behind = (0..5_usize, 0.0..420.0_f64, 380.0..620.0_f64, prop::collection::vec(found(), 0..40));
    let size = (700.0..1700.0_f64, 400.0..1000.0_f64, 900.0..1700.0_f64);
    let rules = (0..4_usize, 50.0..1500.0_f64, 0..4_usize, 20.0..200.0_f64);
    let nudge = (-40.0..40.0_f64, -40.0..40.0_f64);
    let play = prop_oneof![Just((0.0, 0.0)), (0.0..120.0_f64, 0.0..120.0_f64)];
    let plate =
        prop::option::weighted(0.85, (60.0..330.0_f64, 60.0..330.0_f64, 10.0..40.0_f64, 60.0..300.0_f64));
    let slot = prop::option::weighted(0.4, (-120.0..120.0_f64, 5.0..90.0_f64));
    let port = prop::option::weighted(0.7, (20.0..680.0_f64, 20.0..380.0_f64));
    let hung = (size, rules, nudge, (40.0..200.0_f64, play), plate, slot, port);
    (wall, things, behind, hung, any::<bool>(), any::<bool>()).prop_map(
        |(wall, things, behind, hung, meter, metric)| {
            let (width, ends, control_line, floor) = wall;
            let (framing, first_upright, spacing, hits) = behind;
            let (size, rules, nudge, (drop, play), plate, slot, port) = hung;
            Room {
                width,
                ends,
                control_line,
                floor,
                things,
                framing,
                first_upright,
                spacing,
                hits,
                size,
                rules,
                nudge,
                drop,
                play,
                plate,
                slot,
                port,
                meter,
                metric,
            }
        },
    )
}

/// Rooms with hits, on walls from narrow to wide.
pub(crate) fn rooms() -> impl Strategy<Value = Room> {
    rooms_of_width(2600.0..9000.0)
}

/// Rooms of which nobody knows what is behind the face, and no opening is to be cut.
pub(crate) fn rooms_without_hits() -> impl Strategy<Value = Room> {
    rooms().prop_map(|room| Room { hits: Vec::new(), port: None, ..room })
}

impl Room {
    /// The job, each length given in this unit.
    pub(crate) fn job_in(&self, unit: LengthUnit) -> Job {
        let mm = |value: f64| Length::millimetres(value).quantised().with_unit(unit);
        let across = |value: f64, from_right: bool| AcrossReading {
            from: if from_right { AcrossDatum::RightEnd } else { AcrossDatum::LeftEnd },
            ..AcrossReading::from_left(mm(value))
        };
        let feature = |(index, thing): (usize, &Thing)| {
            let kind = FEATURE_KINDS[thing.kind];
            let edge = Some(across(thing.x, thing.from_right));
            let (left, right) = if thing.from_right { (None, edge) } else { (edge, None) };
            let top = |y: f64| Some(UprightReading::from_floor(mm(y)));
            let above = thing.bottom + thing.height;
            let upright = if kind == FeatureKind::Mantel {
                UprightExtent {
                    top: top(above),
                    top_at_right: top(above + thing.crooked),
                    height: Some(mm(thing.height)),
                    ..UprightExtent::default()
                }
            } else {
                UprightExtent {
                    bottom: top(thing.bottom),
                    height: Some(mm(thing.height)),
                    ..UprightExtent::default()
                }
            };
            Feature {
                front: None,
                id: Id::new(&format!("feature-{index}")),
                kind,
                name: None,
                across: AcrossExtent { left, right, width: Some(mm(thing.width)), ..AcrossExtent::default() },
                upright,
                proud: Some(mm(thing.proud)),
                framing: None,
                notes: None,
            }
        };
        let hit = |(index, found): (usize, &Found)| {
            let kind = HIT_KINDS[found.kind];
            let upright =
                self.first_upright + self.spacing * f64::from(u32::try_from(found.upright).unwrap());
            let x = found.off
                + match kind {
                    HitKind::LeftEdge => upright - 19.05,
                    HitKind::RightEdge => upright + 19.05,
                    HitKind::Air => upright + self.spacing / 2.0,
                    _ => upright,
                };
            if !(0.0..=self.width).contains(&x) {
                return None;
            }
            let x = if found.from_right { self.width - x } else { x };
            Some(Hit {
                id: Id::new(&format!("hit-{index}")),
                kind,
                x: across(x, found.from_right),
                y: found.y.map(|y| UprightReading::from_floor(mm(y))),
            })
        };
        let ends = [End::InsideCorner, End::OutsideCorner, End::Open];
        let (x1, x2) = (100.0, self.width - 300.0);
        let floor = |id: &str, x: f64, down: f64| FloorReading {
            id: Id::new(id),
            at: AcrossReading::from_left(mm(x)),
            down: mm(down),
        };
        let wall = Wall {
            id: Id::new("wall-1"),
            width: Some(mm(self.width)),
            height: Some(mm(2600.0)),
            left_end: Some(ends[self.ends.0]),
            right_end: Some(ends[self.ends.1]),
            framing: [
                None,
                Some(WallFraming::Wood(WoodStuds::default())),
                Some(WallFraming::Steel(SteelStuds::default())),
                Some(WallFraming::NotKnown),
                Some(WallFraming::Masonry(Masonry::default())),
            ][self.framing]
                .clone(),
            control_line: [None, Some(ControlLine::Line), Some(ControlLine::LaserTicks)][self.control_line],
            floor: self.floor.map_or(Vec::new(), |fall| {
                vec![floor("floor-1", x1, 1200.0), floor("floor-2", x2, 1200.0 + fall)]
            }),
            features: self.things.iter().enumerate().map(feature).collect(),
            hits: self.hits.iter().enumerate().filter_map(hit).collect(),
            options: vec![WallOption {
                id: Id::new("option-1"),
                hangings: vec![self.hanging(&mm)],
                ..WallOption::default()
            }],
            ..Wall::default()
        };
        let mut job = Job {
            units: Some(if self.metric { Units::Millimetres } else { Units::Inches }),
            pieces: vec![self.display(&mm)],
            mounts: vec![self.mount(&mm)],
            walls: vec![wall],
            ..Job::new()
        };
        if self.meter {
            let kind = MeasureKind::DistanceMeter;
            job.kit.measures.push(Measure {
                id: Id::new("measure-1"),
                kind,
                doubt: None,
                class: None,
                length: None,
            });
        }
        job
    }

    /// The job in millimetres.
    pub(crate) fn job(&self) -> Job {
        self.job_in(LengthUnit::Millimetre)
    }

    fn hanging(&self, mm: &dyn Fn(f64) -> Length) -> Hanging {
        let (across, by, upright, gap) = self.rules;
        let mantel = self.things.iter().position(|thing| FEATURE_KINDS[thing.kind] == FeatureKind::Mantel);
        let beside = |from| AcrossRule::Beside { from, toward: None, by: mm(by) };
        let id = |index: usize| Id::new(&format!("feature-{index}"));
        let height =
            |from, toward, by: f64| UprightRule::Height { of: PieceHeight::Centre, from, toward, by: mm(by) };
        let over =
            |index: usize, follow| UprightRule::Gap { side: UpDown::Up, of: id(index), by: mm(gap), follow };
        Hanging {
            id: Id::new("hanging-1"),
            piece: Id::new("display-1"),
            mount: Some(Id::new("mount-1")),
            hung_on: None,
            across: match across {
                0 => AcrossRule::OnWall,
                1 => beside(AcrossDatum::LeftEnd),
                2 => beside(AcrossDatum::RightEnd),
                _ if self.things.is_empty() => AcrossRule::OnWall,
                _ => AcrossRule::On(id(0)),
            },
            upright: match (upright, mantel, self.floor) {
                (0, Some(mantel), _) => over(mantel, Follow::TrueLevel),
                (1, Some(mantel), _) => over(mantel, Follow::SplitTheDifference),
                (2, _, Some(_)) => height(UprightDatum::ControlLine, Some(UpDown::Up), gap),
                _ => height(UprightDatum::Floor, None, self.size.2),
            },
            nudge: Nudge { right: Offset(mm(self.nudge.0)), up: Offset(mm(self.nudge.1)) },
            holes: Vec::new(),
            cables: Vec::new(),
            way: CableWay::default(),
        }
    }

    fn display(&self, mm: &dyn Fn(f64) -> Length) -> Piece {
        let port = |(by, up): (f64, f64)| Port {
            id: Id::new("port-1"),
            name: None,
            carries: Carries::Data,
            from: Sideways::Left,
            read: ReadFrom::Front,
            by: mm(by),
            up: mm(up),
            points: None,
            reach: None,
        };
        Piece {
            id: Id::new("display-1"),
            width: Some(mm(self.size.0)),
            height: Some(mm(self.size.1)),
            ports: self.port.map(port).into_iter().collect(),
            ..Piece::default()
        }
    }

    fn mount(&self, mm: &dyn Fn(f64) -> Length) -> Mount {
        let plate = self.plate.map(|(left, right, down, apart)| {
            let hole = |id: &str, right: f64, down: f64| PlateHole {
                id: Id::new(id),
                right: Offset(mm(right)),
                down: mm(down),
                diameter: None,
            };
            let slot = |(right, travel): (f64, f64)| PlateSlot {
                id: Id::new("slot-1"),
                right: Offset(mm(right)),
                down: mm(down + apart / 2.0),
                travel: mm(travel),
                upright: false,
                width: None,
            };
            let solid = Solid {
                id: Id::new("solid-1"),
                left: Offset(mm(-left - 15.0)),
                right: Offset(mm(right + 15.0)),
                down: mm(0.0),
                height: mm(down * 2.0),
            };
            Plate {
                bearing: None,
                solids: vec![solid],
                thickness: None,
                holes: vec![
                    hole("hole-1", -left, down),
                    hole("hole-2", right, down),
                    hole("hole-3", -left, down + apart),
                    hole("hole-4", right, down + apart),
                ],
                slots: self.slot.map(slot).into_iter().collect(),
            }
        });
        Mount {
            id: Id::new("mount-1"),
            plate,
            drop: Some(mm(self.drop)),
            play_left: Some(mm(self.play.0)),
            play_right: Some(mm(self.play.1)),
            ..Mount::default()
        }
    }
}

/// The plan of a room's wall.
pub(crate) fn plan(job: &Job) -> Plan {
    solve(job, &Id::new("wall-1"), None)
}
