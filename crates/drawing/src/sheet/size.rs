//! The sizes of paper that sheets are drawn for.

use strikeline_solver::job::Units;

/// Free at the edge of every page (chosen: office printers need about 5).
pub const BORDER_MM: f64 = 10.0;

/// A size of paper.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum PaperSize {
    /// 8 1/2 x 11 in.
    Letter,
    /// 11 x 17 in.
    Tabloid,
    /// 17 x 22 in.
    AnsiC,
    /// 22 x 34 in.
    AnsiD,
    /// 210 x 297 mm.
    A4,
    /// 297 x 420 mm.
    A3,
    /// 420 x 594 mm.
    A2,
    /// 594 x 841 mm.
    A1,
}

impl PaperSize {
    /// Every size, each series from small to large.
    pub const ALL: [Self; 8] =
        [Self::Letter, Self::Tabloid, Self::AnsiC, Self::AnsiD, Self::A4, Self::A3, Self::A2, Self::A1];

    /// The usual size of a job in these units.
    #[must_use]
    pub fn usual(units: Units) -> Self {
        match units {
            Units::Inches => Self::Letter,
            Units::Millimetres => Self::A4,
        }
    }

    /// What it is called.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Letter => "Letter",
            Self::Tabloid => "Tabloid",
            Self::AnsiC => "ANSI C",
            Self::AnsiD => "ANSI D",
            Self::A4 => "A4",
            Self::A3 => "A3",
            Self::A2 => "A2",
            Self::A1 => "A1",
        }
    }

    /// Its shorter and its longer edge, in millimetres: the inch sizes are those of ANSI/ASME Y14.1 (from memory),
    /// the others those of ISO 216.
    #[must_use]
    pub fn edges_mm(self) -> (f64, f64) {
        const IN: f64 = 25.4;
        match self {
            Self::Letter => (8.5 * IN, 11.0 * IN),
            Self::Tabloid => (11.0 * IN, 17.0 * IN),
            Self::AnsiC => (17.0 * IN, 22.0 * IN),
            Self::AnsiD => (22.0 * IN, 34.0 * IN),
            Self::A4 => (210.0, 297.0),
            Self::A3 => (297.0, 420.0),
            Self::A2 => (420.0, 594.0),
            Self::A1 => (594.0, 841.0),
        }
    }

    /// Width and height, lying on its longer edge or standing on its shorter one.
    #[must_use]
    pub fn page_mm(self, lying: bool) -> (f64, f64) {
        let (short, long) = self.edges_mm();
        if lying { (long, short) } else { (short, long) }
    }
}
