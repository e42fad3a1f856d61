//! `stillground trace FILE`: a record of a knock or of steps in, what it says out.

use std::fs::File;
use std::io::Read;
use std::path::Path;

use stillground::trace::{Asked, Reader, Trace};

use super::Failure;
use super::design::{unusable, write};

/// Prints what a record says.
pub(super) fn trace(file: &Path, asked: Asked) -> Result<(), Failure> {
    write(&read(file, asked)?)
}

/// Reads a file piece by piece, so that a large one is never held whole.
fn read(file: &Path, asked: Asked) -> Result<Trace, Failure> {
    let mut input: Box<dyn Read> = if file == Path::new("-") {
        Box::new(std::io::stdin())
    } else {
        Box::new(File::open(file).map_err(|error| unusable(file, error))?)
    };
    let mut reader = Reader::new(asked).map_err(|refusal| unusable(file, refusal))?;
    let mut piece = vec![0; 64 * 1024];
    loop {
        match input.read(&mut piece) {
            Ok(0) => break,
            Ok(length) => reader
                .push(&piece[..length])
                .map_err(|refusal| unusable(file, refusal))?,
            Err(error) if error.kind() == std::io::ErrorKind::Interrupted => {}
            Err(error) => return Err(unusable(file, error)),
        }
    }
    reader.finish().map_err(|refusal| unusable(file, refusal))
}
