"""Torque between the points of curves of many shapes, by scipy's PchipInterpolator.

    python3 tests/reference/torque_curves.py > tests/reference/torque_curves.txt

Needs scipy (written with 1.17.1). Each line holds one curve: its points `rpm:torque`, a `|`, and what
lies between them, again `rpm:torque`. `cargo test` reads the lines and needs no scipy.
"""

import random

from scipy.interpolate import PchipInterpolator

CHANCE = random.Random(13)


def curve(count):
    """A curve of so many points, with plateaus and turns now and then."""
    rpm, torque, points = CHANCE.uniform(1, 1500), CHANCE.uniform(0, 300), []
    for _ in range(count):
        points.append((round(rpm, 1), round(torque, 1)))
        rpm += CHANCE.choice([CHANCE.uniform(0.2, 5), CHANCE.uniform(100, 1500)])
        kind = CHANCE.random()
        if kind > 0.2:
            torque = max(0.0, torque + CHANCE.uniform(-80, 90))
    return points


def spelled(pairs):
    return " ".join(f"{rpm!r}:{torque!r}" for rpm, torque in pairs)


for count in [2, 2, 3, 3, 3, 3, 3, 3, 4, 4, 5, 6, 7, 8, 10, 12, 15, 20, 40, 60]:
    points = curve(count)
    between = PchipInterpolator(*zip(*points))
    spans = list(zip(points, points[1:]))
    if len(spans) > 8:
        spans = CHANCE.sample(spans[1:-1], 6) + [spans[0], spans[-1]]
    places = [a[0] + share * (b[0] - a[0]) for a, b in spans for share in (0.2, 0.55, 0.9)]
    print(spelled(points), "|", spelled((rpm, float(between(rpm))) for rpm in places))
