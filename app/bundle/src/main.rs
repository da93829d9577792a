//! The one native program: builds the page, binds it, stamps the service
//! worker, packs it into one file, and serves the result on this machine.

mod build;
mod files;
mod glue;
mod licences;
mod one_file;
mod order;
mod serve;
mod split;
mod stops;
mod weigh;

use std::path::PathBuf;
use std::process::ExitCode;

const HELP: &str = "\
cargo run                    build the page and serve it on this machine
cargo run -- build           only build it, into target/dist
cargo run -- serve           only serve what is in target/dist
cargo run -- one-file        build it, and write all of it into target/emberloam.html
cargo run -- bare            build the least page of the framework, into target/bare, to measure ours beside it
cargo run -- sizes           weigh what is in target/dist against the budget

  --port N     serve on this port (default: 8787, or the next free one; 0: any free one)
  --dist DIR   serve or weigh this folder in place of target/dist
  --packed     serve as a host does, packed by brotli
";

/// What the person asked for.
#[derive(Debug, PartialEq)]
struct Asked {
    task: Task,
    port: Option<u16>,
    dist: Option<PathBuf>,
    packed: bool,
}

#[derive(Clone, Copy, Debug, PartialEq)]
enum Task {
    BuildAndServe,
    Build,
    Serve,
    OneFile,
    Sizes,
    Bare,
    Help,
}

fn read_arguments(mut given: impl Iterator<Item = String>) -> Result<Asked, String> {
    let mut asked = Asked { task: Task::BuildAndServe, port: None, dist: None, packed: false };
    while let Some(word) = given.next() {
        let mut value = || given.next().ok_or(format!("{word} needs a value after it."));
        match word.as_str() {
            "build" => asked.task = Task::Build,
            "serve" => asked.task = Task::Serve,
            "one-file" => asked.task = Task::OneFile,
            "sizes" => asked.task = Task::Sizes,
            "bare" => asked.task = Task::Bare,
            "--packed" => asked.packed = true,
            "help" | "--help" | "-h" => asked.task = Task::Help,
            "--port" => {
                let port = value()?;
                asked.port = Some(
                    port.parse()
                        .map_err(|_| format!("{port} is no port: give a number up to 65535."))?,
                );
            }
            "--dist" => asked.dist = Some(PathBuf::from(value()?)),
            _ => return Err(format!("I don't know {word}.")),
        }
    }
    if asked.dist.is_some()
        && matches!(asked.task, Task::BuildAndServe | Task::Build | Task::OneFile | Task::Bare)
    {
        return Err("--dist goes with serve or sizes: a build always lands in target/dist.".into());
    }
    Ok(asked)
}

fn run(asked: &Asked) -> Result<(), String> {
    let project = files::project();
    let dist = asked.dist.clone().unwrap_or_else(|| files::dist(&project));
    match asked.task {
        Task::Help => print!("{HELP}"),
        Task::Build => build::build(&project)?,
        Task::OneFile => {
            build::build(&project)?;
            one_file::pack(&dist, &one_file::place(&project))?;
        }
        Task::Sizes => weigh::weigh(&dist)?,
        Task::Bare => build::bare(&project)?,
        Task::Serve => serve::serve(&dist, asked.port, asked.packed)?,
        Task::BuildAndServe => {
            build::build(&project)?;
            serve::serve(&dist, asked.port, asked.packed)?;
        }
    }
    Ok(())
}

fn main() -> ExitCode {
    let asked = match read_arguments(std::env::args().skip(1)) {
        Ok(asked) => asked,
        Err(trouble) => {
            eprintln!("{trouble}\n\n{HELP}");
            return ExitCode::from(2);
        }
    };
    match run(&asked) {
        Ok(()) => ExitCode::SUCCESS,
        Err(trouble) => {
            eprintln!("{trouble}");
            ExitCode::FAILURE
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn asked(line: &str) -> Result<Asked, String> {
        read_arguments(line.split_whitespace().map(str::to_owned))
    }

    #[test]
    fn nothing_asked_builds_and_serves() {
        let wanted = Asked { task: Task::BuildAndServe, port: None, dist: None, packed: false };
        assert_eq!(asked(""), Ok(wanted));
    }

    #[test]
    fn port_and_folder_are_read() {
        let wanted =
            Asked { task: Task::Serve, port: Some(9000), dist: Some("out".into()), packed: true };
        assert_eq!(asked("serve --port 9000 --dist out --packed"), Ok(wanted));
    }

    #[test]
    fn what_is_not_known_is_named() {
        assert!(asked("bild").unwrap_err().contains("bild"));
        assert!(asked("build --dist out").unwrap_err().contains("--dist"));
        assert!(asked("--port").unwrap_err().contains("--port"));
        assert!(asked("--port 70000").unwrap_err().contains("70000"));
    }
}
