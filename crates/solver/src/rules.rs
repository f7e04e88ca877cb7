//! Everything a plan must tell once its survey, framing, pieces and marks are done: one rule a file.
//!
//! A rule sees the job, the wall and the plan, and never another rule. Geometry that several share is in
//! `hung`, `plane`, `room`, `side` and `turned`. What is not known counts as the worse.

mod access_below;
mod behind_hole;
mod breaking_in;
mod brackets_off_threads;
mod brittle;
mod by_hand_not_met;
mod crooked_edge;
mod bushing;
mod cabled;
mod cut_opening;
mod does_not_close;
mod floor_not_read;
mod floor_out_of_level;
mod held_away;
mod bay_blocked;
mod bend_tight;
mod blocks_expected;
mod box_deep;
mod boxes;
mod breast_way;
mod entry_shows;
mod few_outlets;
mod exit_bay;
mod face_instead;
mod many_bends;
mod nail_plate;
mod near_opening;
mod no_way;
mod not_listed;
mod paint_disturbed;
mod power_apart;
mod power_cord;
mod room_not_known;
mod seal_block;
mod seal_pierced;
mod stock_short;
mod studs_not_known;
mod too_long;
mod tube_full;
mod hole_apart;
mod hole_on_hidden;
mod hump;
mod hung;
mod left_by_option;
mod moved_since_agreed;
mod lift_room;
mod metal_met;
mod looks_up;
mod missing;
mod more_studs_near;
mod near_box;
mod no_bay;
mod no_entry;
mod no_framing;
mod no_stud_met;
mod steel_by_metal;
mod off_wall;
mod old_wall;
mod other_side;
mod over_feature;
mod over_piece;
mod over_rating;
mod past_stud;
mod pattern_outside;
mod plane;
mod plans_only;
mod plate_not_known;
mod plate_over_proud;
mod plate_short;
mod plate_shows;
mod room;
#[cfg(test)]
mod sample;
mod seat_too_near;
mod side;
mod struck_elsewhere;
mod stands_out;
mod out_of_reach;
mod over_fire;
mod heavy_lift;
mod pull_small;
mod door_meets;
mod stuffy;
mod swing;
mod tilt;
mod turned;
mod veneer;
mod way_not_known;
mod way_shows;
mod wet_wall;
mod with_help;
mod zones;

use crate::finding::Finding;
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;

/// A rule: what it has to tell of a plan.
type Rule = fn(&Job, &Wall, &Plan) -> Vec<Finding>;

/// Every rule, in the order in which findings of one level are told.
const RULES: &[Rule] = &[
    hole_apart::check,
    held_away::check,
    cut_opening::check,
    struck_elsewhere::check,
    left_by_option::check,
    moved_since_agreed::check,
    does_not_close::check,
    off_wall::check,
    over_feature::check,
    over_piece::check,
    over_rating::check,
    pattern_outside::check,
    brackets_off_threads::check,
    veneer::check,
    no_framing::check,
    hole_on_hidden::check,
    metal_met::check,
    behind_hole::check,
    plate_over_proud::check,
    lift_room::check,
    plate_short::check,
    plate_not_known::check,
    no_stud_met::check,
    past_stud::check,
    brittle::check,
    by_hand_not_met::check,
    steel_by_metal::check,
    more_studs_near::check,
    near_box::check,
    wet_wall::check,
    other_side::check,
    old_wall::check,
    hump::check,
    plate_shows::check,
    swing::check,
    tilt::check,
    access_below::check,
    seat_too_near::check,
    looks_up::check,
    over_fire::check,
    stands_out::check,
    heavy_lift::check,
    pull_small::check,
    door_meets::check,
    stuffy::check,
    out_of_reach::check,
    no_entry::check,
    no_bay::check,
    no_way::check,
    box_deep::check,
    studs_not_known::check,
    not_listed::check,
    way_not_known::check,
    bay_blocked::check,
    blocks_expected::check,
    seal_block::check,
    bushing::check,
    exit_bay::check,
    face_instead::check,
    way_shows::check,
    entry_shows::check,
    near_opening::check,
    few_outlets::check,
    power_apart::check,
    seal_pierced::check,
    breast_way::check,
    too_long::check,
    stock_short::check,
    bend_tight::check,
    room_not_known::check,
    many_bends::check,
    tube_full::check,
    nail_plate::check,
    paint_disturbed::check,
    power_cord::check,
    floor_out_of_level::check,
    floor_not_read::check,
    crooked_edge::check,
    with_help::check,
    missing::check,
];

/// What every rule has to tell of a plan whose survey, framing, pieces and marks are done, rule by rule.
///
/// Never empty: that the tool plans and does not certify is told always, last.
#[must_use]
pub fn findings(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let told = RULES.iter().flat_map(|rule| rule(job, wall, plan));
    told.chain(plans_only::check(job, wall, plan)).collect()
}

#[cfg(test)]
mod tests {
    use super::sample::Sample;
    use super::*;
    use crate::finding::What;

    #[test]
    fn a_good_plan_tells_only_that_it_is_a_plan() {
        let mut room = Sample::good();
        // What one person may lift there.
        room.job.pieces[0].mass = Some(crate::units::Mass::kilograms(9.5));
        let told = findings(&room.job, room.wall(), &room.plan);
        assert_eq!(told.iter().map(|finding| &finding.what).collect::<Vec<_>>(), [&What::PlansOnly]);
    }

    #[test]
    fn every_rule_is_heard() {
        let mut room = Sample::good();
        room.job.pieces[0].mass = None;
        room.wall_mut().wet = Some(true);
        let told: Vec<_> =
            findings(&room.job, room.wall(), &room.plan).iter().map(|finding| finding.what.rule()).collect();
        assert_eq!(told, ["wet_wall", "missing", "plans_only"]);
    }
}
