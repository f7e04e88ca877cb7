//! The cables themselves: their measures, and how long they have to be.

use super::Cabling;
use crate::handbook::low_voltage;
use crate::job::kit::{CableStock, Signal};
use crate::job::mount::Mount;
use crate::job::port::{Points, Port};
use crate::ledger::{Blank, Given, Label};
use crate::plan::cable::{Lead, Way, WayBy};
use crate::subject::Id;
use crate::tolerance::{HAND_MM, HELD_OFF_MM};
use crate::units::{Angle, Length};
use crate::wiring::{bends, lengths};

impl Cabling<'_> {
    /// A cable of low voltage as far as it is known, without its length.
    pub(super) fn lead(&self, port: &Port) -> Lead {
        let wish = self.wishes.iter().find(|wish| wish.port == port.id);
        let named = wish.and_then(|wish| wish.cable.as_ref());
        let stock = named.and_then(|id| self.job.kit.cables.iter().find(|cable| cable.id == *id));
        let measured = |own: Option<Length>, usual: f64, label: Label| {
            own.map_or(Given::new(Length::inches(usual), label), Given::measured)
        };
        let signal = stock.and_then(|stock| stock.signal);
        let outside =
            measured(stock.and_then(|s| s.outside), low_voltage::USUAL_DIAMETER_IN.value, Label::Assumed);
        let plug = measured(stock.and_then(|s| s.plug), low_voltage::WIDEST_PLUG_IN.value, Label::Assumed);
        let own_bend = stock.and_then(|stock| stock.bend);
        let bend = own_bend.map_or_else(|| bends::least_radius(&mut Blank, outside, signal), Given::measured);
        let before_lift = !self.mount.is_some_and(can_be_reached);
        let slack = self.wished.slack.unwrap_or(lengths::usual_slack().value);
        let held_off = self.wished.held_off.unwrap_or(Length::millimetres(HELD_OFF_MM));
        let reach = port.reach.unwrap_or_default();
        // A plug to the wall needs its reach there; any other needs the room that its cable bends in.
        let needed = match port.points {
            Some(Points::Back) => port.reach.map(|reach| reach + bend.value),
            _ => (bend.label != Label::Assumed).then_some(bend.value.max(outside.value)),
        };
        Lead {
            id: wish.map_or_else(|| port.id.clone(), |wish| wish.id.clone()),
            port: port.id.clone(),
            signal,
            outside,
            plug,
            bend,
            in_wall: stock.and_then(|stock| stock.in_wall),
            longest: lengths::longest(signal, stock.and_then(|stock| stock.longest)),
            length: None,
            slack_above: reach + if before_lift { slack.max(held_off) } else { slack },
            slack_below: slack,
            cut_length: None,
            stock: stock.map(|stock| stock.id.clone()),
            stock_short: false,
            before_lift,
            depth_needed: needed.zip(self.stand_off()),
        }
    }

    /// Puts in how long a cable has to be for a way.
    pub(super) fn measure(&self, lead: &mut Lead, way: Option<&Way>) {
        let Some(way) = way else { return };
        let Some(port) = self.at.ports.iter().find(|port| port.id == lead.port) else { return };
        let apart =
            |a: crate::geometry::Point, b: crate::geometry::Point| (a.x - b.x).abs() + (a.y - b.y).abs();
        let mut places = vec![port.place];
        places.extend(&way.run);
        // From the exit on to where it was wished, or to what it ends at.
        let end = way.exit.centre();
        places.push(match self.beside(&lead.id) {
            Some(beside) => beside.rect.centre(),
            None if self.wished.exit_at.is_some() || self.cut("exit").is_some() => end,
            None => crate::geometry::Point::new(end.x, self.wished_height(None)),
        });
        let mut length = Length::default();
        for pair in places.windows(2) {
            if let [from, to] = pair {
                length += apart(*from, *to);
            }
        }
        if way.by == WayBy::InWall {
            // Through the face at both ends.
            length += self.front() * 2.0;
        }
        let to_cut = lengths::to_cut(
            &mut Blank,
            Given::measured(length),
            Given::chosen(lead.slack_above),
            Given::chosen(lead.slack_below),
        );
        lead.length = Some(length);
        let stocks = self.could_be(&lead.id);
        let long_enough = stocks.iter().filter(|stock| stock.length.is_some_and(|own| own >= to_cut.value));
        let shortest = long_enough.min_by(|a, b| {
            let mm = |stock: &CableStock| stock.length.map_or(f64::INFINITY, Length::mm);
            mm(a).total_cmp(&mm(b))
        });
        lead.stock_short = shortest.is_none() && stocks.iter().any(|stock| stock.length.is_some());
        lead.cut_length = match shortest {
            Some(stock) => {
                lead.stock = Some(stock.id.clone());
                stock.length
            }
            None => Some(to_cut.value),
        };
    }

    /// The cables of the kit that it could be: those of the named one's name, else all of low voltage.
    fn could_be(&self, lead: &Id) -> Vec<&CableStock> {
        let wish = self.wishes.iter().find(|wish| wish.id == *lead);
        let named = wish.and_then(|wish| wish.cable.as_ref());
        let kit = &self.job.kit.cables;
        let named = named.and_then(|id| kit.iter().find(|cable| cable.id == *id));
        let could = |stock: &&CableStock| match named {
            Some(named) => stock.id == named.id || (stock.name.is_some() && stock.name == named.name),
            None => stock.signal != Some(Signal::Power),
        };
        kit.iter().filter(could).collect()
    }
}

/// Whether a hand reaches the ports of what hangs on it. A stand-off that nobody measured counts as too small.
fn can_be_reached(mount: &Mount) -> bool {
    let tilts = mount.tilt.as_ref().and_then(|tilt| tilt.down).is_some_and(|down| down > Angle::default());
    let swings = mount.arm.is_some();
    tilts || swings || mount.stand_off.is_some_and(|off| off.mm() >= HAND_MM - 1e-9)
}
