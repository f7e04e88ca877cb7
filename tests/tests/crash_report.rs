//! The crash report holds what it says, with a few kills.
#![allow(clippy::unwrap_used, reason = "a failure here is a failed test")]

#[test]
fn a_session_killed_in_mid_edit_loses_nothing_older_than_two_seconds() {
    let report = env!("CARGO_BIN_EXE_report");
    let out = std::process::Command::new(report).args(["crash", "5", "7"]).output().unwrap();
    let said = String::from_utf8_lossy(&out.stdout);
    assert!(out.status.success() && said.ends_with("crash: all bounds held\n"), "{said}");
}
