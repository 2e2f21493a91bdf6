import { strToU8, zipSync } from "fflate";

/**
 * A workbook as an office program leaves it, with all that a shop may have put into one: its bore sheet
 * stands on a chart, pictures, comments of both kinds, rules for colours and for what may be typed, a
 * table, a pivot table, printer settings, an add-in's pane, another program's data, macros, a signature.
 * The parts are as ECMA-376 parts 1 and 2 and [MS-XLSX] have them; what they draw is invented.
 */

const HEAD = '<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\r\n';
const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const PACKAGE = "http://schemas.openxmlformats.org/package/2006";
const DRAWING = "http://schemas.openxmlformats.org/drawingml/2006";
const TYPES = "application/vnd.openxmlformats-officedocument";

const relations = (...list: [id: string, type: string, target: string][]): string =>
  `${HEAD}<Relationships xmlns="${PACKAGE}/relationships">${list
    .map(([id, type, target]) => `<Relationship Id="${id}" Type="${type.includes("/") ? type : `${OFFICE}/${type}`}" Target="${target}"/>`)
    .join("")}</Relationships>`;

/** One pixel (PNG, ISO/IEC 15948). */
const PIXEL = Uint8Array.from(atob("iVBORw0KGgoAAAANSUhEUgAAAAEAAAABCAYAAAAfFcSJAAAADUlEQVR42mNk+M9QDwADhgGAWjR9awAAAABJRU5ErkJggg=="), (sign) =>
  sign.charCodeAt(0),
);
/** Bytes that are no text in any encoding. */
const noise = (length: number, seed: number): Uint8Array => Uint8Array.from({ length }, (_, i) => (i * 197 + seed * 31 + (i >> 3)) & 255);

const FORMULA = "HATCH.VERDICT(C3,$B$9,$B$10)".replace("HATCH.", "_xldudf_HATCH_");

/** Bores: cylinder, bore, and what comes of it. Row 5 lacks its reading; the file's values are stale or missing. */
export const BORES = `${HEAD}<worksheet xmlns="${MAIN}" xmlns:r="${OFFICE}" xmlns:mc="http://schemas.openxmlformats.org/markup-compatibility/2006" mc:Ignorable="x14ac xr" xmlns:x14ac="http://schemas.microsoft.com/office/spreadsheetml/2009/9/ac" xmlns:xr="http://schemas.microsoft.com/office/spreadsheetml/2014/revision" xr:uid="{00000000-0001-0000-0000-000000000000}"><sheetPr><tabColor theme="4"/></sheetPr><dimension ref="A1:F10"/><sheetViews><sheetView tabSelected="1" workbookViewId="0"><pane ySplit="2" topLeftCell="A3" activePane="bottomLeft" state="frozen"/></sheetView></sheetViews><sheetFormatPr defaultRowHeight="15" x14ac:dyDescent="0.25"/><cols><col min="1" max="1" width="12" customWidth="1"/><col min="6" max="8" width="9" style="2" customWidth="1"/></cols><sheetData>\
<row r="1" spans="1:6" ht="21" customHeight="1" x14ac:dyDescent="0.35"><c r="A1" s="1" t="s"><v>0</v></c></row>
<row r="2" spans="1:6"><c r="A2" t="s"><v>1</v></c><c r="B2" t="s"><v>2</v></c><c r="C2" t="s"><v>3</v></c><c r="D2" t="inlineStr"><is><r><t>Ver</t></r><r><rPr><b/></rPr><t>dict</t></r></is></c></row>
<row r="3" spans="1:6"><c r="A3"><v>1</v></c><c r="B3" s="2"><v>73.02</v></c><c r="C3" s="2"><f t="shared" ref="C3:C5" si="0">B3-73</f><v>1.9999999999996021E-2</v></c><c r="D3" cm="1" t="str"><f t="array" ref="D3">${FORMULA}</f><v>within</v></c></row>
<row r="4" spans="1:6"><c r="A4"><v>2</v></c><c r="B4" s="3"><v>73.05</v></c><c r="C4" s="3"><f t="shared" si="0"/><v>4.9999999999997158E-2</v></c><c r="D4" t="e" vm="1"><f>${FORMULA.replace("C3", "C4")}</f><v>#NAME?</v></c><c r="E4" t="s"><v>4</v></c></row>
<row r="5" spans="1:6"><c r="A5"><v>3</v></c><c r="D5" cm="1"><f t="array" ref="D5">${FORMULA.replace("C3", "B5")}</f></c></row>
<row r="7"><c r="A7" t="s"><v>5</v></c><c r="B7" s="4" t="s"><v>6</v></c><!-- kept --></row>
<row r="9" spans="1:6"><c r="A9" t="s"><v>7</v></c><c r="B9"><v>0</v></c></row>
<row r="10" spans="1:6"><c r="A10" t="s"><v>8</v></c><c r="B10"><v>0.04</v></c></row>\
</sheetData><sheetProtection sheet="1" objects="1" scenarios="1"/><conditionalFormatting sqref="B3:B5"><cfRule type="cellIs" dxfId="0" priority="1" operator="greaterThan"><formula>73.04</formula></cfRule></conditionalFormatting><dataValidations count="1"><dataValidation type="decimal" allowBlank="1" showErrorMessage="1" sqref="B3:B5"><formula1>72</formula1><formula2>75</formula2></dataValidation></dataValidations><hyperlinks><hyperlink ref="A1" location="Parts!A1" display="parts"/></hyperlinks><pageMargins left="0.7" right="0.7" top="0.75" bottom="0.75" header="0.3" footer="0.3"/><pageSetup paperSize="9" orientation="portrait" r:id="rId1"/><drawing r:id="rId2"/><legacyDrawing r:id="rId3"/><extLst><ext uri="{78C0D931-6437-407d-A8EE-F0AAD7539E65}" xmlns:x14="http://schemas.microsoft.com/office/spreadsheetml/2009/9/main"><x14:conditionalFormattings><x14:conditionalFormatting xmlns:xm="http://schemas.microsoft.com/office/excel/2006/main"><x14:cfRule type="dataBar" id="{9A0C0B77-0000-4000-8000-000000000001}"><x14:dataBar><x14:cfvo type="autoMin"/><x14:cfvo type="autoMax"/></x14:dataBar></x14:cfRule><xm:sqref>C3:C5</xm:sqref></x14:conditionalFormatting></x14:conditionalFormattings></ext></extLst></worksheet>`;

const PARTS = `${HEAD}<worksheet xmlns="${MAIN}" xmlns:r="${OFFICE}"><dimension ref="A1:B3"/><sheetData><row r="1"><c r="A1" t="s"><v>9</v></c><c r="B1" t="s"><v>10</v></c></row><row r="2"><c r="A2" t="s"><v>11</v></c><c r="B2"><v>3</v></c></row><row r="3"><c r="A3" t="s"><v>12</v></c><c r="B3"><f>SUM(B2:B2)</f><v>3</v></c></row></sheetData><tableParts count="1"><tablePart r:id="rId1"/></tableParts></worksheet>`;

const PIVOT = `${HEAD}<worksheet xmlns="${MAIN}"><dimension ref="A3:B4"/><sheetData><row r="3"><c r="A3" t="s"><v>9</v></c><c r="B3" t="s"><v>10</v></c></row><row r="4"><c r="A4" t="s"><v>11</v></c><c r="B4"><v>3</v></c></row></sheetData></worksheet>`;

const TEXTS = [
  "Bores, hire boat 7",
  "Cylinder",
  "Bore",
  "Wear",
  "seen by 2nd person",
  "Rust line",
  "none &amp; clean",
  "least",
  "most",
  "Part",
  "Count",
  "Gasket",
  "Sum",
];

const workbook = `${HEAD}<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><workbookPr codeName="ThisWorkbook" defaultThemeVersion="166925"/><workbookProtection lockStructure="1"/><bookViews><workbookView xWindow="0" yWindow="0" windowWidth="20000" windowHeight="9000" activeTab="0"/></bookViews><sheets><sheet name="Bores" sheetId="1" r:id="rId1"/><sheet name="Parts" sheetId="4" r:id="rId2"/><sheet name="Pivot" sheetId="7" state="hidden" r:id="rId3"/></sheets><definedNames><definedName name="Most">Bores!$B$10</definedName><definedName name="_xlnm.Print_Area" localSheetId="0">Bores!$A$1:$F$10</definedName></definedNames><calcPr calcId="191029"/><pivotCaches><pivotCache cacheId="1" r:id="rId9"/></pivotCaches></workbook>`;

const styles = `${HEAD}<styleSheet xmlns="${MAIN}" xmlns:mc="http://schemas.openxmlformats.org/markup-compatibility/2006" mc:Ignorable="x14ac" xmlns:x14ac="http://schemas.microsoft.com/office/spreadsheetml/2009/9/ac"><numFmts count="1"><numFmt numFmtId="164" formatCode="0.000"/></numFmts><fonts count="2" x14ac:knownFonts="1"><font><sz val="11"/><color theme="1"/><name val="Calibri"/><family val="2"/><scheme val="minor"/></font><font><b/><sz val="16"/><color theme="1"/><name val="Calibri"/><family val="2"/><scheme val="minor"/></font></fonts><fills count="4"><fill><patternFill patternType="none"/></fill><fill><patternFill patternType="gray125"/></fill><fill><patternFill patternType="solid"><fgColor rgb="FFFFFFCC"/><bgColor indexed="64"/></patternFill></fill><fill><patternFill patternType="solid"><fgColor theme="4" tint="0.79998168889431442"/><bgColor indexed="64"/></patternFill></fill></fills><borders count="1"><border><left/><right/><top/><bottom/><diagonal/></border></borders><cellStyleXfs count="1"><xf numFmtId="0" fontId="0" fillId="0" borderId="0"/></cellStyleXfs><cellXfs count="5"><xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0"/><xf numFmtId="0" fontId="1" fillId="0" borderId="0" xfId="0" applyFont="1"/><xf numFmtId="164" fontId="0" fillId="2" borderId="0" xfId="0" applyNumberFormat="1" applyFill="1" applyProtection="1"><protection locked="0"/></xf><xf numFmtId="164" fontId="0" fillId="3" borderId="0" xfId="0" applyNumberFormat="1" applyFill="1"><alignment horizontal="center"/></xf><xf numFmtId="0" fontId="0" fillId="0" borderId="0" xfId="0" quotePrefix="1"/></cellXfs><cellStyles count="1"><cellStyle name="Normal" xfId="0" builtinId="0"/></cellStyles><dxfs count="1"><dxf><fill><patternFill><bgColor rgb="FFFFC7CE"/></patternFill></fill></dxf></dxfs><tableStyles count="0" defaultTableStyle="TableStyleMedium2" defaultPivotStyle="PivotStyleLight16"/></styleSheet>`;

const scheme = (name: string, colour: string): string => `<a:${name}>${colour}</a:${name}>`;
const rgb = (value: string): string => `<a:srgbClr val="${value}"/>`;
const theme = `${HEAD}<a:theme xmlns:a="${DRAWING}/main" name="Office"><a:themeElements><a:clrScheme name="Office">${scheme("dk1", '<a:sysClr val="windowText" lastClr="000000"/>')}${scheme("lt1", '<a:sysClr val="window" lastClr="FFFFFF"/>')}${[
  ["dk2", "44546A"],
  ["lt2", "E7E6E6"],
  ["accent1", "4472C4"],
  ["accent2", "ED7D31"],
  ["accent3", "A5A5A5"],
  ["accent4", "FFC000"],
  ["accent5", "5B9BD5"],
  ["accent6", "70AD47"],
  ["hlink", "0563C1"],
  ["folHlink", "954F72"],
]
  .map(([name, value]) => scheme(name!, rgb(value!)))
  .join(
    "",
  )}</a:clrScheme><a:fontScheme name="Office"><a:majorFont><a:latin typeface="Calibri Light"/><a:ea typeface=""/><a:cs typeface=""/></a:majorFont><a:minorFont><a:latin typeface="Calibri"/><a:ea typeface=""/><a:cs typeface=""/></a:minorFont></a:fontScheme><a:fmtScheme name="Office"><a:fillStyleLst>${'<a:solidFill><a:schemeClr val="phClr"/></a:solidFill>'.repeat(3)}</a:fillStyleLst><a:lnStyleLst>${'<a:ln w="6350"><a:solidFill><a:schemeClr val="phClr"/></a:solidFill></a:ln>'.repeat(3)}</a:lnStyleLst><a:effectStyleLst>${"<a:effectStyle><a:effectLst/></a:effectStyle>".repeat(3)}</a:effectStyleLst><a:bgFillStyleLst>${'<a:solidFill><a:schemeClr val="phClr"/></a:solidFill>'.repeat(3)}</a:bgFillStyleLst></a:fmtScheme></a:themeElements></a:theme>`;

const chart = `${HEAD}<c:chartSpace xmlns:c="${DRAWING}/chart" xmlns:a="${DRAWING}/main"><c:chart><c:plotArea><c:layout/><c:barChart><c:barDir val="col"/><c:grouping val="clustered"/><c:ser><c:idx val="0"/><c:order val="0"/><c:val><c:numRef><c:f>Bores!$B$3:$B$5</c:f><c:numCache><c:formatCode>0.000</c:formatCode><c:ptCount val="3"/><c:pt idx="0"><c:v>73.02</c:v></c:pt><c:pt idx="1"><c:v>73.05</c:v></c:pt></c:numCache></c:numRef></c:val></c:ser><c:axId val="1"/><c:axId val="2"/></c:barChart><c:catAx><c:axId val="1"/><c:scaling/><c:delete val="0"/><c:axPos val="b"/><c:crossAx val="2"/></c:catAx><c:valAx><c:axId val="2"/><c:scaling/><c:delete val="0"/><c:axPos val="l"/><c:crossAx val="1"/></c:valAx></c:plotArea><c:plotVisOnly val="1"/></c:chart></c:chartSpace>`;

const anchor = (row: number, inside: string): string =>
  `<xdr:twoCellAnchor><xdr:from><xdr:col>7</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>${row}</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:from><xdr:to><xdr:col>12</xdr:col><xdr:colOff>0</xdr:colOff><xdr:row>${row + 8}</xdr:row><xdr:rowOff>0</xdr:rowOff></xdr:to>${inside}<xdr:clientData/></xdr:twoCellAnchor>`;
const drawing = `${HEAD}<xdr:wsDr xmlns:xdr="${DRAWING}/spreadsheetDrawing" xmlns:a="${DRAWING}/main" xmlns:r="${OFFICE}">${anchor(1, `<xdr:graphicFrame macro=""><xdr:nvGraphicFramePr><xdr:cNvPr id="2" name="Chart 1"/><xdr:cNvGraphicFramePr/></xdr:nvGraphicFramePr><xdr:xfrm><a:off x="0" y="0"/><a:ext cx="0" cy="0"/></xdr:xfrm><a:graphic><a:graphicData uri="${DRAWING}/chart"><c:chart xmlns:c="${DRAWING}/chart" r:id="rId1"/></a:graphicData></a:graphic></xdr:graphicFrame>`)}${anchor(12, '<xdr:pic><xdr:nvPicPr><xdr:cNvPr id="3" name="Picture 1"/><xdr:cNvPicPr/></xdr:nvPicPr><xdr:blipFill><a:blip r:embed="rId2"/><a:stretch><a:fillRect/></a:stretch></xdr:blipFill><xdr:spPr><a:xfrm><a:off x="0" y="0"/><a:ext cx="9525" cy="9525"/></a:xfrm><a:prstGeom prst="rect"><a:avLst/></a:prstGeom></xdr:spPr></xdr:pic>')}</xdr:wsDr>`;

const comments = `${HEAD}<comments xmlns="${MAIN}"><authors><author>Yard</author><author>tc={AAAAAAAA-0000-4000-8000-000000000001}</author></authors><commentList><comment ref="B4" authorId="0" shapeId="0"><text><r><t>measured twice</t></r></text></comment><comment ref="B3" authorId="1" shapeId="0"><text><t>[Threaded comment] warm?</t></text></comment></commentList></comments>`;
const vml = `<xml xmlns:v="urn:schemas-microsoft-com:vml" xmlns:o="urn:schemas-microsoft-com:office:office" xmlns:x="urn:schemas-microsoft-com:office:excel"><v:shapetype id="_x0000_t202" coordsize="21600,21600" o:spt="202" path="m,l,21600r21600,l21600,xe"/><v:shape id="_x0000_s1025" type="#_x0000_t202" style='visibility:hidden'><x:ClientData ObjectType="Note"><x:Row>3</x:Row><x:Column>1</x:Column></x:ClientData></v:shape></xml>`;
const threaded = `${HEAD}<ThreadedComments xmlns="http://schemas.microsoft.com/office/spreadsheetml/2018/threadedcomments"><threadedComment ref="B3" dT="2026-01-05T10:00:00.00" personId="{BBBBBBBB-0000-4000-8000-000000000001}" id="{AAAAAAAA-0000-4000-8000-000000000001}"><text>warm?</text></threadedComment></ThreadedComments>`;
const persons = `${HEAD}<personList xmlns="http://schemas.microsoft.com/office/spreadsheetml/2018/threadedcomments"><person displayName="Yard" id="{BBBBBBBB-0000-4000-8000-000000000001}" userId="Yard" providerId="None"/></personList>`;
const table = `${HEAD}<table xmlns="${MAIN}" id="1" name="PartList" displayName="PartList" ref="A1:B3" totalsRowCount="1"><autoFilter ref="A1:B2"/><tableColumns count="2"><tableColumn id="1" name="Part" totalsRowLabel="Sum"/><tableColumn id="2" name="Count" totalsRowFunction="sum"/></tableColumns><tableStyleInfo name="TableStyleMedium2" showFirstColumn="0" showLastColumn="0" showRowStripes="1" showColumnStripes="0"/></table>`;
const cache = `${HEAD}<pivotCacheDefinition xmlns="${MAIN}" xmlns:r="${OFFICE}" r:id="rId1" refreshOnLoad="0" recordCount="1"><cacheSource type="worksheet"><worksheetSource ref="A1:B2" sheet="Parts"/></cacheSource><cacheFields count="2"><cacheField name="Part" numFmtId="0"><sharedItems count="1"><s v="Gasket"/></sharedItems></cacheField><cacheField name="Count" numFmtId="0"><sharedItems containsSemiMixedTypes="0" containsString="0" containsNumber="1" containsInteger="1" minValue="3" maxValue="3"/></cacheField></cacheFields></pivotCacheDefinition>`;
const records = `${HEAD}<pivotCacheRecords xmlns="${MAIN}" count="1"><r><x v="0"/><n v="3"/></r></pivotCacheRecords>`;
const pivot = `${HEAD}<pivotTableDefinition xmlns="${MAIN}" name="Counts" cacheId="1" dataCaption="Values"><location ref="A3:B4" firstHeaderRow="1" firstDataRow="1" firstDataCol="1"/><pivotFields count="2"><pivotField axis="axisRow" showAll="0"><items count="1"><item x="0"/></items></pivotField><pivotField dataField="1" showAll="0"/></pivotFields><rowFields count="1"><field x="0"/></rowFields><rowItems count="1"><i><x/></i></rowItems><colItems count="1"><i/></colItems><dataFields count="1"><dataField name="Count " fld="1"/></dataFields></pivotTableDefinition>`;
const metadata = `${HEAD}<metadata xmlns="${MAIN}" xmlns:xda="http://schemas.microsoft.com/office/spreadsheetml/2017/dynamicarray" xmlns:xlrd="http://schemas.microsoft.com/office/spreadsheetml/2017/richdata"><metadataTypes count="2"><metadataType name="XLDAPR" minSupportedVersion="120000" copy="1" pasteAll="1" pasteValues="1" merge="1" splitFirst="1" rowColShift="1" clearFormats="1" clearComments="1" assign="1" coerce="1" cellMeta="1"/><metadataType name="XLRICHVALUE" minSupportedVersion="120000" copy="1" pasteAll="1" pasteValues="1" merge="1" splitFirst="1" rowColShift="1" clearFormats="1" clearComments="1" assign="1" coerce="1"/></metadataTypes><futureMetadata name="XLDAPR" count="1"><bk><extLst><ext uri="{bdbb8cdc-fa1e-496e-a857-3c3f30c029c3}"><xda:dynamicArrayProperties fDynamic="1" fCollapsed="0"/></ext></extLst></bk></futureMetadata><futureMetadata name="XLRICHVALUE" count="1"><bk><extLst><ext uri="{3e2802c4-a4d2-4d8b-9148-e3be6c30e623}"><xlrd:rvb i="0"/></ext></extLst></bk></futureMetadata><cellMetadata count="1"><bk><rc t="1" v="0"/></bk></cellMetadata><valueMetadata count="1"><bk><rc t="2" v="0"/></bk></valueMetadata></metadata>`;
const webExtension = `${HEAD}<we:webextension xmlns:we="http://schemas.microsoft.com/office/webextensions/webextension/2010/11" id="{CCCCCCCC-0000-4000-8000-000000000001}"><we:reference id="pane" version="1.0.0.0" store="\\\\shelf\\panes" storeType="Filesystem"/><we:properties/><we:bindings/></we:webextension>`;
const panes = `${HEAD}<wetp:taskpanes xmlns:wetp="http://schemas.microsoft.com/office/webextensions/taskpanes/2010/11" xmlns:r="${OFFICE}"><wetp:taskpane dockstate="right" visibility="0" width="350" row="0"><wetp:webextensionref r:id="rId1"/></wetp:taskpane></wetp:taskpanes>`;

const TYPE_OF: Record<string, string> = {
  "xl/workbook.xml": `${TYPES}.spreadsheetml.sheet.main+xml`,
  "xl/worksheets/sheet1.xml": `${TYPES}.spreadsheetml.worksheet+xml`,
  "xl/worksheets/sheet2.xml": `${TYPES}.spreadsheetml.worksheet+xml`,
  "xl/worksheets/sheet3.xml": `${TYPES}.spreadsheetml.worksheet+xml`,
  "xl/styles.xml": `${TYPES}.spreadsheetml.styles+xml`,
  "xl/theme/theme1.xml": `${TYPES}.theme+xml`,
  "xl/sharedStrings.xml": `${TYPES}.spreadsheetml.sharedStrings+xml`,
  "xl/metadata.xml": `${TYPES}.spreadsheetml.sheetMetadata+xml`,
  "xl/calcChain.xml": `${TYPES}.spreadsheetml.calcChain+xml`,
  "xl/drawings/drawing1.xml": `${TYPES}.drawing+xml`,
  "xl/charts/chart1.xml": `${TYPES}.drawingml.chart+xml`,
  "xl/comments1.xml": `${TYPES}.spreadsheetml.comments+xml`,
  "xl/threadedComments/threadedComment1.xml": "application/vnd.ms-excel.threadedcomments+xml",
  "xl/persons/person.xml": "application/vnd.ms-excel.person+xml",
  "xl/tables/table1.xml": `${TYPES}.spreadsheetml.table+xml`,
  "xl/pivotCache/pivotCacheDefinition1.xml": `${TYPES}.spreadsheetml.pivotCacheDefinition+xml`,
  "xl/pivotCache/pivotCacheRecords1.xml": `${TYPES}.spreadsheetml.pivotCacheRecords+xml`,
  "xl/pivotTables/pivotTable1.xml": `${TYPES}.spreadsheetml.pivotTable+xml`,
  "xl/webextensions/webextension1.xml": "application/vnd.ms-office.webextension+xml",
  "xl/webextensions/taskpanes.xml": "application/vnd.ms-office.webextensiontaskpanes+xml",
  "customXml/itemProps1.xml": `${TYPES}.customXmlProperties+xml`,
  "docProps/core.xml": "application/vnd.openxmlformats-package.core-properties+xml",
  "docProps/app.xml": `${TYPES}.extended-properties+xml`,
  "_xmlsignatures/sig1.xml": "application/vnd.openxmlformats-package.digital-signature-xmlsignature+xml",
};

const types = (names: readonly string[]): string =>
  `${HEAD}<Types xmlns="${PACKAGE}/content-types"><Default Extension="bin" ContentType="application/vnd.ms-office.vbaProject"/><Default Extension="png" ContentType="image/png"/><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="vml" ContentType="${TYPES}.vmlDrawing"/><Default Extension="xml" ContentType="application/xml"/><Default Extension="sigs" ContentType="application/vnd.openxmlformats-package.digital-signature-origin"/>${names.flatMap((name) => (TYPE_OF[name] ? `<Override PartName="/${name}" ContentType="${TYPE_OF[name]}"/>` : [])).join("")}<Override PartName="/xl/printerSettings/printerSettings1.bin" ContentType="${TYPES}.spreadsheetml.printerSettings"/></Types>`;

/** The parts in the order of the archive. */
export function richParts(): Map<string, Uint8Array> {
  const parts: Record<string, string | Uint8Array> = {
    "_rels/.rels": relations(
      ["rId1", "officeDocument", "xl/workbook.xml"],
      ["rId2", `${PACKAGE}/relationships/metadata/core-properties`, "docProps/core.xml"],
      ["rId3", "extended-properties", "docProps/app.xml"],
      ["rId4", "http://schemas.microsoft.com/office/2011/relationships/webextensiontaskpanes", "xl/webextensions/taskpanes.xml"],
      ["rId5", `${PACKAGE}/relationships/digital-signature/origin`, "_xmlsignatures/origin.sigs"],
    ),
    "xl/workbook.xml": workbook,
    "xl/_rels/workbook.xml.rels": relations(
      ["rId1", "worksheet", "worksheets/sheet1.xml"],
      ["rId2", "worksheet", "worksheets/sheet2.xml"],
      ["rId3", "worksheet", "/xl/worksheets/sheet3.xml"],
      ["rId4", "theme", "theme/theme1.xml"],
      ["rId5", "styles", "styles.xml"],
      ["rId6", "sharedStrings", "sharedStrings.xml"],
      ["rId7", "sheetMetadata", "metadata.xml"],
      ["rId8", "calcChain", "calcChain.xml"],
      ["rId9", "pivotCacheDefinition", "pivotCache/pivotCacheDefinition1.xml"],
      ["rId10", "http://schemas.microsoft.com/office/2006/relationships/vbaProject", "vbaProject.bin"],
      ["rId11", "http://schemas.microsoft.com/office/2017/10/relationships/person", "persons/person.xml"],
      ["rId12", "customXml", "../customXml/item1.xml"],
    ),
    "xl/worksheets/sheet1.xml": BORES,
    "xl/worksheets/sheet2.xml": PARTS,
    "xl/worksheets/sheet3.xml": PIVOT,
    "xl/worksheets/_rels/sheet1.xml.rels": relations(
      ["rId1", "printerSettings", "../printerSettings/printerSettings1.bin"],
      ["rId2", "drawing", "../drawings/drawing1.xml"],
      ["rId3", "vmlDrawing", "../drawings/vmlDrawing1.vml"],
      ["rId4", "comments", "../comments1.xml"],
      ["rId5", "http://schemas.microsoft.com/office/2017/10/relationships/threadedComment", "../threadedComments/threadedComment1.xml"],
    ),
    "xl/worksheets/_rels/sheet2.xml.rels": relations(["rId1", "table", "../tables/table1.xml"]),
    "xl/worksheets/_rels/sheet3.xml.rels": relations(["rId1", "pivotTable", "../pivotTables/pivotTable1.xml"]),
    "xl/theme/theme1.xml": theme,
    "xl/styles.xml": styles,
    "xl/sharedStrings.xml": `${HEAD}<sst xmlns="${MAIN}" count="${TEXTS.length}" uniqueCount="${TEXTS.length}">${TEXTS.map((text) => `<si><t>${text}</t></si>`).join("")}</sst>`,
    "xl/metadata.xml": metadata,
    "xl/calcChain.xml": `${HEAD}<calcChain xmlns="${MAIN}"><c r="C3" i="1"/><c r="C4" i="1"/><c r="D3" i="1" a="1"/><c r="D4" i="1"/><c r="D5" i="1" a="1"/><c r="B3" i="4"/></calcChain>`,
    "xl/drawings/drawing1.xml": drawing,
    "xl/drawings/_rels/drawing1.xml.rels": relations(["rId1", "chart", "../charts/chart1.xml"], ["rId2", "image", "../media/image1.png"]),
    "xl/charts/chart1.xml": chart,
    "xl/media/image1.png": PIXEL,
    "xl/drawings/vmlDrawing1.vml": vml,
    "xl/comments1.xml": comments,
    "xl/threadedComments/threadedComment1.xml": threaded,
    "xl/persons/person.xml": persons,
    "xl/tables/table1.xml": table,
    "xl/pivotCache/pivotCacheDefinition1.xml": cache,
    "xl/pivotCache/_rels/pivotCacheDefinition1.xml.rels": relations(["rId1", "pivotCacheRecords", "pivotCacheRecords1.xml"]),
    "xl/pivotCache/pivotCacheRecords1.xml": records,
    "xl/pivotTables/pivotTable1.xml": pivot,
    "xl/pivotTables/_rels/pivotTable1.xml.rels": relations(["rId1", "pivotCacheDefinition", "../pivotCache/pivotCacheDefinition1.xml"]),
    "xl/printerSettings/printerSettings1.bin": noise(2000, 1),
    "xl/vbaProject.bin": noise(9000, 2),
    "xl/webextensions/webextension1.xml": webExtension,
    "xl/webextensions/taskpanes.xml": panes,
    "xl/webextensions/_rels/taskpanes.xml.rels": relations([
      "rId1",
      "http://schemas.microsoft.com/office/2011/relationships/webextension",
      "webextension1.xml",
    ]),
    "customXml/item1.xml": `<yard xmlns="urn:yard:job"><job no="7">boat &amp; two engines</job></yard>`,
    "customXml/itemProps1.xml": `${HEAD}<ds:datastoreItem xmlns:ds="http://schemas.openxmlformats.org/officeDocument/2006/customXml" ds:itemID="{DDDDDDDD-0000-4000-8000-000000000001}"/>`,
    "customXml/_rels/item1.xml.rels": relations(["rId1", "customXmlProps", "itemProps1.xml"]),
    "docProps/core.xml": `${HEAD}<cp:coreProperties xmlns:cp="${PACKAGE}/metadata/core-properties" xmlns:dc="http://purl.org/dc/elements/1.1/"><dc:creator>Yard</dc:creator></cp:coreProperties>`,
    "docProps/app.xml": `${HEAD}<Properties xmlns="http://schemas.openxmlformats.org/officeDocument/2006/extended-properties"><Application>Microsoft Excel</Application><AppVersion>16.0300</AppVersion></Properties>`,
    "_xmlsignatures/origin.sigs": "",
    "_xmlsignatures/_rels/origin.sigs.rels": relations(["rId1", `${PACKAGE}/relationships/digital-signature/signature`, "sig1.xml"]),
    "_xmlsignatures/sig1.xml": `${HEAD}<Signature xmlns="http://www.w3.org/2000/09/xmldsig#"><SignatureValue>AAAA</SignatureValue></Signature>`,
  };
  const all = { "[Content_Types].xml": types(Object.keys(parts)), ...parts };
  return new Map(Object.entries(all).map(([name, content]) => [name, typeof content === "string" ? strToU8(content) : content]));
}

/** Its bytes; what is packed already is only stored. */
export const richBook = (): Uint8Array =>
  zipSync(Object.fromEntries([...richParts()].map(([name, content]) => [name, [content, { level: /\.(?:png|bin)$/.test(name) ? 0 : 6 }]])), {
    mtime: new Date(2026, 0, 5, 10, 30),
  });
