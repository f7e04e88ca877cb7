//! Pictures taken on site: copied into a folder beside the job, and made small for the screen.

use image::{ImageFormat, ImageReader, Limits};
use std::fs::{self, File};
use std::io::{self, BufReader, Read as _};
use std::path::{Path, PathBuf};

/// The largest file taken, in bytes (chosen: any camera's picture is smaller).
const LARGEST: u64 = 64 * 1024 * 1024;
/// No picture has more pixels to a side (chosen: more than any camera's).
const MOST_PIXELS: u32 = 20_000;
/// The longest name kept, in characters (chosen: any file system takes it with an ending).
const LONGEST_NAME: usize = 60;
/// More files of one name than anybody adds (chosen).
const MOST_ALIKE: u32 = 999;

/// What can go wrong with a picture.
#[derive(Debug, thiserror::Error)]
pub enum PictureError {
    /// The job has no file yet.
    #[error("save the job first: its pictures are kept in a folder beside it")]
    NotSaved,
    /// It is no picture of a kind that is known, or damaged.
    #[error("this is no picture that can be shown; choose a JPEG or PNG file: {}", path.display())]
    NotAPicture {
        /// The file.
        path: PathBuf,
    },
    /// It is too large.
    #[error("this picture is over {limit_mb} MB; choose a smaller one: {}", path.display())]
    TooLarge {
        /// The largest taken, in MB.
        limit_mb: u64,
        /// The file.
        path: PathBuf,
    },
    /// It cannot be read or written.
    #[error("the picture cannot be copied ({why}); check that the job's folder may be written: {}", path.display())]
    Io {
        /// The system's word.
        why: String,
        /// The file.
        path: PathBuf,
    },
}

/// Copies a picture into the folder of a job's pictures, and gives its path from the job's own folder, as the job keeps
/// it. What is there already stays; the same picture twice is kept once.
///
/// # Errors
/// Where the job has no file, the picture is none, is too large, or cannot be copied. The job's folder is then as it
/// was.
pub fn copy_in(job: Option<&Path>, picture: &Path) -> Result<String, PictureError> {
    let job = job.ok_or(PictureError::NotSaved)?;
    let io = |why: io::Error| PictureError::Io { why: why.to_string(), path: picture.to_owned() };
    let about = fs::metadata(picture).map_err(io)?;
    if !about.is_file() {
        return Err(PictureError::NotAPicture { path: picture.to_owned() });
    }
    if about.len() > LARGEST {
        return Err(PictureError::TooLarge { limit_mb: LARGEST / 1024 / 1024, path: picture.to_owned() });
    }
    let mut bytes = Vec::new();
    File::open(picture).and_then(|file| file.take(LARGEST).read_to_end(&mut bytes)).map_err(io)?;
    let ending = match image::guess_format(&bytes) {
        Ok(ImageFormat::Jpeg) => "jpg",
        Ok(ImageFormat::Png) => "png",
        _ => return Err(PictureError::NotAPicture { path: picture.to_owned() }),
    };
    let stem = job.file_stem().map(|stem| plain(&stem.to_string_lossy())).unwrap_or_default();
    let folder = format!("{stem}-pictures");
    let beside = job.parent().unwrap_or(Path::new("")).join(&folder);
    fs::create_dir_all(&beside).map_err(io)?;
    let name = picture.file_stem().map(|name| plain(&name.to_string_lossy())).unwrap_or_default();
    for number in 1..=MOST_ALIKE {
        let file = if number == 1 { format!("{name}.{ending}") } else { format!("{name}-{number}.{ending}") };
        let to = beside.join(&file);
        match File::create_new(&to) {
            Ok(mut made) => {
                if let Err(why) = io::Write::write_all(&mut made, &bytes) {
                    // Half a picture is none.
                    let _ = fs::remove_file(&to);
                    return Err(io(why));
                }
                return Ok(format!("{folder}/{file}"));
            }
            Err(_) if fs::read(&to).is_ok_and(|known| known == bytes) => {
                return Ok(format!("{folder}/{file}"));
            }
            Err(why) if why.kind() == io::ErrorKind::AlreadyExists => {}
            Err(why) => return Err(io(why)),
        }
    }
    Err(io(io::Error::other("too many pictures of one name")))
}

/// A name of letters, figures and hyphens, which any system takes.
fn plain(name: &str) -> String {
    let letters = name.chars().map(|c| if c.is_ascii_alphanumeric() { c.to_ascii_lowercase() } else { '-' });
    let plain: String = letters.take(LONGEST_NAME).collect();
    let plain = plain.trim_matches('-');
    if plain.is_empty() { "picture".to_owned() } else { plain.to_owned() }
}

/// A picture made small: its width and height in pixels, and four bytes a pixel.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Small {
    /// Pixels from left to right, and from top to bottom.
    pub size: [usize; 2],
    /// Red, green, blue and how far it covers, row by row from the top.
    pub rgba: Vec<u8>,
}

/// A picture, no more than so many pixels to a side.
///
/// # Errors
/// Where there is no picture, or none that can be shown.
pub fn small(path: &Path, side: u32) -> Result<Small, PictureError> {
    let none = || PictureError::NotAPicture { path: path.to_owned() };
    let about = fs::metadata(path).map_err(|_| none())?;
    if !about.is_file() || about.len() > LARGEST {
        return Err(none());
    }
    let file = BufReader::new(File::open(path).map_err(|_| none())?);
    let mut reader = ImageReader::new(file).with_guessed_format().map_err(|_| none())?;
    let mut limits = Limits::default();
    limits.max_image_width = Some(MOST_PIXELS);
    limits.max_image_height = Some(MOST_PIXELS);
    reader.limits(limits);
    let picture = reader.decode().map_err(|_| none())?;
    let small = picture.thumbnail(side.max(1), side.max(1)).into_rgba8();
    let size = [small.width(), small.height()].map(|pixels| usize::try_from(pixels).unwrap_or_default());
    Ok(Small { size, rgba: small.into_raw() })
}

#[cfg(test)]
mod tests {
    use super::*;

    fn picture(path: &Path, shade: u8) {
        image::RgbImage::from_pixel(60, 30, image::Rgb([shade, 0, 0])).save(path).unwrap();
    }

    #[test]
    fn a_picture_is_copied_in_once_and_never_over_another() {
        let folder = tempfile::tempdir().unwrap();
        let job = folder.path().join("Tall parlour.ron");
        let taken = folder.path().join("camera");
        std::fs::create_dir(&taken).unwrap();
        let one = taken.join("Bay 3 (left).PNG");
        picture(&one, 10);
        let kept = copy_in(Some(&job), &one).unwrap();
        assert_eq!(kept, "tall-parlour-pictures/bay-3--left.png");
        assert_eq!(copy_in(Some(&job), &one).unwrap(), kept, "the same is kept once");
        picture(&one, 200);
        let other = copy_in(Some(&job), &one).unwrap();
        assert_eq!(other, "tall-parlour-pictures/bay-3--left-2.png");
        let small = small(&folder.path().join(&other), 20).unwrap();
        assert_eq!((small.size, small.rgba.len()), ([20, 10], 800));
        assert!(small.rgba[0] > 150, "it is the other");
    }

    #[test]
    fn what_is_no_picture_is_told_and_leaves_nothing() {
        let folder = tempfile::tempdir().unwrap();
        let job = folder.path().join("room.ron");
        let text = folder.path().join("a.jpg");
        std::fs::write(&text, "no picture").unwrap();
        let why = copy_in(Some(&job), &text).unwrap_err();
        assert!(matches!(why, PictureError::NotAPicture { .. }), "{why}");
        assert!(matches!(copy_in(None, &text), Err(PictureError::NotSaved)));
        assert!(copy_in(Some(&job), folder.path()).is_err());
        assert!(copy_in(Some(&job), &folder.path().join("gone.png")).is_err());
        assert!(small(&text, 20).is_err() && small(&folder.path().join("gone.png"), 20).is_err());
        assert!(!folder.path().join("room-pictures").exists());
    }
}
