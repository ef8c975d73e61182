'use strict';
// When a call is made again.

const assert = require('node:assert/strict');
const http = require('node:http');
const { test } = require('node:test');
const footward = require('footward');
const { CallError } = require('footward/lib/error');
const { Retry, ATTEMPTS } = require('footward/lib/retry');
const { serve, bracket, freeAddress } = require('./serving');

/** A retry on a clock that only pauses move, and a call that fails with these errors first. */
function set(errors, wait = true) {
  const time = { now: 0, pauses: [], calls: 0 };
  const retry = new Retry(wait, async (ms) => {
    time.now += ms;
    time.pauses.push(ms);
  }, () => time.now);
  const once = async () => {
    time.calls++;
    if (errors.length) throw errors.shift();
    return 'answer';
  };
  return { retry, once, time };
}

const many = (error, n) => Array.from({ length: n }, () => error);
const gone = new CallError('UNAVAILABLE', '');

test('UNAVAILABLE is asked again up to four times with growing pauses', async () => {
  const few = set(many(gone, 3));
  assert.equal(await few.retry.run(few.once, 30_000), 'answer');
  for (const [i, about] of [100, 300, 900].entries()) assert.ok(Math.abs(few.time.pauses[i] - about) <= 0.21 * about);
  const always = set(many(gone, 9));
  await assert.rejects(always.retry.run(always.once, 30_000));
  assert.equal(always.time.calls, ATTEMPTS);
});

test('others are not asked again', async () => {
  for (const code of ['INVALID_ARGUMENT', 'RESOURCE_EXHAUSTED', 'DEADLINE_EXCEEDED', 'INTERNAL', 'UNAUTHENTICATED']) {
    const s = set([new CallError(code, '')]);
    await assert.rejects(s.retry.run(s.once, 30_000));
    assert.equal(s.time.calls, 1);
  }
});

test('a told delay is kept once, within the deadline', async () => {
  const full = new CallError('RESOURCE_EXHAUSTED', '', { retryAfterMs: 1000 });
  const first = set([full]);
  assert.equal(await first.retry.run(first.once, 30_000), 'answer');
  assert.ok(first.time.pauses[0] >= 1000 && first.time.pauses[0] <= 1200);
  const twice = set([full, full]);
  await assert.rejects(twice.retry.run(twice.once, 30_000));
  assert.equal(twice.time.calls, 2);
  const late = set([full]);
  await assert.rejects(late.retry.run(late.once, 1000));
  assert.equal(late.time.calls, 1);
});

test('a server that cannot be reached is waited for', async () => {
  const unreached = new CallError('UNAVAILABLE', '', { unreached: true });
  const s = set(many(unreached, 10));
  assert.equal(await s.retry.run(s.once, 30_000), 'answer');
  const never = set(many(unreached, 1000));
  await assert.rejects(never.retry.run(never.once, 30_000));
  const soon = set(many(unreached, 10), false);
  await assert.rejects(soon.retry.run(soon.once, 30_000));
  assert.equal(soon.time.calls, ATTEMPTS);
});

test('failing servers are asked less', async () => {
  const s = set(many(gone, 10_000));
  for (let i = 0; i < 1000; i++) await assert.rejects(s.retry.run(s.once, 30_000));
  assert.ok(s.time.calls < 1000 + (4 * 500) / 3 + 10);
});

test('an overloaded server is asked again over HTTP', async (t) => {
  let calls = 0;
  const server = http.createServer((request, response) => {
    request.resume();
    request.on('end', () => {
      response.statusCode = calls++ ? 200 : 429;
      response.end(JSON.stringify(calls > 1 ? { steels: [] } : {
        code: 8, message: 'full',
        details: [{ '@type': 'type.googleapis.com/google.rpc.RetryInfo', retry_delay: '0.01s' }],
      }));
    });
  });
  await new Promise((resolve) => server.listen(0, '127.0.0.1', resolve));
  t.after(() => server.close());
  const service = footward.connect(`http://127.0.0.1:${server.address().port}`);
  assert.deepEqual(await service.call('ListSteels', {}), { steels: [] });
  assert.equal(calls, 2);
});

test('an overloaded server is asked again over gRPC', async (t) => {
  const grpc = require('@grpc/grpc-js');
  const protobuf = require('@bufbuild/protobuf');
  const { Wire } = require('footward/lib/wire');
  const { registry } = new Wire('127.0.0.1:1', { plain: true });
  const bytes = (name, value) => Buffer.from(protobuf.toBinary(registry.getMessage(name), protobuf.create(registry.getMessage(name), value)));
  const delay = bytes('google.rpc.RetryInfo', { retryDelay: { nanos: 10_000_000 } });
  const status = bytes('google.rpc.Status', {
    code: 8, message: 'full', details: [{ typeUrl: 'type.googleapis.com/google.rpc.RetryInfo', value: delay }],
  });
  let calls = 0;
  const server = new grpc.Server();
  server.addService({
    ListSteels: {
      path: '/footward.v1.CatalogService/ListSteels', requestStream: false, responseStream: false,
      requestSerialize: (m) => m, requestDeserialize: (m) => m, responseSerialize: (m) => m, responseDeserialize: (m) => m,
    },
  }, {
    ListSteels: (call, answer) => {
      if (calls++) return answer(null, Buffer.alloc(0));
      const metadata = new grpc.Metadata();
      metadata.set('grpc-status-details-bin', status);
      return answer({ code: 8, details: 'full', metadata });
    },
  });
  const port = await new Promise((resolve, reject) => {
    server.bindAsync('127.0.0.1:0', grpc.ServerCredentials.createInsecure(), (e, p) => (e ? reject(e) : resolve(p)));
  });
  t.after(() => server.forceShutdown());
  const service = footward.connect(`127.0.0.1:${port}`);
  assert.deepEqual(await service.call('ListSteels', {}), { steels: [] });
  assert.equal(calls, 2);
  service.close();
});

test('a server may be restarted unnoticed', async (t) => {
  const first = await serve(t, { grpc: await freeAddress(), http: await freeAddress() });
  const ways = [footward.connect(first.http), footward.connect(first.grpc)];
  const want = await ways[0].check(bracket());
  await ways[1].check(bracket());
  await first.stop();
  const answers = ways.map((service) => service.check(bracket()));
  await serve(t, { grpc: first.grpc, http: first.web });
  for (const answer of answers) assert.deepEqual(await answer, want);
  ways.forEach((service) => service.close());
});

test('a server that is not there is told', async () => { // no port below 1024 is given out by itself
  for (const address of ['http://127.0.0.1:2', '127.0.0.1:2']) {
    for (const wait of [true, false]) {
      const service = footward.connect(address, { wait, timeoutMs: 400 });
      await assert.rejects(service.check(bracket()), { code: 'UNAVAILABLE' });
      service.close();
    }
  }
});
