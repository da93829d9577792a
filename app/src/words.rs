//! Every word the page says. What the engine concludes it says itself.

pub mod keeping;
pub mod trial;

use emberloam_engine::case::{BagState, BedKind, ChargeSource, Feedstock, WetSeason, Winter};
use emberloam_engine::details::standards::Verdict;
use emberloam_engine::plan::{JobKind, Path};
use emberloam_engine::quantity::Unit;
use emberloam_engine::question::QuestionId;
use emberloam_engine::soil::Property;

pub const NAME: &str = "Emberloam";
pub const MEASURES: &str = "Measures";
pub const METRIC: &str = "Metric";
pub const US: &str = "US";

pub const YOUR_BED: &str = "Your bed";
pub const STILL_COMING: &str =
    "This part is still being fetched. It comes as soon as the connection allows.";
pub const PRINT: &str = "Print one page";
pub const PRINT_WHOLE: &str = "Print the whole plan";
pub const PRINT_ALL: &str = "Print every bed";
pub const SAVE_AS_FILES: &str = "Save as files";
pub const CANCEL: &str = "Cancel";
pub const READING_REPORT: &str = "Reading the report…";
pub const SAVING_READINGS: &str = "Writing the readings of all samples…";
pub const SAVED_READINGS: &str = "The readings are saved.";
pub const STOPPED: &str = "Stopped. Everything is as it was.";
pub const SAVE_REPORT: &str = "Save report and answers";
pub const SAVE_TABLE: &str = "Save readings as a table (CSV)";
pub const SAVE_EXCHANGE: &str = "Save readings for other programs (Modus)";
pub const SAVE_CALENDAR: &str = "Save the dates for a calendar";
pub const DROP_HERE: &str = "Drop the file to open it";
pub const ROOM_SEASON: &str = "season";
pub const ROOM_NEEDS: &str = "needs of the bed";
pub const THE_PATH: &str = "the choice of path";
pub const CAUTIONS: &str = "cautions";
pub const REGISTER: &str = "Every publication this program knows";
pub const REGISTER_INTRO: &str = "Each with what rests on it in some answer. The words in brackets say how well it was read for its ranges; elsewhere they stand beside each number.";
pub const WINTER_LOSS: &str = "What the wet season takes of the nitrate";
pub const WET_SEASON: &str = "Rain that drains through in the cool or wet season";
pub const TRAITS: &str = "What kind of soil this is";
pub const NEEDS: &str = "What the bed needs beside biochar";
pub const NEEDS_INTRO: &str = "For one year, from this soil test. Local advice comes first.";
pub const OTHERS: &str = "Other publications for the same soil";
pub const FEEDS: &str = "What you have to lime and feed with";
pub const LIME_PERCENT: &str = "Lime: calcium carbonate equivalent (CCE)";
pub const TARGET_PH: &str = "The pH you want, if not the usual one";
pub const BAG_N: &str = "Fertiliser bag: first number, nitrogen (N)";
pub const BAG_P: &str = "second number, phosphate (P₂O₅)";
pub const BAG_K: &str = "third number, potash (K₂O)";
pub const COMPOST_LITRES: &str = "Compost for this bed this year";
pub const LATER_MISSING: &str =
    "A part of the page could not be loaded. Go online and try again; nothing is lost.";
pub const SAVED_DAMAGED: &str =
    "This saved report is damaged and can't be read. Open the laboratory's own file.";
pub const ERASE: &str = "Clear this report";

pub const ERASED: &str = "What was here before is removed from this device.";
pub const LICENCES: &str = "Licences of what this page is made of";
pub const LICENCES_MISSING: &str = "They could not be fetched. Go online and open this again.";
pub const REPLACED: &str = "The report that was here before is kept.";
pub const FOUND: &str = "A report from an earlier visit is kept.";
pub const TAKE_BACK: &str = "Undo";
pub const FORGET: &str = "Forget it for good";
pub const OFFLINE_READY: &str = "Ready for offline use.";
pub const UPDATE_WAITING: &str = "A new version is here. What you typed stays.";
pub const USE_UPDATE: &str = "Use it now";
pub const LATER: &str = "Later";
pub const STORAGE_OFF: &str = "This browser keeps nothing for this page. Your report and answers will be gone when you close it.";
pub const STORAGE_FULL: &str =
    "This device has no room left to keep your report. It will be gone when you close the page.";
pub const STORAGE_NOT_LOADED: &str = "What you kept here could not be loaded. It is safe: go online and load the page again. Until then nothing new is kept.";
pub const STORAGE_DAMAGED: &str = "What was kept from your last visit can't be read, so the page starts fresh. The old text is put aside on this device.";
pub const TEXT_TOO_LONG_TO_KEEP: &str =
    "This text is very long. It may not be here on your next visit; your answers will.";

pub const WHAT_TO_DO: &str = "What to do";
pub const THIS_SEASON: &str = "This season";
pub const PROVISIONAL: &str = "for now";
pub const NEXT: &str = "Next";
pub const ALONE_INTRO: &str = "This recipe suits a bed of mixed vegetables when you know nothing about its soil. A soil test makes it more exact.";
pub const DO_IT: &str = "Do it";
pub const WATCH: &str = "What to watch next";
pub const SPECIALISTS: &str = "For specialists";
pub const SPECIALISTS_DOOR: &str =
    "Every number with its range, the charts, the bag's certificate, and your place";
pub const OWN_BEDS: &str = "Answers for single beds";
pub const BEDS: &str = "Your beds";
pub const NOTHING_TO_BUY: &str = "Nothing to buy for these beds.";
pub const SHOPPING: &str = "One shopping list for all beds";
/// Over the sheet: what the places on the ruler mean.
pub const SCALE: [&str; 3] = ["short", "enough", "surplus"];
pub const WHICH_SAMPLE: &str = "Which sample is this bed?";
pub const NAME_OR_NUMBER: &str = "Its name, or its place in the report";
pub const PREVIOUS_SAMPLE: &str = "Previous";
pub const NEXT_SAMPLE: &str = "Next sample";
pub const AMOUNTS: &str = "How much";
pub const I_HAVE: &str = "I have this much biochar";
pub const RECIPE: &str = "How to charge it";
pub const TAKE_CARE: &str = "Take care";

pub const QUESTIONS: &str = "What would make this more exact";
pub const YOUR_ANSWERS: &str = "All answers";
pub const LEGEND_BED: &str = "Your bed";
pub const LEGEND_SEASON: &str = "Your season";
pub const LEGEND_BAG: &str = "Your biochar";
pub const LEGEND_REPORT: &str = "About the report";
pub const NOT_KNOWN: &str = "don't know";
pub const REGION: &str = "Where the soil lies";
pub const OWN_TABLES: &str = "Open your region's own tables (CSV)";
pub const OWN_TABLES_SAVE: &str = "Save these tables as a file";
pub const OWN_TABLES_OUT: &str = "Take these tables out";
pub const OWN_TABLES_UNREAD: &str = "That file can't be read as text.";
pub const OWN_TABLES_TOO_LARGE: &str = "That file is too large for tables: at most 200 kB.";
pub const EXTRACTANT: &str = "Extracts the lab used";
pub const ANOTHER_EXTRACT: &str = "Another extract";
pub const OTHER_EXTRACTS: &str = "All other extracts";
pub const NUTRIENT_UNIT: &str = "Unit of the nutrients";
pub const COUNTED_OFF: &str = "Names and numbers that may not belong together";
pub const BELONG_TOGETHER: &str = "they belong together";
pub const DONT_BELONG: &str = "they don't: leave these numbers out";
pub const NAME_IN_REPORT: &str = "Name";
pub const NUMBER_IN_REPORT: &str = "Number";
pub const BUFFER: &str = "Lime buffer";
pub const EC_METHOD: &str = "How soil and water were mixed for salts";
pub const SAMPLING_DEPTH: &str = "How deep the sample was taken";
pub const PLANTS: &str = "What grows there";
pub const TEXTURE: &str = "Soil texture";
pub const AREA: &str = "Area of the bed";
pub const WORKED_DEPTH: &str = "How deep you will mix it in";
pub const BED_KIND: &str = "How the bed is worked";
pub const PLANTING: &str = "Next planting or sowing";
pub const HARVEST: &str = "When the crop there now is off";
pub const FIRST_FROST: &str = "Usual first autumn frost";
pub const HARVEST_AND_FROST: &str = "Harvest and first frost";
pub const LAST_FROST: &str = "Usual last spring frost";
pub const WINTER: &str = "Your cool season";
pub const BAG_STATE: &str = "Your biochar";
pub const FEEDSTOCK: &str = "What it was made from";
pub const BAG_LITRES: &str = "Size of a bag";
pub const SHARE: &str = "Share of the worked soil, by volume";
pub const BAG_PH: &str = "pH on the bag";
pub const BAG_LIMING: &str = "Liming value on the bag, as calcium carbonate";
pub const BAG_EC: &str = "Salts (EC) on the bag";
pub const CERTIFICATE: &str = "What the bag's certificate says";
pub const CERTIFICATE_INTRO: &str = "Each figure you give takes the place of a usual one, so the bounds grow narrower. Leave out what you don't have. All on a dry basis.";
pub const CERTIFICATE_ADD: &str = "Add a figure";
pub const CERTIFICATE_CHOOSE: &str = "choose what it gives";
pub const CERTIFICATE_REMOVE: &str = "Remove";
pub const BULK_DENSITY: &str = "Bulk density, dry, kg/m³ (g/L)";
pub const STANDARDS: &str = "Beside two quality standards";
pub const STANDARDS_INTRO: &str =
    "A comparison of the figures you gave with limits written from memory. It is no certificate.";
pub const STANDARDS_LIMITS: &str = "Each limit";
pub const COLUMN_GIVEN: &str = "You gave";
pub const COLUMN_LIMIT: &str = "Limit";
pub const COLUMN_VERDICT: &str = "Your figure is";
pub const PURCHASE: &str = "To buy and carry";
pub const BAG_PRICE: &str = "Price of one bag, in your money";
pub const MOISTURE: &str = "Water in it, of its weight as it comes";
pub const YEARS: &str = "Years to spread it over";
pub const SAME_IN_MEASURES: &str = "The same amount in every measure";
pub const SCHEDULE: &str = "Year by year";
pub const SCHEDULE_GROUNDS: &str = "How each row is worked out";
pub const WORK_IN: &str = "How to work it in";
pub const CHARGE_WITH: &str = "What you can charge it with";

pub const HOLDS: &str = "Soil at a glance";
pub const NOT_JUDGED: &str = "not judged";
pub const IN_YOUR_REPORT: &str = "In your report";
pub const READ_AS: &str = "Read as";
pub const LAB_SAYS: &str = "Your lab says";
pub const SOURCE_WORD: &str = "The source's own word";
pub const METHOD_UNKNOWN: &str = "method not known";
pub const DISAGREES: &str = "Another source disagrees:";
pub const AGREES: &str = "Another source agrees:";
pub const SAY_WHAT_IT_IS: &str = "Say what this line is";
pub const NOT_SAID: &str = "not said";
pub const PUT_RIGHT: &str = "Put this reading right";
pub const RESULT: &str = "Result";
pub const UNIT: &str = "Unit";
pub const METHOD: &str = "Method";
pub const MEASURED: &str = "What was measured";
pub const AS_PRINTED: &str = "as printed";
pub const AS_READ: &str = "as read";
pub const COMPARE: &str = "Compare the samples";
pub const EARLIER_SAMPLES: &str = "Samples before these";
pub const LATER_SAMPLES: &str = "Samples after these";
pub const LEVELS_DIFFER: &str = "differs";
pub const LEAVE_OUT: &str = "Leave it out";
pub const UNDO_CORRECTION: &str = "Back to the report";
pub const USES: &str = "What was used of each line";
pub const USES_HOW_TO_READ: &str = "Boxed: a result. Underlined: a name, a rating or a range beside one. Struck out: in the list of what was not read. Dotted: a figure of which nothing was made.";

pub const WHY: &str = "Why";
pub const SPEAKS_FOR: &str = "Speaks for it";
pub const SPEAKS_AGAINST: &str = "Speaks against it";
pub const EFFECTS: &str = "What biochar does in the first month";
pub const EFFECTS_HOW_TO_READ: &str = "The wide bar is what is possible, the thin bar what is likely. A wide bar on both sides of zero means: unsure. An arrow means it goes on.";
pub const EFFECTS_CHART: &str =
    "Bars of the change in each nutrient in the first month. The table has the same numbers.";
pub const AS_A_TABLE: &str = "The same as a table";
pub const COLUMN_PROPERTY: &str = "Property";
pub const COLUMN_DIRECTION: &str = "Direction";
pub const COLUMN_CHANGE: &str = "Change";

pub const NO_TASKS: &str = "Nothing to date yet. Give your planting and harvest dates above.";
pub const PLACE: &str = "Your place and your crops";
pub const PLACE_INTRO: &str = "None of this is needed. It sharpens the dates and what the rain takes. It stays on this device, and nothing asks where you are.";
pub const PLACE_GIVE: &str = "Give latitude, height, rain and crops";
pub const LEGEND_PLACE: &str = "Your place";
pub const LATITUDE: &str = "Latitude in degrees, south of the equator with a minus";
pub const ELEVATION: &str = "Height above the sea";
pub const RAIN: &str = "Rain by month: twelve numbers, January to December";
pub const LOWEST: &str = "Usual lowest temperature of a day by month: twelve numbers";
pub const HIGHEST: &str = "Usual highest temperature of a day by month: twelve numbers";
pub const CROPS: &str = "What grows in this bed in the coming year";
pub const CROP: &str = "Crop";
pub const CROP_IN: &str = "Sown or planted";
pub const CROP_OFF: &str = "Harvested, off the bed";
pub const ADD_CROP: &str = "Add a crop";
pub const REMOVE_CROP: &str = "Remove it";
pub const RESTS: &str = "When the bed is free";
pub const CONFLICTS: &str = "What stands in the way";
pub const LOSS_HOW_TO_READ: &str = "Nitrate lost from the bare bed by the end of each month. The wide band is what is possible. The two full lines are what is likely by two equations, Burns and Scotter. The broken line is with this biochar.";
pub const LOSS_CHART: &str = "Rising lines of the nitrate lost by month, without and with biochar, with bounds. The table has the same numbers.";
pub const COLUMN_MONTH: &str = "By the end of";
pub const COLUMN_DRAINS: &str = "Water that drains in the month";
pub const COLUMN_BURNS: &str = "Lost, by Burns";
pub const COLUMN_SCOTTER: &str = "Lost, by Scotter";
pub const COLUMN_WITH: &str = "With this biochar";
pub const HOLDING: &str = "Does the answer hold?";
pub const HOLDING_INTRO: &str = "Two samples of one bed differ, and some things are not known. Each was tried at its lowest and at its highest.";
pub const COURSE: &str = "What biochar does over a year";
pub const REACTION: &str = "The pH to come";
pub const REACTION_OTHERS: &str = "How firmly the soil holds its pH, reckoned in other ways";
pub const EXCHANGE: &str = "The cations in the soil";
pub const EXCHANGE_SHARES: &str = "Shares of the exchange, before and after";
pub const COURSE_OF: &str = "Which property";
pub const COURSE_HOW_TO_READ: &str =
    "The line is what is likely, the wide band what is possible. Plants and rain come on top.";
pub const COURSE_CHART: &str =
    "Change of one property over 52 weeks, with bounds; the table has the same numbers";
pub const COURSE_PARTS: &str = "What this is made of after a year";
pub const COLUMN_WEEK: &str = "Week";
pub const COLUMN_PART: &str = "Part";
pub const CHARGING: &str = "Charging in detail";
pub const CHARGING_INTRO: &str = "How full each nutrient gets, and what each source brings. Most figures of sources are from memory: a label or an analysis is better.";
pub const CHARGE_FILLS: &str = "How full it gets";
pub const CHARGE_FILLS_HOW_TO_READ: &str = "The upright line is what is wanted, or the most it may be. The mark is what is likely brought, the thick bar what is possible.";
pub const CHARGE_NONE_WANTED: &str = "none wanted";
pub const CHARGE_WANTED: &str = "wanted";
pub const OF_WANTED: &str = "of the wanted";
pub const CHARGE_AT_MOST: &str = "at most";
pub const CHARGE_SOURCES: &str = "What each source brings";
pub const CHARGE_ALONE: &str = "Every source by itself, as much as helps";
pub const CHARGE_WAITS: &str = "How long to wait before you harvest";
pub const CHARGE_LEFT: &str = "What is left over";
pub const CHARGE_NUMBERS: &str = "The numbers behind it";
pub const CHARGE_ANSWERS: &str = "Your bucket, your weather, your labels";
pub const CHARGE_WARMTH: &str = "How warm it is where you charge";
pub const CHARGE_BUCKET: &str = "Your bucket";
pub const CHARGE_ON_HAND: &str = "How much of it you have";
pub const CHARGE_N: &str = "Its label: first number, nitrogen (N)";
pub const CHARGE_P: &str = "second number, phosphate (P₂O₅)";
pub const CHARGE_K: &str = "third number, potash (K₂O)";
pub const COLUMN_SOURCE: &str = "Source";
pub const COLUMN_AMOUNT: &str = "Amount";
pub const COLUMN_NITROGEN_REACHED: &str = "Of the nitrogen wanted";
pub const COLUMN_LOW: &str = "At least";
pub const COLUMN_LIKELY: &str = "Likely";
pub const COLUMN_HIGH: &str = "At most";

/// Over the printed plan: the day it was printed.
pub fn plan_for(today: &str) -> String {
    format!("printed {today} with {NAME}")
}

pub const HELP: &str = "Help";
pub const HELP_SAMPLE: &str = "How to take a soil sample";
pub const HELP_LEVELS: &str = "How to read a level";
pub const HELP_LEVELS_INTRO: &str = "Each level comes from a published range for the lab's own method. On the ruler the thick part is enough; the mark is your soil.";
pub const HELP_WORDS: &str = "Words of the trade";
pub const MEANS: &str = "What it is";
pub const WORKING: &str = "The working";
pub const WORKING_INTRO: &str =
    "Every number worked out from your report. Open one to see how it was made.";
pub const SOURCES: &str = "Sources";
pub const SOURCES_INTRO: &str = "What this answer rests on, and how well each source was read.";
pub const GROUNDS: &str = "how we know";
pub const GROUNDS_INPUTS: &str = "From";
pub const GROUNDS_ASSUMED: &str = "Assumed, because nobody said";
pub const GROUNDS_SOURCES: &str = "Sources";

pub const MONTHS: [&str; 12] = [
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
];

/// A month of a wet season by its name, or by its place in the season.
pub fn month(number: Option<u8>, at: usize) -> String {
    match number.and_then(|number| MONTHS.get(usize::from(number) - 1)) {
        Some(name) => (*name).into(),
        None => format!("month {}", at + 1),
    }
}

/// The name of a property or a figure at the head of a row; pH keeps its small p.
pub fn title(name: &str) -> String {
    let mut title = name.to_string();
    if let Some(first) = title.get_mut(..1).filter(|_| !name.starts_with("pH")) {
        first.make_ascii_uppercase();
    }
    title
}

/// The unit of a certificate's figure; the trade writes exchange capacity its
/// own way.
pub fn certificate_unit(unit: Unit) -> &'static str {
    match unit {
        Unit::MeqPer100g => "cmol(c)/kg",
        unit => unit.symbol(),
    }
}

/// Takes a figure of the certificate out, for a screen reader.
pub fn certificate_remove(label: &str) -> String {
    format!("{CERTIFICATE_REMOVE}: {label}")
}

pub fn verdict(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Within => "within",
        Verdict::Between => "within some countries' limit, over others'",
        Verdict::Over => "outside",
        Verdict::NotGiven => "not given",
    }
}

pub fn year(year: usize) -> String {
    format!("Year {year}")
}

/// What held a year's addition down.
pub fn stopped(year: u32, why: &str) -> String {
    format!("Year {year}: {why}")
}

pub fn week(week: f64) -> String {
    format!("week {week:.0}")
}

/// The directions of a change after a week, a month and a year.
pub fn course_directions(week: &str, month: &str, year: &str) -> String {
    format!("After a week: {week}. After a month: {month}. After a year: {year}.")
}

pub fn wet_season(class: WetSeason) -> &'static str {
    match class {
        WetSeason::Dry => "little: below 150 mm (6 in)",
        WetSeason::Moderate => "some: 150 to 250 mm (6 to 10 in)",
        WetSeason::Wet => "much: above 250 mm (10 in)",
    }
}

/// The first days of harvest after a charge.
pub fn harvest_from(touching: &str, others: &str) -> String {
    format!(
        "Charged today and spread as soon as it is ready: harvest from {touching} what touches the soil, from {others} the rest."
    )
}

pub fn harvest_too_soon(crop: &str) -> String {
    format!("Too soon for {crop}: charge with something else, or spread after this crop.")
}

/// What another path would be called.
pub fn path(path: Path) -> &'static str {
    match path {
        Path::UnchargedAfterHarvest => "uncharged biochar after harvest",
        Path::Charged => "charged biochar",
        Path::ChargeFirst => "charge first",
        Path::None => "no biochar now",
    }
}

/// Whether a name is one that the page gave, and so is said in the reader's
/// language; any other is the person's own. In the words of the attribute.
pub fn translate(name: &str) -> &'static str {
    let numbered = name.strip_prefix("Sample ").is_some_and(|number| number.parse::<u32>().is_ok());
    if numbered || name == YOUR_BED { "yes" } else { "no" }
}

/// What rests on a publication.
pub fn rests_on(what: &[String]) -> String {
    if what.is_empty() { String::new() } else { format!(" For: {}.", what.join(", ")) }
}

/// A publication and where it is.
pub fn source(title: &str, place: &str) -> String {
    if place.is_empty() { title.into() } else { format!("{title}, {place}") }
}

pub fn results(count: usize) -> String {
    if count == 1 { "1 result read".into() } else { format!("{count} results read") }
}

pub fn report_read(count: usize) -> String {
    format!(
        "Report read: {}",
        if count == 1 { "1 result".into() } else { format!("{count} results") }
    )
}

pub fn answer_changed(headline: &str) -> String {
    format!("Answer changed: {headline}")
}

pub fn more_cautions(count: usize) -> String {
    format!("{count} more to mind")
}

/// The last chip, with the questions that are less telling and all that was answered.
pub fn more_answers(count: usize) -> String {
    match count {
        0 => "Your answers".into(),
        1 => "1 more question".into(),
        _ => format!("{count} more questions"),
    }
}

/// A question on its chip, in a few words.
pub fn asked(question: QuestionId, about: &[Property]) -> String {
    match question {
        QuestionId::Region => REGION.into(),
        QuestionId::Extractant => EXTRACTANT.into(),
        QuestionId::NutrientUnit => NUTRIENT_UNIT.into(),
        QuestionId::ReadingUnit => {
            let names: Vec<_> = about.iter().map(|property| property.label()).collect();
            unit_of(&names.join(", "))
        }
        QuestionId::CountedOff => COUNTED_OFF.into(),
        QuestionId::SamplingDepth => SAMPLING_DEPTH.into(),
        QuestionId::Buffer => BUFFER.into(),
        QuestionId::EcMethod => "How salts were tested".into(),
        QuestionId::Texture => TEXTURE.into(),
        QuestionId::Plants => PLANTS.into(),
        QuestionId::BagState => BAG_STATE.into(),
        QuestionId::Planting | QuestionId::Today => PLANTING.into(),
        QuestionId::Winter => HARVEST_AND_FROST.into(),
        QuestionId::Area => AREA.into(),
        QuestionId::WorkedDepth => WORKED_DEPTH.into(),
        QuestionId::ChargeWith => CHARGE_WITH.into(),
    }
}

/// The same once it is answered: a word before the answer.
pub fn asked_before(question: QuestionId) -> &'static str {
    match question {
        QuestionId::Region => "Place:",
        QuestionId::Extractant => "Extracts:",
        QuestionId::NutrientUnit | QuestionId::ReadingUnit => "Unit:",
        QuestionId::CountedOff => "Names and numbers:",
        QuestionId::SamplingDepth => "Sample depth:",
        QuestionId::Buffer => "Buffer:",
        QuestionId::EcMethod => "Salts:",
        QuestionId::Texture => "Soil:",
        QuestionId::Plants => "Plants:",
        QuestionId::BagState => "Biochar:",
        QuestionId::Planting | QuestionId::Today => "Planting:",
        QuestionId::Winter => "Harvest, frost:",
        QuestionId::Area => "Bed:",
        QuestionId::WorkedDepth => "Mixed in:",
        QuestionId::ChargeWith => "Charge with:",
    }
}

fn unit_of(names: &str) -> String {
    format!("Unit of {names}")
}

/// The box that ticks a job off.
pub fn done(task: &str) -> String {
    format!("Done: {task}")
}

/// A fold that shows what a thing rests on.
pub fn grounds_of(what: &str) -> String {
    format!("{GROUNDS}: {what}")
}

/// The fold with what else is carried to the bed.
pub fn more_to_carry(count: usize) -> String {
    format!("and {count} more")
}

/// What an amount is of.
pub fn of_what(what: &str) -> String {
    format!("of {what}")
}

/// The thickness of the biochar, and the depth it is mixed in.
pub fn lies_and_mixed(thick: &str, depth: &str) -> String {
    format!("Drawn to scale: {thick} of biochar, mixed in {depth} deep.")
}

/// The laboratory's own word.
pub fn lab_word(word: &str) -> String {
    format!("lab: {word}")
}

/// Whether the laboratory's word says the same as ours, as a sign.
pub fn agreement(agrees: Option<bool>) -> &'static str {
    match agrees {
        Some(true) => "= ",
        Some(false) => "≠ ",
        None => "",
    }
}

/// The fold with the reasons of a side that weigh less.
pub fn more_reasons(count: usize, speaks_for: bool) -> String {
    match (count, speaks_for) {
        (1, true) => "1 more reason for it".into(),
        (1, false) => "1 more reason against it".into(),
        (_, true) => format!("{count} more reasons for it"),
        (_, false) => format!("{count} more reasons against it"),
    }
}

pub fn unread(count: usize) -> String {
    if count == 1 { "1 number not read".into() } else { format!("{count} numbers not read") }
}

pub fn for_all_beds(count: usize) -> String {
    format!("Use my answers for all {count} beds")
}

/// A job in a word, for the strip of months.
pub fn job(kind: JobKind) -> &'static str {
    match kind {
        JobKind::Hazard => "guard against lead",
        JobKind::WashSalts => "wash out salts",
        JobKind::Clear => "clear the bed",
        JobKind::Lime => "spread lime",
        JobKind::Sulfur => "spread sulfur",
        JobKind::Gypsum => "spread gypsum",
        JobKind::Charge => "charge biochar",
        JobKind::SpreadBiochar => "spread biochar",
        JobKind::CoverCrop => "cover the soil",
        JobKind::Feed => "feed the bed",
        JobKind::Spray => "spray the leaves",
        JobKind::Plant => "sow or plant",
        JobKind::Retest => "test the soil again",
    }
}

pub fn range(range: &str) -> String {
    format!("Enough is {range}.")
}

pub fn range_from(range: &str, source: &str) -> String {
    format!("Enough is {range}. {source}")
}

pub fn read_as(property: &str, method: &str) -> String {
    if method.is_empty() { property.into() } else { format!("{property}, {method}") }
}

pub fn method_inferred(method: &str, from: &str) -> String {
    format!("{method} (inferred: {from})")
}

pub fn method_answered(method: &str) -> String {
    format!("{method} (you said so)")
}

/// A publication whose title is not here yet.
pub const ANOTHER_TABLE: &str = "Another table";

/// What went in, and whose word it is.
pub fn input_by(value: &str, title: Option<&str>) -> String {
    title.map_or_else(|| value.into(), |title| format!("{value}, by {title}"))
}

pub fn opinion(source: &str, level: &str, range: &str) -> String {
    format!("{source} calls it {level}; enough is {range}.")
}

pub fn assumed(what: &str) -> String {
    format!("Assumed: {what}")
}

/// A unit as a choice: with the names reports use for the same thing.
pub fn unit_choice(unit: Unit) -> &'static str {
    match unit {
        Unit::MgPerKg => "mg/kg (ppm)",
        Unit::MgPerL => "mg/L (mg/dm³)",
        Unit::MeqPer100g => "meq/100 g (cmolc/kg)",
        Unit::DsPerM => "dS/m (mS/cm, mmho/cm)",
        other => other.symbol(),
    }
}

pub fn sample_of(number: usize, count: usize) -> String {
    format!("{number} of {count}")
}

pub fn same_in_all(count: usize) -> String {
    format!("The same in all {count} samples")
}

pub fn holds_in_all(count: usize) -> String {
    format!("Holds in all {count} samples.")
}

pub fn by_method(name: &str, method: &str) -> String {
    format!("{name}, {method}")
}

pub fn bed_kind(kind: BedKind) -> &'static str {
    match kind {
        BedKind::Dug => "dug or tilled",
        BedKind::NoDig => "never dug, fed from above",
        BedKind::Lawn => "grass",
        BedKind::Container => "pots and tubs",
        BedKind::TreePit => "round a tree",
    }
}

pub fn winter(winter: Winter) -> &'static str {
    match winter {
        Winter::Frost => "frost stops growth",
        Winter::MildWet => "mild and wet",
        Winter::None => "no winter: wet and dry seasons",
    }
}

pub fn bag_state(state: BagState) -> &'static str {
    match state {
        BagState::NoneYet => "none yet",
        BagState::Uncharged => "fresh, not charged",
        BagState::Charged => "charged already",
    }
}

pub fn feedstock(feedstock: Feedstock) -> &'static str {
    match feedstock {
        Feedstock::Softwood => "softwood: pine, spruce, fir",
        Feedstock::Hardwood => "hardwood: oak, beech, ash",
        Feedstock::GrassOrStraw => "straw or grass",
        Feedstock::Bamboo => "bamboo",
        Feedstock::RiceHusk => "rice husks",
        Feedstock::Manure => "manure or litter",
        Feedstock::Nutshell => "nutshells or stones",
        Feedstock::Bone => "bones",
        Feedstock::Blend => "a blend of several",
    }
}

pub fn charge_source(source: ChargeSource) -> &'static str {
    match source {
        ChargeSource::Compost => "finished compost",
        ChargeSource::Vermicompost => "worm castings",
        ChargeSource::AgedManure => "manure, aged but not composted hot",
        ChargeSource::CompostTea => "compost tea",
        ChargeSource::PlantLiquid => "nettle or comfrey liquid",
        ChargeSource::FishHydrolysate => "fish hydrolysate or emulsion",
        ChargeSource::Urine => "urine, diluted",
        ChargeSource::AmmoniumSulfate => "ammonium sulfate",
        ChargeSource::CalciumAmmoniumNitrate => "calcium ammonium nitrate",
        ChargeSource::BloodMeal => "blood meal",
        ChargeSource::NitrogenFertiliser => "another soluble nitrogen feed without phosphorus",
        ChargeSource::CompleteFertiliser => "soluble complete (N-P-K) feed",
        ChargeSource::WoodAsh => "wood ash",
    }
}

/// Tables of a region's own that judge.
pub fn own_tables_of(title: &str) -> String {
    format!("Judging by tables of your own: {title}.")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_title_begins_with_a_capital_and_ph_does_not() {
        assert_eq!(title("nitrate-N"), "Nitrate-N");
        assert_eq!(title("pH"), "pH");
        assert_eq!(title("pH after a year"), "pH after a year");
        assert_eq!(title(""), "");
    }
}
