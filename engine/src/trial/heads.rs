//! What the head of a column says it holds.

use super::Role;

/// Words of heads, small, in the languages whose reports are read most.
/// Source: heads of public trial tables met in stored text; the rest common practice, no source.
const WORDS: [(Role, &str); 5] = [
    (
        Role::Treatment,
        "treatment treatments trt treat trtmt tmt tratamiento tratamento trattamento traitement \
         behandlung variante variant amendment enmienda behandeling",
    ),
    (
        Role::Block,
        "block blocks blk bloque bloques bloc bloco blocco rep reps replicate replication \
         replicates repeticion repetición repetição répétition wiederholung herhaling pair pairs \
         par pareja paar paire",
    ),
    (
        Role::When,
        "when date day time sampled week month year season fecha día dia semana mes año datum \
         zeit tag woche jahr jour semaine mois année data stage sampling",
    ),
    (
        Role::Plot,
        "plot plots pot pots tray trays parcela maceta parzelle topf parcelle parcel vaso id \
         number no nr bed bancal beet row column line",
    ),
    (
        Role::Names,
        "sample samples name label muestra probe échantillon echantillon amostra campione monster",
    ),
];

/// Words for a time before and for one after.
const BEFORE: &str = "before pre prior initial baseline start antes previo inicial vor vorher \
                      avant start";
const AFTER: &str = "after post later final end después despues final nach nachher après apres";

/// Words for the plots that were left as they are.
/// Source: common practice, no source.
const CONTROL: &str = "control controls check untreated none nothing nil no without zero blank \
                       ctl ctrl ck testigo sin kontrolle unbehandelt ohne témoin temoin sans \
                       controle testemunha sem controllo uncharged";

/// The words of a text, small.
pub(super) fn words(text: &str) -> Vec<String> {
    text.split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .map(str::to_lowercase)
        .collect()
}

fn holds(list: &str, word: &str) -> bool {
    list.split_whitespace().any(|known| known == word)
}

/// What the head says, if it says it in its first or only word or two.
pub(super) fn role_of(head: &str) -> Option<Role> {
    let words = words(head);
    let said = |word: &String| {
        let list = WORDS.iter().find(|(_, list)| holds(list, word));
        list.map(|(role, _)| *role)
    };
    if words.len() > 3 {
        return None;
    }
    words.iter().find_map(said)
}

/// Whether a text names a time: `Some(false)` before, `Some(true)` after.
pub(super) fn before_or_after(text: &str) -> Option<bool> {
    words(text).iter().find_map(|word| {
        if holds(BEFORE, word) {
            Some(false)
        } else if holds(AFTER, word) {
            Some(true)
        } else {
            None
        }
    })
}

/// Whether a head speaks of a rate: a treatment in numbers.
pub(super) fn is_rate(head: &str) -> bool {
    words(head).iter().any(|word| holds("rate dose dosis amount biochar char dosage", word))
}

/// How plainly a treatment's name says that nothing was done: the lowest is the control.
pub(super) fn control_rank(name: &str) -> Option<usize> {
    let words = words(name);
    let digits = |word: &str| word.trim_end_matches(|c: char| c.is_ascii_digit()).to_string();
    if name.trim().parse::<f64>().is_ok_and(|rate| rate == 0.0) {
        return Some(0);
    }
    let first = words.first().map(|word| digits(word))?;
    if holds(CONTROL, &first) && first != "uncharged" {
        return Some(1);
    }
    let any = words.iter().any(|word| holds(CONTROL, &digits(word)));
    any.then_some(2)
}

/// Whether a word tells the block of what follows.
pub(super) fn is_block_word(word: &str) -> bool {
    WORDS.iter().any(|(role, list)| *role == Role::Block && holds(list, word))
}

/// Whether a word tells that a plot's own number follows.
pub(super) fn is_plot_word(word: &str) -> bool {
    let plot =
        |(role, list): &(Role, &str)| matches!(role, Role::Plot | Role::Names) && holds(list, word);
    WORDS.iter().any(plot)
}

/// Whether a word counts time, so that a number follows.
pub(super) fn is_time_word(word: &str) -> bool {
    holds("week month day year season semana mes año woche monat jahr", word)
}
