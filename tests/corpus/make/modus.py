"""Lab exchange files of the Modus standard, in the variants that are met.

Shape: the MIT-licensed JSON schemas of OADA and the Modus 1.0 XML schema."""

import json

from report import Report
from soil import Soil

TESTS = [
    ("pH", "ph", "none", "", "S-PH-1:1.02.07", "water-1-1"), ("OM", "organic-matter", "%", "%", "S-SOM-LOI.15", "loss-on-ignition"),
    ("P", "phosphorus", "ppm", "mg/kg", "S-P-B1-1:10.01.03", "bray-p1"), ("K", "potassium", "ppm", "mg/kg", "S-K-NH4AC.05", "ammonium-acetate"),
    ("Ca", "calcium", "ppm", "mg/kg", "S-CA-NH4AC.05", "ammonium-acetate"), ("Mg", "magnesium", "ppm", "mg/kg", "S-MG-NH4AC.05", "ammonium-acetate"),
    ("Zn", "zinc", "ppm", "mg/kg", "S-ZN-DTPA.05", "dtpa"), ("CEC", "cec", "meq/100g", "meq/100 g", "S-CEC.19", "-"),
]
WORDS = {"VL": "Very Low", "L": "Low", "M": "Medium", "H": "High", "VH": "Very High"}


def samples(report, soil, count=3, codes=True):
    for at in range(1, count + 1):
        name = str(at)
        results = []
        for element, prop, unit_text, unit, code, method in TESTS:
            value = soil.number(prop)
            rating = soil.pick(list(WORDS)) if soil.chance(0.6) else None
            results.append((element, value, unit_text, code if codes else None, rating))
            report.says(name, prop, value, unit, method if codes else "-", rating or "-")
        yield name, results


def xml(report, soil, path):
    parts = ['<?xml version="1.0" encoding="UTF-8"?>', '<ModusResult Version="1.0" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">',
             "<Event><EventMetaData><EventCode>00000000-0000-4000-8000-000000000001</EventCode><EventDate>2026-03-02</EventDate><EventType><Soil/></EventType></EventMetaData>",
             '<EventSamples><Soil><DepthRefs><DepthRef DepthID="1"><Name>Topsoil</Name><StartingDepth>0</StartingDepth><EndingDepth>6</EndingDepth><ColumnDepth>6</ColumnDepth><DepthUnit>in</DepthUnit></DepthRef></DepthRefs>',
             '<RecommendationRefs><Recommendation RecID="1"><Name>Vegetables</Name></Recommendation></RecommendationRefs>']
    for name, results in samples(report, soil):
        parts.append(f"<SoilSample><SampleMetaData><SampleNumber>{name}</SampleNumber></SampleMetaData><Depths><Depth DepthID=\"1\"><NutrientResults>")
        for element, value, unit, code, rating in results:
            said = f"<ValueDesc>{rating}</ValueDesc>" if rating else '<ValueDesc xsi:nil="true"/>'
            parts.append(f"<NutrientResult><Element>{element}</Element><Value>{value}</Value><ValueUnit>{unit}</ValueUnit><ModusTestID>{code}</ModusTestID><ValueType>Measured</ValueType>{said}</NutrientResult>")
        parts.append("</NutrientResults></Depth></Depths><NutrientRecommendations><NutrientRecommendation RecID=\"1\"><Recommendation><Element>P2O5</Element><Value>40</Value><ValueUnit>lb/ac</ValueUnit></Recommendation></NutrientRecommendation></NutrientRecommendations></SoilSample>")
    parts.append("</Soil></EventSamples></Event></ModusResult>")
    path.write_text("\n".join(parts))


def v1(by_element=False, wrapped=False, text_type=False, codes=True):
    def write(report, soil, path):
        found = []
        for name, results in samples(report, soil, codes=codes):
            rows = []
            for element, value, unit, code, rating in results:
                row = {"Element": element, "Value": float(value), "ValueUnit": unit}
                if code:
                    row["ModusTestID"] = code
                if rating:
                    row["ValueDesc"] = rating
                rows.append(row)
            many = {row["Element"]: row for row in rows} if by_element else rows
            found.append({"SampleMetaData": {"SampleNumber": name, "ReportID": 1}, "Depths": [{"DepthID": 1 if by_element else "1", "NutrientResults": many}]})
        event = {
            "EventMetaData": {"EventCode": "00000000-0000-4000-8000-000000000002", "EventDate": "2026-03-02", "EventType": "Soil" if text_type else {"Soil": True}},
            "EventSamples": {"Soil": {"DepthRefs": [{"DepthID": "1", "Name": "0 to 15 cm", "StartingDepth": 0, "EndingDepth": 15, "ColumnDepth": 15, "DepthUnit": "cm"}], "SoilSamples": found}},
        }
        whole = {"_type": "application/vnd.modus.v1.modus-result+json", "Events": [event]}
        if wrapped:
            whole = {"_type": "application/vnd.aggateway.modus.1+json", "ModusResult": {"Events": [event]}}
        path.write_text(json.dumps(whole, indent=1))

    return write


def slim(report, soil, path):
    units = {"none": "", "ppm": "mg/kg", "meq/100g": "meq/(100.g)"}
    out = {}
    for name, results in samples(report, soil):
        rows = {}
        for element, value, unit, code, _ in results:
            rows[f"r{element}"] = {"analyte": element, "value": float(value) if len(rows) % 2 else value, "units": units.get(unit, unit), "modusTestID": code}
        out[f"s{name}"] = {"lab": {"sampleid": name}, "results": rows}
    for truth in report.truth:
        truth.rating = "-"
    whole = {"_type": "application/vnd.modus.slim.v1.0+json", "id": "x", "date": "2026-03-02", "type": "soil", "depth": {"top": 0, "bottom": 6, "units": "[in_i]"}, "samples": out}
    path.write_text(json.dumps(whole, indent=1))


KINDS = {
    "09-modus-xml.xml": xml, "09-modus-array.json": v1(), "09-modus-by-element.json": v1(by_element=True), "09-modus-wrapped.json": v1(wrapped=True, text_type=True),
    "09-modus-no-codes.json": v1(codes=False), "09-modus-slim.json": slim,
}


def make(folder):
    for at, (name, write) in enumerate(KINDS.items()):
        report = Report("Modus")
        write(report, Soil(9000 + at), folder / name)
        yield name, report.truth
