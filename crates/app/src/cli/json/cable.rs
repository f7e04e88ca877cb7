//! The way of the cables as JSON.

use super::mm;
use serde_json::{Value, json};
use strikeline_solver::geometry::Rect;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::cable::{CablePlan, Crosses, Way, WayBy};
use strikeline_solver::route::{Cost, length};
use strikeline_solver::words;

/// The wall's own: that of its first display, else of its first piece with a port; `null` where none has one.
pub(super) fn of_wall(plan: &Plan) -> Value {
    use strikeline_solver::job::piece::PieceKind;
    let with = || plan.pieces.iter().filter(|piece| piece.cable.is_some());
    let first = with().find(|piece| piece.kind == PieceKind::Display).or_else(|| with().next());
    of(plan, first.and_then(|piece| piece.cable.as_ref()))
}

/// A piece's; `null` where it has no port.
pub(super) fn of(plan: &Plan, cable: Option<&CablePlan>) -> Value {
    let Some(cable) = cable else { return Value::Null };
    let (longest, longest_cut) = cable.longest();
    let leads = cable.leads.iter().map(|lead| {
        json!({
            "id": lead.id.to_string(),
            "length_mm": lead.length.map(|length| mm(length.value)),
            "cut_length_mm": lead.cut_length.map(mm),
            "stock": lead.stock.as_ref().map(ToString::to_string),
            "before_lift": lead.before_lift,
        })
    });
    let chosen = cable.way.as_ref();
    json!({
        "allowed": cable.allowed,
        "by": chosen.map(by),
        "entry": chosen.and_then(|way| way.entry).map(opening),
        "exit": chosen.map(|way| opening(way.exit)),
        "run": chosen.map(run),
        "length_mm": longest.map(mm),
        "cut_length_mm": longest_cut.map(mm),
        "cables": leads.collect::<Vec<_>>(),
        "crosses": chosen.map(crosses),
        "cost": chosen.map(|way| cost(way.cost)),
        "for_the_electrician": cable.power.iter().map(ToString::to_string).collect::<Vec<_>>(),
        "alternatives": cable.alternatives.iter().map(|way| json!({
            "by": by(way),
            "entry": way.entry.map(opening),
            "exit": opening(way.exit),
            "run": run(way),
            "crosses": crosses(way),
            "cost": cost(way.cost),
            "why": words::alternative(plan, way),
        })).collect::<Vec<_>>(),
    })
}

fn by(way: &Way) -> Value {
    json!(match way.by {
        WayBy::InWall => "in_wall",
        WayBy::OnFace => "on_face",
    })
}

/// An opening by its middle and its size.
fn opening(rect: Rect) -> Value {
    let middle = rect.centre();
    json!({
        "x_mm": mm(middle.x),
        "y_mm": mm(middle.y),
        "width_mm": mm(rect.width()),
        "height_mm": mm(rect.height()),
    })
}

fn run(way: &Way) -> Value {
    way.run.iter().map(|at| json!({ "x_mm": mm(at.x), "y_mm": mm(at.y) })).collect()
}

fn crosses(way: &Way) -> Value {
    let told = way.crosses.iter().map(|crosses| match crosses {
        Crosses::Stud(at) => json!({ "what": "stud", "centre_mm": mm(at.x), "y_mm": mm(at.y) }),
        Crosses::Hidden(id, kind, at) => {
            json!({ "what": kind, "subject": id.to_string(), "x_mm": mm(at.x), "y_mm": mm(at.y) })
        }
        Crosses::Insulation => json!({ "what": "insulation" }),
    });
    told.collect()
}

/// The ordered list, by name, in the order in which it is compared.
fn cost(cost: Cost) -> Value {
    json!({
        "not_allowed": cost.not_allowed,
        "studs_bored": cost.studs_bored,
        "patches": cost.patches,
        "blocks": cost.blocks,
        "tight_bends": cost.tight_bends,
        "visible_mm": mm(length(cost.visible_nm)),
        "length_mm": mm(length(cost.length_nm)),
        "behind_mm": mm(length(cost.behind_nm)),
    })
}
