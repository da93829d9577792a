//! Results in sentences: `The pH came back 6.2 and phosphorus was 45 ppm`.
//!
//! A number belongs to the property named before it where nothing but words of telling stand
//! between them, and where the clause does not speak of an aim, another time or other people.

use std::collections::BTreeSet;
use std::sync::LazyLock;

use super::Cell;
use super::fold::{
    Gap, Word as Token, clauses, fold, fold_char, is_letter, is_word, sentences, words,
};
use super::label::Label;
use super::names::{Meaning, meaning_at};
use super::number::{Decimal, Said, is_rating, is_year, said};
use super::place::{Draft, Tail};
use crate::soil::Property;

/// A longer text is no letter. Our choice, bytes.
const LONGEST: usize = 6_000;

/// Fewer words are no sentence.
const LEAST_WORDS: usize = 5;

/// Words that may stand between a property and its number, folded, one language a line.
/// To add a language, add a line here and one to `NOT_TOLD`.
const TELLING: &[&str] = &[
    "is was are were came come comes back in at of has had have a an the reading reads read \
     stands stood sits sat tested tests test measured measures level levels content value values \
     result found reported got about around only just still now very quite up out turned to be it \
     on by report lab says said with through roof jumps jumped rises rose falls fell drops dropped \
     reaches reached shows showed climbs climbed goes went",
    "ist war liegt lag bei betragt betrug hat von der die das wert gehalt gemessene gemessen \
     gemessener auf noch nur etwa rund ca knapp aktuell derzeit",
    "est etait sont de du d a s eleve la le les teneur taux valeur mesure environ",
    "es fue esta estan era son de del el la los las en con un una contenido nivel valor \
     resulto salio dio",
    "e foi esta deu em de do da o a os as com um uma teor valor ficou",
    "e era risulta di del della il la lo al un una contenuto valore pari",
    "is was bedraagt ligt op van de het een gehalte waarde",
    "ar var ligger pa har vi er hos det den halt halten vardet verdien innhold",
    "wynosi jest byl bylo na poziomie zawartosc wartosc",
    "je byl bylo cini obsah hodnota",
    "составляет составил равен равно показал",
];

static TELLING_WORDS: LazyLock<BTreeSet<&'static str>> =
    LazyLock::new(|| TELLING.iter().flat_map(|line| line.split_whitespace()).collect());

/// Beginnings of words before a number by which it is none of this soil's results, folded.
const NOT_TOLD: &[&str] = &[
    "good garden|good soil|most |should|ideal|optim|range|between|target|aim|want|need|add|apply|raise|lower|reduce|below|above|\
     under|over|least|last time|recommend|require|prefer|like to|last year|ago|before|used to|previous|earlier|\
     mine|my own|neighbo|water|well|rain|if|until|would|could|when|per|suggest|goal|usual|typical|\
     normal|average|other people|hers|his|compost|anything|rec|lime|calls|limit|guideline|threshold|\
     screening|standard|the line |action level|trigger",
    "soll|ideal|optimal|bereich|zwischen|ziel|brauch|kalk|gabe|dung|vor|jahr|fruher|letzt|unter|uber|\
     mindestens|empf|wenn|bis|giesswasser|leitungswasser|brunnen|mir|normal|durchschnitt",
    "conseil|fumure|dose|devrait|ideal|optim|entre|viser|apport|ajout|inferieur|superieur|moins|plus|avant|an dernier|derniere|si|\
     souhait|eau|recommand|norme|seuil",
    "deberia|ideal|optim|entre|meta|aplicar|agregar|menor|mayor|menos|mas|antes|ano|si|agua|recom|\
     rango|sobre|inferior|superior",
    "deveria|aplicar|acima|abaixo|faixa|se |agua|recom|dose|calcario",
    "dovrebbe|tra|sotto|sopra|meno|piu|anno|se|acqua|consigl|intervallo",
    "moet|tussen|onder|boven|minder|meer|jaar|als|water|advies|streef",
    "bor|borde|mellan|under|over|minst|ar sedan|om |hade|vatten|hopp|rad|malet|brist|skulle",
    "powin|miedzy|ponizej|powyzej|rok|jesli|wod|zalec",
    "mel|mezi|pod|nad|rok|pokud|vod|doporuc",
    "должн|между|ниже|выше|год|если|вод|рекоменд|норм",
];

/// Words that part clauses, folded.
const JOINS: &[&str] =
    &["and", "but", "while", "und", "aber", "et", "y", "och", "og", "en", "i", "и"];

/// The results that sentences tell; none where the text is no sentence.
pub(super) fn told(cell: &Cell, decimal: Decimal) -> Vec<Draft> {
    let text = &cell.text;
    let figures = text.bytes().any(|b| b.is_ascii_digit());
    if !figures || text.len() > LONGEST || !is_prose(text) || is_of_a_study(text) {
        return Vec::new();
    }
    let mut drafts = Vec::new();
    for sentence in sentences(text) {
        if begins_word(&fold(sentence), OF_OTHERS) || is_formula(sentence) {
            continue;
        }
        for clause in clauses(sentence) {
            let at = clause.as_ptr() as usize - text.as_ptr() as usize;
            // "The first test, in 2022, said pH 7.0"
            let ahead = &sentence[..clause.as_ptr() as usize - sentence.as_ptr() as usize];
            if outside_brackets(ahead).split(|c: char| !c.is_ascii_digit()).any(is_year) {
                continue;
            }
            let mut from = 0;
            while let Some((draft, end)) = in_clause(clause, from, decimal) {
                drafts.extend(draft.map(|draft| placed(draft, cell, at)));
                from = end;
            }
        }
    }
    drafts
}

/// Whether an equals sign makes a sentence a formula or a legend; that of "pH = 5.7" tells.
fn is_formula(sentence: &str) -> bool {
    let mut parts = sentence.split('=');
    let mut last = parts.next().unwrap_or("");
    for part in parts {
        let word = last.trim_end().rsplit([' ', ',', '(']).next().unwrap_or("");
        let number = part.trim_start().starts_with(|c: char| c.is_ascii_digit());
        if !number || Label::of(word).quantity().is_err() {
            return true;
        }
        last = part;
    }
    false
}

/// Words without which there is no sentence, folded.
const VERBS: &str = "be should must would is was are were came comes reads read stands stood sits sat tested measured found \
                     got had has have turned says ist war liegt lag betragt betrug hat est etait \
                     es fue esta estan era salio dio foi deu ficou risulta bedraagt ligt ar var \
                     ligger er wynosi jest byl bylo je cini составляет составил равен показал";

/// Whether a result that was read as one of a list may be one in a sentence: `The pH should be
/// 6.5` is none. The name is sought in the text.
pub(super) fn may_tell(text: &str, name: &str) -> bool {
    if !is_prose(text) {
        return true;
    }
    let of = |sentence: &&&str| sentence.contains(name);
    sentences(text).iter().find(of).is_none_or(|sentence| {
        let to = sentence.find(name).map_or(sentence.len(), |at| at + name.len());
        // Words between the name and its number count too.
        let number = sentence[to..].find(|c: char| c.is_ascii_digit());
        let before = &sentence[..to + number.unwrap_or(0)];
        !begins_word(&fold(sentence), OF_OTHERS) && is_told(before)
    })
}

/// Whether a text has the words of a sentence.
pub(super) fn is_prose(text: &str) -> bool {
    let words = text.split(|c: char| !is_letter(c)).filter(|w| !w.is_empty());
    words.count() >= LEAST_WORDS && has_verb(text)
}

/// Whether a text has a word without which there is no sentence.
pub(super) fn has_verb(text: &str) -> bool {
    let folded = fold(text);
    let mut words = folded.split(|c: char| !is_letter(c));
    words.any(|word| VERBS.split_whitespace().any(|verb| verb == word))
}

/// Words of a paper's abstract, folded: it tells of a trial's soils.
const STUDY: &[&str] = &[
    "significan",
    "treatment",
    "randomi",
    "replicat",
    "et al",
    "hypothes",
    "this study",
    "varianten",
    "traitement",
    "tratamiento",
    "tratamento",
    "experiment",
    "field trials",
    "meta-analys",
    "(n =",
    "p < 0",
    "p = 0",
    "± se",
];

pub(super) fn is_of_a_study(text: &str) -> bool {
    let folded = fold(text);
    STUDY.iter().any(|word| folded.contains(word))
}

/// The next property of a clause with its number, and where the clause goes on.
fn in_clause(clause: &str, from: usize, decimal: Decimal) -> Option<(Option<Draft>, usize)> {
    let tokens = words(clause);
    for at in (0..tokens.len()).filter(|&at| tokens[at].start >= from) {
        let Some((name, end)) = property_at(clause, &tokens, at) else { continue };
        let Some(number) = number_behind(clause, end) else { continue };
        let before = &clause[..number];
        let rest = &clause[number..];
        let Said::Amount(_, length) = said(rest, decimal) else { continue };
        let tail = Tail::of(&rest[length..], decimal);
        let after = number + length + tail.unit_end;
        if !is_told(before) || is_no_result(&clause[after..]) {
            return Some((None, after));
        }
        // "pH in salt was": a word between may say which.
        let whole = || clause[end - name.len()..number].trim();
        let told = Label::of(whole()).quantity().ok().filter(|q| is_reaction(q.property));
        let quantity = told.or_else(|| Label::of(name).quantity().ok());
        let draft = quantity.map(|quantity| Draft {
            result: rest[..length + tail.unit_end].trim().into(),
            unit: tail.unit,
            rating: tail.rating.filter(|r| is_rating(r)),
            // The place is counted from the clause for now.
            place: super::Place { line: 0, start: number as u32, end: after as u32 },
            ..Draft::of(quantity, name, super::Place::default(), decimal)
        });
        return Some((draft, after));
    }
    None
}

/// A draft with its place in the cell instead of that in its clause.
fn placed(mut draft: Draft, cell: &Cell, at: usize) -> Draft {
    let (from, to) = (at + draft.place.start as usize, at + draft.place.end as usize);
    let chars = |to: usize| cell.text[..to.min(cell.text.len())].chars().count() as u32;
    let start = cell.place.start + chars(from);
    draft.place = super::Place { line: cell.place.line, start, end: cell.place.start + chars(to) };
    draft
}

/// The name of a property that begins at a word, with the words that belong to it, and where it
/// ends. A lone letter is no name in a sentence, unless its number follows.
fn property_at<'a>(clause: &'a str, tokens: &[Token], at: usize) -> Option<(&'a str, usize)> {
    let (meaning, length) = meaning_at(tokens, at)?;
    if !matches!(meaning, Meaning::Is(..) | Meaning::IsBy(..)) {
        return None;
    }
    let (start, mut end) = (tokens[at].start, tokens[at + length - 1].end);
    let name = &clause[start..end];
    let letter = name.chars().count() == 1;
    // "ca." is about, and the Cl of "K-HCl" is no chloride.
    let symbol = name.len() < 3 && !matches!(fold(name).as_str(), "ph" | "om" | "ec");
    let part = at > 0 && matches!(tokens[at].gap, Gap::Glued);
    if part || symbol && !name.starts_with(|c: char| c.is_ascii_uppercase()) {
        return None;
    }
    // "Kalium (K-AL)" and "organic matter content (by loss on ignition)".
    let behind = clause[end..].trim_start();
    if behind.starts_with('(')
        && let Some(close) = behind.find(')')
    {
        let to = clause.len() - behind.len() + close + 1;
        if Label::of(&clause[start..to]).quantity().is_ok() {
            end = to;
        }
    }
    let lone = letter && !clause[end..].trim_start().starts_with(|c: char| c.is_ascii_digit());
    let told = || number_behind(clause, end).is_some_and(|n| n - end < 8);
    (!lone || told()).then_some((&clause[start..end], end))
}

/// Where the number begins that follows a name past words of telling.
fn number_behind(clause: &str, from: usize) -> Option<usize> {
    let mut depth = 0;
    let mut word = String::new();
    let known = |word: &str| {
        // "pH in salt": words of methods go with the name.
        let label = || Label::of(word);
        TELLING_WORDS.contains(word)
            || matches!(label(), l if l.unknown.is_empty() && l.properties.is_empty() && l.unit.is_none())
    };
    for (at, c) in clause[from..].char_indices() {
        let at = from + at;
        let begins = c.is_ascii_digit() || matches!(c, '<' | '>');
        if depth == 0 && begins && word.is_empty() {
            return Some(at);
        }
        if is_word(c) {
            word.push(fold_char(c));
            continue;
        }
        if depth == 0 && !word.is_empty() && !known(&word) && !is_rating(&word) {
            return None;
        }
        word.clear();
        match c {
            '(' => depth += 1,
            ')' => depth -= 1,
            '?' | '!' => return None,
            _ => {}
        }
    }
    None
}

fn is_reaction(property: Property) -> bool {
    matches!(property, Property::SaltPh | Property::BufferPh)
}

/// Beginnings of words in sentences about other people's soils, folded.
const OF_OTHERS: &[&str] = &[
    "prefer|leaf|leaves|tissue|petiole|mine |my own|neighbo|her |his |their |nachbar|vecin|vizin|voisin|granne|nabo|sasiad|soused|сосед|ours |yours |your own|hers |bei mir|chez moi|mio |mia |o meu |hos mig|hos meg",
];

/// Whether a word of a folded text begins with one of these.
fn begins_word(folded: &str, lists: &[&str]) -> bool {
    let starts = folded.match_indices([' ', '\'', '’']).map(|(at, mark)| at + mark.len());
    [0].into_iter().chain(starts).any(|at| {
        let rest = format!("{} ", &folded[at..]);
        lists.iter().any(|line| line.split('|').any(|phrase| rest.starts_with(phrase)))
    })
}

/// A text without what a bracket adds, which is about something else.
fn outside_brackets(text: &str) -> String {
    let mut plain = String::new();
    let mut depth = 0;
    for c in text.chars() {
        match c {
            '(' => depth += 1,
            ')' => depth -= 1,
            _ if depth == 0 => plain.push(c),
            _ => {}
        }
    }
    plain
}

/// Whether the words before a number tell a result of this soil.
fn is_told(before: &str) -> bool {
    // Within a bracket its own words count: "a sodic subsoil (ESP above 6".
    let inside = before.rsplit_once('(').filter(|(_, inside)| !inside.contains(')'));
    let plain = outside_brackets(&fold(inside.map_or(before, |(_, inside)| inside)));
    // Words before the last joining word are of another clause.
    let own = plain
        .split_whitespace()
        .rev()
        .take_while(|w| !JOINS.contains(w))
        .collect::<Vec<_>>()
        .into_iter()
        .rev()
        .collect::<Vec<_>>()
        .join(" ");
    let other = begins_word(&own, NOT_TOLD);
    let year = own.split(|c: char| !c.is_ascii_digit()).any(is_year);
    !other && !year
}

/// Whether what stands behind a number says that it is a limit or one end of a range.
fn is_no_result(behind: &str) -> bool {
    let folded = fold(behind);
    let rest = folded.trim_start_matches([' ', ',', '(']);
    // "1M pH 7" is the strength of an extract.
    let strength = behind.starts_with(['M', 'N']) && !behind[1..].starts_with(is_letter);
    strength
        || [
            "or more",
            "or less",
            "or above",
            "or below",
            "or higher",
            "or lower",
            "oder mehr",
            "und mehr",
            "ou plus",
            "o mas",
            "i fjor",
            "last year",
            "in 19",
            "in 20",
            "ago",
            "minimum",
            "maximum",
            "per 1000",
            "per 100 sq",
            "/1000",
        ]
        .iter()
        .any(|words| rest.starts_with(words))
}
