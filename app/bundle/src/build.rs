//! From source to a folder that any web server can serve.

use std::fmt::Write as _;
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};

use sha2::{Digest, Sha256};
use wasm_bindgen_cli_support::Bindgen;

use crate::{files, glue, licences, split};

const TARGET: &str = "wasm32-unknown-unknown";
const WORKER: &str = "service-worker.js";
/// The hash of every file, as `sha256sum --check` reads them.
const HASHES: &str = "hashes.txt";
const OPENER: &str = "opener";

/// Compiles the app to WebAssembly, binds it, adds `public/` and the stamped
/// service worker, and leaves the result in `target/dist`.
pub(crate) fn build(project: &Path) -> Result<(), String> {
    let dist = &files::dist(project);
    add_target()?;
    compile(project, &["emberloam-app", "emberloam-opener"])?;
    clear(dist)?;
    let compiled = project.join("target").join(TARGET).join("release");
    bind(&split::split(&compiled.join("emberloam_app.wasm"), dist)?, dist, split::FIRST)?;
    let opener = split::whole(&compiled.join("emberloam_opener.wasm"), OPENER)?;
    bind(&opener, dist, OPENER)?;
    for (name, content) in files::all(&project.join("public"))? {
        files::write(&dist.join(&name), &without_remarks(&name, content))?;
    }
    files::write(&dist.join(licences::FILE), licences::text(project)?.as_bytes())?;
    let worker = stamp(dist)?;
    println!("Built into {}\nSHA-256 of {WORKER}, which vouches for all: {worker}", dist.display());
    Ok(())
}

/// Compiles the least page that the framework makes into `target/bare`: what ours is measured
/// beside. It is made in the same way.
pub(crate) fn bare(project: &Path) -> Result<(), String> {
    let dist = project.join("target/bare");
    add_target()?;
    compile(project, &["emberloam-bare"])?;
    clear(&dist)?;
    let compiled = project.join("target").join(TARGET).join("release");
    bind(&split::whole(&compiled.join("emberloam_bare.wasm"), "bare")?, &dist, "bare")?;
    let page = fs::read(project.join("tests/bare/index.html")).map_err(|why| why.to_string())?;
    files::write(&dist.join("index.html"), &page)?;
    files::write(&dist.join("begin.js"), b"import begin from \"./bare.js\";\nawait begin();\n")?;
    println!("Built into {}", dist.display());
    Ok(())
}

/// A script or a catalogue without the lines that only speak to who reads its
/// source: a page that is kept offline pays for every one.
fn without_remarks(name: &str, content: Vec<u8>) -> Vec<u8> {
    let is_remark: fn(&str) -> bool = match name.rsplit_once('.') {
        Some((_, "js")) => {
            |line| line.starts_with("//") || line.starts_with("/**") && line.ends_with("*/")
        }
        Some((_, "po")) => |line| line.is_empty() || line.starts_with('#'),
        _ => return content,
    };
    let text = String::from_utf8_lossy(&content);
    let kept = text.lines().filter(|line| !is_remark(line.trim()));
    kept.flat_map(|line| [line, "\n"]).collect::<String>().into_bytes()
}

/// Adds the WebAssembly target of Rust when it is missing.
fn add_target() -> Result<(), String> {
    let listed = Command::new("rustup").args(["target", "list", "--installed"]).output();
    // Without rustup the toolchain came another way; the compiler will say if the target lacks.
    let Ok(listed) = listed else { return Ok(()) };
    if String::from_utf8_lossy(&listed.stdout).lines().any(|line| line.trim() == TARGET) {
        return Ok(());
    }
    println!("Adding the {TARGET} target with rustup (once; needs the network)");
    run(Command::new("rustup").args(["target", "add", TARGET]), "rustup could not add the target")
}

fn compile(project: &Path, packages: &[&str]) -> Result<(), String> {
    println!("Compiling the page (the first time takes some minutes)");
    let cargo = std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
    run(
        Command::new(cargo)
            .current_dir(project)
            .env("CARGO_ENCODED_RUSTFLAGS", flags(project))
            .args(["build", "--locked", "--release"])
            .args(packages.iter().flat_map(|package| ["-p", package]))
            .args(["--target", TARGET])
            .arg("--target-dir")
            .arg(project.join("target")),
        "The page did not compile",
    )
}

/// How the page is compiled: the views without their long generic types, which
/// makes a smaller module; and without the folders of this machine, so that
/// the same source gives the same page anywhere.
fn flags(project: &Path) -> String {
    let remap = |from: &Path, to: &str| format!("--remap-path-prefix={}={to}", from.display());
    let mut flags = vec![
        "--cfg=erase_components".to_string(),
        // The records by which the splitter tells what belongs to which piece.
        "-Clink-args=--emit-relocs".to_string(),
        remap(project, "."),
    ];
    let home = std::env::var_os("CARGO_HOME").map(PathBuf::from);
    let home = home.or_else(|| Some(PathBuf::from(std::env::var_os("HOME")?).join(".cargo")));
    if let Some(home) = home {
        flags.push(remap(&home.join("registry/src"), "crates"));
    }
    // Cargo's own mark between flags: a folder may have blanks in its name.
    flags.join("\u{1f}")
}

/// Runs `command` with its output shown.
fn run(command: &mut Command, trouble: &str) -> Result<(), String> {
    match command.stdin(Stdio::null()).status() {
        Ok(status) if status.success() => Ok(()),
        Ok(status) => Err(format!("{trouble} ({status}). The lines above say why.")),
        Err(why) => Err(format!("{trouble}: {why}")),
    }
}

/// Removes the last build, so that none of its files is kept offline by mistake.
fn clear(dist: &Path) -> Result<(), String> {
    if !dist.exists() {
        return Ok(());
    }
    fs::remove_dir_all(dist).map_err(|why| format!("{} can't be removed: {why}", dist.display()))
}

/// Binds a module as `name`: the page, or what reads its files.
fn bind(module: &Path, dist: &Path, name: &str) -> Result<(), String> {
    let mut binder = Bindgen::new();
    binder
        .input_path(module)
        .out_name(name)
        // What the later pieces share with the first one is exported from it.
        .keep_lld_exports(true)
        .typescript(false)
        .remove_name_section(true)
        .remove_producers_section(true)
        // Kept, so that `init()` finds the module without being told where it is.
        .omit_default_module_path(false);
    binder
        .web(true)
        .and_then(|binder| binder.generate(dist))
        .map_err(|why| format!("{} can't be bound: {why:#}", module.display()))?;
    glue::shorten(dist, name)?;
    split::ordered(&dist.join(format!("{name}_bg.wasm")))
}

/// Writes the hash of every file beside them, as `sha256sum` does, and the three constants of the
/// service worker above its code. Returns the hash of the worker, which no file holds.
fn stamp(dist: &Path) -> Result<String, String> {
    let mut files = files::all(dist)?;
    let worker = files.iter().position(|(name, _)| name == WORKER);
    let worker = files.remove(worker.ok_or(format!("public/{WORKER} is missing"))?);
    let line = |(name, content): &(String, Vec<u8>)| format!("{}  {name}\n", sha256(content));
    let hashes: String = files.iter().map(line).collect();
    let sums = sha256(hashes.as_bytes());
    files::write(&dist.join(HASHES), hashes.as_bytes())?;
    files.push((HASHES.into(), hashes.into_bytes()));
    let kept: Vec<String> =
        files.iter().map(|(name, _)| name.clone()).filter(|name| is_kept(name)).collect();
    let code = String::from_utf8_lossy(&worker.1).into_owned();
    files.push(worker);
    // `{:?}` quotes a file name as JavaScript does.
    let stamped = format!(
        "const VERSION = {:?};\nconst ASSETS = {kept:?};\nconst SUMS = {sums:?};\n{code}",
        version(&files)
    );
    files::write(&dist.join(WORKER), stamped.as_bytes())?;
    Ok(sha256(stamped.as_bytes()))
}

fn sha256(content: &[u8]) -> String {
    in_hex(&Sha256::digest(content))
}

fn in_hex(bytes: &[u8]) -> String {
    bytes.iter().fold(String::new(), |mut text, byte| {
        let _ = write!(text, "{byte:02x}");
        text
    })
}

/// Whether every visitor keeps the file: a language, the trial and the licences are kept by who
/// chooses them.
pub fn is_kept(name: &str) -> bool {
    ![WORKER, "split_trial.wasm", licences::FILE].contains(&name) && !name.starts_with("words/")
}

/// Names a build by its content: the same files, the same name.
fn version(files: &[(String, Vec<u8>)]) -> String {
    let mut hash = Sha256::new();
    for (name, content) in files {
        // Lengths keep a name and its content from running into each other.
        hash.update((name.len() as u64).to_le_bytes());
        hash.update(name);
        hash.update((content.len() as u64).to_le_bytes());
        hash.update(content);
    }
    in_hex(&hash.finalize()[..8])
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_lines_that_are_nothing_but_a_remark_are_left_out() {
        let slim = |name, text: &str| {
            String::from_utf8(without_remarks(name, text.as_bytes().to_vec())).unwrap()
        };
        assert_eq!(slim("a.js", "// b\n  /** c */\nd(\"//e\"); // f\n"), "d(\"//e\"); // f\n");
        assert_eq!(slim("words/a.po", "# b\nmsgid \"# c\"\n\n"), "msgid \"# c\"\n");
        assert_eq!(slim("a.css", "/* b */\n"), "/* b */\n");
    }

    fn file(name: &str, content: &str) -> (String, Vec<u8>) {
        (name.to_owned(), content.as_bytes().to_vec())
    }

    #[test]
    fn any_changed_byte_gives_another_version() {
        let first = version(&[file("a.js", "one"), file("b.js", "two")]);
        assert_eq!(first.len(), 16);
        assert_eq!(first, version(&[file("a.js", "one"), file("b.js", "two")]));
        assert_ne!(first, version(&[file("a.js", "one"), file("b.js", "twO")]));
        assert_ne!(first, version(&[file("a.js", "one"), file("c.js", "two")]));
        assert_ne!(first, version(&[file("a.js", "onetwo"), file("b.js", "")]));
    }

    /// Source: FIPS 180-4, SHA-256 of the empty message (from memory)
    #[test]
    fn version_is_the_head_of_sha_256() {
        assert_eq!(version(&[]), "e3b0c44298fc1c14");
    }

    #[test]
    fn the_worker_lists_every_file_but_itself() {
        let dist = std::env::temp_dir().join(format!("emberloam-stamp-{}", std::process::id()));
        for (name, content) in
            [("index.html", "x"), ("css/base.css", "y"), ("words/es.po", ""), (WORKER, "code();")]
        {
            files::write(&dist.join(name), content.as_bytes()).unwrap();
        }
        stamp(&dist).unwrap();
        let worker = fs::read_to_string(dist.join(WORKER)).unwrap();
        let hashes = fs::read_to_string(dist.join(HASHES)).unwrap();
        fs::remove_dir_all(&dist).unwrap();
        assert!(
            worker.contains(r#"const ASSETS = ["css/base.css", "index.html", "hashes.txt"];"#),
            "{worker}"
        );
        assert!(worker.contains(&format!("const SUMS = {:?};", sha256(hashes.as_bytes()))));
        let lines: Vec<&str> = hashes.lines().collect();
        assert_eq!(lines[1], format!("{}  index.html", sha256(b"x")));
        assert_eq!(lines.len(), 3, "{hashes}");
        assert!(worker.ends_with("code();"), "{worker}");
    }
}
