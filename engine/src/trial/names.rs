//! Sample names that hold treatment, block and time: `Control block 2`, `Biochar 3 after`.

use super::heads::{before_or_after, is_block_word, is_plot_word, is_time_word};

/// What a name says.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Parts {
    /// What was done.
    pub treatment: String,
    /// The block or pair, where the name has a word for it.
    pub block: String,
    /// When.
    pub when: String,
    /// The number that tells plots of one treatment apart.
    pub plot: String,
}

/// Takes a name apart.
pub(super) fn parts(name: &str) -> Parts {
    let apart = |c: char| c.is_whitespace() || "-_,/:()#;".contains(c);
    let words: Vec<&str> = name.split(apart).filter(|word| !word.is_empty()).collect();
    let mut found = Parts::default();
    let mut treatment: Vec<&str> = Vec::new();
    let mut at = 0;
    while at < words.len() {
        let word = words[at];
        let small = word.to_lowercase();
        let letters = small.trim_end_matches(|c: char| c.is_ascii_digit());
        let (next, glued) = (words.get(at + 1), letters.len() < small.len());
        let counts = |word: &&&str| is_count(word);
        if is_block_word(letters) && (glued || next.filter(counts).is_some()) {
            found.block = if glued { small[letters.len()..].into() } else { words[at + 1].into() };
            at += usize::from(!glued);
        } else if is_time_word(letters) && (glued || next.filter(counts).is_some()) {
            found.when = if glued { word.into() } else { format!("{word} {}", words[at + 1]) };
            at += usize::from(!glued);
        } else if before_or_after(&small).is_some() {
            found.when = word.into();
        } else if is_plot_word(letters) && (glued || next.filter(counts).is_some()) {
            found.plot = if glued { small[letters.len()..].into() } else { words[at + 1].into() };
            at += usize::from(!glued);
        } else if !treatment.is_empty() && is_count(word) && found.plot.is_empty() {
            found.plot = word.into();
        } else if glued && !letters.is_empty() && found.plot.is_empty() {
            treatment.push(&word[..letters.len().min(word.len())]);
            found.plot = small[letters.len()..].into();
        } else {
            treatment.push(word);
        }
        at += 1;
    }
    found.treatment = treatment.join(" ");
    found
}

/// A number or a single letter, as in `2` or `B`.
fn is_count(word: &str) -> bool {
    let mut letters = word.chars();
    let one = letters.next().is_some_and(char::is_alphabetic) && letters.next().is_none();
    one || (word.len() <= 4 && word.bytes().all(|b| b.is_ascii_digit()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_is_taken_apart() {
        let cases = [
            ("Control block 2", ["Control", "2", "", ""]),
            ("Biochar 3 after", ["Biochar", "", "after", "3"]),
            ("char+compost rep4", ["char+compost", "4", "", ""]),
            ("Control-B", ["Control", "", "", "B"]),
            ("untreated_pair 1 week 6", ["untreated", "1", "week 6", ""]),
            ("Control1", ["Control", "", "", "1"]),
            ("Plot 7", ["", "", "", "7"]),
        ];
        for (name, [treatment, block, when, plot]) in cases {
            let expected = Parts {
                treatment: treatment.into(),
                block: block.into(),
                when: when.into(),
                plot: plot.into(),
            };
            assert_eq!(parts(name), expected, "{name}");
        }
    }
}
