//! A sorted list of spellings that can tell early when no longer phrase can match.

/// Spellings and what each stands for.
pub(super) struct Lexicon<T> {
    entries: Vec<(&'static str, T)>,
}

impl<T: Copy> Lexicon<T> {
    /// Sorts the spellings.
    pub fn new(entries: impl Iterator<Item = (&'static str, T)>) -> Lexicon<T> {
        let mut entries: Vec<_> = entries.collect();
        entries.sort_unstable_by_key(|e| e.0);
        Lexicon { entries }
    }

    /// What a phrase stands for, and whether a longer spelling begins with it.
    pub fn look_up(&self, phrase: &str) -> (Option<T>, bool) {
        let at = self.entries.partition_point(|e| e.0 < phrase);
        let here = self.entries.get(at).filter(|e| e.0 == phrase).map(|e| e.1);
        let next = self.entries.get(at + usize::from(here.is_some()));
        (here, next.is_some_and(|e| e.0.starts_with(phrase)))
    }
}
