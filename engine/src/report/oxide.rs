//! From the form a report prints to the element.

use super::names::Form;

// Source: IUPAC standard atomic masses, rounded to the abridged values.
const H: f64 = 1.008;
const N: f64 = 14.007;
const O: f64 = 15.999;
const NA: f64 = 22.990;
const MG: f64 = 24.305;
const P: f64 = 30.974;
const S: f64 = 32.06;
const K: f64 = 39.098;
const CA: f64 = 40.078;

/// One form: what it is called, the element, and the element's share of its mass.
pub(super) struct Share {
    pub from: &'static str,
    pub to: &'static str,
    pub factor: f64,
}

/// The element's share of the mass of a form; `None` when it is the element.
pub(super) fn share(form: Form) -> Option<Share> {
    let (from, to, factor) = match form {
        Form::P2O5 => ("P2O5", "P", 2.0 * P / (2.0 * P + 5.0 * O)),
        Form::Po4 => ("PO4", "P", P / (P + 4.0 * O)),
        Form::K2O => ("K2O", "K", 2.0 * K / (2.0 * K + O)),
        Form::CaO => ("CaO", "Ca", CA / (CA + O)),
        Form::MgO => ("MgO", "Mg", MG / (MG + O)),
        Form::Na2O => ("Na2O", "Na", 2.0 * NA / (2.0 * NA + O)),
        Form::So3 => ("SO3", "S", S / (S + 3.0 * O)),
        Form::No3 => ("NO3", "N", N / (N + 3.0 * O)),
        Form::Nh4 => ("NH4", "N", N / (N + 4.0 * H)),
        Form::So4 => ("SO4", "S", S / (S + 4.0 * O)),
        Form::Element | Form::Unsure | Form::Phosphate => return None,
    };
    Some(Share { from, to, factor })
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Source: extension conversion tables: P = P2O5 × 0.4364, K = K2O × 0.8301,
    /// N = NO3 × 0.2259, S = SO4 × 0.3338, P = PO4 × 0.3261 (second-hand);
    /// Ca = CaO × 0.7147, Mg = MgO × 0.6031, N = NH4 × 0.7765 (derived).
    #[test]
    fn the_factors_are_the_published_ones() {
        let cases = [
            (Form::P2O5, 0.4364),
            (Form::K2O, 0.8301),
            (Form::Na2O, 0.7419),
            (Form::So3, 0.4005),
            (Form::No3, 0.2259),
            (Form::So4, 0.3338),
            (Form::Po4, 0.3261),
            (Form::CaO, 0.7147),
            (Form::MgO, 0.6031),
            (Form::Nh4, 0.7765),
        ];
        for (form, factor) in cases {
            let share = share(form).unwrap();
            assert!((share.factor - factor).abs() < 1e-4, "{}: {}", share.from, share.factor);
        }
    }
}
