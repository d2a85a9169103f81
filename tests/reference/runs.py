"""Reference values for runs, in-gear times, coast-downs and best shift points, by scipy.

Regenerate with any scipy from 1.10 on (1.17.1 and Python 3.11 made what is committed):

    pip install scipy
    python3 tests/reference/runs.py > tests/reference/runs.json

`cargo test` needs neither Python nor this script: it compares the program with the committed file. Runs are
integrated in time by DOP853 at a relative tolerance of 1e-12 with every event located, in-gear times and
coast-downs over the speed by quad, torque curves are PCHIP, shift points roots by brentq. All vehicles are
invented.
"""

import json
import math

from scipy.integrate import quad, solve_ivp
from scipy.interpolate import PchipInterpolator
from scipy.optimize import brentq

G = 9.80665
AIR = 1.2041
KMH = 1 / 3.6
TIGHT = {"method": "DOP853", "rtol": 1e-12, "atol": 1e-12}

LIGHT_SPORTS_CAR = {
    "name": "light sports car",
    "points": [
        [1000, 96], [1500, 110], [2200, 124], [3000, 136], [3800, 146],
        [4600, 152], [5400, 150], [6000, 143], [6600, 128], [7200, 104],
    ],
    "idle_rpm": 850, "redline_rpm": 7100,
    "ratios": [3.32, 2.02, 1.41, 1.07, 0.86], "final_drive": 3.9, "circumference_mm": 1795,
    "mass_kg": 1020, "rolling": 0.0125, "drag_area_m2": 0.64, "measured": None,
    "efficiency": 0.9, "inertias": [0.15, 3.2],
    "driven": "rear", "adhesion": 0.75, "front_share": 0.52, "wheelbase_m": 2.26, "height_m": 0.47,
    "grade_percent": 0, "headwind_kmh": 0,
    "launch_rpm": 2800, "pause_s": 0.4, "shift_rpms": [6500] * 4,
}

LADEN_VAN = {
    "name": "laden van uphill against the wind",
    "points": [[1000, 180], [1500, 300], [1900, 330], [2500, 325], [3200, 290], [3800, 235], [4300, 160]],
    "idle_rpm": 800, "redline_rpm": 4200,
    "ratios": [4.2, 2.3, 1.45, 1.0, 0.76], "final_drive": 4.1, "circumference_mm": 2060,
    "mass_kg": 2600, "rolling": 0.011, "drag_area_m2": 1.7, "measured": None,
    "efficiency": 0.92, "inertias": None,
    "driven": "front", "adhesion": 0.55, "front_share": 0.47, "wheelbase_m": 3.3, "height_m": 0.8,
    "grade_percent": 3, "headwind_kmh": 15,
    "launch_rpm": 1500, "pause_s": 0.8, "shift_rpms": [3900, 3700, 3600, 3600],
}

MOTORCYCLE = {
    "name": "motorcycle by measured coefficients",
    "points": [[2500, 45], [4000, 58], [5500, 66], [7000, 71], [8500, 70], [9500, 63], [10500, 48]],
    "idle_rpm": 1200, "redline_rpm": 10200,
    "ratios": [2.6, 1.85, 1.5, 1.27, 1.12, 1.0], "final_drive": 4.9, "circumference_mm": 1980,
    "mass_kg": 290, "rolling": None, "drag_area_m2": None, "measured": [18.0, 0.7, 0.29],
    "efficiency": 0.94, "inertias": [0.02, 0.9],
    "driven": "all", "adhesion": 0.95, "front_share": 0.5, "wheelbase_m": 1.45, "height_m": 0.62,
    "grade_percent": 0, "headwind_kmh": 0,
    "launch_rpm": 5000, "pause_s": 0.25, "shift_rpms": [10000, 9500, 9500, 9500, 9500],
}

TARGETS_KMH = [50, 60 * 1.609344, 100, 120]
DISTANCES_M = [0.3048, 50, 400, 402.336]
IN_GEAR_KMH = [[60, 100], [80, 120]]
COAST_KMH = [120, 60]


class Car:
    def __init__(self, of):
        self.of = of
        speeds, torques = zip(*of["points"])
        self.torque = PchipInterpolator(speeds, torques)
        self.knots = [float(n) for n in speeds]
        self.low = max(speeds[0], of["idle_rpm"])
        self.high = min(speeds[-1], of["redline_rpm"])
        self.r = of["circumference_mm"] / 1000 / (2 * math.pi)
        self.m = of["mass_kg"]
        self.angle = math.atan(of["grade_percent"] / 100)
        wheels = 0.04 * self.m if of["inertias"] is None else of["inertias"][1] / self.r**2
        self.m0 = self.m + wheels

    def i(self, k):
        return self.of["ratios"][k] * self.of["final_drive"]

    def speed(self, k, rpm):
        return rpm * math.pi / 30 * self.r / self.i(k)

    def rpm(self, k, v):
        return v * self.i(k) / self.r * 30 / math.pi

    def mass(self, k):
        if self.of["inertias"] is None:
            return self.m * (1.04 + 0.0025 * self.i(k) ** 2)
        engine = self.of["inertias"][0]
        return self.m0 + self.of["efficiency"] * engine * (self.i(k) / self.r) ** 2

    def rolling(self, v):
        if self.of["measured"]:
            a, b, _ = self.of["measured"]
            return a + b * v
        return self.of["rolling"] * self.m * G * math.cos(self.angle)

    def load(self, v):
        c = self.of["measured"][2] if self.of["measured"] else 0.5 * AIR * self.of["drag_area_m2"]
        air = v + self.of["headwind_kmh"] * KMH
        return self.rolling(v) + c * air * abs(air) + self.m * G * math.sin(self.angle)

    def grip(self, v):
        n, mu, s = self.m * G * math.cos(self.angle), self.of["adhesion"], self.of["front_share"]
        q, rr = self.of["height_m"] / self.of["wheelbase_m"], self.rolling(v)
        lift = s * n / q + rr
        if self.of["driven"] == "front":
            return mu * (s * n + q * rr) / (1 + mu * q)
        if self.of["driven"] == "rear":
            return min(mu * ((1 - s) * n - q * rr) / (1 - mu * q), lift)
        return min(mu * n, lift)

    def effort(self, k, rpm):
        return self.of["efficiency"] * float(self.torque(rpm)) * self.i(k) / self.r

    def by_engine(self, k, v, held):
        """Held is the engine speed of a slipping clutch, else None."""
        if held is None:
            return (self.effort(k, self.rpm(k, v)) - self.load(v)) / self.mass(k)
        return (self.effort(k, held) - self.load(v)) / self.m0

    def by_grip(self, v):
        return (self.grip(v) - self.load(v)) / self.m

    def a(self, k, v, held=None):
        return min(self.by_engine(k, v, held), self.by_grip(v))

    def neutral(self, v):
        return -self.load(v) / self.m0


class Run:
    """Steps in time, phase by phase, each phase cut where its law changes."""

    def __init__(self, car, shifts):
        self.car, self.t, self.y = car, 0.0, [0.0, 0.0]
        self.speeds, self.ways = {}, {}
        of = car.of
        top = len(of["ratios"]) - 1
        for k in range(top + 1):
            held = max(car.low, min(of["launch_rpm"], car.high)) if k == 0 else car.low
            end = car.high if k == top else max(held, min(shifts[k], car.high))
            if self.y[0] < car.speed(k, held):
                self.phase(lambda v: car.by_engine(k, v, held), car.speed(k, held))
            knots = [n for n in car.knots if held < n < end] + [end]
            for knot in knots:
                if self.y[0] < car.speed(k, knot):
                    self.phase(lambda v: car.by_engine(k, v, None), car.speed(k, knot))
            if self.is_done():
                return
            if k < top:
                self.solve(lambda v: car.neutral(v), [], self.t + of["pause_s"])

    def is_done(self):
        return len(self.speeds) == len(TARGETS_KMH) and len(self.ways) == len(DISTANCES_M)

    def phase(self, by_engine, end):
        """Up to a speed, changing between engine and grip wherever one gives way to the other."""
        car = self.car
        while self.y[0] < end * (1 - 1e-14) and self.t < 600:
            slips = car.by_grip(self.y[0]) < by_engine(self.y[0])
            law = car.by_grip if slips else by_engine
            # A crossing that the phase begins on is not one to stop at again.
            here = by_engine(self.y[0]) - car.by_grip(self.y[0])
            crossing = lambda v: by_engine(v) - car.by_grip(v)
            stops = [(lambda v: v - end, 1)]
            if abs(here) > 1e-9:
                stops.append((crossing, -1 if slips else 1))
                self.solve(law, stops, 600.0)
            else:
                self.solve(law, stops, self.t + 1e-6)

    def solve(self, law, stops, until):
        events = []
        for stop, direction in stops:
            event = lambda t, y, stop=stop: stop(y[0])
            event.terminal, event.direction = True, direction
            events.append(event)
        for kmh in TARGETS_KMH:
            event = lambda t, y, v=kmh * KMH: y[0] - v
            event.direction = 1
            events.append(event)
        for way in DISTANCES_M:
            events.append(lambda t, y, x=way: y[1] - x)
        found = solve_ivp(
            lambda t, y: [law(y[0]), y[0]], (self.t, until), self.y, events=events,
            max_step=0.25, **TIGHT,
        )
        self.t, self.y = found.t[-1], [found.y[0][-1], found.y[1][-1]]
        at = len(stops)
        for kmh, t, y in zip(TARGETS_KMH, found.t_events[at:], found.y_events[at:]):
            if len(t):
                self.speeds.setdefault(kmh, [t[0], y[0][1]])
        at += len(TARGETS_KMH)
        for way, t, y in zip(DISTANCES_M, found.t_events[at:], found.y_events[at:]):
            if len(t):
                self.ways.setdefault(way, [t[0], y[0][0]])


def over_speed(law, low, high, knots):
    """Time and distance between two speeds, piece by piece."""
    cuts = [low] + sorted(v for v in knots if low < v < high) + [high]
    time = way = 0.0
    for v0, v1 in zip(cuts, cuts[1:]):
        time += quad(lambda v: 1 / law(v), v0, v1, epsabs=1e-13, epsrel=1e-13)[0]
        way += quad(lambda v: v / law(v), v0, v1, epsabs=1e-12, epsrel=1e-13)[0]
    return [time, way]


def in_gear(car):
    rows = []
    for low, high in IN_GEAR_KMH:
        for k in range(len(car.of["ratios"])):
            ends = [car.rpm(k, low * KMH), car.rpm(k, high * KMH)]
            if ends[0] < car.low or ends[1] > car.high:
                continue
            knots = [car.speed(k, n) for n in car.knots]
            difference = lambda v: car.by_engine(k, v, None) - car.by_grip(v)
            steps = [low * KMH + (high - low) * KMH * j / 200 for j in range(201)]
            if min(car.a(k, v) for v in steps) <= 0:
                continue  # the gear does not get there
            for v0, v1 in zip(steps, steps[1:]):
                if difference(v0) * difference(v1) < 0:
                    knots.append(brentq(difference, v0, v1, xtol=1e-13))
            passage = over_speed(lambda v: car.a(k, v), low * KMH, high * KMH, knots)
            rows.append([k + 1, low, high, *passage])
    return rows


def best_shifts(car):
    rows, pause = [], car.of["pause_s"]

    def after(v):
        if pause == 0:
            return v
        y = solve_ivp(lambda t, y: [car.neutral(y[0])], (0, pause), [v], **TIGHT).y
        return y[0][-1]

    for k in range(len(car.of["ratios"]) - 1):
        def lead(v):
            w = after(v)
            slope = car.load(w) / car.load(v) if pause else 1.0
            return car.by_engine(k, v, None) * slope - car.by_engine(k + 1, w, None)

        low = max(car.low, car.of["launch_rpm"]) if k == 0 else car.low
        low, high = car.speed(k, low), car.speed(k, car.high)
        least = car.speed(k + 1, car.low)
        if after(low) < least:
            low = brentq(lambda v: after(v) - least, low, high, xtol=1e-13)
        steps = [low + (high - low) * j / 100 for j in range(101)]
        leads = [lead(v) for v in steps]
        crossings = [j for j in range(100) if leads[j] >= 0 > leads[j + 1]]
        assert leads[0] > 0 and len(crossings) <= 1, "these vehicles cross once"
        best = brentq(lead, steps[crossings[0]], steps[crossings[0] + 1], xtol=1e-13) if crossings else high
        rows.append(car.rpm(k, best))
    return rows


def reference(of):
    car = Car(of)
    best = best_shifts(car)
    of = dict(of)
    run, run_best = Run(car, of["shift_rpms"]), Run(car, best)
    coast = over_speed(lambda v: car.load(v) / car.m0, COAST_KMH[1] * KMH, COAST_KMH[0] * KMH, [])
    of["expected"] = {
        "speeds_kmh_s_m": [[kmh, *row] for kmh, row in sorted(run.speeds.items())],
        "distances_m_s_m_s": [[way, *row] for way, row in sorted(run.ways.items())],
        "best_shift_rpms": best,
        "best_speeds_kmh_s_m": [[kmh, *row] for kmh, row in sorted(run_best.speeds.items())],
        "in_gear_number_kmh_kmh_s_m": in_gear(car),
        "coast_kmh_kmh_s_m": [*COAST_KMH, *coast],
    }
    return of


if __name__ == "__main__":
    print(json.dumps([reference(of) for of in (LIGHT_SPORTS_CAR, LADEN_VAN, MOTORCYCLE)], indent=1))
