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
        Known::Expected => format!(
            "only expected, {} likely by the spacing: probe before it is used",
            percent(stud.probability)
        ),
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

#[cfg(test)]
mod tests {
    use super::super::sample::{self, inches, well_told};
    use super::*;
    use crate::plan::framing::Spacing;
    use crate::subject::Id;

    fn plane(spacings: &[(Option<Length>, f64)]) -> PlaneFraming {
        let spacings = spacings
            .iter()
            .map(|(spacing, probability)| Spacing { spacing: *spacing, probability: *probability });
        PlaneFraming { on: None, spacings: spacings.collect(), outliers: Vec::new(), beliefs: Vec::new() }
    }

    #[test]
    fn a_stud_says_how_it_is_known() {
        let plan = sample::plan();
        let mut one = plan.framing.studs[0].clone();
        for (known, words) in [
            (Known::Met, "met by a probe."),
            (Known::Inferred, "98 % likely by its hits."),
            (Known::Expected, "only expected, 98 % likely by the spacing: probe before it is used."),
        ] {
            one.known = known;
            let told = stud(&plan, &one);
            well_told(&told);
            assert!(told.ends_with(words), "{told}");
        }
    }

    #[test]
    fn a_spacing_is_told_in_the_unit_it_is_laid_out_in() {
        let plan = sample::plan();
        let told = |spacing: Option<Length>, share: f64| super::spacing(&plan, &plane(&[(spacing, share)]));
        assert_eq!(told(Some(inches("19.2")), 0.9), "Spacing: 19.2\", 90 % likely.");
        assert_eq!(told(Some(Length::millimetres(400.0)), 0.999), "Spacing: 400 mm, 99 % likely.");
        assert_eq!(told(None, 0.85), "The studs follow no usual spacing, 85 % likely.");
        let both =
            plane(&[(Some(inches("16")), 0.6), (Some(Length::millimetres(400.0)), 0.38), (None, 0.02)]);
        assert_eq!(super::spacing(&plan, &both), "No spacing is sure yet: 16\" 60 %, 400 mm 38 %.");
    }

    #[test]
    fn an_outlier_says_why() {
        let plan = sample::plan();
        let off = inches("7");
        for (why, words) in [
            (OutlierWhy::OffPattern(off), "7\" from the nearest stud of the spacing."),
            (OutlierWhy::AgainstProbe(Id::new("hit-1")), "says otherwise."),
            (OutlierWhy::AgainstOthers(off), "the other hits here put the stud's middle 7\" off."),
            (OutlierWhy::Alone, "nothing else tells of a stud there."),
        ] {
            let told = outlier(&plan, &Outlier { hit: Id::new("hit-1"), probability: 0.8, why });
            well_told(&told);
            assert!(told.contains("79 %") || told.contains("80 %"), "{told}");
            assert!(told.ends_with(words), "{told}");
        }
    }

    #[test]
    fn a_share_is_never_told_as_whole() {
        assert_eq!(
            (percent(0.999_9), percent(1.0), percent(0.0)),
            ("99 %".into(), "99 %".into(), "0 %".into())
        );
    }
}
