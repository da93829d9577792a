//! What can be wrong with a whole report. Each message says what was found
//! and what to do; the text itself stays with the person.

/// Why a report can't be read at all.
#[derive(Clone, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Trouble {
    /// Nothing was pasted.
    Empty,
    /// The bytes are no text: a picture, a PDF, a workbook.
    Binary {
        /// What it looks like, for example `a PDF file`.
        looks_like: &'static str,
    },
    /// More text than a soil report can be.
    TooLarge {
        /// Bytes allowed.
        allowed: usize,
    },
    /// More lines than a soil report can have.
    TooManyLines {
        /// Lines allowed.
        allowed: usize,
    },
    /// More samples than can be judged at once.
    TooManySamples {
        /// Samples allowed.
        allowed: usize,
    },
    /// Very much that is no result, in one piece.
    NoEnd,
    /// A line that is longer, or has more columns, than any of a soil test, and no results.
    EndlessLine,
    /// Sentences, no results.
    Prose,
    /// A table, but none of its names is a soil property.
    NoSoilWords {
        /// The first few names found.
        names: Vec<String>,
    },
    /// Results or figures of something other than a soil sample.
    NotOfSoil {
        /// What it seems to be, for example `an analysis of water`.
        what: &'static str,
    },
    /// Soil words, but not one result could be read.
    NoResults,
}

impl std::fmt::Display for Trouble {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            Trouble::Empty => f.write_str(
                "There is nothing here yet. Paste your soil test: the names, the numbers and \
                 their units.",
            ),
            Trouble::Binary { looks_like } => write!(
                f,
                "This looks like {looks_like}, and only text can stand here. Choose the file itself \
                 with the button below, or copy its table and paste that. Nothing you typed is lost.",
            ),
            Trouble::TooLarge { allowed } => write!(
                f,
                "This is more than {} MB of text, far more than a soil report. Paste only the \
                 part with the results. Nothing you typed is lost.",
                allowed / 1_000_000,
            ),
            Trouble::TooManyLines { allowed } => write!(
                f,
                "This text has more than {allowed} lines, far more than a soil report. Paste only \
                 the part with the results. Nothing you typed is lost.",
            ),
            Trouble::TooManySamples { allowed } => write!(
                f,
                "This table has more than {allowed} samples. Split it and paste one part at a \
                 time.",
            ),
            Trouble::NoEnd => f.write_str(
                "This text goes on and on without a soil test result. Paste only the part with \
                 the results. Nothing you typed is lost.",
            ),
            Trouble::EndlessLine => f.write_str(
                "A line of this text is longer than any line of a soil test. Paste only the part \
                 with the results, one sample or one result on a line. Nothing you typed is lost.",
            ),
            Trouble::Prose => f.write_str(
                "No soil test result was found in this text. Paste lines such as \
                 “Phosphorus 18 ppm”, or the table of your report. Your text is kept.",
            ),
            Trouble::NoSoilWords { names } => {
                f.write_str("This is a table, but none of its names is a soil property")?;
                if !names.is_empty() {
                    write!(f, " (found: {})", names.join(", "))?;
                }
                f.write_str(
                    ". Copy the row or column with names such as pH, P, K or organic matter too. \
                     Your text is kept.",
                )
            }
            Trouble::NotOfSoil { what } => write!(
                f,
                "This seems to be {what}, so none of it was read as a soil test. Paste the results \
                 of your soil test. If this is one, take out the heading that says otherwise. Your \
                 text is kept.",
            ),
            Trouble::NoResults => f.write_str(
                "Names of soil properties were found, but no result beside them that can be \
                 right. Copy the numbers and units too, so that a line reads like “pH 6.2”. Your text is kept.",
            ),
        }
    }
}

impl std::error::Error for Trouble {}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_message_is_its_own_and_says_what_to_do() {
        let all = [
            Trouble::Empty,
            Trouble::Binary { looks_like: "a PDF file" },
            Trouble::TooLarge { allowed: 4_000_000 },
            Trouble::TooManyLines { allowed: 1_000_000 },
            Trouble::TooManySamples { allowed: 20_000 },
            Trouble::NoEnd,
            Trouble::EndlessLine,
            Trouble::Prose,
            Trouble::NoSoilWords { names: vec!["apples".into()] },
            Trouble::NotOfSoil { what: "an analysis of water" },
            Trouble::NoResults,
        ];
        let texts: std::collections::BTreeSet<String> =
            all.iter().map(Trouble::to_string).collect();
        assert_eq!(texts.len(), all.len());
        assert!(texts.iter().all(|t| t.to_lowercase().contains("paste") || t.contains("Copy")));
        assert!(all[2].to_string().contains("4 MB"));
    }
}
