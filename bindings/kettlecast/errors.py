"""Every error this package raises; all derive from `Error`."""

from __future__ import annotations

from ._core import Error, IntegrationFailure, InvalidArgument, OutsideValidity, UnknownName

__all__ = [
    "Error",
    "FileFormatError",
    "IntegrationFailure",
    "InvalidArgument",
    "OutsideValidity",
    "UnknownName",
]


class FileFormatError(Error, ValueError):
    """A kettle, recipe, food or log file that cannot be used.

    Parameters
    ----------
    message :
        Where, what was given, what is allowed; all problems of the file, one per line.
    file :
        Path of the file.
    key :
        Key or column of the first problem, "" where there is none.
    line :
        Line of the first problem, counted from 1, or None where it is not known.
    """

    def __init__(
        self, message: str, *, file: str = "", key: str = "", line: int | None = None
    ) -> None:
        super().__init__(message)
        self.file = file
        self.key = key
        self.line = line

    def __reduce__(self) -> tuple[object, ...]:
        state = {"file": self.file, "key": self.key, "line": self.line}
        return (type(self), self.args, state)
