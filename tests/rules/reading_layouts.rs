use crate::reading_traps::report;
#[test]
fn zz_dump() {
    let all = std::fs::read_to_string("/tmp/cases-shapes.txt").unwrap();
    for part in all.split("\n=====\n") {
        println!("################\n{part}\n----");
        let Ok(Ok(r)) = emberloam_engine::report::open(part.as_bytes())
            .map(|g| emberloam_engine::report::read(&g))
        else {
            println!("TROUBLE");
            continue;
        };
        let _ = report;
        for s in &r.samples {
            println!("* {:?} depth {:?}", s.name, s.depth_cm);
            for x in &s.readings {
                println!(
                    "    {} {} {:?} | {} | m={:?} r={:?} {:?} notes {:?}",
                    x.property.name(),
                    x.original,
                    x.amount.map(|a| a.number()),
                    x.unit.map_or("?", |u| u.symbol()),
                    x.method.as_ref().map(|m| m.value.label()),
                    x.rating,
                    x.pairing,
                    x.notes
                );
            }
            for u in &s.unread {
                println!("    UNREAD {}: {}", u.text, u.reason);
            }
        }
        for u in &r.unread {
            println!("  unread {}: {}", u.text, u.reason);
        }
    }
}
