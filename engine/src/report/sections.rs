//! The parts of a page: what stands under a heading of leaves, water, rates or ranges is no
//! result of a soil, until soil results begin again.

use std::sync::LazyLock;

use super::Cell;
use super::about::{AboutSample, about_sample};
use super::fold::{fold, fold_char, is_letter, is_word};
use super::grid::filled;
use super::label::Label;
use super::layout::{Role, is_result, role};
use super::lines::read_row;
use super::marks::{Mark, mark};
use super::no_samples::is_of_pages;
use super::number::{Decimal, is_range, is_year};
use crate::soil::Property;

/// A longer line is a sentence, not a heading. Our choice, in words and bytes.
const MOST_WORDS: usize = 14;
const LONGEST: usize = 140;

/// What a part of a page is about, when it is not the soil.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Matter {
    Leaf,
    Water,
    Compost,
    Fertiliser,
    Blood,
    Tank,
    Solution,
    Food,
    Weather,
    Prices,
    Trial,
    Rates,
    Ranges,
    Removal,
    Earlier,
}

impl Matter {
    /// What it is, for a reader.
    pub fn what(self) -> &'static str {
        match self {
            Matter::Leaf => "an analysis of leaves or plants",
            Matter::Water => "an analysis of water",
            Matter::Compost => "an analysis of compost or manure",
            Matter::Fertiliser => "the label of a fertiliser",
            Matter::Blood => "a blood test",
            Matter::Tank => "a test of an aquarium or a pool",
            Matter::Solution => "a recipe for a nutrient solution",
            Matter::Food => "a table of foods",
            Matter::Weather => "a table of the weather",
            Matter::Prices => "a list of prices or goods",
            Matter::Trial => "a list of the treatments of a trial",
            Matter::Rates => "a table of rates to spread",
            Matter::Ranges => "a table of ranges or limits",
            Matter::Removal => "a table of what crops take up",
            Matter::Earlier => "a list of earlier results",
        }
    }

    /// Why a line of such a part is no result.
    pub fn reason(self) -> String {
        match self {
            Matter::Rates => "a recommendation, not a result".into(),
            Matter::Ranges => "a target or a range, not a result".into(),
            Matter::Earlier => "an earlier result".into(),
            other => format!("it stands in {}, not in a soil test", other.what()),
        }
    }

    /// Whether such a part may name the soil in its heading, and stand within a soil report.
    pub fn is_about_soil(self) -> bool {
        matches!(
            self,
            Matter::Rates | Matter::Ranges | Matter::Removal | Matter::Prices | Matter::Earlier
        )
    }
}

/// What words in a heading say.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Says {
    /// The lines below are about this.
    Title(Matter),
    /// A table with such a column is about this.
    Column(Matter),
    /// A heading of soil.
    Soil,
    /// A heading of results.
    Results,
    /// The name of a laboratory, which may do more than soil.
    Laboratory,
    /// What stands behind the colon is what was tested.
    Tested,
}

/// Beginnings of words, folded, without marks; a blank at the end asks for a whole word.
/// To add a language, add its words to each row.
const PHRASES: &[(Says, &str)] = &[
    (
        Says::Soil,
        "soil|topsoil|boden|erde |sol |sols |terre |terres |suelo|solo |solos |terreno|terreni|suolo|grond|bodem|gleb |gleba |gleby |glebie |pudy|pudni|pude|jord|почв|грунт|ґрунт|toprak|talaj|solului|zemin|podny rozbor|podnych|viljavuus|maanayte|grondontleding|εδαφ|tanah|土壌|토양|garden test|土壤|zemlj",
    ),
    (
        Says::Results,
        "result|diagnostico para|diagnostico da|diagnostico de|value found|level found|your level|analysis results|laboratory results|ergebnis|messwerte|resultat|resultado|risultat|uitslag|wynik|vysledk|результат|tulokset|eredmeny|rezultat|hasil analisis|sonuc|αποτελεσuατ|分析結果|분석결과",
    ),
    (
        Says::Laboratory,
        "laborator|labor |labs |university|universit|universid|institut|station |estacion |service |services ",
    ),
    (
        Says::Tested,
        "sample|material|matrix|matriz|matrice|muestra|campione|probka|probe|probenart|echantillon|amostra|monster|prov |prove |vzorek|образец|проба|plant part|type |table |tabelle|tableau|tabla |tabela|tabella|tabel |quadro|cuadro|tabulka|таблица|appendix",
    ),
    (
        Says::Title(Matter::Leaf),
        "plant tissue|tissue report|tissue analysis|tissue test|leaf analysis|leaf report|leaf test|leaf tissue|petiole|foliar|plant analysis|plant part|sap analysis|forage analysis|hay analysis|blattanalyse|blattproben|pflanzenanalyse|pflanzensaft|analyse foliaire|analyse de feuilles|analyse petiolaire|analyse de vegetaux|analisis de hoja|material vegetal|tejido vegetal|analise de folha|tecido vegetal|analisi fogliar|analisi delle foglie|diagnostica fogliare|bladanalys|bladmonster|gewasanalyse|plantsap|vaxtanalys|vaxtprov|bladprov|planteanalyse|analiza lisci|analiza roslin|rozbor listu|rozbor rostlin|анализ листьев|анализ растени|листовая диагностика|растительн",
    ),
    (
        Says::Title(Matter::Water),
        "water analysis|water test|water report|water quality|water suitability|irrigation water|well water|bore water|borehole water|wasseranalyse|wasseruntersuchung|trinkwasser|brunnenwasser|giesswasser|analyse d eau|analyse de l eau|analyse des eaux|eau d irrigation|eau de forage|eau de puits|analisis de agua|analisis del agua|analisis de aguas|agua de riego|agua de pozo|analise de agua|analise da agua|agua de irrigacao|agua para irrigacao|agua de poco|acqua di irrigazione|acqua irrigua|acqua di pozzo|analisi dell acqua|analisi delle acque|wateranalyse|gietwater|drinkwater|bronwater|vattenanalys|brunnsvatten|vandanalyse|brondvand|vannanalyse|badanie wody|badania wody|woda ze|woda do|woda z |rozbor vody|анализ воды|вода из|вода для|вода питьевая|колодезн",
    ),
    (
        Says::Title(Matter::Compost),
        "compost test|compost analysis|compost report|compost quality|compost results|manure test|manure analysis|manure report|slurry|digestate|kompostanalyse|kompostuntersuchung|gulleanalyse|gulle |wirtschaftsdunger|garrest|analyse de compost|analyse du compost|analyse de fumier|analyse d effluent|analisis de compost|analisis del compost|analisis de estiercol|analise de composto|analise do composto|analise de esterco|ammendante|analisi del compost|analisi di compost|analisi del letame|compostanalyse|mestanalyse|drijfmest|kompostanalys|godselanalys|gylleanalyse|analiza kompostu|analiza obornika|rozbor kompostu|анализ компоста|анализ навоза|компост |навоз ",
    ),
    (
        Says::Title(Matter::Fertiliser),
        "guaranteed analysis|declared content|plant food|titoli dichiarati|concime|teneurs garanties|garantias|riquezas garantizadas|contenido declarado|garantierte|nahrstoffgehalte des|dungemittel|zusammensetzung des dung|gewaarborgd|gehalten meststof|zawartosc skladnikow nawoz|nawoz |hnojivo|состав удобрения|удобрение",
    ),
    (
        Says::Title(Matter::Blood),
        "pathology|blood|serum|blutbild|blutwerte|blutuntersuchung|analyse de sang|prise de sang|bilan sanguin|analisis de sangre|analitica de sangre|exame de sangue|hemograma|analisi del sangue|esame del sangue|bloedonderzoek|blodprov|blodprove|badanie krwi|badania krwi|krevni|rozbor krve|анализ крови",
    ),
    (
        Says::Title(Matter::Tank),
        "aquarium|reef tank|tank test|display tank|fish tank|pond test|pool test|pool water|swimming pool|schwimmbad|freibad|badewasser|meerwasser|acuario|acquario|akvarium|akvari|akwarium|аквариум|piscine|piscina|zwembad|pool log|basen kapielowy|basenu|бассейн",
    ),
    (
        Says::Title(Matter::Solution),
        "nutrient solution|hydroponic|litre tank|liter tank|gallon tank|stock solution|nahrlosung|solution nutritive|solucion nutritiva|solucao nutritiva|soluzione nutritiva|voedingsoplossing|naringslosning|naeringsoplosning|pozywka|zivny roztok|питательный раствор",
    ),
    (
        Says::Column(Matter::Food),
        "kcal|energy kcal|energia kcal|energie kcal|protein|proteina|proteine|eiweiss|eiwit|bialko|bilkoviny|белки|ккал",
    ),
    (
        Says::Column(Matter::Weather),
        "tmax|tmin|rainfall mm|neerslag|niederschlag|precipitation|precipitacion|precipitacao|precipitazion|opady|srazky|nederbord|осадки",
    ),
    (
        Says::Column(Matter::Prices),
        "fee |fees |price|prix |preis |preise |precio|preco |precos |prezzo|prijs |pris |cena |цена|fee per",
    ),
    (
        Says::Title(Matter::Prices),
        "price list|prices|fees from|fee schedule|fees |tarif|preisliste|preise |lista de precios|precios|tabela de precos|listino|prezzi |prijslijst|prislist|cennik|cenik|прайс|каталог|catalogue |catalog |katalog |catalogo |shopping list|einkaufsliste|liste de courses|lista de la compra|lista de compras|lista della spesa|boodschappen|lista zakupow|vivero y ",
    ),
    (
        Says::Column(Matter::Trial),
        "treatment|variante |traitement|tratamiento|tratamento|trattamento|behandeling|behandling|wariant|вариант",
    ),
    (
        Says::Title(Matter::Rates),
        "recommendation|fertilizer recommend|fertiliser recommend|fertilizer requirement|fertiliser requirement|nutrient requirement|per 10 square|per 1000 square|per 100 sq|per 1000 sq|per 1 000 sq|fertilizer guide|fertiliser guide|fertilizer rates|fertiliser rates|suggested for|suggested rates|soil fertility guidelines|lime rate|lime recommend|how much lime|nutrient needs|to apply|wie viel kalk|kalkbedarf im|dungeempfehlung|dungungsempfehlung|empfehlung|dungebedarf|conseil de fumure|conseil fumure|conseils de fumure|avis de fumure|preconisation|recommandation|recomendacion|recomendacoes|recomendacao|adubacao de|adubacao para|quadro de adubacao|dosis de|doses de|raccomandazion|consigli di concimazione|piano di concimazione|bemesting |bemestingsadvies|advies kg|advies per|suggested nutrient|adviesgift|gift per|godslingsrad|godskningsraad|gjodslingsrad|zalecenia|doporuceni|gubre tavsiye|рекомендаци|дозы удобрений|нормы внесения|рекомендовані норми|plan de fumure|conseil de fertilisation|conseils de fertilisation|apports conseilles|doses conseillees|plan de fertilizacion|programa de fertilizacion|plano de adubacao|piano concimazione|consiglio di concimazione|dungeplan|dungungsplan|kalkempfehlung|bekalkingsadvies|godskningsplan|gjodslingsplan|godslingsplan|lannoitussuositus|kalkitussuositus|zalecane dawki|potrzeby nawozowe|navrh hnojeni|davky hnojiv|tragyazasi|szaktanacs|recomandari|gubreleme|συσταση λιπανσησ|rekomendasi pemupukan|施肥設計|施肥処方|시비처방|施肥建议|推荐施肥|施肥推荐|비료사용|preporuka",
    ),
    (
        Says::Title(Matter::Ranges),
        "limites de interpreta|prufwert|vorsorgewert|massnahmenwert|critical soil|critical level|critical value|critical limit|critical nutrient|sufficiency range|sufficiency level|target level|target value|target range|optimum range|optimum level|optimal range|optimal level|desired level|desired range|acceptable range|normal range|typical value|typical range|reference range|reference value|interpretation table|interpretation guide|interpretation of|gehaltsklassen fur|richtwerte|grenzwerte|sollwerte|valeurs de reference|valeurs souhaitables|seuils|niveles criticos|niveles optimos|niveles de referencia|rangos|niveis criticos|faixas de|classes de interpretacao|valori di riferimento|valori ottimali|livelli critici|streefwaarde|streeftraject|waardering|riktvarden|gransvarden|vejledende|liczby graniczne|zakresy|wartosci graniczne|kriteria|mezni hodnoty|градац|группировк|критери|нормативы|words on your report|glossary",
    ),
    (
        Says::Title(Matter::Removal),
        "crop removal|nutrient removal|removed by|crop uptake|nutrient uptake|nahrstoffentzug|entzuge|exportations|extraccion de nutrientes|extracciones|extracao de nutrientes|exportacao de|asportazion|gewasonttrekking|onttrekking|pobranie skladnikow|odber zivin|вынос ",
    ),
    (Says::Column(Matter::Removal), "yield unit|lb unit|lb bu|lb ton|kg t grain"),
    (Says::Column(Matter::Compost), "as received|dry weight|lb 1000 gal|lbs 1000 gal|lb ton as"),
    (
        Says::Column(Matter::Ranges),
        "deficient below|sufficient from|sufficient to|excess above|low below|high above",
    ),
    (Says::Column(Matter::Rates), "apply |доза |gift |dungung |lime to apply"),
    (
        Says::Title(Matter::Earlier),
        "edellinen tutkimus|edelliset|aiempi tutkimus|tidligere analyse|forrige analyse|foregaende analys|previous test|previous soil test|letzte probe|previous results|earlier results|last test|previous analys|results history|fruhere ergebnisse|letzte untersuchung|resultats precedents|resultados anteriores|analisis anterior|analises anteriores|risultati precedenti|vorige uitslag|eerdere uitslag|poprzednie wyniki|predchozi vysledky|предыдущие результаты",
    ),
];

/// The phrases by their first two letters, so that a line is compared with few.
static BY_BEGINNING: LazyLock<Vec<(&'static str, Says)>> = LazyLock::new(|| {
    let each = |&(says, all): &(Says, &'static str)| all.split('|').map(move |p| (p, says));
    let mut phrases: Vec<(&str, Says)> = PHRASES.iter().flat_map(each).collect();
    phrases.sort_unstable_by_key(|&(phrase, _)| beginning(phrase));
    phrases
});

fn beginning(text: &str) -> [u8; 2] {
    let bytes = text.as_bytes();
    [bytes.first().copied().unwrap_or(0), bytes.get(1).copied().unwrap_or(0)]
}

/// Words of a text parted by single blanks, with one at the end.
fn plain(text: &str) -> String {
    let mut plain = String::with_capacity(text.len() + 1);
    for c in text.chars().map(fold_char).chain([' ']) {
        if is_word(c) {
            // The fold keeps it; the names of the parts are written with one s.
            // A scan has 0 for o.
            let scanned = c == '0' && plain.ends_with(is_letter);
            plain.push(if c == 'ß' {
                's'
            } else if scanned {
                'o'
            } else {
                c
            });
        } else if !plain.is_empty() && !plain.ends_with(' ') {
            plain.push(' ');
        }
    }
    plain
}

/// What the words of a text say.
fn says(plain: &str) -> Vec<Says> {
    let mut found = Vec::new();
    let starts = plain.match_indices(' ').map(|(at, _)| at + 1);
    for at in [0].into_iter().chain(starts) {
        let rest = &plain[at..];
        let from = BY_BEGINNING.partition_point(|(p, _)| beginning(p) < beginning(rest));
        let near = BY_BEGINNING[from..].iter().take_while(|(p, _)| beginning(p) == beginning(rest));
        found.extend(near.filter(|(p, _)| rest.starts_with(p)).map(|&(_, says)| says));
    }
    found
}

/// What a row says as a heading, when it holds no result.
fn heading(row: &[Cell], decimal: Decimal) -> Vec<Says> {
    let cells: Vec<&Cell> = filled(row).collect();
    let length: usize = cells.iter().map(|c| c.text.len()).sum();
    if cells.is_empty() || length > LONGEST {
        return Vec::new();
    }
    if cells.len() > 4 {
        return of_head(&cells);
    }
    // "Critical limit  6.5  31  180" is a row of a table, not a title.
    let number = |cell: &&&Cell| is_result(&cell.text, decimal) && !is_year(&cell.text);
    if cells.iter().filter(number).count() > 1 {
        return Vec::new();
    }
    // "PATHOLOGY REPORT     Collected: 9 May": the title is the first cell.
    let (first, joined) = (&cells[0].text, cells.iter().map(|c| c.text.as_str()));
    let joined = joined.collect::<Vec<_>>().join("  ");
    let found = of_title(&joined);
    let found = if found.is_empty() { of_title(first) } else { found };
    // The depth of a well is no result, whatever its name looks like.
    let tested = || joined.split_once(':').is_some_and(|(a, _)| is_tested(&says(&plain(a))));
    let told = !found.is_empty() && (tested() || read_row(row, decimal).drafts.is_empty());
    if told { found } else { Vec::new() }
}

/// Whether a name is that of a table of rates, ranges or anything else that is no sample.
pub(super) fn is_other_matter(name: &str) -> bool {
    says(&plain(name)).iter().any(|s| matches!(s, Says::Title(_) | Says::Column(_)))
}

fn is_tested(said: &[Says]) -> bool {
    said.contains(&Says::Tested)
}

/// `RATES (kg/ha)   P2O5   K2O   MgO   CaO`: the head of a table whose first cell says that it
/// advises.
fn of_head(cells: &[&Cell]) -> Vec<Says> {
    let figures = |c: &&Cell| c.text.starts_with(|c: char| c.is_ascii_digit());
    let said = if cells.iter().any(figures) { Vec::new() } else { of_title(&cells[0].text) };
    said.into_iter().filter(|says| *says == Says::Title(Matter::Rates)).collect()
}

/// Whether a line that goes on begins with the title of rates: `CONSEIL DE FUMURE (kg/ha) Colza
/// P2O5 70`.
pub(super) fn begins_rates(line: &str) -> bool {
    let goes_on = line.find(|c: char| c.is_ascii_digit() || c == '(' || c == ':');
    let Some(end) = goes_on.filter(|_| line.len() > LONGEST / 3) else { return false };
    let title = line[..end].trim();
    title.len() < LONGEST / 3 && says(&plain(title)).contains(&Says::Title(Matter::Rates))
}

/// What the words of a title say. `Fertilizer: compost` says what was spread, and is none;
/// `Sample: well water` says what was tested.
fn of_title(text: &str) -> Vec<Says> {
    let words = plain(text);
    let count = words.split(' ').count() - 1;
    if count > MOST_WORDS || text.ends_with('.') && count > 6 {
        return Vec::new();
    }
    let (ahead, behind) = text.split_once(':').unwrap_or((text, ""));
    let (said, beyond) = (says(&plain(ahead)), says(&plain(behind)));
    let purpose = |all: &[Says]| {
        all.iter().any(|s| matches!(s, Says::Title(matter) if matter.is_about_soil()))
    };
    let tested = is_tested(&said);
    let two = purpose(&said) && (purpose(&beyond) || ahead.trim_end().ends_with("for"));
    let two = two || purpose(&said) && ahead.trim_end().ends_with("FOR");
    if behind.trim().is_empty() || tested || two { says(&words) } else { Vec::new() }
}

/// What the head of a table says that its rows are: two columns that no soil test has, or one
/// with ranges below it.
fn of_columns(rows: &[Vec<Cell>], at: usize, decimal: Decimal) -> Option<Matter> {
    let row = &rows[at];
    let crops = || rows[at.saturating_sub(1)..].iter().take(3).any(|row| names_crops(row));
    // The word for the crop may stand in a row of its own, over the rates.
    let second = rows.get(at + 1).is_some_and(|row| figures(row) < 2 && names_crops(row));
    let reach = 1 + usize::from(second);
    let below = || rows[at + 1..].iter().take(reach).any(|row| figures(row) > 2);
    if heads_rates(row) && (crops() || names_lime(row)) && below() {
        return Some(Matter::Rates);
    }
    let digits = |c: &&Cell| c.text.starts_with(|c: char| c.is_ascii_digit());
    if filled(row).count() < 2 || filled(row).any(|c| digits(&c)) || row.len() > 60 {
        return None;
    }
    let of_cell = |c: &Cell| {
        says(&plain(&c.text)).into_iter().find_map(|s| match s {
            Says::Column(matter) => Some(matter),
            _ => None,
        })
    };
    let found: Vec<Matter> = filled(row).filter_map(of_cell).collect();
    let first = *found.first()?;
    let ranges = || {
        let next = rows.get(at + 1).into_iter().flatten();
        next.filter(|c| is_range(&c.text, decimal)).count() > 1
    };
    let same = found.iter().filter(|m| **m == first).count();
    let enough = match first {
        Matter::Rates => ranges(),
        Matter::Prices => true,
        // Soil-health tests count protein too.
        Matter::Food => !filled(row).any(|c| is_reaction(&c.text)),
        // What was measured in the plots' soil is read.
        Matter::Trial => {
            filled(row).any(|c| plain(&c.text).contains("yield"))
                && !filled(row).any(|c| is_reaction(&c.text))
        }
        _ => same > 1,
    };
    enough.then_some(first)
}

/// Whether a row heads rates of fertiliser: the three nutrients as they stand on a bag, with no pH
/// beside them.
fn heads_rates(row: &[Cell]) -> bool {
    let mut words: Vec<&str> = Vec::new();
    for word in row.iter().flat_map(|c| c.text.split([' ', ','])) {
        if word == "pH" || words.len() > 60 {
            return false;
        }
        if !word.is_empty() {
            words.push(word);
        }
    }
    words.windows(3).any(|three| three == ["N", "P2O5", "K2O"])
}

/// Whether a row names what is limed with, beside the nutrients of a bag.
fn names_lime(row: &[Cell]) -> bool {
    const WORDS: [&str; 7] = ["lime", "kalk", "chaux", "calcario", "calagem", "calce", "wapno"];
    let words = row.iter().map(|c| plain(&c.text));
    words.into_iter().any(|text| text.split(' ').any(|w| WORDS.iter().any(|l| w.starts_with(l))))
}

/// How many words of a row begin with a digit.
fn figures(row: &[Cell]) -> usize {
    let words = row.iter().flat_map(|c| c.text.split(' '));
    words.filter(|w| w.starts_with(|c: char| c.is_ascii_digit())).count()
}

/// Whether a row has a word for crops or their yields.
fn names_crops(row: &[Cell]) -> bool {
    const WORDS: [&str; 9] = [
        "crop",
        "yield",
        "kultur",
        "ertrag",
        "cultiv",
        "cultur",
        "rendement",
        "rendimiento",
        "gewas",
    ];
    row.iter().map(|c| plain(&c.text)).any(|text| WORDS.iter().any(|word| text.contains(word)))
}

/// Whether a heading is a soil's own reaction, and no aim.
fn is_reaction(text: &str) -> bool {
    let of = Label::of(text).quantity();
    of.is_ok_and(|q| matches!(q.property, Property::Ph | Property::SaltPh))
}

/// What the part is about that begins with a row; `None` where it says nothing of it, and
/// `Some(None)` where soil begins again.
fn begins(
    rows: &[Vec<Cell>],
    at: usize,
    under: Option<Matter>,
    decimal: Decimal,
) -> Option<Option<Matter>> {
    let row = &rows[at];
    if let [only] = row.as_slice()
        && let Some(Mark::Sheet(name)) = mark(&only.text)
    {
        return Some(titled(&says(&plain(name))));
    }
    if under.is_none()
        && let Some(matter) = of_columns(rows, at, decimal)
    {
        return Some(Some(matter));
    }
    // "Sample ID: C-02     Recommendations: lime, nutrients (lb/acre)"
    let recommends = |c: &Cell| {
        c.text
            .split_once(':')
            .is_some_and(|(ahead, _)| says(&plain(ahead)).contains(&Says::Title(Matter::Rates)))
    };
    if filled(row).skip(1).any(recommends) {
        return Some(Some(Matter::Rates));
    }
    let found = heading(row, decimal);
    let titled = titled(&found).filter(|matter| {
        // "Analysis   Value   Optimum range" is the head of a table of results.
        !matter.is_about_soil()
            || !(titled_beside(row) || *matter == Matter::Ranges && is_beside_results(rows, at))
    });
    if titled.is_some() {
        return Some(titled);
    }
    let (under, count) = (under?, filled(row).count());
    let has = |says| found.contains(&says) && count < 3;
    // "Test Results [units: CEC in meq/100 cm3]: Soil class: mineral"
    let starts = || {
        let first = filled(row).next().map_or("", |c| c.text.as_str());
        let (ahead, marked) = match first.find(['[', '(', ':']) {
            Some(at) => (&first[..at], true),
            None => (first, false),
        };
        let said = says(&plain(ahead));
        let only =
            said.contains(&Says::Results) && !said.iter().any(|s| matches!(s, Says::Title(_)));
        marked && only && ahead.split_whitespace().count() < 4
    };
    let sample = || matches!(about_sample(row, decimal), Some(AboutSample::Name(..)));
    // A slide that is no soil's again says so itself.
    let slide =
        || count == 1 && is_of_pages(&fold(&row[0].text)) && !fold(&row[0].text).contains("pag");
    let again = has(Says::Soil) && !has(Says::Laboratory)
        || slide()
        || under.is_about_soil()
            && (has(Says::Results) || starts() || heads_results(row) || count < 5 && sample());
    again.then_some(None)
}

/// `Test   Result   Unit`: the head of a table of results.
fn heads_results(row: &[Cell]) -> bool {
    let results = |c: &Cell| says(&plain(&c.text)).first() == Some(&Says::Results);
    let figures = |c: &Cell| c.text.bytes().any(|b| b.is_ascii_digit());
    filled(row).count() > 1 && filled(row).any(results) && !filled(row).any(figures)
}

/// Whether a lone line stands right below or above `Value found` alone, as the heads of two columns
/// whose cells were copied one a line.
fn is_beside_results(rows: &[Vec<Cell>], at: usize) -> bool {
    let beside = [at.checked_sub(1), Some(at + 1)].into_iter().flatten();
    let line = |row: &[Cell]| row.first().map_or(0, |c| c.place.line);
    rows[at].len() == 1
        && beside.filter_map(|i| rows.get(i)).any(|row| match row.as_slice() {
            [only] => {
                line(row).abs_diff(line(&rows[at])) == 1
                    && Label::of(&only.text).unknown.is_empty()
                    && matches!(role(&only.text), Role::Values)
            }
            _ => false,
        })
}

/// Whether only a cell after the first names rates or ranges.
fn titled_beside(row: &[Cell]) -> bool {
    filled(row).next().is_some_and(|first| titled(&says(&plain(&first.text))).is_none())
}

/// The matter that a heading with such words is of.
fn titled(found: &[Says]) -> Option<Matter> {
    let soil = found.contains(&Says::Soil);
    let laboratory = found.contains(&Says::Laboratory);
    let results = found.iter().position(|says| *says == Says::Results).unwrap_or(found.len());
    found.iter().enumerate().find_map(|(at, says)| match says {
        // "Result  Optimum range" heads results; "Interpretation of results" does not.
        Says::Title(matter) if matter.is_about_soil() => Some(*matter).filter(|_| at < results),
        Says::Title(matter) => Some(*matter).filter(|_| !soil && !laboratory),
        _ => None,
    })
}

/// No page names its samples in more ways.
const MOST_LABELS: usize = 20;

/// The words by which a line names its sample: `Client Identification: FRONT YARD   Set: 20551`.
fn sample_label(row: &[Cell]) -> Option<&str> {
    let (label, name) = filled(row).next()?.text.split_once(':')?;
    let named = !name.trim().is_empty() && label.len() < 40;
    (named && matches!(role(label), Role::Sample(0 | 1))).then_some(label)
}

/// The parts of a source in order: where each ends, and what it is about if not the soil.
pub(super) fn parts(rows: &[Vec<Cell>], decimal: Decimal) -> Vec<(usize, Option<Matter>)> {
    let mut parts: Vec<(usize, Option<Matter>)> = Vec::new();
    let mut under = None;
    let mut samples: Vec<&str> = Vec::new();
    for at in 0..rows.len() {
        // The next sample ends what was said of the last.
        if let Some(label) = sample_label(&rows[at]) {
            if under.is_some() && samples.contains(&label) {
                parts.push((at, under));
                under = None;
            }
            if samples.len() < MOST_LABELS && !samples.contains(&label) {
                samples.push(label);
            }
        }
        if let Some(new) = begins(rows, at, under, decimal)
            && new != under
        {
            parts.push((at, under));
            under = new;
        }
    }
    parts.push((rows.len(), under));
    parts.retain({
        let mut last = 0;
        move |&(end, _)| std::mem::replace(&mut last, end) < end
    });
    parts
}

#[cfg(test)]
mod tests {
    use super::super::open;
    use super::*;

    fn of(text: &str) -> Vec<(usize, Option<Matter>)> {
        parts(&open(text.as_bytes()).unwrap().rows, Decimal::Point)
    }

    #[test]
    fn no_phrase_stands_twice() {
        let mut seen = std::collections::BTreeSet::new();
        for (says, phrases) in PHRASES {
            for phrase in phrases.split('|') {
                let column = matches!(says, Says::Column(_));
                assert!(seen.insert((column, phrase)) || phrase == "plant part", "{phrase}");
                assert_eq!(plain(phrase).trim_end(), phrase.trim_end(), "{phrase} is not folded");
            }
        }
    }

    #[test]
    fn a_title_says_what_was_tested() {
        let cases = [
            ("Plant Tissue Report", Some(Matter::Leaf)),
            ("LEAF ANALYSIS      Lab no. P-1", Some(Matter::Leaf)),
            ("Matriz: material vegetal (hoja de olivo)", Some(Matter::Leaf)),
            ("Results of the water analysis", Some(Matter::Water)),
            ("Próbka: woda ze studni kopanej, głębokość 7 m", Some(Matter::Water)),
            ("Muestra;Agua de pozo \"La Noria\"", Some(Matter::Water)),
            ("Analyse d'eau", Some(Matter::Water)),
            ("PATHOLOGY REPORT        Collected: 11/09/2023 08:40", Some(Matter::Blood)),
            ("Tarifs HT par échantillon", Some(Matter::Prices)),
            ("RECOMMENDATIONS FOR: MIXED VEGETABLES", Some(Matter::Rates)),
            ("Empfehlung", Some(Matter::Rates)),
            ("Tabelle 7: Gehaltsklassen für Phosphat im Ackerboden", Some(Matter::Ranges)),
            ("Critical soil test values for pasture", Some(Matter::Ranges)),
            ("Interpretation of results", Some(Matter::Ranges)),
            ("Soil and leaf analysis", None),
            ("Soil and Plant Analysis Laboratory", None),
            ("LABORATORIO DE SUELOS Y TEJIDOS VEGETALES", None),
            ("Fertilizer: compost analysis 2-1-1", None),
            ("Water the beds after you have read the water report we sent you.", None),
            ("Analysis  Value found  Optimum range", None),
            ("Critical level: P 20 ppm", None),
        ];
        let told = |text| of(text).last().unwrap().1;
        let wrong: Vec<_> = cases.iter().filter(|c| told(c.0) != c.1).collect();
        assert!(wrong.is_empty(), "{wrong:#?}");
    }

    #[test]
    fn soil_begins_again_below_its_own_heading() {
        let text = "Soil report\npH 6.2\nWater analysis\npH 7.9\nSoil results\npH 5.8";
        let ends = [(2, None), (4, Some(Matter::Water)), (6, None)];
        assert_eq!(of(text), ends);
        let text = "pH 6.2\nRecommendations\nLime 2 t/ha\nSample ID: Back\npH 7.9";
        assert_eq!(of(text), [(1, None), (3, Some(Matter::Rates)), (5, None)]);
        let text = "pH 6.2\nTarget levels\nP 40\nTest\tResult\tUnit\nP\t18\tppm";
        assert_eq!(of(text), [(1, None), (3, Some(Matter::Ranges)), (5, None)]);
        let text = "Leaf analysis\nResults\nP 0.2 %\nSample ID: Tree 4\nK 1.1 %";
        assert_eq!(of(text), [(5, Some(Matter::Leaf))]);
    }

    #[test]
    fn columns_that_no_soil_test_has_tell_a_table() {
        let cases = [
            ("Food;Energy (kcal);Protein;Ca (mg)\nKale;31;2.6;146", Some(Matter::Food)),
            ("Crop,N (lb/unit),P2O5 (lb/unit)\nCorn,0.7,0.3", Some(Matter::Removal)),
            ("Level,P ppm,Apply P2O5,K ppm\nlow,0-12,110,0-45", Some(Matter::Rates)),
            ("Sample,pH,P ppm,Apply P2O5\nEast,6.1,12,40", None),
            ("Plot,pH,K,Treatment\n1,6.1,120,lime", None),
            ("Plot,Treatment,K kg/ha,Yield t/ha\n1,lime,120,30", Some(Matter::Trial)),
        ];
        for (text, matter) in cases {
            assert_eq!(of(text).last().unwrap().1, matter, "{text}");
        }
    }
}
