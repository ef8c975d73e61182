'use strict';
// When a call is made again. No method has side effects, so any may be.

const ATTEMPTS = 4;
const FIRST_PAUSE = 100;
const LONGEST_PAUSE = 2000;
const GROWTH = 3;
// Failures are counted against successes, so that servers in trouble are not asked
// much more often than callers call: repeats end below half of the tokens.
const MOST_TOKENS = 1000;
const TOKEN_PER_ANSWER = 0.1;

const pauseFor = (ms) => new Promise((resolve) => setTimeout(resolve, ms));
const between = (low, high) => low + Math.random() * (high - low);

/**
 * Makes calls, and makes them again where that helps.
 *
 * UNAVAILABLE is asked again up to four times in all, with growing pauses; while wait is
 * set, a server that cannot be reached is waited for until the deadline, so that it may
 * be restarted unnoticed. Where a status says when to ask again, that is done once.
 * Nothing is asked after the deadline.
 */
class Retry {
  constructor(wait = true, sleep = pauseFor, clock = () => performance.now()) {
    Object.assign(this, { wait, sleep, clock, tokens: MOST_TOKENS });
  }

  /** Calls once with the milliseconds that are left, until it answers. */
  async run(once, timeoutMs) {
    const deadline = this.clock() + timeoutMs;
    let pause = FIRST_PAUSE;
    let hinted = false;
    for (let tries = 1; ; tries++) {
      try {
        const answer = await once(deadline - this.clock());
        this.count(TOKEN_PER_ANSWER);
        return answer;
      } catch (error) {
        this.count(-1);
        const rest = this.pause(error, tries, pause, hinted);
        if (rest === undefined || this.clock() + rest >= deadline) throw error;
        hinted ||= error.retryAfterMs !== undefined;
        pause = Math.min(pause * GROWTH, LONGEST_PAUSE);
        await this.sleep(rest);
      }
    }
  }

  /** How long to wait before the next try; undefined: there is none. */
  pause(error, tries, pause, hinted) {
    if (error.unreached && this.wait) return pause * between(0.8, 1.2);
    if (this.tokens <= MOST_TOKENS / 2) return undefined;
    // Never sooner than was asked for, and not all callers at once.
    if (error.retryAfterMs !== undefined) return hinted ? undefined : error.retryAfterMs * between(1, 1.2);
    return error.code === 'UNAVAILABLE' && tries < ATTEMPTS ? pause * between(0.8, 1.2) : undefined;
  }

  count(tokens) {
    this.tokens = Math.min(MOST_TOKENS, Math.max(0, this.tokens + tokens));
  }
}

module.exports = { Retry, ATTEMPTS };
