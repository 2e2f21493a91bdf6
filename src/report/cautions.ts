/** What every report ends with, in the words of README. */
export const CAUTIONS: readonly string[] = [
  "Figures come from limits that somebody typed. The maker's service manual, local rules and a qualified technician decide; a verdict here never does.",
  "An engine under leak-down air can turn over and throw a tool or break a hand: keep clear of it and of the propeller.",
  "Ignition and fuel off before a compression test; stay clear of moving and hot parts.",
  "Valve springs hold force when everything else is apart. Honing dust and solvents need protection for eyes, lungs and skin.",
  "Measure parts and gauges at one temperature, 20 °C where you can: a warm aluminium piston is larger than it will be tomorrow.",
];
