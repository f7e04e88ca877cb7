//! Runs the library.

fn main() -> std::process::ExitCode {
    strikeline::cli::run(std::env::args_os(), &mut std::io::stdout(), &mut std::io::stderr()).into()
}
