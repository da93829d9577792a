//! Makes statics of the facts in `engine/facts`, and refuses a row that is wrong,
//! naming its file and line.
#![allow(
    dead_code,
    unused_imports,
    missing_docs,
    clippy::disallowed_methods,
    clippy::disallowed_macros,
    reason = "a build script reads files and prints; it takes what it needs of the engine's own modules"
)]

#[path = "src/named.rs"]
mod named;

#[path = "src/quantity"]
mod quantity {
    mod unit;
    pub use unit::Unit;
}

#[path = "src/soil"]
mod soil {
    mod group;
    mod level;
    mod method;
    mod plants;
    mod property;
    mod texture;
    pub use group::SoilGroup;
    pub use level::Level;
    pub use method::{Method, MethodKind};
    pub use plants::PlantGroup;
    pub use property::Property;
    pub use texture::Texture;
}

#[path = "src/sources"]
mod sources {
    mod grade;
    pub use grade::Grade;
}

#[path = "src/facts/mod.rs"]
mod facts;

#[path = "build/notes.rs"]
mod notes;
#[path = "build/rates.rs"]
mod rates;
#[path = "build/shared.rs"]
mod shared;

#[path = "build/regional_lime.rs"]
mod regional_lime;

#[path = "build/statics.rs"]
mod statics;
#[path = "build/tables.rs"]
mod tables;

use std::path::Path;

use facts::{Row, Table, Wrong};

fn main() {
    println!("cargo::rerun-if-changed=facts");
    println!("cargo::rerun-if-changed=build");
    println!("cargo::rerun-if-changed=src/facts");
    let out = std::env::var("OUT_DIR").expect("cargo says where to write");
    match statics::all() {
        Ok(files) => {
            for (name, code) in files {
                std::fs::write(Path::new(&out).join(name), code).expect("a place to write");
            }
        }
        Err(wrong) => {
            for why in &wrong {
                println!("cargo::error=facts/{why}");
            }
            println!("cargo::error={} facts are wrong; nothing was built", wrong.len());
            std::process::exit(1);
        }
    }
}

/// The table in a file of `facts`.
fn table(file: &str) -> Result<Table, Vec<Wrong>> {
    let text = std::fs::read_to_string(Path::new("facts").join(file))
        .map_err(|why| vec![Wrong { file: file.into(), line: 1, what: why.to_string() }])?;
    Ok(Table::of(file, facts::rows_of(&text)))
}
