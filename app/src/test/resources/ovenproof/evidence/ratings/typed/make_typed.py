"""Makes the rating tables of this folder as people really type them. People, products and marks are
invented. Python 3, standard library only; run in this folder."""
import random, itertools
random.seed(7)
def w(n,t,enc='utf-8'):
    open(n,'wb').write(t.encode(enc))
P=['Rowan','Hazel','Juniper','Larch']; eff={'Rowan':6,'Hazel':7,'Juniper':5,'Larch':6.2}
T=['Anna','Bela','Carlo','Dina','Emil','Fenna']
lev={t:random.gauss(0,.6) for t in T}
def m(t,p,sd=.8,lo=1,hi=9): return max(lo,min(hi,round(eff[p]+lev.get(t,0)+random.gauss(0,sd))))
# 1 merged-looking headers: product name only over first of its attribute columns
attrs=['Crisp','Brown','Liking']
t='Tasting of 12 May;;;;;;;;;;;;\n;Rowan;;;Hazel;;;Juniper;;;Larch;;\nTaster;'+';'.join(attrs*4)+'\n'
for a in T: t+=a+';'+';'.join(str(m(a,p)).replace('.',',') for p in P for _ in attrs)+'\n'
w('merged-header.csv',t)
# 2 taster named once, then blank (merged cells down), two columns
t='Taster,Oven,Crispness,Colour\n'
for a in T:
  for i,p in enumerate(P): t+=f"{a if i==0 else ''},{p},{m(a,p)},{m(a,p)}\n"
w('named-once.csv',t)
# 3 decimal comma with semicolon, quoted, thousands none, comment with separators
t='"Prüfer";"Gerät";"Durchgang";"Knusprigkeit";"Bräunung";"Bemerkung"\n'
for d in (1,2):
  for a in T:
    for p in P: t+=f'"{a}";"{p}";"{d}";"{m(a,p)+random.choice([0,.5]):.1f}";"{m(a,p):.1f}";"{random.choice(["","zu dunkel; Rand","gut","etwas trocken, aber ok"])}"\n'.replace('.0"',',0"').replace('.5"',',5"')
w('german.csv',t,'cp1252')
# 4 blind codes per session + key? product = 3 digit codes, codes same for product
codes=dict(zip(P,[471,832,219,605]))
t='Panelist #,Sample code,Order,Crispness (0-100),Overall liking (1-9),JAR browning\n'
for i,a in enumerate(T):
  o=P[:]; random.shuffle(o)
  for k,p in enumerate(o): t+=f"{i+1},{codes[p]},{k+1},{min(100,max(0,int(eff[p]*10+random.gauss(0,8))))},{m(a,p)},{random.choice([2,3,3,3,4])}\n"
w('blind-codes-scales.csv',t)
# 5 google form: timestamp, name, then one column per product question
t='Timestamp,Your name,"How crisp is sample 471? [1 = soggy, 9 = crisp]","How crisp is sample 832? [1 = soggy, 9 = crisp]","How crisp is sample 219? [1 = soggy, 9 = crisp]","How crisp is sample 605? [1 = soggy, 9 = crisp]",Any comments?\n'
for i,a in enumerate(T): t+=f"5/12/2026 14:{10+i}:0{i},{a},"+','.join(str(m(a,p)) for p in P)+f",{random.choice(['','the second was burnt','Liked the last one best, sorry for the late answer'])}\n"
w('form-questions.csv',t)
# 6 form grid: "Crispness [Rowan]"
t='Zeitstempel,Name,'+','.join(f'Crispness [{p}]' for p in P)+','+','.join(f'Taste [{p}]' for p in P)+'\n'
for i,a in enumerate(T): t+=f"2026-05-12 14:{10+i}:00,{a},"+','.join(str(m(a,p)) for p in P+P)+"\n"
w('form-grid.csv',t)
# 7 products in rows, tasters in columns, 2 attributes stacked with title lines
t=''
for at in ('Crispness','Taste'):
  t+=at+',,,,,,\n'+'Oven,'+','.join(T)+'\n'
  for p in P: t+=p+','+','.join(str(m(a,p)) for a in T)+'\n'
  t+='\n'
w('stacked-blocks.csv',t)
# 8 transposed long: row of tasters, row of products, rows of attributes
t='Taster,'+','.join(a for a in T for p in P)+'\nOven,'+','.join(p for a in T for p in P)+'\n'
for at in ('Crispness','Taste'): t+=at+','+','.join(str(m(a,p)) for a in T for p in P)+'\n'
w('transposed.csv',t)
# 9 unnamed first column, row names "1","2"; R write.csv
t='"","Assessor","TVset","Repeat","Picture","Sharpness","Noise"\n'; n=0
for a in T:
  for p in P:
    for s in ('TV1','TV2'):
      for r in (1,2):
        n+=1; t+=f'"{n}","{a}","{p}",{r},"{s}",{m(a,p)+random.random():.1f},{m(a,p)+random.random():.1f}\n'
w('r-export.csv',t)
# 10 tab with CR line ends, trailing tabs, trailing spaces in names
t='Judge \t Sample\tScore\t\t\r'
for a in T:
  for p in P: t+=f"{a} \t{p+(' ' if random.random()<.3 else '')}\t{m(a,p)} \t\t\r"
w('cr-tabs-spaces.txt',t)
# 11 several sessions side by side: columns "Day 1 Rowan"
t='Assessor,'+','.join(f'Day {d} {p}' for d in (1,2) for p in P)+'\n'
for a in T: t+=a+','+','.join(str(m(a,p)) for d in (1,2) for p in P)+'\n'
w('day-product.csv',t)
# 12 product batch in name "Rowan 1","Rowan 2" rows
t='Loaf,'+','.join(T)+'\n'
for p in P:
  for b in (1,2,3): t+=f'{p} #{b},'+','.join(str(m(a,p)) for a in T)+'\n'
w('loaf-in-name.csv',t)
# 13 average column & row, rank row, std dev, blank lines and title in caps
t='CRISPNESS PANEL - SPRING\n\nProduct,'+','.join(T)+',Average,Rank\n'
for p in P:
  v=[m(a,p) for a in T]; t+=p+','+','.join(map(str,v))+f',{sum(v)/6:.2f},{random.randint(1,4)}\n\n'
t+='Std dev,1,1,1,1,1,1,,\n\nNotes: room 21 C\n'
w('averages.csv',t)
# 14 scores as "7/10", "8 / 10", "7½", "6-7", "~6", "8?"
t='Taster,Oven,Score\n'
for a in T:
  for p in P:
    v=m(a,p); t+=f"{a},{p},{random.choice([f'{v}/10',f'{v} / 10',f'{v}/10',f'{v}½/10'])}\n"
t+='Gus,Rowan,6-7\nGus,Hazel,~6\nGus,Juniper,8?\nGus,Larch,n.b.\n'
w('typed-scores.csv',t)
# 15 stars & words
t='who,toaster,stars\n'
for a in T:
  for p in P: t+=f"{a},{p},{'★'*max(1,min(5,m(a,p)//2))}\n"
w('stars.csv',t)
# 16 words
t='Taster;Oven;Overall;Browning\n'
L=['dislike extremely','dislike very much','dislike moderately','dislike slightly','neither like nor dislike','like slightly','like moderately','like very much','like extremely']
J=['much too pale','too pale','just about right','too dark','much too dark']
for a in T:
  for p in P: t+=f"{a};{p};{L[m(a,p)-1]};{random.choice(J[1:4])}\n"
w('words.csv',t)
# 17 two products only, one taster missing completely, "-" and "x"
t='Taster,Rowan,Hazel\n'
for a in T: t+=f"{a},{m(a,'Rowan')},{m(a,'Hazel')}\n"
t+='Gerd,-,-\nHans,x,7\n'
w('two-products.csv',t)
# 18 one taster
t='Oven,Crisp,Taste\n'+''.join(f"{p},{m('Z',p)},{m('Z',p)}\n" for p in P)
w('one-taster.csv',t)
# 19 constant ratings
t='Taster,Oven,Score\n'+''.join(f"{a},{p},7\n" for a in T for p in P)
w('constant.csv',t)
# 20 numeric product ids 1..4, judge 1..6, replicate 1..2, all ints with marks 1..9: header short j,p,r,y
t='j,p,r,y\n'+''.join(f"{i+1},{k+1},{r},{m(a,p)}\n" for i,a in enumerate(T) for k,p in enumerate(P) for r in (1,2))
w('short-headers.csv',t)
# 21 no header numeric
t=''.join(f"{i+1} {k+1} {r} {m(a,p)} {m(a,p)}\n" for i,a in enumerate(T) for k,p in enumerate(P) for r in (1,2))
w('no-header.dat',t)
# 22 balanced incomplete: each consumer rates 3 of 4; long with consumer ids C001
t='ConsumerID,ProductName,Overall Liking,Age group,Date\n'
for i in range(60):
  for p in random.sample(P,3): t+=f"C{i+1:03d},{p},{m('q',p,1.5)},{['18-29','30-44','45+'][i%3]},2026-05-{12+i//20}\n"
w('consumers-incomplete.csv',t)
# 23 wide per consumer with product x attribute suffix codes: liking_471
t='resp;sex;age;'+';'.join(f'{at}_{codes[p]}' for p in P for at in ('liking','crisp','jar_brown'))+'\n'
for i in range(40): t+=f"{i+1};{'mf'[i%2]};{20+i};"+';'.join(str(m('q',p,1.5)) if at!='jar' else str(random.choice([2,3,3,4])) for p in P for at in ('l','c','jar'))+'\n'
w('wide-consumers.csv',t)
# 24 same taster twice spelled, product spelled with case/trailing "oven"
t='Taster,Oven,Score\n'
for d in (0,1):
  for a in T:
    for p in P:
      aa={0:a,1:a.upper() if a=='Anna' else ('Bella' if a=='Bela' else a)}[d]
      pp={0:p,1:'Junipar' if p=='Juniper' else ('rowan' if p=='Rowan' else p)}[d]
      t+=f"{aa},{pp},{m(a,p)}\n"
w('two-spellings.csv',t)
# 25 percent scale with % sign and units "72 %","65mm"
t='Assessor,Product,Line scale\n'+''.join(f"{a},{p},{m(a,p)*10} mm\n" for a in T for p in P)
w('units.csv',t)
# 26 HTML-ish/markdown table
t='| Taster | Oven | Crisp | Taste |\n|---|---|---|---|\n'+''.join(f"| {a} | {p} | {m(a,p)} | {m(a,p)} |\n" for a in T for p in P)
w('markdown.md',t)
# 27 comma decimal & comma separator quoted
t='Taster,Oven,Score\n'+''.join(f'{a},{p},"{m(a,p)},5"\n' for a in T for p in P)
w('quoted-comma.csv',t)
# 28 long attr rows with value as text and unit and batch; date as session
t='date,batch_id,assessor_code,sample,attribute,value,recorded_by\n'
for d in ('2026-05-12','2026-05-13'):
  for b in (1,2):
    for p in P:
      for a in T:
        for at in attrs: t+=f"{d},{p[:2].upper()}-{d[-2:]}-{b},{a},{p},{at},{m(a,p)},mk\n"
w('long-batches.csv',t)
# 29 rank data
t='Judge,'+','.join(P)+'\n'
for a in T:
  o=P[:]; o.sort(key=lambda p:-eff[p]-random.gauss(0,1)); t+=a+','+','.join(str(o.index(p)+1) for p in P)+'\n'
w('ranks.csv',t)
# 30 sep= line, BOM, CRLF
t='\ufeffsep=;\r\nTaster;Oven;Score\r\n'+''.join(f'{a};{p};{m(a,p)}\r\n' for a in T for p in P)
w('sep-line.csv',t)
# 31 products in rows with repeated attribute columns per taster "Anna crisp","Anna taste"
t='Oven,'+','.join(f'{a} {at}' for a in T for at in ('crisp','taste'))+'\n'
for p in P: t+=p+','+','.join(str(m(a,p)) for a in T for _ in (0,1))+'\n'
w('person-attribute.csv',t)
# 32 two header lines with attribute on the first, taster on second, products rows
t=',Crispness,,,,,,Taste,,,,,\nOven,'+','.join(T+T)+'\n'
for p in P: t+=p+','+','.join(str(m(a,p)) for a in T+T)+'\n'
w('attribute-over-tasters.csv',t)
# 33 shuffled, price & power facts of product
t='Oven,Price,Watts,Taster,Crumb,Crust,Overall\n'
rows=[f"{p},{round(99+20*i,2)},{1400+100*i},{a},{m(a,p)},{m(a,p)},{m(a,p)}\n" for i,p in enumerate(P) for a in T]; random.shuffle(rows)
w('facts.csv',t+''.join(rows))
# 34 -1 / 99 missing code
t='Taster,Oven,Score\n'+''.join(f"{a},{p},{-1 if random.random()<.15 else m(a,p)}\n" for a in T for p in P)
w('minus-one.csv',t)

import random
random.seed(11)
def w(n,t,enc='utf-8'): open(n,'wb').write(t.encode(enc))
P=['Rowan','Hazel','Juniper','Larch']; eff={'Rowan':6,'Hazel':7,'Juniper':5,'Larch':6.2}
T=['Anna','Bela','Carlo','Dina','Emil','Fenna']
def m(p,sd=.9,lo=1,hi=9): return max(lo,min(hi,round(eff.get(p,6)+random.gauss(0,sd))))
A=['CocoaA','MilkA','Caramel','Sweetness','Acidity','Crunchy','Melting']
t='"","Panelist","Session","Form","Rank","Product",'+','.join(f'"{a}"' for a in A)+'\n'; n=0
for j in range(1,13):
  for s in (1,2):
    o=P[:]; random.shuffle(o)
    for r,p in enumerate(o):
      n+=1; t+=f'"{n}","{j}","{s}","{j*4+r}","{r+1}","{p}",'+','.join(str(m(p,lo=0,hi=10)) for a in A)+'\n'
w('many-attributes.csv',t)
t='Consumer;Frequency;Gender;Age;Homesize;Work;Income;Preference;Sweetness;Bitter;Crisp;sens1;sens2;Product\n'
for c in range(1,41):
  f=(random.randint(1,4),random.randint(1,2),random.randint(1,4),random.randint(1,3),random.randint(1,7),random.randint(1,4))
  for i,p in enumerate(P): t+=f"{c};"+';'.join(map(str,f))+f";{m(p,1.5,1,7)};{m(p,1.5,1,7)};{m(p,1.5,1,7)};{m(p,1.5,1,7)};{[1.2,-.3,2.2,-1.1][i]};{[.2,.3,-2,.1][i]};{p[:4]}E\n"
w('consumers-with-facts.csv',t)
t='"Consumer","Product","Informed.liking","Information","Gender","Age"\n'
for c in range(1,31):
  for p in range(4):
    for inf in (1,2): t+=f'"{c}","{p+1}",{m(P[p],1.5)},"{inf}","{c%2+1}",{20+c}\n'
w('information-as-circumstance.csv',t)
t='"replicate","recipe","temperature","angle","temp"\n'
for r in range(1,9):
  for rec in 'ABC':
    for te in (175,185,195): t+=f'"{r}","{rec}","{te}",{30+te//10+random.randint(-5,5)},{te}\n'
w('measured-by-nobody.csv',t)
t='"",'+','.join(f'"{i}"' for i in range(1,41))+'\n'
for p in P+['Alder','Birch']: t+=f'"{p}",'+','.join(str(m(p,1.5,0,10)) for i in range(40))+'\n'
w('consumers-in-columns.csv',t)
t='"response","rating","temp","contact","bottle","judge"\n'
for j in range(1,10):
  b=0
  for te in ('cold','warm'):
    for co in ('no','yes'):
      for k in (1,2):
        b+=1; r=random.randint(10,90); t+=f'{r},"{r//20+1}","{te}","{co}","{b}","{j}"\n'
w('two-factors-and-bottles.csv',t)
t='Judge Block Product Rating\n'
for j in range(1,13):
  for p in random.sample(P,2): t+=f'{j} {(j-1)//3+1} {p} {m(p)}\n'
w('incomplete-blocks.txt',t)
t='Oven,Origin,Price,PB,CD,OG,RW,SK,JM\n'
for i,p in enumerate(P): t+=f"{p},{'DE' if i%2 else 'IT'},{100+20*i},"+','.join(str(m(p)+8) for _ in range(6))+'\n'
w('initials.csv',t)
t='ID,'+','.join(f'{p}_{a}_{r}' for p in ('OvenA','OvenB','OvenC') for a in ('crisp','taste') for r in (1,2))+'\n'
for j in range(1,9): t+=f'{j},'+','.join(str(m('x')) for _ in range(12))+'\n'
w('three-parts.csv',t)
t=',Day 1,,,,Day 2,,,\n,Rowan,,Hazel,,Rowan,,Hazel,\nTaster,Crisp,Taste,Crisp,Taste,Crisp,Taste,Crisp,Taste\n'
for a in T: t+=a+','+','.join(str(m('x')) for _ in range(8))+'\n'
w('three-headers.csv',t)
t='Assaggiatore;Prodotto;Giorno;Croccantezza;Gusto;Note\n'
for d in (1,2):
  for a in T:
    for p in P: t+=f'{a};{p};{d};{m(p)},5;{m(p)};\n'
w('italian.csv',t)
t='Taster,Oven,Score\n'
for a in T:
  for p in P: t+=f"{a},{p},{m(p)}{random.choice(['','','','*','†',' (burnt)'])}\n"
w('footnotes.csv',t)
t='Taster;Oven;Score\n'
for a in T:
  for p in P: t+=f"{a};{p};{m(p)}{random.choice([',5','.5',',0',''])}\n"
w('mixed-decimals.csv',t)
t='Taster,Oven,Crisp,Liking\n(initials),,(0-100),(1-9)\n'
for a in T:
  for p in P: t+=f"{a},{p},{m(p)*10},{m(p)}\n"
w('units-row.csv',t)
t='Oven,Batch,T1,T2,T3,T4,T5,T6\n'
for p in P:
  for b in (1,2,3): t+=f'{p},{b},'+','.join(str(m(p)) for _ in T)+'\n'
w('batch-rows.csv',t)
t='Oven,Batch,Attribute,Anna,Bela,Carlo,Dina\n'
for p in P:
  for b in (1,2):
    for at in ('crisp','taste'): t+=f'{p},{b},{at},'+','.join(str(m(p)) for _ in range(4))+'\n'
w('batch-attr-rows.csv',t)
t='Product,Attribute,Mean,SD,n\n'
for p in P:
  for at in ('crisp','taste'): t+=f'{p},{at},{eff[p]},{.8},12\n'
w('aggregated.csv',t)
t='Taster,Oven A,Oven B,Oven C,Notes\n'
for i,a in enumerate(T): t+=f"{a},{m('x')},{m('x')},{m('x')},{['good','burnt edge on B','','ok','A was cold','C!'][i]}\n"
w('notes.csv',t)
t='Date: 12/05/2026,,,\nServer: MK,,,\n,,,\nSample,Code,Anna,Bela,Carlo,Dina,Emil\n'
for i,p in enumerate(P): t+=f"{p},{[471,832,219,605][i]},"+','.join(str(m(p)) for _ in range(5))+'\n'
t+=',,,\nMean,,6.1,6.2,6.3,6.0,5.9\n'
w('code-column.csv',t)
t='name;Rowan crisp;Rowan brown;Hazel crisp;Hazel brown;Juniper crisp;Juniper brown\n'
for a in T: t+=a+';'+';'.join(f'{m("x")}' for _ in range(6))+'\n'
t+='Mittelwert;'+';'.join('6,1' for _ in range(6))+'\n'
w('space-pairs.csv',t)
t='oven,taster_1_crisp,taster_1_taste,taster_2_crisp,taster_2_taste,taster_3_crisp,taster_3_taste\n'
for p in P: t+=p+','+','.join(str(m(p)) for _ in range(6))+'\n'
w('taster-attr.csv',t)
t='Panelist\tSample\tRep\tAroma\tFlavor\tTexture\tOverall\tWould buy (Y/N)\tStart\n'
for a in range(101,109):
  for p in ('354','729','188'):
    for r in ('A','B'): t+=f'{a}\t{p}\t{r}\t'+'\t'.join(f'{random.uniform(2,13):.1f}' for _ in range(4))+f"\t{random.choice('YN')}\t14:0{random.randint(0,9)}\n"
w('line-scale.tsv',t)
# duplicates and empties, mixed junk
t='Taster,Oven,Score\nAnna,Rowan,7\nAnna,Rowan,7\nAnna,Hazel,\nBela,Rowan,six\nBela,Hazel,8\n,Hazel,5\nCarlo,Rowan,70\nCarlo,Hazel,7\nDina,Rowan,6\nDina,Hazel,8\nEmil,Rowan,5\nEmil,Hazel,9\n'
w('junk.csv',t)
t='Taster,Score\n'+''.join(f"{a},{m('x')}\n" for a in T)
w('no-product.csv',t)
t='time,temperature\n'+''.join(f"{i},{20+i*3.1:.1f}\n" for i in range(50))
w('not-ratings.csv',t)

exec(open("../make_layouts.py").read().split("\nwrite(", 1)[0])
import random
random.seed(5)
def s(t,p): return mark(t,p)
# sheet per taster, products x attributes
xlsx("sheet-per-taster.xlsx",[(t,[["Oven","Crisp","Taste"]]+[[p,s(t,p),s(t,p)] for p in P]) for t in T])
# summary sheet + data sheet + key sheet
xlsx("with-summary-and-key.xlsx",[("Summary",[["Spring panel"],["Oven","Mean"]]+[[p,6.1] for p in P]),("Raw",[["Taster","Code","Crisp","Taste"]]+[[t,[471,832,219,605][i],s(t,p),s(t,p)] for t in T for i,p in enumerate(P)]),("Key",[["Code","Oven"]]+[[c,p] for c,p in zip([471,832,219,605],P)])])
# merged group headers in xlsx & title & blank first column/row
xlsx("offset-table.xlsx",[("Sheet1",[[],["","Tasting 3 May"],[],["","Taster",P[0],"",P[1],"",P[2],""],["","","Crisp","Taste","Crisp","Taste","Crisp","Taste"]]+[["",t]+[s(t,p) for p in P[:3] for _ in (0,1)] for t in T]+[[],["","Average"]+[6.0]*6])])
# two tables side by side
write("side-by-side.csv",[["Crispness","","","","","","Taste","","","",""],["Taster"]+P+["","Taster"]+P]+[[t]+[s(t,p) for p in P]+["",t]+[s(t,p) for p in P] for t in T])
# numbers stored with apostrophes / quotes, leading apostrophe
write("apostrophes.csv",[["Taster","Oven","Score"]]+[[t,p,"'"+str(s(t,p))] for t in T for p in P])
# full names with last names, title-case, duplicates
N=["Anna Berg","Bela Cross","Carlo Dunn","Dina Ely","Emil Ford","Fenna Gray"]
write("full-names.csv",[["Full name","Dept","What did you try?","Crispiness out of 10","Taste out of 10"]]+[[n,"ops" if i%2 else "desk",p,mark("Anna",p,0,10),mark("Anna",p,0,10)] for i,n in enumerate(N) for p in P])
# e-mail as the person
write("emails.csv",[["Timestamp","Email Address","Sample","Rate the crispness","Rate the flavour","Comments"]]+[[f"2026/05/1{i} 2:0{k}:11 PM GMT+1",f"{t.lower()}@example.org",p,s(t,p),s(t,p),""] for i,t in enumerate(T) for k,p in enumerate(P)])
# very short: 2 tasters x 2 products
write("tiny.csv",[["","Alder","Birch"],["Anna",7,5],["Bela",8,6]])
# score columns per session with session in header 'Score 1','Score 2'
write("score-columns.csv",[["Judge","Sample","Score 1","Score 2","Score 3"]]+[[t,p,s(t,p),s(t,p),s(t,p)] for t in T for p in P])
# product as multi word with comma quoted, ratings mixed int/blank
write("tasting-notes.csv",[["Taster","Oven","Appearance","Aroma","Notes"]]+[[t,p,s(t,p),s(t,p) if random.random()>.2 else "",'"nice, but dry"' if random.random()>.5 else ""] for t in T for p in P])
# letter grades
write("letter-grades.csv",[["Taster","Oven","Grade"]]+[[t,p,"ABCDE"[min(4,max(0,9-s(t,p)-1)//2)]] for t in T for p in P])
# date-mangled fractions 7/10 -> 7-Oct, 43292
write("date-mangled.csv",[["Taster","Oven","Score"]]+[[t,p,(f"{s(t,p)}-Oct" if random.random()<.5 else s(t,p))] for t in T for p in P])
# 1-5 with labels "4 - Good"
L={1:"Bad",2:"Poor",3:"Fair",4:"Good",5:"Excellent"}
write("number-and-word.csv",[["Taster","Oven","Overall"]]+[[t,p,(lambda v:f"{v} - {L[v]}")(max(1,min(5,s(t,p)//2)))] for t in T for p in P])
# words good/fair/poor
write("quality-words.csv",[["Taster","Oven","Overall"]]+[[t,p,L[max(1,min(5,s(t,p)//2))]] for t in T for p in P])
# yes/no
write("yes-no.csv",[["Taster","Oven","Would serve again?"]]+[[t,p,"yes" if s(t,p)>5 else "no"] for t in T for p in P])
# panel with reps as repeated columns same header
write("repeated-headers.csv",[["Taster"]+P+P]+[[t]+[s(t,p) for p in P+P] for t in T])
# HTML copy with nbsp and thin spaces, plus unicode minus
quiet("nbsp.csv","Taster;Oven;Off-flavour (−3…+3)\n"+"".join(f"{t}\u00a0;{p};{random.choice(['−2','−1','0','+1','+2'])}\n" for t in T for p in P))
# lots of trailing commas & 'Unnamed: 0'
write("pandas.csv",[["Unnamed: 0","judge","product","score","Unnamed: 4"]]+[[i,t,p,s(t,p),""] for i,(t,p) in enumerate((t,p) for t in T for p in P)])
# percent liking
write("session-in-cell.csv",[["Session","Mon","","","","Tue","","",""],["Taster"]+P+P]+[[t]+[s(t,p) for p in P+P] for t in T])

import random
random.seed(3)
T=['Anna','Bela','Carlo','Dina','Emil','Fenna']
r=lambda:random.randint(3,9)
def w(n,t): open(n,'w').write(t)
w('blank-corners.csv',',Alder,,Birch,,Cedar,\n,crisp,taste,crisp,taste,crisp,taste\n'+''.join(a+','+','.join(str(r()) for _ in range(6))+'\n' for a in T))
w('blank-corner-short.csv',',Alder,,Birch\n,crisp,taste,crisp,taste\n'+''.join(a+','+','.join(str(r()) for _ in range(4))+'\n' for a in T))
w('attribute-over-products.csv','Judge;Crispness;;;Juiciness;;\n;Alder;Birch;Cedar;Alder;Birch;Cedar\n'+''.join(a+';'+';'.join(f'{r()},5' for _ in range(6))+'\n' for a in T))
w('rows-of-attributes.csv','Oven,Attribute,'+','.join(T)+'\n'+''.join(f"{p if k==0 else ''},{at},"+','.join(str(r()) for _ in T)+'\n' for p in ('Alder','Birch','Cedar') for k,at in enumerate(('Crisp','Brown','Liking'))))
w('panel-no-names.csv','Sample,Crisp,Taste\n'+''.join(f'{p},{r()},{r()}\n' for _ in range(8) for p in ('Alder','Birch','Cedar')))
w('codes-per-session.csv','Session;Panellist;Sample;Code;Crispness /10\n'+''.join(f'{s};{a};{p};{100*s+k*7+31};{r()}\n' for s in (1,2) for a in T for k,p in enumerate(('Alder','Birch'))))
w('initials-long.csv','Init,Oven,Run,Crisp,Colour,Comment\n'+''.join(f'{a[:1]}{a[-1].upper()},{p},{b},{r()},{r()},{"" if random.random()<.7 else "bit dry"}\n' for b in (1,2) for a in T for p in ('Alder','Birch','Cedar')))
