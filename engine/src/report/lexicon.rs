//! A sorted list of spellings that can tell early when no longer phrase can match.

/// Spellings and what each stands for.
pub(super) struct Lexicon<T> {
    index: Index,
    meanings: Vec<T>,
}

impl<T: Copy> Lexicon<T> {
    /// Takes the spellings and sorts them.
    pub fn new(entries: impl Iterator<Item = (&'static str, T)>) -> Lexicon<T> {
        let mut lexicon = Lexicon { index: Index::default(), meanings: Vec::new() };
        for (spelling, meaning) in entries {
            lexicon.index.add(spelling, lexicon.meanings.len());
            lexicon.meanings.push(meaning);
        }
        lexicon
    }

    /// What a phrase stands for, and whether a longer spelling begins with it.
    pub fn look_up(&self, phrase: &str) -> (Option<T>, bool) {
        let (at, goes_on) = self.index.look_up(phrase);
        (at.map(|at| self.meanings[at]), goes_on)
    }
}

/// The spellings in order, each with its number. Apart from what they mean, so
/// that the page carries this once.
#[derive(Default)]
struct Index(Vec<(&'static str, usize)>);

impl Index {
    fn add(&mut self, spelling: &'static str, number: usize) {
        let at = self.0.partition_point(|e| e.0 < spelling);
        self.0.insert(at, (spelling, number));
    }

    fn look_up(&self, phrase: &str) -> (Option<usize>, bool) {
        let at = self.0.partition_point(|e| e.0 < phrase);
        let here = self.0.get(at).filter(|e| e.0 == phrase).map(|e| e.1);
        let next = self.0.get(at + usize::from(here.is_some()));
        (here, next.is_some_and(|e| e.0.starts_with(phrase)))
    }
}
