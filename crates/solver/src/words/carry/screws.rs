//! The screws between a mount's brackets and its piece.

use super::super::fastening::fine;
use super::super::phrase::list;
use crate::carry::{ScrewLength, ToMeasure};
use crate::units::{Length, LengthUnit};

/// On what a length rests.
const PRACTICE: &str = "common practice; the maker's word comes first";
/// How long such a screw is, where that is not worked out.
const AS_LONG_AS: &str = "as long as bracket and spacer and 5/16 in (8 mm) more, or as the maker says; never deeper than the insert";

/// What is brought for one piece, without a full stop.
pub(super) fn screws(thread: Option<Length>, length: &ScrewLength) -> String {
    let named = thread.map_or_else(|| "of the piece's own thread".to_owned(), thread_name);
    let span = match length {
        ScrewLength::Usual { length, .. } if thread.is_some() => {
            return format!("screw {named} x {} for the brackets", fine(*length));
        }
        ScrewLength::Usual { length, .. } => format!("{} long", fine(*length)),
        ScrewLength::Between { least, most, .. } if least == most => format!("{} long", fine(*least)),
        ScrewLength::Between { least, most, .. } => {
            format!("between {} and {} long", fine(*least), fine(*most))
        }
        ScrewLength::Shallow { .. } | ScrewLength::NotKnown(_) => "length not known".to_owned(),
    };
    format!("screw {named} for the brackets, {span}")
}

/// How that length comes about, or what it wants, without a full stop.
pub(super) fn screws_why(insert: Option<Length>, length: &ScrewLength) -> String {
    let deep = |words: &str| insert.map_or_else(String::new, |insert| words.replace("{}", &fine(insert)));
    match length {
        ScrewLength::Usual { turns_in, .. } => {
            format!("{} into an insert{} ({PRACTICE})", fine(*turns_in), deep(" of {}"))
        }
        ScrewLength::Between { least, most, next } => {
            let washers = next.map_or_else(String::new, |next| {
                let (thin, thick) = (fine(next - *most), fine(next - *least));
                let thick = if thin == thick { thin } else { format!("between {thin} and {thick}") };
                format!("; or {} with washers of {thick} in all under each head", fine(next))
            });
            format!("no usual length is{washers} ({PRACTICE})")
        }
        ScrewLength::Shallow { turn_in, by_maker } => {
            let who = match by_maker {
                true => format!("the {} its maker has them turned in", fine(*turn_in)),
                false => format!("the {} of common practice", fine(*turn_in)),
            };
            format!("the insert{} is not as deep as {who}: measure it again, or ask the maker", deep(", {},"))
        }
        ScrewLength::NotKnown(missing) => {
            let asked: Vec<String> = missing.iter().map(|one| asked(*one).to_owned()).collect();
            format!("measure {}; {AS_LONG_AS}{} (common practice)", list(&asked), deep(", {} here"))
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
        assert_eq!(screws(Some(mm(8.0)), &usual), "screw M8 x 35 mm for the brackets");
        assert!(screws_why(Some(mm(15.0)), &usual).starts_with("12 mm into an insert of 15 mm ("));
        let between = ScrewLength::Between { least: mm(31.0), most: mm(33.0), next: Some(mm(35.0)) };
        let told = screws(Some(Length::inches(0.25)), &between);
        assert_eq!(told, "screw of 1/4\" thread for the brackets, between 31 mm and 33 mm long");
        let told = screws_why(Some(mm(10.0)), &between);
        assert!(told.contains("35 mm with washers of between 2 mm and 4 mm in all"), "{told}");
        let shallow = ScrewLength::Shallow { turn_in: mm(8.0), by_maker: false };
        let told = screws_why(Some(mm(6.0)), &shallow);
        assert!(told.contains("the insert, 6 mm, is not as deep as the 8 mm of common practice"), "{told}");
        let missing = ScrewLength::NotKnown(vec![ToMeasure::Bracket, ToMeasure::Spacer]);
        assert_eq!(screws(Some(mm(6.0)), &missing), "screw M6 for the brackets, length not known");
        let told = screws_why(Some(mm(12.0)), &missing);
        assert!(told.starts_with("measure the bracket's thickness and the spacer's length"), "{told}");
        assert!(told.contains("never deeper than the insert, 12 mm here"), "{told}");
    }

    #[test]
    fn the_words_say_the_number_that_counts() {
        assert!(AS_LONG_AS.contains(&format!("({} mm)", TURN_IN_MM.value)));
    }
}
