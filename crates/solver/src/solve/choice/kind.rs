//! One size of the kit's fasteners in this wall: what one of them carries, and where it may stand.

use super::site::Site;
use crate::capacity::bite::{Stack, bite};
use crate::capacity::concrete::{ConcreteScrew, in_concrete};
use crate::capacity::hold::Hold;
use crate::capacity::lead_hole::{Bits, LeadHole, bit, from_face, from_face_with_room, lead_hole};
use crate::capacity::opening::takes;
use crate::capacity::placing::{
    Carries, InFace, apart_in_concrete, apart_in_steel, apart_in_stud, carries, edge_in_concrete,
    edge_in_steel, edge_needs, to_end, too_near_in_stud,
};
use crate::capacity::screw::Screw;
use crate::capacity::seat::Seat;
use crate::capacity::stated::{Report as Stated, fixing};
use crate::capacity::steel::in_steel;
use crate::capacity::why::{Known, Why};
use crate::capacity::wood::in_wood;
use crate::handbook::concrete_screw::{DUST_IN, MOST_GAP_IN, UNMEASURED_PSI};
use crate::handbook::dowel_bearing::SHEET_STEEL_PSI;
use crate::handbook::gravity::UNIDENTIFIED;
use crate::handbook::placing::CONCRETE_EDGE;
use crate::handbook::steel_stud::{SHEAR_THROUGH_BOARD, THROUGH_STEEL_IN};
use crate::handbook::wood_screw;
use crate::job::framing::{Concrete, Masonry, SteelStuds, WallFraming, WoodStuds};
use crate::job::kit::{DrillBit, FastenerKind, FastenerStock};
use crate::ledger::{Blank, Given, Label, Ledger, Part};
use crate::plan::piece::{HolePlan, Meets};
use crate::plan::verdict::{BitFrom, EmptyWhy, Rest, Want};
use crate::subject::Id;
use crate::tolerance::{
    LEAST_STUD_DEPTH_MM, SAME_PLACE_MM, SAME_SIZE_IN, SOLE_PLATE_MM, TESTED_SHARE, TOP_PLATES_MM, WASHER_MM,
};
use crate::units::{Length, LengthUnit, Ratio, Stress};

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

/// The sizes of the kit that this wall takes, and what is missing of those that cannot be counted; of `only` these where
/// any are named.
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
            _ => missing.push(Want::FastenerSize(stock.id.clone())),
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
            kind.wants.push(Want::FastenerHead(stock.id.clone()));
        }
        Ok(kind)
    }

    fn in_wood<L: Ledger>(&mut self, ledger: &mut L, site: &Site<'_>, studs: &WoodStuds) -> Result<(), Want> {
        let (diameter, length) = (Given::measured(self.diameter), Given::measured(self.length));
        let screw = match self.kind() {
            FastenerKind::Lag => {
                if self.stock.to_standard.is_none() {
                    self.rests.push(Rest::LagMade);
                }
                Screw::lag(diameter, length)
            }
            FastenerKind::StructuralScrew => {
                let stated = self.stock.report.as_ref().and_then(stated);
                let stated = stated.ok_or_else(|| Want::FastenerReport(self.stock.id.clone()))?;
                Screw::structural(length, stated)
            }
            _ => {
                let d_in = self.diameter.in_inches();
                let size =
                    wood_screw::SIZES.iter().find(|row| (row.value.diameter_in - d_in).abs() <= SAME_SIZE_IN);
                self.rests.push(Rest::ScrewMade);
                self.head = self.head.or(size.map(|row| Length::inches(row.value.head_in)));
                Screw::wood_screw(diameter, length)
            }
        };
        let gravity = studs.gravity.map_or_else(
            || {
                self.rests.push(Rest::Gravity(Ratio::bare(UNIDENTIFIED.value)));
                Given::new(Ratio::bare(UNIDENTIFIED.value), UNIDENTIFIED.label).because(UNIDENTIFIED.source)
            },
            Given::measured,
        );
        let stud_depth = studs.depth.map_or_else(
            || {
                let least = Length::millimetres(LEAST_STUD_DEPTH_MM);
                self.rests.push(Rest::StudDepth(least));
                Given::chosen(least).because("the least usual depth of a stud")
            },
            Given::measured,
        );
        if studs.face.is_none() {
            self.rests.push(Rest::StudFace(site.face().value));
        }
        let plate_bearing = Given::chosen(Stress::psi(SHEET_STEEL_PSI.value)).because(
            "the plate is taken to be of sheet steel, A653 SS Grade 33 (NDS 2018 Table 12M, its notes)",
        );
        self.rests.push(Rest::PlateSteel(plate_bearing.value));
        let washer = self.washer();
        let stack = Stack { washer, plate: site.sheet, plate_bearing, gap: site.front, stud_depth };
        self.hold = screw.and_then(|screw| {
            // Without a washer it goes deeper: a washer that nobody measured keeps none out of what is behind.
            let bare = if self.stock.washer.is_some() { washer } else { Given::chosen(Length::default()) };
            if let Err(why @ Why::PastStud { .. }) =
                bite(&mut Blank, &screw, &Stack { washer: bare, ..stack })
            {
                return Err(why);
            }
            in_wood(ledger, &screw, gravity, &stack)
        });
        self.screw = screw.ok();
        ledger.begin(Part::Lead);
        self.lead = self.screw.as_ref().and_then(|screw| {
            let bite = bite(&mut Blank, screw, &stack).ok()?;
            lead_hole(ledger, screw, gravity, &bite).ok()
        });
        Ok(())
    }

    /// The washer under its head; a thick one where nobody measured it, which it then rests on.
    fn washer(&mut self) -> Given<Length> {
        match self.stock.washer {
            Some(washer) => Given::measured(washer),
            None => {
                let usual = Length::millimetres(WASHER_MM);
                self.rests.push(Rest::Washer(usual));
                Given::chosen(usual).because("thicker than any usual washer")
            }
        }
    }

    fn in_steel<L: Ledger>(&mut self, ledger: &mut L, site: &Site<'_>, studs: &SteelStuds) {
        let thickness =
            studs.thickness.map_or(Given::new(Length::mils(18.0), Label::Assumed), Given::measured);
        if site.front.value > Length::default() {
            self.rests.push(Rest::ShearThroughBoard(SHEAR_THROUGH_BOARD.value));
        }
        let washer = self.washer().value;
        let has = self.length - washer - site.sheet.value - site.front.value;
        let needs = thickness.value + Length::inches(THROUGH_STEEL_IN.value);
        self.hold = if has.mm() < needs.mm() - SAME_PLACE_MM {
            Err(Why::Shallow { has, needs })
        } else {
            in_steel(ledger, Given::measured(self.diameter), thickness, site.front).map(Hold::Linear)
        };
    }

    /// A fixing in brick or block, by what is stated of it for this base; like concrete it has to stand on it.
    ///
    /// A base is told in a document's own words, which only a reader can hold against the wall: counted is what is stated in
    /// solid units alone (chosen; a load for solid brick is many times what a hollow block bears).
    fn in_masonry<L: Ledger>(
        &mut self,
        ledger: &mut L,
        site: &Site<'_>,
        masonry: &Masonry,
    ) -> Result<(), Want> {
        let report = self.stock.report.as_ref();
        let loads = report.and_then(|report| Some((report.shear?, report.pull?)));
        let is_tested = report.is_some_and(|report| report.tested == Some(true));
        let base = report.and_then(|report| report.base.as_deref()).unwrap_or_default().trim().to_owned();
        // A load that is for no base is for none of this wall; beside a pull test too the shear is the maker's.
        let loads = loads.filter(|_| !base.is_empty());
        let (shear, pull) = loads.ok_or_else(|| Want::FastenerReport(self.stock.id.clone()))?;
        if masonry.solid.is_none() {
            self.wants.push(Want::Solid { wall: site.ground.wall.id.clone(), base: base.clone() });
        }
        self.rests.push(if is_tested { Rest::PullTest(TESTED_SHARE) } else { Rest::MakersLoad(base) });
        self.rests.push(Rest::ConcreteEdge(CONCRETE_EDGE.value));
        self.hold = if masonry.solid == Some(false) {
            Err(Why::Hollow)
        } else if site.front.value.in_inches() > MOST_GAP_IN.value {
            Err(Why::OffTheConcrete { gap: site.front.value })
        } else {
            fixing(ledger, shear, pull, is_tested).map(Hold::Linear)
        };
        Ok(())
    }

    fn in_concrete<L: Ledger>(&mut self, ledger: &mut L, site: &Site<'_>, concrete: &Concrete) {
        let strength = concrete.strength.map(Given::measured);
        if strength.is_none() {
            self.rests.push(Rest::Concrete(Stress::psi(UNMEASURED_PSI.value)));
        }
        self.rests.push(Rest::ConcreteEdge(CONCRETE_EDGE.value));
        let washer = self.washer();
        let depth = self.length - washer.value - site.sheet.value - site.front.value;
        let label = [washer.label, site.sheet.label, site.front.label]
            .into_iter()
            .fold(Label::Derived, Label::weaker);
        let screw = ConcreteScrew {
            diameter: Given::measured(self.diameter),
            depth: Given::new(depth.max(Length::default()), label),
            gap: site.front,
            // Each hole's own is looked at where it stands.
            edge: Given::new(self.diameter * CONCRETE_EDGE.value, CONCRETE_EDGE.label),
            strength,
            normal_weight: concrete.normal_weight == Some(true),
        };
        self.hold = in_concrete(ledger, &screw).map(Hold::Linear);
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

    /// The bit of its lead hole: of the kit where one is in the rule's range and long enough; else by 1/64 in, or by half
    /// a millimetre for a metric fastener (chosen: any set has them).
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
    /// In wood as deep as the rule has it. In concrete deeper than the screw goes, by the room for its dust. Into steel no
    /// deeper than the screw itself comes.
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
        for has in [hole.place.y - outline.bottom - sole, outline.top - top - hole.place.y] {
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

/// All that a structural screw's report has to say; `None` where some of it is missing.
fn stated(report: &crate::job::kit::Report) -> Option<Stated> {
    Some(Stated {
        outer_diameter: report.outer_diameter?,
        root_diameter: report.root_diameter?,
        bending: report.bending?,
        thread: report.thread?,
        withdrawal: report.withdrawal?,
        gravity: report.gravity?,
        least_depth: report.least_depth?,
        least_edge: report.least_edge?,
    })
}
