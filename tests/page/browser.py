"""A browser without a screen, driven as a hand would: the WebDriver protocol of chromedriver (W3C), by urllib alone."""
import base64
import json
import pathlib
import shutil
import subprocess
import tempfile
import time
import urllib.error
import urllib.request

MISSING = [tool for tool in ("chromium", "chromedriver", "node") if shutil.which(tool) is None]
ELEMENT = "element-6066-11e4-a52e-4f735466cecf"  # the key that the protocol marks elements by
KEYS = {"Tab": "\ue004", "Left": "\ue012", "Up": "\ue013", "Right": "\ue014", "Down": "\ue015", "Home": "\ue011",
        "End": "\ue010",
        "Enter": "\ue007", "Space": " ", "Shift": "\ue008"}
SOFTWARE = ["--use-gl=angle", "--use-angle=swiftshader", "--enable-unsafe-swiftshader"]
WITHOUT_3D = ["--disable-gpu", "--disable-3d-apis"]


class Failed(Exception):
    pass


class Browser:
    def __init__(self, *flags):
        self.folder = tempfile.TemporaryDirectory(prefix="baywright-browser-")
        self.log = open(pathlib.Path(self.folder.name) / "chromedriver.log", "w+", encoding="utf-8")
        self.driver = subprocess.Popen(["chromedriver", "--port=0"], stdout=self.log, stderr=subprocess.STDOUT)
        self.session = None
        try:
            self.address = f"http://127.0.0.1:{self.port()}"
            options = {"args": ["--headless=new", "--no-sandbox", "--remote-debugging-pipe", "--disable-dev-shm-usage", "--hide-scrollbars",
                                "--disable-background-networking", "--no-first-run", "--force-device-scale-factor=1",
                                "--window-size=1200,900", f"--user-data-dir={self.folder.name}/profile", *flags]}
            made = self.call("POST", "/session", {"capabilities": {"alwaysMatch": {
                "browserName": "chrome", "goog:chromeOptions": options, "unhandledPromptBehavior": "ignore",
                "goog:loggingPrefs": {"browser": "ALL", "performance": "ALL"}}}})
            self.session = made["sessionId"]
        except BaseException:
            self.close()
            raise

    def __enter__(self):
        return self

    def __exit__(self, *_):
        self.close()

    def close(self):
        if self.session is not None:
            self.call("DELETE", "")
        self.driver.terminate()
        self.driver.wait(10)
        self.log.close()
        self.folder.cleanup()

    def port(self):
        for _ in range(200):
            self.log.seek(0)
            said = self.log.read()
            if "on port " in said and "started successfully" in said:
                return int(said.split("started successfully on port ")[-1].split(".")[0])
            if self.driver.poll() is not None:
                break
            time.sleep(0.05)
        raise Failed(f"chromedriver did not start: {said}")

    def call(self, method, path, content=None):
        prefix = "" if self.session is None else f"/session/{self.session}"
        data = None if method != "POST" else json.dumps(content or {}).encode()
        request = urllib.request.Request(self.address + prefix + path, data, {"Content-Type": "application/json"},
                                         method=method)
        try:
            with urllib.request.urlopen(request, timeout=60) as answer:
                return json.load(answer)["value"]
        except urllib.error.HTTPError as fault:
            raise Failed(f"{method} {path}: {json.load(fault)['value']['message']}") from None

    # --- the page ---

    def open(self, file):
        self.call("POST", "/url", {"url": pathlib.Path(file).resolve().as_uri()})

    def open_blank(self):
        self.call("POST", "/url", {"url": "about:blank"})

    def run(self, script, *arguments):
        return self.call("POST", "/execute/sync", {"script": script, "args": list(arguments)})

    def run_later(self, script, *arguments):
        """The script calls its last argument when it is done."""
        return self.call("POST", "/execute/async", {"script": script, "args": list(arguments)})

    def devtools(self, command, **parameters):
        return self.call("POST", "/goog/cdp/execute", {"cmd": command, "params": parameters})

    def wait(self, script, seconds=20):
        end = time.monotonic() + seconds
        while not self.run(script):
            if time.monotonic() > end:
                raise Failed(f"{seconds} s went by, and never: {script}")
            time.sleep(0.05)

    def wait_frames(self, count):
        self.run_later("const [count, done] = arguments; let left = count;"
                       "const next = () => (left-- > 0 ? requestAnimationFrame(next) : done()); next();", count)

    def frames_asked_for(self, seconds):
        """How often the page asks to draw in that time. Counted on from then, in window.asked."""
        return self.run_later("""const [seconds, done] = arguments;
            const ask = window.requestAnimationFrame;
            window.asked = 0;
            window.requestAnimationFrame = (next) => { ++window.asked; return ask.call(window, next); };
            setTimeout(() => done(window.asked), 1000 * seconds);""", seconds)

    def look(self, dark=False, width=1200, height=900, scale=1, still=False):
        """As a reader's system has it."""
        features = {"prefers-color-scheme": "dark" if dark else "light",
                    "prefers-reduced-motion": "reduce" if still else "no-preference"}
        self.devtools("Emulation.setEmulatedMedia",
                      features=[{"name": name, "value": value} for name, value in features.items()])
        self.devtools("Emulation.setDeviceMetricsOverride", width=width, height=height, deviceScaleFactor=scale,
                      mobile=False)

    def find(self, selector):
        return self.call("POST", "/element", {"using": "css selector", "value": selector})[ELEMENT]

    def click(self, selector):
        self.call("POST", f"/element/{self.find(selector)}/click")

    def value(self, name):
        return self.run("return document.querySelector(arguments[0]).value", f'[data-model="{name}"]')

    def text(self, selector):
        return self.run("return document.querySelector(arguments[0]).textContent", selector)

    def choose(self, name, value):
        """Of a list, as its user does: the option is clicked."""
        self.click(f'[data-model="{name}"] option[value="{value}"]')

    def sampled(self, name, seconds):
        """The values that a slider goes through in that time, each once."""
        return self.run_later("""const [selector, seconds, done] = arguments;
            const slider = document.querySelector(selector);
            const [out, end] = [[], performance.now() + 1000 * seconds];
            const look = () => {
              const value = Number(slider.value);
              if (out[out.length - 1] !== value) out.push(value);
              performance.now() < end ? setTimeout(look, 15) : done(out);
            };
            look();""", f'[data-model="{name}"]', seconds)

    def alert(self):
        """What a dialogue of the page says; none: there is none."""
        try:
            return self.call("GET", "/alert/text")
        except Failed:
            return None

    def picture(self, selector):
        """A PNG of the element, as base64."""
        return self.call("GET", f"/element/{self.find(selector)}/screenshot")

    def save(self, path, selector=None):
        got = self.call("GET", "/screenshot") if selector is None else self.picture(selector)
        path.write_bytes(base64.b64decode(got))

    # --- the hand ---

    def drag(self, selector, *ways, kind="mouse"):
        """Each way is of one pointer: from where to where, in pixels from the middle of the element, in steps."""
        element = {ELEMENT: self.find(selector)}

        def step(way, share, duration):
            x, y = (round(a + share * (b - a)) for a, b in zip(*way))
            return {"type": "pointerMove", "duration": duration, "origin": element, "x": x, "y": y}

        self.call("POST", "/actions", {"actions": [{
            "type": "pointer", "id": f"{kind} {number}", "parameters": {"pointerType": kind}, "actions": [
                step(way, 0.0, 0), {"type": "pointerDown", "button": 0},
                *(step(way, share, 30) for share in (0.25, 0.5, 0.75, 1.0)), {"type": "pointerUp", "button": 0}]}
            for number, way in enumerate(ways)]})

    def keys(self, *names):
        actions = []
        for name in names:
            *held, key = name.split("+") if len(name) > 1 else [name]
            codes = [KEYS.get(each, each) for each in [*held, key]]
            actions += [{"type": "keyDown", "value": code} for code in codes]
            actions += [{"type": "keyUp", "value": code} for code in reversed(codes)]
        self.call("POST", "/actions", {"actions": [{"type": "key", "id": "keys", "actions": actions}]})

    # --- what was noted ---

    def logged(self, kind):
        return self.call("POST", "/se/log", {"type": kind})

    def errors(self):
        """Messages of the console that are errors, since last asked."""
        return [each["message"] for each in self.logged("browser") if each["level"] == "SEVERE"]

    def requests(self):
        """Addresses that were asked for, since last asked."""
        out = []
        for each in self.logged("performance"):
            message = json.loads(each["message"])["message"]
            if message["method"] == "Network.requestWillBeSent":
                out.append(message["params"]["request"]["url"])
        return out
