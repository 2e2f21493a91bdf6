import { type FunctionRegistry, type Given, givenCells, isError, notHere, SheetFault, singleOf, wrapFunction } from "./own-function.ts";

const fault = (sentence: string): SheetFault => new SheetFault("#VALUE!", sentence);

/** Beyond it less than seven digits of a tangent rest on its angle. */
const FAR = 1e9;

/**
 * Functions of the grid that come out otherwise than Excel's in some uses: mended, or refused in these uses. What Excel gives is taken
 * from the values that it keeps in public test workbooks: vinci1it2000/formulas (test.xlsx), ironcalc/IronCalc (calc_tests).
 */
export function answerAsExcel(registry: FunctionRegistry): void {
  zeroPowers(registry);
  quoteFewerNames(registry);
  countEmptyTexts(registry);
  cutByWholePlaces(registry);

  const noText = fault(notHere("The columns or rows to choose are numbers: texts that read as numbers are not worked out here."));
  for (const name of ["CHOOSECOLS", "CHOOSEROWS"])
    wrapFunction(registry, name, ([, ...places], grid) => {
      const cells = places.flatMap((given) => [...givenCells(given)]);
      return cells.some((cell) => typeof cell?.value === "string" && !isError(cell.value)) ? noText : grid();
    });

  const noNumber = fault("A number is wanted where there is a truth value.");
  wrapFunction(registry, "VALUE", ([given], grid) => (typeof singleOf(given) === "boolean" ? noNumber : grid()));

  const noDigit = new SheetFault("#NUM!", "A digit of the number is not below its base.");
  wrapFunction(registry, "DECIMAL", ([text, base], grid) => {
    const digits = [...String(singleOf(text) ?? "")].map((digit) => Number.parseInt(digit, 36));
    return digits.some((digit) => digit >= Number(singleOf(base))) ? noDigit : grid();
  });

  const unsaid = fault(notHere("Whether a cell that shows an error holds a formula is not told here."));
  wrapFunction(registry, "ISFORMULA", ([given], grid) => (isError(singleOf(given)) ? unsaid : grid()));

  const nearPole = (name: string): SheetFault =>
    new SheetFault(
      "#NUM!",
      notHere(`${name} of an angle so near to where it has no value is not worked out here: how pi is rounded would be all there is to it.`),
    );
  for (const name of ["TAN", "COT", "SEC", "CSC"]) {
    const refusal = nearPole(name);
    wrapFunction(registry, name, (_, grid) => {
      const found = grid();
      const value = typeof found === "number" ? found : singleOf(found as Given);
      return typeof value === "number" && Math.abs(value) > FAR ? refusal : found;
    });
  }

  const noBins = fault(notHere("FREQUENCY with blank cells among the upper ends of its classes is not worked out here."));
  wrapFunction(registry, "FREQUENCY", ([data, ends], grid) =>
    [...givenCells(ends)].some((cell) => (cell?.value ?? null) === null) ? noBins : grid([data, ends]),
  );
}

/** 0 to the power of 0 is an error in Excel and 1 in LibreOffice; of what is below 0 it is a division by 0. */
function zeroPowers(registry: FunctionRegistry): void {
  const nothing = new SheetFault("#NUM!", notHere("0 to the power of 0 is an error in some office programs and 1 in others."));
  const division = new SheetFault("#DIV/0!", "0 to a power below 0 would divide by 0.");
  const isZero = (given: Given): boolean => [0, null, undefined, false].includes((singleOf(given) ?? null) as null);
  for (const name of ["POWER", "POW"])
    wrapFunction(registry, name, ([base, exponent], grid) =>
      !isZero(base) ? grid() : isZero(exponent) ? nothing : Number(singleOf(exponent)) < 0 ? division : grid(),
    );
}

/** ADDRESS puts quotes round the name of a sheet where a reference wants them: not round brackets, and not round nothing. */
function quoteFewerNames(registry: FunctionRegistry): void {
  wrapFunction(registry, "ADDRESS", (args, grid) => {
    const sheet = singleOf(args[4]) ?? "";
    const isPlain =
      args.length > 4 &&
      typeof sheet === "string" &&
      !isError(sheet) &&
      /^(?:\[[A-Za-z]\w*\])?(?:[A-Za-z]\w*)?$/.test(sheet) &&
      !/^(?:[a-z]{1,3}\d+|r\d*(?:c\d*)?|c\d*)$/i.test(sheet);
    if (!isPlain) return grid();
    const place = grid(args.slice(0, 4));
    const text = typeof place === "object" ? singleOf(place as Given) : place;
    return isError(text) ? place : `${sheet}!${text}`;
  });
}

/** COUNTA counts texts without letters, which formulas give; functions of all values refuse one that is typed. */
function countEmptyTexts(registry: FunctionRegistry): void {
  wrapFunction(registry, "COUNTA", (args) => {
    let count = 0;
    for (const given of args) for (const cell of givenCells(given)) if ((cell?.value ?? null) !== null) count++;
    return count;
  });
  const noNumber = fault("A number is wanted where there is empty text.");
  for (const name of ["AVERAGEA", "MAXA", "MINA", "STDEVA", "STDEVPA", "VARA", "VARPA"])
    wrapFunction(registry, name, (args, grid) => (args.some((given) => !Array.isArray(given) && given?.value === "") ? noNumber : grid()));
}

/** Which of the delimiters counts is a whole number; what stands for nothing found is empty where its cell is. */
function cutByWholePlaces(registry: FunctionRegistry): void {
  const several = fault(notHere("TEXTBEFORE and TEXTAFTER are worked out here for one delimiter alone."));
  const tooLong = fault(notHere("What TEXTBEFORE and TEXTAFTER give for a delimiter longer than the text is not worked out here."));
  for (const name of ["TEXTBEFORE", "TEXTAFTER"]) {
    const own = registry.content[name];
    if (!own) continue;
    registry.replace(name, {
      ...own,
      args: own.args.map((arg, i) => (i === 1 ? { ...arg, acceptMatrix: true } : arg)),
      compute(text, delimiters, place, ...rest) {
        const [delimiter, ...more] = givenCells(delimiters);
        if (more.length > 0) return several;
        if (isError(delimiter?.value)) return delimiter;
        if (place && String(delimiter?.value ?? "").length > String(singleOf(text) ?? "").length) return tooLong;
        const at = singleOf(place);
        const whole = typeof at === "number" ? { value: Math.floor(at) } : place;
        const found = own.compute.call(this, text, delimiter, whole, ...rest) as Given;
        return found !== undefined && singleOf(found) === null ? "" : found;
      },
    });
  }
}
