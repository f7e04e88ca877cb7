//! What one fastener of a size carries, wall by wall, and what that rests on.

use super::super::site::Site;
use super::Kind;
use crate::capacity::bite::{Stack, bite};
use crate::capacity::concrete::{ConcreteScrew, in_concrete};
use crate::capacity::hold::Hold;
use crate::capacity::lead_hole::lead_hole;
use crate::capacity::screw::Screw;
use crate::capacity::stated::{Report as Stated, fixing};
use crate::capacity::steel::in_steel;
use crate::capacity::why::Why;
use crate::capacity::wood::in_wood;
use crate::handbook::concrete_screw::{MOST_GAP_IN, UNMEASURED_PSI};
use crate::handbook::dowel_bearing::SHEET_STEEL_PSI;
use crate::handbook::gravity::UNIDENTIFIED;
use crate::handbook::placing::CONCRETE_EDGE;
use crate::handbook::steel_stud::{SHEAR_THROUGH_BOARD, THROUGH_STEEL_IN};
use crate::handbook::wood_screw;
use crate::job::framing::{Concrete, Masonry, SteelStuds, WoodStuds};
use crate::job::kit::FastenerKind;
use crate::ledger::{Blank, Given, Label, Ledger, Part};
use crate::plan::verdict::{Rest, Want};
use crate::tolerance::{LEAST_STUD_DEPTH_MM, SAME_PLACE_MM, SAME_SIZE_IN, TESTED_SHARE, WASHER_MM};
use crate::units::{Length, Ratio, Stress};
impl Kind<'_> {
    pub(super) fn in_wood<L: Ledger>(
        &mut self,
        ledger: &mut L,
        site: &Site<'_>,
        studs: &WoodStuds,
    ) -> Result<(), Want> {
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
                let stated = stated.ok_or_else(|| Want::FastenerReport(self.stock.into()))?;
                self.rests.extend(self.stock.report.as_ref().map(document));
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
        // What its maker states makes it no stronger than sheet steel, so that no verdict hangs on it.
        let steel = Stress::psi(SHEET_STEEL_PSI.value);
        let weaker = site.plate.bearing.filter(|own| own.in_psi() < steel.in_psi());
        let plate_bearing = match weaker {
            Some(own) => {
                Given::chosen(own).because("what the plate's maker states, less than of sheet steel")
            }
            None => Given::chosen(steel).because(
                "the plate is taken to be of sheet steel, A653 SS Grade 33 (NDS 2018 Table 12M, its notes)",
            ),
        };
        self.rests.extend(weaker.is_none().then_some(Rest::PlateSteel(steel)));
        self.rests.extend([Rest::SteelInTension, Rest::Chance(site.ground.level)]);
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
        if matches!(self.hold, Err(Why::PastStud { supposed: true, .. })) {
            self.wants.push(Want::StudDepth(site.ground.wall.id.clone()));
        }
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

    pub(super) fn in_steel<L: Ledger>(&mut self, ledger: &mut L, site: &Site<'_>, studs: &SteelStuds) {
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
    /// A base is told in a document's own words, which only a reader can hold against the wall: counted is what is
    /// stated in solid units alone (chosen; a load for solid brick is many times what a hollow block bears).
    pub(super) fn in_masonry<L: Ledger>(
        &mut self,
        ledger: &mut L,
        site: &Site<'_>,
        masonry: &Masonry,
    ) -> Result<(), Want> {
        let report = self.stock.report.as_ref().filter(|report| is_named(report));
        let loads = report.and_then(|report| Some((report.shear?, report.pull?)));
        let is_tested = report.is_some_and(|report| report.tested == Some(true));
        let base = report.and_then(|report| report.base.as_deref()).unwrap_or_default().trim().to_owned();
        // A load that is for no base is for none of this wall; beside a pull test too the shear is the maker's.
        let loads = loads.filter(|_| !base.is_empty());
        let (shear, pull) = loads.ok_or_else(|| Want::FastenerReport(self.stock.into()))?;
        if masonry.solid.is_none() {
            self.wants.push(Want::Solid { wall: site.ground.wall.id.clone(), base: base.clone() });
        }
        // What was pulled on this wall says nothing of shear, which stays the maker's.
        self.rests.push(Rest::MakersLoad(base));
        self.rests.extend(report.map(document));
        self.rests.extend(is_tested.then_some(Rest::PullTest(TESTED_SHARE)));
        self.rests.push(Rest::ConcreteEdge(CONCRETE_EDGE.value));
        self.hold = if masonry.solid == Some(false) {
            Err(Why::Hollow)
        } else if site.front.value.in_inches() > MOST_GAP_IN.value {
            Err(Why::OffTheConcrete { gap: site.front.value, assumed: site.front.label == Label::Assumed })
        } else {
            fixing(ledger, shear, pull, is_tested).map(Hold::Linear)
        };
        Ok(())
    }

    pub(super) fn in_concrete<L: Ledger>(&mut self, ledger: &mut L, site: &Site<'_>, concrete: &Concrete) {
        let strength = concrete.strength.map(Given::measured);
        if strength.is_none() {
            self.rests.push(Rest::Concrete(Stress::psi(UNMEASURED_PSI.value)));
        }
        self.rests.push(Rest::ConcreteEdge(CONCRETE_EDGE.value));
        self.rests.push(Rest::ConcreteGap(Length::inches(MOST_GAP_IN.value)));
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
        // A layer that is told of is there, however thin it was measured: the plate does not bear on the concrete.
        let front = site.ground.wall.front_on(site.on.as_ref());
        let is_bare = front.is_none_or(|front| front.layers.is_empty());
        let gap = site.front.value;
        self.hold = match in_concrete(ledger, &screw) {
            Ok(_) if !is_bare => Err(Why::OffTheConcrete { gap, assumed: false }),
            held => held.map(Hold::Linear),
        };
    }
}

/// The document that what is stated is from.
fn document(report: &crate::job::kit::Report) -> Rest {
    Rest::Document { name: report.document.clone(), date: report.date.clone() }
}

/// Whether a report says which document it is, and of when: without that nothing in it is stated.
fn is_named(report: &crate::job::kit::Report) -> bool {
    !report.document.trim().is_empty() && !report.date.trim().is_empty()
}

/// All that a structural screw's report has to say; `None` where some of it is missing.
fn stated(report: &crate::job::kit::Report) -> Option<Stated> {
    is_named(report).then_some(())?;
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
