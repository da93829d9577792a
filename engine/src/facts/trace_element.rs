//! What a soil that is short of sulfur or of a trace element is given, and how much at the most.

use super::fact::Fact;
use super::rate::Dressed;
use super::source::Cited;
use super::table::{Row, Wrong};

/// How one element is given.
#[derive(Clone, Debug, PartialEq)]
pub struct TraceElementRow {
    /// Which.
    pub element: Dressed,
    /// The salt it is bought as.
    pub salt: String,
    /// The element in the salt, %.
    pub percent: f64,
    /// The most of the element in a year, kg/ha.
    pub most: f64,
    /// The same for a crop whose own rate was published.
    pub most_of_own: f64,
    /// The pH in water between which it helps when it is spread on the soil.
    pub ph: (f64, f64),
    /// The crops that a little of it hurts.
    pub hurts: Vec<String>,
    /// The publications.
    pub cited: Vec<Cited>,
}

impl Fact for TraceElementRow {
    const COLUMNS: &'static [&'static str] = &[
        "id",
        "element",
        "salt",
        "percent",
        "most",
        "most_of_own",
        "ph_from",
        "ph_to",
        "hurts",
        "sources",
    ];

    fn read(row: Row<'_>) -> Result<TraceElementRow, Wrong> {
        let element: Dressed = row.kind("element")?;
        use Dressed::{K2O, Mg, N, P2O5};
        if [N, P2O5, K2O, Mg].contains(&element) {
            return Err(row.wrong("nitrogen, phosphate, potash and magnesium are not given so"));
        }
        let percent = row.number("percent")?;
        if !(1.0..=100.0).contains(&percent) {
            return Err(row.wrong(format!("no salt holds {percent} % of it")));
        }
        let (most, most_of_own) = (row.number("most")?, row.number("most_of_own")?);
        if most <= 0.0 || most_of_own < most {
            return Err(row.wrong("“most_of_own” is no less than “most”, and both are above 0"));
        }
        let ph = (row.number("ph_from")?, row.number("ph_to")?);
        if !(3.0 <= ph.0 && ph.0 < ph.1 && ph.1 <= 10.0) {
            return Err(row.wrong("“ph_from” lies below “ph_to”, both from 3 to 10"));
        }
        Ok(TraceElementRow {
            element,
            salt: row.some("salt")?.into(),
            percent,
            most,
            most_of_own,
            ph,
            hurts: row.list("hurts").map(str::to_string).collect(),
            cited: row.cited()?,
        })
    }

    fn cited(&self) -> &[Cited] {
        &self.cited
    }
}

#[cfg(test)]
mod tests {
    use super::super::fact::read_one;
    use super::*;

    #[test]
    fn a_wrong_row_says_what_is_wrong() {
        let row = |element: &str, percent: &str, most: &str, to: &str| {
            let row = format!(
                "x,{element},borax,{percent},{most},3.4,3,{to},bean; pea,our-choice:derived"
            );
            read_one::<TraceElementRow>(&row).map(|row| row.hurts)
        };
        assert_eq!(row("B", "11.3", "1.5", "9"), Ok(vec!["bean".into(), "pea".into()]));
        for (wrong, why) in [
            (row("N", "11.3", "1.5", "9"), "not given so"),
            (row("B", "113", "1.5", "9"), "no salt holds 113 %"),
            (row("B", "11.3", "4", "9"), "no less than"),
            (row("B", "11.3", "1.5", "2"), "lies below"),
            (row("Au", "11.3", "1.5", "9"), "Au"),
        ] {
            let wrong = wrong.expect_err(why);
            assert!(wrong.contains(why), "{wrong}");
        }
    }
}
