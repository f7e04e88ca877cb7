//! Bad input: a clear message and exit 2, or a plan with findings; never a panic or a hang.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a failure here is a failed test")]

use std::path::{Path, PathBuf};

/// Runs `strikeline plan FILE` on some bytes; gives the exit code and all that was said.
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
fn endless_comments_and_texts_are_refused() {
    let text = |begin: &str, more: &str| format!("(format: 1, title: {begin}{}", more.repeat(100_000));
    for text in [text("", "/*"), text("r", "#"), text("\"", "\\n"), text("Some", "(Some")] {
        let (code, said) = plan("a.ron", text.as_bytes());
        assert_eq!(code, 2, "{said}");
        assert!(said.len() < 2000, "{} bytes said", said.len());
    }
}

#[test]
fn what_is_wrong_is_told_briefly_however_long_it_is() {
    for sum in ["9".repeat(1_000_000), "1 in + ".repeat(100_000)] {
        let text = format!("(format: 1, walls: [(width: \"{sum} in\")])");
        let (code, said) = plan("a.ron", text.as_bytes());
        assert_eq!(code, 2);
        assert!(said.len() < 2000, "{} bytes said", said.len());
    }
}

#[test]
fn a_folder_is_refused() {
    let folder = tempfile::tempdir().unwrap();
    let (code, said) = run(&["strikeline", "plan", folder.path().to_str().unwrap()]);
    assert_eq!(code, 2, "{said}");
    assert!(said.contains("no plain file"), "{said}");
}

#[cfg(unix)]
#[test]
fn a_device_and_a_pipe_that_never_end_are_refused() {
    let folder = tempfile::tempdir().unwrap();
    let pipe = folder.path().join("pipe.ron");
    assert!(std::process::Command::new("mkfifo").arg(&pipe).status().unwrap().success());
    for path in [pipe.to_str().unwrap(), "/dev/zero"] {
        let (code, said) = run(&["strikeline", "plan", path]);
        assert_eq!(code, 2, "{said}");
        assert!(said.contains("no plain file") && said.trim_end().ends_with(path), "{said}");
    }
}

#[test]
fn a_missing_file_is_told_with_its_path_last() {
    let (code, said) = run(&["strikeline", "plan", "/nowhere/at-all.ron"]);
    assert_eq!(code, 2);
    assert!(said.trim_end().ends_with("/nowhere/at-all.ron"), "{said}");
}

#[test]
fn a_newer_or_missing_format_is_refused() {
    let (code, said) = plan("a.ron", b"(format: 9, anything: 3)");
    assert_eq!(code, 2);
    assert!(said.contains("format 9") && said.contains("format 1"), "{said}");
    let (code, said) = plan("a.ron", b"(walls: [(width: \"4 m\")])");
    assert_eq!(code, 2);
    assert!(said.contains("begin the job with (format: 1,"), "{said}");
}

#[test]
fn a_job_without_a_wall_is_refused() {
    for arguments in [&["plan"][..], &["plan", "--json"], &["check"], &["sheet", "--out", "never.svg"]] {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("a.ron");
        std::fs::write(&path, "(format: 1)").unwrap();
        let all: Vec<&str> = ["strikeline"].iter().chain(arguments).copied().chain(path.to_str()).collect();
        let (code, said) = run(&all);
        assert_eq!(code, 2, "{arguments:?}: {said}");
        assert!(said.contains("no wall"), "{said}");
    }
}

#[test]
fn nonsense_is_refused_where_it_stands() {
    for (text, line) in [
        ("(format: 1,\n colour: 3)", "line 2, column 2"),
        ("(format: 1,\n\n walls: [(width: \"-4 in\")])", "line 3"),
        ("(format: 1, walls: [(width: 48)])", "line 1"),
        ("(format: 1, walls: [(width: \"inf\")])", "line 1"),
        ("(format: 1, walls: [(width: \"20 km\")])", "line 1"),
        ("(format: 1,\n title: \"a\",\n title: \"b\")", "line 3"),
        ("(format: 1, walls: [(id: \"a\"),\n (id: \"a\")])", "line 1, column 26 and at line 2, column 7"),
    ] {
        let (code, said) = plan("a.ron", text.as_bytes());
        assert_eq!(code, 2, "{text}: {said}");
        assert!(said.contains(line), "{text}: {said}");
        assert!(said.trim_end().ends_with("a.ron"), "{text}: {said}");
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
fn a_garbled_file_is_refused_or_planned() {
    let text = std::fs::read(&demos()[0]).unwrap();
    for (index, sign) in (0..text.len()).step_by(61).zip(b"([{\")]}:,9-#/ \x00\xff".iter().cycle()) {
        let mut garbled = text.clone();
        garbled[index] = *sign;
        let (code, said) = plan("a.ron", &garbled);
        let told = if code == 2 { said.trim_end().ends_with("a.ron") } else { said.contains("\nFindings\n") };
        assert!(told, "{sign:?} at {index}: {said}");
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
        [("1000 m", "50 in"), ("0 in", "50 in"), ("100 in", "0 in"), ("0 mm", "0 mm"), ("1 mm", "9000 m")]
    {
        let (code, said) = plan("a.ron", text(wall, width).as_bytes());
        assert!(code <= 1, "{wall}, {width}: {said}");
        assert!(said.contains("\nFindings\n"), "{wall}, {width}: {said}");
    }
    assert_eq!(plan("a.ron", text("1000 m", "50 in").as_bytes()).0, 0, "a long wall is a wall");
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
