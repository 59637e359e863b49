"""Quotes as somebody would build them in a spreadsheet: a row a pool, rates in the formulas, dates by the good mornings of one
sheet of weather. All pools in one workbook, or a workbook for each client, saved from the last one's.

The pools are those of job_stream.py. Still far less than a job sheet has (one floor formula, no openings of the crew's day, no
windows that close, no sections), so that a comparison flatters the spreadsheet.
"""
import csv
import datetime
import pathlib
import random

import job_stream

HEAD = """<?xml version="1.0" encoding="UTF-8"?>
<office:document xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0"
 xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0" xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0"
 xmlns:of="urn:oasis:names:tc:opendocument:xmlns:of:1.2" office:version="1.2"
 office:mimetype="application/vnd.oasis.opendocument.spreadsheet">
<office:body><office:spreadsheet>
"""
TAIL = "</office:spreadsheet></office:body></office:document>\n"
ZERO = datetime.date(1899, 12, 30)
DAYS = 92  # from 1 May

# Length, width, shallow and deep depth, coats, tap in L/min and start stand in A to G.
QUOTE = [
    "[.A{r}]*[.B{r}]",                                                      # H plan area
    "[.B{r}]*([.A{r}]*2/3+SQRT(([.A{r}]/3)^2+([.D{r}]-[.C{r}])^2))",        # I floor
    "2*([.A{r}]+[.B{r}])",                                                  # J perimeter
    "2*[.A{r}]*([.C{r}]+[.D{r}])/2+[.B{r}]*([.C{r}]+[.D{r}])-0.15*[.J{r}]",  # K walls below the band
    "[.I{r}]+[.K{r}]-0.0215*[.J{r}]",                                       # L painted
    "[.H{r}]*(([.C{r}]+[.D{r}])/2-0.12)",                                   # M water
    "[.E{r}]*ROUNDUP([.L{r}]/22.5;0)",                                      # N kits
    "ROUNDDOWN([.L{r}]*0.3/25;0)",                                          # O large drums of acid
    "ROUNDUP(MAX(0;[.L{r}]*0.3-25*[.O{r}])/5;0)",                           # P small ones
    "ROUNDUP([.L{r}]*0.02/1.2;0)",                                          # Q degreaser
    "ROUNDUP([.L{r}]*0.25/13;0)",                                           # R bicarbonate
    "ROUNDUP([.M{r}]*0.02/11;0)",                                           # S chlorine
    "ROUNDUP([.M{r}]*0.03/1.8;0)",                                          # T stabiliser
    "ROUNDUP([.J{r}]/50;0)",                                                # U tape
    "ROUNDUP([.L{r}]/40;0)*[.E{r}]",                                        # V roller covers
    "ROUNDUP([.L{r}]/12*4;0)/4+0.5",                                        # W degrease
    "ROUNDUP([.L{r}]/6*4;0)/4",                                             # X abrade
    "ROUNDUP([.L{r}]/30*4;0)/4+ROUNDUP([.L{r}]/20*4;0)/4",                  # Y dust and wash
    "ROUNDUP([.K{r}]/25*4;0)/4+ROUNDUP([.I{r}]/25*4;0)/4+1",                # Z etch and neutralise
    "ROUNDUP([.J{r}]/20*4;0)/4+[.E{r}]*ROUNDUP([.L{r}]/22*4;0)/4+2",        # AA mask, coat, unmask, refit
    "[.M{r}]/8",                                                            # AB drain, hours
    "[.M{r}]*1000/[.F{r}]/60",                                              # AC fill, hours
    "WORKDAY([.G{r}];ROUNDUP(([.AB{r}]+1)/24;0))",                          # AD drained
    "WORKDAY([.AD{r}];ROUNDUP(([.W{r}]+[.X{r}]+[.Y{r}])/3/8.5;0))",         # AE prepared
    "INDEX([$days.$G$1:.$G$92];MATCH([.AE{r}];[$days.$A$1:.$A$92];0))",     # AF etched
    "INDEX([$days.$G$1:.$G$92];MATCH([.AF{r}]+3;[$days.$A$1:.$A$92];0))",   # AG coat 1
    "INDEX([$days.$G$1:.$G$92];MATCH([.AG{r}]+1;[$days.$A$1:.$A$92];0))",   # AH coat 2
    "IF([.E{r}]=3;INDEX([$days.$G$1:.$G$92];MATCH([.AH{r}]+1;[$days.$A$1:.$A$92];0));[.AH{r}])",  # AI coat 3
    "IF([.AH{r}]-[.AG{r}]>2;\"abrade\";IF([.AI{r}]-[.AH{r}]>2;\"abrade\";\"in time\"))",  # AJ windows
    "WORKDAY([.AI{r}]+IF(INDEX([$days.$D$1:.$D$92];MATCH([.AI{r}];[$days.$A$1:.$A$92];0))<18;10;7)-1;1)",  # AK cured
    "[.AK{r}]+([.AC{r}]+8)/24",                                             # AL full
    "NETWORKDAYS([.AD{r}];[.AI{r}])",                                       # AM days
    "ROUND([.N{r}]*119.5+[.O{r}]*31.9+[.P{r}]*9.8+[.Q{r}]*24.8+[.R{r}]*27.4;2)",  # AN coating and washes
    "ROUND([.S{r}]*18.9+[.T{r}]*12.5+[.U{r}]*6.4+[.V{r}]*7.2;2)",           # AO water and small goods
    "ROUND(([.W{r}]+[.X{r}]+[.Y{r}]+[.Z{r}]+[.AA{r}])*42;2)",               # AP labour
    "ROUND([.AM{r}]*85;2)",                                                 # AQ travel
    "ROUND([.AM{r}]*35+60;2)",                                              # AR hire
    "ROUND([.M{r}]*2.2;2)",                                                 # AS water
    "ROUND(([.AN{r}]+[.AO{r}])*0.05;2)",                                    # AT contingency
    "ROUND(SUM([.AN{r}:.AT{r}])*0.25;2)",                                   # AU mark-up
    "SUM([.AN{r}:.AU{r}])",                                                 # AV net
    "ROUND([.AV{r}]*0.19;2)",                                               # AW tax
    "[.AV{r}]+[.AW{r}]",                                                    # AX total
    "ROUND([.AX{r}]*0.3;2)",                                                # AY deposit
    "[.AX{r}]-[.AY{r}]",                                                    # AZ the rest
]

# Day number in A; hours of the sheet "weather": day, hour, air, dew point, rain in A to E.
DAY = [
    "IF(WEEKDAY([.A{r}];2)<6;1;0)",                                                                    # B works
    "SUMIFS([$weather.$E$1:.$E${n}];[$weather.$A$1:.$A${n}];[.A{r}])",                                 # C rain
    "IFERROR(AVERAGEIFS([$weather.$C$1:.$C${n}];[$weather.$A$1:.$A${n}];[.A{r}]);18)",                 # D air
    "COUNTIFS([$weather.$A$1:.$A${n}];[.A{r}];[$weather.$B$1:.$B${n}];\">=8\";[$weather.$B$1:.$B${n}];\"<11\";"
    "[$weather.$C$1:.$C${n}];\"<10\")",                                                                # E cold hours
    "IF(AND([.B{r}]=1;[.C{r}]=0;[.E{r}]=0);1;0)",                                                      # F good morning
    "IF([.F{r}]=1;[.A{r}];[.G{next}])",                                                                # G the next one
]


def number(value):
    return f'<table:table-cell office:value-type="float" office:value="{value}"/>'


def formula(text, **places):
    # A value that is wrong until it is calculated: zero.
    content = text.format(**places).replace("&", "&amp;").replace("<", "&lt;").replace(">", "&gt;").replace('"', "&quot;")
    return f'<table:table-cell table:formula="of:={content}" office:value-type="float" office:value="0"/>'


def serial(day):
    return (day - ZERO).days


def metres(text):
    return float(text.removesuffix(" m"))


def sheet(name, rows):
    body = "".join("<table:table-row>" + "".join(cells) + "</table:table-row>\n" for cells in rows)
    return f'<table:table table:name="{name}">\n{body}</table:table>\n'


def weather(path):
    rows = []
    with open(path, encoding="utf-8", newline="") as stream:
        for hour in csv.DictReader(line for line in stream if not line.startswith("#")):
            at = datetime.datetime.fromisoformat(hour["time"])
            figures = [float(hour[column] or 0) for column in ("air_temp_c", "dew_point_c", "rain_mm")]
            rows.append([number(v) for v in (serial(at.date()), at.hour, *figures)])
    return rows


def quote(job, row):
    pool = job["pool"]
    (_, shallow), (_, deep) = pool["floor"]["points"]
    given = [metres(pool["outline"]["length"]), metres(pool["outline"]["width"]), metres(shallow), metres(deep),
             job["coating"]["coats"], float(job["site"]["tap_flow"].split()[0]),
             serial(datetime.date.fromisoformat(job["job"]["start"]))]
    return [number(v) for v in given] + [formula(f, r=row) for f in QUOTE]


def jobs(count):
    dice = random.Random(1)
    return [job_stream.job(dice, number) for number in range(1, count + 1)]


def text(of_jobs, weather_file):
    hours = weather(weather_file)
    first = serial(datetime.date(2027, 5, 1))
    days = [[number(first + d)] + [formula(f, r=d + 1, next=d + 2, n=len(hours)) for f in DAY] for d in range(DAYS)]
    # The sheet read back is the first.
    quotes = [quote(job, row) for row, job in enumerate(of_jobs, 1)]
    return HEAD + sheet("quotes", quotes) + sheet("days", days) + sheet("weather", hours) + TAIL


if __name__ == "__main__":
    import sys
    pathlib.Path(sys.argv[1]).write_text(text(jobs(int(sys.argv[2])), sys.argv[3]), encoding="utf-8")
