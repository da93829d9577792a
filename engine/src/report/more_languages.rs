//! More names, heads and words of laboratories, one language or a family of them a table, written
//! as in `languages.rs`: whole phrases where a word alone would say too little or too much, and
//! what only looks like a known test under what is not used.
//!
//! Source: the words of laboratories' forms (from memory).

use super::meanings::{Form, HOW_FAR_OFF, Meaning, NOT_USED, STORE, Word, is, spellings};
use crate::soil::{Method, Property};

/// What an earlier test found.
const EARLIER: Word = Word::Other("an earlier result");

/// A part of the sand or of the silt.
const FRACTION: Word = Word::Other("only a part of the sand or the silt");

/// The lime that is fine enough to act.
const ACTIVE: Word = Word::Other("active lime is another measure than all of the lime");

/// What the soil binds.
const BOUND: Word = Word::Other("what the soil binds or keeps back, not what plants can reach");

spellings! { ENGLISH:
    Meaning::Word(Word::Saturation) => "ofcec ofthecec delacec delacic dellacsc delactc dacec";
    is(Property::Ph) => "phlevel phvalue phinwater phinh2o soilphlevel soilreactionph waterphlevel";
    Meaning::IsBy(Property::SaltPh, Method::Kcl) => "phkcl";
    Meaning::IsBy(Property::SaltPh, Method::CaCl2) => "phcacl2";
    is(Property::OrganicMatter) =>
        "organicmattercontent organicmaterial orgmat soilorgmatter totalorganicmatter percentorganicmatter";
    is(Property::OrganicCarbon) =>
        "orgcarbon oxidisableorganiccarbon oxidizableorganiccarbon soilorganiccarbon orgcarb";
    is(Property::TotalN) => "totalkjeldahlnitrogen nkjeldahl kjeldahlnitrogen kjeldahln totalkjeldahln";
    is(Property::AmmoniumN) => "ammoniacalnitrogen ammoniacaln ammonianitrogen";
    is(Property::Cec) => "effectivecec effectivecationexchangecapacity cationexchangecapacitycec";
    is(Property::ExchangeableAcidity) =>
        "exchangeacidity exchangeableacid exchangeableacids extractableacidity extracidity \
         exchangablehydrogen exchangeablealh";
    is(Property::AciditySaturation) => "alsat aluminumsat aluminiumsat acidsaturationpercent percentacidsaturation";
    is(Property::SodiumSaturation) => "exchsodiumpercentage exchangeablesodiumpercentageesp exchangeablena%";
    is(Property::FreeLime) => "carbonates totalcarbonates carbonatecontent caco3equivalent calciumcarbonateequiv";
    is(Property::Molybdenum) => "molybden molibden molybdeen molibdeno";
    is(Property::Chloride) => "chlorure chlorures cloruros cloretos cloruri cloruro chloridy chlorki chlorek хлориды хлорид";
    Meaning::By(Method::AmmoniumAcetate) => "ammoniumacetatph7 ammoacetate ammoniumacet ammacet";
    Meaning::Word(Word::Plain) =>
        "exchangable exchangeble extractible availability plantavailable bases exchangeables topsoil";
    Meaning::Word(FRACTION) =>
        "coarsesand finesand mediumsand veryfinesand verycoarsesand coarsesilt finesilt mediumsilt";
    Meaning::Word(BOUND) =>
        "sorption psorption fixation retention nonexchangeable reservek reservep reservepotassium reservephosphorus \
         psaturation phosphorussaturation";
    Meaning::Word(NOT_USED) =>
        "gravel stones coarsefragments stonecontent particledensity realdensity porosity fieldcapacity wiltingpoint \
         hydraulicconductivity resistance resistivity organicphosphorus organicp organicsulphur organicsulfur \
         extractableorganicsulphur extractableorganicsulfur totalcarbon totalc inorganiccarbon inorganicc \
         totalexchangeablebases sumofbases sumofexchangeablebases teb otherbases totaldissolvedsolids tds \
         mineralizablen mineralisablen mineralizablenitrogen mineralisablenitrogen dgtp dgt \
         cobalt silicate vanadium barium lithium fluoride antimony saturationpercentage";
    Meaning::Word(Word::Ratio) =>
        "verhaltnis pomer stosunek kvot nisbah suhde arany aranya oran orani соотношение отношение \
         співвідношення λογοσ σχεση 比 当量比 石灰苦土当量比 苦土加里当量比 石灰苦土 비율";
    Meaning::Word(Word::Sample(0)) =>
        "yourref yourreference clientref clientreference customerref customerreference sampleref samplereference \
         samplemark samplemarks samplecode";
    Meaning::Word(Word::NameColumn) => "chemicalproperty soilproperty soilproperties soilparameter soilparameters particulars";
    Meaning::Word(Word::ResultColumn) =>
        "content contents reportedvalue analysisresult analysisresults labresult labresults actualvalue actuallevel \
         currentvalue currentlevel soilresult yourvalue yourlevel";
    Meaning::Word(Word::RatingColumn) => "fertilitystatus soilstatus fertilityrating fertilityclass ratingscale evaluation";
    Meaning::Word(Word::RangeColumn) =>
        "recommendedlevel recommendedlevels recommendedvalue acceptablerange acceptable suitablerange typicalrange \
         typicallevel typicallevels referencevalue referencevalues idealvalue ideallevel optimalvalue optimumvalue \
         permissiblelimit maximumlimit sufficiencylevel";
    Meaning::Word(Word::MethodColumn) => "analyticalmethod methodcode methodreference testcode methodno";
    Meaning::Word(HOW_FAR_OFF) => "measurementuncertainty expandeduncertainty";
    Meaning::Word(EARLIER) => "previousresult previousyear previousvalue lastresult lastanalysis";
}

spellings! { FRENCH:
    is(Property::Ph) => "pheaudistillee phdusol phdeleau";
    is(Property::ExchangeableAcidity) => "aciditedechange aciditetotale";
    is(Property::OrganicMatter) =>
        "matorganique morganique matieresorganiquestotales tauxdematiereorganique tauxdematieresorganiques mattorg matorg";
    is(Property::OrganicCarbon) => "carboneorganiquetotal corganiquetotal cot";
    is(Property::TotalN) => "azotetotaldumas azotekjeldahl azotetotalkjeldahl ntotalkjeldahl";
    is(Property::NitrateN) => "nnitrique";
    is(Property::AmmoniumN) => "nammoniacal";
    Meaning::Is(Property::Phosphorus, Form::P2O5) => "pentoxydedephosphore anhydridephosphoriquep2o5";
    Meaning::Is(Property::Potassium, Form::K2O) => "oxydedepotassium";
    Meaning::Is(Property::Calcium, Form::CaO) => "oxydedecalcium";
    Meaning::Is(Property::Magnesium, Form::MgO) => "oxydedemagnesium";
    Meaning::Is(Property::Sodium, Form::Na2O) => "na2o oxydedesodium soude";
    Meaning::Is(Property::Sulfur, Form::So3) => "so3 anhydridesulfurique";
    is(Property::Cec) => "capacitedechangeencations capacitedechangedecations capacitedechangecationiquecec ceceff cecefficace";
    is(Property::BaseSaturation) =>
        "saturationdesbases saturationenbases tauxdesaturationenbases tauxdesaturationdelacec saturationdelacec \
         tauxdesaturationdesbases tauxdesaturationenbasesechangeables saturationducomplexe degredesaturation";
    is(Property::FreeLime) => "carbonatestotaux carbonatedecalcium calcairetotalcaco3";
    is(Property::BulkDensity) => "massevolumiqueapparente";
    Meaning::By(Method::HotWater) => "eaubouillante solubleeaubouillante solublealeaubouillante solubledansleaubouillante solublealeauchaude solubleaeaubouillante";
    Meaning::Word(Word::Plain) =>
        "assim assimil echang extractibles extractable echangeables disponible dispo terre terrefine seche taux forme granulometrique \
         granulometrie pourcentage sous fraction";
    Meaning::Word(Word::Total) => "totaux totales totais totali";
    Meaning::Word(Word::WaterExtract) => "solubleeau solublealeau hydrosoluble";
    Meaning::Word(FRACTION) =>
        "sablestresfins limonstresfins sablegrossiers sablesmoyens sablemoyen sabletresfin sabletresgrossier limonmoyen";
    Meaning::Word(ACTIVE) => "caco3actif carbonatesactifs carbonateactif";
    Meaning::Word(NOT_USED) =>
        "indicedepouvoirchlorosant pouvoirchlorosant ipc elementsgrossiers cailloux graviers sommedesbases \
         sommedesbasesechangeables sommedescations sommedescationsechangeables densitereelle humidite humiditeresiduelle \
         matiereseche capaciteauchamp reserveutile azotemineral azoteorganique carbonetotal ctotal matiereorganiquelibre \
         matiereorganiqueliee humiditerelative cobalt";
    Meaning::Word(Word::Depth) => "profondeurdeprelevement profondeurprelevement profondeurdechantillonnage";
    Meaning::Word(Word::Texture) => "texturedusol classedetexture typedesol classegranulometrique";
    Meaning::Word(Word::Sample(0)) =>
        "referenceechantillon referencedelechantillon identificationechantillon identificationdelechantillon \
         nomdelechantillon designationechantillon refechantillon identifiant";
    Meaning::Word(Word::Sample(1)) => "numeroechantillon numerodechantillon nechantillon nodechantillon";
    Meaning::Word(Word::Sample(2)) => "nomparcelle nomdelaparcelle referenceparcelle planche ilot";
    Meaning::Word(Word::NameColumn) =>
        "determinations analyses parametreanalyse parametresanalyses caracteristiques libelle caracteristique";
    Meaning::Word(Word::ResultColumn) =>
        "teneur teneurs teneurmesuree resultatanalyse resultatdanalyse resultatsdanalyse resultatsanalyse valeurmesuree \
         valeurtrouvee valeurs votresol mesure";
    Meaning::Word(Word::UnitColumn) => "unitedemesure unita";
    Meaning::Word(Word::RatingColumn) => "jugement niveau classement observation observations commentaire commentaires niveaudefertilite";
    Meaning::Word(Word::RangeColumn) =>
        "valeurcible valeursouhaitable teneursouhaitable teneuroptimale valeuroptimale valeurdereference valeursdereference \
         plageoptimale plagesouhaitee fourchette objectif niveausouhaitable valeurguide valeurlimite valeurslimites \
         normesouhaitable zonesouhaitable zoneoptimale teneursouhaitee trenf timp impasse renforcement";
    Meaning::Word(Word::MethodColumn) => "methodedanalyse methodeanalyse methodeutilisee";
    Meaning::Word(HOW_FAR_OFF) => "incertitude incertitudes";
    Meaning::Word(EARLIER) => "anneeprecedente analyseprecedente resultatprecedent";
    Meaning::Word(Word::Advice) =>
        "preconisation preconisations fumure conseil conseils amendement amendements chaulage apportconseille doseconseillee \
         doses apports fertilisation exportations";
}

spellings! { GERMAN:
    is(Property::Ph) => "bodenph phwertwasser phwertinwasser";
    is(Property::ExchangeableAcidity) => "austauschbareaciditat hydrolytischeaciditat";
    is(Property::OrganicMatter) => "orgsubstanz orgsubst organischesubst organischemasse orgmasse";
    is(Property::OrganicCarbon) => "kohlenstofforganisch orgkohlenstoff organischgebundenerkohlenstoff corganischgebunden";
    is(Property::TotalN) => "stickstoffges nges ngesamt gesamtstickstoffn";
    is(Property::NitrateN) => "nitratn";
    Meaning::Is(Property::Phosphorus, Form::P2O5) => "phosphorsaure diphosphorpentoxid";
    is(Property::Phosphorus) => "phosphorgehalt";
    is(Property::Potassium) => "kaliumgehalt";
    is(Property::Magnesium) => "magnesiumgehalt";
    is(Property::Calcium) => "calciumgehalt kalziumgehalt";
    is(Property::Boron) => "borgehalt";
    is(Property::Copper) => "kupfergehalt";
    is(Property::Zinc) => "zinkgehalt";
    is(Property::Manganese) => "mangangehalt";
    is(Property::Cec) =>
        "kakpot kakeff kationenaustauschkapazitatkak potentiellekationenaustauschkapazitat \
         effektivekationenaustauschkapazitat umtauschkapazitat kationenumtauschkapazitat kationenaustauschkap twert";
    is(Property::BaseSaturation) => "basensattigungsgrad vwert";
    is(Property::FreeLime) => "carbonate karbonat karbonate karbonatgehalt kalziumkarbonat calciumcarbonat gesamtkalk carbonatkalk gesamtcarbonat";
    is(Property::Silt) => "schluffanteil schluffgehalt";
    is(Property::Sand) => "sandgehalt";
    Meaning::By(Method::LossOnIgnition) => "gluhverlust";
    Meaning::Word(Word::Plain) =>
        "pflanzenverfugbares pflanzenverfugbarer pflanzenverfugbare verfugbarer verfugbares verfugbare loslich losliches \
         austauschbar austauschbares austauschbare extrahierbar extrahierbares anteil anteile gesamtboden";
    Meaning::Word(Word::WaterExtract) => "wasserloslich wasserlosliches wasserloslicher";
    Meaning::Word(Word::Total) => "gesamtgehalt gesamtgehalte gesamtes";
    Meaning::Word(FRACTION) => "grobsand mittelsand feinsand feinstsand grobschluff mittelschluff feinschluff";
    Meaning::Word(ACTIVE) => "aktivkalk aktiverkalk kalkaktiv wirksamerkalk";
    Meaning::Word(BOUND) => "kaliumfixierung fixierung phosphatfixierung";
    Meaning::Word(NOT_USED) =>
        "mineralischerstickstoff mineralisierterstickstoff skelett skelettgehalt steingehalt feinanteil wassergehalt \
         trockensubstanz feldkapazitat porenvolumen pufferkapazitat basensumme swert summederbasen";
    Meaning::Word(Word::Depth) => "probenahmetiefe bodentiefe probetiefe tiefenstufe";
    Meaning::Word(Word::Texture) => "bodengruppe bodenartgruppe texturklasse";
    Meaning::Word(Word::Sample(0)) => "probenbezeichnung probebezeichnung probenname schlagbezeichnung kundenbezeichnung";
    Meaning::Word(Word::Sample(1)) => "probennummern proben probenkennung probenkennzeichnung";
    Meaning::Word(Word::Sample(2)) => "entnahmestelle probenahmestelle flurstuck flachenbezeichnung schlagname schlagnr feldstuck feldstucksname grundstuck parzellenname beetname feldname standort";
    Meaning::Word(Word::NameColumn) =>
        "untersuchungsparameter messgroße messgrosse parameterbezeichnung merkmal analyseparameter prufparameter bodenparameter kenngroße";
    Meaning::Word(Word::ResultColumn) =>
        "messergebnis analysenergebnis untersuchungsergebnis analysewert analysenwerte analysewerte messwerte istwert gehalt gehalte";
    Meaning::Word(Word::RatingColumn) => "beurteilung gehaltsstufe versorgungsklasse versorgungszustand versorgung gehaltsklassen versorgungsgrad";
    Meaning::Word(Word::RangeColumn) =>
        "zielwerte optimalwert optimalwerte idealwert anzustreben orientierungswert referenzbereich referenzwert normalbereich \
         vergleichswert hintergrundwert zielph";
    Meaning::Word(Word::MethodColumn) =>
        "prufverfahren untersuchungsmethode analysenmethode analysemethode bestimmungsmethode prufmethode verfahren methodik";
    Meaning::Word(HOW_FAR_OFF) => "messunsicherheit unsicherheit";
    Meaning::Word(EARLIER) => "vorjahr voruntersuchung letzteuntersuchung";
    Meaning::Word(Word::Advice) =>
        "dungeempfehlung dungungsempfehlung dungeempfehlungen kalkung kalkempfehlung erhaltungskalkung nahrstoffbedarf \
         kalkungsbedarf dungergabe gabe bedarf dungermenge entzug";
}

spellings! { SPANISH:
    Meaning::Word(Word::HalfMethod) => "braykurtz brayykurtz brayekurtz";
    is(Property::OrganicMatter) => "materiaorganicatotal materiaorganicaoxidable morganica morg";
    is(Property::OrganicCarbon) =>
        "carbonoorganicooxidable corganico carbonoorgoxidable carbonoorgtotal corgoxidable carbonooxidable \
         carbonoorganicofacilmenteoxidable";
    is(Property::TotalN) => "ntot nitrogenokjeldahl nitrogenototalkjeldahl nitrogenoorganicototal";
    is(Property::NitrateN) => "nnitratos nnitrato nitrogenodenitratos nitrogenonitratos nitrogenocomonitrato nitrogenonitrato";
    is(Property::AmmoniumN) => "namonio nitrogenoamonio";
    Meaning::Is(Property::Potassium, Form::K2O) => "oxidodepotasio potasa";
    Meaning::Is(Property::Calcium, Form::CaO) => "oxidodecalcio";
    Meaning::Is(Property::Magnesium, Form::MgO) => "oxidodemagnesio";
    Meaning::Is(Property::Phosphorus, Form::P2O5) => "pentoxidodefosforo anhidridofosforico";
    Meaning::Is(Property::Phosphorus, Form::Phosphate) => "fosfato fosfatos";
    is(Property::ExchangeableAcidity) =>
        "acidezextraible acidezdecambio acidezint acint acidezinter acidezdeintercambio acideztotalintercambiable";
    is(Property::Cec) =>
        "cicefectiva cicpotencial capintercambiocationico capacidadintercambiocationico capacidaddecambio \
         capacidaddecambiocationico capacidaddeintercambiodecationes capacidaddecambiodecationes capintcationico ciccationico \
         capacidaddeintercambiocationicaefectiva capacidaddeintercambiocationica";
    is(Property::BaseSaturation) =>
        "saturaciondebasesintercambiables porcentajedesaturaciondebases porcentajesaturaciondebases gradodesaturacion \
         satdebases totalsaturaciondebases saturaciontotaldebases";
    is(Property::AciditySaturation) =>
        "satal saturacional sataluminio satdealuminio satdeal satacidez satdeacidez porcentajedesaturaciondealuminio \
         saturacionporaluminio porcentajesaturaciondealuminio saturacionacida";
    is(Property::SodiumSaturation) =>
        "porcentajedesodiointercambiable porcentajesodiointercambiable saturaciondesodio porcientodesodiointercambiable";
    is(Property::Ec) => "condelectrica condelect conductividadelec conductelectrica salessolubles cextracto";
    is(Property::FreeLime) =>
        "carbonatocalcico carbonatocalcicoequivalente carbonatocalcicototal carbonatosequivalentes carbonatosdecalcio caco3total";
    is(Property::Sulfur) => "ssulfato azufredesulfatos sso42";
    Meaning::By(Method::HotWater) => "solubleenaguacaliente";
    Meaning::By(Method::BrayP1) => "brayykurtz1 braykurtzn1";
    Meaning::Word(Word::Plain) =>
        "asim asimil asimilabl int disp dispon extraible intercamb interc camb decambio porcentaje porcentajede \
         porciento fraccion oxid seco seca sueloseco tierrafina edafico nutrimental";
    Meaning::Word(Word::WaterExtract) => "solubleenagua hidrosoluble solubles";
    Meaning::Word(FRACTION) =>
        "arenamuyfina arenamedia arenamuygruesa limogrueso arenasgruesas arenasfinas arenafinamuyfina";
    Meaning::Word(ACTIVE) => "carbonatoactivo carbonatosactivos calactiva caco3activo";
    Meaning::Word(BOUND) => "retencion fijacion retenciondefosforo fosfororetenido";
    Meaning::Word(NOT_USED) =>
        "nitrogenomineral nitrogenoinorganico nitrogenopotencial nitrogenoanaerobico carbonototal elementosgruesos gravas \
         densidadreal densidaddeparticulas porosidad humedad humedadresidual conductividadhidraulica puntodemarchitez \
         puntodemarchitezpermanente sumadecationes sumadebasesintercambiables sumabases indicedesalinidad indicesalino cobalto silicio";
    Meaning::Word(Word::Texture) => "clasificaciontextural texturausda grupotextural tipodesuelo clasedetextura";
    Meaning::Word(Word::Depth) => "profundidadmuestreo profundidaddemuestreo profundidaddelamuestra";
    Meaning::Word(Word::Sample(0)) => "identificaciondemuestra idmuestra identmuestra referenciamuestra descripciondelamuestra referenciadelamuestra nombremuestra";
    Meaning::Word(Word::Sample(1)) => "codigomuestra codigodemuestra numeromuestra numerodemuestra nmuestra nodemuestra nomuestra ndemuestra";
    Meaning::Word(Word::Sample(2)) => "nombredellote nombrelote lotes potreros bancal";
    Meaning::Word(Word::NameColumn) =>
        "parametroanalizado determinacionanalitica propiedad propiedades indicador analisisrealizado";
    Meaning::Word(Word::ResultColumn) =>
        "contenido contenidos resultadoanalisis resultadodelanalisis resultadosdelanalisis valorobtenido valorencontrado \
         valoranalizado valormedido valores valoractual";
    Meaning::Word(Word::UnitColumn) => "unidaddemedida unidadmedida unid unidadesdemedida";
    Meaning::Word(Word::RatingColumn) => "evaluacion categoria grado observaciones apreciacion comentarios";
    Meaning::Word(Word::RangeColumn) =>
        "valornormal valoresnormales valoresoptimos nivelesoptimos niveloptimo rangosuficiencia rangodesuficiencia \
         nivelesadecuados valordereferencia valorreferencia nivelesdereferencia nivelmedio limite limites limiteinferior \
         limitesuperior valoresideales valorescriticos rangonormal intervalooptimo optimos rangoadecuado rangomedio \
         nivelreferencia niveldeseado";
    Meaning::Word(Word::MethodColumn) =>
        "metodologia metodoanalitico metododeanalisis tecnicaanalitica procedimiento metodoutilizado extractante metododeextraccion tecnica";
    Meaning::Word(HOW_FAR_OFF) => "incertidumbre desviacionestandar";
    Meaning::Word(EARLIER) => "anoanterior resultadoanterior";
    Meaning::Word(Word::Advice) =>
        "recomendaciones dosisrecomendada requerimiento requerimientos requerimientodecal necesidades fertilizantes abonado \
         enmiendas aplicar aportar aporte aportes extracciones";
}

spellings! { PORTUGUESE:
    is(Property::OrganicMatter) => "materiaorg matorganicatotal";
    is(Property::OrganicCarbon) => "carbonoorganicocot carbonoorganicofacilmenteoxidavel";
    is(Property::TotalN) => "nitrogeniototalkjeldahl";
    is(Property::NitrateN) => "nitrogenionitrico nitrogenionitrato";
    is(Property::AmmoniumN) => "azotoamoniacal nitrogenioamonio";
    // Its exchangeable acidity is aluminium alone; the potential one has the hydrogen too.
    is(Property::Aluminum) => "acideztrocavel";
    is(Property::ExchangeableAcidity) => "acidezpotencialhal hidrogenioaluminio acpotencial";
    is(Property::FreeLime) => "calcariototal carbonatototal";
    is(Property::Cec) =>
        "capacidadedetrocadecationes ctcapotencial ctcph7 ctctotal ctcpotencial capacidadedetrocadecatioes capdetrocacationica";
    is(Property::BaseSaturation) =>
        "saturacaodebases saturacaoembases graudesaturacaoembases graudesaturacao saturacaoporbase saturacaobases \
         indicedesaturacaoembases saturacaoembasesdetroca saturacaoporbasesv satbasesv";
    is(Property::AciditySaturation) => "satporaluminio satporal saturacaoporal saturacaoaluminio saturacaodeal saturacaoporaluminiom";
    is(Property::SodiumSaturation) =>
        "porcentagemdesodiotrocavel percentagemdesodiodetroca percentagemdesodiotrocavel saturacaoporsodio";
    is(Property::BulkDensity) => "densidadedosolo densidadeaparente densidadeglobal";
    Meaning::Is(Property::Magnesium, Form::MgO) => "oxidodemagnesiomgo";
    Meaning::Word(Word::Plain) =>
        "assimilavel assimilaveis detroca extraiveis por porcentagem percentagem seca facilmente";
    Meaning::Word(FRACTION) => "areiamuitofina areiamedia areiamuitogrossa siltegrosso siltefino";
    Meaning::Word(ACTIVE) => "calcarioativo calcareoativo carbonatoativo";
    Meaning::Word(NOT_USED) =>
        "densidadereal densidadedeparticulas densidadedasparticulas argiladispersa argilanatural argiladispersaemagua \
         umidade humidade somadebasesdetroca sumbasesdetroca basesdetrocatotais necessidadecal umidadegravimetrica";
    Meaning::Word(Word::Texture) => "grupamentotextural tipodesolo";
    Meaning::Word(Word::Depth) => "profundidadedecolheita profundidadedeamostragem";
    Meaning::Word(Word::Sample(0)) => "identificacaoamostra identamostra referenciadaamostra refamostra descricaodaamostra designacaodaamostra identificacaodaamostra";
    Meaning::Word(Word::Sample(1)) => "numerodaamostra numeroamostra namostra nodaamostra codigodaamostra ndaamostra";
    Meaning::Word(Word::Sample(2)) => "talhoes canteiro pomar";
    Meaning::Word(Word::NameColumn) => "parametroanalisado componente componentes determinacaoanalitica";
    Meaning::Word(Word::ResultColumn) => "teor teores valorobtido resultadodaanalise valordeterminado";
    Meaning::Word(Word::UnitColumn) => "unidadedemedida";
    Meaning::Word(Word::RatingColumn) => "classedefertilidade classedeteor niveldefertilidade apreciacao interpretacaodosresultados observacoes";
    Meaning::Word(Word::RangeColumn) => "faixaideal faixaadequada nivelideal valoresadequados teoradequado teorideal faixaadequado";
    Meaning::Word(Word::MethodColumn) => "metododeanalise extrator";
    Meaning::Word(HOW_FAR_OFF) => "incerteza";
    Meaning::Word(Word::Advice) => "recomendacoes necessidadedecalagem necessidadedecalcario necessidadedecal calcario fertilizantesrecomendados";
}

spellings! { ITALIAN:
    is(Property::Ph) => "phinh2o reazionedelsuolo reazione";
    is(Property::BaseSaturation) => "gradodisaturazioneinbasi";
    Meaning::Word(Word::RangeColumn) => "limiti valoriguida";
    is(Property::OrganicMatter) => "sostorganica sostorg sostanzaorganicatotale";
    is(Property::OrganicCarbon) => "carbonioorganicototale corganico carbonioorg";
    is(Property::TotalN) => "azotototalekjeldahl ntotale azotokjeldahl";
    is(Property::NitrateN) => "azotonitriconno3";
    Meaning::Is(Property::NitrateN, Form::Unsure) => "nitrati";
    Meaning::Is(Property::Phosphorus, Form::P2O5) => "anidridefosforica";
    Meaning::Is(Property::Potassium, Form::K2O) => "ossidodipotassio";
    Meaning::Is(Property::Calcium, Form::CaO) => "ossidodicalcio";
    Meaning::Is(Property::Magnesium, Form::MgO) => "ossidodimagnesio";
    Meaning::Is(Property::Sulfur, Form::Unsure) => "solfati solfato";
    is(Property::Boron) => "borosolubile";
    is(Property::Molybdenum) => "molibdeno";
    is(Property::Potassium) => "potassioassimilabile";
    is(Property::Calcium) => "calcioscambiabile";
    is(Property::FreeLime) => "calcaretotalecaco3 carbonatodicalcio carbonati";
    is(Property::Cec) =>
        "capacitadiscambio capscambiocationico capacitascambiocationico capacitadiscambiocationicocsc csceffettiva";
    is(Property::BaseSaturation) => "saturazioneinbasi tassodisaturazionebasica saturazionebasi tassosaturazionebasica";
    is(Property::SodiumSaturation) => "percentualedisodioscambiabile sodioscambiabilepercentuale";
    is(Property::Ec) => "salinita";
    Meaning::By(Method::HotWater) => "solubileinacquacalda solubileinacquabollente acquabollente";
    Meaning::Word(Word::Plain) => "assim scamb estraibili discambio percentuale frazione secca secco tasso";
    Meaning::Word(Word::WaterExtract) => "solubile solubili idrosolubile";
    Meaning::Word(FRACTION) =>
        "sabbiagrossolana sabbiafinissima sabbiamoltofine sabbiamedia limomoltofine limogrossolano";
    Meaning::Word(NOT_USED) =>
        "umidita umiditaresidua densitareale carboniototale sommabasi sommadellebasi basiscambiabilitotali \
         indicediazotofissazione rapportocn azotoorganico poteretampone cobalto";
    Meaning::Word(Word::Texture) => "classetessiturale classegranulometrica tessiturausda";
    Meaning::Word(Word::Depth) => "profonditadiprelievo profonditaprelievo profonditadicampionamento";
    Meaning::Word(Word::Sample(0)) => "riferimentocampione denominazionecampione identificativocampione descrizionedelcampione identificativo";
    Meaning::Word(Word::Sample(1)) => "ncampione nrcampione numerodelcampione";
    Meaning::Word(Word::Sample(2)) => "appezzamenti particella campo";
    Meaning::Word(Word::NameColumn) => "parametroanalitico parametrichimici descrizioneprova caratteristica";
    Meaning::Word(Word::ResultColumn) => "contenuto valoretrovato valoreriscontrato risultatianalisi valoremisurato valoreanalitico";
    Meaning::Word(Word::RatingColumn) => "commento livello dotazione giudizioagronomico valutazioneagronomica";
    Meaning::Word(Word::RangeColumn) =>
        "valoreottimale valoriottimali livelloottimale intervalloottimale valorenormale valorilimite valorenormali ottimale \
         valorinormali valoridiriferimentoottimali livellonormale";
    Meaning::Word(Word::MethodColumn) => "metododiprova metode metodica metodoufficiale";
    Meaning::Word(Word::Advice) => "concimi apporti fertilizzazione calcitazione consiglidiconcimazione asportazioni";
}

spellings! { DUTCH_AND_AFRIKAANS:
    is(Property::Sulfur) => "swael swawel";
    is(Property::Iron) => "yster";
    is(Property::OrganicMatter) => "orgstof organischestofhumus humusgehalte organiesemateriaal organiesestof";
    is(Property::OrganicCarbon) => "organischkoolstof orgkoolstof koolstoforganisch organiesekoolstof";
    is(Property::Clay) => "lutumgehalte kleigehalte lutumfractie";
    is(Property::FreeLime) => "calciumcarbonaat carbonaten koolzurekalkcaco3 kalkgehaltecaco3";
    is(Property::BaseSaturation) => "basenbezetting basisversadiging totalebasisversadiging";
    is(Property::Cec) => "kuk katioonuitruilkapasiteit katioonuitruilvermoe kationuitwisselcapaciteit kationuitwisselingscapaciteit twaarde";
    is(Property::ExchangeableAcidity) => "uitruilbaresuur uitruilsuur uitruilbaresuurheid";
    is(Property::Ec) => "elektrischegeleidbaarheid elektriesegeleiding geleiding";
    is(Property::BulkDensity) => "digtheid";
    is(Property::TotalN) => "totaaln";
    Meaning::Word(Word::Plain) =>
        "plantbeschikbare beschikbare uitwisselbare opneembaar opneembare opneembaar uitruilbare uitruilbaar ekstraheerbare \
         ekstraheerbaar beskikbare beskikbaar droge";
    Meaning::Word(Word::Total) => "totaal totale";
    Meaning::Word(Word::WaterExtract) => "wateroplosbaar wateroplosbare";
    Meaning::Word(Word::Saturation) => "versadiging";
    Meaning::Word(FRACTION) => "grofzand fijnzand growwesand fynsand mediumsand";
    Meaning::Word(STORE) => "pvoorraad kvoorraad";
    Meaning::Word(NOT_USED) =>
        "afslibbaar vochtgehalte drogestof droogrest canorganisch anorganischekoolstof koolstoftotaal kgetal \
         weerstand klippe swaarde somvanbasisse";
    Meaning::Word(Word::Texture) => "bodemtype grondtekstuur tekstuur tekstuurklas textuur";
    Meaning::Word(Word::Depth) => "monsterdiepte bemonsteringsdieptecm";
    Meaning::Word(Word::Sample(0)) => "monsteromschrijving monsteraanduiding staalnaam staalbenaming monsterbeskrywing";
    Meaning::Word(Word::Sample(1)) => "staalnummer staal staalnr stalen monsterid monsterno";
    Meaning::Word(Word::Sample(2)) => "perceelnummer perceelnr kavel landnaam bloknaam";
    Meaning::Word(Word::NameColumn) => "parameternaam analyses ontleding";
    Meaning::Word(Word::ResultColumn) => "gehalte gevonden gemetenwaarde meetwaarde uitslag analyseresultaten inhoud";
    Meaning::Word(Word::RatingColumn) => "waarderingsklasse toestand evaluatie oordeel";
    Meaning::Word(Word::RangeColumn) =>
        "streefzone streefwaarden richtwaarde normwaarde referentie referentiewaarde streefgehalte landelijkgemiddelde \
         optimaletraject gewenst gewenste norm ideaal optimum";
    Meaning::Word(Word::MethodColumn) => "bepalingsmethode";
    Meaning::Word(HOW_FAR_OFF) => "meetonzekerheid onzekerheid";
    Meaning::Word(EARLIER) => "vorige vorigeanalyse vorigjaar";
    Meaning::Word(Word::Advice) =>
        "gift bekalkingsadvies kalkbehoefte kalkgift adviesgift bemestingsadviezen aanbeveling aanbevelings kunsmis";
}

// Polish, Czech and Slovak, and the languages of the south Slavs.
spellings! { SLAVIC:
    is(Property::OrganicMatter) =>
        "substorganiczna prochnicaglebowa obsahhumusu organickalatky organickehmoty organickahmoty organskatvar organskamaterija organskesnovi";
    is(Property::OrganicCarbon) => "corganiczny wegielorg organickyc organskiugljik corganicky";
    is(Property::TotalN) => "nogolny nogolem azotogolem ncalkowity celkovyn ukupnidusik";
    is(Property::NitrateN) => "azotazotanowynno3";
    Meaning::Is(Property::NitrateN, Form::Unsure) => "azotany dusicnany";
    is(Property::Phosphorus) => "zawartoscfosforu przyswajalnegofosforu obsahfosforu";
    is(Property::Potassium) => "zawartoscpotasu przyswajalnegopotasu obsahdrasliku kalij";
    is(Property::Magnesium) => "zawartoscmagnezu przyswajalnegomagnezu obsahhorciku magnezij";
    is(Property::Calcium) => "zawartoscwapnia obsahvapniku kalcij";
    is(Property::Sulfur) => "zawartoscsiarki siarkasiarczanowa sumpor";
    is(Property::Zinc) => "zinok";
    is(Property::Copper) => "bakar";
    is(Property::Aluminum) => "hlinik glin";
    is(Property::Arsenic) => "arzen";
    Meaning::Is(Property::Sulfur, Form::Unsure) => "siarczany sirany";
    Meaning::Is(Property::Phosphorus, Form::P2O5) => "pieciotlenekfosforu";
    Meaning::Is(Property::Potassium, Form::K2O) => "tlenekpotasu";
    Meaning::Is(Property::Magnesium, Form::MgO) => "tlenekmagnezu";
    Meaning::Is(Property::Calcium, Form::CaO) => "tlenekwapnia";
    is(Property::Ec) => "przewodnictwo przewodnictwoelektryczne przewodnictwowlasciwe elektroprovodljivost mernavodivost";
    is(Property::Cec) =>
        "pojemnoscsorpcyjnagleby kationowapojemnoscwymienna pojemnoscwymiennakationow sorpcnikapacita maximalnisorpcnikapacita \
         kationovavymennakapacitakvk kationovavymennakapacitapudy sorpcnakapacita";
    is(Property::BaseSaturation) =>
        "stopienwysyceniazasadami stopienwysyceniakompleksusorpcyjnegozasadami wysyceniekompleksusorpcyjnego \
         nasycenisorpcnihokomplexu stupennasycenisorpcnihokomplexu nasycenibazemi";
    is(Property::FreeLime) => "weglanwapnia weglany uhlicitan uhlicitanvapenaty obsahuhlicitanu obsahkarbonatu karbonatyca";
    is(Property::ExchangeableAcidity) => "kwasowoscwymienna vymennaacidita kwasowoschydrolitycznahh hydrolytickaacidita";
    is(Property::BulkDensity) => "gestoscobjetosciowa objemovahmotnost objemovahmotnostredukovana";
    Meaning::Word(Word::Plain) =>
        "przyswajalnych przyswajalnej form formy wymienny wymiennego wymienne wymiennych rozpuszczalny glebie mineralnej \
         przyswajalnychform pristupne pristupna prijatelne prijatelneho vymenny pode pody poda podnareakcia";
    Meaning::Word(Word::WaterExtract) => "rozpuszczalnywwodzie vodorozpustny vodorozpustne";
    Meaning::Word(Word::Total) => "celkovy celkove celkem ogolny ogolna calkowity calkowita";
    Meaning::Word(FRACTION) => "piasekgruby piasekdrobny piaseksredni pylgruby pyldrobny jemnypisek hrubypisek strednipisek";
    Meaning::Word(ACTIVE) => "wapnoczynne wapnoaktywne aktivnivapno aktivneuhlicitany aktivnivapenec";
    Meaning::Word(NOT_USED) =>
        "sumazasad sumazasadwymiennych sumakationowzasadowych czescisplawialne ilkoloidalny azotmineralny nmineralny szkielet \
         wilgotnosc suchamasa gestoscwlasciwa skelet susina vlhkost mineralnidusik mineralnydusik obsahskeletu";
    Meaning::Word(Word::Texture) => "kategoriaagronomicznagleby kategoriagleby gatunekgleby grupagranulometryczna zrnitost podnydruh";
    Meaning::Word(Word::Depth) => "hlbka hlbkaodberu glebokoscpobrania glebokoscpobraniaprobki dubina";
    Meaning::Word(Word::Sample(0)) => "oznaczenieprobki nazwaprobki opisprobki oznacenivzorku oznacenievzorky nazevvzorku nazovvzorky";
    Meaning::Word(Word::Sample(1)) => "probkanr vzorka cislovzorky vzorekc uzorak brojuzorka";
    Meaning::Word(Word::Sample(2)) => "numerpola kwatera parcela pudniblok nazevpozemku";
    Meaning::Word(Word::Sample(4)) => "nrlaboratoryjny nrlaboratoryjnyprobki laboratornicislo cislolaboratorni";
    Meaning::Word(Word::NameColumn) =>
        "badanyparametr rodzajoznaczenia badaneparametry oznaczaneskladniki stanovenie ukazovatel prvok sledovanyparametr parametar parametr";
    Meaning::Word(Word::ResultColumn) =>
        "zawartosc wynikanalizy wynikibadan wynikibadania zistenahodnota vysledokanalyzy vysledok obsah zjistenahodnota rezultat";
    Meaning::Word(Word::UnitColumn) => "jednostkamiary jednotkamiery mernajednotka jedinica";
    Meaning::Word(Word::RatingColumn) =>
        "klasa ocenazasobnosci stopienzasobnosci interpretacja hodnotenie zasoba kategoriezasobenosti zasobenie interpretacija kategorie";
    Meaning::Word(Word::RangeColumn) =>
        "wartosciodniesienia wartoscoptymalna zawartoscoptymalna liczbygraniczne optimalnihodnota limit kriterium optymalna \
         optimalnyobsah optimalniobsah doporucenahodnota wartoscdopuszczalna";
    Meaning::Word(Word::MethodColumn) => "metodastanoveni metodika metodastanovenia metodaoznaczania";
    Meaning::Word(HOW_FAR_OFF) => "niepewnoscpomiaru niepewnoscrozszerzona neistota rozsirenanejistota";
    Meaning::Word(Word::Advice) =>
        "potrzebynawozowe zalecenianawozowe davky doporucenadavka odporucanadavka hnojenie vapnenie nawozenia dawkicao potreba";
}

// Finnish, and what the Nordic table lacks.
spellings! { NORTHERN:
    is(Property::Ph) => "phluku happamuus";
    is(Property::OrganicMatter) =>
        "orgaaninenaines organisksubstans organisktinnehold humushalt mullinnehall eloperainenaines";
    is(Property::OrganicCarbon) => "orgaaninenhiili organisktbundetkol";
    is(Property::TotalN) => "kokonaistyppi totalkvavetotn totaltkvave kvavetotalt totalkvaeve";
    is(Property::NitrateN) => "nitraattityppi nitraattin";
    is(Property::AmmoniumN) => "ammoniumtyppi";
    is(Property::Phosphorus) => "fosfori";
    is(Property::Sulfur) => "rikki";
    is(Property::Boron) => "boori";
    is(Property::Copper) => "kupari";
    is(Property::Zinc) => "sinkki";
    is(Property::Manganese) => "mangaani";
    is(Property::Iron) => "rauta";
    is(Property::Aluminum) => "alumiini";
    is(Property::Molybdenum) => "molybdeeni";
    is(Property::Lead) => "lyijy";
    is(Property::Ec) => "sahkonjohtavuus johtokyky ledningsformaga elektriskledningsevne elektriskledningsformaga elektriskkonduktivitet";
    is(Property::Cec) => "kationinvaihtokapasiteetti kationbytekapacitet katjonutbyteskapacitet";
    is(Property::BaseSaturation) => "emaskyllastysaste";
    is(Property::BulkDensity) => "tilavuuspaino";
    is(Property::Clay) => "savi savespitoisuus ledere";
    is(Property::Silt) => "siltti hiesu";
    is(Property::Sand) => "hiekka";
    Meaning::By(Method::LossOnIgnition) => "hehkutushavio glodforlust";
    Meaning::By(Method::AmmoniumLactate) => "ammoniumlaktat ammoniumlaktatoplosligt alopplosning";
    Meaning::Word(Word::Nitrogen) => "typpi";
    Meaning::Word(Word::Plain) =>
        "plantetilgjengelig tilgængelig vaxttillgangligt lattlosligt latttillganglig latttillgangligt utbytbart ombyttelig \
         vaihtuva vaihtuvat maan maa helppoliukoinen kayttokelpoinen";
    Meaning::Word(Word::WaterExtract) => "vesiliukoinen vattenlosligt vattenloslig vandoploselig";
    Meaning::Word(Word::Total) => "kokonais";
    Meaning::Word(FRACTION) => "grovsand finsand grovsilt finsilt grovmo finmo mellansand mellansilt";
    Meaning::Word(STORE) => "khno3 forradskalium forradsfosfor reservikalium";
    Meaning::Word(NOT_USED) => "vattenhalt torrsubstans vandindhold mineralkvave vattenhaltning johtoluku sandler grovler";
    Meaning::Word(Word::Texture) => "maalaji jordartsklass texturklass";
    Meaning::Word(Word::Depth) => "syvyys naytteenottosyvyys provedybde provedybde provtagningsdjup";
    Meaning::Word(Word::Sample(0)) => "provmarkning provetsmarkning provbeteckning provebetegnelse provemerking provemerke naytteennimi naytteentunnus lohko lohkot lohkonnimi peruslohko";
    Meaning::Word(Word::Sample(1)) => "proveid provid jordprovenr";
    Meaning::Word(Word::Sample(2)) => "skiftenr skiftesnamn skiftenavn marknavn markblok";
    // A Finnish sample is called by its plot; its own number is the laboratory's.
    Meaning::Word(Word::Sample(4)) => "nayte naytenumero naytteet naytenro";
    Meaning::Word(Word::NameColumn) => "naringsamne ravinne megnevezes rodzajbadania voedingsstof kennwert analysnamn analysparameter analysenavn analyysi maaritys ominaisuus analysevariabel parametri";
    Meaning::Word(Word::ResultColumn) =>
        "tulos tulokset pitoisuus arvo maltvarde matvarde resultatvarde analysresultat innhold indhold innehall halt";
    Meaning::Word(Word::UnitColumn) => "yksikko";
    Meaning::Word(Word::RatingColumn) => "viljavuusluokka luokka arvio tolkning bedomningsklass";
    Meaning::Word(Word::RangeColumn) =>
        "tavoite tavoitearvo tavoitetaso ohjearvo riktvarden onskatvarde malvarde normalvarde referensvarde optimaltintervall optimalniva";
    Meaning::Word(Word::MethodColumn) => "menetelma maaritysmenetelma";
    Meaning::Word(HOW_FAR_OFF) => "mittausepavarmuus usikkerhed maleusikkerhed";
    Meaning::Word(Word::Advice) =>
        "kalkitus kalkitustarve lannoitus lannoitussuositus suositus kalkning godselgiva giva gjodselbehov godskning";
}

// Russian and Ukrainian; the letters of a symbol may be Cyrillic ones that look the same.
spellings! { CYRILLIC:
    is(Property::Ph) => "рнводный рнвод phвод рнh2o рнн2о phн2о phводноевытяжки phводної рнводний phводний рнводне phводне рнводна";
    is(Property::SaltPh) =>
        "phсол рнсол phсоли phсолевой phсолевая phсолевойвытяжки phсольовий рнсольовий phсольова рнсольова phсолевое";
    is(Property::OrganicMatter) => "органічноїречовини вмісторганічноїречовини оргвещество оргвво гумуспотюрину";
    is(Property::OrganicCarbon) => "углероднорганический органічнийвуглець углероднорг сорг";
    is(Property::TotalN) => "валовыйазот nобщ nобщий азотвалового";
    is(Property::NitrateN) => "nno3мгкг азотнітратів нітратногоазоту";
    Meaning::Is(Property::NitrateN, Form::Unsure) => "нітрати";
    Meaning::Is(Property::AmmoniumN, Form::Unsure) => "аммоний амоній";
    Meaning::Is(Property::Phosphorus, Form::P2O5) => "окисьфосфора оксидфосфора фосфорр2о5";
    Meaning::Is(Property::Potassium, Form::K2O) => "окиськалия оксидкалия";
    Meaning::Is(Property::Calcium, Form::CaO) => "сао";
    Meaning::Is(Property::Magnesium, Form::MgO) => "мgо mgо";
    Meaning::Is(Property::Sulfur, Form::Unsure) => "сульфаты сульфат сульфати";
    is(Property::Magnesium) => "мg";
    is(Property::Manganese) => "марганець манган мn";
    is(Property::Copper) => "купрум сu";
    is(Property::Iron) => "ферум";
    is(Property::Zinc) => "цинку";
    is(Property::Sulfur) => "сульфур";
    is(Property::Boron) => "бору";
    is(Property::Molybdenum) => "молибдена молібден";
    is(Property::Aluminum) => "алюминия алюміній подвижныйалюминий";
    is(Property::Cec) => "емкостьпоглощения ємністьвбирання емкостькатионногообменаеко ємністькатіонногообмінуєко катионнаяемкость";
    is(Property::BaseSaturation) =>
        "степеньнасыщенностипочвоснованиями степеньнасыщенностипочвыоснованиями ступіньнасиченняосновами \
         ступіньнасиченостіосновами насыщенностьоснованиями насиченістьосновами";
    is(Property::ExchangeableAcidity) => "гідролітичної гидролитическойкислотности";
    is(Property::FreeLime) => "карбонаты карбонати содержаниекарбонатов";
    is(Property::Ec) => "питомаелектропровідність электропроводимость";
    is(Property::BulkDensity) => "плотностьсложения щільністьґрунту";
    Meaning::Word(Word::Nitrogen) => "азоту нитроген";
    Meaning::Word(Word::Plain) =>
        "подв подвижн обм обменн обмін рухомих рухомої обмінні обмінна формы формы форма форми соединения сполуки легкодоступний \
         методу методом гост дсту реакция среды реакціясередовища доступные кислотності вытяжке";
    Meaning::Word(Word::WaterExtract) => "водорастворимая водорастворимые водорозчинний водорозчинна водорозчинні";
    Meaning::Word(Word::Total) => "загальний загальна загальне общего";
    Meaning::Word(STORE) => "валовий валова валові валовый";
    Meaning::Word(NOT_USED) =>
        "суммапоглощенных сумаобмінних сумаввібранихоснов легкогідролізованийазот азотлегкогидролизуемый \
         азотлегкогідролізований минеральныйазот мінеральнийазот азотминеральный азотмінеральний физическийпесок плотныйостаток \
         сухойостаток сухийзалишок щільнийзалишок влажность вологість гигроскопическаявлага фізичнаглина кобальт никель";
    Meaning::Word(Word::Texture) => "гранулометричнийсклад механічнийсклад типпочвы типґрунту";
    Meaning::Word(Word::Depth) => "глубинаотборапробы горизонт шар слойпочвы глибинавідборупроб";
    Meaning::Word(Word::Sample(0)) => "шифрпробы наименованиепробы наименованиеобразца назвазразка назвапроби маркировка маркування шифрзразка";
    Meaning::Word(Word::Sample(1)) => "номерзразка проби проба";
    Meaning::Word(Word::Sample(2)) => "номерполя полеуч номерділянки";
    Meaning::Word(Word::NameColumn) =>
        "показателькачества показникякості наименованиепоказателей назвапоказників определяемыйкомпонент найменуванняпоказника элемент елемент";
    Meaning::Word(Word::ResultColumn) =>
        "содержание результатиспытаний результатиспытания результатвипробувань результативипробувань результат \
         полученныйрезультат вміст фактическоесодержание результаталізу фактично";
    Meaning::Word(Word::UnitColumn) => "едизмерения одвим одвиміру одвимірювання одиницявимірювання единицаизм одиницівимірювання";
    Meaning::Word(Word::RatingColumn) => "группа группаобеспеченности класс группа обеспеченностипочвы рівеньзабезпеченості характеристика классобеспеченности";
    Meaning::Word(Word::RangeColumn) => "оптимальное оптимальныезначения оптимальні нормативноезначение нормативнезначення допустимыйуровень оптимальнийрівень одк";
    Meaning::Word(Word::MethodColumn) => "ндметод методикавиконання методвипробувань методиспытания методиспытаний нднаметоды нднаметодиспытаний нднаметодвипробувань";
    Meaning::Word(HOW_FAR_OFF) => "похибка невизначеність погрешностьизмерения";
    Meaning::Word(Word::Advice) => "рекомендуемаядоза дозы внесения потребность потреба норми рекомендовані рекомендуемые";
}

spellings! { HUNGARIAN:
    is(Property::Ph) => "kemhatas vizesph phviz";
    is(Property::OrganicMatter) => "humusz humusztartalom szervesanyag szervesanyagtartalom";
    is(Property::OrganicCarbon) => "szervesszen";
    is(Property::TotalN) => "osszesnitrogen osszesn";
    is(Property::NitrateN) => "nitratnitrogen nitritnitratnitrogen";
    is(Property::Phosphorus) => "foszfor alfoszfor";
    Meaning::Is(Property::Phosphorus, Form::P2O5) => "foszforpentoxid";
    Meaning::Is(Property::Phosphorus, Form::Phosphate) => "foszfat";
    Meaning::Is(Property::Potassium, Form::K2O) => "kaliumoxidk2o";
    is(Property::Magnesium) => "magnezium";
    Meaning::Is(Property::Sulfur, Form::Unsure) => "szulfat";
    is(Property::Zinc) => "cink";
    is(Property::FreeLime) => "szensavasmesz meszcaco3 szensavasmesztartalom mesztartalom karbonattartalom";
    is(Property::Sand) => "homok";
    is(Property::Silt) => "iszap";
    is(Property::Clay) => "agyag agyagtartalom";
    is(Property::Ec) => "elektromosvezetokepesseg vezetokepesseg fajlagosvezetokepesseg";
    is(Property::Cec) => "kationcserelokapacitas kationcserekapacitas";
    Meaning::By(Method::AmmoniumLactate) => "aloldhato ammoniumlaktat ammoniumlaktatoldhato";
    Meaning::Word(Word::Nitrogen) => "nitrogen";
    Meaning::Word(Word::Plain) => "oldhato felveheto talaj kicserelheto tartalom";
    Meaning::Word(Word::WaterExtract) => "vizoldhato vizbenoldhato";
    Meaning::Word(Word::Total) => "osszes";
    Meaning::Word(NOT_USED) =>
        "aranyfelekotottseg aranyfelekotottsegiszam kotottseg kotottsegiszam osszesso vizbenoldhatoosszesso sotartalom \
         asvanyinitrogen nedvesseg szarazanyag leiszapolhatoresz";
    Meaning::Word(Word::Texture) => "fizikaifeleseg fizikaitalajfeleseg talajtipus";
    Meaning::Word(Word::Depth) => "melyseg mintavetelmelysege mintavetelimelyseg";
    Meaning::Word(Word::Sample(0)) => "mintajele mintaazonosito mintaneve mintamegnevezese";
    Meaning::Word(Word::Sample(1)) => "minta mintak mintaszam";
    Meaning::Word(Word::Sample(2)) => "tablaneve tablajele tablaazonosito";
    Meaning::Word(Word::NameColumn) => "vizsgaltparameter vizsgalat vizsgalatok vizsgaltjellemzo jellemzo komponens";
    Meaning::Word(Word::ResultColumn) => "eredmeny eredmenyek mertertek mertertekek vizsgalatieredmeny ertek";
    Meaning::Word(Word::UnitColumn) => "mertekegyseg egyseg";
    Meaning::Word(Word::RatingColumn) => "ellatottsag minosites ertekeles ellatottsagiszint ellatottsagikategoria";
    Meaning::Word(Word::RangeColumn) => "hatarertek optimalisertek idealis optimalis";
    Meaning::Word(Word::MethodColumn) => "modszer vizsgalatimodszer vizsgalatiszabvany";
    Meaning::Word(HOW_FAR_OFF) => "meresibizonytalansag bizonytalansag";
    Meaning::Word(Word::Advice) => "javaslat szaktanacsadas tragyazas tragyaigeny hatoanyagigeny meszigeny";
}

spellings! { ROMANIAN:
    is(Property::Ph) => "phinapa reactiasolului reactiaph";
    is(Property::OrganicMatter) => "materieorganica materiaorganicatotala";
    is(Property::OrganicCarbon) => "carbonorganic";
    is(Property::TotalN) => "azottotal ntotalkjeldahl";
    is(Property::NitrateN) => "azotnitric azotnitrat";
    Meaning::Is(Property::NitrateN, Form::Unsure) => "nitrati azotati";
    is(Property::AmmoniumN) => "azotamoniacal";
    is(Property::Phosphorus) => "fosformobil fosforaccesibil";
    is(Property::Potassium) => "potasiu";
    is(Property::Calcium) => "calciu";
    is(Property::Magnesium) => "magneziu";
    is(Property::Sodium) => "sodiu";
    is(Property::Sulfur) => "sulf";
    is(Property::Copper) => "cupru";
    is(Property::Iron) => "fier";
    is(Property::Aluminum) => "aluminiu";
    Meaning::Is(Property::Sulfur, Form::Unsure) => "sulfati";
    is(Property::Sand) => "nisip";
    is(Property::FreeLime) => "carbonati carbonatdecalciu carbonatitotali";
    is(Property::Ec) => "conductivitate conductivitateelectrica conductivitateaelectrica";
    is(Property::Cec) => "capacitatedeschimbcationic capacitateadeschimbcationic capacitatetotaladeschimbcationic";
    is(Property::BaseSaturation) => "graddesaturatieinbaze graduldesaturatieinbaze graduldesaturatie saturatieinbaze";
    is(Property::ExchangeableAcidity) => "aciditatehidrolitica aciditateahidrolitica aciditatedeschimb aciditateaschimbabila";
    Meaning::Word(Word::Plain) => "mobil mobila accesibil schimbabil schimbabila asimilabil solubil sol solului din";
    Meaning::Word(FRACTION) => "nisipgrosier nisipfin prafgrosier praffin";
    Meaning::Word(NOT_USED) => "sumabazelor sumabazelordeschimb sumabazelorschimbabile indiceazot indicedeazot umiditate schelet";
    Meaning::Word(Word::Texture) => "texturasolului clasatexturala";
    Meaning::Word(Word::Depth) => "adancime adancimea adancimedeprelevare adancimedeprelevarecm";
    Meaning::Word(Word::Sample(0)) => "identificareproba denumireproba codproba indicativproba";
    Meaning::Word(Word::Sample(1)) => "proba probe nrproba numarproba";
    Meaning::Word(Word::Sample(2)) => "tarla sola bloc";
    Meaning::Word(Word::NameColumn) => "indicatori parametru parametri determinare determinari incercare denumireparametru caracteristiciagrochimice";
    Meaning::Word(Word::ResultColumn) => "rezultat rezultate valoare valoaredeterminata rezultatulanalizei rezultatanaliza valori continut";
    Meaning::Word(Word::UnitColumn) => "unitatedemasura unitatimasura unitatidemasura";
    Meaning::Word(Word::RatingColumn) => "interpretare apreciere staredeaprovizionare aprovizionare";
    Meaning::Word(Word::RangeColumn) => "valorioptime valorinormale limite valoareoptima valoridereferinta";
    Meaning::Word(Word::MethodColumn) => "metoda metodadeanaliza metodadeincercare";
    Meaning::Word(HOW_FAR_OFF) => "incertitudine";
    Meaning::Word(Word::Advice) => "recomandari recomandare doza fertilizare amendare ingrasamant";
}

spellings! { INDONESIAN:
    is(Property::Ph) => "phtanah kemasaman";
    is(Property::OrganicMatter) => "bahanorganik bahanorganiktanah";
    is(Property::OrganicCarbon) => "corganik karbonorganik";
    is(Property::TotalN) => "nitrogentotal ntotal";
    is(Property::ExchangeableAcidity) => "aldantukarh aldanh keasamandapatditukar";
    is(Property::Sulfur) => "belerang";
    is(Property::Copper) => "tembaga";
    is(Property::Iron) => "besi";
    is(Property::Zinc) => "seng";
    is(Property::Sand) => "pasir";
    is(Property::Silt) => "debu";
    is(Property::Clay) => "liat";
    is(Property::Cec) => "kapasitastukarkation kapasitastukarkationktk ktk";
    is(Property::BaseSaturation) => "kejenuhanbasakb";
    is(Property::AciditySaturation) => "kejenuhanal kejenuhanaluminium";
    is(Property::Ec) => "dayahantarlistrik dhl";
    is(Property::BulkDensity) => "beratisi bobotisi beratvolume";
    Meaning::Word(Word::Plain) => "tersedia dapatditukar dapatdipertukarkan ditukar dd tanah kadar dapat dat tertukar";
    Meaning::Word(Word::Saturation) => "kejenuhan";
    Meaning::Word(STORE) => "potensial hcl25 hcl25% ekstrakhcl25% hcl25persen";
    Meaning::Word(NOT_USED) => "kadarair kadarairtanah jumlahbasa";
    Meaning::Word(Word::Texture) => "tekstur teksturtanah kelastekstur";
    Meaning::Word(Word::Depth) => "kedalaman";
    Meaning::Word(Word::Sample(0)) => "kodesampel namasampel kodecontoh identitassampel";
    Meaning::Word(Word::Sample(1)) => "sampel contoh contohtanah nomorsampel lokasi";
    Meaning::Word(Word::Sample(2)) => "lahan petak blokkebun";
    Meaning::Word(Word::NameColumn) => "jenisanalisis sifattanah parameteruji unsur sifatkimia unsurhara";
    Meaning::Word(Word::ResultColumn) => "hasil hasilanalisis nilai hasiluji hasilpengujian";
    Meaning::Word(Word::UnitColumn) => "satuan";
    Meaning::Word(Word::RatingColumn) => "kriteria harkat kategori penilaian keterangan";
    Meaning::Word(Word::RangeColumn) => "nilaioptimum bakumutu nilaiideal";
    Meaning::Word(Word::MethodColumn) => "metodeuji metodeanalisis metodepengujian metode metoda";
    Meaning::Word(Word::Advice) => "rekomendasi dosispupuk pemupukan dosiskapur kebutuhankapur dosis";
}

spellings! { TURKISH_AND_GREEK:
    is(Property::Ph) => "toprakreaksiyonu reaksiyonph toprakph";
    is(Property::Potassium) => "καλιου";
    is(Property::Chloride) => "klorur χλωριο χλωριοντα";
    is(Property::Molybdenum) => "uολυβδαινιο";
    is(Property::OrganicMatter) => "orgmadde organikmaddeler οργανικησουσιασ οργουσια χουuοσ";
    is(Property::TotalN) => "ολικοn";
    is(Property::FreeLime) => "kalsiyumkarbonat kirecicerigi ισοδυναuοανθρακικοασβεστιο ολικοcaco3";
    is(Property::Ec) => "eciletkenlik elektrikiletkenligi ειδικηηλεκτρικηαγωγιuοτητα ηλεκαγωγιuοτητα tuzluluk";
    is(Property::Cec) => "katyondegisimkapasitesikdk ιακ ikak ανταλλακτικηικανοτητα ικανοτηταανταλλαγησκατιοντωνικα";
    is(Property::BaseSaturation) => "bazdoygunlugu bazlarladoygunluk βαθuοσκορεσuουuεβασεισ κορεσuοσβασεων";
    is(Property::SodiumSaturation) => "degisebilirsodyumyuzdesi";
    is(Property::BulkDensity) => "hacimagirligi φαινοuενηπυκνοτητα";
    Meaning::Is(Property::NitrateN, Form::Unsure) => "νιτρικα";
    Meaning::By(Method::HotWater) => "ζεστονερο";
    Meaning::Word(Word::Plain) =>
        "elverisli bitkiyeyarayisli yarayisliligi cozunebilir ekstrakte edilebilir διαθεσιuη αφοuοιωσιuοσ αφοuοιωσιuο εδαφοσ ανταλλαξιuα icerigi";
    Meaning::Word(Word::Total) => "toplam ολικη";
    Meaning::Word(ACTIVE) => "aktifkirec aktif ενεργο ενεργοανθρακικοασβεστιο ενεργοcaco3";
    Meaning::Word(Word::WaterExtract) => "sudacozunur υδατοδιαλυτο υδατοδιαλυτοσ";
    Meaning::Word(NOT_USED) => "suiledoygunluk doygunluk κορεσuοσ υγρασια tuz toplamtuz tuzyuzdesi";
    Meaning::Word(Word::Texture) => "toprakyapisi bunyesinifi tekstursinifi κοκκοuετρια uηχανικηαναλυση κοκκοuετρικησυσταση υφη";
    Meaning::Word(Word::Depth) => "ornekderinligi numunederinligi toprakderinligi";
    Meaning::Word(Word::Sample(0)) => "numunetanimi numunekodu κωδικοσδειγuατοσ ονοuαδειγuατοσ περιγραφηδειγuατοσ";
    Meaning::Word(Word::Sample(1)) => "numunenumarasi δειγuατα αριθuοσδειγuατοσ";
    Meaning::Word(Word::Sample(2)) => "parsel parselno bahce tarlaadi χωραφι κτηuα";
    Meaning::Word(Word::NameColumn) => "analiz parametreler yapilananaliz analizparametresi ιδιοτητα ιδιοτητεσ αναλυση προσδιορισuοσ";
    Meaning::Word(Word::ResultColumn) => "bulunandeger olculendeger analizsonuclari sonucu degeri τιuεσ περιεκτικοτητα";
    Meaning::Word(Word::UnitColumn) => "olcubirimi uοναδαuετρησησ uοναδεσuετρησησ";
    Meaning::Word(Word::RatingColumn) => "aciklama degerlendirmesi siniflandirma sonucdegerlendirme επιπεδο εκτιuηση ερuηνεια";
    Meaning::Word(Word::RangeColumn) => "sinirdegerler yeterlilik referansdeger referansaralik idealdeger επιθυuητεστιuεσ επιθυuητητιuη φυσιολογικεστιuεσ αριστη";
    Meaning::Word(Word::MethodColumn) => "analizmetodlari metod deneymetodu uεθοδοσαναλυσησ";
    Meaning::Word(HOW_FAR_OFF) => "olcumbelirsizligi αβεβαιοτητα";
    Meaning::Word(Word::Advice) => "oneriler gubreleme gubreonerisi gubremiktari συuβουλη συστασεισ";
}

// Japanese and Korean.
spellings! { EASTERN:
    Meaning::Is(Property::Phosphorus, Form::P2O5) => "有効態燐酸 可給態燐酸 可給態りん酸p2o5 有効りん酸 有効燐酸 유효인산 유효인산p2o5";
    Meaning::Is(Property::Phosphorus, Form::Phosphate) => "인산";
    Meaning::Is(Property::Potassium, Form::K2O) => "칼리 塩基カリ 交換カリ";
    is(Property::Potassium) => "칼륨 치환성칼륨 교환성칼륨";
    is(Property::Calcium) => "칼슘 치환성칼슘 교환성칼슘";
    Meaning::Is(Property::Calcium, Form::CaO) => "交換石灰";
    is(Property::Magnesium) => "마그네슘 치환성마그네슘 교환성마그네슘";
    Meaning::Is(Property::Magnesium, Form::MgO) => "交換苦土";
    is(Property::Sodium) => "나트륨 치환성나트륨 교환성나트륨";
    is(Property::OrganicMatter) => "유기물 유기물함량";
    is(Property::TotalN) => "전질소 총질소";
    is(Property::NitrateN) => "질산태질소 質酸態窒素";
    is(Property::AmmoniumN) => "암모니아태질소 암모늄태질소";
    is(Property::Ec) => "전기전도도 電導度 電気導電率 塩類濃度ec";
    is(Property::Cec) => "양이온교환용량 양이온치환용량 塩基交換容量 陽イオン交換容量cec";
    is(Property::BaseSaturation) => "염기포화도";
    is(Property::Boron) => "붕소";
    is(Property::Zinc) => "아연";
    is(Property::Copper) => "구리";
    is(Property::Manganese) => "망간";
    is(Property::Iron) => "철";
    is(Property::Sand) => "모래";
    is(Property::Silt) => "미사";
    is(Property::Clay) => "점토";
    Meaning::Word(Word::Nitrogen) => "질소";
    Meaning::Word(Word::Plain) => "치환성 교환성 유효 土 산도 함량 양이온 치환성양이온 교환성양이온 토양";
    Meaning::Word(BOUND) => "燐酸吸収係数 りん酸吸収係数";
    Meaning::Word(NOT_USED) =>
        "遊離酸化鉄 易還元性マンガン 熱水抽出性窒素 熱水抽出窒素 有効態ケイ酸 有効ケイ酸 ケイ酸 유효규산 水分 含水率 수분";
    Meaning::Word(Word::Texture) => "土性区分 토성";
    Meaning::Word(Word::Depth) => "토양깊이 採取深さ 採土深さ 깊이 채취깊이 토심";
    Meaning::Word(Word::Sample(1)) => "検体 検体名 検体番号 試料no 시료 시료명 시료번호 필지명 포장명 재배지";
    Meaning::Word(Word::Sample(2)) => "ほ場 圃場番号 ハウス 地点 필지 포장";
    Meaning::Word(Word::NameColumn) => "項目名 成分 検査項目 항목 분석항목 성분 검정항목";
    Meaning::Word(Word::ResultColumn) => "分析結果値 検査結果 診断結果 분석결과 결과 측정값 분석값 측정치 今回 검정결과 분석치 검정치";
    Meaning::Word(Word::RatingColumn) => "診断 評価判定 평가 판정 비고";
    Meaning::Word(Word::RangeColumn) =>
        "診断基準値 改良目標値 基準 目標 目標範囲 適正 適正域 適正域下限 診断基準 下限 上限 적정범위 적정수준 기준값 적정치 기준 적정기준 기준치";
    Meaning::Word(EARLIER) => "前回 前回値 前年";
    Meaning::Word(Word::MethodColumn) => "분석방법 방법";
    Meaning::Word(Word::Advice) => "施肥設計例 改良資材 石灰施用量 석회소요량 추천량 시비량 시비처방 추천시비량 밑거름 웃거름 비료사용량 퇴비";
    is(Property::Ph) => "토양산도";
    is(Property::Lead) => "납";
    is(Property::Arsenic) => "비소";
    is(Property::Cadmium) => "카드뮴";
    Meaning::Word(Word::Sample(4)) => "지번";
    Meaning::Word(Word::UnitColumn) => "단위";
}

spellings! { BALTIC_AND_SOUTH_SLAVIC:
    is(Property::OrganicMatter) =>
        "orgaanilineaine organiskaviela humusas humusokiekis organskasnov organskatvar organskamaterija хумус";
    is(Property::OrganicCarbon) => "orgaanilinesusinik";
    is(Property::TotalN) => "ukupniazot ukupanazot ukupnidusik skupnidusik общазот";
    is(Property::Phosphorus) => "fosfors fosforas liikuvfosfor";
    is(Property::Potassium) => "kaalium liikuvkaalium kalijs kalis kalijum";
    is(Property::Calcium) => "kaltsium kalcijs kalcis kalcijum калций";
    is(Property::Magnesium) => "magneesium magnijs magnis magnezijum магнезий";
    is(Property::Sulfur) => "vaavel";
    is(Property::Copper) => "vask";
    is(Property::Zinc) => "tsink";
    is(Property::Iron) => "gvozde zeljezo";
    Meaning::Word(Word::Sample(1)) =>
        "proov proovi proovinumber proovinr paraugs paraugi meginys meginiai vzorec vzorci";
    Meaning::Word(Word::Sample(2)) => "pold pollunimi pollumassiiv lauks laukas njiva polje";
    Meaning::Word(Word::NameColumn) => "naitaja naitajad raditajs rodiklis показател";
    Meaning::Word(Word::ResultColumn) =>
        "tulemus tulemused vaartus sisaldus rezultatas vrednost vrijednost sadrzaj резултат стойност";
    Meaning::Word(Word::UnitColumn) =>
        "uhik mervieniba vienetas matavimovienetai enota merskaenota jedinicamere mjernajedinica мернаединица";
    Meaning::Word(Word::RangeColumn) => "optimalnavrednost optimalnavrijednost soovituslik";
    Meaning::Word(Word::RatingColumn) => "obezbedenost opskrbljenost preskrbljenost";
    Meaning::Word(Word::MethodColumn) => "meetod";
}
