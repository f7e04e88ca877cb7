//! What a verdict rests on and what it wants, as clauses.

use super::super::phrase::{list, one_line};
use super::super::things::{hole_name, whole};
use super::of_kit;
use crate::plan::Plan;
use crate::plan::verdict::{Fastening, Rest, Want};
use crate::subject::{Id, Subject};
use crate::units::Length;
/// Every chosen value that a verdict rests on, as clauses.
#[must_use]
pub fn rests_on(plan: &Plan, fastening: &Fastening) -> Vec<String> {
    fastening.verdict.rests_on.iter().map(|one| rest(plan, one)).collect()
}

/// What a verdict wants, as clauses: each measurement by itself, probes together.
#[must_use]
pub fn wanted(plan: &Plan, fastening: &Fastening) -> Vec<String> {
    let mut told = Vec::new();
    let (mut probes, mut edges) = (Vec::new(), Vec::new());
    for one in &fastening.verdict.wanted {
        match one {
            Want::Probe(hole) => probes.push(hole_name(&Id::new(hole.part_str()))),
            Want::Edges(hole) => edges.push(hole_name(&Id::new(hole.part_str()))),
            other => told.push(want(plan, other)),
        }
    }
    if !probes.is_empty() {
        told.push(format!("probe the stud at {}", list(&probes)));
    }
    if !edges.is_empty() {
        told.push(find_edges(&list(&edges)));
    }
    told
}

/// What is wanted, as a clause: `measure the mass of the display`.
pub(in super::super) fn want(plan: &Plan, want: &Want) -> String {
    let of = |id: &Id| whole(plan, id).map_or_else(|| id.to_string(), |called| called.words);
    let hole = |subject: &Subject| hole_name(&Id::new(subject.part_str()));
    match want {
        Want::Probe(subject) => format!("probe the stud at {}", hole(subject)),
        Want::Edges(subject) => find_edges(&hole(subject)),
        Want::Mass(id) => format!("measure the mass of {}", of(id)),
        Want::MountMass(_) => "measure the mass of the mount".to_owned(),
        Want::Size(id) => format!("measure the width, height and depth of {}", of(id)),
        Want::Drop(_) => "measure the drop from the piece's top to the plate's".to_owned(),
        Want::StandOff(_) => "measure how far the piece's back stands off the wall".to_owned(),
        Want::Reach(_) => "measure how far the arm reaches out".to_owned(),
        Want::Tilt(_) => "measure how far the mount tilts".to_owned(),
        Want::Pivot(_) => "measure how far below its top the piece turns when it tilts".to_owned(),
        Want::Lowering(_) => "measure how far the mount comes down".to_owned(),
        Want::Plate(_) => "measure the plate's outline and holes".to_owned(),
        Want::PlateThickness(_) => "measure the thickness of the plate's sheet".to_owned(),
        Want::HoleWidth(subject) => format!("measure the width of {}", hole(subject)),
        Want::Place(id) => format!("measure what the place of {} hangs on", of(id)),
        Want::Front(id) if *id == plan.wall => "measure the thickness in front of the framing".to_owned(),
        Want::Front(id) => format!("measure the thickness in front of what {} is built of", of(id)),
        Want::StudDepth(_) => "measure how deep the studs are".to_owned(),
        Want::Framing(id) if *id == plan.wall => "find out what the wall is built of".to_owned(),
        Want::Framing(id) => format!("find out what {} is built of", of(id)),
        Want::SteelThickness(_) => "measure the thickness of the steel studs".to_owned(),
        Want::Face(_) => "measure the width of the steel studs' flange".to_owned(),
        Want::NormalWeight(_) => "find out whether the concrete is of normal weight".to_owned(),
        Want::Solid { base, .. } => {
            let base = one_line(base);
            format!(
                "find out whether the brick or block is solid: what is stated of the fixing is for \"{base}\""
            )
        }
        Want::WallSize(_) => "measure the wall's width and height".to_owned(),
        Want::Hits(_) => "sweep the wall for studs".to_owned(),
        Want::Fasteners => "enter fasteners made for this wall".to_owned(),
        Want::FastenerSize(of) => format!("measure the diameter and length of the {}", of_kit(plan, of)),
        Want::FastenerHead(of) => format!("measure the head or washer of the {}", of_kit(plan, of)),
        Want::FastenerReport(of) => format!("enter what the report of the {} says", of_kit(plan, of)),
    }
}

/// What finds the edges of studs at some holes.
fn find_edges(holes: &str) -> String {
    format!(
        "find both edges of the stud at {holes}: probe to either side until no wood is met, and note each"
    )
}

/// What a verdict rests on, as a clause.
pub(super) fn rest(plan: &Plan, rest: &Rest) -> String {
    let print = |length: Length| plan.style.print(length);
    match rest {
        Rest::Pull(pull) => format!("somebody pulls with {:.0} N", pull.n()),
        Rest::Gravity(gravity) => format!("wood of specific gravity {}", gravity.value()),
        Rest::StudDepth(depth) => format!("a stud {} deep, not a furring strip", print(*depth)),
        Rest::StudFace(face) => format!("a stud's face {} wide", print(*face)),
        Rest::PlateSteel(_) => "a plate of sheet steel".to_owned(),
        Rest::Washer(washer) => format!("a washer {} thick", print(*washer)),
        Rest::Middle => "the mass at the middle of the outline and depth".to_owned(),
        Rest::MountMass => "the mount's mass at the piece's back".to_owned(),
        Rest::Tilt(angle) => format!("a tilt of {:.0} degrees the way that was not given", angle.deg()),
        Rest::ArmTilt(angle) => {
            format!("the arm counted as much longer as the farther edge of the piece comes out, tilted by {:.0} degrees", angle.deg())
        }
        Rest::ScrewMade => {
            "a wood screw to B18.6.1, cut, with a smooth shank (if not, it is a structural screw)".to_owned()
        }
        Rest::Hinge(angle) => format!("an arm that swings {:.0} degrees to either side", angle.deg()),
        Rest::Head(angle) => format!("a head that turns {:.0} degrees to either side", angle.deg()),
        Rest::LagMade => {
            "a lag to B18.2.1, with a hex head and a coarse thread to a smooth shank (if not, it is a structural screw)"
                .to_owned()
        }
        Rest::MakersLoad(base) => {
            format!("what the fixing's maker recommends for \"{}\", stated", one_line(base))
        }
        Rest::Document { name, date } => {
            format!("what \"{}\" of {} states", one_line(name), one_line(date))
        }
        Rest::SteelInTension => {
            "the screw's own steel in tension at a third of its bending yield strength".to_owned()
        }
        Rest::Chance(chance) => {
            format!("a hole counts where it is in solid wood with a chance of {:.0} % at least", chance * 100.0)
        }
        Rest::Ceiling(height) => format!("a ceiling {} high at least", print(*height)),
        Rest::ConcreteGap(gap) => format!("{} at most between the plate and the concrete", print(*gap)),
        Rest::PullTest(share) => format!(
            "{:.0} % of what a pull test on this wall withstood, stated: it proves one hole, not the group",
            share * 100.0
        ),
        Rest::Concrete(strength) => format!("concrete of {:.0} psi", strength.in_psi()),
        Rest::ConcreteEdge(diameters) => {
            format!("{diameters:.0} diameters to each edge and from one to the next")
        }
        Rest::ShearThroughBoard(share) => {
            format!("{:.0} % of the shear through what stands in front of the steel", share * 100.0)
        }
        Rest::Method => {
            "a rigid plate, whose outermost row alone is pulled, with both axes added".to_owned()
        }
    }
}
