/** A process that hangs, ends, takes too long or finds something at inputs that are known. */
process.on("message", ({ from, to }: { from: number; to: number }) => {
  for (let index = from; index < to; index++) {
    process.send!({ started: index });
    if (index === 3) return;
    if (index === 5) process.exit(7);
    const outcome = index === 8 ? "defect" : index % 2 ? "refused" : "result";
    process.send!({ index, level: "told", outcome, milliseconds: index === 6 ? 11_000 : 1, ...(index === 8 ? { what: "two and two are five" } : {}) });
  }
  process.send!({ done: true, megabytes: 600 });
});
