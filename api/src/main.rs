//! The `lammas` program.

use std::process::ExitCode;

fn main() -> ExitCode {
    lammas::cli::main()
}
