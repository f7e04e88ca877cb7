//! The cables themselves: their measures, and how long they have to be.

use super::Cabling;
use crate::geometry::Point;
use crate::handbook::low_voltage;
use crate::job::kit::CableStock;
use crate::job::mount::{Mount, MountKind};
use crate::job::option::CableWish;
use crate::job::port::{Points, Port};
use crate::ledger::{Blank, Given, Label};
use crate::plan::cable::{Lead, Way, WayBy};
use crate::subject::Id;
use crate::tolerance::{ARM_REACH_MM, HAND_MM, HELD_OFF_MM, LOWERS_MM, PLUG_REACH_MM};
use crate::units::{Angle, Length};
use crate::wiring::{bends, lengths};

impl Cabling<'_> {
    /// A cable of low voltage as far as it is known, without its length.
    pub(super) fn lead(&self, port: &Port) -> Lead {
        let wish = self.wishes.iter().find(|wish| wish.port == port.id);
        let stock = wish.and_then(|wish| self.named(wish));
        let measured = |own: Option<Length>, usual: f64| {
            own.map_or(Given::new(Length::inches(usual), Label::Assumed), Given::measured)
        };
        let signal = stock.and_then(|stock| stock.signal);
        let outside = measured(stock.and_then(|s| s.outside), low_voltage::USUAL_DIAMETER_IN.value);
        let plug = measured(stock.and_then(|s| s.plug), low_voltage::WIDEST_PLUG_IN.value);
        let own_bend = stock.and_then(|stock| stock.bend);
        let bend = own_bend.map_or_else(|| bends::least_radius(&mut Blank, outside, signal), Given::measured);
        let before_lift = !self.mount.is_some_and(can_be_reached);
        let slack = self.wished.slack.map_or_else(lengths::usual_slack, Given::chosen);
        let held_off = self.wished.held_off.unwrap_or(Length::millimetres(HELD_OFF_MM));
        let reach = port
            .reach
            .map_or(Given::new(Length::millimetres(PLUG_REACH_MM), Label::Assumed), Given::measured);
        let above = if before_lift { Given::chosen(slack.value.max(held_off)) } else { slack };
        let travel = self.mount.map_or(Given::measured(Length::default()), travel);
        let of_both =
            |value: Length, other: Given<Length>| Given::new(value, reach.label.weaker(other.label));
        // A plug to the wall needs its reach there, and one of which nobody said where it points may be such; any other
        // needs the room that its cable bends in.
        let depth_needed =
            match port.points {
                Some(Points::Left | Points::Right | Points::Up | Points::Down) => {
                    if outside.value > bend.value { outside } else { bend }
                }
                Some(Points::Back) => of_both(reach.value + bend.value, bend),
                None => Given::new(reach.value + bend.value, Label::Assumed),
            };
        Lead {
            id: wish.map_or_else(|| port.id.clone(), |wish| wish.id.clone()),
            port: port.id.clone(),
            beside: wish.and_then(|wish| self.beside(&wish.id)).map(|feature| feature.id.clone()),
            signal,
            outside,
            plug,
            bend,
            in_wall: stock.and_then(|stock| stock.in_wall),
            longest: lengths::longest(signal, stock.and_then(|stock| stock.longest)),
            length: None,
            slack_above: Given::new(
                reach.value + above.value + travel.value,
                reach.label.weaker(above.label).weaker(travel.label),
            ),
            plug_reach: reach,
            travel,
            slack_below: slack,
            needs: None,
            cut_length: None,
            stock: None,
            stock_short: false,
            before_lift,
            depth_needed,
            plug_unknown: port.points.is_none()
                || (port.points == Some(Points::Back) && port.reach.is_none()),
        }
    }

    /// Puts in how long a cable has to be for a way, and which of the kit is taken: once each, as many as there are.
    pub(super) fn measure(&self, lead: &mut Lead, way: Option<&Way>, taken: &mut Vec<Id>) {
        let Some(way) = way else { return };
        let Some(port) = self.at.ports.iter().find(|port| port.id == lead.port) else { return };
        let apart = |a: Point, b: Point| (a.x - b.x).abs() + (a.y - b.y).abs();
        let mut places = vec![port.place];
        places.extend(&way.run);
        // From the exit on to where it was wished, or to what it ends at.
        let end = way.exit.centre();
        places.push(match self.beside(&lead.id) {
            Some(beside) => beside.rect.centre(),
            None if self.wished.exit_at.is_some() || self.cut("exit").is_some() => end,
            None => Point::new(end.x, self.wished_height(None)),
        });
        let mut length = Given::new(Length::default(), Label::Derived);
        for pair in places.windows(2) {
            if let [from, to] = pair {
                length.value += apart(*from, *to);
            }
        }
        if way.by == WayBy::InWall {
            // Through the face at both ends.
            let front = self.front();
            length = Given::new(length.value + front.value * 2.0, length.label.weaker(front.label));
        }
        let to_cut = lengths::to_cut(&mut Blank, length, lead.slack_above, lead.slack_below);
        lead.length = Some(length);
        lead.needs = Some(to_cut.value);
        let stocks = self.could_be(&lead.id);
        let is_left = |stock: &&&CableStock| {
            // How many there are nobody said: one.
            let count = stock.count.map_or(1, |count| usize::try_from(count).unwrap_or(usize::MAX));
            taken.iter().filter(|id| **id == stock.id).count() < count
        };
        let long_enough = stocks.iter().filter(|stock| stock.length.is_some_and(|own| own >= to_cut.value));
        let shortest = long_enough.filter(is_left).min_by(|a, b| {
            let mm = |stock: &CableStock| stock.length.map_or(f64::INFINITY, Length::mm);
            mm(a).total_cmp(&mm(b))
        });
        lead.stock_short = shortest.is_none() && stocks.iter().any(|stock| stock.length.is_some());
        lead.stock = shortest.map(|stock| stock.id.clone());
        taken.extend(lead.stock.clone());
        lead.cut_length = shortest.map_or(Some(to_cut.value), |stock| stock.length);
    }

    /// The cable of the kit that a wish names.
    fn named(&self, wish: &CableWish) -> Option<&CableStock> {
        let id = wish.cable.as_ref()?;
        self.job.kit.cables.iter().find(|cable| cable.id == *id)
    }

    /// The cables of the kit that it could be: the one named, and those of its name that are like it in all but their
    /// length. None where none is named: what would be taken is what was judged.
    fn could_be(&self, lead: &Id) -> Vec<&CableStock> {
        let wish = self.wishes.iter().find(|wish| wish.id == *lead);
        let Some(named) = wish.and_then(|wish| self.named(wish)) else { return Vec::new() };
        let is_alike = |stock: &CableStock| {
            let other_length = CableStock {
                id: stock.id.clone(),
                length: stock.length,
                count: stock.count,
                ..named.clone()
            };
            stock.name.is_some() && *stock == other_length
        };
        let kit = self.job.kit.cables.iter();
        kit.filter(|stock| stock.id == named.id || is_alike(stock)).collect()
    }
}

/// How far a mount carries what hangs on it from where it hangs at the wall: that much more cable it takes (common
/// practice, no source). What was not measured is taken long.
fn travel(mount: &Mount) -> Given<Length> {
    let arm = mount.arm.as_ref();
    let moves = |own: Option<Length>, usual_mm: f64| {
        own.map_or(Given::new(Length::millimetres(usual_mm), Label::Assumed), Given::measured)
    };
    let none = Given::measured(Length::default());
    let reach = if mount.comes_out() { moves(arm.and_then(|arm| arm.reach), ARM_REACH_MM) } else { none };
    let lowers = arm.and_then(|arm| arm.lowers);
    let comes_down = mount.kind == MountKind::PullDown || lowers.is_some();
    let lowers = if comes_down { moves(lowers, LOWERS_MM) } else { none };
    Given::new(reach.value + lowers.value, reach.label.weaker(lowers.label))
}

/// Whether a hand reaches the ports of what hangs on it. A stand-off that nobody measured counts as too small.
fn can_be_reached(mount: &Mount) -> bool {
    let tilts = mount.tilt.as_ref().and_then(|tilt| tilt.down).is_some_and(|down| down > Angle::default());
    tilts || mount.comes_out() || mount.stand_off.is_some_and(|off| off.mm() >= HAND_MM - 1e-9)
}
