use super::super::sample::{self, plan};
use super::*;
use strikeline_solver::geometry::Point;
use strikeline_solver::job::place::AcrossReading;
use strikeline_solver::solve::solve;

fn inches(value: f64) -> Length {
    Length::inches(value).quantised()
}

/// The sample room as it is after reading: every number in use is counted.
fn job() -> Job {
    let mut job = sample::job();
    job.complete_ids().unwrap();
    job
}

const ALL: [NewThing; 38] = {
    use {FeatureKind as F, HiddenKind as H, HitKind as R, NewThing as N};
    [
        N::Feature(F::Window),
        N::Feature(F::Door),
        N::Feature(F::Mantel),
        N::Feature(F::Bench),
        N::Feature(F::Shelf),
        N::Feature(F::Outlet),
        N::Feature(F::Switch),
        N::Feature(F::Vent),
        N::Feature(F::Thermostat),
        N::Feature(F::Radiator),
        N::Feature(F::Baseboard),
        N::Feature(F::Crown),
        N::Feature(F::Trim),
        N::Feature(F::Soffit),
        N::Feature(F::Curtain),
        N::Feature(F::Panelling),
        N::Feature(F::ChimneyBreast),
        N::Feature(F::Other),
        N::Hidden(H::FireBlock),
        N::Hidden(H::Pipe),
        N::Hidden(H::Cable),
        N::Hidden(H::Duct),
        N::Hidden(H::Header),
        N::Hidden(H::BoxBehind),
        N::Hit(R::LeftEdge),
        N::Hit(R::RightEdge),
        N::Hit(R::Centre),
        N::Hit(R::Magnet),
        N::Hit(R::Wood),
        N::Hit(R::Air),
        N::Hit(R::Metal),
        N::Piece(PieceKind::Display),
        N::Piece(PieceKind::SoundBar),
        N::Piece(PieceKind::Shelf),
        N::Piece(PieceKind::Box),
        N::Mount,
        N::Wall,
        N::Arrangement,
    ]
};

/// Of no place, on the wall, and far off it.
fn places() -> [Option<Point>; 3] {
    [None, Some(Point::new(inches(60.3), inches(40.4))), Some(Point::new(inches(-900.0), inches(9000.0)))]
}

#[test]
fn each_kind_is_added_and_solved_and_taken_out_again() {
    let before = job();
    for what in ALL {
        for at in places() {
            let (after, id) = with_new(&before, &plan(&before), what, at);
            assert_ne!(after, before, "{what:?}");
            let mut entries = Vec::new();
            after.clone().each_entry(&mut |_, id| entries.push(id.clone()));
            assert_eq!(entries.iter().filter(|entry| **entry == id).count(), 1, "{what:?}: it has an id");
            let seen = solve(&after, &Id::new("wall-1"), None);
            assert!(seen.survey.outline.width().is_finite());
            let back = without(&after, &id);
            assert!(back.last_id > before.last_id, "{what:?}: no id is given twice");
            assert_eq!(Job { last_id: before.last_id, ..back }, before, "{what:?} {at:?}");
        }
    }
}

#[test]
fn where_a_hand_pointed_is_written_in_whole_inches_from_the_left_and_the_floor() {
    let before = job();
    let at = Some(Point::new(inches(60.3), inches(40.4)));
    let added = |what| with_new(&before, &plan(&before), what, at).0;
    let outlet = &added(NewThing::Feature(FeatureKind::Outlet)).walls[0].features[1];
    assert_eq!(outlet.across.centre, Some(AcrossReading::from_left(inches(60.0))));
    assert_eq!(outlet.upright.centre.as_ref().unwrap().by, inches(40.0));
    // A window by its edges: 900 mm by 1200 mm about the place, 43 in to its left, 16 in to its lower edge.
    let window = &added(NewThing::Feature(FeatureKind::Window)).walls[0].features[1];
    assert_eq!(window.across.left, Some(AcrossReading::from_left(inches(42.0))));
    assert_eq!((window.across.centre.clone(), window.across.width), (None, None), "nobody measured it");
    assert_eq!(window.upright.bottom.as_ref().unwrap().by, inches(16.0));
    let hit = &added(NewThing::Hit(HitKind::Wood)).walls[0].hits[2];
    assert_eq!((hit.x.by, hit.y.as_ref().unwrap().by), (inches(60.0), inches(40.0)));
    let baseboard = &added(NewThing::Feature(FeatureKind::Baseboard)).walls[0].features[1];
    assert_eq!((baseboard.across.clone(), baseboard.upright.clone()), Default::default());
    let with_display = added(NewThing::Piece(PieceKind::Display));
    let display = plan(&with_display).pieces[1].outline.centre();
    assert!((display.x - inches(60.3)).abs() <= inches(0.5), "{display:?}");
    assert!((display.y - inches(40.4)).abs() <= inches(0.5), "{display:?}");
}

#[test]
fn a_sound_bar_hangs_under_its_display_and_a_display_on_a_mount_of_its_own() {
    let before = job();
    let (bar, _) = with_new(&before, &plan(&before), NewThing::Piece(PieceKind::SoundBar), None);
    let seen = plan(&bar);
    let (display, bar) = (&seen.pieces[0], &seen.pieces[1]);
    assert!(bar.outline.top < display.outline.bottom);
    assert!((bar.outline.centre().x - display.outline.centre().x).abs() < inches(0.01));
    let (second, id) = with_new(&before, &plan(&before), NewThing::Piece(PieceKind::Display), None);
    let hanging = &second.walls[0].options[0].hangings[1];
    assert_eq!(hanging.piece, id);
    assert_ne!(hanging.mount, before.walls[0].options[0].hangings[0].mount);
    let seen = plan(&second);
    assert!(seen.pieces[1].outline.left > seen.pieces[0].outline.right, "beside the first");
}

#[test]
fn an_option_is_the_shown_one_again_under_the_next_letter() {
    let before = job();
    let (after, id) = with_new(&before, &plan(&before), NewThing::Arrangement, None);
    let [first, second] = after.walls[0].options.as_slice() else { panic!("two") };
    assert_eq!((&second.id, second.name.as_deref()), (&id, Some("B")));
    assert_ne!(first.hangings[0].id, second.hangings[0].id);
    assert_eq!(first.hangings[0].across, second.hangings[0].across);
    // Of an assumed option too: it is written down first.
    let mut none = job();
    none.walls[0].options.clear();
    let (after, _) = with_new(&none, &plan(&none), NewThing::Arrangement, None);
    assert_eq!(after.walls[0].options.len(), 2);
    assert_eq!(after.walls[0].options[0].hangings[0].piece, after.walls[0].options[1].hangings[0].piece);
}

#[test]
fn a_copy_stands_a_hands_breadth_aside_and_differs_in_nothing_else() {
    let before = job();
    for (id, x) in [("door-1", 84.0), ("pipe-1", 14.0), ("hit-1", 34.0)] {
        let (after, copy) = copied(&before, &plan(&before), &Id::new(id)).unwrap();
        let seen = plan(&after).survey;
        let left = seen.features.iter().find(|f| f.id == copy).map(|f| f.rect.left);
        let hidden = seen.hidden.iter().find(|h| h.id == copy).map(|h| h.rect.centre().x);
        let hit = seen.hits.iter().find(|hit| hit.id == copy).map(|hit| hit.x);
        assert_eq!(left.or(hidden).or(hit).map(Length::quantised), Some(inches(x)), "{id}");
        let back = without(&after, &copy);
        assert_eq!(Job { last_id: before.last_id, ..back }, before, "{id}");
    }
    let (after, copy) = copied(&before, &plan(&before), &Id::new("display-1")).unwrap();
    let seen = plan(&after);
    let aside = seen.pieces[1].outline.centre().x - seen.pieces[0].outline.centre().x;
    assert_eq!((seen.pieces[1].id.clone(), aside.quantised()), (copy, inches(4.0)));
    assert_eq!(after.mounts[1].plate.as_ref().unwrap().holes.len(), 2);
    assert_eq!(copied(&before, &plan(&before), &Id::new("nothing-1")), None);
}

#[test]
fn a_copied_wall_names_its_own_things() {
    let before = job();
    let (after, copy) = copied(&before, &plan(&before), &Id::new("wall-1")).unwrap();
    let text = ron::to_string(after.wall(&copy).unwrap()).unwrap();
    for old in ["\"door-1", "\"hit-1\"", "\"hit-2\"", "\"pipe-1\"", "\"option-1\"", "\"hanging-1\""] {
        assert!(!text.contains(old), "{old} in {text}");
    }
    let seen = solve(&after, &copy, None);
    assert_eq!(seen.pieces.len(), 1, "it hangs between the copied door and the corner");
    assert_eq!(seen.pieces[0].outline, plan(&before).pieces[0].outline);
    let mut ids = Vec::new();
    after.clone().each_entry(&mut |_, id| ids.push(id.clone()));
    let count = ids.len();
    ids.sort();
    ids.dedup();
    assert_eq!(ids.len(), count, "no id stands twice");
}

#[test]
fn what_was_read_from_a_thing_that_is_gone_goes_on_naming_it() {
    let before = job();
    let after = without(&before, &Id::new("door-1"));
    assert_eq!(after.walls[0].options, before.walls[0].options);
    let said = plan(&after).findings;
    let not_there = strikeline_solver::finding::What::NotThere { named: Id::new("door-1").whole() };
    assert!(said.iter().any(|finding| finding.what == not_there), "{said:?}");
}

#[test]
fn letters_go_on_as_numbers() {
    assert_eq!([0, 1, 25, 26].map(letter), ["A", "B", "Z", "27"]);
}
