"""What happens to files: our functions' names when one is opened, and a copy for Excel."""
import crosshatch_rename

SPREADSHEET = "com.sun.star.sheet.SpreadsheetDocument"


def opened(arguments):
    """The job of a file that has been opened; it comes with the file as "Model" in its environment."""
    environment = next((one.Value for one in arguments if one.Name == "Environment"), ())
    document = next((one.Value for one in environment if one.Name == "Model"), None)
    if document is not None and document.supportsService(SPREADSHEET):
        crosshatch_rename.rename(document)
