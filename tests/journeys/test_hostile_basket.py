"""Jobs whose products or finishes make no sense: the figure is left out and told, never a silent zero."""

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from desktop.buy.page import BUY
from desktop.command_line import main
from desktop.sums.basket import buy_rows
from takeoff.bill import Bill
from tests.window import Person

EXAMPLE = Path(__file__).parents[2] / "examples" / "harbour-row.json"

Content = dict[str, Any]


def product(job: Content, name: str) -> Content:
    found: Content = next(each for each in job["products"] if each["id"] == name)
    return found


def no_spread_rate(job: Content) -> None:
    product(job, "tile-colour")["covers_m2"] = 0


def negative_spread_rate(job: Content) -> None:
    product(job, "tile-colour")["covers_m2"] = -9


def ratio_of_nothing(job: Content) -> None:
    product(job, "tile-colour")["ratio"] = [0, 1]


def packs_of_nothing(job: Content) -> None:
    for pack in product(job, "tile-colour")["packs"]:
        pack["size"] = 0


def missing_product(job: Content) -> None:
    job["products"].remove(product(job, "tile-colour"))


def beyond_every_pack(job: Content) -> None:
    product(job, "tile-colour")["covers_m2"] = 1e-9


HOSTILE = (no_spread_rate, negative_spread_rate, ratio_of_nothing, packs_of_nothing, missing_product, beyond_every_pack)


def spoilt(folder: Path, spoil: Callable[[Content], None]) -> Path:
    """The example with a product that cannot be reckoned with."""
    job = json.loads(EXAMPLE.read_text("utf-8"))
    spoil(job)
    path = folder / f"{spoil.__name__}.json"
    path.write_text(json.dumps(job), "utf-8")
    return path


@pytest.mark.parametrize("spoil", HOSTILE)
def test_the_shopping_list_tells_what_it_lacks(
    tmp_path: Path, spoil: Callable[[Content], None], capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["buy", str(spoilt(tmp_path, spoil))]) == 0
    out, error = capsys.readouterr()
    assert "2 x 1 L kit" not in out
    assert "Left out, and in no total: 1 thing to look at." in out
    assert "tile" in out.split("Left out, and in no total")[1]
    assert "Traceback" not in error


def test_the_page_buy_says_at_its_head_that_it_is_not_the_whole(
    person: Person, tmp_path: Path, subtests: pytest.Subtests
) -> None:
    for spoil in HOSTILE:
        with subtests.test(spoil.__name__):
            person.leave_job()
            person.app.files.open_path(spoilt(tmp_path, spoil))
            person.wait_until(lambda: person.app.store.shown is not None)
            person.turn_to(BUY)
            bill = bill_of(person)
            assert len(bill.left_out) == 1
            assert person.app.buy.head.text().endswith(" so far, 1 thing left out (budget 750.00)")
            assert person.totals[-1].endswith(" so far, 1 thing left out (budget 750.00)")
            assert buy_rows(bill, person.shown.takeoff)[0].children[0].cells[0] == bill.left_out[0]


def bill_of(person: Person) -> Bill:
    person.wait_until(lambda: person.shown.bill is not None and person.shown.bill.job is person.shown.job)
    assert person.shown.bill is not None
    return person.shown.bill


def test_a_stand_in_that_cannot_be_reckoned_with_leaves_nothing_out(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    job = json.loads(EXAMPLE.read_text("utf-8"))
    product(job, "front-colour")["covers_m2"] = 0
    path = tmp_path / "spoilt.json"
    path.write_text(json.dumps(job), "utf-8")
    assert main(["buy", str(path)]) == 0
    out, error = capsys.readouterr()
    assert "Left out" not in out
    assert error.endswith("above 0. It is not bought.\n")


def test_what_is_coated_without_a_finish_is_told_beside_the_basket(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    job = json.loads(EXAMPLE.read_text("utf-8"))
    next(each for each in job["kinds"] if each["kind"] == "splashback")["finish"] = ""
    path = tmp_path / "spoilt.json"
    path.write_text(json.dumps(job), "utf-8")
    assert main(["buy", str(path)]) == 0
    assert "splashback is coated, but no finish is chosen for it; choose one." in capsys.readouterr().out
