//! Lightround in the browser: opens the page and hands over to [`shell`].

mod edge;
mod pages;
mod session;
mod shell;
mod words;

fn main() {
    leptos::mount::mount_to_body(shell::Shell);
}
