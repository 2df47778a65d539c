"""Checks against a curve, worked out by numpy and scipy: run `python3 by-numpy.py > by-numpy.json`.

Independent of the program: the whitening by numpy's Cholesky, the sum of squares also by the inverse, the tail by
scipy.stats.chi2, the drift by the closed form of generalised least squares, the flow by the textbook formulas of
DerSimonian-Laird and Hartung-Knapp with scipy.stats.t. Inputs are invented.
"""

import json

import numpy as np
from scipy import linalg, stats

rng = np.random.default_rng(20260912)
n = 9
days = np.cumsum(rng.integers(4, 40, n)).astype(float)
days -= days[0]
refills = rng.uniform(8, 30, n)
# Common: the curve's own error (two patterns), a pump's scale; own: readings and state.
common = np.outer(0.03 * refills, 0.03 * refills) + np.outer(0.4 * np.sin(refills), 0.4 * np.sin(refills))
K = common + np.outer(0.004 * refills, 0.004 * refills) + np.diag(rng.uniform(0.3, 1.2, n) ** 2)
d = rng.multivariate_normal(np.zeros(n), K) + 0.002 * days
L = np.linalg.cholesky(K)
e = linalg.solve_triangular(L, d, lower=True)
chi2 = float(d @ np.linalg.inv(K) @ d)
t = days / 365.25
Ki = np.linalg.inv(K)
info = float(t @ Ki @ t)
high, low, sums = 0.0, 0.0, []
for value in e:
    high, low = max(0.0, high + value - 0.5), max(0.0, low - value - 0.5)
    sums.append([high, low])

flights = rng.uniform(2400, 9000, 7)
flow = 17 + rng.normal(0, 0.9, 7)
burned = np.round(flow * flights / 3600, 1)
sd = np.round(rng.uniform(0.2, 0.6, 7), 2)
x = burned / (flights / 3600)
v = (sd / (flights / 3600)) ** 2
w = 1 / v
fixed = (w * x).sum() / w.sum()
q = (w * (x - fixed) ** 2).sum()
tau2 = max(0.0, (q - 6) / (w.sum() - (w**2).sum() / w.sum()))
ws = 1 / (v + tau2)
mean = (ws * x).sum() / ws.sum()
hk = max(1.0, (ws * (x - mean) ** 2).sum() / 6) / ws.sum()
scale = 0.004
reach = stats.t.ppf(0.95, 6)

print(
    json.dumps(
        {
            "madeBy": f"numpy {np.__version__}",
            "checks": {
                "days": days.tolist(),
                "residualsL": d.tolist(),
                "covarianceL2": K.tolist(),
                "whitened": e.tolist(),
                "standardised": (d / np.sqrt(np.diag(K))).tolist(),
                "sumOfSquares": chi2,
                "scatterProb": float(stats.chi2.sf(chi2, n)),
                "cusum": sums,
                "driftLPerYear": float(t @ Ki @ d) / info,
                "driftSd": 1 / np.sqrt(info),
            },
            "flow": {
                "refillL": burned.tolist(),
                "flightS": flights.tolist(),
                "refillSdL": sd.tolist(),
                "scaleSdRatio": scale,
                "mean": float(mean),
                "high": float(mean + reach * np.sqrt(hk + (scale * mean) ** 2)),
                "low": float(mean - reach * np.sqrt(hk + (scale * mean) ** 2)),
                "nextFlightHigh": float(mean + reach * np.sqrt(hk + (scale * mean) ** 2 + tau2)),
            },
        },
        indent=1,
    )
)
