//! Gives ids to entries that lack one, and finds ids that stand twice.

use super::Job;
use crate::subject::Id;
use std::collections::BTreeMap;

/// An id that stands at two entries.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct DoubleId {
    /// The id.
    pub id: Id,
    /// What the first entry is, such as `feature`.
    pub first: &'static str,
    /// What the second entry is.
    pub second: &'static str,
}

impl Job {
    /// Shows every entry of every list, in the order of the file: what it is and its id.
    pub fn each_entry(&mut self, see: &mut dyn FnMut(&'static str, &mut Id)) {
        for fastener in &mut self.kit.fasteners {
            see("fastener", &mut fastener.id);
        }
        for bit in &mut self.kit.bits {
            see("bit", &mut bit.id);
        }
        for cable in &mut self.kit.cables {
            see("cable", &mut cable.id);
        }
        for part in &mut self.kit.boxes {
            see("box", &mut part.id);
        }
        for measure in &mut self.kit.measures {
            see("measure", &mut measure.id);
        }
        for piece in &mut self.pieces {
            see("piece", &mut piece.id);
            for port in &mut piece.ports {
                see("port", &mut port.id);
            }
        }
        for mount in &mut self.mounts {
            see("mount", &mut mount.id);
            let Some(plate) = &mut mount.plate else { continue };
            for solid in &mut plate.solids {
                see("solid", &mut solid.id);
            }
            for hole in &mut plate.holes {
                see("hole", &mut hole.id);
            }
            for slot in &mut plate.slots {
                see("slot", &mut slot.id);
            }
        }
        for wall in &mut self.walls {
            see("wall", &mut wall.id);
            for reading in &mut wall.floor {
                see("floor", &mut reading.id);
            }
            for reading in &mut wall.flatness {
                see("flat", &mut reading.id);
            }
            for feature in &mut wall.features {
                see("feature", &mut feature.id);
            }
            for hidden in &mut wall.hidden {
                see("hidden", &mut hidden.id);
            }
            for hit in &mut wall.hits {
                see("hit", &mut hit.id);
            }
            for seat in &mut wall.seats {
                see("seat", &mut seat.id);
            }
            for fact in &mut wall.facts {
                see("fact", &mut fact.id);
            }
            for option in &mut wall.options {
                see("option", &mut option.id);
                for hanging in &mut option.hangings {
                    see("hanging", &mut hanging.id);
                    for wish in &mut hanging.cables {
                        see("wish", &mut wish.id);
                    }
                }
            }
        }
        for picture in &mut self.pictures {
            see("picture", &mut picture.id);
        }
    }

    /// A new id such as `hit-12`, with a number that no id of this job ever had.
    pub fn give_id(&mut self, what: &str) -> Id {
        self.last_id = self.last_id.saturating_add(1);
        Id::new(&format!("{what}-{}", self.last_id))
    }

    /// Gives an id to every entry that lacks one, in the order of the file, and counts every number in use.
    ///
    /// # Errors
    /// The first id that stands twice; the job is then not to be used.
    pub fn complete_ids(&mut self) -> Result<(), DoubleId> {
        let mut seen: BTreeMap<Id, &'static str> = BTreeMap::new();
        let mut double = None;
        let mut last_id = self.last_id;
        self.each_entry(&mut |what, id| {
            if id.is_empty() {
                return;
            }
            if let Some(first) = seen.insert(id.clone(), what) {
                double.get_or_insert(DoubleId { id: id.clone(), first, second: what });
            }
            last_id = last_id.max(trailing_number(id.as_str()));
        });
        if let Some(double) = double {
            return Err(double);
        }
        self.each_entry(&mut |what, id| {
            if id.is_empty() {
                last_id = last_id.saturating_add(1);
                *id = Id::new(&format!("{what}-{last_id}"));
            }
        });
        self.last_id = last_id;
        Ok(())
    }
}

/// The number after the last `-`; 0 where there is none.
fn trailing_number(word: &str) -> u32 {
    word.rsplit_once('-').and_then(|(_, number)| number.parse().ok()).unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::wall::Wall;

    fn job_with(ids: &[&str]) -> Job {
        let walls = ids.iter().map(|id| Wall { id: Id::new(id), ..Wall::default() }).collect();
        Job { walls, ..Job::new() }
    }

    #[test]
    fn a_missing_id_is_given_above_all_numbers_in_use() {
        let mut job = job_with(&["", "wall-7", ""]);
        job.complete_ids().unwrap();
        let ids: Vec<_> = job.walls.iter().map(|wall| wall.id.to_string()).collect();
        assert_eq!(ids, ["wall-8", "wall-7", "wall-9"]);
        assert_eq!(job.last_id, 9);
        assert_eq!(job.give_id("hit").as_str(), "hit-10");
    }

    #[test]
    fn a_double_id_is_refused() {
        let double = job_with(&["a", "b", "a"]).complete_ids().unwrap_err();
        assert_eq!(double, DoubleId { id: Id::new("a"), first: "wall", second: "wall" });
    }
}
