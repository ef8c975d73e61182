'use strict';
// The service, however it is reached.

const { kinds, methods } = require('../methods.json');
const { isHTTP, isThisMachine } = require('./address');
const { answer } = require('./answer');
const { RefusedError } = require('./error');
const { Retry } = require('./retry');
const { Web } = require('./web');

// The steps of a calculation are much text: fewer answers fit in one message.
const PER_CALL = 100;
const PER_CALL_DERIVED = 20;

const isObject = (v) => typeof v === 'object' && v !== null && !Array.isArray(v);

/** Returns a service; see index.d.ts. */
function connect(address, options = {}) {
  const { token, ca, cert, key, plaintext = false, timeoutMs = 30_000, wait = true } = options;
  const here = isThisMachine(address);
  const certificates = [ca, cert, key].some((f) => f !== undefined);
  const secured = certificates || /^https:/i.test(address);
  if (secured && (plaintext || /^http:/i.test(address))) {
    throw new TypeError('a plain connection takes no certificates; use https:// or leave out plaintext');
  }
  if ((cert === undefined) !== (key === undefined)) throw new TypeError('cert and key go together');
  const plain = plaintext || (!secured && here);
  if (isHTTP(address) && !secured && !plain) {
    throw new TypeError(`${address} is another machine and is not encrypted: use https://, or say plaintext: true`);
  }
  if (token !== undefined && plain && !here) {
    throw new TypeError('a token goes to another machine over an encrypted connection only');
  }
  if (isHTTP(address)) {
    if (certificates) {
      throw new TypeError('fetch takes no files of certificates: name authorities in NODE_EXTRA_CA_CERTS, or give a fetch of your own');
    }
    return new Service(new Web(address, token, options.fetch), new Retry(wait), timeoutMs);
  }
  const { Wire } = require('./wire'); // needs packages, which HTTP does without
  return new Service(new Wire(address, { token, wait, plain, ca, cert, key }), new Retry(wait), timeoutMs);
}

/** A Footward service. Make one and keep it. */
class Service {
  #way;
  #retry;
  #timeoutMs;

  constructor(way, retry, timeoutMs) {
    this.#way = way;
    this.#retry = retry;
    this.#timeoutMs = timeoutMs;
  }

  close() {
    this.#way.close();
  }

  async call(method, request, { timeoutMs = this.#timeoutMs } = {}) {
    const m = Object.hasOwn(methods, method) ? methods[method] : undefined;
    if (!m) throw new TypeError(`${method} is no method; known are ${Object.keys(methods).join(', ')}`);
    const text = written(request);
    return this.#retry.run((left) => this.#way.call(m, text, left), timeoutMs);
  }

  async check(item, { derivation = false, ...options } = {}) {
    const kind = kindOf(item);
    const request = derivation ? detailed(item)[kind] : item[kind];
    let response;
    try {
      response = await this.call(kinds[kind], request, options);
    } catch (error) {
      if (!(error instanceof RefusedError)) throw error;
      const within = error.violations.map((v) => ({ ...v, field: v.field ? `${kind}.${v.field}` : kind }));
      const { reason, requestId } = error;
      throw new RefusedError(error.message, within, { reason, requestId, cause: error });
    }
    return answer(kind, response.result, response.provenance, response);
  }

  async checkMany(items, { derivation = false, ...options } = {}) {
    const all = derivation ? items.map(detailed) : [...items];
    const perCall = derivation ? PER_CALL_DERIVED : PER_CALL;
    const out = [];
    for (let at = 0; at < all.length; at += perCall) out.push(...(await this.#many(all.slice(at, at + perCall), options)));
    return out;
  }

  async #many(part, options) {
    const out = part.map((item) => {
      const violations = this.#way.faults('CheckItem', JSON.parse(written(item)));
      return violations.length ? { violations } : undefined;
    });
    const sent = part.map((_, i) => i).filter((i) => !out[i]);
    if (!sent.length) return out;
    let told;
    try {
      told = await this.call('CheckMany', { items: sent.map((i) => part[i]) }, options);
    } catch (error) {
      if (!(error instanceof RefusedError)) throw error;
      // Something is no part of the contract, which refuses the call as a whole.
      if (part.length === 1) {
        const { violations, message } = error;
        return [{ violations: violations.length ? violations : [{ field: '', description: message, reason: '' }] }];
      }
      const half = part.length >> 1;
      return [...(await this.#many(part.slice(0, half), options)), ...(await this.#many(part.slice(half), options))];
    }
    sent.forEach((i, n) => {
      const outcome = told.outcomes[n];
      out[i] = outcome.result ? answer(kindOf(part[i]), outcome.result, told.provenance, outcome)
        : { violations: outcome.refusal?.violations ?? [] };
    });
    return out;
  }

  combine(request, options) {
    return this.call('CombineActions', request, options);
  }

  size(request, options) {
    return this.call('SizeColumnBase', request, options);
  }

  compare(request, options) {
    return this.call('CompareFootings', request, options);
  }

  tests(request, options) {
    return this.call('AssessLoadTests', request, options);
  }

  reading(request, options) {
    return this.call('ReadLoadTest', request, options);
  }
}

function kindOf(item) {
  const names = isObject(item) ? Object.keys(item) : [];
  if (names.length !== 1 || !Object.hasOwn(kinds, names[0])) {
    throw new TypeError(`a check is an object with one of ${Object.keys(kinds).join(', ')} in it; this one has ${names.join(', ') || 'nothing'}`);
  }
  return names[0];
}

/** The item with the calculation asked for. */
function detailed(item) {
  if (!isObject(item)) return item;
  return Object.fromEntries(Object.entries(item).map(([kind, v]) => [kind, isObject(v) ? { ...v, detail: 'DETAIL_DERIVATION' } : v]));
}

/** The JSON of a request. A number that is none would silently become null. */
function written(request) {
  return JSON.stringify(request ?? {}, (name, v) => {
    if (typeof v === 'number' && !Number.isFinite(v)) throw new TypeError(`${name} is ${v}`);
    return v;
  });
}

module.exports = { connect, Service };
