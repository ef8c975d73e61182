'use strict';
// Calls in JSON over HTTP, with fetch and nothing else.

const { bearer } = require('./address');
const { CallError, fromStatus } = require('./error');

// What stands between caller and service may answer without a status of its own.
const CODES = {
  400: 'INVALID_ARGUMENT', 401: 'UNAUTHENTICATED', 403: 'PERMISSION_DENIED', 404: 'NOT_FOUND', 408: 'DEADLINE_EXCEEDED',
  413: 'RESOURCE_EXHAUSTED', 429: 'RESOURCE_EXHAUSTED', 501: 'UNIMPLEMENTED', 502: 'UNAVAILABLE', 503: 'UNAVAILABLE',
  504: 'DEADLINE_EXCEEDED',
};
const NAMES = [
  'OK', 'CANCELLED', 'UNKNOWN', 'INVALID_ARGUMENT', 'DEADLINE_EXCEEDED', 'NOT_FOUND', 'ALREADY_EXISTS', 'PERMISSION_DENIED',
  'RESOURCE_EXHAUSTED', 'FAILED_PRECONDITION', 'ABORTED', 'OUT_OF_RANGE', 'UNIMPLEMENTED', 'INTERNAL', 'UNAVAILABLE',
  'DATA_LOSS', 'UNAUTHENTICATED',
];

// Causes of a failed fetch for which no server took the call.
const UNREACHED = new Set(['ECONNREFUSED', 'ENOTFOUND', 'EAI_AGAIN', 'EHOSTUNREACH', 'ENETUNREACH', 'UND_ERR_CONNECT_TIMEOUT']);

/** A service that is asked over HTTP. */
class Web {
  constructor(address, token, send = globalThis.fetch) {
    Object.assign(this, { address: address.replace(/\/+$/, ''), token, send });
  }

  close() {}

  /** The service itself finds what is not part of a request. */
  faults() {
    return [];
  }

  /** Sends one request and returns the answer, or throws why there is none. */
  async call(method, text, timeoutMs) {
    const headers = {
      'Content-Type': 'application/json',
      'Request-Timeout': (Math.min(Math.max(timeoutMs, 1), 3_600_000) / 1000).toFixed(3),
    };
    const authorization = await bearer(this.token);
    if (authorization) headers.Authorization = authorization;
    // A redirect is not followed: a token would go along.
    const signal = AbortSignal.timeout(Math.max(1, Math.ceil(timeoutMs)));
    let reply, body;
    try {
      reply = await this.send(this.address + method.path, { method: 'POST', headers, body: text, redirect: 'manual', signal });
      body = await reply.text();
    } catch (cause) {
      throw this.unanswered(cause);
    }
    if (reply.status !== 200) throw refused(reply, body);
    try {
      return JSON.parse(body);
    } catch (cause) {
      throw new CallError('INTERNAL', `${this.address} answered no JSON; is it a Footward service?`, { cause });
    }
  }

  unanswered(cause) {
    if (cause.name === 'TimeoutError') return new CallError('DEADLINE_EXCEEDED', `no answer from ${this.address} in time`, { cause });
    const why = cause.cause?.code ?? cause.cause?.errors?.[0]?.code;
    const words = cause.cause?.message || why || cause.message;
    if (/CERT|TLS|SSL|SELF_SIGNED/.test(why ?? '')) {
      return new CallError('UNAUTHENTICATED', `${this.address} could not be trusted: ${words}`, { cause });
    }
    return new CallError('UNAVAILABLE', `${this.address} could not be reached: ${words}`, { unreached: UNREACHED.has(why), cause });
  }
}

/** The error of an answer that is no answer. */
function refused(reply, body) {
  let told;
  try {
    told = JSON.parse(body);
  } catch {
    // no status of the service
  }
  const more = { requestId: reply.headers.get('x-request-id') ?? '' };
  const error = told && NAMES[told.code]
    ? fromStatus(NAMES[told.code], told.message ?? '', told.details ?? [], more)
    : fromStatus(CODES[reply.status] ?? 'UNKNOWN', `HTTP status ${reply.status}: ${body.slice(0, 200).trim()}`, [], more);
  const after = parseFloat(reply.headers.get('retry-after'));
  if (error.retryAfterMs === undefined && after >= 0 && ['RESOURCE_EXHAUSTED', 'UNAVAILABLE'].includes(error.code)) {
    error.retryAfterMs = 1000 * after;
  }
  return error;
}

module.exports = { Web };
