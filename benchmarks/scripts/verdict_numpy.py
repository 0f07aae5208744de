#!/usr/bin/env python3
"""The verdict's draws the vectorised array-library way, for comparison.

200 products x 30 criteria x 20,000 draws: Student errors with a pooled deviation, one shared error,
piecewise-linear curves of three shifted runs, weighted mean, 5 % and 95 % quantiles of every total,
tier margin, ranks and the pair matrix. Draws are processed criterion by criterion, so that memory
stays at a few arrays of products x draws. Usage: verdict_numpy.py [repetitions]
"""
import sys
import time

import numpy as np


def verdict(products=200, criteria=30, runs=3, draws=20_000, seed=42):
    rng = np.random.default_rng(seed)
    level = 30 + 40 * rng.random(products)
    weights = np.tile(np.arange(1, 6), 6) * np.repeat(np.arange(10, 16) / 15.0, 5)
    weights = weights / weights.sum()
    values = level[:, None, None] + 6 * rng.standard_normal((products, criteria, runs))
    anchors, scores = np.array([0.0, 40, 60, 100]), np.array([0.0, 4, 7, 10])
    started = time.perf_counter()
    shared = rng.standard_normal(draws)
    total = np.zeros((products, draws))
    estimate = np.zeros(products)
    degrees = products * (runs - 1)
    for c in range(criteria):
        v = values[:, c, :]
        s = np.sqrt(v.var(axis=1, ddof=1).mean())
        factor = np.sqrt(degrees / rng.chisquare(degrees, draws))
        error = rng.standard_normal((products, draws)) * (factor * s / np.sqrt(runs)) + shared
        score = np.zeros((products, draws))
        for r in range(runs):
            score += np.interp(v[:, r, None] + error, anchors, scores)
        total += weights[c] / runs * score
        estimate += weights[c] * np.interp(v, anchors, scores).mean(axis=1)
    low, high = np.quantile(total, [0.05, 0.95], axis=1)
    err = total - estimate[:, None]
    centred = err - err.mean(axis=0)
    second = centred @ centred.T / draws
    diagonal = np.diag(second)
    sed = np.sqrt(np.maximum(0, diagonal[:, None] + diagonal[None, :] - 2 * second))
    np.fill_diagonal(sed, np.inf)
    largest = np.zeros(draws)
    for i in range(products - 1):
        spread = np.abs(err[i] - err[i + 1:]) / sed[i, i + 1:, None]
        np.maximum(largest, spread.max(axis=0), out=largest)
    margin = np.quantile(largest, 0.9)
    ranks = total.argsort(axis=0).argsort(axis=0)
    best = (ranks == products - 1).mean(axis=1)
    pairs = np.empty((products, products))
    for i in range(products):
        pairs[i] = (ranks[i] > ranks).mean(axis=1)
    took = time.perf_counter() - started
    return took, (low, high, margin, best, pairs)


if __name__ == "__main__":
    repetitions = int(sys.argv[1]) if len(sys.argv) > 1 else 3
    cpu, times = [], []
    for _ in range(repetitions):
        before = time.process_time()
        times.append(verdict()[0])
        cpu.append(time.process_time() - before)
    times.sort()
    print(f"numpy {np.__version__}: best {1000 * times[0]:.0f} ms, "
          f"median {1000 * times[len(times) // 2]:.0f} ms, "
          f"processor {1000 * min(cpu):.0f} ms, {repetitions} times")
