"""A report as blocks of lines and tables, and the truth about it.

The truth is written from the values while the report is put together; no
reader has a part in it."""

from dataclasses import dataclass, field


@dataclass
class Truth:
    """One result that stands in the report."""

    sample: str  # its name, or "#1" for the first sample of a report that names none
    prop: str
    said: str  # "=", "<", ">", "nd", "rating"
    number: float  # of the element, in the printed unit; 0 without one
    unit: str  # "-" when none is printed
    method: str  # "-" when none is printed
    rating: str = "-"

    def row(self, file):
        number = f"{self.number:.6g}"
        return "\t".join([file, self.sample, self.prop, self.said, number, self.unit, self.method, self.rating])


@dataclass
class Report:
    """Blocks: a string is a line; a list of rows is a table."""

    title: str
    blocks: list = field(default_factory=list)
    truth: list = field(default_factory=list)
    decimal: str = "."
    # Which rows of each table are its head, for the writers that set it apart.
    heads: int = 1
    landscape: bool = False

    def line(self, text):
        self.blocks.append(text)

    def table(self, rows):
        self.blocks.append([[str(c) for c in row] for row in rows])

    def says(self, sample, prop, printed, unit="-", method="-", rating="-", share=1.0):
        """Notes a result as it was printed: `18`, `<2`, `> 5`, `ND`, `VH`, or nothing."""
        text = printed.strip().replace(",", ".") if self.decimal == "," else printed.strip().replace(",", "")
        if text in ("", "-", "–", "n/a", "NT"):
            return
        if text.upper() in ("ND", "N.D.", "ND (U)", "BDL", "N.N.", "NONE"):
            self.truth.append(Truth(sample, prop, "nd", 0, unit, method, rating))
            return
        if text in ("VL", "L", "M", "H", "VH", "Medium"):
            self.truth.append(Truth(sample, prop, "rating", 0, unit, method, text))
            return
        said = "="
        if text[0] in "<>":
            said, text = text[0], text[1:].strip()
        self.truth.append(Truth(sample, prop, said, float(text) * share, unit, method, rating))
