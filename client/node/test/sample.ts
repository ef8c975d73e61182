// Held to the types by the compiler; it is not run.
import * as footward from 'footward';
import type { requests } from 'footward';

const plate: requests.Plate = { size_x_mm: 300, size_y_mm: 300, thickness_mm: 20, steel: { grade: 'EN 10025-2 S355' } };

export async function sample(): Promise<string> {
  const service = footward.connect('http://127.0.0.1:8061', { token: async () => 'token', timeoutMs: 5000 });
  const answer = await service.check({ plate_bending: { label: 'plate', basis: { eurocode: {} }, plate } }, { derivation: true });
  const utilization: number = answer.utilization ?? 0;
  const steps: string[] = answer.derivation.map((s) => `${s.symbol} = ${s.value.toFixed(2)} ${s.unit}`);
  const base = await service.check({ column_base: {} });
  const version: string | undefined = base.response.provenance?.service_version;
  for (const one of await service.checkMany([{ weld: {} }, { pin: {} }])) {
    if ('violations' in one) console.log(one.violations[0]?.field);
    else console.log(footward.text(one), one.passes);
  }
  const steels = await service.call('ListSteels', {});
  try {
    // @ts-expect-error a field that the contract does not have
    await service.check({ weld: { labl: 'x' } });
    // @ts-expect-error a value that the contract does not have
    await service.check({ weld: { basis: { basis: 'EUROPE' } } });
    // @ts-expect-error a method that the contract does not have
    await service.call('CheckLuck', {});
  } catch (e) {
    if (e instanceof footward.RefusedError) return e.violations.map((v) => v.description).join();
  }
  return `${utilization} ${steps.length} ${version} ${steels.steels[0]?.grade}`;
}
