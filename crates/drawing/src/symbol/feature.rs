//! What is seen on the wall: its outline as it is, out of level or not, and within it what tells its kind.

use super::{fireplace, opening, outlet};
use crate::ink::Ink;
use crate::paper::PaperRect;
use crate::pen::Pen;
use strikeline_solver::geometry::Point;
use strikeline_solver::job::feature::FeatureKind;
use strikeline_solver::plan::survey::PlacedFeature;
use strikeline_solver::units::Length;

/// Draws a feature.
pub(crate) fn feature(pen: &mut Pen<'_>, feature: &PlacedFeature) {
    let ink = if feature.proud > Length::default() { Ink::FeatureProud } else { Ink::Feature };
    let rect = feature.rect;
    let corners = [
        Point::new(rect.left, feature.bottom_ends.0),
        Point::new(rect.right, feature.bottom_ends.1),
        Point::new(rect.right, feature.top_ends.1),
        Point::new(rect.left, feature.top_ends.0),
    ];
    let corners = corners.map(|corner| pen.at(corner));
    pen.shape(ink, &corners);
    detail(pen, feature.kind, pen.scale.paper_rect(rect));
}

/// What tells the kind, within the outline.
fn detail(pen: &mut Pen<'_>, kind: FeatureKind, rect: PaperRect) {
    match kind {
        FeatureKind::Window => opening::window(pen, rect),
        FeatureKind::Door => opening::door(pen, rect),
        FeatureKind::Mantel => fireplace::mantel(pen, rect),
        FeatureKind::ChimneyBreast => fireplace::chimney_breast(pen, rect),
        FeatureKind::Outlet => outlet::outlet(pen, rect),
        FeatureKind::Switch => outlet::switch(pen, rect),
        FeatureKind::Vent => across(pen, rect, &[0.2, 0.4, 0.6, 0.8]),
        FeatureKind::Shelf | FeatureKind::Bench => across(pen, rect, &[0.5]),
        FeatureKind::Baseboard => across(pen, rect, &[0.2]),
        FeatureKind::Crown => across(pen, rect, &[0.35, 0.75]),
        FeatureKind::Radiator => upright(pen, rect, &[0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9]),
        FeatureKind::Curtain => upright(pen, rect, &[0.2, 0.35, 0.5, 0.65, 0.8]),
        FeatureKind::Panelling => upright(pen, rect, &[0.25, 0.5, 0.75]),
        FeatureKind::Thermostat => {
            pen.circle(Ink::FeatureDetail, rect.centre(), rect.width_mm().min(rect.height_mm()) * 0.3, false);
        }
        FeatureKind::Trim | FeatureKind::Soffit | FeatureKind::Other => {}
    }
}

fn across(pen: &mut Pen<'_>, rect: PaperRect, downs: &[f64]) {
    for &down in downs {
        pen.line(Ink::FeatureDetail, rect.at(0.0, down), rect.at(1.0, down));
    }
}

fn upright(pen: &mut Pen<'_>, rect: PaperRect, rights: &[f64]) {
    for &right in rights {
        pen.line(Ink::FeatureDetail, rect.at(right, 0.04), rect.at(right, 0.96));
    }
}
