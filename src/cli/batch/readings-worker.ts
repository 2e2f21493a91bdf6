import { move, transferableSymbol, valueSymbol } from "piscina";
import { type ReadingsAnswer, type ReadingsTask, type ReadSegment, readStretch } from "./read-stretch.ts";

/** One stretch of a file of readings, in a thread of the pool; what is large is handed over, not copied. */
export default function inThread(task: ReadingsTask): ReadingsAnswer {
  const answer = readStretch(task);
  return "segment" in answer && answer.segment ? handedOver(answer.segment) : answer;
}

/** Plain data of its own: the rooms of the parts go with it. */
function handedOver({ batch, packed, ...rest }: ReadSegment): ReadingsAnswer {
  const { values, lines, froms, tos, told, runs, names, nameOfRun, endOfRun } = batch;
  const { kinds, severities, ends } = packed;
  const segment: ReadSegment = {
    ...rest,
    batch: { length: batch.length, values, lines, froms, tos, told, runs, names, nameOfRun, endOfRun },
    packed: { length: packed.length, kinds, severities, lines: packed.lines, ends, bytes: packed.bytes },
  };
  const rooms = [rest.bytes, values, lines, froms, tos, told, nameOfRun, endOfRun, kinds, severities, packed.lines, ends, packed.bytes];
  return move({ [transferableSymbol]: rooms.map(({ buffer }) => buffer), [valueSymbol]: { segment } } as never) as unknown as ReadingsAnswer;
}
