//! Names, heads and ratings in languages beside those of `names.rs`, one language a table and
//! one meaning a row. They are written as `fold` leaves them: small, without accents or blanks,
//! and with a Latin `u` for the Greek mu, which is the micro of a unit too.
//!
//! Source: laboratory forms met in public text (opened) where the corpus of the world has the
//! language; the rest from memory.

use super::fold::{fold, is_letter};
use super::languages_of_asia::{CHINESE, RATINGS as OF_ASIA, SOUTHERN, VIETNAMESE};
pub(super) use super::meanings::HOW_FAR_OFF;
use super::meanings::{Form, Meaning, NOT_USED, STORE, Word, is, spellings};
use super::more_languages;
use crate::quantity::Unit;
use crate::soil::{Method, Property};

/// The names of a language.
pub(super) type Names = &'static [(Meaning, &'static str)];

/// All languages that stand here.
pub(super) const LANGUAGES: [Names; 29] = [
    ITALIAN,
    SPANISH_AND_OTHERS,
    DUTCH,
    POLISH,
    CZECH,
    NORDIC,
    RUSSIAN,
    UKRAINIAN,
    JAPANESE,
    TURKISH_AND_GREEK,
    CHINESE,
    VIETNAMESE,
    SOUTHERN,
    more_languages::BALTIC_AND_SOUTH_SLAVIC,
    more_languages::ENGLISH,
    more_languages::FRENCH,
    more_languages::GERMAN,
    more_languages::SPANISH,
    more_languages::PORTUGUESE,
    more_languages::ITALIAN,
    more_languages::DUTCH_AND_AFRIKAANS,
    more_languages::SLAVIC,
    more_languages::NORTHERN,
    more_languages::CYRILLIC,
    more_languages::HUNGARIAN,
    more_languages::ROMANIAN,
    more_languages::INDONESIAN,
    more_languages::TURKISH_AND_GREEK,
    more_languages::EASTERN,
];

spellings! { ITALIAN:
    is(Property::OrganicCarbon) => "carbonioorganico";
    is(Property::Sulfur) => "zolfo";
    is(Property::Copper) => "rame";
    is(Property::Lead) => "piombo";
    is(Property::NitrateN) => "azotonitrico";
    is(Property::AmmoniumN) => "azotoammoniacale";
    is(Property::ExchangeableAcidity) => "aciditascambiabile";
    is(Property::Cec) => "capacitadiscambiocationico";
    is(Property::BaseSaturation) => "gradodisaturazionebasica saturazionebasica gsb";
    is(Property::BulkDensity) => "densitaapparente";
    Meaning::Word(Word::Nitrogen) => "azoto";
    Meaning::Word(Word::Plain) => "come estraibile solubileinacqua disponibili disponibile";
    Meaning::Word(Word::Ratio) => "rapporto";
    Meaning::Word(Word::Depth) => "profondita";
    Meaning::Word(Word::Texture) => "granulometria";
    Meaning::Word(Word::Sample(0)) => "descrizionecampione identificazionecampione nomecampione";
    Meaning::Word(Word::Sample(1)) => "campione campioni numerocampione codicecampione";
    Meaning::Word(Word::Sample(2)) => "appezzamento vigneto";
    Meaning::Word(Word::NameColumn) => "determinazione determinazioni analisi prova";
    Meaning::Word(Word::ResultColumn) => "valore valori risultato risultati esito";
    Meaning::Word(Word::UnitColumn) => "unitadimisura";
    Meaning::Word(Word::RatingColumn) => "valutazione giudizio interpretazione";
    Meaning::Word(Word::MethodColumn) => "metododianalisi";
    Meaning::Word(HOW_FAR_OFF) => "incertezza";
    Meaning::Word(Word::Advice) => "concimazione fabbisogno consiglio dosaggio";
    Meaning::Word(NOT_USED) => "scheletro ghiaia limofine limogrosso sabbiafine sabbiagrossa";
}

// Spanish and Portuguese, and what French lacks in `names.rs`.
spellings! { SPANISH_AND_OTHERS:
    is(Property::OrganicCarbon) => "corganique carboneorg";
    is(Property::NitrateN) => "nitrogenonitrico nnitrico";
    is(Property::AmmoniumN) => "nitrogenoamoniacal nitrogenioamoniacal namoniacal";
    is(Property::Cec) => "cice capacidaddeintercambiocationicoefectiva";
    is(Property::OrganicMatter) => "matorg matorganica";
    is(Property::Sand) => "arenas areiatotal arenatotal";
    is(Property::Silt) => "limos";
    is(Property::Clay) => "arcillas argilas";
    is(Property::Sodium) => "sodiointercambiable";
    is(Property::Sulfur) => "ssulfatos azufredisponible enxofredisponivel";
    is(Property::FreeLime) => "carbonatostotales carbonatodecalcio calizatotal carbonatodecalciototal";
    is(Property::BulkDensity) => "densaparente densaparent";
    Meaning::By(Method::Resin) => "pres";
    Meaning::Word(Word::Plain) => "trocaveis cambiables disponibles disponiveis extraibles nivelde";
    Meaning::Word(Word::Ratio) => "relacion relacao relaciones relacoes";
    Meaning::Word(Word::Depth) => "prof profund";
    Meaning::Word(Word::Sample(0)) => "ident identificaciondelamuestra identificacaodaamostra nombredelamuestra";
    is(Property::TotalN) => "nt";
    Meaning::Word(Word::Sample(2)) => "gleba potrero cuartel huerta horta";
    Meaning::Word(Word::Sample(3)) => "predio finca";
    Meaning::Word(Word::Sample(4)) => "nodelaboratoire ndelaboratoire numerodelaboratoire nlab nrolab numlab nlaboratorio ndelaboratorio";
    Meaning::Word(Word::NameColumn) => "caracteristica caracteristicas atributo atributos variable variables determinaciones determinacoes ensayo ensaio";
    Meaning::Word(Word::RatingColumn) => "valoracion calificacion diagnostico clasificacion classificacao avaliacao";
    Meaning::Word(Word::RangeColumn) => "rangooptimo valoroptimo valorideal nivelcritico niveladecuado niveladequado";
    Meaning::Word(Word::Advice) => "fertilizacion fertilizacao corretivo enmienda";
    Meaning::Word(NOT_USED) => "areiafina areiagrossa arenafina arenagruesa limonsfins limonsgrossiers limonfin limongrossier sablesfins sablesgrossiers sablefin sablegrossier puntodesaturacion capacidaddecampo";
}

spellings! { DUTCH:
    is(Property::Sulfur) => "zwavel";
    is(Property::Boron) => "boor";
    is(Property::Manganese) => "mangaan";
    is(Property::Copper) => "koper";
    is(Property::Iron) => "ijzer";
    is(Property::Lead) => "lood";
    is(Property::Molybdenum) => "molybdeen";
    Meaning::Is(Property::Phosphorus, Form::Phosphate) => "fosfaat";
    is(Property::OrganicCarbon) => "corganisch organischekoolstof";
    is(Property::TotalN) => "stikstoftotaal totaalstikstof ntotaal totaaln";
    is(Property::NitrateN) => "nitraatstikstof nitraatn";
    is(Property::AmmoniumN) => "ammoniumstikstof";
    is(Property::FreeLime) => "koolzurekalk";
    is(Property::Sand) => "zand";
    is(Property::Cec) => "kleihumuscec kationenuitwisselcapaciteit kationomwisselcapaciteit";
    is(Property::Ec) => "geleidbaarheid geleidingsvermogen";
    is(Property::BaseSaturation) => "cecbezetting basenverzadiging";
    is(Property::BulkDensity) => "bulkdichtheid bodemdichtheid";
    Meaning::Word(Word::Nitrogen) => "stikstof";
    Meaning::Word(Word::Saturation) => "bezetting verzadiging";
    Meaning::Word(Word::Plain) => "plantbeschikbaar beschikbaar zuurgraad uitwisselbaar grond bodem kleihumus";
    Meaning::Word(STORE) => "bodemvoorraad ntotalebodemvoorraad stotalebodemvoorraad";
    Meaning::Word(NOT_USED) => "leverend nleverendvermogen sleverendvermogen";
    Meaning::Word(Word::Ratio) => "verhouding";
    Meaning::Word(Word::Depth) => "diepte bemonsteringsdiepte bemonsterdelaag";
    Meaning::Word(Word::Sample(1)) => "monster monsternummer monsternr monsternaam monstercode";
    Meaning::Word(Word::Sample(2)) => "perceel perceelsnaam perceelnaam";
    Meaning::Word(Word::NameColumn) => "bepaling bepalingen onderzoek kenmerk";
    Meaning::Word(Word::ResultColumn) => "resultaat resultaten waarde gemeten analyseresultaat";
    Meaning::Word(Word::UnitColumn) => "eenheid eenheden";
    Meaning::Word(Word::RatingColumn) => "waardering beoordeling";
    Meaning::Word(Word::RangeColumn) => "streeftraject streefwaarde streefgetal gemiddelde";
    Meaning::Word(Word::MethodColumn) => "meetmethode analysemethode";
    Meaning::Word(Word::Advice) => "advies bemesting bemestingsadvies bekalking";
}

spellings! { POLISH:
    is(Property::Ph) => "odczynph";
    is(Property::Potassium) => "potas";
    is(Property::Calcium) => "wapn";
    is(Property::Magnesium) => "magnez";
    is(Property::Sulfur) => "siarka";
    is(Property::Copper) => "miedz";
    is(Property::Zinc) => "cynk";
    is(Property::Iron) => "zelazo";
    is(Property::Lead) => "olow";
    is(Property::Cadmium) => "kadm";
    is(Property::OrganicMatter) => "prochnica zawartoscprochnicy materiaorganiczna substancjaorganiczna";
    is(Property::OrganicCarbon) => "wegielorganiczny";
    is(Property::TotalN) => "azotogolny azotcalkowity";
    is(Property::NitrateN) => "azotazotanowy";
    is(Property::AmmoniumN) => "azotamonowy";
    is(Property::Sand) => "piasek";
    is(Property::Silt) => "pyl";
    is(Property::Ec) => "zasolenie przewodnosc przewodnoscelektryczna przewodnoscelektrolityczna";
    is(Property::Cec) => "pojemnoscsorpcyjna";
    is(Property::ExchangeableAcidity) => "kwasowoschydrolityczna";
    is(Property::BaseSaturation) => "wysyceniezasadami";
    Meaning::By(Method::DoubleLactate) => "egnerriehmdl mleczanwapnia";
    Meaning::Word(Word::Nitrogen) => "azot";
    Meaning::Word(Word::Plain) => "przyswajalny przyswajalna przyswajalnego przyswajalne gleby odczyn w";
    Meaning::Word(Word::Depth) => "glebokosc";
    Meaning::Word(Word::Texture) => "kategoriaagronomiczna";
    Meaning::Word(Word::Sample(1)) => "probka probki nrprobki numerprobki";
    Meaning::Word(Word::Sample(2)) => "nazwapola nrpola dzialka";
    Meaning::Word(Word::NameColumn) => "oznaczenie wskaznik badanie badanacecha skladnik";
    Meaning::Word(Word::ResultColumn) => "wynik wyniki wartosc wynikbadania";
    Meaning::Word(Word::UnitColumn) => "jednostka jednostki jedn";
    Meaning::Word(Word::RatingColumn) => "ocena zasobnosc klasazasobnosci";
    Meaning::Word(Word::MethodColumn) => "metoda metodabadania normabadawcza";
    Meaning::Word(Word::RangeColumn) => "zakres norma";
    Meaning::Word(HOW_FAR_OFF) => "niepewnosc";
    Meaning::Word(Word::Advice) => "potrzebywapnowania wapnowania dawka zalecenia nawozenie zalecanadawka";
}

spellings! { CZECH:
    is(Property::Potassium) => "draslik";
    is(Property::Calcium) => "vapnik";
    is(Property::Magnesium) => "horcik";
    is(Property::Sodium) => "sodik";
    is(Property::Sulfur) => "sira";
    is(Property::Zinc) => "zinek";
    is(Property::Iron) => "zelezo";
    is(Property::Lead) => "olovo";
    is(Property::OrganicMatter) => "organickahmota organickalatka";
    is(Property::OrganicCarbon) => "organickyuhlik coxidovatelny cox";
    is(Property::TotalN) => "celkovydusik dusikcelkovy ncelk ncelkovy";
    is(Property::NitrateN) => "dusicnanovydusik nitratovydusik";
    is(Property::AmmoniumN) => "amonnydusik amoniakalnidusik";
    is(Property::FreeLime) => "uhlicitany karbonaty";
    is(Property::Sand) => "pisek";
    is(Property::Silt) => "prach";
    is(Property::Clay) => "jil";
    is(Property::Ec) => "vodivost elektrickavodivost konduktivita";
    is(Property::Cec) => "kvk kationtovavymennakapacita";
    Meaning::By(Method::TotalAcid) => "lucavka lucavkakralovska";
    Meaning::Word(Word::Nitrogen) => "dusik";
    Meaning::Word(Word::Salt) => "vymenne vymennaph";
    Meaning::Word(Word::Plain) => "pristupny pristupneho pudy puda pudnireakce prijatelny icp kpp";
    Meaning::Word(Word::Depth) => "hloubka hloubkaodberu";
    Meaning::Word(Word::Texture) => "druhpudy pudnidruh";
    Meaning::Word(Word::Sample(1)) => "vzorek vzorky cislovzorku";
    Meaning::Word(Word::Sample(2)) => "nazevhonu pozemek zahon";
    Meaning::Word(Word::NameColumn) => "ukazatel stanoveni zivina ziviny prvek";
    Meaning::Word(Word::ResultColumn) => "vysledek vysledky hodnota hodnoty namerenahodnota";
    Meaning::Word(Word::UnitColumn) => "jednotka jednotky";
    Meaning::Word(Word::RatingColumn) => "hodnoceni zasobenost";
    Meaning::Word(HOW_FAR_OFF) => "nejistota";
    Meaning::Word(Word::Advice) => "potrebavapneni vapneni hnojeni doporuceni davka";
}

// Danish, Swedish and Norwegian share most of their words.
spellings! { NORDIC:
    is(Property::Calcium) => "kalsium";
    is(Property::Sulfur) => "svovl svavel svovel";
    is(Property::Copper) => "kobber koppar";
    is(Property::Iron) => "jern jarn";
    is(Property::Lead) => "bly";
    is(Property::OrganicMatter) => "mullhalt mullhalten moldinnhold moldinnh humusindhold organiskmateriale organisktmaterial organiskstof organiskstoff";
    is(Property::OrganicCarbon) => "organisktkol organiskkulstof organiskkarbon";
    is(Property::TotalN) => "totalkvave totalkvælstof totalnitrogen kjeldahln";
    is(Property::NitrateN) => "nitratkvave nitratkvælstof";
    is(Property::AmmoniumN) => "ammoniumkvave ammoniumkvælstof";
    is(Property::Clay) => "ler lera leire lerhalt lerhalten leirinnhold";
    is(Property::Ec) => "ledningstal ledningstall konduktivitet ledningsevne";
    is(Property::Ph) => "phvarde phvardet phverdi";
    is(Property::Chloride) => "klorid kloridi klor chlor chlore cloro";
    is(Property::Arsenic) => "arsenik";
    is(Property::Cec) => "katjonbyteskapacitet ombytningskapacitet kationbytningskapacitet";
    is(Property::BaseSaturation) => "basmattnadsgrad basemetning basemætningsgrad basemetningsgrad";
    is(Property::BulkDensity) => "volumvekt volvekt volvikt volumvikt volumenvægt";
    Meaning::By(Method::LossOnIgnition) => "glodetap glodningsforlust glodetab";
    Meaning::Word(Word::Nitrogen) => "kvave kvælstof";
    Meaning::Word(Word::Plain) => "jord plantetilgængelig vaxttillganglig lettloslig";
    Meaning::Word(Word::Depth) => "djup dybde dybte provdjup";
    Meaning::Word(Word::Texture) => "jordart jordtype jordtyp jbnr";
    Meaning::Word(Word::Sample(1)) => "prov prove jordprove jordprov provnr provenr provenummer provnummer";
    Meaning::Word(Word::Sample(2)) => "skifte marknr teig jordstykke";
    Meaning::Word(Word::NameColumn) => "analys bestemmelse amne";
    Meaning::Word(Word::ResultColumn) => "resultater analysvarde analyseverdi varde verdi værdi analysevarde analyseresultat maltverdi";
    Meaning::Word(Word::UnitColumn) => "enhet enhed enheter enheder";
    Meaning::Word(Word::RatingColumn) => "kl klass pklass kklass vurdering bedomning vardering";
    Meaning::Word(Word::MethodColumn) => "analysmetod metod";
    Meaning::Word(Word::RangeColumn) => "riktvarde malverdi normalomrade normalverdi onskvart onsket anbefalt vejledende viitearvo";
    Meaning::Word(HOW_FAR_OFF) => "matosakerhet maleusikkerhet";
    Meaning::Word(Word::Advice) => "behov gjodsling godskning anbefaling anbefalet rekommendation kalkbehov kalkingsbehov";
}

spellings! { RUSSIAN:
    is(Property::Ph) => "рн phводнойвытяжки phводный phводная phводн рнводный рнводнойвытяжки";
    is(Property::SaltPh) => "рнсолевой рнсолевойвытяжки рнkcl рнксl";
    is(Property::ExchangeableAcidity) => "гидролитическаякислотность hг нг";
    is(Property::OrganicMatter) => "гумус органическоевещество массоваядоляорганическоговещества содержаниегумуса органическоговещества";
    is(Property::OrganicCarbon) => "органическийуглерод";
    is(Property::TotalN) => "общийазот азотобщий";
    is(Property::NitrateN) => "азотнитратов азотнитратный нитратныйазот азотанитратов";
    Meaning::Is(Property::NitrateN, Form::Unsure) => "нитраты нитрат";
    is(Property::AmmoniumN) => "азотаммонийный аммонийныйазот азотаммония азотааммония обменныйаммоний";
    is(Property::Phosphorus) => "фосфор фосфора";
    Meaning::Is(Property::Phosphorus, Form::P2O5) => "р2о5 p2о5 р2o5";
    is(Property::Potassium) => "калий калия";
    Meaning::Is(Property::Potassium, Form::K2O) => "к2о k2о к2o";
    is(Property::Calcium) => "кальций кальция";
    is(Property::Magnesium) => "магний магния";
    is(Property::Sodium) => "натрий натрия";
    is(Property::Sulfur) => "сера серы";
    is(Property::Boron) => "бор бора";
    is(Property::Copper) => "медь меди";
    is(Property::Zinc) => "цинк цинка";
    is(Property::Manganese) => "марганец марганца";
    is(Property::Iron) => "железо железа";
    is(Property::Molybdenum) => "молибден";
    is(Property::Aluminum) => "алюминий";
    is(Property::Lead) => "свинец";
    is(Property::Cadmium) => "кадмий";
    is(Property::Arsenic) => "мышьяк";
    is(Property::Cec) => "еко емкостькатионногообмена";
    is(Property::BaseSaturation) => "степеньнасыщенностиоснованиями";
    is(Property::Ec) => "электропроводность удельнаяэлектропроводность";
    is(Property::Sand) => "песок";
    is(Property::Silt) => "пыль";
    is(Property::BulkDensity) => "плотностьпочвы объемнаямасса";
    Meaning::Word(Word::Salt) => "солевой солевая солевое солевойвытяжки солевойсуспензии";
    Meaning::Word(Word::WaterExtract) => "водной водный воднойвытяжки водорастворимый";
    Meaning::Word(Word::Nitrogen) => "азот азота";
    Meaning::Word(Word::Plain) =>
        "кислотность обменный обменного обменная обменные подвижный подвижного подвижная подвижные подвижнаяформа \
         подвижныеформы доступный доступного массоваядоля почвы почва почве в по на ед едph вытяжки";
    Meaning::Word(NOT_USED) =>
        "обменнаякислотность суммапоглощенныхоснований суммаобменныхоснований щелочногидролизуемыйазот \
         легкогидролизуемыйазот физическаяглина";
    Meaning::Word(STORE) => "валовой валовая валовое валовые валовоесодержание";
    Meaning::Word(Word::Total) => "общий общая общее";
    Meaning::Word(Word::Depth) => "глубина глубинаотбора";
    Meaning::Word(Word::Texture) => "гранулометрическийсостав механическийсостав";
    Meaning::Word(Word::Sample(1)) => "проба пробы образец образцы номерпробы номеробразца";
    Meaning::Word(Word::Sample(2)) => "участок поле";
    Meaning::Word(Word::NameColumn) =>
        "параметр параметры показатель показатели наименованиепоказателя определяемыйпоказатель определяемыепоказатели";
    Meaning::Word(Word::ResultColumn) =>
        "значение значения результат результаты результатанализа результатыиспытаний фактическоезначение";
    Meaning::Word(Word::UnitColumn) => "единицаизмерения единицыизмерения единицы едизм";
    Meaning::Word(Word::RatingColumn) => "оценка комментарий обеспеченность примечание степеньобеспеченности";
    Meaning::Word(Word::RangeColumn) => "норма пдк оптимум оптимальноезначение норматив";
    Meaning::Word(Word::MethodColumn) => "метод методика методанализа нднаметод";
    Meaning::Word(HOW_FAR_OFF) => "погрешность неопределенность";
    Meaning::Word(Word::Advice) => "рекомендации рекомендация доза внести известкование нормавнесения удобрения";
}

spellings! { UKRAINIAN:
    is(Property::SaltPh) => "phсольове phсольової рнсольове";
    is(Property::ExchangeableAcidity) => "гідролітичнакислотність";
    is(Property::OrganicMatter) => "органічнаречовина вмістгумусу гумусу";
    is(Property::TotalN) => "загальнийазот азотзагальний";
    is(Property::NitrateN) => "нітратнийазот азотнітратний";
    is(Property::AmmoniumN) => "амонійнийазот азотамонійний";
    is(Property::Phosphorus) => "фосфору";
    is(Property::Potassium) => "калій калію";
    is(Property::Calcium) => "кальцій кальцію";
    is(Property::Magnesium) => "магній магнію";
    is(Property::Sodium) => "натрій";
    is(Property::Sulfur) => "сірка сірки";
    is(Property::Copper) => "мідь міді";
    is(Property::Manganese) => "марганцю";
    is(Property::Iron) => "залізо заліза";
    is(Property::Lead) => "свинець";
    is(Property::Cadmium) => "кадмій";
    is(Property::Ec) => "електропровідність";
    is(Property::Cec) => "ємністькатіонногообміну";
    Meaning::Word(Word::Salt) => "сольової сольова сольове сольовоївитяжки";
    Meaning::Word(Word::WaterExtract) => "водної водне водноївитяжки";
    Meaning::Word(Word::Plain) =>
        "рухомий рухомого рухома рухомі рухоміформи обмінний обмінного доступний доступного ґрунту ґрунт кислотність за од витяжки";
    Meaning::Word(NOT_USED) => "лужногідролізованийазот азотлужногідролізований сумаувібранихоснов";
    Meaning::Word(Word::Depth) => "глибина глибинавідбору";
    Meaning::Word(Word::Sample(1)) => "зразок зразки номерпроби";
    Meaning::Word(Word::Sample(2)) => "ділянка";
    Meaning::Word(Word::NameColumn) => "показник показники назвапоказника";
    Meaning::Word(Word::ResultColumn) => "значення фактичнезначення результати";
    Meaning::Word(Word::UnitColumn) => "одиниці одиницявиміру одиницівиміру";
    Meaning::Word(Word::RatingColumn) => "оцінка забезпеченість ступіньзабезпеченості";
    Meaning::Word(Word::RangeColumn) => "гдк оптимальнезначення";
    Meaning::Word(Word::MethodColumn) => "методвизначення";
    Meaning::Word(Word::Advice) => "рекомендації внесення вапнування";
}

spellings! { JAPANESE:
    is(Property::Ph) => "土壌ph";
    is(Property::Phosphorus) => "リン りん 燐";
    Meaning::Is(Property::Phosphorus, Form::Phosphate) => "リン酸 りん酸 燐酸";
    Meaning::Is(Property::Phosphorus, Form::P2O5) =>
        "有効態リン酸 可給態リン酸 有効態りん酸 可給態りん酸 有効リン酸 トルオーグリン酸";
    is(Property::Potassium) => "カリウム 交換性カリウム";
    Meaning::Is(Property::Potassium, Form::K2O) => "カリ 加里 交換性カリ 交換性加里 置換性カリ 置換性加里";
    is(Property::Calcium) => "カルシウム 交換性カルシウム";
    Meaning::Is(Property::Calcium, Form::CaO) => "石灰 交換性石灰 置換性石灰";
    is(Property::Magnesium) => "マグネシウム 交換性マグネシウム";
    Meaning::Is(Property::Magnesium, Form::MgO) => "苦土 交換性苦土 置換性苦土";
    is(Property::Sodium) => "ナトリウム 交換性ナトリウム";
    is(Property::Sulfur) => "硫黄";
    is(Property::Boron) => "ホウ素 ほう素 可給態ホウ素 熱水可溶性ホウ素";
    is(Property::Manganese) => "マンガン 交換性マンガン";
    is(Property::Iron) => "鉄 可給態鉄";
    is(Property::Copper) => "銅 可溶性銅";
    is(Property::Zinc) => "亜鉛 可溶性亜鉛";
    is(Property::NitrateN) => "硝酸態窒素 硝酸性窒素";
    is(Property::AmmoniumN) => "アンモニア態窒素 アンモニウム態窒素 アンモニア性窒素";
    is(Property::TotalN) => "全窒素";
    is(Property::OrganicCarbon) => "全炭素 有機炭素";
    is(Property::OrganicMatter) => "腐植 腐植含量 有機物";
    is(Property::Cec) => "陽イオン交換容量 塩基置換容量";
    is(Property::BaseSaturation) => "塩基飽和度 総飽和度 陽イオン飽和度";
    is(Property::CalciumSaturation) => "石灰飽和度";
    is(Property::MagnesiumSaturation) => "苦土飽和度";
    is(Property::PotassiumSaturation) => "カリ飽和度 加里飽和度";
    is(Property::Ec) => "電気伝導度 電気伝導率";
    is(Property::BulkDensity) => "仮比重 容積重";
    Meaning::Word(Word::Nitrogen) => "窒素";
    Meaning::Word(NOT_USED) => "無機態窒素 リン酸吸収係数 可給態ケイ酸 可給態窒素";
    Meaning::Word(Word::Ratio) => "塩基バランス 石灰苦土比 苦土カリ比 比率";
    Meaning::Word(Word::Plain) => "交換性 置換性 有効態 可給態 水溶性 土壌 保肥力 含量";
    Meaning::Word(Word::Depth) => "深さ 採土深";
    Meaning::Word(Word::Texture) => "土性";
    Meaning::Word(Word::Sample(1)) => "試料 試料名 試料番号 サンプル サンプル名";
    Meaning::Word(Word::Sample(2)) => "圃場 圃場名 ほ場名 畑";
    Meaning::Word(Word::NameColumn) => "項目 分析項目 測定項目 診断項目";
    Meaning::Word(Word::ResultColumn) => "測定値 分析値 分析結果 診断値 結果 現状 現状値";
    Meaning::Word(Word::UnitColumn) => "単位";
    Meaning::Word(Word::RatingColumn) => "評価 判定 備考";
    Meaning::Word(Word::RangeColumn) => "基準値 目標値 適正範囲 適正値 理想 下限値 上限値 改良目標";
    Meaning::Word(Word::MethodColumn) => "分析方法 測定方法 方法";
    Meaning::Word(Word::Advice) => "施肥量 施用量 施肥設計 必要量";
}

spellings! { TURKISH_AND_GREEK:
    is(Property::Potassium) => "potasyum καλιο";
    is(Property::Calcium) => "kalsiyum ασβεστιο";
    is(Property::Magnesium) => "magnezyum uαγνησιο";
    is(Property::Sodium) => "sodyum νατριο";
    is(Property::Phosphorus) => "φωσφοροσ";
    is(Property::Sulfur) => "kukurt θειο";
    is(Property::Boron) => "βοριο";
    is(Property::Copper) => "bakir χαλκοσ";
    is(Property::Zinc) => "cinko ψευδαργυροσ";
    is(Property::Manganese) => "uαγγανιο";
    is(Property::Iron) => "demir σιδηροσ";
    is(Property::Lead) => "kursun uολυβδοσ";
    is(Property::Cadmium) => "kadmiyum καδuιο";
    is(Property::OrganicMatter) => "organikmadde οργανικηουσια";
    is(Property::OrganicCarbon) => "organikkarbon οργανικοσανθρακασ";
    is(Property::TotalN) => "toplamazot toplamn ολικοαζωτο";
    is(Property::NitrateN) => "nitratazotu νιτρικοαζωτο";
    is(Property::AmmoniumN) => "amonyumazotu αuuωνιακοαζωτο";
    is(Property::FreeLime) => "kirec toplamkirec ανθρακικοασβεστιο ολικοανθρακικοασβεστιο";
    is(Property::Sand) => "kum αuuοσ";
    is(Property::Silt) => "ιλυσ";
    is(Property::Clay) => "kil αργιλοσ";
    is(Property::Ec) => "elektrikseliletkenlik iletkenlik ηλεκτρικηαγωγιuοτητα αγωγιuοτητα";
    is(Property::Cec) => "kdk katyondegisimkapasitesi ικα ικανοτηταανταλλαγησκατιοντων";
    Meaning::By(Method::AmmoniumAcetate) => "amonyumasetat";
    Meaning::By(Method::HotWater) => "sicaksu";
    Meaning::Word(Word::Nitrogen) => "αζωτο";
    Meaning::Word(Word::Plain) =>
        "alinabilir yarayisli degisebilir toprak topraktaki suda διαθεσιuοσ διαθεσιuο ανταλλαξιuο εδαφουσ";
    Meaning::Word(Word::Total) => "ολικο ολικοσ";
    Meaning::Word(NOT_USED) => "saturasyon suylasaturasyon isba suyladoygunluk";
    Meaning::Word(Word::Depth) => "derinlik βαθοσ";
    Meaning::Word(Word::Texture) => "bunye toprakbunyesi tekstur uηχανικησυσταση";
    Meaning::Word(Word::Sample(1)) => "numune numuneno numuneadi ornek ornekno δειγuα αρδειγuατοσ";
    Meaning::Word(Word::Sample(2)) => "parsel tarla αγροτεuαχιο";
    Meaning::Word(Word::NameColumn) => "parametre analizler analizadi ozellik παραuετροσ παραuετροι";
    Meaning::Word(Word::ResultColumn) => "sonuc sonuclar deger analizsonucu αποτελεσuα αποτελεσuατα τιuη";
    Meaning::Word(Word::UnitColumn) => "birim birimi uοναδα uοναδεσ";
    Meaning::Word(Word::RatingColumn) => "degerlendirme yorum sinifi χαρακτηρισuοσ αξιολογηση";
    Meaning::Word(Word::MethodColumn) => "metot yontem analizmetodu uεθοδοσ";
    Meaning::Word(Word::RangeColumn) => "sinirdeger yeterlilikaraligi επαρκεσ ορια επιθυuητατιuη";
    Meaning::Word(Word::Advice) => "gubre gubretavsiyesi tavsiye oneri λιπανση συσταση";
}

/// Names that are another word elsewhere, and mean the element only with its symbol behind.
const WITH_THEIR_SYMBOL: [(&str, &str); 8] = [
    ("med", "cu"),
    ("sink", "zn"),
    ("mull", "om"),
    ("sod", "na"),
    ("vas", "fe"),
    ("rez", "cu"),
    ("ken", "s"),
    ("olow", "pb"),
];

/// The symbol behind such a name: `Měď (Cu)`.
pub(super) fn symbol_behind(folded: &str) -> Option<&str> {
    WITH_THEIR_SYMBOL.iter().find_map(|(name, symbol)| {
        let rest = folded.strip_prefix(name)?.trim_start().strip_prefix('(')?;
        rest.starts_with(symbol).then_some(rest)
    })
}

/// Units in other scripts, as `units.rs` writes its own.
pub(super) const UNITS: &[(Unit, f64, &str)] = &[
    (Unit::MgPerKg, 1.0, "мг/кг мгкг млн-1 мгкг-1 мг/кг-1 мг/кгпочвы мг/кгґрунту мг/1000г"),
    (Unit::MgPerL, 1.0, "мг/л мг/дм3"),
    (Unit::MgPer100g, 1.0, "мг/100г мг/100гр мг/100гпочвы мг/100гґрунту мг/100грпочвы"),
    (
        Unit::MeqPer100g,
        1.0,
        "ммоль/100г мгэкв/100г мг-экв/100г смоль/кг мекв/100г мгекв/100г мэкв/100г мгэкв/100гр мгэкв/100гпочвы мгекв/100гґрунту ммоль/100гпочвы ммоль/100гґрунту ммольэкв/100г ммольекв/100г смольэкв/кг мг/экв/100г мг/екв/100г",
    ),
    (Unit::GPerKg, 1.0, "г/кг"),
    (Unit::KgPerHa, 1.0, "кг/га"),
    (Unit::DsPerM, 1.0, "мсм/см дсм/м мсим/см дсим/м"),
    (Unit::UsPerCm, 1.0, "мксм/см мксим/см"),
    (Unit::GPerCm3, 1.0, "г/см3"),
    (Unit::Percent, 1.0, "г/100г процент проценты"),
    (Unit::GPerL, 1.0, "г/л г/дм3"),
    (Unit::MmolcPerKg, 1.0, "mmol+/kg"),
];

/// Words of ratings, each sorted by its language. A text is a rating where it has no others.
const RATINGS: &str = "\
    niedrig gering mittel hoch sehr ausreichend \
    faible moyen moyenne eleve elevee satisfaisant tres peu trop correct \
    basso bassa medio media alto alta elevato elevata scarso scarsa molto ottimale equilibrato alcalino acido neutro calcareo \
    bajo baja mod muy mediano adecuado adecuada suficiente deficiente excesivo moderadamente ligeramente fuertemente \
    baixo baixa muito otimo bom adequado adequada \
    laag hoog zeer goed vrij voldoende matig \
    niska niski niskie srednia sredni srednie wysoka wysoki wysokie bardzo kwasny lekko obojetny zasadowy \
    nizky vyhovujici dobry vysoky velmi kysela slabe neutralni alkalicka \
    lav lavt hoj hojt hogt lag lagt middels meget mycket \
    az orta yeterli fazla cok yuksek dusuk hafif notr asit alkali \
    низкое низкая низкий среднее средняя средний высокое высокая высокий повышенное повышенная очень мало повышено слабокислая кислая нейтральная щелочная \
    низька низьке середній середня середнє висока високе підвищений дуже \
    χαuηλο χαuηλη uετριο uετρια υψηλο υψηλη επαρκησ πολυ \
    sauer neutral basisch alkalisch kalkarm kalkhaltig optimal ubermaßig stark schwach maßig maessig anzustreben erhoht \
    extrem genugend arm massig angereichert hohe mittlere geringe niedrige \
    assez pauvre riche bon bonne excessif excessive insuffisant suffisant normal normale souhaitable acide basique neutre alcalin \
    legerement moderement fortement satisfaisante elevees moyens faibles calcaire \
    normale normali ricco povero buono buona ottimo carente insufficiente sufficiente eccessivo mediamente dotato ben dotata \
    scarsamente subacido subalcalino debolmente leggermente moderatamente fortemente salino calcarea eccessiva discreto \
    optimo optima exceso pobre rico ligera neutro basico basica medianamente salino debilmente acida alcalina normales \
    toxico tendencia aceptable moderado moderada altos bajos excesivamente \
    elevado elevada pouco insuficiente pobre alcalino acida neutra medianamente excessivo toxico \
    hoge lage normaal ruim tamelijk gewenst gunstig optimaal zuur neutraal \
    niedobor nadmiar optymalna optymalny dostateczna odpowiednia bardzo obojetna kwasna zasadowa lekka alkaliczny \
    neutralna dobra nizka vysoka vyhovujuci maly mala stredny stredna velmi vysoky nizky kysly kysla slabo mierne zasadita alkalicke \
    tyydyttava hyva huono huononlainen valttava korkea arveluttavan erittain liian \
    lave hoye passende lavere forhoyd tilfredsstillende \
    noksan yetersiz tuzsuz kirecli hafifce kuvvetli zengin fakir iyi normal \
    gyenge kozepes jo tulzott igen savanyu semleges lugos gyengen enyhen \
    scazut scazuta foarte mijlociu mijlocie mediu ridicat ridicata bun buna slab moderat puternic eubazic alcalin optim \
    rendah sedang tinggi sangat agak masam netral alkalis \
    повышенный высокие низкие средние нормальное норма оптимальное недостаточное близкая нейтральной слабощелочная \
    сильнокислая среднекислая избыток недостаток достаточное обеспеченность \
    низький високий підвищена слабокисла близька до нейтральної нейтральна лужна слаболужна середньокисла оптимальний \
    επαρκες υψηλη ανεπαρκεια ελλειψη ουδετερο αλκαλικο οξινο ελαφρωσ uετριωσ περισσεια κανονικη ικανοποιητικη \
    低い 高い 適正 過剰 不足 やや低い やや高い 基準内 欠乏 普通 良好 多い 少ない 적정 부족 과다 높음 낮음 보통";

/// Whether every word of a text is one of a rating in some language.
pub(super) fn is_rating_abroad(text: &str) -> bool {
    let folded = fold(text);
    let mut words = folded.split(|c| !is_letter(c)).filter(|w| !w.is_empty()).peekable();
    let bare = !folded.contains(|c: char| c.is_ascii_digit());
    bare && words.peek().is_some()
        && words.all(|word| RATINGS.split(' ').chain(OF_ASIA.split(' ')).any(|r| r == word))
}
