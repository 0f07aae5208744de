#!/usr/bin/env python3
"""Writes the layouts of the trace corpus with what must be read from each. All data are invented."""
from layout_kit import *

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

# Shapes of loggers, meters, databases, terminals and home automation; names and data are invented.

write("longer-first-row.txt", lines_of("Oven,Time,Celsius(°C),Humidity(%rh),Serial Number\n", lambda i: f"{i+1},{stamp(i,'%Y-%m-%d %H:%M:%S')},{A[i]},{H[i]}" + (",000123" if i == 0 else "")), encoding="cp1252", channels=[temp("Celsius", A), humid("Humidity")], **DT)
write("names-in-two-lines.txt", lines_of("\t\tTemp\tHi\tOut\tWind\nDate\tTime\tOut\tTemp\tHum\tSpeed\n", lambda i: f"{stamp(i,'%m/%d/%y')}\t{stamp(i,'%H:%M:%S')}\t{A[i]}\t{B[i]}\t{H[i]}\t3.0"),
    channels=[temp("Temp Out", A), temp("Hi Temp", B), humid("Out Hum"), ch("Wind Speed", "unknown", "1", "measured", 3, 3)], **DT)
write("feed-newest-first.csv", "id,value,feed_id,feed_key,created_at,lat,lon\n" + "".join(f"0F{i:04X},{A[i]},28121,rack,{stamp(i,'%Y-%m-%d %H:%M:%S')} UTC,,\n" for i in reversed(N)), channels=[temp("rack", A)], **DT)
uneven = sorted([(i * 5, "sensor.oven_temperature", A[i]) for i in N] + [(i * 5 + 2.125, "sensor.plug_power", P[i]) for i in N if i % 3 == 0])
write("sensors-when-they-like.csv", "entity_id,state,last_changed\n" + "".join(f"{n},{v},{(t0+datetime.timedelta(seconds=s)).isoformat(timespec='milliseconds')}Z\n" for s, n, v in uneven), rows=32, step=2.875,
    channels=[temp("sensor.oven_temperature", A, "centre"), ch("sensor.plug_power", "power", "W", "measured", 1400, 0)], **DT)
write("bounds-of-a-query.csv", "#group,false,false,true,true,false,false,true,true\n#datatype,string,long,dateTime:RFC3339,dateTime:RFC3339,dateTime:RFC3339,double,string,string\n#default,mean,,,,,,,\n,result,table,_start,_stop,_time,_value,_field,_measurement\n"
    + "".join(f",,{k},2026-03-14T09:00:00Z,2026-03-14T12:00:00Z,{stamp(i,'%Y-%m-%dT%H:%M:%SZ')},{v[i]},{n},oven\n" for k, (n, v) in enumerate((("temperature", A), ("power", P))) for i in N), channels=[temp("temperature", A), power()], **DT)
write("line-with-nanoseconds.txt", lines_of("", lambda i: f"environment,host=bench,sensor=oven temperature={A[i]},humidity={H[i]},power={P[i]}i {epoch(i)}000000000"), form="key-value", start=START, time="epoch",
    channels=[temp("oven temperature", A, "centre"), humid("humidity"), power()])
write("points-with-nanoseconds.txt", lines_of("", lambda i: f"temp,probe=centre value={A[i]} {epoch(i)}000000000\ntemp,probe=left value={B[i]} {epoch(i)}000000000"), form="key-value", start=START, time="epoch", channels=[temp("centre value", A, "centre"), temp("left value", B)])
write("units-of-sensors.csv", "time,sensor,value,unit\n" + "".join(f"{stamp(i,'%Y-%m-%dT%H:%M:%S')},{n},{v},{u}\n" for i in N for n, v, u in (("a", F(A[i]), "°F"), ("b", P[i], "W"))), channels=[temp("a", [C(F(A[0])), C(F(A[-1]))]), power("b")], **DT)
write("seconds-since-start.log", lines_of("", lambda i: f"[{i*5+12.25:12.6f}] temp {A[i]} degC"), form="sentences", channels=[temp("temp", A)], time="elapsed")
write("bracketed-values.log", lines_of("", lambda i: f"[{i*5+12.25:12.6f}] oven: T={A[i]} setpoint=200 duty={40 if P[i] else 0}"), form="key-value", time="elapsed",
    channels=[temp("T", A), ch("setpoint", "temperature", "°C", "set-point", 200, 200), ch("duty", "ratio", "%", "duty", 40, 0)])
write("sentences.log", lines_of("", lambda i: f"[{stamp(i,'%H:%M:%S')}][D][sensor:094]: 'Oven Temperature': Sending state {A[i]:.5f} °C with 1 decimals of accuracy\n[{stamp(i,'%H:%M:%S')}][D][sensor:094]: 'Plug Power': Sending state {P[i]:.5f} W with 0 decimals of accuracy"), form="sentences",
    time="time-of-day", channels=[temp("Oven Temperature", A, "centre"), power("Plug Power")])
write("dictionaries.txt", lines_of("", lambda i: str({"time": stamp(i, "%Y-%m-%d %H:%M:%S"), "tc1": A[i], "tc2": float("nan") if i == 5 else B[i], "err": None})), form="json", channels=[temp("tc1", A), temp("tc2", B)], **DT)
write("tuples.txt", lines_of("", lambda i: f"('{stamp(i,'%Y-%m-%d %H:%M:%S')}', {A[i]}, {B[i]})"), channels=[temp("column 2", A), temp("column 3", B)], **DT)
write("epoch-colon.txt", lines_of("                 temp            power\n\n", lambda i: f"{epoch(i)}: {A[i]:.10e} {'-nan' if i == 23 else f'{P[i]:.10e}'}"), form="blanks", start=START, time="epoch", channels=[temp("temp", A), power()])
write("terminal-colours.log", lines_of("W (210) wifi: lost\n", lambda i: f"\x1b[0;32mI ({i*5000+312}) oven: temp={A[i]:.1f} duty={P[i]//14}\x1b[0m"), form="key-value", time="elapsed", skipped=1, channels=[temp("temp", A), ch("duty", "ratio", "%", "duty", 100, 0)])
write("single-quotes.csv", lines_of("'Time','Oven (C)','Power (W)'\n", lambda i: f"'{stamp(i,'%H:%M:%S')}','{A[i]}','{P[i]}'"), time="time-of-day", channels=[temp("Oven", A, "centre"), power("Power")])
write("signs-and-blanks.csv", lines_of("Model,invented\nSampling interval,5s\nData\nNumber,Date&Time,ms,CH1,CH2,Alarm\nNO.,Time,ms,degC,degC,A1234\n", lambda i: f"{i+1},{stamp(i,'%Y/%m/%d %H:%M:%S')},0,+   {A[i]:.1f},BURNOUT,LLLL"), channels=[temp("CH1", A), ch("CH2", "temperature", "°C", "measured", None, None), ch("Alarm A1234", "status", "1", "status", 0, 0)], **DT)
write("short-date-tabs.txt", lines_of("Nr.\tDatum/Zeit\tWert\tEinheit\n", lambda i: f"{i+1}\t{stamp(i,'%d.%m.%y %H:%M:%S')}\t{comma(A[i])}\t°C"), encoding="cp1252", channels=[temp("Wert", A)], **DT)
write("tags-and-values.csv", '"VarName";"TimeString";"VarValue";"Validity"\n' + "".join(f'"{n}";"{stamp(i,"%d.%m.%Y %H:%M:%S")}";{comma(v)};1\n' for i in N for n, v in (("Oven_PV", A[i]), ("Oven_SP", 200))), channels=[temp("Oven_PV", A, "centre"), ch("Oven_SP", "temperature", "°C", "set-point", 200, 200)], **DT)
write("time-beside-each.txt", lines_of("File\tinvented\nStartTime\t14.03.2026 09:30:00\n\nName\tPV\tName\tSP\n", lambda i: f"{i*5000}\t{A[i]}\t{i*5000}\t200"), start=START, time="counter", channels=[temp("PV", A, "centre"), ch("SP", "temperature", "°C", "set-point", 200, 200)])
write("meter-letters.csv", lines_of("Store No.,Date,Time,Millisecond,U-1,I-1,P-1,LAMBDA-1,WP-1\n", lambda i: f"{i+1},{stamp(i,'%Y/%m/%d')},{stamp(i,'%H:%M:%S')},250,2.3E+02,{P[i]/230:.4E},{P[i]:.4E},{0.998 if P[i] else 'NAN'},{i*1.5:.2E}"), start=START + ".250", time="date-and-time",
    channels=[ch("U-1", "voltage", "V", "measured", 230, 230), ch("I-1", "current", "A", "measured", 6.087, 0), power("P-1"), ch("LAMBDA-1", "ratio", "%", "measured", 99.8, 99.8), ch("WP-1", "energy", "kWh", "measured", 0, 0.035)])
write("units-with-underscore.txt", lines_of("Place\tDate\tTime\tValue\tUnit\n", lambda i: f"1\t{stamp(i,'%Y/%m/%d')}\t{stamp(i,'%H:%M:%S')}\t{A[i]}\tDegree_C"), channels=[ch("Place", "unknown", "1", "measured", 1, 1), temp("Value", A)], **DT)
write("both-scales.txt", lines_of("", lambda i: f"C = {A[i]:.1f} F = {F(A[i]):.1f}"), form="key-value", step=1, questions=["interval"], time="none", channels=[temp("°C", A), temp("°F", [C(F(A[0])), C(F(A[-1]))])])
write("parts-of-dates.csv", lines_of("Year,Month,Day,Hour,Minute,Second,Temp_C,RH\n", lambda i: stamp(i, "%Y,%m,%d,%H,%M,%S") + f",{A[i]},{H[i]}"), channels=[temp("Temp_C", A), humid("RH")], **DT)
write("day-of-year.csv", lines_of("Year,DOY,Time,T_air_C\n", lambda i: f"2026,73,{(t0+datetime.timedelta(minutes=i)).strftime('%H%M').lstrip('0')},{A[i]}"), step=60, channels=[temp("T_air_C", A)], **DT)
write("digits-to-the-minute.csv", lines_of("stn;time;tre;ure\n\nABC;yyyymmddhhmm;°C;%\n", lambda i: f"ABC;{stamp(i,'%Y%m%d%H%M',60)};{A[i]};{H[i]}"), step=60, channels=[ch("stn", "status", "1", "status", 0, 0), temp("tre", A), humid("ure")], **DT)
write("six-digit-dates.csv", lines_of("Date,Time,Temp\n", lambda i: f"{stamp(i,'%d%m%y')},{stamp(i,'%H%M%S').lstrip('0')},{A[i]}"), channels=[temp("Temp", A)], **DT)
write("spaced-slashes.txt", lines_of("", lambda i: f"{stamp(i,'%Y-%m-%d %H:%M:%S')} / {A[i]} / {B[i]}"), channels=[temp("column 2", A), temp("column 3", B)], **DT)
write("history.json", json.dumps([[{"entity_id": "sensor.rack", "state": str(A[i]), "attributes": {"unit_of_measurement": "°C"}, "last_changed": stamp(i, "%Y-%m-%dT%H:%M:%S+00:00")} for i in N]], ensure_ascii=False), form="json", channels=[temp("sensor.rack", A), ch("unit", "status", "1", "status", 0, 0)], **DT)
write("series-by-name.json", json.dumps({n: [[1000 * epoch(i), v[i]] for i in N] for n, v in (("centre", A), ("left", B))}), form="json", start=START, time="epoch", channels=[temp("centre", A, "centre"), temp("left", B)])
write("fields-by-number.json", json.dumps({"channel": {"id": 1, "field1": "temperature", "field2": "power"}, "feeds": [{"created_at": stamp(i, "%Y-%m-%dT%H:%M:%SZ"), "entry_id": i + 1, "field1": str(A[i]), "field2": str(P[i])} for i in N]}), form="json", channels=[temp("temperature", A), power()], **DT)
write("messages.jsonl", lines_of("", lambda i: json.dumps({"MESSAGE": f"temp={A[i]} room={R[i]}", "ts": f"{epoch(i)}000000"})), form="json", start=START, time="epoch", channels=[temp("temp", A), ch("room", "temperature", "°C", "ambient", R[0], R[-1])])
tongues = [
    ("danish", "Dato;Klokkeslæt;Ovn;Rum;Spænding", "%d-%m-%Y;%H.%M.%S", "V"), ("finnish", "Päivämäärä;Kellonaika;Uuni °C;Huone °C;Teho", "14.3.2026;%H.%M.%S", "W"),
    ("polish", "Czas;Piec;Otoczenie;Moc", "14 marca 2026 %H:%M:%S", "W"), ("czech", "Datum a čas;Trouba (°C);Okolí (°C);Výkon", "14. 3. 2026 %H:%M:%S", "W"),
    ("french", "Horodatage;Four;Ambiante;Tension", "14 févr. 2026 à %H:%M:%S", "V"), ("italian", "Data;Ora;Forno;Ambiente;Umidità", "14-mar-2026;%H:%M:%S", "%"),
    ("spanish", "Fecha;Horno;Ambiente;Potencia", "14 de marzo de 2026, %H:%M:%S", "W"), ("portuguese", "Data/Hora;Forno;Ambiente;Tensão", "%d/%m/%Y %H:%M:%S", "V"),
    ("russian", "Дата;Время;Печь, °С;Комната, °С;Мощность, Вт", "14 марта 2026;%H:%M:%S", "W"), ("turkish", "Tarih;Saat;Fırın;Oda;Nem", "%d.%m.%Y;%H:%M:%S", "%"),
    ("korean", "날짜;시간;오븐;실온;전력", "%Y-%m-%d;오전 9:%M:%S", "W"), ("japanese", "日時;炉内温度(℃);室温(℃);消費電力(W)", "%Y/%m/%d %H:%M:%S", "W"),
]
for tongue, head, form, unit in tongues:
    third = [229.5] * 24 if unit == "V" else H if unit == "%" else P
    names = [n.split(" (")[0].split("(")[0].split(",")[0].replace(" °C", "") for n in head.split(";")][-3:]
    quantity = {"V": "voltage", "W": "power", "%": "ratio"}[unit]
    begin = "2026-02-14T09:30:00" if tongue == "french" else START
    write(f"tongue-{tongue}.csv", lines_of(head + "\n", lambda i: f"{stamp(i, form)};{comma(A[i])};{comma(R[i])};{comma(third[i])}"), start=begin, time="date-and-time",
        channels=[temp(names[0], A, "centre"), ch(names[1], "temperature", "°C", "ambient", R[0], R[-1]), ch(names[2], quantity, unit, "measured", third[0], third[-1])])
write("clock-before-date.csv", lines_of("Timestamp,Temp (C)\n", lambda i: f"{stamp(i,'%H:%M:%S %d/%m/%Y')},{A[i]}"), channels=[temp("Temp", A)], **DT)
write("dashes-in-clock.csv", lines_of("t,temp\n", lambda i: f"{stamp(i,'%Y-%m-%d_%H-%M-%S')},{A[i]}"), channels=[temp("temp", A)], **DT)
write("spelled-duration.csv", lines_of("elapsed;T1\n", lambda i: f"0h {i*5//60}m {i*5%60}s;{A[i]}"), channels=[temp("T1", A)], time="elapsed")
write("iso-duration.csv", lines_of("elapsed;T1\n", lambda i: f"PT{i*5//60}M{i*5%60}S;{A[i]}"), channels=[temp("T1", A)], time="elapsed")
write("zone-by-name.csv", lines_of("time,temp\n", lambda i: f"Sat Mar 14 2026 {stamp(i,'%H:%M:%S')} GMT+0000 (Coordinated Universal Time),{A[i]}"), channels=[temp("temp", A)], **DT)
write("attributes.xml", lines_of("<log>\n", lambda i: f'<row time="{stamp(i,"%Y-%m-%dT%H:%M:%S")}" centre="{A[i]}" left="{B[i]}"/>') + "</log>\n", form="key-value", skipped=2, channels=[temp("centre", A, "centre"), temp("left", B)], **DT)
write("list-of-entries.txt", lines_of("", lambda i: f"- time: {stamp(i,'%Y-%m-%dT%H:%M:%SZ')}\n  centre: {A[i]}\n  left: {B[i]}"), form="key-value", channels=[temp("centre", A, "centre"), temp("left", B)], **DT)
write("stamp-behind-name.log", lines_of("", lambda i: f"oven-1  | {stamp(i,'%Y-%m-%d %H:%M:%S')} temp={A[i]} target=200"), form="key-value", channels=[temp("temp", A), ch("target", "temperature", "°C", "set-point", 200, 200)], **DT)
write("rows-are-channels.csv", "\n".join([",".join(map(str, ["Time (s)", *[i * 5 for i in N]])), ",".join(map(str, ["T1", *A])), ",".join(map(str, ["T2", *B]))]) + "\n", channels=AB, time="elapsed")

import instrument_layouts

finish()
