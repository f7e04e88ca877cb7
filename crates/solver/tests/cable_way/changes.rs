//! What a way made anew changes is told: what to close, the new marks, the new length, the patch.

use super::room::{GOOD, Room};
use strikeline_solver::words::cable_changes;

const LOOKED: &str =
    "facts: [(id: \"fact-1\", mark: \"display-1.look\", option: \"option-1\", state: done)],";

#[test]
fn what_a_block_on_the_way_changes_is_told() {
    let before = Room { wall: LOOKED, ..GOOD }.plan();
    assert_eq!(cable_changes(&before, &before), Vec::<String>::new());
    let duct = "hidden: [(id: \"duct-1\", kind: duct, across: (left: (by: \"69 in\"), right: (by: \"83 in\")), upright: (bottom: \
                (by: \"20 in\"), height: \"70 in\"))],";
    let wall: &'static str = format!("{LOOKED} {duct}").leak();
    let told = cable_changes(&before, &Room { wall, ..GOOD }.plan());
    let begins = ["Close the hole of the look", "The entry is now at ", "The cables now come out at "];
    for (told, begins) in told.iter().zip(begins) {
        assert!(told.starts_with(begins) && told.ends_with('.'), "{told}");
    }
    assert_eq!(told.len(), 3, "a stocked cable does for both: {told:?}");
    // Through a block where there is no other bay: the same openings, and a patch.
    let block = "hidden: [(id: \"block-1\", kind: fire_block, across: (left: (by: \"69 in\"), right: (by: \"83 in\")), upright: \
                 (centre: (by: \"30 in\"), height: \"1 1/2 in\"))],";
    let kept = "bay: \"76 in\"";
    let (open, blocked) = (Room { way: kept, ..GOOD }, Room { way: kept, wall: block, ..GOOD });
    let told = cable_changes(&open.plan(), &blocked.plan());
    assert_eq!(told.len(), 1, "{told:?}");
    assert!(
        told[0].starts_with("The face is opened and patched at ") && told[0].contains("30\" above the floor"),
        "{told:?}"
    );
}
