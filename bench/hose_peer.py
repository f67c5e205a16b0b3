# Peer of hose_bench: the hose of case S1 as a boundary-value problem, by scipy's solve_bvp.
# r' = t, t' = m x t, m' = n x t, n constant (EI = 1, no twist), both ends clamped.
# Start: a cubic between the ends as long as the hose, as in our own solver.
# Prints milliseconds a solve and the tightest radius.
import sys
import time

import numpy as np
from scipy.integrate import solve_bvp

A, B = np.zeros(3), np.array([0.5, 0.3, 0.4])
TA, TB = np.array([1.0, 0, 0]), np.array([0, 0, 1.0])
L = 1.0


def slope(u, reach):
    u = u[None, :]
    return ((B - A)[:, None] * 6 * u * (1 - u)
            + reach * (TA[:, None] * (1 - 4 * u + 3 * u * u) + TB[:, None] * (3 * u * u - 2 * u)))


def start(nodes):
    u = np.linspace(0, 1, 400)
    low, high = 0.0, 8 * L
    for _ in range(60):
        reach = 0.5 * (low + high)
        speed = np.linalg.norm(slope(u, reach), axis=0)
        if np.trapz(speed, u) < L:
            low = reach
        else:
            high = reach
    s = np.concatenate([[0], np.cumsum(0.5 * (speed[1:] + speed[:-1]) * np.diff(u))])
    at = np.linspace(0, L, nodes)
    t = slope(np.interp(at, s * L / s[-1], u), reach)
    t /= np.linalg.norm(t, axis=0)
    r = np.concatenate([np.zeros((3, 1)), np.cumsum(0.5 * (t[:, 1:] + t[:, :-1]) * np.diff(at), axis=1)], axis=1)
    m = np.cross(t, np.gradient(t, at, axis=1), axis=0)
    return at, np.concatenate([r, t, m])


def rates(_s, y, n):
    t, m = y[3:6], y[6:9]
    force = np.repeat(n[:, None], t.shape[1], axis=1)
    return np.concatenate([t, np.cross(m, t, axis=0), np.cross(force, t, axis=0)])


def ends(a, b, _n):
    return np.concatenate([a[0:3] - A, a[3:6] - TA, [a[6:9] @ a[3:6]], b[0:3] - B, b[3:5] - TB[0:2]])


def solve():
    at, guess = start(33)
    answer = solve_bvp(rates, ends, at, guess, p=np.zeros(3), tol=1e-3, max_nodes=4000)
    if not answer.success:
        sys.exit("the peer found no solution")
    y = answer.sol(np.linspace(0, L, 2001))
    return 1 / np.linalg.norm(y[6:9], axis=0).max()


solve()
count = int(sys.argv[1]) if len(sys.argv) > 1 else 5
began = time.perf_counter()
for _ in range(count):
    radius = solve()
print(1e3 * (time.perf_counter() - began) / count, radius)
