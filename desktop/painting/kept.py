"""The drawings of faces for the canvas, the strip and files. A small one is kept until its face changes."""

from desktop.state.shown import Shown
from desktop.state.store import Store
from shared.drawing import Drawing
from shared.job import Face, Job
from takeoff.drawing.face import draw_face
from takeoff.figures.measured import Fronts, Takeoff
from takeoff.memory import Memory


class Drawings:
    """Draws faces for the canvas and the strip."""

    def __init__(self, store: Store) -> None:
        self._store = store
        self._small: dict[str, tuple[Face, Drawing]] = {}

    def of_face(self, shown: Shown, face: Face) -> Drawing:
        """The face as the canvas shows it, with the sizes of the picked parts."""
        return draw_face(shown.now, face, shown.takeoff, self._store.memory, fronts=shown.fronts, sized=shown.picked)

    def small(self, shown: Shown, face: Face) -> Drawing:
        """The face as the strip shows it: its fronts hung."""
        kept = self._small.get(face.id)
        if kept is None or kept[0] is not face:
            drawing = draw_face(shown.now, face, shown.takeoff, self._store.memory, fronts=Fronts.HUNG)
            self._small[face.id] = (face, drawing)
            return drawing
        return kept[1]


def all_faces(job: Job, takeoff: Takeoff, memory: Memory) -> tuple[Drawing, ...]:
    """Every face of the job, its fronts hung, for a file."""
    return tuple(draw_face(job, face, takeoff, memory, fronts=Fronts.HUNG) for face in job.faces)
