//! Where the points of what hangs are, written down as they are worked out by hand. All places are in millimetres right
//! of the plate's middle, above its top and in front of the wall.

use super::case::{Posture, PullAt};
use super::hanging::{Hanging, Manner};
use super::out_of_plane::Out;
use crate::ledger::{Amount, Label, Ledger, Put, Shown, Step};

const SOURCE: &str = "geometry: right of the plate's middle, above its top, in front of the wall";

impl Hanging {
    /// Writes down how far out an arm is counted to reach, where that is more than it was measured to.
    pub(super) fn write_reach<L: Ledger>(&self, ledger: &mut L) {
        let Manner::Arm { reach_mm, tilt_deg, to_edge_mm, .. } = self.manner else { return };
        if tilt_deg <= 0.0 {
            return;
        }
        ledger.write(|| Step {
            name: "how far the arm is counted to reach, its head tilted",
            formula: "reach = l + h sin(t)",
            put: vec![
                self.mm("l", reach_mm).because("from the wall to the back of what hangs, straight out"),
                self.mm("h", to_edge_mm)
                    .because("from the line that it tilts about to the farther of its edges"),
                Put::new("t", Amount::new(tilt_deg, Shown::Degree), self.label)
                    .because("how far the head tilts"),
            ],
            result: Amount::new(self.counted_reach_mm(), Shown::Millimetre),
            source: "chosen on the safe side: all of it comes as much farther out as that edge does",
            label: Label::Chosen.weaker(self.label),
        });
    }

    /// The reach of an arm as it is counted.
    fn reach(&self) -> Put {
        let reach = Amount::new(self.counted_reach_mm(), Shown::Millimetre);
        match self.manner {
            Manner::Arm { tilt_deg, .. } if tilt_deg > 0.0 => {
                Put::result("reach", reach, Label::Chosen.weaker(self.label))
            }
            _ => Put::new("reach", reach, self.label)
                .because("from the wall to the back of what hangs, straight out"),
        }
    }

    /// Writes down how far right and how far in front of the wall a point is that hangs right of the middle, so high,
    /// and in front of the back by `own`.
    pub(super) fn write_spot<L: Ledger>(
        &self,
        ledger: &mut L,
        posture: Posture,
        own: (f64, f64, f64),
        (x_mm, z_mm): (f64, f64),
        label: Label,
    ) {
        ledger.write(|| self.step("how far right it acts", self.right(posture, own), x_mm, label));
        ledger.write(|| {
            self.step("how far in front of the wall it acts", self.front(posture, own), z_mm, label)
        });
    }

    /// Writes down where a pull straight out acts.
    pub(super) fn write_out<L: Ledger>(
        &self,
        ledger: &mut L,
        posture: Posture,
        (right, y, at): (f64, f64, PullAt),
        (back, front): (f64, f64),
        out: &Out,
    ) {
        let at_hinge = matches!(at, PullAt::OutLeft | PullAt::OutRight | PullAt::OutHinge);
        ledger.write(|| {
            let told = match (posture, self.manner) {
                (Posture::Swung { arm_deg, .. }, Manner::Arm { hinge_x_mm, .. }) if at_hinge => (
                    "x = x_h + reach sin(a)",
                    vec![
                        self.mm("x_h", hinge_x_mm).because("where the arm's hinge at the wall is"),
                        self.reach(),
                        deg("a", arm_deg),
                    ],
                ),
                _ => self.right(posture, (right, y, self.centre_from_back_mm())),
            };
            self.step("how far right it acts", told, out.x_mm, self.label)
        });
        for (name, from_back, y_mm) in [
            ("how high it acts, by its back", 0.0, back),
            ("how high it acts, by its front", self.depth_mm, front),
        ] {
            ledger.write(|| self.step(name, self.height(posture, y, from_back), y_mm, self.label));
        }
    }

    fn step(
        &self,
        name: &'static str,
        (formula, put): (&'static str, Vec<Put>),
        result_mm: f64,
        label: Label,
    ) -> Step {
        let result = Amount::new(result_mm, Shown::Millimetre);
        let label = put.iter().map(|put| put.label).fold(label.worked_out(), Label::weaker);
        Step { name, formula, put, result, source: SOURCE, label }
    }

    fn mm(&self, symbol: &'static str, value: f64) -> Put {
        Put::new(symbol, Amount::new(value, Shown::Millimetre), self.label)
    }

    fn right(&self, posture: Posture, (right, _, from_back): (f64, f64, f64)) -> (&'static str, Vec<Put>) {
        match (posture, self.manner) {
            (Posture::Swung { arm_deg, face_deg }, Manner::Arm { hinge_x_mm, .. }) => {
                let mut put = vec![
                    self.mm("x_h", hinge_x_mm).because("where the arm's hinge at the wall is"),
                    self.mm("r", right).because("right of the middle of what hangs"),
                ];
                put.extend(self.swung(arm_deg, face_deg, from_back));
                ("x = x_h + R sin(a) + r cos(f) + c sin(f); R = reach + b_0; c = b - b_0", put)
            }
            _ => {
                let middle = (self.left_mm + self.right_mm) / 2.0;
                (
                    "x = x_m + r",
                    vec![
                        self.mm("x_m", middle).because("the middle of what hangs, right of the plate's"),
                        self.mm("r", right).because("right of the middle of what hangs"),
                    ],
                )
            }
        }
    }

    fn front(&self, posture: Posture, (right, y, from_back): (f64, f64, f64)) -> (&'static str, Vec<Put>) {
        match (posture, self.manner) {
            (Posture::Swung { arm_deg, face_deg }, Manner::Arm { .. }) => {
                let mut put = vec![self.mm("r", right).because("right of the middle of what hangs")];
                put.extend(self.swung(arm_deg, face_deg, from_back));
                ("z = max(R cos(a) - r sin(f) + c cos(f), 0); R = reach + b_0; c = b - b_0", put)
            }
            (_, Manner::Tilting { pivot_y_mm, .. }) => {
                let put = vec![
                    self.mm("e", self.stand_off_mm).because("from the wall to the back of what hangs"),
                    self.mm("b", from_back).because("in front of the back of what hangs"),
                    self.mm("h", y - pivot_y_mm),
                    deg("a", self.forward_deg(posture)),
                    self.mm("y", y).because("how high it is as it hangs"),
                    self.mm("y_t", pivot_y_mm).because("how high the line is that it tilts about"),
                ];
                ("z = max(e + b cos(a) + h sin(a), 0); h = y - y_t", put)
            }
            _ => (
                "z = max(e + b, 0)",
                vec![
                    self.mm("e", self.stand_off_mm).because("from the wall to the back of what hangs"),
                    self.mm("b", from_back).because("in front of the back of what hangs"),
                ],
            ),
        }
    }

    fn height(&self, posture: Posture, y: f64, from_back: f64) -> (&'static str, Vec<Put>) {
        match self.manner {
            Manner::Tilting { pivot_y_mm, .. } => {
                let put = vec![
                    self.mm("y_t", pivot_y_mm).because("how high the line is that it tilts about"),
                    self.mm("h", y - pivot_y_mm),
                    deg("a", self.forward_deg(posture)),
                    self.mm("b", from_back).because("in front of the back of what hangs"),
                    self.mm("y_e", y).because("how high it is as it hangs"),
                ];
                ("y = y_t + h cos(a) - b sin(a); h = y_e - y_t", put)
            }
            Manner::Arm { lowers_mm, .. } if lowers_mm > 0.0 && y < self.bottom_mm => {
                let put = vec![
                    self.mm("y_e", y + lowers_mm).because("how high it is as it hangs"),
                    self.mm("l", lowers_mm).because("how far it comes down"),
                ];
                ("y = y_e - l", put)
            }
            Manner::Fixed | Manner::Arm { .. } => {
                ("y = y_e", vec![self.mm("y_e", y).because("how high it is as it hangs")])
            }
        }
    }

    /// What an arm's equations take: all that is not said by the place itself.
    fn swung(&self, arm_deg: f64, face_deg: f64, from_back: f64) -> Vec<Put> {
        let centre = self.centre_from_back_mm();
        vec![
            self.mm("R", self.counted_reach_mm() + centre),
            deg("a", arm_deg),
            deg("f", face_deg),
            self.mm("c", from_back - centre),
            self.reach(),
            self.mm("b", from_back).because("in front of the back of what hangs"),
            self.mm("b_0", centre).because("in front of its back, the piece's own centre of mass"),
        ]
    }
}

/// An angle of a case.
fn deg(symbol: &'static str, value: f64) -> Put {
    Put::new(symbol, Amount::new(value, Shown::Degree), Label::Chosen)
        .because("the worst of those that are tried")
}
