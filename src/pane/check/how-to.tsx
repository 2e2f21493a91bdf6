/** How a sheet comes to be checked. */
export function HowTo() {
  return (
    <ol>
      <li>Type the readings, and the limits from the maker's service manual, into cells.</li>
      <li>
        Judge each one in a cell beside it: <code>=HATCH.VERDICT(value, lower, upper)</code>
      </li>
      <li>Press Check. Choose a finding to go to its cell.</li>
    </ol>
  );
}
