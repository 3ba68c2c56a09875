//! TLS with the clinic's own certificate.

use crate::options::CertificateFiles;
use std::path::{Path, PathBuf};
use std::sync::Arc;
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

/// What takes connections with this certificate, by TLS 1.3 or 1.2.
///
/// # Errors
///
/// A file can't be read, holds something else, or the key is not the certificate's.
pub fn acceptor(files: &CertificateFiles) -> Result<TlsAcceptor, TlsError> {
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
