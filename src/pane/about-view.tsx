import { VERSION } from "../core/version.ts";

interface Caution {
  title: string;
  text: string;
}

const CAUTIONS: readonly Caution[] = [
  {
    title: "Figures and decisions",
    text: "Every verdict comes from limits that somebody typed into the sheet; Crosshatch holds no maker's figures. The maker's service manual and a qualified technician decide what a part gets.",
  },
  {
    title: "Leak-down test",
    text: "An engine under leak-down air can turn over by itself. Take tools off the crankshaft, keep hands clear of belts, fans and couplings, and let the air in slowly.",
  },
  {
    title: "Compression test",
    text: "Shut off fuel and disable ignition before cranking, and keep clear of open plug or injector holes.",
  },
  {
    title: "Springs",
    text: "A compressed valve spring can fly out. Use a compressor that fits, and wear eye protection.",
  },
  {
    title: "Honing",
    text: "Honing dust and mist belong in no lung: wet the stone, draw the dust off, wear breathing protection, and wash the bores before assembly.",
  },
  {
    title: "Hot parts",
    text: "A part just off the engine or out of the oven burns, and it measures large. Let it come to room temperature first.",
  },
];

export function AboutView() {
  return (
    <>
      <h2>Cautions</h2>
      <dl class="cautions">
        {CAUTIONS.map(({ title, text }) => (
          <div key={title}>
            <dt>{title}</dt>
            <dd>{text}</dd>
          </div>
        ))}
      </dl>
      <h2>About</h2>
      <p>Crosshatch {VERSION}. Arithmetic and verdicts for engine build sheets, inside the sheet. Nothing leaves this machine: no account, no network.</p>
    </>
  );
}
