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
