#!/usr/bin/env python3
"""The page for a customer as a reader meets it: in a browser, by hand, by keyboard, by whoever cannot see it.

    page_test.py PROGRAM SOURCE WORK      pages and pictures of them are left in WORK

Exit status 0 passed, 1 failed, 77 skipped in part or whole, because a tool is missing or cannot be fetched: each such
check says so.
"""
import base64
import concurrent.futures
import json
import pathlib
import re
import struct
import subprocess
import sys
import time

from browser import MISSING, SOFTWARE, WITHOUT_3D, Browser, Failed
from npm import CannotBeHad, modules

SKIPPED = 77  # ctest: SKIP_RETURN_CODE
TALL = "card with tall fins"
# What would end the title, an attribute or the script, or turn the rest of the line round, were it not text.
HOSTILE = "</title></script><script>alert(1)</script>\"' onerror=alert(2) <img src=x onerror=alert(3)> \u202egninrut"

# One that breaks each rule that is checked. 127.0.0.1:9 answers nobody.
BAD_PAGE = """<!DOCTYPE html>
<html><head><meta charset="utf-8"><title></title><style>p { color: #999; background: #aaa; }</style></head>
<body><p id="a">Hardly to be read<p id="a"><img src="http://127.0.0.1:9/far.png"><button></button></div>
<script>console.error("said"); throw new Error("thrown");</script></body></html>
"""

# Pixels of two PNGs, in the page itself: how many differ, how many of the first are of each of the colours.
COUNT = """
const [first, second, colours, done] = arguments;
const pixels = async (png) => {
  const image = new Image();
  image.src = "data:image/png;base64," + png;
  await image.decode();
  const canvas = document.createElement("canvas");
  [canvas.width, canvas.height] = [image.width, image.height];
  const context = canvas.getContext("2d");
  context.drawImage(image, 0, 0);
  return context.getImageData(0, 0, image.width, image.height).data;
};
(async () => {
  const [a, b] = [await pixels(first), await pixels(second || first)];
  let differ = a.length === b.length ? 0 : a.length / 4;
  let coloured = 0;
  const near = (i, colour) => [0, 1, 2].every((k) => Math.abs(a[i + k] - colour[k]) <= 2);
  for (let i = 0; i < a.length; i += 4) {
    if (!differ || a.length === b.length) differ += a[i] !== b[i] || a[i + 1] !== b[i + 1] || a[i + 2] !== b[i + 2];
    coloured += colours.some((colour) => near(i, colour));
  }
  done({ share: differ / (a.length / 4), coloured });
})();
"""

AXE = """
const done = arguments[arguments.length - 1];
document.querySelectorAll("details").forEach((each) => (each.open = true));
axe.run({ resultTypes: ["violations"] }).then(
  (found) => done(found.violations.flatMap((rule) =>
    rule.nodes.map((node) => `${rule.id}: ${rule.help}: ${node.html.slice(0, 120)}`))),
  (fault) => done([String(fault)]));
"""

# What holds the focus: what it is, and how it shows.
FOCUSED = """
const at = document.activeElement;
if (!at || at === document.body) return null;
const style = getComputedStyle(at);
window.seenFocus = window.seenFocus || new Set();
const again = window.seenFocus.has(at);
window.seenFocus.add(at);
const shown = style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2;
return { what: at.outerHTML.slice(0, 100), again, shown };
"""
TO_BE_REACHED = """
return [...document.querySelectorAll("a[href], button, input, select, summary, canvas, [tabindex='0']")]
  .filter((each) => each.checkVisibility() && !each.disabled && !window.seenFocus.has(each))
  .map((each) => each.outerHTML.slice(0, 100));
"""


def demand(held, what):
    if not held:
        raise Failed(what)


def none_of(found, what):
    demand(not found, f"{what}:\n    " + "\n    ".join(str(each)[:300] for each in found))


def glbs_of(text):
    return re.findall(r'<script class="model-data" type="model/gltf-binary">([^<]*)</script>', text)


def scene_of(glb):
    """The JSON of a GLB."""
    content = base64.b64decode(glb)
    length = struct.unpack_from("<I", content, 12)[0]
    return json.loads(content[20:20 + length])


def cap_colours(scene):
    """Those that cuts are filled with in the light: of what is solid, a third of the way to white."""
    out = set()
    for mesh in scene["meshes"]:
        for primitive in mesh["primitives"]:
            if primitive["mode"] != 4:
                continue
            paint = scene["materials"][primitive["material"]]["extras"]["light"]
            out.add(tuple(round(int(paint[k:k + 2], 16) * 0.65 + 255 * 0.35) for k in (1, 3, 5)))
    return [list(colour) for colour in sorted(out)]


class Test:
    def __init__(self, program, source, work):
        self.program, self.source, self.work = program, source, work
        self.build = source / "models/builds/thin-desktop.build.toml"
        self.skipped = []
        try:
            self.modules = modules(source, work)
        except CannotBeHad as reason:
            self.modules = None
            self.skipped.append(f"axe-core, html-validate and gltf-validator: {reason}")
        self.page = self.report("page.html", "--drive", TALL)
        self.text = self.page.read_text(encoding="utf-8")
        self.colours = cap_colours(scene_of(glbs_of(self.text)[0]))
        self.seen = {}

    def report(self, name, *options, build=None):
        file = self.work / name
        done = subprocess.run([self.program, "report", str(build or self.build), *options, "-o", str(file)],
                              capture_output=True, text=True, check=False, timeout=120)
        demand(done.returncode in (0, 1), f"report ended with {done.returncode}: {done.stderr}")
        return file

    def node(self, check, **given):
        done = subprocess.run(["node", str(self.source / "tests/page/check.cjs"), str(self.modules), check],
                              input=json.dumps(given), capture_output=True, text=True, check=False, timeout=60)
        demand(done.returncode == 0, f"node ended with {done.returncode}: {done.stderr}")
        return json.loads(done.stdout)

    # --- in a browser ---

    def open(self, browser, page=None, **look):
        browser.open_blank()
        browser.look(**look)
        browser.open(page or self.page)
        browser.wait("return document.readyState === 'complete'")

    def open_model(self, browser, page=None, width=760, **look):
        self.open(browser, page, width=width, **look)
        browser.run("document.querySelector('figure.model').scrollIntoView()")
        browser.wait("return !document.querySelector('figure.model canvas').hidden")
        browser.wait_frames(3)

    def picture(self, browser):
        browser.wait_frames(2)
        return browser.picture("figure.model canvas")

    def count(self, browser, first, second=None, colours=()):
        return browser.run_later(COUNT, first, second, list(colours))

    def changes(self, browser, what, action, before=None):
        """The model's picture after the action, which has to differ by half a percent at least."""
        before = before or self.picture(browser)
        action()
        after = self.picture(browser)
        share = self.count(browser, after, before)["share"]
        demand(share >= 0.005, f"{what} changes {share:.2%} of the model's picture")
        return after

    def is_again(self, browser, first, what, allowed=0.0005):
        share = self.count(browser, self.picture(browser), first)["share"]
        demand(share < allowed, f"{what}: {share:.2%} differ from the first picture")

    def slide(self, browser, name, to):
        """By keyboard: to an end, then by half percents."""
        browser.run("document.querySelector(arguments[0]).focus()", f'[data-model="{name}"]')
        browser.keys(*(["Home"] + ["Right"] * (2 * to) if to <= 50 else ["End"] + ["Left"] * (2 * (100 - to))))
        demand(float(browser.value(name)) == to, f"{name} stands at {browser.value(name)}, not at {to}")

    # --- what is tried ---

    def the_model_is_turned_and_zoomed(self, browser):
        self.open_model(browser)
        first = self.picture(browser)
        browser.save(self.work / "light.png")
        demand(self.count(browser, first, colours=[[255, 255, 255]])["coloured"] > 1000, "no paper round the model")
        canvas = "figure.model canvas"
        at = first
        for what, kind, ways in (("dragging", "mouse", [((0, 0), (120, 60))]),
                                 ("a finger", "touch", [((0, 0), (90, 10))]),
                                 ("two fingers", "touch", [((-40, 0), (-120, 0)), ((40, 0), (120, 0))])):
            at = self.changes(browser, what, lambda kind=kind, ways=ways: browser.drag(canvas, *ways, kind=kind), at)
        browser.run("document.querySelector('figure.model canvas').focus()")
        for key in ("Left", "Up", "Shift+Right", "+", "-"):
            at = self.changes(browser, key, lambda key=key: browser.keys(key), at)
        for name in ("left", "right", "up", "down", "nearer", "farther"):
            at = self.changes(browser, name, lambda name=name: browser.click(f'[data-model="{name}"]'), at)
        browser.click('[data-model="reset"]')
        self.is_again(browser, first, "reset")
        # What a button turns, the hand turns back: half a turn is the height of the picture.
        by = round(browser.run("return document.querySelector('figure.model canvas').clientHeight") * 15 / 180)
        for name, back in (("left", (by, 0)), ("up", (0, by))):
            browser.click(f'[data-model="{name}"]')
            turned = self.count(browser, self.picture(browser), first)["share"]
            browser.drag(canvas, ((0, 0), back))
            self.is_again(browser, first, f"{name} and back", allowed=0.1 * turned)  # a hand has whole pixels

    def a_cut_is_filled(self, browser):
        self.open_model(browser)
        before = self.count(browser, self.picture(browser), colours=self.colours)["coloured"]
        cut = self.changes(browser, "cutting", lambda: self.slide(browser, "cut", 40))
        filled = self.count(browser, cut, colours=self.colours)["coloured"]
        demand(filled > before + 2000, f"{filled} pixels of a filled cut, {before} without one")
        for way in (1, 2):
            self.changes(browser, f"direction {way}", lambda way=way: browser.choose("direction", way))
        self.changes(browser, "the tight spot", lambda: browser.click('[data-model="why"]'))
        browser.save(self.work / "cut.png")
        demand(browser.value("cut") != "0", "the tight spot cuts nothing")

    def it_comes_apart_and_goes_in(self, browser):
        self.open_model(browser)
        whole = self.picture(browser)
        self.changes(browser, "taking apart", lambda: self.slide(browser, "apart", 100))
        browser.save(self.work / "apart.png")
        self.changes(browser, "putting in", lambda: self.slide(browser, "put-in", 20))
        demand(browser.value("apart") == "0", "apart and on its way at once")
        self.slide(browser, "put-in", 100)
        self.is_again(browser, whole, "all put in")
        play = '[data-model="play"]'
        word = browser.text(play)
        browser.click(play)
        demand(browser.text(play) != word, "play is still play")
        moments = browser.sampled("put-in", 1.0)
        demand(len(moments) > 5 and moments[-1] < 60, f"playing goes through {moments}")
        browser.click(play)
        demand(len(browser.sampled("put-in", 0.3)) == 1, "stopped, and still moving")
        # Who asked for less motion sees a few stills.
        self.open_model(browser, still=True)
        browser.click(play)
        moments = browser.sampled("put-in", 2.0)
        demand(moments and set(moments) <= {0, 25, 50, 75, 100}, f"with less motion it goes through {moments}")

    def nothing_runs_while_nothing_happens(self, browser):
        self.open_model(browser)
        drawn = browser.frames_asked_for(1.0)
        demand(drawn == 0, f"{drawn} frames were asked for in a second in which nothing happened")
        browser.run("document.querySelector('figure.model canvas').focus()")
        browser.run("window.asked = 0")
        browser.keys("Left")
        time.sleep(0.2)
        demand(browser.run("return window.asked") > 0, "the count of frames does not count")

    def every_control_is_reached_and_shows_it(self, browser):
        self.open_model(browser)
        browser.run("window.scrollTo(0, 0)")
        unseen = []
        for _ in range(300):
            browser.keys("Tab")
            at = browser.run(FOCUSED)
            if at is None:  # past the end: where Tab begins on a page that was just opened and scrolled is not told
                continue
            if at["again"]:
                break
            if not at["shown"]:
                unseen.append(at["what"])
        none_of(unseen, "has the focus, and does not show it")
        none_of(browser.run(TO_BE_REACHED), "is not reached by Tab")
        demand(browser.run("return window.seenFocus.size") >= 14, "hardly anything was reached")

    def it_is_quiet_and_whole(self, browser):
        browser.errors(), browser.requests()
        self.open_model(browser)
        for name in ("left", "why", "reset"):
            browser.click(f'[data-model="{name}"]')
        self.slide(browser, "apart", 100)
        browser.wait_frames(3)
        none_of(browser.errors(), "errors on the console")
        asked = browser.requests()
        demand(any(each.startswith("file:") for each in asked), "the page itself was not asked for")
        none_of([each for each in asked if not each.startswith(("file:", "data:", "blob:", "about:"))], "asked for")

    def it_suits_every_screen(self, browser):
        for name, look in (("dark", {"dark": True}), ("phone", {"width": 390, "height": 844, "scale": 2})):
            self.open_model(browser, **look)
            browser.save(self.work / f"{name}.png")
            wide = browser.run("return document.scrollingElement.scrollWidth - document.documentElement.clientWidth")
            demand(wide <= 0, f"{name}: {wide} pixels too wide")
            pixels = browser.run("return document.querySelector('figure.model canvas').width / "
                                 "document.querySelector('figure.model canvas').clientWidth")
            demand(abs(pixels - look.get("scale", 1)) < 0.02,
                   f"{name}: {pixels} of the model's pixels for one of the page")
        light, dark = [], []
        for into, is_dark in ((light, False), (dark, True)):
            self.open_model(browser, dark=is_dark)
            into.append(self.picture(browser))
        demand(self.count(browser, light[0], dark[0])["share"] > 0.9, "the model is the same in the dark")

    def nobody_is_kept_out(self, browser):
        axe = (self.modules / "axe-core/axe.min.js").read_text(encoding="utf-8")
        german = self.report("german.html", "--drive", TALL, "--language", "de")
        found = []
        for page, look in ((self.page, {"width": 1200}), (self.page, {"dark": True}),
                           (self.page, {"width": 390, "height": 844}), (german, {})):
            self.open_model(browser, page, **look)
            browser.run(axe)
            found += [f"{page.name}, {look}: {each}" for each in browser.run_later(AXE)]
        none_of(found, "axe-core")

    def what_a_user_wrote_stays_text(self, browser):
        build = self.work / "hostile.build.toml"
        text = self.build.read_text(encoding="utf-8")
        build.write_text(re.sub(r"(?m)^title\s*=.*$", lambda _: "title = " + json.dumps(HOSTILE, ensure_ascii=False),
                                text, count=1), encoding="utf-8")
        page = self.report("hostile.html", build=build)
        self.open_model(browser, page)
        demand(browser.alert() is None, f"the page says {browser.alert()!r}")
        title = browser.run("return document.title")
        demand(re.sub("[\u2066-\u2069]", "", title).find(HOSTILE.strip()) >= 0, f"the title is {title!r}")
        scripts = browser.run("return [...document.querySelectorAll('script')].map((each) => each.type)")
        demand(sorted(scripts) == ["", "model/gltf-binary"], f"scripts of the page: {scripts}")
        demand(browser.run("return document.querySelectorAll('[onerror], img[src=x]').length") == 0, "it became an element")
        none_of(browser.errors(), "errors on the console")
        if self.modules:
            text = page.read_text(encoding="utf-8")
            none_of(self.node("html", text=text), "html-validate, hostile")
            none_of(self.node("glb", glbs={"hostile": glbs_of(text)[0]}), "gltf-validator")

    def without_webgl_a_picture_stays(self, browser):
        browser.errors()
        self.open(browser)
        browser.run("document.querySelector('figure.model').scrollIntoView()")
        time.sleep(0.5)
        shown = browser.run("""return ["img", "canvas", ".model-controls"].map((each) =>
            document.querySelector("figure.model " + each).checkVisibility())""")
        demand(shown == [True, False, False], f"picture, model and controls are shown: {shown}")
        demand(browser.run("const at = document.querySelector('figure.model img');"
                           "return at.complete && at.naturalWidth > 100 && at.alt.length > 10"),
               "no picture, or no words")
        none_of(browser.errors(), "errors on the console")
        # And so it is before any script ran.
        demand(re.search(r"<canvas[^>]*\shidden", self.text) and
               re.search(r'class="model-controls"[^>]*\shidden', self.text), "hidden by script only")

    def pages_are_valid(self):
        for page in sorted(self.work.glob("*.html")):
            none_of(self.node("html", text=page.read_text(encoding="utf-8")), f"html-validate, {page.name}")

    def models_are_valid(self):
        builds = sorted((self.source / "models/builds").glob("*.build.toml"))
        demand(len(builds) >= 10, f"only {len(builds)} demo builds")
        with concurrent.futures.ThreadPoolExecutor() as pool:
            pages = pool.map(lambda build: self.report(f"each/{build.stem}.html", build=build), builds)
            glbs = {f"{page.name} {i}": glb for page in pages
                    for i, glb in enumerate(glbs_of(page.read_text(encoding="utf-8")))}
        demand(len(glbs) >= len(builds), f"{len(glbs)} models of {len(builds)} builds")
        none_of(self.node("glb", glbs=glbs), "gltf-validator")

    # --- that these can fail ---

    def a_bad_page_is_seen(self, browser):
        page = self.work / "bad.htm"
        page.write_text(BAD_PAGE, encoding="utf-8")
        browser.errors(), browser.requests()
        self.open(browser, page)
        errors = " ".join(browser.errors())
        demand("said" in errors and "thrown" in errors, f"the console's errors were not seen: {errors}")
        demand(any("127.0.0.1:9" in each for each in browser.requests()), "what it asked for was not seen")
        demand(browser.run("document.querySelector('button').style.outline = 'none';"
                           "document.querySelector('button').focus();" + FOCUSED)["shown"] is False, "focus is seen")
        if not self.modules:
            return
        browser.run((self.modules / "axe-core/axe.min.js").read_text(encoding="utf-8"))
        found = " ".join(browser.run_later(AXE))
        for rule in ("image-alt", "button-name", "color-contrast", "html-has-lang", "document-title"):
            demand(rule in found, f"axe-core did not see {rule}: {found}")

    def bad_files_are_seen(self):
        found = " ".join(self.node("html", text=BAD_PAGE))
        for rule in ("no-dup-id", "close-order", "wcag/h37", "element-required-attributes", "empty-title"):
            demand(rule in found, f"html-validate did not see {rule}: {found}")
        content = bytearray(base64.b64decode(glbs_of(self.text)[0]))
        length = struct.unpack_from("<I", content, 12)[0]
        struct.pack_into("<f", content, 28 + length, 1e9)  # the first corner of the first mesh
        spoilt = base64.b64encode(content).decode()
        demand(self.node("glb", glbs={"spoilt": spoilt}), "gltf-validator passed bounds that are wrong")

    # --- all of it ---

    def run(self):
        drawn = [self.the_model_is_turned_and_zoomed, self.a_cut_is_filled, self.it_comes_apart_and_goes_in,
                 self.nothing_runs_while_nothing_happens, self.every_control_is_reached_and_shows_it,
                 self.it_is_quiet_and_whole, self.it_suits_every_screen, self.what_a_user_wrote_stays_text,
                 self.a_bad_page_is_seen]
        if self.modules:
            drawn.append(self.nobody_is_kept_out)
        failed = 0
        for flags, steps in ((SOFTWARE, drawn), (WITHOUT_3D, [self.without_webgl_a_picture_stays])):
            with Browser(*flags) as browser:
                for step in steps:
                    failed += tried(step, browser)
        if self.modules:
            for step in (self.pages_are_valid, self.models_are_valid, self.bad_files_are_seen):
                failed += tried(step)
        for reason in self.skipped:
            print(f"SKIPPED: {reason}")
        return 1 if failed else SKIPPED if self.skipped else 0


def tried(step, *arguments):
    """1 if it failed."""
    name = step.__name__.replace("_", " ")
    begun = time.monotonic()
    try:
        step(*arguments)
    except Failed as fault:
        print(f"FAILED: {name}: {fault}", flush=True)
        return 1
    print(f"passed: {name} ({time.monotonic() - begun:.1f} s)", flush=True)
    return 0


def main():
    if len(sys.argv) != 4:
        sys.exit(__doc__)
    if MISSING:
        print(f"SKIPPED: there is no {', no '.join(MISSING)} here; apt-get install chromium chromium-driver nodejs")
        return SKIPPED
    source, work = (pathlib.Path(each).resolve() for each in sys.argv[2:])
    (work / "each").mkdir(parents=True, exist_ok=True)
    for old in work.glob("*.html"):
        old.unlink()
    try:
        with Browser(*SOFTWARE) as browser:
            browser.open_blank()
    except (Failed, OSError) as fault:  # of the machine, not of the page
        print(f"SKIPPED: chromium does not start here: {fault}")
        return SKIPPED
    try:
        return Test(sys.argv[1], source, work).run()
    except Failed as fault:
        print(f"FAILED: {fault}")
        return 1


if __name__ == "__main__":
    sys.exit(main())
