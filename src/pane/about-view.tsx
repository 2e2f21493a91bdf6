import { VERSION } from "../core/version.ts";
import { CAUTIONS } from "../report/cautions.ts";

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
