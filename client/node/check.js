'use strict';
// Asks a running server whether a weld holds, and prints how that is worked out.

const footward = require('./index.js'); // 'footward' where the package is installed

// Two runs of fillet weld, 150 mm long with a throat of 4 mm, hold a bracket on its
// plate against 120 kN that pulls it off. Units stand in the names.
const part = (thickness) => ({ thickness_mm: thickness, steel: { grade: 'EN 10025-2 S355' } });
const request = {
  weld: {
    label: 'bracket',
    basis: { eurocode: {} },
    weld: { kind: 'WELD_KIND_FILLET', throat_mm: 4, parts: [part(20), part(12)] },
    run: { length_mm: 150, count: 2, normal_kn: 120 },
  },
};

async function main() {
  // http://127.0.0.1:8061 asks in JSON over HTTP, which needs nothing but Node.
  const service = footward.connect(process.argv[2] ?? '127.0.0.1:50061');
  try {
    const answer = await service.check(request, { derivation: true });
    console.log(`${answer.label}: ${answer.verdict}, utilization ${answer.utilization.toFixed(3)} by ${answer.governing}`);
    for (const step of answer.derivation) {
      const value = `${+step.value.toPrecision(6)} ${step.unit}`.trim();
      // What is given has no expression.
      const line = [step.symbol, step.expression, step.numbers, value].filter(Boolean).join(' = ');
      console.log(`${line}  [${step.clause}]`);
    }
    console.log('N, mm and MPa; a blank between two factors multiplies.');
    console.log(answer.caution);
  } finally {
    service.close();
  }
}

main().catch((error) => {
  console.error(error.message);
  process.exitCode = 1;
});
