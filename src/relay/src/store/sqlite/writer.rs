//! The one thread that writes.

use super::failed;
use rusqlite::Connection;
use std::sync::mpsc::{Receiver, Sender, channel, sync_channel};
use std::sync::{Mutex, PoisonError};
use std::thread::{self, JoinHandle};
use sync::exchange::StoreError;

/// The most pieces of work in one transaction.
const TOGETHER: usize = 64;

/// Does a piece of work and gives what is to be said once it is committed, or once that failed.
type Work = Box<dyn FnOnce(&Connection) -> Said + Send>;
type Said = Box<dyn FnOnce(Result<(), StoreError>) + Send>;

/// Hands work to the thread that writes. Dropping it ends the thread after the last piece.
#[derive(Debug)]
pub struct Writer {
    work: Mutex<Option<Sender<Work>>>,
    thread: Option<JoinHandle<()>>,
}

impl Writer {
    pub fn start(connection: Connection) -> Result<Self, StoreError> {
        let (work, waiting) = channel();
        let thread = thread::Builder::new()
            .name("writer".into())
            .spawn(move || write_all(&connection, &waiting))
            .map_err(|error| StoreError::Failed(error.to_string()))?;
        Ok(Self {
            work: Mutex::new(Some(work)),
            thread: Some(thread),
        })
    }

    /// Does a piece of work all or nothing, and returns when it is durable.
    pub fn write<T: Send + 'static>(
        &self,
        work: impl FnOnce(&Connection) -> rusqlite::Result<T> + Send + 'static,
    ) -> Result<T, StoreError> {
        let (say, answer) = sync_channel(1);
        let work: Work = Box::new(move |connection| {
            let done = apart(connection, work);
            Box::new(move |committed| {
                // Nobody may be listening any more; the work is done all the same.
                let _ = say.send(committed.and(done.map_err(failed)));
            })
        });
        let gone = || StoreError::Failed("the thread that writes has ended".into());
        self.sender()
            .ok_or_else(gone)?
            .send(work)
            .map_err(|_| gone())?;
        answer.recv().map_err(|_| gone())?
    }

    fn sender(&self) -> Option<Sender<Work>> {
        self.work
            .lock()
            .unwrap_or_else(PoisonError::into_inner)
            .clone()
    }
}

impl Drop for Writer {
    fn drop(&mut self) {
        self.work
            .lock()
            .unwrap_or_else(PoisonError::into_inner)
            .take();
        if let Some(thread) = self.thread.take() {
            let _ = thread.join();
        }
    }
}

fn write_all(connection: &Connection, waiting: &Receiver<Work>) {
    while let Ok(first) = waiting.recv() {
        let begun = connection.execute_batch("BEGIN IMMEDIATE").map_err(failed);
        let mut said = Vec::new();
        for work in std::iter::once(first).chain(waiting.try_iter().take(TOGETHER - 1)) {
            said.push(work(connection));
        }
        let committed = begun.and_then(|()| commit(connection));
        for say in said {
            say(committed.clone());
        }
    }
}

fn commit(connection: &Connection) -> Result<(), StoreError> {
    let committed = connection.execute_batch("COMMIT").map_err(failed);
    if committed.is_err() {
        // Where the commit itself ended the transaction there is nothing left to roll back.
        let _ = connection.execute_batch("ROLLBACK");
    }
    committed
}

/// One piece of work in a savepoint, so that its failure undoes nothing but itself.
fn apart<T>(
    connection: &Connection,
    work: impl FnOnce(&Connection) -> rusqlite::Result<T>,
) -> rusqlite::Result<T> {
    if connection.is_autocommit() {
        return Err(rusqlite::Error::InvalidQuery);
    }
    connection.execute_batch("SAVEPOINT piece")?;
    match work(connection) {
        Ok(done) => connection.execute_batch("RELEASE piece").map(|()| done),
        Err(error) => connection
            .execute_batch("ROLLBACK TO piece; RELEASE piece")
            .and(Err(error)),
    }
}
