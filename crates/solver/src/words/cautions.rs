//! What is said with every plan: what it is not, what it defers to, and what is not checked.

/// The standing cautions, in the order they are told.
#[must_use]
pub fn cautions() -> &'static [&'static str] {
    &[
        "This is a plan, not a certificate: it does not say that anything will hold.",
        "Whether the fasteners hold is not checked.",
        "Not checked either: the studs, wall and partition themselves; the plate's and arm's own strength and \
         prying; the display's threads; crushing of board under the plate; friction; vibration and quakes; \
         corrosion; damp.",
        "Follow the mount maker's instructions; where they differ from this plan, they hold.",
        "Local codes govern. Leave mains wiring, gas, flues and any doubt about the structure to licensed trades.",
        "Before drilling or cutting an old wall have its paint tested for lead, its board and plaster for asbestos.",
        "Circuit off or tester passed before anything goes into the wall.",
        "Probe each stud before a fastener is trusted to it.",
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
            ["maker's instructions", "Local codes", "licensed trades", "lead", "asbestos", "not checked"]
        {
            assert!(all.contains(word), "{word}");
        }
    }
}
