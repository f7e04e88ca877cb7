//! The command line as it is called: what is printed, where, and the exit code.
#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::panic,
    reason = "a failure here is a failed test"
)]

use serde_json::Value;
use std::path::{Path, PathBuf};

/// What a call gave.
struct Said {
    code: u8,
    out: String,
    err: String,
}

fn run(arguments: &[&str]) -> Said {
    let (mut out, mut err) = (Vec::new(), Vec::new());
    let code = strikeline::cli::run(["strikeline"].iter().chain(arguments), &mut out, &mut err);
    Said { code, out: String::from_utf8(out).unwrap(), err: String::from_utf8(err).unwrap() }
}

/// A folder for one test.
struct Room(tempfile::TempDir);

impl Room {
    fn new() -> Self {
        Self(tempfile::tempdir().unwrap())
    }

    fn path(&self, name: &str) -> String {
        self.0.path().join(name).to_str().unwrap().to_owned()
    }

    fn job(&self, name: &str, text: &str) -> String {
        std::fs::write(self.path(name), text).unwrap();
        self.path(name)
    }

    /// Two walls: the first with two options, the other with one.
    fn two_walls(&self) -> String {
        let wall = |id: &str, options: &str| {
            format!("(id: \"{id}\", width: \"4 m\", height: \"2.4 m\", options: [{options}])")
        };
        let option = |id: &str| {
            let place = "across: on_wall, upright: height(of: centre, by: \"57 in\")";
            format!("(id: \"{id}\", hangings: [(piece: \"d\", mount: \"m\", {place})])")
        };
        let walls =
            [wall("north", &format!("{}, {}", option("a"), option("b"))), wall("south", &option("c"))];
        let text = format!(
            "(format: 1, pieces: [(id: \"d\", kind: display, width: \"50 in\", height: \"28 in\")], \
             mounts: [(id: \"m\", kind: flush, drop: \"6 in\")], walls: [{}])",
            walls.join(", ")
        );
        self.job("two.ron", &text)
    }
}

const STOPPED: &str = "(format: 1, pieces: [(kind: display, width: \"5 m\", height: \"2 m\")], \
     mounts: [(kind: flush)], walls: [(width: \"4 m\", height: \"2.4 m\")])";

fn demos() -> Vec<PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../demo-jobs");
    let mut demos: Vec<PathBuf> =
        std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    demos.sort();
    demos
}

fn json(path: &str, more: &[&str]) -> Value {
    let arguments: Vec<&str> = ["plan", path, "--json"].into_iter().chain(more.iter().copied()).collect();
    let said = run(&arguments);
    assert!(said.code <= 1 && said.err.is_empty(), "{}", said.err);
    assert!(said.out.ends_with("}\n"));
    serde_json::from_str(&said.out).unwrap()
}

fn keys(value: &Value) -> Vec<&str> {
    value.as_object().unwrap().keys().map(String::as_str).collect()
}

fn list<'v>(value: &'v Value, key: &str) -> &'v [Value] {
    value[key].as_array().unwrap_or_else(|| panic!("{key} is a list"))
}

#[test]
fn help_and_version_are_printed_and_wrong_usage_is_unusable() {
    for (arguments, words) in [(["--help"], "Usage: strikeline"), (["--version"], "strikeline ")] {
        let said = run(&arguments);
        assert_eq!((said.code, said.err.as_str()), (0, ""));
        assert!(said.out.contains(words), "{}", said.out);
    }
    for arguments in [&["plan"][..], &["check"], &["plan", "a.ron", "--colour"], &["sheet", "a.ron"]] {
        let said = run(arguments);
        assert_eq!((said.code, said.out.as_str()), (2, ""), "{arguments:?}");
        assert!(said.err.contains("Usage: strikeline"), "{}", said.err);
    }
}

#[test]
fn the_exit_code_tells_what_stops_the_job() {
    let room = Room::new();
    let (well, stopped) = (room.two_walls(), room.job("stopped.ron", STOPPED));
    let gone = room.path("gone.ron");
    for (path, code) in [(&well, 0), (&stopped, 1), (&gone, 2)] {
        let said = run(&["plan", path]);
        assert_eq!(said.code, code, "{}{}", said.out, said.err);
        assert_eq!(said.out.is_empty(), code == 2, "a stopped job still has its plan");
        assert_eq!(said.err.is_empty(), code != 2, "{}", said.err);
    }
}

#[test]
fn a_file_of_something_else_is_told_plainly_and_nothing_is_written() {
    let room = Room::new();
    let (other, out) = (room.job("letter.ron", "rubbish"), room.job("wall.pdf", "mine"));
    for arguments in [&["plan", &other][..], &["check", &other], &["sheet", &other, "--out", &out]] {
        let said = run(arguments);
        assert_eq!(said.code, 2, "{arguments:?}");
        let told = format!("{}{}", said.out, said.err);
        assert!(
            told.contains("this file is no job (it begins with `rubbish`, and a job begins with"),
            "{told}"
        );
        assert!(told.trim_end().ends_with(&format!("; choose a job file (.ron): {other}")), "{told}");
    }
    assert_eq!(std::fs::read_to_string(&out).unwrap(), "mine");
}

#[test]
fn check_prints_a_line_each_and_exits_with_the_worst() {
    let room = Room::new();
    let (well, stopped) = (room.two_walls(), room.job("stopped.ron", STOPPED));
    let bad = room.job("bad.ron", "(format: 1,\n colour: 3)");
    for (paths, code) in [(&[&well][..], 0), (&[&stopped, &well], 1), (&[&bad, &stopped, &well], 2)] {
        let arguments: Vec<&str> =
            ["check"].into_iter().chain(paths.iter().map(|path| path.as_str())).collect();
        let said = run(&arguments);
        assert_eq!(said.code, code, "{}", said.out);
        let lines: Vec<&str> = said.out.lines().collect();
        assert_eq!(lines.len(), paths.len(), "{}", said.out);
        for (line, path) in lines.iter().zip(paths) {
            let verdict = match path.as_str() {
                path if path == well => "well: ",
                path if path == stopped => "stopped: ",
                _ => "unusable: line 2, column ",
            };
            assert!(line.starts_with(verdict), "{line}");
            assert!(line.ends_with(&format!(": {path}")), "{line}");
        }
    }
}

#[test]
fn an_option_may_be_named_once_a_wall() {
    let room = Room::new();
    let path = room.two_walls();
    let options = |more: &[&str]| -> Vec<String> {
        list(&json(&path, more), "walls")
            .iter()
            .map(|wall| wall["option"].as_str().unwrap().to_owned())
            .collect()
    };
    assert_eq!(options(&[]), ["a", "c"]);
    assert_eq!(options(&["--option", "b"]), ["b", "c"]);
    assert_eq!(options(&["--option", "c", "--option", "b"]), ["b", "c"]);
    for (more, told) in [
        (&["--option", "z"][..], "there is no option \"z\"; the job has a, b, c"),
        (&["--option", "a", "--option", "b"], "for wall north; give one a wall"),
    ] {
        let arguments: Vec<&str> = ["plan", &path].into_iter().chain(more.iter().copied()).collect();
        let said = run(&arguments);
        assert_eq!((said.code, said.out.as_str()), (2, ""));
        assert!(said.err.contains(told), "{}", said.err);
    }
    let none = room.job("none.ron", STOPPED);
    let said = run(&["plan", &none, "--option", "a"]);
    assert_eq!(said.code, 2);
    assert!(said.err.contains("the job has none"), "{}", said.err);
}

#[test]
fn a_sheet_is_written_a_page_each_or_all_in_one() {
    let room = Room::new();
    let path = room.two_walls();
    for (ending, begins) in [("svg", &b"<?xml"[..]), ("png", b"\x89PNG")] {
        let out = room.path(&format!("wall.{ending}"));
        let said = run(&["sheet", &path, "--out", &out, "--option", "b", "--kind", "elevation"]);
        assert_eq!(said.code, 0, "{}", said.err);
        let second = room.path(&format!("wall-2.{ending}"));
        assert_eq!(said.out, format!("{out}\n{second}\n"));
        for file in [out, second] {
            assert!(std::fs::read(&file).unwrap().starts_with(begins), "{file}");
        }
    }
    let out = room.path("wall.PDF");
    let said = run(&["sheet", &path, "--out", &out, "--kind", "all", "--paper", "tabloid"]);
    assert_eq!((said.code, said.out), (0, format!("{out}\n")), "{}", said.err);
    let bytes = std::fs::read(&out).unwrap();
    assert!(bytes.starts_with(b"%PDF-"));
    // 17 x 11 in, in points.
    let text: String = bytes.iter().map(|byte| char::from(*byte)).collect();
    assert!(text.contains("1224") && text.contains("792"), "the paper asked for");
}

#[test]
fn the_mark_out_is_drawn_unless_another_is_asked_for_and_says_the_date_it_is_given() {
    let room = Room::new();
    let path = room.two_walls();
    let out = room.path("wall.svg");
    let said = run(&["sheet", &path, "--out", &out, "--date", "14 March"]);
    assert_eq!(said.code, 0, "{}", said.err);
    assert!(said.out.lines().count() > 2, "pages of a list: {}", said.out);
    let first = std::fs::read_to_string(&out).unwrap();
    for told in ["Mark-out, page 1 of", "14 March", "File: two.ron"] {
        assert!(first.contains(told), "{told}");
    }
    for arguments in [["--kind", "poster"], ["--paper", "a0"]] {
        let said = run(&[&["sheet", &path, "--out", &out][..], &arguments].concat());
        assert_eq!(said.code, 2);
        assert!(said.err.contains("there are: "), "{}", said.err);
    }
}

#[test]
fn a_sheet_that_cannot_be_written_is_told() {
    let room = Room::new();
    let path = room.two_walls();
    for (name, told) in [
        ("wall.jpg", "PDF, SVG or PNG"),
        ("wall", "PDF, SVG or PNG"),
        ("gone/wall.svg", "cannot write the sheet"),
    ] {
        let out = room.path(name);
        let said = run(&["sheet", &path, "--out", &out]);
        assert_eq!((said.code, said.out.as_str()), (2, ""));
        assert!(said.err.contains(told) && said.err.trim_end().ends_with(&out), "{}", said.err);
        assert!(!Path::new(&out).exists());
    }
    let text = std::fs::read_to_string(&path).unwrap();
    let hebrew = room.job("hebrew.ron", &text.replace("format: 1,", "format: 1, title: \"\u{5e9}\u{5dc}\","));
    let out = room.path("wall.pdf");
    let said = run(&["sheet", &hebrew, "--out", &out]);
    assert_eq!((said.code, said.out.as_str()), (2, ""));
    assert!(said.err.contains("U+05E9") && said.err.trim_end().ends_with(&hebrew), "{}", said.err);
    assert!(!Path::new(&out).exists());
}

#[test]
fn json_has_the_promised_keys_in_their_order() {
    let mut probes = 0;
    for demo in demos() {
        let answer = json(demo.to_str().unwrap(), &[]);
        assert_eq!(keys(&answer), ["walls", "carry"]);
        for line in list(&answer, "carry") {
            assert_eq!(keys(line), ["what", "count", "why", "short_by"]);
        }
        for wall in list(&answer, "walls") {
            let of_wall = [
                "id",
                "name",
                "option",
                "agreed",
                "next",
                "verdict",
                "cable",
                "assumed",
                "pieces",
                "studs",
                "spacing",
                "planes",
                "outliers",
                "next_probe",
                "marks",
                "sight",
                "error_budget",
                "findings",
            ];
            assert_eq!(keys(wall), of_wall);
            if !wall["error_budget"].is_null() {
                assert_eq!(
                    keys(&wall["error_budget"]),
                    ["piece", "centre_mm", "top_mm", "tilt_deg", "level_deg"]
                );
                for part in ["centre_mm", "top_mm", "tilt_deg"] {
                    assert_eq!(keys(&wall["error_budget"][part]), ["worst", "rss", "largest"]);
                }
            }
            for assumed in list(wall, "assumed") {
                assert_eq!(keys(assumed), ["subject", "what", "shown"]);
            }
            for stud in list(wall, "studs") {
                assert_eq!(
                    keys(stud),
                    ["centre_mm", "left_mm", "right_mm", "doubt_mm", "at_height_mm", "probability", "known"]
                );
                assert!(["met", "inferred", "expected"].contains(&stud["known"].as_str().unwrap()), "{stud}");
            }
            for spacing in list(wall, "spacing") {
                assert_eq!(keys(spacing), ["mm", "probability"]);
            }
            for plane in list(wall, "planes") {
                assert_eq!(keys(plane), ["on", "spacing"]);
            }
            if !wall["next_probe"].is_null() {
                let mut probe = wall["next_probe"].clone();
                for means in list(&wall["next_probe"], "means") {
                    assert_eq!(keys(means), ["answer", "words"]);
                }
                probe.as_object_mut().unwrap().shift_remove("means");
                mark_has_its_keys(&probe);
                assert_eq!(probe["stage"], "probe");
                probes += 1;
            }
            for outlier in list(wall, "outliers") {
                assert_eq!(keys(outlier), ["hit", "why"]);
            }
            for finding in list(wall, "findings") {
                assert_eq!(keys(finding), ["level", "rule", "subject", "text"]);
            }
            cable_has_its_keys(&wall["cable"]);
            list(wall, "pieces").iter().for_each(piece_has_its_keys);
            list(wall, "marks").iter().for_each(mark_has_its_keys);
        }
    }
    assert!(probes > 1, "some demos ask for a probe");
}

fn cable_has_its_keys(cable: &Value) {
    if cable.is_null() {
        return;
    }
    let of_cable = [
        "allowed",
        "by",
        "entry",
        "exit",
        "run",
        "length_mm",
        "cut_length_mm",
        "cables",
        "crosses",
        "cost",
        "for_the_electrician",
        "alternatives",
    ];
    assert_eq!(keys(cable), of_cable);
    for opening in ["entry", "exit"].iter().map(|key| &cable[key]).filter(|opening| !opening.is_null()) {
        assert_eq!(keys(opening), ["x_mm", "y_mm", "width_mm", "height_mm"]);
    }
    for lead in list(cable, "cables") {
        assert_eq!(keys(lead), ["id", "length_mm", "cut_length_mm", "stock", "before_lift"]);
    }
    let of_cost = [
        "not_allowed",
        "studs_bored",
        "patches",
        "blocks",
        "tight_bends",
        "visible_mm",
        "length_mm",
        "behind_mm",
    ];
    assert!(cable["cost"].is_null() || keys(&cable["cost"]) == of_cost, "{}", cable["cost"]);
    for other in list(cable, "alternatives") {
        assert_eq!(keys(other), ["by", "entry", "exit", "run", "crosses", "cost", "why"]);
    }
}

fn piece_has_its_keys(piece: &Value) {
    cable_has_its_keys(&piece["cable"]);
    let sides = ["left_mm", "right_mm", "bottom_mm", "top_mm"];
    let of_piece: Vec<&str> = ["id", "name", "kind"]
        .into_iter()
        .chain(sides)
        .chain(["plate", "holes", "verdict", "fasteners", "left_empty", "anchors", "better_holes", "limits"])
        .chain(["cable", "error_budget"])
        .collect();
    assert_eq!(keys(piece), of_piece);
    assert!(piece["plate"].is_null() || keys(&piece["plate"]) == sides, "{}", piece["plate"]);
    let limits = &piece["limits"];
    assert!(limits.is_null() || keys(limits) == ["mass_kg", "pull_n", "reach_mm"], "{limits}");
    let holds = |word: &str| piece["verdict"][word] == "holds";
    assert!(limits.is_null() || holds("if_probed"), "{piece}");
    for hole in list(piece, "holes") {
        assert_eq!(keys(hole), ["id", "name", "x_mm", "y_mm", "meets", "chance"]);
    }
    for case in piece["verdict"]["cases"].as_array().into_iter().flatten() {
        assert_eq!(keys(case), ["case", "if_probed", "use", "turning_nm", "why"]);
        assert!(
            case["if_probed"] != "not_known" || !case["why"].is_null() || case["use"].is_number(),
            "{case}"
        );
    }
}

fn mark_has_its_keys(mark: &Value) {
    assert_eq!(keys(mark), ["id", "name", "stage", "x_mm", "y_mm", "words", "state", "planned", "readings"]);
    let stages = ["find", "agree", "level", "probe", "open", "fix", "hang"];
    assert!(stages.contains(&mark["stage"].as_str().unwrap()), "{mark}");
    let readings = list(mark, "readings");
    assert_eq!(mark["x_mm"].is_null(), mark["y_mm"].is_null(), "{mark}");
    assert!(!mark["x_mm"].is_null() || readings.is_empty(), "a step without a place has no readings: {mark}");
    let is_level_line = mark["id"].as_str().unwrap().ends_with(".level_line");
    assert!(!is_level_line || readings.len() == 2, "read at both its ends: {mark}");
    for reading in readings {
        let mut of_reading = vec![
            "datum",
            "from_subject",
            "how",
            "direction",
            "value_mm",
            "shown",
            "closes_with_mm",
            "closes_shown",
        ];
        of_reading.extend(is_level_line.then_some("at_mm"));
        assert_eq!(keys(reading), of_reading, "{mark}");
        assert!(["left", "right", "up", "down"].contains(&reading["direction"].as_str().unwrap()));
        assert_eq!(reading["closes_with_mm"].is_null(), reading["closes_shown"].is_null(), "{reading}");
    }
}

#[test]
fn a_length_in_json_is_rounded_to_a_millionth_and_never_minus_nothing() {
    fn each_length(value: &Value, see: &mut dyn FnMut(f64)) {
        match value {
            Value::Array(all) => all.iter().for_each(|one| each_length(one, see)),
            Value::Object(all) => {
                for (key, one) in all {
                    match one.as_f64() {
                        Some(length) if key.ends_with("_mm") => see(length),
                        _ => each_length(one, see),
                    }
                }
            }
            _ => {}
        }
    }
    let mut count = 0;
    for demo in demos() {
        each_length(&json(demo.to_str().unwrap(), &[]), &mut |length| {
            count += 1;
            assert!(length != 0.0 || length.is_sign_positive());
            let millionths = length * 1e6;
            assert!((millionths - millionths.round()).abs() < 1e-3, "{length}");
        });
    }
    assert!(count > 500, "{count} lengths were seen");
}

#[test]
fn nothing_to_say_is_null() {
    let room = Room::new();
    let path = room.job("bare.ron", "(format: 1, walls: [(id: \"w\", width: \"4 m\")])");
    let wall = &json(&path, &[])["walls"][0];
    assert_eq!(wall["id"], "w");
    for key in ["name", "option"] {
        assert!(wall[key].is_null(), "{key}: {}", wall[key]);
    }
    assert_ne!(wall["next"], "", "a sentence or null");
}

#[test]
fn the_same_job_gives_the_same_text() {
    for demo in demos() {
        for more in [&[][..], &["--json"]] {
            let arguments: Vec<&str> =
                ["plan", demo.to_str().unwrap()].into_iter().chain(more.iter().copied()).collect();
            assert_eq!(run(&arguments).out, run(&arguments).out, "{}", demo.display());
        }
    }
}

/// Called by the test below in a process of its own, without a display.
#[test]
#[cfg(target_os = "linux")]
#[ignore = "called by the test below, without a display"]
fn window_without_a_display() {
    let said = run(&["rooms/den.ron"]);
    assert_eq!(said.out, "");
    assert_eq!(said.code, 2, "{}", said.err);
    println!("{}", said.err);
}

#[test]
#[cfg(target_os = "linux")]
fn without_a_display_the_window_says_so_and_names_the_other_two_ways() {
    let mut child = std::process::Command::new(std::env::current_exe().unwrap());
    child.args(["--exact", "window_without_a_display", "--ignored", "--nocapture"]);
    child.env_remove("DISPLAY").env_remove("WAYLAND_DISPLAY");
    let output = child.output().unwrap();
    let said = String::from_utf8(output.stdout).unwrap();
    assert!(output.status.success(), "{said}");
    assert!(said.contains("strikeline: no display, so the window cannot open"), "{said}");
    assert!(said.contains("strikeline plan rooms/den.ron\n"), "{said}");
    assert!(said.contains("strikeline sheet rooms/den.ron --out FILE.pdf\n"), "{said}");
}

#[test]
fn holes_chosen_by_hand_are_told_as_text_and_as_json() {
    let room = Room::new();
    let demo = demos().into_iter().find(|path| path.ends_with("breakfast_room.ron")).unwrap();
    let text = std::fs::read_to_string(demo).unwrap();
    let before = json(&room.job("before.ron", &text), &[]);
    let piece = &before["walls"][0]["pieces"][0];
    let id = piece["id"].as_str().unwrap();
    assert!(list(piece, "fasteners").iter().all(|one| one["by_hand"] == false));
    let used: Vec<&str> = list(piece, "fasteners").iter().map(|one| one["hole"].as_str().unwrap()).collect();
    let hole = used[0].rsplit('.').next().unwrap();
    let by_hand = format!("holes: [(hole: \"{hole}\", wanted: empty)], cables:");
    let path = room.job(
        "after.ron",
        &text.replacen("cables:", "\u{1}", 1).replace("cables:", &by_hand).replacen("\u{1}", "cables:", 1),
    );
    let after = json(&path, &[]);
    let piece = after["walls"][0]["pieces"].as_array().unwrap().iter().find(|one| one["id"] == id).unwrap();
    let left = list(piece, "left_empty").iter().find(|one| one["hole"] == used[0]).unwrap();
    assert_eq!((&left["by_hand"], &left["wanted"]), (&Value::Bool(true), &Value::Bool(false)));
    let said = run(&["plan", &path]);
    assert!(said.out.contains("stays empty: your choice."), "{}", said.out);
    // A verdict's word is a key, without a space.
    for key in ["word", "if_probed", "as_stated"] {
        let word = piece["verdict"][key].as_str().unwrap();
        assert!(["holds", "short", "not_known"].contains(&word), "{word}");
    }
}

#[test]
fn the_working_is_printed_after_its_plan() {
    let room = Room::new();
    let path = room.two_walls();
    let plain = run(&["plan", &path]);
    let worked = run(&["plan", &path, "--working"]);
    assert_eq!((worked.code, worked.err.as_str()), (plain.code, ""));
    assert_eq!(worked.out.matches("\nWorking: ").count(), 2, "one a wall: {}", worked.out);
    assert_eq!(plain.out.matches("Working: ").count(), 0);
    let first = plain.out.split("\nA job").next().unwrap();
    assert!(worked.out.starts_with(first), "the plan itself stays as it is");
    for demo in demos() {
        let said = run(&["plan", demo.to_str().unwrap(), "--working"]);
        assert!(said.code <= 1 && said.err.is_empty(), "{}", said.err);
        let worked = said.out.split("\nWorking: ").skip(1);
        let lines: Vec<&str> = worked.flat_map(str::lines).collect();
        assert!(!lines.is_empty(), "{}", demo.display());
        for line in lines {
            assert!(line.chars().count() <= 100 && line.trim_end() == line, "{line:?}");
        }
    }
}

#[test]
fn a_working_is_no_json() {
    let room = Room::new();
    let said = run(&["plan", &room.two_walls(), "--json", "--working"]);
    assert_eq!((said.code, said.out.as_str()), (2, ""));
    assert!(said.err.contains("--json") && said.err.contains("--working"), "{}", said.err);
    let help = run(&["plan", "--help"]);
    assert!(help.out.contains("as text only, not with --json"), "{}", help.out);
}
