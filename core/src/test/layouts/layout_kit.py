"""What the writers of layouts share. All data are invented."""
import datetime, json, math, pathlib, sys

OUT = pathlib.Path(__file__).parents[1] / "resources/ovenproof/core/trace/layouts"
expected = []

def heat(i, step=5.0, top=200.0, tau=120.0, start=21.0, cut=None):
    t = i * step
    return start + (top - start) * (1 - math.exp(-t / tau))

def curve(n, step=5.0, **k):
    return [round(heat(i, step, **k), 1) for i in range(n)]

A = curve(24)
B = curve(24, tau=150, top=190, start=20.5)
F = lambda c: round(c * 9 / 5 + 32, 1)

def write(name, text, encoding="utf-8", newline="\n", rows=24, step=5, start=None, form="delimited",
          channels=(), questions=(), segments=1, skipped=None, time=None):
    data = text.replace("\n", newline).encode(encoding) if isinstance(text, str) else text
    (OUT / name).write_bytes(data)
    expected.append(dict(file=name, rows=rows, step=step, start=start, form=form, time=time, channels=list(channels),
                         questions=list(questions), segments=segments, skipped=skipped))

def ch(name, quantity, unit, role, first, last):
    return dict(name=name, quantity=quantity, unit=unit, role=role, first=first, last=last)

C = lambda f: (f - 32) * 5 / 9

def temp(name, values, role="measured"):
    return ch(name, "temperature", "°C", role, values[0], values[-1])

t0 = datetime.datetime(2026, 3, 14, 9, 30, 0)
stamp = lambda i, fmt, step=5: (t0 + datetime.timedelta(seconds=i * step)).strftime(fmt)
N = range(24)
START = "2026-03-14T09:30:00"
AB = [temp("T1", A), temp("T2", B)]
P = [1400 if i < 20 else 0 for i in N]
R = [round(22.1 + 0.1 * (i % 3), 1) for i in N]
H = [round(45 - 0.1 * i, 1) for i in N]
comma = lambda v: str(v).replace(".", ",")
epoch = lambda i: int(t0.replace(tzinfo=datetime.timezone.utc).timestamp()) + 5 * i
lines_of = lambda head, row: head + "".join(row(i) + "\n" for i in N)
power = lambda name="power": ch(name, "power", "W", "measured", 1400, 0)
humid = lambda name: ch(name, "ratio", "%", "measured", H[0], H[-1])
DT = dict(start=START, time="date-and-time")
n = len(N)


def finish():
    lines = []
    for e in expected:
        lines.append(f"file {e['file']}")
        for key in ("form", "time", "rows", "step", "start", "segments", "skipped"):
            if e[key] is not None:
                lines.append(f"{key} {e[key]}")
        for q in e["questions"]:
            lines.append(f"question {q}")
        for c in e["channels"]:
            num = lambda v: "none" if v is None else f"{v:.3f}"
            lines.append(f"channel {c['name']} | {c['quantity']} | {c['unit']} | {c['role']} | {num(c['first'])} | {num(c['last'])}")
        lines.append("")
    (OUT / "expected.txt").write_text("\n".join(lines), encoding="utf-8")
    print(len(expected), "layouts")
