//! A connection whose reader has to read. Neither hyper nor the kernel ever gives up on one that takes nothing, so that its
//! answers would be held for ever; and a limit on the pause alone would be met with one byte at a time.

use std::io::{Error, ErrorKind, IoSlice, Result};
use std::pin::Pin;
use std::task::{Context, Poll};
use std::time::Duration;

use tokio::io::{AsyncRead, AsyncWrite, ReadBuf};
use tokio::time::{Instant, Sleep, sleep_until};

/// How long a reader may take nothing.
const PATIENCE: Duration = Duration::from_secs(20);
/// The slowest reader that is waited for to the end, bytes a second: a plan of half a megabyte then takes four minutes.
const SLOWEST: u64 = 2048;

/// A line on which writing is given up when its reader takes too little.
pub(super) struct Patient<S> {
    line: S,
    /// What is left of the patience.
    left: Duration,
    waiting: Option<(Instant, Pin<Box<Sleep>>)>,
}

impl<S> Patient<S> {
    /// With all the patience there is.
    pub(super) fn new(line: S) -> Self {
        Self {
            line,
            left: PATIENCE,
            waiting: None,
        }
    }

    /// Whether what was tried may go on waiting. Time that passes in it uses the patience up; what is read restores it.
    fn judge<T>(
        &mut self,
        context: &mut Context<'_>,
        tried: Poll<Result<T>>,
        taken: impl FnOnce(&T) -> u64,
    ) -> Poll<Result<T>> {
        match tried {
            Poll::Ready(done) => {
                if let Some((since, _)) = self.waiting.take() {
                    self.left = self.left.saturating_sub(since.elapsed());
                }
                if let Ok(done) = &done {
                    let earned =
                        Duration::from_micros(taken(done).saturating_mul(1_000_000) / SLOWEST);
                    self.left = self.left.saturating_add(earned).min(PATIENCE);
                }
                Poll::Ready(done)
            }
            Poll::Pending => {
                let left = self.left;
                let (_, end) = self.waiting.get_or_insert_with(|| {
                    let now = Instant::now();
                    (now, Box::pin(sleep_until(now + left)))
                });
                match end.as_mut().poll(context) {
                    Poll::Ready(()) => Poll::Ready(Err(Error::new(
                        ErrorKind::TimedOut,
                        "its reader takes too little",
                    ))),
                    Poll::Pending => Poll::Pending,
                }
            }
        }
    }
}

impl<S: AsyncRead + Unpin> AsyncRead for Patient<S> {
    fn poll_read(
        mut self: Pin<&mut Self>,
        context: &mut Context<'_>,
        into: &mut ReadBuf<'_>,
    ) -> Poll<Result<()>> {
        Pin::new(&mut self.line).poll_read(context, into)
    }
}

impl<S: AsyncWrite + Unpin> AsyncWrite for Patient<S> {
    fn poll_write(
        mut self: Pin<&mut Self>,
        context: &mut Context<'_>,
        bytes: &[u8],
    ) -> Poll<Result<usize>> {
        let tried = Pin::new(&mut self.line).poll_write(context, bytes);
        self.judge(context, tried, |taken| *taken as u64)
    }

    fn poll_flush(mut self: Pin<&mut Self>, context: &mut Context<'_>) -> Poll<Result<()>> {
        Pin::new(&mut self.line).poll_flush(context)
    }

    fn poll_shutdown(mut self: Pin<&mut Self>, context: &mut Context<'_>) -> Poll<Result<()>> {
        Pin::new(&mut self.line).poll_shutdown(context)
    }

    fn poll_write_vectored(
        mut self: Pin<&mut Self>,
        context: &mut Context<'_>,
        parts: &[IoSlice<'_>],
    ) -> Poll<Result<usize>> {
        let tried = Pin::new(&mut self.line).poll_write_vectored(context, parts);
        self.judge(context, tried, |taken| *taken as u64)
    }

    fn is_write_vectored(&self) -> bool {
        self.line.is_write_vectored()
    }
}

#[cfg(test)]
mod tests {
    use tokio::io::{AsyncReadExt, AsyncWriteExt, duplex};

    use super::*;

    #[tokio::test(start_paused = true)]
    async fn a_reader_that_takes_nothing_is_given_up_and_one_that_is_slow_is_not() {
        let (line, _reader) = duplex(1000);
        let begun = Instant::now();
        let refused = Patient::new(line).write_all(&[0; 2000]).await.unwrap_err();
        assert_eq!(refused.kind(), ErrorKind::TimedOut);
        assert_eq!(begun.elapsed().as_secs(), PATIENCE.as_secs());

        let (line, mut reader) = duplex(1000);
        let slow = tokio::spawn(async move {
            let mut part = [0; 1000];
            while reader.read(&mut part).await.is_ok_and(|length| length > 0) {
                tokio::time::sleep(Duration::from_millis(450)).await;
            }
        });
        let mut patient = Patient::new(line);
        patient.write_all(&[0; 500_000]).await.unwrap();
        drop(patient);
        slow.await.unwrap();
    }

    #[tokio::test(start_paused = true)]
    async fn a_reader_that_takes_a_byte_now_and_then_is_given_up() {
        let (line, mut reader) = duplex(1000);
        let drip = tokio::spawn(async move {
            let mut one = [0; 1];
            while reader.read(&mut one).await.is_ok_and(|length| length > 0) {
                tokio::time::sleep(Duration::from_secs(5)).await;
            }
        });
        let begun = Instant::now();
        assert!(
            Patient::new(line).write_all(&[0; 4000]).await.is_err(),
            "one byte every five seconds"
        );
        assert!(begun.elapsed() < PATIENCE + Duration::from_secs(10));
        drip.abort();
    }
}
