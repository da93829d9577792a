//! What each call costs, natively.
use emberloam_engine::*;
use std::time::Instant;
fn main() {
    let text = std::fs::read("public/samples/surplus.txt").unwrap();
    let grid = report::open(&text).unwrap();
    let report = report::read(&grid).unwrap();
    let mut case = Case { report, ..Case::default() };
    case.bed.area_m2 = Some(10.0);
    case.biochar.state = Some(case::BagState::Uncharged);
    let day = |m, d| time::Date::from_calendar_date(2026, m, d).ok();
    case.season.today = day(time::Month::October, 1);
    case.season.first_frost = day(time::Month::November, 1);
    case.season.planting = time::Date::from_calendar_date(2027, time::Month::April, 20).ok();
    let time = |name: &str, f: &dyn Fn()| {
        for _ in 0..20 {
            f()
        }
        let t = Instant::now();
        for _ in 0..100 {
            f()
        }
        println!("{name:<14}{:8.3} ms", t.elapsed().as_secs_f64() * 10.0);
    };
    time("interpret", &|| {
        std::hint::black_box(interpret(&case));
    });
    time("needs", &|| {
        std::hint::black_box(needs::needs(&case));
    });
    time("traits", &|| {
        std::hint::black_box(traits::traits(&case));
    });
    time("courses", &|| {
        std::hint::black_box(situated(&case, |s| biochar::courses(s)));
    });
    time("sensitivity", &|| {
        std::hint::black_box(biochar::sensitivity(&case));
    });
    time("shift", &|| {
        std::hint::black_box(situated(&case, |s| biochar::exchange_shift(s)));
    });
    time("winter", &|| {
        std::hint::black_box(situated(&case, |s| season::winter_loss(s)));
    });
}
