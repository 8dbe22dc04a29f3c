//! The `lammas` program.

use std::process::ExitCode;

/// An answer is many small texts: this one hands them out and takes them back quicker than the system's.
#[global_allocator]
static ALLOCATOR: mimalloc::MiMalloc = mimalloc::MiMalloc;

fn main() -> ExitCode {
    lammas::cli::main()
}
