#!/usr/bin/env python3
"""Writes the layouts of the trace corpus with what must be read from each. All data are invented."""
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

write("elapsed-seconds.csv", "Time (s),T1 (°C),T2 (°C)\n" + "".join(f"{i*5},{A[i]},{B[i]}\n" for i in N), channels=AB, time="elapsed")
write("semicolon-decimal-comma.csv", "Datum;Uhrzeit;T1 [°C];T2 [°C]\n" + "".join(
    f"{stamp(i,'%d.%m.%Y')};{stamp(i,'%H:%M:%S')};{str(A[i]).replace('.',',')};{str(B[i]).replace('.',',')}\n" for i in N),
    encoding="cp1252", newline="\r\n", start=START, channels=AB, time="date-and-time")
write("tab-iso.txt", "timestamp\ttemp_c\tpower_w\n" + "".join(f"{stamp(i,'%Y-%m-%dT%H:%M:%S')}\t{A[i]}\t{1400 if i<20 else 0}\n" for i in N),
    start=START, channels=[temp("temp_c", A), ch("power_w", "power", "W", "measured", 1400, 0)], time="date-and-time")
write("iso-zone.csv", "time,temperature\n" + "".join(f"{stamp(i,'%Y-%m-%dT%H:%M:%S')}.500+01:00,{A[i]}\n" for i in N),
    start="2026-03-14T08:30:00.500", channels=[temp("temperature", A)], time="date-and-time")
write("us-am-pm-fahrenheit.csv", "Date,Time,Temp F\n" + "".join(f"3/14/2026,{(t0+datetime.timedelta(seconds=i*5, hours=3)).strftime('%I:%M:%S %p').lstrip('0')},{F(A[i])}\n" for i in N),
    start="2026-03-14T12:30:00", channels=[temp("Temp", [C(F(21.0)), C(F(A[-1]))])], time="date-and-time")
write("blank-runs.txt", "  t(s)    T1(C)    T2(C)\n" + "".join(f"{i*5:6d} {A[i]:8.1f} {B[i]:8.1f}\n" for i in N), form="blanks", channels=AB, time="elapsed")
write("pipes.txt", "| time | centre | ambient |\n|------|--------|---------|\n" + "".join(f"| {stamp(i,'%H:%M:%S')} | {A[i]} | 21.3 |\n" for i in N),
    channels=[temp("centre", A, "centre"), ch("ambient", "temperature", "°C", "ambient", 21.3, 21.3)], time="time-of-day")
write("utf16-mark.csv", "\ufeffTime,Oven (°C)\n" + "".join(f"00:{i*5//60:02d}:{i*5%60:02d},{A[i]}\n" for i in N), encoding="utf-16-le", newline="\r\n",
    channels=[temp("Oven", A, "centre")], time="elapsed")
write("utf16-no-mark.csv", "Time,Oven (C)\n" + "".join(f"00:{i*5//60:02d}:{i*5%60:02d},{A[i]}\n" for i in N), encoding="utf-16-le",
    channels=[temp("Oven", A, "centre")], time="elapsed")
write("utf8-mark-quoted.csv", '\ufeff"No.","Date/Time","Channel 1 (°C)"\n' + "".join(f'"{i+1}","{stamp(i,"%Y/%m/%d %H:%M:%S")}","{A[i]}"\n' for i in N),
    start=START, channels=[temp("Channel 1", A)], time="date-and-time")
write("preamble.csv", "Logger model: Invented 4\nSerial number: 000123\nSample interval: 5 s\nStarted: 2026-03-14 09:30:00\n\nScan,Time,CH1,CH2\n,,degC,degC\n" +
    "".join(f"{i+1},{stamp(i,'%H:%M:%S')},{A[i]},{B[i]}\n" for i in N), start=START, channels=[temp("CH1", A), temp("CH2", B)], time="time-of-day")
write("no-time-interval.csv", "Device;Invented\nInterval;5 s\nTemperature unit;°C\n\nNo;T1;T2\n" + "".join(f"{i+1};{A[i]};{B[i]}\n" for i in N), channels=AB, time="interval")
write("no-time.csv", "T1,T2\n" + "".join(f"{A[i]},{B[i]}\n" for i in N), channels=AB, step=1, questions=["interval"], time="none")
write("two-row-header.csv", "Time,Left rear,,Centre,\ns,Temp °C,RH %,Temp °C,RH %\n" + "".join(f"{i*5},{A[i]},{40},{B[i]},{41}\n" for i in N),
    channels=[temp("Left rear Temp", A), ch("Left rear RH", "ratio", "%", "measured", 40, 40), temp("Centre Temp", B, "centre"), ch("Centre RH", "ratio", "%", "measured", 41, 41)], time="elapsed")
write("millis-serial.csv", "millis,temp\n" + "".join(f"{1000+i*5003},{A[i]}\n" for i in N), step=5.003, channels=[temp("temp", A)], time="elapsed")
write("millis-unnamed.csv", "".join(f"{1203+i*500},{A[i]},{B[i]}\n" for i in N), step=0.5, channels=[temp("column 2", A), temp("column 3", B)], time="counter")
write("minutes-by-step.csv", "Time,Temp\n" + "".join(f"{i*5/60:.6f},{A[i]}\n" for i in N), channels=[temp("Temp", A)], time="counter")
write("minutes-header.csv", "Time [min],Temp [°C]\n" + "".join(f"{i*5/60:.4f},{A[i]}\n" for i in N), step=4.998, channels=[temp("Temp", A)], time="elapsed")
write("epoch-seconds.csv", "ts,temp\n" + "".join(f"{int(t0.replace(tzinfo=datetime.timezone.utc).timestamp())+i*5},{A[i]}\n" for i in N), start=START, channels=[temp("temp", A)], time="epoch")
write("epoch-millis.jsonl", "".join(json.dumps({"ts": int(t0.replace(tzinfo=datetime.timezone.utc).timestamp()*1000)+i*5000, "probes": {"centre": A[i], "wall": B[i]}})+"\n" for i in N),
    form="json", start=START, channels=[temp("probes.centre", A, "centre"), temp("probes.wall", B)], time="epoch")
write("json-array.json", json.dumps([{"time": stamp(i,'%Y-%m-%d %H:%M:%S'), "temp_f": F(A[i]), "heater": bool(i < 20)} for i in N], indent=1),
    form="json", start=START, channels=[temp("temp_f", [C(F(21.0)), C(F(A[-1]))]), ch("heater", "ratio", "%", "switch", 100, 0)], time="date-and-time")
write("spreadsheet-days.csv", "Date,Oven °C\n" + "".join(f"{46095.395833333336+i*5/86400:.9f},{A[i]}\n" for i in N), start=START, channels=[temp("Oven", A, "centre")], time="epoch")
write("key-value.log", "".join(f"t={i*5} T1={A[i]} T2={B[i]}\n" for i in N), form="key-value", channels=AB, time="counter")
write("key-value-stamped.log", "boot ok\n" + "".join(f"[{stamp(i,'%H:%M:%S')}.250] INFO T1: {A[i]}C, T2: {B[i]}C\n" for i in N), form="key-value", channels=AB, time="time-of-day")
write("colon-values.txt", "".join(f"T1:{A[i]} T2:{B[i]}\n" for i in N), form="key-value", step=1, channels=AB, questions=["interval"], time="none")
write("one-value-per-line.log", "".join(f"Time: {i*5} s\nCentre: {A[i]} C\nPower: {1400 if i<20 else 0} W\n---\n" for i in N), form="key-value",
    channels=[temp("Centre", A, "centre"), ch("Power", "power", "W", "measured", 1400, 0)], time="elapsed")
write("controller-slash.log", "start\n" + "".join(f"{stamp(i,'%H:%M:%S')} ok T:{A[i]} /200.0 B:{B[i]} /0.0 @:{127 if i<20 else 30}\n" for i in N), form="key-value",
    channels=[temp("T", A), ch("T set-point", "temperature", "°C", "set-point", 200, 200), temp("B", B), ch("B set-point", "temperature", "°C", "set-point", 0, 0),
              ch("@", "unknown", "1", "measured", 127, 30)], time="time-of-day")
write("controller-columns.csv", "time,PV,SV,output,stage\n" + "".join(f"{stamp(i,'%H:%M:%S')},{A[i]},200,{100 if i<20 else 35},{'preheat' if i<20 else 'hold'}\n" for i in N),
    channels=[temp("PV", A, "centre"), ch("SV", "temperature", "°C", "set-point", 200, 200), ch("output", "ratio", "%", "duty", 100, 35), ch("stage", "status", "1", "status", 0, 1)], time="time-of-day")
write("arrow-stamps.txt", "".join(f"{stamp(i,'%H:%M:%S')}.120 -> {A[i]},{B[i]}\n" for i in N), channels=[temp("column 2", A), temp("column 3", B)], time="time-of-day")
write("unit-behind.csv", "Time,T1,T2,P\n" + "".join(f"{stamp(i,'%H:%M:%S')},{F(A[i])}°F,{F(B[i])}°F,{1.4 if i<20 else 0} kW\n" for i in N),
    channels=[temp("T1", [C(F(21.0)), C(F(A[-1]))]), temp("T2", [C(F(20.5)), C(F(B[-1]))]), ch("P", "power", "W", "measured", 1400, 0)], time="time-of-day")
write("unit-columns.csv", "No,Date,Time,T1,Unit,T2,Unit\n" + "".join(f"{i+1},{stamp(i,'%Y-%m-%d')},{stamp(i,'%H:%M:%S')},{A[i]},C,{B[i]},C\n" for i in N), start=START, channels=AB, time="date-and-time")
write("day-decided.csv", "when,T1\n" + "".join(f"{stamp(i,'%d/%m/%Y %H:%M:%S')},{A[i]}\n" for i in N), start=START, channels=[temp("T1", A)], time="date-and-time")
write("day-open.csv", "when,T1\n" + "".join(f"01/02/2026 {stamp(i,'%H:%M:%S')},{A[i]}\n" for i in N), start="2026-02-01T09:30:00", questions=["date-order"], channels=[temp("T1", A)], time="date-and-time")
m0 = datetime.datetime(2026, 3, 14, 23, 59, 0)
write("midnight.csv", "clock;T1\n" + "".join(f"{(m0+datetime.timedelta(seconds=5*i)).strftime('%H:%M:%S')};{A[i]}\n" for i in N), channels=[temp("T1", A)], time="time-of-day")
d0 = datetime.datetime(2026, 10, 25, 2, 59, 0)
write("clock-set-back.csv", "time,T1\n" + "".join(f"{(d0+datetime.timedelta(seconds=5*i)-(datetime.timedelta(hours=1) if i>=12 else datetime.timedelta())).strftime('%Y-%m-%d %H:%M:%S')},{A[i]}\n" for i in N),
    start="2026-10-25T02:59:00", channels=[temp("T1", A)], time="date-and-time")
write("newest-first.csv", "Timestamp,T1\n" + "".join(f"{stamp(i,'%Y-%m-%d %H:%M:%S')},{A[i]}\n" for i in reversed(N)), start=START, channels=[temp("T1", A)], time="date-and-time")
write("out-of-order.csv", "s,T1\n" + "".join(f"{i*5},{A[i]}\n" for i in [0,1,2,4,3]+list(range(5,24))), channels=[temp("T1", A)], time="elapsed")
write("restart.csv", "time_s,T1\n" + "".join(f"{i*5},{A[i]}\n" for i in range(10)) + "time_s,T1\n" + "".join(f"{i*5},{A[i]}\n" for i in range(24)),
    rows=34, segments=2, skipped=1, channels=[temp("T1", A)], time="elapsed")
write("noise-between.log", "connecting...\n\nSeconds,T1,T2\n" + "".join(f"{i*5},{A[i]},{B[i]}\n" + ("wifi: lost, retry\n" if i % 7 == 3 else "") for i in N), channels=AB, skipped=3, time="elapsed")
write("comments.csv", "# invented record\n# time_s, T1, T2\n" + "".join(("# door\n" if i == 9 else "") + f"{i*5}, {A[i]}, {B[i]}\n" for i in N), channels=AB, skipped=1, time="elapsed")
write("trailing-delimiter.csv", "Time(s),T1(C),T2(C),\n" + "".join(f"{i*5},{A[i]},{B[i]},\n" for i in N), channels=AB, time="elapsed")
write("open-inputs.csv", "Time (s),T1 (C),T2 (C),T3 (C),T4 (C)\n" + "".join(f"{i*5},{-127.0 if i in (5,6,15) else A[i]},{1372},{'OL'},{85.0 if i == 0 else B[i]}\n" for i in N),
    channels=[temp("T1", A), ch("T2", "temperature", "°C", "measured", None, None), ch("T3", "temperature", "°C", "measured", None, None), ch("T4", "temperature", "°C", "measured", B[1], B[-1])], time="elapsed")
write("sensor-per-row.csv", "time,sensor,value\n" + "".join(f"{stamp(i,'%Y-%m-%d %H:%M:%S')},rack-{s},{v[i]}\n" for i in N for s, v in (("left", A), ("right", B))),
    start=START, channels=[temp("rack-left", A), temp("rack-right", B)], time="date-and-time")
write("repeated-stamps.csv", "time,T1\n" + "".join(f"{stamp(i//4,'%H:%M:%S',1)},{curve(48)[i]}\n" for i in range(48)), rows=48, step=0.25, channels=[temp("T1", curve(48))], time="time-of-day")
write("long-stamps.log", "".join(f"{stamp(i,'%a %b %d %H:%M:%S')} UTC 2026, {A[i]}\n" for i in N), start=START, channels=[temp("column 2", A)], time="date-and-time")
write("mac-line-ends.csv", "Time (s),T1 (C)\n" + "".join(f"{i*5},{A[i]}\n" for i in N), newline="\r", channels=[temp("T1", A)], time="elapsed")
write("kelvin.csv", "t/s,T/K\n" + "".join(f"{i*5},{A[i]+273.15:.2f}\n" for i in N), channels=[temp("T", A)], time="elapsed")
write("mains.csv", "Time,Volts,Amps,Watts,kWh\n" + "".join(f"{stamp(i,'%H:%M:%S')},{229.5},{6.1},{1400},{i*0.002:.3f}\n" for i in N),
    channels=[ch("Volts", "voltage", "V", "measured", 229.5, 229.5), ch("Amps", "current", "A", "measured", 6.1, 6.1), ch("Watts", "power", "W", "measured", 1400, 1400), ch("kWh", "energy", "kWh", "measured", 0, 0.046)], time="time-of-day")
write("fahrenheit-unsaid.csv", "time_s,T1,set\n" + "".join(f"{i*5},{F(A[i]*1.3-6)},425\n" for i in N), channels=[temp("T1", [C(F(21.3)), C(F(A[-1]*1.3-6))]), ch("set", "temperature", "°C", "set-point", 218.333, 218.333)], time="elapsed")
write("truncated.csv", ("Time (s),T1 (C),T2 (C)\n" + "".join(f"{i*5},{A[i]},{B[i]}\n" for i in N))[:-7], rows=23, channels=[temp("T1", A[:-1]), temp("T2", B[:-1])], time="elapsed")
write("nul-tail.csv", ("Time (s),T1 (C)\n" + "".join(f"{i*5},{A[i]}\n" for i in N)).encode() + b"\0" * 300, channels=[temp("T1", A)], time="elapsed")
write("date-once.csv", "Date,Time,T1 (°C)\n" + "".join(f"{stamp(i,'%d-%b-%Y') if i == 0 else ''},{stamp(i,'%H:%M:%S')},{A[i]}\n" for i in N), start=START, channels=[temp("T1", A)], time="date-and-time")
write("day-fraction-clock.csv", "Elapsed,T1\n" + "".join(f"0 days 00:{i*5//60:02d}:{i*5%60:02d},{A[i]}\n" for i in N), channels=[temp("T1", A)], time="elapsed")
write("ideograph.csv", "时间,温度(℃)\n" + "".join(f"{stamp(i,'%Y')}年3月14日 {stamp(i,'%H:%M:%S')},{A[i]}\n" for i in N), start=START, channels=[temp("温度", A)], time="date-and-time")
write("serials-in-header.csv", '"Plot Title: invented"\n"#","Date Time, GMT+00:00","Temp, °C (LGR S/N: 1, SEN S/N: 2)","Stopped"\n' + "".join(f'{i+1},{stamp(i,"%m/%d/%y %I:%M:%S %p")},{A[i]},\n' for i in N),
    start=START, channels=[temp("Temp", A)], time="date-and-time")

U = lambda text, code: text.encode(code)
write("units-under-tabs.txt", "\ufeff日時\t温度CH1\t電力\n\t℃\tW\n" + "".join(f"{stamp(i,'%Y/%m/%d %H:%M:%S')}\t{A[i]}\t{1400 if i<20 else 0}\n" for i in N), encoding="utf-16-le", newline="\r\n",
    start=START, channels=[temp("温度CH1", A), ch("電力", "power", "W", "measured", 1400, 0)], time="date-and-time")
write("shift-jis.csv", "日時,温度CH1\n,℃\n" + "".join(f"{stamp(i,'%Y/%m/%d %H:%M:%S')},{A[i]}\n" for i in N), encoding="shift_jis", start=START, channels=[temp("温度CH1", A)], time="date-and-time")
write("gbk.csv", "时间,温度(℃),设定\n" + "".join(f"{stamp(i,'%Y-%m-%d %H:%M:%S')},{A[i]},200\n" for i in N), encoding="gbk", start=START,
    channels=[temp("温度", A), ch("设定", "temperature", "°C", "set-point", 200, 200)], time="date-and-time")
write("nested.jsonl", "".join(json.dumps({"ts": stamp(i, "%Y-%m-%dT%H:%M:%SZ"), "temps": {"centre": A[i], "ambient": 21.3}, "power": {"w": 1400.5, "v": 229.5}}) + "\n" for i in N), form="json", start=START,
    channels=[temp("temps.centre", A, "centre"), ch("temps.ambient", "temperature", "°C", "ambient", 21.3, 21.3), ch("power.w", "power", "W", "measured", 1400.5, 1400.5), ch("power.v", "voltage", "V", "measured", 229.5, 229.5)], time="date-and-time")
write("named-columns.json", json.dumps({"columns": ["time_s", "centre", "rack"], "data": [[i * 5, A[i], B[i]] for i in N]}), form="json", channels=[temp("centre", A, "centre"), temp("rack", B)], time="elapsed")
write("series.json", json.dumps([{"name": n, "unit": "°C", "points": [[1773480600000 + 5000 * i, v[i]] for i in N]} for n, v in (("centre", A), ("rack", B))]), form="json", start=START,
    channels=[temp("centre", A, "centre"), temp("rack", B)], time="epoch")
write("blocks-of-sensors.csv", "#datatype,string,long,dateTime,double,string\n,result,table,_time,_value,_field\n" + "".join(f",,{k},{stamp(i,'%Y-%m-%dT%H:%M:%SZ')},{v[i]},{n}\n" for k, (n, v) in enumerate((("centre", A), ("rack", B))) for i in N),
    start=START, channels=[temp("centre", A, "centre"), temp("rack", B)], time="date-and-time")
write("one-sensor-history.csv", "entity_id,state,last_changed\n" + "".join(f"sensor.oven_probe,{'unavailable' if i == 9 else A[i]},{stamp(i,'%Y-%m-%dT%H:%M:%S')}.250Z\n" for i in N), start="2026-03-14T09:30:00.250",
    channels=[temp("sensor.oven_probe", A, "centre")], time="date-and-time")
write("topics.txt", "".join(f"{stamp(i,'%Y-%m-%dT%H:%M:%S')} kitchen/oven/centre {A[i]}\n{stamp(i,'%Y-%m-%dT%H:%M:%S')} kitchen/oven/power 1400\n" for i in N), form="blanks", start=START,
    channels=[temp("kitchen/oven/centre", A, "centre"), ch("kitchen/oven/power", "power", "W", "measured", 1400, 1400)], time="date-and-time")
write("system-log.log", "".join(f"Mar 14 {stamp(i,'%H:%M:%S')} bench logger[812]: probe1={A[i]} probe2={B[i]}\n" for i in N), form="key-value", channels=[temp("probe1", A), temp("probe2", B)], time="date-and-time")
write("row-numbers-short-year.csv", "SET,1\nPlace,Date,Time,T1,Unit,T2,Unit,T1-T2,Unit\n" + "".join(f"{i+1},26-03-14,{stamp(i,'%H:%M:%S')},{A[i]},C,{B[i]},C,{A[i]-B[i]:.1f},C\n" for i in N), newline="\r\n", start=START, questions=["date-order"],
    channels=AB + [ch("T1-T2", "temperature-difference", "K", "difference", round(A[0] - B[0], 1), round(A[-1] - B[-1], 1))], time="date-and-time")
write("doubled-rows.csv", "Time,T1\n" + "".join(f"{stamp(i,'%Y-%m-%d %H:%M:%S')},{A[i]}\n" * 2 for i in N), start=START, channels=[temp("T1", A)], time="date-and-time")
write("open-word.csv", "t_s,T1,T2\n" + "".join(f"{i*5},OPEN,{A[i]}\n" for i in N), channels=[ch("T1", "temperature", "°C", "measured", None, None), temp("T2", A)], time="elapsed")
write("tenths.csv", "sec;PV(0.1C);SV(0.1C)\n" + "".join(f"{i*5};{round(A[i]*10)};2000\n" for i in N), channels=[temp("PV", A, "centre"), ch("SV", "temperature", "°C", "set-point", 200, 200)], time="elapsed")
write("tenths-unsaid.csv", "sec;PV;SV\n" + "".join(f"{i*5};{round(A[i]*10)};2000\n" for i in N), questions=["temperature-unit"], channels=[temp("PV", A, "centre"), ch("SV", "temperature", "°C", "set-point", 200, 200)], time="elapsed")
write("remark-column.lvm", "Separator\tTab\nDate\t2026/03/14\nTime\t09:30:00\nX_Dimension\tTime\tTime\nY_Unit_Label\tDeg C\tDeg C\nDelta_X\t5.0\t5.0\n***End_of_Header***\nX_Value\tCentre\tWall\tComment\n" + "".join(f"{i*5:.6f}\t{A[i]:.6f}\t{B[i]:.6f}\n" for i in N),
    start=START, channels=[temp("Centre", A, "centre"), temp("Wall", B)], time="counter")
write("roast.csv", "Session: invented roast\nElapsed (m:ss),Ambient °F,Probe 1 °F,Probe 1 Target °F,Alarm\n" + "".join(f"{i*5//60}:{i*5%60:02d},{F(A[i])},{40+i*5},165,No\n" for i in N),
    channels=[temp("Ambient", [C(F(21.0)), C(F(A[-1]))], "centre"), temp("Probe 1", [C(40), C(40 + 23 * 5)], "core"), ch("Probe 1 Target", "temperature", "°C", "set-point", C(165), C(165)), ch("Alarm", "status", "1", "status", 0, 0)], time="elapsed")
write("unit-in-preamble.csv", "Model: invented\nUnit: Fahrenheit\nRate: 5 sec\n\n#,CH1,CH2\n" + "".join(f"{i+1},{F(A[i])},{F(B[i])}\n" for i in N),
    channels=[temp("CH1", [C(F(21.0)), C(F(A[-1]))]), temp("CH2", [C(F(20.5)), C(F(B[-1]))])], time="interval")

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
