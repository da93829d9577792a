"""Invented soils: names of beds, and numbers that a soil could have.

Nothing here comes from a laboratory, a garden or a person. The same seed gives
the same numbers, so that the files can be made again."""

import random

BEDS = [
    "Fig corner", "Lower terrace", "Bean rows", "Herb spiral", "North lawn", "Quince walk",
    "Pond bank", "Glasshouse 2", "Orchard east", "Rhubarb plot", "Nursery bed", "Hedge strip",
    "Old paddock", "Kale field", "Willow end", "Brick patch",
]

# The property as the engine calls it: lowest, highest, decimals, in the unit that follows it.
PPM = {
    "phosphorus": (4, 160, 0), "potassium": (40, 420, 0), "calcium": (500, 3200, 0),
    "magnesium": (40, 420, 0), "sodium": (8, 70, 0), "sulfur": (4, 40, 0), "zinc": (0.6, 9, 1),
    "manganese": (3, 60, 1), "copper": (0.4, 5, 1), "iron": (8, 120, 0), "boron": (0.3, 2, 1),
    "nitrate-n": (3, 60, 0), "ammonium-n": (1, 12, 1), "aluminum": (200, 900, 0), "lead": (12, 90, 0),
}
OTHER = {
    "ph": (5.2, 7.8, 1), "salt-ph": (4.8, 7.2, 1), "buffer-ph": (6.1, 7.3, 1),
    "organic-matter": (1.2, 8.5, 1), "organic-carbon": (0.8, 4.0, 2), "total-n": (0.08, 0.4, 2),
    "cec": (5, 25, 1), "ec": (0.1, 1.8, 2), "exchangeable-acidity": (0.4, 4, 1),
    "base-saturation": (60, 99, 0), "calcium-saturation": (45, 80, 1),
    "magnesium-saturation": (6, 22, 1), "potassium-saturation": (1, 8, 1),
    "sodium-saturation": (0.3, 5, 1), "acidity-saturation": (2, 30, 1), "sar": (0.5, 6, 1),
    "bulk-density": (0.9, 1.4, 2), "sand": (20, 70, 0), "silt": (10, 45, 0), "clay": (8, 35, 0),
    "nitrogen-release": (40, 110, 0), "free-lime": (0.5, 12, 1),
}
MEQ = {"potassium": (0.1, 1.2, 2), "calcium": (3, 16, 1), "magnesium": (0.4, 4, 1), "sodium": (0.05, 0.6, 2)}
# Share of the element in its oxide or ion, by atomic masses.
SHARE = {"P2O5": 0.4364, "K2O": 0.8301, "MgO": 0.6030, "CaO": 0.7147, "NO3": 0.2259, "SO4": 0.3338}

EXTRACTED = {
    "phosphorus", "potassium", "calcium", "magnesium", "sodium", "sulfur", "zinc", "manganese",
    "copper", "iron", "boron",
}


class Soil:
    """One stream of invented numbers."""

    def __init__(self, seed):
        self.dice = random.Random(seed)

    def number(self, prop, unit="mg/kg"):
        """A printed number of a property in a unit, with a point."""
        low, high, places = OTHER.get(prop) or PPM[prop]
        if unit in ("meq/100 g", "meq/100 cm³") and prop in MEQ:
            low, high, places = MEQ[prop]
        elif unit == "mmol(c)/kg":
            low, high, places = MEQ[prop][0] * 10, MEQ[prop][1] * 10, 1
        elif unit in ("lb/acre", "kg/ha"):
            low, high = low * 2, high * 2
        elif unit == "mg/100 g":
            low, high, places = low / 10 + 1, high / 10 + 2, 1
        elif unit == "g/kg" and prop in ("organic-matter", "organic-carbon", "sand", "silt", "clay"):
            low, high, places = low * 10, high * 10, max(0, places - 1)
        elif unit == "µS/cm":
            low, high, places = low * 1000, high * 1000, 0
        elif unit == "mg/kg" and prop in ("organic-carbon", "total-n"):
            low, high, places = low * 10_000, high * 10_000, 0
        return f"{self.dice.uniform(low, high):.{places}f}"

    def beds(self, count):
        return self.dice.sample(BEDS, count)

    def chance(self, share):
        return self.dice.random() < share

    def pick(self, things):
        return self.dice.choice(things)
