//! TLS with the clinic's own certificate.

use crate::options::CertificateFiles;
use sha2::{Digest, Sha256};
use std::path::{Path, PathBuf};
use std::sync::{Arc, Mutex, MutexGuard, PoisonError};
use thiserror::Error;
use tokio_rustls::TlsAcceptor;
use tokio_rustls::rustls::crypto::ring;
use tokio_rustls::rustls::pki_types::pem::{self, PemObject};
use tokio_rustls::rustls::pki_types::{CertificateDer, PrivateKeyDer};
use tokio_rustls::rustls::{self, ServerConfig};

/// Why there can be no TLS.
#[derive(Debug, Error)]
pub enum TlsError {
    /// A file that can't be read, or is not PEM.
    #[error("{} can't be read as {what}: {why}.", .file.display())]
    Unreadable {
        /// The file.
        file: PathBuf,
        /// What it should be.
        what: &'static str,
        /// Why it isn't.
        why: pem::Error,
    },
    /// A file without any certificate.
    #[error("{} holds no certificate.", .0.display())]
    Empty(PathBuf),
    /// A key that is not the certificate's, or that TLS can't use.
    #[error("The certificate {} and the key {} can't be used together: {why}.", .chain.display(), .key.display())]
    Unfit {
        /// The certificate's file.
        chain: PathBuf,
        /// The key's file.
        key: PathBuf,
        /// Why.
        why: rustls::Error,
    },
}

/// A certificate in use. Certificates last weeks, and a relay runs longer: files that were renewed are taken up while it
/// serves.
pub struct Certificate {
    files: CertificateFiles,
    current: Mutex<Current>,
}

struct Current {
    acceptor: TlsAcceptor,
    read: Contents,
}

/// The hashes of what was read: the key itself is kept in one place, and not in this one.
type Contents = [[u8; 32]; 2];

impl Certificate {
    /// Reads a certificate and its key.
    ///
    /// # Errors
    ///
    /// A file can't be read, holds something else, or the key is not the certificate's.
    pub fn load(files: &CertificateFiles) -> Result<Self, TlsError> {
        let current = Current {
            // Read first: a change right after it is a change to be found.
            read: contents(files),
            acceptor: acceptor(files)?,
        };
        Ok(Self {
            files: files.clone(),
            current: Mutex::new(current),
        })
    }

    /// What takes connections, by TLS 1.3 or 1.2.
    pub fn acceptor(&self) -> TlsAcceptor {
        self.lock().acceptor.clone()
    }

    /// Takes up files that have changed, for connections from now on. Tells whether they had.
    ///
    /// # Errors
    ///
    /// As [`Certificate::load`]; the certificate that was in use stays so, and the same files are not tried again.
    pub fn renew(&self) -> Result<bool, TlsError> {
        let read = contents(&self.files);
        if self.lock().read == read {
            return Ok(false);
        }
        self.lock().read = read;
        let acceptor = acceptor(&self.files)?;
        self.lock().acceptor = acceptor;
        Ok(true)
    }

    fn lock(&self) -> MutexGuard<'_, Current> {
        self.current.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// Nothing stands for a file that can't be read: while files are renewed one may not be there.
fn contents(files: &CertificateFiles) -> Contents {
    let hash = |file| Sha256::digest(std::fs::read(file).unwrap_or_default()).into();
    [&files.chain, &files.key].map(hash)
}

fn acceptor(files: &CertificateFiles) -> Result<TlsAcceptor, TlsError> {
    let unfit = |why| TlsError::Unfit {
        chain: files.chain.clone(),
        key: files.key.clone(),
        why,
    };
    let (chain, key) = (chain(&files.chain)?, key(&files.key)?);
    let mut config = ServerConfig::builder_with_provider(Arc::new(ring::default_provider()))
        .with_safe_default_protocol_versions()
        .map_err(unfit)?
        .with_no_client_auth()
        .with_single_cert(chain, key)
        .map_err(unfit)?;
    config.alpn_protocols = vec![b"http/1.1".to_vec()];
    Ok(TlsAcceptor::from(Arc::new(config)))
}

fn chain(file: &Path) -> Result<Vec<CertificateDer<'static>>, TlsError> {
    let unreadable = |why| unreadable(file, "a certificate in PEM", why);
    let chain: Vec<_> = CertificateDer::pem_file_iter(file)
        .map_err(unreadable)?
        .collect::<Result<_, _>>()
        .map_err(unreadable)?;
    if chain.is_empty() {
        return Err(TlsError::Empty(file.to_owned()));
    }
    Ok(chain)
}

fn key(file: &Path) -> Result<PrivateKeyDer<'static>, TlsError> {
    PrivateKeyDer::from_pem_file(file).map_err(|why| unreadable(file, "a private key in PEM", why))
}

fn unreadable(file: &Path, what: &'static str, why: pem::Error) -> TlsError {
    TlsError::Unreadable {
        file: file.to_owned(),
        what,
        why,
    }
}
