//! The sizes that tell a thing of the shelf from another, in a line.

use crate::files::shelf::entry::{Defaults, Thing};
use strikeline_solver::job::framing::{Layer, WallFraming};
use strikeline_solver::job::kit::Kit;
use strikeline_solver::job::mount::{Mount, MountKind};
use strikeline_solver::job::piece::{Piece, PieceKind};
use strikeline_solver::job::wall::Wall;
use strikeline_solver::job::{CodeSet, Units};
use strikeline_solver::tape::{Style, write_mass};
use strikeline_solver::units::Length;
use strikeline_solver::words;

/// What tells it apart; `nothing measured` where nothing does.
pub(super) fn sizes(thing: &Thing, style: Style) -> String {
    let parts = match thing {
        Thing::Piece(piece) => of_piece(piece, style),
        Thing::Mount(mount) => of_mount(mount, style),
        Thing::Wall(wall) => of_wall(wall, style),
        Thing::Kit(kit) => of_kit(kit),
        Thing::Defaults(defaults) => of_defaults(defaults),
    };
    let parts: Vec<String> = parts.into_iter().filter(|part| !part.is_empty()).collect();
    if parts.is_empty() { "nothing measured".to_owned() } else { parts.join(", ") }
}

/// So many of something, never torn at a line's end; empty for none.
fn counted(count: usize, one: &str, more: &str) -> String {
    match count {
        0 => String::new(),
        1 => format!("1\u{a0}{one}"),
        _ => format!("{count}\u{a0}{more}"),
    }
}

fn wide_and_high(width: Option<Length>, height: Option<Length>, style: Style) -> String {
    match (width, height) {
        (Some(width), Some(height)) => format!("{} \u{d7} {}", style.print(width), style.print(height)),
        (Some(width), None) => format!("{} wide", style.print(width)),
        (None, Some(height)) => format!("{} high", style.print(height)),
        (None, None) => String::new(),
    }
}

fn of_piece(piece: &Piece, style: Style) -> Vec<String> {
    let kind = match piece.kind {
        PieceKind::Display => "",
        PieceKind::SoundBar => "sound bar",
        PieceKind::Shelf => "shelf",
        PieceKind::Box => "box",
    };
    let is_measured = piece.width.is_some() || piece.height.is_some();
    let diagonal = piece.diagonal.filter(|_| !is_measured);
    // Patterns are called by their millimetres everywhere.
    let pattern = piece
        .pattern
        .as_ref()
        .map(|pattern| format!("pattern {:.0}\u{d7}{:.0} mm", pattern.across.mm(), pattern.upright.mm()));
    vec![
        kind.to_owned(),
        wide_and_high(piece.width, piece.height, style),
        diagonal.map(|diagonal| format!("diagonal {}", style.print(diagonal))).unwrap_or_default(),
        piece.mass.map(write_mass).unwrap_or_default(),
        pattern.unwrap_or_default(),
        counted(piece.ports.len(), "port", "ports"),
    ]
}

fn of_mount(mount: &Mount, style: Style) -> Vec<String> {
    let kind = match mount.kind {
        MountKind::Flush => "flush",
        MountKind::Tilting => "tilting",
        MountKind::Arm => "arm",
        MountKind::PullDown => "pull-down",
    };
    let Some(plate) = &mount.plate else {
        let like = mount.like.map(|like| format!("planned with {}", words::usual_plate(like)));
        return vec![kind.to_owned(), like.unwrap_or_else(|| "plate not measured".to_owned())];
    };
    let outline = plate.outline_in_plate();
    let size = outline.map(|rect| wide_and_high(Some(rect.width()), Some(rect.height()), style));
    vec![
        kind.to_owned(),
        size.map(|size| format!("plate {size}")).unwrap_or_default(),
        counted(plate.holes.len(), "hole", "holes"),
        counted(plate.slots.len(), "slot", "slots"),
    ]
}

fn of_wall(wall: &Wall, style: Style) -> Vec<String> {
    let layer = |layer: &Layer| match layer {
        Layer::Board => "board",
        Layer::PlasterOnLath => "plaster on lath",
        Layer::Tile => "tile",
        Layer::Panelling => "panelling",
    };
    let front = wall.front.as_ref();
    let layers = front.map(|front| front.layers.iter().map(layer).collect::<Vec<_>>().join(" and "));
    let thickness = front.and_then(|front| front.thickness);
    vec![
        layers.unwrap_or_default(),
        thickness.map(|thickness| format!("{} thick", style.print(thickness))).unwrap_or_default(),
        wall.framing.as_ref().map(|framing| of_framing(framing, style)).unwrap_or_default(),
        wall.insulated.filter(|is| *is).map(|_| "insulated".to_owned()).unwrap_or_default(),
    ]
}

fn of_framing(framing: &WallFraming, style: Style) -> String {
    let (kind, face, depth) = match framing {
        WallFraming::Wood(studs) => ("wood studs", studs.face, studs.depth),
        WallFraming::Steel(studs) => ("steel studs", studs.face, studs.depth),
        WallFraming::Masonry(_) => ("brick or block", None, None),
        WallFraming::Concrete(_) => ("concrete", None, None),
        WallFraming::Veneer => ("veneer", None, None),
        WallFraming::NoFraming => ("no framing", None, None),
        WallFraming::NotKnown => ("framing not known", None, None),
    };
    let sizes = match (face, depth) {
        (Some(face), Some(depth)) => format!(" {} \u{d7} {}", style.print(face), style.print(depth)),
        (Some(face), None) => format!(" {} wide", style.print(face)),
        (None, Some(depth)) => format!(" {} deep", style.print(depth)),
        (None, None) => String::new(),
    };
    format!("{kind}{sizes}")
}

fn of_kit(kit: &Kit) -> Vec<String> {
    vec![
        counted(kit.fasteners.len(), "size of fasteners", "sizes of fasteners"),
        counted(kit.bits.len(), "drill bit", "drill bits"),
        counted(kit.cables.len(), "cable", "cables"),
        counted(kit.boxes.len(), "box", "boxes"),
        counted(kit.measures.len(), "tool", "tools"),
    ]
}

fn of_defaults(defaults: &Defaults) -> Vec<String> {
    let units = match defaults.units {
        Some(Units::Millimetres) => "millimetres",
        Some(Units::Inches) | None => "inches",
    };
    let codes = defaults.codes.map(|codes| match codes {
        CodeSet::Us => "US code figures",
        CodeSet::Uk => "UK code figures",
        CodeSet::None => "no code figures",
    });
    vec![
        units.to_owned(),
        defaults.graduation.map(|graduation| format!("to {}", <&str>::from(graduation))).unwrap_or_default(),
        codes.unwrap_or_default().to_owned(),
    ]
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::files::job_file::read_job_text;
    use crate::files::shelf::keep::{keep, keep_defaults, keep_kit};
    use std::path::Path;
    use strikeline_solver::job::Job;
    use strikeline_solver::subject::Id;

    const JOB: &str = r#"(
        format: 1,
        graduation: "1/8 in",
        codes: uk,
        kit: (fasteners: [(kind: lag)], measures: [(kind: tape), (kind: spirit_level)]),
        pieces: [
            (id: "p", kind: display, width: "48 1/2 in", height: "28 1/4 in", mass: "28 kg",
                pattern: (across: "400 mm", upright: "300 mm"), diagonal: "55 in"),
            (id: "bar", kind: sound_bar, width: "40 in"),
            (id: "box", kind: display, diagonal: "55 in"),
        ],
        mounts: [
            (id: "m", kind: tilting, plate: (
                solids: [(left: "-10 in", right: "10 in", down: "0 in", height: "8 in")],
                holes: [(right: "0 in", down: "1 in")],
                slots: [(right: "0 in", down: "1 in", travel: "1 in"), (right: "1 in", down: "1 in", travel: "1 in")],
            )),
            (id: "like", kind: arm, like: arm_on_one_stud),
            (id: "bare", kind: flush),
        ],
        walls: [
            (id: "w", front: (layers: [board, tile], thickness: "1 1/4 in"),
                framing: wood((face: "1 1/2 in", depth: "3 1/2 in")), insulated: true),
            (id: "bare-wall"),
        ],
    )"#;

    fn job() -> Job {
        read_job_text(JOB, Path::new("job.ron")).unwrap().job
    }

    #[test]
    fn each_thing_is_told_by_what_tells_it_apart() {
        let job = job();
        let style = job.style();
        for (id, said) in [
            ("p", "48 1/2\" \u{d7} 28 1/4\", 28 kg, pattern 400\u{d7}300 mm"),
            ("bar", "sound bar, 40\" wide"),
            ("box", "diagonal 55\""),
            ("m", "tilting, plate 20\" \u{d7} 8\", 1\u{a0}hole, 2\u{a0}slots"),
            ("like", "arm, planned with an arm's plate for one stud"),
            ("bare", "flush, plate not measured"),
            ("w", "board and tile, 1 1/4\" thick, wood studs 1 1/2\" \u{d7} 3 1/2\", insulated"),
            ("bare-wall", "nothing measured"),
        ] {
            assert_eq!(sizes(&keep(&job, &Id::new(id)).unwrap().thing, style), said);
        }
        assert_eq!(sizes(&keep_kit(&job).thing, style), "1\u{a0}size of fasteners, 2\u{a0}tools");
        assert_eq!(sizes(&keep_defaults(&job).thing, style), "inches, to 1/8 in, UK code figures");
        assert_eq!(sizes(&keep_kit(&Job::new()).thing, style), "nothing measured");
    }
}
