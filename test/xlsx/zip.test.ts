import { crc32 } from "../../src/xlsx/zip.ts";

// The check value that catalogues of cyclic redundancy checks print for this one (CRC-32/ISO-HDLC; from memory).
test("the digits 1 to 9 have the sum CBF43926", () => {
  expect(crc32(new TextEncoder().encode("123456789"))).toBe(0xcbf43926);
});
