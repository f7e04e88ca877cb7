use super::super::sample::{self, inches, well_told};
use super::*;
use crate::capacity::case::{CaseName, Posture};
use crate::capacity::why::Why;
use crate::finding::{Level, Mend};
use crate::geometry::Point;
use crate::job::feature::FeatureKind;
use crate::plan::verdict::Want;
use crate::subject::Subject;
use crate::units::{Angle, Mass};

fn told(subject: &str, what: What) -> String {
    let subject = Subject::read(subject).unwrap();
    let text = finding(&sample::plan(), &Finding { level: Level::Caution, subject, what, mend: Mend::Move });
    well_told(&text);
    text
}

#[test]
fn where_a_piece_or_plate_may_not_be() {
    for (side, end) in [
        (Direction::Left, "the wall's left end"),
        (Direction::Right, "the wall's right end"),
        (Direction::Up, "the ceiling"),
        (Direction::Down, "the floor"),
    ] {
        let text = told("display-1", What::OffWall { side, by: inches("2") });
        assert_eq!(text, format!("The display goes 2\" past {end}."));
        let text = told("display-1", What::PlateShows { side, by: inches("0.01") });
        assert!(text.starts_with("The display's plate shows less than 1/16\" past the"), "{text}");
    }
    let door = What::OverFeature { feature: Id::new("door-1"), kind: FeatureKind::Door };
    assert_eq!(told("display-1", door), "The display covers Garden door.");
    assert!(told("display-1", What::OverPiece { other: Id::new("bar-1") }).contains("\"bar-1\""));
}

#[test]
fn what_a_hole_or_plate_would_meet() {
    let (pipe, kind) = (Id::new("pipe-1"), HiddenKind::Pipe);
    let text = told("display-1.hole-2", What::HoleOnHidden { hidden: pipe.clone(), kind });
    assert!(text.starts_with("Hole 2 of the display's plate would go into the pipe"), "{text}");
    for kind in [HiddenKind::PocketDoor, HiddenKind::BoxBehind] {
        let text = told("display-1.hole-2", What::BehindHole { hidden: pipe.clone(), kind });
        assert!(text.contains("the pipe"), "{text}");
    }
    for in_line in [true, false] {
        let text = told("display-1.hole-1", What::NearBox { feature: Some(Id::new("window-1")), in_line });
        assert!(text.contains("circuit off"), "{text}");
    }
    let text = told("display-1", What::PlateOverHump { proud: inches("1/4") });
    assert!(text.starts_with("The display's plate lies where the wall is 1/4\" out of flat"), "{text}");
    let mantel = Id::new("mantel-1");
    let text = told("display-1", What::PlateOverProud { feature: mantel, proud: inches("8") });
    assert!(text.contains("the mantel, which stands 8\" proud"), "{text}");
    assert_eq!(told("display-1", What::NoStudMet), "No hole of the display's plate meets a stud.");
    let (left, right) = (Some(inches("7/8")), Some(inches("3")));
    let text = told("display-1", What::MoreStudsNear { studs: 1, most: 2, left, right });
    assert!(text.contains("7/8\" to the left or 3\" to the right"), "{text}");
    told("display-1", What::NoEntry);
    told("display-1", What::NoBay);
    told("display-1", What::BracketsOffThreads { apart: inches("16"), across: inches("8") });
}

#[test]
fn whether_a_plate_holds() {
    let text = told("display-1", What::PlateShort { used: Some(1.2253) });
    assert_eq!(text, "The display's plate is short: 1.23 of what its fasteners may carry is used.");
    let text = told("display-1", What::PlateShort { used: None });
    assert!(text.ends_with("what the mount's maker requires of holes and fasteners is not met."), "{text}");

    let display = Id::new("display-1");
    let of = |wanted: Vec<Want>, uncarried: Option<(CaseName, Why)>| {
        let mut plan = sample::plan();
        let verdict = &mut plan.pieces[0].mount.as_mut().unwrap().fastening.verdict;
        (verdict.wanted, verdict.uncarried) = (wanted, uncarried);
        let what = What::PlateNotKnown { if_probed: false };
        let subject = Id::new("display-1").whole();
        let text = finding(&plan, &Finding { level: Level::Caution, subject, what, mend: Mend::Measure });
        well_told(&text);
        text.strip_prefix("Whether the display's plate holds is not known").unwrap().to_owned()
    };
    let probes = vec![Want::Probe(display.part("hole-1")), Want::Probe(display.part("hole-2"))];
    assert_eq!(of(probes, None), " yet: probe the stud at hole 1 and hole 2.");
    let mount = Id::new("mount-1");
    let mut wanted = vec![Want::Mass(display.clone()), Want::Size(display), Want::StandOff(mount.clone())];
    assert!(of(wanted.clone(), None).ends_with("stands off the wall."));
    wanted.extend([Want::Drop(mount.clone()), Want::PlateThickness(mount)]);
    assert!(of(wanted, None).ends_with("stands off the wall and 2 more."));
    let case = CaseName { posture: Posture::AsHung, pull: None };
    assert!(of(Vec::new(), Some((case, Why::Turns { nmm: 155_900.0 }))).starts_with(": hanging, it turns"));
    assert_eq!(of(Vec::new(), None), ": no published value is known for fasteners in this wall.");
}

#[test]
fn what_a_mount_asks_for() {
    let what = What::OverRating { mass: Mass::pounds(80.0), rated: Mass::pounds(66.0) };
    assert!(told("display-1", what).starts_with("The display weighs 80 lb, its mount is rated for 66 lb"));
    let what = What::PatternOutside { across: inches("24"), upright: inches("16") };
    assert!(told("display-1", what).contains("24\" by 16\""));
    for side in [Direction::Left, Direction::Right, Direction::Up, Direction::Down] {
        let what = What::NoLiftRoom { side, room: inches("1"), needs: inches("2") };
        assert!(told("display-1", what).contains("needs 2\""));
    }
    let what = What::NoAccessBelow { room: inches("1"), needs: inches("3") };
    assert!(told("display-1", what).contains("below the display"));
    let other = Id::new("door-1").part("left");
    let what = What::SwingMeets { other: other.clone(), side: Direction::Right };
    assert!(told("display-1", what).contains("Garden door's left trim"));
    told("display-1", What::TiltMeets { other });
    let piece = Id::new("display-1");
    let text = told("seat-1", What::SeatTooNear { piece: piece.clone() });
    assert!(text.starts_with("The seat is no farther from the wall than the display"), "{text}");
    let text = told("seat-1", What::LooksUp { piece, up: Angle::degrees(17.44) });
    assert!(text.contains("the display is 17.4 degrees up, over the 15 published (SMPTE 196M"), "{text}");
}

#[test]
fn what_the_wall_is() {
    for (year, lead, asbestos) in
        [(Some(1960), true, true), (Some(1975), true, false), (Some(1985), false, true), (None, true, true)]
    {
        let text = told("wall-1", What::OldWall { year, lead, asbestos });
        assert_eq!((text.contains("lead"), text.contains("asbestos")), (lead, asbestos), "{text}");
        assert_eq!(text.contains("not known"), year.is_none(), "{text}");
    }
    let rises = [(inches("1/2"), "right"), (inches("-1/2"), "left")];
    for (rise, side) in rises {
        let text = told("display-1", What::FloorOutOfLevel { rise });
        assert!(text.contains(&format!("1/2\" higher at the {side} end")), "{text}");
    }
    for split in [true, false] {
        let (left, right) = (inches("4"), inches("4 1/4"));
        let text = told("display-1", What::CrookedEdge { feature: Id::new("mantel-1"), left, right, split });
        assert_eq!(text.contains("splits the difference"), split, "{text}");
    }
    for (outside, neighbour) in [(true, false), (false, true), (false, false)] {
        let text = told("wall-1", What::OtherSide { outside, neighbour });
        assert_eq!(text.contains("not known"), !outside && !neighbour, "{text}");
    }
    let text = told("display-1", What::NoFraming);
    assert!(text.starts_with("The display would be fixed to a wall without framing"), "{text}");
    for what in [What::WetWall, What::Veneer, What::FloorNotRead, What::PlansOnly] {
        told("wall-1", what);
    }
}

#[test]
fn what_was_not_or_not_well_measured() {
    let what = What::DoesNotClose { used: inches("30 1/2"), other: inches("31") };
    let text = told("window-1.left", what);
    assert!(text.contains("30 1/2\" is used, the other says 31\", off by 1/2\""), "{text}");
    told("window-1", What::Ring);
    told("window-1", What::ZeroSize);
    let gone = What::NotThere { named: Id::new("door-9").part("left") };
    let text = told("window-1", gone);
    assert!(text.contains("\"door-9.left\""), "{text}");
    told("display-1.centre_line", What::WithHelp { place: Point::default() });
    for what in [
        MissingWhat::Mass,
        MissingWhat::Pattern,
        MissingWhat::Rating,
        MissingWhat::Hits,
        MissingWhat::Holes,
        MissingWhat::Mount,
        MissingWhat::Thickness,
        MissingWhat::Droop,
    ] {
        told("display-1", What::Missing { what });
    }
}

#[test]
fn every_finding_of_the_cables_is_well_told() {
    use crate::finding::cable::CableWhat;
    use crate::plan::cable::Against;
    let door = || Id::new("door-1");
    let all_against = vec![
        Against::Bore,
        Against::Steel,
        Against::Unlisted,
        Against::Face,
        Against::Bay,
        Against::EntryPlace,
        Against::ExitPlace,
    ];
    let (a, b) = (inches("3"), inches("2"));
    for what in [
        CableWhat::NoWay { against: Vec::new(), is_there: false },
        CableWhat::NoWay { against: all_against, is_there: true },
        CableWhat::EntryShows { swung: false },
        CableWhat::EntryShows { swung: true },
        CableWhat::BayBlocked { by: door(), passed: true },
        CableWhat::BayBlocked { by: door(), passed: false },
        CableWhat::ExitBay { beside: door(), shows: a },
        CableWhat::SealPierced { insulated: true, barrier: true, outside: true },
        CableWhat::NearOpening { feature: Some(door()), exit: true },
        CableWhat::NearOpening { feature: None, exit: false },
        CableWhat::NearPassage(door()),
        CableWhat::PowerApart { other: door(), apart: b, wanted: a },
        CableWhat::TooLong { length: a, longest: b, unknown: false, stocked: false },
        CableWhat::TooLong { length: a, longest: b, unknown: true, stocked: false },
        CableWhat::TooLong { length: a, longest: b, unknown: true, stocked: true },
        CableWhat::FaceInstead { against: vec![crate::plan::cable::Against::Unlisted], shows: a },
        CableWhat::WayShows { shows: a },
        CableWhat::BendTight { needs: a, room: b },
        CableWhat::BoxDeep { deep: a, room: Some(b), no_front: false, exit: false },
        CableWhat::BoxDeep { deep: a, room: Some(b), no_front: true, exit: true },
        CableWhat::BoxDeep { deep: a, room: None, no_front: false, exit: false },
        CableWhat::RoomNotKnown { stand_off: true, plug: true, cable: true },
        CableWhat::StudsNotKnown,
        CableWhat::FewOutlets { found: 0, wanted: 1 },
        CableWhat::FewOutlets { found: 2, wanted: 3 },
        CableWhat::BlocksExpected { each: 1 },
        CableWhat::NailPlate { left: b, thick: b },
        CableWhat::SealBlock { block: door() },
        CableWhat::Bushing { opening: door() },
        CableWhat::BreastWay,
        CableWhat::PowerCord,
        CableWhat::NotListed { unknown: true },
        CableWhat::NotListed { unknown: false },
        CableWhat::TubeFull { percent: 45, most: 40 },
        CableWhat::StockShort { needs: a },
        CableWhat::ManyBends,
    ] {
        told("display-1", What::Cable(what));
    }
    let text = told("display-1", What::Cable(CableWhat::PaintDisturbed { hundredths: 605, about: false }));
    assert!(text.starts_with("6.05 square feet"), "{text}");
}
