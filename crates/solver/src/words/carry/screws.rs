//! The screws between a mount's brackets and its piece.

use super::super::fastening::fine;
use super::super::phrase::list;
use crate::carry::{ScrewLength, ToMeasure};
use crate::units::{Length, LengthUnit};

/// How long such a screw is, where that is not worked out.
const AS_LONG_AS: &str = "as long as bracket and spacer and 5/16 in (8 mm) more, or as the maker says; never deeper than the insert";

/// What is brought for one piece, without a full stop.
pub(super) fn screws(thread: Option<Length>, insert: Option<Length>, length: &ScrewLength) -> String {
    let named = thread.map_or_else(|| "of the piece's own thread".to_owned(), thread_name);
    match length {
        ScrewLength::Usual { length, turns_in } => {
            let insert = insert.map_or_else(String::new, |insert| format!(" of {}", fine(insert)));
            let size = match thread {
                Some(_) => format!("{named} x {}", fine(*length)),
                None => format!("{} long, {named}", fine(*length)),
            };
            format!(
                "screw {size} for the brackets: {} into an insert{insert} (common practice; the maker's word comes first)",
                fine(*turns_in)
            )
        }
        ScrewLength::Between { least, most, next } => {
            let washers = next.map_or_else(String::new, |next| {
                let (thin, thick) = (next - *most, next - *least);
                let thick = if thin == thick {
                    fine(thin)
                } else {
                    format!("between {} and {}", fine(thin), fine(thick))
                };
                format!(", or {} with washers of {thick} in all under each head", fine(next))
            });
            let span = if least == most {
                format!("{} long", fine(*least))
            } else {
                format!("between {} and {} long", fine(*least), fine(*most))
            };
            format!(
                "screw {named} for the brackets, {span}: no usual length is{washers} (common practice; the maker's word \
                 comes first)"
            )
        }
        ScrewLength::Shallow { turn_in, by_maker } => {
            let deep = insert.map_or_else(String::new, |insert| format!(", {}", fine(insert)));
            let who = match by_maker {
                true => format!("the {} its maker has them turned in", fine(*turn_in)),
                false => format!("the {} of common practice", fine(*turn_in)),
            };
            format!(
                "screw {named} for the brackets, length not known: the insert{deep}, is not as deep as {who}; measure \
                 it again, or ask the maker"
            )
        }
        ScrewLength::NotKnown(missing) => {
            let asked: Vec<String> = missing.iter().map(|one| asked(*one).to_owned()).collect();
            let deep = insert.map_or_else(String::new, |insert| format!(", {} here", fine(insert)));
            format!(
                "screw {named} for the brackets, length not known: measure {}; {AS_LONG_AS}{deep} (common practice)",
                list(&asked)
            )
        }
    }
}

fn asked(missing: ToMeasure) -> &'static str {
    match missing {
        ToMeasure::Bracket => "the bracket's thickness",
        ToMeasure::Spacer => "the spacer's length (none is 0)",
        ToMeasure::Insert => "the insert's depth",
    }
}

/// `M8`; a thread that is not a whole number of millimetres by its diameter.
fn thread_name(thread: Length) -> String {
    let whole = thread.mm().round();
    if thread.unit() == LengthUnit::Millimetre && thread == Length::millimetres(whole) {
        return format!("M{whole}");
    }
    format!("of {} thread", fine(thread))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::handbook::machine_screw::TURN_IN_MM;

    #[test]
    fn the_sum_is_told_or_what_it_wants() {
        let mm = Length::millimetres;
        let usual = ScrewLength::Usual { length: mm(35.0), turns_in: mm(12.0) };
        let told = screws(Some(mm(8.0)), Some(mm(15.0)), &usual);
        assert!(
            told.starts_with("screw M8 x 35 mm for the brackets: 12 mm into an insert of 15 mm"),
            "{told}"
        );
        let between = ScrewLength::Between { least: mm(31.0), most: mm(33.0), next: Some(mm(35.0)) };
        let told = screws(Some(Length::inches(0.25)), Some(mm(10.0)), &between);
        assert!(told.contains("of 1/4\" thread for the brackets, between 31 mm and 33 mm long"), "{told}");
        assert!(told.contains("35 mm with washers of between 2 mm and 4 mm in all"), "{told}");
        let shallow = ScrewLength::Shallow { turn_in: mm(8.0), by_maker: false };
        let told = screws(None, Some(mm(6.0)), &shallow);
        assert!(told.contains("the insert, 6 mm, is not as deep as the 8 mm of common practice"), "{told}");
        let missing = ScrewLength::NotKnown(vec![ToMeasure::Bracket, ToMeasure::Spacer]);
        let told = screws(Some(mm(6.0)), Some(mm(12.0)), &missing);
        assert!(told.contains("measure the bracket's thickness and the spacer's length"), "{told}");
        assert!(told.contains("never deeper than the insert, 12 mm here"), "{told}");
    }

    #[test]
    fn the_words_say_the_number_that_counts() {
        assert!(AS_LONG_AS.contains(&format!("({} mm)", TURN_IN_MM.value)));
    }
}
