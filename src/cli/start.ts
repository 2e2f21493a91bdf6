/** The program: the command that this process's arguments ask for, with its own streams. */
import { run } from "./main.ts";
import { endWithReader } from "./output.ts";

endWithReader();
process.exitCode = await run(process.argv.slice(2), process);
