//! Walls as many are, a tap each. What is in front of the framing, and what that is; nothing of it is measured.

use strikeline_solver::job::framing::{Concrete, Front, Layer, Masonry, SteelStuds, WallFraming, WoodStuds};
use strikeline_solver::job::wall::Wall;

/// A wall as many are.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum CommonWall {
    BoardOnWood,
    PlasterOnLath,
    BoardOnSteel,
    Masonry,
    Concrete,
}

impl CommonWall {
    /// Every common wall, in the order in which a list shows them.
    pub(super) const ALL: [Self; 5] =
        [Self::BoardOnWood, Self::PlasterOnLath, Self::BoardOnSteel, Self::Masonry, Self::Concrete];

    /// What it is called.
    pub(super) fn words(self) -> &'static str {
        match self {
            Self::BoardOnWood => "Board on wood studs",
            Self::PlasterOnLath => "Plaster on lath",
            Self::BoardOnSteel => "Board on steel studs",
            Self::Masonry => "Solid brick or block",
            Self::Concrete => "Concrete",
        }
    }

    fn layers(self) -> &'static [Layer] {
        match self {
            Self::BoardOnWood | Self::BoardOnSteel => &[Layer::Board],
            Self::PlasterOnLath => &[Layer::PlasterOnLath],
            Self::Masonry | Self::Concrete => &[],
        }
    }

    fn framing(self) -> WallFraming {
        match self {
            Self::BoardOnWood | Self::PlasterOnLath => WallFraming::Wood(WoodStuds::default()),
            Self::BoardOnSteel => WallFraming::Steel(SteelStuds::default()),
            Self::Masonry => WallFraming::Masonry(Masonry { solid: Some(true) }),
            Self::Concrete => WallFraming::Concrete(Concrete::default()),
        }
    }

    /// The one that a wall is, by its layers and its kind of framing.
    pub(super) fn of(wall: &Wall) -> Option<Self> {
        let framing = wall.framing.as_ref()?;
        let layers = wall.front.as_ref().map_or(&[][..], |front| &front.layers);
        Self::ALL.into_iter().find(|common| {
            let is_kind = std::mem::discriminant(&common.framing()) == std::mem::discriminant(framing);
            is_kind && common.layers() == layers
        })
    }

    /// Makes a wall such a one: what was measured of its front stays.
    pub(super) fn put(self, wall: &mut Wall) {
        let measured = wall.front.take().unwrap_or_default();
        let front = Front { layers: self.layers().to_vec(), ..measured };
        wall.front = (front != Front::default()).then_some(front);
        wall.framing = Some(self.framing());
    }

    /// Takes away that a wall is such a one.
    pub(super) fn take(wall: &mut Wall) {
        let measured = wall.front.take().unwrap_or_default();
        let front = Front { layers: Vec::new(), ..measured };
        wall.front = (front != Front::default()).then_some(front);
        wall.framing = None;
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use strikeline_solver::units::Length;

    #[test]
    fn every_common_wall_is_known_again_and_keeps_what_was_measured() {
        let thickness = Some(Length::inches(0.5));
        for common in CommonWall::ALL {
            let mut bare = Wall::default();
            common.put(&mut bare);
            assert_eq!(CommonWall::of(&bare), Some(common));
            CommonWall::take(&mut bare);
            assert_eq!(bare, Wall::default());
            let front = Some(Front { thickness, ..Front::default() });
            let mut measured = Wall { front, ..Wall::default() };
            common.put(&mut measured);
            assert_eq!(CommonWall::of(&measured), Some(common));
            assert_eq!(measured.front.unwrap().thickness, thickness);
        }
    }
}
