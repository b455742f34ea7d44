"""Arrays in a file that are looked at where they lie, so that a model costs what is read of it.

The file is an .npz as numpy writes it, but neither packed nor at odd places: each array begins at
a multiple of 64 bytes. So it is mapped instead of read: what no message touched stays on the disk,
and processes share what was. `np.load` reads it as any other, and what numpy packed is read here.
Formats: numpy.lib.format, NPY 1.0; PKWARE APPNOTE 6.3.9, 4.3.7 (local header), 4.5 (extra field).
"""

from __future__ import annotations

import mmap
import struct
import sys
from collections.abc import Mapping
from importlib.resources.abc import Traversable
from io import BytesIO
from pathlib import Path
from typing import Any
from weakref import WeakSet
from zipfile import ZIP_STORED, ZipFile, ZipInfo

import numpy as np
import numpy.typing as npt

Array = npt.NDArray[Any]
Source = bytes | Traversable
"""A file's content, or the file."""

ALIGNED_BYTES = 64
"""No number then lies across two cache lines, and none at a place that is slow to read."""

_LOCAL = struct.Struct("<26xHH")
"""Of a local header the lengths of the name and of the extra field, which follow it."""

_EXTRA = struct.Struct("<HH")
_PADDING_ID = 0xD935
"""The kind of an extra field that only moves what comes after it (from memory)."""


def arrays_of(source: Source) -> dict[str, Array]:
    """All arrays of an .npz file by name, none of them to be written to."""
    content = _bytes_of(source)
    found = {}
    with ZipFile(source if isinstance(source, Path) else BytesIO(content.data)) as file:
        for member in file.infolist():
            name = member.filename.removesuffix(".npy")
            if member.compress_type == ZIP_STORED:
                found[name] = _array_at(content, _begin(content, member))
            else:
                with file.open(member) as packed:
                    found[name] = np.lib.format.read_array(packed)
    return found


def let_go() -> None:
    """Give the system back what was looked at of all mapped files: 16 MB after messages of many
    kinds. Arrays stay as they are, what is read next comes from the system's cache of files, which
    costs the next message a millisecond: for whoever rests. madvise(2), as Linux has it; elsewhere
    nothing is done.
    """
    if sys.platform == "linux":
        for mapped in tuple(_MAPPED):
            mapped.madvise(mmap.MADV_DONTNEED)


_MAPPED: WeakSet[mmap.mmap] = WeakSet()


def _bytes_of(source: Source) -> npt.NDArray[np.uint8]:
    if isinstance(source, Path):
        with source.open("rb") as file:
            mapped = mmap.mmap(file.fileno(), 0, access=mmap.ACCESS_READ)
        _MAPPED.add(mapped)
        return np.frombuffer(mapped, np.uint8)
    return np.frombuffer(source if isinstance(source, bytes) else source.read_bytes(), np.uint8)


def _begin(content: npt.NDArray[np.uint8], member: ZipInfo) -> int:
    """Where the member's bytes begin."""
    at = member.header_offset
    name, extra = _LOCAL.unpack(content[at : at + _LOCAL.size].tobytes())
    return at + _LOCAL.size + int(name) + int(extra)


def _array_at(content: npt.NDArray[np.uint8], at: int) -> Array:
    """The array written there, not copied."""
    head = BytesIO(content[at : at + _LONGEST_HEAD].tobytes())
    np.lib.format.read_magic(head)
    shape, is_fortran, dtype = np.lib.format.read_array_header_1_0(head)
    begin = at + head.tell()
    size = int(np.prod(shape, dtype=np.int64)) * dtype.itemsize
    array: Array = content[begin : begin + size].view(dtype)
    return array.reshape(shape, order="F" if is_fortran else "C")


_LONGEST_HEAD = 256
"""Of an array's head, which numpy pads to multiples of 64; ours have few dimensions."""


def packed_file(arrays: Mapping[str, Array]) -> bytes:
    """The bytes of a file that `arrays_of` looks into, equal for equal arrays."""
    content = BytesIO()
    with ZipFile(content, "w", ZIP_STORED) as file:
        for name, array in arrays.items():
            written = BytesIO()
            np.lib.format.write_array(written, np.ascontiguousarray(array), version=(1, 0))
            member = ZipInfo(f"{name}.npy")
            member.extra = _padding(content.tell() + _LOCAL.size + len(member.filename))
            file.writestr(member, written.getvalue())
    return content.getvalue()


def _padding(begin: int) -> bytes:
    """The extra field after which a member begins at a multiple of ALIGNED_BYTES."""
    missing = -(begin + _EXTRA.size) % ALIGNED_BYTES
    return _EXTRA.pack(_PADDING_ID, missing) + bytes(missing)


def as_bytes(text: str) -> npt.NDArray[np.uint8]:
    """A text as an array."""
    return np.frombuffer(text.encode(), dtype=np.uint8)


def as_text(array: Array) -> str:
    """The text of such an array."""
    return bytes(array).decode()
