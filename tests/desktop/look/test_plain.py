"""Nothing in the window takes a text of a job for more than letters."""

import ast
import os
import re
import select
import subprocess
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path

import msgspec
import pytest
from msgspec.structs import replace
from PySide6.QtCore import QAbstractItemModel, QAbstractListModel, QModelIndex, QPoint, Qt
from PySide6.QtGui import QAction, QTextDocument
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QApplication,
    QComboBox,
    QInputDialog,
    QLabel,
    QLineEdit,
    QMessageBox,
    QToolTip,
    QWidget,
)
from pytestqt.qtbot import QtBot

from desktop.fields.asking import ask_for_name
from desktop.finish.page import Heading
from desktop.look.plain import Label, button_words, file_words, tip_words, title_words
from shared.files.job import JobFile, read_job_file
from shared.job import CORNERS, END, START, Job
from tests.desktop.finishing import bill_of
from tests.window import Person

DESKTOP = Path(__file__).parents[3] / "desktop"
PLAIN = Path("look/plain.py")
KEPT = {"shade", "photo", *CORNERS, START, END, ""}
"""Fields that hold no words, and words of ours."""

Trap = subprocess.Popen[bytes]


@pytest.fixture
def pipe() -> Iterator[Path]:
    """A pipe with a short name; whoever opens it to read waits for a writer."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder, "p")
        os.mkfifo(path)
        yield path


@pytest.fixture
def trap(pipe: Path) -> Iterator[Trap]:
    """Another process that waits until anyone opens the pipe, lets it go at once, and says so."""
    script = (
        "import sys, time\n"
        "while True:\n"
        "    open(sys.argv[1], 'wb').close()\n"
        "    print('opened', flush=True)\n"
        "    time.sleep(0.01)\n"
    )
    with subprocess.Popen((sys.executable, "-c", script, str(pipe)), stdout=subprocess.PIPE) as process:
        yield process
        process.kill()


def sprung(trap: Trap) -> bool:
    """Whether anyone has opened the pipe."""
    assert trap.stdout is not None
    return bool(select.select((trap.stdout,), (), (), 0.3)[0])


def marked_up(value: object, marks: str, names: dict[str, str]) -> object:
    """A value of a job with markup for every text. Equal texts stay equal, so that the job holds together."""
    if type(value) is str:
        return value if value in KEPT else names.setdefault(value, f"{marks}&{len(names)}")
    if isinstance(value, tuple):
        return tuple(marked_up(item, marks, names) for item in value)
    if not isinstance(value, msgspec.Struct):
        return value
    fields = {name: getattr(value, name) for name in value.__struct_fields__ if name not in KEPT}
    return replace(value, **{name: marked_up(field, marks, names) for name, field in fields.items()})


def job_with(marks: str) -> Job:
    """The example with markup for every text, and enough wrong with it that findings name its parts."""
    example = read_job_file(DESKTOP / "data" / "example.json").job
    job = marked_up(example, marks, {})
    assert isinstance(job, Job)
    return replace(job, money=replace(job.money, budget=100.0))


def texts_of_items(model: QAbstractItemModel, parent: QModelIndex) -> Iterator[tuple[str, str]]:
    columns = 1 if isinstance(model, QAbstractListModel) else model.columnCount(parent)
    for row in range(model.rowCount(parent)):
        for column in range(columns):
            index = model.index(row, column, parent)
            yield str(index.data() or ""), str(index.data(Qt.ItemDataRole.ToolTipRole) or "")
        yield from texts_of_items(model, model.index(row, 0, parent))


def seen_in_tip(tip: str) -> str:
    """What a tool tip shows; Qt is asked only if it cannot read a file for it."""
    assert "<img" not in tip
    assert "<b" not in tip
    if not tip.startswith("<p style"):
        assert "<" not in tip
        return tip
    document = QTextDocument()
    document.setHtml(tip)
    return document.toPlainText()


def key_of(words: str) -> str:
    """The letter that Qt takes for a button's key; "" if there is none."""
    found = re.search(r"&(.)", words.replace("&&", ""))
    return found[1] if found else ""


class Shown:
    """What was seen in the window, widget by widget."""

    def __init__(self) -> None:
        self.words: set[str] = set()
        self.tips: set[str] = set()
        self.kinds: set[type] = set()

    def look_at(self, window: QWidget) -> None:
        """Look at all widgets, at the commands of all menus, and at the picture of the window."""
        for widget in [window, *window.findChildren(QWidget)]:
            self.kinds.add(type(widget))
            self.tips.add(widget.toolTip())
            self.words |= {*words_of(widget), widget.accessibleName(), widget.accessibleDescription()}
            if isinstance(widget, QAbstractItemView):
                for words, tip in texts_of_items(widget.model(), QModelIndex()):
                    self.words.add(words)
                    self.tips.add(tip)
        for action in window.findChildren(QAction):
            assert not key_of(action.text()).isdigit()
            self.words.add(action.text().replace("&&", "&"))
        window.grab()

    def rest_on_tips(self, window: QWidget) -> None:
        """Open every tool tip."""
        for tip in self.tips - {""}:
            self.words.add(seen_in_tip(tip))
            QToolTip.showText(window.mapToGlobal(QPoint(9, 9)), tip, window)
            QApplication.processEvents()
        QToolTip.hideText()


def words_of(widget: QWidget) -> tuple[str, ...]:
    """What a widget shows, if that is text; it takes no text for more than that."""
    if isinstance(widget, QLabel):
        made_by_a_form = "<" not in widget.text() and widget.text()[:1].isupper()
        if widget.metaObject().className() != "QTipLabel":
            assert widget.textFormat() is Qt.TextFormat.PlainText or made_by_a_form, widget.text()
        return (widget.text(),)
    if isinstance(widget, QAbstractButton):
        assert not key_of(widget.text()).isdigit(), widget.text()
        return (widget.text().replace("&&", "&"),)
    if isinstance(widget, QComboBox):
        return tuple(widget.itemText(place) for place in range(widget.count()))
    return (widget.text(),) if isinstance(widget, QLineEdit) else ()


def go_through(person: Person, seen: Shown) -> None:
    """Turn to every page, face and section, with a part picked; open the findings, and be told of trouble."""
    app, window = person.app, person.app.window
    for face, part in ((face, face.parts[0]) for face in person.shown.job.faces):
        app.store.show_face(face.id, (part.id,))
        seen.words |= {app.measure.details.head.text(), app.measure.line.wants.text()}
    for page in app.pages.all:
        app.store.turn_to(page)
        seen.look_at(app.pages.open)
    app.store.turn_to(app.finish.page)
    for heading in Heading:
        app.finish.heading(heading).click()
        app.finish.grab()
    app.frame.open_findings()
    app.tell_trouble(f"{person.shown.job.name}: it cannot be.")
    seen.look_at(window)


@pytest.mark.qt_log_ignore("This plugin does not support raise")
def test_every_text_of_a_job_is_shown_as_its_letters_and_no_file_is_read(
    person: Person, pipe: Path, trap: Trap
) -> None:
    job, seen = job_with(f"<b>x</b><img src={pipe}>[*]"), Shown()
    person.app.files.show_new(JobFile(job))
    bill_of(person)
    go_through(person, seen)
    seen.rest_on_tips(person.app.window)
    assert not sprung(trap)
    all_words = "\n".join(seen.words)
    names = [each.name for each in (*job.rooms, *job.faces, *job.finishes, *job.products)]
    names += [job.name, *(face.parts[0].name for face in job.faces)]
    assert [name for name in names if name not in all_words] == []


def test_the_trap_springs_for_a_label_of_qts_own(qtbot: QtBot, pipe: Path, trap: Trap) -> None:
    label = QLabel(f"<img src={pipe}>")
    qtbot.addWidget(label)
    label.grab()
    assert sprung(trap)


def test_a_label_of_the_house_shows_letters(qtbot: QtBot, pipe: Path, trap: Trap) -> None:
    label = Label(f"<img src={pipe}>")
    qtbot.addWidget(label)
    label.grab()
    assert label.text() == f"<img src={pipe}>"
    assert not sprung(trap)


def test_questions_and_small_dialogs_show_letters(person: Person, pipe: Path, trap: Trap) -> None:
    person.app.files.show_new(JobFile(job_with(f"<img src={pipe}>")))
    person.app.store.edit("Name", replace(person.shown.job, name=f"<img src={pipe}>&1"))
    window = person.app.window
    person.app.files.leave(window.close_now)
    ask_for_name(window, f"<img src={pipe}>&2[*]", "<b>", lambda _: None)
    dialogs = [each for kind in (QMessageBox, QInputDialog) for each in window.findChildren(kind)]
    assert len(dialogs) == 2
    seen = Shown()
    for dialog in dialogs:
        seen.look_at(dialog)
        dialog.reject()
    assert not sprung(trap)
    assert f"Save the changes to <img src={pipe}>&1?" in seen.words
    assert f"<img src={pipe}>&2[*]" in seen.words


@pytest.mark.parametrize("name", ["a[*]", "[*]", "a[*][*]b", "[*[*]]", "[[*]"])
def test_a_name_with_the_mark_in_it_neither_hides_nor_feigns_what_is_not_saved(person: Person, name: str) -> None:
    window = person.app.window
    for saved in (True, False):
        window.say_name("", name, saved=saved)
        assert window.windowHandle().title().startswith(f"{name}{'' if saved else '*'} - ")


def test_what_can_be_undone_is_named_with_its_letters(person: Person) -> None:
    person.app.files.show_new(JobFile(job_with("x")))
    person.app.store.edit("Change of a & b", replace(person.shown.job, name="y"))
    assert "Undo change of a && b" in [action.text().replace("&Undo", "Undo") for action in actions(person)]


def actions(person: Person) -> list[QAction]:
    return person.app.window.findChildren(QAction)


def test_words_are_changed_only_where_qt_would_read_more_into_them() -> None:
    assert tip_words("3 < 4 & 5\nb") == '<p style="white-space: pre-wrap">3 &lt; 4 &amp; 5\nb</p>'
    assert tip_words("Doors & drawers") == "Doors & drawers"
    assert button_words("a & b && c") == "a && b &&&& c"
    assert title_words("a [*] [b]") == "a [*][*] [b]"


@pytest.mark.parametrize(
    ("name", "offered"),
    [
        ("Unit 3/12", "Unit 3-12"),
        ("../../p", "--..-p"),
        ("/dev/p", "-dev-p"),
        (".hidden", "-hidden"),
        ("a: b?", "a- b-"),
    ],
)
def test_the_name_of_a_job_leads_into_no_folder(name: str, offered: str) -> None:
    assert file_words(name) == offered


# What reads more than letters into its text, and what the house has instead.
BANNED = {
    *("QLabel", "QMessageBox", "QInputDialog"),
    *("QToolTip", "QWhatsThis", "QErrorMessage", "QProgressDialog", "QSplashScreen"),
    *("QTextEdit", "QTextBrowser", "QTextDocument", "QStaticText", "QGraphicsTextItem", "QtWidgets", "QtGui"),
}
ALLOWED = {
    (PLAIN, "QLabel"),
    (PLAIN, "QMessageBox"),
    (PLAIN, "QInputDialog"),
    (Path("window/help_view.py"), "QTextBrowser"),  # the help's own text
}
RICH_TIPS = {"setToolTip", "setWhatsThis", "setStatusTip"}
BUTTONS = {"QPushButton", "QCheckBox", "QRadioButton", "QToolButton", "QGroupBox", "QAction"}


@pytest.fixture(scope="module")
def modules() -> dict[Path, ast.Module]:
    return {path.relative_to(DESKTOP): ast.parse(path.read_text("utf-8")) for path in DESKTOP.rglob("*.py")}


def calls(module: ast.Module) -> Iterator[tuple[str, ast.Call]]:
    """Every call in a module, with the last word of what is called."""
    for node in ast.walk(module):
        if isinstance(node, ast.Call):
            called = node.func
            name = called.attr if isinstance(called, ast.Attribute) else getattr(called, "id", "")
            yield name, node


def is_made_by(node: ast.expr, *makers: str) -> bool:
    return isinstance(node, ast.Call) and ast.unparse(node.func).rpartition(".")[2] in makers


def test_no_module_takes_from_qt_what_reads_more_than_letters(modules: dict[Path, ast.Module]) -> None:
    taken = {
        (path, alias.name)
        for path, module in modules.items()
        for node in ast.walk(module)
        if isinstance(node, ast.ImportFrom | ast.Import)
        for alias in node.names
        if alias.name in BANNED or alias.name.startswith("PySide6")
    }
    assert taken == ALLOWED


def test_every_tool_tip_is_made_plain(modules: dict[Path, ast.Module]) -> None:
    tips = [
        (path, node.lineno, node.args[-1])
        for path, module in modules.items()
        for name, node in calls(module)
        if name in RICH_TIPS
    ]
    assert tips
    bare = [
        (str(path), line)
        for path, line, words in tips
        if not isinstance(words, ast.Constant) and not is_made_by(words, "tip_words", "toolTip")
    ]
    assert bare == []
    roles = {path for path, module in modules.items() if "ToolTipRole" in ast.unparse(module)}
    assert roles == {Path("sums/model.py")}
    assert "tip_words" in ast.unparse(modules[Path("sums/model.py")])


def test_every_button_whose_words_are_put_together_names_no_key_by_chance(modules: dict[Path, ast.Module]) -> None:
    put_together = {
        (str(path), ast.unparse(node.args[0]))
        for path, module in modules.items()
        for name, node in calls(module)
        if name in BUTTONS and node.args and isinstance(node.args[0], ast.JoinedStr | ast.BinOp | ast.Attribute)
    }
    assert {each for each in put_together if not each[1].endswith(".value")} == {("window/menus.py", "item.words")}


def test_every_row_of_a_form_has_words_of_ours_or_a_label_of_the_house(modules: dict[Path, ast.Module]) -> None:
    bare = [
        (str(path), ast.unparse(node))
        for path, module in modules.items()
        for name, node in calls(module)
        if name == "addRow" and len(node.args) > 1
        if not (
            isinstance(node.args[0], ast.Constant)
            or is_made_by(node.args[0], "Label")
            or re.search(rf"^ *{ast.unparse(node.args[0])} = Label\(", ast.unparse(module), re.MULTILINE)
        )
    ]
    assert bare == []


def test_every_title_of_a_window_is_made_plain(modules: dict[Path, ast.Module]) -> None:
    titles = [
        (str(path), ast.unparse(node.args[0]))
        for path, module in modules.items()
        for name, node in calls(module)
        if name == "setWindowTitle"
    ]
    assert titles
    assert [
        each for each in titles if "title_words(" not in each[1] and not re.fullmatch(r"'.*'|[A-Z_]+", each[1])
    ] == []
