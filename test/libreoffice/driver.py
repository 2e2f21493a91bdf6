"""Does in the running office program what the tests ask for, one line of JSON each: {"do": name, …} in, {"gives": …} or {"fault": …} out."""
import json
import sys
import time
import traceback

import uno

PIPE = sys.argv[1]
CODES = {502: "Err:502", 504: "Err:504", 519: "#VALUE!", 524: "#REF!", 525: "#NAME?", 532: "#DIV/0!", 32767: "#N/A"}
FILTERS = {"xlsx": "Calc MS Excel 2007 XML", "ods": "calc8", "csv": "Text - txt - csv (StarCalc)"}


def connect():
    resolver = uno.getComponentContext().ServiceManager.createInstanceWithContext("com.sun.star.bridge.UnoUrlResolver", uno.getComponentContext())
    for _ in range(600):
        try:
            return resolver.resolve("uno:pipe,name=%s;urp;StarOffice.ComponentContext" % PIPE)
        except Exception:
            time.sleep(0.1)
    raise SystemExit("the office program did not answer")


context = connect()
desktop = context.ServiceManager.createInstanceWithContext("com.sun.star.frame.Desktop", context)
documents = {}


def properties(**values):
    made = []
    for name, value in values.items():
        one = uno.createUnoStruct("com.sun.star.beans.PropertyValue")
        one.Name, one.Value = name, value
        made.append(one)
    return tuple(made)


def url(path):
    return uno.systemPathToFileUrl(path)


def open_(key, file=None, calculate=True):
    document = desktop.loadComponentFromURL(url(file) if file else "private:factory/scalc", "_blank", 0, properties(Hidden=True))
    documents[key] = document
    start = time.perf_counter()
    if calculate:
        document.calculateAll()
    return {"seconds": time.perf_counter() - start, "sheets": list(document.Sheets.ElementNames)}


def cells(key, sheet, box=None):
    """The values of a box [column, row, last column, last row], or of all that is used, from A1 on."""
    page = documents[key].Sheets.getByName(sheet)
    if box is None:
        cursor = page.createCursor()
        cursor.gotoEndOfUsedArea(False)
        address = cursor.RangeAddress
        box = [0, 0, address.EndColumn, address.EndRow]
    area = page.getCellRangeByPosition(*box)
    rows = [list(row) for row in area.getDataArray()]
    # An error stands there as nothing, or as a number that is none.
    for found in area.queryFormulaCells(4).RangeAddresses:
        for row in range(found.StartRow, found.EndRow + 1):
            for column in range(found.StartColumn, found.EndColumn + 1):
                code = page.getCellByPosition(column, row).getError()
                rows[row - box[1]][column - box[0]] = {"error": CODES.get(code, "Err:%d" % code)}
    return rows


def formulas(key, sheet):
    page = documents[key].Sheets.getByName(sheet)
    cursor = page.createCursor()
    cursor.gotoEndOfUsedArea(False)
    return [list(row) for row in page.getCellRangeByPosition(0, 0, cursor.RangeAddress.EndColumn, cursor.RangeAddress.EndRow).getFormulaArray()]


def type_(key, sheet, column, row, formulas):
    area = documents[key].Sheets.getByName(sheet).getCellRangeByPosition(column, row, column + len(formulas[0]) - 1, row + len(formulas) - 1)
    area.setFormulaArray(tuple(tuple(line) for line in formulas))


def type_array(key, sheet, box, formula):
    documents[key].Sheets.getByName(sheet).getCellRangeByPosition(*box).setArrayFormula(formula)


def put(key, sheet, cells):
    """Numbers and texts into cells, each [column, row, value]."""
    page = documents[key].Sheets.getByName(sheet)
    for column, row, value in cells:
        cell = page.getCellByPosition(column, row)
        if isinstance(value, str):
            cell.setString(value)
        else:
            cell.setValue(value)


def calculate(key):
    start = time.perf_counter()
    documents[key].calculateAll()
    return time.perf_counter() - start


def store(key, file):
    documents[key].storeToURL(url(file), properties(FilterName=FILTERS[file.rsplit(".", 1)[1]]))


def close(key):
    documents.pop(key).close(True)


def state(key):
    document = documents[key]
    return {"modified": document.isModified(), "undo": document.UndoManager.isUndoPossible(), "names": list(document.NamedRanges.ElementNames)}


def named(key):
    """What the names stand for."""
    ranges = documents[key].NamedRanges
    return {name: ranges.getByName(name).getContent() for name in ranges.ElementNames}


def conditions(key, sheet):
    """The formulas of the sheet's conditional formats."""
    formats = documents[key].Sheets.getByName(sheet).ConditionalFormats.getConditionalFormats()
    return [one.getByIndex(i).Formula1 for one in formats for i in range(one.getCount())]


def frozen(key, sheet):
    """Columns and rows that stay in view."""
    controller = documents[key].CurrentController
    controller.setActiveSheet(documents[key].Sheets.getByName(sheet))
    return [controller.getSplitColumn(), controller.getSplitRow()] if controller.hasFrozenPanes() else [0, 0]


def wizard():
    """The functions as the function wizard lists them."""
    found = context.ServiceManager.createInstanceWithContext("com.sun.star.sheet.FunctionDescriptions", context)
    listed = []
    for i in range(found.getCount()):
        one = {entry.Name: entry.Value for entry in found.getByIndex(i)}
        if one["Name"].startswith("HATCH."):
            arguments = [[argument.Name, argument.Description] for argument in one["Arguments"] or ()]
            listed.append({"name": one["Name"], "description": one["Description"], "arguments": arguments})
    return listed


def command(service, text):
    context.ServiceManager.createInstanceWithContext(service, context).trigger(text)


def set_node(path):
    provider = context.ServiceManager.createInstanceWithContext("com.sun.star.configuration.ConfigurationProvider", context)
    place = uno.createUnoStruct("com.sun.star.beans.NamedValue")
    place.Name, place.Value = "nodepath", "/crosshatch.Options/Node"
    access = provider.createInstanceWithArguments("com.sun.star.configuration.ConfigurationUpdateAccess", (place,))
    access.setPropertyValue("Path", path)
    access.commitChanges()


def quit_():
    desktop.terminate()


COMMANDS = {name.rstrip("_"): function for name, function in list(globals().items()) if callable(function) and name not in ("connect", "properties", "url")}

print(json.dumps({"gives": "ready"}), flush=True)
for line in sys.stdin:
    asked = json.loads(line)
    try:
        answer = {"gives": COMMANDS[asked.pop("do")](**asked)}
    except Exception:
        answer = {"fault": traceback.format_exc()}
    print(json.dumps(answer), flush=True)
