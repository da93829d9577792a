"""Cation exchange by PHREEQC, as an outside check: `python make.py > exchange.tsv`.

Needs the package phreeqpython (USGS PHREEQC as a library). In the first kind of
case activities are concentrations, as in the engine; in the second PHREEQC's own
database with its activity coefficients is used, to see what that leaves out."""

import random

from phreeqpython import PhreeqPython

IONS = ["Ca", "Mg", "K", "Amm", "Na", "Al"]
CHARGE = dict(Ca=2, Mg=2, K=1, Amm=1, Na=1, Al=3)
LOG_K = dict(Ca=0.8, Mg=0.6, K=0.7, Amm=0.6, Na=0.0, Al=0.41)


def ideal_database():
    ideal = "-gamma 1e10 0.0"
    lines = ["SOLUTION_MASTER_SPECIES", "H H+ -1 H 1.008", "H(0) H2 0 H", "H(1) H+ -1 0", "E e- 0 0 0",
             "O H2O 0 O 16", "O(0) O2 0 O", "O(-2) H2O 0 0", "Cl Cl- 0 Cl 35.45"]
    lines += [f"{ion} {ion}+{CHARGE[ion] if CHARGE[ion] > 1 else ''} 0 20 20" for ion in IONS]
    lines += ["SOLUTION_SPECIES", "H+ = H+", "log_k 0", ideal, "e- = e-", "log_k 0", "H2O = H2O", "log_k 0",
              "Cl- = Cl-", "log_k 0", ideal, "H2O = OH- + H+", "log_k -14", ideal,
              "2 H2O = O2 + 4 H+ + 4 e-", "log_k -86.08", "2 H+ + 2 e- = H2", "log_k -3.15"]
    for ion in IONS:
        species = f"{ion}+{CHARGE[ion] if CHARGE[ion] > 1 else ''}"
        lines += [f"{species} = {species}", "log_k 0", ideal]
    lines += ["EXCHANGE_MASTER_SPECIES", "X X-", "EXCHANGE_SPECIES", "X- = X-", "log_k 0"]
    for ion in IONS:
        z = CHARGE[ion]
        species = f"{ion}+{z if z > 1 else ''}"
        lines += [f"{species} + {z if z > 1 else ''}X- = {ion}X{z if z > 1 else ''}", f"log_k {LOG_K[ion]}", ideal]
    return "\n".join(lines) + "\nEND\n"


def equilibrium(pp, capacity, water, shares, dissolved):
    """Shares and mmol/L after the exchange and the water have met; 1 kg of material."""
    z = lambda ion: CHARGE[ion] if CHARGE[ion] > 1 else ""
    lines = ["SOLUTION 1", "pH 5.5", "units mmol/kgw", f"-water {water}"]
    lines += [f"{ion} {dissolved[ion] * 1000:.12g}" for ion in IONS if dissolved[ion] > 0]
    lines += ["Cl 1 charge", "EXCHANGE 1"]
    lines += [f"{ion}X{z(ion)} {capacity * shares[ion] / CHARGE[ion]:.12g}" for ion in IONS if shares[ion] > 0]
    names = [f"{ion}X{z(ion)}" for ion in IONS]
    lines += ["SELECTED_OUTPUT 1", "-reset false", "-high_precision true", f"-molalities {' '.join(names)}", f"-totals {' '.join(IONS)}", "END"]
    pp.ip.run_string("\n".join(lines))
    last = pp.ip.get_selected_output_array()
    head, row = last[0], last[-1]
    value = dict(zip(head, row))
    exchange = [value[f"m_{name}(mol/kgw)"] * water * CHARGE[ion] / capacity for ion, name in zip(IONS, names)]
    solution = [value[f"{ion}(mol/kgw)"] * 1000 for ion in IONS]
    return exchange, solution


def main():
    dice = random.Random(4)
    pp = PhreeqPython(database="phreeqc.dat")
    pp.ip.load_database_string(ideal_database())
    print("# Made by make.py with PHREEQC (phreeqpython). Per row: capacity molc/kg, water L/kg, six shares, six mmol/L before; six shares, six mmol/L after.")
    print("# Ca Mg K NH4 Na Al; activities are concentrations.")
    for case in range(24):
        raw = [dice.random() ** 2 for _ in IONS]
        if case % 3:
            raw[5] = 0
        total = sum(raw)
        shares = {ion: r / total for ion, r in zip(IONS, raw)}
        dissolved = {ion: dice.choice([0.2, 1, 5, 20]) * dice.random() / 1000 for ion in IONS}
        if case % 3:
            dissolved["Al"] = 0
        capacity, water = dice.choice([0.02, 0.08, 0.2, 0.4]), dice.choice([0.1, 0.3, 0.5])
        exchange, solution = equilibrium(pp, capacity, water, shares, dissolved)
        before = [capacity, water] + [shares[i] for i in IONS] + [dissolved[i] * 1000 for i in IONS]
        print("\t".join(f"{v:.9g}" for v in before + exchange + solution))


main()
