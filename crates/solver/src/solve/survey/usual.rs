//! What is taken for a size that nobody measured: drawn lighter and never struck from. All chosen.

use crate::job::feature::FeatureKind;
use crate::units::Length;

/// A wall's width where not given: 4 m, so that there is something to draw.
pub(super) fn wall_width() -> Length {
    Length::millimetres(4000.0)
}

/// A wall's height where not given: 8 ft, the usual ceiling.
pub(super) fn wall_height() -> Length {
    Length::millimetres(2438.4)
}

/// How far a feature stands proud where nobody measured it: generous for what a piece could strike, nothing
/// for what a tape could not be held against.
pub(super) fn proud(kind: FeatureKind) -> Length {
    Length::millimetres(match kind {
        FeatureKind::Window
        | FeatureKind::Door
        | FeatureKind::Trim
        | FeatureKind::Baseboard
        | FeatureKind::Crown
        | FeatureKind::Panelling => 19.05,
        FeatureKind::Mantel | FeatureKind::Shelf | FeatureKind::Radiator => 150.0,
        FeatureKind::Bench => 400.0,
        FeatureKind::Soffit | FeatureKind::ChimneyBreast => 300.0,
        FeatureKind::Curtain => 100.0,
        FeatureKind::Outlet
        | FeatureKind::Switch
        | FeatureKind::Vent
        | FeatureKind::Thermostat
        | FeatureKind::Other => 0.0,
    })
}

/// A width and a height where they were not measured.
pub(super) fn size(kind: FeatureKind) -> (Length, Length) {
    let (width, height) = match kind {
        FeatureKind::Door => (900.0, 2050.0),
        FeatureKind::Window => (900.0, 1200.0),
        FeatureKind::Mantel | FeatureKind::Bench | FeatureKind::Shelf => (1200.0, 50.0),
        FeatureKind::Outlet | FeatureKind::Switch => (70.0, 115.0),
        FeatureKind::Baseboard | FeatureKind::Crown | FeatureKind::Trim => (1000.0, 100.0),
        FeatureKind::ChimneyBreast => (1400.0, 2438.4),
        _ => (300.0, 300.0),
    };
    (Length::millimetres(width), Length::millimetres(height))
}

/// Whether a kind runs the whole width of the wall where its sides are not given.
pub(super) fn runs_across(kind: FeatureKind) -> bool {
    matches!(kind, FeatureKind::Baseboard | FeatureKind::Crown | FeatureKind::Soffit | FeatureKind::Panelling)
}

/// Whether a kind stands on the floor where its lower edge is not given.
pub(super) fn stands_on_floor(kind: FeatureKind) -> bool {
    matches!(
        kind,
        FeatureKind::Door
            | FeatureKind::Baseboard
            | FeatureKind::Bench
            | FeatureKind::Panelling
            | FeatureKind::ChimneyBreast
            | FeatureKind::Curtain
    )
}

/// Whether a kind reaches the ceiling where its upper edge is not given.
pub(super) fn reaches_ceiling(kind: FeatureKind) -> bool {
    matches!(kind, FeatureKind::Crown | FeatureKind::Soffit | FeatureKind::ChimneyBreast)
}
