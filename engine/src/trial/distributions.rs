//! The distributions that intervals and tests are read from: normal, t and F.

/// P(Z ≤ z) of the normal distribution.
pub(super) fn normal_below(z: f64) -> f64 {
    0.5 * libm::erfc(-z / std::f64::consts::SQRT_2)
}

/// The normal density.
pub(super) fn normal_density(z: f64) -> f64 {
    (-0.5 * z * z).exp() / (2.0 * std::f64::consts::PI).sqrt()
}

/// P(|T| > |t|) of Student's t with `df` degrees of freedom, which need not be whole.
/// 1 for a t or df that is no number.
pub fn t_both_tails(t: f64, df: f64) -> f64 {
    let t2 = t * t;
    if t2.is_nan() || df.is_nan() || df <= 0.0 {
        return 1.0;
    }
    if t2.is_infinite() {
        return 0.0;
    }
    beta_below(df / (df + t2), t2 / (df + t2), df / 2.0, 0.5)
}

/// The t beyond which, at both ends together, `p` of Student's t lies. `p` within 0 and 1.
pub fn t_critical(p: f64, df: f64) -> f64 {
    where_tail_is(p, |t| t_both_tails(t, df))
}

/// P(F > f) with `of` and `within` degrees of freedom.
pub fn f_tail(f: f64, of: f64, within: f64) -> f64 {
    if f.is_nan() || f <= 0.0 {
        return 1.0;
    }
    if f.is_infinite() {
        return 0.0;
    }
    let all = within + of * f;
    beta_below(within / all, of * f / all, within / 2.0, of / 2.0)
}

/// The regularised incomplete beta function at `x`, with `rest` = 1 − x given apart so that
/// neither end loses digits.
///
/// Source: NIST Digital Library of Mathematical Functions 8.17.22, evaluated by Lentz's method
/// (from memory).
fn beta_below(x: f64, rest: f64, a: f64, b: f64) -> f64 {
    if x <= 0.0 {
        return 0.0;
    }
    if rest <= 0.0 {
        return 1.0;
    }
    if x > (a + 1.0) / (a + b + 2.0) {
        return 1.0 - beta_below(rest, x, b, a);
    }
    let ln_beta = libm::lgamma(a) + libm::lgamma(b) - libm::lgamma(a + b);
    let front = (a * x.ln() + b * rest.ln() - ln_beta).exp() / a;
    let away = |v: f64| if v.abs() < 1e-300 { 1e-300 } else { v };
    let mut c = 1.0;
    let mut d = 1.0 / away(1.0 - (a + b) * x / (a + 1.0));
    let mut fraction = d;
    for m in 1..20_000 {
        let m = f64::from(m);
        let even = m * (b - m) * x / ((a + 2.0 * m - 1.0) * (a + 2.0 * m));
        let odd = -(a + m) * (a + b + m) * x / ((a + 2.0 * m) * (a + 2.0 * m + 1.0));
        for term in [even, odd] {
            d = 1.0 / away(1.0 + term * d);
            c = away(1.0 + term / c);
            fraction *= c * d;
        }
        if (c * d - 1.0).abs() < 1e-16 {
            break;
        }
    }
    (front * fraction).clamp(0.0, 1.0)
}

/// The point from 0 up at which a falling tail is `p`, to about 14 digits.
pub(super) fn where_tail_is(p: f64, tail: impl Fn(f64) -> f64) -> f64 {
    if p >= 1.0 {
        return 0.0;
    }
    let over = |x: f64| tail(x).max(1e-300).ln() - p.max(1e-300).ln();
    let (mut low, mut high) = (0.0, 4.0);
    while over(high) > 0.0 && high < 1e12 {
        low = high;
        high *= 4.0;
    }
    root(over, low, high)
}

/// Where `f` crosses zero between two points, by regula falsi with the Illinois rule.
pub(super) fn root(f: impl Fn(f64) -> f64, mut a: f64, mut b: f64) -> f64 {
    let (mut fa, mut fb) = (f(a), f(b));
    for _ in 0..200 {
        if fa == 0.0 || (b - a).abs() <= 1e-15 * b.abs() {
            return a;
        }
        if fb == 0.0 || fa.signum() == fb.signum() {
            return b;
        }
        let mut c = b - fb * (b - a) / (fb - fa);
        if !(c - a.min(b) > 0.0 && a.max(b) - c > 0.0) {
            c = 0.5 * (a + b);
        }
        let fc = f(c);
        if fc.signum() == fb.signum() {
            fa *= 0.5;
        } else {
            (a, fa) = (b, fb);
        }
        if (c - b).abs() <= 4e-16 * c.abs() {
            return c;
        }
        (b, fb) = (c, fc);
    }
    b
}
