//! What a piece hides of the wall: less where it stands off, tilts or swings.
//!
//! Whoever looks along the wall at up to 45 degrees off its perpendicular sees behind an edge as far as the edge stands
//! off (chosen: a display is read from at least 45 degrees to its face, NUREG-0700 section 11.3.1).

use super::Cabling;
use crate::geometry::{Rect, Span};
use crate::job::mount::MountKind;
use crate::numeric::{cosine, sine};
use crate::tolerance::{ENTRY_HIDDEN_MM, LOWERS_MM, STAND_OFF_MM, TILT_DEG};
use crate::units::{Angle, Length};

impl Cabling<'_> {
    /// What it hides as it hangs, tilted as far as it tilts either way. Empty spans lie in its middle.
    pub(super) fn hidden_zone(&self) -> Rect {
        let outline = self.at.outline;
        let least = Length::millimetres(ENTRY_HIDDEN_MM);
        // Not measured it is taken to stand farther off and to tilt farther: both hide less.
        let off = self.stand_off().unwrap_or(Length::millimetres(STAND_OFF_MM));
        let tilt = self.mount.and_then(|mount| mount.tilt.as_ref());
        let is_unknown = tilt.is_none() && self.mount.is_some_and(|mount| mount.kind == MountKind::Tilting);
        let usual = if is_unknown { Angle::degrees(TILT_DEG) } else { Angle::default() };
        let down = tilt.and_then(|tilt| tilt.down).unwrap_or(usual);
        let up = tilt.and_then(|tilt| tilt.up).unwrap_or_default();
        let pivot = tilt.and_then(|tilt| tilt.pivot_down).unwrap_or(outline.height() / 2.0);
        let above = pivot.min(outline.height());
        let below = outline.height() - above;
        let turns = outline.top - above;
        let far = if down > up { down } else { up };
        // An edge comes forward by its distance from the pivot, and nearer to it as seen from in front.
        let edge = |arm: Length, forward: Angle| (arm * cosine(far), least.max(off + arm * sine(forward)));
        let (rise, top_margin) = edge(above, down);
        let (fall, bottom_margin) = edge(below, up);
        // A side's edge comes forward with the end that comes forward most.
        let side = top_margin.max(bottom_margin);
        Rect::new(
            shrunk(Span::new(outline.left, outline.right), side, side),
            shrunk(Span::new(turns - fall, turns + rise), bottom_margin, top_margin),
        )
    }

    /// What it hides while it is swung straight out, or pulled down, nothing where nobody measured how far; `None`
    /// for what does not swing.
    pub(super) fn hidden_swung(&self) -> Option<Rect> {
        let mount = self.mount?;
        if !mount.comes_out() {
            return None;
        }
        let arm = mount.arm.as_ref();
        // Nobody measured how far it comes down: farther than any does.
        let comes_down = mount.kind == MountKind::PullDown;
        let unknown = if comes_down { Length::millimetres(LOWERS_MM) } else { Length::default() };
        let lowers = arm.and_then(|arm| arm.lowers).unwrap_or(unknown);
        let outline = self.at.outline.moved(Length::default(), -lowers);
        let reach = arm.and_then(|arm| arm.reach);
        let reach = reach.unwrap_or(outline.width().max(outline.height()));
        let margin = Length::millimetres(ENTRY_HIDDEN_MM).max(reach);
        Some(Rect::new(shrunk(outline.across(), margin, margin), shrunk(outline.upright(), margin, margin)))
    }
}

/// A span with its ends moved inward; its middle where they would pass one another.
fn shrunk(span: Span, low: Length, high: Length) -> Span {
    let (from, to) = (span.from + low, span.to - high);
    if to < from { Span { from: span.middle(), to: span.middle() } } else { Span { from, to } }
}
