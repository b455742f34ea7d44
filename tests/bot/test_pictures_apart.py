"""The process that draws: the same pictures, and whatever becomes of it costs a delay at most."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
import threading
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest

from bot.chat.pictures import draw
from bot.chat.pictures.apart import DrawnApart, PictureError, environment
from knowledge.advice import ChanceCurve, Picture
from knowledge.court_picture import CourtPicture, Marker
from knowledge.side_view import SidePath, SideView

FOREVER_S = 600.0
SOON_S = 0.05
STUCK_S = 6.0
"""Ten times what a process's first picture takes on an idle machine."""
PATIENCE_S = 30.0

COUNT = iter(range(10**9))


def picture() -> CourtPicture:
    """One that nobody has drawn yet."""
    player = Marker(x_m=1.0, y_m=-2.5, label="Mira", ours=True)
    return CourtPicture(title=f"Picture {next(COUNT)}", alt="", markers=(player,))


OTHERS: tuple[Picture, ...] = (
    ChanceCurve(title="Our chances", alt="", points=(0.5, 0.55, 0.4, 0.62), now="now 6 in 10"),
    SideView(
        title="Third-shot drop",
        alt="",
        net_m=0.86,
        paths=(SidePath(places=((-7, 0.6), (0, 1.5), (1.5, 0)), label="drop", ours=True),),
    ),
)


@pytest.fixture
def apart() -> Iterator[DrawnApart]:
    drawn = DrawnApart(rests_after_s=FOREVER_S)
    yield drawn
    drawn.close()


def pid_of(drawn: DrawnApart) -> int:
    assert drawn.pid is not None
    return drawn.pid


def is_running(pid: int) -> bool:
    try:
        os.kill(pid, 0)
    except ProcessLookupError:
        return False
    return True


def until(condition: Callable[[], bool]) -> None:
    last = time.monotonic() + PATIENCE_S
    while not condition():
        assert time.monotonic() < last, "not in time"
        time.sleep(0.01)


def test_every_picture_is_the_one_drawn_here(apart: DrawnApart) -> None:
    for one in (picture(), *OTHERS):
        assert apart.draw(one) == draw(one)
    assert pid_of(apart) != os.getpid()


def test_a_picture_drawn_before_is_not_drawn_again(apart: DrawnApart) -> None:
    one = picture()
    drawn = apart.draw(one)
    apart.close()
    assert apart.draw(one) == drawn
    assert apart.pid is None


def test_this_process_does_not_load_the_drawing_library() -> None:
    code = (
        "import sys; from bot.chat.pictures.apart import DrawnApart;"
        "from knowledge.advice import CourtPicture;"
        "apart = DrawnApart(); png = apart.draw(CourtPicture(title='one', alt='')); apart.close();"
        "sys.exit(0 if png[1:4] == b'PNG' and 'matplotlib' not in sys.modules else 1)"
    )
    root = Path(__file__).parents[2]
    assert subprocess.run([sys.executable, "-c", code], cwd=root, check=False).returncode == 0


def test_one_killed_between_two_pictures_is_replaced(apart: DrawnApart) -> None:
    apart.draw(picture())
    first = pid_of(apart)
    os.kill(first, signal.SIGKILL)
    one = picture()
    assert apart.draw(one) == draw(one)
    assert apart.pid not in (None, first)


def test_one_killed_while_it_draws_is_replaced(apart: DrawnApart) -> None:
    apart.draw(picture())
    first = pid_of(apart)
    os.kill(first, signal.SIGSTOP)  # it has the picture, and will never draw it
    one, drawn = picture(), []
    waiting = threading.Thread(target=lambda: drawn.append(apart.draw(one)))
    waiting.start()
    time.sleep(SOON_S)
    os.kill(first, signal.SIGKILL)
    waiting.join(PATIENCE_S)
    assert drawn == [draw(one)]
    assert not is_running(first)


def test_one_that_is_stuck_is_replaced() -> None:
    apart = DrawnApart(rests_after_s=FOREVER_S, within_s=STUCK_S)
    apart.draw(picture())
    first = pid_of(apart)
    os.kill(first, signal.SIGSTOP)
    one = picture()
    assert apart.draw(one) == draw(one)
    assert not is_running(first)
    apart.close()


@pytest.mark.parametrize("code", ["", "import time; time.sleep(600)", "print('no picture')"])
def test_where_none_ever_draws_it_is_told(code: str) -> None:
    apart = DrawnApart(command=(sys.executable, "-c", code), within_s=0.5)
    with pytest.raises(PictureError, match="twice"):
        apart.draw(picture())
    assert apart.pid is None
    apart.close()


def test_a_picture_that_cannot_be_drawn_is_told_and_the_next_one_drawn(apart: DrawnApart) -> None:
    with pytest.raises(PictureError, match="Traceback"):
        apart.draw("no picture")  # type: ignore[arg-type]
    first = apart.pid
    one = picture()
    assert apart.draw(one) == draw(one)
    assert apart.pid == first


def test_where_no_process_can_be_started_it_is_drawn_here() -> None:
    apart = DrawnApart(command=("/nowhere/python",))
    one = picture()
    assert apart.draw(one) == draw(one)
    apart.close()


def test_it_ends_when_no_picture_was_wanted_for_a_while() -> None:
    apart = DrawnApart(rests_after_s=SOON_S)
    apart.draw(picture())
    until(lambda: apart.pid is None)
    one = picture()
    assert apart.draw(one) == draw(one)
    apart.close()


def test_it_ends_with_us_in_the_middle_of_a_picture_too(apart: DrawnApart) -> None:
    apart.draw(picture())
    first = pid_of(apart)
    os.kill(first, signal.SIGSTOP)
    told: list[BaseException] = []

    def wait() -> None:
        try:
            apart.draw(picture())
        except PictureError as error:
            told.append(error)

    waiting = threading.Thread(target=wait)
    waiting.start()
    time.sleep(SOON_S)
    apart.close()
    waiting.join(PATIENCE_S)
    assert not is_running(first)
    assert apart.pid is None
    assert len(told) == 1


def test_it_ends_where_whoever_started_it_was_killed() -> None:
    code = (
        "import os; from bot.chat.pictures.apart import DrawnApart;"
        "from knowledge.advice import CourtPicture;"
        "apart = DrawnApart(); apart.draw(CourtPicture(title='one', alt=''));"
        "print(apart.pid, flush=True); os.kill(os.getpid(), 9)"
    )
    done = subprocess.run(
        [sys.executable, "-c", code],
        cwd=Path(__file__).parents[2],
        stdout=subprocess.PIPE,
        check=False,
    )
    pid = int(done.stdout)
    until(lambda: not is_running(pid) or "Z" in state_of(pid))


def state_of(pid: int) -> str:
    """Z for one that has ended and that nobody has asked about."""
    try:
        return Path(f"/proc/{pid}/stat").read_text().rpartition(")")[2].split()[0]
    except OSError:
        return "Z"


def test_many_at_once_are_each_drawn(apart: DrawnApart) -> None:
    pictures = [picture() for _ in range(6)]
    drawn: dict[int, bytes] = {}

    def draw_one(n: int) -> None:
        drawn[n] = apart.draw(pictures[n])

    threads = [threading.Thread(target=draw_one, args=(n,)) for n in range(len(pictures))]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join(PATIENCE_S)
    assert [drawn[n] for n in range(len(pictures))] == [draw(one) for one in pictures]


def test_it_is_told_no_secret() -> None:
    told = environment({"SEAMWISE_TOKEN": "secret", "SEAMWISE_DATABASE": "also", "HOME": "/home"})
    assert "secret" not in told.values()
    assert not any(name.startswith("SEAMWISE_") for name in told)
    assert told["HOME"] == "/home"
