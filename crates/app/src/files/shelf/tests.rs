use super::entry::{Defaults, Thing, ThingKind};
use super::keep::{keep, keep_defaults, keep_kit};
use super::put::{Put, PutOver, put, put_over};
use super::*;
use crate::files::job_file::read_job_text;
use strikeline_solver::job::mount::Mount;
use strikeline_solver::job::piece::{Pattern, Piece};
use strikeline_solver::job::port::Carries;
use strikeline_solver::job::wall::{Beyond, End};
use strikeline_solver::job::{Job, Units};
use strikeline_solver::subject::Id;
use strikeline_solver::tape::Offset;
use strikeline_solver::units::Length;

const JOB: &str = r#"(
    format: 1,
    last_id: 20,
    units: millimetres,
    graduation: "1/8 in",
    settings: (feet_inches: true, floor_reach: "1800 mm"),
    codes: uk,
    kit: (
        fasteners: [(id: "fastener-1", kind: lag, diameter: "1/4 in", count: 8)],
        measures: [(id: "measure-2", kind: tape, doubt: "1 mm")],
    ),
    pieces: [(id: "display-1", kind: display, name: "Lobby screen", width: "48 1/2 in", ports: [
        (id: "port-1", carries: data, from: left, read: back, by: "10 in", up: "4 in"),
    ])],
    mounts: [(
        id: "mount-1",
        kind: arm,
        plate: (
            solids: [(id: "rail-1", left: "-10 in", right: "10 in", down: "0 in", height: "8 in")],
            holes: [(id: "hole-1", right: "-8 in", down: "1 in"), (id: "hole-2", right: "8 in", down: "1 in")],
            slots: [(id: "slot-1", right: "0 in", down: "7 in", travel: "1 in")],
        ),
        rating: (mass: "40 kg"),
        required: (fasteners: "two lags", holes: ["hole-2", "slot-1"]),
    )],
    walls: [(
        id: "wall-1",
        name: "Lobby",
        width: "140 in",
        left_end: inside_corner,
        right_end: open,
        front: (layers: [board, board], thickness: "1 1/4 in"),
        framing: wood((face: "1 1/2 in", depth: "3 1/2 in")),
        beyond: outside,
        bearing: true,
        wet: true,
        insulated: true,
        features: [(id: "door-1", kind: door)],
        options: [(id: "option-1", hangings: [(
            id: "hanging-1", piece: "display-1", mount: "mount-1", across: on_wall,
            upright: height(of: centre, by: "60 in"),
        )])],
    )],
)"#;

fn job() -> Job {
    read_job_text(JOB, Path::new("job.ron")).unwrap().job
}

fn all() -> Vec<Entry> {
    let job = job();
    let mut all: Vec<Entry> =
        ["display-1", "mount-1", "wall-1"].iter().map(|id| keep(&job, &Id::new(id)).unwrap()).collect();
    all.extend([keep_kit(&job), keep_defaults(&job)]);
    all
}

/// The thing with no ids in it, so that a copy is seen to be one.
fn bare(thing: &Thing) -> Job {
    let mut alone = thing.alone();
    alone.each_entry(&mut |_, id| *id = Id::default());
    for mount in &mut alone.mounts {
        mount.required = None;
        mount.name = None;
    }
    alone
}

fn ids(job: &Job) -> Vec<Id> {
    let mut ids = Vec::new();
    job.clone().each_entry(&mut |_, id| ids.push(id.clone()));
    ids
}

#[test]
fn what_is_kept_is_read_again_and_put_into_another_job() {
    let folder = tempfile::tempdir().unwrap();
    let shelf = folder.path().join("home").join("shelf");
    assert!(list(&shelf).things.is_empty(), "no folder, nothing on it");
    for entry in all() {
        write(&shelf, &entry, None).unwrap();
    }
    let found = list(&shelf);
    assert!(found.troubles.is_empty(), "{:?}", found.troubles);
    let read: Vec<Entry> = found.things.iter().map(|one| one.entry.clone()).collect();
    assert_eq!(read, all());
    for OnShelf { entry, .. } in &found.things {
        // Into the job that it came from, where every id of it is taken.
        let before = job();
        let Put { job: after, id } = put(&before, entry);
        let mut checked = after.clone();
        assert_eq!(checked.complete_ids(), Ok(()), "no id stands twice: {}", entry.name);
        assert_eq!(checked, after, "none is missing");
        match &id {
            Some(id) => {
                assert!(!ids(&before).contains(id) && ids(&after).contains(id));
                let copy = keep(&after, id).unwrap();
                assert_eq!(bare(&copy.thing), bare(&entry.thing), "{}", entry.name);
                let mut rest = after.clone();
                rest.mounts.truncate(1);
                rest.pieces.truncate(1);
                rest.walls.truncate(1);
                rest.last_id = before.last_id;
                assert_eq!(rest, before, "nothing else changes");
            }
            None => assert!(matches!(entry.thing.kind(), ThingKind::Kit | ThingKind::Defaults)),
        }
    }
}

#[test]
fn of_a_wall_only_its_construction_is_kept() {
    let entry = keep(&job(), &Id::new("wall-1")).unwrap();
    assert_eq!(entry.name, "Lobby");
    let Thing::Wall(wall) = &entry.thing else { panic!("{entry:?}") };
    assert_eq!((wall.right_end, wall.insulated), (Some(End::Open), Some(true)));
    assert!(wall.front.is_some() && wall.framing.is_some());
    assert_eq!((wall.beyond, wall.bearing, wall.wet), (None, None, None), "of its place, asked anew");
    assert!(wall.width.is_none() && wall.features.is_empty() && wall.options.is_empty());

    let mut other = job();
    other.walls[0].front = None;
    other.walls[0].framing = None;
    other.walls[0].beyond = Some(Beyond::Neighbour);
    let after = put_over(&other, &Id::new("wall-1"), &entry).unwrap().job;
    assert_eq!(after.walls[0].framing, job().walls[0].framing);
    assert_eq!(after.walls[0].front, job().walls[0].front);
    assert_eq!(after.walls[0].beyond, Some(Beyond::Neighbour));
    assert_eq!((after.walls[0].features.len(), after.walls.len()), (1, 1));
}

#[test]
fn required_holes_are_those_of_the_copy() {
    let entry = keep(&job(), &Id::new("mount-1")).unwrap();
    let Put { job: after, .. } = put(&job(), &entry);
    let copy = after.mounts.last().unwrap();
    let plate = copy.plate.as_ref().unwrap();
    let required = &copy.required.as_ref().unwrap().holes;
    assert_eq!(*required, [plate.holes[1].id.clone(), plate.slots[0].id.clone()]);
    assert_ne!(plate.holes[1].id, Id::new("hole-2"));
    assert_eq!(copy.name.as_deref(), Some("Mount"), "what it is called on the shelf");
}

#[test]
fn put_over_another_it_takes_its_id_and_what_hangs_on_it() {
    let mount = keep(&job(), &Id::new("mount-1")).unwrap();
    let mut other = job();
    other.mounts[0].plate = None;
    let after = put_over(&other, &Id::new("mount-1"), &mount).unwrap().job;
    assert_eq!(after.mounts.len(), 1);
    assert_eq!(after.mounts[0].id, Id::new("mount-1"));
    assert_eq!(after.mounts[0].plate.as_ref().unwrap().holes.len(), 2);
    assert_eq!(after.walls, other.walls, "it hangs on the same mount");
    let piece = keep(&job(), &Id::new("display-1")).unwrap();
    assert_eq!(
        put_over(&other, &Id::new("display-1"), &piece).unwrap().job.pieces[0].width,
        job().pieces[0].width
    );
    for (id, entry) in [("mount-1", &piece), ("gone", &mount), ("mount-1", &keep_kit(&other))] {
        assert_eq!(put_over(&other, &Id::new(id), entry), None, "{id}");
    }
    assert_eq!(keep(&other, &Id::new("gone")), None);
}

/// The job with ports of the display and with cables that use them, by their ids.
fn wired(ports: &[(&str, &str)], cables: &[&str]) -> Job {
    let port = |(id, carries): &(&str, &str)| {
        format!(r#"(id: "{id}", carries: {carries}, from: left, read: back, by: "10 in", up: "4 in"), "#)
    };
    let ports: String = ports.iter().map(port).collect();
    let cable = |port: &&str| format!(r#"(port: "{port}", ends_at: "door-1"), "#);
    let cables: String = cables.iter().map(cable).collect();
    let old = r#"(id: "port-1", carries: data, from: left, read: back, by: "10 in", up: "4 in"),"#;
    let text = JOB
        .replace(old, &ports)
        .replace(r#"by: "60 in"),"#, &format!(r#"by: "60 in"), cables: [{cables}],"#));
    read_job_text(&text, Path::new("job.ron")).unwrap().job
}

#[test]
fn cables_go_over_to_the_one_port_that_carries_the_same_and_the_others_go() {
    let power_and_data: &[(&str, &str)] = &[("port-7", "power"), ("port-8", "data")];
    let two_data: &[(&str, &str)] = &[("port-7", "power"), ("port-8", "data"), ("port-9", "data")];
    let no_power: &[(&str, &str)] = &[("port-8", "data")];
    type Case<'a> =
        (&'a [(&'a str, &'a str)], &'a [&'a str], &'a [(&'a str, &'a str)], &'a [Option<Carries>]);
    let (power, data) = (Some(Carries::Power), Some(Carries::Data));
    let cases: [Case<'_>; 5] = [
        // Each its own.
        (power_and_data, &["port-7", "port-8"], power_and_data, &[power, data]),
        // Which of two data ports? The power cable is plain all the same.
        (power_and_data, &["port-7", "port-8"], two_data, &[power]),
        // Two cables for one port.
        (two_data, &["port-7", "port-8", "port-9"], power_and_data, &[power]),
        // One cable of two ports was used: it is plain where it goes.
        (two_data, &["port-9"], power_and_data, &[data]),
        // None for it; what named no port at all stays as it was.
        (power_and_data, &["port-7", "port-404"], no_power, &[None]),
    ];
    for (old, cables, new, left) in cases {
        let before = wired(old, cables);
        let entry = keep(&wired(new, &[]), &Id::new("display-1")).unwrap();
        let PutOver { job: after, unplugged, .. } = put_over(&before, &Id::new("display-1"), &entry).unwrap();
        let carries = |id: &Id| after.pieces[0].ports.iter().find(|port| port.id == *id).map(|p| p.carries);
        let hung = &after.walls[0].options[0].hangings[0].cables;
        let used: Vec<_> = hung.iter().map(|wish| carries(&wish.port)).collect();
        assert_eq!(used, left, "{old:?} {cables:?} {new:?}");
        assert!(hung.iter().all(|wish| wish.ends_at.is_some()), "where they end stays");
        let went: Vec<_> = unplugged.iter().map(|port| port.id.as_str()).collect();
        let all = hung.len() + went.len();
        assert_eq!(all, cables.len(), "each stays or is told of: {went:?}");
        assert!(went.iter().all(|port| cables.contains(port)));
    }
}

fn pattern() -> Pattern {
    let apart = Length::inches(16.0).quantised();
    Pattern::new(apart, apart)
}

#[test]
fn the_drop_of_a_mount_is_not_kept_but_what_it_says_of_the_mount_alone_is() {
    let kept = |job: &Job| match keep(job, &Id::new("mount-1")).unwrap().thing {
        Thing::Mount(mount) => (mount.drop, mount.hook_rise),
        other => panic!("{other:?}"),
    };
    let inches = |value: f64| Length::inches(value).quantised();
    let mut job = job();
    job.mounts[0].drop = Some(inches(6.375));
    assert_eq!(kept(&job), (None, None), "nothing is known of the display's threads");
    job.pieces[0].pattern = Some(Pattern { down: Some(inches(5.5)), ..pattern() });
    assert_eq!(kept(&job), (None, Some(Offset(inches(-0.875)))), "the plate's top is below them");
    let plan = |job: &Job| strikeline_solver::solve::solve(job, &Id::new("wall-1"), None);
    let mut other = job.clone();
    other.mounts[0].drop = None;
    let plate_top = |job: &Job| plan(job).pieces[0].mount.as_ref().unwrap().plate.top;
    assert_ne!(plate_top(&other), plate_top(&job));
    let entry = keep(&job, &Id::new("mount-1")).unwrap();
    let again = put_over(&other, &Id::new("mount-1"), &entry).unwrap().job;
    assert!(
        (plate_top(&again) - plate_top(&job)).abs() < Length::millimetres(1e-6),
        "the same display, the same drop"
    );
    job.mounts[0].hook_rise = Some(Offset(inches(1.0)));
    assert_eq!(kept(&job), (None, Some(Offset(inches(1.0)))), "what was measured stays");
    job.mounts[0].hook_rise = None;
    job.walls[0].options.clear();
    assert_eq!(kept(&job).1, Some(Offset(inches(-0.875))), "where it hangs is assumed");
    job.pieces.clear();
    assert_eq!(kept(&job).1, None);
}

#[test]
fn a_drop_stays_only_with_what_it_was_measured_with() {
    let inches = |value: f64| Length::inches(value).quantised();
    let (mount, display) = (Id::new("mount-1"), Id::new("display-1"));
    let (kept_mount, kept_display) = (keep(&job(), &mount).unwrap(), keep(&job(), &display).unwrap());
    let drop = Some(inches(6.0));
    // What hung there was measured: another mount, or another display, has another drop.
    let mut known = job();
    known.mounts[0].drop = drop;
    for (id, entry) in [(&mount, &kept_mount), (&display, &kept_display)] {
        let over = put_over(&known, id, entry).unwrap();
        assert_eq!((over.job.mounts[0].drop, over.drop_went), (None, true), "{id}");
    }
    // Nothing was known of what hung there but the drop: it was measured with what is named now.
    let mut blank = job();
    blank.mounts[0] = Mount { id: mount.clone(), drop, ..Mount::default() };
    blank.pieces[0] = Piece { id: display.clone(), diagonal: Some(inches(55.0)), ..Piece::default() };
    for (id, entry) in [(&mount, &kept_mount), (&display, &kept_display)] {
        let over = put_over(&blank, id, entry).unwrap();
        assert_eq!((over.job.mounts[0].drop, over.drop_went), (drop, false), "{id}");
    }
    // Where both displays' threads are known the drop to the other follows.
    let down = |value| Some(Pattern { down: Some(inches(value)), ..pattern() });
    known.pieces[0].pattern = down(5.0);
    let mut other = job();
    other.pieces[0].pattern = down(4.0);
    let over = put_over(&known, &display, &keep(&other, &display).unwrap()).unwrap();
    assert_eq!((over.job.mounts[0].drop, over.drop_went), (None, false));
    assert_eq!(over.job.mounts[0].hook_rise, Some(Offset(inches(-1.0))));
    let mut rising = kept_mount.clone();
    let Thing::Mount(risen) = &mut rising.thing else { panic!("{rising:?}") };
    risen.hook_rise = Some(Offset(inches(1.0)));
    let over = put_over(&known, &mount, &rising).unwrap();
    assert_eq!((over.job.mounts[0].drop, over.drop_went), (None, false));
    known.walls[0].options[0].hangings[0].mount = None;
    let over = put_over(&known, &display, &kept_display).unwrap();
    assert_eq!((over.job.mounts[0].drop, over.drop_went), (drop, false), "it hung on something else");
}

#[test]
fn kit_and_defaults_take_the_place_of_the_jobs_own() {
    let other = Job { last_id: 3, ..Job::new() };
    let after = put(&other, &keep_kit(&job())).job;
    assert_eq!((after.kit.fasteners.len(), after.kit.measures.len()), (1, 1));
    assert_eq!(after.kit.fasteners[0].id, Id::new("fastener-4"));
    let after = put(&other, &keep_defaults(&job())).job;
    assert_eq!(after.units, Some(Units::Millimetres));
    assert_eq!((after.graduation, after.codes), (job().graduation, job().codes));
    assert_eq!(after.settings, job().settings);
    let plain = Entry { name: "Plain".into(), thing: Thing::Defaults(Defaults::default()) };
    assert_eq!(put(&job(), &plain).job.settings, Default::default());
}

#[test]
fn files_are_named_after_what_they_hold_and_none_is_replaced_unasked() {
    let folder = tempfile::tempdir().unwrap();
    let names = |folder: &Path| -> Vec<String> {
        let names = list(folder).things.into_iter().map(|one| one.path);
        let mut names: Vec<String> =
            names.map(|path| path.file_name().unwrap().to_string_lossy().into()).collect();
        names.sort();
        names
    };
    let mut entry = keep_kit(&job());
    for name in ["../Van \"2\"/\u{e9}", "../Van \"2\"/\u{e9}", "", "???"] {
        entry.name = name.into();
        write(folder.path(), &entry, None).unwrap();
    }
    assert_eq!(
        names(folder.path()),
        ["kit-2.ron", "kit-van-2-\u{e9}-2.ron", "kit-van-2-\u{e9}.ron", "kit.ron"]
    );
    let path = folder.path().join("kit.ron");
    entry.name = "Renamed".into();
    assert_eq!(write(folder.path(), &entry, Some(&path)), Ok(path.clone()));
    assert_eq!(read(&path).unwrap().name, "Renamed");
    remove(&path).unwrap();
    assert_eq!(names(folder.path()).len(), 3);
    assert!(remove(&path).unwrap_err().to_string().starts_with("cannot take this off the shelf ("));
}

#[test]
fn a_broken_file_is_told_with_its_place_and_the_others_are_there() {
    let folder = tempfile::tempdir().unwrap();
    write(folder.path(), &keep_kit(&job()), None).unwrap();
    let plate = "plate: (holes: [(id: \"a\", right: \"0 in\", down: \"0 in\")])";
    for (name, text, said) in [
        ("a", "(format: 1,\n name: \"x\",\n thing: mount((kind: rope)))", "line 3, column 22: "),
        ("b", "(format: 2, name: 3)", "this has format 2, this program reads format 1"),
        ("c", "(name: \"x\")", "line 1, column 1: the format is missing"),
        ("d", "", "line 1, column 1: the file is empty"),
        (
            "e",
            "(format: 1, name: \"x\",\n thing: wall((wet: true)))",
            "line 2, column 9: a wall of the shelf",
        ),
        (
            "f",
            &format!(
                "(format: 1, name: \"x\", thing: mount((kind: arm, {plate},\n required: (holes: [\"b\"]))))"
            ),
            "line 2, column 12: the plate has no hole or slot \"b\"",
        ),
        (
            "g",
            "(format: 1, name: \"x\",\n thing: kit((cables: [(id: \"a\"), (id: \"a\")])))",
            "line 2, column 9: the id \"a\" stands twice",
        ),
        ("h", "(format: 1, name: \"x\", thing: piece((kind: display, width: \"-1 in\")))", "line 1, column "),
    ] {
        let path = folder.path().join(format!("{name}.ron"));
        std::fs::write(&path, text).unwrap();
        let why = read(&path).unwrap_err().to_string();
        assert!(why.starts_with(said), "{name}: {why}");
        assert!(why.ends_with(&path.display().to_string()), "{why}");
    }
    std::fs::write(folder.path().join("i.ron"), [0xff, 0xfe]).unwrap();
    std::fs::create_dir(folder.path().join("j.ron")).unwrap();
    std::fs::write(folder.path().join("notes.txt"), "not looked at").unwrap();
    let found = list(folder.path());
    assert_eq!((found.things.len(), found.troubles.len()), (1, 10), "{:?}", found.troubles);
}

#[test]
fn what_cannot_be_kept_leaves_the_shelf_as_it_was() {
    let folder = tempfile::tempdir().unwrap();
    let mut entry = keep(&job(), &Id::new("display-1")).unwrap();
    let path = write(folder.path(), &entry, None).unwrap();
    let before = std::fs::read_to_string(&path).unwrap();
    let Thing::Piece(piece) = &mut entry.thing else { panic!("{entry:?}") };
    piece.width = Some(strikeline_solver::units::Length::millimetres(-1.0));
    let why = write(folder.path(), &entry, Some(&path)).unwrap_err();
    assert!(matches!(why, ShelfError::NotWritten { .. }), "{why}");
    let in_a_file = path.join("shelf");
    let why = write(&in_a_file, &keep_kit(&job()), None).unwrap_err().to_string();
    assert!(why.starts_with("cannot keep this on the shelf ("), "{why}");
    assert_eq!(std::fs::read_to_string(&path).unwrap(), before);
    assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 1);
}
