"""Finishes as values: build-ups of steps that surfaces get. `data/build_ups.toml` has those of a new job."""

from enum import StrEnum

from shared.trade.value import NamedValue, Value


class Material(StrEnum):
    """What a part is made of, under its coats."""

    TILE = "tile"
    LAMINATE = "laminate"
    MELAMINE = "melamine"
    TIMBER = "timber"
    OLD_PAINT = "old paint"
    METAL = "metal"


class Work(StrEnum):
    """What a step does. The members are in the order in which steps usually come."""

    CLEAN = "clean"
    RINSE = "rinse"
    KEY = "key"
    FILL = "fill"
    PRIME = "prime"
    COLOUR = "colour"
    CLEAR = "clear"


class Step(Value, frozen=True):
    """One operation of a finish.

    `product` is the id of the product that it uses up; "" for none (a rinse with water). `coats` is how often it is
    done. `on` are the materials that it is done on; empty means all of them. `covers_m2` overrides the product's own
    spread rate, in m2 a litre or a piece. `thinning` is what is added to one litre of the product, as a share: 0.1 is a
    tenth. `tool` is the id of the product that it is applied with.
    The rest are hours. The next coat or step follows after `next_h` at the earliest and `next_most_h` at the latest
    (None: no limit). The surface may be touched after `touch_h` and used after `use_h`.
    """

    work: Work
    product: str = ""
    coats: int = 1
    on: tuple[Material, ...] = ()
    covers_m2: float | None = None
    thinning: float = 0.0
    tool: str = ""
    next_h: float = 0.0
    next_most_h: float | None = None
    touch_h: float = 0.0
    use_h: float = 0.0


class Finish(NamedValue, frozen=True):
    """A build-up that surfaces get: its steps in the order of work.

    `shade` is the colour that the finish is shown in, "#RRGGBB"; "" while none is chosen.
    """

    steps: tuple[Step, ...] = ()
    shade: str = ""
