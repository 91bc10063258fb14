"""How one person writes amounts."""

from __future__ import annotations

from tankside.core.quantities.preferences import Preferences, preferences_from


def test_kept_preferences_are_read_again() -> None:
    """Texts by name, as the household keeps them."""
    kept = {"temperature": "F", "volume": "imperial_fl_oz", "language": "en"}
    assert Preferences("F", "imperial_fl_oz") == preferences_from(kept)


def test_what_was_never_chosen_or_is_not_known_falls_back() -> None:
    """A preference of a later version does no harm."""
    assert Preferences() == preferences_from({})
    assert Preferences("F") == preferences_from({"temperature": "F", "volume": "gill", "theme": "dark"})
