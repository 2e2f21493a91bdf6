/**
 * Rules of ECMA-376 part 1 (ISO/IEC 29500-1), annex A.2, sml.xsd, as far as a plain workbook meets
 * them: the order in which the children of an element stand, each `xsd:sequence` copied name by name.
 * CT_Worksheet, CT_Stylesheet, CT_Workbook, CT_Table and CT_DataValidation were read in public copies
 * of the schema, the others are from memory.
 */
export const CHILDREN: Readonly<Record<string, readonly string[]>> = {
  workbook: (
    "fileVersion fileSharing workbookPr workbookProtection bookViews sheets functionGroups externalReferences definedNames calcPr oleSize " +
    "customWorkbookViews pivotCaches smartTagPr smartTagTypes webPublishing fileRecoveryPr webPublishObjects extLst"
  ).split(" "),
  worksheet: (
    "sheetPr dimension sheetViews sheetFormatPr cols sheetData sheetCalcPr sheetProtection protectedRanges scenarios autoFilter sortState dataConsolidate " +
    "customSheetViews mergeCells phoneticPr conditionalFormatting dataValidations hyperlinks printOptions pageMargins pageSetup headerFooter rowBreaks colBreaks " +
    "customProperties cellWatches ignoredErrors smartTags drawing drawingHF picture oleObjects controls webPublishItems tableParts extLst"
  ).split(" "),
  styleSheet: "numFmts fonts fills borders cellStyleXfs cellXfs cellStyles dxfs tableStyles colors extLst".split(" "),
  table: "autoFilter sortState tableColumns tableStyleInfo extLst".split(" "),
  dataValidation: ["formula1", "formula2"],
  sheetView: ["pane", "selection", "pivotSelection", "extLst"],
  sheetPr: ["tabColor", "outlinePr", "pageSetUpPr"],
  border: ["start", "end", "left", "right", "top", "bottom", "diagonal", "vertical", "horizontal"],
  dxf: ["font", "numFmt", "fill", "alignment", "border", "protection", "extLst"],
  xf: ["alignment", "protection", "extLst"],
  c: ["f", "v", "is", "extLst"],
  row: ["c", "extLst"],
  cfRule: ["formula", "colorScale", "dataBar", "iconSet", "extLst"],
  patternFill: ["fgColor", "bgColor"],
};

/** 18.3.1.32 (dataValidation): ST_Xstring of at most so many characters, as the element's text says. */
export const LONGEST_ERROR = 255;
export const LONGEST_ERROR_TITLE = 32;
/** 18.18.2 and Microsoft's "Excel specifications and limits": characters of a sheet's name, and those that it must not hold. */
export const LONGEST_SHEET_NAME = 31;
export const NOT_IN_SHEET_NAME = /[:\\/?*[\]]/;
/** 18.2.5 (definedName) and "Names in formulas": a letter, `_` or `\` first, then letters, digits, `.` and `_`; never like a cell. */
export const DEFINED_NAME = /^[\p{L}_\\][\p{L}\p{N}._]*$/u;
export const LIKE_A_CELL = /^(?:[A-Z]{1,3}\d+|R\d*C\d*)$/i;
