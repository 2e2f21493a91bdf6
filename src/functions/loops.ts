// Made by `npm run generate`. The loops are alike but for their inputs; each function has its own so
// that the compiler can join it with that function's compute (src/core/batch.ts).
import type { Loop } from "../core/batch.ts";

export const loops: Readonly<Record<string, Loop>> = {
  CLEARANCE(compute, numbers, _fixed, closer, start, first, last, line) {
    const n0 = numbers[0]!;
    const n1 = numbers[1]!;
    for (let c = first; c < last; c++) {
      const e = start + c;
      if (closer[e]) return c;
      const made = compute({ hole: n0[e]!, shaft: n1[e]! });
      if (typeof made === "number" ? made - made === 0 : typeof made === "string") line[c] = made as number | string;
      else return c;
    }
    return last;
  },
  FINISHBORE(compute, numbers, _fixed, closer, start, first, last, line) {
    const n0 = numbers[0]!;
    const n1 = numbers[1]!;
    for (let c = first; c < last; c++) {
      const e = start + c;
      if (closer[e]) return c;
      const made = compute({ piston: n0[e]!, clearance: n1[e]! });
      if (typeof made === "number" ? made - made === 0 : typeof made === "string") line[c] = made as number | string;
      else return c;
    }
    return last;
  },
  HOTCLEARANCE(compute, numbers, fixed, closer, start, first, last, line) {
    const n0 = numbers[0]!;
    const f1 = fixed[1];
    const n2 = numbers[2]!;
    const n3 = numbers[3]!;
    const f4 = fixed[4];
    const n5 = numbers[5]!;
    const f6 = fixed[6];
    for (let c = first; c < last; c++) {
      const e = start + c;
      if (closer[e]) return c;
      const made = compute({ bore: n0[e]!, boreMaterial: f1, boreTemperature: n2[e]!, piston: n3[e]!, pistonMaterial: f4, pistonTemperature: n5[e]!, unit: f6 });
      if (typeof made === "number" ? made - made === 0 : typeof made === "string") line[c] = made as number | string;
      else return c;
    }
    return last;
  },
  PISTONSPEED(compute, numbers, fixed, closer, start, first, last, line) {
    const n0 = numbers[0]!;
    const n1 = numbers[1]!;
    const f2 = fixed[2];
    for (let c = first; c < last; c++) {
      const e = start + c;
      if (closer[e]) return c;
      const made = compute({ stroke: n0[e]!, rpm: n1[e]!, unit: f2 });
      if (typeof made === "number" ? made - made === 0 : typeof made === "string") line[c] = made as number | string;
      else return c;
    }
    return last;
  },
  RINGGAPATBORE(compute, numbers, _fixed, closer, start, first, last, line) {
    const n0 = numbers[0]!;
    const n1 = numbers[1]!;
    const n2 = numbers[2]!;
    for (let c = first; c < last; c++) {
      const e = start + c;
      if (closer[e]) return c;
      const made = compute({ gap: n0[e]!, boreMeasuredIn: n1[e]!, boreRun: n2[e]! });
      if (typeof made === "number" ? made - made === 0 : typeof made === "string") line[c] = made as number | string;
      else return c;
    }
    return last;
  },
  RINGGAPFILE(compute, numbers, _fixed, closer, start, first, last, line) {
    const n0 = numbers[0]!;
    const n1 = numbers[1]!;
    for (let c = first; c < last; c++) {
      const e = start + c;
      if (closer[e]) return c;
      const made = compute({ measured: n0[e]!, target: n1[e]! });
      if (typeof made === "number" ? made - made === 0 : typeof made === "string") line[c] = made as number | string;
      else return c;
    }
    return last;
  },
  RINGGAPTARGET(compute, numbers, _fixed, closer, start, first, last, line) {
    const n0 = numbers[0]!;
    const n1 = numbers[1]!;
    for (let c = first; c < last; c++) {
      const e = start + c;
      if (closer[e]) return c;
      const made = compute({ bore: n0[e]!, perBore: n1[e]! });
      if (typeof made === "number" ? made - made === 0 : typeof made === "string") line[c] = made as number | string;
      else return c;
    }
    return last;
  },
  RINGSIDE(compute, numbers, _fixed, closer, start, first, last, line) {
    const n0 = numbers[0]!;
    const n1 = numbers[1]!;
    for (let c = first; c < last; c++) {
      const e = start + c;
      if (closer[e]) return c;
      const made = compute({ groove: n0[e]!, ring: n1[e]! });
      if (typeof made === "number" ? made - made === 0 : typeof made === "string") line[c] = made as number | string;
      else return c;
    }
    return last;
  },
  RINGWEAR(compute, numbers, _fixed, closer, start, first, last, line) {
    const n0 = numbers[0]!;
    const n1 = numbers[1]!;
    const n2 = numbers[2]!;
    const n3 = numbers[3]!;
    for (let c = first; c < last; c++) {
      const e = start + c;
      if (closer[e]) return c;
      const made = compute({ gapBefore: n0[e]!, gapAfter: n1[e]!, boreBefore: Number.isNaN(n2[e]!) ? undefined : n2[e]!, boreAfter: Number.isNaN(n3[e]!) ? undefined : n3[e]! });
      if (typeof made === "number" ? made - made === 0 : typeof made === "string") line[c] = made as number | string;
      else return c;
    }
    return last;
  },
  CHAMBERFOR(compute, numbers, _fixed, closer, start, first, last, line) {
    const n0 = numbers[0]!;
    const n1 = numbers[1]!;
    const n2 = numbers[2]!;
    const n3 = numbers[3]!;
    const n4 = numbers[4]!;
    for (let c = first; c < last; c++) {
      const e = start + c;
      if (closer[e]) return c;
      const made = compute({ ratio: n0[e]!, swept: n1[e]!, gasket: n2[e]!, deck: n3[e]!, piston: n4[e]! });
      if (typeof made === "number" ? made - made === 0 : typeof made === "string") line[c] = made as number | string;
      else return c;
    }
    return last;
  },
  COMPRESSIONRATIO(compute, numbers, _fixed, closer, start, first, last, line) {
    const n0 = numbers[0]!;
    const n1 = numbers[1]!;
    const n2 = numbers[2]!;
    const n3 = numbers[3]!;
    const n4 = numbers[4]!;
    for (let c = first; c < last; c++) {
      const e = start + c;
      if (closer[e]) return c;
      const made = compute({ swept: n0[e]!, chamber: n1[e]!, gasket: n2[e]!, deck: n3[e]!, piston: n4[e]! });
      if (typeof made === "number" ? made - made === 0 : typeof made === "string") line[c] = made as number | string;
      else return c;
    }
    return last;
  },
  CRANKINGPRESSURE(compute, numbers, fixed, closer, start, first, last, line) {
    const n0 = numbers[0]!;
    const n1 = numbers[1]!;
    const n2 = numbers[2]!;
    const f3 = fixed[3];
    for (let c = first; c < last; c++) {
      const e = start + c;
      if (closer[e]) return c;
      const made = compute({ ratio: n0[e]!, ambient: Number.isNaN(n1[e]!) ? undefined : n1[e]!, exponent: n2[e]!, unit: f3 });
      if (typeof made === "number" ? made - made === 0 : typeof made === "string") line[c] = made as number | string;
      else return c;
    }
    return last;
  },
  DISCVOLUME(compute, numbers, fixed, closer, start, first, last, line) {
    const n0 = numbers[0]!;
    const n1 = numbers[1]!;
    const f2 = fixed[2];
    for (let c = first; c < last; c++) {
      const e = start + c;
      if (closer[e]) return c;
      const made = compute({ diameter: n0[e]!, thickness: n1[e]!, unit: f2 });
      if (typeof made === "number" ? made - made === 0 : typeof made === "string") line[c] = made as number | string;
      else return c;
    }
    return last;
  },
  HEADSKIM(compute, numbers, fixed, closer, start, first, last, line) {
    const n0 = numbers[0]!;
    const n1 = numbers[1]!;
    const n2 = numbers[2]!;
    const f3 = fixed[3];
    for (let c = first; c < last; c++) {
      const e = start + c;
      if (closer[e]) return c;
      const made = compute({ chamber: n0[e]!, wanted: n1[e]!, faceArea: n2[e]!, unit: f3 });
      if (typeof made === "number" ? made - made === 0 : typeof made === "string") line[c] = made as number | string;
      else return c;
    }
    return last;
  },
  PISTONTRAVEL(compute, numbers, _fixed, closer, start, first, last, line) {
    const n0 = numbers[0]!;
    const n1 = numbers[1]!;
    const n2 = numbers[2]!;
    for (let c = first; c < last; c++) {
      const e = start + c;
      if (closer[e]) return c;
      const made = compute({ angle: n0[e]!, stroke: n1[e]!, rod: n2[e]! });
      if (typeof made === "number" ? made - made === 0 : typeof made === "string") line[c] = made as number | string;
      else return c;
    }
    return last;
  },
  SQUISH(compute, numbers, _fixed, closer, start, first, last, line) {
    const n0 = numbers[0]!;
    const n1 = numbers[1]!;
    for (let c = first; c < last; c++) {
      const e = start + c;
      if (closer[e]) return c;
      const made = compute({ deck: n0[e]!, gasket: n1[e]! });
      if (typeof made === "number" ? made - made === 0 : typeof made === "string") line[c] = made as number | string;
      else return c;
    }
    return last;
  },
  SWEPTVOLUME(compute, numbers, fixed, closer, start, first, last, line) {
    const n0 = numbers[0]!;
    const n1 = numbers[1]!;
    const f2 = fixed[2];
    const f3 = fixed[3];
    for (let c = first; c < last; c++) {
      const e = start + c;
      if (closer[e]) return c;
      const made = compute({ bore: n0[e]!, stroke: n1[e]!, cylinders: f2, unit: f3 });
      if (typeof made === "number" ? made - made === 0 : typeof made === "string") line[c] = made as number | string;
      else return c;
    }
    return last;
  },
  TRAPPEDRATIO(compute, numbers, _fixed, closer, start, first, last, line) {
    const n0 = numbers[0]!;
    const n1 = numbers[1]!;
    const n2 = numbers[2]!;
    const n3 = numbers[3]!;
    for (let c = first; c < last; c++) {
      const e = start + c;
      if (closer[e]) return c;
      const made = compute({ ratio: n0[e]!, stroke: n1[e]!, rod: n2[e]!, intakeCloses: n3[e]! });
      if (typeof made === "number" ? made - made === 0 : typeof made === "string") line[c] = made as number | string;
      else return c;
    }
    return last;
  },
  COILBIND(compute, numbers, _fixed, closer, start, first, last, line) {
    const n0 = numbers[0]!;
    const n1 = numbers[1]!;
    const n2 = numbers[2]!;
    for (let c = first; c < last; c++) {
      const e = start + c;
      if (closer[e]) return c;
      const made = compute({ fitted: n0[e]!, lift: n1[e]!, solid: n2[e]! });
      if (typeof made === "number" ? made - made === 0 : typeof made === "string") line[c] = made as number | string;
      else return c;
    }
    return last;
  },
  SHIMSIZE(compute, numbers, _fixed, closer, start, first, last, line) {
    const n0 = numbers[0]!;
    const n1 = numbers[1]!;
    const n2 = numbers[2]!;
    const n3 = numbers[3]!;
    const n4 = numbers[4]!;
    for (let c = first; c < last; c++) {
      const e = start + c;
      if (closer[e]) return c;
      const made = compute({ installed: n0[e]!, clearance: n1[e]!, least: n2[e]!, most: n3[e]!, step: n4[e]! });
      if (typeof made === "number" ? made - made === 0 : typeof made === "string") line[c] = made as number | string;
      else return c;
    }
    return last;
  },
  SPRINGRATE(compute, numbers, _fixed, closer, start, first, last, line) {
    const n0 = numbers[0]!;
    const n1 = numbers[1]!;
    const n2 = numbers[2]!;
    const n3 = numbers[3]!;
    for (let c = first; c < last; c++) {
      const e = start + c;
      if (closer[e]) return c;
      const made = compute({ force1: n0[e]!, length1: n1[e]!, force2: n2[e]!, length2: n3[e]! });
      if (typeof made === "number" ? made - made === 0 : typeof made === "string") line[c] = made as number | string;
      else return c;
    }
    return last;
  },
  LEAKDOWN(compute, numbers, _fixed, closer, start, first, last, line) {
    const n0 = numbers[0]!;
    const n1 = numbers[1]!;
    for (let c = first; c < last; c++) {
      const e = start + c;
      if (closer[e]) return c;
      const made = compute({ supply: n0[e]!, held: n1[e]! });
      if (typeof made === "number" ? made - made === 0 : typeof made === "string") line[c] = made as number | string;
      else return c;
    }
    return last;
  },
  CONFORMITY(compute, numbers, _fixed, closer, start, first, last, line) {
    const n0 = numbers[0]!;
    const n1 = numbers[1]!;
    const n2 = numbers[2]!;
    const n3 = numbers[3]!;
    for (let c = first; c < last; c++) {
      const e = start + c;
      if (closer[e]) return c;
      const made = compute({ value: n0[e]!, lower: Number.isNaN(n1[e]!) ? undefined : n1[e]!, upper: Number.isNaN(n2[e]!) ? undefined : n2[e]!, u: Number.isNaN(n3[e]!) ? undefined : n3[e]! });
      if (typeof made === "number" ? made - made === 0 : typeof made === "string") line[c] = made as number | string;
      else return c;
    }
    return last;
  },
  EXPLAIN(compute, numbers, _fixed, closer, start, first, last, line) {
    const n0 = numbers[0]!;
    const n1 = numbers[1]!;
    const n2 = numbers[2]!;
    const n3 = numbers[3]!;
    const n4 = numbers[4]!;
    for (let c = first; c < last; c++) {
      const e = start + c;
      if (closer[e]) return c;
      const made = compute({ value: n0[e]!, lower: Number.isNaN(n1[e]!) ? undefined : n1[e]!, upper: Number.isNaN(n2[e]!) ? undefined : n2[e]!, uncertainty: n3[e]!, near: n4[e]! });
      if (typeof made === "number" ? made - made === 0 : typeof made === "string") line[c] = made as number | string;
      else return c;
    }
    return last;
  },
  MARGIN(compute, numbers, _fixed, closer, start, first, last, line) {
    const n0 = numbers[0]!;
    const n1 = numbers[1]!;
    const n2 = numbers[2]!;
    for (let c = first; c < last; c++) {
      const e = start + c;
      if (closer[e]) return c;
      const made = compute({ value: n0[e]!, lower: Number.isNaN(n1[e]!) ? undefined : n1[e]!, upper: Number.isNaN(n2[e]!) ? undefined : n2[e]! });
      if (typeof made === "number" ? made - made === 0 : typeof made === "string") line[c] = made as number | string;
      else return c;
    }
    return last;
  },
  VERDICT(compute, numbers, _fixed, closer, start, first, last, line) {
    const n0 = numbers[0]!;
    const n1 = numbers[1]!;
    const n2 = numbers[2]!;
    const n3 = numbers[3]!;
    const n4 = numbers[4]!;
    for (let c = first; c < last; c++) {
      const e = start + c;
      if (closer[e]) return c;
      const made = compute({ value: n0[e]!, lower: Number.isNaN(n1[e]!) ? undefined : n1[e]!, upper: Number.isNaN(n2[e]!) ? undefined : n2[e]!, uncertainty: n3[e]!, near: n4[e]! });
      if (typeof made === "number" ? made - made === 0 : typeof made === "string") line[c] = made as number | string;
      else return c;
    }
    return last;
  },
  LENGTH(compute, _numbers, fixed, closer, start, first, last, line) {
    const f0 = fixed[0];
    const f1 = fixed[1];
    for (let c = first; c < last; c++) {
      const e = start + c;
      if (closer[e]) return c;
      const made = compute({ text: f0, unit: f1 });
      if (typeof made === "number" ? made - made === 0 : typeof made === "string") line[c] = made as number | string;
      else return c;
    }
    return last;
  },
  SLIP(compute, numbers, _fixed, closer, start, first, last, line) {
    const n0 = numbers[0]!;
    const n1 = numbers[1]!;
    const n2 = numbers[2]!;
    for (let c = first; c < last; c++) {
      const e = start + c;
      if (closer[e]) return c;
      const made = compute({ value: n0[e]!, nominal: n1[e]!, window: Number.isNaN(n2[e]!) ? undefined : n2[e]! });
      if (typeof made === "number" ? made - made === 0 : typeof made === "string") line[c] = made as number | string;
      else return c;
    }
    return last;
  },
  TOREFERENCE(compute, numbers, fixed, closer, start, first, last, line) {
    const n0 = numbers[0]!;
    const n1 = numbers[1]!;
    const f2 = fixed[2];
    const n3 = numbers[3]!;
    const f4 = fixed[4];
    for (let c = first; c < last; c++) {
      const e = start + c;
      if (closer[e]) return c;
      const made = compute({ length: n0[e]!, temperature: n1[e]!, material: f2, reference: Number.isNaN(n3[e]!) ? undefined : n3[e]!, unit: f4 });
      if (typeof made === "number" ? made - made === 0 : typeof made === "string") line[c] = made as number | string;
      else return c;
    }
    return last;
  },
  ENNUMBER(compute, numbers, _fixed, closer, start, first, last, line) {
    const n0 = numbers[0]!;
    const n1 = numbers[1]!;
    const n2 = numbers[2]!;
    const n3 = numbers[3]!;
    for (let c = first; c < last; c++) {
      const e = start + c;
      if (closer[e]) return c;
      const made = compute({ before: n0[e]!, after: n1[e]!, uBefore: n2[e]!, uAfter: n3[e]! });
      if (typeof made === "number" ? made - made === 0 : typeof made === "string") line[c] = made as number | string;
      else return c;
    }
    return last;
  },
  REALCHANGE(compute, numbers, _fixed, closer, start, first, last, line) {
    const n0 = numbers[0]!;
    const n1 = numbers[1]!;
    const n2 = numbers[2]!;
    const n3 = numbers[3]!;
    for (let c = first; c < last; c++) {
      const e = start + c;
      if (closer[e]) return c;
      const made = compute({ before: n0[e]!, after: n1[e]!, uBefore: n2[e]!, uAfter: Number.isNaN(n3[e]!) ? undefined : n3[e]! });
      if (typeof made === "number" ? made - made === 0 : typeof made === "string") line[c] = made as number | string;
      else return c;
    }
    return last;
  },
};
