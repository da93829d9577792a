//! The dated tasks as a calendar file.

use time::Date;

use crate::plan::Job;

/// The most octets of a line, without its end. Source: RFC 5545, 3.1 (from memory).
const LINE: usize = 75;

/// The tasks that have a date as an iCalendar file, each an all-day event over
/// its window that keeps nobody busy. A task that can only be said to be done
/// from a day on, or until one, stands on that day.
///
/// `stamp` is now in UTC (`20261125T120000Z`) and `code` a fresh name for this
/// calendar; both come from the caller, since the engine has no clock and no
/// chance.
///
/// Source: RFC 5545 (from memory).
pub fn calendar(jobs: &[Job], bed: &str, stamp: &str, code: &str) -> String {
    let mut text = String::new();
    for line in ["BEGIN:VCALENDAR", "VERSION:2.0", "PRODID:-//Emberloam//Dated tasks//EN"] {
        put(&mut text, line);
    }
    for (number, job) in jobs.iter().enumerate() {
        let Some(from) = job.from.or(job.to) else { continue };
        let to = job.to.unwrap_or(from);
        // The end is the first day that is no part of it.
        let end = to.next_day().unwrap_or(to);
        put(&mut text, "BEGIN:VEVENT");
        put(&mut text, &format!("UID:{}-{number}@emberloam", escaped(code)));
        put(&mut text, &format!("DTSTAMP:{}", escaped(stamp)));
        put(&mut text, &format!("DTSTART;VALUE=DATE:{}", compact(from)));
        put(&mut text, &format!("DTEND;VALUE=DATE:{}", compact(end)));
        put(&mut text, &format!("SUMMARY:{}", escaped(&format!("{bed}: {}", job.task))));
        put(&mut text, &format!("DESCRIPTION:{}", escaped(&job.reason)));
        put(&mut text, "TRANSP:TRANSPARENT");
        put(&mut text, "END:VEVENT");
    }
    put(&mut text, "END:VCALENDAR");
    text
}

fn compact(date: Date) -> String {
    format!("{:04}{:02}{:02}", date.year(), u8::from(date.month()), date.day())
}

/// Text as a property's value.
fn escaped(text: &str) -> String {
    let mut out = String::new();
    for c in text.chars() {
        match c {
            '\\' | ';' | ',' => {
                out.push('\\');
                out.push(c);
            }
            '\n' => out.push_str("\\n"),
            c if c.is_control() => {}
            c => out.push(c),
        }
    }
    out
}

/// Adds a line, folded so that no part is too long and no letter is cut.
fn put(text: &mut String, line: &str) {
    let mut length = 0;
    for c in line.chars() {
        if length + c.len_utf8() > LINE {
            text.push_str("\r\n ");
            length = 1;
        }
        text.push(c);
        length += c.len_utf8();
    }
    text.push_str("\r\n");
}
