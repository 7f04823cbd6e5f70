import pytest

from geometry.outlines.shapes import box
from shared.job import Part
from shared.trade.finishes import Material
from shared.trade.kinds import Kind, usual
from takeoff.surfaces.materials import material_named, material_of


@pytest.mark.parametrize(
    ("words", "material"),
    [
        ("laminate on particleboard", Material.LAMINATE),
        ("Tiles, 150 x 150", Material.TILE),
        ("ceramic", Material.TILE),
        ("painted timber", Material.OLD_PAINT),
        ("unpainted timber", Material.TIMBER),
        ("old paint over tiles", Material.OLD_PAINT),
        ("stainless steel", Material.METAL),
        ("White melamine board", Material.MELAMINE),
        ("stone", None),
        ("metallic", None),
        ("", None),
    ],
)
def test_the_first_material_that_is_named_counts(words: str, material: Material | None) -> None:
    assert material_named(words) is material


def test_every_kind_with_a_surface_is_made_of_something_and_a_hole_of_nothing() -> None:
    assert {kind for kind, row in usual().items() if (row.material is None) is not row.hole} == set()


def test_a_parts_words_go_before_what_is_usual_for_its_kind() -> None:
    top = Part("top", Kind.BENCHTOP, box(0, 0, 600, 600))
    assert material_of(top) is Material.LAMINATE
    assert material_of(Part("top", Kind.BENCHTOP, top.outline, made_of="oak")) is Material.TIMBER
    assert material_of(Part("top", Kind.BENCHTOP, top.outline, made_of="stone")) is Material.LAMINATE


@pytest.mark.parametrize("material", Material)
def test_every_material_is_named_by_its_own_word(material: Material) -> None:
    assert material_named(material.value) is material
