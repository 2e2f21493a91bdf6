import type { MarkTone } from "../../workbook/port.ts";

/** A shape for each tone, so that findings differ without colour; over and under point their way. */
const SHAPES: Readonly<Record<MarkTone | "under", string>> = {
  outside: "M6 1.5 11 10.5H1Z",
  under: "M6 10.5 1 1.5H11Z",
  doubt: "M6 1 11 6 6 11 1 6ZM6 3.1 3.1 6 6 8.9Z",
  near: "M6 1a5 5 0 1 1 0 10A5 5 0 0 1 6 1Zm0 2a3 3 0 1 0 0 6 3 3 0 0 0 0-6Z",
  fault: "M1.5 1.5h9v9h-9ZM3.5 5v2h5V5Z",
};

export function ToneShape({ shape }: { shape: keyof typeof SHAPES }) {
  return (
    <svg class="shape" viewBox="0 0 12 12" aria-hidden="true">
      <path fill-rule="evenodd" d={SHAPES[shape]} />
    </svg>
  );
}
