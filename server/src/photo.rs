//! Photographs of the work: what is taken, and how it is written anew.
//!
//! Every picture is decoded within limits and encoded again, so that nothing is kept but what it shows: no place, no
//! camera, no name, no preview, and nothing hidden behind its end.

use std::io::Cursor;

use image::codecs::jpeg::JpegEncoder;
use image::imageops::FilterType;
use image::{DynamicImage, ImageDecoder, ImageFormat, ImageReader, Limits, RgbImage};

/// Largest picture, in dots: the largest of today's telephones have fifty million.
const MOST_DOTS: u64 = 60_000_000;
/// Longest side, in dots.
const LONGEST_SIDE: u32 = 16_384;
/// Most memory that decoding may take, bytes.
const MOST_MEMORY: u64 = 256 * 1024 * 1024;
/// Longest side that is kept, in dots: a wall of a pit in it still shows its stones.
const KEPT_SIDE: u32 = 2048;
/// Quality of what is kept, of 100.
const QUALITY: u8 = 82;

/// Why a picture is not taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq, thiserror::Error)]
pub enum PhotoFault {
    /// It is another kind of file.
    #[error("This file is no JPEG, PNG or WebP picture.")]
    NotAPicture,
    /// It would unfold to more than is decoded.
    #[error("This picture has more dots than are taken: sixty million, and 16 384 to a side.")]
    TooManyDots,
    /// It breaks off or contradicts itself.
    #[error("This picture is damaged and cannot be read. Send it again, or take it again.")]
    Damaged,
}

/// A picture written anew as a JPEG, upright, without anything but what it shows.
///
/// # Errors
/// What is no picture, is too large, or is damaged.
pub fn anew(bytes: &[u8]) -> Result<Vec<u8>, PhotoFault> {
    let upright = decoded(bytes)?;
    let (width, height) = (upright.width(), upright.height());
    let kept = if width.max(height) > KEPT_SIDE {
        upright.resize(KEPT_SIDE, KEPT_SIDE, FilterType::Triangle)
    } else {
        upright
    };
    let mut out = Vec::new();
    on_white(&kept)
        .write_with_encoder(JpegEncoder::new_with_quality(&mut out, QUALITY))
        .map_err(|_| PhotoFault::Damaged)?;
    Ok(out)
}

fn decoded(bytes: &[u8]) -> Result<DynamicImage, PhotoFault> {
    let mut reader = ImageReader::new(Cursor::new(bytes))
        .with_guessed_format()
        .map_err(|_| PhotoFault::NotAPicture)?;
    if !matches!(
        reader.format(),
        Some(ImageFormat::Jpeg | ImageFormat::Png | ImageFormat::WebP)
    ) {
        return Err(PhotoFault::NotAPicture);
    }
    let mut limits = Limits::default();
    (
        limits.max_image_width,
        limits.max_image_height,
        limits.max_alloc,
    ) = (Some(LONGEST_SIDE), Some(LONGEST_SIDE), Some(MOST_MEMORY));
    reader.limits(limits);
    let mut decoder = reader.into_decoder().map_err(|error| fault(&error))?;
    // The size stands in the picture's head: it is looked at before anything is unfolded.
    let (width, height) = decoder.dimensions();
    let too_many =
        u64::from(width) * u64::from(height) > MOST_DOTS || decoder.total_bytes() > MOST_MEMORY;
    if too_many || width == 0 || height == 0 || width.max(height) > LONGEST_SIDE {
        return Err(PhotoFault::TooManyDots);
    }
    let orientation = decoder.orientation().map_err(|error| fault(&error))?;
    let mut picture = DynamicImage::from_decoder(decoder).map_err(|error| fault(&error))?;
    picture.apply_orientation(orientation);
    Ok(picture)
}

fn fault(error: &image::ImageError) -> PhotoFault {
    if matches!(error, image::ImageError::Limits(_)) {
        PhotoFault::TooManyDots
    } else {
        PhotoFault::Damaged
    }
}

/// The picture without what shines through it.
fn on_white(picture: &DynamicImage) -> RgbImage {
    if !picture.color().has_alpha() {
        return picture.to_rgb8();
    }
    let dots = picture.to_rgba8();
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
mod tests {
    use super::*;

    fn encoded(width: u32, height: u32, format: ImageFormat) -> Vec<u8> {
        let picture = RgbImage::from_fn(width, height, |x, y| {
            image::Rgb([(x % 251) as u8, (y % 241) as u8, 90])
        });
        let mut out = Cursor::new(Vec::new());
        picture.write_to(&mut out, format).unwrap();
        out.into_inner()
    }

    /// A JPEG whose EXIF says that it lies on its side and was taken at 51° 30' north.
    fn with_place(jpeg: &[u8]) -> Vec<u8> {
        let mut tiff = b"II*\0\x08\0\0\0".to_vec();
        tiff.extend([2, 0]); // Two entries: orientation 6, pointer to the place.
        tiff.extend([0x12, 0x01, 3, 0, 1, 0, 0, 0, 6, 0, 0, 0]);
        tiff.extend([0x25, 0x88, 4, 0, 1, 0, 0, 0, 38, 0, 0, 0]);
        tiff.extend([0, 0, 0, 0]);
        tiff.extend([2, 0]); // North, then three fractions.
        tiff.extend([1, 0, 2, 0, 2, 0, 0, 0, b'N', 0, 0, 0]);
        tiff.extend([2, 0, 5, 0, 3, 0, 0, 0, 68, 0, 0, 0]);
        tiff.extend([0, 0, 0, 0]);
        for number in [51_u32, 1, 30, 1, 0, 1] {
            tiff.extend(number.to_le_bytes());
        }
        let mut segment = b"Exif\0\0".to_vec();
        segment.extend(tiff);
        let length = u16::try_from(segment.len() + 2).unwrap().to_be_bytes();
        [&jpeg[..2], &[0xff, 0xe1], &length, &segment, &jpeg[2..]].concat()
    }

    fn has(bytes: &[u8], word: &[u8]) -> bool {
        bytes.windows(word.len()).any(|window| window == word)
    }

    #[test]
    fn the_place_is_gone_and_the_picture_stands_upright() {
        let mut sent = with_place(&encoded(60, 40, ImageFormat::Jpeg));
        sent.extend(b"behind the end");
        assert!(has(&sent, b"Exif\0\0"));
        let kept = anew(&sent).unwrap();
        assert!(
            !has(&kept, b"Exif") && !has(&kept, b"behind the end") && !has(&kept, &[0xff, 0xe1])
        );
        let picture = image::load_from_memory(&kept).unwrap();
        assert_eq!((picture.width(), picture.height()), (40, 60));
    }

    #[test]
    fn png_and_webp_are_taken_and_large_ones_are_made_smaller() {
        for format in [ImageFormat::Png, ImageFormat::WebP] {
            assert_eq!(
                image::guess_format(&anew(&encoded(30, 20, format)).unwrap()).unwrap(),
                ImageFormat::Jpeg
            );
        }
        let picture =
            image::load_from_memory(&anew(&encoded(3000, 1000, ImageFormat::Jpeg)).unwrap())
                .unwrap();
        assert_eq!((picture.width(), picture.height()), (2048, 683));
    }

    #[test]
    fn what_is_no_picture_is_refused() {
        for bytes in [
            &b""[..],
            b"GIF89a\x01\0\x01\0",
            b"<svg xmlns='http://www.w3.org/2000/svg'/>",
            b"%PDF-1.7",
            b"PK\x03\x04",
            b"BM",
        ] {
            assert_eq!(anew(bytes), Err(PhotoFault::NotAPicture));
        }
        let mut torn = encoded(300, 200, ImageFormat::Png);
        torn.truncate(torn.len() / 3);
        assert_eq!(anew(&torn), Err(PhotoFault::Damaged));
        assert_eq!(
            anew(&[0xff, 0xd8, 0xff, 0xe0, 0, 4]),
            Err(PhotoFault::Damaged)
        );
    }

    #[test]
    fn a_small_file_that_unfolds_to_a_huge_picture_is_refused_by_its_head() {
        let mut bomb = encoded(1, 1, ImageFormat::Png);
        // Width and height stand at the sixteenth byte; a checksum over them follows.
        bomb[16..24].copy_from_slice(&[0, 0, 0x3f, 0xff, 0, 0, 0x3f, 0xff]);
        let sum = crc(&bomb[12..29]).to_be_bytes();
        bomb[29..33].copy_from_slice(&sum);
        assert_eq!(anew(&bomb), Err(PhotoFault::TooManyDots));
        bomb[16..24].copy_from_slice(&[0x7f, 0xff, 0xff, 0xff, 0, 0, 0, 1]);
        let sum = crc(&bomb[12..29]).to_be_bytes();
        bomb[29..33].copy_from_slice(&sum);
        assert_eq!(anew(&bomb), Err(PhotoFault::TooManyDots));
    }

    /// The checksum of PNG, ISO 3309.
    fn crc(bytes: &[u8]) -> u32 {
        let step = |sum: u32, byte: &u8| {
            (0..8).fold(sum ^ u32::from(*byte), |sum, _| {
                if sum & 1 == 1 {
                    0xedb8_8320 ^ (sum >> 1)
                } else {
                    sum >> 1
                }
            })
        };
        !bytes.iter().fold(u32::MAX, step)
    }
}
