/** What can hurt somebody, or lead them astray, in the work that the numbers are about. */
interface Caution {
  title: string;
  text: string;
}

/** The one list: the pane shows it, every report ends with it, README repeats it word for word. */
export const CAUTIONS: readonly Caution[] = [
  {
    title: "Figures and decisions",
    text: "Figures come from limits that somebody typed; Crosshatch holds no maker's figures. The maker's service manual, local rules and a qualified technician decide; a verdict here never does.",
  },
  {
    title: "Leak-down test",
    text: "An engine under leak-down air can turn over by itself and throw a tool or break a hand. Take tools off the crankshaft, keep clear of belts, fans, couplings and the propeller, and let the air in slowly.",
  },
  {
    title: "Compression test",
    text: "Fuel off and ignition disabled before cranking; stay clear of open plug or injector holes and of moving and hot parts.",
  },
  {
    title: "Springs",
    text: "A valve spring holds its force when everything else is apart, and a compressed one can fly out. Use a compressor that fits, and wear eye protection.",
  },
  {
    title: "Honing and solvents",
    text: "Dust, mist and vapour belong in no lung: wet the stone, draw the dust off, protect eyes, lungs and skin, and wash the bores before assembly.",
  },
  {
    title: "Hot and warm parts",
    text: "A part just off the engine or out of the oven burns, and it measures large: a warm aluminium piston is larger than it will be tomorrow. Measure parts and gauges at one temperature, 20 °C where you can.",
  },
];
