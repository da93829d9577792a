//! The mean of a function over what a standard deviation that was estimated can be: what
//! the studentized range, Dunnett's test and the non-central t have in common.

/// Points of S = √(χ² ÷ df), with their weights. The trapezoidal rule over ln S: the weight
/// falls off so fast at both ends that the error falls exponentially with the step.
pub(super) struct Spread {
    points: Vec<(f64, f64)>,
}

impl Spread {
    /// For `df` degrees of freedom, and a function of S that turns within a stretch of
    /// 1 ÷ `sharp` of ln S.
    pub fn of(df: f64, sharp: f64) -> Spread {
        let step = (0.65 / (2.0 * df + sharp * sharp).sqrt()).min(0.11);
        let weight = |u: f64| (df * (u - 0.5 * ((2.0 * u).exp() - 1.0))).exp();
        let mut points = vec![(1.0, 1.0)];
        for way in [-step, step] {
            let mut u = way;
            while weight(u) > 1e-19 {
                points.push((u.exp(), weight(u)));
                u += way;
            }
        }
        let all: f64 = points.iter().map(|(_, weight)| weight).sum();
        points.iter_mut().for_each(|(_, weight)| *weight /= all);
        Spread { points }
    }

    /// How many points it has.
    pub fn len(&self) -> usize {
        self.points.len()
    }

    /// The mean of `f`.
    pub fn mean(&self, f: impl Fn(f64) -> f64) -> f64 {
        self.points.iter().map(|(s, weight)| weight * f(*s)).sum()
    }
}
