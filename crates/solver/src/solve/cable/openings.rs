//! What the wall is opened for: how wide and high, how deep.

use super::Cabling;
use crate::handbook::boxes;
use crate::job::fact::FactState;
use crate::job::option::Opening;
use crate::plan::cable::Lead;
use crate::tolerance::PLUG_CLEAR_MM;
use crate::units::Length;

/// An opening's size.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Size {
    pub(super) width: Length,
    pub(super) height: Length,
    /// How deep what goes in is; `None` for what has no depth, or none that is known.
    pub(super) depth: Option<Length>,
}

impl Cabling<'_> {
    /// The size of an opening that is cut already, else that which it would have.
    pub(super) fn as_cut(&self, part: &str, wished: Size) -> Size {
        let cut = self.opened(part).filter(|fact| fact.state == FactState::Cut).and_then(|fact| fact.size);
        cut.map_or(wished, |cut| Size { width: cut.width, height: cut.height, ..wished })
    }

    /// The size of an opening. One gang where nothing is said, or where a box of the kit has no size.
    pub(super) fn size(&self, opening: Option<&Opening>, leads: &[Lead]) -> Size {
        let inches = |(width, height): (f64, f64)| Size {
            width: Length::inches(width),
            height: Length::inches(height),
            depth: None,
        };
        match opening {
            Some(Opening::PlainHole) => {
                let clear = Length::millimetres(PLUG_CLEAR_MM);
                let widest = leads.iter().map(|lead| lead.plug.value).reduce(Length::max).unwrap_or_default();
                Size { width: widest + clear, height: widest + clear, depth: None }
            }
            None | Some(Opening::OneGang) => inches(boxes::ONE_GANG_IN.value),
            Some(Opening::TwoGang) => inches(boxes::TWO_GANG_IN.value),
            Some(Opening::Stocked(id)) => {
                let usual = inches(boxes::ONE_GANG_IN.value);
                let stock = self.job.kit.boxes.iter().find(|stock| stock.id == *id);
                stock.map_or(usual, |stock| Size {
                    width: stock.width.unwrap_or(usual.width),
                    height: stock.height.unwrap_or(usual.height),
                    depth: stock.depth,
                })
            }
        }
    }
}
