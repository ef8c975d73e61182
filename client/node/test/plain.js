'use strict';
// Run where the package is installed without others: over HTTP it needs no more.

const assert = require('node:assert/strict');
const { test } = require('node:test');
const footward = require('footward');
const { serve, bracket } = require('./serving');

test('nothing else is needed over HTTP', async (t) => {
  const serving = await serve(t);
  const answer = await footward.connect(serving.http).check(bracket());
  assert.equal(answer.verdict, 'VERDICT_PASS');
  assert.throws(() => footward.connect(serving.grpc), /needs the packages @grpc\/grpc-js and @bufbuild\/protobuf/);
});
