'use strict';
// Asks a running server whether a weld holds, and prints how that is worked out.

const grpc = require('@grpc/grpc-js');
const footward = require('./contract');

// Two runs of fillet weld, 150 mm long with a throat of 4 mm, hold a bracket on its
// plate against 120 kN that pulls it off. Units stand in the names.
const part = (thickness) => ({ thickness_mm: thickness, steel: { grade: 'EN 10025-2 S355' } });
const request = {
  label: 'bracket',
  basis: { basis: 'BASIS_EUROCODE' },
  detail: 'DETAIL_DERIVATION',
  weld: { kind: 'WELD_KIND_FILLET', throat_mm: 4, parts: [part(20), part(12)] },
  run: { length_mm: 150, count: 2, normal_kn: 120 },
};

const address = process.argv[2] ?? '127.0.0.1:50061';
const service = new footward.CheckService(address, grpc.credentials.createInsecure());

service.CheckWeld(request, { deadline: Date.now() + 30_000 }, (error, answer) => {
  service.close();
  if (error) {
    console.error(error.message);
    process.exitCode = 1;
    return;
  }
  const result = answer.result;
  console.log(`${result.label}: ${result.verdict}, utilization ${result.governing_utilization.toFixed(3)} by ${result.governing_id}`);
  for (const step of result.derivation) {
    const value = `${+step.value.toPrecision(6)} ${step.unit}`.trim();
    // What is given has no expression.
    const line = [step.symbol, step.expression, step.numbers, value].filter(Boolean).join(' = ');
    console.log(`${line}  [${step.clause}]`);
  }
  console.log('N, mm and MPa; a blank between two factors multiplies.');
  console.log(answer.provenance.caution);
});
