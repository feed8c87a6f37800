"""Continuous beams by SymPy's beam module, in exact rational arithmetic.

Reads a list of cases in JSON from the standard input and prints one row of CSV for
each value: case, quantity, index or position, value. Reactions are upward, moments
sagging, deflections downward; pounds and inches.
"""
import json
import sys

from sympy import Rational, symbols
from sympy.physics.continuum_mechanics.beam import Beam


def solve(case):
    """Return the beam with its reactions solved, and their symbols."""
    beam = Beam(Rational(case["length"]), Rational(case["stiffness"]), 1)
    reactions = symbols("R0:%d" % len(case["supports"]))
    for reaction, at in zip(reactions, case["supports"]):
        beam.apply_load(reaction, Rational(at), -1)
        beam.bc_deflection.append((Rational(at), 0))
    for load in case["loads"]:
        start, end, first, last = (Rational(v) for v in load)
        if start == end:
            beam.apply_load(-first, start, -1)
            continue
        beam.apply_load(-first, start, 0, end=end)
        if last != first:
            beam.apply_load((first - last) / (end - start), start, 1, end=end)
    beam.solve_for_reaction_loads(*reactions)
    return beam, reactions


def main():
    for number, case in enumerate(json.load(sys.stdin)):
        beam, reactions = solve(case)
        for i, reaction in enumerate(reactions):
            print(number, "reaction", i, beam.reaction_loads[reaction].evalf(17), sep=",")
        curves = (("moment", beam.bending_moment()), ("deflection", beam.deflection()))
        for at in case["at"]:
            for name, curve in curves:
                value = -curve.subs(beam.variable, Rational(at))
                print(number, name, at, value.evalf(17), sep=",")


main()
