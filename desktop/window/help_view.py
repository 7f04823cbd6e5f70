"""The help: one text, in a plain window that can stay open beside the work."""

from importlib.resources import files

from PySide6.QtWidgets import QDialog, QTextBrowser, QVBoxLayout, QWidget

SIZE = (620, 560)


class HelpView(QDialog):
    """Shows `data/help.md`."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("Recoat: help")
        self.resize(*SIZE)
        text = QTextBrowser(self)
        text.setMarkdown((files("desktop") / "data" / "help.md").read_text("utf-8"))
        text.setAccessibleName("Help")
        column = QVBoxLayout(self)
        column.addWidget(text)
