#!/usr/bin/env python3
"""Compares our published rows with open data that others drew.

    open_data.py kicad PRINT_ROWS CACHE          Debian package kicad-footprints 6.0.11-1
    open_data.py footprinter PRINT_ROWS CACHE    npm package @tscircuit/footprinter 0.0.450

PRINT_ROWS is the program that prints our rows. The package is fetched into the folder CACHE, once. Exit status 0: all
agree; 1: something does not, each with a line; 77: the data cannot be had here, with the reason.

What is wrong or odd in their data is not passed over: it is named and held to what it is, so that a correction there is
noticed here.
"""
import contextlib
import json
import os
import pathlib
import re
import shutil
import signal
import subprocess
import sys
import tarfile
import tempfile

SKIPPED = 77
SECONDS = 60  # of each fetch and each program
CLOSE = 1e-6  # mm: they write six decimals


class CannotBeHad(Exception):
    pass


def run(command, folder=None):
    """The output of a program. It and all that it starts are ended after SECONDS; output goes through a file, since a
    pipe that a left-over child holds open would never end."""
    name = pathlib.Path(command[0]).name
    if shutil.which(command[0]) is None:
        raise CannotBeHad(f"there is no {name} here")
    with tempfile.TemporaryFile() as out, tempfile.TemporaryFile() as err:
        program = subprocess.Popen(command, cwd=folder, stdin=subprocess.DEVNULL, stdout=out, stderr=err,
                                   start_new_session=True)
        try:
            status = program.wait(SECONDS)
        except subprocess.TimeoutExpired:
            with contextlib.suppress(ProcessLookupError):
                os.killpg(program.pid, signal.SIGKILL)
            program.wait()
            raise CannotBeHad(f"{name} took more than {SECONDS} s") from None
        out.seek(0)
        err.seek(0)
        if status != 0:
            said = [line for line in err.read().decode(errors="replace").splitlines() if line.strip()]
            raise CannotBeHad(f"{name} ended with {status}: {said[-1] if said else 'no message'}")
        return out.read()


def fetched(cache, pattern, command):
    """The one file of that pattern in the cache. Fetched beside it and moved, so that half a file is never taken."""
    cache.mkdir(parents=True, exist_ok=True)
    for there in cache.glob(pattern):
        return there
    with tempfile.TemporaryDirectory(dir=cache) as fresh:
        run(command, fresh)
        for got in pathlib.Path(fresh).glob(pattern):
            return got.rename(cache / got.name)
    raise CannotBeHad(f"{command[0]} brought no {pattern}")


class Rows:
    def __init__(self, program):
        self.rows = {}
        for line in run([program]).decode().splitlines():
            family, name, *figures = line.split("\t")
            self.rows.setdefault((family, name), []).append([float(figure) for figure in figures])

    def nominal(self, family, name):
        found = self.rows.get((family, name), [])
        if len(found) != 1:
            raise SystemExit(f"our rows hold {len(found)} of {family}: {name}; rename the check with the row")
        return found[0][0]

    def names(self, family):
        return {name for (of, name) in self.rows if of == family}


class Checks:
    def __init__(self):
        self.done, self.named, self.wrong = 0, 0, 0

    def fault(self, words):
        self.wrong += 1
        print("DIFFERS:", words)

    def same(self, what, theirs, ours, allowed=CLOSE):
        self.done += 1
        if not abs(theirs - ours) <= allowed:
            self.fault(f"{what}: theirs {theirs:.6g}, ours {ours:.6g}")

    def true(self, what, holds):
        self.done += 1
        if not holds:
            self.fault(what)

    def odd(self, what, theirs, expected, allowed=CLOSE):
        """A known difference or error of theirs: still there?"""
        self.named += 1
        if isinstance(expected, str):
            gone = theirs != expected
        else:
            gone = not abs(theirs - expected) <= allowed
        if gone:
            self.fault(f"no longer so, look again: {what}: expected {expected}, found {theirs}")

    def result(self, least, least_named):
        print(f"{self.done} comparisons and {self.named} known oddities, {self.wrong} differ")
        if self.done < least or self.named < least_named:
            print(f"DIFFERS: at least {least} and {least_named} were to be looked at")
            return 1
        return 1 if self.wrong else 0


# Footprint files -----------------------------------------------------------------------------------------------------
TOKEN = re.compile(r'"((?:\\.|[^"\\])*)"|([()])|([^\s()"]+)')


def parsed(text):
    """Lists of strings and lists."""
    stack = [[]]
    for quoted, bracket, word in TOKEN.findall(text):
        if bracket == "(":
            stack.append([])
        elif bracket == ")":
            done = stack.pop()
            stack[-1].append(done)
        else:
            stack[-1].append(word or quoted)
    return stack[0][0]


class Footprint:
    def __init__(self, text):
        self.items = parsed(text)

    def all(self, kind):
        return [item for item in self.items if isinstance(item, list) and item[0] == kind]

    def lines(self, layer):
        """((x, y), (x, y)) of each line on the layer."""
        return [(numbers(line, "start"), numbers(line, "end")) for line in self.all("fp_line")
                if field(line, "layer") == [layer]]

    def circles(self, layer):
        """Radii of circles about the origin."""
        return [numbers(circle, "end")[0] for circle in self.all("fp_circle")
                if field(circle, "layer") == [layer] and numbers(circle, "center") == [0.0, 0.0]]

    def pads(self):
        """(name, (x, y), size, drill words)"""
        return [(pad[1], numbers(pad, "at"), numbers(pad, "size"), field(pad, "drill")) for pad in self.all("pad")]

    def descr(self):
        return self.all("descr")[0][1]


def field(item, name):
    for part in item:
        if isinstance(part, list) and part[0] == name:
            return part[1:]
    return []


def numbers(item, name):
    return [float(word) for word in field(item, name)]


def span(values):
    return min(values), max(values)


def footprints(package, folders):
    """{folder/file: text} of those folders."""
    with tempfile.TemporaryDirectory() as folder:
        archive = pathlib.Path(folder) / "data.tar"
        archive.write_bytes(run(["dpkg-deb", "--fsys-tarfile", str(package)]))
        with tarfile.open(archive) as members:
            return {"/".join(member.name.split("/")[-2:]): members.extractfile(member).read().decode()
                    for member in members if member.isfile() and member.name.split("/")[-2] in folders}


# Add-in cards --------------------------------------------------------------------------------------------------------
def edge_tongues(files, ours, checks):
    def card(name):
        return ours.nominal("add-in cards", name)

    positions = {1: 18, 4: 32, 8: 49, 16: 82}
    short_pad = {1: "B17", 4: "B31", 8: "B48", 16: "B81"}
    for lanes in (1, 4, 8, 16):
        which = f"edge x{lanes}"
        footprint = Footprint(files[f"Connector_PCBEdge.pretty/BUS_PCIexpress_x{lanes}.kicad_mod"])
        outline = footprint.lines("Edge.Cuts")
        xs = [x for line in outline for x, _ in line]
        contact_edge = max(y for line in outline for _, y in line)
        slot = [sorted(line) for line in outline if line[0][0] == line[1][0] and min(xs) < line[0][0] < max(xs)]
        left, right = sorted(line[0][0] for line in slot)
        key = (left + right) / 2
        arc = footprint.all("fp_arc")
        checks.same(f"{which}: key from the tongue's start", key - min(xs), card("key from the tongue's start"))
        checks.same(f"{which}: key to the tongue's end", max(xs) - key, card(f"key to the tongue's end, x{lanes}"))
        checks.same(f"{which}: first segment", left - min(xs), card("tongue start to the notch"))
        checks.same(f"{which}: notch width", right - left, card("key notch width"))
        checks.same(f"{which}: notch depth", contact_edge - numbers(arc[0], "mid")[1], card("key notch depth"))
        slanted = [(abs(a[0] - b[0]), abs(a[1] - b[1])) for a, b in outline if a[0] != b[0] and a[1] != b[1]]
        checks.true(f"{which}: four chamfers", len(slanted) == 4)
        for across, along in slanted:
            checks.same(f"{which}: chamfer", across, card("tongue corner chamfer"))
            checks.same(f"{which}: chamfer", along, card("tongue corner chamfer"))
        texts = [text[2] for text in footprint.all("fp_text")]
        said = [re.search(r"PCB Thickness ([\d.]+) mm", text) for text in texts]
        thick = float(next(found[1] for found in said if found))
        checks.same(f"{which}: board", thick, card("add-in card board thickness"))
        # The key takes the place of two contacts of the pitch of 1: those before and behind it stand 3 apart.
        pads = {name: (at, size) for name, at, size, _ in footprint.pads()}
        checks.true(f"{which}: {positions[lanes]} contacts a side",
                    sorted(pads) == sorted(f"{side}{n}" for side in "AB" for n in range(1, positions[lanes] + 1)))
        checks.same(f"{which}: key in the middle between contacts 11 and 12",
                    pads["A11"][0][0] / 2 + pads["A12"][0][0] / 2, key)
        checks.true(f"{which}: contacts on the tongue",
                    all(min(xs) < at[0] - size[0] / 2 and at[0] + size[0] / 2 < max(xs) for at, size in pads.values()))
        checks.true(f"{which}: short contacts are A1 and {short_pad[lanes]}",
                    {name for name, (_, size) in pads.items() if size[1] == 3.2} == {"A1", short_pad[lanes]})
        said = re.match(r"PCIexpress Bus Edge Connector (x\d+) ", footprint.descr())
        if lanes == 1:
            checks.true(f"{which}: description", said is not None and said[1] == "x1")
        else:
            checks.odd(f"{which}: its description says x1", said[1] if said else "nothing", "x1")
        # A real card goes on past the tongue; here all ends where the tongue does.
        checks.odd(f"{which}: the outline ends at the notch's top", min(y for line in outline for _, y in line), -4.95)


# Mini cards ----------------------------------------------------------------------------------------------------------
def mini_sockets(files, ours, checks):
    def card(name):
        return ours.nominal("mini cards", "mini card " + name)

    for which in ("Full", "Half"):
        size = which.lower()
        footprint = Footprint(files[f"Connector_PCBEdge.pretty/BUS_PCI_Express_Mini_{which}.kicad_mod"])
        pegs = sorted((at[0], at[1], float(drill[0])) for _, at, _, drill in footprint.pads() if drill)
        checks.true(f"mini {size}: two post holes on one line", len(pegs) == 2 and pegs[0][1] == pegs[1][1] == 0.0)
        checks.same(f"mini {size}: posts apart", pegs[1][0] - pegs[0][0], card("socket's post holes apart"))
        checks.same(f"mini {size}: large post", pegs[0][2], card("socket's large post hole, diameter"))
        checks.same(f"mini {size}: small post", pegs[1][2], card("socket's small post hole, diameter"))
        bare = [point for line in footprint.lines("Dwgs.User") for point in line if point[0] > 0]
        near_x, far_x = span([x for x, _ in bare])
        far_y, near_y = span([y for _, y in bare])
        # They measure from the line of the posts, and so do we: y = 0 is the contact edge of a seated card.
        checks.same(f"mini {size}: far end", -far_y, card(f"length, {size}"))
        checks.same(f"mini {size}: holes", -(far_y + near_y) / 2, card(f"holes from the contact edge, {size}"))
        checks.same(f"mini {size}: bare square across", far_x - near_x, card("bare square at a hole"))
        checks.same(f"mini {size}: bare square along", near_y - far_y, card("bare square at a hole"))
        checks.same(f"mini {size}: hole from the side", far_x - (near_x + far_x) / 2, card("hole from the side edge"))
        body = [x for line in footprint.lines("F.Fab") for x, _ in line]
        checks.same(f"mini {size}: width", max(body) - min(body), card("width"))
        contacts = {int(name): at for name, at, _, _ in footprint.pads() if name.isdigit()}
        checks.true(f"mini {size}: 52 contacts", sorted(contacts) == list(range(1, 53)))
        for pin in set(range(1, 51)) - {15, 16}:  # the notch lies between 15 and 17, 16 and 18
            checks.same(f"mini {size}: pitch at {pin}", contacts[pin + 2][0] - contacts[pin][0],
                        card("contact pitch of a side"))
        checks.same(f"mini {size}: sides", contacts[2][0] - contacts[1][0],
                    card("contacts of one side from those of the other"))
        notch = min(body) + card("notch from the near side edge")
        half = card("notch width") / 2
        checks.true(f"mini {size}: the notch lies between contacts 16 and 17",
                    contacts[16][0] < notch - half and notch + half < contacts[17][0])
    dual = Footprint(files["Connector_PCBEdge.pretty/BUS_PCI_Express_Mini_Dual.kicad_mod"])
    ends = sorted({point[1] for line in dual.lines("Dwgs.User") for point in line})
    checks.same("mini dual: far end, full", -ends[0], card("length, full"))
    checks.true("mini dual: far end, half", -card("length, half") in [round(end, 6) for end in ends])


# Serial connector ----------------------------------------------------------------------------------------------------
def serial_connector(files, ours, checks):
    names = [name for name in files if re.match(r"Connector_SATA_SAS\.pretty/SATA_.*_Horizontal\.kicad_mod", name)]
    checks.true("one serial connector", len(names) == 1)
    footprint = Footprint(files[names[0]])
    contacts = {name: at[0] for name, at, _, drill in footprint.pads() if re.fullmatch(r"[PS]\d+", name)}
    checks.true("serial connector: 7 and 15 contacts",
                sorted(contacts) == sorted([f"S{n}" for n in range(1, 8)] + [f"P{n}" for n in range(1, 16)]))
    for first, last in (("S1", 7), ("P1", 15)):
        for n in range(1, last):
            # No row of ours has the pitch: SFF-8482 and Serial ATA 3.0 give 1.27 (from memory).
            here, next_one = f"{first[0]}{n}", f"{first[0]}{n + 1}"
            checks.same(f"serial connector: pitch at {here}", contacts[here] - contacts[next_one], 1.27)
    tongue = ours.nominal("drives", "2.5-inch drive, connector tongue's length")
    width = 0.65  # of a contact pad
    reach = contacts["S1"] - contacts["P15"] + width
    checks.true(f"serial connector: its contacts, {reach:.3f}, have room on our tongue, {tongue}", reach < tongue)
    checks.true("serial connector: contacts reach nearly as far as the tongue", reach > tongue - 2.0)
    # The signal contacts stand 0.005 nearer to the power contacts than 5 pitches.
    checks.odd("serial connector: signal to power contacts", contacts["S7"] - contacts["P1"], 6.345)
    body = [x for line in footprint.lines("F.Fab") for x, _ in line]
    ours_wide = ours.nominal("drives", "2.5-inch drive, connector body's width")
    checks.odd("serial connector: its body is 0.33 narrower than that of the drive standards",
               ours_wide - (max(body) - min(body)), 0.33)
    checks.odd("serial connector: its post holes differ, 1.2 and 0.9",
               sum(float(drill[0]) for name, _, _, drill in footprint.pads() if drill and name == ""), 2.1)


# Mounting holes ------------------------------------------------------------------------------------------------------
HOLE = re.compile(r"MountingHole\.pretty/MountingHole_([\d.]+)(?:x([\d.]+))?mm"
                  r"(?:_(M[\d.]+))?(?:_(DIN965|ISO14580|ISO7380))?(_Pad(?:_TopBottom|_TopOnly|_Via)?)?\.kicad_mod")

# The head that each head circle stands for, and by how much its diameter differs from our row.
HEADS = {
    "ISO7380": ("button head diameter", {}),
    "ISO14580": ("socket cap head diameter", {}),  # another standard, with the heads of ISO 4762
    "DIN965": ("flat head diameter, as made", {"M3": 0.1, "M4": -0.9}),  # ISO 7046 replaced it, with other heads
}


def mounting_holes(files, ours, checks):
    threads = {name.split()[0] for name in ours.names("fasteners") if name.endswith("clearance hole, fine")}
    of_ours, vias, via_first, ovals = set(), 0, 0, 0
    for name, text in sorted(files.items()):
        if not name.startswith("MountingHole.pretty/"):
            continue
        found = HOLE.fullmatch(name)
        if found is None:
            checks.true(f"{name}: a name of another kind", False)
            continue
        across, along, thread, head, pad = found.groups()
        footprint = Footprint(text)
        drills = [drill for _, at, _, drill in footprint.pads() if drill and at == [0.0, 0.0]]
        checks.true(f"{name}: one hole at the origin", len(drills) == 1)
        if along is not None:
            ovals += 1
            checks.odd(f"{name}: an oval", " ".join(drills[0]), f"oval {along} {across}")
            continue
        checks.same(f"{name}: drill", float(drills[0][0]), float(across))
        if pad == "_Pad_Via":
            vias += 1
            first = float(next(drill for _, _, _, drill in footprint.pads() if drill)[0])
            via_first += first < float(across)
        if thread in threads:
            of_ours.add(thread)
            fine = ours.nominal("fasteners", f"{thread} clearance hole, fine")
            checks.same(f"{name}: ISO 273 fine", float(across), fine)
            if head is not None and pad is None:
                row, known = HEADS[head]
                circle = 2 * footprint.circles("Cmts.User")[0]
                if f"{thread} {row}" not in ours.names("fasteners"):
                    checks.odd(f"{name}: a head that ISO 7380-1 has not", head, "ISO7380")
                elif thread in known:
                    checks.odd(f"{name}: DIN 965 head less ISO 7046 head",
                               circle - ours.nominal("fasteners", f"{thread} {row}"), known[thread])
                else:
                    checks.same(f"{name}: head", circle, ours.nominal("fasteners", f"{thread} {row}"))
    checks.true(f"holes for M2, M2.5, M3 and M4, found {sorted(of_ours)}", of_ours == {"M2", "M2.5", "M3", "M4"})
    checks.true("round holes with vias were found", vias >= 10)
    checks.odd("in all but three files with vias, a via's drill comes first", vias - via_first, 3)
    checks.true("oval holes were found", ovals == 2)


def kicad(ours, cache, checks):
    version = "6.0.11-1"
    package = fetched(cache, f"kicad-footprints_{version}_*.deb",
                      ["apt-get", "-o", "Acquire::Retries=0", "-o", "Acquire::http::Timeout=20", "download",
                       f"kicad-footprints={version}"])
    files = footprints(package, {"Connector_PCBEdge.pretty", "Connector_SATA_SAS.pretty", "MountingHole.pretty"})
    edge_tongues(files, ours, checks)
    mini_sockets(files, ours, checks)
    serial_connector(files, ours, checks)
    mounting_holes(files, ours, checks)
    return checks.result(630, 17)


# M.2 edge ------------------------------------------------------------------------------------------------------------
# Runs their function alone: importing the package would need three more packages. What it calls is cut out with it.
EVALUATE = r"""
const text = require("fs").readFileSync(SOURCE, "utf8");
const of = name => {
  const found = text.match(new RegExp("\\nvar " + name + " = \\([^\\n]*\\) => \\{\\n[\\s\\S]*?\\n\\};\\n"));
  if (!found) throw new Error("no function " + name + " in dist/index.js");
  return found[0];
};
const body = "const m2host_def = {parse: given => given};" + of("rectpad") + of("m2host");
const made = new Function(body + "return m2host({fn: 'm2host'});")();
console.log(JSON.stringify(made.circuitJson));
"""


def m2host(cache):
    package = fetched(cache, "tscircuit-footprinter-0.0.450.tgz",
                      ["npm", "pack", "--silent", "--fetch-retries=0", "--fetch-timeout=20000",
                       "@tscircuit/footprinter@0.0.450"])
    with tarfile.open(package) as members:
        text = members.extractfile("package/dist/index.js").read().decode()
    with tempfile.TemporaryDirectory() as folder:
        script = pathlib.Path(folder) / "evaluate.cjs"
        source = pathlib.Path(folder) / "index.js"
        source.write_text(text, encoding="utf-8")
        script.write_text(EVALUATE.replace("SOURCE", json.dumps(str(source))), encoding="utf-8")
        return json.loads(run(["node", str(script)]))


def footprinter(ours, cache, checks):
    items = m2host(cache)
    pads = {int(item["port_hints"][0]): item for item in items if item["type"] == "pcb_smtpad"}
    family = "M.2 contacts, key E"
    pins = sorted(int(name.split()[1]) for name in ours.names(family) if name.startswith("pin "))
    checks.true("pads 24 to 31 are absent, all others there", sorted(pads) == pins and len(pins) == 67)
    pitch = ours.nominal("M.2 cards and sockets", "contact pitch in a row")
    # Their origin is the middle of all that is drawn, and the mark of pin 1 stands out 0.125 at one end only.
    shift = ours.nominal(family, "pin 1") - pads[1]["y"]
    checks.odd("the origin lies half of 0.125 off the card's centre line", shift, 0.0625)
    for pin in pins:
        checks.same(f"pin {pin}", pads[pin]["y"] + shift, ours.nominal(family, f"pin {pin}"))
        checks.true(f"pin {pin}: odd pins on top", pads[pin]["layer"] == ("top" if pin % 2 else "bottom"))
        if pin + 2 in pads:
            checks.same(f"pitch at {pin}", pads[pin]["y"] - pads[pin + 2]["y"], pitch)
        if pin + 1 in pads:
            checks.same(f"faces at {pin}", pads[pin]["y"] - pads[pin + 1]["y"], pitch / 2)
    cutout = [item for item in items if item["type"] == "pcb_cutout"]
    checks.true("one cut-out, the notch", len(cutout) == 1)
    width, depth, centre = cutout[0]["height"], cutout[0]["width"], cutout[0]["center"]["y"] + shift
    checks.same("notch, to their whole mils", centre, ours.nominal(family, "notch"), 0.0254 / 2)
    checks.odd("notch: 261 mil from pin 1", ours.nominal(family, "pin 1") - centre, 6.6294)
    checks.odd("notch: 46 mil wide", width, 1.1684)
    checks.odd("notch: 137 mil deep", depth, 3.4798)
    # Both still lie within our limits.
    for name, theirs in (("notch width", width), ("notch depth", depth)):
        nominal, minus, plus = ours.rows[("M.2 cards and sockets", name)][0]
        checks.true(f"{name}: within our limits", nominal - minus <= theirs <= nominal + plus)
    return checks.result(250, 4)


def main():
    parts = {"kicad": (kicad, "kicad-footprints"), "footprinter": (footprinter, "@tscircuit/footprinter")}
    if len(sys.argv) != 4 or sys.argv[1] not in parts:
        sys.exit(__doc__)
    compare, package = parts[sys.argv[1]]
    try:
        ours = Rows(sys.argv[2])
    except CannotBeHad as reason:
        sys.exit(f"our own rows: {reason}")
    try:
        return compare(ours, pathlib.Path(sys.argv[3]), Checks())
    except CannotBeHad as reason:
        print(f"SKIPPED: {package} could not be fetched: {reason}")
        return SKIPPED


if __name__ == "__main__":
    sys.exit(main())
