//! What the words of a soil report mean: properties, methods and the words
//! around them, each by its many spellings.
//!
//! Source: spellings seen in public sample reports, laboratory exports and
//! extension bulletins; the rest common practice, no source.

use std::sync::LazyLock;

use super::fold::{Gap, Word as Token};
use super::languages::LANGUAGES;
use super::lexicon::Lexicon;
pub(super) use super::meanings::{Form, Meaning, Word};
use super::meanings::{is, spellings};
use crate::soil::{Method, Property};

spellings! { PROPERTIES:
    is(Property::Ph) =>
        "ph phsu soilph waterph phw phh2o pheau activeph phwert reaction phagua phactual phacqua phinacqua phwater";
    is(Property::SaltPh) => "phs saltph phsalt";
    is(Property::BufferPh) =>
        "bufferph phbuffer bph buffph bufph bufferindex smpae phtampon phpuffer";
    is(Property::ExchangeableAcidity) =>
        "acidity hdd exchangeableacidity exchacidity ac h hyd hydrogen hal \
         neutralizableacidity neutralisableacidity totalacidity acidezpotencial acidez \
         aciditeechangeable uitrsuur uitruilsuur uitruilbaresuur acidezintercambiable acidezcambiable austauschaciditat \
         acideztotal";
    is(Property::OrganicMatter) =>
        "om som organicmatter soilorganicmatter orgmatter organicmat humus \
         materiaorganica matiereorganique humusgehalt organischesubstanz sostanzaorganica organischestof organischestofgehalte \
         organischersubstanz matieresorganiques humusanteil";
    is(Property::OrganicCarbon) =>
        "oc soc toc ooc orgc organicc organiccarbon totalorganiccarbon carbonoorganico corg \
         tocarb loic carboneorganique carbonoorg organischerkohlenstoff \
         organischekohlenstoff carbonoorganicototal";
    is(Property::TotalN) =>
        "tn tkn totaln totalnitrogen azotetotal totn gesamtstickstoff gesamtn ntotal azototot azotototal azotototale \
         nitrogenototal nitrogeniototal lecototn leconitrogen stickstoffgesamt";
    is(Property::NitrateN) =>
        "no3n nitraten nitratenitrogen no3nitrogen nitratesn no31 azotenitrique \
         nitratstickstoff nno3 nitricon";
    Meaning::Is(Property::NitrateN, Form::No3) => "no3";
    Meaning::Is(Property::NitrateN, Form::Unsure) => "nitrate nitrates nitrat nitrato nitratos";
    is(Property::AmmoniumN) =>
        "nh4n ammoniumn ammoniumnitrogen ammn ammonian nh4nitrogen ammoniumstickstoff \
         azoteammoniacal nnh4";
    Meaning::Is(Property::AmmoniumN, Form::Nh4) => "nh4";
    Meaning::Is(Property::AmmoniumN, Form::Unsure) => "ammonium amonio amonium";
    is(Property::Phosphorus) =>
        "p phosphorus phosphurus phosporus phosphorous phos phosphor fosforo phosphore phosphorusp fosfor";
    Meaning::Is(Property::Phosphorus, Form::P2O5) =>
        "p2o5 anhydridephosphorique acidephosphorique phosphorpentoxid";
    Meaning::Is(Property::Phosphorus, Form::Po4) => "po4";
    is(Property::Phosphorus) => "po4p phosphatep";
    Meaning::Is(Property::Phosphorus, Form::Phosphate) => "phosphate phosphat";
    is(Property::Potassium) => "k potassium potasium pottassium kalium potasio potassio pottasium potasiok xk";
    Meaning::Is(Property::Potassium, Form::K2O) => "k2o potash kali potasse kaliumoxid potassa";
    is(Property::Calcium) => "ca calcium calcuim calcio kalzium ca2 kalcium xca";
    Meaning::Is(Property::Calcium, Form::CaO) => "cao chaux kalziumoxid calciumoxid";
    is(Property::Magnesium) => "mg magnesium magnesuim magnesio mg2 ma xmg";
    Meaning::Is(Property::Magnesium, Form::MgO) => "mgo magnesie magnesia magnesiumoxid";
    is(Property::Sodium) => "na sodium natrium sodio xna";
    is(Property::Sulfur) =>
        "s sulfur sulphur sulfer so4s sulfates sulphates sulfatesulfur sulphatesulphur \
         azufre enxofre schwefel soufre sulfatschwefel sso4";
    Meaning::Is(Property::Sulfur, Form::So4) => "so4 so42";
    Meaning::Is(Property::Sulfur, Form::Unsure) => "sulfate sulphate sulfat sulfato sulfatos";
    is(Property::Boron) => "b boron bor boro bore";
    is(Property::Zinc) => "zn zinc zink zinco cinc";
    is(Property::Manganese) => "mn manganese mangan manganeso manganes";
    is(Property::Copper) => "cu copper kupfer cobre cuivre";
    is(Property::Iron) => "fe iron eisen hierro ferro fer";
    is(Property::Aluminum) => "al aldd aluminum aluminium aluminio alluminio al3 aluminiointercambiable";
    is(Property::Molybdenum) => "mo molybdenum molyb molybdan molybdene molibdeno molibdenio";
    is(Property::Chloride) => "cl chloride chlorides chlorid chlorure cloruro cloreto";
    is(Property::Pbi) => "pbi pbicol phosphorusbufferingindex phosphorusbufferindex";
    is(Property::RemainingP) => "prem fosfororemanescente premanescente remainingp";
    is(Property::Lead) => "pb lead blei plomb plomo chumbo";
    is(Property::Arsenic) => "as arsenic arsen arsenico";
    is(Property::Cadmium) => "cd cadmium kadmium cadmio";
    is(Property::Cec) =>
        "ctce cec estcec ecec ktk tec ctc cic kak csc cationexchangecapacity cationexchcapacity \
         cationexchcap totalexchangecapacity exchangecapacity cationexchange \
         cecsumofcations sumofcations calculatedcationexchangecapacity \
         cationexchangecap kationenaustauschkapazitat austauschkapazitat \
         capaciteechange capacidaddeintercambiocationico capacidaddeintercambio \
         capacidadedetrocacationica capacidadedetrocadecations capacidadedetroca \
         cecmetson capacitedechange capacitedechangecationique totalcec";
    is(Property::BaseSaturation) =>
        "kejenuhanbasa bs bs% %bs basesat basesaturation totalbasesaturation v% basensattigung satbases satporbases \
         saturacaoporbases saturaciondebases saturacionbases tauxdesaturation basesat% \
         %basesat";
    is(Property::CalciumSaturation) => "perca cabs bsca";
    is(Property::MagnesiumSaturation) => "permg mgbs bsmg";
    is(Property::PotassiumSaturation) => "perk kbs bsk";
    is(Property::SodiumSaturation) =>
        "perna nabs bsna esp isna pst exchangeablesodiumpercentage exchangeablesodiumpercent \
         exchangeablesodium%";
    is(Property::AciditySaturation) => "perh hbs bsh acidsaturation aciditysaturation acidsat acidsatn saturaciondeacidez saturacionacidez porcentajedesaturaciondeacidez suurversadiging suurvers alsaturation aluminumsaturation aluminiumsaturation saturacaoporaluminio saturaciondealuminio saturaciondeal saturacaodealuminio";
    is(Property::Ec) =>
        "ec ss ssalts solublesalts solublesalt solsalts solsalt solublesaltsec \
         salts salinity electricalconductivity elecconductivity conductivity tss \
         elconductivity conductividad conducibilita conducibilitaelettrica conduttivita conduttivitaelettrica conductividadelectrica conductivite \
         conductiviteelectrique leitfahigkeit elektrischeleitfahigkeit ce salinite \
         salinidad salinidade salzgehalt condutividade condutividadeeletrica \
         conductiviteelec";
    is(Property::Sar) => "sar sodiumadsorptionratio sodiumabsorptionratio";
    is(Property::FreeLime) =>
        "cac03 excesslime exlime freelime limeestimate caco3 cce calcairetotal calcaretot calcaretotale carbonatitotali \
         calciumcarbonate calciumcarbonateequivalent freecarbonate freecarbonates \
         calcaire carbonatos carbonato kalkgehalt carbonat carbonatgehalt \
         excesslimerating freecaco3";
    is(Property::Sand) => "sand areia arena sable sables sandanteil sabbia";
    is(Property::Silt) => "silt silte limo schluff limon limons";
    is(Property::Clay) => "clay argila arcilla ton% argile argiles tonanteil argilla lutum klei tongehalt";
    is(Property::BulkDensity) =>
        "bulkdensity bd scoopdensity sampledensity density wv volumeweight weightvolume \
         soildensity rohdichte lagerungsdichte densiteapparente densidadaparente \
         densidade weightpervolume scoopwt";
    is(Property::NitrogenRelease) =>
        "enr estnrelease estimatednrelease estimatednitrogenrelease nitrogenrelease";
}

spellings! { METHODS:
    Meaning::By(Method::Mehlich3) => "mehlich3 mehlichiii m3 miii meh3 mehlich3icp m3icap m3icp";
    Meaning::By(Method::Mehlich3Colorimetric) =>
        "mehlich3colorimetric mehlich3colourimetric m3colorimetric mehlich3color m3col";
    Meaning::By(Method::Mehlich1) => "mehlich1 mehlichi m1 doubleacid weakdoubleacid meh1";
    Meaning::By(Method::BrayP1) => "brayp1 bray1 brayi weakbray braykurtz1 braypi bray1p";
    Meaning::By(Method::BrayP2) => "brayp2 bray2 brayii strongbray braykurtz2";
    Meaning::IsBy(Property::Phosphorus, Method::BrayP1) => "p1 pweakbray";
    Meaning::IsBy(Property::Phosphorus, Method::BrayP2) => "p2";
    Meaning::IsBy(Property::Phosphorus, Method::Mehlich3) => "mehlichpiii mehlichp3";
    Meaning::By(Method::Olsen) =>
        "olsen olsens bicarb bicarbonate sodiumbicarbonate nahco3 hco3 bic sodiumbicarb";
    Meaning::By(Method::Morgan) => "morgan morgans";
    Meaning::By(Method::ModifiedMorgan) =>
        "modifiedmorgan modmorgan modifiedmorgans modmorgans mmorgan mm";
    Meaning::By(Method::AmmoniumAcetate) =>
        "ammoniumacetate nh4oac nh4ac amac ammacetate neutralammoniumacetate 1nnh4oac \
         ammoniumacetat acetatedammonium acetatodeamonio acetateammonium acetatoamonico acetatodiammonio acetatoammonico";
    Meaning::By(Method::AmmoniumNitrate) => "ammoniumnitrate nh4no3 ammnitrate";
    Meaning::By(Method::Dtpa) => "dtpa";
    Meaning::By(Method::HotWater) => "hotwater hoth2o hw hotwatersoluble heiszwasser heißwasser heisswasser aguaquente aguacaliente eauchaude acquacalda";
    Meaning::By(Method::Kcl) => "kcl 2nkcl 1nkcl 2mkcl 1mkcl potassiumchloride";
    Meaning::By(Method::Water1To1) => "1to1 1to1water 1to1h2o";
    Meaning::By(Method::Water1To2) => "1to2 2to1 1to2water 1to2h2o";
    Meaning::By(Method::Water1To5) => "1to5 5to1 1to5water 1to5h2o";
    Meaning::By(Method::SaturatedPaste) => "saturatedpaste satpaste saturationextract sp extractodesaturacion extratodesaturacao estrattoapastasatura pastasatura pastasaturada extractodepastasaturada extraitdepatesaturee sattigungsextrakt estrattodisaturazione estrattoapasta";
    Meaning::By(Method::SaturatedMedia) => "saturatedmedia saturatedmediaextract sme mediaextract";
    Meaning::IsBy(Property::Aluminum, Method::ModifiedMorgan) =>
        "reactiveal reactivealuminum reactivealuminium";
    Meaning::IsBy(Property::Ph, Method::SaturatedPaste) => "phsp sarph";
    Meaning::IsBy(Property::Ec, Method::SaturatedPaste) => "ecsp ece";
    Meaning::By(Method::CaCl2) =>
        "cacl2 calciumchloride 001mcacl2 01mcacl2 001mcalciumchloride cacl \
         clorurodecalcio chloruredecalcium calciumchlorid schachtschabel pae";
    Meaning::By(Method::LossOnIgnition) => "loi lossonignition ignition";
    Meaning::By(Method::WalkleyBlack) => "walkleyblack wb walkley";
    Meaning::By(Method::SmpBuffer) => "smp smpbuffer shoemaker shoemakermcleanpratt";
    Meaning::By(Method::SikoraBuffer) => "sikora sikorabuffer sikora2 sikoraii";
    Meaning::By(Method::MehlichBuffer) => "mehlichbuffer mehlichbufferph mehlichbph";
    Meaning::By(Method::ModifiedMehlichBuffer) =>
        "modifiedmehlichbuffer modifiedmehlich modmehlich";
    Meaning::By(Method::AdamsEvansBuffer) => "adamsevans adamsevansbuffer aebuffer";
    Meaning::By(Method::WoodruffBuffer) => "woodruff woodruffbuffer wdrf wdrfbuffer";
    Meaning::By(Method::TotalAcid) => "epa3050 epa3050b epa3051 aquaregia aqreg konigswasser eauregale aguaregia lucavkakralovska lucavkakral aciddigestion";
    Meaning::By(Method::Mehlich2) => "mehlich2 mehlichii meh2";
    Meaning::IsBy(Property::Phosphorus, Method::Mehlich2) => "mehlichpii mehlichp2";
    Meaning::By(Method::Colwell) => "colwell colwells";
    Meaning::By(Method::Cal) => "cal calciumacetatelactate calciumacetatlactat";
    Meaning::By(Method::DoubleLactate) => "doublelactate doppellaktat doppellactat";
    Meaning::By(Method::Lancaster) => "lancaster";
    Meaning::By(Method::Kelowna) => "kelowna";
    Meaning::By(Method::ModifiedKelowna) => "modifiedkelowna modkelowna kelownamodified";
    Meaning::By(Method::Resin) => "resin resina anionexchangeresin";
    Meaning::By(Method::H3a) => "h3a";
    Meaning::By(Method::AbDtpa) => "abdtpa ammoniumbicarbonatedtpa ammoniumbicarbdtpa";
    Meaning::By(Method::DtpaSorbitol) => "dtpasorbitol sorbitol sorbitoldtpa";
    Meaning::By(Method::DiluteHcl) => "hcl 01nhcl 01mhcl diluteacid hydrochloricacid";
    Meaning::By(Method::Kcl40) => "kcl40";
    Meaning::By(Method::CalciumPhosphate) => "fosfatomonocalcico fosfatodecalcio mcp monocalciumphosphate calciumphosphate";
    Meaning::By(Method::JoretHebert) => "jorethebert joret";
    Meaning::By(Method::Dyer) => "dyer";
    Meaning::By(Method::AmmoniumLactate) => "ammoniumlactate egnerriehm egnerriehmdomingo";
    Meaning::IsBy(Property::Phosphorus, Method::AmmoniumLactate) => "pal";
    Meaning::IsBy(Property::Potassium, Method::AmmoniumLactate) => "kal";
    Meaning::By(Method::BariumChloride) => "bacl2 bariumchloride bariochloruro cloruroidibario";
    Meaning::By(Method::Edta) => "edta nh4edta";
    Meaning::By(Method::CitricAcid) => "citricacid";
    Meaning::IsBy(Property::Phosphorus, Method::WaterPw) => "pw";
    Meaning::By(Method::QuickTest) => "quicktest mafquicktest qt";
    Meaning::IsBy(Property::Potassium, Method::QuickTest) => "qtk";
    Meaning::By(Method::Water1To2p5) => "1to2.5 2.5to1 1to2.5water 1to2.5h2o";
}

spellings! { WORDS:
    Meaning::Word(Word::Plain) =>
        "soil av available avail extractable extr extract extracted extraction extractant \
         exchangeable exch plant concentration conc icp icap by of the is \
         standard su reported est estimated element elemental water h2o weight \
         wt dry mass method with using in and cation base lab reading readings old new \
         determined neutral sum on at to for from slurry basis capacity percentage \
         calculated calc im de do da du des del el la le en em und agua eau wasser \
         pflanzenverfugbar plantbeschikbaar plantbesch verfugbar assimilable assimilables disponible disponivel \
         echangeable intercambiable cambiable trocavel extractible extraible \
         scam ass boden sol suelo solo leco metson asimilable asimilables scambiabile scambiabili assimilabile assimilabili extraivel terreno suolo ech troca ext oxidable statut acido basique getal labuse acqua elettrica feinboden cations cationes cationi cambio scambio \
         intercambio trocaveis kationen basi";
    Meaning::Word(Word::ByColour) => "colorimetric colourimetric colorimetry";
    Meaning::Word(Word::Buffer) => "buffer buffered";
    Meaning::Word(Word::LimeIndex) =>
        "lti limetestindex limeindex limetest limeindexlti limetestindexlti";
    Meaning::Word(Word::Salt) => "salt";
    Meaning::Word(Word::Saturation) => "saturation satn saturated saturacion saturaciones saturacao saturacoes sattigung saturazione";
    Meaning::Word(Word::Sat) => "sat";
    Meaning::Word(Word::Total) => "total tot totals gesamt totale";
    Meaning::Word(Word::Paste) => "paste";
    Meaning::Word(Word::WaterExtract) => "watersoluble soluble waterextractable";
    Meaning::Word(Word::Advice) =>
        "credit maintenance buildup uptake lbp2o5 lbsp2o5 lbk2o lbsk2o rec recs recommendation recommendations recommended recommend apply applied \
         add broadcast sidedress topdress requirement requirements required need needed \
         needs fertilizer fertiliser limerequirement necessidadeemcal necesidaddecal limestone limereq limerec removal cropremoval spread \
         use limerate rate suggested kieserite kieserit superphosphate urea patentkali borax solubor epsomsalt epsomsalts empfehlung dungung dungebedarf kalkbedarf \
         recomendacion recomendacao dose dosis adubacao apport fertilizante abono \
         besoin besoinenchaux encalado calagem requerido";
    Meaning::Word(Word::Ratio) => "ratio ratios cnratio cn humuston";
    Meaning::Word(Word::Index) => "index indices idx indice";
    Meaning::Word(Word::AvailabilityIndex) => "ai ai1 ai2 availabilityindex activityindex";
    Meaning::Word(Word::Depth) =>
        "depth sampledepth samplingdepth depthrange sampledepthrange tiefe sampleddepth \
         entnahmetiefe probentiefe profondeur profundidad profundidade";
    Meaning::Word(Word::Texture) =>
        "texture soiltexture textureclass texturalclass texturebyfeel bodenart soiltype \
         texturename textura textureclasse classetexturale clasetextural \
         bodenartengruppe esttexture classetextural bodenschwere grondsoort tessitura classeditessitura texturadecampo texturadelsuelo";
    Meaning::Word(Word::Sample(0)) =>
        "ownersampleid sampid sampname clientidentification clientsampleid clientssampleid growersampleid sampleid samplename sampleidentification sampledescription yoursampleid samplelabel \
         customersampleid identification identificacion identificacao identifikation";
    Meaning::Word(Word::Sample(1)) =>
        "samplelocation sample samples probe specimen muestra amostra echantillon sampleno \
         samplenumber probennummer probennr echantillons muestras amostras probeid";
    Meaning::Word(Word::Sample(2)) =>
        "field bed beet plot fieldid fieldname area garden zone block \
         plotid bedname schlag parcela parzelle parcelle champ feld lote talhao \
         potager horizon horizons horizont paddock orchard";
    Meaning::Word(Word::Sample(3)) => "location site siteid";
    Meaning::Word(Word::Sample(4)) =>
        "laboratoryreference labreference registro laborkennzahl labornummer labornr labnr labno labnumber labid labnum labsample labsampleid labsampleno id labref";
    Meaning::Word(Word::NameColumn) =>
        "indicator indicators test tests parameter parameters property nutrient nutrients analyte analytes \
         determination determinand determinands metal metals heavymetal heavymetals measurement testname item soiltest analysis naehrstoff nahrstoff \
         analyse analisis parametro parametros parametre parametres determinacion \
         determinacao elemento elementos elements nutriente nutrientes nahrstoffe \
         untersuchung";
    Meaning::Word(Word::ResultColumn) =>
        "measured measuredvalue result results value values found valuefound level levels ergebnis wert \
         yourresult yoursoil testresult testresults resultat resultado soiltestvalue \
         testvalue testlevel soiltestlevel valeur valor messwert gemessen ergebnisse \
         resultats resultados valores werte analysenwert";
    Meaning::Word(Word::UnitColumn) =>
        "unit units uom einheit unite unidad measure unidade unidades unites einheiten";
    Meaning::Word(Word::RatingColumn) =>
        "score scores constraint constraints percentile rating ratings interpretation status category class comment comments rank \
         bewertung soiltestrating note notes remark remarks assessment flag \
         gehaltsklasse klasse versorgungsstufe interpretacion interpretacao \
         appreciation nivel classe clase einstufung soilindex";
    Meaning::Word(Word::RangeColumn) =>
        "riglyne riglyn norm medel medeltal keskiarvo atlag srednia mittel medie gjennomsnitt gennemsnit ortalama 平均 平均值 평균 средневзвешенное среднее weightedaverage moyenneponderee mediaponderada minimo maximo grenzwert valeurcritique seuil average averages mean median mittelwert durchschnitt moyenne promedio gemiddelde gem medelvarde srednia prumer snitt goal critical threshold umbral umbrales umbralcritico mdl rl lod loq pql detectionlimit reportinglimit min max minimum maximum lower upper limit limits range optimum optimumrange optimal optimalrange desiredrange desired desirable \
         desirablelevel target targets targetrange normalrange referencerange guideline \
         guidelines ideal idealrange sufficiencyrange recommendedrange reference \
         optimalbereich zielbereich zielwert sollwert richtwert souhaitable optimo \
         rango faixa optimumlevel rangooptimo nivelescriticos niveiscriticos valoresdereferencia richtwerte sollwerte criticalvalues criticallevels \
         criticallimit criticalvalue guide guidelow guidehigh labguide screeninglevel screeninglevels screeningvalue actionlevel criteria normallevel deficit surplus goals desiredvalue valuedesired \
         streeftraject streefwaarde norm norme norma normes normas норма \
         adecuado adequado riferimento valorediriferimento zakres zakresoptymalny rangoideal \
         guidelinevalue optimaal optimalt optimalny 理想値 基準値 vise visee cible cibles souhaite guidance norms optimale optimalewerte optimaler streefzone streefzones";
    Meaning::Word(Word::MethodColumn) =>
        "testmethod methodused methods procedure methode metodo metodos methoden";
    Meaning::Word(Word::Humic) => "hm hm% humicmatter humic";
    Meaning::Word(Word::Nitrogen) => "n nitrogen stickstoff azote nitrogeno nitrogenio";
    Meaning::Word(Word::HalfMethod) => "bray mehlich meh";
    Meaning::Word(Word::Other("active carbon is a soil-health test this program doesn't judge")) =>
        "poxc activecarbon permanganatecarbon";
    Meaning::Word(Word::Other("a part of the organic matter, not all of it")) =>
        "dissolved particulate associated labile";
    Meaning::Word(Word::Other("moisture says how wet the sample was, not what the soil holds")) =>
        "moisture soilmoisture";
    Meaning::Word(Word::Other("an amount per area, but not whether found or advised")) =>
        "kgn kgp2o5 kgk2o lbsna lbna";
    Meaning::Word(Word::Other("a texture class, not a share of sand, silt or clay")) =>
        "loam loamy silty sandy";
    Meaning::Word(Word::Other("how far a result may be off, not the result")) =>
        "lsd sd stdev stddev cv rsd uncertainty";
    Meaning::Word(Word::Other("an earlier result")) => "change difference trend delta veranderung evolution previous prior lastyear lasttest";
    Meaning::Word(Word::Other("lime buffer capacity is not a buffer pH")) =>
        "lbc lbceq limebuffercapacity";
    Meaning::Word(Word::Other("not used by this program")) =>
        "extractableorganicsulphur extractableorganicsulfur organicsulphur organicsulfur otherbases nacl gnacl pretention \
         phosphateretention asc anionstoragecapacity ace aceprotein soilprotein \
         respiration soilrespiration co2c onedayc wsa aggregatestability \
         wetaggregatestability awc availablewatercapacity selenium ni nickel cr \
         chromium hg mercury silicon sb somadebases sumadebases calcaireactif ctcefetiva calcareattivo calizaactiva calcarioactivo efetiva \
         activelime activelimestone";
    Meaning::Word(Word::Other("the nitrate of a deeper sample; only the upper one is judged here")) =>
        "no32";
}

/// The spellings of every language.
fn all() -> impl Iterator<Item = &'static (Meaning, &'static str)> {
    [PROPERTIES, METHODS, WORDS].into_iter().chain(LANGUAGES).flatten()
}

static MEANINGS: LazyLock<Lexicon<Meaning>> = LazyLock::new(|| {
    Lexicon::new(
        all().flat_map(|&(meaning, spellings)| spellings.split(' ').map(move |s| (s, meaning))),
    )
});

/// The longest phrase that begins at word `from`, and how many words it takes.
pub(super) fn meaning_at(words: &[Token], from: usize) -> Option<(Meaning, usize)> {
    if let Some(share) = share_of_bases(&words[from..]) {
        return Some(share);
    }
    if is_by_lactate(words, from) {
        return Some((Meaning::By(Method::AmmoniumLactate), 1));
    }
    let mut phrase = String::new();
    let mut found = None;
    for (i, word) in words.iter().enumerate().skip(from).take(6) {
        if i > from && word.gap == Gap::Wall {
            break;
        }
        phrase.push_str(&word.text);
        let (meaning, goes_on) = MEANINGS.look_up(&phrase);
        if let Some(meaning) = meaning {
            found = Some((meaning, i + 1 - from));
        }
        if !goes_on {
            break;
        }
    }
    found.or_else(|| index_of(&words[from..])).or_else(|| scanned(words.get(from)?))
}

/// A long name of a property as a scan misreads it: `potassiurn`, `ca1cium`, `magneslum`.
fn scanned(word: &Token) -> Option<(Meaning, usize)> {
    let text = &word.text;
    if text.len() < 6 || !text.is_ascii() {
        return None;
    }
    let tried = [text.replace("rn", "m"), text.replace('1', "l"), text.replace('l', "i")];
    let read = tried.iter().filter(|t| *t != text).find_map(|t| MEANINGS.look_up(t).0)?;
    matches!(read, Meaning::Is(..)).then_some((read, 1))
}

/// `Mg-AL`: by ammonium lactate, as the Nordic laboratories write it, and `AL-P2O5` as the
/// Hungarian ones do; "Mg Al" are two elements.
fn is_by_lactate(words: &[Token], from: usize) -> bool {
    let of = from.checked_sub(1).map(|i| words[i].text.as_str());
    let behind = words.get(from + 1).filter(|w| w.gap == Gap::Dash).map(|w| w.text.as_str());
    words.get(from).is_some_and(|w| w.text == "al")
        && (words[from].gap == Gap::Dash && matches!(of, Some("mg" | "ca" | "na" | "p" | "k"))
            || matches!(behind, Some("p2o5" | "k2o" | "na" | "mg" | "ca")))
}

/// `S/T` and `S/CEC`: the bases' share of the exchange, in French; `K/CEC` is that of one base.
fn share_of_bases(words: &[Token]) -> Option<(Meaning, usize)> {
    let [part, whole, ..] = words else { return None };
    let capacity = matches!(whole.text.as_str(), "cec" | "cic" | "ctc" | "csc" | "kak" | "kvk");
    let share = match part.text.as_str() {
        "s" if capacity || whole.text == "t" => Property::BaseSaturation,
        "ca" if capacity => Property::CalciumSaturation,
        "mg" if capacity => Property::MagnesiumSaturation,
        "k" if capacity => Property::PotassiumSaturation,
        "na" if capacity => Property::SodiumSaturation,
        _ => return None,
    };
    (whole.gap == Gap::Slash).then_some((is(share), 2))
}

/// `P-I`, `K-I`, `Mn-AI`: index only with the hyphen, since `Si` is silicon.
fn index_of(words: &[Token]) -> Option<(Meaning, usize)> {
    let [first, ..] = words else { return None };
    (first.gap == Gap::Dash && first.text == "i").then_some((Meaning::Word(Word::Index), 1))
}

#[cfg(test)]
mod tests {
    use super::super::fold::squash;
    use super::*;

    #[test]
    fn no_spelling_means_two_things() {
        let mut seen = std::collections::HashMap::new();
        let mut twice = Vec::new();
        for &(meaning, spellings) in all() {
            for spelling in spellings.split_ascii_whitespace() {
                match seen.insert(spelling, meaning) {
                    Some(before) if before != meaning => {
                        twice.push(format!("{spelling}: {before:?} and {meaning:?}"));
                    }
                    _ => {}
                }
            }
        }
        assert!(twice.is_empty(), "{twice:#?}");
    }

    #[test]
    fn each_spelling_stands_as_the_fold_leaves_it() {
        let unfolded = |s: &&str| squash(s) != **s;
        let spellings = all().flat_map(|(_, spellings)| spellings.split_ascii_whitespace());
        let found: Vec<&str> = spellings.filter(unfolded).filter(|s| !s.contains('.')).collect();
        assert!(found.is_empty(), "{found:?}");
    }
}
