'use strict';
// Finds what in a request is no part of the contract, by its path.

const { ScalarType } = require('@bufbuild/protobuf');

const DECIMAL = /^-?(0|[1-9][0-9]*)(\.[0-9]+)?([eE][-+]?[0-9]+)?$/;
const WHOLE = /^-?(0|[1-9][0-9]*)$/;

const isObject = (v) => typeof v === 'object' && v !== null && !Array.isArray(v);

const told = (v) => {
  const text = JSON.stringify(v) ?? String(v);
  return text.length <= 60 ? text : `${text.slice(0, 57)}...`;
};

const fault = (field, description) => ({ field, description, reason: 'FIELD_REASON_UNKNOWN_VALUE' });

/** Every field of a request that the description of its message does not have, or that
 * is of another kind. */
function faults(value, message, path = '') {
  if (value === null || value === undefined) return [];
  if (!isObject(value)) return [fault(path, `is ${told(value)}; it must hold the fields of ${message.name}`)];
  const out = [];
  for (const [name, v] of Object.entries(value)) {
    if (v === undefined) continue;
    const field = message.fields.find((f) => f.name === name || f.jsonName === name);
    const at = path ? `${path}.${name}` : name;
    if (!field) {
      out.push(fault(at, `is no field of ${message.name}; known are ${message.fields.map((f) => f.name).join(', ')}`));
    } else if (field.fieldKind !== 'list') {
      out.push(...one(v, field, at));
    } else if (Array.isArray(v)) {
      v.forEach((x, i) => out.push(...one(x, field, `${at}[${i}]`)));
    } else if (v !== null) {
      out.push(fault(at, `is ${told(v)}; it must be a list`));
    }
  }
  return out;
}

function one(v, field, at) {
  if (field.message) return faults(v, field.message, at);
  if (v === null) return [];
  const wrong = expected(v, field);
  return wrong ? [fault(at, `is ${told(v)}; it must be ${wrong}`)] : [];
}

function expected(v, field) {
  if (field.enum) {
    const names = field.enum.values.map((x) => x.name);
    return Number.isInteger(v) || names.includes(v) ? '' : `one of ${field.enum.values.filter((x) => x.number).map((x) => x.name).join(', ')}`;
  }
  switch (field.scalar) {
    case ScalarType.STRING:
      return typeof v === 'string' ? '' : 'text';
    case ScalarType.BOOL:
      return typeof v === 'boolean' ? '' : 'true or false';
    case ScalarType.DOUBLE:
    case ScalarType.FLOAT:
      if (typeof v === 'number' || (typeof v === 'string' && (DECIMAL.test(v) || /^(NaN|-?Infinity)$/.test(v)))) return '';
      return 'a number; units stand in the name of the field';
    default:
      return Number.isInteger(v) || (typeof v === 'string' && WHOLE.test(v)) ? '' : 'a whole number';
  }
}

module.exports = { faults };
