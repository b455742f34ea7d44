"""Arrays looked at in their file: the same as numpy reads, wherever the file came from.

numpy.load is the second reader (NPY and NPZ formats: numpy.lib.format).
"""

from __future__ import annotations

import sys
from importlib.resources import files
from io import BytesIO
from pathlib import Path
from typing import Any

import numpy as np
import numpy.typing as npt
import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.extra import numpy as arrays_st

from knowledge.reading.stored import (
    ALIGNED_BYTES,
    arrays_of,
    as_bytes,
    as_text,
    let_go,
    packed_file,
)

Array = npt.NDArray[Any]

SHIPPED = sorted(
    Path(str(one))
    for folder in ("bot.chat.data", "knowledge.reading")
    for one in files(folder).iterdir()
    if one.name.endswith(".npz")
)

KINDS = st.sampled_from([np.dtype(kind) for kind in ("u1", "i1", "<u4", "<f2", "<f4", "<f8")])
SHAPES = arrays_st.array_shapes(max_dims=3, max_side=5, min_side=0)
ARRAYS = st.dictionaries(
    st.text("abcdefgh_", min_size=1, max_size=9),
    KINDS.flatmap(lambda kind: arrays_st.arrays(kind, SHAPES)),
    max_size=5,
)


def same(one: Array, other: Array) -> bool:
    return (one.dtype, one.shape) == (other.dtype, other.shape) and one.tobytes() == other.tobytes()


@given(ARRAYS)
def test_what_was_packed_is_read_by_us_and_by_numpy(arrays: dict[str, Array]) -> None:
    content = packed_file(arrays)
    with np.load(BytesIO(content)) as theirs:
        read = dict(theirs)
    ours = arrays_of(content)
    assert list(ours) == list(read) == list(arrays)
    for name, array in arrays.items():
        assert same(ours[name], array)
        assert same(read[name], array)


@given(ARRAYS)
def test_what_numpy_packed_is_read_too(arrays: dict[str, Array]) -> None:
    for write in (np.savez, np.savez_compressed):
        content = BytesIO()
        write(content, **arrays)  # type: ignore[arg-type]  # numpy has a flag of its own there
        ours = arrays_of(content.getvalue())
        assert all(same(ours[name], array) for name, array in arrays.items())


def test_equal_arrays_are_equal_bytes() -> None:
    arrays: dict[str, Array] = {
        "one": np.arange(6).reshape(2, 3),
        "two": np.zeros((0, 4), dtype=np.float16),
    }
    assert packed_file(arrays) == packed_file(arrays)


@pytest.mark.parametrize("path", SHIPPED, ids=lambda path: path.stem)
def test_a_shipped_model_lies_in_its_file_as_numpy_reads_it(path: Path) -> None:
    mapped = arrays_of(path)
    with np.load(path) as theirs:
        assert set(theirs.files) == set(mapped)
        assert all(same(theirs[name], array) for name, array in mapped.items())
    for array in mapped.values():
        assert array.base is not None, "copied, not looked at where it lies"
        assert not array.flags.writeable
        assert array.ctypes.data % ALIGNED_BYTES == 0
    assert path.stat().st_size < 1.01 * sum(one.nbytes for one in mapped.values()) + 4096


def test_there_are_models() -> None:
    assert len(SHIPPED) >= 7


@given(st.text(alphabet=st.characters(exclude_categories=["Cs"])))
def test_a_text_is_an_array_and_back(text: str) -> None:
    assert as_text(as_bytes(text)) == text


@pytest.mark.skipif(sys.platform != "linux", reason="what is given back is read from /proc")
def test_what_is_let_go_of_is_given_back_and_read_again(tmp_path: Path) -> None:
    path = tmp_path / "large.npz"
    numbers = np.arange(8 << 20, dtype=np.uint8).reshape(-1, 64)
    path.write_bytes(packed_file({"numbers": numbers}))
    found = arrays_of(path)["numbers"]

    def resident() -> int:
        """Kilobytes of the file in memory, by proc(5)."""
        maps = Path("/proc/self/smaps").read_text()
        mapping = maps[maps.index(str(path)) :]
        return int(mapping[mapping.index("Rss:") :].split()[1])

    assert np.array_equal(found, numbers)
    assert resident() >= numbers.nbytes // 1024
    let_go()
    assert resident() == 0
    assert np.array_equal(found, numbers)
