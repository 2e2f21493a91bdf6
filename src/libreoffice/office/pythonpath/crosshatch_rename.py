"""Files that Excel has saved, or that are stored as it does, name our functions _xldudf_HATCH_TAPER, which the
office program does not know: they get the names that it has for them as soon as such a file is opened."""
import re

STORED = re.compile(r'_xldudf_HATCH_(\w+)|"(?:[^"]|"")*"', re.IGNORECASE)
MARK = "_xldudf_hatch_"
FORMULAS = 16


def renamed(formula):
    """The formula with our names in it; text in quotes stays."""
    return STORED.sub(lambda found: "HATCH." + found[1].upper() if found[1] else found[0], formula)


def is_stored(formula):
    return MARK in formula.lower()


def rename(document):
    """Renames all there is, as if the file had been written so: no undo step, not modified. True where something was."""
    was_modified = document.isModified()
    document.UndoManager.lock()
    document.lockControllers()
    document.addActionLock()
    automatic = document.isAutomaticCalculationEnabled()
    document.enableAutomaticCalculation(False)
    try:
        found = names(document.NamedRanges)
        for sheet in elements(document.Sheets):
            found = names(sheet.NamedRanges) | cells(sheet) | conditions(sheet) | found
        if found:
            document.calculateAll()
    finally:
        document.enableAutomaticCalculation(automatic)
        document.removeActionLock()
        document.unlockControllers()
        document.UndoManager.unlock()
        if not was_modified:
            document.setModified(False)
    return found


def elements(container):
    return [container.getByIndex(i) for i in range(container.getCount())]


def names(ranges):
    stored = [name for name in elements(ranges) if is_stored(name.getContent())]
    for name in stored:
        name.setContent(renamed(name.getContent()))
    return bool(stored)


def cells(sheet):
    found = False
    for area in sheet.queryContentCells(FORMULAS).getRangeAddresses():
        block = sheet.getCellRangeByPosition(area.StartColumn, area.StartRow, area.EndColumn, area.EndRow).getFormulaArray()
        for column in range(len(block[0])):
            found = column_cells(sheet, area.StartColumn + column, area.StartRow, [line[column] for line in block]) or found
    return found


def column_cells(sheet, column, top, formulas):
    """Plain formulas in runs, which takes a fraction of the time that one by one does; array formulas each."""
    found = False
    run = []
    for row, formula in enumerate([*formulas, ""], top):
        stored = is_stored(formula)
        if stored and not formula.startswith("{"):
            run.append((renamed(formula),))
        elif run:
            sheet.getCellRangeByPosition(column, row - len(run), column, row - 1).setFormulaArray(tuple(run))
            run = []
        if stored and formula.startswith("{"):
            array(sheet, column, row, formula)
        found = found or stored
    return found


def array(sheet, column, row, formula):
    """The whole block that an array formula fills; from its second cell on it has been renamed already."""
    cursor = sheet.createCursorByRange(sheet.getCellByPosition(column, row))
    cursor.collapseToCurrentArray()
    address = cursor.getRangeAddress()
    if (address.StartColumn, address.StartRow) == (column, row):
        # As cells give it, "{=…}" with semicolons; the range itself writes commas, which it does not read.
        cursor.setArrayFormula(renamed(formula[1:-1]))


def conditions(sheet):
    found = False
    for one in sheet.ConditionalFormats.getConditionalFormats():
        for entry in elements(one):
            for part in ("Formula1", "Formula2"):
                formula = getattr(entry, part, "")
                if isinstance(formula, str) and is_stored(formula):
                    setattr(entry, part, renamed(formula))
                    found = True
    return found
