//! Pictures taken on site, small: read and made small by a thread of their own, so that no frame waits for one.

use crate::files::pictures::{Small, small};
use egui::{ColorImage, Context, Image, Response, RichText, Sense, TextureHandle, TextureOptions, Ui, vec2};
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::{Arc, OnceLock};

/// Pixels to a side (chosen: sharp at twice the size at which they are shown).
const SIDE: u32 = 320;

/// The pictures that were asked for.
#[derive(Default)]
pub(crate) struct Thumbs {
    known: BTreeMap<PathBuf, Thumb>,
}

enum Thumb {
    Awaited(Arc<OnceLock<Option<Small>>>),
    Shown(TextureHandle),
    None,
}

impl egui::Plugin for Thumbs {
    fn debug_name(&self) -> &'static str {
        "pictures taken on site"
    }
}

impl Thumbs {
    fn texture(&mut self, context: &Context, path: &Path) -> &Thumb {
        let thumb = self.known.entry(path.to_owned()).or_insert_with(|| begin(context, path));
        if let Thumb::Awaited(awaited) = thumb
            && let Some(read) = awaited.get().cloned()
        {
            *thumb = read.map_or(Thumb::None, |small| {
                let image = ColorImage::from_rgba_unmultiplied(small.size, &small.rgba);
                let name = path.to_string_lossy();
                Thumb::Shown(context.load_texture(name, image, TextureOptions::LINEAR))
            });
        }
        thumb
    }
}

/// Begins to read a picture.
fn begin(context: &Context, path: &Path) -> Thumb {
    let awaited = Arc::new(OnceLock::new());
    let (context, path, read) = (context.clone(), path.to_owned(), Arc::clone(&awaited));
    std::thread::spawn(move || {
        read.get_or_init(|| small(&path, SIDE).ok());
        context.request_repaint();
    });
    Thumb::Awaited(awaited)
}

/// Shows a picture no higher than so many points, or in words that it is not there.
pub(crate) fn thumb(ui: &mut Ui, path: &Path, name: &str, height: f32) -> Response {
    let plugin = ui.ctx().plugin_or_default::<Thumbs>();
    let mut thumbs = plugin.lock();
    let context = ui.ctx().clone();
    let texture = match thumbs.texture(&context, path) {
        Thumb::Shown(texture) => Some(Ok(texture.clone())),
        Thumb::None => Some(Err(())),
        Thumb::Awaited(_) => None,
    };
    drop(thumbs);
    match texture {
        Some(Ok(texture)) => {
            let image = Image::new(&texture).max_height(height).sense(Sense::click()).alt_text(name);
            ui.add(image)
        }
        Some(Err(())) => ui.label(RichText::new(format!("The picture is not there: {name}")).size(19.0)),
        None => ui.allocate_response(vec2(height, height), Sense::hover()),
    }
}
