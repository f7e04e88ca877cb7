//! One size of the kit's fasteners in this wall: where it may stand, its lead hole, and (`carries`) what one of them
//! carries.

mod carries;

use super::site::Site;
use crate::capacity::hold::Hold;
use crate::capacity::lead_hole::{Bits, LeadHole, bit, from_face, from_face_with_room};
use crate::capacity::opening::takes;
use crate::capacity::placing::{
    Carries, InFace, apart_in_concrete, apart_in_steel, apart_in_stud, carries, edge_in_concrete,
    edge_in_steel, edge_needs, to_end, too_near_in_stud,
};
use crate::capacity::screw::Screw;
use crate::capacity::seat::Seat;
use crate::capacity::why::{Known, Why};
use crate::geometry::Point;
use crate::handbook::concrete_screw::DUST_IN;
use crate::job::feature::FeatureKind;
use crate::job::framing::{WallFraming, WoodStuds};
use crate::job::kit::{DrillBit, FastenerKind, FastenerStock};
use crate::ledger::{Blank, Given, Label, Ledger, Part};
use crate::plan::piece::{HolePlan, Meets};
use crate::plan::verdict::{BitFrom, EmptyWhy, Rest, Want};
use crate::subject::{Id, Subject};
use crate::tolerance::{LOWEST_CEILING_IN, SAME_PLACE_MM, SOLE_PLATE_MM, TOP_PLATES_MM};
use crate::units::{Length, LengthUnit};

/// One size of the kit's fasteners in this wall.
pub(in super::super) struct Kind<'a> {
    pub(super) stock: &'a FastenerStock,
    pub(super) diameter: Length,
    pub(super) length: Length,
    head: Option<Length>,
    /// In wood.
    screw: Option<Screw>,
    /// What one of them carries.
    pub(super) hold: Known<Hold>,
    /// Its lead hole in wood.
    pub(super) lead: Option<LeadHole>,
    /// What of it is not measured.
    pub(super) wants: Vec<Want>,
    /// The chosen values it rests on.
    pub(super) rests: Vec<Rest>,
}

/// A hole that takes a fastener.
#[derive(Clone, Copy)]
pub(in super::super) struct Seated {
    /// Its place in the plate's list of holes.
    pub(super) hole: usize,
    /// Which of a slot's other positions it has, where it has one.
    pub(super) variant: Option<usize>,
    pub(super) seat: Seat,
    /// The chance that it has its edge need in solid wood; 1 where nothing is left to chance.
    pub(super) chance: f64,
    /// Whether what it stands in is met.
    pub(super) met: bool,
}

/// The sizes of the kit that this wall takes, and what is missing of those that cannot be counted; of `only` these
/// where any are named.
pub(in super::super) fn kinds<'a>(
    site: &Site<'_>,
    stocks: &'a [FastenerStock],
    only: &[&Id],
) -> (Vec<Kind<'a>>, Vec<Want>) {
    let mut kinds = Vec::new();
    let mut missing = Vec::new();
    let is_asked = |stock: &FastenerStock| only.is_empty() || only.contains(&&stock.id);
    for stock in
        stocks.iter().filter(|stock| is_asked(stock) && suits(site, stock.kind) && stock.count != Some(0))
    {
        match (stock.diameter, stock.length) {
            (Some(diameter), Some(length)) => match Kind::of(&mut Blank, site, stock, diameter, length) {
                Ok(kind) => kinds.push(kind),
                Err(want) => missing.push(want),
            },
            _ => missing.push(Want::FastenerSize(stock.into())),
        }
    }
    // What is fully known goes before what would make it not known.
    if only.is_empty() && kinds.iter().any(|kind| kind.wants.is_empty() && kind.hold.is_ok()) {
        kinds.retain(|kind| kind.wants.is_empty());
    }
    (kinds, missing)
}

/// Whether a type is made for this wall. A wall of which nothing is said is planned as wood, and asked about.
fn suits(site: &Site<'_>, kind: FastenerKind) -> bool {
    match site.framing {
        None | Some(WallFraming::NotKnown) => is_for_wood(kind),
        Some(WallFraming::Wood(studs)) => studs.furring != Some(true) && is_for_wood(kind),
        Some(WallFraming::Steel(_)) => kind == FastenerKind::SheetMetalScrew,
        Some(WallFraming::Concrete(_)) => kind == FastenerKind::ConcreteScrew,
        Some(WallFraming::Masonry(_)) => kind == FastenerKind::Fixing,
        Some(WallFraming::Veneer | WallFraming::NoFraming) => false,
    }
}

fn is_for_wood(kind: FastenerKind) -> bool {
    matches!(kind, FastenerKind::Lag | FastenerKind::WoodScrew | FastenerKind::StructuralScrew)
}

impl<'a> Kind<'a> {
    pub(super) fn of<L: Ledger>(
        ledger: &mut L,
        site: &Site<'_>,
        stock: &'a FastenerStock,
        diameter: Length,
        length: Length,
    ) -> Result<Self, Want> {
        let mut kind = Self {
            stock,
            diameter,
            length,
            head: stock.head,
            screw: None,
            hold: Err(Why::NoFastener),
            lead: None,
            wants: Vec::new(),
            rests: vec![Rest::Method],
        };
        match site.framing {
            Some(WallFraming::Steel(studs)) => kind.in_steel(ledger, site, studs),
            Some(WallFraming::Concrete(concrete)) => kind.in_concrete(ledger, site, concrete),
            Some(WallFraming::Masonry(masonry)) => kind.in_masonry(ledger, site, masonry)?,
            Some(WallFraming::Wood(studs)) => kind.in_wood(ledger, site, studs)?,
            _ => kind.in_wood(ledger, site, &WoodStuds::default())?,
        }
        if kind.head.is_none() {
            kind.wants.push(Want::FastenerHead(stock.into()));
        }
        Ok(kind)
    }

    /// What it is: a lag that is not made to its standard is a structural screw.
    pub(super) fn kind(&self) -> FastenerKind {
        match (self.stock.kind, self.stock.to_standard) {
            (FastenerKind::Lag, Some(false)) => FastenerKind::StructuralScrew,
            (kind, _) => kind,
        }
    }

    /// Whether it carries along a stud and across it alike, where it carries both ways.
    pub(super) fn alike(&self) -> bool {
        !self.screw.as_ref().is_some_and(Screw::is_large)
    }

    /// The bit of its lead hole: of the kit where one is in the rule's range and long enough; else by 1/64 in, or by
    /// half a millimetre for a metric fastener (chosen: any set has them).
    pub(super) fn bit<L: Ledger>(&self, ledger: &mut L, site: &Site<'_>) -> (Option<Length>, BitFrom) {
        let own = if site.bits.is_empty() { BitFrom::UsualSet } else { BitFrom::NotInKit };
        let Some(lead) = self.lead.as_ref() else { return (None, BitFrom::UsualSet) };
        let deep = self.depth(&mut Blank, site).unwrap_or(lead.depth.value + site.front.value);
        let is_long =
            |one: &&DrillBit| one.length.is_none_or(|length| length.mm() >= deep.mm() - SAME_PLACE_MM);
        let long: Vec<&DrillBit> = site.bits.iter().filter(is_long).collect();
        let widths: Vec<Length> = long.iter().filter_map(|one| one.diameter).collect();
        if let Some(width) = bit(ledger, lead, Bits::Kit(&widths))
            && let Some(one) = long.iter().find(|one| one.diameter == Some(width))
        {
            return (Some(width), BitFrom::Kit(one.id.clone()));
        }
        let step = match self.diameter.unit() {
            LengthUnit::Millimetre => Length::millimetres(0.5),
            LengthUnit::Inch | LengthUnit::Mil => Length::inches(1.0 / 64.0),
        };
        let usual: Vec<Length> = (1_u8..=64).map(|steps| step * f64::from(steps)).collect();
        (bit(ledger, lead, Bits::AnySet(&usual)), own)
    }

    /// How deep its hole is from the wall's face, where the bit's stop goes.
    ///
    /// In wood as deep as the rule has it. In concrete deeper than the screw goes, by the room for its dust. Into steel
    /// no deeper than the screw itself comes.
    pub(super) fn depth<L: Ledger>(&self, ledger: &mut L, site: &Site<'_>) -> Option<Length> {
        if site.front.label == Label::Assumed {
            return None;
        }
        if let Some(lead) = &self.lead {
            return Some(from_face(ledger, lead, site.front));
        }
        let is_for_wood = self.screw.is_some() || is_for_wood(self.stock.kind);
        // How deep a fixing's hole is, its own instructions say.
        if is_for_wood || self.stock.kind == FastenerKind::Fixing || site.sheet.label == Label::Assumed {
            return None;
        }
        // A washer that nobody measured keeps none of the hole out: the deeper is asked for.
        let washer = self.stock.washer.map_or_else(
            || Given::chosen(Length::default()).because("no washer is told of"),
            Given::measured,
        );
        let room = match site.framing {
            Some(WallFraming::Concrete(_)) => {
                Some(Given::new(Length::inches(DUST_IN.value), DUST_IN.label).because(DUST_IN.source))
            }
            _ => None,
        };
        let length = Given::measured(self.length);
        let past = self.length - washer.value - site.sheet.value;
        (past > site.front.value).then(|| from_face_with_room(ledger, length, washer, site.sheet, room))
    }

    /// The hole for its smooth shank in wood: as wide as the rule has it, and how deep from the wall's face.
    pub(super) fn shank(&self, site: &Site<'_>) -> Option<(Length, Length)> {
        let (width, smooth) = self.lead.as_ref()?.shank?;
        (site.front.label != Label::Assumed).then(|| (width, smooth + site.front.value))
    }

    /// The ceiling that its studs are taken to end at, where nobody measured it.
    pub(super) fn rests_on_ceiling(&self, site: &Site<'_>) -> Option<Rest> {
        let is_taken = self.screw.is_some() && site.ground.wall.height.is_none();
        is_taken.then(|| Rest::Ceiling(Length::inches(LOWEST_CEILING_IN)))
    }

    /// The wall's height, where nobody measured it and a ceiling as low as any would leave a hole in use too little of
    /// its stud.
    pub(super) fn wants_height(
        &self,
        site: &Site<'_>,
        mut in_use: impl Iterator<Item = Point>,
    ) -> Option<Want> {
        let screw = self.screw.as_ref().filter(|_| self.rests_on_ceiling(site).is_some())?;
        let needs = to_end(&mut Blank, screw, true, true);
        let lowest = site.ground.survey.outline.bottom + Length::inches(LOWEST_CEILING_IN);
        let highest = lowest - Length::millimetres(TOP_PLATES_MM) - needs;
        in_use.any(|place| place.y > highest).then(|| Want::WallSize(site.ground.wall.id.clone()))
    }

    /// From one to the next at least; along a stud, where they share one.
    pub(super) fn apart<L: Ledger>(&self, ledger: &mut L, site: &Site<'_>) -> Length {
        match &self.screw {
            Some(screw) => apart_in_stud(ledger, screw, true),
            None if matches!(site.framing, Some(WallFraming::Concrete(_) | WallFraming::Masonry(_))) => {
                apart_in_concrete(ledger, self.diameter)
            }
            None => apart_in_steel(ledger, self.diameter),
        }
    }

    /// The fastener in a hole, or why it has none.
    pub(super) fn seat<L: Ledger>(
        &self,
        ledger: &mut L,
        site: &Site<'_>,
        index: usize,
        hole: &HolePlan,
    ) -> Result<Seated, EmptyWhy> {
        let ground = &site.ground;
        let here = ground.survey.breast_at(hole.place.x, Some(hole.place.y)).map(|breast| &breast.id);
        if here != site.on.as_ref() {
            return Err(EmptyWhy::OtherPlane);
        }
        if site.is_stripped(hole.place) {
            return Err(EmptyWhy::Stripped);
        }
        if site.is_beside_a_hole(hole.place) {
            return Err(EmptyWhy::BesideHole);
        }
        if site.is_bored_for_another(hole.place, &self.stock.id) {
            return Err(EmptyWhy::BoredForAnother);
        }
        if let Some(other) = self.near_other(site, hole) {
            return Err(EmptyWhy::NearOther(other));
        }
        let in_concrete = matches!(site.framing, Some(WallFraming::Concrete(_) | WallFraming::Masonry(_)));
        let stud = match (hole.meets, hole.stud) {
            (Meets::Stud, Some(stud)) if !in_concrete => stud,
            (Meets::Masonry, _) if in_concrete => index,
            _ => return Err(EmptyWhy::Meets(hole.meets)),
        };
        let (runs, width) = site.opening(index);
        if let (Some(width), Some(head)) = (width, self.head) {
            let opening = crate::capacity::opening::Opening { width, runs };
            takes(&opening, self.diameter, head).map_err(EmptyWhy::Refused)?;
        }
        self.hold.as_ref().map_err(|why| EmptyWhy::Refused(*why))?;
        let (x_mm, y_mm) = (hole.in_plate.x.mm(), hole.in_plate.y.mm());
        if in_concrete {
            ledger.begin(Part::Needs);
            let stated = self.stock.report.as_ref().and_then(|report| report.least_edge);
            let needs = edge_in_concrete(ledger, self.diameter).max(stated.unwrap_or_default());
            let has = site.to_edge(hole.place);
            if has.mm() < needs.mm() - SAME_PLACE_MM {
                return Err(EmptyWhy::Refused(Why::Edge { has, needs }));
            }
            let seat = Seat::in_stud(x_mm, y_mm, stud, Carries::Both, runs);
            return Ok(Seated { hole: index, variant: None, seat, chance: 1.0, met: true });
        }
        let upright = ground.framing.studs.get(stud).ok_or(EmptyWhy::Meets(Meets::NotKnown))?;
        let at = InFace {
            face: site.face(),
            drift: Given::new((hole.place.x - upright.middle_at(hole.place.y)).abs(), Label::Derived),
            doubt: Given::chosen(Length::default()),
        };
        let doubt = Given::chosen(upright.doubt)
            .because("of the readings, by the doubts that are chosen for each kind");
        let Some(screw) = &self.screw else {
            ledger.begin(Part::Room);
            // Where the flange is has to leave room too: no chance answers for it.
            let doubted = InFace { doubt, ..at };
            edge_in_steel(ledger, self.diameter, &doubted).map_err(EmptyWhy::Refused)?;
            let seat = Seat::in_stud(x_mm, y_mm, stud, Carries::Both, runs);
            return Ok(Seated {
                hole: index,
                variant: None,
                seat,
                chance: hole.chance.unwrap_or_default(),
                met: hole.met,
            });
        };
        // A stud ends at the plates at the wall's bottom and top; what is nearer is hidden, and told as that.
        let outline = ground.survey.outline;
        let (sole, top) = (Length::millimetres(SOLE_PLATE_MM), Length::millimetres(TOP_PLATES_MM));
        ledger.begin(Part::Needs);
        // A plate that is turned pushes one of its studs up: a load may point to either end.
        let needs = to_end(ledger, screw, true, true);
        // Above and below a window or door stands another piece of stud, which ends at the sill; above it lies a header
        // of which nobody knows how high it is, loaded across its grain: nothing is counted there.
        let openings = ground.survey.features.iter().filter(|one| {
            matches!(one.kind, FeatureKind::Window | FeatureKind::Door)
                && one.rect.across().holds(hole.place.x)
        });
        let openings: Vec<_> = openings.collect();
        if openings.iter().any(|one| hole.place.y > one.rect.top) {
            return Err(EmptyWhy::OverOpening);
        }
        let at_openings = openings.iter().map(|one| one.rect.bottom - sole - hole.place.y);
        let ends = [hole.place.y - outline.bottom - sole, outline.top - top - hole.place.y];
        for has in ends.into_iter().chain(at_openings) {
            if has.mm() < needs.mm() - SAME_PLACE_MM {
                return Err(EmptyWhy::Refused(Why::Edge { has, needs }));
            }
        }
        // The chance answers for the doubt along the face; across it the doubt itself has to leave room.
        carries(&mut Blank, screw, &at).map_err(EmptyWhy::Refused)?;
        let doubted = InFace { doubt, ..at };
        ledger.begin(Part::Room);
        let carry = carries(ledger, screw, &doubted).unwrap_or(Carries::Along);
        let need = edge_needs(screw).0;
        if ground.is_empty(hole.place, need) {
            return Err(EmptyWhy::Meets(Meets::StudEdge));
        }
        let chance = ground.framing.chance(here, hole.place.x, hole.place.y, need);
        let met = hole.met && chance >= ground.level;
        Ok(Seated {
            hole: index,
            variant: None,
            seat: Seat::in_stud(x_mm, y_mm, stud, carry, runs),
            chance,
            met,
        })
    }

    /// The fastener of another plate that one here would stand too near to: along the stud that both are in, or any way
    /// where there is none. The larger of the two has its way.
    fn near_other(&self, site: &Site<'_>, hole: &HolePlan) -> Option<Subject> {
        let apart_mm = self.apart(&mut Blank, site).mm();
        let near = site.ground.in_use.iter().find(|other| {
            let larger = (other.diameter.mm() / self.diameter.mm()).max(1.0);
            let needs_mm = apart_mm * larger - SAME_PLACE_MM;
            let (right, up) = ((other.place.x - hole.place.x).mm(), (other.place.y - hole.place.y).mm());
            match (hole.stud, other.stud) {
                (Some(stud), Some(of_other)) => stud == of_other && up.abs() < needs_mm,
                _ => right * right + up * up < needs_mm * needs_mm,
            }
        })?;
        Some(near.hole.clone())
    }

    /// Whether two of them stand too near each other.
    pub(super) fn too_near(&self, site: &Site<'_>, a: &Seat, b: &Seat) -> bool {
        let (across_mm, along_mm) = (a.x_mm - b.x_mm, a.y_mm - b.y_mm);
        match &self.screw {
            Some(screw) => {
                a.stud == b.stud && too_near_in_stud(screw, true, site.face().value, across_mm, along_mm)
            }
            None => {
                let needs = self.apart(&mut Blank, site);
                let needs_mm = needs.mm() - SAME_PLACE_MM;
                across_mm * across_mm + along_mm * along_mm < needs_mm * needs_mm
            }
        }
    }
}
