/** The version of package.json, as a constant because the functions run where no file can be read. */
export const VERSION = "0.1.0";
