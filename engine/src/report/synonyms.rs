//! The spellings that laboratories print, walked one by one.

use super::label::Label;
use crate::quantity::Unit;
use crate::soil::Method;

/// What a name is read as: the property, its form where it is no element, the
/// method, the unit; or `-` and the beginning of the reason.
pub(super) fn read(name: &str) -> String {
    match Label::of(name).quantity() {
        Ok(q) => {
            let form = format!("{:?}", q.form);
            let form = if form == "Element" { "" } else { &form };
            let method = q.method.map_or("", Method::label);
            let unit = q.unit.map_or("", |u| Unit::symbol(u.unit));
            let all = [q.property.name(), form, method, unit];
            all.into_iter().filter(|t| !t.is_empty()).collect::<Vec<_>>().join(" ")
        }
        Err(why) => format!("- {why}"),
    }
}

/// Source: spellings in public sample reports, laboratory exports and extension bulletins
/// (opened), and in the other languages from memory.
#[test]
fn every_spelling_is_read_or_refused_as_it_should() {
    let cases: &[(&str, &str)] = &[
        ("ph", "pH|PH|Soil pH|pH eau|pH H2O|water pH|active pH|pHw|pH-Wert|pH em água|pH agua"),
        ("ph 1:1 water", "1:1 pH|1:1 Soil pH|pH (1:1 water)"),
        ("ph 1:2.5 water", "pH 1:2.5|pH (1:2,5 H2O)|pH eau 1:2.5"),
        ("ph 1:5 water", "pH (1:5 Water)"),
        ("ph saturated paste", "phSP|SAR-pH"),
        ("salt-ph", "pHs|salt pH"),
        ("salt-ph calcium chloride", "CaCl2 pH|pH (CaCl2)|pH (1:1 CaCl2)|pH(1:5 0.01M CaCl2)"),
        ("salt-ph potassium chloride", "pH KCl|pH (KCl)|pH 1N KCl"),
        ("buffer-ph", "Buffer pH|BpH|B-pH|BUFFER_PH|Buff pH|Buffer Index|LTI|Lime Test Index"),
        ("buffer-ph SMP buffer", "SMP Buffer|SMPBuffer|pH SMP"),
        ("buffer-ph Sikora buffer", "Sikora BpH"),
        ("buffer-ph Woodruff buffer", "WDRF Buffer pH|Woodruff Buffer pH"),
        ("buffer-ph Mehlich buffer", "Mehlich buffer"),
        ("buffer-ph Adams–Evans buffer", "Adams-Evans"),
        ("- lime buffer capacity", "LBC|LBCeq"),
        (
            "exchangeable-acidity",
            "Ac|Acidity|Exch. Acidity|H|HYD|N.A.|H+Al|acidez potencial|Acidez",
        ),
        (
            "organic-matter",
            "OM|O.M.|SOM|Humus|Matéria Orgânica|MATÉRIA ORGÂNICA|Matière organique|Organische Substanz",
        ),
        ("organic-matter loss on ignition", "LOI Organic Matter|OM (LOI)"),
        ("- humic", "HM%|Humic matter"),
        (
            "organic-carbon",
            "OC|TOC|TOCarb|Org C|Organic Carbon (OC)|LOI-C|carbono orgánico|Corg|Carbone organique",
        ),
        ("organic-carbon Walkley–Black", "Org C (Walkley-Black)"),
        ("nitrogen-release", "ENR|Est. N release|Estimated Nitrogen Release"),
        ("phosphorus", "P|Phosphorus|Phosphorous|fósforo|Phosphor|Phosphore|PMeh"),
        ("phosphorus Bray P1", "P1|Bray-1 P|Bray P-1|weak Bray|Bray P1"),
        ("phosphorus Bray P2", "P2|strong Bray|Bray P2"),
        (
            "phosphorus Mehlich-3",
            "M3-P|P-M3|P (M III)|Mehlich P-III|Mehlich-3 P|Phosphorus M3 ICAP",
        ),
        ("phosphorus Mehlich-3, colorimetric", "Mehlich-3 P (colorimetric)|M3 P colorimetric"),
        ("phosphorus Mehlich-1", "P Mehlich 1"),
        ("phosphorus Mehlich-2", "Mehlich-2 P"),
        ("phosphorus Olsen", "Olsen P|HCO3_P|PBic|P (sodium bicarbonate)"),
        ("phosphorus Colwell", "Colwell P|P (Colwell)|Phosphorus (Colwell)"),
        ("phosphorus CAL", "CAL-P|P (CAL)"),
        ("phosphorus P2O5 CAL", "P2O5 (CAL)"),
        ("phosphorus P2O5", "P2O5|P₂O₅|acide phosphorique"),
        ("phosphorus P2O5 Olsen", "P2O5 Olsen"),
        ("phosphorus P2O5 Joret–Hébert", "P2O5 Joret-Hébert|P2O5 (Joret Hébert)"),
        ("phosphorus P2O5 Dyer", "P2O5 Dyer"),
        ("phosphorus Lancaster", "P Lancaster"),
        ("phosphorus Kelowna", "P (Kelowna)"),
        ("phosphorus Modified Kelowna", "P (modified Kelowna)"),
        ("phosphorus resin", "P resina|P (resin)"),
        ("phosphorus H3A", "P H3A|H3A P"),
        ("phosphorus AB-DTPA", "P (AB-DTPA)|AB-DTPA P"),
        ("phosphorus Morgan", "P_Morgan|Morgan's P"),
        ("phosphorus Modified Morgan", "Mod. Morgan P"),
        ("phosphorus index", "P-I|P index"),
        ("- phosphate can mean", "Phosphat|Phosphate"),
        ("- phosphorus has no saturation|- what is dissolved", "PSatPas"),
        ("potassium", "K|Potassium|Kalium|potasio|potássio|Extractable Potassium"),
        ("potassium mg/kg", "K ppm|K_mg.kg"),
        ("potassium Mehlich-3", "M3-K"),
        ("potassium ammonium acetate", "NH4OAc-K"),
        ("potassium K2O", "K2O|Kali|Potasse"),
        ("potassium index", "K-I"),
        ("calcium", "Ca|CA|Calcium|Calcio|Cálcio|CaMeh"),
        ("calcium ammonium acetate", "NH4OAc-Ca"),
        ("calcium CaO", "CaO"),
        ("magnesium", "Mg|MG|Magnesium|Ma|Magnésio|Magnésium"),
        ("magnesium MgO", "MgO|Magnésie"),
        ("magnesium calcium chloride", "Magnesium CaCl2"),
        ("sodium", "Na|NA|Sodium|Natrium|Sodio|Sódio"),
        ("sulfur", "S|Sulfur|Sulphur|Sulfer|SO4-S|SO4_S|Sulfate-S|Schwefel|Soufre|Azufre|Enxofre"),
        ("sulfur So4", "SO4"),
        ("sulfur index", "S-I"),
        ("sulfur calcium phosphate", "MCP-S"),
        ("sulfur KCl-40", "KCl-40 S|S (KCl 40)"),
        ("boron", "B|Boron|Bor|Bore|Boro"),
        ("boron hot water", "Hot H2O-B"),
        ("boron DTPA–sorbitol", "B (DTPA-sorbitol)"),
        ("zinc", "Zn|Zinc|Zink|ZnMeh"),
        ("zinc DTPA", "DTPA-Zn|Zinc (DTPA)"),
        ("zinc Mehlich-3", "M3-Zn"),
        ("zinc 0.1 M hydrochloric acid", "Zn (0.1 M HCl)|Zn 0.1N HCl"),
        ("zinc index", "Zn-I"),
        ("manganese index", "Mn-I"),
        ("copper index", "Cu-I"),
        ("- an availability index", "Zn-AI|Mn-AI|MnAI|Mn-AI1"),
        ("manganese", "Mn|Mangan|Manganèse|Manganês|Manganeso"),
        ("copper", "Cu|Kupfer|Cuivre|Cobre"),
        ("iron", "Fe|Eisen|Fer|Hierro|Ferro"),
        // Whether MO is organic matter is decided by its unit.
        ("molybdenum", "Molybdän|Molybdène|Mo|MO|M.O."),
        ("aluminum", "Al|AL|Aluminum|Aluminium|Alumínio"),
        ("lead", "Pb|Lead|Blei"),
        ("lead total (acid digestion)", "est. total lead|Total Pb"),
        ("cadmium", "Cd|Cadmium"),
        ("arsenic", "As|Arsenic"),
        (
            "- not used by this program",
            "Ni|Cr|Selenium|ASC|Anion storage capacity|ACE|Soil Protein|Respiration|CO2-C|one day C|WSA|Aggregate stability|P retention",
        ),
        ("nitrate-n", "NO3-N|NO3_N|Nitrate-N|NO31|Nitratstickstoff|Azote nitrique"),
        ("nitrate-n No3", "NO3"),
        ("nitrate-n Unsure", "nitrato|Nitrat|nitrate"),
        ("nitrate-n potassium chloride", "2N KCl NO3-N"),
        ("- the nitrate of a deeper sample", "NO32"),
        ("ammonium-n", "NH4-N|Ammonium-N"),
        ("ammonium-n Nh4", "NH4"),
        ("ammonium-n Unsure", "Ammonium|Amonio"),
        ("ammonium-n potassium chloride", "KCl NH4-N"),
        ("total-n", "TN|TKN|Total N|LECO Tot. N|Azote total|Nitrógeno total|Gesamtstickstoff"),
        (
            "cec",
            "CEC|C.E.C.|Est-CEC|ECEC|Total Exchange Capacity|TEC|CEC/Sum of Cations|CTC|CIC|KAK|CEC Metson",
        ),
        (
            "base-saturation",
            "BS|% BS|BS%|V%|V %|Base Sat|Base saturation|Basensättigung|Saturação por bases",
        ),
        ("potassium-saturation", "PERK|BS-K|KBS"),
        ("potassium-saturation %", "%K Sat|K_PCT|K %"),
        ("calcium-saturation %", "Ca%|CA_PCT|% base saturation Ca"),
        ("magnesium-saturation %", "Mg%|MG_PCT"),
        ("sodium-saturation", "ESP|PERNA|exchangeable sodium %"),
        ("sodium-saturation %", "NA_PCT"),
        ("sar", "SAR"),
        (
            "ec",
            "EC|Soluble Salts|S.Salts|SS|S__SALTS|SOLSALT|TSS|C.E.|conductivity|Leitfähigkeit|Salinité",
        ),
        ("ec 1:1 water", "1:1 S Salts"),
        ("ec saturated paste", "ecSP|ECE|ECe"),
        ("ec index", "SS-I"),
        ("free-lime", "Excess Lime|EX__LIME|free lime|lime estimate|CaCO3|CCE|calcaire total"),
        ("- not used by this program", "calcaire actif"),
        ("sand", "Sand|Areia|Arena|Sable|Sables"),
        ("silt", "Silt|Silte|Limo|Schluff|Limons"),
        ("clay", "Clay|Argila|Arcilla|Argile"),
        ("bulk-density", "Bulk density|Density|scoop density|W/V|volume weight"),
        ("- active carbon", "POX-C|POXC|Active Carbon"),
        ("- a ratio", "C/N|C:N ratio|Ca:Mg ratio"),
        ("- a recommendation", "P2O5 REC|N REC|K2O empfehlung|Kalkbedarf pH"),
    ];
    let mut wrong = Vec::new();
    for (expected, names) in cases {
        for name in names.split('|') {
            let found = read(name);
            let fits = |e: &str| if e.starts_with('-') { found.starts_with(e) } else { found == e };
            if !expected.split('|').any(fits) {
                wrong.push(format!("{name}: {found}, not {expected}"));
            }
        }
    }
    assert!(wrong.is_empty(), "{wrong:#?}");
}
