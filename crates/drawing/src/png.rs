//! A scene as a PNG picture at a set resolution, which the file states, so that it is printed at its true size.

use crate::scene::Scene;
use crate::svg::svg;
use resvg::tiny_skia::{Color, Pixmap, Transform};
use resvg::usvg::{Options, Tree};

/// Pixels to the inch (chosen: the smallest letters are 13 pixels high, and a page stays below a megabyte).
pub const PIXELS_PER_INCH: f64 = 150.0;

/// The bytes of a PNG file.
///
/// # Errors
/// What could not be done: not for any scene that this crate draws, but for one too large for memory.
pub fn png(scene: &Scene) -> Result<Vec<u8>, String> {
    let per_mm = PIXELS_PER_INCH / 25.4;
    let tree = Tree::from_str(&svg(scene), &Options::default()).map_err(|why| why.to_string())?;
    let [width, height] = [scene.width_mm, scene.height_mm].map(|mm| (mm * per_mm).round() as u32);
    let mut pixels = Pixmap::new(width, height).ok_or("the picture would be too large")?;
    // Opaque to the last row of pixels, which the paper fills in part.
    pixels.fill(Color::WHITE);
    let scale = per_mm as f32 * scene.width_mm as f32 / tree.size().width();
    resvg::render(&tree, Transform::from_scale(scale, scale), &mut pixels.as_mut());

    let mut bytes = Vec::new();
    let mut encoder = ::png::Encoder::new(&mut bytes, width, height);
    encoder.set_color(::png::ColorType::Rgb);
    encoder.set_compression(::png::Compression::Balanced);
    // The file counts in pixels to the metre.
    let per_metre = (per_mm * 1000.0).round() as u32;
    let unit = ::png::Unit::Meter;
    encoder.set_pixel_dims(Some(::png::PixelDimensions { xppu: per_metre, yppu: per_metre, unit }));
    let mut writer = encoder.write_header().map_err(|why| why.to_string())?;
    // All is opaque: the alpha is left out.
    let rgb: Vec<u8> =
        pixels.data().iter().enumerate().filter(|(index, _)| index % 4 != 3).map(|(_, byte)| *byte).collect();
    writer.write_image_data(&rgb).map_err(|why| why.to_string())?;
    writer.finish().map_err(|why| why.to_string())?;
    Ok(bytes)
}
