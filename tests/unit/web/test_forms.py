"""Forms keep what was typed and put one sentence at each field."""

from __future__ import annotations

from tankside.core.refusals import Refusal, Refused
from tankside.web.forms import WHOLE_FORM, Form
from tankside.web.templating import ENVIRONMENT

FIELDS = ("film", "volume", "temp")


def say(refusal: Refusal) -> str:
    """A sentence that shows which refusal it came from."""
    return f"No: {refusal.code}."


def test_what_was_typed_is_kept_under_the_refusals() -> None:
    """Nothing typed is lost, and the first refused field of the page takes the focus."""
    typed = Form.filled(film="my film", volume="30O", temp="68")
    refused = Refused(Refusal("no-unit", at="temp"), Refusal("no-number", at="volume"))

    form = typed.refused_by(refused, say=say, fields=FIELDS)

    assert "30O" == form.text("volume")
    assert {"volume": "No: no-number.", "temp": "No: no-unit."} == dict(form.refusals)
    assert "volume" == form.first_refused


def test_one_sentence_a_field() -> None:
    """The first refusal of a field is told; a second would only be noise."""
    refused = Refused(Refusal("first", at="film"), Refusal("second", at="film"))

    assert "No: first." == Form().refused_by(refused, say=say, fields=FIELDS).refusal("film")


def test_a_refusal_of_no_field_stands_over_the_form() -> None:
    """What concerns the whole, or a field that this page does not have, is never dropped."""
    refused = Refused(Refusal("too-little"), Refusal("elsewhere", at="tank"))

    form = Form().refused_by(refused, say=say, fields=FIELDS)

    assert "No: too-little." == form.refusal(WHOLE_FORM)
    assert form.first_refused is None


def test_the_field_shows_text_sentence_and_focus() -> None:
    """The macro ties the sentence to its field and escapes what was typed."""
    form = Form.filled(volume='"><b>').refused_by(Refused(Refusal("x", at="volume")), say=say, fields=FIELDS)

    html = str(ENVIRONMENT.get_template("parts/form.html").module.field(form, "volume", "Volume", unit="mL"))

    assert 'value="&#34;&gt;&lt;b&gt;"' in html
    assert 'aria-invalid="true"' in html
    assert 'aria-describedby="volume-refused"' in html
    assert "autofocus" in html
    assert '<p class="refused" id="volume-refused">No: x.</p>' in html
