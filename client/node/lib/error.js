'use strict';
// Why there is no answer.

/** A call that failed or was turned away. */
class CallError extends Error {
  constructor(code, message, more = {}) {
    super(message);
    this.name = 'CallError';
    this.code = code;
    this.reason = more.reason ?? '';
    this.retryAfterMs = more.retryAfterMs;
    this.requestId = more.requestId ?? '';
    this.unreached = more.unreached ?? false;
    if (more.cause) this.cause = more.cause;
  }
}

/** A request that cannot be checked; violations name every field at fault. */
class RefusedError extends CallError {
  constructor(message, violations = [], more = {}) {
    const lines = violations.map((v) => `\n  ${v.field ? `${v.field}: ` : ''}${v.description}`);
    super('INVALID_ARGUMENT', lines.length ? `the request was refused${lines.join('')}` : message, more);
    this.name = 'RefusedError';
    this.violations = violations;
  }
}

/** The error of a google.rpc.Status in JSON. */
function fromStatus(code, message, details, more = {}) {
  const violations = [];
  const told = { ...more };
  for (const d of details) {
    const kind = (d['@type'] ?? '').split(/[./]/).pop();
    if (kind === 'ErrorInfo') told.reason = d.reason;
    if (kind === 'RetryInfo') told.retryAfterMs = 1000 * parseFloat(d.retry_delay ?? d.retryDelay ?? '0s');
    if (kind === 'BadRequest') {
      for (const v of d.field_violations ?? d.fieldViolations ?? []) {
        violations.push({ field: v.field ?? '', description: v.description ?? '', reason: v.reason ?? '' });
      }
    }
  }
  return code === 'INVALID_ARGUMENT' ? new RefusedError(message, violations, told) : new CallError(code, message, told);
}

module.exports = { CallError, RefusedError, fromStatus };
