// Stands in for office-addin-manifest where office-addin-mock asks it for the names of hosts: the
// package itself pulls in a module that jest cannot load.
exports.OfficeApp = { Excel: "excel", OneNote: "onenote", Outlook: "outlook", PowerPoint: "powerpoint", Project: "project", Word: "word" };
