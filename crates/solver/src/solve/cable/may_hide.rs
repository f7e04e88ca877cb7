//! Whether the wall can be opened out of sight behind a piece, without a look for the way from there.

use super::Cabling;
use super::bays::Bay;
use crate::geometry::{Rect, Span};
use crate::job::framing::WallFraming;
use crate::job::option::Surface;
use crate::job::port::{Carries, Port};
use crate::plan::cable::{Lead, hides};
use crate::route::{Area, Place, Zone};

impl Cabling<'_> {
    /// Whether an opening finds a place in a bay that the piece hides; `None` where no cable of low voltage is used.
    pub(in super::super) fn may_hide(&self) -> Option<bool> {
        let near = self.ports_middle()?;
        if self.wished.surface == Some(Surface::Only) || !self.framing().is_none_or(WallFraming::has_bays) {
            return Some(false);
        }
        let used = |port: &&Port| self.at.ports.iter().any(|at| at.id == port.id && at.used);
        let ports = self.piece.ports.iter().filter(used).filter(|port| port.carries == Carries::Data);
        let leads: Vec<Lead> = ports.map(|port| self.lead(port)).collect();
        let size = self.as_cut("entry", self.size(self.wished.entry_kind.as_ref(), &leads));
        let hidden = self.hidden_zone();
        let asked =
            self.wished.entry_at.map(|pin| self.at.frame.to_wall(pin.right.length(), pin.up.length()));
        if let Some(at) = self.cut("entry").or(asked) {
            let opening =
                Rect::new(Span::about(at.x, size.width.value), Span::about(at.y, size.height.value));
            return Some(hides(hidden, opening));
        }
        let space = self.space(&leads);
        let zone = self.start(&space, near, size, hidden).zone;
        let is_open = |bay: &Bay| {
            let room = zone.room.within(Area { left: bay.left, right: bay.right, ..space.bounds });
            let touches = |area: &Area| area.overlaps(room.grown(1, 1));
            let barred = zone.barred.iter().copied().filter(touches).collect();
            Zone { room, barred }.nearest(Place::of(near)).is_some()
        };
        Some(space.bays.iter().any(is_open))
    }
}
