// Asks a Footward service whether the parts of a column base hold.

import type * as requests from './requests';
import type * as responses from './responses';
import type { Kinds, Methods } from './methods';

export type { requests, responses, Kinds, Methods };

export interface ConnectOptions {
  /** Bearer token of every call, or a function that is asked for it each time. To another
   * machine it goes over an encrypted connection only. */
  token?: string | (() => string | Promise<string>);
  /** File of own authorities, PEM; gRPC. For HTTP name it in NODE_EXTRA_CA_CERTS. */
  ca?: string;
  /** File of a certificate of the caller's, PEM; gRPC. */
  cert?: string;
  /** File of its key, PEM; gRPC. */
  key?: string;
  /** Leaves the connection to another machine unencrypted; only for a network that you trust. */
  plaintext?: boolean;
  /** Ends each call [ms]. Default 30 000. */
  timeoutMs?: number;
  /** Whether a call waits for a server that cannot be reached, until its timeout. Default true. */
  wait?: boolean;
  /** Takes the place of the global fetch; HTTP. */
  fetch?: typeof globalThis.fetch;
}

export interface CallOptions {
  /** Ends the call [ms]; of checkMany, each call of a hundred checks. */
  timeoutMs?: number;
}

export interface CheckOptions extends CallOptions {
  /** Whether the answer holds the calculation, step by step. */
  derivation?: boolean;
}

/** What a check answered. Show notices and caution with the numbers: text does. */
export interface Answer<Response = unknown> {
  /** What was checked. */
  kind: keyof Kinds;
  /** The caller's own name for the check, else its kind. */
  label: string;
  verdict: responses.Verdict;
  /** Whether every limit state holds. OUT_OF_SCOPE and NOT_APPLICABLE do not pass. */
  passes: boolean;
  /** Demand over resistance where it is greatest; undefined without a resistance. */
  utilization: number | undefined;
  /** Id of the limit state that governs; may be empty. */
  governing: string;
  limit_states: responses.LimitState[];
  /** Assumptions, cautions and limits of the method. Read them. */
  notices: responses.Notice[];
  derivation: responses.DerivationStep[];
  /** What every answer is and is not. */
  caution: string;
  result: responses.CheckResult;
  provenance: responses.Provenance;
  /** The whole response; of a column base with its table. Of checkMany one outcome. */
  response: Response;
}

/** One field of a request that was refused. */
export interface Violation {
  /** Its path, such as weld.run.length_mm. */
  field: string;
  /** What is wrong, with value, limit and unit. */
  description: string;
  /** The kind of fault, such as FIELD_REASON_OUT_OF_RANGE; may be empty. */
  reason: string;
}

/** In checkMany, why one check could not be made. */
export interface Refusal {
  violations: Violation[];
}

/** A call that failed or was turned away. */
export class CallError extends Error {
  /** Name of its gRPC status, such as UNAVAILABLE. */
  code: string;
  /** More about it, such as OVERLOADED; may be empty. */
  reason: string;
  /** When to ask again, where the service said so. */
  retryAfterMs: number | undefined;
  /** Leads to the call in the log of the service, where it is known. */
  requestId: string;
  /** Whether no server took the call at all. */
  unreached: boolean;
}

/** A request that cannot be checked. */
export class RefusedError extends CallError {
  violations: Violation[];
}

type Check = { [K in keyof Kinds]: { [P in K]: Methods[Kinds[K]]['request'] } }[keyof Kinds];
type ResponseOf<C> = C extends Check ? Methods[Kinds[keyof C & keyof Kinds]]['response'] : never;

/** A Footward service. Make one and keep it. */
export class Service {
  /** Calls a method of the contract by its name. */
  call<M extends keyof Methods>(method: M, request: Methods[M]['request'], options?: CallOptions): Promise<Methods[M]['response']>;
  /** Makes one check. A part that does not hold is an answer, not an error. */
  check<C extends Check>(check: C, options?: CheckOptions): Promise<Answer<ResponseOf<C>>>;
  /** Makes many checks, of any kind, mixed. A bad one fails alone, in its place. */
  checkMany(checks: Check[], options?: CheckOptions): Promise<(Answer | Refusal)[]>;
  /** Writes out the combinations of a set of actions. */
  combine(request: requests.CombineActionsRequest, options?: CallOptions): Promise<responses.CombineActionsResponse>;
  /** Looks for the cheapest column base among what is offered. */
  size(request: requests.SizeColumnBaseRequest, options?: CallOptions): Promise<responses.SizeColumnBaseResponse>;
  /** Holds a ring footing against a concrete pad sized for the same loads. */
  compare(request: requests.CompareFootingsRequest, options?: CallOptions): Promise<responses.CompareFootingsResponse>;
  /** Finds the characteristic and design resistance from load tests of one population. */
  tests(request: requests.AssessLoadTestsRequest, options?: CallOptions): Promise<responses.AssessLoadTestsResponse>;
  /** Reads the record of one load test. */
  reading(request: requests.ReadLoadTestRequest, options?: CallOptions): Promise<responses.ReadLoadTestResponse>;
  /** Gives the connection up. */
  close(): void;
}

/**
 * Returns a service. It does not wait for a connection: a server that cannot be reached
 * shows in the first call.
 *
 * The address is http://HOST:PORT or https://HOST:PORT for JSON over HTTP, with nothing
 * but Node; else HOST:PORT or any target that gRPC knows, which needs @grpc/grpc-js and
 * @bufbuild/protobuf. The connection is encrypted, unless the address is this very
 * machine; http:// to another machine needs plaintext.
 */
export function connect(address: string, options?: ConnectOptions): Service;

/** An answer for people: verdict, limit states, notices and caution. */
export function text(answer: Answer | Refusal): string;
