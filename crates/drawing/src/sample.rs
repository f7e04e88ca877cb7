//! Two rooms built by hand, for this crate's tests: an inch job with a mantel and a metric one without.

use strikeline_solver::geometry::{Direction, Frame, Point, Rect, Span};
use strikeline_solver::job::feature::FeatureKind;
use strikeline_solver::job::hidden::HiddenKind;
use strikeline_solver::job::hit::HitKind;
use strikeline_solver::job::mount::MountKind;
use strikeline_solver::job::piece::PieceKind;
use strikeline_solver::job::wall::{End, Wall};
use strikeline_solver::job::{Job, Units};
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::framing::{Framing, Known, Stud};
use strikeline_solver::plan::mark::{Close, How, Mark, MarkState, MarkWhat, Reading, ReadingDatum, Stage};
use strikeline_solver::plan::piece::{Gap, Gaps, HolePlan, Meets, MountedPlan, PiecePlan, PortPlan, Wish};
use strikeline_solver::plan::survey::{Floor, PlacedFeature, PlacedHidden, PlacedHit, Survey};
use strikeline_solver::subject::{Id, Subject};
use strikeline_solver::tape::close_signed;
use strikeline_solver::units::Length;

fn inch(value: f64) -> Length {
    Length::inches(value).quantised()
}

fn rect(left: f64, right: f64, bottom: f64, top: f64) -> Rect {
    Rect::new(Span::new(inch(left), inch(right)), Span::new(inch(bottom), inch(top)))
}

fn subject(text: &str) -> Subject {
    Subject::read(text).unwrap()
}

fn feature(id: &str, kind: FeatureKind, rect: Rect, proud: f64, name: &str) -> PlacedFeature {
    PlacedFeature {
        id: Id::new(id),
        kind,
        name: name.to_owned(),
        rect,
        top_ends: (rect.top, rect.top),
        bottom_ends: (rect.bottom, rect.bottom),
        proud: inch(proud),
        on: None,
        assumed: false,
    }
}

fn job(units: Units, title: &str) -> Job {
    let wall = Wall { id: Id::new("wall-1"), name: Some("North wall".to_owned()), ..Wall::default() };
    Job { title: title.to_owned(), units: Some(units), walls: vec![wall], ..Job::new() }
}

fn survey(outline: Rect) -> Survey {
    Survey {
        outline,
        left_end: End::InsideCorner,
        right_end: End::InsideCorner,
        floor: Floor::default(),
        control_line_y: None,
        features: Vec::new(),
        hidden: Vec::new(),
        hits: Vec::new(),
        humps: Vec::new(),
        seats: Vec::new(),
        misfits: Vec::new(),
    }
}

fn plan_of(job: &Job, survey: Survey) -> Plan {
    Plan {
        wall: Id::new("wall-1"),
        option: None,
        style: job.style(),
        survey,
        framing: Framing::default(),
        facts: Vec::new(),
        pieces: Vec::new(),
        marks: Vec::new(),
        sight: Vec::new(),
        assumed: Vec::new(),
        findings: Vec::new(),
        next: None,
    }
}

/// A wall of no size with nothing on it.
pub(crate) fn empty() -> (Job, Plan) {
    let job = job(Units::Inches, "");
    let plan = plan_of(&job, survey(Rect::default()));
    (job, plan)
}

/// A mark's reading and its close, by where the mark and its two datums are along an axis.
fn reading(
    plan: &Plan,
    mark: Length,
    from: (ReadingDatum, Length),
    to: Option<(ReadingDatum, Length)>,
    way: Direction,
    at: Length,
) -> Reading {
    let sign = way.sign();
    let value = (mark - from.1) * sign;
    let close = to.map(|(datum, place)| Close {
        from: datum,
        direction: way.opposite(),
        value: (place - mark) * sign,
        closing: close_signed(value, (place - from.1) * sign, plan.style),
    });
    let steps = plan.style.steps(value);
    Reading { from: from.0, how: How::Butt, direction: way, at, value, steps, taut_over: None, close }
}

fn mark(
    id: &str,
    what: MarkWhat,
    place: Point,
    line: Option<(Point, Point)>,
    readings: Vec<Reading>,
) -> Mark {
    Mark {
        id: subject(id),
        piece: Id::new("display-1"),
        stage: Stage::Level,
        what,
        place: Some(place),
        line,
        outline: None,
        readings,
        assumed: false,
        on_tape: false,
        state: MarkState::ToDo,
        planned: None,
        is_needed: true,
    }
}

/// A display of 48 1/2 x 27 3/4 in on a plate that reaches three studs, its centre at `centre`.
fn hang(plan: &mut Plan, centre: Point, floor: Length) {
    let outline = Rect::new(Span::about(centre.x, inch(48.5)), Span::about(centre.y, inch(27.75)));
    let wall = plan.survey.outline;
    let plate_top = outline.top - inch(8.0);
    let plate = Rect::new(Span::about(centre.x, inch(34.0)), Span::new(plate_top - inch(9.0), plate_top));
    let rail =
        |down: f64| Rect { top: plate_top - inch(down), bottom: plate_top - inch(down + 2.0), ..plate };
    let hole = |(id, x, down, meets): (&str, f64, f64, Meets)| HolePlan {
        id: Id::new(id),
        subject: subject(&format!("display-1.{id}")),
        place: Point::new(inch(x), plate_top - inch(down)),
        in_plate: Point::new(inch(x) - centre.x, -inch(down)),
        meets,
        stud: None,
        hidden: None,
        chance: None,
        met: false,
    };
    let bracket = |x: f64| {
        Rect::new(
            Span::about(centre.x + inch(x), inch(1.5)),
            Span::new(outline.bottom + inch(4.0), plate_top + inch(1.0)),
        )
    };
    let neighbour = |part: &str, from: Length, other: Length| Some(Gap { to: subject(part), from, other });
    let gap_below = outline.bottom - floor;
    plan.pieces.push(PiecePlan {
        id: Id::new("display-1"),
        hanging: Id::new("hanging-1"),
        kind: PieceKind::Display,
        name: "Display".to_owned(),
        outline,
        ruled_centre: centre,
        frame: Frame { origin: centre, ..Frame::default() },
        mount: Some(MountedPlan {
            id: Id::new("mount-1"),
            kind: MountKind::Tilting,
            frame: Frame { origin: Point::new(centre.x, plate_top), ..Frame::default() },
            plate,
            solids: vec![rail(0.0), rail(7.0)],
            brackets: vec![bracket(-7.9), bracket(7.9)],
            offset: Length::default(),
            holes: [
                ("hole-1", 48.0, 1.0, Meets::Stud),
                ("hole-2", 64.0, 1.0, Meets::StudEdge),
                ("hole-3", 56.0, 1.0, Meets::Board),
                ("hole-4", 48.0, 8.0, Meets::Stud),
                ("hole-5", 64.0, 8.0, Meets::Hidden),
                ("hole-6", 72.0, 8.0, Meets::NotKnown),
                ("hole-7", 72.0, 1.0, Meets::Masonry),
                ("hole-8", 56.0, 8.0, Meets::OffWall),
            ]
            .map(hole)
            .to_vec(),
            fastening: strikeline_solver::plan::verdict::Fastening::unknown(),
            wish: Wish::default(),
            entry: Some(Rect::new(
                Span::about(centre.x + inch(4.0), inch(2.5)),
                Span::new(plate_top - inch(6.5), plate_top - inch(2.5)),
            )),
            entry_wanted: None,
            held: None,
            assumed: false,
            holes_assumed: false,
            middle_assumed: false,
        }),
        ports: vec![
            PortPlan { id: Id::new("port-1"), name: String::new(), place: centre, used: true },
            PortPlan {
                name: String::new(),
                id: Id::new("port-2"),
                place: Point::new(centre.x + inch(2.0), centre.y),
                used: false,
            },
        ],
        cable: None,
        gaps: Gaps {
            left: neighbour("wall-1.left", outline.left - wall.left, outline.left - wall.left),
            right: neighbour("wall-1.right", wall.right - outline.right, wall.right - outline.right),
            below: neighbour("wall-1.floor", gap_below, gap_below),
        },
        assumed: false,
    });
    let ends = ((ReadingDatum::LeftEnd, wall.left), Some((ReadingDatum::RightEnd, wall.right)));
    let across = reading(plan, centre.x, ends.0, ends.1, Direction::Right, plate_top);
    let (left, right) = (plate.left - inch(4.0), plate.right + inch(4.0));
    let up = [left, right].map(|at| {
        reading(plan, plate_top, (ReadingDatum::Floor, plan.survey.floor.y_at(at)), None, Direction::Up, at)
    });
    let centre_line =
        (Point::new(centre.x, plate.bottom - inch(2.0)), Point::new(centre.x, plate_top + inch(2.0)));
    plan.marks.push(mark(
        "display-1.centre_line",
        MarkWhat::CentreLine,
        Point::new(centre.x, plate_top),
        Some(centre_line),
        vec![across],
    ));
    let level_line = (Point::new(left, plate_top), Point::new(right, plate_top));
    plan.marks.push(mark(
        "display-1.level_line",
        MarkWhat::LevelLine,
        Point::new(centre.x, plate_top),
        Some(level_line),
        up.to_vec(),
    ));
    for (top, y) in [(true, outline.top), (false, outline.bottom)] {
        for (is_left, x) in [(true, outline.left), (false, outline.right)] {
            let id = format!(
                "display-1.corner_{}_{}",
                if top { "top" } else { "bottom" },
                if is_left { "left" } else { "right" }
            );
            plan.marks.push(mark(
                &id,
                MarkWhat::Corner { top, left: is_left },
                Point::new(x, y),
                None,
                Vec::new(),
            ));
        }
    }
}

/// 14 x 8 ft with a mantel, a window, a door and an outlet; the floor falls 1/2 in to the right.
fn inch_survey() -> Survey {
    let mut survey = survey(rect(0.0, 168.0, -0.5, 96.0));
    survey.floor.readings = vec![Point::new(inch(0.0), inch(0.0)), Point::new(inch(168.0), inch(-0.5))];
    let sample = [
        feature("mantel-1", FeatureKind::Mantel, rect(34.0, 90.0, 45.0, 50.0), 6.0, "Mantel"),
        feature("window-1", FeatureKind::Window, rect(100.0, 128.0, 34.0, 82.0), 0.75, "<b>&\""),
        feature("door-1", FeatureKind::Door, rect(132.0, 166.0, -0.4, 83.0), 0.75, ""),
        feature("outlet-1", FeatureKind::Outlet, rect(14.0, 17.0, 12.0, 17.0), 0.0, ""),
        feature("shelf-1", FeatureKind::Shelf, rect(4.0, 26.0, 60.0, 61.5), 8.0, "Shelf"),
        feature("switch-1", FeatureKind::Switch, rect(94.0, 97.0, 44.0, 49.0), 0.0, ""),
    ];
    survey.features = sample.to_vec();
    survey.hidden = vec![
        PlacedHidden {
            id: Id::new("block-1"),
            kind: HiddenKind::FireBlock,
            name: String::new(),
            rect: rect(64.75, 79.25, 56.0, 57.5),
            assumed: false,
        },
        PlacedHidden {
            id: Id::new("pipe-1"),
            kind: HiddenKind::Pipe,
            name: "Pipe".to_owned(),
            rect: rect(20.0, 22.0, 0.0, 96.0),
            assumed: true,
        },
    ];
    let hits = [
        ("hit-1", HitKind::LeftEdge, 47.25, Some(70.0)),
        ("hit-2", HitKind::RightEdge, 48.75, Some(70.0)),
        ("hit-3", HitKind::Centre, 64.0, Some(84.0)),
        ("hit-4", HitKind::Magnet, 80.0, Some(84.0)),
        ("hit-5", HitKind::Wood, 48.0, Some(84.0)),
        ("hit-6", HitKind::Air, 52.0, Some(84.0)),
        ("hit-7", HitKind::ShallowWood, 56.0, Some(84.0)),
        ("hit-8", HitKind::Metal, 60.0, Some(84.0)),
        ("hit-9", HitKind::Centre, 32.0, None),
    ];
    survey.hits =
        hits.map(|(id, kind, x, y)| PlacedHit { id: Id::new(id), kind, x: inch(x), y: y.map(inch) }).to_vec();
    survey
}

fn stud_at(x: f64) -> Stud {
    Stud {
        centre: inch(x),
        left: inch(x - 0.75),
        right: inch(x + 0.75),
        doubt: inch(0.25),
        at_height: Length::millimetres(1500.0),
        probability: 0.98,
        known: Known::Inferred,
        lean: 0.0,
        lean_doubt: 0.0,
        hits: vec![Id::new("hit-1")],
        on: None,
    }
}

/// The inch job and its plan: a display over the mantel.
pub(crate) fn inches() -> (Job, Plan) {
    let job = job(Units::Inches, "Living room <b>&\"");
    let mut plan = plan_of(&job, inch_survey());
    plan.framing = Framing {
        known: true,
        studs: [16.0, 32.0, 48.0, 64.0, 80.0].map(stud_at).to_vec(),
        planes: Vec::new(),
    };
    hang(&mut plan, Point::new(inch(62.1875), inch(71.0)), inch(50.0));
    (job, plan)
}

/// A plain metric wall of 4.2 x 2.44 m with a display in its middle.
pub(crate) fn metric() -> (Job, Plan) {
    let job = job(Units::Millimetres, "Office");
    let outline = Rect {
        left: Length::default(),
        right: Length::millimetres(4200.0),
        bottom: Length::default(),
        top: Length::millimetres(2440.0),
    };
    let mut plan = plan_of(&job, survey(outline));
    plan.framing = Framing {
        known: true,
        studs: [23.6, 39.4, 55.1, 70.9, 86.6, 102.4].map(stud_at).to_vec(),
        planes: Vec::new(),
    };
    hang(&mut plan, Point::new(Length::millimetres(1500.0), Length::millimetres(1400.0)), Length::default());
    (job, plan)
}
