//! The rests of a bed, and the water of a place that is only half known.

use emberloam_engine::case::{Crop, Season, Winter};
use emberloam_engine::details::{Windows, windows};
use emberloam_engine::quantity::{Band, Measures};
use emberloam_engine::season::{Timing, WetMonths, Window, longest, place, rests, wet_months};
use emberloam_engine::soil::Texture;
use emberloam_engine::{Case, report};
use time::Date;

use crate::close;
use crate::{day, surveyed};

/// An invented maritime climate, January first: rain, lowest, highest.
const RAIN: [f64; 12] = [90.0, 70.0, 65.0, 55.0, 55.0, 50.0, 50.0, 60.0, 70.0, 95.0, 100.0, 100.0];
const LOWEST: [f64; 12] = [2.0, 2.0, 3.0, 5.0, 8.0, 11.0, 13.0, 13.0, 11.0, 8.0, 5.0, 3.0];
const HIGHEST: [f64; 12] = [8.0, 8.0, 11.0, 14.0, 17.0, 20.0, 22.0, 22.0, 19.0, 15.0, 11.0, 8.0];

fn north() -> Season {
    Season {
        latitude: Some(51.0),
        rain: Some(RAIN),
        lowest_c: Some(LOWEST),
        highest_c: Some(HIGHEST),
        ..Season::default()
    }
}

fn loam(season: &Season) -> WetMonths {
    wet_months(season, Some(Texture::Loam), Some(2.5), Measures::Metric)
}

#[test]
fn more_rain_never_drains_less_and_bounds_keep_their_order() {
    let mut last = Band::exactly(0.0);
    for share in [0.0, 0.3, 0.6, 1.0, 1.5, 3.0] {
        for texture in [Some(Texture::Sand), Some(Texture::Clay), None] {
            for temperatures in [true, false] {
                let mut season = Season { rain: Some(RAIN.map(|mm| mm * share)), ..north() };
                if !temperatures {
                    (season.lowest_c, season.highest_c) = (None, None);
                }
                let found = wet_months(&season, texture, None, Measures::Us);
                for month in &found.months {
                    let b = month.drains;
                    assert!(0.0 <= b.low && b.low <= b.likely && b.likely <= b.high, "{b:?}");
                }
                assert_ne!(
                    found.grounds.assumed.iter().any(|a| a.contains("Nobody gave")),
                    temperatures
                );
            }
        }
        let total = loam(&Season { rain: Some(RAIN.map(|mm| mm * share)), ..north() }).total;
        assert!(total.low >= last.low && total.likely >= last.likely && total.high >= last.high);
        last = total;
    }
}

#[test]
fn without_rain_or_latitude_the_class_is_spread_over_six_months() {
    let by_class = loam(&Season { latitude: Some(-40.0), ..Season::default() });
    assert!(!by_class.from_rain);
    assert_eq!(by_class.months[0].number, Some(4));
    close(by_class.total.likely, 200.0, 1e-9);
    let nowhere = loam(&Season { rain: Some(RAIN), ..Season::default() });
    assert!(!nowhere.from_rain && nowhere.months[0].number.is_none());
    // The frost tells the half of the year as well.
    let frost = loam(&Season { first_frost: day(2026, 10, 25), ..Season::default() });
    assert_eq!(frost.months[0].number, Some(10));
}

#[test]
fn in_the_tropics_the_wet_season_is_found_by_its_rain() {
    let rain = [5.0, 5.0, 10.0, 40.0, 160.0, 240.0, 260.0, 250.0, 220.0, 150.0, 40.0, 10.0];
    let season = Season { latitude: Some(8.0), rain: Some(rain), ..Season::default() };
    let found = loam(&season);
    assert_eq!(
        found.months.iter().filter_map(|m| m.number).collect::<Vec<_>>(),
        [5, 6, 7, 8, 9, 10]
    );
    assert!(found.total.likely > 300.0);
    let place = place(&season, Measures::Metric).expect("a latitude");
    assert_eq!(place.winter, Some(Winter::None));
    assert!(place.frosts.is_empty() && place.text.contains("wet and dry"), "{}", place.text);
}

#[test]
fn the_guess_of_frost_is_offered_and_never_taken_for_the_persons_own() {
    let mut case = Case::default();
    case.season.today = day(2026, 9, 20);
    case.season.latitude = Some(-43.5);
    let before = Timing::of(&Season { latitude: None, ..case.season.clone() });
    assert_eq!(Timing::of(&case.season), before);
    let found = place(&case.season, Measures::Metric).expect("a latitude");
    assert_eq!(found.winter, Some(Winter::Frost));
    assert!(found.text.contains("April to September") && found.text.contains("not used as yours"));
    let [last, first] = found.frosts.try_into().expect("two");
    assert!(last.from < last.to && last.reason.contains("October 2026"), "{}", last.reason);
    assert!(first.reason.contains("2027"), "{}", first.reason);
    assert!(!last.grounds.sources.is_empty() && last.grounds.assumed.len() == 2);
    for wrong in [123.0, -91.0, f64::NAN] {
        case.season.latitude = Some(wrong);
        let told = place(&case.season, Measures::Metric).expect("it was given").text;
        assert!(told.contains("between 90 north and 90 south"), "{told}");
    }
    case.season = Season { latitude: Some(50.0), rain: Some([-1.0; 12]), ..Season::default() };
    case.season.lowest_c = Some([9.0; 12]);
    let told = place(&case.season, Measures::Metric).expect("it was given").text;
    assert!(told.contains("rain of a month") && told.contains("Give both"), "{told}");
    case.season.highest_c = Some([3.0; 12]);
    let told = place(&case.season, Measures::Metric).expect("it was given").text;
    assert!(told.contains("must be below the highest"), "{told}");
}

fn crop(name: &str, planting: Option<Date>, harvest: Option<Date>) -> Crop {
    Crop { name: name.into(), planting, harvest }
}

/// Tomatoes stand, spinach follows in autumn, beans in early summer.
fn three_crops() -> Season {
    Season {
        today: day(2026, 7, 1),
        first_frost: day(2026, 10, 25),
        latitude: Some(48.0),
        crops: vec![
            crop("beans", day(2027, 5, 20), day(2027, 9, 1)),
            crop("tomatoes", day(2026, 5, 15), day(2026, 8, 10)),
            crop("spinach", day(2026, 8, 25), day(2026, 10, 10)),
        ],
        ..Season::default()
    }
}

#[test]
fn the_longest_rest_over_the_cool_season_is_for_uncharged_biochar() {
    let season = three_crops();
    let all = rests(&season);
    assert_eq!(all.len(), 3, "{all:?}");
    assert_eq!((all[0].from, all[0].days()), (day(2026, 8, 10).unwrap(), Some(15)));
    let best = longest(&season).expect("a rest");
    assert_eq!((best.after, best.from), (Some("spinach"), day(2026, 10, 10).unwrap()));
    let timing = Timing::of(&season);
    assert_eq!((timing.harvest, timing.planting), (day(2026, 10, 10), day(2027, 5, 20)));
    assert!(matches!(timing.window, Window::Open { to, .. } if to == day(2026, 10, 25)));
    // A longer rest in summer doesn't come before one over the winter.
    let mut summer = season.clone();
    summer.crops[0].harvest = day(2027, 6, 1);
    summer.crops.push(crop("leek", day(2028, 4, 1), day(2028, 9, 1)));
    assert_eq!(longest(&summer).map(|r| r.from), day(2026, 10, 10));
}

#[test]
fn single_dates_go_on_as_before_and_stand_beside_the_crops() {
    let plain = Season { crops: Vec::new(), planting: day(2027, 5, 1), ..three_crops() };
    assert_eq!(Timing::of(&plain).planting, day(2027, 5, 1));
    let both = Season { planting: day(2027, 3, 1), ..three_crops() };
    assert_eq!(Timing::of(&both).planting, day(2027, 3, 1));
    // A bed that is never free grows on.
    let full = Season { crops: vec![crop("asparagus", day(2020, 4, 1), None)], ..three_crops() };
    assert!(rests(&full).is_empty() && Timing::of(&full).growing);
    assert_eq!(Timing::of(&full).clear_from, None);
    // What was planted and has no harvest stands; with one, it ends there.
    let planted = Season { crops: Vec::new(), planting: day(2026, 5, 1), ..three_crops() };
    assert!(rests(&planted).is_empty());
    let ends = Season { harvest: day(2026, 9, 1), ..planted };
    assert_eq!(longest(&ends).map(|rest| rest.from), day(2026, 9, 1));
    let next = Season { planting: day(2027, 4, 1), ..ends.clone() };
    assert_eq!(longest(&next).and_then(|rest| rest.days()), Some(212));
    let of_the_next = Season { harvest: day(2027, 9, 1), ..next };
    assert_eq!(longest(&of_the_next).map(|rest| rest.from), of_the_next.today);
    // In a bed without a crop the rest begins today.
    let empty = Season { crops: vec![crop("peas", day(2027, 3, 1), None)], ..three_crops() };
    assert_eq!(Timing::of(&empty).clear_from, empty.today);
    assert!(!Timing::of(&empty).growing);
}

fn told(season: Season) -> Windows {
    let text = "pH 6.5\nNO3-N 50 ppm\nP (Mehlich-3) 150 ppm\nK (Mehlich-3) 300 ppm\n";
    let report = report::open(text.as_bytes()).and_then(|g| report::read(&g)).expect("it reads");
    let mut case = Case { report, season, ..Case::default() };
    case.bed.texture = Some(Texture::Loam);
    windows(&surveyed(&case))
}

#[test]
fn each_rest_says_what_it_allows_and_why() {
    let found = told(three_crops());
    let [short, long, open] = found.rests.try_into().expect("three rests");
    assert_eq!(short.what, "Between tomatoes and spinach");
    assert!(
        short.reason.contains("this is 15") && short.reason.contains("Charged"),
        "{}",
        short.reason
    );
    assert_eq!(long.what, "Between spinach and beans");
    assert!(long.reason.contains("longest clear time"), "{}", long.reason);
    assert!(!long.reason.contains("Provisional"), "{}", long.reason);
    assert_eq!(open.what, "After the harvest of beans");
    assert!(open.reason.contains("Nothing is planned"), "{}", open.reason);
    for rest in [&short, &long, &open] {
        assert!(!rest.grounds.sources.is_empty());
    }
    // With the rain known, it says from when on the soil is too wet to dig.
    let wet = told(Season {
        latitude: Some(51.0),
        ..Season { crops: three_crops().crops, today: day(2026, 7, 1), ..north() }
    });
    let long = &wet.rests[1];
    assert!(long.reason.contains("wet through by then"), "{}", long.reason);
    assert!(long.reason.contains("Provisional"), "{}", long.reason);
    assert!(long.grounds.assumed.iter().any(|a| a.contains("guessed")));
}

#[test]
fn conflicts_are_told_in_a_sentence() {
    let with = |crops: Vec<Crop>| told(Season { crops, ..three_crops() }).conflicts;
    assert!(with(three_crops().crops).is_empty());
    let one = |crops: Vec<Crop>| {
        let [only] = with(crops).try_into().expect("one conflict");
        only
    };
    let garlic = one(vec![crop("garlic", day(2026, 10, 15), day(2027, 7, 10))]);
    assert!(garlic.what.contains("garlic stays in the bed over the cool season"));
    assert!(garlic.reason.contains("before it is planted"));
    let turned = one(vec![crop("peas", day(2027, 7, 1), day(2027, 4, 1))]);
    assert!(turned.what.contains("harvest comes before"));
    let open = one(vec![crop("kale", day(2026, 8, 1), None)]);
    assert!(open.what.contains("no harvest date"));
    let bare = one(vec![crop(" ", None, None)]);
    assert!(bare.what.contains("without a name: no dates"));
    let overlap = one(vec![
        crop("beans", day(2026, 5, 1), day(2026, 9, 1)),
        crop("kale", day(2026, 8, 1), day(2026, 11, 1)),
    ]);
    assert!(overlap.what.contains("kale is planted before beans is off"), "{}", overlap.what);
    assert_eq!((overlap.from, overlap.to), (day(2026, 8, 1), day(2026, 9, 1)));
    let clash = told(Season {
        planting: day(2026, 9, 1),
        crops: vec![crop("beans", day(2026, 5, 1), day(2026, 10, 1))],
        ..three_crops()
    });
    assert!(clash.conflicts.iter().any(|c| c.what.contains("still stands at the next planting")));
    // In the tropics no crop stays over a winter.
    let tropics = told(Season {
        winter: Some(Winter::None),
        crops: vec![crop("cassava", day(2026, 10, 15), day(2027, 7, 10))],
        ..three_crops()
    });
    assert!(tropics.conflicts.is_empty());
}

#[test]
fn crops_with_any_dates_do_no_harm() {
    let dates =
        [None, day(2026, 1, 1), day(2026, 7, 1), day(2027, 1, 1), Some(Date::MIN), Some(Date::MAX)];
    for today in [day(2026, 7, 1), Some(Date::MIN), Some(Date::MAX), None] {
        for p1 in dates {
            for h1 in dates {
                for p2 in dates {
                    for first_frost in [None, Some(Date::MAX)] {
                        let season = Season {
                            today,
                            first_frost,
                            crops: vec![crop("a", p1, h1), crop("b", p2, None)],
                            ..north()
                        };
                        Timing::of(&season);
                        let all = rests(&season);
                        assert!(all.windows(2).all(|pair| pair[0].from < pair[1].from));
                        assert!(all.iter().all(|rest| rest.days().is_none_or(|days| days > 0)));
                    }
                }
            }
        }
        told(Season { today, crops: vec![crop("a", Some(Date::MIN), Some(Date::MAX))], ..north() });
        place(&Season { today, ..north() }, Measures::Us);
    }
}
