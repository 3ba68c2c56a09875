//! `lightround-relay --app DIR --listen ADDRESS`

use lightround_relay::{App, Options, OptionsError, USAGE, router};
use std::process::ExitCode;
use std::time::Duration;
use tokio::net::TcpListener;

/// How long open connections may finish after the relay was asked to stop.
const GRACE: Duration = Duration::from_secs(5);

#[tokio::main]
async fn main() -> ExitCode {
    match Options::parse(std::env::args().skip(1)) {
        Ok(options) => match serve(options).await {
            Ok(()) => ExitCode::SUCCESS,
            Err(sentence) => fail(&sentence),
        },
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

async fn serve(options: Options) -> Result<(), String> {
    let app = App::load(&options.app).map_err(|error| error.to_string())?;
    let listener = TcpListener::bind(options.listen)
        .await
        .map_err(|error| format!("The relay can't listen on {}: {error}.", options.listen))?;
    let address = listener
        .local_addr()
        .map_err(|error| format!("The relay can't tell its own address: {error}."))?;
    println!("Lightround is at http://{address}/");

    let (asked, stopping) = tokio::sync::oneshot::channel();
    let serving = axum::serve(listener, router(app)).with_graceful_shutdown(async move {
        stop_asked().await;
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

async fn stop_asked() {
    let interrupt = tokio::signal::ctrl_c();
    #[cfg(unix)]
    {
        use tokio::signal::unix::{SignalKind, signal};
        if let Ok(mut terminate) = signal(SignalKind::terminate()) {
            tokio::select! { _ = interrupt => {}, _ = terminate.recv() => {} }
            return;
        }
    }
    let _ = interrupt.await;
}
