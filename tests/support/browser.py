"""A real browser for tests: headless Chromium, driven over its DevTools protocol through a pipe.

    with Browser(profile) as browser:
        page = browser.open(path, width=360, height=740)
        page.evaluate("document.title")

One start serves many pages. Each page notes what it asked the network for and what its console said.
"""
import base64
import fcntl
import json
import os
import shutil
import subprocess

FLAGS = ("--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
         "--disable-component-update", "--disable-sync", "--disable-extensions", "--hide-scrollbars", "--remote-debugging-pipe")


class Browser:
    def __init__(self, profile):
        chromium = shutil.which("chromium") or shutil.which("chromium-browser")
        assert chromium, "chromium is not installed; tests/packages.txt names it"
        # The browser reads commands from its descriptor 3 and writes answers to its 4, each closed by a zero byte.
        to_browser, self.to_browser = os.pipe()
        self.from_browser, from_browser = os.pipe()

        def hand_over():
            aside = [fcntl.fcntl(pipe, fcntl.F_DUPFD, 10) for pipe in (to_browser, from_browser)]  # they may be 3 or 4 already
            os.dup2(aside[0], 3)
            os.dup2(aside[1], 4)

        self.process = subprocess.Popen([chromium, *FLAGS, f"--user-data-dir={profile}"], preexec_fn=hand_over, close_fds=False,
                                        stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        os.close(to_browser)
        os.close(from_browser)
        self.unread, self.asked, self.listeners = b"", 0, {}

    def __enter__(self):
        return self

    def __exit__(self, *_):
        self.process.kill()
        self.process.wait()
        os.close(self.to_browser)
        os.close(self.from_browser)

    def open(self, path, width, height):
        return Page(self, path, width, height)

    def ask(self, method, session=None, **params):
        """The result of one command; what the pages report meanwhile goes to them."""
        self.asked += 1
        message = {"id": self.asked, "method": method, "params": params} | ({"sessionId": session} if session else {})
        os.write(self.to_browser, json.dumps(message).encode() + b"\0")
        while True:
            answer = self.next_message()
            if answer.get("id") == self.asked:
                assert "error" not in answer, f"{method}: {answer['error']}"
                return answer["result"]

    def next_message(self):
        while b"\0" not in self.unread:
            piece = os.read(self.from_browser, 1 << 20)
            assert piece, "the browser has ended"
            self.unread += piece
        message, _, self.unread = self.unread.partition(b"\0")
        answer = json.loads(message)
        if "method" in answer and (page := self.listeners.get(answer.get("sessionId"))):
            page.hear(answer["method"], answer["params"])
        return answer


class Page:
    def __init__(self, browser, path, width, height):
        self.browser = browser
        target = browser.ask("Target.createTarget", url="about:blank")["targetId"]
        self.target, self.session = target, browser.ask("Target.attachToTarget", targetId=target, flatten=True)["sessionId"]
        browser.listeners[self.session] = self
        self.requests, self.complaints, self.loaded = [], [], False
        for domain in ("Page", "Network", "Runtime", "Log"):
            self.ask(f"{domain}.enable")
        self.go(path, width, height)

    def go(self, path, width, height):
        """Another page in the same window, which is cheaper than another window: what is noted begins anew."""
        self.requests, self.complaints, self.loaded = [], [], False
        self.resize(width, height)
        self.ask("Page.navigate", url=path.as_uri())
        while not self.loaded:
            self.browser.next_message()

    def media(self, kind):
        """"print", or "" for what the page is shown on."""
        self.ask("Emulation.setEmulatedMedia", media=kind)

    def ask(self, method, **params):
        return self.browser.ask(method, self.session, **params)

    def hear(self, method, params):
        if method == "Network.requestWillBeSent":
            self.requests.append(params["request"]["url"])
        elif method == "Page.loadEventFired":
            self.loaded = True
        elif method == "Runtime.exceptionThrown":
            self.complaints.append(params["exceptionDetails"]["text"])
        elif method == "Log.entryAdded":
            self.complaints.append(params["entry"]["text"])
        elif method == "Runtime.consoleAPICalled":
            self.complaints.append(str(params["args"]))

    def resize(self, width, height):
        self.ask("Emulation.setDeviceMetricsOverride", width=width, height=height, deviceScaleFactor=1, mobile=False)

    def evaluate(self, expression):
        """The value of a JavaScript expression, awaited if it is a promise."""
        done = self.ask("Runtime.evaluate", expression=expression, awaitPromise=True, returnByValue=True)
        assert "exceptionDetails" not in done, done["exceptionDetails"]
        return done["result"].get("value")

    def picture(self, path, whole=True):
        done = self.ask("Page.captureScreenshot", format="png", captureBeyondViewport=whole)
        path.write_bytes(base64.b64decode(done["data"]))

    def pdf(self, **options):
        return base64.b64decode(self.ask("Page.printToPDF", **options)["data"])

    def close(self):
        self.browser.ask("Target.closeTarget", targetId=self.target)
        del self.browser.listeners[self.session]
