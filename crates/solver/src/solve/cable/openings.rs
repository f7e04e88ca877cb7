//! What the wall is opened for: how wide and high, how deep.

use super::Cabling;
use crate::handbook::{Row, boxes};
use crate::job::fact::FactState;
use crate::job::option::Opening;
use crate::ledger::{Given, Label};
use crate::plan::cable::{Lead, OpeningSize};
use crate::tolerance::PLUG_CLEAR_MM;
use crate::units::Length;

impl Cabling<'_> {
    /// The size of an opening that is cut already, else that which it would have.
    pub(super) fn as_cut(&self, part: &str, wished: OpeningSize) -> OpeningSize {
        let cut = self.opened(part).filter(|fact| fact.state == FactState::Cut).and_then(|fact| fact.size);
        cut.map_or(wished, |cut| OpeningSize {
            width: Given::measured(cut.width),
            height: Given::measured(cut.height),
            ..wished
        })
    }

    /// The size of an opening. One gang where nothing is said, or where a box of the kit has no size.
    pub(super) fn size(&self, opening: Option<&Opening>, leads: &[Lead]) -> OpeningSize {
        let inches = |row: Row<(f64, f64)>| {
            let side = |inches| row.with(Length::inches(inches)).given();
            OpeningSize { width: side(row.value.0), height: side(row.value.1), depth: None }
        };
        match opening {
            Some(Opening::PlainHole) => {
                let needed = self.bore(leads);
                let wide = needed.value + Length::millimetres(PLUG_CLEAR_MM);
                let side = Given::new(wide, needed.label.weaker(Label::Chosen));
                OpeningSize { width: side, height: side, depth: None }
            }
            None | Some(Opening::OneGang) => inches(boxes::ONE_GANG_IN),
            Some(Opening::TwoGang) => inches(boxes::TWO_GANG_IN),
            Some(Opening::Stocked(id)) => {
                let usual = inches(boxes::ONE_GANG_IN);
                let stock = self.job.kit.boxes.iter().find(|stock| stock.id == *id);
                let side = |own: Option<Length>, usual: Given<Length>| {
                    own.map_or(Given::new(usual.value, Label::Assumed), Given::measured)
                };
                OpeningSize {
                    width: side(stock.and_then(|stock| stock.width), usual.width),
                    height: side(stock.and_then(|stock| stock.height), usual.height),
                    depth: stock.and_then(|stock| stock.depth),
                }
            }
        }
    }
}
