/** The last line of `.ci/run`: what `npm test`, `npm run test:long` and `npm run test:libreoffice` came to together. */
import { closingLine, isWell, sumOfCounts } from "./counts.ts";

const sum = sumOfCounts();
console.log(`\n${closingLine(sum)}`);
process.exitCode = isWell(sum) ? 0 : 1;
