'use strict';
// What is answered and refused, the same over HTTP and gRPC.

const assert = require('node:assert/strict');
const fs = require('node:fs');
const { test } = require('node:test');
const footward = require('footward');
const { serve, bracket } = require('./serving');

/** A service and both ways to it. */
async function ways(t) {
  const serving = await serve(t);
  const both = [footward.connect(serving.http), footward.connect(serving.grpc)];
  t.after(() => both.forEach((s) => s.close()));
  return both;
}

test('every check is answered alike both ways', async (t) => {
  const [http, grpc] = await ways(t);
  const items = JSON.parse(fs.readFileSync(process.env.SERVICE_REQUESTS));
  assert.ok(items.length >= 6);
  for (const item of items) {
    for (const derivation of [false, true]) {
      const a = await http.check(item, { derivation });
      assert.deepEqual(await grpc.check(item, { derivation }), a);
      assert.equal(a.derivation.length > 0, derivation);
    }
  }
  assert.deepEqual(await http.call('ListSteels', {}), await grpc.call('ListSteels', {}));
});

test('an answer is a plain object, shown with notices and caution', async (t) => {
  for (const service of await ways(t)) {
    const request = bracket();
    const before = JSON.stringify(request);
    const a = await service.check(request, { derivation: true });
    assert.equal(JSON.stringify(request), before);
    assert.deepEqual([a.kind, a.label, a.verdict, a.passes, a.governing], ['weld', 'bracket', 'VERDICT_PASS', true, 'weld_throat_minimum']);
    assert.equal(a.utilization, 0.75);
    const none = a.limit_states.find((s) => s.utilization === undefined);
    assert.ok(none.reason);
    const shown = footward.text(a);
    assert.match(shown, /licensed engineer/);
    assert.ok(shown.includes(a.notices[0].text));
    const fails = await service.check(bracket({ normal_kn: 900 }));
    assert.equal(fails.passes, false);
    assert.match(footward.text(fails), /^bracket: FAIL/);
  }
});

test('every refused field is named by its path', async (t) => {
  for (const service of await ways(t)) {
    await assert.rejects(service.check(bracket({ length_mm: -3, count: 500 })), (e) => {
      assert.ok(e instanceof footward.RefusedError);
      assert.deepEqual([e.code, e.reason], ['INVALID_ARGUMENT', 'FIELDS_REFUSED']);
      assert.deepEqual(e.violations.map((v) => v.field).sort(), ['weld.run.count', 'weld.run.length_mm']);
      assert.equal(e.violations[0].reason, 'FIELD_REASON_OUT_OF_RANGE');
      assert.match(e.message, /weld\.run\.length_mm: .* mm/);
      return true;
    });
    await assert.rejects(service.check(bracket({ lenght_mm: 3 })), /lenght_mm/);
    await assert.rejects(service.check({ weld: { ...bracket().weld, group: {} } }), footward.RefusedError);
  }
});

test('over gRPC all that is no part of the contract is named at once', async (t) => {
  const [, grpc] = await ways(t);
  const wrong = {
    weld: {
      labl: 1, basis: { basis: 'EUROPE' }, run: { length_mm: '20 mm', count: 1.5, end_loaded: 'no' },
      group: { segments: {} }, weld: [], detail: true,
    },
  };
  await assert.rejects(grpc.check(wrong), (e) => {
    assert.deepEqual(e.violations.map((v) => v.field).sort(), ['weld.basis.basis', 'weld.detail', 'weld.group.segments', 'weld.labl',
      'weld.run.count', 'weld.run.end_loaded', 'weld.run.length_mm', 'weld.weld']);
    return true;
  });
});

test('a bad check fails alone in its place', async (t) => {
  const many = Array.from({ length: 230 }, (_, i) => bracket({ normal_kn: 10 + i }));
  many[7] = bracket({ length_mm: 0 });
  many[103] = bracket({ lenght_mm: 1 });
  many[205] = { wedl: {} };
  for (const service of await ways(t)) {
    const got = await service.checkMany(many);
    assert.deepEqual(got.map((g, i) => (g.violations ? i : -1)).filter((i) => i >= 0), [7, 103, 205]);
    assert.equal(got.length, many.length);
    assert.equal(got[7].violations[0].field, 'weld.run.length_mm');
    assert.match(footward.text(got[103]), /lenght_mm/);
    for (const i of [0, 104, 229]) assert.deepEqual(got[i].result, (await service.check(many[i])).result);
    const derived = await service.checkMany(many.slice(0, 2), { derivation: true });
    assert.ok(derived[1].derivation.length > 0);
  }
});

test('misuse is told in words', async (t) => {
  for (const service of await ways(t)) {
    await assert.rejects(service.check({ weld: {}, bearing: {} }), /one of anchor_rods.*this one has weld, bearing/);
    await assert.rejects(service.check({ toString: {} }), /this one has toString/);
    await assert.rejects(service.call('CheckLuck', {}), /CheckLuck is no method; known are .*CheckWeld/);
    await assert.rejects(service.check(bracket({ normal_kn: NaN })), /normal_kn is NaN/);
  }
});
