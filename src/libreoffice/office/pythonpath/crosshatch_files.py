"""What happens to files: our functions' names when one is opened, and a copy for Excel."""
import os
import tempfile

import uno

import crosshatch_child
import crosshatch_rename

SPREADSHEET = "com.sun.star.sheet.SpreadsheetDocument"
EXCEL = "Calc MS Excel 2007 XML"
SAVE_WITH_ENDING = 10  # TemplateDescription.FILESAVE_AUTOEXTENSION
INFO, ERROR = "MESSAGEBOX", "ERRORBOX"


def opened(arguments):
    """The job of a file that has been opened; it comes with the file as "Model" in its environment."""
    environment = next((one.Value for one in arguments if one.Name == "Environment"), ())
    document = next((one.Value for one in environment if one.Name == "Model"), None)
    if document is not None and document.supportsService(SPREADSHEET):
        crosshatch_rename.rename(document)


def command(context, text):
    """A command of the menu: "save-for-excel", with the path of the copy behind it where nobody is to be asked."""
    crosshatch_child.use(context)
    name, _, path = text.partition(" ")
    desktop = context.ServiceManager.createInstanceWithContext("com.sun.star.frame.Desktop", context)
    document = current(desktop)
    if name != "save-for-excel" or document is None:
        return
    asked = not path
    path = path or ask_for_path(context, document)
    if not path:
        return
    try:
        count = save_for_excel(document, path)
        kind, said = INFO, "%s is saved, with %d formulas of Crosshatch as Excel stores them. This file stays as it is." % (path, count)
    except Exception as reason:  # pylint: disable=broad-except
        kind, said = ERROR, "The copy could not be saved: %s" % reason
    if asked:
        say(context, document, kind, said)
    elif kind == ERROR:
        raise RuntimeError(said)


def current(desktop):
    """The spreadsheet in front; without windows none is, and there it is any that is open."""
    components = desktop.getComponents().createEnumeration()
    document = desktop.getCurrentComponent()
    while document is None and components.hasMoreElements():
        document = components.nextElement()
    return document if document is not None and document.supportsService(SPREADSHEET) else None


def save_for_excel(document, path):
    """A copy as the office program writes it, made into Excel's form by Node."""
    folder = tempfile.mkdtemp()
    plain = os.path.join(folder, "copy.xlsx")
    try:
        document.storeToURL(uno.systemPathToFileUrl(plain), (named("com.sun.star.beans.PropertyValue", "FilterName", EXCEL),))
        ((answer,),) = crosshatch_child.call("excel", (plain, path))
    finally:
        if os.path.exists(plain):
            os.remove(plain)
        os.rmdir(folder)
    if isinstance(answer, str):
        raise RuntimeError(answer.replace(crosshatch_child.CHECK, "", 1))
    return int(answer)


def named(struct, name, value):
    made = uno.createUnoStruct(struct)
    made.Name, made.Value = name, value
    return made


def ask_for_path(context, document):
    picker = context.ServiceManager.createInstanceWithArgumentsAndContext("com.sun.star.ui.dialogs.FilePicker", (SAVE_WITH_ENDING,), context)
    picker.setTitle("Save a copy for Excel")
    picker.appendFilter("Excel workbook (.xlsx)", "*.xlsx")
    base = os.path.splitext(os.path.basename(uno.fileUrlToSystemPath(document.URL)))[0] if document.URL.startswith("file:") else "Sheet"
    picker.setDefaultName(base + " for Excel.xlsx")
    return uno.fileUrlToSystemPath(picker.getSelectedFiles()[0]) if picker.execute() else ""


def say(context, document, kind, sentence):
    window = document.CurrentController.Frame.ContainerWindow
    box = window.Toolkit.createMessageBox(window, uno.Enum("com.sun.star.awt.MessageBoxType", kind), 1, "Crosshatch", sentence)
    box.execute()
    box.dispose()
