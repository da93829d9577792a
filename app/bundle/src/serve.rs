//! Serves a built page on this machine only.

use std::fs;
use std::io::Write as _;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::thread;

use tiny_http::{Header, Method, Request, Response, Server};

/// The same policy as in `index.html`, and no frames around the page, which only a header can say.
const POLICY: &str = "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'; \
    connect-src 'self'; img-src 'self' data: blob:; style-src 'self'; object-src 'none'; \
    base-uri 'none'; form-action 'none'; frame-ancestors 'none'";

const FIRST_PORT: u16 = 8787;
const LAST_PORT: u16 = 8886;

/// Serves `dist` until the program is stopped.
pub(crate) fn serve(dist: &Path, port: Option<u16>) -> Result<(), String> {
    let dist = dist
        .canonicalize()
        .ok()
        .filter(|dist| dist.join("index.html").is_file())
        .ok_or(format!("No built page in {}. Run `cargo run -- build`.", dist.display()))?;
    let server = Arc::new(listen(port)?);
    let address = server.server_addr().to_ip().ok_or("The server has no address.")?;
    println!("Emberloam is at http://{address}/ (stop it with Ctrl+C)");
    // A program that waits for the address may read it through a pipe.
    std::io::stdout().flush().map_err(|why| why.to_string())?;

    // A browser opens several connections at once.
    let hands: Vec<_> = (0..4)
        .map(|_| {
            let (server, dist) = (Arc::clone(&server), dist.clone());
            thread::spawn(move || {
                while let Ok(request) = server.recv() {
                    answer(request, &dist);
                }
            })
        })
        .collect();
    for hand in hands {
        hand.join().map_err(|_| "The server stopped by a fault of its own.")?;
    }
    Ok(())
}

fn listen(port: Option<u16>) -> Result<Server, String> {
    if let Some(port) = port {
        return Server::http(("127.0.0.1", port))
            .map_err(|why| format!("Port {port} can't be used: {why}"));
    }
    (FIRST_PORT..=LAST_PORT)
        .find_map(|port| Server::http(("127.0.0.1", port)).ok())
        .ok_or(format!("No free port from {FIRST_PORT} to {LAST_PORT}. Give one with --port."))
}

fn answer(request: Request, dist: &Path) {
    let found = match request.method() {
        Method::Get | Method::Head => {
            find(dist, request.url()).and_then(|path| Some((fs::read(&path).ok()?, kind(&path))))
        }
        _ => None,
    };
    let (status, body, kind) = match found {
        Some((body, kind)) => (200, body, kind),
        None => (404, b"There is no such file.\n".to_vec(), "text/plain; charset=utf-8"),
    };
    let mut response = Response::from_data(body).with_status_code(status);
    for (name, value) in [
        ("Content-Type", kind),
        ("Content-Security-Policy", POLICY),
        ("X-Content-Type-Options", "nosniff"),
        ("Referrer-Policy", "no-referrer"),
        ("Cache-Control", "no-cache"),
    ] {
        if let Ok(header) = Header::from_bytes(name, value) {
            response.add_header(header);
        }
    }
    // The browser may have gone; the next request is not its concern.
    let _ = request.respond(response);
}

/// The file a request names, if it lies in `dist`, which must be canonical.
fn find(dist: &Path, url: &str) -> Option<PathBuf> {
    let path = url.split(['?', '#']).next()?.strip_prefix('/')?;
    let path = if path.is_empty() { "index.html" } else { path };
    // Resolved first, compared after: dots and links can't lead out of the folder.
    let file = dist.join(path).canonicalize().ok()?;
    (file.starts_with(dist) && file.is_file()).then_some(file)
}

fn kind(path: &Path) -> &'static str {
    match path.extension().and_then(|end| end.to_str()) {
        Some("html") => "text/html; charset=utf-8",
        Some("css") => "text/css; charset=utf-8",
        Some("js") => "text/javascript; charset=utf-8",
        Some("wasm") => "application/wasm",
        Some("webmanifest") => "application/manifest+json",
        Some("json") => "application/json",
        Some("svg") => "image/svg+xml",
        Some("png") => "image/png",
        Some("txt" | "csv" | "tsv") => "text/plain; charset=utf-8",
        _ => "application/octet-stream",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_files_of_the_page_are_found() {
        let above = std::env::temp_dir().join(format!("emberloam-serve-{}", std::process::id()));
        let dist = above.join("dist");
        crate::files::write(&dist.join("index.html"), b"page").unwrap();
        crate::files::write(&dist.join("css/base.css"), b"look").unwrap();
        crate::files::write(&above.join("secret.txt"), b"secret").unwrap();
        #[cfg(unix)]
        std::os::unix::fs::symlink(above.join("secret.txt"), dist.join("link.txt")).unwrap();
        let dist = dist.canonicalize().unwrap();

        let wanted = |url| find(&dist, url);
        assert_eq!(wanted("/"), Some(dist.join("index.html")));
        assert_eq!(wanted("/?from=home"), Some(dist.join("index.html")));
        assert_eq!(wanted("/css/base.css?x=1"), Some(dist.join("css/base.css")));
        for url in [
            "/../secret.txt",
            "/css/../../secret.txt",
            "//etc/passwd",
            "/link.txt",
            "/css",
            "/css/",
            "/nothing.html",
            "secret.txt",
            "/\0",
        ] {
            assert_eq!(wanted(url), None, "{url} was served");
        }
        fs::remove_dir_all(&above).unwrap();
    }

    #[test]
    fn the_header_and_the_page_state_one_policy() {
        let page = fs::read_to_string(crate::files::project().join("public/index.html")).unwrap();
        let shared = POLICY.strip_suffix("; frame-ancestors 'none'").unwrap();
        assert!(page.contains(shared), "index.html does not hold: {shared}");
    }
}
