import { pistonTravelAt } from "../../src/math/slider-crank.ts";

describe("cited values", () => {
  // Computed by hand from the triangle of crank, rod and axis: with the crank square to the axis the
  // pin stands √(l² − r²) from the crank's centre, here a 3-4-5 triangle.
  test("a crank of 3 and a rod of 5, square to the axis, have travelled 3 + 5 − 4", () => {
    expect(pistonTravelAt(90, 6, 5)).toBeCloseTo(4, 12);
  });
});

describe("identities", () => {
  test("a turn either way and a turn more stand at the same height", () => {
    for (let degrees = 0; degrees <= 180; degrees += 7.5) {
      expect(pistonTravelAt(-degrees, 76, 130)).toBeCloseTo(pistonTravelAt(degrees, 76, 130), 10);
      expect(pistonTravelAt(degrees + 360, 76, 130)).toBeCloseTo(pistonTravelAt(degrees, 76, 130), 10);
    }
  });

  test("with a very long rod the travel is that of a cosine", () => {
    expect(pistonTravelAt(60, 50, 1e7)).toBeCloseTo(12.5, 4);
  });
});
