//! Every kind that can be chosen, with its words in a list. A kind without words does not compile.

use strikeline_solver::job::feature::FeatureKind;
use strikeline_solver::job::framing::Layer;
use strikeline_solver::job::hidden::{HiddenKind, KnownBy};
use strikeline_solver::job::hit::HitKind;
use strikeline_solver::job::kit::{AccuracyClass, FastenerKind, MeasureKind, Signal};
use strikeline_solver::job::mount::{LiftDirection, MountKind, UsualPlate};
use strikeline_solver::job::option::Surface;
use strikeline_solver::job::piece::PieceKind;
use strikeline_solver::job::place::{Sideways, UpDown};
use strikeline_solver::job::port::{Carries, Points, ReadFrom};
use strikeline_solver::job::seat::{Person, Posture};
use strikeline_solver::job::wall::{Beyond, ControlLine, End};
use strikeline_solver::job::{CodeSet, Purpose, Units};
use strikeline_solver::tape::Graduation;
use strikeline_solver::words::usual_plate;

macro_rules! list {
    ($(#[$doc:meta])* $name:ident of $kind:ident { $($variant:ident: $words:literal,)+ }) => {
        $(#[$doc])*
        pub(crate) const $name: &[($kind, &str)] = &[$(($kind::$variant, $words)),+];
        // Every kind has its words.
        const _: fn($kind) = |kind| match kind { $($kind::$variant => (),)+ };
    };
}

list! { /// What is seen on a wall, the frequent first.
    FEATURES of FeatureKind {
        Window: "window", Door: "door", Mantel: "mantel", Outlet: "outlet", Switch: "switch", Vent: "vent",
        Baseboard: "baseboard", ChimneyBreast: "chimney breast", Shelf: "shelf", Bench: "bench",
        Radiator: "radiator", Thermostat: "thermostat", Crown: "crown moulding", Trim: "trim",
        Soffit: "soffit", Curtain: "curtain", Panelling: "panelling", Other: "something else",
    }
}
list! { /// What is in a wall.
    HIDDEN of HiddenKind {
        FireBlock: "fire block", Pipe: "pipe", Cable: "cable", Drain: "drain pipe", Duct: "air duct", Flue: "flue",
        Header: "header", Brace: "brace", StudOpening: "opening in a steel stud", PocketDoor: "sliding door's pocket",
        BoxBehind: "box on the other side", Other: "something else",
    }
}
list! { /// How what is in a wall is known.
    KNOWN_BY of KnownBy { Seen: "seen", Detector: "a detector", Drawing: "a drawing", Supposed: "supposed", }
}
list! { /// What was met behind the face.
    HITS of HitKind {
        LeftEdge: "stud's left edge", RightEdge: "stud's right edge", Centre: "stud's centre",
        Magnet: "magnet on a screw", Wood: "probe: wood", Air: "probe: air",
        ShallowWood: "probe: shallow wood", Metal: "probe: metal",
    }
}
list! { /// How people are at a seat.
    POSTURES of Posture { Seated: "sit", Standing: "stand", }
}
list! { /// Who a seat is for.
    PERSONS of Person { Man: "a man", Woman: "a woman", }
}
list! { /// What is hung.
    PIECES of PieceKind { Display: "display", SoundBar: "sound bar", Shelf: "shelf", Box: "box", }
}
list! { /// What it is hung with.
    MOUNTS of MountKind { Flush: "flush", Tilting: "tilting", Arm: "arm", PullDown: "pull-down", }
}

/// A plate to plan with until the real one is measured, called as a plan calls it.
pub(crate) const USUAL_PLATES: &[(UsualPlate, &str)] = &[
    (UsualPlate::NarrowRail, usual_plate(UsualPlate::NarrowRail)),
    (UsualPlate::TwoRails, usual_plate(UsualPlate::TwoRails)),
    (UsualPlate::ArmOnOneStud, usual_plate(UsualPlate::ArmOnOneStud)),
    (UsualPlate::ArmOnTwoStuds, usual_plate(UsualPlate::ArmOnTwoStuds)),
    (UsualPlate::PullDown, usual_plate(UsualPlate::PullDown)),
];
list! { /// The way a piece moves last.
    LIFTS of LiftDirection {
        Down: "down on to the plate", Right: "to the right", Left: "to the left",
    }
}
list! { /// What goes through a port.
    CARRIES of Carries { Power: "mains power", Data: "low voltage", }
}
list! { /// Which way a plug points.
    POINTS of Points { Left: "left", Right: "right", Up: "up", Down: "down", Back: "to the wall", }
}
list! { /// From where a display was looked at when it was measured.
    READ_FROM of ReadFrom { Front: "its front", Back: "its back", }
}
list! { /// Which way a sideways reading goes.
    SIDEWAYS of Sideways { Left: "left", Right: "right", }
}
list! { /// Which way an upright reading goes.
    UP_DOWN of UpDown { Up: "up", Down: "down", }
}
list! { /// What a wall's end is.
    ENDS of End { InsideCorner: "inside corner", OutsideCorner: "outside corner", Open: "open", }
}
list! { /// What is on a wall's other side.
    BEYOND of Beyond {
        Room: "a room of this home", Outside: "outside", Neighbour: "neighbour, shaft, garage",
        NotKnown: "don't know",
    }
}
list! { /// What the control line is.
    CONTROL_LINES of ControlLine { Line: "struck line", LaserTicks: "laser ticks", }
}
list! { /// What stands in front of the framing.
    LAYERS of Layer {
        Board: "gypsum board", PlasterOnLath: "plaster on lath", Tile: "tile", Panelling: "panelling",
    }
}
list! { /// A type of fastener or anchor.
    FASTENERS of FastenerKind {
        WoodScrew: "wood screw", Lag: "lag screw", StructuralScrew: "structural screw",
        SheetMetalScrew: "sheet-metal screw", ConcreteScrew: "concrete screw", Anchor: "hollow-wall anchor",
        Fixing: "fixing in brick or block", DrywallScrew: "drywall screw",
    }
}
list! { /// What a cable carries.
    SIGNALS of Signal {
        Picture: "picture, passive", PictureActive: "picture, active or optical", Network: "network",
        Fibre: "network by light", Aerial: "aerial", Speaker: "speakers", Power: "mains power (a cord)",
        Other: "something else of low voltage",
    }
}
list! { /// Whether cables may run on the wall's face.
    SURFACES of Surface { No: "never", AsWell: "as well as inside", Only: "there alone", }
}
list! { /// A tool that measures or levels.
    MEASURES of MeasureKind {
        Tape: "tape", DistanceMeter: "distance meter", LineLaser: "line laser", WaterLevel: "water level",
        SpiritLevel: "spirit level",
    }
}
list! { /// How accurate a tape is, as it is printed at its beginning.
    TAPE_CLASSES of AccuracyClass { I: "I", Ii: "II", Iii: "III", }
}
list! { /// The unit of a bare number.
    UNITS of Units { Inches: "inches", Millimetres: "millimetres", }
}
list! { /// How finely readings are told.
    GRADUATIONS of Graduation { Eighth: "1/8 in", Sixteenth: "1/16 in", ThirtySecond: "1/32 in", Millimetre: "1 mm", }
}
list! { /// Who uses the room.
    PURPOSES of Purpose { Home: "a private home", Workplace: "a workplace", Public: "open to the public", }
}
list! { /// Which published figures are shown.
    CODES of CodeSet { Us: "United States", Uk: "United Kingdom", None: "none", }
}
