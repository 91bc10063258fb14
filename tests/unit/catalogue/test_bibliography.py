"""The works that numbers are taken from."""

from __future__ import annotations

import pytest

from tankside.catalogue import bibliography as module
from tankside.catalogue.bibliography import bibliography
from tankside.core.sources import Provenance, Source

CITED = {
    "Anchell": "anchell-2008",
    "NAVEDTRA 14209": "navedtra-14209",
    "TM 11-2323": "tm-11-2323",
    "36 CFR 1238.14": "cfr-36-1238-14",
    "JCGM 101": "jcgm-101",
    "Tanaka": "tanaka-2001",
    "Technometrics": "mckay-1979",
}


def test_every_entry_names_a_work() -> None:
    """Title and place at least, and how its figures came."""
    for key, source in bibliography().items():
        assert key == source.key
        assert all((source.title, source.place)), key


@pytest.mark.parametrize(("words", "key"), CITED.items())
def test_works_cited_in_docstrings_are_listed(words: str, key: str) -> None:
    """What the core cites by name has its entry, under a title or number that names it."""
    source = bibliography()[key]
    assert words in f"{source.title} {source.number} {source.place}"


def test_a_source_quoted_from_memory_says_so() -> None:
    """Wherever it is printed."""
    assert str(bibliography()["iso-6"]).endswith("(from memory)")
    assert "memory" not in str(bibliography()["anchell-2008"])


def test_an_entry_with_a_missing_field_is_a_fault() -> None:
    """The file is ours, so this is a bug and no refusal."""
    with pytest.raises(ValueError, match="lonely"):
        module._source("lonely", {"title": "A book", "how": "published"})


def test_a_published_value_names_its_source() -> None:
    """'Published' without a key would be hearsay."""
    with pytest.raises(ValueError, match="names its source"):
        Provenance("published")
    assert "own" == Provenance("own").told
    assert "T, N, P, D" == str(Source("k", "T", "N", "D", "P", "published"))
