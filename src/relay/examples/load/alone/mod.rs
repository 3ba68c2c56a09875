//! A database alone, with nothing before it: the same bytes in transactions of the same size, with the same durability.

mod postgres;
mod sqlite;

use crate::cluster;
use lightround_relay::store::{self, Desk};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use vault::Frame;

/// What a relay keeps its frames in.
#[derive(Clone, Copy)]
pub enum Database {
    Sqlite,
    Postgres,
}

/// A database of its own for each measurement. Both answer with seconds.
pub trait Alone {
    /// In which it takes these, in bulk, so many frames in a transaction.
    fn insert(&mut self, logs: &[Vec<Frame>], size: usize) -> f64;

    /// In which it reads all of them.
    fn select(&mut self) -> f64;
}

impl Database {
    pub fn name(self) -> &'static str {
        match self {
            Self::Sqlite => "SQLite",
            Self::Postgres => "PostgreSQL",
        }
    }

    /// The relay's store in it, new under this name.
    pub fn store(self, folder: &Path, name: &str) -> Arc<dyn Desk> {
        let place = match self {
            Self::Sqlite => file(folder, name).to_string_lossy().into_owned(),
            Self::Postgres => cluster::address(name),
        };
        store::open(&place).unwrap()
    }

    /// The database beside that store.
    pub fn alone(self, folder: &Path, name: &str) -> Box<dyn Alone> {
        let name = format!("{name}_alone");
        match self {
            Self::Sqlite => Box::new(sqlite::Alone::new(&file(folder, &name))),
            Self::Postgres => Box::new(postgres::Alone::new(&cluster::address(&name))),
        }
    }
}

fn file(folder: &Path, name: &str) -> PathBuf {
    folder.join(format!("{name}.sqlite"))
}
