"""When a call is made again."""

import http.server
import json
import socket
import threading
import time
import unittest
from concurrent import futures

import footward
import grpc
from footward.error import CallError
from footward.retry import ATTEMPTS, Retry
from footward.wire import _classes, _pool
from google.protobuf import any_pb2
from serving import BRACKET, Serving, free_address


class Time:
    """A clock that only pauses move."""

    def __init__(self):
        self.now, self.pauses = 0.0, []

    def sleep(self, seconds):
        self.now += seconds
        self.pauses.append(seconds)


class Failing:
    """Fails with these errors, then answers."""

    def __init__(self, *errors):
        self.errors, self.calls = list(errors), 0

    def __call__(self, left):
        self.calls += 1
        if self.errors:
            raise self.errors.pop(0)
        return "answer"


class Pauses(unittest.TestCase):
    def setUp(self):
        self.time = Time()
        self.retry = Retry(True, self.time.sleep, lambda: self.time.now)

    def test_unavailable_is_asked_again_with_growing_pauses(self):
        self.assertEqual(self.retry.run(Failing(*[CallError("UNAVAILABLE", "")] * 3), 30), "answer")
        for pause, about in zip(self.time.pauses, (0.1, 0.3, 0.9), strict=True):
            self.assertAlmostEqual(pause, about, delta=0.21 * about)

    def test_it_ends_after_four_times(self):
        once = Failing(*[CallError("UNAVAILABLE", "")] * 9)
        with self.assertRaises(CallError):
            self.retry.run(once, 30)
        self.assertEqual(once.calls, ATTEMPTS)

    def test_others_are_not_asked_again(self):
        for code in ("INVALID_ARGUMENT", "RESOURCE_EXHAUSTED", "DEADLINE_EXCEEDED", "INTERNAL", "UNAUTHENTICATED"):
            once = Failing(CallError(code, ""))
            with self.assertRaises(CallError):
                self.retry.run(once, 30)
            self.assertEqual(once.calls, 1)

    def test_told_delay_is_kept_once(self):
        full = CallError("RESOURCE_EXHAUSTED", "", retry_after=1.0)
        self.assertEqual(self.retry.run(Failing(full), 30), "answer")
        self.assertGreaterEqual(self.time.pauses[0], 1.0)
        self.assertLessEqual(self.time.pauses[0], 1.2)
        once = Failing(full, full)
        with self.assertRaises(CallError):
            self.retry.run(once, 30)
        self.assertEqual(once.calls, 2)

    def test_callers_do_not_come_back_all_at_once(self):
        for _ in range(20):
            self.retry.run(Failing(CallError("RESOURCE_EXHAUSTED", "", retry_after=1.0)), 30)
        self.assertGreater(len(set(self.time.pauses)), 10)

    def test_nothing_is_asked_after_the_deadline(self):
        once = Failing(CallError("RESOURCE_EXHAUSTED", "", retry_after=5.0))
        with self.assertRaises(CallError):
            self.retry.run(once, 5)
        self.assertEqual((once.calls, self.time.pauses), (1, []))

    def test_server_that_cannot_be_reached_is_waited_for(self):
        gone = CallError("UNAVAILABLE", "", unreached=True)
        self.assertEqual(self.retry.run(Failing(*[gone] * 10), 30), "answer")
        self.assertLess(max(self.time.pauses), 2.5)
        with self.assertRaises(CallError):
            self.retry.run(Failing(*[gone] * 1000), 30)
        once = Failing(*[gone] * 10)
        with self.assertRaises(CallError):
            Retry(False, self.time.sleep, lambda: self.time.now).run(once, 30)
        self.assertEqual(once.calls, ATTEMPTS)

    def test_failing_servers_are_asked_less(self):
        calls = 0
        for _ in range(1000):
            once = Failing(*[CallError("UNAVAILABLE", "")] * 9)
            with self.assertRaises(CallError):
                self.retry.run(once, 30)
            calls += once.calls
        self.assertLess(calls, 1000 + 4 * 500 / 3 + 10)


class Full(http.server.BaseHTTPRequestHandler):
    """Turns the first call away as the service does when it is overloaded."""

    calls = 0

    def do_POST(self):
        self.rfile.read(int(self.headers["Content-Length"]))
        Full.calls += 1
        body = {"steels": []} if Full.calls > 1 else {"code": 8, "message": "full", "details": [
            {"@type": "type.googleapis.com/google.rpc.RetryInfo", "retry_delay": "0.01s"},
            {"@type": "type.googleapis.com/google.rpc.ErrorInfo", "reason": "OVERLOADED", "domain": "footward.v1"}]}
        data = json.dumps(body).encode()
        self.send_response(200 if Full.calls > 1 else 429)
        self.send_header("Content-Length", str(len(data)))
        self.end_headers()
        self.wfile.write(data)

    def log_message(self, *_):
        pass


class Servers(unittest.TestCase):
    def test_overloaded_server_is_asked_again_over_http(self):
        server = http.server.HTTPServer(("127.0.0.1", 0), Full)
        threading.Thread(target=server.serve_forever, daemon=True).start()
        self.addCleanup(server.server_close)
        self.addCleanup(server.shutdown)
        self.assertEqual(footward.connect(f"http://127.0.0.1:{server.server_port}").catalog("steels").steels, [])
        self.assertEqual(Full.calls, 2)

    def test_overloaded_server_is_asked_again_over_grpc(self):
        known = _classes(_pool())
        delay = known["google.rpc.RetryInfo"]()
        delay.retry_delay.nanos = 10_000_000
        status = known["google.rpc.Status"](code=8, message="full")
        packed = any_pb2.Any(type_url="type.googleapis.com/google.rpc.RetryInfo", value=delay.SerializeToString())
        status.details.add().MergeFromString(packed.SerializeToString())
        calls = []

        def answer(request, context):
            calls.append(request)
            if len(calls) == 1:
                context.set_trailing_metadata([("grpc-status-details-bin", status.SerializeToString())])
                context.abort(grpc.StatusCode.RESOURCE_EXHAUSTED, "full")
            return b""

        server = grpc.server(futures.ThreadPoolExecutor(2))
        server.add_generic_rpc_handlers([grpc.method_handlers_generic_handler(
            "footward.v1.CatalogService", {"ListSteels": grpc.unary_unary_rpc_method_handler(answer)})])
        port = server.add_insecure_port("127.0.0.1:0")
        server.start()
        self.addCleanup(server.stop, None)
        with footward.connect(f"127.0.0.1:{port}") as service:
            self.assertEqual(service.catalog("steels").steels, [])
        self.assertEqual(len(calls), 2)

    def test_server_may_be_restarted_unnoticed(self):
        with Serving(grpc=free_address(), http=free_address()) as first:
            at = {"grpc": first.grpc, "http": first.web}
            ways = [footward.connect(first.http), footward.connect(first.grpc)]
            want = ways[0].check(BRACKET).raw
        started = []
        later = threading.Thread(target=lambda: (time.sleep(0.3), started.append(Serving(**at))))
        later.start()
        self.addCleanup(lambda: [s.stop() for s in started])
        for service in ways:
            self.assertEqual(service.check(BRACKET).raw, want)
            service.close()
        later.join()

    def test_server_that_is_not_there_is_told(self):
        with socket.socket() as s:
            s.bind(("127.0.0.1", 0))  # nobody listens, and nobody else can
            port = s.getsockname()[1]
            for address in (f"http://127.0.0.1:{port}", f"127.0.0.1:{port}"):
                for wait in (True, False):
                    with footward.connect(address, wait=wait, timeout=0.4) as service:
                        with self.assertRaises(footward.CallError) as caught:
                            service.check(BRACKET)
                    self.assertEqual(caught.exception.code, "UNAVAILABLE", caught.exception)


if __name__ == "__main__":
    unittest.main()
