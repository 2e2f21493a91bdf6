"""What the office program finds in the extension: the functions, a look at each opened file, a menu and an
options page. Everything is handed on; the functions themselves run in Node (crosshatch_child.py)."""
import uno
import unohelper
from com.sun.star.awt import XContainerWindowEventHandler
from com.sun.star.task import XJob, XJobExecutor

import crosshatch_child


class Functions(unohelper.Base, uno.getClass("crosshatch.XHatch")):
    """Each method is a function of the sheet, HATCH.TAPER and so on, as the type library names them."""

    def __init__(self, context):
        crosshatch_child.use(context)

    def __getattr__(self, name):
        if not name.isupper():
            raise AttributeError(name)

        def function(*given):
            return crosshatch_child.call(name, given)

        setattr(self, name, function)
        return function


class Opened(unohelper.Base, XJob):
    """Runs after a file has been opened."""

    def __init__(self, context):
        self.context = context

    def execute(self, arguments):
        import crosshatch_files

        crosshatch_files.opened(arguments)


class Menu(unohelper.Base, XJobExecutor):
    def __init__(self, context):
        self.context = context

    def trigger(self, command):
        import crosshatch_files

        crosshatch_files.command(self.context, command)


class Options(unohelper.Base, XContainerWindowEventHandler):
    """The page under Tools > Options > Crosshatch."""

    def __init__(self, context):
        self.context = context

    def callHandlerMethod(self, window, event, method):
        import crosshatch_options

        return crosshatch_options.handle(self.context, window, event, method)

    def getSupportedMethodNames(self):
        return ("external_event",)


g_ImplementationHelper = unohelper.ImplementationHelper()
for implementation, service in ((Functions, "HATCH"), (Opened, "crosshatch.Opened"), (Menu, "crosshatch.Menu"), (Options, "crosshatch.Options")):
    g_ImplementationHelper.addImplementation(implementation, "crosshatch." + implementation.__name__ + "Implementation", (service,))
