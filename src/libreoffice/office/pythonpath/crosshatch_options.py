"""The one thing that can be set: where Node is. Kept in the office program's own configuration."""
import uno

PATH = "/crosshatch.Options/Node"


def _access(context, service):
    provider = context.ServiceManager.createInstanceWithContext("com.sun.star.configuration.ConfigurationProvider", context)
    place = uno.createUnoStruct("com.sun.star.beans.NamedValue")
    place.Name, place.Value = "nodepath", PATH
    return provider.createInstanceWithArguments("com.sun.star.configuration." + service, (place,))


def node_path(context):
    """The place that is set, or an empty text."""
    return (_access(context, "ConfigurationAccess").getPropertyValue("Path") or "").strip()


def set_node_path(context, path):
    access = _access(context, "ConfigurationUpdateAccess")
    access.setPropertyValue("Path", path.strip())
    access.commitChanges()


def handle(context, window, event, method):
    """The page is shown ("initialize"), taken back ("back") or left with OK ("ok")."""
    if method != "external_event":
        return False
    field = window.getControl("Path")
    if event in ("initialize", "back"):
        field.setText(node_path(context))
    elif event == "ok":
        set_node_path(context, field.getText())
    return True
