"""Values for the checks of faces, valve gear and surfaces, by NumPy and SciPy. Run: python3 shapes.py > shapes.txt

Each line is a name and numbers. Inputs stand beside their results, so that nothing is drawn twice.
"""

import numpy as np
import scipy
from scipy.optimize import linprog

print(f"SciPy {scipy.__version__} NumPy {np.__version__}")


def show(name, *numbers):
    print(name, *(repr(float(n)) for part in numbers for n in np.ravel(part)))


def plane(heights):
    """Least squares by lstsq, minimum zone by linprog; holes are NaN."""
    at = np.argwhere(~np.isnan(heights))
    z = heights[~np.isnan(heights)]
    a = np.column_stack([np.ones(len(z)), at])[:, [True, heights.shape[0] > 1, heights.shape[1] > 1]]
    left = z - a @ np.linalg.lstsq(a, z, rcond=None)[0]
    # Unknowns: the plane and half the width of the zone on both sides of it.
    one = np.ones((len(z), 1))
    found = linprog(
        [0] * a.shape[1] + [2],
        A_ub=np.vstack([np.hstack([-a, -one]), np.hstack([a, -one])]),
        b_ub=np.concatenate([-z, z]),
        bounds=[(None, None)] * a.shape[1] + [(0, None)],
        method="highs",
    )
    return np.ptp(left), found.fun


draw = np.random.default_rng(73)
for name, (rows, columns) in {"head": (3, 6), "deck": (5, 9), "manifold": (2, 7), "rail": (1, 9)}.items():
    i, j = np.mgrid[0:rows, 0:columns]
    warp = 0.02 * np.sin(0.9 * i + 0.5 * j) + 0.003 * i - 0.007 * j
    heights = np.round(warp + draw.normal(0, 0.008, (rows, columns)), 3)
    show(name, rows, columns, heights)
    show(f"{name}-flatness", plane(heights))
    if rows > 2:
        windows = [plane(heights[r : r + 3, c : c + 3]) for r in range(rows - 2) for c in range(columns - 2)]
        show(f"{name}-within", np.max(windows, axis=0))

# Run-out: the first harmonic by the discrete Fourier transform.
for name, n in {"seat": 8, "shaft": 12, "flange": 7}.items():
    angle = 2 * np.pi * np.arange(n) / n
    readings = np.round(0.012 * np.cos(angle - 2.2) + draw.normal(0, 0.004, n), 3)
    first = 2 * np.conj(np.fft.fft(readings)[1]) / n
    left = readings - np.real(np.conj(first) * np.exp(1j * angle))
    show(name, readings)
    show(f"{name}-runout", np.ptp(readings), abs(first), np.degrees(np.angle(first)) % 360, np.ptp(left))

# Valve timing: flanks by numpy.interp, which wants rising lifts; an unequal lobe, read every 5 degrees.
angle = np.arange(300.0, 601.0, 5.0)
nose = 447.0
width = np.where(angle < nose, 118.0, 134.0)
lift = np.round(np.where(np.abs(angle - nose) < width, 9.4 * np.cos(np.pi * (angle - nose) / (2 * width)) ** 3, 0), 3)
up = angle <= angle[np.argmax(lift)]
show("valve-angles", angle)
show("valve-lifts", lift)
for name, at in {"valve-0.15": 0.15, "valve-1.27": 1.27}.items():
    keep = lift > 0
    opens = np.interp(at, lift[up & keep], angle[up & keep])
    closes = np.interp(at, lift[~up & keep][::-1], angle[~up & keep][::-1])
    show(name, opens, closes, closes - opens, (opens + closes) / 2)

# Valve to piston: the pin's height from the two circles that it and the crankpin lie on.
degrees = np.arange(-30.0, 31.0, 5.0)
opening = np.round(np.clip(2.4 + 0.09 * degrees + 0.0012 * degrees**2, 0, None), 3)
crankpin = 40 * np.exp(1j * np.radians(degrees))
travel = 40 + 132 - (crankpin.real + np.sqrt(132**2 - crankpin.imag**2))
gap = 3.6 + travel * np.cos(np.radians(12)) - opening
show("overlap-angles", degrees)
show("overlap-lifts", opening)
show("overlap-least", gap.min(), degrees[np.argmin(gap)])

# Uncertainty of a compression ratio by simulation, and by the derivatives of 1 + swept / clearance.
volumes = np.array([249.2, 24.1, 3.1, 1.2, -2.0])
u = np.array([0.3, 0.2, 0.1, 0.08, 0.15]) / 2
drawn = volumes[:, None] + u[:, None] * draw.normal(size=(5, 2_000_000))
show("ratio", volumes, 2 * u)
show("ratio-simulated", 2 * np.std(1 + drawn[0] / drawn[1:].sum(axis=0)))
clearance = volumes[1:].sum()
slope = np.array([1 / clearance] + [-volumes[0] / clearance**2] * 4)
show("ratio-derived", 2 * np.sqrt(np.sum((slope * u) ** 2)))

# Oil: the trend by numpy.polyfit.
use = np.array([12.0, 60, 105, 161, 200, 262])
added = np.array([4.1, 0.11, 0.12, 0.16, 0.13, 0.21])
rates = added[1:] / np.diff(use)
show("oil-use", use)
show("oil-added", added)
show("oil", added[1:].sum() / np.ptp(use), rates[-1], np.polyfit((use[1:] + use[:-1]) / 2, rates, 1)[0])


# Surface: the Gaussian filter by numpy.convolve, sections by reshape, the curve by sort, polyfit and interp.
def gaussian(profile, reach, cutoff):
    weights = np.exp(-np.pi * (np.arange(-reach, reach + 1) / (np.sqrt(np.log(2) / np.pi) * cutoff)) ** 2)
    return np.convolve(profile, weights, "same") / np.convolve(np.ones_like(profile), weights, "same")


def texture(profile, cutoff):
    """Cut-off and results in steps of the profile; a whole number of cut-offs long."""
    at = np.arange(len(profile))
    profile = profile - np.polyval(np.polyfit(at, profile, 1), at)
    line = gaussian(profile, cutoff, cutoff)
    over = gaussian(np.maximum(profile, line), cutoff, cutoff)
    sections = len(profile) // cutoff - 1
    start = (len(profile) - 1 - sections * cutoff) // 2
    middle = slice(start, start + sections * cutoff)
    rough = (profile - line)[middle]
    parts = rough.reshape(sections, cutoff)
    curve = np.sort((profile - over)[middle])[::-1]
    n = len(curve)
    p = (np.arange(n) + 0.5) / n
    width = round(0.4 * n)
    first = np.argmin(curve[: n - width] - curve[width:])
    slope, top = np.polyfit(p[first : first + width + 1], curve[first : first + width + 1], 1)
    bottom = top + slope
    mr1, mr2 = np.interp([-top, -bottom], -curve, p)
    rpk = 2 * np.clip(curve - top, 0, None).mean() / mr1
    rvk = 2 * np.clip(bottom - curve, 0, None).mean() / (1 - mr2)
    return np.abs(rough).mean(), np.sqrt((rough**2).mean()), np.ptp(parts, axis=1).mean(), top - bottom, rpk, rvk, 100 * mr1, 100 * mr2


for name, cutoff, n in [("plateau", 20, 121), ("ground", 24, 145), ("short", 20, 41)]:
    # A plateau of small grinding marks with deep grooves here and there, on a tilted and waved part.
    x = np.arange(n)
    profile = draw.normal(0, 0.25, n) + 0.01 * x + 0.6 * np.sin(2 * np.pi * x / (3.1 * cutoff))
    if name == "plateau":
        profile -= np.where(draw.random(n) < 0.12, draw.exponential(2.2, n), 0)
    profile = draw.integers(0, 10, n) if name == "short" else np.round(profile, 2)
    show(name, cutoff, profile)
    show(f"{name}-texture", texture(profile, cutoff))
