"""Edits drawings in LibreCAD's window as a person does, with mouse and keyboard on a screen that nobody sees.

edit_librecad.py SHEETS.dxf PLAN.dxf FOLDER [EDIT ...]   writes FOLDER/EDIT.dxf.gz and FOLDER/EDIT.png (the window before saving) for each
edit named, or for all of them. The drawings are those that a build of tests/SheetGen.Tests/Cases/librecad/wall.yaml writes.

Needs xvfb, xdotool, imagemagick and librecad 2.2; places in the window are those of its own layout at 1380 x 880. About 25 s an edit.
"""
import gzip
import os
import pathlib
import shutil
import subprocess
import sys
import tempfile
import time

SCREEN = os.environ.get("SHEETGEN_DISPLAY", ":77")
SETTINGS = """[Appearance]
Language=en
LanguageCmd=en

[Defaults]
Unit=Foot
UseQtFileOpenDialog=1

[Startup]
FirstLoad=0

[Geometry]
WindowWidth=1380
WindowHeight=880
WindowX=0
WindowY=0
"""
COMMAND_LINE = (1210, 762)
SAVE_AS, FILE_NAME, FILE_TYPE = (164, 42), (680, 554), (680, 585)
RELEASES = ["2007", "2004", "2000", "R14", "R12"]  # in the order of the dialog
KEEP_ORIGINAL, SCALE_FACTOR = (513, 374), (714, 422)
LAYER_FILTER, FIRST_LAYER, EDIT_LAYER = (1220, 296), (1250, 359), (1351, 328)


class Window:
    """LibreCAD with a drawing open."""

    def __init__(self, drawing, folder):
        self.folder = pathlib.Path(folder)
        home = self.folder / "home"
        settings = home / ".config" / "LibreCAD"
        settings.mkdir(parents=True)
        (settings / "LibreCAD.conf").write_text(SETTINGS)
        self.environment = {**os.environ, "HOME": str(home), "DISPLAY": SCREEN, "LC_ALL": "C.UTF-8"}
        self.program = subprocess.Popen(["librecad", str(drawing)], env=self.environment, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        time.sleep(10)
        self.show()

    def show(self):
        """Brings the nails into the window."""

    def pick(self, *marks):
        """Clicks on nails."""

    def do(self, *arguments, wait=0.4):
        subprocess.run(["xdotool", *map(str, arguments)], env=self.environment, check=True)
        time.sleep(wait)

    def click(self, place, times=1):
        self.do("mousemove", *place, wait=0.2)
        self.do("click", "--repeat", times, "--delay", 60, 1)

    def drag(self, start, end):
        self.do("mousemove", *start, "mousedown", 1, wait=0.2)
        for part in (0.3, 0.7, 1):
            self.do("mousemove", *(round(a + (b - a) * part) for a, b in zip(start, end)), wait=0.2)
        self.do("mouseup", 1)

    def type(self, text):
        self.do("type", "--delay", 20, "--", text, wait=0.2)

    def key(self, name, wait=0.6):
        self.do("key", name, wait=wait)

    def lines(self, *commands):
        """Types commands, or points, into the command line."""
        for command in commands:
            self.click(COMMAND_LINE)
            self.type(command)
            self.key("Return")

    def field(self, place, text):
        self.click(place, 3)
        self.type(text)

    def picture(self, file):
        subprocess.run(["import", "-window", "root", "-resize", "50%", str(file)], env=self.environment, check=True)

    def save(self, file, release):
        self.click(SAVE_AS)
        time.sleep(1.5)
        if RELEASES.index(release) > 0:
            self.click(FILE_TYPE)
            for _ in range(RELEASES.index(release)):
                self.key("Down", wait=0.1)
            self.key("Return")
        self.field(FILE_NAME, str(file))
        self.key("Return", wait=3)

    def close(self):
        self.program.terminate()
        self.program.wait()
        shutil.rmtree(self.folder / "home", ignore_errors=True)

    def move(self, by, *marks, keep=False):
        self.pick(*marks)
        self.lines("mv", "0,0", by)
        if keep:
            self.click(KEEP_ORIGINAL)
        self.key("Return")
        self.lines("tn")

    def all(self, *commands):
        self.lines("tn", "sa", *commands)

    def scale_all(self, factor):
        self.all("sz", "0,0")
        self.field(SCALE_FACTOR, factor)
        self.key("Return", wait=4)
        self.lines("tn")

    def delete(self, *marks):
        self.pick(*marks)
        self.key("Delete")


class Elevation(Window):
    """sheets.dxf with the elevation filling the window."""

    def show(self):
        self.lines("za", "zw")
        self.drag((449, 140), (549, 204))
        self.key("Escape")

    def pick(self, *marks):
        """Clicks on the left of each nail's circle; a second click on a nail would let it go again."""
        for mark in marks:
            row, column = int(mark[2]), int(mark[4:])
            self.click((round(921.8 - 33.37 * (4 * column - 2) - 7), round(250 + 33.37 * 4 * (row - 1))))

    def explode(self, *marks):
        self.pick(*marks)
        self.lines("xp", "tn")

    def rename_layer(self, layer, name):
        self.field(LAYER_FILTER, layer)
        time.sleep(0.5)
        self.click(FIRST_LAYER)
        self.click(EDIT_LAYER)
        time.sleep(1)
        self.key("ctrl+a", wait=0.1)
        self.type(name)
        self.key("Return")
        self.field(LAYER_FILTER, "*")


class Plan(Window):
    """plan.dxf as a whole."""

    def show(self):
        self.lines("za")

    def pick(self, *marks):
        """Clicks near the tip of a nail of the first row, which is the longest, or on the turned one half way."""
        for mark in marks:
            self.click((633, 521) if mark == "A-2-04" else (round(182.8 + 30.1 * (4 * int(mark[4:]) - 2)), 722))


def both(*steps):
    def run(window):
        for step in steps:
            step(window)
    return run


NOTHING = both()
SHEETS = {
    "saved-2007": (NOTHING, "2007"),
    "saved-2004": (NOTHING, "2004"),
    "saved-2000": (NOTHING, "2000"),
    "saved-r14": (NOTHING, "R14"),
    "saved-r12": (NOTHING, "R12"),
    "move": (lambda w: w.move("1,0", "A-2-02"), "2007"),
    "move-r12": (lambda w: w.move("0,-0.5", "A-2-04"), "R12"),
    "move-two": (lambda w: w.move("0.5,-0.25", "A-1-02", "A-3-05"), "2000"),
    "move-far": (lambda w: w.move("-2.5,0", "A-1-03"), "2007"),
    "copy": (lambda w: w.move("-1.5,0", "A-1-05", keep=True), "2004"),
    "delete": (lambda w: w.delete("A-3-03"), "2007"),
    "delete-two": (lambda w: w.delete("A-1-01", "A-2-06"), "R14"),
    "delete-and-move": (both(lambda w: w.delete("A-2-06"), lambda w: w.move("-1,0", "A-3-02")), "2007"),
    "rotate": (both(lambda w: w.pick("A-1-03"), lambda w: w.lines("ro", "-10,110", "-9,110", "-10,111"), lambda w: w.key("Return")), "2007"),
    "explode": (lambda w: w.explode("A-2-05"), "2007"),
    "explode-turned": (lambda w: w.explode("A-2-04"), "2000"),
    "explode-and-copy": (both(lambda w: w.explode("A-2-05"), lambda w: w.move("-1.5,0", "A-1-05", keep=True)), "2007"),
    "delete-and-copy": (both(lambda w: w.delete("A-2-01"), lambda w: w.move("-1.5,0", "A-3-03", keep=True)), "2007"),
    "rename-layer": (lambda w: w.rename_layer("S-NAIL-HEAD", "NAILS OF THE DETAILER"), "2007"),
    "inches": (lambda w: w.scale_all("12"), "2007"),
    "inches-and-delete": (both(lambda w: w.delete("A-3-03"), lambda w: w.scale_all("12")), "R12"),
    "move-all": (lambda w: w.all("mv", "0,0", "1000,500") or w.key("Return", wait=3), "2007"),
    "move-all-and-one": (both(lambda w: w.move("1,0", "A-2-02"), lambda w: w.all("mv", "0,0", "-37.25,12.5") or w.key("Return", wait=3)), "2004"),
    "turn-all": (lambda w: w.all("ro", "0,0", "1,0", "0,1") or w.key("Return", wait=3), "2007"),
    "other-entities": (lambda w: w.lines("li", "-4,104", "-8,108", "kill", "ci", "-12,104", "0.5", "kill", "po", "-4,108", "kill"), "2007"),
}


PLAN = {
    "plan-saved": (NOTHING, "2007"),
    "plan-saved-r12": (NOTHING, "R12"),
    "plan-move": (lambda w: w.move("1,0", "A-1-02"), "2007"),
    "plan-turn": (both(lambda w: w.pick("A-1-03"), lambda w: w.lines("ro", "2010,5000", "2010,4990", "2011.736481777,4990.151922470"), lambda w: w.key("Return")), "2004"),
    "plan-delete": (lambda w: w.delete("A-2-04"), "2000"),
    "plan-copy": (lambda w: w.move("1.5,0", "A-1-05", keep=True), "2007"),
    "plan-move-all": (lambda w: w.all("mv", "0,0", "-2000,-5000") or w.key("Return", wait=3), "2007"),
    "plan-turn-all": (lambda w: w.all("ro", "2000,5000", "2001,5000", "2000,5001") or w.key("Return", wait=3), "2007"),
    "plan-inches": (lambda w: w.scale_all("12"), "R14"),
}


def main():
    sheets, plan, folder, *wanted = sys.argv[1:]
    out = pathlib.Path(folder)
    out.mkdir(parents=True, exist_ok=True)
    screen = subprocess.Popen(["Xvfb", SCREEN, "-screen", "0", "1400x900x24"], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    time.sleep(1)
    jobs = [(name, Elevation, sheets, *job) for name, job in SHEETS.items()] + [(name, Plan, plan, *job) for name, job in PLAN.items()]
    try:
        for name, kind, source, edit, release in jobs:
            if wanted and name not in wanted:
                continue
            with tempfile.TemporaryDirectory() as scratch:
                drawing, saved = pathlib.Path(scratch, "drawing.dxf"), pathlib.Path(scratch, "saved.dxf")
                shutil.copy(source, drawing)
                window = kind(drawing, scratch)
                edit(window)
                window.picture(out / f"{name}.png")
                window.save(saved, release)
                window.close()
                if not saved.exists():
                    raise SystemExit(f"{name}: nothing was saved; see {name}.png")
                (out / f"{name}.dxf.gz").write_bytes(gzip.compress(saved.read_bytes(), 9, mtime=0))
                print(name, (out / f"{name}.dxf.gz").stat().st_size, flush=True)
    finally:
        screen.terminate()


main()
