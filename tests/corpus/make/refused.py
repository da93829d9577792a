"""Files that must be refused, and what the refusal must speak of."""

import io
import zipfile

import openpyxl
from PIL import Image, ImageDraw
from pypdf import PdfReader, PdfWriter
from reportlab.pdfgen.canvas import Canvas
from reportlab.lib.utils import ImageReader


def picture():
    image = Image.new("1", (600, 200), 1)
    ImageDraw.Draw(image).text((20, 20), "Soil test   pH 6.4   Phosphorus 18 ppm", fill=0)
    return image


def make(folder):
    # A scan: the page is a picture.
    canvas = Canvas(str(folder / "no-scan.pdf"), invariant=1)
    canvas.drawImage(ImageReader(picture().convert("L")), 50, 500, width=400, height=130)
    canvas.save()
    yield "no-scan.pdf", "pictures"

    out = io.BytesIO()
    canvas = Canvas(out, invariant=1)
    canvas.drawString(50, 700, "pH 6.4   Phosphorus (Olsen) 18 mg/kg")
    canvas.save()
    writer = PdfWriter()
    writer.append(PdfReader(io.BytesIO(out.getvalue())))
    writer._ID = None
    writer.encrypt("invented", algorithm="RC4-128")
    with open(folder / "no-password.pdf", "wb") as file:
        writer.write(file)
    yield "no-password.pdf", "password"

    book = openpyxl.Workbook()
    book.active.append(["Chair", "Colour", "Price"])
    book.active.append(["Blue one", "blue", 49])
    book.active.append(["Red one", "red", 35])
    from writers import save

    save(book, folder / "no-soil-table.xlsx")
    yield "no-soil-table.xlsx", "none of its names"

    with zipfile.ZipFile(folder / "no-document.docx", "w") as archive:
        info = zipfile.ZipInfo("word/document.xml", (2026, 3, 2, 9, 0, 0))
        archive.writestr(info, "<w:document/>")
    yield "no-document.docx", "word processor"

    with zipfile.ZipFile(folder / "no-archive.zip", "w") as archive:
        archive.writestr(zipfile.ZipInfo("report.txt", (2026, 3, 2, 9, 0, 0)), "pH 6.4")
    yield "no-archive.zip", "zip"

    picture().save(folder / "no-photo.png")
    yield "no-photo.png", "picture"

    (folder / "no-letter.txt").write_text("Dear neighbour,\nthank you for the lovely afternoon under the quince.\nYours, R.\n")
    yield "no-letter.txt", "No soil test result"
