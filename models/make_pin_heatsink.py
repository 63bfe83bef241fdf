#!/usr/bin/env python3
"""Writes the demo heatsink: a plate with round pins, an invented part, as an OBJ surface that is closed.

    make_pin_heatsink.py > parts/pin-heatsink-4.obj

Millimetres, +z up, low corner at the origin. The plate is cut into cells with one pin each; neighbours share corners, so
that every edge has exactly two faces.
"""
import math

WIDTH, LENGTH, BASE, HEIGHT = 22.0, 70.0, 1.0, 4.0
ACROSS, ALONG = 8, 25  # cells
RADIUS, SIDES = 0.9, 16  # of a pin; sides must be a multiple of four


class Obj:
    def __init__(self):
        self.vertices = {}
        self.faces = []

    def vertex(self, x, y, z):
        """The number of a point; equal points, as written, have one."""
        return self.vertices.setdefault(f"{x:.3f} {y:.3f} {z:.3f}", len(self.vertices) + 1)

    def face(self, *corners):
        self.faces.append(" ".join(str(corner) for corner in corners))

    def text(self):
        lines = ["# Pin heatsink for a 2280 card, invented. mm, +z up. Written by make_pin_heatsink.py."]
        lines += [f"v {vertex}" for vertex in self.vertices]
        lines += [f"f {face}" for face in self.faces]
        return "\n".join(lines) + "\n"


def add_cell(obj, i, j):
    x, y = WIDTH / ACROSS, LENGTH / ALONG
    # Counter-clockwise from above, beginning at the corner that the pin's first quarter (+x to +y) looks to.
    corners = [((i + a) * x, (j + b) * y) for a, b in ((1, 1), (0, 1), (0, 0), (1, 0))]
    below = [obj.vertex(*corner, 0.0) for corner in corners]
    above = [obj.vertex(*corner, BASE) for corner in corners]
    centre = ((i + 0.5) * x, (j + 0.5) * y)
    rim = [(centre[0] + RADIUS * math.cos(2 * math.pi * k / SIDES), centre[1] + RADIUS * math.sin(2 * math.pi * k / SIDES))
           for k in range(SIDES)]
    foot = [obj.vertex(*point, BASE) for point in rim]
    top = [obj.vertex(*point, HEIGHT) for point in rim]
    obj.face(*reversed(below))
    obj.face(*top)
    for k in range(SIDES):
        after = (k + 1) % SIDES
        obj.face(foot[k], foot[after], top[after], top[k])
        obj.face(foot[after], foot[k], above[k * 4 // SIDES])
    for quarter in range(4):
        first = quarter * SIDES // 4
        obj.face(foot[first], above[quarter - 1], above[quarter])
    # The plate's sides, where the cell lies at one: from corner to corner of the cell.
    for at_side, a, b in ((j == ALONG - 1, 0, 1), (i == 0, 1, 2), (j == 0, 2, 3), (i == ACROSS - 1, 3, 0)):
        if at_side:
            obj.face(below[a], below[b], above[b], above[a])


def main():
    obj = Obj()
    for j in range(ALONG):
        for i in range(ACROSS):
            add_cell(obj, i, j)
    print(obj.text(), end="")


if __name__ == "__main__":
    main()
