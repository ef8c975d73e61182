'use strict';
// An answer as a plain object, and as text.

/** The answer of one check. */
function answer(kind, result, provenance, response) {
  return {
    kind,
    label: result.label || kind.replaceAll('_', ' '),
    verdict: result.verdict,
    passes: result.verdict === 'VERDICT_PASS',
    utilization: result.governing_utilization,
    governing: result.governing_limit_state_id,
    limit_states: result.limit_states,
    notices: result.notices,
    derivation: result.derivation,
    caution: provenance.caution,
    result,
    provenance,
    response,
  };
}

const words = (verdict) => verdict.replace('VERDICT_', '').replaceAll('_', ' ');
const number = (v) => String(+v.toPrecision(6));

/** The answer for people: verdict, limit states, notices and caution. */
function text(a) {
  if (a.violations) return ['refused', ...a.violations.map((v) => `  ${v.field}: ${v.description}`)].join('\n');
  let head = `${a.label}: ${words(a.verdict)}`;
  if (a.governing) head += `, governed by ${a.governing}`;
  if (a.utilization !== undefined) head += `, utilization ${a.utilization.toFixed(3)}`;
  if (a.result.reason) head += ` (${a.result.reason})`;
  const states = a.limit_states.map((s) => {
    let line = `  ${s.id}: ${words(s.verdict)}`;
    if (s.utilization !== undefined) line += `, utilization ${s.utilization.toFixed(3)}`;
    if (s.resistance !== undefined) line += ` (${`${number(s.demand)} of ${number(s.resistance)} ${s.unit}`.trim()})`;
    if (s.reason) line += `: ${s.reason}`;
    return `${line} [${s.clause}]`;
  });
  const notices = a.notices.map((n) => `  ${n.severity.replace('SEVERITY_', '').toLowerCase()}: ${n.text || n.code}`);
  return [head, ...states, ...notices, a.caution].join('\n');
}

module.exports = { answer, text };
