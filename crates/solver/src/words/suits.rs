//! Which of one's own mounts suit a wished place.

use super::fastening::{share, verdict_word};
use super::mend::mount_kind;
use super::phrase::{capital, count, one_line};
use super::wish::play;
use crate::capacity::group::Word;
use crate::plan::Plan;
use crate::which_of_mine::{MOST, OfMine, Suits};

/// What a mount is called in the list: its name, else its kind.
#[must_use]
pub fn suits_name(suits: &Suits) -> String {
    let name = one_line(&suits.name);
    if name.is_empty() { capital(mount_kind(suits.kind)) } else { name }
}

/// What a mount would give at the wished place, as a sentence: the verdict, the play used, the studs met.
#[must_use]
pub fn suits(plan: &Plan, suits: &Suits) -> String {
    let used = suits.used.map(|used| format!(", {} used", share(used))).unwrap_or_default();
    let verdict = match (suits.word, suits.if_probed) {
        (Word::NotKnown, Word::Holds) => format!("holds if probed{used}"),
        (word, _) => format!("{}{used}", verdict_word(word)),
    };
    let mut parts = vec![verdict, play(plan, suits.offset)];
    if suits.on_studs {
        parts.push(match suits.studs {
            1 => "one stud only".to_owned(),
            studs => {
                let holes = count(suits.holes, "hole", "holes");
                format!("{holes} in {}", count(studs, "stud", "studs"))
            }
        });
    }
    if suits.is_assumed {
        parts.push("its plate is not measured".to_owned());
    }
    format!("{}.", capital(&parts.join(", ")))
}

/// What became of the mounts that are not in the list; `None` where all are.
#[must_use]
pub fn left_out(of: &OfMine) -> Option<String> {
    let refused = (of.refused > 0).then(|| format!("{} beyond rating or pattern", of.refused));
    let not_tried =
        (of.not_tried > 0).then(|| format!("{} not tried, since no more than {MOST} are", of.not_tried));
    let told: Vec<String> = refused.into_iter().chain(not_tried).collect();
    (!told.is_empty()).then(|| format!("Left out: {}.", told.join("; ")))
}

#[cfg(test)]
mod tests {
    use super::super::sample::{self, inches, well_told};
    use super::*;
    use crate::job::mount::MountKind;

    #[test]
    fn the_list_reads_as_it_is_asked() {
        let wide = Suits {
            mount: 0,
            kind: MountKind::Tilting,
            name: "Tilting wide".to_owned(),
            word: Word::Holds,
            if_probed: Word::Holds,
            used: Some(0.475),
            offset: inches("-1 1/4"),
            studs: 2,
            holes: 4,
            on_studs: true,
            is_assumed: false,
        };
        let plan = sample::plan();
        let said = |one: &Suits| {
            let text = suits(&plan, one);
            well_told(&text);
            text
        };
        assert_eq!(suits_name(&wide), "Tilting wide");
        assert_eq!(said(&wide), "Holds, 0.48 used, 1 1/4\" of play to the left, four holes in two studs.");
        let narrow = Suits {
            name: String::new(),
            word: Word::NotKnown,
            if_probed: Word::NotKnown,
            used: None,
            offset: inches("0"),
            studs: 1,
            is_assumed: true,
            ..wide.clone()
        };
        assert_eq!(suits_name(&narrow), "Tilting mount");
        assert_eq!(said(&narrow), "Not known, no play used, one stud only, its plate is not measured.");
        let out = |refused, not_tried| {
            let text = left_out(&OfMine { suits: Vec::new(), refused, not_tried });
            text.iter().for_each(|text| well_told(text));
            text
        };
        assert_eq!(out(0, 0), None);
        assert_eq!(out(3, 0).unwrap(), "Left out: 3 beyond rating or pattern.");
        let both = "Left out: 3 beyond rating or pattern; 4 not tried, since no more than 60 are.";
        assert_eq!(out(3, 4).unwrap(), both);
        let probed = Suits { word: Word::NotKnown, on_studs: false, ..wide };
        assert_eq!(said(&probed), "Holds if probed, 0.48 used, 1 1/4\" of play to the left.");
    }
}
