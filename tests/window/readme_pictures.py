#!/usr/bin/env python3
"""The pictures of the README: each user's task in the window, start to end, and what the commands draw.

    readme_pictures.py PROGRAM SOURCE      writes SOURCE/models/pictures/*.png
"""
import pathlib
import shutil
import subprocess
import sys
import tempfile

from screen import MISSING, Failed, Screen, Viewer

SHELF = str(pathlib.Path(__file__).resolve().parents[2] / "models/shelf/old-laptop.csv")
TRAY_BAR = (101, 420)  # on the narrow bar of the stack, at 1280 x 800 and scale 1


def builder(open_viewer, keep):
    """Nine millimetres under a tray: as it opens; cut; the tray moved until all fits."""
    with open_viewer("thin-desktop") as viewer:
        viewer.wait_title("does not fit")
        viewer.settle()
        keep(viewer, "builder-1-opened")
        viewer.drag(*TRAY_BAR, 0, -70, steps=30)
        viewer.settle()
        if not viewer.title().startswith("fits"):
            raise Failed(f"the tray was moved, and the title is {viewer.title()!r}")
        viewer.keys("c")
        viewer.settle()
        keep(viewer, "builder-2-fits")


def modder(open_viewer, keep):
    """A drilled panel: the plan of its holes, with the table that the template has."""
    with open_viewer("panel", "--drive", "flat drive", "--place", "laser cut") as viewer:
        viewer.settle()
        keep(viewer, "modder-1-opened")
        viewer.keys("o")
        viewer.settle()
        keep(viewer, "modder-2-holes")
        viewer.keys("e")
        viewer.settle()
        keep(viewer, "modder-3-steps")


def adviser(open_viewer, keep):
    """A card for a customer: what goes where, the shortlist, then the calm screen."""
    with open_viewer("laptop") as viewer:
        viewer.settle()
        viewer.keys("d")
        viewer.settle()
        keep(viewer, "adviser-1-all-drives")
    with open_viewer("thin-desktop") as viewer:
        viewer.settle()
        viewer.keys("F11")
        viewer.settle()
        keep(viewer, "adviser-2-customer")
    with open_viewer("old-laptop", "--shortlist", SHELF) as viewer:
        viewer.settle()
        keep(viewer, "adviser-3-shortlist")


def commands(program, source, out):
    builds = source / "models/builds"
    for arguments in (
            ["picture", builds / "thin-desktop.build.toml", "--section", "-o", out / "thin-desktop-section.png"],
            ["picture", builds / "mesh-heatsink.build.toml", "--drive", "card with pins", "--clearance-map", "pin heatsink", "-o",
             out / "clearance-map.png"],
            ["picture", builds / "thin-desktop.build.toml", "--apart", "--dark", "-o", out / "thin-desktop-apart.png"]):
        subprocess.run([program, *map(str, arguments)], check=True, stdout=subprocess.DEVNULL)


def page(program, source, out, top):
    """The top of the page for the customer whose laptop has a slot wired for SATA."""
    sys.path.insert(0, str(source / "tests/page"))
    import browser
    file = pathlib.Path(top) / "laptop.html"
    subprocess.run([program, "report", str(source / "models/builds/old-laptop.build.toml"), "--shortlist", SHELF, "--daily",
                    "30", "--now", "hdd", "-o", str(file)], check=True, stdout=subprocess.DEVNULL)
    with browser.Browser(*browser.SOFTWARE) as customer:
        customer.look(width=1200, height=1030)
        customer.open(file)
        customer.wait_frames(1)
        customer.save(out / "adviser-4-page.png")
        print(out / "adviser-4-page.png")


def main():
    if MISSING:
        print(f"{' and '.join(MISSING)} missing; install xvfb and xdotool")
        return 3
    program, source = sys.argv[1], pathlib.Path(sys.argv[2])
    out = source / "models/pictures"
    out.mkdir(exist_ok=True)
    with Screen(1280, 800) as screen, tempfile.TemporaryDirectory() as top:

        def open_viewer(name, *options):
            folder = pathlib.Path(tempfile.mkdtemp(dir=top))  # what one run leaves unsaved, the next would offer
            config = folder / "config"
            config.mkdir()
            file = folder / f"{name}.build.toml"
            shutil.copy(source / "models/builds" / file.name, file)
            return Viewer(program, screen, file, config, options=options)

        def keep(viewer, name):
            viewer.picture().save(out / f"{name}.png")
            print(out / f"{name}.png")

        for task in (builder, modder, adviser):
            task(open_viewer, keep)
        page(program, source, out, top)
    commands(program, source, out)
    return 0


if __name__ == "__main__":
    sys.exit(main())
