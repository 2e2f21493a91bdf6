// Made by `npm run generate`. The loops are alike but for their inputs; each function has its own so
// that the compiler can join it with that function's compute (src/core/batch.ts).
import type { Loop } from "../core/batch.ts";
import type { Result } from "../core/cell.ts";

export const loops: Readonly<Record<string, Loop>> = {
  CLEARANCE(compute, feeds, row, columns, closer) {
    const { block: block0, down: down0, across: across0, least: least0, most: most0 } = feeds[0]!;
    const x0 = block0[row * down0]!;
    const { block: block1, down: down1, across: across1, least: least1, most: most1 } = feeds[1]!;
    const x1 = block1[row * down1]!;
    const line: Result[] = new Array(columns);
    for (let c = 0; c < columns; c++) {
      const v0 = x0[c & across0];
      const v1 = x1[c & across1];
      if (typeof v0 === "number" && v0 >= least0 && v0 <= most0 && typeof v1 === "number" && v1 >= least1 && v1 <= most1) {
        const made = compute({ element: 0, hole: v0, shaft: v1 });
        if (typeof made === "number" ? made - made === 0 : typeof made === "string") {
          line[c] = made as Result;
          continue;
        }
      }
      line[c] = closer(row, c);
    }
    return line;
  },
  FINISHBORE(compute, feeds, row, columns, closer) {
    const { block: block0, down: down0, across: across0, least: least0, most: most0 } = feeds[0]!;
    const x0 = block0[row * down0]!;
    const { block: block1, down: down1, across: across1, least: least1, most: most1 } = feeds[1]!;
    const x1 = block1[row * down1]!;
    const line: Result[] = new Array(columns);
    for (let c = 0; c < columns; c++) {
      const v0 = x0[c & across0];
      const v1 = x1[c & across1];
      if (typeof v0 === "number" && v0 >= least0 && v0 <= most0 && typeof v1 === "number" && v1 >= least1 && v1 <= most1) {
        const made = compute({ element: 0, piston: v0, clearance: v1 });
        if (typeof made === "number" ? made - made === 0 : typeof made === "string") {
          line[c] = made as Result;
          continue;
        }
      }
      line[c] = closer(row, c);
    }
    return line;
  },
  HOTCLEARANCE(compute, feeds, row, columns, closer) {
    const { block: block0, down: down0, across: across0, least: least0, most: most0 } = feeds[0]!;
    const x0 = block0[row * down0]!;
    const f1 = feeds[1]!.fixed;
    const { block: block2, down: down2, across: across2, least: least2, most: most2 } = feeds[2]!;
    const x2 = block2[row * down2]!;
    const { block: block3, down: down3, across: across3, least: least3, most: most3 } = feeds[3]!;
    const x3 = block3[row * down3]!;
    const f4 = feeds[4]!.fixed;
    const { block: block5, down: down5, across: across5, least: least5, most: most5 } = feeds[5]!;
    const x5 = block5[row * down5]!;
    const f6 = feeds[6]!.fixed;
    const line: Result[] = new Array(columns);
    for (let c = 0; c < columns; c++) {
      const v0 = x0[c & across0];
      const v2 = x2[c & across2];
      const v3 = x3[c & across3];
      const v5 = x5[c & across5];
      if (typeof v0 === "number" && v0 >= least0 && v0 <= most0 && typeof v2 === "number" && v2 >= least2 && v2 <= most2 && typeof v3 === "number" && v3 >= least3 && v3 <= most3 && typeof v5 === "number" && v5 >= least5 && v5 <= most5) {
        const made = compute({ element: 0, bore: v0, boreMaterial: f1, boreTemperature: v2, piston: v3, pistonMaterial: f4, pistonTemperature: v5, unit: f6 });
        if (typeof made === "number" ? made - made === 0 : typeof made === "string") {
          line[c] = made as Result;
          continue;
        }
      }
      line[c] = closer(row, c);
    }
    return line;
  },
  PISTONSPEED(compute, feeds, row, columns, closer) {
    const { block: block0, down: down0, across: across0, least: least0, most: most0 } = feeds[0]!;
    const x0 = block0[row * down0]!;
    const { block: block1, down: down1, across: across1, least: least1, most: most1 } = feeds[1]!;
    const x1 = block1[row * down1]!;
    const f2 = feeds[2]!.fixed;
    const line: Result[] = new Array(columns);
    for (let c = 0; c < columns; c++) {
      const v0 = x0[c & across0];
      const v1 = x1[c & across1];
      if (typeof v0 === "number" && v0 >= least0 && v0 <= most0 && typeof v1 === "number" && v1 >= least1 && v1 <= most1) {
        const made = compute({ element: 0, stroke: v0, rpm: v1, unit: f2 });
        if (typeof made === "number" ? made - made === 0 : typeof made === "string") {
          line[c] = made as Result;
          continue;
        }
      }
      line[c] = closer(row, c);
    }
    return line;
  },
  RINGGAPATBORE(compute, feeds, row, columns, closer) {
    const { block: block0, down: down0, across: across0, least: least0, most: most0 } = feeds[0]!;
    const x0 = block0[row * down0]!;
    const { block: block1, down: down1, across: across1, least: least1, most: most1 } = feeds[1]!;
    const x1 = block1[row * down1]!;
    const { block: block2, down: down2, across: across2, least: least2, most: most2 } = feeds[2]!;
    const x2 = block2[row * down2]!;
    const line: Result[] = new Array(columns);
    for (let c = 0; c < columns; c++) {
      const v0 = x0[c & across0];
      const v1 = x1[c & across1];
      const v2 = x2[c & across2];
      if (typeof v0 === "number" && v0 >= least0 && v0 <= most0 && typeof v1 === "number" && v1 >= least1 && v1 <= most1 && typeof v2 === "number" && v2 >= least2 && v2 <= most2) {
        const made = compute({ element: 0, gap: v0, boreMeasuredIn: v1, boreRun: v2 });
        if (typeof made === "number" ? made - made === 0 : typeof made === "string") {
          line[c] = made as Result;
          continue;
        }
      }
      line[c] = closer(row, c);
    }
    return line;
  },
  RINGGAPFILE(compute, feeds, row, columns, closer) {
    const { block: block0, down: down0, across: across0, least: least0, most: most0 } = feeds[0]!;
    const x0 = block0[row * down0]!;
    const { block: block1, down: down1, across: across1, least: least1, most: most1 } = feeds[1]!;
    const x1 = block1[row * down1]!;
    const line: Result[] = new Array(columns);
    for (let c = 0; c < columns; c++) {
      const v0 = x0[c & across0];
      const v1 = x1[c & across1];
      if (typeof v0 === "number" && v0 >= least0 && v0 <= most0 && typeof v1 === "number" && v1 >= least1 && v1 <= most1) {
        const made = compute({ element: 0, measured: v0, target: v1 });
        if (typeof made === "number" ? made - made === 0 : typeof made === "string") {
          line[c] = made as Result;
          continue;
        }
      }
      line[c] = closer(row, c);
    }
    return line;
  },
  RINGGAPTARGET(compute, feeds, row, columns, closer) {
    const { block: block0, down: down0, across: across0, least: least0, most: most0 } = feeds[0]!;
    const x0 = block0[row * down0]!;
    const { block: block1, down: down1, across: across1, least: least1, most: most1 } = feeds[1]!;
    const x1 = block1[row * down1]!;
    const line: Result[] = new Array(columns);
    for (let c = 0; c < columns; c++) {
      const v0 = x0[c & across0];
      const v1 = x1[c & across1];
      if (typeof v0 === "number" && v0 >= least0 && v0 <= most0 && typeof v1 === "number" && v1 >= least1 && v1 <= most1) {
        const made = compute({ element: 0, bore: v0, perBore: v1 });
        if (typeof made === "number" ? made - made === 0 : typeof made === "string") {
          line[c] = made as Result;
          continue;
        }
      }
      line[c] = closer(row, c);
    }
    return line;
  },
  RINGSIDE(compute, feeds, row, columns, closer) {
    const { block: block0, down: down0, across: across0, least: least0, most: most0 } = feeds[0]!;
    const x0 = block0[row * down0]!;
    const { block: block1, down: down1, across: across1, least: least1, most: most1 } = feeds[1]!;
    const x1 = block1[row * down1]!;
    const line: Result[] = new Array(columns);
    for (let c = 0; c < columns; c++) {
      const v0 = x0[c & across0];
      const v1 = x1[c & across1];
      if (typeof v0 === "number" && v0 >= least0 && v0 <= most0 && typeof v1 === "number" && v1 >= least1 && v1 <= most1) {
        const made = compute({ element: 0, groove: v0, ring: v1 });
        if (typeof made === "number" ? made - made === 0 : typeof made === "string") {
          line[c] = made as Result;
          continue;
        }
      }
      line[c] = closer(row, c);
    }
    return line;
  },
  RINGWEAR(compute, feeds, row, columns, closer) {
    const { block: block0, down: down0, across: across0, least: least0, most: most0 } = feeds[0]!;
    const x0 = block0[row * down0]!;
    const { block: block1, down: down1, across: across1, least: least1, most: most1 } = feeds[1]!;
    const x1 = block1[row * down1]!;
    const { block: block2, down: down2, across: across2, least: least2, most: most2, isLeftOut: out2 } = feeds[2]!;
    const x2 = block2[row * down2]!;
    const { block: block3, down: down3, across: across3, least: least3, most: most3, isLeftOut: out3 } = feeds[3]!;
    const x3 = block3[row * down3]!;
    const line: Result[] = new Array(columns);
    for (let c = 0; c < columns; c++) {
      const v0 = x0[c & across0];
      const v1 = x1[c & across1];
      const v2 = x2[c & across2];
      const v3 = x3[c & across3];
      if (typeof v0 === "number" && v0 >= least0 && v0 <= most0 && typeof v1 === "number" && v1 >= least1 && v1 <= most1 && (typeof v2 === "number" && v2 >= least2 && v2 <= most2 || (out2 && v2 === undefined)) && (typeof v3 === "number" && v3 >= least3 && v3 <= most3 || (out3 && v3 === undefined))) {
        const made = compute({ element: 0, gapBefore: v0, gapAfter: v1, boreBefore: v2, boreAfter: v3 });
        if (typeof made === "number" ? made - made === 0 : typeof made === "string") {
          line[c] = made as Result;
          continue;
        }
      }
      line[c] = closer(row, c);
    }
    return line;
  },
  CHAMBERFOR(compute, feeds, row, columns, closer) {
    const { block: block0, down: down0, across: across0, least: least0, most: most0 } = feeds[0]!;
    const x0 = block0[row * down0]!;
    const { block: block1, down: down1, across: across1, least: least1, most: most1 } = feeds[1]!;
    const x1 = block1[row * down1]!;
    const { block: block2, down: down2, across: across2, least: least2, most: most2 } = feeds[2]!;
    const x2 = block2[row * down2]!;
    const { block: block3, down: down3, across: across3, least: least3, most: most3 } = feeds[3]!;
    const x3 = block3[row * down3]!;
    const { block: block4, down: down4, across: across4, least: least4, most: most4 } = feeds[4]!;
    const x4 = block4[row * down4]!;
    const line: Result[] = new Array(columns);
    for (let c = 0; c < columns; c++) {
      const v0 = x0[c & across0];
      const v1 = x1[c & across1];
      const v2 = x2[c & across2];
      const v3 = x3[c & across3];
      const v4 = x4[c & across4];
      if (typeof v0 === "number" && v0 >= least0 && v0 <= most0 && typeof v1 === "number" && v1 >= least1 && v1 <= most1 && typeof v2 === "number" && v2 >= least2 && v2 <= most2 && typeof v3 === "number" && v3 >= least3 && v3 <= most3 && typeof v4 === "number" && v4 >= least4 && v4 <= most4) {
        const made = compute({ element: 0, ratio: v0, swept: v1, gasket: v2, deck: v3, piston: v4 });
        if (typeof made === "number" ? made - made === 0 : typeof made === "string") {
          line[c] = made as Result;
          continue;
        }
      }
      line[c] = closer(row, c);
    }
    return line;
  },
  COMPRESSIONRATIO(compute, feeds, row, columns, closer) {
    const { block: block0, down: down0, across: across0, least: least0, most: most0 } = feeds[0]!;
    const x0 = block0[row * down0]!;
    const { block: block1, down: down1, across: across1, least: least1, most: most1 } = feeds[1]!;
    const x1 = block1[row * down1]!;
    const { block: block2, down: down2, across: across2, least: least2, most: most2 } = feeds[2]!;
    const x2 = block2[row * down2]!;
    const { block: block3, down: down3, across: across3, least: least3, most: most3 } = feeds[3]!;
    const x3 = block3[row * down3]!;
    const { block: block4, down: down4, across: across4, least: least4, most: most4 } = feeds[4]!;
    const x4 = block4[row * down4]!;
    const line: Result[] = new Array(columns);
    for (let c = 0; c < columns; c++) {
      const v0 = x0[c & across0];
      const v1 = x1[c & across1];
      const v2 = x2[c & across2];
      const v3 = x3[c & across3];
      const v4 = x4[c & across4];
      if (typeof v0 === "number" && v0 >= least0 && v0 <= most0 && typeof v1 === "number" && v1 >= least1 && v1 <= most1 && typeof v2 === "number" && v2 >= least2 && v2 <= most2 && typeof v3 === "number" && v3 >= least3 && v3 <= most3 && typeof v4 === "number" && v4 >= least4 && v4 <= most4) {
        const made = compute({ element: 0, swept: v0, chamber: v1, gasket: v2, deck: v3, piston: v4 });
        if (typeof made === "number" ? made - made === 0 : typeof made === "string") {
          line[c] = made as Result;
          continue;
        }
      }
      line[c] = closer(row, c);
    }
    return line;
  },
  CRANKINGPRESSURE(compute, feeds, row, columns, closer) {
    const { block: block0, down: down0, across: across0, least: least0, most: most0 } = feeds[0]!;
    const x0 = block0[row * down0]!;
    const { block: block1, down: down1, across: across1, least: least1, most: most1, isLeftOut: out1 } = feeds[1]!;
    const x1 = block1[row * down1]!;
    const { block: block2, down: down2, across: across2, least: least2, most: most2 } = feeds[2]!;
    const x2 = block2[row * down2]!;
    const f3 = feeds[3]!.fixed;
    const line: Result[] = new Array(columns);
    for (let c = 0; c < columns; c++) {
      const v0 = x0[c & across0];
      const v1 = x1[c & across1];
      const v2 = x2[c & across2];
      if (typeof v0 === "number" && v0 >= least0 && v0 <= most0 && (typeof v1 === "number" && v1 >= least1 && v1 <= most1 || (out1 && v1 === undefined)) && typeof v2 === "number" && v2 >= least2 && v2 <= most2) {
        const made = compute({ element: 0, ratio: v0, ambient: v1, exponent: v2, unit: f3 });
        if (typeof made === "number" ? made - made === 0 : typeof made === "string") {
          line[c] = made as Result;
          continue;
        }
      }
      line[c] = closer(row, c);
    }
    return line;
  },
  DISCVOLUME(compute, feeds, row, columns, closer) {
    const { block: block0, down: down0, across: across0, least: least0, most: most0 } = feeds[0]!;
    const x0 = block0[row * down0]!;
    const { block: block1, down: down1, across: across1, least: least1, most: most1 } = feeds[1]!;
    const x1 = block1[row * down1]!;
    const f2 = feeds[2]!.fixed;
    const line: Result[] = new Array(columns);
    for (let c = 0; c < columns; c++) {
      const v0 = x0[c & across0];
      const v1 = x1[c & across1];
      if (typeof v0 === "number" && v0 >= least0 && v0 <= most0 && typeof v1 === "number" && v1 >= least1 && v1 <= most1) {
        const made = compute({ element: 0, diameter: v0, thickness: v1, unit: f2 });
        if (typeof made === "number" ? made - made === 0 : typeof made === "string") {
          line[c] = made as Result;
          continue;
        }
      }
      line[c] = closer(row, c);
    }
    return line;
  },
  HEADSKIM(compute, feeds, row, columns, closer) {
    const { block: block0, down: down0, across: across0, least: least0, most: most0 } = feeds[0]!;
    const x0 = block0[row * down0]!;
    const { block: block1, down: down1, across: across1, least: least1, most: most1 } = feeds[1]!;
    const x1 = block1[row * down1]!;
    const { block: block2, down: down2, across: across2, least: least2, most: most2 } = feeds[2]!;
    const x2 = block2[row * down2]!;
    const f3 = feeds[3]!.fixed;
    const line: Result[] = new Array(columns);
    for (let c = 0; c < columns; c++) {
      const v0 = x0[c & across0];
      const v1 = x1[c & across1];
      const v2 = x2[c & across2];
      if (typeof v0 === "number" && v0 >= least0 && v0 <= most0 && typeof v1 === "number" && v1 >= least1 && v1 <= most1 && typeof v2 === "number" && v2 >= least2 && v2 <= most2) {
        const made = compute({ element: 0, chamber: v0, wanted: v1, faceArea: v2, unit: f3 });
        if (typeof made === "number" ? made - made === 0 : typeof made === "string") {
          line[c] = made as Result;
          continue;
        }
      }
      line[c] = closer(row, c);
    }
    return line;
  },
  PISTONTRAVEL(compute, feeds, row, columns, closer) {
    const { block: block0, down: down0, across: across0, least: least0, most: most0 } = feeds[0]!;
    const x0 = block0[row * down0]!;
    const { block: block1, down: down1, across: across1, least: least1, most: most1 } = feeds[1]!;
    const x1 = block1[row * down1]!;
    const { block: block2, down: down2, across: across2, least: least2, most: most2 } = feeds[2]!;
    const x2 = block2[row * down2]!;
    const line: Result[] = new Array(columns);
    for (let c = 0; c < columns; c++) {
      const v0 = x0[c & across0];
      const v1 = x1[c & across1];
      const v2 = x2[c & across2];
      if (typeof v0 === "number" && v0 >= least0 && v0 <= most0 && typeof v1 === "number" && v1 >= least1 && v1 <= most1 && typeof v2 === "number" && v2 >= least2 && v2 <= most2) {
        const made = compute({ element: 0, angle: v0, stroke: v1, rod: v2 });
        if (typeof made === "number" ? made - made === 0 : typeof made === "string") {
          line[c] = made as Result;
          continue;
        }
      }
      line[c] = closer(row, c);
    }
    return line;
  },
  SQUISH(compute, feeds, row, columns, closer) {
    const { block: block0, down: down0, across: across0, least: least0, most: most0 } = feeds[0]!;
    const x0 = block0[row * down0]!;
    const { block: block1, down: down1, across: across1, least: least1, most: most1 } = feeds[1]!;
    const x1 = block1[row * down1]!;
    const line: Result[] = new Array(columns);
    for (let c = 0; c < columns; c++) {
      const v0 = x0[c & across0];
      const v1 = x1[c & across1];
      if (typeof v0 === "number" && v0 >= least0 && v0 <= most0 && typeof v1 === "number" && v1 >= least1 && v1 <= most1) {
        const made = compute({ element: 0, deck: v0, gasket: v1 });
        if (typeof made === "number" ? made - made === 0 : typeof made === "string") {
          line[c] = made as Result;
          continue;
        }
      }
      line[c] = closer(row, c);
    }
    return line;
  },
  SWEPTVOLUME(compute, feeds, row, columns, closer) {
    const { block: block0, down: down0, across: across0, least: least0, most: most0 } = feeds[0]!;
    const x0 = block0[row * down0]!;
    const { block: block1, down: down1, across: across1, least: least1, most: most1 } = feeds[1]!;
    const x1 = block1[row * down1]!;
    const f2 = feeds[2]!.fixed;
    const f3 = feeds[3]!.fixed;
    const line: Result[] = new Array(columns);
    for (let c = 0; c < columns; c++) {
      const v0 = x0[c & across0];
      const v1 = x1[c & across1];
      if (typeof v0 === "number" && v0 >= least0 && v0 <= most0 && typeof v1 === "number" && v1 >= least1 && v1 <= most1) {
        const made = compute({ element: 0, bore: v0, stroke: v1, cylinders: f2, unit: f3 });
        if (typeof made === "number" ? made - made === 0 : typeof made === "string") {
          line[c] = made as Result;
          continue;
        }
      }
      line[c] = closer(row, c);
    }
    return line;
  },
  TRAPPEDRATIO(compute, feeds, row, columns, closer) {
    const { block: block0, down: down0, across: across0, least: least0, most: most0 } = feeds[0]!;
    const x0 = block0[row * down0]!;
    const { block: block1, down: down1, across: across1, least: least1, most: most1 } = feeds[1]!;
    const x1 = block1[row * down1]!;
    const { block: block2, down: down2, across: across2, least: least2, most: most2 } = feeds[2]!;
    const x2 = block2[row * down2]!;
    const { block: block3, down: down3, across: across3, least: least3, most: most3 } = feeds[3]!;
    const x3 = block3[row * down3]!;
    const line: Result[] = new Array(columns);
    for (let c = 0; c < columns; c++) {
      const v0 = x0[c & across0];
      const v1 = x1[c & across1];
      const v2 = x2[c & across2];
      const v3 = x3[c & across3];
      if (typeof v0 === "number" && v0 >= least0 && v0 <= most0 && typeof v1 === "number" && v1 >= least1 && v1 <= most1 && typeof v2 === "number" && v2 >= least2 && v2 <= most2 && typeof v3 === "number" && v3 >= least3 && v3 <= most3) {
        const made = compute({ element: 0, ratio: v0, stroke: v1, rod: v2, intakeCloses: v3 });
        if (typeof made === "number" ? made - made === 0 : typeof made === "string") {
          line[c] = made as Result;
          continue;
        }
      }
      line[c] = closer(row, c);
    }
    return line;
  },
  COILBIND(compute, feeds, row, columns, closer) {
    const { block: block0, down: down0, across: across0, least: least0, most: most0 } = feeds[0]!;
    const x0 = block0[row * down0]!;
    const { block: block1, down: down1, across: across1, least: least1, most: most1 } = feeds[1]!;
    const x1 = block1[row * down1]!;
    const { block: block2, down: down2, across: across2, least: least2, most: most2 } = feeds[2]!;
    const x2 = block2[row * down2]!;
    const line: Result[] = new Array(columns);
    for (let c = 0; c < columns; c++) {
      const v0 = x0[c & across0];
      const v1 = x1[c & across1];
      const v2 = x2[c & across2];
      if (typeof v0 === "number" && v0 >= least0 && v0 <= most0 && typeof v1 === "number" && v1 >= least1 && v1 <= most1 && typeof v2 === "number" && v2 >= least2 && v2 <= most2) {
        const made = compute({ element: 0, fitted: v0, lift: v1, solid: v2 });
        if (typeof made === "number" ? made - made === 0 : typeof made === "string") {
          line[c] = made as Result;
          continue;
        }
      }
      line[c] = closer(row, c);
    }
    return line;
  },
  SHIMSIZE(compute, feeds, row, columns, closer) {
    const { block: block0, down: down0, across: across0, least: least0, most: most0 } = feeds[0]!;
    const x0 = block0[row * down0]!;
    const { block: block1, down: down1, across: across1, least: least1, most: most1 } = feeds[1]!;
    const x1 = block1[row * down1]!;
    const { block: block2, down: down2, across: across2, least: least2, most: most2 } = feeds[2]!;
    const x2 = block2[row * down2]!;
    const { block: block3, down: down3, across: across3, least: least3, most: most3 } = feeds[3]!;
    const x3 = block3[row * down3]!;
    const { block: block4, down: down4, across: across4, least: least4, most: most4 } = feeds[4]!;
    const x4 = block4[row * down4]!;
    const line: Result[] = new Array(columns);
    for (let c = 0; c < columns; c++) {
      const v0 = x0[c & across0];
      const v1 = x1[c & across1];
      const v2 = x2[c & across2];
      const v3 = x3[c & across3];
      const v4 = x4[c & across4];
      if (typeof v0 === "number" && v0 >= least0 && v0 <= most0 && typeof v1 === "number" && v1 >= least1 && v1 <= most1 && typeof v2 === "number" && v2 >= least2 && v2 <= most2 && typeof v3 === "number" && v3 >= least3 && v3 <= most3 && typeof v4 === "number" && v4 >= least4 && v4 <= most4) {
        const made = compute({ element: 0, installed: v0, clearance: v1, least: v2, most: v3, step: v4 });
        if (typeof made === "number" ? made - made === 0 : typeof made === "string") {
          line[c] = made as Result;
          continue;
        }
      }
      line[c] = closer(row, c);
    }
    return line;
  },
  SPRINGRATE(compute, feeds, row, columns, closer) {
    const { block: block0, down: down0, across: across0, least: least0, most: most0 } = feeds[0]!;
    const x0 = block0[row * down0]!;
    const { block: block1, down: down1, across: across1, least: least1, most: most1 } = feeds[1]!;
    const x1 = block1[row * down1]!;
    const { block: block2, down: down2, across: across2, least: least2, most: most2 } = feeds[2]!;
    const x2 = block2[row * down2]!;
    const { block: block3, down: down3, across: across3, least: least3, most: most3 } = feeds[3]!;
    const x3 = block3[row * down3]!;
    const line: Result[] = new Array(columns);
    for (let c = 0; c < columns; c++) {
      const v0 = x0[c & across0];
      const v1 = x1[c & across1];
      const v2 = x2[c & across2];
      const v3 = x3[c & across3];
      if (typeof v0 === "number" && v0 >= least0 && v0 <= most0 && typeof v1 === "number" && v1 >= least1 && v1 <= most1 && typeof v2 === "number" && v2 >= least2 && v2 <= most2 && typeof v3 === "number" && v3 >= least3 && v3 <= most3) {
        const made = compute({ element: 0, force1: v0, length1: v1, force2: v2, length2: v3 });
        if (typeof made === "number" ? made - made === 0 : typeof made === "string") {
          line[c] = made as Result;
          continue;
        }
      }
      line[c] = closer(row, c);
    }
    return line;
  },
  LEAKDOWN(compute, feeds, row, columns, closer) {
    const { block: block0, down: down0, across: across0, least: least0, most: most0 } = feeds[0]!;
    const x0 = block0[row * down0]!;
    const { block: block1, down: down1, across: across1, least: least1, most: most1 } = feeds[1]!;
    const x1 = block1[row * down1]!;
    const line: Result[] = new Array(columns);
    for (let c = 0; c < columns; c++) {
      const v0 = x0[c & across0];
      const v1 = x1[c & across1];
      if (typeof v0 === "number" && v0 >= least0 && v0 <= most0 && typeof v1 === "number" && v1 >= least1 && v1 <= most1) {
        const made = compute({ element: 0, supply: v0, held: v1 });
        if (typeof made === "number" ? made - made === 0 : typeof made === "string") {
          line[c] = made as Result;
          continue;
        }
      }
      line[c] = closer(row, c);
    }
    return line;
  },
  CONFORMITY(compute, feeds, row, columns, closer) {
    const { block: block0, down: down0, across: across0, least: least0, most: most0 } = feeds[0]!;
    const x0 = block0[row * down0]!;
    const { block: block1, down: down1, across: across1, least: least1, most: most1, isLeftOut: out1 } = feeds[1]!;
    const x1 = block1[row * down1]!;
    const { block: block2, down: down2, across: across2, least: least2, most: most2, isLeftOut: out2 } = feeds[2]!;
    const x2 = block2[row * down2]!;
    const { block: block3, down: down3, across: across3, least: least3, most: most3, isLeftOut: out3 } = feeds[3]!;
    const x3 = block3[row * down3]!;
    const line: Result[] = new Array(columns);
    for (let c = 0; c < columns; c++) {
      const v0 = x0[c & across0];
      const v1 = x1[c & across1];
      const v2 = x2[c & across2];
      const v3 = x3[c & across3];
      if (typeof v0 === "number" && v0 >= least0 && v0 <= most0 && (typeof v1 === "number" && v1 >= least1 && v1 <= most1 || (out1 && v1 === undefined)) && (typeof v2 === "number" && v2 >= least2 && v2 <= most2 || (out2 && v2 === undefined)) && (typeof v3 === "number" && v3 >= least3 && v3 <= most3 || (out3 && v3 === undefined))) {
        const made = compute({ element: 0, value: v0, lower: v1, upper: v2, u: v3 });
        if (typeof made === "number" ? made - made === 0 : typeof made === "string") {
          line[c] = made as Result;
          continue;
        }
      }
      line[c] = closer(row, c);
    }
    return line;
  },
  EXPLAIN(compute, feeds, row, columns, closer) {
    const { block: block0, down: down0, across: across0, least: least0, most: most0 } = feeds[0]!;
    const x0 = block0[row * down0]!;
    const { block: block1, down: down1, across: across1, least: least1, most: most1, isLeftOut: out1 } = feeds[1]!;
    const x1 = block1[row * down1]!;
    const { block: block2, down: down2, across: across2, least: least2, most: most2, isLeftOut: out2 } = feeds[2]!;
    const x2 = block2[row * down2]!;
    const { block: block3, down: down3, across: across3, least: least3, most: most3 } = feeds[3]!;
    const x3 = block3[row * down3]!;
    const { block: block4, down: down4, across: across4, least: least4, most: most4 } = feeds[4]!;
    const x4 = block4[row * down4]!;
    const line: Result[] = new Array(columns);
    for (let c = 0; c < columns; c++) {
      const v0 = x0[c & across0];
      const v1 = x1[c & across1];
      const v2 = x2[c & across2];
      const v3 = x3[c & across3];
      const v4 = x4[c & across4];
      if (typeof v0 === "number" && v0 >= least0 && v0 <= most0 && (typeof v1 === "number" && v1 >= least1 && v1 <= most1 || (out1 && v1 === undefined)) && (typeof v2 === "number" && v2 >= least2 && v2 <= most2 || (out2 && v2 === undefined)) && typeof v3 === "number" && v3 >= least3 && v3 <= most3 && typeof v4 === "number" && v4 >= least4 && v4 <= most4) {
        const made = compute({ element: 0, value: v0, lower: v1, upper: v2, uncertainty: v3, near: v4 });
        if (typeof made === "number" ? made - made === 0 : typeof made === "string") {
          line[c] = made as Result;
          continue;
        }
      }
      line[c] = closer(row, c);
    }
    return line;
  },
  MARGIN(compute, feeds, row, columns, closer) {
    const { block: block0, down: down0, across: across0, least: least0, most: most0 } = feeds[0]!;
    const x0 = block0[row * down0]!;
    const { block: block1, down: down1, across: across1, least: least1, most: most1, isLeftOut: out1 } = feeds[1]!;
    const x1 = block1[row * down1]!;
    const { block: block2, down: down2, across: across2, least: least2, most: most2, isLeftOut: out2 } = feeds[2]!;
    const x2 = block2[row * down2]!;
    const line: Result[] = new Array(columns);
    for (let c = 0; c < columns; c++) {
      const v0 = x0[c & across0];
      const v1 = x1[c & across1];
      const v2 = x2[c & across2];
      if (typeof v0 === "number" && v0 >= least0 && v0 <= most0 && (typeof v1 === "number" && v1 >= least1 && v1 <= most1 || (out1 && v1 === undefined)) && (typeof v2 === "number" && v2 >= least2 && v2 <= most2 || (out2 && v2 === undefined))) {
        const made = compute({ element: 0, value: v0, lower: v1, upper: v2 });
        if (typeof made === "number" ? made - made === 0 : typeof made === "string") {
          line[c] = made as Result;
          continue;
        }
      }
      line[c] = closer(row, c);
    }
    return line;
  },
  VERDICT(compute, feeds, row, columns, closer) {
    const { block: block0, down: down0, across: across0, least: least0, most: most0 } = feeds[0]!;
    const x0 = block0[row * down0]!;
    const { block: block1, down: down1, across: across1, least: least1, most: most1, isLeftOut: out1 } = feeds[1]!;
    const x1 = block1[row * down1]!;
    const { block: block2, down: down2, across: across2, least: least2, most: most2, isLeftOut: out2 } = feeds[2]!;
    const x2 = block2[row * down2]!;
    const { block: block3, down: down3, across: across3, least: least3, most: most3 } = feeds[3]!;
    const x3 = block3[row * down3]!;
    const { block: block4, down: down4, across: across4, least: least4, most: most4 } = feeds[4]!;
    const x4 = block4[row * down4]!;
    const line: Result[] = new Array(columns);
    for (let c = 0; c < columns; c++) {
      const v0 = x0[c & across0];
      const v1 = x1[c & across1];
      const v2 = x2[c & across2];
      const v3 = x3[c & across3];
      const v4 = x4[c & across4];
      if (typeof v0 === "number" && v0 >= least0 && v0 <= most0 && (typeof v1 === "number" && v1 >= least1 && v1 <= most1 || (out1 && v1 === undefined)) && (typeof v2 === "number" && v2 >= least2 && v2 <= most2 || (out2 && v2 === undefined)) && typeof v3 === "number" && v3 >= least3 && v3 <= most3 && typeof v4 === "number" && v4 >= least4 && v4 <= most4) {
        const made = compute({ element: 0, value: v0, lower: v1, upper: v2, uncertainty: v3, near: v4 });
        if (typeof made === "number" ? made - made === 0 : typeof made === "string") {
          line[c] = made as Result;
          continue;
        }
      }
      line[c] = closer(row, c);
    }
    return line;
  },
  SLIP(compute, feeds, row, columns, closer) {
    const { block: block0, down: down0, across: across0, least: least0, most: most0 } = feeds[0]!;
    const x0 = block0[row * down0]!;
    const { block: block1, down: down1, across: across1, least: least1, most: most1 } = feeds[1]!;
    const x1 = block1[row * down1]!;
    const { block: block2, down: down2, across: across2, least: least2, most: most2, isLeftOut: out2 } = feeds[2]!;
    const x2 = block2[row * down2]!;
    const line: Result[] = new Array(columns);
    for (let c = 0; c < columns; c++) {
      const v0 = x0[c & across0];
      const v1 = x1[c & across1];
      const v2 = x2[c & across2];
      if (typeof v0 === "number" && v0 >= least0 && v0 <= most0 && typeof v1 === "number" && v1 >= least1 && v1 <= most1 && (typeof v2 === "number" && v2 >= least2 && v2 <= most2 || (out2 && v2 === undefined))) {
        const made = compute({ element: 0, value: v0, nominal: v1, window: v2 });
        if (typeof made === "number" ? made - made === 0 : typeof made === "string") {
          line[c] = made as Result;
          continue;
        }
      }
      line[c] = closer(row, c);
    }
    return line;
  },
  TOREFERENCE(compute, feeds, row, columns, closer) {
    const { block: block0, down: down0, across: across0, least: least0, most: most0 } = feeds[0]!;
    const x0 = block0[row * down0]!;
    const { block: block1, down: down1, across: across1, least: least1, most: most1 } = feeds[1]!;
    const x1 = block1[row * down1]!;
    const f2 = feeds[2]!.fixed;
    const { block: block3, down: down3, across: across3, least: least3, most: most3, isLeftOut: out3 } = feeds[3]!;
    const x3 = block3[row * down3]!;
    const f4 = feeds[4]!.fixed;
    const line: Result[] = new Array(columns);
    for (let c = 0; c < columns; c++) {
      const v0 = x0[c & across0];
      const v1 = x1[c & across1];
      const v3 = x3[c & across3];
      if (typeof v0 === "number" && v0 >= least0 && v0 <= most0 && typeof v1 === "number" && v1 >= least1 && v1 <= most1 && (typeof v3 === "number" && v3 >= least3 && v3 <= most3 || (out3 && v3 === undefined))) {
        const made = compute({ element: 0, length: v0, temperature: v1, material: f2, reference: v3, unit: f4 });
        if (typeof made === "number" ? made - made === 0 : typeof made === "string") {
          line[c] = made as Result;
          continue;
        }
      }
      line[c] = closer(row, c);
    }
    return line;
  },
  ENNUMBER(compute, feeds, row, columns, closer) {
    const { block: block0, down: down0, across: across0, least: least0, most: most0 } = feeds[0]!;
    const x0 = block0[row * down0]!;
    const { block: block1, down: down1, across: across1, least: least1, most: most1 } = feeds[1]!;
    const x1 = block1[row * down1]!;
    const { block: block2, down: down2, across: across2, least: least2, most: most2 } = feeds[2]!;
    const x2 = block2[row * down2]!;
    const { block: block3, down: down3, across: across3, least: least3, most: most3 } = feeds[3]!;
    const x3 = block3[row * down3]!;
    const line: Result[] = new Array(columns);
    for (let c = 0; c < columns; c++) {
      const v0 = x0[c & across0];
      const v1 = x1[c & across1];
      const v2 = x2[c & across2];
      const v3 = x3[c & across3];
      if (typeof v0 === "number" && v0 >= least0 && v0 <= most0 && typeof v1 === "number" && v1 >= least1 && v1 <= most1 && typeof v2 === "number" && v2 >= least2 && v2 <= most2 && typeof v3 === "number" && v3 >= least3 && v3 <= most3) {
        const made = compute({ element: 0, before: v0, after: v1, uBefore: v2, uAfter: v3 });
        if (typeof made === "number" ? made - made === 0 : typeof made === "string") {
          line[c] = made as Result;
          continue;
        }
      }
      line[c] = closer(row, c);
    }
    return line;
  },
  REALCHANGE(compute, feeds, row, columns, closer) {
    const { block: block0, down: down0, across: across0, least: least0, most: most0 } = feeds[0]!;
    const x0 = block0[row * down0]!;
    const { block: block1, down: down1, across: across1, least: least1, most: most1 } = feeds[1]!;
    const x1 = block1[row * down1]!;
    const { block: block2, down: down2, across: across2, least: least2, most: most2 } = feeds[2]!;
    const x2 = block2[row * down2]!;
    const { block: block3, down: down3, across: across3, least: least3, most: most3, isLeftOut: out3 } = feeds[3]!;
    const x3 = block3[row * down3]!;
    const line: Result[] = new Array(columns);
    for (let c = 0; c < columns; c++) {
      const v0 = x0[c & across0];
      const v1 = x1[c & across1];
      const v2 = x2[c & across2];
      const v3 = x3[c & across3];
      if (typeof v0 === "number" && v0 >= least0 && v0 <= most0 && typeof v1 === "number" && v1 >= least1 && v1 <= most1 && typeof v2 === "number" && v2 >= least2 && v2 <= most2 && (typeof v3 === "number" && v3 >= least3 && v3 <= most3 || (out3 && v3 === undefined))) {
        const made = compute({ element: 0, before: v0, after: v1, uBefore: v2, uAfter: v3 });
        if (typeof made === "number" ? made - made === 0 : typeof made === "string") {
          line[c] = made as Result;
          continue;
        }
      }
      line[c] = closer(row, c);
    }
    return line;
  },
};
