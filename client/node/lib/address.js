'use strict';
// Where a service is, and whether anybody could listen in.

const net = require('node:net');

const isHTTP = (address) => /^https?:\/\//i.test(address);

/** Whether an address is this very machine, so that nobody else can listen in. */
function isThisMachine(address) {
  if (!isHTTP(address)) {
    if (/^unix(-abstract)?:/.test(address)) return true;
    const target = /^[a-z][a-z0-9+.-]*:\/\/[^/]*\/(.*)$/.exec(address);
    if (target) address = target[1];
    else if (/^[a-z][a-z0-9+.-]*:\/\//.test(address)) return false;
    else address = address.replace(/^(dns|ipv4|ipv6):/, '');
    address = `http://${address}`;
  }
  let host;
  try {
    host = new URL(address).hostname.replace(/^\[|\]$/g, '');
  } catch {
    return false;
  }
  return host === 'localhost' || host === '::1' || (net.isIPv4(host) && host.startsWith('127.'));
}

/** The header of a token, or of what a function returns for one. */
async function bearer(token) {
  const now = typeof token === 'function' ? await token() : token;
  return now === undefined || now === null ? undefined : `Bearer ${now}`;
}

module.exports = { isHTTP, isThisMachine, bearer };
