"""The Densities' pages: a strip typed, its curve and time, a proposal taken, and control strips."""

from __future__ import annotations

import re
from dataclasses import replace
from datetime import timedelta

import pytest
from evening_clock import SetClock, at
from fastapi import FastAPI
from fastapi.testclient import TestClient
from season import DAY_S, Season
from strips import densities, law, typed

from tankside.workflows.read_journal import Which
from tankside.workflows.read_step_strip import Alone, read_step_strip

FREE = {"film": "Ferry 125", "developer": "Umber", "dilution": "1+1", "time": "9:30", "temp": "20"}


def words(contrast: float) -> str:
    """The readings of a strip as one types them."""
    return " ".join(f"{one:.2f}" for one in densities(contrast))


@pytest.fixture
def season(app: FastAPI) -> Season:
    """A house with one film and developer, looked at three days later."""
    season = Season(app.state.house)
    assert isinstance(season.house.clock, SetClock)
    season.house.clock.seconds = 3 * DAY_S
    return season


@pytest.fixture
def which(season: Season) -> Which:
    """An evening at the right temperature."""
    return season.evening()


def address(season: Season) -> str:
    """The page of its only combination."""
    return f"/densities/{season.house.desk.combinations.all()[0].key}"


def known(season: Season) -> dict[str, str]:
    """Film, developer and dilution of its only combination, as one types them."""
    one = season.house.desk.combinations.all()[0]
    return {**FREE, "film": one.film, "developer": one.developer, "dilution": str(one.dilution)}


def test_an_empty_page_says_how_to_begin(client: TestClient) -> None:
    """A vessel, a sentence, and two ways on."""
    text = client.get("/densities").text

    assert "No step strip is read yet." in text
    assert 'href="/densities/strip/new"' in text
    assert 'href="/journal"' in text


def test_from_a_strip_to_the_next_time(client: TestClient, season: Season, which: Which) -> None:
    """Typed with its run: curve, time with its doubt, half of the correction taken, the old row kept."""
    assert f"/densities/strip/new?run={which.run}&amp;tankful=A" in client.get(f"/journal/{which.run}/A").text
    sent = {"run": str(which.run), "tankful": "A", "readings": words(0.62), "base_fog": "0.26"}
    text = client.post("/densities/strip/new", data={**sent, "reading_sd": "0.01"}).text

    assert "One step strip, " in text
    assert re.search(r'densities-time">8:\d\d ± 0:\d\d<', text)
    assert "from your step strip." in text
    assert re.search(r'data-name="contrast index">0\.6\d ± 0\.0\d <a', text)
    assert not re.search(r"<style|<script(?! [^>]*src=)|\sstyle=|\son[a-z]+=", text)
    button = re.search(r'name="proposal" value="([^"]+)".*?>(Take half of it: [^<]+)<', text, re.DOTALL)
    assert button is not None
    taken = client.post(f"{address(season)}/proposal", data={"proposal": button[1], "do": "take"}).text
    assert "The next plan uses it" in taken
    rows = season.house.desk.combinations.all()[0].rows
    assert ["leaflet", "accepted"] == [row.source for row in rows]
    assert rows[1].time_s == season.next_plan().tankfuls[0].development.time_s.value


def test_left_as_it_is_adds_nothing(client: TestClient, season: Season, which: Which) -> None:
    """The offer goes, the time stays."""
    sent = {"run": str(which.run), "tankful": "A", "readings": words(0.66), "base_fog": "0.26"}
    text = client.post("/densities/strip/new", data=sent).text
    proposal = re.findall(r'name="proposal" value="([^"]+)"', text)[0]
    after = client.post(f"{address(season)}/proposal", data={"proposal": proposal, "do": "leave"}).text

    assert "Take" not in after
    assert 1 == len(season.house.desk.combinations.all()[0].rows)


@pytest.mark.parametrize(
    ("sent", "at_field", "code"),
    [
        ({"readings": "0.3 0.5"}, "readings", "wrong-count-of-steps"),
        ({"readings": ""}, "readings", "wrong-count-of-steps"),
        ({"time": "soon"}, "time", "time-unreadable"),
        ({"temp": "warm"}, "temp", "temperature-unreadable"),
        ({"temp": "14"}, "temp", "rate-not-known-there"),
        ({"reading_sd": "3"}, "reading_sd", "reading-error-out-of-range"),
        ({"base_fog": "clear"}, "base_fog", "number-unreadable"),
        ({"log_h0": "9"}, "log_h0", "log-exposure-out-of-range"),
        ({"film": ""}, "film", "name-missing"),
    ],
)
def test_what_is_refused_stands_at_its_field(
    client: TestClient, season: Season, sent: dict[str, str], at_field: str, code: str
) -> None:
    """With what was typed kept, and nothing written."""
    whole = {**known(season), "readings": words(0.56), **sent}
    answer = client.post("/densities/strip/new", data=whole)

    assert 422 == answer.status_code
    assert f'id="{at_field}-refused">No: {code}.' in answer.text
    assert sent.get("readings", words(0.56)) in answer.text
    assert () == season.house.desk.step_strips.all()


def test_a_file_stands_in_the_place_of_typing(client: TestClient, season: Season) -> None:
    """A table with its own exposures; what is no text is refused."""
    rows = "\n".join(f"{-3.05 + 0.15 * n:.2f},{one:.2f}" for n, one in enumerate(densities(0.56)[::-1]))
    file = {"file": ("invented.csv", f"log_h,density\n{rows}\n".encode(), "text/csv")}
    sent = {**known(season), "readings": "", "base_fog": "0.26"}
    kept = client.post("/densities/strip/new", data=sent, files=file)
    bad = client.post(
        "/densities/strip/new", data=sent, files={"file": ("x.csv", b"\xff\xfe\x00", "text/csv")}
    )

    assert 200 == kept.status_code
    (strip,) = season.house.desk.step_strips.all()
    assert (21, ()) == (len(strip.log_h or ()), strip.patches)
    assert "No: file-of-readings-no-text." in bad.text


def test_a_tablet_of_ones_own_is_read_with(client: TestClient, season: Season) -> None:
    """Kept by its patches, offered in the form, and asked for its own count of steps."""
    patches = "0.04 0.35 0.64 0.97 1.26 1.58 1.88 2.20 2.51 2.80"
    form = client.post("/densities/tablet/new", data={"name": "zone tablet", "patches": patches}).text
    (tablet,) = season.house.desk.tablets.all()
    assert re.search(rf'<option value="{tablet.key}" selected>zone tablet<', form)
    sent = {**known(season), "tablet": str(tablet.key), "base_fog": "0.26"}
    answer = client.post(
        "/densities/strip/new", data={**sent, "readings": "0.27 0.28 0.30 0.36 0.49 0.66 0.85 1.03 1.21 1.40"}
    )

    assert 200 == answer.status_code
    (strip,) = season.house.desk.step_strips.all()
    assert ("zone tablet", 1.40) == (strip.tablet, strip.densities[0])
    assert 422 == client.post("/densities/tablet/new", data={"name": "odd", "patches": "0.1 0.2"}).status_code


def test_a_strip_is_put_right(client: TestClient, season: Season, which: Which) -> None:
    """What was typed stands in the form again; the newer reading counts and the older one stays readable."""
    sent = {"run": str(which.run), "tankful": "A", "readings": words(0.90), "base_fog": "0.26"}
    client.post("/densities/strip/new", data=sent)
    (first,) = season.house.desk.step_strips.all()
    form = client.get(f"/densities/strip/{first.key}/again").text
    assert words(0.90) in form
    client.post("/densities/strip/new", data={**sent, "readings": words(0.56), "replaces": str(first.key)})
    (_, second) = season.house.desk.step_strips.all()

    assert first.key == second.replaces
    assert "One step strip, " in client.get(address(season)).text
    assert words(0.90) in client.get(f"/densities/strip/{second.key}").text
    assert "the newer reading counts" in client.get(f"/densities/strip/{first.key}").text


def test_another_contrast_is_told_and_worked_out(client: TestClient, season: Season) -> None:
    """Typed, or from the subject's stops and the paper; nonsense stands at its field."""
    house, key = season.house, season.house.desk.combinations.all()[0].key
    read_step_strip(house.desk, house.dice, typed(0.56), Alone(key, 570.0, 20.0), at(0.0))
    told = client.get(f"{address(season)}?wanted=0.50").text
    worked = client.get(f"{address(season)}?stops=7.3&range=1.05").text
    bad = client.get(f"{address(season)}?wanted=steep")

    assert "Time for contrast 0.50" in told
    assert "Time for contrast 0.58" in worked
    assert (422, True) == (bad.status_code, "No: number-unreadable." in bad.text)


@pytest.mark.parametrize(
    ("exposed", "told"),
    [({}, "log H −2.4"), ({"log_h0": "0"}, "EI "), ({"metered_index": "125"}, "EI ")],
)
def test_speed_is_called_what_it_is(
    client: TestClient, season: Season, exposed: dict[str, str], told: str
) -> None:
    """No exposure, no speed; lux-seconds or a meter give an index; never ISO without the standard's light."""
    sent = {**known(season), "readings": words(0.62), "base_fog": "0.26", "reading_sd": "0.005", **exposed}
    text = client.post("/densities/strip/new", data=sent).text

    assert told in text
    assert not re.search(r"ISO \d", text)


def test_speed_is_iso_only_in_the_standards_light(client: TestClient, season: Season) -> None:
    """A rise of 0.80 read to 0.002 in the light of the standard: 0.8 over 10^-2.4 lux-seconds is ISO 200."""
    readings = " ".join(f"{one:.3f}" for one in densities(0.635))
    sent = {**known(season), "readings": readings, "base_fog": "0.26", "reading_sd": "0.002", "log_h0": "0"}
    text = client.post("/densities/strip/new", data={**sent, "stated_light": "yes"}).text

    assert "ISO 200/24°" in text


def test_three_strips_tell_a_table_beside_each_plot(client: TestClient, season: Season) -> None:
    """Curves and contrast against time stand in figures too, each curve named by its time."""
    house, key = season.house, season.house.desk.combinations.all()[0].key
    for time_s in (400.0, 570.0, 900.0):
        contrast = law(time_s, c_inf=0.95, k_per_s=0.0017)
        read_step_strip(house.desk, house.dice, typed(contrast), Alone(key, time_s, 20.0), at(0.0))
    text = client.get(address(season)).text

    assert "Three step strips, " in text
    assert re.search(r"One more, developed \d+:\d0, would narrow it", text)
    told = re.findall(r'densities-time">([^<]+)<', text)[0]
    assert f'class="answer">{told}<' in client.get(f"{address(season)}/why").text
    assert re.search(r'data-points="\[\[-\d', text)
    assert ["1, 6:40", "2, 9:30", "3, 15:00"] == re.findall(r'class="number">(\d, [\d:]+)<', text)
    assert 2 == text.count("curves-family ") == text.count("curves-times ")
    assert re.search(r'<th scope="row">6:00</th><td class="number">0\.\d\d \(0\.\d\d to', text)


def test_the_control_chart_names_what_differed(client: TestClient, season: Season) -> None:
    """Thirteen steady strips and one from a warmer tank, read by another hand: outside, with its words."""
    house, key = season.house, season.house.desk.combinations.all()[0].key
    steady = (0.56, 0.565, 0.555, 0.56, 0.57, 0.56, 0.55, 0.56, 0.565, 0.555, 0.56, 0.565)
    for n, contrast in enumerate((*steady, 0.80)):
        odd = n == len(steady)
        strip = replace(
            typed(contrast), control=True, instrument="other reader" if odd else "my scanner",
            words="new thermometer" if odd else "",
        )  # fmt: skip
        of = Alone(key, 570.0, 22.5 if odd else 20.0)
        read_step_strip(house.desk, house.dice, strip, of, at(3600.0 * n))
    text = client.get(f"{address(season)}/control").text

    assert "Point 13 outside the limits." in text
    assert "Read by other reader; at 22.5 °C, the others at 20.0 °C; you wrote: new thermometer." in text
    assert 13 == len(re.findall(r'data-name="difference"', text))


def test_a_chart_of_few_points_says_how_many_are_missing(client: TestClient, season: Season) -> None:
    """One strip is kept; eleven more until limits are drawn."""
    sent = {**known(season), "readings": words(0.56), "base_fog": "0.26", "control": "yes"}
    text = client.post("/densities/strip/new", data=sent).text

    assert "11 more and the chart draws its limits" in text
    assert "Control strips alone" in client.get(address(season)).text


@pytest.mark.parametrize(
    "path",
    [
        "/densities/{none}",
        "/densities/{none}/control",
        "/densities/strip/{none}",
        "/densities/{known}/control",
    ],
)
def test_what_is_not_there_is_refused(client: TestClient, season: Season, path: str) -> None:
    """In a sentence, not as a fault."""
    known_key = season.house.desk.combinations.all()[0].key
    answer = client.get(path.format(none="00000000-0000-0000-0000-000000000009", known=known_key))

    assert 400 <= answer.status_code < 500
    assert "No: no-" in answer.text


def test_days_are_those_of_the_runs(client: TestClient, season: Season, which: Which) -> None:
    """A strip read a month later is of the month of its run."""
    assert isinstance(season.house.clock, SetClock)
    season.house.clock.seconds = timedelta(days=40).total_seconds()
    sent = {"run": str(which.run), "tankful": "A", "readings": words(0.56), "base_fog": "0.26"}

    assert "One step strip, November, at" in client.post("/densities/strip/new", data=sent).text


def test_the_plan_knows_what_strips_told(client: TestClient, season: Season) -> None:
    """The working of its contrast counts the strip, and its interval is narrower than before."""
    season.next_plan()
    doubt = r'class="answer">0\.\d\d ± (0\.\d\d)<'
    before = re.findall(doubt, client.get("/plan/why/contrast").text)
    key = season.house.desk.combinations.all()[0].key
    read_step_strip(season.house.desk, season.house.dice, typed(0.56), Alone(key, 570.0, 20.0), at(0.0))
    text = client.get("/plan/why/contrast").text

    assert "step strips and answers of yours: 1 " in text
    assert float(re.findall(doubt, text)[0]) < float(before[0])


def test_contrast_and_speed_of_a_strip_have_their_working(client: TestClient, season: Season) -> None:
    """'Why?' beside both, on both pages; an unknown number is not found."""
    sent = {**known(season), "readings": words(0.56), "base_fog": "0.26", "log_h0": "0"}
    text = client.post("/densities/strip/new", data=sent).text
    strip = f"/densities/strip/{season.house.desk.step_strips.all()[0].key}"

    for about, told in (("curve", "Contrast index"), ("speed", "From the speed point")):
        assert f'href="{strip}/why/{about}"' in text
        assert f'href="{strip}/why/{about}"' in client.get(strip).text
        assert told in client.get(f"{strip}/why/{about}").text
    assert 404 == client.get(f"{strip}/why/luck").status_code
