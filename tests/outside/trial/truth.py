"""How the values to 16 digits in trial.rs were made: mpmath's quadrature, some minutes.

The studentized range, Dunnett's test and the non-central t as their double integrals over the
normal density and that of s = sqrt(chi2 / df).
"""

from mpmath import erfc, exp, gamma, linspace, mp, mpf, nstr, pi, quad, sqrt

mp.dps = 20


def below(x):
    return erfc(-x / sqrt(2)) / 2


def density(x):
    return exp(-x * x / 2) / sqrt(2 * pi)


def of_s(s, df):
    half = mpf(df) / 2
    return 2 * half**half / gamma(half) * s ** (df - 1) * exp(-half * s * s)


def over_s(f, df, pieces):
    end = 1 + 14 / sqrt(2 * mpf(df)) if df > 2 else 10
    return quad(lambda s: of_s(s, df) * f(s), linspace(0, end, pieces))


def studentized_range(groups, df, q):
    def within(w):
        part = lambda z: density(z) * (below(z) - below(z - w)) ** (groups - 1)
        return groups * quad(part, linspace(-9, 9, 5))

    return 1 - over_s(lambda s: within(q * s), df, 5)


def dunnett(control, others, df, t):
    shares = [sqrt(mpf(n) / (n + control)) for n in others]

    def within(c):
        def part(z):
            product = density(z)
            for share in shares:
                rest = sqrt(1 - share**2)
                product *= below((share * z + c) / rest) - below((share * z - c) / rest)
            return product

        return quad(part, linspace(-9, 9, 5))

    return 1 - over_s(lambda s: within(t * s), df, 5)


def noncentral_t(t, df, shift):
    return over_s(lambda s: below(t * s - shift), df, 17)


for groups, df, q in [(3, 2, "8.33078255118983"), (8, 24, "4.68375201305766"), (3, 20, "3.5"), (20, 38, "5"), (5, 1, "20")]:
    print("range", groups, df, q, nstr(studentized_range(groups, df, mpf(q)), 16))
print("dunnett", nstr(dunnett(4, [4, 6, 3], 13, mpf("2.3")), 16))
print("dunnett", nstr(dunnett(2, [8, 8, 8, 3], 17, mpf("2.7")), 16))
print("shifted", nstr(noncentral_t(2, 3, 4), 16), nstr(noncentral_t(12, 1, 9), 16))
