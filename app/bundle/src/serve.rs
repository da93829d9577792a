//! Serves a built page on this machine only.

use std::collections::HashMap;
use std::fs;
use std::io::{self, BufRead as _, BufReader, Read as _, Write as _};
use std::net::{Shutdown, TcpListener, TcpStream};
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::thread;
use std::time::Duration;

/// The same policy as in `index.html`, and no frames around the page, which only a header can say.
const POLICY: &str = "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'; \
    connect-src 'self'; img-src 'self' data: blob:; style-src 'self'; object-src 'none'; \
    base-uri 'none'; form-action 'none'; require-trusted-types-for 'script'; \
    trusted-types default; frame-ancestors 'none'";

const FIRST_PORT: u16 = 8787;
const LAST_PORT: u16 = 8886;

/// A request's head is longer only by mistake.
const LONGEST_HEAD: u64 = 64 * 1024;
/// Browsers open connections ahead of need; one that stays silent is dropped.
const PATIENCE: Duration = Duration::from_secs(30);

/// The files of a folder as a host stores them, packed once.
type Packed = HashMap<PathBuf, Vec<u8>>;

/// Serves `dist` until the program is stopped; `packed` by brotli, whoever asks.
pub(crate) fn serve(dist: &Path, port: Option<u16>, packed: bool) -> Result<(), String> {
    let dist: Arc<Path> = dist
        .canonicalize()
        .ok()
        .filter(|dist| dist.join("index.html").is_file())
        .ok_or(format!("No built page in {}. Run `cargo run -- build`.", dist.display()))?
        .into();
    let listener = listen(port)?;
    let address = listener.local_addr().map_err(|why| why.to_string())?;
    let held = Arc::new(if packed { pack(&dist)? } else { Packed::new() });
    println!("Emberloam is at http://{address}/ (stop it with Ctrl+C)");
    for caller in listener.incoming().flatten() {
        let (dist, held) = (Arc::clone(&dist), Arc::clone(&held));
        // A thread for each connection: a browser opens several, and some stay silent.
        thread::spawn(move || {
            // A caller who has gone is no concern of the next.
            let _ = attend(&caller, &dist, &held);
        });
    }
    Ok(())
}

fn pack(dist: &Path) -> Result<Packed, String> {
    let packed = |(name, content): (String, Vec<u8>)| {
        Ok((dist.join(name), crate::files::packed(&content, 9)?))
    };
    crate::files::all(dist)?.into_iter().map(packed).collect()
}

fn listen(port: Option<u16>) -> Result<TcpListener, String> {
    if let Some(port) = port {
        return TcpListener::bind(("127.0.0.1", port))
            .map_err(|why| format!("Port {port} can't be used: {why}"));
    }
    (FIRST_PORT..=LAST_PORT)
        .find_map(|port| TcpListener::bind(("127.0.0.1", port)).ok())
        .ok_or(format!("No free port from {FIRST_PORT} to {LAST_PORT}. Give one with --port."))
}

/// Reads one request (RFC 9112), answers it and closes the connection.
fn attend(mut caller: &TcpStream, dist: &Path, held: &Packed) -> io::Result<()> {
    caller.set_read_timeout(Some(PATIENCE))?;
    let mut head = BufReader::new(caller.take(LONGEST_HEAD)).lines();
    let Some(request) = head.next().transpose()? else { return Ok(()) };
    // Read to its end: closing over unread bytes would cut off the answer.
    for line in head {
        if line?.is_empty() {
            break;
        }
    }
    caller.write_all(&answer(&request, dist, held))?;
    caller.shutdown(Shutdown::Write)
}

/// The whole answer to a request line such as `GET /boot.js HTTP/1.1`.
fn answer(request: &str, dist: &Path, held: &Packed) -> Vec<u8> {
    let mut words = request.split(' ');
    let (method, url) = (words.next().unwrap_or_default(), words.next().unwrap_or_default());
    let content = |path: &PathBuf| held.get(path).cloned().or_else(|| fs::read(path).ok());
    let found = find(dist, url).and_then(|path| Some((content(&path)?, kind(&path))));
    let encoding = if held.is_empty() { "" } else { "Content-Encoding: br\r\n" };
    let encoding = if found.is_some() { encoding } else { "" };
    const PLAIN: &str = "text/plain; charset=utf-8";
    let (status, body, kind) = match (method, found) {
        ("GET" | "HEAD", Some((body, kind))) => ("200 OK", body, kind),
        ("GET" | "HEAD", None) => ("404 Not Found", b"There is no such file.\n".to_vec(), PLAIN),
        _ => ("405 Method Not Allowed", b"Files can only be read.\n".to_vec(), PLAIN),
    };
    let mut whole = format!(
        "HTTP/1.1 {status}\r\n\
         Content-Type: {kind}\r\n\
         {encoding}Content-Length: {}\r\n\
         Content-Security-Policy: {POLICY}\r\n\
         X-Content-Type-Options: nosniff\r\n\
         Referrer-Policy: no-referrer\r\n\
         Cache-Control: no-cache\r\n\
         Connection: close\r\n\r\n",
        body.len()
    )
    .into_bytes();
    if method != "HEAD" {
        whole.extend(body);
    }
    whole
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
    fn an_answer_has_its_head_and_its_body() {
        let project = crate::files::project();
        let public = project.join("public").canonicalize().unwrap();
        let asked = |request| String::from_utf8(answer(request, &public, &Packed::new())).unwrap();
        let page = asked("GET /boot.js HTTP/1.1");
        assert!(page.starts_with("HTTP/1.1 200 OK\r\nContent-Type: text/javascript"), "{page}");
        let (head, body) = page.split_once("\r\n\r\n").unwrap();
        assert!(head.contains(&format!("Content-Length: {}\r\n", body.len())), "{head}");
        assert!(head.contains(POLICY), "{head}");
        assert_eq!(asked("HEAD /boot.js HTTP/1.1"), format!("{head}\r\n\r\n"));
        assert!(asked("GET /none HTTP/1.1").starts_with("HTTP/1.1 404 "));
        assert!(asked("POST /boot.js HTTP/1.1").starts_with("HTTP/1.1 405 "));
        assert!(asked("").starts_with("HTTP/1.1 405 "));
    }

    #[test]
    fn the_header_and_the_page_state_one_policy() {
        let page = fs::read_to_string(crate::files::project().join("public/index.html")).unwrap();
        let shared = POLICY.strip_suffix("; frame-ancestors 'none'").unwrap();
        assert!(page.contains(shared), "index.html does not hold: {shared}");
    }
}
