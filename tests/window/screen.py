"""A display of our own with the window on it, driven as a hand would: real key and mouse events, real pixels."""
import os
import pathlib
import shutil
import struct
import subprocess
import tempfile
import time
import zlib

SKIPPED = 77  # ctest: SKIP_RETURN_CODE
MISSING = [tool for tool in ("Xvfb", "xdotool") if shutil.which(tool) is None]


class Failed(Exception):
    pass


class Picture:
    """Rows from the top, three bytes a pixel."""

    def __init__(self, width, height, rows):
        self.width, self.height, self.rows = width, height, rows

    def part(self, x, y, width, height):
        return Picture(width, height, [row[3 * x:3 * (x + width)] for row in self.rows[y:y + height]])

    def share_that_differs(self, other):
        pairs = [(a, b) for mine, theirs in zip(self.rows, other.rows)
                 for a, b in zip(zip(*[iter(mine)] * 3), zip(*[iter(theirs)] * 3))]
        return sum(a != b for a, b in pairs) / max(len(pairs), 1)

    def save(self, path):
        def chunk(kind, data):
            return struct.pack(">I", len(data)) + kind + data + struct.pack(">I", zlib.crc32(kind + data))

        header = struct.pack(">IIBBBBB", self.width, self.height, 8, 2, 0, 0, 0)
        body = zlib.compress(b"".join(b"\0" + row for row in self.rows), 6)
        path.write_bytes(b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", header) + chunk(b"IDAT", body) + chunk(b"IEND", b""))


class Screen:
    """An Xvfb on the first free display. It keeps its picture in a file, so that no other program is needed to see it."""

    def __init__(self, width=1600, height=1000):
        self.folder = tempfile.TemporaryDirectory(prefix="baywright-screen-")
        read, write = os.pipe()
        self.server = subprocess.Popen(
            ["Xvfb", "-displayfd", str(write), "-screen", "0", f"{width}x{height}x24", "+extension", "GLX", "-nolisten",
             "tcp", "-fbdir", self.folder.name],
            pass_fds=[write], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        os.close(write)
        with os.fdopen(read) as pipe:
            self.name = ":" + pipe.readline().strip()
        if self.name == ":":
            raise Failed("Xvfb did not start")

    def __enter__(self):
        return self

    def __exit__(self, *_):
        self.server.terminate()
        self.server.wait()
        self.folder.cleanup()

    def picture(self, width, height):
        """The upper left part: where a window lies that nobody manages."""
        data = (pathlib.Path(self.folder.name) / "Xvfb_screen0").read_bytes()
        head = struct.unpack(">25I", data[:100])
        start, stride = head[0] + 12 * head[19], head[12]
        rows = []
        for y in range(min(height, head[5])):
            row = data[start + y * stride:start + y * stride + 4 * min(width, head[4])]
            colours = bytearray(3 * len(row) // 4)
            colours[0::3], colours[1::3], colours[2::3] = row[2::4], row[1::4], row[0::4]
            rows.append(bytes(colours))
        return Picture(min(width, head[4]), len(rows), rows)


class Viewer:
    """`baywright view` on a screen, with settings of its own."""

    def __init__(self, program, screen, file, config, size=(1280, 800), options=()):
        self.screen, self.size = screen, size
        self.environment = dict(os.environ, DISPLAY=screen.name, LIBGL_ALWAYS_SOFTWARE="1", XDG_CONFIG_HOME=str(config))
        self.trace_file = pathlib.Path(config) / "trace"
        self.started = time.monotonic()
        with open(self.trace_file, "wb") as trace:
            self.process = subprocess.Popen([program, "view", str(file), "--size", "%dx%d" % size, "--trace", *options],
                                            env=self.environment, stderr=trace, stdout=subprocess.DEVNULL)
        self.wait(lambda: self.frames() >= 1, "the first frame", 60)
        self.until_first_frame = time.monotonic() - self.started
        self.window = self.find()
        self.xdotool("windowfocus", self.window)

    def __enter__(self):
        return self

    def __exit__(self, *_):
        if self.process.poll() is None:
            self.process.kill()
            self.process.wait()

    def find(self):
        found = []

        def look():
            found[:] = subprocess.run(["xdotool", "search", "--class", "baywright"], env=self.environment,
                                      capture_output=True, text=True, check=False).stdout.split()
            return bool(found)

        self.wait(look, "the window")
        return found[-1]

    def xdotool(self, *arguments):
        done = subprocess.run(["xdotool", *map(str, arguments)], env=self.environment, capture_output=True, text=True,
                              check=False)
        if done.returncode != 0:
            raise Failed(f"xdotool {arguments}: {done.stderr}")

    def trace(self):
        return [line for line in self.trace_file.read_text(encoding="utf-8").splitlines() if line.startswith("frame ")]

    def frames(self):
        return len(self.trace())

    def title(self):
        lines = self.trace()
        return lines[-1].split(": ", 1)[1] if lines else ""

    def wait(self, ready, what, seconds=30):
        end = time.monotonic() + seconds
        while not ready():
            if self.process.poll() is not None:
                raise Failed(f"the window was gone with status {self.process.returncode} while waiting for {what}: "
                             + self.trace_file.read_text(encoding="utf-8")[-2000:])
            if time.monotonic() > end:
                raise Failed(f"no {what} within {seconds} s; the title is {self.title()!r}")
            time.sleep(0.05)

    def wait_title(self, start, seconds=30):
        self.wait(lambda: self.title().startswith(start), f"title that starts with {start!r}", seconds)

    def working(self):
        lines = self.trace()
        return not lines or ", working:" in lines[-1]

    def settle(self, quiet=1.5, seconds=60):
        """Until the background is done and nothing has been drawn for a while: nothing moves."""
        last, since = self.frames(), time.monotonic()
        end = since + seconds
        while time.monotonic() - since < quiet:
            if time.monotonic() > end:
                raise Failed(f"still drawing after {seconds} s")
            time.sleep(0.05)
            if self.frames() != last or self.working():
                last, since = self.frames(), time.monotonic()

    def keys(self, *keys):
        for key in keys:
            self.xdotool("key", "--clearmodifiers", key)
            time.sleep(0.15)

    def drag(self, x, y, dx, dy, steps=12, button=1):
        self.xdotool("mousemove", x, y)
        time.sleep(0.2)
        self.xdotool("mousedown", button)
        for i in range(1, steps + 1):
            self.xdotool("mousemove", x + dx * i // steps, y + dy * i // steps)
            time.sleep(0.03)
        self.xdotool("mouseup", button)

    def picture(self):
        return self.screen.picture(*self.size)
