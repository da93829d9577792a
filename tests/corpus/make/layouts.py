"""The layouts in which laboratories print soil tests, described generally.

Each function makes a report with invented numbers. `made_of` at the end lists
them with their numbers."""

from report import Report
from soil import EXTRACTED, SHARE

MARKS = "VL L M H VH".split()


class Column:
    """A column of results, or of something else when it has no property."""

    def __init__(self, head, prop=None, unit="-", method="-", of="mg/kg", blank=0.0, below=0.0, share=1.0, makes=None):
        self.head, self.prop, self.unit, self.method = head, prop, unit, method
        # The unit in which a number is invented; the printed one, when it is printed.
        self.of = unit if unit not in ("-", "") else of
        self.blank, self.below, self.share, self.makes = blank, below, share, makes

    def cell(self, soil, at):
        if self.makes:
            return self.makes(soil, at)
        if soil.chance(self.blank):
            return ""
        number = soil.number(self.prop, self.of)
        return f"<{number}" if soil.chance(self.below) else number


def wide(report, soil, columns, names, heads=None, comma=False, name_at=0):
    """One sample a row."""
    rows = heads or [[c.head for c in columns]]
    for at, name in enumerate(names):
        row = []
        for column in columns:
            cell = name if column.makes == "name" else column.cell(soil, at)
            if comma:
                cell = cell.replace(".", ",") if column.prop else cell
            row.append(cell)
            if column.prop:
                report.says(name, column.prop, cell, column.unit, column.method, share=column.share)
        rows.append(row)
    report.table(rows)


NAME = "name"


def fixed(*texts):
    return lambda soil, at: texts[at % len(texts)]


def whole(low, high):
    return lambda soil, at: str(soil.dice.randint(low, high))


def method_export_wide(soil):
    """1: about 200 columns; most of them empty; method, name and unit in the head."""
    report = Report("Export of results")
    ppm = "mg/kg"
    columns = [
        Column("Lab No", makes=whole(20000, 29999)), Column("Client ID", makes=fixed("C-104")),
        Column("Sample ID", makes=NAME), Column("B Depth", makes=fixed("0")), Column("E Depth", makes=fixed("6")),
        Column("Received", makes=fixed("3/2/2026")),
        Column("1:1 Soil pH", "ph", "", "water-1-1"), Column("WDRF Buffer pH", "buffer-ph", "", "woodruff-buffer", blank=0.4),
        Column("1:1 S Salts mmho/cm", "ec", "dS/m", "water-1-1"), Column("Excess Lime", "free-lime", makes=fixed("NONE")),
        Column("Organic Matter LOI %", "organic-matter", "%", "loss-on-ignition"),
        Column("Nitrate-N ppm N", "nitrate-n", ppm), Column("Bray P-1 ppm P", "phosphorus", ppm, "bray-p1", blank=0.3),
        Column("Olsen P ppm P", "phosphorus", ppm, "olsen", blank=0.3),
        Column("Potassium ppm K", "potassium", ppm), Column("Sulfate-S ppm S", "sulfur", ppm),
        Column("Zinc ppm Zn", "zinc", ppm), Column("Iron ppm Fe", "iron", ppm), Column("Manganese ppm Mn", "manganese", ppm),
        Column("Copper ppm Cu", "copper", ppm), Column("Calcium ppm Ca", "calcium", ppm),
        Column("Magnesium ppm Mg", "magnesium", ppm), Column("Sodium ppm Na", "sodium", ppm),
        Column("CEC/Sum of Cations me/100g", "cec", "meq/100 g"),
        Column("%Ca Sat", "calcium-saturation", "%"), Column("%Mg Sat", "magnesium-saturation", "%"),
        Column("%K Sat", "potassium-saturation", "%"), Column("%Na Sat", "sodium-saturation", "%"),
    ]
    empty = [f"Test {at} ppm" for at in range(1, 150)]
    recs = ["Nitrogen Rec", "P2O5 Rec", "K2O Rec", "Nitrogen Rec", "Lime Rec"]
    columns += [Column(head, makes=fixed("")) for head in empty]
    columns += [Column(head, makes=whole(0, 120)) for head in recs]
    wide(report, soil, columns, soil.beds(4))
    return report


def short_codes(soil):
    """2: bare codes without units, blank-padded cells, dates without marks."""
    report = Report("Export of results")
    padded = fixed("        ")
    columns = [
        Column("SAMPLE_ID", makes=NAME), Column("DATE", makes=fixed("20260302")),
        Column("OM", "organic-matter", "-"), Column("ENR", "nitrogen-release", "-", of="lb/acre"),
        Column("P1", "phosphorus", "-", "bray-p1"), Column("P2", "phosphorus", "-", "bray-p2"),
        Column("HCO3_P", makes=padded), Column("PH", "ph", ""), Column("K", "potassium"), Column("MG", "magnesium"),
        Column("CA", "calcium"), Column("NA", "sodium"), Column("BUFFER_PH", "buffer-ph", ""),
        Column("CEC", "cec", "-"), Column("K_PCT", "potassium-saturation", "%"), Column("MG_PCT", "magnesium-saturation", "%"),
        Column("CA_PCT", "calcium-saturation", "%"), Column("H_PCT", "acidity-saturation", "%"),
        Column("NA_PCT", "sodium-saturation", "%"), Column("NO3_N", "nitrate-n"), Column("S", "sulfur"),
        Column("ZN", "zinc"), Column("MN", "manganese"), Column("FE", "iron"), Column("CU", "copper"),
        Column("B", "boron"), Column("EX__LIME", "free-lime", makes=fixed("VH", "")), Column("S__SALTS", "ec", "-"), Column("CL", makes=padded),
    ]
    wide(report, soil, columns, soil.beds(5))
    return report


def results_and_advice(soil):
    """3: results and recommendations in one row; a zero there means not asked for."""
    report = Report("Export")
    columns = [
        Column("sample", makes=NAME), Column("1:1 pH", "ph", "", "water-1-1"), Column("SMP/A&E", makes=fixed("")),
        Column("Bray P", "phosphorus", "-", "bray-p1"), Column("K", "potassium"), Column("OM", "organic-matter", "-"),
        Column("ENR", "nitrogen-release", "-", of="lb/acre"), Column("CA", "calcium"), Column("MG", "magnesium"),
        Column("CEC", "cec", "-"), Column("PERK", "potassium-saturation", "%"), Column("PERCA", "calcium-saturation", "%"),
        Column("PERMG", "magnesium-saturation", "%"), Column("Olsen P", makes=fixed("")), Column("SOLSALT", "ec", "-"),
        Column("N REC", makes=whole(0, 140)), Column("P2O5 REC", makes=fixed("0", "40")), Column("K2O REC", makes=fixed("0", "60")),
        Column("depth range", makes=fixed("  0 - 6")),
    ]
    wide(report, soil, columns, soil.beds(4))
    return report


def research(soil):
    """4: unit after an underscore, the same ion in two units."""
    report = Report("plots")
    columns = [
        Column("plot", makes=NAME), Column("pH_1:1", "ph", "", "water-1-1"), Column("OM_%", "organic-matter", "%"),
        Column("CEC_meq.100g", "cec", "meq/100 g"), Column("EC_mmhos.cm", "ec", "dS/m"),
        Column("olsenP_mg.kg", "phosphorus", "mg/kg", "olsen"), Column("K_mg.kg", "potassium", "mg/kg"),
        Column("Mg_mg.kg", "magnesium", "mg/kg"), Column("Na_mg.kg", "sodium", "mg/kg"), Column("Zn_mg.kg", "zinc", "mg/kg", below=0.2),
    ]
    wide(report, soil, columns, soil.beds(6))
    return report


def tidy(soil):
    """5: one result a row."""
    report = Report("Results")
    rows = [["sampleId", "property", "value", "unit", "method", "rating"]]
    tests = [
        ("pH", "ph", "", "", "1:1 water", "water-1-1"), ("Organic matter", "organic-matter", "%", "%", "LOI", "loss-on-ignition"),
        ("Phosphorus", "phosphorus", "mg/kg", "mg/kg", "Olsen", "olsen"),
        ("Potassium", "potassium", "mg/kg", "mg/kg", "ammonium acetate", "ammonium-acetate"),
        ("Zinc", "zinc", "mg/kg", "mg/kg", "DTPA", "dtpa"), ("Nitrate-N", "nitrate-n", "mg/kg", "mg/kg", "KCl", "kcl"),
    ]
    for bed in soil.beds(3):
        for label, prop, unit_text, unit, method_text, method in tests:
            number = soil.number(prop, unit)
            rating = soil.pick(MARKS[1:4])
            if soil.chance(0.1):
                number = ""
            rows.append([bed, label, number, unit_text, method_text, rating])
            report.says(bed, prop, number, unit, method, rating)
    report.table(rows)
    return report


def units_row(soil):
    """6: a row of units, a row of remarks, then the samples."""
    report = Report("Worksheet")
    ppm = "mg/kg"
    columns = [
        Column("Sample", makes=NAME), Column("pH", "ph", ""), Column("LBC", makes=fixed("210", "340")),
        Column("P", "phosphorus", ppm, "mehlich-1"), Column("K", "potassium", ppm, "mehlich-1"),
        Column("Ca", "calcium", ppm, "mehlich-1"), Column("Mg", "magnesium", ppm, "mehlich-1"),
        Column("Mn", "manganese", ppm, "mehlich-1"), Column("Zn", "zinc", ppm, "mehlich-1"),
    ]
    unit = "Mehlich 1\u00a0\u00a0 mg/kg (ppm)"
    heads = [
        [c.head for c in columns],
        ["UNITS", "", "ppm CaCO3/pH"] + [unit] * 6,
        ["COMMENT", "", "", "", "", "", "", "", ""],
    ]
    wide(report, soil, columns, soil.beds(4), heads)
    return report


def grouped(soil):
    """7: a group's name above the names; non-detects in words; blanks after a word."""
    report = Report("Soil health worksheet", heads=2)
    ppm = "mg/kg"
    columns = [
        Column("Sample ID", makes=NAME), Column("Texture ", makes=fixed("LOAM ", "SANDY LOAM ")), Column("pH", "ph", ""),
        Column("P ppm", "phosphorus", ppm, "mehlich-3"), Column("K ppm", "potassium", ppm, "mehlich-3"),
        Column("Zn ppm", "zinc", ppm, "mehlich-3", makes=lambda s, at: "ND (u)" if at % 3 == 1 else s.number("zinc")),
        Column("OM %", "organic-matter", "%"),
    ]
    heads = [["", "", "1:1", "Mehlich-3", "", "", "Loss on ignition"], [c.head for c in columns]]
    columns[2].method, columns[6].method = "water-1-1", "loss-on-ignition"
    wide(report, soil, columns, soil.beds(4), heads)
    return report


def block_on_top(soil):
    """8: labels and values on top, a table below."""
    report = Report("Field data")
    report.line("Date: 2026-03-02")
    report.line("Report No: 4471")
    report.line("Field: home ground")
    report.line("Crop: mixed vegetables")
    report.line("Extraction: Mehlich-3")
    ppm, m3 = "mg/kg", "mehlich-3"
    columns = [
        Column("Sample", makes=NAME), Column("pH", "ph", ""), Column("OM %", "organic-matter", "%"),
        Column("P ppm", "phosphorus", ppm, m3), Column("K ppm", "potassium", ppm, m3), Column("Mg ppm", "magnesium", ppm, m3),
        Column("Ca ppm", "calcium", ppm, m3, blank=0.2), Column("S ppm", "sulfur", ppm, m3),
    ]
    wide(report, soil, columns, soil.beds(5))
    return report


def panels(soil):
    """10: two panels side by side, each analysis, value found, optimum range; bars without numbers below."""
    report = Report("Soil Test Report")
    bed = soil.beds(1)[0]
    report.line(f"Sample: {bed}")
    report.line("Modified Morgan extractable, ppm")
    m = "modified-morgan"
    left = [("Soil pH (1:1, H2O)", "ph", "", "water-1-1", ""), ("Phosphorus (P)", "phosphorus", "mg/kg", m, "4-14"),
            ("Potassium (K)", "potassium", "mg/kg", m, "100-160"), ("Calcium (Ca)", "calcium", "mg/kg", m, "1000-1500"),
            ("Magnesium (Mg)", "magnesium", "mg/kg", m, "50-120"), ("Sulfur (S)", "sulfur", "mg/kg", m, ">10")]
    right = [("Cation Exch. Capacity, meq/100g", "cec", "meq/100 g", "-", ""), ("Exch. Acidity, meq/100g", "exchangeable-acidity", "meq/100 g", "-", ""),
             ("Zinc (Zn)", "zinc", "mg/kg", m, "1.0-7.6"), ("Copper (Cu)", "copper", "mg/kg", m, "0.3-0.6"),
             ("Iron (Fe)", "iron", "mg/kg", m, "2.7-9.4"), ("Aluminum (Al)", "aluminum", "mg/kg", m, "<75")]
    rows = [["Analysis", "Value Found", "Optimum Range", "Analysis", "Value Found", "Optimum Range"]]
    for a, b in zip(left, right):
        row = []
        for label, prop, unit, method, span in (a, b):
            number = soil.number(prop, unit or "mg/kg")
            row += [label, number, span]
            report.says(bed, prop, number, unit, method)
        rows.append(row)
    report.table(rows)
    report.table([["", "Very Low", "Low", "Optimum", "Above Optimum"], ["Phosphorus", "", "", "", ""], ["Potassium", "", "", "", ""]])
    return report


def listing(report, soil, bed, tests, heads, rated=None, comma=False):
    """One property a row."""
    rows = [heads] if heads else []
    for label, prop, unit_text, unit, method, *more in tests:
        if prop is None:
            rows.append([label, unit_text] + [str(m) for m in more])
            continue
        number = soil.number(prop, unit if unit not in ("-", "") else "mg/kg")
        share = more.pop(0) if more and isinstance(more[0], float) else 1.0
        rating = soil.pick(rated) if rated else "-"
        if comma:
            number = number.replace(".", ",")
        row = [label, number] + ([unit_text] if unit_text is not None else [])
        row += [rating] if rated else []
        rows.append(row + [str(m) for m in more])
        report.says(bed, prop, number, unit, method, rating, share)
    report.table(rows)


def per_acre(soil):
    """11: main nutrients in lb/acre, the others in ppm, by Mehlich-3; an activity index for manganese."""
    report = Report("Soil Test Results")
    bed = soil.beds(1)[0]
    report.line(f"Sample ID: {bed}")
    report.line("Nutrients by Mehlich-3")
    m = "mehlich-3"
    tests = [("pH", "ph", "", "", "-")]
    tests += [(n, p, "lb/acre", "lb/acre", m) for n, p in [("Phosphorus", "phosphorus"), ("Potassium", "potassium"), ("Magnesium", "magnesium"), ("Calcium", "calcium")]]
    tests += [(n, p, "ppm", "mg/kg", m) for n, p in [("Zinc", "zinc"), ("Copper", "copper"), ("Boron", "boron"), ("Iron", "iron")]]
    listing(report, soil, bed, tests, ["Test", "Result", "Unit", "Relative level"], ["Low", "Medium", "High", "Very High"])
    report.line("Mn activity index MnAI: 38")
    return report


def strip(soil):
    """12: a horizontal strip: analysis, result, rating, with plus and minus behind letters."""
    report = Report("Report of Soil Test")
    bed = soil.beds(1)[0]
    report.line(f"Sample: {bed}   Extract: Mehlich-1")
    m = "mehlich-1"
    heads = [("P (lb/A)", "phosphorus", "lb/acre"), ("K (lb/A)", "potassium", "lb/acre"), ("Ca (lb/A)", "calcium", "lb/acre"),
             ("Mg (lb/A)", "magnesium", "lb/acre"), ("Zn (ppm)", "zinc", "mg/kg"), ("Mn (ppm)", "manganese", "mg/kg"), ("B (ppm)", "boron", "mg/kg")]
    numbers = [soil.number(p, u) for _, p, u in heads]
    marks = [soil.pick(["L-", "L+", "M", "M+", "H-", "VH", "SUFF"]) for _ in heads]
    report.table([["Analysis"] + [h for h, *_ in heads], ["Result"] + numbers, ["Rating"] + marks])
    for (_, prop, unit), number in zip(heads, numbers):
        report.says(bed, prop, number, unit, m)
    ph, cec = soil.number("ph"), soil.number("cec")
    report.table([["Soil pH", "Est-CEC (meq/100g)"], [ph, cec]])
    report.says(bed, "ph", ph, "")
    report.says(bed, "cec", cec, "meq/100 g")
    return report


def glued_index(soil):
    """13: numbers and units on lines of their own under the names, by Mehlich-1."""
    report = Report("Soil Test Report")
    bed = soil.beds(1)[0]
    report.line(f"Sample ID: {bed}")
    report.line("Mehlich I extractant")
    m = "mehlich-1"
    names = [("Phosphorus (P)", "phosphorus"), ("Potassium (K)", "potassium"), ("Calcium (Ca)", "calcium"), ("Magnesium (Mg)", "magnesium"), ("Zinc (Zn)", "zinc"), ("Manganese (Mn)", "manganese")]
    numbers = [soil.number(p, "lb/acre") for _, p in names]
    report.table([[n for n, _ in names], [f"{n} lbs/Acre" for n in numbers]])
    for (_, prop), number in zip(names, numbers):
        report.says(bed, prop, number, "lb/acre", m)
    ph = soil.number("ph")
    report.line(f"Soil pH: {ph}")
    report.says(bed, "ph", ph, "")
    report.line("LBC (lime buffer capacity): 250 ppm CaCO3/pH")
    return report


def indices(soil):
    """14: a state's own indices, which are no amounts."""
    report = Report("Soil report")
    columns = [
        Column("Sample ID", makes=NAME), Column("Soil Class", makes=fixed("MIN", "M-O")), Column("HM%", makes=fixed("0.4", "1.2")),
        Column("W/V", "bulk-density", "-"), Column("CEC", "cec", "-"), Column("BS%", "base-saturation", "%"),
        Column("Ac", "exchangeable-acidity", "-"), Column("pH", "ph", ""),
        Column("P-I", "phosphorus", "index", makes=whole(20, 180)), Column("K-I", "potassium", "index", makes=whole(20, 120)), Column("Ca%", "calcium-saturation", "%"),
        Column("Mg%", "magnesium-saturation", "%"), Column("S-I", "sulfur", "index", makes=whole(20, 80)), Column("Mn-I", "manganese", "index", makes=whole(20, 300)),
        Column("Mn-AI1", makes=whole(20, 200)), Column("Zn-I", "zinc", "index", makes=whole(20, 300)), Column("Cu-I", "copper", "index", makes=whole(20, 300)),
        Column("SS-I", "ec", "index", makes=whole(5, 30)),
    ]
    wide(report, soil, columns, soil.beds(3))
    return report


def bars(soil):
    """15: results in lb/A beside words, by Mehlich-1."""
    report = Report("Garden soil report")
    bed = soil.beds(1)[0]
    report.line(f"Sample: {bed}")
    report.line("Mehlich-1 extraction")
    tests = [(n, p, "lb/A", "lb/acre", "mehlich-1") for n, p in [("Phosphorus", "phosphorus"), ("Potassium", "potassium"), ("Calcium", "calcium"), ("Magnesium", "magnesium")]]
    listing(report, soil, bed, [("pH", "ph", "", "", "-")] + tests, ["Soil test", "Value", "Units", "Level"], ["Low", "Medium", "Sufficient", "Excessive"])
    return report


def fact_sheet(soil):
    """16: a lime test index of ten times the buffer pH."""
    report = Report("Soil Test Report")
    columns = [
        Column("Sample", makes=NAME), Column("pH", "ph", ""), Column("LTI", "buffer-ph", "", share=0.1, makes=lambda s, at: str(s.dice.randint(62, 70))),
        Column("P ppm", "phosphorus", "mg/kg", "mehlich-3"), Column("K ppm", "potassium", "mg/kg", "mehlich-3"), Column("Ca ppm", "calcium", "mg/kg", "mehlich-3"),
        Column("Mg ppm", "magnesium", "mg/kg", "mehlich-3"), Column("CEC meq/100 g", "cec", "meq/100 g"), Column("OM %", "organic-matter", "%"),
    ]
    report.line("Nutrients extracted with Mehlich-3")
    wide(report, soil, columns, soil.beds(3))
    return report


def letter_bars(soil):
    """17: bars made of letters below a line of results."""
    report = Report("Soil Test Report")
    bed = soil.beds(1)[0]
    report.line(f"Sample: {bed}")
    columns = [
        Column("Estimated Soil Texture", makes=fixed("Medium")), Column("Organic Matter %", "organic-matter", "%"), Column("Soil pH", "ph", ""),
        Column("Olsen Phosphorus ppm P", "phosphorus", "mg/kg", "olsen"), Column("Potassium ppm K", "potassium", "mg/kg"),
        Column("Nitrate NO3-N ppm", "nitrate-n", "mg/kg"),
    ]
    cells = [c.cell(soil, 0) for c in columns]
    report.table([[c.head for c in columns], cells])
    for column, cell in zip(columns, cells):
        if column.prop:
            report.says(bed, column.prop, cell, column.unit, column.method)
    report.line("OOOOOOOOOOOOO")
    report.line("PPPPPPPPPPPPPPPPPPPPP")
    report.line("KKKKKKKKK")
    report.line("Low   Medium   High   V. High")
    return report


def salt_ph(soil):
    """18: pH in salt, neutralizable acidity printed N.A., lb/A."""
    report = Report("Soil Test Report")
    bed = soil.beds(1)[0]
    report.line(f"Sample no.: {bed}")
    tests = [
        ("pHs (salt pH)", "salt-ph", "", "", "cacl2"), ("Phosphorus, Bray I", "phosphorus", "lb/A", "lb/acre", "bray-p1"),
        ("Potassium, ammonium acetate", "potassium", "lb/A", "lb/acre", "ammonium-acetate"), ("Calcium, ammonium acetate", "calcium", "lb/A", "lb/acre", "ammonium-acetate"),
        ("Magnesium, ammonium acetate", "magnesium", "lb/A", "lb/acre", "ammonium-acetate"), ("Organic matter, LOI", "organic-matter", "%", "%", "loss-on-ignition"),
        ("Neutralizable acidity", "exchangeable-acidity", "meq/100g", "meq/100 g", "-"), ("Cation exchange capacity", "cec", "meq/100g", "meq/100 g", "-"),
    ]
    listing(report, soil, bed, tests, ["Soil test information", "Result", "Unit", "Rating"], ["Low", "Medium", "High"])
    return report


def depths(soil):
    """19: two depths of each sample, nitrate in ppm and in lb/A."""
    report = Report("Soil analysis")
    rows = [["Sample", "Depth (in)", "pH", "Nitrate-N ppm", "Olsen P ppm", "K ppm", "Soluble salts mmho/cm"]]
    for bed in soil.beds(2):
        for top, bottom in ((0, 6), (6, 24)):
            ph, no3, p, k, ec = (soil.number(x) for x in ("ph", "nitrate-n", "phosphorus", "potassium", "ec"))
            name = f"{bed} {top}-{bottom}"
            rows.append([name, f"{top}-{bottom}", ph, no3, p, k, ec])
            for prop, number, unit, method in (("ph", ph, "", "-"), ("nitrate-n", no3, "mg/kg", "-"), ("phosphorus", p, "mg/kg", "olsen"), ("potassium", k, "mg/kg", "-"), ("ec", ec, "dS/m", "-")):
                report.says(name, prop, number, unit, method)
    report.table(rows)
    return report


def arid(soil):
    """20: saturated paste, words for lime and texture, AB-DTPA."""
    report = Report("Soil Test Report and Interpretations")
    bed = soil.beds(1)[0]
    report.line(f"Identification: {bed}")
    rows = [["Soil test", "Result", "Interpretation"]]
    for label, prop, unit, method, printed in (
        ("pH (saturated paste)", "ph", "", "saturated-paste", ""), ("Salinity, ECe dS/m (saturated paste)", "ec", "dS/m", "saturated-paste", ""),
        ("Phosphorus, AB-DTPA (mg/kg)", "phosphorus", "mg/kg", "ab-dtpa", ""), ("Potassium, AB-DTPA (mg/kg)", "potassium", "mg/kg", "ab-dtpa", ""),
        ("Zinc, AB-DTPA (mg/kg)", "zinc", "mg/kg", "ab-dtpa", ""), ("Organic matter (%)", "organic-matter", "%", "-", ""),
    ):
        number = soil.number(prop)
        rows.append([label, number, soil.pick(["Low", "Adequate", "High"])])
        report.says(bed, prop, number, unit, method)
    report.says(bed, "free-lime", "Medium")
    rows += [["Lime estimate", "Medium", ""], ["Texture estimate", "Sandy loam", ""]]
    report.table(rows)
    return report


def deep_south(soil):
    """21: Lancaster extract in lb/ac."""
    report = Report("Soil test report")
    report.line("Extractant: Lancaster")
    columns = [
        Column("Sample No.", makes=NAME), Column("pH", "ph", ""), Column("CEC meq/100g", "cec", "meq/100 g"),
        Column("P lbs/acre", "phosphorus", "lb/acre", "lancaster"), Column("K lbs/acre", "potassium", "lb/acre", "lancaster"), Column("Ca lbs/acre", "calcium", "lb/acre", "lancaster"),
        Column("Mg lbs/acre", "magnesium", "lb/acre", "lancaster"), Column("Zn lbs/acre", "zinc", "lb/acre", "lancaster"), Column("O.M. %", "organic-matter", "%"),
    ]
    wide(report, soil, columns, soil.beds(3))
    return report


def below_optimum_above(soil):
    """22: ppm by Mehlich-3 with words below, optimum, above; acidity by the Mehlich buffer."""
    report = Report("Soil Test Report")
    bed = soil.beds(1)[0]
    report.line(f"Sample name: {bed}")
    m = "mehlich-3"
    tests = [
        ("Soil pH (1:1)", "ph", "", "", "water-1-1"), ("Mehlich buffer pH", "buffer-ph", "", "", "mehlich-buffer"),
        ("Phosphorus (Mehlich-3)", "phosphorus", "ppm", "mg/kg", m), ("Potassium (Mehlich-3)", "potassium", "ppm", "mg/kg", m),
        ("Magnesium (Mehlich-3)", "magnesium", "ppm", "mg/kg", m), ("Calcium (Mehlich-3)", "calcium", "ppm", "mg/kg", m),
        ("CEC", "cec", "meq/100 g", "meq/100 g", "-"),
    ]
    listing(report, soil, bed, tests, ["Analysis", "Result", "Unit", "Level"], ["Below", "Optimum", "Above"])
    report.line("Recommendation: apply 40 lb N, 20 lb P2O5 and 60 lb K2O per acre.")
    return report


def health(soil):
    """23: indicator, value, a score from 0 to 100, and a constraint."""
    report = Report("Soil health report")
    bed = soil.beds(1)[0]
    report.line(f"Sample ID: {bed}")
    rows = [["Indicator", "Value", "Score", "Constraint"]]
    rows.append(["Surface hardness (psi)", "120", "62", ""])
    rows.append(["Aggregate stability (%)", "41", "70", ""])
    rows.append(["Active carbon (ppm)", "512", "48", ""])
    for label, prop, unit, method in (
        ("Organic matter (%)", "organic-matter", "%", "-"), ("Soil pH", "ph", "", "-"), ("Modified Morgan phosphorus (ppm)", "phosphorus", "mg/kg", "modified-morgan"),
        ("Modified Morgan potassium (ppm)", "potassium", "mg/kg", "modified-morgan"),
    ):
        number = soil.number(prop)
        rows.append([label, number, str(soil.dice.randint(20, 100)), ""])
        report.says(bed, prop, number, unit, method)
    report.table(rows)
    return report


def glued_ratings(soil):
    """24: numbers with a rating glued on: `18 L`, `142M`, `< 0.2 VL`."""
    report = Report("Soil analysis report")
    heads = [
        ("Sample", None, "", ""), ("OM %", "organic-matter", "%", "-"), ("Weak Bray P ppm", "phosphorus", "mg/kg", "bray-p1"), ("K ppm", "potassium", "mg/kg", "-"),
        ("Mg ppm", "magnesium", "mg/kg", "-"), ("Ca ppm", "calcium", "mg/kg", "-"), ("pH", "ph", "", "-"), ("CEC meq/100g", "cec", "meq/100 g", "-"),
        ("Zn ppm", "zinc", "mg/kg", "-"), ("Boron ppm", "boron", "mg/kg", "-"),
    ]
    rows = [[h for h, *_ in heads]]
    for bed in soil.beds(3):
        row = [bed]
        for head, prop, unit, method in heads[1:]:
            number = soil.number(prop)
            if prop in ("ph", "cec"):
                row.append(number)
                report.says(bed, prop, number, unit, method)
                continue
            mark = soil.pick(MARKS)
            if prop == "boron":
                number = "< 0.2"
            row.append(f"{number}{soil.pick(['', ' '])}{mark}")
            report.says(bed, prop, number, unit, method, mark)
        rows.append(row)
    report.table(rows)
    return report


def british(soil):
    """25: mg/l with an index beside it; `2-` is an index, no number."""
    report = Report("Soil analysis")
    rows = [["Sample", "pH", "P mg/l (Olsen)", "P Index", "K mg/l (ammonium nitrate)", "K Index", "Mg mg/l (ammonium nitrate)", "Mg Index"]]
    for bed in soil.beds(4):
        ph, p, k, mg = (soil.number(x) for x in ("ph", "phosphorus", "potassium", "magnesium"))
        rows.append([bed, ph, p, soil.pick("0123"), k, soil.pick(["1", "2-", "2+", "3"]), mg, soil.pick("1234")])
        report.says(bed, "ph", ph, "")
        report.says(bed, "phosphorus", p, "mg/L", "olsen")
        report.says(bed, "potassium", k, "mg/L", "ammonium-nitrate")
        report.says(bed, "magnesium", mg, "mg/L", "ammonium-nitrate")
    report.table(rows)
    return report


def northern(soil):
    """26: words with plus and minus beside mg/l by modified Morgan."""
    report = Report("Soil analysis")
    bed = soil.beds(1)[0]
    report.line(f"Sample: {bed}")
    report.line("Extractant: modified Morgan's")
    tests = [(n, p, "mg/l", "mg/L", "modified-morgan") for n, p in [("Phosphorus", "phosphorus"), ("Potassium", "potassium"), ("Magnesium", "magnesium")]]
    listing(report, soil, bed, [("pH", "ph", "", "", "-")] + tests, ["Determination", "Result", "Units", "Status"], ["VL", "L", "M-", "M+", "H"])
    return report


def irish(soil):
    """27: Morgan's in mg/l with an index from 1 to 4 and lime in t/ha."""
    report = Report("Soil sample results")
    report.line("P, K and Mg by Morgan's extract")
    rows = [["Sample", "pH", "P (mg/l)", "P Index", "K (mg/l)", "K Index", "Mg (mg/l)", "Lime (t/ha)"]]
    for bed in soil.beds(3):
        ph, p, k, mg = (soil.number(x) for x in ("ph", "phosphorus", "potassium", "magnesium"))
        rows.append([bed, ph, p, soil.pick("1234"), k, soil.pick("1234"), mg, soil.pick(["0", "2.5", "5"])])
        report.says(bed, "ph", ph, "")
        for prop, number in (("phosphorus", p), ("potassium", k), ("magnesium", mg)):
            report.says(bed, prop, number, "mg/L", "morgan")
    report.table(rows)
    return report


def german(soil):
    """28: mg/100 g of oxides, classes A to E, decimal commas."""
    report = Report("Bodenuntersuchung", decimal=",")
    rows = [["Probe", "Bodenart", "pH (CaCl2)", "P2O5 mg/100 g (CAL)", "Klasse", "K2O mg/100 g (CAL)", "Klasse", "Mg mg/100 g", "Klasse", "Humus %"]]
    for bed in soil.beds(4):
        ph = soil.number("salt-ph").replace(".", ",")
        p, k, mg = (soil.number(x, "mg/100 g").replace(".", ",") for x in ("phosphorus", "potassium", "magnesium"))
        om = soil.number("organic-matter").replace(".", ",")
        rows.append([bed, "sL", ph, p, soil.pick("ABCDE"), k, soil.pick("ABCDE"), mg, soil.pick("ABCDE"), om])
        report.says(bed, "salt-ph", ph, "", "cacl2")
        report.says(bed, "phosphorus", p, "mg/100 g", "cal", share=SHARE["P2O5"])
        report.says(bed, "potassium", k, "mg/100 g", "cal", share=SHARE["K2O"])
        report.says(bed, "magnesium", mg, "mg/100 g")
        report.says(bed, "organic-matter", om, "%")
    report.table(rows)
    return report


def german_list(soil):
    """28b: a list with ranges in words, commas for decimals and dots for thousands."""
    report = Report("Bodenanalyse", decimal=",")
    bed = soil.beds(1)[0]
    report.line(f"Probe: {bed}")
    rows = [["Nährstoff", "gemessen", "Einheit", "Optimum"]]
    for label, prop, span, number in (
        ("Phosphor", "phosphorus", "50 bis 150", "43,5"), ("Kalium", "potassium", "100 bis 300", "188,2"), ("Magnesium", "magnesium", "80 bis 200", "97,4"),
        ("Calcium", "calcium", "2.000 bis 15.000", soil.pick(["2.450,5", "3.120,0"])), ("Zink", "zinc", "1 bis 8", "<2,3"), ("Bor", "boron", "0,3 bis 1,5", "0,8"),
    ):
        rows.append([label, number, "mg/kg", span])
        report.says(bed, prop, number.replace(".", ""), "mg/kg")
    ph = soil.number("ph").replace(".", ",")
    rows.append(["pH-Wert (H2O)", ph, "", "6,0 bis 7,2"])
    report.says(bed, "ph", ph, "")
    report.table(rows)
    return report


def french(soil):
    """29: oxides in g/kg, pH eau, decimal commas."""
    report = Report("Analyse de terre", decimal=",")
    bed = soil.beds(1)[0]
    report.line(f"Échantillon : {bed}")
    rows = [["Détermination", "Résultat", "Unité", "Appréciation"]]
    for label, prop, unit_text, unit, method, share, number in (
        ("pH eau", "ph", "", "", "-", 1.0, soil.number("ph")), ("Matière organique (M.O.)", "organic-matter", "%", "%", "-", 1.0, soil.number("organic-matter")),
        ("P2O5 Olsen", "phosphorus", "g/kg", "g/kg", "olsen", SHARE["P2O5"], f"{soil.dice.uniform(0.02, 0.2):.3f}"),
        ("K2O échangeable", "potassium", "g/kg", "g/kg", "-", SHARE["K2O"], f"{soil.dice.uniform(0.05, 0.5):.3f}"),
        ("MgO échangeable", "magnesium", "g/kg", "g/kg", "-", SHARE["MgO"], f"{soil.dice.uniform(0.05, 0.4):.3f}"),
        ("CEC Metson", "cec", "meq/100 g", "meq/100 g", "-", 1.0, soil.number("cec")),
        ("Calcaire total", "free-lime", "%", "%", "-", 1.0, soil.number("free-lime")),
    ):
        number = number.replace(".", ",")
        rows.append([label, number, unit_text, soil.pick(["faible", "satisfaisant", "élevé"])])
        report.says(bed, prop, number, unit, method, share=share)
    report.table(rows)
    return report


def ontario(soil):
    """30: bicarbonate P and ammonium acetate K in mg/L, zinc and manganese as indices."""
    report = Report("Soil test report")
    columns = [
        Column("Sample ID", makes=NAME), Column("pH", "ph", ""), Column("Buffer pH (Sikora)", "buffer-ph", "", "sikora-buffer", blank=0.5),
        Column("P (sodium bicarbonate) mg/L", "phosphorus", "mg/L", "olsen"), Column("K (ammonium acetate) mg/L", "potassium", "mg/L", "ammonium-acetate"),
        Column("Mg (ammonium acetate) mg/L", "magnesium", "mg/L", "ammonium-acetate"), Column("Zn Index", "zinc", "index", makes=whole(10, 60)), Column("Mn Index", "manganese", "index", makes=whole(10, 60)),
        Column("OM %", "organic-matter", "%"),
    ]
    wide(report, soil, columns, soil.beds(4))
    return report


def australian(soil):
    """31: 1:5 mixtures, Colwell, PBI, exchangeable cations, desirable levels beside results."""
    report = Report("Soil analysis report")
    bed = soil.beds(1)[0]
    report.line(f"Sample ID: {bed}")
    rows = [["Analyte", "Unit", "Result", "Desirable level"]]
    for label, unit_text, prop, unit, method, span in (
        ("pH (1:5 water)", "", "ph", "", "water-1-5", "5.5-7.5"), ("pH (1:5 CaCl2)", "", "salt-ph", "", "cacl2", "5.0-6.5"),
        ("Electrical conductivity (1:5 water)", "dS/m", "ec", "dS/m", "water-1-5", "< 0.3"), ("Organic carbon (Walkley-Black)", "%", "organic-carbon", "%", "walkley-black", "> 2"),
        ("Phosphorus (Colwell)", "mg/kg", "phosphorus", "mg/kg", "colwell", "50-100"), ("Sulfur (KCl-40)", "mg/kg", "sulfur", "mg/kg", "kcl-40", "> 8"),
        ("Exchangeable calcium", "meq/100 g", "calcium", "meq/100 g", "-", "3-20"), ("Exchangeable magnesium", "meq/100 g", "magnesium", "meq/100 g", "-", "1-5"),
        ("Exchangeable potassium", "meq/100 g", "potassium", "meq/100 g", "-", "> 0.5"), ("Exchangeable sodium", "meq/100 g", "sodium", "meq/100 g", "-", "< 1"),
    ):
        number = soil.number(prop, unit or "mg/kg")
        rows.append([label, unit_text, number, span])
        report.says(bed, prop, number, unit, method)
    rows.append(["Phosphorus buffer index (PBI)", "", "96", "< 280"])
    report.says(bed, "pbi", "96", "", "-")
    report.table(rows)
    return report


def new_zealand(soil):
    """32: volumetric Olsen P, me/100 g cations, volume weight."""
    report = Report("Soil test")
    columns = [
        Column("Sample Name", makes=NAME), Column("pH", "ph", ""), Column("Olsen Phosphorus mg/L", "phosphorus", "mg/L", "olsen"),
        Column("Potassium me/100g", "potassium", "meq/100 g"), Column("Calcium me/100g", "calcium", "meq/100 g"), Column("Magnesium me/100g", "magnesium", "meq/100 g"),
        Column("Sodium me/100g", "sodium", "meq/100 g"), Column("CEC me/100g", "cec", "meq/100 g"), Column("Total Base Saturation %", "base-saturation", "%"),
        Column("Volume Weight g/mL", "bulk-density", "g/cm³"),
    ]
    wide(report, soil, columns, soil.beds(3))
    return report


def card(soil):
    """33: twelve parameters, main nutrients in kg/ha, the others in ppm."""
    report = Report("Soil card")
    bed = soil.beds(1)[0]
    report.line(f"Sample: {bed}")
    tests = [
        ("pH", "ph", "", "", "-"), ("EC", "ec", "dS/m", "dS/m", "-"), ("Organic Carbon (OC)", "organic-carbon", "%", "%", "-"),
        ("Available Phosphorus (P)", "phosphorus", "kg/ha", "kg/ha", "-"), ("Available Potassium (K)", "potassium", "kg/ha", "kg/ha", "-"),
        ("Available Sulphur (S)", "sulfur", "ppm", "mg/kg", "-"), ("Available Zinc (Zn)", "zinc", "ppm", "mg/kg", "-"), ("Available Boron (B)", "boron", "ppm", "mg/kg", "-"),
        ("Available Iron (Fe)", "iron", "ppm", "mg/kg", "-"), ("Available Manganese (Mn)", "manganese", "ppm", "mg/kg", "-"), ("Available Copper (Cu)", "copper", "ppm", "mg/kg", "-"),
    ]
    listing(report, soil, bed, tests, ["Parameter", "Test value", "Unit", "Rating"], ["Low", "Medium", "High"])
    return report


def brazilian(soil):
    """34: mg/dm3 and cmolc/dm3, decimal commas."""
    report = Report("Análise de solo", decimal=",")
    heads = [
        ("Amostra", None, "", ""), ("pH CaCl2", "salt-ph", "", "cacl2"), ("M.O. g/kg", "organic-matter", "g/kg", "-"), ("P resina mg/dm3", "phosphorus", "mg/L", "resin"),
        ("K mmolc/dm3", None, "", ""), ("Ca cmolc/dm3", "calcium", "meq/100 cm³", "-"), ("Mg cmolc/dm3", "magnesium", "meq/100 cm³", "-"),
        ("CTC cmolc/dm3", "cec", "meq/100 cm³", "-"), ("V %", "base-saturation", "%", "-"),
    ]
    heads = [h for h in heads if h[0] != "K mmolc/dm3"]
    rows = [[h for h, *_ in heads]]
    for bed in soil.beds(4):
        row = [bed]
        for _, prop, unit, method in heads[1:]:
            number = soil.number(prop, unit or "mg/kg").replace(".", ",")
            row.append(number)
            report.says(bed, prop, number, unit, method)
        rows.append(row)
    report.table(rows)
    return report


def spanish(soil):
    """35: M.O., C.I.C., C.E. in a list."""
    report = Report("Análisis de suelo")
    bed = soil.beds(1)[0]
    report.line(f"Muestra: {bed}")
    rows = [["Determinación", "Resultado", "Unidad", "Nivel"]]
    for label, unit_text, prop, unit, method in (
        ("pH (1:1)", "", "ph", "", "water-1-1"), ("M.O.", "%", "organic-matter", "%", "-"), ("Fósforo (Olsen)", "ppm", "phosphorus", "mg/kg", "olsen"),
        ("Potasio", "meq/100 g", "potassium", "meq/100 g", "-"), ("Calcio", "meq/100 g", "calcium", "meq/100 g", "-"), ("Magnesio", "meq/100 g", "magnesium", "meq/100 g", "-"),
        ("Sodio", "meq/100 g", "sodium", "meq/100 g", "-"), ("C.I.C.", "meq/100 g", "cec", "meq/100 g", "-"), ("C.E. (1:5)", "dS/m", "ec", "dS/m", "water-1-5"),
    ):
        number = soil.number(prop, unit or "mg/kg")
        rows.append([label, number, unit_text, soil.pick(["bajo", "medio", "alto"])])
        report.says(bed, prop, number, unit, method)
    report.table(rows)
    return report


def across_pages(soil):
    """A table so long that it goes on over pages, with blanks and non-detects."""
    report = Report("Soil Test Report")
    report.line("Extraction: Mehlich-3. Depth 0-6 in.")
    m, ppm = "mehlich-3", "mg/kg"
    columns = [
        Column("Sample", makes=NAME), Column("pH", "ph", ""), Column("Buffer pH", "buffer-ph", "", blank=0.5), Column("OM %", "organic-matter", "%"),
        Column("P ppm", "phosphorus", ppm, m, below=0.1), Column("K ppm", "potassium", ppm, m), Column("Mg ppm", "magnesium", ppm, m, blank=0.1), Column("Zn ppm", "zinc", ppm, m, blank=0.1),
    ]
    wide(report, soil, columns, [f"Plot {at}" for at in range(1, 91)])
    return report


def side_by_side(soil):
    """Two samples side by side, one property a row."""
    report = Report("Soil Test Report")
    first, second = soil.beds(2)
    report.line("All nutrients by Mehlich-3")
    rows = [["Property", "Unit", first, second]]
    for label, unit_text, prop, unit in (
        ("pH", "", "ph", ""), ("Organic matter", "%", "organic-matter", "%"), ("Phosphorus", "ppm", "phosphorus", "mg/kg"), ("Potassium", "ppm", "potassium", "mg/kg"),
        ("Magnesium", "ppm", "magnesium", "mg/kg"), ("Calcium", "ppm", "calcium", "mg/kg"), ("Zinc", "ppm", "zinc", "mg/kg"),
    ):
        a, b = soil.number(prop), soil.number(prop)
        if soil.chance(0.15):
            b = ""
        rows.append([label, unit_text, a, b])
        method = "mehlich-3" if prop in EXTRACTED else "-"
        report.says(first, prop, a, unit, method)
        report.says(second, prop, b, unit, method)
    report.table(rows)
    return report


def plain_list(soil):
    """Lines as a person types them from paper."""
    report = Report("Soil test")
    bed = soil.beds(1)[0]
    report.line(f"Sample: {bed}")
    report.line("Method: Mehlich-3")
    for label, prop, unit_text, unit in (
        ("pH", "ph", "", ""), ("Organic matter", "organic-matter", " %", "%"), ("Phosphorus", "phosphorus", " ppm", "mg/kg"), ("Potassium", "potassium", "ppm", "mg/kg"),
        ("Calcium", "calcium", " ppm", "mg/kg"), ("Magnesium", "magnesium", " ppm", "mg/kg"), ("Sulfur", "sulfur", " ppm", "mg/kg"), ("Nitrate-N", "nitrate-n", " ppm", "mg/kg"),
    ):
        number = soil.number(prop)
        report.line(f"{label}: {number}{unit_text}")
        report.says(bed, prop, number, unit, "mehlich-3" if prop in EXTRACTED else "-")
    return report


MADE_OF = {
    "01-method-export": method_export_wide, "02-short-codes": short_codes, "03-results-and-advice": results_and_advice, "04-research": research,
    "05-tidy": tidy, "06-units-row": units_row, "07-grouped": grouped, "08-block-on-top": block_on_top, "10-panels": panels, "11-per-acre": per_acre,
    "12-strip": strip, "13-number-below": glued_index, "14-indices": indices, "15-words": bars, "16-lime-index": fact_sheet, "17-letter-bars": letter_bars,
    "18-salt-ph": salt_ph, "19-depths": depths, "20-arid": arid, "21-lancaster": deep_south, "22-below-above": below_optimum_above, "23-scores": health,
    "24-glued-ratings": glued_ratings, "25-index-beside": british, "26-plus-minus": northern, "27-index-1-4": irish, "28-classes": german,
    "28-thousands": german_list, "29-oxides-g-kg": french, "30-per-litre": ontario, "31-desirable": australian, "32-volumetric": new_zealand, "33-per-hectare": card,
    "34-decimal-comma": brazilian, "35-spanish": spanish, "36-across-pages": across_pages, "37-side-by-side": side_by_side, "38-typed": plain_list,
}
