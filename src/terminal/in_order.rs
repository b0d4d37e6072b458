//! Work on all cores whose results come in the order in which it was asked for.

use std::io;
use std::sync::Mutex;
use std::sync::mpsc::{Receiver, Sender, SyncSender, channel, sync_channel};
use std::thread;

/// Tasks in hand for each core: enough that none idles behind a slow one, few enough to hold in
/// memory whatever the input.
const IN_HAND: usize = 16;

struct Task<T, R> {
    asked: T,
    done: Sender<R>,
}

/// Does what `feed` asks for on all cores, and hands each result to `write` in order.
///
/// A queue of receivers keeps the order: each task brings its own, and the writer takes them one
/// after the other. The queue is bounded, so `feed` waits while too many are open.
///
/// # Errors
/// The first error of `write`, else that of `feed`.
pub(super) fn on_all_cores<T: Send, R: Send>(
    work: impl Fn(T) -> R + Sync,
    mut write: impl FnMut(R) -> io::Result<()> + Send,
    feed: impl FnOnce(&mut dyn FnMut(T) -> io::Result<()>) -> io::Result<()>,
) -> io::Result<()> {
    let cores = thread::available_parallelism().map_or(1, usize::from);
    let (ask, asked) = sync_channel::<Task<T, R>>(IN_HAND * cores);
    let (promise, promised) = sync_channel::<Receiver<R>>(IN_HAND * cores);
    let asked = Mutex::new(asked);
    thread::scope(|scope| {
        for _ in 0..cores {
            scope.spawn(|| {
                while let Some(task) = next(&asked) {
                    // Nobody waits for it where writing has failed.
                    let _ = task.done.send(work(task.asked));
                }
            });
        }
        let writer = scope.spawn(move || {
            for result in promised {
                let result = result.recv().map_err(io::Error::other)?;
                write(result)?;
            }
            Ok(())
        });
        let fed = feed(&mut |task| hand_on(&ask, &promise, task));
        drop((ask, promise));
        let written: io::Result<()> = writer
            .join()
            .unwrap_or_else(|_| Err(io::Error::other("the writer of the answers has failed")));
        written.and(fed)
    })
}

fn next<T, R>(asked: &Mutex<Receiver<Task<T, R>>>) -> Option<Task<T, R>> {
    asked.lock().ok()?.recv().ok()
}

fn hand_on<T, R>(
    ask: &SyncSender<Task<T, R>>,
    promise: &SyncSender<Receiver<R>>,
    asked: T,
) -> io::Result<()> {
    let (done, result) = channel();
    let gone = || io::Error::from(io::ErrorKind::BrokenPipe);
    promise.send(result).map_err(|_| gone())?;
    ask.send(Task { asked, done }).map_err(|_| gone())
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::sync::atomic::{AtomicUsize, Ordering};
    use std::time::Duration;

    #[test]
    fn results_come_in_order_and_few_are_open() {
        let (begun, written) = (AtomicUsize::new(0), AtomicUsize::new(0));
        let mut most_open = 0;
        let mut got = Vec::new();
        let done = on_all_cores(
            |i: usize| {
                // Every tenth is slow, so that others overtake it.
                thread::sleep(Duration::from_micros(if i.is_multiple_of(10) {
                    2000
                } else {
                    10
                }));
                i
            },
            |i| {
                got.push(i);
                written.fetch_add(1, Ordering::Relaxed);
                Ok(())
            },
            |ask| {
                for i in 0..1000 {
                    ask(i)?;
                    let open =
                        begun.fetch_add(1, Ordering::Relaxed) + 1 - written.load(Ordering::Relaxed);
                    most_open = most_open.max(open);
                }
                Ok(())
            },
        );
        assert!(done.is_ok());
        assert!(got.into_iter().eq(0..1000));
        let cores = thread::available_parallelism().map_or(1, usize::from);
        assert!(most_open <= IN_HAND * cores + 2, "{most_open}");
    }

    /// A reader that goes away ends the feeding.
    #[test]
    fn an_error_of_writing_ends_it() {
        let gone = || io::Error::from(io::ErrorKind::BrokenPipe);
        let mut asked = 0;
        let done = on_all_cores(
            |i: usize| i,
            |i| if i < 5 { Ok(()) } else { Err(gone()) },
            |ask| {
                for i in 0..1_000_000 {
                    ask(i)?;
                    asked = i;
                }
                Ok(())
            },
        );
        assert_eq!(done.unwrap_err().kind(), io::ErrorKind::BrokenPipe);
        assert!(asked < 10_000, "{asked}");
    }
}
