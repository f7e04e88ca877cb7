//! What follows, made by hand, so that a rule is tried without a solve.

use super::{mm, rect};
use crate::capacity::group::Word;
use crate::geometry::{Direction, Frame, Point};
use crate::job::Job;
use crate::job::mount::MountKind;
use crate::job::piece::PieceKind;
use crate::job::wall::End;
use crate::ledger::Given;
use crate::plan::Plan;
use crate::plan::cable::{CablePlan, Lead, OpeningSize, Way, WayBy};
use crate::plan::framing::{Framing, Known, Stud};
use crate::plan::mark::{How, Mark, MarkState, MarkWhat, Reading, ReadingDatum, Stage};
use crate::plan::piece::{Gaps, HolePlan, Meets, MountedPlan, PiecePlan, PortPlan, Wish};
use crate::plan::survey::{Floor, Survey};
use crate::plan::verdict::Fastening;
use crate::route::{Cost, Zone};
use crate::subject::Id;
use crate::units::{Angle, Length};

pub(super) fn plan() -> Plan {
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
