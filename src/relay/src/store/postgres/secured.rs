//! An encrypted connection to the database, whose certificate must be vouched for by the authority that the address names.
//!
//! The address says so in the words of PostgreSQL's own clients: `sslrootcert=FILE` among its parameters. There is no
//! encryption without proof of who is at the other end: it would keep out nobody who can sit in between.

use super::failed;
use postgres::config::SslMode;
use postgres::tls::{ChannelBinding, MakeTlsConnect, TlsConnect, TlsStream};
use std::future::Future;
use std::io;
use std::path::Path;
use std::pin::Pin;
use std::sync::Arc;
use std::task::{Context, Poll};
use sync::exchange::StoreError;
use tokio::io::{AsyncRead, AsyncWrite, ReadBuf};
use tokio_rustls::rustls::crypto::ring;
use tokio_rustls::rustls::pki_types::pem::PemObject;
use tokio_rustls::rustls::pki_types::{CertificateDer, InvalidDnsNameError, ServerName};
use tokio_rustls::rustls::{ClientConfig, RootCertStore};
use tokio_rustls::{TlsConnector, client};

/// The parameter that names the authority's file.
const AUTHORITY: &str = "sslrootcert=";

/// What secures connections, and the address without the parameter for it.
pub fn secured(address: &str) -> Result<(postgres::Config, Option<Secured>), StoreError> {
    let (place, parameters) = address.split_once('?').unwrap_or((address, ""));
    let (authority, others): (Vec<&str>, Vec<&str>) = parameters
        .split('&')
        .filter(|parameter| !parameter.is_empty())
        .partition(|parameter| parameter.starts_with(AUTHORITY));
    let address = format!("{place}?{}", others.join("&"));
    let mut config: postgres::Config = address.parse().map_err(|error| failed(&error))?;
    let file = authority
        .last()
        .and_then(|named| named.strip_prefix(AUTHORITY));
    let Some(file) = file else {
        if config.get_ssl_mode() == SslMode::Require {
            let how = "sslmode=require needs sslrootcert=FILE beside it".to_owned();
            return Err(StoreError::Failed(how));
        }
        return Ok((config, None));
    };
    config.ssl_mode(SslMode::Require);
    Ok((config, Some(Secured::by(Path::new(file))?)))
}

/// Secures connections.
#[derive(Clone)]
pub struct Secured(TlsConnector);

impl Secured {
    fn by(file: &Path) -> Result<Self, StoreError> {
        let unfit = |why: &dyn std::fmt::Display| {
            StoreError::Failed(format!(
                "{} can't vouch for the database: {why}",
                file.display()
            ))
        };
        let mut roots = RootCertStore::empty();
        for certificate in CertificateDer::pem_file_iter(file).map_err(|why| unfit(&why))? {
            let certificate = certificate.map_err(|why| unfit(&why))?;
            roots.add(certificate).map_err(|why| unfit(&why))?;
        }
        if roots.is_empty() {
            return Err(unfit(&"it holds no certificate"));
        }
        let config = ClientConfig::builder_with_provider(Arc::new(ring::default_provider()))
            .with_safe_default_protocol_versions()
            .map_err(|why| unfit(&why))?
            .with_root_certificates(roots)
            .with_no_client_auth();
        Ok(Self(TlsConnector::from(Arc::new(config))))
    }
}

impl<S: AsyncRead + AsyncWrite + Unpin + Send + 'static> MakeTlsConnect<S> for Secured {
    type Stream = Stream<S>;
    type TlsConnect = To;
    type Error = InvalidDnsNameError;

    fn make_tls_connect(&mut self, host: &str) -> Result<To, Self::Error> {
        Ok(To {
            connector: self.0.clone(),
            host: ServerName::try_from(host.to_owned())?,
        })
    }
}

/// One connection that is to be secured.
pub struct To {
    connector: TlsConnector,
    host: ServerName<'static>,
}

impl<S: AsyncRead + AsyncWrite + Unpin + Send + 'static> TlsConnect<S> for To {
    type Stream = Stream<S>;
    type Error = io::Error;
    type Future = Pin<Box<dyn Future<Output = io::Result<Stream<S>>> + Send>>;

    fn connect(self, stream: S) -> Self::Future {
        Box::pin(async move { Ok(Stream(self.connector.connect(self.host, stream).await?)) })
    }
}

/// A connection that is secured.
pub struct Stream<S>(client::TlsStream<S>);

impl<S: AsyncRead + AsyncWrite + Unpin> TlsStream for Stream<S> {
    fn channel_binding(&self) -> ChannelBinding {
        ChannelBinding::none()
    }
}

impl<S: AsyncRead + AsyncWrite + Unpin> AsyncRead for Stream<S> {
    fn poll_read(
        mut self: Pin<&mut Self>,
        context: &mut Context<'_>,
        into: &mut ReadBuf<'_>,
    ) -> Poll<io::Result<()>> {
        Pin::new(&mut self.0).poll_read(context, into)
    }
}

impl<S: AsyncRead + AsyncWrite + Unpin> AsyncWrite for Stream<S> {
    fn poll_write(
        mut self: Pin<&mut Self>,
        context: &mut Context<'_>,
        from: &[u8],
    ) -> Poll<io::Result<usize>> {
        Pin::new(&mut self.0).poll_write(context, from)
    }

    fn poll_flush(mut self: Pin<&mut Self>, context: &mut Context<'_>) -> Poll<io::Result<()>> {
        Pin::new(&mut self.0).poll_flush(context)
    }

    fn poll_shutdown(mut self: Pin<&mut Self>, context: &mut Context<'_>) -> Poll<io::Result<()>> {
        Pin::new(&mut self.0).poll_shutdown(context)
    }
}
