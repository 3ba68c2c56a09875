//! `lightround-relay serve | invite | vaults | verify | backup | restore | carry | erase`

use lightround_relay::carry::{Carrying, Journal, Line};
use lightround_relay::store::{self, Desk};
use lightround_relay::tls::Certificate;
use lightround_relay::{
    App, Door, GRACE, OptionsError, Serving, Task, USAGE, commands, metrics, router, serve, verify,
};
use std::fmt::Display;
use std::net::SocketAddr;
use std::process::ExitCode;
use std::sync::Arc;
use std::time::Duration;
use tokio::net::TcpListener;

/// How often the certificate's files are looked at.
const RENEWAL: Duration = Duration::from_mins(1);

fn main() -> ExitCode {
    let arguments = std::env::args().skip(1);
    // What isn't text can't be one of the relay's own variables.
    let text = |(name, value): (std::ffi::OsString, std::ffi::OsString)| {
        Some((name.into_string().ok()?, value.into_string().ok()?))
    };
    let environment = std::env::vars_os().filter_map(text);
    match Task::read(arguments, environment, |file| std::fs::read_to_string(file)) {
        Ok(task) => run(&task).unwrap_or_else(|sentence| fail(&sentence)),
        Err(OptionsError::HelpAsked) => {
            println!("{USAGE}");
            ExitCode::SUCCESS
        }
        Err(error) => fail(&error.to_string()),
    }
}

fn fail(sentence: &str) -> ExitCode {
    eprintln!("{sentence}");
    ExitCode::FAILURE
}

fn run(task: &Task) -> Result<ExitCode, String> {
    let said = |error: &dyn Display| format!("The relay can't do that: {error}.");
    match task {
        Task::Serve(serving) => return start(serving),
        Task::Invite { data, days } => {
            let code = commands::invite(open(data)?.as_ref(), *days);
            println!("{}", code.map_err(|error| said(&error))?);
        }
        Task::Vaults(data) => {
            let table = commands::vaults(open_there(data)?.as_ref());
            println!("{}", table.map_err(|error| said(&error))?);
        }
        Task::Verify(data) => {
            let verified = verify(open_there(data)?.as_ref()).map_err(|error| said(&error))?;
            println!("{verified}");
            return Ok(well(verified.wrong.is_empty()));
        }
        Task::Backup { data, to } => {
            let copied = commands::backup(data, to);
            return copied
                .map(|copied| tell(&copied))
                .map_err(|error| said(&error));
        }
        Task::Restore { data, from } => {
            let copied = commands::restore(data, from);
            return copied
                .map(|copied| tell(&copied))
                .map_err(|error| said(&error));
        }
        Task::Carry { data, vault, to } => {
            let carried = commands::carry(open_there(data)?.as_ref(), *vault, to);
            println!("{}", carried.map_err(|error| said(&error))?);
        }
        Task::Erase { data, vault } => {
            let erased = commands::erase(open_there(data)?.as_ref(), *vault);
            println!("{}", erased.map_err(|error| said(&error))?);
        }
    }
    Ok(ExitCode::SUCCESS)
}

fn tell(copied: &lightround_relay::Copied) -> ExitCode {
    println!("{copied}");
    well(copied.wrong.is_empty())
}

fn well(well: bool) -> ExitCode {
    if well {
        ExitCode::SUCCESS
    } else {
        ExitCode::FAILURE
    }
}

fn open(data: &str) -> Result<Arc<dyn Desk>, String> {
    store::open(data).map_err(|error| unopened(&error))
}

fn open_there(data: &str) -> Result<Arc<dyn Desk>, String> {
    store::open_there(data).map_err(|error| unopened(&error))
}

fn unopened(error: &dyn Display) -> String {
    format!("What is kept can't be opened: {error}.")
}

fn start(serving: &Serving) -> Result<ExitCode, String> {
    // Opened before and closed after anything asynchronous: a database's connection may wait in both.
    let kept = serving.data.as_deref().map(open).transpose()?;
    // Who serves the app alone carries nothing that there would be a journal of.
    let journal = kept
        .as_ref()
        .map_or_else(Journal::silent, |_| Journal::to_stderr());
    let carrying = kept
        .as_ref()
        .map(|kept| Carrying::new(Arc::clone(kept), serving.limits, journal.clone()));
    let runtime = tokio::runtime::Runtime::new()
        .map_err(|error| format!("The relay can't start: {error}."))?;
    let served = runtime.block_on(serve_all(serving, carrying, &journal));
    // A database that doesn't answer holds nobody up: what it was to do was not acknowledged.
    runtime.shutdown_timeout(GRACE);
    served.map(|()| ExitCode::SUCCESS)
}

async fn serve_all(
    serving: &Serving,
    carrying: Option<Carrying>,
    journal: &Journal,
) -> Result<(), String> {
    let app = App::load(&serving.app).map_err(|error| error.to_string())?;
    let tls = serving.certificate.as_ref().map(Certificate::load);
    let tls = tls.transpose().map_err(|error| error.to_string())?;
    let door = Door {
        tls: tls.map(Arc::new),
        connections: serving.limits.connections,
        patience: serving.limits.patience,
    };
    let scheme = if door.tls.is_some() { "https" } else { "http" };
    let (listener, address) = bind(serving.listen).await?;
    let counted = match (serving.metrics, &carrying) {
        (Some(at), Some(carrying)) => Some((bind(at).await?, metrics::router(carrying))),
        _ => None,
    };
    // Listening for the wish to stop comes before the address: whoever reads that may already wish it.
    let stop_asked = stop_asked();
    println!("Lightround is at {scheme}://{address}/");
    journal.write(Line::Began);
    if let Some(((listener, address), router)) = counted {
        println!("Counts are at http://{address}/metrics");
        let door = Door {
            tls: None,
            ..door.clone()
        };
        // It ends with the runtime: nobody waits for the last count.
        tokio::spawn(serve(listener, door, router, std::future::pending::<()>()));
    }
    if let Some(certificate) = &door.tls {
        tokio::spawn(renew(Arc::clone(certificate), journal.clone()));
    }
    let ending = carrying.clone();
    let stop = async move {
        stop_asked.await;
        if let Some(carrying) = ending {
            carrying.end();
        }
    };
    serve(listener, door, router(app, carrying), stop).await;
    journal.write(Line::Ended);
    Ok(())
}

/// Takes a renewed certificate up, for as long as the relay runs.
async fn renew(certificate: Arc<Certificate>, journal: Journal) {
    loop {
        tokio::time::sleep(RENEWAL).await;
        match certificate.renew() {
            Ok(false) => {}
            Ok(true) => journal.write(Line::Renewed),
            Err(error) => journal.write(Line::Trouble(error.to_string())),
        }
    }
}

async fn bind(at: SocketAddr) -> Result<(TcpListener, SocketAddr), String> {
    let listener = TcpListener::bind(at)
        .await
        .map_err(|error| format!("The relay can't listen on {at}: {error}."))?;
    let address = listener
        .local_addr()
        .map_err(|error| format!("The relay can't tell its own address: {error}."))?;
    Ok((listener, address))
}

/// Resolves once somebody asks the relay to stop. It listens from the call on, not only from the first poll.
fn stop_asked() -> impl Future<Output = ()> {
    #[cfg(unix)]
    let terminate = {
        use tokio::signal::unix::{SignalKind, signal};
        signal(SignalKind::terminate())
    };
    async move {
        let interrupt = tokio::signal::ctrl_c();
        #[cfg(unix)]
        if let Ok(mut terminate) = terminate {
            tokio::select! { _ = interrupt => {}, _ = terminate.recv() => {} }
            return;
        }
        let _ = interrupt.await;
    }
}
