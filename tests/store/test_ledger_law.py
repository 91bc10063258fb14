"""The law of the ledger: whatever is noted, in whatever order, what is booked is what the log owes."""

from __future__ import annotations

import tempfile
from pathlib import Path

from bench import RUN, Bench, left_to_book, stands
from deeds import deed
from evening_clock import at
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from tankside.store.connection import Database


@settings(max_examples=15, suppress_health_check=[HealthCheck.too_slow])
@given(data=st.data())
def test_what_is_booked_is_what_the_log_owes(data: st.DataObject) -> None:
    """It should hold after each command, refused ones too, and for a shell that only reads the file."""
    with tempfile.TemporaryDirectory() as folder:
        database = Database(Path(folder) / "tankside.db")
        bench = Bench(database)
        bench.open()
        for number in range(1, data.draw(st.integers(1, 10)) + 1):
            command = deed(lambda options: data.draw(st.sampled_from(options)), number)
            answer = bench.live.note(RUN, command, at(60.0 * number))
            assert answer == bench.desk.answers.find(command.id)
            assert () == left_to_book(bench.desk)
            assert all(stands(bench.desk, code)[0] >= -1e-6 for code in ("K7M4-T", "F9QD-2"))
        events = bench.desk.run_log.after(RUN)
        assert list(range(1, len(events) + 1)) == [one.seq for one in events]
        assert bench.live.look(RUN) == bench.shell(2_000_000).look(RUN)
        database.close()
