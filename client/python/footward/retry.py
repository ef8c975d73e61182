"""When a call is made again. No method has side effects, so any may be."""

from __future__ import annotations

import random
import threading
import time
from typing import Callable, Optional, TypeVar

from .error import CallError

ATTEMPTS = 4
FIRST_PAUSE, LONGEST_PAUSE, GROWTH = 0.1, 2.0, 3.0
# Failures are counted against successes, so that servers in trouble are not asked
# much more often than callers call: repeats end below half of the tokens.
MOST_TOKENS, TOKEN_PER_ANSWER = 1000.0, 0.1

Answered = TypeVar("Answered")


class Retry:
    """Makes calls, and makes them again where that helps.

    UNAVAILABLE is asked again up to four times in all, with growing pauses; while
    wait is set, a server that cannot be reached is waited for until the deadline, so
    that it may be restarted unnoticed. Where a status says when to ask again, that
    is done once. Nothing is asked after the deadline.
    """

    def __init__(self, wait: bool = True, sleep: Callable[[float], None] = time.sleep,
                 clock: Callable[[], float] = time.monotonic):
        self.wait, self.sleep, self.clock = wait, sleep, clock
        self._tokens, self._lock = MOST_TOKENS, threading.Lock()

    def run(self, once: Callable[[float], Answered], timeout: float) -> Answered:
        """Calls once with the seconds that are left, until it answers."""
        deadline = self.clock() + timeout
        tries, pause, hinted = 0, FIRST_PAUSE, False
        while True:
            tries += 1
            try:
                answer = once(deadline - self.clock())
            except CallError as e:
                self._count(-1.0)
                rest = self._pause(e, tries, pause, hinted)
                if rest is None or self.clock() + rest >= deadline:
                    raise
                hinted = hinted or e.retry_after is not None
                pause = min(pause * GROWTH, LONGEST_PAUSE)
                self.sleep(rest)
                continue
            self._count(TOKEN_PER_ANSWER)
            return answer

    def _pause(self, e: CallError, tries: int, pause: float, hinted: bool) -> Optional[float]:
        """How long to wait before the next try, or None: there is none."""
        if e.unreached and self.wait:
            return pause * random.uniform(0.8, 1.2)
        if self._tokens <= MOST_TOKENS / 2:
            return None
        if e.retry_after is not None:
            # Never sooner than was asked for, and not all callers at once.
            return None if hinted else e.retry_after * random.uniform(1.0, 1.2)
        if e.code == "UNAVAILABLE" and tries < ATTEMPTS:
            return pause * random.uniform(0.8, 1.2)
        return None

    def _count(self, tokens: float) -> None:
        with self._lock:
            self._tokens = min(MOST_TOKENS, max(0.0, self._tokens + tokens))
