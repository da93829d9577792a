//! The one-file edition: the whole built page in one HTML file, which works
//! from a memory stick or a mail without any server.
//!
//! A page opened as a file may not fetch other files, so everything is in it:
//! the styles and scripts as they are, the modules packed and written in
//! base64. Its policy names the two by their hashes and lets nothing connect
//! to anywhere.

use std::fs;
use std::io::Write as _;
use std::path::{Path, PathBuf};

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use flate2::Compression;
use flate2::write::GzEncoder;
use sha2::{Digest, Sha256};

use crate::{files, licences};

/// Where the file is put.
pub(crate) fn place(project: &Path) -> PathBuf {
    project.join("target/emberloam.html")
}

/// Packs the page in `dist` into one file.
///
/// # Errors
/// When a file of the page is missing, or is written otherwise than expected.
pub(crate) fn pack(dist: &Path, to: &Path) -> Result<(), String> {
    let page = html(dist)?;
    files::write(to, page.as_bytes())?;
    println!("{} ({} kB): open it in any browser", to.display(), page.len() / 1000);
    Ok(())
}

/// The page as one text.
fn html(dist: &Path) -> Result<String, String> {
    let script = script(dist)?;
    let screen =
        ["tokens", "base", "parts"].map(|name| text(dist, &format!("css/{name}.css"))).into_iter();
    let screen = screen.collect::<Result<Vec<_>, _>>()?.concat();
    let print = text(dist, "css/print.css")?;
    let policy = format!(
        "default-src 'none'; script-src {} 'wasm-unsafe-eval' blob:; worker-src blob:; \
         connect-src 'none'; img-src data: blob:; style-src {} {}; base-uri 'none'; \
         form-action 'none'; require-trusted-types-for 'script'; trusted-types default",
        hash(&script),
        hash(&screen),
        hash(&print)
    );
    let mark = STANDARD.encode(bytes(dist, "icons/mark.svg")?);
    let index = text(dist, "index.html")?;
    // What the page links to is put where the links were.
    let mut page = String::new();
    let mut policy_set = false;
    for line in index.lines() {
        let said = line.trim();
        if said.starts_with("content=\"default-src") {
            page.push_str(&format!("content=\"{policy}\"\n"));
            policy_set = true;
        } else if said.starts_with("<link rel=\"icon\"") {
            page.push_str(&format!(
                "<link rel=\"icon\" href=\"data:image/svg+xml;base64,{mark}\" />\n"
            ));
        } else if said == "</head>" {
            page.push_str(&format!("<style>{screen}</style>\n"));
            page.push_str(&format!("<style media=\"print\">{print}</style>\n</head>\n"));
        } else if said == "</body>" {
            for name in fetched(dist)? {
                let packed = STANDARD.encode(gzip(&bytes(dist, &name)?)?);
                let id = name.rsplit('/').next().unwrap_or(&name);
                page.push_str(&format!(
                    "<script type=\"text/plain\" id=\"{id}\">{packed}</script>\n"
                ));
            }
            page.push_str(&format!("<script type=\"module\">{script}</script>\n</body>\n"));
        } else if !said.starts_with("<link") && !said.starts_with("<script") {
            page.push_str(line);
            page.push('\n');
        }
    }
    if policy_set { Ok(page) } else { Err("index.html has no policy line.".to_owned()) }
}

/// What the page fetches on its way: its modules, the words of each language, the licences.
fn fetched(dist: &Path) -> Result<Vec<String>, String> {
    let names = files::all(dist)?.into_iter().map(|(name, _)| name);
    let is_fetched = |name: &String| {
        name.starts_with("words/") || name.ends_with(".wasm") || name == licences::FILE
    };
    Ok(names.filter(is_fetched).collect())
}

/// All scripts of the page as one module.
fn script(dist: &Path) -> Result<String, String> {
    let app = text(dist, "app.js")?;
    let later = text(dist, "later.js")?;
    let boot = text(dist, "boot.js")?;
    let opener = text(dist, "opener.js")?;
    let worker = text(dist, "open-worker.js")?;
    // The script of the later pieces and the first piece's import each other.
    let later = once(&later, "import { initSync } from \"./app.js\";", "")?;
    let named = later.split("export const ").skip(1);
    let names: Vec<&str> = named.filter_map(|rest| rest.split_whitespace().next()).collect();
    let later = format!(
        "const laterPieces = (() => {{\n{}\nreturn {{ {} }};\n}})();\n",
        later.replace("export const ", "const "),
        names.join(", ")
    );
    let imported = app.lines().map(|line| match line.strip_suffix(" from \"./later.js\"") {
        Some(import) => import.replace("import * as ", "const ") + " = laterPieces;\n",
        None => format!("{line}\n"),
    });
    let app = later + &imported.collect::<String>();
    let app = once(&app, "export { initSync, __wbg_init as default };", "")?.replace("export ", "");
    if app.contains("\nimport ") {
        return Err("app.js imports more than the later piece; one file can't hold it yet.".into());
    }
    let boot = once(&boot, "import(\"./app.js\")", "{ default: __wbg_init }")?;
    let opener =
        once(&opener, "export { initSync, __wbg_init as default };", "")?.replace("export ", "");
    let worker = once(&worker, "import start, { open_file } from \"./opener.js\";", "")?;
    let worker =
        once(&worker, "await start();", "await __wbg_init({ module_or_path: unpacked(OPENER) });")?;
    let files = text(dist, "files.js")?;
    // A page from the disk may not start a worker that is a module.
    let files = once(
        &files,
        "new Worker(\"open-worker.js\", { type: \"module\" })",
        "new Worker(openWorker())",
    )?;
    let look = text(dist, "look.js")?;
    let language = text(dist, "language.js")?;
    let opener = once(&opener, "new URL('opener_bg.wasm', import.meta.url)", "OPENER")?;
    let worker = STANDARD.encode(format!("{UNPACK}\n{opener}\n{worker}"));
    let joined = format!(
        "{UNPACK}\nconst WORKER = \"{worker}\";\n{HAND_OUT}\n{app}\n{language}\n{{\n{files}\n}}\n{{\n{look}\n}}\n{boot}\n"
    );
    // A closing tag within would end the script.
    if joined.contains("</script") {
        return Err("A script of the page holds a closing tag; one file can't hold it.".into());
    }
    Ok(joined)
}

/// Unpacks a module, in the page and in the worker.
const UNPACK: &str = r#"
const bytesOf = (base64) => Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0));
const unpacked = (base64) => {
  const packed = new Blob([bytesOf(base64)]).stream();
  return new Response(packed.pipeThrough(new DecompressionStream("gzip")), {
    headers: { "content-type": "application/wasm" },
  });
};
"#;

/// Gives the packed modules to what would fetch them.
const HAND_OUT: &str = r#"
const held = (name) => document.getElementById(name)?.textContent;
window.fetch = async (what) => unpacked(held(String(what.url ?? what).split("/").pop()));
const openWorker = () => {
  const code = [`const OPENER = "${held("opener_bg.wasm")}";\n`, bytesOf(WORKER)];
  return URL.createObjectURL(new Blob(code, { type: "text/javascript" }));
};
"#;

/// Replaces what must be there exactly once.
fn once(text: &str, from: &str, to: &str) -> Result<String, String> {
    match text.matches(from).count() {
        1 => Ok(text.replacen(from, to, 1)),
        found => Err(format!("Expected once, found {found} times in a script: {from}")),
    }
}

/// How a policy names an inline part.
fn hash(content: &str) -> String {
    format!("'sha256-{}'", STANDARD.encode(Sha256::digest(content)))
}

fn gzip(content: &[u8]) -> Result<Vec<u8>, String> {
    let mut packer = GzEncoder::new(Vec::new(), Compression::best());
    packer
        .write_all(content)
        .and_then(|()| packer.finish())
        .map_err(|why| format!("A module can't be packed: {why}"))
}

fn bytes(dist: &Path, name: &str) -> Result<Vec<u8>, String> {
    fs::read(dist.join(name)).map_err(|why| {
        format!("{name} of the page can't be read ({why}). Run `cargo run -- build`.")
    })
}

fn text(dist: &Path, name: &str) -> Result<String, String> {
    String::from_utf8(bytes(dist, name)?).map_err(|_| format!("{name} is no text."))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_part_that_changed_is_refused_and_not_left_out() {
        assert_eq!(once("a b c", "b", "x"), Ok("a x c".to_owned()));
        assert!(once("a b c", "d", "x").unwrap_err().contains("found 0"));
        assert!(once("b b", "b", "x").unwrap_err().contains("found 2"));
    }

    /// Source: FIPS 180-4, SHA-256 of the empty message (from memory)
    #[test]
    fn an_inline_part_is_named_by_its_hash() {
        assert_eq!(hash(""), "'sha256-47DEQpj8HBSa+/TImW+5JCeuQeRkm5NMpJWZG3hSuFU='");
    }
}
