#!/usr/bin/env python3
"""The window as its user meets it, on a display of its own.

    window_test.py PROGRAM SOURCE PICTURES      pictures of what was seen are left in PICTURES

Exit status 0 passed, 1 failed, 77 skipped because Xvfb or xdotool is missing.
"""
import json
import os
import pathlib
import shutil
import subprocess
import sys
import tempfile
import time

from screen import MISSING, SKIPPED, Failed, Screen, Viewer

TALL = "card with tall fins"
TRAY_BAR = (101, 420)  # on the narrow bar of the stack, at 1280 x 800 and scale 1


def demand(held, what):
    if not held:
        raise Failed(what)


class Test:
    def __init__(self, program, source, pictures, screen, folder):
        self.program, self.source, self.pictures, self.screen = program, source, pictures, screen
        self.folder = folder
        self.config = folder / "config"
        self.config.mkdir()
        self.file = folder / "thin-desktop.build.toml"
        shutil.copy(source / "models/builds/thin-desktop.build.toml", self.file)

    def open(self, file=None, **options):
        return Viewer(self.program, self.screen, file or self.file, self.config, **options)

    def keep(self, viewer, name):
        picture = viewer.picture()
        picture.save(self.pictures / (name + ".png"))
        return picture

    def verdict(self):
        done = subprocess.run([self.program, "check", str(self.file), "--json"], capture_output=True, text=True,
                              check=False)
        seatings = json.loads(done.stdout)["seatings"]
        return next(seating["verdict"] for seating in seatings if seating["drive"] == TALL)

    # --- what is tried ---

    def every_demo_opens_with_its_answer(self):
        builds = sorted((self.source / "models/builds").glob("*.build.toml"))
        demand(len(builds) >= 10, f"only {len(builds)} demo builds")
        for build in builds:
            with self.open(build) as viewer:
                words = ("fits", "marginal", "does not fit", "undecided")
                demand(viewer.title().startswith(words), f"{build.name}: no answer in {viewer.title()!r}")
                print(f"{build.name}: first frame after {viewer.until_first_frame:.2f} s")
                viewer.settle(seconds=120)
                self.keep(viewer, build.name.removesuffix(".build.toml"))
                viewer.keys("ctrl+q")
                demand(viewer.process.wait(20) == 0, f"{build.name}: exit status {viewer.process.returncode}")

    def a_band_is_dragged_undone_saved_and_opened_again(self):
        with self.open() as viewer:
            viewer.wait_title("does not fit")
            viewer.settle()
            before = self.keep(viewer, "as it is")

            viewer.drag(800, 300, 120, 40)  # turns the scene, and nothing else
            viewer.settle()
            turned = self.keep(viewer, "turned")
            scene = (340, 130, 900, 480)
            demand(before.part(*scene).share_that_differs(turned.part(*scene)) > 0.02, "the scene did not turn")
            column = (0, 90, 320, 540)
            demand(before.part(*column).share_that_differs(turned.part(*column)) == 0.0, "turning changed the column")

            frames = viewer.frames()
            viewer.drag(*TRAY_BAR, 0, -90, steps=20)
            viewer.wait_title("fits")
            demand(viewer.frames() - frames >= 10, "the drag was not followed")
            viewer.settle()
            self.keep(viewer, "tray farther off")
            demand("*" in viewer.title(), "the title does not say that something is unsaved")
            demand(self.verdict() == "does not fit", "the file was written without being asked")

            viewer.keys("ctrl+z")
            viewer.wait_title("does not fit")
            viewer.keys("ctrl+y")
            viewer.wait_title("fits")
            viewer.keys("ctrl+s")
            viewer.wait(lambda: "*" not in viewer.title(), "saving")
            demand(self.verdict() == "fits", "check says otherwise than the window")
            text = self.file.read_text(encoding="utf-8")
            original = (self.source / "models/builds/thin-desktop.build.toml").read_text(encoding="utf-8")
            changed = [pair for pair in zip(text.splitlines(), original.splitlines()) if pair[0] != pair[1]]
            demand(len(changed) == 1 and "by = " in changed[0][0], f"more than the tray changed in the file: {changed}")
            viewer.keys("ctrl+q")
            demand(viewer.process.wait(20) == 0, "closing failed")
        with self.open(options=("--drive", TALL)) as viewer:
            viewer.wait_title("fits")
        shutil.copy(self.source / "models/builds/thin-desktop.build.toml", self.file)

    def idle_draws_nothing(self):
        with self.open() as viewer:
            viewer.settle(quiet=3.0)
            before = viewer.frames()
            time.sleep(5.0)
            demand(viewer.frames() == before, f"{viewer.frames() - before} frames drawn in five idle seconds")

    def a_window_of_no_size_survives(self):
        with self.open() as viewer:
            viewer.settle()
            for width, height in ((1, 1), (40, 700), (900, 600)):
                viewer.xdotool("windowsize", viewer.window, width, height)
                viewer.keys("w")
                time.sleep(0.5)
                demand(viewer.process.poll() is None, f"gone at {width} x {height}")
            viewer.xdotool("windowunmap", viewer.window)
            time.sleep(1.0)
            viewer.xdotool("windowmap", viewer.window)
            viewer.xdotool("windowsize", viewer.window, 1280, 800)
            viewer.xdotool("windowfocus", viewer.window)
            viewer.settle()
            before = viewer.frames()
            viewer.keys("t")
            viewer.wait(lambda: viewer.frames() > before, "a frame after the window came back")
            self.keep(viewer, "came back")

    def a_file_changed_on_disk_is_read_again_and_the_view_stays(self):
        with self.open() as viewer:
            viewer.settle()
            viewer.drag(800, 300, 120, 40)
            viewer.xdotool("mousemove", 1270, 20)
            viewer.settle()
            before = viewer.picture()
            text = self.file.read_text(encoding="utf-8")
            self.file.write_text(text.replace("clearance     = 0.5 ", "clearance     = 0.4 "), encoding="utf-8")
            viewer.wait(lambda: "0.40 asked" in viewer.title(), "the new answer")
            time.sleep(7.0)  # the notice goes
            viewer.settle()
            after = self.keep(viewer, "read again")
            scene = (340, 130, 300, 480)
            demand(before.part(*scene).share_that_differs(after.part(*scene)) < 0.02, "the view did not stay")
        shutil.copy(self.source / "models/builds/thin-desktop.build.toml", self.file)

    def what_is_unsaved_is_asked_about(self):
        with self.open() as viewer:
            viewer.settle()
            viewer.drag(*TRAY_BAR, 0, -90)
            viewer.wait_title("fits")
            viewer.keys("ctrl+q")
            viewer.settle()
            self.keep(viewer, "save the changes")
            viewer.keys("Escape")
            time.sleep(0.5)
            demand(viewer.process.poll() is None, "Escape closed the window")
            viewer.keys("ctrl+q", "Tab", "Return")  # the second answer: Discard
            demand(viewer.process.wait(20) == 0, "Discard did not close the window")
        demand(self.verdict() == "does not fit", "Discard wrote the file")
        left = sorted(os.listdir(self.folder))
        demand(left == ["config", self.file.name], f"left behind: {left}")  # no recovery copy of what was discarded

    def pages_open_and_escape_leaves_them(self):
        with self.open() as viewer:
            viewer.settle()
            plain = viewer.picture()
            for key, name in (("F1", "keys"), ("d", "drives and places"), ("l", "findings"), ("ctrl+o", "open"),
                              ("e", "steps of what does not fit"), ("F11", "for a customer")):
                viewer.keys(key)
                # Looked for until it is there: how long a frame takes is the machine's affair.
                viewer.wait(lambda: viewer.picture().share_that_differs(plain) > 0.02, f"{name} on the screen")
                viewer.settle()
                self.keep(viewer, name)
                viewer.keys("Escape")
                viewer.wait(lambda: viewer.picture().share_that_differs(plain) < 0.002, f"way out of {name} by Escape")

    def the_wheel_comes_nearer(self):
        with self.open() as viewer:
            viewer.settle()
            viewer.xdotool("mousemove", 800, 300)
            viewer.settle()
            before = viewer.picture().part(340, 130, 900, 480)
            for _ in range(4):
                viewer.xdotool("click", 4)
            viewer.settle()
            near = self.keep(viewer, "nearer").part(340, 130, 900, 480)
            demand(near.share_that_differs(before) > 0.02, "the wheel did not zoom")

    def put_in_plays_and_the_scrubber_goes_by_arrows(self):
        with self.open() as viewer:
            viewer.settle()
            frames = viewer.frames()
            viewer.keys("p")
            viewer.wait(lambda: viewer.frames() >= frames + 6, "frames of the motion")
            viewer.settle()
            viewer.keys("F11")
            viewer.settle()
            seated = viewer.picture()
            scene = (0, 200, 1280, 500)
            viewer.keys("Tab", "Tab", "Tab")
            for _ in range(6):  # until the scrubber is stood on
                viewer.keys("Left", "Left", "Left", "Left")
                viewer.settle()
                if viewer.picture().part(560, 740, 700, 60).share_that_differs(seated.part(560, 740, 700, 60)) > 0.02:
                    break
                viewer.keys("Tab")
            moved = self.keep(viewer, "put in by arrows")
            demand(moved.part(*scene).share_that_differs(seated.part(*scene)) > 0.005, "the drive did not move")

    def a_plan_is_clicked_and_taken_back(self):
        with self.open() as viewer:
            viewer.settle(seconds=120)
            viewer.wait_title("does not fit")
            viewer.xdotool("mousemove", 150, 735)
            viewer.settle()
            viewer.xdotool("click", 1)
            viewer.wait_title("fits")
            demand("*" in viewer.title(), "the change is not there to be saved")
            viewer.settle()
            self.keep(viewer, "plan applied")
            viewer.keys("ctrl+z")
            viewer.wait_title("does not fit")
            demand("*" not in viewer.title(), "undo left something")

    def a_length_is_typed_into_the_stack(self):
        with self.open() as viewer:
            viewer.settle()
            viewer.xdotool("mousemove", *TRAY_BAR)
            viewer.settle()
            for _ in range(2):  # as a hand clicks: the button is down for a while
                viewer.xdotool("mousedown", 1)
                time.sleep(0.1)
                viewer.xdotool("mouseup", 1)
                time.sleep(0.08)
            time.sleep(0.5)
            self.keep(viewer, "field")
            viewer.keys("1", "2", "Return")  # what stood there is marked, and goes
            viewer.wait_title("fits")
            viewer.settle()
            self.keep(viewer, "length typed")

    def what_a_crash_left_is_offered(self):
        with self.open() as viewer:
            viewer.settle()
            viewer.drag(*TRAY_BAR, 0, -90)
            viewer.wait_title("fits")
            viewer.wait(lambda: len(os.listdir(self.folder)) > 2, "the copy of what is unsaved")
            viewer.process.kill()  # as a crash or a power cut would
            viewer.process.wait()
        settings = json.loads((self.config / "baywright/settings.json").read_text(encoding="utf-8"))
        demand(settings["recent"] == [str(self.file)], f"the settings were not kept: {settings}")
        demand(self.verdict() == "does not fit", "the crash wrote the build itself")
        with self.open() as viewer:
            viewer.wait_title("does not fit")
            viewer.settle()
            self.keep(viewer, "recovery offered")
            viewer.keys("Return")  # the first answer takes it
            viewer.wait_title("fits")
            demand("*" in viewer.title(), "what was recovered counts as saved")

    def the_grid_is_gone_through_by_arrows(self):
        laptop = self.folder / "laptop.build.toml"
        shutil.copy(self.source / "models/builds/laptop.build.toml", laptop)
        with self.open(laptop, options=("--drive", "fast long card", "--place", "main slot")) as viewer:
            viewer.wait_title("fits")
            viewer.settle(seconds=120)
            viewer.keys("d")
            viewer.settle()
            self.keep(viewer, "grid")
            viewer.keys("Right", "Return")  # no Tab: the keyboard stands on what is shown
            viewer.wait_title("does not fit")
            demand("fast long card in small slot" in viewer.title(), viewer.title())
            viewer.settle(seconds=120)
            self.keep(viewer, "refused as glass")
            viewer.keys("d")
            viewer.settle()
            viewer.keys("Down", "Down", "Down", "Return")
            viewer.wait(lambda: "short SATA card in small slot" in viewer.title(), "the fourth drive")

    def the_steps_are_read_and_scrolled(self):
        panel = self.folder / "panel.build.toml"
        shutil.copy(self.source / "models/builds/panel.build.toml", panel)
        with self.open(panel, options=("--drive", "flat drive", "--place", "laser cut")) as viewer:
            viewer.wait_title("fits")
            viewer.settle(seconds=120)
            viewer.keys("e")
            viewer.settle()
            top = self.keep(viewer, "steps")
            viewer.keys("Next")
            viewer.settle()
            below = self.keep(viewer, "steps below")
            demand(below.share_that_differs(top) > 0.02, "the page did not scroll")
            viewer.keys("Home")
            viewer.settle()
            demand(viewer.picture().share_that_differs(top) < 0.002, "Home did not lead back to the top")
            viewer.keys("Escape")
            viewer.settle()
            demand(viewer.picture().share_that_differs(top) > 0.02, "Escape left the page open")

    def a_drive_of_the_shortlist_is_sorted_seated_and_taken_back(self):
        laptop = self.folder / "old-laptop.build.toml"
        shutil.copy(self.source / "models/builds/old-laptop.build.toml", laptop)
        shelf = self.source / "models/shelf/old-laptop.csv"
        with self.open(laptop, options=("--shortlist", str(shelf))) as viewer:
            viewer.wait_title("does not fit")
            viewer.settle(seconds=180)
            by_gigabyte = self.keep(viewer, "shortlist")
            viewer.keys("Right")  # the next column: what a GB costs, then the capacity
            viewer.settle()
            by_capacity = self.keep(viewer, "shortlist by capacity")
            demand(by_capacity.share_that_differs(by_gigabyte) > 0.001, "the list was not sorted anew")
            viewer.keys("Left")
            viewer.settle()
            demand(viewer.picture().share_that_differs(by_gigabyte) < 0.002, "the first order did not come back")
            viewer.keys("Return")  # the keyboard stands on the drive to take
            viewer.wait_title("fits")
            demand("Plain SATA card 2 TB in M.2 slot" in viewer.title(), viewer.title())
            demand("*" in viewer.title(), "the drive is not there to be saved")
            viewer.settle(seconds=180)
            self.keep(viewer, "drive of the shortlist")
            viewer.keys("F11")
            viewer.settle()
            self.keep(viewer, "shortlist for a customer")
            viewer.keys("Escape", "ctrl+z")
            viewer.wait_title("does not fit")
            demand("*" not in viewer.title(), "undo left something")

    def three_measurements_stand_and_are_cleared(self):
        with self.open() as viewer:
            viewer.settle()
            viewer.keys("r")
            viewer.xdotool("mousemove", 1270, 20)  # off the scene, where what lies under it would be outlined
            viewer.settle()
            seen = [viewer.picture()]
            for first, second in (((640, 300), (1100, 300)), ((520, 330), (900, 300)), ((700, 340), (480, 340))):
                for x, y in (first, second):
                    viewer.xdotool("mousemove", x, y)
                    viewer.settle(quiet=0.5)
                    viewer.xdotool("click", 1)
                viewer.xdotool("mousemove", 1270, 20)
                viewer.settle()
                seen.append(viewer.picture())
                demand(seen[-1].share_that_differs(seen[-2]) > 0.0005, f"measurement {len(seen) - 1} is not shown")
            self.keep(viewer, "three measurements")
            for before in reversed(seen[:-1]):
                viewer.keys("Delete")
                viewer.settle()
                demand(viewer.picture().share_that_differs(before) < 0.0005, "Delete did not take the newest back")

    def a_bad_shortlist_is_said_on_the_terminal(self):
        bad = self.folder / "config" / "bad.csv"
        bad.write_text("name,price\none,dear\n", encoding="utf-8")
        done = subprocess.run([self.program, "view", str(self.file), "--shortlist", str(bad)], capture_output=True,
                              text=True, timeout=60, check=False)
        demand(done.returncode == 2 and "bad.csv:2:" in done.stderr, f"{done.returncode}: {done.stderr}")

    def without_a_display_it_says_what_works(self):
        environment = {name: value for name, value in os.environ.items() if name not in ("DISPLAY", "WAYLAND_DISPLAY")}
        done = subprocess.run([self.program, "view", str(self.file)], env=environment, capture_output=True, text=True,
                              timeout=60, check=False)
        demand(done.returncode == 3, f"exit status {done.returncode}")
        demand("display" in done.stderr and "picture" in done.stderr and "draw" in done.stderr, done.stderr)
        demand(done.stderr.count("\n") == 1, "more than one line: " + done.stderr)

    def a_bad_file_is_said_on_the_terminal(self):
        bad = self.folder / "config" / "bad.build.toml"
        bad.write_text("title = 5\n", encoding="utf-8")
        done = subprocess.run([self.program, "view", str(bad)], capture_output=True, text=True, timeout=60, check=False)
        demand(done.returncode == 2 and "bad.build.toml:1:" in done.stderr, f"{done.returncode}: {done.stderr}")


def main():
    if MISSING:
        print(f"SKIPPED: {' and '.join(MISSING)} missing; install xvfb and xdotool to test the window")
        return SKIPPED
    program, source, pictures = sys.argv[1], pathlib.Path(sys.argv[2]), pathlib.Path(sys.argv[3])
    pictures.mkdir(parents=True, exist_ok=True)
    only = sys.argv[4:]
    names = [name for name, value in vars(Test).items() if callable(value) and name.count("_") >= 2 and
             not name.startswith("_")]
    failed = 0
    with Screen() as screen:
        for name in names:
            if only and name not in only:
                continue
            with tempfile.TemporaryDirectory(prefix="baywright-window-") as folder:
                try:
                    getattr(Test(program, source, pictures, screen, pathlib.Path(folder)), name)()
                    print("passed:", name.replace("_", " "))
                except (Failed, subprocess.TimeoutExpired) as fault:
                    failed += 1
                    print("FAILED:", name.replace("_", " ") + ":", fault)
            sys.stdout.flush()
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main())
