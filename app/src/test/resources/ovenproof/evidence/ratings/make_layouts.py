"""Makes the rating tables of this folder. People, products and marks are invented; the tables differ
in how people type them. Python 3, standard library only."""
import random, zipfile
from xml.sax.saxutils import escape

random.seed(4)
T = ["Anna", "Bela", "Carlo", "Dina", "Emil", "Fenna"]
P = ["Alder", "Birch", "Cedar", "Dogwood"]
eff = dict(zip(P, [0.0, 0.6, 1.5, 2.2]))
lev = {t: random.gauss(0, .8) for t in T}
def mark(t, p, lo=1, hi=9, step=1, shift=0):
    v = (lo + hi) / 2 - (hi - lo) * .1 + (hi - lo) / 8 * (eff.get(p, 0) + lev.get(t, 0) + random.gauss(0, .7)) + shift
    v = max(lo, min(hi, round(v / step) * step))
    return int(v) if step >= 1 else round(v, 2)
def write(name, rows, sep=","):
    with open(name, "w", encoding="utf-8") as f:
        for r in rows: f.write(sep.join(str(c) for c in r) + "\n")
def quiet(name, text):
    with open(name, "w", encoding="utf-8") as f: f.write(text)
def xlsx(name, sheets):
    with zipfile.ZipFile(name, "w", zipfile.ZIP_DEFLATED) as z:
        z.writestr("[Content_Types].xml", '<?xml version="1.0"?><Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/>' + "".join(f'<Override PartName="/xl/worksheets/sheet{i+1}.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.worksheet+xml"/>' for i in range(len(sheets))) + "</Types>")
        z.writestr("_rels/.rels", '<?xml version="1.0"?><Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/officeDocument" Target="xl/workbook.xml"/></Relationships>')
        z.writestr("xl/workbook.xml", '<?xml version="1.0"?><workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets>' + "".join(f'<sheet name="{escape(n)}" sheetId="{i+1}" r:id="rId{i+1}"/>' for i, (n, _) in enumerate(sheets)) + "</sheets></workbook>")
        z.writestr("xl/_rels/workbook.xml.rels", '<?xml version="1.0"?><Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">' + "".join(f'<Relationship Id="rId{i+1}" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="worksheets/sheet{i+1}.xml"/>' for i in range(len(sheets))) + "</Relationships>")
        for i, (_, rows) in enumerate(sheets):
            body = ""
            for r, row in enumerate(rows):
                cells = ""
                for c, v in enumerate(row):
                    ref = chr(65 + c) + str(r + 1)
                    if v == "": continue
                    cells += f'<c r="{ref}"><v>{v}</v></c>' if isinstance(v, (int, float)) else f'<c r="{ref}" t="inlineStr"><is><t>{escape(str(v))}</t></is></c>'
                body += f'<row r="{r+1}">{cells}</row>'
            z.writestr(f"xl/worksheets/sheet{i+1}.xml", f'<?xml version="1.0"?><worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>{body}</sheetData></worksheet>')

write("long-two-attributes.csv", [["assessor", "product", "crispness", "taste"]] + [[t, p, mark(t, p), mark(t, p)] for t in T for p in P])
write("long-attribute-rows.csv", [["taster", "oven", "attribute", "score"]] + [[t, p, a, mark(t, p)] for t in T for p in P for a in ["crispness", "taste", "browning"]], ";")
write("products-in-columns.csv", [["taster"] + P] + [[t] + [mark(t, p) for p in P] for t in T])
write("judges-in-columns.csv", [["oven"] + [f"judge{i+1}" for i in range(6)]] + [[p] + [mark(t, p) for t in T] for p in P])
write("unnamed-rows-of-products.csv", [[""] + list(range(1, 13))] + [[p] + [mark(None, p, 0, 10) for _ in range(12)] for p in P])
write("unnamed-rows-of-people.csv", [[""] + P] + [[i + 1] + [mark(None, p, 0, 10) for p in P] for i in range(12)])
write("sessions-and-repetitions.csv", [["Session", "Rep", "Panelist", "Sample", "Crispness", "Sweetness", "Overall"]] + [[s, r, t, p, mark(t, p), mark(t, p), mark(t, p)] for s in (1, 2) for r in (1, 2) for t in T for p in P])
write("batches-and-order.csv", [["judge", "product", "batch", "order", "crispness"]] + [[t, p, b, k + 1, mark(t, p, 0, 100)] for b in (1, 2, 3) for i, t in enumerate(T) for k, p in enumerate(P[(i + b) % 4:] + P[:(i + b) % 4])])
write("two-header-lines.csv", [["Taster", "Alder", "", "Birch", "", "Cedar", ""], ["", "crispness", "taste", "crispness", "taste", "crispness", "taste"]] + [[t] + [mark(t, p) for p in P[:3] for _ in "ab"] for t in T])
write("product-and-attribute-in-header.csv", [["name"] + [f"{p}_{a}" for p in P for a in ("crisp", "taste", "overall")]] + [[t] + [mark(t, p) for p in P for _ in range(3)] for t in T])
write("repetitions-in-header.csv", [["Assessor"] + [f"{p} {r}" for p in P for r in (1, 2, 3)]] + [[t] + [mark(t, p) for p in P for _ in range(3)] for t in T])
write("decimal-commas.csv", [["Prüfer", "Produkt", "Sitzung", "Knusprigkeit", "Geschmack"]] + [[t, p, s, str(mark(t, p, 0, 10, .5)).replace(".", ","), str(mark(t, p, 0, 10, .5)).replace(".", ",")] for s in (1, 2) for t in T for p in P], ";")
quiet("title-totals-notes.csv", "Toast tasting at the Quarry Street kitchen (invented),,,,,\nThursday evening,,,,,\n\nTaster,Alder,Birch,Cedar,Dogwood,Total\n" + "".join(",".join(map(str, [t] + (m := [mark(t, p) for p in P]) + [sum(m)])) + "\n" + ("\n" if i == 2 else "") for i, t in enumerate(T)) + "Mean,4.5,5,6,7,22.5\n\nCrackers between samples. Emil had a cold.,,,,,\n")
write("facts-and-comments.csv", [["id", "timestamp", "participant", "age", "gender", "sample", "price", "liking", "comments"]] + [[n + 1, f"2026-03-0{n%3+1} 18:{n:02d}", t, 30 + 3 * i, "fm"[i % 2], p, 80 + 20 * j, mark(t, p), random.choice(["", "nice and crisp on the outside but a little dry inside", "burnt rim on the left side and pale in the middle"])] for n, (i, t, j, p) in enumerate((i, t, j, p) for i, t in enumerate(T) for j, p in enumerate(P))])
rows = [[t, p, mark(t, p), mark(t, p)] for t in T for p in P]
for k, gap in ((2, "NA"), (7, ""), (11, "-"), (16, "n/a")): rows[k][2] = gap
write("missing-cells.csv", [["assessor", "product", "crispness", "taste"]] + rows)
write("two-spellings.csv", [["taster", "oven", "session", "score"]] + [[t if (t, s) != ("Fenna", 2) else "fenna", p if not (p == "Dogwood" and s == 2 and t in "Emil") else "Dogwod", s, mark(t, p)] for s in (1, 2) for t in T for p in P])
quiet("row-names-tabs.txt", "Judge\tProduct\tCrispness\tTaste\n" + "".join("\t".join(map(str, [n + 1, t, p, mark(t, p), mark(t, p)])) + "\n" for n, (t, p) in enumerate((t, p) for t in T for p in P)))
quiet("spaces.txt", "judge    oven      rep  score\n" + "".join(f"{t:<8} {p:<9} {r}    {mark(t, p)}\n" for r in (1, 2) for t in T for p in P))
quiet("sections.csv", "Taster,Alder,Birch,Cedar,Dogwood\n" + "".join(f"Session {s},,,,\n" + "".join(",".join(map(str, [t] + [mark(t, p) for p in P])) + "\n" for t in T) + "\n" for s in (1, 2, 3)))
write("blind-codes.csv", [["Assessor", 317, 482, 591, 746]] + [[f"P{i+1:02d}"] + [mark(t, p) for p in P] for i, t in enumerate(T)])
write("subject-by-rater.csv", [["subject", "rater1", "rater2", "rater3"]] + [[i + 1] + [mark(None, p, 1, 7, 1, d) for d in (0, .5, 1)] for i, p in enumerate(P * 5)])
write("several-scales.csv", [["consumer", "product", "crispness (0-100)", "overall liking", "salt JAR"]] + [[f"C{c+1}", p, mark(None, p, 0, 100), mark(None, p), random.choice([2, 3, 3, 3, 4, 5])] for c in range(36) for p in P[:3]])
words = "dislike extremely;dislike very much;dislike moderately;dislike slightly;neither like nor dislike;like slightly;like moderately;like very much;like extremely".split(";")
write("liking-in-words.csv", [["taster", "oven", "liking"]] + [[t, p, words[mark(t, p) - 1]] for t in T for p in P])
rows = [[t, p, mark(t, p)] for t in T for p in P]
write("typed-twice.csv", [["taster", "oven", "score"]] + rows[:7] + [rows[4]] + rows[7:] + [["Anna", "Cedar", 2]])
rows = [[t, p, s, mark(t, p)] for s in (1, 2) for t in T for p in P]; rows[5][3] = 77; rows[30][3] = 99
write("out-of-scale.csv", [["taster", "oven", "session", "score"]] + rows)
write("blind-duplicate.csv", [["assessor", "sample", "session", "crispness", "taste", "overall"]] + [[t, p, s, mark(t, p), mark(t, p), mark(t, p)] for s in (1, 2) for t in T for p in P + ["Cedar"]])
quiet("no-header.csv", "".join(f"{t},{p},{mark(t, p)}\n" for t in T for p in P))
write("lid-on-and-off.csv", [["Panellist", "Oven", "Lid", "Moistness", "Crust"]] + [[t, p, l, mark(t, p), mark(t, p)] for t in T for p in P for l in ("on", "off")])
write("nobody-named.csv", [["oven", "score"]] + [[p, mark(None, p)] for p in P for _ in range(15)])
write("names-on-both-sides.csv", [["", "Quick", "Slow", "Steam"]] + [[t] + [mark(t, p) for p in P[:3]] for t in T])
write("numbers-for-everything.csv", [["judge", "session", "sample", "order", "score"]] + [[j, s, p + 1, (p + j + s) % 4 + 1, mark(None, P[p])] for s in (1, 2) for j in range(1, 9) for p in range(4)])
write("batches-named-once.csv", [["mark", "heat", "time", "loaf", "taster"]] + [[mark(t, P[c]), ("low", "high")[c // 2], ("short", "long")[c % 2], 2 * c + b + 1, i + 1] for i, t in enumerate(T) for c in range(4) for b in (0, 1)])
write("products-down-attributes-across.csv", [["Oven", "Taster", "Crisp", "Taste", "Look", "Average"]] + [[p, t] + (m := [mark(t, p), mark(t, p), mark(t, p)]) + [round(sum(m) / 3, 2)] for p in P for t in T])
sheet = lambda s: [["Taster"] + P] + [[t] + [mark(t, p) for p in P] for t in T]
xlsx("two-sessions.xlsx", [("Session 1", sheet(1)), ("Session 2", sheet(2))])
xlsx("different-words.xlsx", [("Monday", [["Taster", "Oven", "Crispness"]] + [[t, p, mark(t, p)] for t in T for p in P]), ("Tuesday", [["Taster", "Oven", "Crunchiness"]] + [[t, "Dogwood 20" if p == "Dogwood" else p, mark(t, p)] for t in T for p in P])])
xlsx("sheet-per-attribute.xlsx", [("Crispness", sheet(1)), ("Taste", sheet(2))])
