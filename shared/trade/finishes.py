"""Finishes as values: build-ups of steps that surfaces get."""

from enum import StrEnum

from shared.trade.value import NamedValue, Value


class Material(StrEnum):
    """What is underneath."""

    TILE = "tile"
    LAMINATE = "laminate"
    MELAMINE = "melamine"
    TIMBER = "timber"
    OLD_PAINT = "old paint"
    METAL = "metal"


class Work(StrEnum):
    """What a step does, in the order in which steps usually come."""

    CLEAN = "clean"
    RINSE = "rinse"
    KEY = "key"
    FILL = "fill"
    PRIME = "prime"
    COLOUR = "colour"
    CLEAR = "clear"


class Step(Value, frozen=True):
    """One operation of a finish.

    `product` is a product's id; "" where none is used up (a rinse with water). `coats` is how often it is done. `on`
    are the materials that it is done on; none where it is done on all. `covers_m2` overrides what the product says of
    a litre (or piece). `thinning` is what is added to one litre of it, as a share. `tool` is the product that it is
    laid with. Hours: `next_h` at least and `next_most_h` at most (None: no limit) until the next coat or step,
    `touch_h` until it may be touched, `use_h` until it may be used.
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
    """A build-up that surfaces get, by its id and name: its steps in the order of work.

    `shade` is the colour that it is shown in, "#RRGGBB"; "" where none is chosen.
    """

    steps: tuple[Step, ...] = ()
    shade: str = ""
