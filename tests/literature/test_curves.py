"""Curves and how steep they are.

data/curves-constructed.csv: four exact closed forms, results known to six places (*arithmetic*; no measured
curve with a published contrast index was found). data/curves-ives-1920.csv: figure 103 of H. E. Ives,
Airplane Photography (1920), read off to 0.01 (*published* figure). data/curve-tabular-zones.csv: one worker's
densities (*published*), windows of the zones *from memory*. data/xray-gradients.csv: Radiography in Modern
Industry, ch. 16 (*published*). data/reading-error.csv: a plain implementation outside this one (*derived*).
"""

from __future__ import annotations

from collections.abc import Callable

import numpy as np
import pytest
from literature.tables import rows_of

from tankside.core.development.contrast import rate_constant
from tankside.core.doubt.distributions import Z95
from tankside.core.refusals import Refused
from tankside.core.sensitometry.contrast import (
    average_gradient,
    contrast_index,
    gamma,
    gradient_between,
    useful_range,
)
from tankside.core.sensitometry.curve import Measure, Strip, curve_of, half_width, measured
from tankside.core.sensitometry.inertia import hd_speed, straight_part
from tankside.core.sensitometry.shape import Shape
from tankside.core.sensitometry.speed import fractional_gradient_offset, rise_over_1_30, speed_point

G = 0.684428705660452


def softly(x: np.ndarray) -> np.ndarray:
    """ln(1 + exp x)."""
    return np.log1p(np.exp(x))


def logistic(x: np.ndarray) -> np.ndarray:
    """Curve B of the file above its base, of density 0.30 at -4."""
    return 2.30 / (1 + np.exp(-1.5 * (x + 1.15))) - 2.30 / (1 + np.exp(-1.5 * (-4 + 1.15)))


NET: dict[str, Callable[[np.ndarray], np.ndarray]] = {
    "A": lambda x: G / 5 * softly(5 * (x + 2.2)),
    "B": logistic,
    "C": lambda x: np.interp(x, [-4, -2.6, -2.2, 0.8], [0.0, 0.0, 0.12, 2.22]),
    "D": lambda x: 0.60 / 8 * softly(8 * (x + 2.0)),
}
BASE = {"A": 0.28, "B": 0.30, "C": 0.25, "D": 0.20}
# As printed in the head of curves-constructed.csv: log Hm, rise over 1.30, average gradient, contrast index.
PRINTED = {
    "A": (-2.185314, 0.800000, 0.624510, 0.634942),
    "B": (-3.018207, 0.556022, 0.472464, 0.510614),
    "C": (-2.266667, 0.883333, 0.682222, 0.695266),
    "D": (-1.871581, 0.757052, 0.584701, 0.586950),
}
DELTA_X = {"A": 0.295600, "B": 0.426019, "C": 0.257600, "D": 0.316486}
MEASURES: tuple[Measure, ...] = (speed_point, rise_over_1_30, average_gradient, contrast_index)
# What that file says of densities rounded to 0.01: log Hm within 0.024, Gbar 0.012, contrast index 0.013, to
# which smoothing adds 0.001 at the corners of C; it says nothing of the rise, 1.30 times a gradient.
ROUNDED = (0.0245, 0.0205, 0.0125, 0.0140)
STEPS = rows_of("curves-constructed.csv")
LOG_H = np.array([float(row["log10H"]) for row in STEPS])


@pytest.mark.checks(of=contrast_index)
@pytest.mark.checks(of=average_gradient)
@pytest.mark.checks(of=speed_point)
@pytest.mark.checks(of=rise_over_1_30)
@pytest.mark.parametrize("which", sorted(NET))
def test_exact_curves(which: str) -> None:
    """Read straight off the closed form, every measure agrees to the last printed place."""
    log_h = np.linspace(-4, 0.8, 48_001)
    shape = Shape(log_h, NET[which](log_h))

    assert PRINTED[which] == pytest.approx([one(shape) for one in MEASURES], abs=1.1e-6)
    assert pytest.approx(DELTA_X[which], abs=1e-6) == fractional_gradient_offset(PRINTED[which][1])


@pytest.mark.checks(of=curve_of)
@pytest.mark.checks(of=measured)
@pytest.mark.parametrize("which", sorted(NET))
@pytest.mark.parametrize("place", range(4), ids=["log Hm", "rise", "Gbar", "contrast index"])
def test_curves_read_to_a_hundredth(which: str, place: int) -> None:
    """From 21 densities of 0.01 the fit comes as close as plain interpolation does, and says so."""
    read = np.array([round(float(row[f"D_{which}"]), 2) for row in STEPS])
    curve = curve_of(Strip(LOG_H, read, base_fog=BASE[which], reading_sd=0.01))
    found = measured(curve, MEASURES[place])

    assert pytest.approx(PRINTED[which][place], abs=ROUNDED[place]) == found.value
    assert found.low < PRINTED[which][place] < found.high
    assert pytest.approx(BASE[which], abs=0.005) == curve.base_fog.value


@pytest.mark.checks(of=curve_of)
@pytest.mark.parametrize("row", STEPS, ids=lambda row: row["step"])
def test_each_step_is_met(row: dict[str, str]) -> None:
    """The file's own densities lie on the closed forms, and the fit passes within their reading error."""
    for which, net in NET.items():
        exact = BASE[which] + float(net(np.array(float(row["log10H"]))))
        read = np.array([float(one[f"D_{which}"]) for one in STEPS])
        curve = curve_of(Strip(LOG_H, read, base_fog=BASE[which], reading_sd=0.01))

        assert float(row[f"D_{which}"]) == pytest.approx(exact, abs=6e-5)
        fitted = curve.base_fog.value + curve.shape.net_at(float(row["log10H"]))
        assert float(row[f"D_{which}"]) == pytest.approx(fitted, abs=0.015)


@pytest.mark.checks(of=measured)
@pytest.mark.parametrize("reading_sd", [0.005, 0.01, 0.02])
def test_reading_errors_are_those_of_a_simulation(reading_sd: float) -> None:
    """Doubts of curve A lie near those of a four-parameter fit, and well below those of interpolation."""
    rows = {
        row["method"]: row for row in rows_of("reading-error.csv") if float(row["reading_sd"]) == reading_sd
    }
    read = BASE["A"] + NET["A"](LOG_H)
    curve = curve_of(Strip(LOG_H, read, reading_sd=reading_sd))

    for column, measure in (
        ("sd_logHm", speed_point),
        ("sd_CI", contrast_index),
        ("sd_Gbar", average_gradient),
    ):
        told = measured(curve, measure)
        sd = (told.high - told.low) / (2 * Z95)
        assert float(rows["fit"][column]) * 0.8 < sd < float(rows["interp"][column])


@pytest.mark.checks(of=half_width)
@pytest.mark.parametrize("which", sorted(NET))
def test_the_band_along_a_curve_is_that_of_its_points(which: str) -> None:
    """Each point by itself has the same interval (law of propagation), and the closed forms lie inside."""
    read = np.array([round(float(row[f"D_{which}"]), 2) for row in STEPS])
    curve = curve_of(Strip(LOG_H, read, base_fog=BASE[which], reading_sd=0.01))
    half = half_width(curve)
    for place in np.searchsorted(curve.shape.log_h, LOG_H[2::4]):
        alone = measured(curve, lambda shape, at=place: float(shape.net[at]))
        assert abs((alone.high - alone.low) / 2 - half[place]) < 1e-9
    seen = curve.shape.log_h >= LOG_H[0]
    away = np.abs(curve.shape.net - NET[which](curve.shape.log_h))[seen]

    assert np.mean(away <= half[seen] + 0.005) > 0.9


def test_a_base_that_nobody_read_is_asked_for() -> None:
    """Curve B still rises at its lowest step; without base and fog its speed would be off by a stop."""
    read = np.array([float(row["D_B"]) for row in STEPS])

    with pytest.raises(Refused) as no:
        curve_of(Strip(LOG_H, read))
    assert "base-fog-not-read" == no.value.refusal.code


IVES = rows_of("curves-ives-1920.csv")
IVES_LOG_H = np.array([float(row["log10_exposure_cms"]) for row in IVES])
IVES_DENSITY = {
    minutes: np.array([float(row[f"D_{minutes}min"]) for row in IVES]) for minutes in (3, 6)
}  # fmt: skip


@pytest.mark.checks(of=straight_part)
@pytest.mark.checks(of=hd_speed)
@pytest.mark.parametrize(("minutes", "slope", "log_inertia"), [(3, 1.717, -0.243), (6, 2.55, -0.231)])
def test_one_inertia_for_two_developments(minutes: int, slope: float, log_inertia: float) -> None:
    """Ives's figure: straight parts meet the axis near -0.230 (drawn), gammas 1.74 and 2.53 to 1.5 %."""
    drawn = {3: 1.74, 6: 2.53}
    found = straight_part(IVES_LOG_H[3:6], IVES_DENSITY[minutes][3:6])

    assert (slope, log_inertia) == (
        pytest.approx(found.gamma, abs=0.006),
        pytest.approx(found.log_inertia, abs=1e-3),
    )
    assert drawn[minutes] == pytest.approx(found.gamma, rel=0.015)
    assert pytest.approx(57.8, rel=0.035) == hd_speed(10**found.log_inertia)


@pytest.mark.checks(of=curve_of)
@pytest.mark.checks(of=gamma)
def test_a_curve_that_turns_back_is_still_read() -> None:
    """Ives's plate loses density when much overexposed; the fit keeps the straight part (to 5 %)."""
    for minutes, drawn in ((3, 1.74), (6, 2.53)):
        curve = curve_of(Strip(IVES_LOG_H, IVES_DENSITY[minutes], base_fog=0.0, reading_sd=0.02))

        assert drawn == pytest.approx(gamma(curve.shape), rel=0.05)


@pytest.mark.checks(of=rate_constant)
def test_two_developments_give_a_velocity() -> None:
    """Ives's drawn gammas at 3 and 6 minutes mean 0.260 a minute and 3.21 at the end (*derived*)."""
    ratio = 2.53 / 1.74
    at_the_end = 1.74**2 / (2 * 1.74 - 2.53)

    assert [1.45, 1.45, 1.45, 1.47] == pytest.approx(
        IVES_DENSITY[6][[2, 3, 4, 5]] / IVES_DENSITY[3][[2, 3, 4, 5]], abs=0.006
    )
    assert pytest.approx(3.21, abs=0.03) == at_the_end
    found = rate_constant(1.74, time_s=180, c_inf=at_the_end, induction_s=0.0)
    assert pytest.approx(0.260, abs=0.005) == 60 * float(found)
    assert pytest.approx(-np.log(ratio - 1) / 3, rel=1e-9) == 60 * float(found)


ZONES = rows_of("curve-tabular-zones.csv")


def zones() -> Shape:
    """The curve through the eleven zones, which were read above base and fog."""
    log_h = np.array([float(row["rel_log10_exposure"]) for row in ZONES])
    read = np.array([float(row["D_above_base_fog"]) for row in ZONES])
    return curve_of(Strip(log_h, read, base_fog=0.0, reading_sd=0.005)).shape


@pytest.mark.checks(of=curve_of)
@pytest.mark.parametrize("row", ZONES, ids=lambda row: row["zone"])
def test_eleven_zones(row: dict[str, str]) -> None:
    """Each zone within 0.02 of what was read; I, V and VIII in their windows (*memory*: shape only)."""
    windows = {"1": (0.07, 0.13), "5": (0.60, 0.70), "8": (1.15, 1.25)}
    found = zones().net_at(float(row["rel_log10_exposure"]))
    low, high = windows.get(row["zone"], (-0.01, 2.0))

    assert float(row["D_above_base_fog"]) == pytest.approx(found, abs=0.02)
    assert low <= found <= high


@pytest.mark.checks(of=contrast_index)
@pytest.mark.checks(of=average_gradient)
@pytest.mark.checks(of=useful_range)
def test_contrast_of_the_zones() -> None:
    """Index 0.461, average gradient 0.4285, rise 0.551, speed point 0.268 by interpolation (*derived*)."""
    shape = zones()

    assert pytest.approx(0.461, abs=0.005) == contrast_index(shape)
    assert pytest.approx(0.4285, abs=0.005) == average_gradient(shape)
    assert pytest.approx(0.551, abs=0.01) == rise_over_1_30(shape)
    assert pytest.approx(0.268, abs=0.03) == speed_point(shape)
    assert useful_range(shape)[1] > 2.4


@pytest.mark.checks(of=gradient_between)
@pytest.mark.parametrize("row", rows_of("xray-gradients.csv"), ids=lambda row: row["film"])
def test_chords_of_xray_film(row: dict[str, str]) -> None:
    """A chord of the printed gradient spans its log exposure; relative exposure is 100 over speed."""
    lengths = {"X": (0.870, 0.351), "Y": (0.769, 0.317), "Z": (1.176, None)}
    for column, low, high, length in (
        ("avg_gradient_0.5_2.5", 0.5, 2.5, lengths[row["film"]][0]),
        ("avg_gradient_2.0_4.0", 2.0, 4.0, lengths[row["film"]][1]),
    ):
        if length is not None:
            shape = Shape(np.array([0.0, length, length + 1]), np.array([low, high, high + 0.1]))
            assert float(row[column]) == pytest.approx(gradient_between(shape, low, high), abs=0.012)
    for density in ("1.5", "2.5"):
        speed, exposure = float(row[f"rel_speed_D{density}"]), float(row[f"rel_exposure_D{density}"])
        assert 100 / (speed + 0.5) - 0.05 <= exposure <= 100 / (speed - 0.5) + 0.05


@pytest.mark.checks(of=gradient_between)
def test_worked_chords() -> None:
    """0.19/0.30 is 0.63 (Filming the Fantastic p. 91); D 2.0 at 2.2 and 3.5 at 2.5 is 5.0 (seen)."""
    stop = Shape(np.array([0.0, 0.3]), np.array([1.00, 1.19]))
    films = Shape(np.array([2.2, 2.5]), np.array([2.0, 3.5]))

    assert 0.63 == round(gradient_between(stop, 1.00, 1.19), 2)
    assert pytest.approx(5.0) == gradient_between(films, 2.0, 3.5)
