/** CRC-32 as zip archives use it (PKWARE APPNOTE 4.4.7): reflected, polynomial 0xEDB88320. */
const TABLE = Uint32Array.from({ length: 256 }, (_, byte) => {
  let rest = byte;
  for (let bit = 0; bit < 8; bit++) rest = rest & 1 ? (rest >>> 1) ^ 0xedb88320 : rest >>> 1;
  return rest;
});

export function crc32(bytes: Uint8Array): number {
  let sum = 0xffffffff;
  for (let i = 0; i < bytes.length; i++) sum = TABLE[(sum ^ bytes[i]!) & 255]! ^ (sum >>> 8);
  return (sum ^ 0xffffffff) >>> 0;
}
