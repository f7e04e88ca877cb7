//! A room of which no rule has anything to tell, to be spoilt in one thing by each rule's test.

use super::Rule;
use crate::capacity::group::Word;
use crate::finding::{Level, What};
use crate::geometry::{Direction, Frame, Point, Rect, Span};
use crate::job::Job;
use crate::job::feature::{Feature, FeatureKind};
use crate::job::framing::{Front, WallFraming, WoodStuds};
use crate::job::hidden::HiddenKind;
use crate::job::mount::{Mount, MountKind, Rating};
use crate::job::option::{CableWay, Hanging, Nudge, WallOption};
use crate::job::piece::{Pattern, Piece, PieceKind};
use crate::job::place::{AcrossExtent, UprightDatum, UprightExtent};
use crate::job::plate::{Plate, PlateHole};
use crate::job::port::{Carries, Port, ReadFrom};
use crate::job::rule::{AcrossRule, PieceHeight, UprightRule};
use crate::job::wall::{Beyond, End, Wall};
use crate::ledger::Given;
use crate::plan::Plan;
use crate::plan::cable::{CablePlan, Lead, OpeningSize, Way, WayBy};
use crate::plan::framing::{Framing, Known, Stud};
use crate::plan::mark::{How, Mark, MarkState, MarkWhat, Reading, ReadingDatum, Stage};
use crate::plan::piece::{Gaps, HolePlan, Meets, MountedPlan, PiecePlan, PortPlan, Wish};
use crate::plan::survey::{Floor, PlacedFeature, PlacedHidden, Survey};
use crate::plan::verdict::Fastening;
use crate::route::{Cost, Zone};
use crate::subject::Id;
use crate::tape::Offset;
use crate::units::{Angle, Length, Mass};

pub(super) fn mm(value: f64) -> Length {
    Length::millimetres(value)
}

pub(super) fn rect(across: (f64, f64), upright: (f64, f64)) -> Rect {
    Rect::new(Span::new(mm(across.0), mm(across.1)), Span::new(mm(upright.0), mm(upright.1)))
}

/// A job and its plan: one display of 1200 x 700 mm about (2000, 1500) on a bare wall of 4000 x 2400 mm, on
/// studs 400 mm apart, mirror-symmetric about x = 2000.
pub(super) struct Sample {
    pub(super) job: Job,
    pub(super) plan: Plan,
}

impl Sample {
    pub(super) fn good() -> Self {
        Self { job: job(), plan: plan() }
    }

    pub(super) fn wall(&self) -> &Wall {
        &self.job.walls[0]
    }

    pub(super) fn wall_mut(&mut self) -> &mut Wall {
        &mut self.job.walls[0]
    }

    pub(super) fn hanging(&mut self) -> &mut Hanging {
        &mut self.job.walls[0].options[0].hangings[0]
    }

    pub(super) fn mounted(&mut self) -> &mut MountedPlan {
        self.plan.pieces[0].mount.as_mut().unwrap()
    }

    /// What a rule tells: how grave, about what, and what.
    pub(super) fn told(&self, rule: Rule) -> Vec<(Level, String, What)> {
        let findings = rule(&self.job, self.wall(), &self.plan);
        findings
            .into_iter()
            .map(|finding| (finding.level, finding.subject.to_string(), finding.what))
            .collect()
    }

    /// Puts a feature on the wall.
    pub(super) fn feature(
        &mut self,
        id: &str,
        kind: FeatureKind,
        across: (f64, f64),
        upright: (f64, f64),
        proud: f64,
    ) -> &mut PlacedFeature {
        self.wall_mut().features.push(Feature {
            id: Id::new(id),
            kind,
            name: None,
            across: AcrossExtent::default(),
            upright: UprightExtent::default(),
            proud: Some(mm(proud)),
            framing: None,
            front: None,
            notes: None,
        });
        let rect = rect(across, upright);
        self.plan.survey.features.push(PlacedFeature {
            id: Id::new(id),
            kind,
            name: String::new(),
            rect,
            top_ends: (rect.top, rect.top),
            bottom_ends: (rect.bottom, rect.bottom),
            proud: mm(proud),
            on: None,
            assumed: false,
        });
        self.plan.survey.features.last_mut().unwrap()
    }

    /// Puts something into the wall behind the display's first hole.
    pub(super) fn hide_behind_first_hole(&mut self, id: &str, kind: HiddenKind) {
        self.plan.survey.hidden.push(PlacedHidden {
            id: Id::new(id),
            kind,
            name: String::new(),
            rect: rect((1780.0, 1820.0), (0.0, 2400.0)),
            assumed: false,
        });
        let hole = &mut self.mounted().holes[0];
        (hole.meets, hole.stud, hole.hidden) = (Meets::Hidden, None, Some(Id::new(id)));
    }

    /// Puts a seat in front of the display.
    pub(super) fn seat(&mut self) {
        self.plan.sight = vec![crate::plan::sight::sample()];
    }

    /// Hangs a second piece, without a mount of its own.
    pub(super) fn second_piece(
        &mut self,
        id: &str,
        kind: PieceKind,
        across: (f64, f64),
        upright: (f64, f64),
    ) {
        let outline = rect(across, upright);
        self.job.pieces.push(Piece {
            id: Id::new(id),
            kind,
            width: Some(outline.width()),
            height: Some(outline.height()),
            mass: Some(Mass::kilograms(3.0)),
            ports: Vec::new(),
            ..self.job.pieces[0].clone()
        });
        let hanging = Hanging {
            id: Id::new(&format!("{id}-hanging")),
            piece: Id::new(id),
            mount: None,
            ..self.hanging().clone()
        };
        self.plan.pieces.push(PiecePlan {
            id: Id::new(id),
            hanging: hanging.id.clone(),
            kind,
            name: String::new(),
            outline,
            ruled_centre: outline.centre(),
            frame: Frame { origin: outline.centre(), roll: Angle::default() },
            mount: None,
            ports: Vec::new(),
            cable: None,
            gaps: Gaps::default(),
            assumed: false,
        });
        self.wall_mut().options[0].hangings.push(hanging);
    }

    /// The hanging of the second piece.
    pub(super) fn second_hanging(&mut self) -> &mut Hanging {
        &mut self.job.walls[0].options[0].hangings[1]
    }
}

fn job() -> Job {
    Job {
        year_built: Some(2005),
        pieces: vec![display()],
        mounts: vec![mount()],
        walls: vec![wall()],
        ..Job::new()
    }
}

fn display() -> Piece {
    Piece {
        id: Id::new("display-1"),
        width: Some(mm(1200.0)),
        height: Some(mm(700.0)),
        depth: Some(mm(50.0)),
        mass: Some(Mass::kilograms(20.0)),
        pattern: Some(Pattern {
            across: mm(400.0),
            upright: mm(400.0),
            down: None,
            right: None,
            thread: None,
            insert_depth: None,
        }),
        ports: vec![Port {
            id: Id::new("port-1"),
            name: None,
            carries: Carries::Data,
            from: crate::job::place::Sideways::Left,
            read: ReadFrom::Front,
            by: mm(600.0),
            up: mm(350.0),
            points: None,
            reach: None,
        }],
        ..Piece::default()
    }
}

fn mount() -> Mount {
    let hole = |id: &str, right: f64, down: f64| PlateHole {
        id: Id::new(id),
        right: Offset(mm(right)),
        down: mm(down),
        diameter: None,
    };
    Mount {
        id: Id::new("mount-1"),
        plate: Some(Plate {
            solids: Vec::new(),
            thickness: None,
            bearing: None,
            holes: vec![hole("hole-1", -200.0, 20.0), hole("hole-2", 200.0, 20.0)],
            slots: Vec::new(),
        }),
        drop: Some(mm(200.0)),
        stand_off: Some(mm(30.0)),
        rating: Some(Rating {
            mass: Some(Mass::kilograms(25.0)),
            least_across: Some(mm(200.0)),
            most_across: Some(mm(600.0)),
            least_upright: Some(mm(200.0)),
            most_upright: Some(mm(400.0)),
        }),
        ..Mount::default()
    }
}

fn wall() -> Wall {
    let hanging = Hanging {
        id: Id::new("hanging-1"),
        piece: Id::new("display-1"),
        mount: Some(Id::new("mount-1")),
        hung_on: None,
        across: AcrossRule::OnWall,
        upright: UprightRule::Height {
            of: PieceHeight::Centre,
            from: UprightDatum::Floor,
            toward: None,
            by: mm(1500.0),
        },
        nudge: Nudge::default(),
        holes: Vec::new(),
        cables: Vec::new(),
        way: CableWay::default(),
    };
    Wall {
        id: Id::new("wall-1"),
        front: Some(Front { layers: Vec::new(), thickness: Some(mm(12.7)) }),
        framing: Some(WallFraming::Wood(WoodStuds::default())),
        beyond: Some(Beyond::Room),
        options: vec![WallOption {
            id: Id::new("option-1"),
            hangings: vec![hanging],
            ..WallOption::default()
        }],
        ..Wall::default()
    }
}

fn plan() -> Plan {
    let stud = |centre: f64| Stud {
        centre: mm(centre),
        left: mm(centre - 19.05),
        right: mm(centre + 19.05),
        doubt: mm(6.35),
        at_height: Length::millimetres(1500.0),
        probability: 0.98,
        known: Known::Inferred,
        lean: 0.0,
        lean_doubt: 0.0,
        hits: Vec::new(),
        on: None,
    };
    Plan {
        wall: Id::new("wall-1"),
        option: Some(Id::new("option-1")),
        style: Job::new().style(),
        survey: Survey {
            outline: rect((0.0, 4000.0), (0.0, 2400.0)),
            left_end: End::InsideCorner,
            right_end: End::InsideCorner,
            floor: Floor { readings: vec![Point::new(mm(100.0), mm(0.0)), Point::new(mm(3900.0), mm(0.0))] },
            control_line_y: None,
            features: Vec::new(),
            hidden: Vec::new(),
            hits: Vec::new(),
            humps: Vec::new(),
            seats: Vec::new(),
            misfits: Vec::new(),
        },
        facts: Vec::new(),
        framing: Framing {
            known: true,
            studs: vec![stud(1000.0), stud(1400.0), stud(1800.0), stud(2200.0), stud(2600.0), stud(3000.0)],
            planes: Vec::new(),
        },
        pieces: vec![piece_plan()],
        marks: marks(),
        sight: Vec::new(),
        assumed: Vec::new(),
        findings: Vec::new(),
        next: None,
    }
}

fn piece_plan() -> PiecePlan {
    let piece = Id::new("display-1");
    let outline = rect((1400.0, 2600.0), (1150.0, 1850.0));
    let plate = rect((1750.0, 2250.0), (1450.0, 1650.0));
    let hole = |id: &str, right: f64, stud: usize| HolePlan {
        id: Id::new(id),
        subject: piece.part(id),
        place: Point::new(mm(2000.0 + right), mm(1630.0)),
        in_plate: Point::new(mm(right), mm(-20.0)),
        meets: Meets::Stud,
        stud: Some(stud),
        hidden: None,
        chance: Some(0.9),
        met: false,
    };
    let mount = MountedPlan {
        id: Id::new("mount-1"),
        kind: MountKind::Flush,
        frame: Frame { origin: Point::new(mm(2000.0), mm(1650.0)), roll: Angle::default() },
        plate,
        solids: vec![plate],
        brackets: Vec::new(),
        offset: mm(0.0),
        holes: vec![hole("hole-1", -200.0, 2), hole("hole-2", 200.0, 3)],
        fastening: holding(),
        wish: Wish { studs: 2, most_studs: 2, left: None, right: None },
        entry: Some(rect((1975.0, 2025.0), (1300.0, 1376.0))),
        entry_wanted: None,
        held: None,
        assumed: false,
        holes_assumed: false,
        middle_assumed: false,
    };
    PiecePlan {
        hanging: Id::new("hanging-1"),
        kind: PieceKind::Display,
        name: String::new(),
        outline,
        ruled_centre: outline.centre(),
        frame: Frame { origin: outline.centre(), roll: Angle::default() },
        mount: Some(mount),
        ports: vec![PortPlan {
            id: Id::new("port-1"),
            name: String::new(),
            place: outline.centre(),
            used: true,
        }],
        cable: Some(cable()),
        gaps: Gaps::default(),
        assumed: false,
        id: piece,
    }
}

/// Fasteners that hold, of which the rules need no more.
fn holding() -> Fastening {
    let mut fastening = Fastening::unknown();
    let verdict = &mut fastening.verdict;
    (verdict.word, verdict.if_probed, verdict.as_stated) = (Word::Holds, Word::Holds, Word::Holds);
    fastening
}

fn marks() -> Vec<Mark> {
    let reading = Reading {
        from: ReadingDatum::LeftEnd,
        how: How::Corner,
        direction: Direction::Right,
        at: mm(1630.0),
        value: mm(1800.0),
        steps: 1134,
        taut_over: None,
        close: None,
    };
    let mark = |part: &str, stage: Stage, what: MarkWhat| Mark {
        id: Id::new("display-1").part(part),
        piece: Id::new("display-1"),
        stage,
        what,
        place: Some(Point::new(mm(1800.0), mm(1630.0))),
        line: None,
        outline: None,
        readings: vec![reading.clone()],
        assumed: false,
        on_tape: false,
        state: MarkState::ToDo,
        planned: None,
        is_needed: true,
    };
    let hole = Id::new("hole-1");
    let depth = Some(mm(31.75));
    vec![
        mark(
            "hole-1.probe",
            Stage::Probe,
            MarkWhat::Probe { hole: hole.clone(), depth, thickness_measured: true },
        ),
        mark("entry", Stage::Open, MarkWhat::Entry),
        mark("hole-1", Stage::Fix, MarkWhat::Hole { hole, first: true, held: false }),
    ]
}

/// One cable, in at the opening behind the display and straight down.
fn cable() -> CablePlan {
    let (outside, plug) = (Given::measured(mm(6.0)), Given::measured(mm(20.0)));
    let lead = Lead {
        id: Id::new("port-1"),
        port: Id::new("port-1"),
        beside: None,
        signal: None,
        outside,
        plug,
        bend: Given::measured(mm(20.0)),
        in_wall: Some(true),
        longest: None,
        length: Some(Given::measured(mm(1200.0))),
        slack_above: Given::measured(mm(406.4)),
        plug_reach: Given::measured(mm(0.0)),
        travel: Given::measured(mm(0.0)),
        needs: Some(mm(2000.0)),
        slack_below: Given::measured(mm(304.8)),
        cut_length: Some(mm(2000.0)),
        stock: None,
        stock_short: false,
        before_lift: false,
        depth_needed: Given::measured(mm(20.0)),
        plug_unknown: false,
    };
    let (entry, exit) = (rect((1950.0, 2000.0), (1450.0, 1526.0)), rect((1950.0, 2000.0), (368.0, 444.0)));
    let way = Way {
        by: WayBy::InWall,
        entry: Some(entry),
        exit,
        run: vec![entry.centre(), exit.centre()],
        cost: Cost { length_nm: 1_200_000_000, ..Cost::NONE },
        crosses: Vec::new(),
        against: Vec::new(),
        in_bay: true,
    };
    CablePlan {
        allowed: Some(true),
        way: Some(way),
        alternatives: Vec::new(),
        leads: vec![lead],
        power: Vec::new(),
        in_the_way: None,
        hidden: rect((1425.0, 2575.0), (1325.0, 1975.0)),
        hidden_swung: None,
        entry_zone: Zone::default(),
        exit_zone: Zone::default(),
        beside: None,
        framing_known: true,
        unknown: Vec::new(),
        may_bore: false,
        openings: [OpeningSize {
            width: Given::measured(mm(50.0)),
            height: Given::measured(mm(76.0)),
            depth: None,
        }; 2],
        bore: plug,
        stud: None,
        stand_off: Some(mm(30.0)),
    }
}
