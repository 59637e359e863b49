"""A quote sheet as somebody would build it in a spreadsheet: a row a pool, prices on top.

Far less than a job sheet has (a rectangle with a straight floor, no programme), so that a comparison
flatters the spreadsheet.
"""
import random

HEAD = """<?xml version="1.0" encoding="UTF-8"?>
<office:document xmlns:office="urn:oasis:names:tc:opendocument:xmlns:office:1.0"
 xmlns:table="urn:oasis:names:tc:opendocument:xmlns:table:1.0" xmlns:text="urn:oasis:names:tc:opendocument:xmlns:text:1.0"
 xmlns:of="urn:oasis:names:tc:opendocument:xmlns:of:1.2" office:version="1.2"
 office:mimetype="application/vnd.oasis.opendocument.spreadsheet">
<office:body><office:spreadsheet><table:table table:name="quotes">
"""
TAIL = "</table:table></office:spreadsheet></office:body></office:document>\n"

# Length, width, shallow and deep depth, coats, tap in L/min stand in A to F.
FORMULAS = [
    "[.A{r}]*[.B{r}]",                                                    # G plan area
    "[.B{r}]*SQRT([.A{r}]^2+([.D{r}]-[.C{r}])^2)",                        # H floor
    "([.C{r}]+[.D{r}])*[.A{r}]+[.B{r}]*([.C{r}]+[.D{r}])",                # I walls
    "[.H{r}]+[.I{r}]-0.15*2*([.A{r}]+[.B{r}])",                           # J painted
    "[.G{r}]*([.C{r}]+[.D{r}])/2",                                        # K water
    "[.E{r}]*ROUNDUP([.J{r}]/22.5;0)",                                    # L kits
    "ROUNDUP([.J{r}]*0.6/20;0)",                                          # M drums of acid
    "ROUNDUP([.J{r}]*0.1/10;0)",                                          # N cans of degreaser
    "ROUNDUP([.J{r}]*0.25/25;0)",                                         # O sacks of bicarbonate
    "ROUNDUP([.J{r}]/8*4;0)/4+ROUNDUP([.J{r}]/10*4;0)/4",                 # P hours of preparation
    "[.E{r}]*ROUNDUP([.J{r}]/15*4;0)/4+6",                                # Q hours of painting and masking
    "ROUNDUP(([.P{r}]+[.Q{r}])/24;0)+2",                                  # R days
    "ROUND([.L{r}]*119.5+[.M{r}]*31.9+[.N{r}]*24.8+[.O{r}]*27.4;2)",      # S materials
    "ROUND(([.P{r}]+[.Q{r}])*42+[.R{r}]*85;2)",                           # T labour and travel
    "ROUND([.R{r}]*35+[.K{r}]*2.2;2)",                                    # U hire and water
    "ROUNDUP([.K{r}]*1000/[.F{r}]/60;1)",                                 # V hours to fill
    "ROUND(([.S{r}]+[.T{r}]+[.U{r}])*1.25;2)",                            # W net
    "ROUND([.W{r}]*1.19;2)",                                              # X total
]


def number(value):
    return f'<table:table-cell office:value-type="float" office:value="{value}"/>'


def formula(text, row):
    # A value that is wrong until it is calculated: zero.
    return (f'<table:table-cell table:formula="of:={text.format(r=row)}" office:value-type="float" '
            'office:value="0"/>')


def text(rows):
    dice = random.Random(1)
    out = [HEAD]
    for r in range(1, rows + 1):
        given = [dice.randrange(120, 241) / 20, dice.randrange(60, 111) / 20, dice.randrange(20, 29) / 20,
                 dice.randrange(32, 49) / 20, dice.choice([2, 2, 3]), dice.choice([15, 20, 25, 30])]
        cells = [number(v) for v in given] + [formula(f, r) for f in FORMULAS]
        out.append("<table:table-row>" + "".join(cells) + "</table:table-row>\n")
    out.append(TAIL)
    return "".join(out)
