'use strict';
// Calls over gRPC. Needs @grpc/grpc-js and @bufbuild/protobuf.

const fs = require('node:fs');
const path = require('node:path');

const { bearer, isThisMachine } = require('./address');
const { CallError, RefusedError, fromStatus } = require('./error');

const MESSAGE_BYTES = 16 << 20;

/** The packages that gRPC needs. */
function needed() {
  try {
    return { grpc: require('@grpc/grpc-js'), protobuf: require('@bufbuild/protobuf'), wkt: require('@bufbuild/protobuf/wkt') };
  } catch (cause) {
    throw new Error(
      'an address without http:// is asked over gRPC, which needs the packages @grpc/grpc-js and @bufbuild/protobuf', { cause });
  }
}

/** A service that is asked over gRPC. */
class Wire {
  constructor(address, { token, wait, plain, ca, cert, key }) {
    const { grpc, protobuf, wkt } = needed();
    Object.assign(this, { address, token, wait, grpc, protobuf });
    this.faultsOf = require('./fault').faults;
    const set = protobuf.fromBinary(wkt.FileDescriptorSetSchema, fs.readFileSync(path.join(__dirname, '..', 'contract.binpb')));
    this.registry = protobuf.createFileRegistry(set);
    const read = (name) => (name === undefined ? null : fs.readFileSync(name));
    const credentials = plain ? grpc.credentials.createInsecure() : grpc.credentials.createSsl(read(ca), read(key), read(cert));
    this.client = new grpc.Client(address, credentials, {
      'grpc.max_send_message_length': MESSAGE_BYTES,
      'grpc.max_receive_message_length': MESSAGE_BYTES,
      'grpc.enable_retries': 0, // Retry does it, the same for every way
      'grpc.enable_http_proxy': isThisMachine(address) ? 0 : 1,
      'grpc.primary_user_agent': 'footward-node',
      'grpc.service_config': JSON.stringify({ loadBalancingConfig: [{ round_robin: {} }] }),
      'grpc.initial_reconnect_backoff_ms': 100,
      'grpc.min_reconnect_backoff_ms': 100,
      'grpc.max_reconnect_backoff_ms': 2000,
    });
  }

  close() {
    this.client.close();
  }

  /** What in a request is no part of the contract, by its path. */
  faults(message, request) {
    return this.faultsOf(request, this.registry.getMessage(`footward.v1.${message}`));
  }

  /** Sends one request and returns the answer, or throws why there is none. */
  async call(method, text, timeoutMs) {
    const request = this.request(method, text);
    const response = this.registry.getMessage(`footward.v1.${method.response}`);
    const metadata = new this.grpc.Metadata({ waitForReady: this.wait });
    const authorization = await bearer(this.token);
    if (authorization) metadata.set('authorization', authorization);
    return new Promise((resolve, reject) => {
      this.client.makeUnaryRequest(
        method.path, (m) => Buffer.from(m), (m) => m, request, metadata, { deadline: Date.now() + timeoutMs },
        (error, reply) => {
          if (error) return reject(this.error(error, timeoutMs));
          const { fromBinary, toJson } = this.protobuf;
          return resolve(toJson(response, fromBinary(response, reply), { useProtoFieldName: true, alwaysEmitImplicit: true }));
        });
    });
  }

  /** The bytes of a request, or why it is none. */
  request(method, text) {
    const message = this.registry.getMessage(`footward.v1.${method.request}`);
    const value = JSON.parse(text);
    const found = this.faultsOf(value, message);
    if (found.length) throw new RefusedError('the request is not of the contract', found);
    try {
      return this.protobuf.toBinary(message, this.protobuf.fromJson(message, value));
    } catch (cause) { // two fields that exclude each other
      throw new RefusedError(`the request is not of the contract: ${cause.message}`, [], { cause });
    }
  }

  error(error, timeoutMs) {
    const code = this.grpc.status[error.code];
    const requestId = String(error.metadata?.get('x-request-id')[0] ?? '');
    const ready = this.client.getChannel().getConnectivityState(false) === this.grpc.connectivityState.READY;
    if (code === 'DEADLINE_EXCEEDED' && !requestId && !ready) {
      return new CallError('UNAVAILABLE', `${this.address} could not be reached within ${Math.round(timeoutMs)} ms`, { cause: error });
    }
    return fromStatus(code, error.details, this.details(error.metadata?.get('grpc-status-details-bin')[0]), { requestId, cause: error });
  }

  /** The details of a status that are known. */
  details(bytes) {
    if (!bytes) return [];
    try {
      const kind = this.registry.getMessage('google.rpc.Status');
      const status = this.protobuf.fromBinary(kind, bytes);
      status.details = status.details.filter((d) => this.registry.getMessage(d.typeUrl.split('/').pop()));
      return this.protobuf.toJson(kind, status, { registry: this.registry, useProtoFieldName: true }).details ?? [];
    } catch {
      return []; // a status that cannot be read has no details
    }
  }
}

module.exports = { Wire };
