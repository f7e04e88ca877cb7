//! The walls between the crates are what DEVELOPERS.md says.
#![allow(clippy::expect_used, reason = "a failure here is a failed test")]

/// The packages that a package is built from, as the lock file and the manifests resolve them.
fn tree(package: &str) -> String {
    let out = std::process::Command::new(env!("CARGO"))
        .args(["tree", "--offline", "--prefix", "none", "--edges", "normal", "-p", package])
        .current_dir(env!("CARGO_MANIFEST_DIR"))
        .output()
        .expect("cargo runs");
    assert!(out.status.success(), "{}", String::from_utf8_lossy(&out.stderr));
    String::from_utf8_lossy(&out.stdout).into_owned()
}

fn names(tree: &str) -> Vec<&str> {
    tree.lines().filter_map(|line| line.split_whitespace().next()).collect()
}

#[test]
fn the_solver_knows_neither_drawing_nor_window_nor_disk() {
    let tree = tree("strikeline-solver");
    for never in ["strikeline", "strikeline-drawing", "egui", "eframe", "ron", "tempfile", "clap"] {
        assert!(!names(&tree).contains(&never), "{never}");
    }
}

#[test]
fn the_drawing_knows_no_window_nor_disk() {
    let tree = tree("strikeline-drawing");
    assert!(names(&tree).contains(&"strikeline-solver"));
    for never in ["strikeline", "egui", "eframe", "ron", "tempfile", "clap"] {
        assert!(!names(&tree).contains(&never), "{never}");
    }
}

#[test]
fn no_network_crate_is_built() {
    let tree = tree("strikeline");
    for never in
        ["reqwest", "hyper", "ureq", "curl", "tokio", "rustls", "native-tls", "openssl", "h2", "quinn"]
    {
        assert!(!names(&tree).contains(&never), "{never}");
    }
}
