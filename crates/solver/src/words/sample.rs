//! A small plan built by hand, and what every sentence is held to. For the tests of words.

use crate::geometry::{Axis, Direction, Frame, Point, Rect, Span};
use crate::job::feature::FeatureKind;
use crate::job::hidden::HiddenKind;
use crate::job::hit::HitKind;
use crate::job::mount::MountKind;
use crate::job::piece::PieceKind;
use crate::job::wall::End;
use crate::plan::framing::{Framing, Known, Stud};
use crate::plan::mark::{Close, How, Mark, MarkState, MarkWhat, Reading, ReadingDatum, Stage};
use crate::plan::piece::{Gap, Gaps, HolePlan, Meets, MountedPlan, PiecePlan, PortPlan, Wish};
use crate::plan::survey::{Floor, PlacedFeature, PlacedHidden, PlacedHit, PlacedHump, PlacedSeat, Survey};
use crate::plan::{Assumed, AssumedWhat, Next, Plan};
use crate::subject::Id;
use crate::tape::{Graduation, Style, close_signed, read_length};
use crate::units::{Length, LengthUnit};

const STYLE: Style = Style { graduation: Graduation::Sixteenth, feet_inches: false };

/// A length as written, in inches.
pub(super) fn inches(text: &str) -> Length {
    read_length(text.trim_start_matches('-'), LengthUnit::Inch)
        .map(|length| if text.starts_with('-') { -length } else { length })
        .unwrap()
}

fn point(x: &str, y: &str) -> Point {
    Point::new(inches(x), inches(y))
}

fn rect(left: &str, right: &str, bottom: &str, top: &str) -> Rect {
    Rect::new(Span::new(inches(left), inches(right)), Span::new(inches(bottom), inches(top)))
}

/// A reading without a close, taken at 0 of the other axis.
pub(super) fn reading(from: ReadingDatum, how: How, direction: Direction, value: &str) -> Reading {
    let value = inches(value);
    let (at, steps) = (Length::default(), STYLE.steps(value));
    Reading { from, how, direction, at, value, steps, taut_over: None, close: None }
}

/// The reading with a close to a datum that is `span` from its own.
pub(super) fn with_close(reading: Reading, from: ReadingDatum, span: &str) -> Reading {
    let closing = close_signed(reading.value, inches(span), STYLE);
    let value = inches(span) - reading.value;
    let close = Close { from, direction: reading.direction.opposite(), value, closing };
    Reading { close: Some(close), ..reading }
}

/// The display's width assumed to be 40 in.
pub(super) fn assumed_width() -> Assumed {
    let subject = Id::new("display-1").whole();
    Assumed { subject, what: AssumedWhat::Width(inches("40")), moves_marks: true }
}

/// Holds a text to what any sentence is: not empty, a capital first and a full stop last, no type's own text.
pub(super) fn well_told(text: &str) {
    assert!(text.ends_with('.'), "no full stop: {text}");
    assert!(!text.starts_with(char::is_lowercase), "no capital: {text}");
    assert_eq!(text.trim(), text, "spaces around it: {text}");
    for raw in ["  ", "..", "{", "}", "::", "_", "Some", "None", "Length", "Id(", "\n"] {
        assert!(!text.contains(raw), "{raw:?} in: {text}");
    }
}

/// A display on a tilting mount, 24 1/4 in from the left corner, over a mantel, with every kind of mark.
pub(super) fn plan() -> Plan {
    Plan {
        wall: Id::new("wall-1"),
        option: Some(Id::new("option-1")),
        style: STYLE,
        survey: survey(),
        framing: Framing { known: true, studs: vec![stud("16 1/4"), stud("32 1/4")], planes: Vec::new() },
        facts: Vec::new(),
        pieces: vec![display()],
        marks: marks(),
        sight: Vec::new(),
        assumed: Vec::new(),
        findings: Vec::new(),
        next: Some(Next::Take(Id::new("display-1").part("hole-1.probe"))),
    }
}

/// The same plan and a seat that looks at its display.
pub(super) fn plan_with_seat() -> Plan {
    let mut plan = plan();
    plan.survey.seats[0].name = "Sofa".to_owned();
    plan.sight.push(crate::plan::sight::sample());
    plan
}

fn survey() -> Survey {
    let feature = |id: &str, kind: FeatureKind, name: &str, rect: Rect, proud: &str| PlacedFeature {
        id: Id::new(id),
        kind,
        name: name.to_owned(),
        rect,
        top_ends: (rect.top, rect.top),
        bottom_ends: (rect.bottom, rect.bottom),
        proud: inches(proud),
        on: None,
        assumed: false,
    };
    let pipe = rect("50", "51", "0", "96");
    Survey {
        outline: rect("0", "144", "0", "96"),
        left_end: End::InsideCorner,
        right_end: End::InsideCorner,
        floor: Floor::default(),
        control_line_y: None,
        features: vec![
            feature("door-1", FeatureKind::Door, "Garden door", rect("100", "136", "0", "82"), "3/4"),
            feature("window-1", FeatureKind::Window, "", rect("60", "90", "40", "80"), "0"),
            feature("mantel-1", FeatureKind::Mantel, "", rect("0", "56", "22", "25"), "8"),
            feature("baseboard-1", FeatureKind::Baseboard, "", rect("0", "144", "0", "5"), "1/2"),
        ],
        hidden: vec![PlacedHidden {
            id: Id::new("pipe-1"),
            kind: HiddenKind::Pipe,
            name: String::new(),
            rect: pipe,
            assumed: false,
        }],
        hits: vec![PlacedHit { id: Id::new("hit-1"), kind: HitKind::Magnet, x: inches("16"), y: None }],
        humps: vec![PlacedHump { id: Id::new("hump-1"), x: inches("24"), y: None, proud: inches("1/4") }],
        seats: vec![PlacedSeat { id: Id::new("seat-1"), name: String::new(), x: None, assumed: false }],
        misfits: Vec::new(),
    }
}

fn stud(centre: &str) -> Stud {
    let (centre, half) = (inches(centre), inches("3/4"));
    Stud {
        centre,
        left: centre - half,
        right: centre + half,
        doubt: inches("1/4"),
        at_height: Length::millimetres(1500.0),
        probability: 0.98,
        known: Known::Inferred,
        lean: 0.0,
        lean_doubt: 0.0,
        hits: Vec::new(),
        on: None,
    }
}

fn display() -> PiecePlan {
    let outline = rect("1 1/4", "49 3/4", "29 3/4", "58");
    let gap = |to, from: &str, other: &str| Some(Gap { to, from: inches(from), other: inches(other) });
    PiecePlan {
        id: Id::new("display-1"),
        hanging: Id::new("hanging-1"),
        kind: PieceKind::Display,
        name: String::new(),
        outline,
        ruled_centre: outline.centre(),
        frame: Frame { origin: outline.centre(), roll: Default::default() },
        mount: Some(mount()),
        ports: vec![PortPlan {
            id: Id::new("port-1"),
            name: String::new(),
            place: point("30", "40"),
            used: true,
        }],
        cable: None,
        gaps: Gaps {
            left: gap(Id::new("wall-1").part("left"), "1 1/4", "1 1/4"),
            right: None,
            below: gap(Id::new("mantel-1").part("top"), "4", "4 1/4"),
        },
        assumed: false,
    }
}

fn mount() -> MountedPlan {
    let plate = rect("16 1/4", "32 1/4", "44", "52");
    let hole = |id: &str, right: &str, stud: usize| {
        let in_plate = point(right, "-1 1/2");
        let place = Point::new(inches("24 1/4") + in_plate.x, inches("52") + in_plate.y);
        let subject = Id::new("display-1").part(id);
        HolePlan {
            id: Id::new(id),
            subject,
            place,
            in_plate,
            meets: Meets::Stud,
            stud: Some(stud),
            hidden: None,
            chance: Some(0.9),
            met: false,
        }
    };
    MountedPlan {
        id: Id::new("mount-1"),
        kind: MountKind::Tilting,
        frame: Frame { origin: point("24 1/4", "52"), roll: Default::default() },
        plate,
        solids: vec![plate],
        brackets: Vec::new(),
        offset: inches("1 1/4"),
        holes: vec![hole("hole-1", "-8", 0), hole("hole-2", "8", 1)],
        fastening: crate::plan::verdict::Fastening::unknown(),
        wish: Wish { studs: 2, most_studs: 2, left: None, right: None },
        entry: None,
        entry_wanted: None,
        held: None,
        assumed: false,
        holes_assumed: false,
        middle_assumed: false,
    }
}

fn marks() -> Vec<Mark> {
    let mark = |part: &str, stage: Stage, what: MarkWhat| Mark {
        id: Id::new("display-1").part(part),
        piece: Id::new("display-1"),
        stage,
        what,
        place: None,
        line: None,
        outline: None,
        readings: Vec::new(),
        assumed: false,
        on_tape: false,
        state: MarkState::ToDo,
        planned: None,
        is_needed: true,
    };
    let from_line = |line: &str, direction: Direction, value: &str| {
        reading(ReadingDatum::Struck(Id::new("display-1").part(line)), How::Line, direction, value)
    };
    let from_both = |across: Direction| {
        let (level, centre) = ("level_line", "centre_line");
        vec![from_line(level, Direction::Down, "1 1/2"), from_line(centre, across, "8")]
    };
    let from_floor = |at: &str, value: &str| {
        let floor = reading(ReadingDatum::Floor, How::Floor, Direction::Up, value);
        assert_eq!(floor.direction.axis(), Axis::Upright);
        Reading { at: inches(at), ..floor }
    };
    let centre = reading(ReadingDatum::LeftEnd, How::Corner, Direction::Right, "24 1/4");
    let trim = ReadingDatum::Edge(Id::new("door-1").part("left"));
    let sweep = |y: &str| Some((point("-15", y), point("66", y)));
    let (hole_1, hole_2) = (Id::new("hole-1"), Id::new("hole-2"));
    let probed =
        MarkWhat::Probe { hole: hole_1.clone(), depth: Some(inches("1 3/8")), thickness_measured: false };
    vec![
        Mark { line: sweep("50"), ..mark("sweep_upper", Stage::Find, MarkWhat::Sweep { upper: true }) },
        Mark { line: sweep("45"), ..mark("sweep_lower", Stage::Find, MarkWhat::Sweep { upper: false }) },
        Mark {
            place: Some(point("1 1/4", "58")),
            on_tape: true,
            state: MarkState::ToDo,
            planned: None,
            is_needed: true,
            ..mark("corner_top_left", Stage::Agree, MarkWhat::Corner { top: true, left: true })
        },
        Mark {
            line: Some((point("12 1/4", "52"), point("36 1/4", "52"))),
            readings: vec![from_floor("12 1/4", "52"), from_floor("36 1/4", "52 1/4")],
            ..mark("level_line", Stage::Level, MarkWhat::LevelLine)
        },
        Mark {
            place: Some(point("24 1/4", "52")),
            readings: vec![with_close(centre, trim, "100")],
            ..mark("centre_line", Stage::Level, MarkWhat::CentreLine)
        },
        Mark {
            readings: vec![from_line("centre_line", Direction::Right, "1 1/4")],
            ..mark("piece_centre", Stage::Level, MarkWhat::PieceCentre)
        },
        Mark { place: Some(point("60", "52")), ..mark("help", Stage::Level, MarkWhat::Help) },
        mark("make_safe", Stage::Probe, MarkWhat::MakeSafe),
        Mark { readings: from_both(Direction::Left), ..mark("hole-1.probe", Stage::Probe, probed) },
        mark("look", Stage::Probe, MarkWhat::Look),
        Mark {
            outline: Some(rect("22", "26", "46", "49")),
            readings: from_both(Direction::Left),
            ..mark("entry", Stage::Open, MarkWhat::Entry)
        },
        Mark {
            readings: from_both(Direction::Left),
            ..mark("hole-1", Stage::Fix, MarkWhat::Hole { hole: hole_1, first: true, held: false })
        },
        Mark {
            readings: from_both(Direction::Right),
            ..mark("hole-2", Stage::Fix, MarkWhat::Hole { hole: hole_2, first: false, held: false })
        },
        mark("feed", Stage::Hang, MarkWhat::Feed),
        mark("plug", Stage::Hang, MarkWhat::Plug),
        mark("lift_on", Stage::Hang, MarkWhat::LiftOn),
        mark("test", Stage::Hang, MarkWhat::Test),
        mark("check", Stage::Hang, MarkWhat::Check),
    ]
}

/// Puts a lag screw into a hole of the display's plate.
pub(super) fn fasten(plan: &mut Plan, hole: &str) {
    use crate::job::kit::FastenerKind;
    use crate::plan::verdict::{BitFrom, FastenerPlan};
    let mount = plan.pieces[0].mount.as_mut().unwrap();
    mount.fastening.fasteners.push(FastenerPlan {
        hole: Id::new(hole),
        subject: Id::new("display-1").part(hole),
        stock: Id::new("lag-1"),
        kind: FastenerKind::Lag,
        diameter: inches("5/16"),
        length: inches("3"),
        lead: Some(inches("11/64")),
        bit: BitFrom::UsualSet,
        shank: None,
        depth: Some(inches("2 3/4")),
        by_hand: false,
        asked: None,
    });
}
