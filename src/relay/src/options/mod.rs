//! What the relay is told: on its command line, in its environment, in a file, in this order of weight.

mod error;
mod said;
mod settings;

pub use error::OptionsError;
pub use settings::USAGE;

use crate::carry::{Limits, Rate, vault_id};
use said::Sayings;
use std::net::SocketAddr;
use std::path::{Path, PathBuf};
use std::time::Duration;
use sync::exchange::Quota;
use vault::VaultId;

/// What is to be done.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Task {
    /// Serve until asked to stop.
    Serve(Box<Serving>),
    /// Print an invitation.
    Invite {
        /// Where frames are kept.
        data: Place,
        /// Days that it is good.
        days: u64,
    },
    /// List the vaults.
    Vaults(Place),
    /// Walk everything that is kept.
    Verify(Place),
    /// Copy what a backup lacks into it.
    Backup {
        /// Where frames are kept.
        data: Place,
        /// The backup.
        to: PathBuf,
    },
    /// Copy what is lacking out of a backup.
    Restore {
        /// Where frames are kept.
        data: Place,
        /// The backup.
        from: PathBuf,
    },
    /// Write a vault into a carry file.
    Carry {
        /// Where frames are kept.
        data: Place,
        /// Which.
        vault: VaultId,
        /// The file.
        to: PathBuf,
    },
    /// Erase a vault.
    Erase {
        /// Where frames are kept.
        data: Place,
        /// Which.
        vault: VaultId,
    },
}

/// Where frames are kept: a file, or the address of a database.
pub type Place = String;

/// How to serve.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Serving {
    /// The folder of the built app.
    pub app: PathBuf,
    /// Address and port; port 0 lets the system choose.
    pub listen: SocketAddr,
    /// Where frames are kept; none to serve the app alone.
    pub data: Option<Place>,
    /// What limits those who ask.
    pub limits: Limits,
    /// The files of a certificate and its key; none to serve without TLS.
    pub certificate: Option<CertificateFiles>,
    /// Where counts are told; none to tell them nowhere.
    pub metrics: Option<SocketAddr>,
}

/// A certificate with its key, both in PEM.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct CertificateFiles {
    /// The certificate, followed by those that vouch for it.
    pub chain: PathBuf,
    /// Its private key.
    pub key: PathBuf,
}

impl Default for Serving {
    fn default() -> Self {
        Self {
            app: PathBuf::from("dist"),
            listen: SocketAddr::from(([127, 0, 0, 1], 8017)),
            data: None,
            limits: Limits::default(),
            certificate: None,
            metrics: None,
        }
    }
}

impl Task {
    /// Reads what the relay is told.
    ///
    /// `arguments` come without the program's own name; of `environment` only the relay's variables are looked at; `read`
    /// reads the file of settings, if one is named.
    ///
    /// # Errors
    /// One sentence for the first thing that can't be followed, with where it was said.
    pub fn read(
        arguments: impl Iterator<Item = String>,
        environment: impl Iterator<Item = (String, String)>,
        read: impl FnOnce(&Path) -> std::io::Result<String>,
    ) -> Result<Self, OptionsError> {
        let said = Sayings::gather(arguments, environment, read)?;
        let task = match said.task {
            "invite" => Self::Invite {
                data: data(&said)?,
                days: said.number("days")?.unwrap_or(7),
            },
            "vaults" => Self::Vaults(data(&said)?),
            "verify" => Self::Verify(data(&said)?),
            "backup" => Self::Backup {
                data: data(&said)?,
                to: said.needed("to")?.into(),
            },
            "restore" => Self::Restore {
                data: data(&said)?,
                from: said.needed("from")?.into(),
            },
            "carry" => Self::Carry {
                data: data(&said)?,
                vault: vault(&said)?,
                to: said.needed("to")?.into(),
            },
            "erase" => Self::Erase {
                data: data(&said)?,
                vault: vault(&said)?,
            },
            _ => Self::Serve(Box::new(serving(&said)?)),
        };
        Ok(task)
    }
}

fn data(said: &Sayings) -> Result<Place, OptionsError> {
    let place = said.get("data").map(|saying| saying.value.clone());
    place.ok_or(OptionsError::NoData)
}

fn vault(said: &Sayings) -> Result<VaultId, OptionsError> {
    let digits = said.needed("vault")?;
    vault_id(&digits).ok_or(OptionsError::NotAVault(digits))
}

fn serving(said: &Sayings) -> Result<Serving, OptionsError> {
    let usual = Serving::default();
    let path = |name| said.get(name).map(|saying| PathBuf::from(&saying.value));
    let certificate = match (path("certificate"), path("key")) {
        (Some(chain), Some(key)) => Some(CertificateFiles { chain, key }),
        (None, None) => None,
        _ => return Err(OptionsError::HalfACertificate),
    };
    let data = said.get("data").map(|saying| saying.value.clone());
    let metrics = said.address("metrics")?;
    if metrics.is_some() && data.is_none() {
        return Err(OptionsError::NothingToCount);
    }
    Ok(Serving {
        app: path("app").unwrap_or(usual.app),
        listen: said.address("listen")?.unwrap_or(usual.listen),
        data,
        limits: limits(said, usual.limits)?,
        certificate,
        metrics,
    })
}

fn limits(said: &Sayings, usual: Limits) -> Result<Limits, OptionsError> {
    let small = |name, usual| {
        let number = said.number(name)?;
        // Numbers go up to a million.
        Ok::<u32, OptionsError>(number.map_or(usual, |number| number as u32))
    };
    Ok(Limits {
        quota: said.number("room")?.map_or(usual.quota, |mebibytes| Quota {
            bytes: mebibytes << 20,
        }),
        rate: Rate {
            burst: small("burst", usual.rate.burst)?,
            each_second: small("each-second", usual.rate.each_second)?,
        },
        patience: said
            .number("patience")?
            .map_or(usual.patience, Duration::from_secs),
        connections: small("connections", usual.connections)?,
    })
}

#[cfg(test)]
mod tests;
