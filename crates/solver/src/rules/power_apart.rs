//! Cables of low voltage keep 2 in from the conductors of power (NEC 800.133(A)(2), read as quoted). Where the power is
//! in a sheathed cable inspectors differ: told, never a stop. A hidden cable counts as power.

use super::cabled::{Cabled, all, told};
use crate::finding::cable::CableWhat;
use crate::finding::{Finding, Level, Mend};
use crate::geometry::{Rect, Span};
use crate::handbook::low_voltage::FROM_POWER_IN;
use crate::job::Job;
use crate::job::feature::FeatureKind;
use crate::job::hidden::HiddenKind;
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::tolerance::SAME_PLACE_MM;
use crate::units::Length;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let all = all(job, wall, plan);
    all.iter().flat_map(|one| of(one, plan)).collect()
}

fn of(of: &Cabled<'_>, plan: &Plan) -> Vec<Finding> {
    let Some(way) = of.in_wall() else { return Vec::new() };
    let usual = Length::inches(FROM_POWER_IN.value);
    let cables = plan.survey.hidden.iter().filter(|hidden| hidden.kind == HiddenKind::Cable);
    let close = cables.filter_map(|hidden| {
        let apart = way.run.windows(2).filter_map(|pair| match pair {
            [from, to] => {
                Some(between(Rect::new(Span::new(from.x, to.x), Span::new(from.y, to.y)), hidden.rect))
            }
            _ => None,
        });
        apart
            .reduce(Length::min)
            .filter(|apart| *apart < usual)
            .map(|apart| (hidden.id.clone(), apart, usual))
    });
    let wanted = of.hung.hanging.and_then(|hanging| hanging.way.from_power).unwrap_or(usual);
    let boxes = plan.survey.features.iter().filter_map(|one| {
        let is_power = matches!(one.kind, FeatureKind::Outlet | FeatureKind::Switch);
        let apart = between(way.exit, one.rect);
        (is_power && apart.mm() < wanted.mm() - SAME_PLACE_MM).then(|| (one.id.clone(), apart, wanted))
    });
    close
        .chain(boxes)
        .map(|(other, apart, wanted)| {
            told(of, Level::Caution, Mend::Move, CableWhat::PowerApart { other, apart, wanted })
        })
        .collect()
}

/// From one rectangle to another along the axis on which they are farther apart; 0 where they meet.
fn between(a: Rect, b: Rect) -> Length {
    let none = Length::default();
    let across = (b.left - a.right).max(a.left - b.right).max(none);
    let upright = (b.bottom - a.top).max(a.bottom - b.top).max(none);
    across.max(upright)
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::super::sample::{mm, rect};
    use super::*;
    use crate::finding::What;
    use crate::plan::survey::PlacedHidden;
    use crate::subject::Id;
    #[test]
    fn low_voltage_keeps_from_power() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        // The run is at 1975.
        let mut cable = PlacedHidden {
            id: Id::new("cable-1"),
            kind: HiddenKind::Cable,
            name: String::new(),
            rect: rect((2030.0, 2040.0), (0.0, 2400.0)),
            assumed: false,
        };
        room.plan.survey.hidden.push(cable.clone());
        assert!(room.told(check).is_empty());
        cable.rect = rect((2010.0, 2020.0), (0.0, 2400.0));
        room.plan.survey.hidden[0] = cable;
        let wanted = Length::inches(2.0);
        assert_eq!(
            room.told(check),
            [(
                Level::Caution,
                "display-1".to_owned(),
                What::Cable(CableWhat::PowerApart { other: Id::new("cable-1"), apart: mm(35.0), wanted })
            )]
        );
    }
}
