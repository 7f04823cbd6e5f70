"""What rooms, faces, parts and finishes are called in sentences and tables."""

from collections.abc import Iterable

from shared.job import Job


class Names:
    """The names of what a takeoff refers to by id."""

    def __init__(self, job: Job) -> None:
        self._rooms = {room.id: room.called for room in job.rooms}
        self._room_of = job.room_of
        self._faces = {face.id: face.called for face in job.faces}
        self._parts = {part.id: part.called for face in job.faces for part in face.parts}
        self._finishes = {finish.id: finish.called for finish in job.finishes}

    def room(self, room_id: str) -> str:
        """The name of a room. An id that the job does not have is given back as it is."""
        return self._rooms.get(room_id, room_id)

    def room_of(self, face_id: str) -> str:
        """The name of the room that a face is in; "" for a face that the job does not have."""
        room = self._room_of.get(face_id)
        return room.called if room else ""

    def place(self, face_id: str) -> str:
        """The names of a face and its room, for a sentence; "" for the empty id."""
        return f"{self.room_of(face_id)}, {self.face(face_id)}" if face_id else ""

    def alike(self, face_id: str) -> int:
        """How many rooms are alike, the one that a face is in included; 1 for a face that the job does not have."""
        room = self._room_of.get(face_id)
        return room.alike if room else 1

    def face(self, face_id: str) -> str:
        """The name of a face. An id that the job does not have is given back as it is."""
        return self._faces.get(face_id, face_id)

    def faces(self, face_ids: Iterable[str]) -> str:
        """The names of faces with spaces between them. Empty ids are left out."""
        return " ".join(self.face(face_id) for face_id in face_ids if face_id)

    def part(self, part_id: str | None) -> str:
        """What a part is called; "outside" for None."""
        return "outside" if part_id is None else self._parts.get(part_id, part_id)

    def finish(self, finish_id: str) -> str:
        """The name of a finish; "not coated" for the empty id."""
        return self._finishes.get(finish_id, finish_id) if finish_id else "not coated"
