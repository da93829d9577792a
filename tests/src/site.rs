//! The built page, served by the bundler as a program of its own, so that it can be stopped.

use std::fs;
use std::io::{BufRead as _, BufReader};
use std::net::TcpStream;
use std::path::{Path, PathBuf};
use std::process::{Child, Command, Stdio};

use crate::project;

/// A running server and the folder it serves.
pub struct Site {
    /// Its address, with a slash at the end.
    pub url: String,
    /// The folder it serves.
    pub dist: PathBuf,
    server: Child,
}

impl Site {
    /// Serves what `cargo run -- build` has made.
    pub fn start() -> Site {
        Site::serve(project().join("target/dist"))
    }

    /// Serves a copy of the built page, which a test may then change.
    pub fn start_copy(name: &str) -> Site {
        let copy = project().join("target/browser").join(format!("site-{name}"));
        let _ = fs::remove_dir_all(&copy);
        copy_folder(&project().join("target/dist"), &copy);
        Site::serve(copy)
    }

    /// Serves two copies of the built page: one at the top of the site, one in its folder `sub`.
    pub fn start_two(name: &str) -> Site {
        let site = Site::start_copy(name);
        copy_folder(&project().join("target/dist"), &site.dist.join("sub"));
        site
    }

    /// Serves a copy of the built page as the plainest of hosts does: with no headers of its own.
    pub fn start_plain(name: &str) -> Site {
        let copy = project().join("target/browser").join(format!("site-{name}"));
        let _ = fs::remove_dir_all(&copy);
        copy_folder(&project().join("target/dist"), &copy);
        let free = std::net::TcpListener::bind("127.0.0.1:0").and_then(|free| free.local_addr());
        let port = free.expect("a port is free").port();
        let server = Command::new("python3")
            .args(["-m", "http.server", "--bind", "127.0.0.1", &port.to_string(), "--directory"])
            .arg(&copy)
            .stdout(Stdio::null())
            .stderr(Stdio::null())
            .spawn()
            .unwrap_or_else(|why| panic!("python3 can't be started: {why}"));
        let site = Site { url: format!("http://127.0.0.1:{port}/"), dist: copy, server };
        let answers = || TcpStream::connect(("127.0.0.1", port)).is_ok();
        for _ in 0..100 {
            if answers() {
                break;
            }
            std::thread::sleep(std::time::Duration::from_millis(50));
        }
        assert!(answers(), "python3 serves nothing");
        site
    }

    /// Serves a built folder as a host does, packed.
    pub fn start_packed(dist: PathBuf) -> Site {
        Site::serve_with(dist, &["--packed"])
    }

    fn serve(dist: PathBuf) -> Site {
        Site::serve_with(dist, &[])
    }

    fn serve_with(dist: PathBuf, more: &[&str]) -> Site {
        let program = bundler();
        let mut server = Command::new(&program)
            .args(["serve", "--port", "0", "--dist"])
            .arg(&dist)
            .args(more)
            .stdout(Stdio::piped())
            .spawn()
            .unwrap_or_else(|why| panic!("{} can't be started: {why}", program.display()));
        let mut line = String::new();
        if let Some(output) = server.stdout.take() {
            let _ = BufReader::new(output).read_line(&mut line);
        }
        let url = line.split_whitespace().find(|word| word.starts_with("http://"));
        let Some(url) = url.map(str::to_owned) else {
            let _ = server.kill();
            let _ = server.wait();
            panic!("The server gave no address but {line:?}. Run `cargo run -- build` first.");
        };
        Site { url, dist, server }
    }

    /// Stops the server and makes sure that nothing answers any more.
    pub fn stop(&mut self) {
        let _ = self.server.kill();
        let _ = self.server.wait();
        let address = self.url.trim_start_matches("http://").trim_end_matches('/');
        assert!(TcpStream::connect(address).is_err(), "{address} still answers after the stop");
    }
}

impl Drop for Site {
    fn drop(&mut self) {
        let _ = self.server.kill();
        let _ = self.server.wait();
    }
}

/// The bundler, which cargo puts two folders above a test program and beside any other.
fn bundler() -> PathBuf {
    let here = std::env::current_exe().expect("this program knows where it is");
    here.ancestors()
        .skip(1)
        .take(2)
        .map(|folder| folder.join("emberloam-bundle"))
        // A program built for speed stands beside others that are not.
        .chain([project().join("target/debug/emberloam-bundle")])
        .find(|program| program.is_file())
        .expect("emberloam-bundle is not built: run `cargo run -- build` first")
}

fn copy_folder(from: &Path, to: &Path) {
    let entries = fs::read_dir(from).unwrap_or_else(|why| {
        panic!("{} can't be read ({why}): run `cargo run -- build` first", from.display())
    });
    fs::create_dir_all(to).expect("the copy's folder can be made");
    for entry in entries {
        let entry = entry.expect("the built page can be listed");
        let copy = to.join(entry.file_name());
        if entry.path().is_dir() {
            copy_folder(&entry.path(), &copy);
        } else {
            fs::copy(entry.path(), copy).expect("a file of the built page can be copied");
        }
    }
}
