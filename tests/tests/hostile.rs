//! Bad input: a clear message and exit 2, or a plan with findings; never a panic or a hang.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a failure here is a failed test")]

use std::path::{Path, PathBuf};

/// Runs `strikeline plan FILE --json` on some bytes; gives the exit code and all that was said.
fn plan(name: &str, bytes: &[u8]) -> (u8, String) {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join(name);
    std::fs::write(&path, bytes).unwrap();
    run(&["strikeline", "plan", path.to_str().unwrap()])
}

fn run(arguments: &[&str]) -> (u8, String) {
    let (mut out, mut err) = (Vec::new(), Vec::new());
    let code = strikeline::cli::run(arguments, &mut out, &mut err);
    out.extend(err);
    (code, String::from_utf8(out).unwrap())
}

fn demos() -> Vec<PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../demo-jobs");
    let mut demos: Vec<PathBuf> =
        std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    demos.sort();
    demos
}

#[test]
fn an_empty_file_is_refused() {
    let (code, said) = plan("a.ron", b"");
    assert_eq!(code, 2, "{said}");
    assert!(said.contains("empty"), "{said}");
}

#[test]
fn a_binary_file_is_refused() {
    let (code, said) = plan("a.ron", &[0, 159, 146, 150, 255, 0, 1]);
    assert_eq!(code, 2, "{said}");
    assert!(said.contains("not text"), "{said}");
}

#[test]
fn a_huge_file_is_refused() {
    let (code, said) = plan("a.ron", &vec![b' '; 50_000_000]);
    assert_eq!(code, 2, "{said}");
    assert!(said.contains("4 MB"), "{said}");
}

#[test]
fn deep_nesting_is_refused() {
    for text in ["(format: 1, pieces: ".to_owned() + &"[".repeat(100_000), "(".repeat(100_000)] {
        let (code, said) = plan("a.ron", text.as_bytes());
        assert_eq!(code, 2, "{said}");
        assert!(said.contains("line 1"), "{said}");
    }
}

#[test]
fn a_missing_file_is_told_with_its_path_last() {
    let (code, said) = run(&["strikeline", "plan", "/nowhere/at-all.ron"]);
    assert_eq!(code, 2);
    assert!(said.trim_end().ends_with("/nowhere/at-all.ron"), "{said}");
}

#[test]
fn a_newer_format_is_refused_naming_both() {
    let (code, said) = plan("a.ron", b"(format: 9, anything: 3)");
    assert_eq!(code, 2);
    assert!(said.contains('9') && said.contains("format 1"), "{said}");
}

#[test]
fn nonsense_is_refused_where_it_stands() {
    for (text, line) in [
        ("(format: 1,\n colour: 3)", "line 2"),
        ("(format: 1,\n\n walls: [(width: \"-4 in\")])", "line 3"),
        ("(format: 1, walls: [(width: 48)])", "line 1"),
        ("(format: 1, walls: [(width: \"inf\")])", "line 1"),
        ("(format: 1, walls: [(id: \"a\"), (id: \"a\")])", "stands twice"),
    ] {
        let (code, said) = plan("a.ron", text.as_bytes());
        assert_eq!(code, 2, "{text}: {said}");
        assert!(said.contains(line), "{text}: {said}");
    }
}

#[test]
fn a_cut_file_is_refused_wherever_it_is_cut() {
    let text = std::fs::read(&demos()[0]).unwrap();
    let whole = String::from_utf8(text.clone()).unwrap().trim_end().len();
    for cut in (1..whole).step_by(97) {
        let (code, said) = plan("a.ron", &text[..cut]);
        assert_eq!(code, 2, "cut at {cut}: {said}");
    }
}

#[test]
fn a_wall_of_a_kilometre_and_sizes_of_nothing_give_a_plan() {
    let text = |wall: &str, width: &str| {
        format!(
            "(format: 1, pieces: [(kind: display, width: \"{width}\", height: \"{width}\")], \
             mounts: [(kind: flush, drop: \"1 in\")], walls: [(width: \"{wall}\", height: \"{wall}\")])"
        )
    };
    for (wall, width) in
        [("1000 m", "50 in"), ("0 in", "50 in"), ("100 in", "0 in"), ("0 mm", "0 mm"), ("1 mm", "9 km")]
    {
        let (code, said) = plan("a.ron", text(wall, width).as_bytes());
        assert!(code <= 2, "{said}");
        assert!(!said.is_empty());
    }
    assert_eq!(plan("a.ron", text("0 in", "50 in").as_bytes()).0, 1, "a wall of nothing stops the job");
}

#[test]
fn ten_thousand_hits_give_a_plan() {
    let hits: String =
        (0..10_000).map(|n| format!("(kind: centre, x: (by: \"{} mm\")),", n * 7 % 4000)).collect();
    let text = format!(
        "(format: 1, pieces: [(kind: display, width: \"50 in\", height: \"28 in\")], \
         mounts: [(kind: flush, drop: \"6 in\")], walls: [(width: \"4 m\", height: \"2.4 m\", hits: [{hits}])])"
    );
    let (code, said) = plan("a.ron", text.as_bytes());
    assert!(code <= 1, "{said}");
    assert!(said.contains("level line") || said.contains("Level line"), "{said}");
}

#[test]
fn a_ring_is_a_finding() {
    let text = "(format: 1, walls: [(id: \"w\", width: \"4 m\", height: \"2 m\", features: [\
        (id: \"a\", kind: shelf, across: (left: (from: \"b.right\", by: \"1 in\"), width: \"9 in\")),\
        (id: \"b\", kind: shelf, across: (left: (from: \"a.right\", by: \"1 in\"), width: \"9 in\"))])])";
    let (code, said) = plan("a.ron", text.as_bytes());
    assert_eq!(code, 1, "{said}");
}

#[test]
fn every_demo_job_is_planned_and_reads_back_as_written() {
    for path in demos() {
        let (code, said) = run(&["strikeline", "check", path.to_str().unwrap()]);
        assert!(code < 2, "{said}");
        let opened = strikeline::files::job_file::read_job(&path).unwrap();
        let written = strikeline::files::job_file::write_job_text(&opened.job).unwrap();
        let again = strikeline::files::job_file::read_job_text(&written, &path).unwrap();
        assert_eq!(again.job, opened.job, "{}", path.display());
        assert!(again.canonical, "{}", path.display());
    }
}

#[test]
fn json_has_the_promised_keys() {
    let (_, said) = run(&["strikeline", "plan", "--json", demos()[0].to_str().unwrap()]);
    let answer: serde_json::Value = serde_json::from_str(&said).unwrap();
    let wall = &answer["walls"][0];
    let keys: Vec<&String> = wall.as_object().unwrap().keys().collect();
    assert_eq!(keys, ["id", "name", "option", "next", "assumed", "pieces", "studs", "marks", "findings"]);
    let reading = wall["marks"]
        .as_array()
        .unwrap()
        .iter()
        .find_map(|mark| mark["readings"].as_array()?.first())
        .unwrap();
    for key in
        ["datum", "from_subject", "how", "direction", "value_mm", "shown", "closes_with_mm", "closes_shown"]
    {
        assert!(reading.get(key).is_some(), "{key}");
    }
}

#[test]
fn saving_keeps_a_backup_and_never_replaces_a_change_unasked() {
    use strikeline::files::save::{backup_of, save_job};
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("room.ron");
    let job = strikeline_solver::job::Job { title: "Room".into(), ..strikeline_solver::job::Job::new() };
    let text = save_job(&job, &path, None).unwrap();
    let other = strikeline_solver::job::Job { title: "Other".into(), ..job.clone() };
    save_job(&other, &path, Some(&text)).unwrap();
    assert_eq!(std::fs::read_to_string(backup_of(&path)).unwrap(), text);
    let refused = save_job(&job, &path, Some(&text)).unwrap_err().to_string();
    assert!(refused.contains("changed on the disk"), "{refused}");
    assert!(std::fs::read_to_string(&path).unwrap().contains("Other"));
}
