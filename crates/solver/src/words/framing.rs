//! What the wall is made of: studs with their doubt, the spacing, and hits that are of no stud.

use super::phrase::capital;
use super::things::{along, thing};
use crate::plan::Plan;
use crate::plan::framing::{Known, Outlier, OutlierWhy, PlaneFraming, Stud};
use crate::tolerance::{SPOKEN_OF, same};
use crate::units::Length;

/// A stud: where, how surely, and how it is known.
#[must_use]
pub fn stud(plan: &Plan, stud: &Stud) -> String {
    let known = match stud.known {
        Known::Met => "met by a probe".to_owned(),
        Known::Inferred => format!("{} likely by its hits", percent(stud.probability)),
        Known::Expected => format!("only expected, {} likely by the spacing", percent(stud.probability)),
    };
    let (at, doubt) = (along(plan, stud.centre), plan.style.print(stud.doubt));
    format!("Middle {at}, give or take {doubt}: {known}.")
}

/// The spacing of a plane's studs, or that none is sure.
#[must_use]
pub fn spacing(plan: &Plan, plane: &PlaneFraming) -> String {
    let named = |spacing: Option<Length>| match spacing {
        Some(length) => spacing_name(length),
        None => "no pattern".to_owned(),
    };
    let where_ = match &plane.on {
        Some(on) => format!(" on {}", thing(plan, &on.whole())),
        None => String::new(),
    };
    let mut told = plane.spacings.iter();
    match told.next() {
        Some(first) if first.probability >= SPOKEN_OF => match first.spacing {
            Some(length) => {
                format!("Spacing{where_}: {}, {} likely.", spacing_name(length), percent(first.probability))
            }
            None => {
                format!("The studs{where_} follow no usual spacing, {} likely.", percent(first.probability))
            }
        },
        Some(first) => {
            let all = std::iter::once(first).chain(told).filter(|one| one.probability >= 0.05).take(4);
            let all: Vec<String> =
                all.map(|one| format!("{} {}", named(one.spacing), percent(one.probability))).collect();
            format!("No spacing{where_} is sure yet: {}.", all.join(", "))
        }
        None => "No spacing is known.".to_owned(),
    }
}

/// Each usual spacing by the unit it is laid out in.
fn spacing_name(length: Length) -> String {
    let inches = length.in_inches();
    let tenths = (inches * 10.0).round() / 10.0;
    if same(Length::inches(tenths), length) { format!("{tenths}\"") } else { format!("{} mm", length.mm()) }
}

/// Why a hit is taken for one of no stud.
#[must_use]
pub fn outlier(plan: &Plan, outlier: &Outlier) -> String {
    let by = |off: &Length| plan.style.print(*off);
    let why = match &outlier.why {
        OutlierWhy::OffPattern(off) => format!("{} from the nearest stud of the spacing", by(off)),
        OutlierWhy::AgainstProbe(probe) => {
            format!("{} says otherwise", thing(plan, &probe.whole()))
        }
        OutlierWhy::AgainstOthers(off) => {
            format!("the other hits here put the stud's middle {} off", by(off))
        }
        OutlierWhy::Alone => "nothing else tells of a stud there".to_owned(),
    };
    format!(
        "{} is {} likely of something else: {why}.",
        capital(&thing(plan, &outlier.hit.whole())),
        percent(outlier.probability)
    )
}

/// A probability in whole hundredths, never more than is known: 99.6 % is told as 99 %.
pub(super) fn percent(probability: f64) -> String {
    format!("{} %", (probability * 100.0).floor().clamp(0.0, 99.0))
}
