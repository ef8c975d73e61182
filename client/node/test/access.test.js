'use strict';
// Tokens and encryption.

const assert = require('node:assert/strict');
const { execFileSync } = require('node:child_process');
const fs = require('node:fs');
const http = require('node:http');
const os = require('node:os');
const path = require('node:path');
const { test } = require('node:test');
const footward = require('footward');
const { isThisMachine } = require('footward/lib/address');
const { serve, bracket } = require('./serving');

const token = 'token-of-the-tests-only';

/** A folder with a file of tokens, and what makes certificates in it. */
function folder(t) {
  const dir = fs.mkdtempSync(path.join(os.tmpdir(), 'footward-'));
  t.after(() => fs.rmSync(dir, { recursive: true }));
  const tokens = path.join(dir, 'tokens');
  fs.writeFileSync(tokens, `${token}\n`, { mode: 0o600 });
  const certificate = (name) => {
    const [cert, key] = [path.join(dir, `${name}.pem`), path.join(dir, `${name}.key`)];
    execFileSync('openssl', ['req', '-x509', '-newkey', 'ec', '-pkeyopt', 'ec_paramgen_curve:P-256', '-nodes', '-keyout', key,
      '-out', cert, '-days', '2', '-subj', `/CN=${name}`, '-addext', 'subjectAltName=IP:127.0.0.1'], { stdio: 'ignore' });
    return [cert, key];
  };
  return { tokens, certificate };
}

test('a token opens the service', async (t) => {
  const serving = await serve(t, { flags: ['--token-file', folder(t).tokens] });
  for (const address of [serving.http, serving.grpc]) {
    for (const right of [token, async () => token]) {
      const service = footward.connect(address, { token: right });
      assert.ok((await service.check(bracket())).passes);
      service.close();
    }
    for (const wrong of [undefined, 'another-token-of-the-tests']) {
      const service = footward.connect(address, { token: wrong });
      await assert.rejects(service.check(bracket()), { code: 'UNAUTHENTICATED', reason: 'TOKEN_REFUSED' });
      service.close();
    }
  }
});

test('encryption with certificates on both sides', async (t) => {
  const { tokens, certificate } = folder(t);
  const [cert, key] = certificate('service');
  const [mine, myKey] = certificate('studio');
  const serving = await serve(t, { flags: ['--tls-cert', cert, '--tls-key', key, '--tls-client-ca', mine, '--token-file', tokens] });
  const service = footward.connect(serving.grpc, { ca: cert, cert: mine, key: myKey, token });
  assert.ok((await service.check(bracket())).passes);
  service.close();
  for (const wrong of [{ ca: mine, cert: mine, key: myKey }, { ca: cert }]) {
    const stranger = footward.connect(serving.grpc, { token, wait: false, timeoutMs: 2000, ...wrong });
    await assert.rejects(stranger.check(bracket()), footward.CallError);
    stranger.close();
  }
});

test('encryption over HTTP', async (t) => {
  const { certificate } = folder(t);
  const [cert, key] = certificate('service');
  const serving = await serve(t, { flags: ['--tls-cert', cert, '--tls-key', key] });
  const address = `https://${serving.web}`;
  await assert.rejects(footward.connect(address, { timeoutMs: 5000 }).check(bracket()), { code: 'UNAUTHENTICATED' });
  // Node reads the authorities of this variable when it starts.
  const script = `require('footward').connect('${address}').check(${JSON.stringify(bracket())}).then((a) => console.log(a.verdict))`;
  const env = { ...process.env, NODE_EXTRA_CA_CERTS: cert };
  assert.equal(execFileSync(process.execPath, ['-e', script], { env, encoding: 'utf8' }).trim(), 'VERDICT_PASS');
});

test('nothing secret goes over a plain connection', () => {
  for (const address of ['http://checks.example.org', 'checks.example.org:443']) {
    assert.throws(() => footward.connect(address, { token, plaintext: true }), /encrypted/);
  }
  assert.throws(() => footward.connect('http://checks.example.org'), /plaintext: true/);
  assert.throws(() => footward.connect('http://127.0.0.1:1', { ca: 'x.pem' }), /takes no certificates/);
  assert.throws(() => footward.connect('https://127.0.0.1:1', { ca: 'x.pem' }), /NODE_EXTRA_CA_CERTS/);
  assert.throws(() => footward.connect('127.0.0.1:1', { cert: 'x.pem' }), /go together/);
});

test('a redirect is not followed', async (t) => {
  const asked = [];
  const server = http.createServer((request, response) => {
    asked.push(request.url);
    request.resume();
    response.writeHead(307, { Location: '/stolen' }).end();
  });
  await new Promise((resolve) => server.listen(0, '127.0.0.1', resolve));
  t.after(() => server.close());
  await assert.rejects(footward.connect(`http://127.0.0.1:${server.address().port}`, { token }).check(bracket()), /307/);
  assert.deepEqual(asked, ['/footward.v1.CheckService/CheckWeld']);
});

test('this machine is known', () => {
  for (const here of ['127.0.0.1:1', 'localhost:1', '[::1]:1', 'unix:/run/x', 'dns:///localhost:1', 'dns:127.0.0.1:1',
    'http://127.0.0.1:1', 'https://LOCALHOST/x', 'http://[::1]:1', 'localhost']) assert.ok(isThisMachine(here), here);
  for (const other of ['example.org:1', 'localhost.example.org:1', 'http://127.0.0.1.example.org', '10.0.0.1:1', 'http://user@example.org/127.0.0.1',
    'dns://127.0.0.1/example.org:1', '', 'http://localhost@example.org']) assert.ok(!isThisMachine(other), other);
});
