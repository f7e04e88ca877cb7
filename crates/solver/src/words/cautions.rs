//! What is said with every plan: what it is not, what it defers to, and what is not checked.

/// The standing cautions, in the order they are told.
#[must_use]
pub fn cautions() -> &'static [&'static str] {
    &[
        "This is a plan, not a certificate: a verdict says what published values give for what was measured, no more.",
        "Not checked: the studs, wall and partition themselves; the plate's and arm's own strength and \
         prying; the display's threads; crushing of board under the plate; friction; vibration and quakes; \
         corrosion; damp.",
        "Follow the mount maker's instructions; where they differ from this plan, they hold.",
        "Local codes govern. Leave mains wiring, gas, flues and any doubt about the structure to licensed trades.",
        "Before drilling or cutting an old wall have its paint tested for lead, its board and plaster for asbestos.",
        "Circuit off or tester passed before anything goes into the wall.",
        "Probe each stud before a fastener is trusted to it.",
        "Fasteners are turned in snug by hand at the end, never hammered; one that spins holds nothing.",
        "Anchors in board count for nothing; drywall screws are brittle and hold no plate.",
    ]
}

#[cfg(test)]
mod tests {
    use super::super::sample::well_told;
    use super::*;

    #[test]
    fn every_caution_is_well_told() {
        for caution in cautions() {
            well_told(caution);
        }
    }

    #[test]
    fn what_the_plan_defers_to_is_named() {
        let all = cautions().join(" ");
        for word in
            ["maker's instructions", "Local codes", "licensed trades", "lead", "asbestos", "Not checked"]
        {
            assert!(all.contains(word), "{word}");
        }
    }
}
