"""Where Node may be. The office program, started from a menu, often does not have the PATH of a terminal."""
import glob
import os
import shutil
import sys

import crosshatch_options

WANTED = 20


def wanted_sentence(reasons):
    """What every cell says while there is none."""
    found = "; ".join(reasons) if reasons else "none was found"
    return "Crosshatch needs Node.js %d or newer (%s): install it from nodejs.org, or give its place under Tools > Options > Crosshatch" % (WANTED, found)


def usual():
    """Folders that installers use, the newest version first where they keep several."""
    home = os.path.expanduser("~")
    if sys.platform == "win32":
        bases = [os.environ.get(name, "") for name in ("ProgramFiles", "ProgramW6432", "LOCALAPPDATA", "NVM_SYMLINK", "APPDATA")]
        patterns = ["%s/nodejs/node.exe" % base for base in bases[:2]]
        patterns += [bases[2] + "/Programs/nodejs/node.exe", bases[3] + "/node.exe", bases[4] + "/nvm/v*/node.exe", home + "/scoop/apps/nodejs*/current/node.exe"]
    else:
        folders = ["/usr/local/bin", "/usr/bin", "/opt/homebrew/bin", "/opt/local/bin", "/snap/bin", home + "/.local/bin", home + "/.volta/bin"]
        folders += [home + "/.nvm/versions/node/v*/bin", home + "/.local/share/fnm/node-versions/v*/installation/bin", home + "/.asdf/installs/nodejs/*/bin"]
        folders += ["/usr/local/lib/nodejs/*/bin", "/opt/node*/bin", "/usr/local/opt/node*/bin"]
        patterns = [folder + "/node" for folder in folders]
    for pattern in patterns:
        yield from sorted(glob.glob(pattern), key=numbers, reverse=True)


def numbers(path):
    return [int(part) for part in "".join(sign if sign.isdigit() else " " for sign in path).split()]


def candidates(context):
    """Each place once: the one that is set alone, otherwise PATH and the usual ones."""
    given = crosshatch_options.node_path(context)
    if given:
        inside = [os.path.join(given, name) for name in ("node", "node.exe")]
        return [next((path for path in inside if os.path.isfile(path)), given)]
    found = []
    for path in [shutil.which("node"), *usual()]:
        if path and os.access(path, os.X_OK) and os.path.realpath(path) not in [os.path.realpath(one) for one in found]:
            found.append(path)
    return found
