//! Pictures decoded at about the size that is kept: a JPEG by its own eighths, a PNG row by row. What can only be decoded
//! whole may have fewer dots.

use std::io::Cursor;

use image::metadata::Orientation;
use image::{DynamicImage, ImageDecoder, ImageFormat, ImageReader, Limits, RgbaImage};
use jpeg_decoder::{CodingProcess, Decoder, PixelFormat};
use png::{BitDepth, ColorType, Transformations};

use super::{KEPT_SIDE, PhotoFault};

/// Largest picture, in dots: the largest of today's telephones have fifty million.
const MOST_DOTS: u64 = 50_000_000;
/// Largest picture of a kind that is decoded whole, in dots.
const MOST_AT_ONCE: u64 = 12_000_000;
/// Longest side, in dots.
const LONGEST_SIDE: u32 = 16_384;
/// Most memory that a decoder may take, bytes.
const MOST_MEMORY: usize = 128 * 1024 * 1024;
/// Most scans of a JPEG: programs write up to about a dozen, and each is as much work as the whole picture.
const MOST_SCANS: usize = 20;

type Found = Result<(DynamicImage, Orientation), PhotoFault>;

/// A picture, at about the size that is kept or up to half as much again, and which way up it is.
pub(super) fn decoded(bytes: &[u8]) -> Found {
    match image::guess_format(bytes) {
        Ok(ImageFormat::Jpeg) => jpeg(bytes),
        Ok(ImageFormat::Png) => png(bytes),
        Ok(ImageFormat::WebP) => whole(bytes),
        _ => Err(PhotoFault::NotAPicture),
    }
}

fn bounded(width: u32, height: u32, most: u64, otherwise: PhotoFault) -> Result<(), PhotoFault> {
    let dots = u64::from(width) * u64::from(height);
    if dots > MOST_DOTS || width.max(height) > LONGEST_SIDE {
        Err(PhotoFault::TooManyDots)
    } else if dots == 0 {
        Err(PhotoFault::Damaged)
    } else if dots > most {
        Err(otherwise)
    } else {
        Ok(())
    }
}

fn jpeg(bytes: &[u8]) -> Found {
    let damaged = |_| PhotoFault::Damaged;
    // Within a scan no such marker stands: there, 0xff is followed by nought or by a mark to begin anew.
    let scans = bytes.windows(2).filter(|two| *two == [0xff, 0xda]).count();
    let mut decoder = Decoder::new(bytes);
    decoder.set_max_decoding_buffer_size(MOST_MEMORY);
    decoder.read_info().map_err(damaged)?;
    let info = decoder.info().ok_or(PhotoFault::Damaged)?;
    let most = match info.coding_process {
        CodingProcess::DctSequential if info.pixel_format != PixelFormat::CMYK32 => MOST_DOTS,
        _ => MOST_AT_ONCE,
    };
    bounded(
        info.width.into(),
        info.height.into(),
        most,
        PhotoFault::TooManyAtOnce,
    )?;
    if scans > MOST_SCANS {
        return Err(PhotoFault::Damaged);
    }
    if matches!(info.pixel_format, PixelFormat::CMYK32 | PixelFormat::L16) {
        return whole(bytes);
    }
    let side = least_side(info.width.max(info.height));
    let (width, height) = decoder.scale(side, side).map_err(damaged)?;
    let dots = decoder.decode().map_err(damaged)?;
    // What a camera writes about a picture is read once its head was passed.
    let orientation = decoder
        .exif_data()
        .and_then(Orientation::from_exif_chunk)
        .unwrap_or(Orientation::NoTransforms);
    let (width, height) = (width.into(), height.into());
    let picture = match info.pixel_format {
        PixelFormat::L8 => {
            image::GrayImage::from_raw(width, height, dots).map(DynamicImage::ImageLuma8)
        }
        _ => image::RgbImage::from_raw(width, height, dots).map(DynamicImage::ImageRgb8),
    };
    Ok((picture.ok_or(PhotoFault::Damaged)?, orientation))
}

/// The side at which a JPEG's next smaller eighth is too small. A little less than what is kept is taken rather than nearly
/// twice as much, which would be four times the memory.
pub(super) fn least_side(longest: u16) -> u16 {
    let kept = u16::try_from(KEPT_SIDE).unwrap_or(u16::MAX);
    let enough = kept / 4 * 3;
    [8, 4, 2]
        .map(|by| longest.div_ceil(by))
        .into_iter()
        .find(|side| (enough..kept).contains(side))
        .unwrap_or(kept)
}

fn png(bytes: &[u8]) -> Found {
    let damaged = |_| PhotoFault::Damaged;
    let limits = png::Limits { bytes: MOST_MEMORY };
    let mut decoder = png::Decoder::new_with_limits(Cursor::new(bytes), limits);
    decoder.set_transformations(Transformations::normalize_to_color8());
    decoder.set_ignore_text_chunk(true);
    decoder.set_ignore_iccp_chunk(true);
    let head = decoder.read_header_info().map_err(damaged)?;
    let (width, height) = (head.width, head.height);
    let most = if head.interlaced {
        MOST_AT_ONCE
    } else {
        MOST_DOTS
    };
    bounded(width, height, most, PhotoFault::TooManyAtOnce)?;
    if head.interlaced {
        return whole(bytes);
    }
    let mut reader = decoder.read_info().map_err(damaged)?;
    let (colour, depth) = reader.output_color_type();
    if depth != BitDepth::Eight {
        return Err(PhotoFault::Damaged);
    }
    let mut rows = Rows::new(width, height, colour);
    while let Some(row) = reader.next_row().map_err(damaged)? {
        rows.take(row.data());
    }
    let orientation = reader
        .info()
        .exif_metadata
        .as_deref()
        .and_then(Orientation::from_exif_chunk)
        .unwrap_or(Orientation::NoTransforms);
    Ok((rows.end()?, orientation))
}

/// A picture that is made smaller by a whole number while its rows arrive.
struct Rows {
    /// Dots of the large picture to a side of a dot of the small one.
    by: usize,
    width: usize,
    height: usize,
    channels: usize,
    /// Sums of red, green, blue and opacity of the dots of a row that is being made, and of how many they are.
    sums: Vec<[u32; 5]>,
    taken: usize,
    dots: Vec<u8>,
}

impl Rows {
    fn new(width: u32, height: u32, colour: ColorType) -> Self {
        let by = (width.max(height) / KEPT_SIDE).max(1) as usize;
        let (width, height) = (width as usize, height as usize);
        Self {
            by,
            width: width.div_ceil(by),
            height: height.div_ceil(by),
            channels: colour.samples(),
            sums: vec![[0; 5]; width.div_ceil(by)],
            taken: 0,
            dots: Vec::new(),
        }
    }

    fn take(&mut self, row: &[u8]) {
        for (x, dot) in row.chunks_exact(self.channels).enumerate() {
            let [red, green, blue, opacity] = match *dot {
                [grey] => [grey, grey, grey, u8::MAX],
                [grey, opacity] => [grey, grey, grey, opacity],
                [red, green, blue] => [red, green, blue, u8::MAX],
                [red, green, blue, opacity] => [red, green, blue, opacity],
                _ => continue,
            };
            if let Some(sums) = self.sums.get_mut(x / self.by) {
                for (sum, value) in sums.iter_mut().zip([red, green, blue, opacity, 1]) {
                    *sum += u32::from(value);
                }
            }
        }
        self.taken += 1;
        if self.taken.is_multiple_of(self.by) {
            self.close();
        }
    }

    fn close(&mut self) {
        for [red, green, blue, opacity, count] in &mut self.sums {
            let mean = |sum: u32| u8::try_from(sum / (*count).max(1)).unwrap_or(u8::MAX);
            self.dots
                .extend([mean(*red), mean(*green), mean(*blue), mean(*opacity)]);
        }
        self.sums.fill([0; 5]);
    }

    fn end(mut self) -> Result<DynamicImage, PhotoFault> {
        if !self.taken.is_multiple_of(self.by) {
            self.close();
        }
        if self.dots.len() != self.width * self.height * 4 {
            return Err(PhotoFault::Damaged);
        }
        let size = |side: usize| u32::try_from(side).map_err(|_| PhotoFault::TooManyDots);
        RgbaImage::from_raw(size(self.width)?, size(self.height)?, self.dots)
            .map(DynamicImage::ImageRgba8)
            .ok_or(PhotoFault::Damaged)
    }
}

/// A picture of a kind that is decoded at once.
fn whole(bytes: &[u8]) -> Found {
    let mut reader = ImageReader::new(Cursor::new(bytes))
        .with_guessed_format()
        .map_err(|_| PhotoFault::NotAPicture)?;
    let mut limits = Limits::default();
    (
        limits.max_image_width,
        limits.max_image_height,
        limits.max_alloc,
    ) = (
        Some(LONGEST_SIDE),
        Some(LONGEST_SIDE),
        Some(MOST_MEMORY as u64),
    );
    reader.limits(limits);
    let mut decoder = reader.into_decoder().map_err(|error| fault(&error))?;
    // The size stands in the picture's head: it is looked at before anything is unfolded.
    let (width, height) = decoder.dimensions();
    bounded(width, height, MOST_AT_ONCE, PhotoFault::TooManyAtOnce)?;
    let orientation = decoder.orientation().map_err(|error| fault(&error))?;
    let picture = DynamicImage::from_decoder(decoder).map_err(|error| fault(&error))?;
    Ok((picture, orientation))
}

fn fault(error: &image::ImageError) -> PhotoFault {
    if matches!(error, image::ImageError::Limits(_)) {
        PhotoFault::TooManyAtOnce
    } else {
        PhotoFault::Damaged
    }
}
