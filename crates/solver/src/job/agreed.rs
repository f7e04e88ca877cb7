//! What the customer agreed to of an option: in words, and where things hung on the drawing that they saw.

use super::fact::Spot;
use crate::subject::Id;
use serde::{Deserialize, Serialize};

/// What the customer agreed to.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Agreed {
    /// The words that they agreed to.
    pub words: String,
    /// Where the pieces hung then.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub places: Vec<AgreedPlace>,
}

/// Where a piece hung when it was agreed to.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct AgreedPlace {
    /// The piece.
    pub piece: Id,
    /// Its middle, in the wall's numbers of that moment.
    pub middle: Spot,
}
