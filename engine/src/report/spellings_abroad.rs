//! The spellings that laboratories print in other languages, walked one by one, and the names
//! that only look like them.

use super::layout::{Role, role};
use super::synonyms::read;

/// Source: the words of laboratories' forms (from memory).
#[test]
fn names_in_other_languages_are_read_or_refused_as_they_should() {
    let cases: &[(&str, &str)] = &[
        // English
        ("ph", "pH level|pH in water|Soil pH (H2O)|pH value"),
        ("salt-ph potassium chloride", "pHKCl|pH in KCl|pH 1M KCl"),
        ("salt-ph calcium chloride", "pHCaCl2|pH CaCl₂"),
        ("organic-matter", "Organic Material|Organic matter content|Org Mat"),
        (
            "organic-matter loss on ignition",
            "Loss on ignition|Loss on Ignition (LOI)|Glödförlust|Glødetap|Glühverlust",
        ),
        ("organic-matter loss on ignition %", "Loss on ignition %|Glødetap (%)"),
        ("organic-carbon", "Oxidisable organic carbon|SOC|Org. Carbon"),
        (
            "calcium-saturation",
            "Ca/CEC|% of exchangeable bases: Ca|Calcium saturation|Ca/CIC (%)|Ca (% CEC)|Ca % CTC|% Ca of CEC",
        ),
        (
            "potassium-saturation",
            "K/CEC %|K/CEC|K/CIC|K na CTC (%)|K (% de la CEC)|Saturación de K|Saturação por potássio|% K na CTC|Kalium-bezetting|Saturation K (%)",
        ),
        ("sodium-saturation %", "PSI (%)|PSI %|PST (%)|Na/CEC %"),
        (
            "exchangeable-acidity",
            "Exchangeable acids|Extractable acidity|Al+H|Al + H|Acidez int.|Ac. Int.|Acidité d'échange|H + Al",
        ),
        ("cec", "Effective CEC|Cation exchange capacity (CEC)"),
        ("ec", "Electrical conductivity|EC 25°C|E.C."),
        (
            "- only a part|- not used",
            "Coarse sand|Fine sand %|Very fine sand|Sable grossier|Sables fins|Limons grossiers (20-50 µm)|Sables très fins|Arena gruesa|Arena muy fina|Limo grueso|Areia muito fina|Sabbia molto fine|Feinsand|Grobschluff|Grovsand|Finsilt|Fijn zand|jemný písek|Nisip grosier",
        ),
        (
            "- active lime|- not used",
            "Calcaire actif|Calcare attivo|Caliza activa|Calcário ativo|Wapno czynne|Aktif kireç|Ενεργό ανθρακικό ασβέστιο|Active lime|Aktivkalk|Carbonatos activos|CaCO3 actif",
        ),
        (
            "- not used by this program|- no soil property",
            "Particle density|Densidad real|Densidade de partículas|Sum of bases|Suma de bases|Soma de bases|Somme des bases échangeables|Somma basi|Suma zasad|Сумма поглощенных оснований|Сума ввібраних основ|Extractable Organic Sulphur|Organic phosphorus|Total carbon|Carbone total|Humidité|Humedad|Umidità|遊離酸化鉄|Arany-féle kötöttség|K-getal|Weerstand|Işba|Sotartalom|Suma de cationes|Indice azot|Resistance|Tuz %|Johtoluku",
        ),
        (
            "- what the soil binds|- not used|- phosphorus has no",
            "Phosphorus sorption|P retention|Phosphorus fixation|Non-exchangeable potassium|りん酸吸収係数|Reserve K|Phosphorus saturation",
        ),
        (
            "- the soil's whole store|- total",
            "K-HNO3|Förrådskalium|Валовой фосфор|Total Zn|Zinc total|Cuivre total|Zinco totale|Валовий калій|Gesamtgehalt Zink|Toplam çinko|Celkový zinek|Zinek celkový|Zinco total",
        ),
        (
            "- a ratio",
            "Rapport C/N|Relación Ca/Mg|Verhältnis K:Mg|Stosunek C:N|Poměr K:Mg|Kvot K/Mg|石灰苦土比|Rapporto Mg/K|C/N-verhouding|Соотношение C:N|Nisbah C/N",
        ),
        (
            "- a recommendation",
            "Recomendación de N|Necessidade de calagem pH|Zalecana dawka P2O5|Kalkempfehlung CaO|Fumure P2O5|Conseil K2O",
        ),
        // French
        ("ph", "pH eau|pH (eau)|pH H2O|pH-eau"),
        (
            "organic-matter",
            "Matière organique|Matières organiques|Mat. Organique|Taux de matière organique|MO (%)|M.O. %",
        ),
        ("organic-carbon", "Carbone organique|Carbone organique total|C.O.T.|COT|C organique"),
        (
            "phosphorus P2O5",
            "P2O5 assimilable|P2O5 ass.|Acide phosphorique (P2O5)|Anhydride phosphorique|Phosphore (P2O5)|P2O5 assim.",
        ),
        (
            "phosphorus P2O5 Olsen",
            "Phosphore P2O5 Olsen|P2O5 (Olsen)|Phosphore assimilable (P2O5) Olsen",
        ),
        (
            "potassium K2O",
            "K2O échangeable|Potasse|Potasse échangeable (K2O)|K2O éch.|K2O échang.|Oxyde de potassium|Potassium (K2O)",
        ),
        ("magnesium MgO", "MgO échangeable|Magnésie|Magnésium (MgO)|Magnésie échangeable"),
        ("calcium CaO", "CaO échangeable|Chaux|Calcium (CaO)|CaO éch."),
        ("sodium Na2O", "Na2O échangeable|Na2O|Sodium (Na2O)"),
        ("sulfur So3", "SO3|Soufre (SO3)"),
        (
            "boron hot water",
            "Bore soluble à l'eau bouillante|Bore (eau bouillante)|Bore eau chaude",
        ),
        ("copper EDTA", "Cuivre EDTA|Cuivre (EDTA)"),
        ("clay", "Argiles (< 2 µm)|Argile (<2 µm)|Argile granulométrique|Argiles %"),
        ("silt", "Limons (2 à 50 µm)|Limon"),
        ("free-lime", "Calcaire total|Calcaire total (CaCO3)|Carbonates totaux"),
        (
            "cec",
            "CEC Metson|Capacité d'échange cationique|C.E.C.|Capacité d'échange en cations (CEC)",
        ),
        (
            "base-saturation",
            "Taux de saturation|Saturation des bases|S/CEC|Taux de saturation de la CEC|Saturation en bases|S/T",
        ),
        ("nitrate-n", "Azote nitrique|N-NO3"),
        ("total-n", "Azote total|Azote total (Dumas)|Azote Kjeldahl"),
        // German
        ("phosphorus P2O5 CAL", "P2O5 (CAL)|Phosphat (P2O5) CAL|P2O5 CAL"),
        ("potassium K2O CAL", "K2O (CAL)|Kali (K2O) CAL"),
        ("magnesium calcium chloride", "Magnesium (CaCl2)|Mg (CaCl2)|Mg CaCl2"),
        ("organic-matter", "Humus|Humusgehalt|Org. Substanz|Organische Substanz|org. Subst."),
        ("total-n", "Gesamt-N|N gesamt|Nges|N ges.|Gesamtstickstoff"),
        ("free-lime", "Kalkgehalt|Karbonat|Carbonat (CaCO3)|CaCO3|Gesamtkalk"),
        ("cec", "KAK|KAKpot|KAK eff.|Austauschkapazität|T-Wert"),
        ("base-saturation", "Basensättigung|V-Wert|Basensättigungsgrad"),
        ("boron", "Bor|Borgehalt|Bor pflanzenverfügbar"),
        // Spanish
        (
            "phosphorus",
            "Fósforo asimilable|Fósforo disponible|P asimilable|P disp.|P asim.|Fósforo extractable",
        ),
        ("phosphorus Bray P1", "Fósforo Bray Kurtz 1|P Bray y Kurtz 1|Fósforo (Bray I)"),
        (
            "potassium",
            "K intercambiable|Potasio de cambio|K cambiable|K int.|K disp.|Potasio asimilable|K camb.|K de cambio",
        ),
        (
            "organic-matter",
            "Materia orgánica|M. Orgánica|Mat. Org.|Materia orgánica oxidable|MO (%)|M.O. (%)",
        ),
        ("organic-carbon", "Carbono orgánico oxidable|C. orgánico|COT|Carbono orgánico total"),
        ("total-n", "Nitrógeno total|N total|N Kjeldahl|Nitrógeno Kjeldahl|N tot."),
        ("nitrate-n", "N-NO3|N-nítrico|Nitrógeno de nitratos|N-nitratos"),
        ("ec", "Conductividad eléctrica|Cond. eléctrica|CE|Sales solubles"),
        ("ec 1:5 water", "C.E. 1:5|CE (1:5)"),
        ("aluminum", "Al intercambiable|Aluminio de cambio|Al int."),
        (
            "acidity-saturation",
            "Saturación de Al|Sat. Al|Sat. de aluminio|Saturación de aluminio (%)|Saturación de acidez|SA %",
        ),
        ("base-saturation", "Saturación de bases|Sat. de bases|Grado de saturación|V (%)"),
        (
            "cec",
            "C.I.C.|CICE|CIC efectiva|Capacidad de intercambio catiónico|Capacidad de cambio|CICE (Ca+Mg+K+Na+Al+H)",
        ),
        (
            "free-lime",
            "Carbonatos totales|Carbonato cálcico equivalente|CaCO3 equivalente|Caliza total",
        ),
        ("boron hot water", "Boro (agua caliente)|Boro soluble en agua caliente"),
        // Portuguese
        ("phosphorus", "Fósforo assimilável|P disponível|P extraível"),
        ("phosphorus P2O5", "Fósforo assimilável (P2O5)|P2O5 assimilável|P2O5 ass."),
        ("phosphorus resin", "P resina|P (resina)|Fósforo resina"),
        ("phosphorus Mehlich-1", "P Mehlich-1|P (Mehlich 1)|P - Mehlich I"),
        ("potassium", "K trocável|K+|Potássio assimilável|Potássio trocável|K de troca"),
        ("exchangeable-acidity", "Acidez potencial|H+Al|H + Al|Acidez potencial (H+Al)"),
        (
            "base-saturation",
            "Saturação por bases|V%|Grau de saturação em bases|Saturação por bases (V)|Sat. Bases (V)|Saturação de bases",
        ),
        (
            "acidity-saturation",
            "Saturação por alumínio|m%|Saturação por Al|Saturação por Al (m)|Sat. Al (m)|Sat. por Al",
        ),
        ("free-lime", "Calcário total|Carbonatos"),
        ("bulk-density", "Densidade do solo|Densidade aparente"),
        ("sulfur", "S-SO4|Enxofre (S-SO4)|S-SO42-"),
        // Italian
        ("organic-matter", "Sostanza organica|S.O. (%)|Sost. organica"),
        ("organic-carbon", "Carbonio organico|Carbonio organico totale|C organico"),
        ("phosphorus", "Fosforo assimilabile|P assimilabile"),
        ("phosphorus P2O5", "Anidride fosforica|Fosforo assimilabile (P2O5)|P2O5 assimilabile"),
        ("potassium", "Potassio scambiabile|K scamb.|K di scambio"),
        ("potassium K2O", "Ossido di potassio|K2O scambiabile"),
        ("cec", "C.S.C.|Capacità di scambio cationico|Capacità di scambio cationico (CSC)"),
        ("base-saturation", "G.S.B.|Grado di saturazione basica|Saturazione in basi"),
        ("sodium-saturation", "ESP"),
        ("boron", "Boro solubile|Boro assimilabile"),
        ("ec", "Conducibilità elettrica|Conducibilità"),
        ("free-lime", "Calcare totale|Carbonati totali"),
        // Dutch and Afrikaans
        ("organic-matter", "Organische stof|Org. stof|O.S. %|OS (%)|Humus"),
        ("phosphorus ammonium lactate (AL)", "P-Al|P-AL"),
        ("clay", "Lutum|Klei|Lutumgehalte"),
        ("free-lime", "Koolzure kalk|Koolzure kalk (CaCO3)"),
        ("cec", "KUK|T-waarde|CEC|Kationen-uitwisselcapaciteit"),
        ("exchangeable-acidity", "Uitruilbare suur"),
        ("sulfur", "Swael|Zwavel (S)"),
        ("potassium", "Uitruilbare kalium|K-plantbeschikbaar"),
        // Polish, Czech, Slovak
        ("salt-ph potassium chloride", "pH w KCl|pH w 1M KCl|Odczyn pH w KCl|pH/KCl|pH (KCl)"),
        (
            "phosphorus P2O5",
            "Fosfor (P2O5)|Fosfor przyswajalny (P2O5)|P2O5 przyswajalny|Pięciotlenek fosforu",
        ),
        ("potassium K2O", "Potas (K2O)|Tlenek potasu"),
        (
            "potassium",
            "Zawartość potasu|Zawartość przyswajalnego potasu|Draslík|Přístupný draslík|Obsah draslíku",
        ),
        (
            "organic-matter",
            "Próchnica|Zawartość próchnicy|Substancja organiczna|Obsah humusu|Organická hmota",
        ),
        ("copper", "Miedź|Měď (Cu)|Meď (Cu)|Réz (Cu)"),
        ("base-saturation", "Stopień wysycenia zasadami|Nasycení sorpčního komplexu"),
        ("cec", "KVK|Pojemność sorpcyjna|Sorpční kapacita"),
        ("free-lime", "Uhličitany|Węglan wapnia|CaCO3"),
        ("magnesium", "Magnez|Hořčík|Horčík|Magnézium|Magneziu|Magnezyum"),
        ("sodium", "Sód (Na)|Sodík|Sodiu|Sodyum|Nátrium|Natrium"),
        // Nordic and Finnish
        ("phosphorus ammonium lactate (AL)", "P-AL|Fosfor (P-AL)"),
        ("organic-matter", "Mullhalt|Mull-halt|Humusindhold|Orgaaninen aines|Moldinnhold"),
        ("clay", "Lerhalt|Ler|Leirinnhold|Savi"),
        ("phosphorus", "Fosfori|Fosfor|Foszfor|Фосфор подвижный"),
        ("copper", "Kupari|Kobber|Koppar|Bakır|Cupru"),
        ("ec", "Sähkönjohtavuus|Ledningstal|Ledningsförmåga|Elektrisk ledningsevne"),
        ("bulk-density", "Tilavuuspaino|Volumvekt|Volumvikt"),
        // Russian and Ukrainian
        (
            "phosphorus P2O5",
            "Подвижный фосфор (P2O5)|Р2О5|P2O5|Подвижный фосфор, Р2О5|Рухомий фосфор (P2O5)",
        ),
        ("potassium K2O", "Обменный калий (K2O)|К2О|Подвижный калий К2О"),
        (
            "organic-matter",
            "Гумус|Органическое вещество|Вміст гумусу|Органічна речовина|Массовая доля органического вещества",
        ),
        ("salt-ph", "pH солевой|рН солевой вытяжки|рН сол.|pH сольовий|рН сольової витяжки|pH сол"),
        ("ph", "рН водный|рН водной вытяжки|pH водный|pH вод.|рН водний"),
        ("nitrate-n", "Азот нитратный|Нитратный азот|N-NO3|Нітратний азот|Азот нітратний"),
        ("manganese", "Марганец|Марганець|Марганець рухомий|Mn"),
        ("base-saturation", "Степень насыщенности основаниями|Ступінь насичення основами"),
        ("exchangeable-acidity", "Гидролитическая кислотность|Гідролітична кислотність|Hг"),
        ("cec", "ЕКО|Емкость катионного обмена"),
        ("sulfur", "Подвижная сера|Сера подвижная|Рухома сірка"),
        // Hungarian and Romanian
        ("organic-matter", "Humusz|Humusztartalom|Szerves anyag|Materie organică|Humus"),
        ("phosphorus P2O5", "P2O5|Foszfor-pentoxid (P2O5)"),
        ("phosphorus P2O5 ammonium lactate (AL)", "AL-P2O5"),
        ("free-lime", "Szénsavas mész|Mész (CaCO3)|Carbonați|CaCO3"),
        ("phosphorus", "Fosfor mobil|Fosfor accesibil"),
        ("potassium", "Potasiu mobil|Potasiu|Kálium"),
        ("exchangeable-acidity", "Aciditate hidrolitică"),
        ("base-saturation", "Grad de saturație în baze|Grad de saturaţie în baze"),
        ("salt-ph potassium chloride", "pH (KCl)|pH-KCl"),
        ("iron", "Vas (Fe)|Fier|Rauta|Yster|Demir"),
        // Indonesian
        ("organic-carbon", "C-organik|C organik"),
        ("cec", "KTK|Kapasitas Tukar Kation"),
        ("base-saturation", "Kejenuhan Basa|KB (%)"),
        ("potassium", "K-dd|K dapat ditukar|K tersedia"),
        ("phosphorus", "P tersedia|P-tersedia"),
        ("phosphorus Bray P1", "P Bray 1|P-Bray I"),
        ("- the soil's whole store", "P potensial|P2O5 HCl 25%|K2O potensial"),
        ("sand", "Pasir|Pasir (%)|Kum|Homok|Hiekka|Nisip|Piasek|Písek|Песок"),
        // Turkish and Greek
        ("organic-matter", "Organik madde|Οργανική ουσία|Οργανική Ουσία %"),
        ("free-lime", "Kireç|Kireç (CaCO3)|Toplam kireç|Ολικό ανθρακικό ασβέστιο"),
        ("phosphorus", "Alınabilir fosfor|Yarayışlı fosfor (P)|Φωσφόρος|ΦΩΣΦΟΡΟΣ"),
        ("phosphorus P2O5", "Yarayışlı fosfor (P2O5)"),
        ("phosphorus Olsen", "Φωσφόρος (Olsen)|Fosfor (Olsen)"),
        ("potassium", "Ανταλλάξιμο κάλιο|Değişebilir potasyum"),
        ("cec", "ΙΑΚ|ΙΚΑ|KDK"),
        // Japanese and Korean
        ("phosphorus P2O5", "有効態リン酸|可給態燐酸|有効態燐酸|유효인산"),
        ("potassium K2O", "交換性カリ|加里|交換性加里(K2O)|交換性カリ（K2O）"),
        ("organic-matter", "腐植|유기물"),
        ("potassium", "치환성칼륨|칼륨"),
        ("ec", "ＥＣ|電気伝導度|전기전도도"),
        ("ph", "ｐＨ|pH（H2O）|pH(H2O)"),
    ];
    let mut wrong = Vec::new();
    for (expected, names) in cases {
        for name in names.split('|') {
            let found = read(name);
            let plain = found.trim_end_matches(" %");
            let fits = |e: &str| {
                if e.starts_with('-') { found.starts_with(e) } else { found == e || plain == e }
            };
            if !expected.split('|').any(fits) {
                wrong.push(format!("{name}: {found}, not {expected}"));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// Source: the heads of laboratories' tables (from memory).
#[test]
fn heads_in_other_languages_say_what_their_columns_hold() {
    let cases: &[(&str, &str)] = &[
        (
            "values",
            "Result|Resultado|Resultados|Résultat|Résultats|Teneur|Valeur|Ergebnis|Messwert|Gehalt|Analysenwert|Contenido|Valor|Teor|Resultado obtido|Risultato|Valore|Contenuto|Uitslag|Gehalte|Resultaat|Wynik|Zawartość|Wynik badania|Výsledek|Obsah|Hodnota|Naměřená hodnota|Zistená hodnota|Resultat|Värde|Innhold|Indhold|Halt|Tulos|Pitoisuus|Результат|Содержание|Результат испытаний|Значение|Вміст|Результат випробувань|Eredmény|Mért érték|Rezultat|Valoare|Conținut|Hasil|Nilai|Hasil analisis|Sonuç|Bulunan değer|Ölçülen değer|Αποτέλεσμα|Τιμή|分析値|測定値|분석결과|측정값",
        ),
        (
            "units",
            "Unit|Unidad|Unidades|Unidad de medida|Unité|Unités|Einheit|Unidade|Unità|Unità di misura|U.M.|Eenheid|Jednostka|Jedn.|Jednotka|Enhet|Enhed|Yksikkö|Ед. изм.|Единица измерения|Од. виміру|Одиниця виміру|Mértékegység|Unitate de măsură|Satuan|Birim|Birimi|Μονάδα|Μονάδες|単位",
        ),
        (
            "names",
            "Parameter|Parámetro|Paramètre|Parâmetro|Parametro|Parametr|Determinación|Determinação|Determinazione|Analyse|Détermination|Untersuchungsparameter|Bepaling|Oznaczenie|Badany parametr|Ukazatel|Stanovení|Ukazovateľ|Показатель|Наименование показателя|Определяемый показатель|Показник|Назва показника|Vizsgált paraméter|Parametru|Indicator|Parametre|Analiz|Παράμετρος|項目|分析項目|항목|Analysnamn|Analyysi|Caractéristique|Propiedad|Jenis analisis",
        ),
        (
            "ratings",
            "Rating|Interpretación|Interprétation|Bewertung|Beurteilung|Gehaltsklasse|Versorgungsstufe|Interpretação|Giudizio|Valutazione|Waardering|Ocena|Zasobność|Hodnocení|Zásobenost|Vurdering|Bedömning|Viljavuusluokka|Оценка|Обеспеченность|Класс обеспеченности|Рівень забезпеченості|Ellátottság|Interpretare|Kriteria|Değerlendirme|Yorum|Χαρακτηρισμός|判定|評価|평가|Optimum|Valeur souhaitable|Richtwert|Rango óptimo|Valor de referencia|Valores normales|Valore ottimale|Streefwaarde|Streefzone|Zakres optymalny|Optimální hodnota|Riktvärde|Tavoite|Норма|ПДК|Határérték|Valori optime|Nilai optimum|Sınır değer|Επιθυμητή τιμή|基準値|診断基準値|적정범위|Objectif|Zielwert|Faixa adequada|Normal range|Recommended level|Acceptable range|Fourchette|Limite|Valori di riferimento",
        ),
        (
            "methods",
            "Method|Método|Méthode|Methode|Metodo|Metoda|Metoda badawcza|Prüfverfahren|Метод|Методика|Метод испытаний|НД на метод|Módszer|Menetelmä|Metod|Metode|Yöntem|Metot|Μέθοδος|分析方法|Extractante|Metodología|Analysemethode",
        ),
        (
            "samples",
            "Sample|Muestra|Id. muestra|Código de muestra|Échantillon|N° échantillon|Référence échantillon|Probe|Probenbezeichnung|Proben-Nr.|Amostra|Nº amostra|Referência da amostra|Campione|N. campione|Monster|Monsternummer|Staalnummer|Próbka|Nr próbki|Oznaczenie próbki|Vzorek|Číslo vzorku|Vzorka|Prov nr|Prøvenr|Provmärkning|Näyte|Проба|Номер пробы|№ пробы|Образец|Зразок|Номер зразка|Minta|Minta jele|Probă|Cod probă|Sampel|Kode sampel|Numune|Numune no|Δείγμα|試料|検体|시료|Parcelle|Parcela|Lote|Perceel|Schlag|Feldstück|Skifte|Lohko|Potrero|Talhão|Gleba|Поле|Ділянка|Tábla neve|Parsel|圃場|필지",
        ),
        (
            "depth",
            "Depth|Profundidad|Profondeur|Tiefe|Entnahmetiefe|Profundidade|Profondità|Diepte|Głębokość|Hloubka|Hĺbka|Djup|Dybde|Syvyys|Глубина|Глибина|Mélység|Adâncime|Kedalaman|Derinlik|Βάθος|深さ",
        ),
        (
            "texture",
            "Texture|Textura|Clase textural|Bodenart|Tessitura|Grondsoort|Kategoria agronomiczna|Druh půdy|Půdní druh|Jordart|Maalaji|Гранулометрический состав|Механічний склад|Tekstur|Bünye|土性|토성|Tekstuur",
        ),
        (
            "refused",
            "Incertidumbre|Incertitude|Messunsicherheit|Incertezza|Meetonzekerheid|Niepewność|Nejistota|Mätosäkerhet|Погрешность|Похибка|Mérési bizonytalanság",
        ),
    ];
    let mut wrong = Vec::new();
    for (expected, heads) in cases {
        for head in heads.split('|') {
            let found = match role(head) {
                Role::Values => "values",
                Role::Units => "units",
                Role::Names => "names",
                Role::Ratings => "ratings",
                Role::Methods => "methods",
                Role::Sample(_) => "samples",
                Role::Depth => "depth",
                Role::Texture => "texture",
                Role::Refused(_) => "refused",
                Role::Results(_) => "a result",
                Role::Blank | Role::Other => "-",
            };
            if found != *expected {
                wrong.push(format!("{head}: {found}, not {expected}"));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}
