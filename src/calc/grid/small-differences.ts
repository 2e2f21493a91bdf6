import { type FunctionRegistry, type Given, givenCells, notHere, SheetFault, singleOf, wrapFunction } from "./own-function.ts";

const fault = (sentence: string): SheetFault => new SheetFault("#VALUE!", sentence);

/** Beyond it less than seven digits of a tangent rest on its angle. */
const FAR = 1e9;

/**
 * Functions of the grid that come out otherwise than Excel's in some uses: mended, or refused in these uses. What Excel gives is taken
 * from the values that it keeps in public test workbooks: vinci1it2000/formulas (test.xlsx), ironcalc/IronCalc (calc_tests).
 */
export function answerAsExcel(registry: FunctionRegistry): void {
  zeroPowers(registry);
  countEmptyTexts(registry);

  const noSheet = fault(notHere("ADDRESS with the name of a sheet is not worked out here: which names are put in quotes differs."));
  wrapFunction(registry, "ADDRESS", (args, grid) => (args[4] === undefined ? grid() : noSheet));

  // What is left out between commas is 1, as at the end.
  wrapFunction(registry, "SEQUENCE", (args, grid) => grid(args.map((given) => given ?? { value: 1 })));

  const noNumber = fault("A number is wanted where there is a truth value.");
  wrapFunction(registry, "VALUE", ([given], grid) => (typeof singleOf(given) === "boolean" ? noNumber : grid()));

  const nearPole = new SheetFault(
    "#NUM!",
    notHere("TAN of an angle so near to where it has no value is not worked out here: how pi is rounded would be all there is to it."),
  );
  wrapFunction(registry, "TAN", (_, grid) => {
    const found = grid();
    const value = typeof found === "number" ? found : singleOf(found as Given);
    return typeof value === "number" && Math.abs(value) > FAR ? nearPole : found;
  });

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
