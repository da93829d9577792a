//! The units that reports print, by their many spellings.

use std::sync::LazyLock;

use super::fold::{Gap, Word};
use super::languages;
use super::lexicon::Lexicon;
use crate::quantity::Unit;

/// A unit as printed: the engine's unit and what one of the printed unit is in it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Printed {
    pub unit: Unit,
    pub scale: f64,
}

/// Spellings, folded, with `/` where the text has a slash, a dot, an
/// underscore or `per`. The third column is the size of the printed unit in
/// the engine's unit.
/// Source: common practice; 1 mmho/cm = 1 dS/m = 1 mS/cm = 1000 µS/cm.
const UNITS: &[(Unit, f64, &str)] = &[
    (
        Unit::MgPerKg,
        1.0,
        "ppm partspermillion parts/million mg/kg mgkg-1 ug/g mgs/kg mg/1000g g/t g/tonne mg/kg-1 p/p/m \
         mg/kgts mg/kgds mg/kgdw mg/kgdm mg/kgtm mg/kgtr mg/kgms mg/kgss mg/kgsuchehmoty mg/kgboden mg/kgsuelo mg/kgdesuelo \
         mg/kgsolo mg/kgterre mg/kgdeterre mg/kgterreseche mg/kgjord mg/kgtorrsubstans mg/kgsoil mg/kgdrysoil mg/kggleby \
         mg/kgpudy mg/kgmatiereseche mg/kgsec mg/kgss",
    ),
    (
        Unit::MgPerL,
        1.0,
        "mg/l mg/litre mg/liter mgl-1 mg/dm3 mgdm-3 ug/ml mg/l-1 mg/dm-3 ug/cm3 g/m3 mg/dm3gleby mg/lmaata mg/lmaa mg/lboden mg/ljord mg/lsoil",
    ),
    (
        Unit::MgPer100g,
        1.0,
        "mg/100g mg/100gram mg/100gramm mg100g-1 mg/100g-1 mg/100gr mg/100grs mg/100gboden mg/100gtrockenerboden mg/100gsoil mg/100ggrond mg/100gdrogegrond mg/100gterre mg/100gterreseche mg/100gdeterre mg/100gdeterreseche mg/100ggleby mg/100gpudy mg/100gjord mg/100gts mg/100gds mg/100gts mg/100gtalaj mg/100gsuelo mg/100gdesuelo mg/100gsol mg/100g乾土 mg/100g土",
    ),
    (Unit::MgPerKg, 0.001, "ug/kg ppb mug/kg ugkg-1"),
    (Unit::MgPerL, 10.0, "mg/100ml mg/100cm3 mg/100cc"),
    (
        Unit::LbPerAcre,
        1.0,
        "lb/acre lbs/acre lb/ac lbs/ac lb/a lbs/a #/a #/ac #/acre lbacre lbsacre lba lbsa lbac lbsac pounds/acre pound/acre pp2m lbac-1 lbacre-1 lba-1 ib/a ibs/a ib/ac ibs/ac ib/acre ibs/acre 1b/a 1bs/a 1bs/acre",
    ),
    (Unit::KgPerHa, 1.0, "kg/ha kgs/ha kg/hectare kgha-1 kg/ha-1"),
    (Unit::KgPerHa, 10.0, "kg/da kg/dekar kg/daa"),
    (
        Unit::MeqPer100g,
        1.0,
        "meq/100g me/100g meq100g me100g meq% me% meq100g-1 cmol/kg cmolc/kg cmolkg-1 cmolckg-1 cmols/kg mval/100g meq/100gm meq/100grams cmolpkg milliequivalents/100g cmolp/kg cmole/kg cmol/kg-1 cmolc/kg-1 cmoles/kg cmolec/kg cmolcarga/kg cmolescarga/kg meq/100gr meq/100grs me/100gr meq/100g-1 meq/100gboden meq/100gsoil meq/100gsuolo meq/100gterre meq/100g乾土 me/100g乾土 mmolc/100g mmolia/100g mmolie/100g mmoleq/100g mmol/eq/100g mval/100gboden cmolc/kgsolo cmol/kgsuelo",
    ),
    (
        Unit::MmolcPerKg,
        1.0,
        "mmolc/kg mmolckg-1 meq/kg mmolc/kg-1 mval/kg mmolia/kg mmolie/kg mmoleq/kg meqkg-1",
    ),
    (
        Unit::MeqPer100cm3,
        1.0,
        "meq/100cm3 meq/100cc meq/100ml cmolc/dm3 cmol/dm3 cmolc/l cmol/l me/100ml cmolcdm-3 cmolc/dm-3 cmoldm-3 cmol/dm-3 meq/dl cmolcl-1 cmoll-1",
    ),
    (Unit::MeqPer100cm3, 0.1, "mmolc/dm3 mmolcdm-3 mmolc/dm-3"),
    (
        Unit::Percent,
        1.0,
        "% pct percent percentage percentages g/100g prozent %ofecec %ofcec %ecec %cec %ctc %cic %dactc %delacic %delacice dag/kg dagkg-1 dag/kg-1 gew% masse% %masse %gew %w/w %m/m m/m% %p/p %ms %ts %ds %tm %tr %dm %csc %kak %kvk %delacic %delacec %delactc %dacsc %dellacsc %vancec %derkak %dacec %ofcationexchangecapacity %cationexchangecapacity %mass",
    ),
    (
        Unit::GPerKg,
        1.0,
        "g/kg gkg-1 g/kg-1 ‰ promille promil permille pormil permil g/kgts g/kgms g/kgds g/kgtm g/kgsuelo g/kgsolo g/kgterre g/kgboden g/kgsoil kg/t mg/g",
    ),
    (Unit::GPerL, 10.0, "dag/dm3 dag/l"),
    (Unit::GPerL, 1.0, "g/dm3 gdm-3 g/l gl-1 g/dm-3"),
    (
        Unit::DsPerM,
        1.0,
        "ds/m dsm-1 mmho/cm mmhos/cm mmhocm-1 mmhoscm-1 ms/cm mscm-1 mmho mmhos ds/m-1 ms/cm-1 mmho/cm-1 mmhos/cm-1 msiemens/cm",
    ),
    (Unit::DsPerM, 0.01, "ms/m msm-1 ms/m-1"),
    (
        Unit::UsPerCm,
        1.0,
        "us/cm uscm-1 umho/cm umhos/cm us/cm-1 umho/cm-1 umhos/cm-1 umhocm-1 umhoscm-1",
    ),
    (Unit::Index, 1.0, "mafunits mafunit qtunits"),
    (
        Unit::GPerCm3,
        1.0,
        "g/cm3 g/cc gcm-3 g/ml t/m3 kg/l mg/m3 kg/dm3 g/cm-3 t/m-3 tm-3 kgdm-3 mgm-3 mg/m-3",
    ),
];

static BY_SPELLING: LazyLock<Lexicon<Printed>> = LazyLock::new(|| {
    Lexicon::new(UNITS.iter().chain(languages::UNITS).flat_map(|&(unit, scale, spellings)| {
        spellings.split(' ').map(move |s| (s, Printed { unit, scale }))
    }))
});

/// The unit that begins at word `from`, and how many words it takes.
pub(super) fn unit_at(words: &[Word], from: usize) -> Option<(Printed, usize)> {
    let mut spelling = String::new();
    let mut found = None;
    let mut after_per = false;
    let mut skipped = 0;
    for (i, word) in words.iter().enumerate().skip(from).take(6) {
        // "mg P/kg" and "mg NO3-N kg-1" name the element once more; "Mg mg/kg" is a name and a unit.
        let weight = matches!(spelling.as_str(), "mg" | "ug" | "g");
        // "lbs N/A" alone may be a rate; behind a name it is what was found.
        let of_area = from > 0 && matches!(spelling.as_str(), "kg" | "lb" | "lbs");
        if i == from + 1 && (weight || of_area) {
            skipped = element_within(&words[i..]);
        }
        if i <= from + skipped && i > from {
            continue;
        }
        if i > from {
            match word.gap {
                Gap::Wall => break,
                Gap::Slash | Gap::Soft => spelling.push('/'),
                Gap::Dash if matches!(word.text.as_str(), "1" | "3") => spelling.push('-'),
                _ if after_per => spelling.push('/'),
                _ => {}
            }
            after_per = word.text == "per";
            if after_per {
                continue;
            }
        }
        spelling.push_str(&word.text);
        let (printed, goes_on) = BY_SPELLING.look_up(&spelling);
        if let Some(printed) = printed {
            found = Some((printed, i + 1 - from));
        }
        if !goes_on {
            break;
        }
    }
    found
}

/// How many words name the element within a unit: `P/kg`, `NO3-N kg-1`.
fn element_within(words: &[Word]) -> usize {
    const ELEMENTS: [&str; 14] =
        ["p", "k", "ca", "na", "n", "s", "b", "zn", "mn", "cu", "fe", "al", "cl", "mo"];
    let ion = |w: &Word| matches!(w.text.as_str(), "no3" | "nh4" | "so4" | "po4");
    let element = |w: &Word| ELEMENTS.contains(&w.text.as_str());
    let count = match words {
        [first, second, ..] if ion(first) && second.gap == Gap::Dash && element(second) => 2,
        [first, ..] if first.gap == Gap::Space && element(first) => 1,
        _ => return 0,
    };
    let behind = words.get(count..).unwrap_or(&[]);
    let weight = |w: &Word| matches!(w.text.as_str(), "kg" | "l" | "dm" | "g");
    let per = behind.first().is_some_and(|w| w.gap == Gap::Slash)
        || matches!(behind, [of, minus, ..]
            if weight(of) && minus.gap == Gap::Dash && matches!(minus.text.as_str(), "1" | "3"));
    if per { count } else { 0 }
}

/// The unit `mg/100g` or `mg/kg` with the name of a form within it, as `mg P2O5/100 g`.
pub(super) fn unit_round_form(words: &[Word]) -> Option<(Printed, usize)> {
    let [mg, form, rest, ..] = words else { return None };
    let within = mg.text == "mg"
        && form.gap == Gap::Space
        && matches!(form.text.as_str(), "p2o5" | "k2o" | "mgo" | "cao" | "no3")
        && rest.gap == Gap::Slash;
    if !within {
        return None;
    }
    let unit = |unit, length| Some((Printed { unit, scale: 1.0 }, length));
    match rest.text.as_str() {
        "kg" => unit(Unit::MgPerKg, 3),
        "l" | "dm3" => unit(Unit::MgPerL, 3),
        "100g" => unit(Unit::MgPer100g, 3),
        "100" => unit(Unit::MgPer100g, 4),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::super::fold::words;
    use super::*;

    #[test]
    fn each_spelling_is_its_unit() {
        let cases = [
            ("ppm", Unit::MgPerKg),
            ("mg/kg", Unit::MgPerKg),
            ("mg.kg", Unit::MgPerKg),
            ("mg kg⁻¹", Unit::MgPerKg),
            ("mg per kg", Unit::MgPerKg),
            ("mg P/kg", Unit::MgPerKg),
            ("mg K/100 g", Unit::MgPer100g),
            ("mg B/kg", Unit::MgPerKg),
            ("mg P/dm3", Unit::MgPerL),
            ("mg N kg-1", Unit::MgPerKg),
            ("mg NO3-N kg−1", Unit::MgPerKg),
            ("mg P kg⁻¹", Unit::MgPerKg),
            ("mg K dm-3", Unit::MgPerL),
            ("MG/L", Unit::MgPerL),
            ("mg/dm³", Unit::MgPerL),
            ("lbs/A", Unit::LbPerAcre),
            ("#/A", Unit::LbPerAcre),
            ("pounds per acre", Unit::LbPerAcre),
            ("kg ha-1", Unit::KgPerHa),
            ("meq/100 g", Unit::MeqPer100g),
            ("me/100g", Unit::MeqPer100g),
            ("me%", Unit::MeqPer100g),
            ("cmol(+)/kg", Unit::MeqPer100g),
            ("cmol(c)/kg", Unit::MeqPer100g),
            ("cmol+/kg", Unit::MeqPer100g),
            ("cmolc.kg", Unit::MeqPer100g),
            ("mmolc/kg", Unit::MmolcPerKg),
            ("meq/100 cm³", Unit::MeqPer100cm3),
            ("mmhos/cm", Unit::DsPerM),
            ("mS/cm", Unit::DsPerM),
            ("µS/cm", Unit::UsPerCm),
            ("μS/cm", Unit::UsPerCm),
            ("g/cc", Unit::GPerCm3),
            ("%", Unit::Percent),
        ];
        for (text, unit) in cases {
            let words = words(text);
            let (printed, length) = unit_at(&words, 0).unwrap_or_else(|| panic!("{text}"));
            assert_eq!((printed.unit, length), (unit, words.len()), "{text}");
        }
    }

    #[test]
    fn a_magnesium_column_in_kg_per_ha_is_not_mg_per_kg() {
        assert_eq!(unit_at(&words("Mg kg/ha"), 0), None);
        assert_eq!(unit_at(&words("Mg mg/kg"), 0), None);
        assert_eq!(unit_at(&words("mg P2O5/100 g"), 0), None);
        assert_eq!(unit_at(&words("Mg kg/ha"), 1).unwrap().0.unit, Unit::KgPerHa);
    }
}
