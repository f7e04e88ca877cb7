//! Which option of each wall was asked for.

use strikeline_solver::job::Job;
use strikeline_solver::subject::Id;

/// Each wall with the option named for it; `None` leaves the choice to the solver.
pub(super) fn chosen_options<'a>(
    job: &'a Job,
    named: &[String],
) -> Result<Vec<(&'a Id, Option<&'a Id>)>, String> {
    let mut chosen: Vec<(&Id, Option<&Id>)> = job.walls.iter().map(|wall| (&wall.id, None)).collect();
    for name in named {
        let found = job.walls.iter().zip(&mut chosen).find_map(|(wall, slot)| {
            wall.options.iter().find(|option| option.id.as_str() == name).map(|option| (slot, &option.id))
        });
        let Some((slot, id)) = found else {
            return Err(format!("there is no option \"{name}\"; the job has {}", there(job)));
        };
        if slot.1.is_some() {
            return Err(format!("a second option, \"{name}\", for wall {}; give one a wall", slot.0));
        }
        slot.1 = Some(id);
    }
    Ok(chosen)
}

/// The options there are, to choose one of them.
fn there(job: &Job) -> String {
    let there: Vec<&str> =
        job.walls.iter().flat_map(|wall| &wall.options).map(|option| option.id.as_str()).collect();
    if there.is_empty() { "none: leave --option out".to_owned() } else { there.join(", ") }
}
