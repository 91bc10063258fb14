"""Why a stop bath may still take so many rolls, in values and in words."""

from __future__ import annotations

import pytest

from tankside.core.planning.explain_stop import why_stop_left
from tankside.core.planning.why import Why
from tankside.core.quantities.preferences import Preferences
from tankside.core.shelf.stop_count import stop_count
from tankside.wording import why

METRIC = Preferences()


def told(*, label: float | None = None, used: float = 4, ml: float = 1000, turned: bool = False) -> Why:
    """The why of a bath of `ml` after `used` rolls."""
    count = stop_count(used_units=used, put_in_ml=ml, label_per_l=label)
    return why_stop_left(count, put_in_ml=ml, turned=turned)


def test_the_label_goes_before_the_published_count() -> None:
    """20 a litre by the label less 4: 16; the published 12 stands beside it as 8."""
    found = told(label=20)

    assert 16 == found.answer.value
    assert ["stop-label", "stop-published", "stop-acid"] == [one.code for one in found.lengths]
    assert [16, 8] == [one.estimate.value for one in found.lengths[:2]]
    assert "note-label" not in [one.code for one in found.narrows]


def test_without_a_label_the_published_count_stands_in() -> None:
    """12 a litre (Anchell 2008, p. 268) in half a litre less 4: 2 rolls, and the label is asked for."""
    found = told(ml=500)

    assert 2 == found.answer.value
    assert "Why 2 rolls?" == why.title(found, METRIC)
    assert "By the one count published" in why.answer_sentence(found, METRIC)
    assert ("The one published count", "12 rolls a litre, less 4 used: 2.") == why.length_words(
        found.lengths[0], METRIC
    )
    assert why.narrows_sentences(found, METRIC)[-1].startswith("Note the count on its label")


def test_acid_explains_and_the_developer_moves_it() -> None:
    """Thinned fourfold the developer takes a quarter of the acid: three to four times as many rolls."""
    acid = told(used=0).lengths[-1]

    assert 3 < acid.estimate.high / acid.estimate.low < 4
    assert ("Acid explains", "11 more after a strong developer as stock, 39 more at 1+3.") == (
        why.length_words(acid, METRIC)
    )
    assert all("valid" not in one or "validates neither" in one for one in why.leaves_out_sentences(told()))


def test_a_turned_indicator_ends_it() -> None:
    """Whatever the count."""
    found = told(label=20, turned=True)

    assert 0 == found.answer.value
    assert "Its indicator has turned: it is done, whatever the count." == why.answer_sentence(found, METRIC)


def test_the_plot_falls_from_all_of_the_acid_to_none() -> None:
    """Stock is done before the twelfth roll and the same at 1+3 is not; 1+1 lies between."""
    plot = told().plot

    assert plot is not None
    assert (100, 100, 100) == (plot.low[0], plot.middle[0], plot.high[0])
    assert plot.low[12] == 0
    assert all(a <= b <= c for a, b, c in zip(plot.low, plot.middle, plot.high, strict=True))  # type: ignore[operator]
    assert pytest.approx(50, abs=20) == plot.high[15]


@pytest.mark.parametrize("ml", [40.0, 25_000.0])
def test_a_thimble_and_a_vat_have_their_count_alone(ml: float) -> None:
    """Outside the range of the acid's model the count still binds."""
    assert ["stop-published"] == [one.code for one in told(used=0, ml=ml).lengths]
