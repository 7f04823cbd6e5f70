"""Who has a job open, seen by processes that know nothing of one another."""

import os
import subprocess
import sys
import time
from datetime import UTC, datetime
from pathlib import Path

import msgspec
import pytest

from shared.files.claim import LEFT_BEHIND_S, Claim, HeldError, claim, refuse_held
from shared.files.holder import Holder, this_process
from tests.holding import PROJECT, Hold, hold

__all__ = ["hold"]

NOW = datetime.now(UTC)
FAR = Holder(who="rosa", host="van", machine="another", process=1, started="", since=int(NOW.timestamp()), mark="r")
"""A holder on another machine."""


@pytest.fixture
def job(tmp_path: Path) -> Path:
    return tmp_path / "kitchen.recoat"


def put_beside(job: Path, content: bytes, age_s: float = 0) -> Path:
    """The file of a claim beside the job, as another process left it so many seconds ago."""
    file = job.with_name(".kitchen.recoat.open")
    file.write_bytes(content)
    os.utime(file, (time.time() - age_s,) * 2)
    return file


def written(holder: Holder) -> bytes:
    return msgspec.json.encode(holder)


def own_claim(job: Path) -> Claim:
    made = claim(job)
    assert made is not None
    return made


def test_a_job_that_another_process_has_open_is_refused(job: Path, hold: Hold) -> None:
    hold(job)
    with pytest.raises(HeldError, match=r"kitchen\.recoat: it has been open in another window since \d\d:\d\d"):
        claim(job)


def test_what_a_killed_process_leaves_behind_is_recognised(job: Path, hold: Hold) -> None:
    other = hold(job)
    other.kill()
    time.sleep(0.1)  # killed, but its parent has not asked for its end yet
    made = own_claim(job)
    assert made.holds
    assert [file.name for file in job.parent.iterdir()] == [".kitchen.recoat.open"]


def test_a_later_process_with_the_same_number_is_another(job: Path) -> None:
    this = this_process(NOW)
    put_beside(job, written(this))
    with pytest.raises(HeldError):
        claim(job)
    put_beside(job, written(msgspec.structs.replace(this, started="1")))
    assert own_claim(job).holds


def test_a_process_that_is_seen_to_run_holds_however_long_it_has_not_written(job: Path, hold: Hold) -> None:
    hold(job)
    file = job.with_name(".kitchen.recoat.open")
    os.utime(file, (0, 0))
    with pytest.raises(HeldError):
        claim(job)


def test_a_holder_on_another_machine_is_named_until_it_has_not_written_for_minutes(job: Path) -> None:
    file = put_beside(job, written(FAR), LEFT_BEHIND_S - 30)
    with pytest.raises(HeldError, match="rosa has had it open on van since"):
        claim(job)
    put_beside(job, written(FAR), LEFT_BEHIND_S + 30)
    assert own_claim(job).file == file


def test_a_claim_that_is_written_anew_is_not_left_behind(job: Path) -> None:
    made = own_claim(job)
    os.utime(made.file, (0, 0))
    made.refresh()
    assert time.time() - made.file.stat().st_mtime < 30
    assert made.holds


def test_a_claim_that_another_took_over_is_neither_written_nor_taken_away(job: Path) -> None:
    made = own_claim(job)
    file = put_beside(job, written(FAR))
    made.refresh()
    made.give_up()
    assert file.read_bytes() == written(FAR)
    with pytest.raises(HeldError):
        claim(job, made)


def test_a_claim_is_gone_once_it_is_given_up(job: Path) -> None:
    own_claim(job).give_up()
    assert list(job.parent.iterdir()) == []


def test_the_own_claim_is_no_other(job: Path) -> None:
    made = own_claim(job)
    assert claim(job, made) is made
    with pytest.raises(HeldError):
        claim(job)


def test_a_link_and_the_job_that_it_leads_to_have_one_claim(job: Path, hold: Hold) -> None:
    job.touch()
    link = job.with_name("link.recoat")
    link.symlink_to(job)
    hold(link)
    with pytest.raises(HeldError):
        refuse_held(job)


@pytest.mark.parametrize("content", [b"", b"\xff{", b'{"process": 0}', bytes(9999)])
def test_a_claim_that_cannot_be_read_holds_while_it_is_young(job: Path, content: bytes) -> None:
    put_beside(job, content)
    with pytest.raises(HeldError, match="it is open in another window"):
        claim(job)
    put_beside(job, content, LEFT_BEHIND_S + 30)
    assert own_claim(job).holds


def test_where_no_claim_can_be_made_nothing_is_said(tmp_path: Path) -> None:
    assert claim(tmp_path / "nowhere" / "kitchen.recoat") is None
    assert claim(tmp_path / ("k" * 245 + ".recoat")) is None  # with the ending of a claim it is no name any more


CLAIMING = """
import sys, time
from pathlib import Path
from shared.files.claim import HeldError, claim

folder = Path(sys.argv[1])
print("ready", flush=True)
while not (folder / "go").exists():
    time.sleep(0.001)
for each in range(40):
    try:
        if claim(folder / str(each) / "kitchen.recoat"):
            print(each, flush=True)
    except HeldError:
        pass
print("done", flush=True)
sys.stdin.read()
"""


def test_of_many_that_claim_at_once_what_was_left_behind_one_gets_it(tmp_path: Path) -> None:
    for each in range(40):
        (tmp_path / str(each)).mkdir()
        put_beside(tmp_path / str(each) / "kitchen.recoat", written(FAR), LEFT_BEHIND_S + 30)
    command, pipe = (sys.executable, "-c", CLAIMING, str(tmp_path)), subprocess.PIPE
    many = [subprocess.Popen(command, cwd=PROJECT, stdin=pipe, stdout=pipe, text=True) for _ in range(4)]
    for one in many:
        assert one.stdout is not None
        assert one.stdout.readline() == "ready\n"
    (tmp_path / "go").touch()
    got = [line.strip() for one in many if one.stdout for line in iter(one.stdout.readline, "done\n")]
    for one in many:
        one.communicate()
    assert sorted(got, key=int) == [str(each) for each in range(40)]


def test_what_a_claim_says_is_shown_as_plain_signs(job: Path) -> None:
    put_beside(job, written(msgspec.structs.replace(FAR, who="ro\x1b[2Jsa\n")))
    with pytest.raises(HeldError) as refused:
        claim(job)
    assert refused.value.what.startswith("ro?[2Jsa? has had it open on van")
