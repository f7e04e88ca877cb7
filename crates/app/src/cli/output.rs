//! The one place of the command line that writes to its outputs.

use std::io::{ErrorKind, Write};

/// Writes all of a text.
///
/// A reader that went away, such as a pager that was left, has read what it wanted. Any other failure is told,
/// so that nobody takes a cut plan for a whole one.
pub(super) fn write(out: &mut dyn Write, text: &str) -> Result<(), String> {
    match out.write_all(text.as_bytes()).and_then(|()| out.flush()) {
        Ok(()) => Ok(()),
        Err(why) if why.kind() == ErrorKind::BrokenPipe => Ok(()),
        Err(why) => Err(format!("cannot write the output ({why}); send it to another place")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// An output that always fails in one way.
    struct Failing(ErrorKind);

    impl Write for Failing {
        fn write(&mut self, _: &[u8]) -> std::io::Result<usize> {
            Err(self.0.into())
        }

        fn flush(&mut self) -> std::io::Result<()> {
            Ok(())
        }
    }

    #[test]
    fn only_a_reader_that_went_away_is_no_failure() {
        assert_eq!(write(&mut Failing(ErrorKind::BrokenPipe), "plan"), Ok(()));
        assert!(write(&mut Failing(ErrorKind::StorageFull), "plan").is_err());
        let mut out = Vec::new();
        assert_eq!(write(&mut out, "plan"), Ok(()));
        assert_eq!(out, b"plan");
    }
}
