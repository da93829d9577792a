//! A line that could not be placed until the person said what it is.

use serde::{Deserialize, Serialize};

use super::{Place, Reading, Report, Unread, open, read};
use crate::soil::Property;

/// What a person said of a line that could not be placed. It holds while the source still says
/// `text` at `place`.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, rename_all = "kebab-case")]
pub struct NamedLine {
    /// The sample that it belongs to, from 0.
    pub sample: usize,
    /// Where the line stands.
    pub place: Place,
    /// What it says.
    pub text: String,
    /// What it is.
    pub property: Property,
}

impl NamedLine {
    fn is_of(&self, unread: &Unread) -> bool {
        self.place == unread.place && self.text == unread.text
    }
}

/// The reading that a line holds when it is a result of this property: its first number, with the
/// unit and the words behind it, read as those of any line are.
pub fn reading_of(unread: &Unread, property: Property) -> Option<Reading> {
    let text = unread.text.as_str();
    let from = text.find(|sign: char| sign.is_ascii_digit() || sign == '<')?;
    let line = format!("{}: {}", property.label(), text[from..].replace(['\t', '\n'], " "));
    let read = read(&open(line.as_bytes()).ok()?).ok()?;
    let found = read.samples.into_iter().flat_map(|sample| sample.readings);
    let reading = found.into_iter().find(|reading| reading.property == property)?;
    Some(Reading { name: text[..from].trim().into(), place: unread.place, ..reading })
}

/// Makes readings of the lines that were named; a line that says something else by now stays as it is.
pub fn name_lines(report: &mut Report, named: &[NamedLine]) {
    for line in named {
        let Some(sample) = report.samples.get_mut(line.sample) else { continue };
        for list in [&mut sample.unread, &mut report.unread] {
            let Some(at) = list.iter().position(|unread| line.is_of(unread)) else { continue };
            if let Some(reading) = reading_of(&list[at], line.property) {
                list.remove(at);
                sample.readings.push(reading);
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Unit;

    fn report(text: &str) -> Report {
        read(&open(text.as_bytes()).unwrap()).unwrap()
    }

    const TEXT: &str = "pH 6.4\nPhosphorus (Olsen) 18 mg/kg\nZoubium avail. 140 mg/kg medium\n";

    #[test]
    fn a_line_that_is_named_is_a_reading_and_no_longer_unread() {
        let plain = report(TEXT);
        let [unread] = plain.unread.iter().chain(&plain.samples[0].unread).collect::<Vec<_>>()[..]
        else {
            panic!("{plain:#?}")
        };
        let line = NamedLine {
            sample: 0,
            place: unread.place,
            text: unread.text.clone(),
            property: Property::Potassium,
        };
        let mut named = plain.clone();
        name_lines(&mut named, std::slice::from_ref(&line));
        assert!(named.unread.is_empty() && named.samples[0].unread.is_empty());
        let reading = named.samples[0].readings.last().unwrap();
        assert_eq!(reading.property, Property::Potassium);
        assert_eq!(reading.unit, Some(Unit::MgPerKg));
        assert_eq!(reading.amount.and_then(|amount| amount.exact()), Some(140.0));
        assert_eq!(reading.name, "Zoubium avail.");
        assert_eq!(reading.place, unread.place);
        // Another text at this place, or no such sample: nothing is taken for it.
        for other in [
            NamedLine { text: "Zoubium 9".into(), ..line.clone() },
            NamedLine { sample: 4, ..line.clone() },
        ] {
            let mut same = plain.clone();
            name_lines(&mut same, &[other]);
            assert_eq!(same, plain);
        }
    }

    fn unread(text: &str) -> Unread {
        Unread { text: text.into(), reason: String::new(), place: Place::default() }
    }

    #[test]
    fn every_property_can_be_the_name_of_a_line() {
        let lines = ["Zoubium 6.1", "Zoubium 1.2", "Zoubium 1.2 %"].map(unread);
        let is_read = |property| lines.iter().any(|line| reading_of(line, property).is_some());
        let without: Vec<_> = Property::ALL.into_iter().filter(|p| !is_read(*p)).collect();
        assert!(without.is_empty(), "{without:?}");
    }

    #[test]
    fn a_line_without_a_number_is_no_reading() {
        assert_eq!(reading_of(&unread("see overleaf"), Property::Ph), None);
    }
}
