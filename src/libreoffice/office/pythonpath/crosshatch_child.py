"""The one Node process that runs the functions for the office program: found, started at the first call,
asked through pipes (frames as in frames.ts), started anew when it dies, ended with the office program."""
import os
import struct
import subprocess
import sys
import threading
import time

from crosshatch_node import WANTED, candidates, wanted_sentence

HERE = os.path.dirname(os.path.abspath(__file__))
SCRIPT = os.path.join(os.path.dirname(HERE), "functions.js")
CHECK = "check: "
# A call that takes longer holds up the whole office program.
LONGEST_CALL = 20.0
LONGEST_START = 30.0
# After a start that failed, the cells of one recalculation all say so, without a try each.
NEXT_TRY = 5.0
# So many deaths one after another, and the calls are not tried again for a while.
DEATHS = 3

LENGTH = struct.Struct("<I")
NUMBER = struct.Struct("<Bd")
TEXT = struct.Struct("<BI")
BLOCK = struct.Struct("<BII")
SIZE = struct.Struct("<II")


class Unavailable(Exception):
    """Why there is no process to ask, as a sentence."""


class Died(Exception):
    pass


class Child:
    """A running process."""

    def __init__(self, path):
        hidden = {"creationflags": subprocess.CREATE_NO_WINDOW} if sys.platform == "win32" else {}
        # What the office program sets for its own libraries must not reach Node.
        environment = {key: value for key, value in os.environ.items() if key not in ("LD_LIBRARY_PATH", "LD_PRELOAD", "NODE_OPTIONS")}
        try:
            self.process = subprocess.Popen(
                [path, SCRIPT], stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, bufsize=0, env=environment, **hidden
            )
        except OSError as reason:
            raise Unavailable("%s could not be started: %s" % (path, reason.strerror or reason))
        self.input = self.process.stdin.fileno()
        self.output = self.process.stdout.fileno()
        self.deadline = None
        self.was_late = False
        threading.Thread(target=self._watch, name="crosshatch", daemon=True).start()
        try:
            self.version, self.own_version = self._answered(LONGEST_START)[0]
        except Died:
            self.end()
            raise Unavailable("%s does not run the functions" % path)

    def _watch(self):
        """Kills the process when a call takes too long: reading from it then ends."""
        while self.process.poll() is None:
            deadline = self.deadline
            if deadline is not None and time.monotonic() > deadline:
                self.was_late = True
                self.process.kill()
            time.sleep(0.25)

    def ask(self, frame):
        try:
            sent = os.write(self.input, frame)
            while sent < len(frame):
                sent += os.write(self.input, frame[sent:])
        except OSError:
            raise Died
        return self._answered(LONGEST_CALL)

    def _answered(self, longest):
        self.deadline = time.monotonic() + longest
        data = self._more(b"", 4)
        end = 4 + LENGTH.unpack_from(data)[0]
        if len(data) < end:
            data = self._more(data, end)
        self.deadline = None
        return rows_in(data)

    def _more(self, data, wanted):
        pieces, length = [data], len(data)
        while length < wanted:
            piece = os.read(self.output, 1 << 16 if wanted <= 1 << 16 else 1 << 20)
            if not piece:
                raise Died
            pieces.append(piece)
            length += len(piece)
        return b"".join(pieces)

    def end(self):
        self.process.kill()
        self.process.wait()
        self.process.stdin.close()
        self.process.stdout.close()


def rows_in(data):
    """An answer as the office program takes it: floats and texts only, in rows of one length."""
    rows, columns = SIZE.unpack_from(data, 4)
    at = 12
    cells = []
    for _ in range(rows * columns):
        if data[at] == 1:
            cells.append(NUMBER.unpack_from(data, at)[1])
            at += 9
        else:
            end = at + 5 + TEXT.unpack_from(data, at)[1]
            cells.append(data[at + 5 : end].decode("utf-8"))
            at = end
    if rows == 1:
        return (tuple(cells),)
    return tuple(tuple(cells[row * columns : (row + 1) * columns]) for row in range(rows))


def request(name, given):
    """A call as a frame. Numbers come as floats, texts as they are, ranges as rows of them, what is left out as None."""
    parts = [b"", bytes((len(name),)), name.encode("ascii"), bytes((len(given),))]
    for one in given:
        if isinstance(one, tuple):
            parts.append(BLOCK.pack(3, len(one), len(one[0]) if one else 0))
            for row in one:
                for cell in row:
                    put(parts, cell)
        else:
            put(parts, one)
    content = b"".join(parts)
    return LENGTH.pack(len(content)) + content


def put(parts, value):
    if isinstance(value, (float, int)):
        parts.append(NUMBER.pack(1, value))
    elif isinstance(value, str):
        text = value.encode("utf-8", "replace")
        parts.append(TEXT.pack(2, len(text)) + text)
    else:
        parts.append(b"\0")


lock = threading.Lock()
child = None
office = None
failed_at, failure = None, ""
deaths = 0


def use(context):
    global office
    office = context


def started():
    """The process, started where none runs. Of several programs called node, the first that is new enough."""
    global child, failed_at, failure
    if child is not None:
        return child
    if failed_at is not None and time.monotonic() - failed_at < NEXT_TRY:
        raise Unavailable(failure)
    reasons = []
    for path in candidates(office):
        try:
            one = Child(path)
        except Unavailable as reason:
            reasons.append(str(reason))
            continue
        if int(one.version.split(".")[0]) >= WANTED:
            child, failed_at = one, None
            return child
        reasons.append("%s is version %s" % (path, one.version))
        one.end()
    failed_at, failure = time.monotonic(), wanted_sentence(reasons)
    raise Unavailable(failure)


def ended():
    """Forgets the process; the next call starts another, unless one after another has died."""
    global child, deaths, failed_at, failure
    late = child.was_late
    child.end()
    child = None
    deaths += 1
    if deaths >= DEATHS:
        deaths = 0
        failed_at, failure = time.monotonic(), "the functions' own program (Node) ended %d times one after another: calculate again (Ctrl+Shift+F9)" % DEATHS
    return late


def rows_of(name, given):
    """The rows that a call comes to. A process that has died is started anew, once for each call."""
    global deaths
    frame = request(name, given)
    with lock:
        for _ in range(2):
            try:
                rows = started().ask(frame)
                deaths = 0
                return rows
            except Died:
                if ended():
                    return ((CHECK + "took longer than %d s and was stopped: give it fewer cells" % LONGEST_CALL,),)
        return ((CHECK + "the functions' own program (Node) ended while it worked on this cell",),)


def call(name, given):
    """Answers a cell. An exception would be an error without a word there."""
    try:
        return rows_of(name, given)
    except Unavailable as reason:
        return ((CHECK + str(reason),),)
    except Exception as fault:  # pylint: disable=broad-except
        return ((CHECK + "a fault in Crosshatch: %s" % fault,),)
