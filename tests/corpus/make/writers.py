"""The programs that write a report to a file."""

import csv
import html
import io
import os
import pathlib
import re
import shutil
import subprocess

import openpyxl
import xlsxwriter
from fpdf import FPDF
from openpyxl.styles import Font
from reportlab.lib import colors
from reportlab.lib.pagesizes import A4, landscape, letter
from reportlab.lib.styles import getSampleStyleSheet
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.platypus import Paragraph, SimpleDocTemplate, Spacer, Table, TableStyle
from weasyprint import HTML

FONT = "/usr/share/fonts/truetype/dejavu/DejaVuSans.ttf"


def rows_of(report):
    """All of a report as rows of one sheet."""
    for block in report.blocks:
        if isinstance(block, str):
            yield [block]
        else:
            yield from block
            yield []


def width(report):
    return max((len(row) for row in rows_of(report)), default=1)


# Text and delimited text.

def delimited(mark, encoding, bom=b""):
    def write(report, path):
        out = io.StringIO()
        writer = csv.writer(out, delimiter=mark, lineterminator="\r\n")
        for row in rows_of(report):
            writer.writerow(row)
        path.write_bytes(bom + out.getvalue().encode(encoding, "replace"))

    return write


def text(report, path):
    lines = []
    for block in report.blocks:
        if isinstance(block, str):
            lines.append(block)
            continue
        wide = max(len(row) for row in block)
        full = [row + [""] * (wide - len(row)) for row in block]
        columns = [max(len(row[i]) for row in full) for i in range(wide)]
        for row in full:
            lines.append("   ".join(c.ljust(columns[i]) for i, c in enumerate(row)).rstrip())
        lines.append("")
    path.write_text("\n".join(lines) + "\n")


def pasted(report, path):
    """As a table copied from a page or a sheet comes: tabs."""
    lines = ["\t".join(row) for row in rows_of(report)]
    path.write_text("\n".join(lines) + "\n")


# Web pages.

def page_of(report, style=""):
    parts = [f"<!doctype html><html><head><meta charset='utf-8'><title>{html.escape(report.title)}</title>"
             f"<style>{style}</style></head><body><h1>{html.escape(report.title)}</h1>"]
    for block in report.blocks:
        if isinstance(block, str):
            parts.append(f"<p>{html.escape(block)}</p>")
            continue
        parts.append("<table>")
        for at, row in enumerate(block):
            tag = "th" if at < report.heads else "td"
            cells = "".join(f"<{tag}>{html.escape(c)}</{tag}>" for c in row)
            parts.append(f"<tr>{cells}</tr>")
        parts.append("</table>")
    parts.append("</body></html>")
    return "\n".join(parts)


def web(report, path):
    path.write_text(page_of(report))


def clipboard(report, path):
    """A table as it lies on the clipboard, with the marks of the fragment."""
    body = page_of(report).split("<body>")[1].split("</body>")[0]
    path.write_text(f"<html><body><!--StartFragment-->{body}<!--EndFragment--></body></html>")


# Workbooks.

def is_number(text):
    return re.fullmatch(r"-?\d+(\.\d+)?", text) is not None


def openpyxl_book(report, path):
    book = openpyxl.Workbook()
    sheet = book.active
    sheet.title = "Results"
    sheet.append([report.title])
    sheet["A1"].font = Font(bold=True)
    if width(report) > 1:
        sheet.merge_cells(start_row=1, start_column=1, end_row=1, end_column=min(width(report), 6))
    for row in rows_of(report):
        sheet.append([float(c) if is_number(c) else (c or None) for c in row])
    for at in range(1, width(report) + 1):
        sheet.column_dimensions[openpyxl.utils.get_column_letter(at)].width = 15
    hidden = book.create_sheet("Lists")
    hidden.append(["pH", "9.9"])
    hidden.sheet_state = "hidden"
    save(book, path)


def save(book, path):
    import datetime

    fixed = datetime.datetime(2026, 3, 2, 9, 0, 0)
    book.properties.created = fixed
    book.properties.modified = fixed
    book.save(path)


def text_numbers(report, path):
    """Every cell as text, as some exports leave it."""
    book = openpyxl.Workbook()
    sheet = book.active
    sheet.title = "Data"
    for row in rows_of(report):
        sheet.append([c or None for c in row])
    save(book, path)


def xlsxwriter_book(report, path):
    import datetime

    book = xlsxwriter.Workbook(str(path))
    book.set_properties({"created": datetime.datetime(2026, 3, 2, 9, 0, 0)})
    sheet = book.add_worksheet("Soil")
    bold = book.add_format({"bold": True})
    # Not in the corner: a sheet may begin anywhere.
    for r, row in enumerate(rows_of(report)):
        for c, cell in enumerate(row):
            if is_number(cell):
                sheet.write_number(r + 2, c + 1, float(cell))
            elif cell:
                sheet.write_string(r + 2, c + 1, cell, bold if r < report.heads else None)
    book.close()


# PDF.

def plain(text):
    """The letters that the standard fonts of a PDF have."""
    table = {"₂": "2", "₅": "5", "₃": "3", "−": "-", "≤": "<=", "μ": "µ"}
    return "".join(table.get(c, c) for c in text)


def reportlab_pdf(font=None, grid=True, paper=A4, right=False, rotate=0):
    def write(report, path):
        name = "Helvetica"
        if font:
            name = "Body"
            pdfmetrics.registerFont(TTFont("Body", FONT))
        size = landscape(paper) if report.landscape or width(report) > 9 else paper
        style = getSampleStyleSheet()["Normal"].clone("body")
        style.fontName = name
        heads = getSampleStyleSheet()["Normal"].clone("head")
        heads.fontName, heads.fontSize, heads.leading = name, 7, 8
        clean = (lambda t: t) if font else plain
        flow = [Paragraph(html.escape(report.title), style), Spacer(1, 8)]
        for block in report.blocks:
            if isinstance(block, str):
                flow.append(Paragraph(html.escape(clean(block)), style))
                continue
            wide = max(len(row) for row in block)
            data = [[clean(c) for c in row] + [""] * (wide - len(row)) for row in block]
            if wide > 8:
                for at in range(report.heads):
                    data[at] = [Paragraph(html.escape(c), heads) for c in data[at]]
            table = Table(data, repeatRows=report.heads, colWidths=[(size[0] - 80) / wide] * wide if wide > 8 else None)
            rules = [("FONT", (0, 0), (-1, -1), name, 7 if wide > 8 else 9), ("VALIGN", (0, 0), (-1, -1), "TOP")]
            if grid:
                rules.append(("GRID", (0, 0), (-1, -1), 0.3, colors.grey))
            if right:
                rules.append(("ALIGN", (1, 0), (-1, -1), "RIGHT"))
            table.setStyle(TableStyle(rules))
            flow += [table, Spacer(1, 8)]
        turn = (lambda canvas, _: canvas.setPageRotation(rotate)) if rotate else (lambda *_: None)
        doc = SimpleDocTemplate(str(path), pagesize=size, leftMargin=40, rightMargin=40, invariant=1)
        doc.build(flow, onFirstPage=turn, onLaterPages=turn)

    return write


def weasyprint_pdf(style=""):
    def write(report, path):
        turned = "@page { size: A4 landscape }" if report.landscape or width(report) > 8 else "@page { size: A4 }"
        base = "body { font: 9pt 'DejaVu Sans' } td, th { padding: 2pt 5pt; text-align: left; font-size: 7pt }"
        HTML(string=page_of(report, turned + base + style)).write_pdf(str(path), uncompressed_pdf=False)
        without_dates(path)

    return write


def without_dates(path):
    """A PDF that says when it was made would differ at every making."""
    data = path.read_bytes()
    data = re.sub(rb"/(CreationDate|ModDate) ?\(D:[^)]*\)", lambda m: b"/" + m[1] + b" (D:20260302090000Z" + b" " * max(0, len(m[0]) - len(m[1]) - 22) + b")", data)
    path.write_bytes(data)


def fpdf_pdf(report, path):
    import datetime

    pdf = FPDF(orientation="L" if report.landscape or width(report) > 8 else "P")
    pdf.set_creation_date(datetime.datetime(2026, 3, 2, 9, 0, 0, tzinfo=datetime.timezone.utc))
    pdf.add_font("Body", "", FONT)
    pdf.set_font("Body", size=9)
    pdf.add_page()
    pdf.cell(0, 8, report.title, new_x="LMARGIN", new_y="NEXT")
    for block in report.blocks:
        if isinstance(block, str):
            pdf.multi_cell(0, 6, block, new_x="LMARGIN", new_y="NEXT")
            continue
        wide = max(len(row) for row in block)
        pdf.set_font("Body", size=7 if wide > 8 else 9)
        with pdf.table(first_row_as_headings=False, text_align="LEFT") as table:
            for row in block:
                line = table.row()
                for at in range(wide):
                    line.cell(row[at] if at < len(row) else "")
        pdf.set_font("Body", size=9)
        pdf.ln(4)
    pdf.output(str(path))


def distilled(report, path):
    """Written once more by another program: other fonts, other order."""
    first = path.with_suffix(".first.pdf")
    reportlab_pdf(font=True, grid=False)(report, first)
    subprocess.run(["gs", "-q", "-dNOPAUSE", "-dBATCH", "-sDEVICE=pdfwrite", f"-sOutputFile={path}", str(first)], check=True)
    first.unlink()


def typewriter(report, path):
    """Lines of one width, as old programs print."""
    from reportlab.pdfgen.canvas import Canvas

    lines = path.with_suffix(".txt")
    text(report, lines)
    longest = max(len(line) for line in lines.read_text().splitlines())
    size = landscape(A4) if longest > 100 else A4
    points = min(9.0, (size[0] - 60) / longest / 0.6)
    canvas = Canvas(str(path), pagesize=size, invariant=1)
    pdfmetrics.registerFont(TTFont("Mono", FONT.replace("Sans", "SansMono")))
    y = size[1] - 50
    canvas.setFont("Mono", points)
    for line in lines.read_text().splitlines():
        if y < 50:
            canvas.showPage()
            canvas.setFont("Mono", points)
            y = size[1] - 50
        canvas.drawString(30, y, line)
        y -= points * 1.4
    canvas.save()
    lines.unlink()


# By the office suite, many at a time.

class Office:
    """Collects what is to be converted, and converts it in one go."""

    def __init__(self, work):
        self.work = work
        self.jobs = []

    def writer(self, kind, by):
        def write(report, path):
            source = self.work / (path.stem + by)
            {".xlsx": openpyxl_book, ".html": web, ".data.xlsx": text_numbers}[by](report, source)
            self.jobs.append((source, kind, path))

        return write

    def run(self):
        for kind in sorted({kind for _, kind, _ in self.jobs}):
            sources = [source for source, k, _ in self.jobs if k == kind]
            out = self.work / "out"
            out.mkdir(exist_ok=True)
            subprocess.run(
                ["soffice", "--headless", f"-env:UserInstallation=file://{self.work}/profile", "--convert-to", kind,
                 "--outdir", str(out)] + [str(s) for s in sources],
                check=True, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL,
                env={**os.environ, "SOURCE_DATE_EPOCH": "1772442000"},
            )
            for source, k, path in self.jobs:
                if k == kind:
                    made = out / (source.stem + "." + kind.split(":")[0])
                    shutil.move(made, path)
                    if path.suffix == ".pdf":
                        without_dates(path)
