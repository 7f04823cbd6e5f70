"""How widgets look: a palette for all, and a short style sheet for the few that need more."""

from importlib.resources import files
from pathlib import Path

from PySide6.QtGui import QColor, QPalette

from desktop.look.palette import Look

_STYLE = """
QToolTip {{ color: {ink}; background: {field}; border: 1px solid {border}; padding: 4px; }}
QMenuBar, #bar {{ background: {bar}; }}
QMenuBar {{ padding: 2px 6px; }}
#paper {{ background: {paper}; }}
#panel {{ background: {ground}; }}
#line {{ background: {field}; border: 2px solid {border}; }}
#line[active="true"] {{ border-color: {accent}; }}
#line QLineEdit {{
    border: none; background: transparent; padding: 3px 0; font-weight: bold; font-size: 15px;
}}
QLabel[role="quiet"], QCheckBox[role="quiet"] {{ color: {quiet}; }}
QLabel[role="key"] {{ color: {quiet}; font-weight: normal; font-size: 11px; }}
QLabel[role="good"] {{ color: {good}; }}
QLabel[role="trouble"] {{ color: {warning}; }}
QLabel[role="warning"] {{
    color: {warning}; background: {warning_ground}; border: 1px solid {warning}; border-radius: 6px; padding: 8px 10px;
}}
QLabel[role="head"] {{ font-weight: bold; font-size: 15px; }}
QLabel[role="welcome"] {{ font-size: 26px; }}
QPushButton[role="page"], QPushButton[role="mode"] {{
    border: 1px solid transparent; border-radius: 4px; padding: 5px 12px; text-align: left; background: transparent;
}}
QPushButton[role="page"]:hover, QPushButton[role="mode"]:hover {{ border-color: {border}; }}
QPushButton[role="page"]:focus, QPushButton[role="mode"]:focus {{ border-color: {accent}; }}
QPushButton[role="page"]:checked {{ background: {field}; border-color: {border}; font-weight: bold; }}
QPushButton[role="page"]:checked:focus {{ border-color: {accent}; }}
QPushButton[role="mode"]:checked {{
    background: {field}; border: 2px solid {accent}; font-weight: bold; padding: 4px 11px;
}}
QPushButton[role="findings"] {{
    border: 1px solid transparent; border-radius: 4px; padding: 5px 12px;
    color: {warning}; font-weight: bold; background: transparent;
}}
QPushButton[role="findings"]:hover, QPushButton[role="findings"]:focus {{ border-color: {warning}; }}
QPushButton[role="findings"]:disabled {{ color: {quiet}; font-weight: normal; }}
QPushButton[role="door"] {{
    background: {field}; border: 1px solid {border}; border-radius: 6px; padding: 16px 20px; text-align: left;
}}
QPushButton[role="door"]:hover, QPushButton[role="door"]:focus {{ border: 2px solid {accent}; padding: 15px 19px; }}
QPushButton[role="page"], QPushButton[role="mode"], QPushButton[role="findings"], QPushButton[role="door"] {{
    outline: none;
}}
QFrame[role="card"] {{ background: {field}; border: 1px solid {border}; border-radius: 6px; }}
QComboBox {{ padding: 3px 6px; }}
QLineEdit {{ border: 1px solid {border}; border-radius: 4px; padding: 3px 6px; background: {field}; }}
QLineEdit:focus {{ border-color: {accent}; }}
QLineEdit[wrong="true"] {{ border: 2px solid {warning}; padding: 2px 5px; }}
QCheckBox::indicator, QRadioButton::indicator {{
    width: 14px; height: 14px; border: 1px solid {quiet}; background: {field};
}}
QCheckBox::indicator {{ border-radius: 3px; }}
QCheckBox::indicator:checked {{ background: {accent}; border-color: {accent}; image: url("{tick}"); }}
QCheckBox::indicator:indeterminate {{ background: {quiet}; }}
QRadioButton::indicator {{ border-radius: 8px; }}
QRadioButton::indicator:checked {{ width: 6px; height: 6px; border: 5px solid {accent}; }}
QCheckBox:focus, QRadioButton:focus {{ color: {accent}; }}
QScrollArea {{ border: none; background: transparent; }}
QPushButton[role="offer"] {{
    background: {field}; border: 1px solid {border}; border-radius: 6px; padding: 6px 10px; text-align: left;
}}
QPushButton[role="offer"]:hover, QPushButton[role="offer"]:focus {{ border-color: {accent}; }}
QProgressBar {{ border: 1px solid {border}; border-radius: 4px; background: {field}; }}
QProgressBar::chunk {{ background: {accent}; border-radius: 3px; }}
QProgressBar[over="true"]::chunk {{ background: {warning}; }}
QTreeView {{ border: none; background: {ground}; }}
QTreeView::item {{ padding: 3px 0; }}
"""


def style_sheet(look: Look) -> str:
    """The window's style sheet."""
    colours = {name: value for name, value in look._asdict().items() if isinstance(value, str)}
    tick = files("desktop") / "data" / ("tick-dark.svg" if look.dark else "tick-light.svg")
    return _STYLE.format(tick=Path(str(tick)).as_posix(), **colours)


def palette(look: Look) -> QPalette:
    """The colours of everything that Qt's own style paints."""
    role = QPalette.ColorRole
    colours = {
        role.Window: look.ground,
        role.Base: look.field,
        role.AlternateBase: look.ground,
        role.Button: look.ground,
        role.Text: look.ink,
        role.WindowText: look.ink,
        role.ButtonText: look.ink,
        role.ToolTipBase: look.field,
        role.ToolTipText: look.ink,
        role.PlaceholderText: look.quiet,
        role.Highlight: look.accent,
        role.HighlightedText: look.on_accent,
        role.Link: look.accent,
        role.Accent: look.accent,
    }
    made = QPalette(QColor(look.ground))
    for each, colour in colours.items():
        made.setColor(each, QColor(colour))
    for each in (role.Text, role.WindowText, role.ButtonText):
        made.setColor(QPalette.ColorGroup.Disabled, each, QColor(look.quiet))
    return made
