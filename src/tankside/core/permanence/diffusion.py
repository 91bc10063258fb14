"""Diffusion out of the gelatin alone: seconds, which is why it does not explain the minutes of a wash."""

from __future__ import annotations

from math import log, log2, pi

import numpy as np

from tankside.core.refusals import refuse

_TERMS = 200


def share_left(time_s: float, *, diffusion_m2_s: float, depth_m: float) -> float:
    """Share left in a layer of `depth_m`, one face sealed, after `time_s` in clean stirred water.

    Arguments: `diffusion_m2_s` in m2/s, for thiosulfate in swollen gelatin about 4e-10 (assumed).
    Source: Fick's second law, series solution for a slab. Doubt: fourfold, by the coefficient.

    >>> round(share_left(5.0, diffusion_m2_s=4e-10, depth_m=4e-5), 4)
    0.0371
    """
    if time_s < 0 or not 1e-6 <= depth_m <= 1e-3:
        raise refuse("layer-out-of-range", depth_m=depth_m)
    if time_s == 0:
        return 1.0
    odd = (2 * np.arange(_TERMS) + 1) ** 2 * pi**2
    return float(np.sum(8 / odd * np.exp(-odd * diffusion_m2_s * time_s / (4 * depth_m**2))))


def slowest_half_life_s(*, diffusion_m2_s: float, depth_m: float) -> float:
    """Half-life in s of the slowest part of that series, which is what is left of it soon.

    Source: Fick's second law, first term of the series. Doubt: as `share_left`.

    >>> round(slowest_half_life_s(diffusion_m2_s=4e-10, depth_m=4e-5), 1)
    1.1
    """
    return log(2) * 4 * depth_m**2 / (pi**2 * diffusion_m2_s)


def half_lives_needed(*, start_g_m2: float, limit_g_m2: float) -> float:
    """How many half-lives in clean water bring `start_g_m2` down to `limit_g_m2` (g/m2).

    Source: definition. Doubt: none in the arithmetic; a film's last traces leave more slowly.

    >>> round(half_lives_needed(start_g_m2=4.2015, limit_g_m2=0.014), 2)
    8.23
    """
    if not 0 < limit_g_m2 <= start_g_m2:
        raise refuse("residual-limit-out-of-range", limit=limit_g_m2)
    return log2(start_g_m2 / limit_g_m2)


def left_in_running_water(time_s: float, *, half_life_s: float) -> float:
    """Share left after `time_s` (s) by the rule of one half-life in running water.

    Source: NAVEDTRA 14209 (1993), teaching rule: half leaves in each minute.
    Doubt: fourfold between manuals, and too good for the last traces: a rule, told to nobody as a residual.

    >>> left_in_running_water(120, half_life_s=60)
    0.25
    """
    if time_s < 0 or not 5 <= half_life_s <= 600:
        raise refuse("wash-half-life-out-of-range", half_life_s=half_life_s)
    return float(0.5 ** (time_s / half_life_s))
