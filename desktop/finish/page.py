"""Finish: the face in its finish colours; the finish of each surface, its build-up, and the products for it."""

from enum import StrEnum

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QAbstractButton,
    QButtonGroup,
    QFrame,
    QHBoxLayout,
    QPushButton,
    QScrollArea,
    QSplitter,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)

from desktop.canvas.face_view import FaceSource, FaceView
from desktop.fields.page_button import hold_width
from desktop.finish.build_up_form import BuildUpForm
from desktop.finish.cautions_view import CautionsView
from desktop.finish.money_form import MoneyForm
from desktop.finish.picked_form import PickedForm
from desktop.finish.product_form import ProductForm
from desktop.finish.section import Section
from desktop.finish.surfaces_form import SurfacesForm
from desktop.gestures.gesture import Held
from desktop.look.roles import set_role
from desktop.pages.view import PageView
from desktop.state.shown import Page, Shown
from desktop.state.store import Store
from geometry.parts.picking import parts_at
from shared.findings import Finding

FACE_SHARE, FORM_SHARE = 600, 680

FINISH = Page("Finish", in_finish_colours=True)


class Heading(StrEnum):
    """The sections of the page, in the order in which they are needed."""

    SURFACES = "Surfaces"
    BUILD_UP = "Build-up"
    PRODUCTS = "Products"
    MONEY = "Prices and waste"
    CAUTIONS = "Cautions"


class FinishPage(PageView):
    """Shows the face at the left over the fields of the picked parts, and one section at a time at the right."""

    beside: QFrame

    def __init__(self, store: Store, faces: FaceSource, parent: QWidget | None = None) -> None:
        face = FaceView(faces)
        super().__init__(FINISH, face, parent)
        self._store, self.canvas = store, face.canvas
        self.surfaces, self.build_up = SurfacesForm(store, self), BuildUpForm(store, self)
        self.products, self.money = ProductForm(store, self), MoneyForm(store, self)
        self.picked = PickedForm(store, self)
        self.beside = QFrame(self)
        self.cautions = CautionsView(store, self)
        sections = (self.surfaces, self.build_up, self.products, self.money, self.cautions)
        self._sections: dict[Heading, Section] = dict(zip(Heading, sections, strict=True))
        self._headings = QButtonGroup(self)
        self._stack = QStackedWidget(self)
        self._lay_out()
        self._headings.buttonClicked.connect(self._turn)
        self.canvas.pressed.connect(self._pick)
        self.canvas.cancelled.connect(self._pick_nothing)

    @property
    def open_section(self) -> Section:
        """The section that is shown."""
        return list(self._sections.values())[self._stack.currentIndex()]

    def heading(self, heading: Heading) -> QAbstractButton:
        """The button that opens a section."""
        return self._headings.button(list(Heading).index(heading))

    def focus_beside(self) -> None:
        """Give the keys to the heading of the section that is shown."""
        self._headings.button(self._stack.currentIndex()).setFocus(Qt.FocusReason.ShortcutFocusReason)

    def chosen_finish(self) -> str:
        """The id of the finish whose build-up is shown; "" if the job has no finishes."""
        finish = self.build_up.chosen
        return finish.id if finish else ""

    def show_finish(self, finish_id: str) -> None:
        """Show the build-up of this finish."""
        self.build_up.choose(finish_id)
        self.heading(Heading.BUILD_UP).click()

    def open_section_of(self, finding: Finding) -> None:
        """Open the section where a finding is put right, and let it say this finding first."""
        for heading, section in self._sections.items():
            if section.place is finding.code.place:
                section.to_look_at.begin_with(finding)
                self.heading(heading).click()

    def follow(self, old: Shown | None, new: Shown) -> None:
        """Show the open section and the picked parts again if anything that they show is another."""
        if old is None or _what_is_shown(old) != _what_is_shown(new):
            self.open_section.follow(new)
            self.picked.follow(new)

    def leave(self) -> None:
        """Fill all fields again on coming back, so that nothing refused stays in them."""
        self.forget()

    def _turn(self, button: QAbstractButton) -> None:
        self._stack.setCurrentIndex(self._headings.id(button))
        self.open_section.follow(self._store.open)

    def _pick(self, at: tuple[float, float], held: Held) -> None:
        """Pick the part in front at this point, or the one behind if that is picked. Shift adds it or takes it out."""
        shown = self._store.open
        ids = [part.id for part in parts_at(shown.shown_face.parts, *at)] if shown.shown_face else []
        if held.shift and ids:
            others = tuple(part for part in shown.picked if part != ids[0])
            self._store.pick(others if ids[0] in shown.picked else (*others, ids[0]))
        elif len(shown.picked) == 1 and shown.picked[0] in ids:
            self._store.pick((ids[(ids.index(shown.picked[0]) + 1) % len(ids)],))
        else:
            self._store.pick(tuple(ids[:1]))

    def _pick_nothing(self) -> None:
        self._store.pick(())

    def _lay_out(self) -> None:
        face = QFrame(self)
        face.setObjectName("paper")
        left = QVBoxLayout(face)
        left.setContentsMargins(0, 0, 0, 0)
        left.setSpacing(0)
        left.addWidget(self.canvas, 1)
        left.addWidget(self.picked)
        self.beside.setObjectName("panel")
        right = QVBoxLayout(self.beside)
        right.setContentsMargins(12, 8, 4, 8)
        heads = QHBoxLayout()
        for place, heading in enumerate(Heading):
            heads.addWidget(self._button(place, heading))
        heads.addStretch(1)
        right.addLayout(heads)
        for section in self._sections.values():
            self._stack.addWidget(section if section is self.products else _scrolled(section))
        right.addWidget(self._stack, 1)
        halves = QSplitter(Qt.Orientation.Horizontal, self)
        halves.setChildrenCollapsible(False)
        halves.addWidget(face)
        halves.addWidget(self.beside)
        halves.setSizes([FACE_SHARE, FORM_SHARE])
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(halves)

    def _button(self, place: int, heading: Heading) -> QPushButton:
        button = QPushButton(heading.value, self)
        button.setCheckable(True)
        button.setChecked(place == 0)
        button.setAutoDefault(True)
        set_role(button, "page")
        hold_width(button)
        self._headings.addButton(button, place)
        return button


def _scrolled(section: Section) -> QScrollArea:
    section.setObjectName("panel")
    area = QScrollArea()
    area.setWidgetResizable(True)
    area.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
    section.setContentsMargins(0, 4, 8, 0)
    area.setWidget(section)
    return area


def _what_is_shown(shown: Shown) -> tuple[object, ...]:
    return id(shown.job), id(shown.takeoff), id(shown.bill), shown.face, shown.picked
