//! `open FILE` prints the text a file opens to, and on stderr what to know of it.
#![allow(
    clippy::disallowed_methods,
    clippy::disallowed_macros,
    reason = "this is a command line: it reads files and prints"
)]

fn main() {
    let path = std::env::args().nth(1).expect("a file");
    let bytes = std::fs::read(path).expect("a file that can be read");
    match emberloam_files::open_file(&bytes) {
        Ok(opened) => {
            print!("{}", opened.text);
            opened.notes.iter().for_each(|note| eprintln!("{note}"));
        }
        Err(refusal) => eprintln!("{refusal}"),
    }
}
