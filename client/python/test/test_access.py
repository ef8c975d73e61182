"""Tokens and encryption."""

import http.server
import subprocess
import tempfile
import threading
import unittest
from pathlib import Path

import footward
from footward.address import is_this_machine
from serving import BRACKET, Serving

TOKEN = "token-of-the-tests-only"


def certificate(folder: Path, name: str) -> tuple[str, str]:
    """A certificate for this machine that is its own authority, and its key."""
    cert, key = str(folder / f"{name}.pem"), str(folder / f"{name}.key")
    subprocess.run(["openssl", "req", "-x509", "-newkey", "ec", "-pkeyopt", "ec_paramgen_curve:P-256", "-nodes",
                    "-keyout", key, "-out", cert, "-days", "2", "-subj", f"/CN={name}",
                    "-addext", "subjectAltName=IP:127.0.0.1"], check=True, capture_output=True)
    return cert, key


class Access(unittest.TestCase):
    def setUp(self):
        folder = tempfile.TemporaryDirectory()
        self.addCleanup(folder.cleanup)
        self.folder = Path(folder.name)
        self.tokens = str(self.folder / "tokens")
        Path(self.tokens).write_text(TOKEN + "\n")
        Path(self.tokens).chmod(0o600)

    def serve(self, *flags):
        serving = Serving(*flags)
        self.addCleanup(serving.stop)
        return serving

    def test_token_opens_the_service(self):
        serving = self.serve("--token-file", self.tokens)
        for address in (serving.http, serving.grpc):
            for token in (TOKEN, lambda: TOKEN):
                with footward.connect(address, token=token) as service:
                    self.assertTrue(service.check(BRACKET).passes)
            for token in (None, "another-token-of-the-tests"):
                with footward.connect(address, token=token) as service:
                    with self.assertRaises(footward.CallError) as caught:
                        service.check(BRACKET)
                self.assertEqual((caught.exception.code, caught.exception.reason), ("UNAUTHENTICATED", "TOKEN_REFUSED"))

    def test_encryption_with_certificates_on_both_sides(self):
        cert, key = certificate(self.folder, "service")
        mine, my_key = certificate(self.folder, "studio")
        serving = self.serve("--tls-cert", cert, "--tls-key", key, "--tls-client-ca", mine, "--token-file", self.tokens)
        for address in (f"https://{serving.web}", serving.grpc):
            with footward.connect(address, ca=cert, cert=mine, key=my_key, token=TOKEN) as service:
                self.assertTrue(service.check(BRACKET).passes)
            for wrong in ({"ca": mine, "cert": mine, "key": my_key}, {"ca": cert}):
                with footward.connect(address, token=TOKEN, wait=False, timeout=2, **wrong) as service:
                    with self.assertRaises(footward.CallError):
                        service.check(BRACKET)

    def test_nothing_secret_goes_over_a_plain_connection(self):
        for address in ("http://checks.example.org", "checks.example.org:443"):
            with self.assertRaisesRegex(ValueError, "encrypted"):
                footward.connect(address, token=TOKEN, plaintext=True)
        with self.assertRaisesRegex(ValueError, "plaintext=True"):
            footward.connect("http://checks.example.org")
        with self.assertRaisesRegex(ValueError, "takes no certificates"):
            footward.connect("http://127.0.0.1:1", ca="x.pem")
        with self.assertRaisesRegex(ValueError, "go together"):
            footward.connect("https://127.0.0.1:1", cert="x.pem")

    def test_redirect_is_not_followed(self):
        asked = []

        class Elsewhere(http.server.BaseHTTPRequestHandler):
            def do_POST(self):
                asked.append(self.path)
                self.send_response(307)
                self.send_header("Location", f"http://127.0.0.1:{self.server.server_port}/stolen")
                self.send_header("Content-Length", "0")
                self.end_headers()

            do_GET = do_POST

            def log_message(self, *_):
                pass

        server = http.server.HTTPServer(("127.0.0.1", 0), Elsewhere)
        threading.Thread(target=server.serve_forever, daemon=True).start()
        self.addCleanup(server.server_close)
        self.addCleanup(server.shutdown)
        with self.assertRaisesRegex(footward.CallError, "307"):
            footward.connect(f"http://127.0.0.1:{server.server_port}", token=TOKEN).check(BRACKET)
        self.assertEqual(asked, ["/footward.v1.CheckService/CheckWeld"])

    def test_this_machine_is_known(self):
        for here in ("127.0.0.1:1", "localhost:1", "[::1]:1", "unix:/run/x", "dns:///localhost:1", "dns:127.0.0.1:1",
                     "http://127.0.0.1:1", "https://LOCALHOST/x", "http://[::1]:1", "localhost"):
            self.assertTrue(is_this_machine(here), here)
        for other in ("example.org:1", "localhost.example.org:1", "http://127.0.0.1.example.org", "10.0.0.1:1",
                      "http://user@example.org/127.0.0.1", "dns://127.0.0.1/example.org:1", "", "http://localhost@example.org"):
            self.assertFalse(is_this_machine(other), other)


if __name__ == "__main__":
    unittest.main()
