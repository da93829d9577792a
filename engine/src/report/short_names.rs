//! Names that are read otherwise than word by word: those that mean one thing only beside a
//! certain unit, those that hold a norm or a strength, and the Danish numbers.

use super::fold::{Gap, Word as Token, fold, is_word, squash};
use super::languages::symbol_behind;
use crate::soil::{Method, Property};

/// Names that stand for other things too, unless their result is in per cent: `Ton` is clay or
/// a weight, `SA` the acidity's share or the end of a company's name, `PSI` the share of sodium or
/// a pressure.
const BESIDE_PERCENT: [(&str, Property); 9] = [
    ("ton", Property::Clay),
    ("sa", Property::AciditySaturation),
    ("psi", Property::SodiumSaturation),
    ("pst", Property::SodiumSaturation),
    ("kb", Property::BaseSaturation),
    ("so", Property::OrganicMatter),
    ("os", Property::OrganicMatter),
    ("co", Property::OrganicCarbon),
    ("cos", Property::OrganicCarbon),
];

pub(super) fn beside_percent(name: &str) -> Option<(&'static str, Property)> {
    // The small m of a Brazilian table, as it is written out.
    if name.starts_with("m%") && squash(name).trim_end_matches('%') == "m" {
        return Some(("m", Property::AciditySaturation));
    }
    if name.starts_with("V (%") && squash(name) == "v%" {
        return Some(("v", Property::BaseSaturation));
    }
    let is = |short: &&(&'static str, Property)| {
        // "so 5 %" is a sentence's, and O.S. a map.
        let small = name.bytes().any(|b| b.is_ascii_lowercase());
        name.len() <= short.0.len() + 6
            && squash(name).trim_end_matches('%') == short.0
            && (!small || matches!(short.0, "ton" | "sa"))
            && (name.contains('%') || !matches!(short.0, "os" | "so" | "co" | "cos"))
    };
    BESIDE_PERCENT.iter().find(is).copied()
}

/// Whether a name means what it is read as only beside a result in per cent.
pub(super) fn only_beside_percent(name: &str) -> bool {
    beside_percent(name).is_some()
}

/// A name with what only looks like other words spelled out.
pub(super) fn respelled(text: &str) -> Option<String> {
    // In a Brazilian table a small t is the exchange capacity at the soil's own pH.
    if text.contains("CTC") && (text.contains("(t)") || text.trim_end().ends_with("CTC t")) {
        return Some("ctc efetiva".into());
    }
    let folded = fold(text);
    // "K na CTC": "na" is "in the" here, and no sodium.
    if let Some((part, rest)) = text.split_once(" na CTC") {
        return Some(format!("{part} saturation {rest}"));
    }
    if let Some(rest) = folded.strip_prefix("al+h").or_else(|| folded.strip_prefix("al + h"))
        && !rest.starts_with(is_word)
    {
        return Some(format!("h+al {rest}"));
    }
    // "CTC efetiva (t)8/", "(M.O.)3/": see the note of that number.
    if let Some(name) = folded.strip_suffix('/')
        && let plain = name.trim_end_matches(|c: char| c.is_ascii_digit())
        && plain.len() < name.len()
        && plain.ends_with([')', 'l'])
    {
        return respelled(&text[..plain.len()]).or_else(|| Some(plain.into()));
    }
    // "P.S.I. (sodio intercambiable)"
    if folded.starts_with("p.s.i.") && folded.contains("(sodio") || folded == "p.s.i. (% na)" {
        return Some("esp".into());
    }
    if let Some(plain) = without_additions(&folded) {
        return Some(plain);
    }
    // By ammonium lactate, not with aluminium.
    if folded.contains("(a-l)") {
        return Some(folded.replace("(a-l)", " ammonium lactate"));
    }
    if let Some((form, rest)) = folded.split_once(" (al)")
        && matches!(form, "p2o5" | "k2o")
    {
        return Some(format!("{form} ammonium lactate {rest}"));
    }
    // `N.A.` with its dots is neutralizable acidity, not sodium and not "none".
    if let Some(rest) = folded.strip_prefix("n.a.") {
        return Some(format!("neutralizable acidity {rest}"));
    }
    if matches!(text.trim(), "U.M." | "U. M." | "UdM") {
        return Some("unit".into());
    }
    if let Some(symbol) = symbol_behind(&folded) {
        return Some(symbol.into());
    }
    if let Some(symbol) = in_bracket(text) {
        return Some(symbol);
    }
    // The grains that a fraction holds: "Clay (<0.002 mm)", "Sable (2 à 0,05 mm)".
    if let Some((name, rest)) = folded.split_once('(')
        && let Some((grains, rest)) = rest.split_once(')')
        && is_grain_size(grains)
    {
        return Some(format!("{name} {rest}"));
    }
    // Salts in mho/cm times a thousand or a million.
    for (power, unit) in [("x 10^3", "mmho/cm"), ("x 103", "mmho/cm"), ("x 10^6", "umho/cm")] {
        let spaced = folded.replace("x10", "x 10");
        if let Some((name, rest)) = spaced.split_once(power) {
            return Some(format!("{name} {unit} {rest}"));
        }
    }
    // The pH at which an exchange capacity is measured is no second property.
    let exchange = ["ctc", "cec", "cic", "csc", "h+al", "h + al"];
    if exchange.iter().any(|name| folded.starts_with(name)) {
        // "CIC (Ca+Mg+K+Al)" is the exchange at the soil's own pH, "CTC (SB + H+Al)" that at 7.
        if let Some((name, bracket)) = folded.split_once('(')
            && let Some((sum, rest)) = bracket.split_once(')')
            && sum.contains('+')
        {
            let own_ph = sum.contains("al") && !sum.contains('h');
            return Some(if own_ph { "ctc efetiva".into() } else { format!("{name} {rest}") });
        }
        for at in [" a ph 7,0", " a ph 7.0", " a ph 7", " ph 7,0", " ph 7.0", " ph 7", "(ph 7)"] {
            if folded.contains(at) {
                return Some(folded.replacen(at, " ", 1));
            }
        }
        return folded.strip_suffix(" a ph").map(Into::into);
    }
    None
}

/// A name without what it adds of how it was measured and worked out: `Humus (Corg × 1,72)`,
/// `silt 0,002-0,05 mm`.
fn without_additions(folded: &str) -> Option<String> {
    // Where a method of Rayment and Lyons stands in their handbook: `**R&L 7B1`.
    const OF_HANDBOOK: [&str; 3] = ["rayment & lyons ", "r&l ", "inhouse "];
    if let Some((ahead, rest)) = OF_HANDBOOK.iter().find_map(|of| folded.split_once(of)) {
        let (_, rest) = rest.split_once(' ').unwrap_or(("", ""));
        return Some(format!("{} {rest}", ahead.trim_end_matches(['*', ' '])));
    }
    // Nearly every name ends here.
    if !folded.contains(['×', '*', 'x', 'm']) {
        return None;
    }
    let digit = |c: char| c.is_ascii_digit();
    if let Some((name, rest)) = folded.split_once('(')
        && let Some((formula, rest)) = rest.split_once(')')
        && let Some((_, factor)) = formula.rsplit_once(['×', '*', 'x'])
        && factor.trim_start().starts_with(['1', '2'])
        && formula.contains(is_word)
    {
        return Some(format!("{name}{rest}"));
    }
    // The grains without a bracket, behind a name of them.
    let (name, grains) = folded.split_once([' ', '<'])?;
    let grains = &folded[name.len()..][..grains.len() + 1];
    let end = grains.find("mm").or_else(|| grains.find("um"))? + 2;
    (grains[..end].contains(digit) && is_grain_size(&grains[..end]))
        .then(|| format!("{name}{}", &grains[end..]))
}

/// The symbol that stands in a bracket behind a name in one of the scripts from Hebrew to Thai,
/// whose words are not known here: `उपलब्ध जिंक (Zn)`.
fn in_bracket(text: &str) -> Option<String> {
    const SYMBOLS: [&str; 15] =
        ["pH", "EC", "OC", "O.C", "OM", "P", "K", "Ca", "Mg", "S", "Zn", "Fe", "Mn", "Cu", "B"];
    // Nearly every name ends here.
    if text.is_ascii() {
        return None;
    }
    let (name, rest) = text.split_once('(')?;
    let (symbol, rest) = rest.split_once(')')?;
    let script = |c: char| matches!(c, '\u{590}'..='\u{e7f}');
    let known =
        name.split_whitespace().count() < 4 && !name.contains(|c: char| c.is_ascii_alphabetic());
    (known && name.contains(script) && SYMBOLS.contains(&symbol.trim()))
        .then(|| format!("{} {rest}", symbol.trim()))
}

/// Whether a bracket holds nothing but the size of grains.
fn is_grain_size(folded: &str) -> bool {
    let known = |word: &str| {
        ["mm", "um", "a", "to", "de", "bis", "tot", "do", "<", ">", "-"].contains(&word)
            || word.bytes().all(|b| b.is_ascii_digit() || matches!(b, b'.' | b','))
    };
    let spaced: String = folded
        .chars()
        .flat_map(|c| if matches!(c, '<' | '>' | '-') { vec![' ', c, ' '] } else { vec![c] })
        .collect();
    let spaced = spaced.replace("mm", " mm ").replace("um", " um ");
    (spaced.contains("mm") || spaced.contains("um")) && spaced.split_whitespace().all(known)
}

/// The words of a norm: `NF ISO 10390`, `NF X 31-106`, `DIN 19684`.
pub(super) fn norm_at(words: &[Token]) -> Option<usize> {
    let body = |w: &Token| matches!(w.text.as_str(), "nf" | "iso" | "din" | "une" | "nen" | "uni");
    let [first, ..] = words else { return None };
    if !body(first) {
        return None;
    }
    // "NF X31-108"
    let series = |w: &Token| {
        let number = w.text.strip_prefix('x').filter(|rest| !rest.is_empty());
        number.is_some_and(|rest| rest.bytes().all(|b| b.is_ascii_digit()))
    };
    let also = |w: &&Token| body(w) || series(w) || matches!(w.text.as_str(), "x" | "en");
    let named = words.iter().take_while(also).count();
    let number = |w: &&Token| w.text.bytes().all(|b| b.is_ascii_digit());
    let most = if words[..named].iter().any(series) { 1 } else { 2 };
    let numbers = words[named..].iter().take_while(number).take(most).count();
    (numbers > 0).then_some(named + numbers)
}

/// The words of a solution's strength: `1 mol/L` beside the salt's name.
pub(super) fn strength_at(words: &[Token]) -> Option<usize> {
    let digits = |w: &&Token| w.text.bytes().all(|b| b.is_ascii_digit());
    let number = words.iter().take_while(digits).take(2).count();
    let [per, litre, ..] = words.get(number..)? else { return None };
    let mol = per.text == "mol" && litre.gap == Gap::Slash && litre.text == "l";
    (number > 0 && mol).then_some(number + 2)
}

/// The Danish numbers, written just so: the phosphorus, potassium and magnesium in mg/100 g, and
/// the reaction, which is the pH in calcium chloride and a half.
/// Source: Danish laboratories' guides (from memory).
pub(super) fn danish(name: &str) -> Option<(Property, Method)> {
    Some(match name.trim_end_matches([' ', ':', '=']) {
        "Rt" | "Reaktionstal" | "Reaktionstal (Rt)" => (Property::SaltPh, Method::CaCl2),
        "Pt" | "Fosfortal" | "Fosfortal (Pt)" => (Property::Phosphorus, Method::Olsen),
        "Kt" | "Kaliumtal" | "Kaliumtal (Kt)" => (Property::Potassium, Method::AmmoniumAcetate),
        "Mgt" | "Magnesiumtal" | "Magnesiumtal (Mgt)" => {
            (Property::Magnesium, Method::AmmoniumAcetate)
        }
        _ => return None,
    })
}

/// What a Danish reaction lies above the pH in calcium chloride.
pub(super) const RT_ABOVE_PH: f64 = 0.5;
