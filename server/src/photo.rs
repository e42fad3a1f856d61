//! Photographs of the work: what is taken, and how it is written anew.
//!
//! Every picture is decoded within limits and encoded again, so that nothing is kept but what it shows: no place, no
//! camera, no name, no preview, and nothing hidden behind its end.

mod decoded;

use image::codecs::jpeg::JpegEncoder;
use image::{DynamicImage, RgbImage, imageops};

use decoded::decoded;

/// Longest side that is kept, in dots: a wall of a pit in it still shows its stones.
const KEPT_SIDE: u32 = 2048;
/// Qualities of what is kept, of 100: the first that is no larger than what was sent.
const QUALITIES: [u8; 4] = [82, 70, 55, 40];
/// A picture that takes no more than this is small, whatever was sent.
const SMALL: usize = 32 * 1024;

/// Why a picture is not taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum PhotoFault {
    /// It is another kind of file.
    #[error("This file is no JPEG, PNG or WebP picture.")]
    NotAPicture,
    /// It would unfold to more than is decoded.
    #[error("This picture has more dots than are taken: fifty million, and 16 384 to a side.")]
    TooManyDots,
    /// It is of a kind that cannot be read piece by piece.
    #[error(
        "This picture has more dots than are taken of its kind: twelve million for WebP, progressive JPEG, JPEG for print, and \
         interlaced PNG. Save it as a plain JPEG, or make it smaller."
    )]
    TooManyAtOnce,
    /// It breaks off or contradicts itself.
    #[error("This picture is damaged and cannot be read. Send it again, or take it again.")]
    Damaged,
}

/// A picture written anew as a JPEG, upright, without anything but what it shows.
///
/// # Errors
/// What is no picture, is too large, or is damaged.
pub fn anew(bytes: &[u8]) -> Result<Vec<u8>, PhotoFault> {
    let (mut picture, orientation) = decoded(bytes)?;
    if picture.width().max(picture.height()) > KEPT_SIDE {
        // Each dot is the mean of those that it stands for; nothing of the large picture is copied.
        picture = picture.thumbnail(KEPT_SIDE, KEPT_SIDE);
    }
    picture.apply_orientation(orientation);
    no_larger(on_white(picture), bytes.len().max(SMALL))
}

/// Writes a picture so that it takes no more than so many bytes: with less quality, and then smaller. What somebody sends
/// never grows when it is kept.
fn no_larger(mut picture: RgbImage, most: usize) -> Result<Vec<u8>, PhotoFault> {
    loop {
        for quality in QUALITIES {
            let mut out = Vec::new();
            picture
                .write_with_encoder(JpegEncoder::new_with_quality(&mut out, quality))
                .map_err(|_| PhotoFault::Damaged)?;
            if out.len() <= most {
                return Ok(out);
            }
        }
        let half = |side: u32| (side / 2).max(1);
        picture = imageops::thumbnail(&picture, half(picture.width()), half(picture.height()));
    }
}

/// The picture without what shines through it.
fn on_white(picture: DynamicImage) -> RgbImage {
    if !picture.color().has_alpha() {
        return picture.into_rgb8();
    }
    let dots = picture.into_rgba8();
    let mix = |value: u8, alpha: u8| {
        let (value, alpha) = (u32::from(value), u32::from(alpha));
        u8::try_from((value * alpha + 255 * (255 - alpha)) / 255).unwrap_or(u8::MAX)
    };
    RgbImage::from_fn(dots.width(), dots.height(), |x, y| {
        let image::Rgba([red, green, blue, alpha]) = *dots.get_pixel(x, y);
        image::Rgb([mix(red, alpha), mix(green, alpha), mix(blue, alpha)])
    })
}

#[cfg(test)]
mod tests;
