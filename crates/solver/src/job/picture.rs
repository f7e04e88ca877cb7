//! A picture taken on site: a file beside the job, and what it shows. Nothing is read from it.

use crate::subject::{Id, Subject};
use serde::{Deserialize, Deserializer, Serialize};

/// A picture taken on site.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SitePicture {
    /// Its id.
    #[serde(default, skip_serializing_if = "Id::is_empty")]
    pub id: Id,
    /// Its file, from the job's own folder, with `/` between folders.
    #[serde(deserialize_with = "beside_the_job")]
    pub file: String,
    /// The mark, hidden thing or fact that it shows; none where it is of the job as a whole.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub of: Option<Subject>,
}

/// A path that stays within the job's own folder: a job that comes from elsewhere names no other file of this machine.
fn beside_the_job<'de, D: Deserializer<'de>>(deserializer: D) -> Result<String, D::Error> {
    let file = String::deserialize(deserializer)?;
    let is_name = |part: &str| !part.is_empty() && part != "." && part != ".." && !part.contains(['\\', ':']);
    if file.split('/').all(is_name) {
        Ok(file)
    } else {
        let file: String = file.chars().take(80).collect();
        Err(serde::de::Error::custom(format!(
            "\"{file}\" is no file beside the job: write it as in \"job-pictures/bay.jpg\""
        )))
    }
}
