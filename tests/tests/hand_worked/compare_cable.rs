//! Compares a way of cables with what a case expects.

use super::super::case::ExpectedCable;
use super::{Wrong, length};
use strikeline_solver::geometry::Rect;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::cable::{Crosses, WayBy};
use strikeline_solver::route;

pub(super) fn cable(expected: &ExpectedCable, plan: &Plan, wrong: &mut Wrong) {
    let name = &expected.piece;
    let piece = plan.pieces.iter().find(|piece| piece.id.as_str() == name);
    let Some(cable) = piece.and_then(|piece| piece.cable.as_ref()) else {
        wrong.push(format!("{name}: no cables are planned"));
        return;
    };
    let way = cable.way.as_ref();
    let mut same = |what: &str, expected: Option<String>, actual: Option<String>| {
        if expected != actual {
            wrong.push(format!("{name}: {what}: expected {expected:?}, is {actual:?}"));
        }
    };
    let by = way.map(|way| match way.by {
        WayBy::InWall => "in_wall".to_owned(),
        WayBy::OnFace => "on_face".to_owned(),
    });
    same("by", expected.by.clone(), by);
    if let Some(allowed) = &expected.allowed {
        let told = cable.allowed.map_or("not known", |allowed| if allowed { "yes" } else { "no" });
        same("allowed", Some(allowed.clone()), Some(told.to_owned()));
    }
    if let Some(counts) = expected.counts {
        let told = way.map(|way| {
            let cost = way.cost;
            (cost.not_allowed, cost.studs_bored, cost.patches, cost.blocks, cost.tight_bends)
        });
        same("counts", Some(format!("{counts:?}")), told.map(|told| format!("{told:?}")));
    }
    if let Some(before) = expected.before_lift {
        let told = cable.leads.first().map(|lead| lead.before_lift.to_string());
        same("before the lift", Some(before.to_string()), told);
    }
    if let Some(id) = &expected.in_the_way {
        same("in the way", Some(id.clone()), cable.in_the_way.as_ref().map(ToString::to_string));
    }
    if let Some(crosses) = &expected.crosses {
        let told = way.map(|way| {
            let names = way.crosses.iter().map(|crosses| match crosses {
                Crosses::Stud(_) => "stud".to_owned(),
                Crosses::Hidden(id, ..) => id.to_string(),
                Crosses::Insulation => "insulation".to_owned(),
            });
            format!("{:?}", names.collect::<Vec<_>>())
        });
        same("crosses", Some(format!("{crosses:?}")), told);
    }
    if expected.others.is_some_and(|others| cable.alternatives.len() < others) {
        wrong.push(format!("{name}: {} other ways", cable.alternatives.len()));
    }
    let entry = way.and_then(|way| way.entry).map(Rect::centre);
    let exit = way.map(|way| way.exit.centre());
    let lead = cable.leads.first();
    for (what, expected, actual) in [
        ("entry x", expected.entry_x, entry.map(|at| at.x)),
        ("entry y", expected.entry_y, entry.map(|at| at.y)),
        ("exit x", expected.exit_x, exit.map(|at| at.x)),
        ("exit y", expected.exit_y, exit.map(|at| at.y)),
        ("visible", expected.visible, way.map(|way| route::length(way.cost.visible_nm))),
        ("length", expected.length, way.map(|way| route::length(way.cost.length_nm))),
        ("cable", expected.lead, lead.and_then(|lead| lead.length).map(|length| length.value)),
        ("to cut", expected.cut, lead.and_then(|lead| lead.cut_length)),
    ] {
        length(&format!("{name}: {what}"), expected, actual, wrong);
    }
}
