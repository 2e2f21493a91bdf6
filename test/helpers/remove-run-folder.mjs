import { rmSync } from "node:fs";

export default function removeRunFolder() {
  rmSync(process.env.CROSSHATCH_TEST_RUN, { recursive: true, force: true });
}
