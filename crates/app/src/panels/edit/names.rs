//! What the things of a job are called in lists: as the plan tells them, or by what the job says where the
//! plan does not hold them.

use super::super::measured::titled;
use super::kinds;
use strikeline_solver::job::Job;
use strikeline_solver::job::hit::Hit;
use strikeline_solver::job::kit::{DrillBit, FastenerStock};
use strikeline_solver::job::mount::Mount;
use strikeline_solver::job::option::WallOption;
use strikeline_solver::job::piece::Piece;
use strikeline_solver::job::port::{Carries, Port};
use strikeline_solver::job::seat::Seat;
use strikeline_solver::job::wall::Wall;
use strikeline_solver::plan::Plan;
use strikeline_solver::subject::Id;
use strikeline_solver::units::Length;
use strikeline_solver::{tape, words};

/// The names of a job's things.
#[derive(Clone, Copy)]
pub(in crate::panels) struct Names<'a> {
    pub(in crate::panels) job: &'a Job,
    pub(in crate::panels) plan: &'a Plan,
}

/// The words of a kind in its list.
pub(in crate::panels) fn words_of<T: PartialEq>(list: &[(T, &'static str)], kind: &T) -> &'static str {
    list.iter().find(|(one, _)| one == kind).map_or("", |(_, words)| words)
}

impl Names<'_> {
    /// A thing that the plan holds.
    pub(in crate::panels) fn thing(&self, id: &Id) -> String {
        titled(&words::thing(self.plan, &id.whole()))
    }

    pub(in crate::panels) fn piece(&self, piece: &Piece) -> String {
        if self.plan.pieces.iter().any(|shown| shown.id == piece.id) {
            return self.thing(&piece.id);
        }
        titled(piece.name.as_deref().unwrap_or(words_of(kinds::PIECES, &piece.kind)))
    }

    /// A mount: by its name, else by what hangs on it, else by its kind.
    pub(in crate::panels) fn mount(&self, mount: &Mount) -> String {
        if let Some(name) = &mount.name {
            return titled(name);
        }
        let told = words::thing(self.plan, &mount.id.whole());
        if told.starts_with('"') {
            format!("Mount, {}", words_of(kinds::MOUNTS, &mount.kind))
        } else {
            titled(&told)
        }
    }

    pub(in crate::panels) fn port(&self, port: &Port) -> String {
        match (&port.name, port.carries) {
            (Some(name), _) => titled(name),
            (None, Carries::Power) => "Power port".to_owned(),
            (None, Carries::Data) => "Data port".to_owned(),
        }
    }

    pub(in crate::panels) fn wall(&self, wall: &Wall) -> String {
        let place = self.job.walls.iter().position(|other| other.id == wall.id).unwrap_or_default();
        match (&wall.name, self.job.walls.len()) {
            (Some(name), _) => titled(name),
            (None, 0 | 1) => "Wall".to_owned(),
            (None, _) => format!("Wall {}", place + 1),
        }
    }

    pub(in crate::panels) fn option(&self, wall: &Wall, option: &WallOption) -> String {
        let place = wall.options.iter().position(|other| other.id == option.id).unwrap_or_default();
        option.name.clone().unwrap_or_else(|| crate::moves::things::letter(place))
    }

    pub(in crate::panels) fn hit(&self, hit: &Hit) -> String {
        titled(words_of(kinds::HITS, &hit.kind))
    }

    /// A seat: by its name, else by its place in the list.
    pub(in crate::panels) fn seat(&self, seat: &Seat) -> String {
        self.thing(&seat.id)
    }

    pub(in crate::panels) fn fastener(&self, fastener: &FastenerStock) -> String {
        let kind = titled(words_of(kinds::FASTENERS, &fastener.kind));
        let sizes = [fastener.diameter, fastener.length].into_iter().flatten().map(tape::write_length);
        [kind].into_iter().chain(sizes).collect::<Vec<_>>().join(", ")
    }

    pub(in crate::panels) fn bit(&self, bit: &DrillBit) -> String {
        let sizes = [bit.diameter, bit.length].into_iter().flatten().map(tape::write_length);
        ["Drill bit".to_owned()].into_iter().chain(sizes).collect::<Vec<_>>().join(", ")
    }

    /// The size of a thing as far as it was measured.
    pub(in crate::panels) fn size(&self, width: Option<Length>, height: Option<Length>) -> String {
        let told =
            |length: Option<Length>| length.map_or_else(|| "?".to_owned(), |l| self.plan.style.print(l));
        match (width, height) {
            (None, None) => "not measured".to_owned(),
            _ => format!("{} \u{d7} {}", told(width), told(height)),
        }
    }

    /// Where a thing of the plan is, as its edges; empty for what is not in it.
    pub(in crate::panels) fn extent(&self, id: &Id) -> String {
        let survey = &self.plan.survey;
        let feature = survey.features.iter().find(|feature| feature.id == *id).map(|feature| feature.rect);
        let hidden = survey.hidden.iter().find(|hidden| hidden.id == *id).map(|hidden| hidden.rect);
        let Some(rect) = feature.or(hidden) else { return String::new() };
        // A fraction stays on the line of its whole.
        let print = |length| self.plan.style.print(length).replace(' ', "\u{a0}");
        let left = survey.outline.left;
        format!(
            "{} to {} across, {} to {} up",
            print(rect.left - left),
            print(rect.right - left),
            print(rect.bottom),
            print(rect.top)
        )
    }

    /// The ports of a piece.
    pub(in crate::panels) fn ports(&self, piece: &Id) -> Vec<(Id, String)> {
        let ports = self.job.piece(piece).map(|piece| piece.ports.as_slice()).unwrap_or_default();
        ports.iter().map(|port| (port.id.clone(), self.port(port))).collect()
    }
}
