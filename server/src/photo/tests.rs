use std::io::Cursor;

use image::ImageFormat;

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
    assert!(!has(&kept, b"Exif") && !has(&kept, b"behind the end") && !has(&kept, &[0xff, 0xe1]));
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
        image::load_from_memory(&anew(&encoded(3000, 1000, ImageFormat::Jpeg)).unwrap()).unwrap();
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

/// A picture's head with another size, in a file that is otherwise as it was: the place of height and width in a JPEG.
fn with_size(jpeg: &[u8], marker: u8, width: u16, height: u16) -> Vec<u8> {
    let mut changed = jpeg.to_vec();
    let at = changed
        .windows(2)
        .position(|two| two == [0xff, 0xc0])
        .unwrap();
    changed[at + 1] = marker;
    changed[at + 5..at + 7].copy_from_slice(&height.to_be_bytes());
    changed[at + 7..at + 9].copy_from_slice(&width.to_be_bytes());
    changed
}

#[test]
fn a_kind_that_is_decoded_whole_may_have_fewer_dots() {
    let plain = encoded(64, 64, ImageFormat::Jpeg);
    assert_eq!(
        anew(&with_size(&plain, 0xc2, 7000, 7000)),
        Err(PhotoFault::TooManyAtOnce),
        "progressive"
    );
    assert_eq!(
        anew(&with_size(&plain, 0xc0, 8000, 8000)),
        Err(PhotoFault::TooManyDots)
    );
    let mut webp = encoded(16, 16, ImageFormat::WebP);
    // A lossless picture says its width and height less one, 14 bits each, after the mark 0x2f.
    let at = webp.iter().position(|byte| *byte == 0x2f).unwrap();
    for (side, refused) in [
        (4000, PhotoFault::TooManyAtOnce),
        (7700, PhotoFault::TooManyDots),
    ] {
        let size: u32 = (side - 1) | (side - 1) << 14;
        webp[at + 1..at + 5].copy_from_slice(&size.to_le_bytes());
        assert_eq!(anew(&webp), Err(refused));
    }
}

#[test]
fn a_picture_of_more_scans_than_any_program_writes_is_refused() {
    let mut many = encoded(64, 64, ImageFormat::Jpeg);
    let scan = many.windows(2).position(|two| two == [0xff, 0xda]).unwrap();
    let again = many[scan..many.len() - 2].to_vec();
    for _ in 0..30 {
        let end = many.len() - 2;
        many.splice(end..end, again.clone());
    }
    assert_eq!(anew(&many), Err(PhotoFault::Damaged));
}

#[test]
fn a_large_picture_is_the_small_one_whichever_way_it_is_read() {
    // Each quarter of its own colour: read row by row, by an eighth, or whole, it is the same picture.
    let picture = RgbImage::from_fn(3000, 5000, |x, y| match (x < 1500, y < 2500) {
        (true, true) => image::Rgb([200, 30, 30]),
        (false, true) => image::Rgb([30, 200, 30]),
        (true, false) => image::Rgb([30, 30, 200]),
        (false, false) => image::Rgb([220, 220, 220]),
    });
    for format in [ImageFormat::Jpeg, ImageFormat::Png] {
        let mut out = Cursor::new(Vec::new());
        picture.write_to(&mut out, format).unwrap();
        let kept = image::load_from_memory(&anew(&out.into_inner()).unwrap())
            .unwrap()
            .into_rgb8();
        assert_eq!(kept.height(), 2048, "{format:?}");
        assert!((1227..=1229).contains(&kept.width()), "{}", kept.width());
        for (x, y, colour) in [
            (100, 100, [200, 30, 30]),
            (1100, 100, [30, 200, 30]),
            (100, 1900, [30, 30, 200]),
            (1100, 1900, [220, 220, 220]),
        ] {
            let found = kept.get_pixel(x, y).0;
            let near = found.iter().zip(colour).all(|(a, b)| a.abs_diff(b) < 12);
            assert!(near, "{format:?} at {x}, {y}: {found:?}");
        }
    }
}

/// Noise of two colours, which is small as a PNG and large as a JPEG.
#[test]
fn a_picture_takes_no_more_when_it_is_kept_than_it_came_with() {
    let mut state = 1_u32;
    let picture = RgbImage::from_fn(1500, 1500, |_, _| {
        state ^= state << 13;
        state ^= state >> 17;
        state ^= state << 5;
        image::Rgb(if state & 1 == 0 { [0; 3] } else { [255; 3] })
    });
    let mut sent = std::io::Cursor::new(Vec::new());
    picture
        .write_to(&mut sent, image::ImageFormat::Png)
        .unwrap();
    let sent = sent.into_inner();
    let kept = anew(&sent).unwrap();
    assert!(kept.len() <= sent.len(), "{} of {}", kept.len(), sent.len());
    assert!(image::load_from_memory(&kept).unwrap().width() > 300);
}

#[test]
fn a_jpeg_is_decoded_at_about_the_size_that_is_kept() {
    // Seven thousand dots at a quarter, 1750, and not at a half, 3500, which would be four times the memory; those of a
    // telephone's four thousand at a half.
    let sides = [7000, 8160, 6000, 4032, 3000, 16_384, 1200];
    let expected = [1750, 2040, 2048, 2016, 2048, 2048, 2048];
    assert_eq!(sides.map(decoded::least_side), expected);
    let kept = anew(&encoded(4032, 30, ImageFormat::Jpeg)).unwrap();
    assert_eq!(image::load_from_memory(&kept).unwrap().width(), 2016);
}
