"""Makes the corpus: `make.py FOLDER`. See ../README.md."""

import pathlib
import sys
import tempfile

import modus
import refused
from layouts import MADE_OF
from soil import Soil
from writers import (
    Office, clipboard, delimited, distilled, fpdf_pdf, openpyxl_book, pasted, reportlab_pdf, text, text_numbers, typewriter, weasyprint_pdf, web,
    xlsxwriter_book,
)
from reportlab.lib.pagesizes import letter

folder = pathlib.Path(sys.argv[1])
files = folder / "files"
files.mkdir(parents=True, exist_ok=True)
for old in files.iterdir():
    old.unlink()

work = pathlib.Path(tempfile.mkdtemp())
office = Office(work)

RULED = "table { border-collapse: collapse } td, th { border: 0.5pt solid #666 }"
RIGHT = "td + td { text-align: right } th + th { text-align: center }"

# What to call it, how the file's name ends, and who writes it.
WRITERS = {
    "csv": (".csv", delimited(",", "utf-8")),
    "csv-bom": (".csv", delimited(",", "utf-8", b"\xef\xbb\xbf")),
    "semicolon": (".csv", delimited(";", "cp1252")),
    "utf16": (".txt", delimited("\t", "utf-16-le", b"\xff\xfe")),
    "tsv": (".tsv", delimited("\t", "utf-8")),
    "text": (".txt", text),
    "pasted": (".txt", pasted),
    "html": (".html", web),
    "clipboard": (".html", clipboard),
    "openpyxl": (".xlsx", openpyxl_book),
    "text-cells": (".xlsx", text_numbers),
    "xlsxwriter": (".xlsx", xlsxwriter_book),
    "office": (".xls", office.writer("xls", ".xlsx")),
    "office-ods": (".ods", office.writer("ods", ".xlsx")),
    "calc": (".pdf", office.writer("pdf", ".xlsx")),
    "writer": (".pdf", office.writer("pdf:writer_web_pdf_Export", ".html")),
    "standard": (".pdf", reportlab_pdf()),
    "bare": (".pdf", reportlab_pdf(grid=False, paper=letter)),
    "subset": (".pdf", reportlab_pdf(font=True, right=True)),
    "turned": (".pdf", reportlab_pdf(font=True, rotate=90)),
    "styled": (".pdf", weasyprint_pdf(RULED)),
    "airy": (".pdf", weasyprint_pdf(RIGHT)),
    "cells": (".pdf", fpdf_pdf),
    "distilled": (".pdf", distilled),
    "typewriter": (".pdf", typewriter),
}
SHEETS = ["csv", "openpyxl", "office-ods", "html"]
PAPER = ["standard", "airy", "writer", "text"]
# Layouts with other ways of their own; the rest by what they are.
WAYS = {
    "01-method-export": ["csv", "csv-bom", "openpyxl", "utf16"], "02-short-codes": ["csv", "text-cells", "office"], "03-results-and-advice": ["csv", "xlsxwriter", "tsv"],
    "04-research": ["csv-bom", "tsv", "office"], "05-tidy": ["csv", "xlsxwriter", "office-ods", "html"], "06-units-row": ["openpyxl", "office", "csv"],
    "07-grouped": ["openpyxl", "text-cells", "clipboard"], "08-block-on-top": ["openpyxl", "xlsxwriter", "office-ods", "calc"],
    "10-panels": ["standard", "styled", "cells", "html"], "11-per-acre": ["bare", "subset", "writer", "text"], "12-strip": ["standard", "styled", "typewriter"],
    "13-number-below": ["standard", "airy", "html"], "14-indices": ["subset", "csv", "clipboard"], "16-lime-index": ["cells", "distilled", "csv"],
    "17-letter-bars": ["typewriter", "standard", "text"], "18-salt-ph": ["typewriter", "subset", "writer", "pasted"], "19-depths": ["subset", "openpyxl", "csv", "airy"],
    "24-glued-ratings": ["cells", "subset", "csv", "typewriter"], "25-index-beside": ["styled", "subset", "xlsxwriter", "turned"],
    "28-classes": ["semicolon", "styled", "text-cells", "subset"], "28-thousands": ["html", "airy", "text", "pasted"], "29-oxides-g-kg": ["semicolon", "airy", "subset", "text"],
    "34-decimal-comma": ["semicolon", "styled", "text-cells"], "35-spanish": ["airy", "text", "semicolon", "subset"],
    "36-across-pages": ["standard", "styled", "cells", "calc", "bare", "office", "typewriter"], "37-side-by-side": ["standard", "styled", "openpyxl", "text", "distilled"],
    "38-typed": ["text", "standard", "writer", "typewriter"], "32-volumetric": ["styled", "turned", "office", "csv"], "30-per-litre": ["distilled", "cells", "html", "tsv"],
    "31-desirable": ["subset", "styled", "writer", "text"], "21-lancaster": ["typewriter", "standard", "csv", "calc"],
}

truths = {}
for at, (layout, made_of) in enumerate(MADE_OF.items()):
    for way, name in enumerate(WAYS.get(layout, PAPER)):
        report = made_of(Soil(at * 100 + way))
        ending, write = WRITERS[name]
        path = files / f"{layout}.{name}{ending}"
        write(report, path)
        truths[path.name] = report.truth
office.run()
for name, truth in modus.make(files):
    truths[name] = truth

with open(folder / "truth.tsv", "w") as out:
    out.write("file\tsample\tproperty\tsaid\tnumber\tunit\tmethod\trating\n")
    for name in sorted(truths):
        for truth in truths[name]:
            out.write(truth.row(name) + "\n")
with open(folder / "refused.tsv", "w") as out:
    out.write("file\tthe message speaks of\n")
    for name, words in refused.make(files):
        out.write(f"{name}\t{words}\n")
total = sum(path.stat().st_size for path in files.iterdir())
print(f"{len(list(files.iterdir()))} files, {total} bytes, {sum(map(len, truths.values()))} results")
