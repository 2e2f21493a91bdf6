import { closeSync, openSync, readSync } from "node:fs";
import type { BatchData } from "../../buildsheet/csv/batch.ts";
import type { HeadColumns } from "../../buildsheet/csv/head.ts";
import type { Refused } from "../../buildsheet/csv/rows.ts";
import { readSegment, type Segment, type Stretch } from "../../buildsheet/csv/segment.ts";
import type { DecimalSign } from "../../buildsheet/csv.ts";
import { Tallies, type Tally } from "../../report/facts.ts";
import { subjectOf } from "../../report/gather/subjects.ts";
import { Packed, type PackedData } from "./packed.ts";

export interface ReadingsTask {
  path: string;
  /** Bytes of the file. */
  size: number;
  name: string;
  head: HeadColumns;
  decimal: DecimalSign;
  stretch: Stretch;
  wants: { refused: boolean; tallies: boolean };
}

export interface ReadSegment extends Omit<Segment, "batch" | "bytes"> {
  batch: BatchData;
  bytes: Uint8Array;
  packed: PackedData;
  refused: Refused[];
  tallies: { all: Tally[]; more: number };
}

/** `failed` is what the system says against reading the file; nothing where the stretch could not be read as it was begun. */
export type ReadingsAnswer = { segment?: ReadSegment } | { failed: { code: string | undefined; message: string } };

/** One stretch of a file of readings. */
export function readStretch({ path, size, stretch, wants, ...about }: ReadingsTask): ReadingsAnswer {
  let packed = new Packed();
  let tallies = new Tallies();
  let refused: Refused[] = [];
  let file: number | undefined;
  try {
    file = openSync(path, "r");
    const opened = file;
    const segment = readSegment(stretch, {
      ...about,
      size,
      read: (from, to) => bytesOf(opened, from, to),
      begin() {
        packed = new Packed();
        tallies = new Tallies();
        refused = [];
      },
      found(finding) {
        packed.add(finding);
        if (wants.tallies) tallies.add(finding.kind, subjectOf(finding.label));
      },
      refused: wants.refused ? (row) => void refused.push(row) : undefined,
    });
    return segment ? { segment: { ...segment, packed, refused, tallies: { all: tallies.all, more: tallies.more } } } : {};
  } catch (error) {
    const { code, message } = error as NodeJS.ErrnoException;
    return { failed: { code, message } };
  } finally {
    if (file !== undefined) closeSync(file);
  }
}

function bytesOf(file: number, from: number, to: number): Buffer {
  const bytes = Buffer.allocUnsafeSlow(to - from);
  let done = 0;
  while (done < bytes.length) {
    const count = readSync(file, bytes, done, bytes.length - done, from + done);
    if (count === 0) break;
    done += count;
  }
  return bytes.subarray(0, done);
}
