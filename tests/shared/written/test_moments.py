from datetime import UTC, datetime, timedelta

from shared.written.moments import moment_words

NOW = datetime(2026, 3, 9, 15, 0, tzinfo=UTC)


def test_a_moment_of_today_is_its_time_and_any_other_has_its_date() -> None:
    assert moment_words(NOW - timedelta(minutes=28), NOW) == "14:32"
    assert moment_words(NOW - timedelta(days=1), NOW) == "15:00 on 2026-03-08"
