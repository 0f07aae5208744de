#!/usr/bin/env python3
"""The verdict's draws the vectorised array-library way, for comparison.

200 products x 30 criteria x 20,000 draws: Student errors with a pooled deviation, one shared error,
piecewise-linear curves of three shifted runs, weighted means of six groups and of all, 5 % and 95 %
quantiles of every group and total, tier margin, ranks and the pair matrix.

Written to be fast, so that the comparison is fair: draws in chunks that stay in the processor's
cache, results written in place, the curve of three runs as one line and a ramp per break (a fifth of
the time of numpy.interp), second moments by one matrix product, quantiles by selection, ranks along
the contiguous axis. Usage: verdict_numpy.py [repetitions [chunk]]
"""
import sys
import time

import numpy as np

GROUPS = 6


def lines(values, anchors, scores):
    """Mean score of shifted runs as level, slope and half bends at breaks, for every product."""
    slopes = np.concatenate(([0.0], np.diff(scores) / np.diff(anchors), [0.0]))
    bends = np.diff(slopes)
    runs = values.shape[1]
    breaks = (anchors[None, None, :] - values[:, :, None]).reshape(len(values), -1)
    half = np.tile(bends, runs) / (2 * runs)
    level = scores[0] - (half * breaks).sum(axis=1)
    slope = np.full(len(values), half.sum())
    return level, slope, breaks, half


def verdict(products=200, criteria=30, runs=3, draws=20_000, seed=42, chunk=500):
    rng = np.random.default_rng(seed)
    level = 30 + 40 * rng.random(products)
    per_group = criteria // GROUPS
    values = level[:, None, None] + 6 * rng.standard_normal((products, criteria, runs))
    anchors, scores = np.array([0.0, 40, 60, 100]), np.array([0.0, 4, 7, 10])
    inside = np.arange(1, per_group + 1) / np.arange(1, per_group + 1).sum()
    between = np.arange(10, 10 + GROUPS) / np.arange(10, 10 + GROUPS).sum()
    started = time.perf_counter()
    degrees = products * (runs - 1)
    spread = [np.sqrt(values[:, c].var(axis=1, ddof=1).mean() / runs) for c in range(criteria)]
    curves = [lines(values[:, c], anchors, scores) for c in range(criteria)]
    nodes = np.empty((GROUPS + 1, products, draws))
    total = nodes[GROUPS]
    error, score, ramp = (np.empty((products, chunk)) for _ in range(3))
    for d in range(0, draws, chunk):
        shared = rng.standard_normal(chunk)
        whole = np.zeros((products, chunk))
        for g in range(GROUPS):
            group = np.zeros((products, chunk))
            for k in range(per_group):
                c = g * per_group + k
                factor = np.sqrt(degrees / rng.chisquare(degrees, chunk))
                rng.standard_normal(out=error)
                error *= factor * spread[c]
                error += shared
                start, slope, breaks, half = curves[c]
                np.multiply(error, slope[:, None], out=score)
                score += start[:, None]
                low, high = error.min(), error.max()
                for b in range(breaks.shape[1]):
                    at = breaks[:, b]
                    reached = (at > low) & (at < high)
                    if reached.all():
                        np.subtract(error, at[:, None], out=ramp)
                        np.abs(ramp, out=ramp)
                        ramp *= half[b]
                        score += ramp
                    else:
                        # Breaks beyond every error bend nothing: a line does.
                        side = np.where(at >= high, -1.0, 1.0) * ~reached
                        score += (half[b] * side)[:, None] * (error - at[:, None])
                        rows = np.flatnonzero(reached)
                        if rows.size:
                            score[rows] += half[b] * np.abs(error[rows] - at[rows, None])
                score *= inside[k]
                group += score
            nodes[g, :, d:d + chunk] = group
            group *= between[g]
            whole += group
        total[:, d:d + chunk] = whole
    estimate = np.zeros(products)
    for c in range(criteria):
        mean = np.interp(values[:, c], anchors, scores).mean(axis=1)
        estimate += between[c // per_group] * inside[c % per_group] * mean
    fifth, last = int(0.05 * draws), int(np.ceil(0.95 * draws)) - 1
    ends = np.partition(nodes, (fifth, last), axis=2)[:, :, [fifth, last]]
    err = total - estimate[:, None]
    centred = err - err.mean(axis=0)
    second = centred @ centred.T / draws
    diagonal = np.diag(second)
    sed = np.sqrt(np.maximum(0, diagonal[:, None] + diagonal[None, :] - 2 * second))
    np.fill_diagonal(sed, np.inf)
    inverse = 1 / sed
    largest = np.empty(draws)
    counts = np.zeros((products, products), dtype=np.int64)
    best = np.zeros(products)
    for d in range(0, draws, chunk):
        e = np.ascontiguousarray(err[:, d:d + chunk])
        t = np.ascontiguousarray(total[:, d:d + chunk])
        most = np.zeros(chunk)
        difference = np.empty((products, chunk))
        above = np.empty((products, chunk), dtype=bool)
        for i in range(products - 1):
            part = difference[i + 1:]
            np.subtract(e[i + 1:], e[i], out=part)
            np.abs(part, out=part)
            part *= inverse[i + 1:, i, None]
            np.maximum(most, part.max(axis=0), out=most)
            np.less(t[i + 1:], t[i], out=above[i + 1:])
            counts[i, i + 1:] += np.count_nonzero(above[i + 1:], axis=1)
        largest[d:d + chunk] = most
        best += np.bincount(t.argmax(axis=0), minlength=products)
    margin = np.partition(largest, int(np.ceil(0.9 * draws)) - 1)[int(np.ceil(0.9 * draws)) - 1]
    pairs = np.triu(counts, 1) / draws
    pairs += np.tril(1 - pairs.T, -1)
    took = time.perf_counter() - started
    return took, (ends[GROUPS], margin, best / draws, pairs)


if __name__ == "__main__":
    repetitions = int(sys.argv[1]) if len(sys.argv) > 1 else 3
    chunk = int(sys.argv[2]) if len(sys.argv) > 2 else 500
    cpu, times = [], []
    for _ in range(repetitions):
        before = time.process_time()
        took, result = verdict(chunk=chunk)
        times.append(took)
        cpu.append(time.process_time() - before)
    times.sort()
    print(f"numpy {np.__version__}: best {1000 * times[0]:.0f} ms, "
          f"median {1000 * times[len(times) // 2]:.0f} ms, "
          f"processor {1000 * min(cpu):.0f} ms, {repetitions} times, margin {result[1]:.3f}")
