//! The store in PostgreSQL, or in what speaks its language.
//!
//! Every transaction is SERIALIZABLE, so the rules can be written as if nobody else were there; one that is refused for
//! what others did meanwhile (SQLSTATE 40001, or 40P01 for a deadlock) is done again, at most [`TRIES`] times.
//!
//! The connection is encrypted where the address says who vouches for the database ([`secured`]). Without that the database
//! stands on the same machine, or behind a tunnel; what is carried is ciphertext, signatures and ids either way.

mod desk;
mod erased;
mod frames;
mod schema;
mod secured;

use postgres::error::SqlState;
use postgres::{Client, IsolationLevel, NoTls, Transaction};
use secured::Secured;
use std::sync::{Mutex, MutexGuard, PoisonError};
use std::thread;
use std::time::Duration;
use sync::exchange::StoreError;

/// How often a transaction is tried in all.
const TRIES: u32 = 8;
/// The wait before the first repetition; it doubles each time.
const PAUSE: Duration = Duration::from_millis(4);
/// Connections that are kept open.
const KEPT: usize = 8;

/// A store in PostgreSQL.
pub struct PostgresStore {
    address: postgres::Config,
    secured: Option<Secured>,
    clients: Mutex<Vec<Client>>,
}

/// Why one try of a transaction ended.
enum Ended {
    /// The database; what it says decides whether to try again.
    Database(postgres::Error),
    /// What is kept makes no sense.
    Damaged(StoreError),
}

impl From<postgres::Error> for Ended {
    fn from(error: postgres::Error) -> Self {
        Self::Database(error)
    }
}

impl From<StoreError> for Ended {
    fn from(error: StoreError) -> Self {
        Self::Damaged(error)
    }
}

impl PostgresStore {
    /// Connects and brings the tables up to date.
    ///
    /// # Errors
    ///
    /// The address is none, the database can't be reached, or its tables are of a later version.
    pub fn open(address: &str) -> Result<Self, StoreError> {
        let (address, secured) = secured::secured(address)?;
        let store = Self {
            address,
            secured,
            clients: Mutex::default(),
        };
        store.transact(schema::prepare)?;
        Ok(store)
    }

    /// Does `work` in a serializable transaction, again where others were in its way.
    fn transact<T>(
        &self,
        mut work: impl FnMut(&mut Transaction<'_>) -> Result<T, Ended>,
    ) -> Result<T, StoreError> {
        let mut client = self.client()?;
        let mut pause = PAUSE;
        for _ in 1..TRIES {
            match once(&mut client, &mut work) {
                Err(Ended::Database(error)) if others_won(&error) => {
                    thread::sleep(pause);
                    pause *= 2;
                }
                ended => return self.end(client, ended),
            }
        }
        let ended = once(&mut client, &mut work);
        self.end(client, ended)
    }

    fn end<T>(&self, client: Client, ended: Result<T, Ended>) -> Result<T, StoreError> {
        self.give_back(client);
        ended.map_err(|ended| match ended {
            Ended::Damaged(error) => error,
            Ended::Database(error) if others_won(&error) => StoreError::Busy(said(&error)),
            Ended::Database(error) => failed(&error),
        })
    }

    fn client(&self) -> Result<Client, StoreError> {
        // A connection that died while nobody looked is told by its first use or before; then a new one is made.
        while let Some(mut client) = self.lock().pop() {
            if !client.is_closed() && client.is_valid(Duration::from_secs(2)).is_ok() {
                return Ok(client);
            }
        }
        let connected = match &self.secured {
            Some(secured) => self.address.connect(secured.clone()),
            None => self.address.connect(NoTls),
        };
        connected.map_err(|error| failed(&error))
    }

    fn give_back(&self, client: Client) {
        let mut clients = self.lock();
        if !client.is_closed() && clients.len() < KEPT {
            clients.push(client);
        }
    }

    fn lock(&self) -> MutexGuard<'_, Vec<Client>> {
        self.clients.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

fn once<T>(
    client: &mut Client,
    work: &mut impl FnMut(&mut Transaction<'_>) -> Result<T, Ended>,
) -> Result<T, Ended> {
    let mut transaction = client
        .build_transaction()
        .isolation_level(IsolationLevel::Serializable)
        .start()?;
    let done = work(&mut transaction)?;
    transaction.commit()?;
    Ok(done)
}

/// A key that is taken is also theirs: done again, the work finds what they wrote.
fn others_won(error: &postgres::Error) -> bool {
    [
        SqlState::T_R_SERIALIZATION_FAILURE,
        SqlState::T_R_DEADLOCK_DETECTED,
        SqlState::UNIQUE_VIOLATION,
    ]
    .iter()
    .any(|code| error.code() == Some(code))
}

fn failed(error: &postgres::Error) -> StoreError {
    StoreError::Failed(said(error))
}

/// The client's own words are short; what the server said stands in the source.
fn said(error: &postgres::Error) -> String {
    match error.as_db_error() {
        Some(server) => format!("{} ({})", server.message(), server.code().code()),
        None => error.to_string(),
    }
}

impl std::fmt::Debug for PostgresStore {
    /// The address may hold a password.
    fn fmt(&self, out: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        out.debug_struct("PostgresStore").finish_non_exhaustive()
    }
}
