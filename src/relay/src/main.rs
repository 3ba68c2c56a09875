//! `lightround-relay serve | invite | vaults | verify`

use lightround_relay::carry::{Carrying, Journal, Limits};
use lightround_relay::store::{self, Desk};
use lightround_relay::{App, Options, OptionsError, Task, USAGE, commands, router, verify};
use std::process::ExitCode;
use std::sync::Arc;
use std::time::Duration;
use sync::exchange::Quota;
use tokio::net::TcpListener;

/// How long open connections may finish after the relay was asked to stop.
const GRACE: Duration = Duration::from_secs(5);

fn main() -> ExitCode {
    match Options::parse(std::env::args().skip(1)) {
        Ok(options) => run(&options).unwrap_or_else(|sentence| fail(&sentence)),
        Err(OptionsError::HelpAsked) => {
            println!("{USAGE}");
            ExitCode::SUCCESS
        }
        Err(error) => fail(&format!("{error}\n\n{USAGE}")),
    }
}

fn fail(sentence: &str) -> ExitCode {
    eprintln!("{sentence}");
    ExitCode::FAILURE
}

fn run(options: &Options) -> Result<ExitCode, String> {
    // Opened before and closed after anything asynchronous: a database's connection may wait in both.
    let kept = options.data.as_deref().map(store::open).transpose();
    let kept = kept.map_err(|error| format!("What is kept can't be opened: {error}."))?;
    let Some(kept) = kept else {
        return start(options, None);
    };
    let said = |error: &dyn std::fmt::Display| format!("The relay can't do that: {error}.");
    match options.task {
        Task::Serve => return start(options, Some(&kept)),
        Task::Invite => {
            let code =
                commands::invite(kept.as_ref(), options.days).map_err(|error| said(&error))?;
            println!("{code}");
        }
        Task::Vaults => {
            println!(
                "{}",
                commands::vaults(kept.as_ref()).map_err(|error| said(&error))?
            );
        }
        Task::Verify => {
            let verified = verify(kept.as_ref()).map_err(|error| said(&error))?;
            println!("{verified}");
            if !verified.wrong.is_empty() {
                return Ok(ExitCode::FAILURE);
            }
        }
    }
    Ok(ExitCode::SUCCESS)
}

fn start(options: &Options, kept: Option<&Arc<dyn Desk>>) -> Result<ExitCode, String> {
    let limits = Limits {
        quota: Quota {
            bytes: options.room << 20,
        },
        ..Limits::default()
    };
    let carrying = kept.map(|kept| Carrying::new(Arc::clone(kept), limits, Journal::to_stderr()));
    let runtime = tokio::runtime::Runtime::new()
        .map_err(|error| format!("The relay can't start: {error}."))?;
    let served = runtime.block_on(serve(options, carrying));
    // A database that doesn't answer holds nobody up: what it was to do was not acknowledged.
    runtime.shutdown_timeout(GRACE);
    served.map(|()| ExitCode::SUCCESS)
}

async fn serve(options: &Options, carrying: Option<Carrying>) -> Result<(), String> {
    let app = App::load(&options.app).map_err(|error| error.to_string())?;
    let listener = TcpListener::bind(options.listen)
        .await
        .map_err(|error| format!("The relay can't listen on {}: {error}.", options.listen))?;
    let address = listener
        .local_addr()
        .map_err(|error| format!("The relay can't tell its own address: {error}."))?;
    // Listening for the wish to stop comes before the address: whoever reads that may already wish it.
    let stop_asked = stop_asked();
    println!("Lightround is at http://{address}/");

    let (asked, stopping) = tokio::sync::oneshot::channel();
    let serving = axum::serve(listener, router(app, carrying)).with_graceful_shutdown(async move {
        stop_asked.await;
        let _ = asked.send(());
    });
    let out_of_patience = async {
        match stopping.await {
            Ok(()) => tokio::time::sleep(GRACE).await,
            Err(_) => std::future::pending().await,
        }
    };
    tokio::select! {
        ended = async { serving.await } => ended.map_err(|error| format!("The relay stopped: {error}.")),
        () = out_of_patience => Ok(()),
    }
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
