//! What the page says about the shelf and about sharing.

// The shelf.
pub const SHELF: &str = "Saved reports";
pub const SHELF_EMPTY: &str = "Nothing is saved here yet.";
pub const NOTHING_FOUND: &str = "Nothing fits these words.";
pub const SAVE_THIS: &str = "Save this report with your answers";
pub const SAVE_NAME: &str = "Name";
pub const SAVE_PLACE: &str = "Bed or place";
pub const SAVE_DATE: &str = "Day the soil was sampled";
pub const SAVE: &str = "Save here";
pub const SAVE_CHANGES: &str = "Save changes";
pub const SAVE_NEW: &str = "Save as a new one";
pub const NAME_IT: &str = "Give it a name first.";
pub const FIND: &str = "Find by name, date or text";
pub const IS_A_TRIAL: &str = "trial";
pub const OPEN_NOW: &str = "open now";
pub const OPEN: &str = "Open";
pub const RENAME: &str = "Rename";
pub const DUPLICATE: &str = "Make a copy";
pub const DELETE: &str = "Delete";
pub const DELETED: &str = "Deleted.";
pub const PUT_BACK: &str = "It is back.";
pub const GONE: &str = "It is not here any more. Another tab may have deleted it.";
pub const DAMAGED_ENTRY: &str = "A saved report that can't be read. It is left as it is.";
pub const TAKE_OUT: &str = "Save all of them to one file";
pub const BRING_IN: &str = "Bring in such a file. Nothing here is replaced.";
pub const FROM_A_FILE: &str = "From a file";
pub const ERASE_ALL: &str = "Erase everything";
pub const ERASE_YES: &str = "Yes, erase all";
pub const ERASE_NOT: &str = "No, keep them";
pub const ALL_ERASED: &str = "All is erased, also the copy for offline use.";
pub const NOT_ALL_ERASED: &str =
    "Not all could be erased. Close the other tabs of this page and try again.";
pub const LEFT_STORAGE: &str = "what the tabs keep";
pub const LEFT_DATABASE: &str = "a database";
pub const LEFT_COPIES: &str = "the copy for offline use";
pub const CANT_ERASE: &str = "This page can't erase what lies elsewhere: links in the browser's history, files you saved, links you sent.";
pub const ERASED_ELSEWHERE: &str =
    "Everything was erased in another tab. Close this tab, or load it again to begin anew.";
pub const EARLIER: &str = "Earlier reports";
pub const EARLIER_INTRO: &str =
    "What was in the box before, with your answers. Only this device has it.";
pub const SAVE_FILE: &str = "Save as a file";
pub const PUT_ASIDE: &str =
    "This was kept from a visit before and can't be read. It is put aside here.";
pub const RAW: &str = "What can't be read";
pub const NOT_CHECKED: &str =
    "The file was not saved: read back, it did not hold all of them. Try again.";
pub const IS_A_FILE: &str = "This page is open as a file on this device, so a link can't lead to it. Save the report as a file, or the plan as text, and send that.";
pub const FILE_STORAGE: &str = "This page is open as a file. Other files that you open in this browser may read what it keeps.";
pub const SHELF_NONE: &str = "This browser keeps no saved reports for this page. A private window may be the reason. You can save your report to a file.";
pub const SHELF_NEWER: &str = "A newer version of this page made these saved reports. They are left as they are. Load the page again to get the newer version.";
pub const SHELF_FULL: &str = "There is no room left on this device. Nothing was saved and nothing is lost: all that was here is as before. Delete saved reports, or save this one to a file.";
pub const SHELF_FAILED: &str =
    "The browser did not save this. All that was here is as before. Try again, or save to a file.";
pub const FILE_UNREAD: &str = "This file could not be read. Choose it again.";
pub const FILE_DAMAGED: &str =
    "This file is damaged, or is no file of saved reports. Nothing was brought in.";
pub const FILE_OTHER: &str = "This is no file of saved reports. To read a lab's report, open it above. Nothing was brought in.";
pub const FILE_NEWER: &str = "A newer version of this page saved this file. Load the page again to get it. Nothing was brought in.";
pub const YEARS: &str = "One bed over the years";
pub const YEARS_INTRO: &str = "A line joins results by the same method only. A ring is a limit, such as “less than 2”; it stands alone.";
pub const YEARS_PLACE: &str = "Which bed or place";
pub const COLUMN_DATE: &str = "Date";
pub const COLUMN_LEVEL: &str = "Level";

pub fn does_to(word: &str, name: &str) -> String {
    format!("{word}: “{name}”")
}

pub fn saved(name: &str) -> String {
    format!("Saved as “{name}”.")
}

pub fn both_kept(name: &str) -> String {
    format!(
        "Another tab has saved this report since you opened it. Both are kept: yours is now “{name}”."
    )
}

pub fn opened(name: &str) -> String {
    format!("Opened “{name}”.")
}

pub fn renamed(name: &str) -> String {
    format!("Renamed to “{name}”.")
}

pub fn another(name: &str) -> String {
    format!("{name} (copy)")
}

pub fn from_the_file(name: &str) -> String {
    format!("{name} (from the file)")
}

pub fn put_aside(bed: &str, day: &str) -> String {
    format!("“{bed}”, put aside on {day}")
}

pub fn newer_entry(name: &str) -> String {
    format!(
        "“{name}” was saved by a newer version of this page. It is left as it is. Load the page again to get the newer version."
    )
}

pub fn taken_out(count: usize) -> String {
    format!("Saved {} to a file.", reports(count))
}

pub fn brought_in(put: usize, same: usize, both: usize) -> String {
    let mut said = format!("Brought in {}.", reports(put));
    if same > 0 {
        said += &format!(" Here already: {}.", reports(same));
    }
    if both > 0 {
        said += &format!(" Different from what was here, so both are kept: {}.", reports(both));
    }
    said
}

pub fn not_read(numbers: &[usize]) -> String {
    let numbers: Vec<String> = numbers.iter().map(usize::to_string).collect();
    format!(" Not read, and shown below: number {} in the file.", numbers.join(", "))
}

pub fn still_there(left: &[&str]) -> String {
    format!("{NOT_ALL_ERASED} Left over: {}.", left.join(", "))
}

pub fn erase_sure(count: usize) -> String {
    format!(
        "This removes {} and all that is on the page from this device. It can't be undone.",
        reports(count)
    )
}

pub fn trend_chart(name: &str) -> String {
    format!("{name}, by date. The table has the same numbers.")
}

fn reports(count: usize) -> String {
    if count == 1 { "1 report".into() } else { format!("{count} reports") }
}

// Sharing.
pub const SHARE: &str = "Share";
pub const SHARE_HOLDS: &str = "The link holds your report, with any names the lab printed in it, and your answers. It holds nothing else. No server sees them, but whoever has the link can read them.";
pub const LINK: &str = "Your link";
pub const LINK_LONG: &str = " Some apps cut links of this length. Try it first.";
pub const LINK_VERY_LONG: &str =
    " Most apps cut links of this length. Save the report to a file and send that.";
pub const COPY_LINK: &str = "Copy the link";
pub const LINK_COPIED: &str = "Link copied.";
pub const SHARE_BY: &str = "Share by another app";
pub const SHARED: &str = "Handed to the other app.";
pub const NOT_SHARED: &str = "The other app did not take it. Copy the link.";
pub const NOT_COPIED: &str = "The browser did not allow copying. Select the text and copy it.";
pub const CODE: &str = "QR code of the link";
pub const CODE_HOW: &str =
    "Point a phone's camera at this code: it opens this report with your answers.";
pub const CODE_TOO_LONG: &str =
    "The link is too long for a QR code that a phone can read. Use the link.";
pub const AS_PICTURE: &str = "The answer as a picture";
pub const SAVE_PICTURE: &str = "Save for a slide (PNG)";
pub const SAVE_DRAWING: &str = "Save as a drawing (SVG)";
pub const AS_TEXT: &str = "The plan as plain text";
pub const COPY_PLAN: &str = "Copy the plan";
pub const PLAN_COPIED: &str = "Plan copied.";
pub const SAVE_PLAN: &str = "Save the plan as a text file";
pub const VIEWERS: &str = "Link for viewers";
pub const VIEWERS_INTRO: &str = "For a class or a garden group. You fix some answers and add a note. Viewers see both and put in their own report.";
pub const NOTE: &str = "Your note";
pub const FIXED: &str = "Answers that viewers can't change";
pub const NOTHING_TO_FIX: &str = "You have given no answers yet. Give some about the bed first.";
pub const WITH_REPORT: &str = "Send my report along, as an example";
pub const VIEWERS_LINK: &str = "The link for viewers";
pub const PREVIEW: &str = "What viewers will see";
pub const PUT_RIGHT_ONE: &str = "Readings put right";
pub const NAMED_LINES: &str = "Lines you named";
pub const PUT_RIGHT_ALL: &str = "Readings put right in all samples";

pub fn link_size(long: usize, advice: &str) -> String {
    format!("The link has {long} characters.{advice}")
}

pub fn characters_left(left: usize) -> String {
    format!("{left} characters left")
}

pub fn so_many(count: usize) -> String {
    count.to_string()
}

// A link that was opened.
pub const ARRIVED: &str = "A report was shared with you";
pub const ARRIVED_SCENARIO: &str = "A garden case was shared with you";
pub const LINK_NOT_OPENED: &str = "This link can't be opened";
pub const LINK_NEWER: &str = "A newer version of this page made this link. Load the page again to get the newer version, then open the link once more.";
pub const LINK_DAMAGED: &str = "Part of the link is missing or changed. Some apps cut long links. Ask for it once more, or for a file.";
pub const YOURS_IS_SAFE: &str = "What you have here stays as it is.";
pub const CLOSE: &str = "Close";
pub const NOTHING_REPLACED: &str = "It is not in use yet.";
pub const WILL_PUT_ASIDE: &str = "If you use it, your own report and answers are put aside. You find them under “Saved reports”, and Undo brings them back.";
pub const USE_IT: &str = "Use it here";
pub const NOT_NOW: &str = "Not now";
pub const TAKEN: &str = "The shared report is in use.";
pub const NOT_PUT_ASIDE: &str =
    "Your own report could not be put under “Saved reports”. Press Undo if you want it back.";
pub const BRING_YOUR_OWN: &str = "It holds no report. You put in your own.";
pub const SEE_REPORT: &str = "See the report";
pub const NOTE_SAYS: &str = "A note from who made it:";
pub const IS_FIXED: &str = "fixed";
pub const SCENARIO: &str = "The garden case you were sent";
pub const FIXED_HERE: &str = "These answers are fixed:";
pub const USE_MY_OWN: &str = "Use my own report";
pub const LEAVE_SCENARIO: &str = "Free all answers to be changed";

pub fn answered(label: &str, value: &str) -> String {
    format!("{label}: {value}")
}

pub fn report_of(lines: usize) -> String {
    if lines == 1 {
        "It holds a report of 1 line.".into()
    } else {
        format!("It holds a report of {lines} lines.")
    }
}

pub fn answers_of(count: usize) -> String {
    match count {
        0 => "It holds no answers.".into(),
        1 => "It holds 1 answer:".into(),
        _ => format!("It holds {count} answers:"),
    }
}
