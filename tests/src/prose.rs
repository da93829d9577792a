//! The texts that a source holds, and how long their sentences and words are.

/// The texts in quotes of a Rust or JavaScript source, without its tests.
pub fn literals(source: &str) -> Vec<String> {
    let source = source.split("#[cfg(test)]\nmod tests {").next().unwrap_or_default();
    let code = source.lines().filter(|line| !line.trim_start().starts_with("//"));
    let code = code.collect::<Vec<_>>().join("\n");
    let mut all = Vec::new();
    let mut signs = code.chars().peekable();
    while let Some(sign) = signs.next() {
        if sign == '\'' {
            // A sign in quotes: '"' opens no text.
            let mut ahead = signs.clone();
            let taken = match ahead.next() {
                Some('\\') => 2,
                Some(_) => 1,
                None => break,
            };
            if ahead.nth(taken - 1) == Some('\'') {
                signs.nth(taken);
            }
            continue;
        }
        if sign != '"' {
            continue;
        }
        let mut text = String::new();
        while let Some(sign) = signs.next() {
            match sign {
                '"' => break,
                '\\' => match signs.next() {
                    Some('\n') => {
                        while signs.peek().is_some_and(|sign| sign.is_whitespace()) {
                            signs.next();
                        }
                    }
                    Some('n') => text.push('\n'),
                    Some('u') => {
                        let code: String =
                            signs.by_ref().skip(1).take_while(|sign| *sign != '}').collect();
                        text.extend(u32::from_str_radix(&code, 16).ok().and_then(char::from_u32));
                    }
                    Some(other) => text.push(other),
                    None => break,
                },
                sign => text.push(sign),
            }
        }
        all.push(text);
    }
    all
}

/// What the measures of plain language are made of.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Prose {
    /// Sentences.
    pub sentences: f64,
    /// Words.
    pub words: f64,
    /// Syllables.
    pub syllables: f64,
}

impl Prose {
    /// Counts texts. `joins` says which signs belong to a word beside letters;
    /// `syllables` counts those of a word.
    pub fn of<'a>(
        texts: impl IntoIterator<Item = &'a str>,
        joins: &[char],
        syllables: fn(&str) -> usize,
    ) -> Prose {
        let mut all = Prose::default();
        for text in texts {
            for sentence in text.split(['.', '!', '?', ':', ';']) {
                let said: Vec<&str> = sentence
                    .split(|sign: char| !sign.is_alphabetic() && !joins.contains(&sign))
                    .filter(|word| word.chars().any(char::is_alphabetic))
                    .collect();
                if said.is_empty() {
                    continue;
                }
                all.sentences += 1.0;
                all.words += said.len() as f64;
                all.syllables += said.iter().map(|word| syllables(word)).sum::<usize>() as f64;
            }
        }
        all
    }
}
