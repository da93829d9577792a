//! Why a file is not opened, and what to do about it.

use std::fmt;

/// Why a file is not opened.
#[derive(Clone, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Refusal {
    /// Nothing in it.
    Empty,
    /// Larger than is opened.
    TooLarge {
        /// The most bytes that are opened.
        allowed: usize,
    },
    /// Small, but it unfolds to more than any soil report holds.
    Swells,
    /// A PDF whose pages are pictures.
    ScannedPdf,
    /// A PDF whose fonts do not say which letters they draw.
    NoLetters,
    /// A PDF that needs a password.
    LockedPdf,
    /// A workbook that needs a password.
    LockedWorkbook,
    /// A workbook without anything in its visible sheets.
    EmptyWorkbook,
    /// A workbook in the XML of 2003, which few programs write.
    XmlWorkbook,
    /// A workbook of a kind that is not opened.
    OtherWorkbook,
    /// A document of a word processor.
    Document,
    /// Slides.
    Slides,
    /// A zip file without a workbook.
    Zip,
    /// A compressed file other than zip.
    Compressed,
    /// A picture, a photo or a film.
    Picture,
    /// A sound.
    Sound,
    /// A rich-text document.
    RichText,
    /// Bytes that are no text.
    NotText,
    /// A lab exchange file that orders tests and holds no results.
    OrderForm,
    /// A lab exchange file without results for soil.
    NoSoilResults,
    /// All reports that were saved here, in one file.
    AllSaved,
    /// JSON that is no lab exchange file and no saved report.
    OtherJson,
    /// Begins as JSON and is none.
    BrokenJson {
        /// The line where it stops making sense, from 1.
        line: usize,
    },
    /// XML that is no lab exchange file.
    OtherXml,
    /// Saved by a newer version of this program.
    SavedByNewer,
    /// Damaged, or not what its first bytes say.
    Damaged {
        /// What it seems to be, for example `PDF file`.
        what: &'static str,
    },
}

impl fmt::Display for Refusal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let text = match self {
            Refusal::TooLarge { allowed } => {
                return write!(
                    f,
                    "This file is larger than {} MB. Cut it into parts, or copy the table out of it and paste it.",
                    allowed / 1_000_000
                );
            }
            Refusal::BrokenJson { line } => {
                return write!(
                    f,
                    "This file begins as JSON but breaks off or goes wrong in line {line}. Ask for it again, or \
                     copy the results out of it and paste them.",
                );
            }
            Refusal::Damaged { what } => {
                return write!(
                    f,
                    "This {what} is damaged and can't be read. Ask for it again, or copy what you can see of it and paste it.",
                );
            }
            Refusal::Empty => "This file is empty. Choose the file that holds the results.",
            Refusal::Swells => {
                "This file unfolds to far more than a soil report holds, so it was not opened. Copy \
                 the table with the results out of it and paste it."
            }
            Refusal::ScannedPdf => {
                "The pages of this PDF are pictures, so there is no text to read. Ask the laboratory \
                 for the report as a file with text, or type the results in."
            }
            Refusal::NoLetters => {
                "This PDF shows its letters as drawings without saying which letters they are, so they \
                 can't be read. Ask the laboratory for the report as a spreadsheet, or type the results in."
            }
            Refusal::LockedPdf => {
                "This PDF is locked with a password. Open it with the password, print it to a new \
                 PDF and choose that, or copy the table and paste it."
            }
            Refusal::LockedWorkbook => {
                "This workbook is locked with a password. Open it with the password, then save a copy \
                 without one, or copy the table and paste it."
            }
            Refusal::EmptyWorkbook => {
                "The sheets of this workbook that can be seen are empty. Choose the workbook with \
                 the results, or bring its hidden sheets back into view and save it."
            }
            Refusal::XmlWorkbook => {
                "This workbook is saved as XML of the year 2003. Open it in your spreadsheet program \
                 and save it as XLSX or CSV, or copy the table and paste it."
            }
            Refusal::OtherWorkbook => {
                "This is a workbook of a kind that can't be opened here. Open it in your spreadsheet \
                 program and save it as XLSX or CSV, or copy the table and paste it."
            }
            Refusal::Document => {
                "This is a document of a word processor. Open it, copy the table with the results and \
                 paste it, or save the document as PDF."
            }
            Refusal::Slides => {
                "These are slides. Open them, copy the table with the results and paste it."
            }
            Refusal::Zip => {
                "This is a zip file without a workbook. Unpack it and choose the report inside it."
            }
            Refusal::Compressed => {
                "This file is compressed. Unpack it first and choose the report inside it."
            }
            Refusal::Picture => {
                "This is a picture or a film, and pictures can't be read here. Ask the laboratory for \
                 the report as a file with text, or type the results in."
            }
            Refusal::Sound => {
                "This is a sound recording. Choose the report itself, or type the results in."
            }
            Refusal::RichText => {
                "This is a rich-text document. Open it, copy everything and paste it, or save it as \
                 plain text."
            }
            Refusal::NotText => {
                "This file holds data for a program, no text that could be read. If another program \
                 opens it, copy the table with the results there and paste it."
            }
            Refusal::OrderForm => {
                "This lab exchange file is an order form: it asks for tests and holds no results. \
                 Choose the file of results that the laboratory sent back."
            }
            Refusal::NoSoilResults => {
                "This lab exchange file holds no results for soil. Choose the file with the soil \
                 results, or copy them and paste them."
            }
            Refusal::AllSaved => {
                "This file holds all your saved reports. Bring it in under “Saved reports”."
            }
            Refusal::OtherJson => {
                "This is a JSON file, but neither lab results of the Modus standard nor a report \
                 saved here. Copy the names, numbers and units out of it and paste them."
            }
            Refusal::OtherXml => {
                "This is an XML file, but not one with lab results of the Modus standard. Copy the \
                 names, numbers and units out of it and paste them."
            }
            Refusal::SavedByNewer => {
                "This report was saved by a newer version of this page. Reload the page while you \
                 are online to get that version, then open the file again."
            }
        };
        f.write_str(text)
    }
}

impl std::error::Error for Refusal {}

#[cfg(test)]
mod tests {
    use super::Refusal::{self, *};

    #[test]
    fn each_message_is_its_own_and_says_what_to_do() {
        let all: &[Refusal] = &[
            Empty,
            TooLarge { allowed: 20_000_000 },
            Swells,
            ScannedPdf,
            LockedPdf,
            LockedWorkbook,
            EmptyWorkbook,
            XmlWorkbook,
            OtherWorkbook,
            Document,
            Slides,
            Zip,
            Compressed,
            Picture,
            Sound,
            RichText,
            NotText,
            OrderForm,
            NoSoilResults,
            AllSaved,
            OtherJson,
            BrokenJson { line: 3 },
            OtherXml,
            SavedByNewer,
            Damaged { what: "workbook" },
        ];
        let texts: std::collections::BTreeSet<String> =
            all.iter().map(ToString::to_string).collect();
        assert_eq!(texts.len(), all.len());
        for text in &texts {
            let acts = ["paste", "Choose", "choose", "type", "Reload", "save"];
            assert!(acts.iter().any(|a| text.contains(a)), "{text}");
        }
        assert!(all[1].to_string().contains("20 MB"));
    }
}
