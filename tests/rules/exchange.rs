//! The exchange of cations: nothing is lost, and what can't be settled is refused.

use emberloam_engine::details::exchange::{CATIONS, Cation, PerCation, Pool};
use proptest::prelude::*;

use crate::close;

fn pool(capacity: f64, water: f64, shares: PerCation, dissolved: PerCation) -> Pool {
    Pool::of(capacity, water, &shares, &dissolved)
}

/// A sodic soil: 12 cmolc/kg, 0.30 L/kg, Ca .62, Mg .19, K .04, NH4 .005, Na .145 of the exchange.
/// Source: worked out by hand from the same constants (derived): in the water, mmol/L, Ca 1.1400,
/// Mg 0.5537, K 0.8596, NH4 0.1353, Na 15.6178; ESR 0.1696.
fn sodic() -> Pool {
    let shares = [0.62, 0.19, 0.04, 0.005, 0.145, 0.0];
    let water = [1.1400e-3, 0.5537e-3, 0.8596e-3, 0.1353e-3, 15.6178e-3, 0.0];
    pool(0.12, 0.30, shares, water)
}

#[test]
fn the_sodic_soil_is_at_rest() {
    let found = sodic().settled().expect("it settles");
    for (i, share) in [0.62, 0.19, 0.04, 0.005, 0.145].into_iter().enumerate() {
        close(found.shares[i], share, 2e-5);
    }
    let (sodium, dissolved) = found.of(Cation::Sodium);
    close(dissolved * 1000.0, 15.6178, 0.002);
    close(sodium / (1.0 - sodium), 0.1696, 2e-4);
    // SAR 12.0, within 3.5 % of the US Salinity Laboratory's equation for ESR.
    let mmol = |c: Cation| found.of(c).1 * 1000.0;
    let sar = mmol(Cation::Sodium) / (mmol(Cation::Calcium) + mmol(Cation::Magnesium)).sqrt();
    close(sar, 12.0, 0.01);
    close(-0.0126 + 0.01475 * sar, 0.1696, 0.035 * 0.1696);
}

/// 2 % biochar by mass, 20 cmolc/kg, 1 L/kg, uncharged and charged.
/// Source: worked out by hand from the same constants (derived).
fn with_biochar(loading: [f64; 5]) -> Pool {
    let [ca, mg, k, nh4, na] = loading;
    let char = pool(0.20, 1.0, [ca, mg, k, nh4, na, 0.0], [0.0; CATIONS]);
    // The reference counts the biochar's water as empty.
    sodic().mixed(&char, 0.02)
}

#[test]
fn biochar_moves_sodium_by_less_than_half_a_point() {
    let uncharged = with_biochar([0.55, 0.15, 0.28, 0.0, 0.02]);
    close(uncharged.capacity, 0.1216, 1e-12);
    let found = uncharged.settled().expect("it settles");
    close(found.of(Cation::Sodium).0, 0.1411, 1e-4);
    close(found.of(Cation::Potassium).0, 0.04745, 1e-5);
    close(found.of(Cation::Ammonium).0, 0.00484, 1e-5);
    close(found.of(Cation::Calcium).0, 0.61784, 1e-5);
    close(found.of(Cation::Sodium).0 * uncharged.capacity * 100.0, 1.7158, 2e-4);
    let charged = with_biochar([0.55, 0.15, 0.20, 0.09, 0.01]);
    let found = charged.settled().expect("it settles");
    close(found.of(Cation::Sodium).0, 0.14083, 1e-5);
    close(found.of(Cation::Ammonium).0, 0.00761, 1e-5);
    close(found.of(Cation::Sodium).0 * charged.capacity * 100.0, 1.7126, 2e-4);
}

#[test]
fn what_cannot_be_settled_is_refused() {
    let sound = sodic();
    for broken in [
        Pool { capacity: 0.0, ..sound },
        Pool { water: 0.0, ..sound },
        Pool { capacity: f64::NAN, ..sound },
        Pool { totals: [0.0; CATIONS], ..sound },
        Pool { totals: [-1.0, 1.0, 1.0, 1.0, 1.0, 1.0], ..sound },
        Pool { capacity: 9.0, ..sound },
    ] {
        assert_eq!(broken.settled(), None, "{broken:?}");
    }
}

proptest! {
    /// Nothing is lost and the exchange is full, whatever the pool.
    #[test]
    fn every_cation_is_somewhere(
        capacity in 1e-4..5.0_f64,
        water in 1e-3..5.0_f64,
        raw in proptest::array::uniform6(0.0..1.0_f64),
        dissolved in proptest::array::uniform6(1e-9..0.5_f64),
    ) {
        let sum: f64 = raw.iter().sum();
        prop_assume!(sum > 1e-3);
        let pool = Pool::of(capacity, water, &raw.map(|r| r / sum), &dissolved);
        let found = pool.settled().expect("it settles");
        let full: f64 = found.shares.iter().sum();
        prop_assert!((full - 1.0).abs() < 1e-10, "the exchange is {full} full");
        for (i, cation) in Cation::ALL.into_iter().enumerate() {
            let somewhere = capacity * found.shares[i] / cation.charge() + water * found.dissolved[i];
            prop_assert!((somewhere - pool.totals[i]).abs() <= 1e-10 * pool.totals[i].max(1e-3));
            prop_assert!(found.dissolved[i] >= 0.0 && found.shares[i] >= 0.0);
        }
    }
}
