//! Lime, acid and gypsum against the outside.

use emberloam_engine::case::{BedKind, Case};
use emberloam_engine::needs::{
    Need, Needs, SulfurSoil, T_PER_HA_IN_LB_PER_1000_SQ_FT, T_PER_HA_IN_TON_PER_ACRE, adams_evans,
    as_product, at_neutralising_value, doses, esp_from_sar, exchangeable_acidity_psu, gypsum_oster,
    gypsum_per_meq, mehlich_nc, needs, residual_credit, sikora_oregon, smp_tri_state,
    sulfur_for_free_lime, sulfur_michigan, tons_by_enm, turf_psu,
};
use emberloam_engine::quantity::{Band, Unit};
use emberloam_engine::question::QuestionId;
use emberloam_engine::report;
use emberloam_engine::soil::{Method, PlantGroup, Texture};
use emberloam_engine::sources::Grade;

use crate::close;

fn case_of(text: &str) -> Case {
    let grid = report::open(text.as_bytes()).unwrap();
    Case { report: report::read(&grid).unwrap(), ..Case::default() }
}

fn find<'a>(needs: &'a Needs, name: &str) -> &'a Need {
    needs.list.iter().find(|n| n.name == name).unwrap_or_else(|| panic!("no {name}: {needs:?}"))
}

#[track_caller]
fn band(need: &Need, name: &str) -> Band {
    let figure = need.figures.iter().find(|f| f.name == name);
    figure.unwrap_or_else(|| panic!("no {name} in {need:?}")).band
}

#[test]
fn look() {
    for text in [
        "Soil pH 5.6\nSikora buffer pH 6.4\n",
        "Soil pH 5.6\nSMP buffer pH 6.4\n",
        "Soil pH 5.6\nBuffer pH 6.4\n",
        "pH 5.4\nMehlich buffer pH 6.1\n",
        "pH 5.4\nAc 2.0 meq/100 cm3\n",
        "pH 5.9\nModified Mehlich buffer pH 6.3\nExchangeable acidity 6.0 meq/100 g\n",
        "pH 5.1\nAdams-Evans buffer pH 7.7\n",
        "pH 5.1\nWoodruff buffer pH 6.5\n",
        "pH 5.1\nSikora buffer pH 9.0\n",
        "pH 5.1\nSikora buffer pH 3.0\n",
        "pH 7.3\ntexture loam\n",
        "pH 7.9\nFree lime 4 %\ntexture loam\n",
        "pH 8.7\nESP 35 %\nCEC 22 meq/100 g\n",
        "pH 5.6\n",
    ] {
        let mut case = case_of(text);
        case.bed.area_m2 = Some(10.0);
        println!(
            "=== {text}{:#?}",
            needs(&case)
                .list
                .iter()
                .map(|n| (
                    &n.answer,
                    &n.steps,
                    &n.others,
                    n.figures.iter().map(|f| (f.name, f.band)).collect::<Vec<_>>(),
                    &n.grounds.assumed
                ))
                .collect::<Vec<_>>()
        );
    }
}
