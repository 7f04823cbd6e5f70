import pytest

from shared.job import Face, Job, Part, Room
from shared.trade.finishes import Finish
from shared.trade.kinds import Kind
from shared.trade.products import Product, Use
from shared.trade.value import NamedValue


@pytest.mark.parametrize("named", [Face("a", ""), Room("a", ""), Finish("a", ""), Product("a", "", Use.OTHER)])
def test_what_has_no_name_is_called_by_its_id(named: NamedValue) -> None:
    assert named.called == "a"


def test_a_part_without_a_name_is_called_by_its_kind() -> None:
    assert Part("p1", Kind.DRAWER_FRONT, ()).called == "drawer front"
    assert Part("p1", Kind.DRAWER_FRONT, (), "top drawer").called == "top drawer"


def test_every_face_is_in_its_room() -> None:
    first = Room("r1", "Kitchen", (Face("a", "A"), Face("b", "B")))
    second = Room("r2", "Laundry", (Face("c", "C"),))
    assert Job("Two rooms", (first, second)).room_of == {"a": first, "b": first, "c": second}
