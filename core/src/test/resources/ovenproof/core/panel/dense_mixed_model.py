"""Expected values for MixedModelTest: REML and Kenward-Roger from their definitions, with dense
matrices and a general-purpose optimiser. Python 3.11, numpy 2.4, scipy 1.17. Run in this folder."""
import csv
import numpy as np
from scipy.optimize import minimize

rng = np.random.default_rng(11)
rows = []
J, P, B, S = 7, 4, 3, 2
bat = rng.normal(0, .7, (P, S, B)); pa = rng.normal(0, .6, (P, J)); a = rng.normal(0, 1, J)
for j in range(J):
    for i in range(P):
        for s in range(S):
            for b in range(B):
                if rng.random() < .35: continue
                if i == 3 and s == 1 and b == 2: continue
                y = round(5 + .5 * i + a[j] + pa[i, j] + bat[i, s, b] + .3 * s + rng.normal(0, .8), 2)
                rows.append((f"T{j+1}", "ABCD"[i], f"S{s+1}", f"b{b+1}", y))
with open("unbalanced.csv", "w") as f:
    w = csv.writer(f, lineterminator="\n"); w.writerow("assessor,product,session,batch,mark".split(",")); w.writerows(rows)

y = np.array([r[4] for r in rows]); n = len(y)
def dummies(keys):
    levels = list(dict.fromkeys(keys)); return np.array([[k == l for l in levels] for k in keys], float), levels
A, al = dummies([r[0] for r in rows]); Pm, pl = dummies([r[1] for r in rows]); Sm, sl = dummies([r[2] for r in rows])
pl_order = pl
Zc, _ = dummies([(r[0], r[1]) for r in rows]); Zb, _ = dummies([r[1:4] for r in rows])
X = np.hstack([A, Pm[:, :-1], Sm[:, :-1]])
G = [np.eye(n), Zc @ Zc.T, Zb @ Zb.T]
def parts(t):
    V = sum(x * g for x, g in zip(t, G)); Vi = np.linalg.inv(V); XtVi = X.T @ Vi
    Phi = np.linalg.inv(XtVi @ X); Pj = Vi - XtVi.T @ Phi @ XtVi
    return V, Vi, Phi, Pj
def nll(lt):
    V, Vi, Phi, Pj = parts(np.exp(lt))
    return .5 * (np.linalg.slogdet(V)[1] - np.linalg.slogdet(Phi)[1] + y @ Pj @ y)
best = minimize(nll, np.log([.5, .3, .3]), method="Nelder-Mead", options=dict(xatol=1e-11, fatol=1e-13, maxiter=20000))
t = np.exp(best.x); V, Vi, Phi, Pj = parts(t)
info = np.array([[.5 * np.trace(Pj @ g @ Pj @ h) for h in G] for g in G]); W = np.linalg.inv(info)
Pi = [-X.T @ Vi @ g @ Vi @ X for g in G]
Lam = sum(W[i, j] * (X.T @ Vi @ G[i] @ Vi @ G[j] @ Vi @ X - Pi[i] @ Phi @ Pi[j]) for i in range(3) for j in range(3))
PhiA = Phi + 2 * Phi @ Lam @ Phi
beta = Phi @ X.T @ Vi @ y
L = np.zeros((X.shape[1], P - 1)); 
for k in range(P - 1): L[J + k, k] = 1
Th = L @ np.linalg.inv(L.T @ Phi @ L) @ L.T; l = P - 1
A1 = sum(W[i, j] * np.trace(Th @ Phi @ Pi[i] @ Phi) * np.trace(Th @ Phi @ Pi[j] @ Phi) for i in range(3) for j in range(3))
A2 = sum(W[i, j] * np.trace(Th @ Phi @ Pi[i] @ Phi @ Th @ Phi @ Pi[j] @ Phi) for i in range(3) for j in range(3))
Bq = (A1 + 6 * A2) / 2 / l; g = ((l + 1) * A1 - (l + 4) * A2) / (l + 2) / A2; d = 3 * l + 2 * (1 - g)
c1, c2, c3 = g / d, (l - g) / d, (l + 2 - g) / d
Es = 1 / (1 - A2 / l); Vs = 2 / l * (1 + c1 * Bq) / ((1 - c2 * Bq) ** 2 * (1 - c3 * Bq)); rho = Vs / 2 / Es ** 2
m = 4 + (l + 2) / (l * rho - 1); lam = m / Es / (m - 2)
b = L.T @ beta; wald = b @ np.linalg.inv(L.T @ PhiA @ L) @ b / l
print("n", n, "theta", t)
print("F", lam * wald, "df", m)
def mean(i):
    k = np.zeros(X.shape[1]); k[:J] = 1 / J
    if i < P - 1: k[J + i] = 1
    k[J + P - 1] = .5
    return k
print(pl, "means", [float(mean(i) @ beta) for i in range(P)])
print("se", [float(np.sqrt(mean(i) @ Phi @ mean(i))) for i in range(P)])
k = mean(0) - mean(3)
gr = np.array([-(k @ Phi @ p @ Phi @ k) for p in Pi])
print("0-3 se", np.sqrt(k @ PhiA @ k), "df", 2 * (k @ Phi @ k) ** 2 / (gr @ W @ gr))
