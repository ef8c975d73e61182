'use strict';
// Starts the service's binary, which SERVICE_BINARY names, for a test.

const { spawn } = require('node:child_process');
const net = require('node:net');
const readline = require('node:readline');

const part = (thickness) => ({ thickness_mm: thickness, steel: { grade: 'EN 10025-2 S355' } });

/** A weld that holds, with another run. */
const bracket = (changed = {}) => ({
  weld: {
    label: 'bracket',
    basis: { eurocode: {} },
    weld: { kind: 'WELD_KIND_FILLET', throat_mm: 4, parts: [part(20), part(12)] },
    run: { length_mm: 150, count: 2, normal_kn: 120, ...changed },
  },
});

/** A service of its own, on ports of its own unless they are given; it ends with the test. */
async function serve(t, { flags = [], grpc = '127.0.0.1:0', http = '127.0.0.1:0' } = {}) {
  const child = spawn(process.env.SERVICE_BINARY,
    ['--grpc-address', grpc, '--http-address', http, '--metrics-address', '', '--log-json', ...flags],
    { stdio: ['ignore', 'ignore', 'pipe'] });
  const ended = new Promise((resolve) => child.once('exit', resolve));
  const stop = async () => {
    child.kill('SIGTERM');
    await ended;
  };
  t.after(stop);
  const lines = readline.createInterface(child.stderr);
  const line = await new Promise((resolve, reject) => {
    lines.on('line', (one) => { if (!one.includes('"level":"WARN"')) resolve(one); });
    ended.then(() => reject(new Error('the service ended')));
  });
  if (!line.includes('"serving"')) throw new Error(line);
  const told = JSON.parse(line);
  return { grpc: told.listening, web: told.http, http: `http://${told.http}`, stop };
}

/** An address that is free, and that no outgoing connection takes in the meantime. */
async function freeAddress() {
  for (;;) {
    const port = 20_000 + Math.floor(Math.random() * 12_000);
    const holder = net.createServer();
    const free = await new Promise((resolve) => holder.once('error', () => resolve(false)).listen(port, '127.0.0.1', () => resolve(true)));
    if (!free) continue;
    await new Promise((resolve) => holder.close(resolve));
    return `127.0.0.1:${port}`;
  }
}

module.exports = { serve, bracket, freeAddress };
