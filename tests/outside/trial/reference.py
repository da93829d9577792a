"""What scipy and mpmath say, and the NIST data sets that scipy carries, as JSON.

mpmath works t and F to 40 digits; scipy does tests on drawn data and the other distributions.
"""

import json
import pathlib

import numpy as np
import scipy
from mpmath import betainc, mp, mpf
from scipy import stats

mp.dps = 40


def nist():
    folder = pathlib.Path(scipy.__file__).parent / "stats/tests/data/nist_anova"
    sets = []
    for path in sorted(folder.glob("*.dat")):
        lines = path.read_text().splitlines()
        between = next(line for line in lines if line.startswith("Between")).split()
        within = next(line for line in lines if line.startswith("Within")).split()
        rows = [line.split() for line in lines[60:] if line.strip()]
        sets.append(
            {
                "name": path.stem,
                "df": float(between[-4]),
                "f": float(between[-1]),
                "error_df": float(within[-3]),
                "error": float(within[-1]),
                "rows": [[row[0], row[1]] for row in rows],
            }
        )
    return sets


def t_both(t, df):
    t, df = mpf(t), mpf(df)
    return float(betainc(df / 2, mpf(1) / 2, 0, df / (df + t * t), regularized=True))


def f_tail(f, of, within):
    f, of, within = mpf(f), mpf(of), mpf(within)
    return float(betainc(within / 2, of / 2, 0, within / (within + of * f), regularized=True))


def exact_distributions():
    ts = [[t, df, t_both(t, df)] for t in (0.01, 0.5, 2.0, 5.0, 40.0) for df in (1, 2.5, 6, 17.3, 120, 1500)]
    fs = [
        [f, of, within, f_tail(f, of, within)]
        for f in (0.05, 1.0, 3.5, 20.0, 300.0)
        for of, within in ((1, 4), (2, 9), (7, 21), (14, 300), (19, 1900))
    ]
    return {"t": ts, "f": fs}


def scipys():
    ranges = [
        [q, k, df, float(stats.studentized_range.sf(q, k, df))]
        for q in (2.0, 3.5, 5.0)
        for k, df in ((3, 6), (4, 12), (8, 24), (15, 40))
    ]
    shifted = [
        [t, df, shift, float(stats.nct.cdf(t, df, shift))]
        for t in (-1.0, 0.5, 2.3, 6.0)
        for df, shift in ((3, 0.7), (6, 2.0), (19, 4.0), (80, -1.0))
    ]
    draw = np.random.default_rng(25)
    normal = []
    for n in (3, 4, 5, 6, 8, 11, 12, 19, 60, 400, 2000):
        for values in (draw.normal(6, 0.4, n), draw.exponential(30, n), np.round(draw.normal(6, 0.4, n), 1)):
            if n < 2000 or len(set(values)) == n:
                found = stats.shapiro(values)
                normal.append([float(found.statistic), float(found.pvalue), *map(float, values)])
    return {"range": ranges, "shifted": shifted, "normal": normal}


def trials():
    draw = np.random.default_rng(16)
    two, pairs, several = [], [], []
    for _ in range(12):
        n, m = draw.integers(3, 9, 2)
        a = np.round(draw.normal(6.0, 0.3, n), 4)
        b = np.round(draw.normal(6.2, 0.6, m), 4)
        welch = stats.ttest_ind(b, a, equal_var=False)
        interval = welch.confidence_interval(0.95)
        lots = stats.permutation_test(
            (b, a),
            lambda x, y: round(abs(np.mean(x) - np.mean(y)), 12),
            n_resamples=np.inf,
            alternative="greater",
        )
        two.append(
            {
                "a": a.tolist(),
                "b": b.tolist(),
                "t": welch.statistic,
                "df": welch.df,
                "p": welch.pvalue,
                "low": interval.low,
                "high": interval.high,
                "rank": stats.mannwhitneyu(b, a, method="exact").pvalue,
                "lots": lots.pvalue,
            }
        )
    for _ in range(8):
        n = draw.integers(4, 10)
        a = np.round(draw.normal(100, 20, n), 3)
        b = np.round(a + draw.normal(8, 9, n), 3)
        paired = stats.ttest_rel(b, a)
        interval = paired.confidence_interval(0.95)
        pairs.append(
            {
                "a": a.tolist(),
                "b": b.tolist(),
                "t": paired.statistic,
                "p": paired.pvalue,
                "low": interval.low,
                "high": interval.high,
                "rank": stats.wilcoxon(b, a, method="exact").pvalue,
            }
        )
    for _ in range(4):
        groups = [np.round(draw.normal(20 + 2 * i, 2, draw.integers(3, 7)), 3) for i in range(4)]
        every = stats.tukey_hsd(*groups)
        dunnett = stats.dunnett(*groups[1:], control=groups[0], rng=1)
        anova = stats.f_oneway(*groups)
        several.append(
            {
                "groups": [g.tolist() for g in groups],
                "f": anova.statistic,
                "p": anova.pvalue,
                "tukey": every.pvalue.tolist(),
                "dunnett": dunnett.pvalue.tolist(),
            }
        )
    return {"two": two, "pairs": pairs, "several": several}


print(json.dumps({"nist": nist(), **exact_distributions(), **scipys(), **trials()}))
