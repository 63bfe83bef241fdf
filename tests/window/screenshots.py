#!/usr/bin/env python3
"""Pictures of the window as it is, for people to look at.

    screenshots.py PROGRAM BUILD FOLDER [KEYS...]

Light and dark, small and large, at scales 1, 1.5, 2 and 3. KEYS are pressed before (xdotool's names: t, F11, ctrl+o).
"""
import json
import pathlib
import sys
import tempfile

from screen import MISSING, Screen, Viewer

SHOTS = [(900, 600, 1.0, False), (1280, 800, 1.0, False), (1280, 800, 1.0, True), (1600, 1000, 1.5, True),
         (1920, 1200, 2.0, False), (2700, 1800, 3.0, False)]


def main():
    if MISSING:
        print(f"{' and '.join(MISSING)} missing; install xvfb and xdotool")
        return 3
    program, build, folder = sys.argv[1], pathlib.Path(sys.argv[2]), pathlib.Path(sys.argv[3])
    folder.mkdir(parents=True, exist_ok=True)
    with Screen(2700, 1800) as screen:
        for width, height, scale, dark in SHOTS:
            with tempfile.TemporaryDirectory() as config:
                settings = pathlib.Path(config) / "baywright" / "settings.json"
                settings.parent.mkdir()
                settings.write_text(json.dumps({"scale": scale, "dark": dark, "motion": False}), encoding="utf-8")
                with Viewer(program, screen, build, config, size=(width, height)) as viewer:
                    viewer.settle(seconds=120)
                    viewer.keys(*sys.argv[4:])
                    viewer.settle(seconds=120)
                    name = f"{build.name.removesuffix('.build.toml')}-{width}x{height}-{scale:g}{'-dark' if dark else ''}.png"
                    viewer.picture().save(folder / name)
                    print(folder / name)
    return 0


if __name__ == "__main__":
    sys.exit(main())
